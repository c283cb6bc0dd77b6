/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the figures of a seat stand: greedy, the most important first, each at the best of its
 * places that is still free. */
#include "base/units.h"
#include "drawing/seat-drawn.h"
#include "drawing/seat-scene.h"
#include "job/sides.h"
#include "words/angles.h"

#include <string.h>

/* In em: between a figure and what stands at its edge, other figures, the border; one step away
 * from the edge, and how many are tried. */
#define EDGE_GAP_EM 0.3
#define FIGURE_GAP_EM 0.2
#define BORDER_GAP_EM 0.3
#define STEP_EM 0.55
#define N_STEPS 10
#define FAR_STEPS 3

/* Handles stand on corners and edges (em). */
#define OUTLINE_GAP_EM 0.18

/* A sign takes up no more of an edge than this. */
#define MOST_OF_EDGE 0.3

/* Corners have handles: so far from them stand their angles (em). */
#define CORNER_GAP_EM 0.75

/* What is set smaller: angles, and what finds no place. */
#define SMALLER 0.84

#define MOST_PLACES 10

/* A turned rectangle. */
typedef struct
{
  SqPoint at;
  SqVector along; /* unit */
  double half_width, half_height;
} Plate;

/* A stretch that no figure may touch, and how far it keeps away. */
typedef struct
{
  SqPoint from, to;
  double gap;
} Obstacle;

typedef struct
{
  const SqSeatLook *look;
  GPtrArray *rings;   /* of SqPath, flat */
  GArray *obstacles;  /* of Obstacle */
  GArray *plates;     /* of Plate: figures that stand */
  GArray *dimensions; /* of SqDimension */
} Placer;

/* Where a figure might stand: outwards from a foot, reading along an angle. */
typedef struct
{
  SqPoint foot;
  SqVector out;
  double angle_rad, cost;
} Place;

typedef struct
{
  SqDimension dimension;
  double importance;
  double gap_em; /* what is drawn between the edge and its figure */
  Place places[MOST_PLACES];
  guint n_places;
} Figure;

static double
reach (const Plate *plate, SqVector axis)
{
  return plate->half_width * fabs (sq_dot (plate->along, axis))
         + plate->half_height * fabs (sq_cross (plate->along, axis));
}

static gboolean
plates_meet (const Plate *a, const Plate *b, double gap)
{
  SqVector axes[] = { a->along, sq_left (a->along), b->along, sq_left (b->along) };
  SqVector apart = sq_sub (b->at, a->at);
  for (guint i = 0; i < G_N_ELEMENTS (axes); i++)
    if (fabs (sq_dot (apart, axes[i])) > reach (a, axes[i]) + reach (b, axes[i]) + gap)
      return FALSE;
  return TRUE;
}

/* Cuts the places t0 … t1 of a stretch down to where |from + t · by| <= most; FALSE: nothing is
 * left. */
static gboolean
cut_to_slab (double from, double by, double most, double *t0, double *t1)
{
  if (fabs (by) < 1e-12)
    return fabs (from) <= most;
  double a = (-most - from) / by, b = (most - from) / by;
  *t0 = fmax (*t0, fmin (a, b));
  *t1 = fmin (*t1, fmax (a, b));
  return *t0 <= *t1;
}

static gboolean
plate_meets_stretch (const Plate *plate, const Obstacle *o)
{
  SqVector from = sq_sub (o->from, plate->at), by = sq_sub (o->to, o->from);
  SqVector up = sq_left (plate->along);
  double t0 = 0, t1 = 1;
  return cut_to_slab (sq_dot (from, plate->along), sq_dot (by, plate->along),
                      plate->half_width + o->gap, &t0, &t1)
         && cut_to_slab (sq_dot (from, up), sq_dot (by, up), plate->half_height + o->gap, &t0, &t1);
}

static gboolean
is_in_room (const Placer *placer, const Plate *plate)
{
  const SqBox *room = &placer->look->room;
  double gap = BORDER_GAP_EM * placer->look->em_mm;
  double x = reach (plate, sq_point (1, 0)) + gap, y = reach (plate, sq_point (0, 1)) + gap;
  if (room->min.x > room->max.x)
    return TRUE;
  return plate->at.x - x >= room->min.x && plate->at.x + x <= room->max.x
         && plate->at.y - y >= room->min.y && plate->at.y + y <= room->max.y;
}

static gboolean
is_on_seat (const Placer *placer, SqPoint p)
{
  int winding = 0;
  for (guint i = 0; i < placer->rings->len; i++)
    winding += sq_path_winding (g_ptr_array_index (placer->rings, i), p);
  return winding != 0;
}

