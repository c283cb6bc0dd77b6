/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/units.h"
#include "drawing/piece-scene.h"
#include "drawing/theme.h"

/* More bands than this on one piece are seen as one colour. */
#define MOST_BANDS 1000

/* Places on a segment nearer than this to its ends are its ends. */
#define END_SHARE 1e-12

/* Half a plane: the points p with along · p <= most. */
typedef struct
{
  SqVector normal;
  double most;
} Half;

/* Where @s crosses the half's border: places 0 … 1 on it, in order; 0 … 2. */
static guint
border_places (const SqSegment *s, const Half *half, double t[2])
{
  double from = sq_dot (half->normal, s->from) - half->most;
  double to = sq_dot (half->normal, s->to) - half->most;
  guint n = 0;
  if (!sq_segment_is_arc (s))
    {
      if ((from < 0) != (to < 0))
        t[n++] = from / (from - to);
      return n;
    }
  SqPoint centre = sq_segment_centre (s);
  double radius = fabs (sq_segment_radius_mm (s)), sweep = sq_segment_sweep_rad (s);
  double reach = (half->most - sq_dot (half->normal, centre)) / radius;
  if (fabs (reach) >= 1)
    return 0;
  double start = atan2 (s->from.y - centre.y, s->from.x - centre.x);
  double middle = atan2 (half->normal.y, half->normal.x);
  for (int side = -1; side <= 1; side += 2)
    {
      double turn = middle + side * acos (reach) - start;
      turn -= 2 * M_PI * floor (turn / (2 * M_PI)); /* 0 … 2π */
      double place = sweep > 0 ? turn / sweep : (turn - 2 * M_PI) / sweep;
      if (place > END_SHARE && place < 1 - END_SHARE)
        t[n++] = place;
    }
  if (n == 2 && t[0] > t[1])
    {
      double swap = t[0];
      t[0] = t[1];
      t[1] = swap;
    }
  return n;
}

/* Appends a part of the ring; what came before is joined to it along the border. */
static void
append_part (GArray *out, SqPoint *end, const SqSegment *part)
{
  SqNode node = { part->from, part->bulge, 0 };
  if (out->len > 0 && sq_distance (*end, part->from) > SQ_COINCIDE_MM)
    {
      SqNode bridge = { *end, 0, 0 };
      g_array_append_val (out, bridge);
    }
  g_array_append_val (out, node);
  *end = part->to;
}

/* The part of the ring @nodes in @half, as one ring. Where the ring leaves the half more than once
 * its parts hang together by stretches of the border that are travelled both ways: they have no
 * area. */
static GArray *
ring_in_half (const SqNode *nodes, guint n, const Half *half)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (SqNode));
  SqPoint end = { 0, 0 };
  for (guint i = 0; i < n; i++)
    {
      SqSegment segment = { nodes[i].at, nodes[(i + 1) % n].at, nodes[i].bulge };
      double places[4] = { 0 };
      guint n_places = border_places (&segment, half, places + 1);
      places[n_places + 1] = 1;
      for (guint k = 0; k <= n_places; k++)
        {
          SqSegment part = n_places == 0 ? segment
                                         : sq_segment_part (&segment, places[k], places[k + 1]);
          SqPoint middle = sq_segment_point (&part, 0.5);
          if (sq_dot (half->normal, middle) <= half->most)
            append_part (out, &end, &part);
        }
    }
  if (out->len > 0 && sq_distance (end, g_array_index (out, SqNode, 0).at) > SQ_COINCIDE_MM)
    {
      SqNode bridge = { end, 0, 0 };
      g_array_append_val (out, bridge);
    }
  return out;
}

/* Adds the part of @ring where low <= across · p <= high. */
static void
add_band (SqSceneBuilder *builder, const SqPath *ring, SqVector across, double low, double high)
{
  Half below = { across, high }, above = { sq_scale (across, -1), -low };
  g_autoptr (GArray) part = ring_in_half (sq_path_nodes (ring), sq_path_n_nodes (ring), &below);
  g_autoptr (GArray) band = ring_in_half ((const SqNode *) part->data, part->len, &above);
  if (band->len >= 2)
    sq_scene_add_nodes (builder, (const SqNode *) band->data, band->len, TRUE);
}

