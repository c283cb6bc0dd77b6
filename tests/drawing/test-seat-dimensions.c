/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/seat-drawn.h"
#include "drawing/seat-scene.h"
#include "geometry/crossing.h"
#include "hand-made.h"

typedef struct
{
  SqPoint corner[4];
} Box;

static Box
box_of (const SqDimension *d, double grow)
{
  SqVector along = sq_turned (sq_point (d->width_mm / 2 + grow, 0), d->angle_rad);
  SqVector up = sq_turned (sq_point (0, d->height_mm / 2 + grow), d->angle_rad);
  SqPoint high = sq_add (d->at, up), low = sq_sub (d->at, up);
  return (Box){ { sq_sub (low, along), sq_add (low, along), sq_add (high, along),
                  sq_sub (high, along) } };
}

static SqPath *
path_of (const Box *box)
{
  return sq_path_new_polygon (box->corner, 4);
}

/* Neither crosses the other, nor lies in it. */
static gboolean
paths_meet (const SqPath *a, const SqPath *b)
{
  return sq_paths_distance_mm (a, b) <= 0 || sq_path_winding (a, sq_path_nodes (b)[0].at) != 0
         || sq_path_winding (b, sq_path_nodes (a)[0].at) != 0;
}

/* 3 … 12 corners around a middle, some bowed, rounded, against walls. */
static SqCushion *
random_cushion (void)
{
  guint n = (guint) g_test_rand_int_range (3, 13);
  g_autofree SqCorner *corners = g_new0 (SqCorner, n);
  for (guint i = 0; i < n; i++)
    {
      double angle = 2 * M_PI * (i + g_test_rand_double_range (-0.3, 0.3)) / n;
      double out = g_test_rand_double_range (180, 600);
      corners[i] = (SqCorner){ .id = i + 1,
                               .at = { out * 1.5 * cos (angle), out * sin (angle) },
                               .kind = (SqEdgeKind) g_test_rand_int_range (0, SQ_N_EDGE_KINDS) };
      if (g_test_rand_int_range (0, 3) == 0)
        {
          corners[i].shape = SQ_SHAPE_BOW;
          corners[i].bow_mm = g_test_rand_double_range (-15, 30);
        }
      if (g_test_rand_int_range (0, 3) == 0)
        corners[i].radius_mm = g_test_rand_double_range (5, 40);
    }
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &n, 1);
  return sq_cushion_new (1, outline);
}

static SqSeatLook
look_for (const SqCushion *cushion, double em_mm, double border_mm)
{
  SqSeatLook look = { .em_mm = em_mm, .length = sq_length_style_default (SQ_UNIT_IN) };
  g_autoptr (SqPath) ring = sq_seat_ring (cushion->outline, 0);
  SqBox box = sq_path_box (ring);
  look.room.min = sq_point (box.min.x - border_mm, box.min.y - border_mm);
  look.room.max = sq_point (box.max.x + border_mm, box.max.y + border_mm);
  return look;
}

static void
test_no_overlap (void)
{
  guint stood = 0, wanted = 0;
  for (int round = 0; round < 200; round++)
    {
      g_autoptr (SqCushion) cushion = random_cushion ();
      SqSeatLook look = look_for (cushion, g_test_rand_double_range (15, 60), 150);
      g_autoptr (SqPath) ring = sq_seat_ring (cushion->outline, 0);
      g_autoptr (GArray) dimensions = sq_seat_dimensions (cushion, &look);
      g_autoptr (GPtrArray) boxes = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
      for (guint i = 0; i < dimensions->len; i++)
        {
          Box box = box_of (&g_array_index (dimensions, SqDimension, i), 0);
          SqPath *path = path_of (&box);
          if (!g_array_index (dimensions, SqDimension, i).is_sign)
            g_assert_false (paths_meet (path, ring));
          for (guint j = 0; j < boxes->len; j++)
            g_assert_false (paths_meet (path, g_ptr_array_index (boxes, j)));
          for (guint k = 0; k < 4; k++)
            {
              g_assert_cmpfloat (box.corner[k].x, >=, look.room.min.x);
              g_assert_cmpfloat (box.corner[k].x, <=, look.room.max.x);
              g_assert_cmpfloat (box.corner[k].y, >=, look.room.min.y);
              g_assert_cmpfloat (box.corner[k].y, <=, look.room.max.y);
            }
          g_ptr_array_add (boxes, path);
        }
      guint n;
      sq_outline_ring (cushion->outline, 0, &n);
      wanted += n;
      for (guint i = 0; i < dimensions->len; i++)
        stood += g_array_index (dimensions, SqDimension, i).measure == SQ_MEASURE_LENGTH;
    }
  g_test_message ("%u of %u lengths stand", stood, wanted);
  g_assert_cmpuint (stood * 100, >=, wanted * 90);
}

