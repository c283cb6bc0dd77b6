/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/random-job.h"

#include "base/units.h"
#include "exchange/defaults-file.h"

#define MOST_CORNERS 14
#define MOST_HOLE_CORNERS 5

/* An outline being thought up: corners of the outer ring about (0, 0), then of the holes. */
typedef struct
{
  GRand *chance;
  SqCorner corners[MOST_CORNERS + MOST_HOLE_CORNERS];
  guint sizes[2], n_rings;
  double reach_mm, safe_mm; /* no corner is farther; nothing of the ring is nearer (0, 0) */
  gboolean is_convex;
} Seat;

static gboolean
happens (GRand *chance, double probability)
{
  return g_rand_double (chance) < probability;
}

static double
between (GRand *chance, double low, double high)
{
  return g_rand_double_range (chance, low, high);
}

/* Both small and large ones are as likely. */
static double
between_by_size (GRand *chance, double low, double high)
{
  return exp (between (chance, log (low), log (high)));
}

static guint
one_of (GRand *chance, guint n)
{
  return (guint) g_rand_int_range (chance, 0, (gint32) n);
}

/* ---- outlines ------------------------------------------------------------------------------ */

static void
set_corners (Seat *seat, const SqPoint *points, guint n)
{
  SqPoint middle = { 0, 0 };

  for (guint i = 0; i < n; i++)
    middle = sq_moved (middle, points[i], 1.0 / n);
  seat->sizes[0] = n;
  for (guint i = 0; i < n; i++)
    seat->corners[i] = (SqCorner){ .id = i + 1, .at = sq_sub (points[i], middle) };
}

/* Corners round an ellipse are convex; with depths of their own they go in and out. */
static void
draw_round (Seat *seat, gboolean is_convex)
{
  GRand *chance = seat->chance;
  guint n = 3 + one_of (chance, MOST_CORNERS - 2);
  double start = between (chance, 0, 2 * G_PI), step = 2 * G_PI / n;
  double flat = between (chance, 0.3, 1);

  seat->is_convex = is_convex;
  seat->sizes[0] = n;
  for (guint i = 0; i < n; i++)
    {
      double angle = start + (i + between (chance, -0.3, 0.3)) * step;
      double radius = seat->reach_mm * (is_convex ? 1 : between (chance, 0.4, 1));
      seat->corners[i] = (SqCorner){ .id = i + 1,
                                     .at = { radius * cos (angle), radius * flat * sin (angle) } };
    }
}

/* A triangle or quadrangle with a corner of 15° to 170°. */
static void
draw_extreme (Seat *seat)
{
  GRand *chance = seat->chance;
  double angle = between (chance, 15, 170) * SQ_RAD_PER_DEG;
  double a = seat->reach_mm * between (chance, 0.6, 1.4),
         b = seat->reach_mm * between (chance, 0.6, 1.4);
  SqPoint end = sq_scale (sq_point (cos (angle), sin (angle)), b);
  SqPoint points[] = { { 0, 0 }, { a, 0 }, { 0, 0 }, { 0, 0 } };
  gboolean is_triangle = happens (chance, 0.5);

  points[2] = is_triangle ? end : sq_moved (end, points[1], between (chance, 0.8, 1.2));
  points[3] = end;
  seat->is_convex = TRUE;
  set_corners (seat, points, is_triangle ? 3 : 4);
}

