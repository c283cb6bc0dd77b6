/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Outlines from a few figures: how most seats begin. */
#pragma once

#include "job/outline.h"

typedef enum
{
  SQ_OUTLINE_RECTANGLE,
  SQ_OUTLINE_TRAPEZOID,  /* alike on both sides */
  SQ_OUTLINE_L,          /* an ear at the right of the front */
  SQ_OUTLINE_T,          /* an ear at either end of the front, round two arms */
  SQ_OUTLINE_POLYGON,    /* regular, one side at the front */
  SQ_OUTLINE_CIRCLE,     /* two half circles, front and back */
  SQ_OUTLINE_HALF_ROUND, /* half a circle in front, straight at the back */
  SQ_OUTLINE_BAY,        /* straight sides that then slant in to a narrower back */
} SqShapeKind;
#define SQ_N_SHAPE_KINDS 8

typedef enum
{
  SQ_FIGURE_WIDTH, /* of the front; the greatest one of L and T, ears included */
  SQ_FIGURE_DEPTH, /* front to back, ears included */
  SQ_FIGURE_BACK_WIDTH,
  SQ_FIGURE_EAR_WIDTH, /* how far an ear stands out to the side */
  SQ_FIGURE_EAR_DEPTH, /* of an ear, front to back */
  SQ_FIGURE_SIDE_COUNT,
  SQ_FIGURE_SIDE, /* each side of a polygon */
  SQ_FIGURE_DIAMETER,
  SQ_FIGURE_SIDE_DEPTH, /* of the straight part of the sides; may be 0 */
} SqFigureKind;
#define SQ_N_FIGURE_KINDS 9

/* One figure a shape asks for: mm, but for the side count. */
typedef struct
{
  SqFigureKind kind;
  double usual; /* what may stand there at first; invented */
  double least, most;
} SqFigure;

#define SQ_MOST_FIGURES 4

/* What figures @kind takes, in the order they are asked for: *@n of them, at most
 * SQ_MOST_FIGURES. Static. */
const SqFigure *sq_shape_figures (SqShapeKind kind, guint *n);

/* A new outline of @kind with @figures, one for each of sq_shape_figures. Corners have the ids
 * 1, 2, 3 … counter-clockwise from the left end of the front edge, which is marked and runs from
 * (0, 0) along x; its bow, if any, swells to y < 0. Parts that are 0 deep are left out.
 * NULL where a figure is outside its limits, not a whole number where it counts, or can't be with
 * the others (ears as wide as the seat); *@bad (may be NULL) is then its index, else −1. */
SqOutline *sq_shape_outline (SqShapeKind kind, const double *figures, guint n, gint *bad);