static const SqDimension *
find (const GArray *dimensions, SqMeasure measure, SqId corner)
{
  for (guint i = 0; i < dimensions->len; i++)
    {
      const SqDimension *d = &g_array_index (dimensions, SqDimension, i);
      if (d->measure == measure && d->corner == corner)
        return d;
    }
  return NULL;
}

/* 37 × 18 1/2 in, a bow of 1 1/2 in at the back, a corner rounded by 2 in. */
static SqCushion *
bench (void)
{
  SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 }, .front = TRUE },
    { .id = 2, .at = { 939.8, 0 } },
    { .id = 3, .at = { 939.8, 469.9 }, .shape = SQ_SHAPE_BOW, .bow_mm = 38.1 },
    { .id = 4, .at = { 0, 469.9 }, .radius_mm = 50.8, .kind = SQ_EDGE_WALL },
  };
  guint n = G_N_ELEMENTS (corners);
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &n, 1);
  return sq_cushion_new (1, outline);
}

static void
test_figures (void)
{
  g_autoptr (SqCushion) cushion = bench ();
  SqSeatLook look = look_for (cushion, 25, 200);
  g_autoptr (GArray) dimensions = sq_seat_dimensions (cushion, &look);
  const SqDimension *front = find (dimensions, SQ_MEASURE_LENGTH, 1);
  const SqDimension *left = find (dimensions, SQ_MEASURE_LENGTH, 4);
  g_assert_cmpuint (dimensions->len, ==, 8); /* two of them signs */
  g_assert_cmpstr (front->text, ==, "37");
  g_assert_cmpstr (left->text, ==, "18 1/2"); /* corner to corner, whatever is rounded */
  g_assert_cmpstr (find (dimensions, SQ_MEASURE_LENGTH, 3)->text, ==, "37"); /* the chord */
  g_assert_cmpstr (find (dimensions, SQ_MEASURE_RISE, 3)->text, ==, "1 1/2");
  g_assert_cmpstr (find (dimensions, SQ_MEASURE_RADIUS, 4)->text, ==, "R 2");

  /* Level below the front; reading from the right of the page along the left edge. */
  g_assert_cmpfloat_with_epsilon (front->at.x, 469.9, 1e-6);
  g_assert_cmpfloat (front->at.y, <, 0);
  g_assert_cmpfloat_with_epsilon (front->angle_rad, 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (left->angle_rad, M_PI / 2, 1e-9);
  g_assert_cmpfloat (left->at.x, <, -sq_seat_hatch_depth_em (SQ_EDGE_WALL) * look.em_mm);
}

/* A square corner between straight edges has its sign, inside; others their figure, outside. */
static void
test_angles (void)
{
  SqCorner corners[] = { { .id = 1, .at = { 0, 0 } },
                         { .id = 2, .at = { 900, 0 } },
                         { .id = 3, .at = { 900, 300 } },
                         { .id = 4, .at = { 700, 500 } },
                         { .id = 5, .at = { 0, 500 }, .radius_mm = 30 } };
  guint n = G_N_ELEMENTS (corners);
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &n, 1);
  g_autoptr (SqCushion) cushion = sq_cushion_new (1, outline);
  SqSeatLook look = look_for (cushion, 25, 200);
  g_autoptr (GArray) calm = sq_seat_dimensions (cushion, &look);
  const SqDimension *sign = find (calm, SQ_MEASURE_ANGLE, 1);
  const SqDimension *slant = find (calm, SQ_MEASURE_ANGLE, 3);
  g_autoptr (SqPath) ring = sq_seat_ring (outline, 0);
  g_assert_true (sign->is_sign);
  g_assert_cmpstr (sign->text, ==, "90°");
  g_assert_cmpint (sq_path_winding (ring, sign->at), ==, 1);
  g_assert_false (slant->is_sign);
  g_assert_cmpstr (slant->text, ==, "135°");
  g_assert_cmpfloat_with_epsilon (slant->value_rad, 0.75 * M_PI, 1e-9);
  g_assert_cmpint (sq_path_winding (ring, slant->at), ==, 0);
  g_assert_null (find (calm, SQ_MEASURE_ANGLE, 5)); /* rounded: no corner to put a sign in */

  look.corner = 1;
  g_autoptr (GArray) chosen = sq_seat_dimensions (cushion, &look);
  g_assert_false (find (chosen, SQ_MEASURE_ANGLE, 1)->is_sign);
  g_assert_cmpstr (find (chosen, SQ_MEASURE_ANGLE, 1)->text, ==, "90°");
  look.corner = 5;
  g_autoptr (GArray) rounded = sq_seat_dimensions (cushion, &look);
  g_assert_cmpstr (find (rounded, SQ_MEASURE_ANGLE, 5)->text, ==, "90°");
}