static gboolean
is_free (const Placer *placer, const Plate *plate)
{
  if (!is_in_room (placer, plate))
    return FALSE;
  for (guint i = 0; i < placer->plates->len; i++)
    if (plates_meet (plate, &g_array_index (placer->plates, Plate, i),
                     FIGURE_GAP_EM * placer->look->em_mm))
      return FALSE;
  for (guint i = 0; i < placer->obstacles->len; i++)
    if (plate_meets_stretch (plate, &g_array_index (placer->obstacles, Obstacle, i)))
      return FALSE;
  return !is_on_seat (placer, plate->at);
}

static Plate
plate_at (const Placer *placer, const Figure *figure, const Place *place, guint step, double em)
{
  Plate plate = { .along = sq_turned (sq_point (1, 0), place->angle_rad),
                  .half_width = figure->dimension.width_mm * em / 2,
                  .half_height = SQ_TEXT_HEIGHT_EM * em / 2 };
  double away = (figure->gap_em + step * STEP_EM) * placer->look->em_mm;
  plate.at = sq_moved (place->foot, place->out, away + reach (&plate, place->out));
  return plate;
}

/* A leader that would run over another figure is not drawn; over one that is, none may stand. */
static void
draw_leader (Placer *placer, SqDimension *dimension)
{
  Obstacle leader = { dimension->foot, dimension->leader, 0.1 * placer->look->em_mm };
  for (guint i = 0; dimension->is_far && i < placer->plates->len; i++)
    if (plate_meets_stretch (&g_array_index (placer->plates, Plate, i), &leader))
      dimension->is_far = FALSE;
  if (dimension->is_far)
    g_array_append_val (placer->obstacles, leader);
}

/* Stands @figure at its best free place with figures of @em; FALSE if it has none. Until then its
 * width is in em. */
static gboolean
stand_figure (Placer *placer, const Figure *figure, double em)
{
  double best = INFINITY;
  Plate stand = { 0 };
  SqDimension dimension = figure->dimension;
  for (guint step = 0; step < N_STEPS; step++)
    for (guint i = 0; i < figure->n_places; i++)
      {
        const Place *place = &figure->places[i];
        if (step + place->cost >= best)
          continue;
        Plate plate = plate_at (placer, figure, place, step, em);
        if (!is_free (placer, &plate))
          continue;
        best = step + place->cost;
        stand = plate;
        dimension.foot = place->foot;
        dimension.angle_rad = place->angle_rad;
        dimension.is_far = step >= FAR_STEPS;
        dimension.leader = sq_moved (plate.at, place->out, -reach (&plate, place->out));
      }
  if (!isfinite (best))
    return FALSE;
  draw_leader (placer, &dimension);
  dimension.at = stand.at;
  dimension.width_mm = 2 * stand.half_width;
  dimension.height_mm = 2 * stand.half_height;
  g_array_append_val (placer->plates, stand);
  g_array_append_val (placer->dimensions, dimension);
  return TRUE;
}

static void
write_figure (Figure *figure, const SqSeatLook *look)
{
  SqDimension *dimension = &figure->dimension;
  g_autofree char *length = dimension->measure == SQ_MEASURE_ANGLE
                                ? sq_words_angle (dimension->value_rad, &look->length)
                                : sq_length_format (dimension->value_mm, &look->length);
  g_strlcpy (dimension->text, dimension->measure == SQ_MEASURE_RADIUS ? "R " : "",
             sizeof dimension->text);
  g_strlcat (dimension->text, length, sizeof dimension->text);
  dimension->width_mm = sq_text_width_em (dimension->text, FALSE)
                        + (dimension->measure == SQ_MEASURE_RISE ? SQ_RISE_SIGN_EM : 0);
}

static void
add_place (Figure *figure, SqPoint foot, SqVector out, double angle_rad, double cost)
{
  figure->places[figure->n_places++] = (Place){ foot, out, sq_readable_angle_rad (angle_rad),
                                                cost };
}

/* Places along an edge, reading along it; then level ones farther off. Where the edge is bowed
 * inwards its chord is what is measured, and figures stand beyond that. */
static void
add_edge_places (Figure *figure, const SqPath *path, guint32 tag, SqPoint from, SqPoint to)
{
  const double shares[] = { 0.5, 0.38, 0.62, 0.24, 0.76 }, costs[] = { 0, 0.8, 0.8, 1.6, 1.6 };
  SqVector chord = sq_unit (sq_sub (to, from));
  for (int level = 0; level <= 1; level++)
    for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
      {
        SqPoint foot = sq_between (from, to, shares[i]), on_edge;
        SqVector along = chord, edge_along;
        if (!sq_seat_edge_point (path, tag, shares[i], &on_edge, &edge_along))
          continue;
        if (sq_dot (sq_sub (on_edge, foot), sq_right (chord)) > -SQ_TIE_MM)
          {
            foot = on_edge;
            along = edge_along;
          }
        add_place (figure, foot, sq_right (along), level ? 0 : atan2 (along.y, along.x),
                   costs[i] + 4 * level);
      }
}

