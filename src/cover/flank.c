/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/flank.h"

#include "base/units.h"
#include "geometry/fit.h"

/* How near the arcs on wrap and side lie to their curves (mm). Both are fitted apart and sewn
 * together, so that it is a small part of what a seam may gape. */
#define NEAR_MM 0.002
/* Sine of the least angle with the front line that y still grows at. */
#define LEAST_SINE 1e-6
/* The same where a rounded front corner begins along the front line. */
#define ALONG_FRONT 1e-7

/* What one segment of the plan becomes over the nose. The point at distance y from the front line
 * lies on the round at angle w from its foremost line: y = r (1 − cos w). So on the wrap it is
 * (x, r − r (π/2 − w)), on the side (way along the plan, H − r + r sin w). */
typedef struct
{
  SqSegment plan;
  double length_mm, station_mm; /* of plan: all of it, and along the flank to its start */
  double radius_mm, height_mm;
  gboolean by_angle; /* the curves' parameter goes with w, else with the way along the plan */
  double from, to;   /* w, or parts of the plan segment's length */
} Bend;

typedef struct
{
  double share, angle;     /* place on the plan segment, 0 … 1; w */
  double d_share, d_angle; /* by the parameter */
  SqVector direction;      /* of the plan there */
} Place;

/* Place, 0 … 1, at which the plan segment @s is @y from the front line. */
static double
share_at_y (const SqSegment *s, double y)
{
  if (!sq_segment_is_arc (s))
    return (y - s->from.y) / (s->to.y - s->from.y);
  /* On a circle y = yc − R cos a, with a the direction of travel; by the squares of the sine and
   * cosine of a / 2, so that nothing is lost where it runs along the front line. */
  SqVector start = sq_segment_direction (s, 0);
  double a = atan2 (fmax (start.y, 0), start.x);
  double part = (y - s->from.y) / (2 * sq_segment_radius_mm (s));
  double sine = fmax (pow (sin (a / 2), 2) + part, 0),
         cosine = fmax (pow (cos (a / 2), 2) - part, 0);
  double turn = 2 * atan2 (sqrt (sine), sqrt (cosine)) - a;

  return CLAMP (turn / sq_segment_sweep_rad (s), 0, 1);
}

static double
angle_at_y (double y, double radius)
{
  return 2 * asin (sqrt (CLAMP (y / (2 * radius), 0, 0.5)));
}

static Place
place_at (const Bend *b, double t)
{
  Place p = { .share = b->from + (b->to - b->from) * t };

  if (!b->by_angle)
    {
      p.d_share = b->to - b->from;
      p.direction = sq_segment_direction (&b->plan, p.share);
      p.angle = angle_at_y (sq_segment_point (&b->plan, p.share).y, b->radius_mm);
      p.d_angle = p.d_share * b->length_mm * p.direction.y / (b->radius_mm * sin (p.angle));
      return p;
    }
  p.angle = p.share;
  p.d_angle = b->to - b->from;
  p.share = share_at_y (&b->plan, 2 * b->radius_mm * pow (sin (p.angle / 2), 2));
  p.direction = sq_segment_direction (&b->plan, p.share);
  /* Where both the round and a rounded corner begin along the front line, the one's way is the
   * other's by the root of their radii. */
  double slope = p.direction.y > ALONG_FRONT
                     ? b->radius_mm * sin (p.angle) / p.direction.y
                     : sqrt (b->radius_mm * fabs (sq_segment_radius_mm (&b->plan)));
  p.d_share = p.d_angle * slope / b->length_mm;
  return p;
}

static void
wrap_at (double t, SqPoint *at, SqVector *derivative, gconstpointer data)
{
  const Bend *b = data;
  Place p = place_at (b, t);

  *at = sq_point (sq_segment_point (&b->plan, p.share).x,
                  b->radius_mm - b->radius_mm * (G_PI / 2 - p.angle));
  *derivative = sq_point (p.direction.x * p.d_share * b->length_mm, b->radius_mm * p.d_angle);
}

static void
side_at (double t, SqPoint *at, SqVector *derivative, gconstpointer data)
{
  const Bend *b = data;
  Place p = place_at (b, t);

  *at = sq_point (b->station_mm + p.share * b->length_mm,
                  b->height_mm - b->radius_mm + b->radius_mm * sin (p.angle));
  *derivative = sq_point (p.d_share * b->length_mm, b->radius_mm * cos (p.angle) * p.d_angle);
}

/* The flank while it is drawn. */
typedef struct
{
  GArray *wrap, *cells; /* of SqNode */
  double radius_mm, height_mm;
} Drawing;

static gboolean
fit (const Drawing *d, const Bend *b, guint32 tag)
{
  return sq_fit_curve (wrap_at, b, NEAR_MM, tag, d->wrap)
         && sq_fit_curve (side_at, b, NEAR_MM, tag, d->cells);
}