/* Shapes as they are measured, in sixteenths of an inch: rectangle, trapezoid, bay, L, T, U. */
static void
draw_neat (Seat *seat, gboolean is_convex)
{
  GRand *chance = seat->chance;
  const double unit = SQ_MM_PER_INCH / 16;
  double w = round (seat->reach_mm * 1.6 / unit) * unit,
         d = round (w * between (chance, 0.35, 1.1) / unit) * unit;
  double in = round (w * between (chance, 0.15, 0.35) / unit) * unit,
         up = round (d * between (chance, 0.3, 0.6) / unit) * unit;
  const SqPoint shapes[][8] = {
    { { 0, 0 }, { w, 0 }, { w, d }, { 0, d } },
    { { 0, 0 }, { w, 0 }, { w - in, d }, { in, d } },
    { { 0, 0 }, { w, 0 }, { w, up }, { w / 2, d }, { 0, up } },
    { { 0, 0 }, { w, 0 }, { w, up }, { in, up }, { in, d }, { 0, d } },
    { { in, 0 },
      { w - in, 0 },
      { w - in, up },
      { w, up },
      { w, d },
      { 0, d },
      { 0, up },
      { in, up } },
    { { 0, 0 },
      { w, 0 },
      { w, d },
      { w - in, d },
      { w - in, up },
      { in, up },
      { in, d },
      { 0, d } },
  };
  static const guint sizes[] = { 4, 4, 5, 6, 8, 8 };
  guint shape = one_of (chance, is_convex ? 3 : G_N_ELEMENTS (sizes));

  seat->is_convex = shape < 3;
  set_corners (seat, shapes[shape], sizes[shape]);
}

/* Sides that lead away from a straight front, and a back between them; most can be wrapped. */
static void
draw_for_wrap (Seat *seat)
{
  GRand *chance = seat->chance;
  double w = seat->reach_mm * 1.6, d = w * between (chance, 0.3, 1);
  guint n_right = one_of (chance, 3), n_left = one_of (chance, 3), n_back = one_of (chance, 2);
  SqPoint points[MOST_CORNERS] = { { 0, 0 }, { w, 0 } };
  guint n = 2;

  for (guint i = 0; i < n_right; i++, n++)
    points[n] = sq_point (w * between (chance, 0.85, 1.15), d * (i + 1) / (n_right + 1));
  points[n++] = sq_point (w * between (chance, 0.8, 1.2), d * between (chance, 0.9, 1.1));
  for (guint i = 0; i < n_back; i++, n++)
    points[n] = sq_point (w * between (chance, 0.4, 0.6), d * between (chance, 1, 1.2));
  points[n++] = sq_point (w * between (chance, -0.2, 0.2), d * between (chance, 0.9, 1.1));
  for (guint i = n_left; i > 0; i--, n++)
    points[n] = sq_point (w * between (chance, -0.15, 0.15), d * i / (n_left + 1));
  if (happens (chance, 0.3))
    for (guint i = 0; i < n; i++) /* square to the front */
      points[i].x = points[i].x > w * 0.7 ? w : points[i].x < w * 0.3 ? 0 : points[i].x;
  set_corners (seat, points, n);
}

/* Nothing of the ring's straight edges is nearer to (0, 0). */
static double
clear_of_middle_mm (const Seat *seat)
{
  double nearest = INFINITY, t;
  guint n = seat->sizes[0];

  for (guint i = 0; i < n; i++)
    {
      SqSegment s = { seat->corners[i].at, seat->corners[(i + 1) % n].at, 0 };
      nearest = fmin (nearest, sq_segment_nearest_mm (&s, sq_point (0, 0), &t));
    }
  return nearest;
}

static void
bend_edges (Seat *seat, double share)
{
  GRand *chance = seat->chance;
  guint n = seat->sizes[0];

  for (guint i = 0; i < n; i++)
    {
      SqCorner *c = &seat->corners[i];
      SqVector chord = sq_sub (seat->corners[(i + 1) % n].at, c->at);
      double rise = sq_norm (chord) * between (chance, -0.25, 0.35);
      if (!happens (chance, share))
        continue;
      if (happens (chance, 0.6))
        {
          c->shape = SQ_SHAPE_BOW;
          c->bow_mm = happens (chance, 0.05) ? sq_norm (chord) * 0.7 : rise;
          continue;
        }
      c->shape = SQ_SHAPE_CURVE;
      for (guint k = 0; k < 2; k++)
        c->control[k] = sq_moved (
            sq_moved (c->at, chord, between (chance, 0.1, 0.45) + (k == 0 ? 0 : 0.45)),
            sq_right (chord), between (chance, -0.2, 0.3));
    }
}

