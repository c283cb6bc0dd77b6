/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/shape.h"

#include "base/units.h"

#define MOST_SIDES 36
#define LENGTH(kind, usual)                                                                        \
  {                                                                                                \
    kind, usual, 1, SQ_SEAT_MOST_MM                                                                \
  }
#define SIDE_DEPTH(usual)                                                                          \
  {                                                                                                \
    SQ_FIGURE_SIDE_DEPTH, usual, 0, SQ_SEAT_MOST_MM                                                \
  }

/* Where an edge starts, and its bow. */
typedef struct
{
  SqPoint at;
  double bow_mm;
} Start;

/* Fills @starts from figures within their limits and returns their number, at most MOST_SIDES; 0
 * and *@bad where they can't be together. */
typedef guint (*ShapeMaker) (const double *figures, Start *starts, gint *bad);

typedef struct
{
  ShapeMaker make;
  SqFigure figures[SQ_MOST_FIGURES];
  guint n;
} Shape;

static guint
make_rectangle (const double *figures, Start *starts, gint *bad)
{
  double width = figures[0], depth = figures[1];

  (void) bad;
  starts[1].at = sq_point (width, 0);
  starts[2].at = sq_point (width, depth);
  starts[3].at = sq_point (0, depth);
  return 4;
}

static guint
make_trapezoid (const double *figures, Start *starts, gint *bad)
{
  double width = figures[0], depth = figures[1], back = figures[2];

  (void) bad;
  starts[1].at = sq_point (width, 0);
  starts[2].at = sq_point ((width + back) / 2, depth);
  starts[3].at = sq_point ((width - back) / 2, depth);
  return 4;
}

static guint
make_l (const double *figures, Start *starts, gint *bad)
{
  double width = figures[0], depth = figures[1], ear = figures[2], ear_depth = figures[3];

  if (ear >= width || ear_depth >= depth)
    {
      *bad = ear >= width ? 2 : 3;
      return 0;
    }
  starts[1].at = sq_point (width, 0);
  starts[2].at = sq_point (width, ear_depth);
  starts[3].at = sq_point (width - ear, ear_depth);
  starts[4].at = sq_point (width - ear, depth);
  starts[5].at = sq_point (0, depth);
  return 6;
}

static guint
make_t (const double *figures, Start *starts, gint *bad)
{
  double width = figures[0], depth = figures[1], ear = figures[2], ear_depth = figures[3];

  if (2 * ear >= width || ear_depth >= depth)
    {
      *bad = 2 * ear >= width ? 2 : 3;
      return 0;
    }
  starts[1].at = sq_point (width, 0);
  starts[2].at = sq_point (width, ear_depth);
  starts[3].at = sq_point (width - ear, ear_depth);
  starts[4].at = sq_point (width - ear, depth);
  starts[5].at = sq_point (ear, depth);
  starts[6].at = sq_point (ear, ear_depth);
  starts[7].at = sq_point (0, ear_depth);
  return 8;
}

/* Circumscribed radius and apothem are side / (2 sin (π / n)) and side / (2 tan (π / n)). */
static guint
make_polygon (const double *figures, Start *starts, gint *bad)
{
  guint n = (guint) figures[0];
  double side = figures[1], half = M_PI / n, radius = side / (2 * sin (half));
  SqPoint centre = { side / 2, side / (2 * tan (half)) };

  if (2 * radius > SQ_SEAT_MOST_MM)
    {
      *bad = 1;
      return 0;
    }
  starts[1].at = sq_point (side, 0);
  for (guint i = 2; i < n; i++)
    starts[i].at = sq_add (centre, sq_turned (sq_point (0, -radius), half * (2 * i - 1)));
  return n;
}

static guint
make_circle (const double *figures, Start *starts, gint *bad)
{
  (void) bad;
  starts[1].at = sq_point (figures[0], 0);
  starts[0].bow_mm = starts[1].bow_mm = figures[0] / 2;
  return 2;
}

static guint
make_half_round (const double *figures, Start *starts, gint *bad)
{
  starts[0].bow_mm = figures[0] / 2;
  return make_rectangle (figures, starts, bad);
}

static guint
make_bay (const double *figures, Start *starts, gint *bad)
{
  double width = figures[0], depth = figures[1], side = figures[2], back = figures[3];

  if (side >= depth)
    {
      *bad = 2;
      return 0;
    }
  starts[1].at = sq_point (width, 0);
  starts[2].at = sq_point (width, side);
  starts[3].at = sq_point ((width + back) / 2, depth);
  starts[4].at = sq_point ((width - back) / 2, depth);
  starts[5].at = sq_point (0, side);
  return 6;
}