static void
add_length (GArray *figures, const SqCorner *corners, guint n, guint i, const SqPath *path)
{
  Figure figure = { .dimension = { .measure = SQ_MEASURE_LENGTH, .corner = corners[i].id } };
  figure.dimension.value_mm = sq_distance (corners[i].at, corners[(i + 1) % n].at);
  figure.importance = 1e9 + figure.dimension.value_mm;
  figure.gap_em = sq_seat_hatch_depth_em (corners[i].kind) + EDGE_GAP_EM;
  add_edge_places (&figure, path, i, corners[i].at, corners[(i + 1) % n].at);
  g_array_append_val (figures, figure);
}

static void
add_rise (GArray *figures, const SqCorner *corners, guint n, guint i, const SqPath *path)
{
  const SqCorner *corner = &corners[i];
  Figure figure = { .dimension = { .measure = SQ_MEASURE_RISE, .corner = corner->id } };
  if (corner->shape != SQ_SHAPE_BOW || corner->bow_mm == 0)
    return;
  figure.dimension.value_mm = fabs (corner->bow_mm);
  figure.importance = figure.dimension.value_mm;
  figure.gap_em = sq_seat_hatch_depth_em (corner->kind) + EDGE_GAP_EM;
  add_edge_places (&figure, path, i, corner->at, corners[(i + 1) % n].at);
  g_array_append_val (figures, figure);
}

/* Sideways from a foot, and ever farther round it. */
static void
add_places_about (Figure *figure, SqPoint foot, SqVector out)
{
  const double turns[] = { 0, 0.45, -0.45, 0.9, -0.9 };
  for (guint k = 0; k < G_N_ELEMENTS (turns); k++)
    add_place (figure, foot, sq_turned (out, turns[k]), 0, 0.5 * k);
}

static void
add_radius (GArray *figures, const SqCorner *corner, guint n, guint i, const SqPath *path)
{
  Figure figure = { .dimension = { .measure = SQ_MEASURE_RADIUS, .corner = corner->id } };
  SqPoint foot;
  SqVector along;
  if (corner->radius_mm <= 0 || !sq_seat_edge_point (path, n + i, 0.5, &foot, &along))
    return;
  figure.dimension.value_mm = corner->radius_mm;
  figure.importance = 1e6 + corner->radius_mm;
  figure.gap_em = EDGE_GAP_EM;
  add_places_about (&figure, foot, sq_right (along));
  g_array_append_val (figures, figure);
}

/* The sign of a right angle between @back and @along, both unit vectors from @corner. */
static void
add_square_sign (Placer *placer, const SqCorner *corner, SqVector back, SqVector along)
{
  SqVector first = sq_cross (along, back) > 0 ? along : back; /* the other one is to its left */
  double half_mm = SQ_SQUARE_SIGN_EM * placer->look->em_mm / 2;
  SqDimension sign = { .measure = SQ_MEASURE_ANGLE,
                       .corner = corner->id,
                       .value_rad = M_PI / 2,
                       .is_sign = TRUE,
                       .at = sq_moved (sq_moved (corner->at, along, half_mm), back, half_mm),
                       .angle_rad = atan2 (first.y, first.x),
                       .width_mm = 2 * half_mm,
                       .height_mm = 2 * half_mm,
                       .foot = corner->at,
                       .leader = corner->at };
  Plate plate = { sign.at, along, half_mm, half_mm };
  g_autofree char *text = sq_words_angle (sign.value_rad, &placer->look->length);
  g_strlcpy (sign.text, text, sizeof sign.text);
  if (is_in_room (placer, &plate))
    g_array_append_val (placer->dimensions, sign);
}