static void
add_hole (Seat *seat, gboolean bent)
{
  GRand *chance = seat->chance;
  guint n = 3 + one_of (chance, MOST_HOLE_CORNERS - 2), first = seat->sizes[0];
  double radius = clear_of_middle_mm (seat) * between (chance, 0.2, 0.7),
         start = between (chance, 0, 2 * G_PI);

  seat->n_rings = 2;
  seat->sizes[1] = n;
  for (guint i = 0; i < n; i++)
    {
      double angle = start - (i + between (chance, -0.2, 0.2)) * 2 * G_PI / n;
      SqCorner *c = &seat->corners[first + i];
      *c = (SqCorner){ .id = first + i + 1, .at = { radius * cos (angle), radius * sin (angle) } };
      if (bent && happens (chance, 0.3))
        {
          c->shape = SQ_SHAPE_BOW;
          c->bow_mm = radius * between (chance, -0.2, 0.2);
        }
    }
}

static void
round_corners (Seat *seat, double share)
{
  guint n = seat->sizes[0] + (seat->n_rings > 1 ? seat->sizes[1] : 0);

  for (guint i = 0; i < n; i++)
    if (happens (seat->chance, share))
      {
        seat->corners[i].radius_mm = between_by_size (seat->chance, 3,
                                                      i < seat->sizes[0] ? seat->reach_mm / 4 : 20);
        seat->corners[i].given |= SQ_GIVEN_RADIUS;
      }
}

static void
set_edges (Seat *seat)
{
  GRand *chance = seat->chance;
  guint n = seat->sizes[0] + (seat->n_rings > 1 ? seat->sizes[1] : 0);

  for (guint i = 0; i < n; i++)
    {
      SqCorner *c = &seat->corners[i];
      if (happens (chance, 0.5))
        {
          c->kind = (SqEdgeKind) one_of (chance, SQ_N_EDGE_KINDS);
          c->given |= SQ_GIVEN_KIND;
        }
      if (happens (chance, 0.2))
        {
          c->clearance_mm = between (chance, -6, 12);
          c->given |= SQ_GIVEN_CLEARANCE;
        }
      if (happens (chance, 0.2))
        {
          c->seen = happens (chance, 0.5);
          c->given |= SQ_GIVEN_SEEN;
        }
    }
}

/* Sides folded here and boxed there; curves are boxed, save now and then. */
static void
mix_edges (Seat *seat)
{
  for (guint i = 0; i < seat->sizes[0]; i++)
    {
      SqCorner *c = &seat->corners[i];
      gboolean is_curved = c->shape != SQ_SHAPE_STRAIGHT;
      if (happens (seat->chance, is_curved ? 0.95 : 0.6))
        {
          c->build = happens (seat->chance, is_curved ? 0.99 : 0.4) ? SQ_EDGE_BOXED
                                                                    : SQ_EDGE_FOLDED;
          c->given |= SQ_GIVEN_EDGE_BUILD;
        }
    }
}

static SqOutline *
outline_for_wrap (GRand *chance)
{
  Seat seat = { .chance = chance, .n_rings = 1, .reach_mm = between_by_size (chance, 120, 1000) };
  gboolean bent = happens (chance, 0.5);

  draw_for_wrap (&seat);
  bend_edges (&seat, bent ? 0.4 : 0);
  if (happens (chance, 0.9))
    seat.corners[0].shape = SQ_SHAPE_STRAIGHT;
  round_corners (&seat, happens (chance, 0.4) ? 0.4 : 0);
  if (happens (chance, 0.5))
    set_edges (&seat);
  if (happens (chance, 0.03))
    add_hole (&seat, bent);
  seat.corners[0].front = TRUE;

  g_autoptr (SqOutline) outline = sq_outline_new (seat.corners, seat.sizes, seat.n_rings);
  g_autoptr (SqOutline) right = sq_outline_turned_right (outline);
  return sq_outline_moved (right, happens (chance, 0.5) ? between (chance, 0, 2 * G_PI) : 0,
                           sq_point (between (chance, -500, 500), between (chance, -500, 500)));
}