static const Shape shapes[] = {
  [SQ_OUTLINE_RECTANGLE] = { make_rectangle,
                             { LENGTH (SQ_FIGURE_WIDTH, 450), LENGTH (SQ_FIGURE_DEPTH, 450) },
                             2 },
  [SQ_OUTLINE_TRAPEZOID] = { make_trapezoid,
                             { LENGTH (SQ_FIGURE_WIDTH, 500), LENGTH (SQ_FIGURE_DEPTH, 450),
                               LENGTH (SQ_FIGURE_BACK_WIDTH, 400) },
                             3 },
  [SQ_OUTLINE_L] = { make_l,
                     { LENGTH (SQ_FIGURE_WIDTH, 600), LENGTH (SQ_FIGURE_DEPTH, 600),
                       LENGTH (SQ_FIGURE_EAR_WIDTH, 100), LENGTH (SQ_FIGURE_EAR_DEPTH, 150) },
                     4 },
  [SQ_OUTLINE_T] = { make_t,
                     { LENGTH (SQ_FIGURE_WIDTH, 700), LENGTH (SQ_FIGURE_DEPTH, 600),
                       LENGTH (SQ_FIGURE_EAR_WIDTH, 100), LENGTH (SQ_FIGURE_EAR_DEPTH, 150) },
                     4 },
  [SQ_OUTLINE_POLYGON] = { make_polygon,
                           { { SQ_FIGURE_SIDE_COUNT, 6, 3, MOST_SIDES },
                             LENGTH (SQ_FIGURE_SIDE, 250) },
                           2 },
  [SQ_OUTLINE_CIRCLE] = { make_circle, { LENGTH (SQ_FIGURE_DIAMETER, 400) }, 1 },
  [SQ_OUTLINE_HALF_ROUND] = { make_half_round,
                              { LENGTH (SQ_FIGURE_WIDTH, 900), SIDE_DEPTH (0) },
                              2 },
  [SQ_OUTLINE_BAY] = { make_bay,
                       { LENGTH (SQ_FIGURE_WIDTH, 1200), LENGTH (SQ_FIGURE_DEPTH, 450),
                         SIDE_DEPTH (150), LENGTH (SQ_FIGURE_BACK_WIDTH, 800) },
                       4 },
};

const SqFigure *
sq_shape_figures (SqShapeKind kind, guint *n)
{
  g_return_val_if_fail ((guint) kind < G_N_ELEMENTS (shapes), NULL);
  *n = shapes[kind].n;
  return shapes[kind].figures;
}

/* The first figure outside its own limits, or −1. */
static gint
first_bad (const Shape *shape, const double *figures)
{
  for (guint i = 0; i < shape->n; i++)
    {
      const SqFigure *limits = &shape->figures[i];
      gboolean within = figures[i] >= limits->least && figures[i] <= limits->most;

      if (!within || (limits->kind == SQ_FIGURE_SIDE_COUNT && floor (figures[i]) != figures[i]))
        return (gint) i;
    }
  return -1;
}

/* An outline of @starts; edges of no length are left out. */
static SqOutline *
outline_of (const Start *starts, guint n)
{
  SqCorner corners[MOST_SIDES] = { { .front = TRUE } };
  guint used = 0;

  for (guint i = 0; i < n; i++)
    if (sq_distance (starts[i].at, starts[(i + 1) % n].at) > SQ_COINCIDE_MM)
      {
        SqCorner *corner = &corners[used++];

        corner->id = used;
        corner->at = starts[i].at;
        corner->bow_mm = starts[i].bow_mm;
        corner->shape = starts[i].bow_mm > 0 ? SQ_SHAPE_BOW : SQ_SHAPE_STRAIGHT;
      }
  return sq_outline_new (corners, &used, 1);
}

SqOutline *
sq_shape_outline (SqShapeKind kind, const double *figures, guint n, gint *bad)
{
  Start starts[MOST_SIDES] = { { { 0, 0 }, 0 } };
  gint ours = -1;
  guint n_starts = 0;

  g_return_val_if_fail ((guint) kind < G_N_ELEMENTS (shapes), NULL);
  g_return_val_if_fail (n == shapes[kind].n, NULL);
  ours = first_bad (&shapes[kind], figures);
  if (ours < 0)
    n_starts = shapes[kind].make (figures, starts, &ours);
  if (bad != NULL)
    *bad = ours;
  return ours < 0 ? outline_of (starts, n_starts) : NULL;
}