static void
add_angle (Placer *placer, GArray *figures, const SqCorner *corners, guint n, guint i,
           const SqPath *path, double angle_rad)
{
  const SqCorner *before = &corners[(i + n - 1) % n], *corner = &corners[i];
  SqVector back = sq_sub (before->at, corner->at),
           out = sq_sub (corners[(i + 1) % n].at, corner->at);
  gboolean is_sharp = before->shape == SQ_SHAPE_STRAIGHT && corner->shape == SQ_SHAPE_STRAIGHT
                      && corner->radius_mm <= 0;
  double sign_mm = SQ_SQUARE_SIGN_EM * placer->look->em_mm;
  Figure figure = {
    .dimension = { .measure = SQ_MEASURE_ANGLE, .corner = corner->id, .value_rad = angle_rad }
  };
  SqVector outward, along;
  if (angle_rad <= 0)
    return;
  if (sq_words_is_square (angle_rad) && corner->id != placer->look->corner)
    {
      if (is_sharp && fmin (sq_norm (back), sq_norm (out)) * MOST_OF_EDGE >= sign_mm)
        add_square_sign (placer, corner, sq_unit (back), sq_unit (out));
      return;
    }
  outward = sq_sub (sq_right (sq_unit (out)), sq_right (sq_unit (back)));
  figure.dimension.foot = corner->at;
  if (corner->radius_mm > 0)
    sq_seat_edge_point (path, n + i, 0.5, &figure.dimension.foot, &along);
  /* The sharper, the more it says; the chosen one more than a rise. */
  figure.importance = corner->id == placer->look->corner ? 1e6 : -angle_rad;
  figure.gap_em = CORNER_GAP_EM;
  add_places_about (&figure, figure.dimension.foot,
                    sq_norm (outward) > SQ_COINCIDE_MM ? sq_unit (outward)
                                                       : sq_scale (sq_unit (out), -1));
  g_array_append_val (figures, figure);
}

static void
add_obstacles (Placer *placer, const SqPath *flat, const SqCorner *corners, guint n)
{
  for (guint i = 0; i < sq_path_n_segments (flat); i++)
    {
      SqSegment segment = sq_path_segment (flat, i);
      guint32 tag = sq_path_nodes (flat)[i].tag;
      double depth = tag < n ? sq_seat_hatch_depth_em (corners[tag].kind) : 0;
      Obstacle obstacle = { segment.from, segment.to,
                            (depth + OUTLINE_GAP_EM) * placer->look->em_mm };
      g_array_append_val (placer->obstacles, obstacle);
    }
}

/* The figures of one ring, and what they must not touch. */
static void
add_ring (Placer *placer, GArray *figures, const SqOutline *outline, guint ring)
{
  guint n;
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  g_autoptr (SqPath) path = sq_seat_ring (outline, ring);
  if (path == NULL)
    return;
  g_autofree SqSideReading *readings = sq_outline_side_readings (outline, ring, &n);
  SqPath *flat = sq_path_flattened (path, 0.1 * placer->look->em_mm);
  g_ptr_array_add (placer->rings, flat);
  add_obstacles (placer, flat, corners, n);
  for (guint i = 0; i < n; i++)
    {
      add_length (figures, corners, n, i, path);
      add_radius (figures, &corners[i], n, i, path);
      add_rise (figures, corners, n, i, path);
      add_angle (placer, figures, corners, n, i, path, readings[i].angle_rad);
    }
}

static int
more_important (gconstpointer a, gconstpointer b)
{
  const Figure *x = a, *y = b;
  if (x->importance != y->importance)
    return x->importance > y->importance ? -1 : 1;
  return x->dimension.corner < y->dimension.corner ? -1 : 1;
}

GArray *
sq_seat_dimensions (const SqCushion *cushion, const SqSeatLook *look)
{
  g_return_val_if_fail (cushion != NULL && look != NULL && look->em_mm > 0, NULL);
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  g_autoptr (GArray) obstacles = g_array_new (FALSE, FALSE, sizeof (Obstacle));
  g_autoptr (GArray) plates = g_array_new (FALSE, FALSE, sizeof (Plate));
  g_autoptr (GArray) figures = g_array_new (FALSE, FALSE, sizeof (Figure));
  Placer placer = { look, rings, obstacles, plates,
                    g_array_new (FALSE, FALSE, sizeof (SqDimension)) };
  for (guint ring = 0; ring < sq_outline_n_rings (cushion->outline); ring++)
    add_ring (&placer, figures, cushion->outline, ring);
  g_array_sort (figures, more_important);
  for (guint i = 0; i < figures->len; i++)
    {
      Figure *figure = &g_array_index (figures, Figure, i);
      gboolean is_small = figure->dimension.measure == SQ_MEASURE_ANGLE;
      write_figure (figure, look);
      if (is_small || !stand_figure (&placer, figure, look->em_mm))
        stand_figure (&placer, figure, SMALLER * look->em_mm);
    }
  return placer.dimensions;
}

const SqDimension *
sq_seat_dimension_at (const GArray *dimensions, SqPoint p, double within_mm)
{
  g_return_val_if_fail (dimensions != NULL, NULL);
  for (guint i = 0; i < dimensions->len; i++)
    {
      const SqDimension *dimension = &g_array_index (dimensions, SqDimension, i);
      SqVector along = sq_turned (sq_point (1, 0), dimension->angle_rad);
      SqVector by = sq_sub (p, dimension->at);
      if (fabs (sq_dot (by, along)) <= dimension->width_mm / 2 + within_mm
          && fabs (sq_cross (along, by)) <= dimension->height_mm / 2 + within_mm)
        return dimension;
    }
  return NULL;
}