static SqOutline *
random_outline (GRand *chance, gboolean for_skirts)
{
  Seat seat = { .chance = chance, .n_rings = 1 };
  double bent = happens (chance, 0.5) ? 0.4 : 0, rounded = happens (chance, 0.4) ? 0.4 : 0;

  gboolean mixed = happens (chance, for_skirts ? 0.3 : 0.1);
  seat.reach_mm = between_by_size (chance, 120, 1500);
  switch (one_of (chance, 4))
    {
    case 0:
      draw_neat (&seat, for_skirts && happens (chance, 0.9));
      break;
    case 1:
      draw_extreme (&seat);
      break;
    default:
      draw_round (&seat, for_skirts || happens (chance, 0.4));
    }
  if (for_skirts && !mixed && happens (chance, 0.95))
    bent = rounded = 0;
  bend_edges (&seat, bent);
  if (happens (chance, for_skirts ? 0.03 : 0.15))
    add_hole (&seat, bent > 0);
  round_corners (&seat, rounded);
  if (happens (chance, 0.5))
    set_edges (&seat);
  if (mixed)
    mix_edges (&seat);
  gboolean turned = happens (chance, 0.4);
  if (turned || happens (chance, 0.2))
    seat.corners[one_of (chance, seat.sizes[0])].front = TRUE;

  g_autoptr (SqOutline) outline = sq_outline_new (seat.corners, seat.sizes, seat.n_rings);
  /* Rings that cross themselves may run the wrong way. */
  g_autoptr (SqOutline) right = sq_outline_turned_right (outline);
  if (!turned)
    return g_steal_pointer (&right);
  double turn = between (chance, 0, 2 * G_PI), x = between (chance, -2000, 2000),
         y = between (chance, -2000, 2000);
  return sq_outline_moved (right, turn, sq_point (x, y));
}

/* ---- choices ------------------------------------------------------------------------------- */

/* Sets a figure now and then, and says that it was given. */
static void
maybe (GRand *chance, SqCushion *cushion, double probability, SqCushionGiven key, double *value,
       double low, double high)
{
  if (!happens (chance, probability))
    return;
  *value = between (chance, low, high);
  cushion->given |= key;
}

static void
choose_allowances (GRand *chance, SqCushion *c)
{
  double often = happens (chance, 0.3) ? 0.6 : 0;

  maybe (chance, c, often, SQ_GIVEN_ALLOWANCE_CORNER, &c->allowance.corner_mm, 2, 30);
  maybe (chance, c, often, SQ_GIVEN_ALLOWANCE_PERIMETER, &c->allowance.perimeter_mm, 2, 30);
  maybe (chance, c, often, SQ_GIVEN_ALLOWANCE_ZIP, &c->allowance.zip_mm, 2, 30);
  maybe (chance, c, often, SQ_GIVEN_ALLOWANCE_JOIN, &c->allowance.join_mm, 2, 30);
  if (often > 0 && happens (chance, 0.1))
    {
      c->allowance.perimeter_mm = 0;
      c->given |= SQ_GIVEN_ALLOWANCE_PERIMETER;
    }
  maybe (chance, c, 0.3, SQ_GIVEN_WRAP_DEPTH, &c->wrap.depth_mm, 0, 45);
  if (happens (chance, 0.3))
    {
      c->wrap.style = (SqWrapStyle) one_of (chance, 2);
      c->given |= SQ_GIVEN_WRAP_STYLE;
    }
}

static void
choose_zip (GRand *chance, SqCushion *c)
{
  guint n;
  gboolean is_drawn = sq_outline_n_rings (c->outline) > 0;
  const SqCorner *corners = is_drawn ? sq_outline_ring (c->outline, 0, &n) : NULL;

  if (happens (chance, 0.3))
    {
      c->zip.place = (SqZipPlace) one_of (chance, SQ_N_ZIP_PLACES);
      c->given |= SQ_GIVEN_ZIP_PLACE;
    }
  if (happens (chance, 0.3))
    {
      c->zip.method = (SqZipMethod) one_of (chance, 2);
      c->given |= SQ_GIVEN_ZIP_METHOD;
    }
  if (happens (chance, 0.15))
    {
      c->zip.edge = is_drawn && happens (chance, 0.9) ? corners[one_of (chance, n)].id : 99;
      c->given |= SQ_GIVEN_ZIP_EDGE;
    }
  maybe (chance, c, 0.1, SQ_GIVEN_ZIP_FROM, &c->zip.from_mm, -150, 150);
  maybe (chance, c, 0.1, SQ_GIVEN_ZIP_TO, &c->zip.to_mm, 150, 900);
  maybe (chance, c, 0.1, SQ_GIVEN_ZIP_AT, &c->zip.at_mm, 30, 300);
  maybe (chance, c, 0.1, SQ_GIVEN_ZIP_EXTENSION, &c->zip.extension_mm, 0, 60);
  maybe (chance, c, 0.2, SQ_GIVEN_ZIP_TUCK, &c->zip.tuck_mm, 0, 45);
  if (happens (chance, 0.05))
    {
      c->zip.tuck_mm = 0;
      c->given |= SQ_GIVEN_ZIP_TUCK;
    }
}

