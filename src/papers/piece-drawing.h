/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small drawing of a piece with its figures, to be looked at beside its line. Internal to the
 * room. */
#pragma once

#include "cover/cover.h"
#include "drawing/scene.h"

/* How @piece of @cover is turned to be drawn, counter-clockwise: faces with the front below. */
double sq_piece_drawing_turn_rad (const SqCover *cover, const SqPiece *piece);

/* How high a drawing of @piece of @cover becomes that is @width_mm wide, up to @most_mm. */
double sq_piece_drawing_height_mm (const SqCover *cover, guint piece, double width_mm,
                                   double most_mm);

/* What is written at arrows. */
typedef struct
{
  const char *front; /* at the one to the front edge */
  const char *up;    /* at the one to the cloth's up … */
  double up_rad;     /* … which points there in the piece; NAN: the cloth has none */
} SqDrawingWords;

/* Draws it into the middle of @box (mm): faces with the front below, boxing as it stands, right side
 * up. Long strips are broken, true at both ends. Overall figures stand beside it, others inside as
 * far as there is room. */
void sq_piece_drawing_add (SqSceneBuilder *builder, const SqCover *cover, guint piece, SqBox box,
                           const SqLengthStyle *style, const SqDrawingWords *words);