/* How far the rings reach across: along @across from the origin. */
static void
reach_across (const GPtrArray *shape, SqVector across, double *low, double *high)
{
  *low = INFINITY, *high = -INFINITY;
  g_autoptr (SqPath) turned = sq_path_moved (g_ptr_array_index (shape, 0),
                                             -atan2 (across.y, across.x), sq_point (0, 0));
  SqBox box = sq_path_box (turned);
  *low = box.min.x;
  *high = box.max.x;
}

/* All bands of one stripe; at_mm: where it begins, measured along @across. */
static void
add_stripe (SqSceneBuilder *builder, const GPtrArray *shape, const SqStripe *stripe,
            double repeat_mm, SqVector across, double at_mm, double low, double high)
{
  double first = repeat_mm > 0 ? floor ((low - at_mm - stripe->width_mm) / repeat_mm) : 0;
  double last = repeat_mm > 0 ? ceil ((high - at_mm) / repeat_mm) : 0;
  for (double k = first; k <= last; k++)
    {
      double from = at_mm + k * repeat_mm, to = from + stripe->width_mm;
      if (to <= low || from >= high)
        continue;
      for (guint ring = 0; ring < shape->len; ring++)
        add_band (builder, g_ptr_array_index (shape, ring), across, from, to);
    }
}

void
sq_scene_add_stripes (SqSceneBuilder *builder, const GPtrArray *shape, const SqCloth *cloth,
                      double grain_rad, const SqPhase *phase, double alpha)
{
  g_return_if_fail (builder != NULL && shape != NULL && cloth != NULL && phase != NULL);
  SqVector across = sq_left (sq_turned (sq_point (1, 0), grain_rad));
  /* Where the cloth's near edge would lie, measured along across. */
  double edge = sq_dot (across, phase->anchor) - phase->across_mm;
  double low, high;
  if (shape->len == 0 || cloth->n_stripes == 0)
    return;
  reach_across (shape, across, &low, &high);
  if (cloth->repeat_across_mm > 0
      && (high - low) / cloth->repeat_across_mm * cloth->n_stripes > MOST_BANDS)
    {
      sq_scene_begin_colour (builder, sq_cloth_ground (cloth, cloth->colour).mean, alpha);
      for (guint ring = 0; ring < shape->len; ring++)
        sq_scene_add_path (builder, g_ptr_array_index (shape, ring));
      return;
    }
  for (guint i = 0; i < cloth->n_stripes; i++)
    {
      const SqStripe *stripe = &cloth->stripes[i];
      sq_scene_begin_colour (builder, stripe->colour, alpha);
      add_stripe (builder, shape, stripe, cloth->repeat_across_mm, across, edge + stripe->at_mm,
                  low, high);
    }
}

/* Share of the cloth that stripe @i covers. */
static double
stripe_share (const SqCloth *cloth, guint i)
{
  double all = cloth->repeat_across_mm > 0 ? cloth->repeat_across_mm : cloth->width_mm;
  return all > 0 ? CLAMP (cloth->stripes[i].width_mm / all, 0, 1) : 0;
}

SqGround
sq_cloth_ground (const SqCloth *cloth, guint32 plain)
{
  guint32 own = cloth != NULL && (cloth->given & SQ_GIVEN_CLOTH_COLOUR) ? cloth->colour : plain;
  SqGround ground = { TRUE, own, own, own };
  for (guint i = 0; cloth != NULL && i < cloth->n_stripes; i++)
    {
      guint32 colour = cloth->stripes[i].colour;
      ground.mean = sq_colour_between (ground.mean, colour, stripe_share (cloth, i));
      if (sq_luminance (colour) > sq_luminance (ground.lightest))
        ground.lightest = colour;
      if (sq_luminance (colour) < sq_luminance (ground.darkest))
        ground.darkest = colour;
    }
  return ground;
}