static void
choose_foam (GRand *chance, SqCushion *c)
{
  if (happens (chance, 0.5))
    {
      c->foam.kind = (SqFoamKind) one_of (chance, SQ_N_FOAM_KINDS);
      c->given |= SQ_GIVEN_FOAM_KIND;
    }
  maybe (chance, c, 0.1, SQ_GIVEN_FOAM_OVERSIZE, &c->foam.oversize_mm, -10, 30);
  maybe (chance, c, 0.2, SQ_GIVEN_FOAM_BATTING, &c->foam.batting_mm, 0, 30);
}

static void
choose_cloth (GRand *chance, SqCushion *c, guint n_cloths)
{
  SqId *ids[] = { &c->cloth.face, &c->cloth.underside, &c->cloth.sides };

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    if (happens (chance, 0.3))
      {
        *ids[i] = 1 + one_of (chance, n_cloths + 1); /* one that is missing, too */
        c->given |= SQ_GIVEN_CLOTH_FACE << i;
      }
  if (happens (chance, 0.5))
    {
      c->seams_across = SQ_ACROSS_TWO_JOINS;
      c->given |= SQ_GIVEN_SEAMS_ACROSS;
    }
  if (happens (chance, 0.3))
    {
      c->stripes.run = (SqStripesRun) one_of (chance, 2);
      c->given |= SQ_GIVEN_STRIPES_RUN;
    }
  if (happens (chance, 0.3))
    {
      c->stripes.centre_on = (SqCentreOn) one_of (chance, 4);
      c->given |= SQ_GIVEN_CENTRE_ON;
    }
  maybe (chance, c, 0.1, SQ_GIVEN_STRIPES_SHIFT, &c->stripes.shift_mm, -40, 40);
}

static void
choose_profile (GRand *chance, SqCushion *c)
{
  c->profile.kind = (SqProfile) one_of (chance, 3);
  c->given_way |= happens (chance, 0.8) ? SQ_GIVEN_PROFILE : 0;
  if (!happens (chance, 0.5))
    return;
  c->profile.radius_mm = happens (chance, 0.1) ? between (chance, -10, 200)
                                               : between (chance, 0, c->thickness_mm / 2);
  c->given_way |= SQ_GIVEN_PROFILE_RADIUS;
}

/* Sets a figure of a way of building now and then. */
static void
maybe_way (GRand *chance, SqCushion *cushion, double probability, SqWayGiven key, double *value,
           double low, double high)
{
  if (!happens (chance, probability))
    return;
  *value = between (chance, low, high);
  cushion->given_way |= key;
}

static void
choose_way (GRand *chance, SqCushion *c)
{
  if (happens (chance, 0.3))
    {
      c->welt.at = (SqWeltAt) one_of (chance, 4);
      c->given_way |= SQ_GIVEN_WELT_AT;
    }
  if (happens (chance, 0.1))
    {
      c->welt.cut = (SqWeltCut) one_of (chance, 2);
      c->given_way |= SQ_GIVEN_WELT_CUT;
    }
  maybe_way (chance, c, 0.1, SQ_GIVEN_WELT_CORD, &c->welt.cord_mm, 2, 9);
  maybe_way (chance, c, 0.1, SQ_GIVEN_WELT_OVERLAP, &c->welt.overlap_mm, 0, 60);
  maybe_way (chance, c, 0.4, SQ_GIVEN_SPLIT_UPPER, &c->split.upper_mm, 0, 100);
  if (happens (chance, 0.15))
    {
      c->reversible = TRUE;
      c->given |= SQ_GIVEN_REVERSIBLE;
    }
}

