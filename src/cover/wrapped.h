/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A wrapped front while it is made, and its pieces: the wrap and the two sides. Internal to the
 * room. */
#pragma once

#include "cover/flank.h"
#include "cover/stretches.h"

/* A side while it is made. */
typedef struct
{
  gboolean is_left;
  gboolean meets_zip; /* at the back: two strips with a zip between */
  guint first, n;     /* stretches of the ring, in order of travel */
  double station_mm;  /* of the ring, at the front */
  SqPath *plan;       /* tag k: the k-th stretch from the front */
  SqId *edges;        /* of each of these */
  SqFlank *flank;
  SqSide on_wrap, on_side;
  guint ends[2]; /* runs of the side's end at the back, from below up */
  guint piece;
} SqFlankSide;

typedef struct
{
  SqMaking *making;
  double height_mm, radius_mm;
  double middle_mm; /* of the nose, as far below the front line's own place on the wrap */
  guint edge;       /* that is the back … */
  guint back[2];    /* … and the first and last of those that are beside it there */
  SqZipRun zip;
  GArray *strips;    /* of SqStrip: the back, from right to left */
  GArray *stretches; /* of SqStretch */
  guint back_first, n_back;
  SqFlankSide sides[2];   /* right, left */
  guint *top, *underside; /* the wrap's run of each stretch at the back */
  guint wrap;             /* index of that piece */
} SqWrapping;

/* Stretch @i of the ring, taken round. */
const SqStretch *sq_wrapping_stretch (const SqWrapping *wrapping, guint i);
/* Station of the ring at the back's right (@end 0) or left end. */
double sq_wrapping_back_mm (const SqWrapping *wrapping, guint end);
/* @path, in seat coordinates, as it lies in plan: y from the front line on, x along it. */
SqPath *sq_wrapping_framed (const SqWrapping *wrapping, const SqPath *path);
/* Whether there is a flat front between two rounds. */
gboolean sq_wrapping_has_flat (const SqWrapping *wrapping);

/* Both flanks are there: these make the pieces and say where their runs are. */
void sq_wrapping_make_wrap (SqWrapping *wrapping);
void sq_wrapping_make_side (SqWrapping *wrapping, SqFlankSide *side);
