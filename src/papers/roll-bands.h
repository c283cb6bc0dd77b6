/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A strip of cloth drawn at a round scale, its cut end at the left, with running figures along its near
 * edge and across. A long one goes on in bands below each other; every piece lies whole in one of
 * them, and is only outlined where it lies in the next, too. Internal to the room. */
#pragma once

#include "job/cloth.h"
#include "papers/pages.h"

typedef struct _SqRollBands SqRollBands;

/* A part of the strip: what lies between two places along it, and where that is on the page. */
typedef struct
{
  const SqRollBands *of;
  double from_mm, to_mm;
  double before_mm; /* where the band before ends: what is whole there is outlined here */
  SqPoint at;       /* on the page: the strip's (from, 0) */
} SqRollBand;

/* What is drawn; all borrowed. */
struct _SqRollBands
{
  SqPages *pages;
  const SqLengthStyle *style;
  const SqCloth *cloth; /* NULL: none is told of */
  gboolean wrong_side;  /* that it shows */
  SqBox box;            /* of what is shown of the strip, from (0, 0): its cut end's near corner */
  GPtrArray *cuts;      /* of SqPath: the outer lines of what lies on it */
  double most_high_mm;  /* the strip's width on paper, where all fits at once … */
  double least_high_mm; /* … that is not narrower; else it goes on in bands … */
  double most_band_mm;  /* … of so much */
  double scale;         /* 1 : so much; chosen by sq_roll_bands_draw() */
  /* Draw the cloth of a band; piece @i on it, of cuts. */
  void (*draw_cloth) (const SqRollBand *band, gconstpointer data);
  void (*draw_piece) (const SqRollBand *band, guint i, gconstpointer data);
  gconstpointer data; /* for these two */
};

/* Draws all of it; if possible so that @with_mm of what follows go onto the same page. What the last
 * band takes of its page with its figures, from the cloth's far edge down. */
SqBox sq_roll_bands_draw (SqRollBands *bands, double with_mm);
/* The least height that takes, with a line above. */
#define SQ_ROLL_BAND_LEAST_MM 62.0

/* A point of the strip on the page. */
SqPoint sq_roll_band_point (const SqRollBand *band, SqPoint p);
/* Adds @scene, in mm of cloth, which is taken, its (0, 0) at @place of the strip. */
void sq_roll_band_scene (const SqRollBand *band, SqScene *scene, SqVector place);