static void
choose_filling (GRand *chance, SqCushion *c)
{
  if (happens (chance, 0.7))
    {
      c->knife_edge.filling = (SqFilling) one_of (chance, SQ_FILLING_FOAM_SQUARE + 1);
      c->given_way |= SQ_GIVEN_FILLING;
    }
  if (happens (chance, 0.3))
    {
      c->knife_edge.draw_in_mm = between (chance, -1, 30);
      c->given_way |= SQ_GIVEN_DRAW_IN;
    }
}

/* Figures are now and then missing, or of no use. */
static void
choose_bolster (GRand *chance, SqCushion *c)
{
  c->bolster.section = (SqBolsterSection) one_of (chance, SQ_SECTION_D + 1);
  c->given_way |= SQ_GIVEN_BOLSTER_SECTION;
  maybe_way (chance, c, 0.95, SQ_GIVEN_BOLSTER_DIAMETER, &c->bolster.diameter_mm, -5, 400);
  maybe_way (chance, c, 0.9, SQ_GIVEN_BOLSTER_LENGTH, &c->bolster.length_mm, -20, 1500);
  maybe_way (chance, c, 0.9, SQ_GIVEN_BOLSTER_RISE, &c->bolster.rise_mm, -2,
             fmax (0, c->bolster.diameter_mm * 0.55));
}

static SqCushion *
random_cushion (GRand *chance, SqId id, guint n_cloths)
{
  gboolean folded = happens (chance, 0.45);
  gboolean wrapped = !folded && (happens (chance, 0.3));
  gboolean knife_edge = !folded && !wrapped && happens (chance, 0.2);
  gboolean bolster = !folded && !wrapped && !knife_edge && happens (chance, 0.15);
  g_autoptr (SqOutline) outline = wrapped ? outline_for_wrap (chance)
                                          : random_outline (chance, folded);
  g_autoptr (SqOutline) nothing = sq_outline_new (NULL, NULL, 0);
  SqCushion *c = sq_cushion_new (id, bolster && happens (chance, 0.5) ? nothing : outline);

  c->build = wrapped                  ? SQ_BUILD_WRAPPED_FRONT
             : knife_edge             ? SQ_BUILD_KNIFE_EDGE
             : bolster                ? SQ_BUILD_BOLSTER
             : !folded                ? SQ_BUILD_BOXED
             : happens (chance, 0.75) ? SQ_BUILD_FOLDED_CORNER
                                      : SQ_BUILD_SPLIT_SIDE;
  if (folded || wrapped || knife_edge || bolster || happens (chance, 0.5))
    c->given |= SQ_GIVEN_BUILD;
  maybe (chance, c, 0.9, SQ_GIVEN_THICKNESS, &c->thickness_mm, 20, 150);
  if (happens (chance, 0.3))
    {
      c->count = 1 + one_of (chance, 20);
      c->given |= SQ_GIVEN_COUNT;
    }
  if (happens (chance, 0.2))
    {
      c->hand = (SqHand) one_of (chance, 3);
      c->given |= SQ_GIVEN_HAND;
    }
  if (wrapped)
    choose_profile (chance, c);
  if (knife_edge)
    choose_filling (chance, c);
  if (bolster)
    choose_bolster (chance, c);
  choose_allowances (chance, c);
  choose_zip (chance, c);
  choose_foam (chance, c);
  choose_cloth (chance, c, n_cloths);
  choose_way (chance, c);
  return c;
}

/* ---- cloths -------------------------------------------------------------------------------- */

static void
add_stripes (GRand *chance, SqCloth *cloth)
{
  double at = between (chance, 0, 10);

  cloth->repeat_across_mm = between (chance, 40, 300);
  if (happens (chance, 0.3))
    {
      cloth->repeat_along_mm = between (chance, 40, 600);
      cloth->drop = happens (chance, 0.3) ? 0.5 : 0;
    }
  cloth->n_stripes = one_of (chance, 4);
  cloth->stripes = g_new0 (SqStripe, cloth->n_stripes);
  for (guint i = 0; i < cloth->n_stripes; i++)
    {
      double room = (cloth->repeat_across_mm - at) / (cloth->n_stripes - i);
      cloth->stripes[i] = (SqStripe){ at, room * between (chance, 0.2, 0.8), 0x203050, NULL };
      at += room;
    }
}