/* The first @share of @plan, over the nose. Along an arc from the front line on, the angle is the
 * parameter at which both curves are smooth in the beginning, the way along it that at the end. */
static gboolean
draw_nose (const Drawing *d, const SqSegment *plan, double station, double share, guint32 tag)
{
  Bend b = { .plan = *plan,
             .length_mm = sq_segment_length_mm (plan),
             .station_mm = station,
             .radius_mm = d->radius_mm,
             .height_mm = d->height_mm };
  double from = 0;

  if (!sq_segment_is_arc (plan) || plan->from.y <= SQ_COINCIDE_MM)
    {
      from = sq_segment_is_arc (plan) ? share / 2 : share;
      b.by_angle = TRUE;
      b.from = angle_at_y (plan->from.y, d->radius_mm);
      b.to = angle_at_y (sq_segment_point (plan, from).y, d->radius_mm);
      if (!fit (d, &b, tag))
        return FALSE;
    }
  if (from == share)
    return TRUE;
  b.by_angle = FALSE;
  b.from = from;
  b.to = share;
  return fit (d, &b, tag);
}

static void
draw_top (const Drawing *d, const SqSegment *plan, double station, double from, guint32 tag)
{
  SqSegment rest = sq_segment_part (plan, from, 1);
  SqNode on_wrap = { rest.from, rest.bulge, tag };
  SqNode on_side = { { station + from * sq_segment_length_mm (plan), d->height_mm }, 0, tag };

  g_array_append_val (d->wrap, on_wrap);
  g_array_append_val (d->cells, on_side);
}

/* @cells without nodes in the middle of a run's straight upper edge. */
static SqPath *
without_cells (const GArray *cells, double height)
{
  SqPathBuilder builder;

  sq_path_builder_init (&builder);
  for (guint i = 0; i < cells->len; i++)
    {
      const SqNode *n = &g_array_index (cells, SqNode, i);
      if (i > 0 && i + 1 < cells->len && n[-1].tag == n->tag && n[-1].at.y == height
          && n->at.y == height && n[-1].bulge == 0 && n->bulge == 0)
        continue;
      sq_path_builder_add (&builder, n->at, n->bulge, n->tag);
    }
  return sq_path_builder_end (&builder, FALSE);
}

static void
end_with (GArray *nodes, SqPoint at)
{
  SqNode last = { .at = at };
  g_array_append_val (nodes, last);
}

SqFlank *
sq_flank_new (const SqPath *plan, double radius, double height)
{
  g_return_val_if_fail (plan != NULL && radius >= 0, NULL);

  g_autoptr (GArray) wrap = g_array_new (FALSE, FALSE, sizeof (SqNode));
  g_autoptr (GArray) cells = g_array_new (FALSE, FALSE, sizeof (SqNode));
  Drawing d = { wrap, cells, radius, height };
  guint n = sq_path_n_segments (plan), wrap_top = 0;
  g_autofree guint *cell_nodes = g_new (guint, n + 1);

  for (guint i = 0; i < n; i++)
    {
      SqSegment s = sq_path_segment (plan, i);
      double station = sq_path_station_mm (plan, i), share = 0;
      guint32 tag = sq_path_nodes (plan)[i].tag;
      cell_nodes[i] = cells->len;
      if (s.from.y < radius - SQ_COINCIDE_MM)
        {
          share = s.to.y <= radius + SQ_COINCIDE_MM ? 1 : share_at_y (&s, radius);
          if (!draw_nose (&d, &s, station, share, tag))
            return NULL;
          wrap_top = wrap->len;
        }
      if (share < 1)
        draw_top (&d, &s, station, share, tag);
    }
  SqPoint end = sq_path_nodes (plan)[n].at;
  cell_nodes[n] = cells->len;
  end_with (wrap, end);
  end_with (cells, sq_point (sq_path_length_mm (plan), height));

  SqFlank *flank = g_new0 (SqFlank, 1);
  flank->wrap = sq_path_new ((const SqNode *) wrap->data, wrap->len, FALSE);
  flank->wrap_top = wrap_top;
  flank->side = without_cells (cells, height);
  flank->cells = sq_path_new ((const SqNode *) cells->data, cells->len, FALSE);
  flank->cell_nodes = g_steal_pointer (&cell_nodes);
  return flank;
}

void
sq_flank_free (SqFlank *flank)
{
  if (flank == NULL)
    return;
  sq_path_unref (flank->wrap);
  sq_path_unref (flank->side);
  sq_path_unref (flank->cells);
  g_free (flank->cell_nodes);
  g_free (flank);
}

gboolean
sq_flank_can_follow (const SqSegment *s)
{
  double from = atan2 (sq_segment_direction (s, 0).y, sq_segment_direction (s, 0).x);
  double to = from + sq_segment_sweep_rad (s);

  return s->to.y - s->from.y > LEAST_SINE * sq_segment_length_mm (s)
         && fmin (from, to) > -LEAST_SINE && fmax (from, to) < G_PI + LEAST_SINE;
}