static void
test_pick (void)
{
  g_autoptr (SqCushion) cushion = bench ();
  SqSeatLook look = look_for (cushion, 25, 200);
  g_autoptr (GArray) dimensions = sq_seat_dimensions (cushion, &look);
  for (guint i = 0; i < dimensions->len; i++)
    {
      const SqDimension *d = &g_array_index (dimensions, SqDimension, i);
      g_assert_true (sq_seat_dimension_at (dimensions, d->at, 0) == d);
    }
  g_assert_null (sq_seat_dimension_at (dimensions, sq_point (400, 200), 5));
}

/* Where there is no room at all nothing stands; where there is little the long edges have it. */
static void
test_least_important_first (void)
{
  g_autoptr (SqCushion) cushion = bench ();
  SqSeatLook none = look_for (cushion, 25, 0), little = look_for (cushion, 25, 48);
  g_autoptr (GArray) nothing = sq_seat_dimensions (cushion, &none);
  g_autoptr (GArray) some = sq_seat_dimensions (cushion, &little);
  for (guint i = 0; i < nothing->len; i++)
    g_assert_true (g_array_index (nothing, SqDimension, i).is_sign);
  g_assert_nonnull (find (some, SQ_MEASURE_LENGTH, 1));
}

/* A figure in a hole stands in the hole. */
static void
test_hole (void)
{
  SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 } },     { .id = 2, .at = { 900, 0 } },
    { .id = 3, .at = { 900, 600 } }, { .id = 4, .at = { 0, 600 } },
    { .id = 5, .at = { 300, 200 } }, { .id = 6, .at = { 300, 400 } },
    { .id = 7, .at = { 600, 400 } }, { .id = 8, .at = { 600, 200 } },
  };
  guint sizes[] = { 4, 4 };
  g_autoptr (SqOutline) outline = sq_outline_new (corners, sizes, 2);
  g_autoptr (SqCushion) cushion = sq_cushion_new (1, outline);
  SqSeatLook look = look_for (cushion, 20, 100);
  g_autoptr (GArray) dimensions = sq_seat_dimensions (cushion, &look);
  g_assert_cmpuint (dimensions->len, ==, 16); /* each square corner has its sign */
  for (SqId id = 5; id <= 8; id++)
    {
      const SqDimension *d = find (dimensions, SQ_MEASURE_LENGTH, id);
      g_assert_cmpfloat (d->at.x, >, 300);
      g_assert_cmpfloat (d->at.x, <, 600);
      g_assert_cmpfloat (d->at.y, >, 200);
      g_assert_cmpfloat (d->at.y, <, 400);
      d = find (dimensions, SQ_MEASURE_ANGLE, id);
      g_assert_true (d->is_sign); /* a hole's angles are its own */
      g_assert_cmpfloat (fabs (d->at.x - 450), <, 150);
      g_assert_cmpfloat (fabs (d->at.y - 300), <, 100);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/seat-dimensions/no-overlap", test_no_overlap);
  g_test_add_func ("/drawing/seat-dimensions/figures", test_figures);
  g_test_add_func ("/drawing/seat-dimensions/angles", test_angles);
  g_test_add_func ("/drawing/seat-dimensions/pick", test_pick);
  g_test_add_func ("/drawing/seat-dimensions/least-important-first", test_least_important_first);
  g_test_add_func ("/drawing/seat-dimensions/hole", test_hole);
  return g_test_run ();
}