/* Remnants and bolts, some too small for anything. */
static void
add_stock (GRand *chance, SqCloth *cloth)
{
  guint n = 1 + one_of (chance, 3);

  for (guint i = 0; i < n; i++)
    {
      SqStock stock = { .id = i + 1,
                        .kind = (SqStockKind) one_of (chance, SQ_N_STOCK_KINDS),
                        .length_mm = happens (chance, 0.1) ? 0 : between (chance, 50, 3000),
                        .width_mm = happens (chance, 0.4) ? 0 : between (chance, 50, 1800) };
      g_array_append_val (cloth->stock, stock);
    }
}

static SqCloth *
random_cloth (GRand *chance, SqId id)
{
  SqCloth *cloth = sq_cloth_new (id);

  if (happens (chance, 0.5))
    {
      cloth->kind = (SqClothClass) one_of (chance, SQ_N_CLOTH_CLASSES);
      cloth->given |= SQ_GIVEN_CLOTH_CLASS;
    }
  if (happens (chance, 0.7))
    {
      cloth->width_mm = between (chance, happens (chance, 0.3) ? 300 : 1000, 1800);
      cloth->given |= SQ_GIVEN_CLOTH_WIDTH;
    }
  if (happens (chance, 0.3))
    {
      cloth->one_way = TRUE;
      cloth->given |= SQ_GIVEN_CLOTH_ONE_WAY;
    }
  if (happens (chance, 0.3))
    {
      cloth->up_is_start = happens (chance, 0.5);
      cloth->given |= SQ_GIVEN_CLOTH_UP;
    }
  if (happens (chance, 0.4))
    add_stripes (chance, cloth);
  return cloth;
}

/* Small ones and some right across, on what is there or on the roll; some of a piece that is gone. */
static void
add_flaws (GRand *chance, SqCloth *cloth)
{
  guint n = 1 + one_of (chance, 3);

  for (guint i = 0; i < n; i++)
    {
      gboolean is_across = happens (chance, 0.2);
      SqFlaw flaw = { .id = i + 1,
                      .stock = one_of (chance, cloth->stock->len + 2),
                      .x_mm = between (chance, -20, 2000),
                      .y_mm = is_across ? 0 : between (chance, -20, 1400),
                      .along_mm = happens (chance, 0.1) ? 0 : between (chance, 2, 80),
                      .across_mm = is_across ? 2000 : between (chance, 2, 80) };
      g_array_append_val (cloth->flaws, flaw);
    }
}

SqJob *
random_job (guint32 seed)
{
  GRand *chance = g_rand_new_with_seed (seed);
  SqDefaults defaults;
  sq_defaults_builtin (&defaults);
  SqJob *job = sq_job_new (&defaults);
  guint n_cloths = one_of (chance, 4), n_cushions = happens (chance, 0.2) ? 2 : 1;

  for (guint i = 0; i < n_cloths; i++)
    g_ptr_array_add (job->cloths, random_cloth (chance, i + 1));
  for (guint i = 0; i < n_cushions; i++)
    g_ptr_array_add (job->cushions, random_cushion (chance, i + 1, n_cloths));
  if (happens (chance, 0.2))
    {
      SqFoam foam = { .id = 1,
                      .kind = (SqFoamKind) one_of (chance, SQ_N_FOAM_KINDS),
                      .density_kg_m3 = between (chance, 15, 80),
                      .ifd_n = between (chance, 80, 400),
                      .given = SQ_GIVEN_FOAM_DENSITY | SQ_GIVEN_FOAM_IFD };
      g_array_append_val (job->foams, foam);
    }
  for (guint i = 0; i < n_cloths; i++)
    {
      if (happens (chance, 0.3))
        add_stock (chance, g_ptr_array_index (job->cloths, i));
      if (happens (chance, 0.2))
        add_flaws (chance, g_ptr_array_index (job->cloths, i));
    }
  g_rand_free (chance);
  return job;
}
