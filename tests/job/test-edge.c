/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/edge.h"

static SqOutline *
a_seat (void)
{
  const SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 }, .front = TRUE, .radius_mm = 20, .given = SQ_GIVEN_RADIUS },
    { .id = 2,
      .at = { 600, 0 },
      .shape = SQ_SHAPE_BOW,
      .bow_mm = 70,
      .kind = SQ_EDGE_WALL,
      .given = SQ_GIVEN_KIND },
    { .id = 3,
      .at = { 560, 420 },
      .shape = SQ_SHAPE_CURVE,
      .control = { { 400, 520 }, { 200, 380 } } },
    { .id = 4, .at = { 0, 400 }, .shape = SQ_SHAPE_BOW, .bow_mm = -30 },
  };
  const guint n = G_N_ELEMENTS (corners);
  return sq_outline_new (corners, &n, 1);
}

/* A corner put on any edge leaves the seat as it was. */
static void
test_on_edge (void)
{
  g_autoptr (SqOutline) seat = a_seat ();
  g_autoptr (SqPath) before = sq_outline_path (seat, 0, NULL);
  guint n;
  const SqCorner *corners = sq_outline_ring (seat, 0, &n);

  for (guint i = 0; i < n; i++)
    for (double t = 0.1; t < 0.95; t += 0.2)
      {
        SqPoint p = sq_edge_point (&corners[i], &corners[(i + 1) % n], t);
        SqId id;
        guint index, n_now;
        g_autoptr (SqOutline) split = sq_outline_with_corner_on_edge (seat, corners[i].id, p, &id);
        g_autoptr (SqPath) after = sq_outline_path (split, 0, NULL);
        const SqCorner *added = sq_outline_corner (split, id, NULL, &index);
        sq_outline_ring (split, 0, &n_now);
        g_assert_cmpuint (n_now, ==, n + 1);
        g_assert_cmpuint (index, ==, i + 1);
        g_assert_cmpfloat (sq_distance (added->at, p), <, 1e-6);
        g_assert_cmpfloat (added->radius_mm, ==, 0);
        g_assert_cmpint (added->kind, ==, corners[i].kind);
        g_assert_false (added->front);
        /* free curves are fitted anew, within 0.005 mm each time */
        double within = corners[i].shape == SQ_SHAPE_CURVE ? 0.02 : 1e-9;
        g_assert_cmpfloat (fabs (sq_path_length_mm (after) - sq_path_length_mm (before)), <,
                           within);
        g_assert_cmpfloat (fabs (sq_path_area_mm2 (after) - sq_path_area_mm2 (before)), <,
                           within * 700);
      }
}

static void
test_at_ends (void)
{
  g_autoptr (SqOutline) seat = a_seat ();

  g_assert_null (sq_outline_with_corner_on_edge (seat, 1, sq_point (-50, 0), NULL));
  g_assert_null (sq_outline_with_corner_on_edge (seat, 1, sq_point (700, 0), NULL));
  g_assert_null (sq_outline_with_corner_on_edge (seat, 99, sq_point (300, 0), NULL));
}

/* The arc through a point has the rise that puts the point on it. */
static void
test_bow_through (void)
{
  for (int i = 0; i < 1000; i++)
    {
      SqCorner from = { .at = { g_test_rand_double_range (-500, 500), 0 }, .shape = SQ_SHAPE_BOW };
      SqCorner to = { .at = { 600, g_test_rand_double_range (-300, 300) } };
      SqPoint p = { g_test_rand_double_range (-200, 800), g_test_rand_double_range (-700, 700) };
      double t;
      from.bow_mm = sq_bow_through (from.at, to.at, p);
      double bulge = 2 * from.bow_mm / sq_distance (from.at, to.at);
      /* beyond the chord's ends the rise is held */
      if (fabs (bulge) < SQ_MOST_BULGE - 1e-9)
        g_assert_cmpfloat (sq_edge_nearest_mm (&from, &to, p, &t), <, 1e-6);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/edge/on-edge", test_on_edge);
  g_test_add_func ("/job/edge/at-ends", test_at_ends);
  g_test_add_func ("/job/edge/bow-through", test_bow_through);
  return g_test_run ();
}
