/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/drawn-ring.h"

static void
put (SqDrawnRing *ring, double x, double y)
{
  SqPoint at = sq_point (x, y), where;
  g_assert_true (sq_drawn_ring_takes (ring, at, &where));
  g_array_append_val (ring->corners, at);
}

/* Drawn clockwise from the back, it is a seat that begins with its front all the same. */
static void
test_clockwise (void)
{
  SqDrawnRing ring;
  guint n;
  sq_drawn_ring_init (&ring);
  put (&ring, 100, 500);
  put (&ring, 700, 500);
  put (&ring, 700, 200);
  put (&ring, 100, 200);
  g_autoptr (SqOutline) seat = sq_drawn_ring_seat (&ring);
  const SqCorner *corners = sq_outline_ring (seat, 0, &n);
  g_assert_cmpuint (n, ==, 4);
  g_assert_true (corners[0].front && !corners[1].front);
  for (guint i = 0; i < n; i++)
    g_assert_cmpuint (corners[i].id, ==, i + 1);
  g_assert_cmpfloat (corners[0].at.x, ==, 0);
  g_assert_cmpfloat (corners[0].at.y, ==, 0);
  g_assert_cmpfloat (corners[1].at.x, ==, 600);
  g_assert_cmpfloat (corners[1].at.y, ==, 0);
  g_assert_cmpfloat (corners[2].at.y, ==, 300);
  sq_drawn_ring_clear (&ring);
}

/* A side may neither cross another one, nor end on a corner, nor go back over the last. */
static void
test_crossing (void)
{
  SqDrawnRing ring;
  SqPoint where = sq_point (0, 0);
  sq_drawn_ring_init (&ring);
  put (&ring, 0, 0);
  put (&ring, 400, 0);
  put (&ring, 400, 300);
  g_assert_false (sq_drawn_ring_takes (&ring, sq_point (200, -100), &where));
  g_assert_cmpfloat_with_epsilon (where.x, 250, 1e-6);
  g_assert_cmpfloat_with_epsilon (where.y, 0, 1e-6);
  g_assert_false (sq_drawn_ring_takes (&ring, sq_point (400, 0), &where));
  g_assert_false (sq_drawn_ring_takes (&ring, sq_point (400, 200), &where));
  g_assert_true (sq_drawn_ring_takes (&ring, sq_point (200, 100), &where));
  sq_drawn_ring_clear (&ring);
}

static void
test_closing (void)
{
  SqDrawnRing ring;
  SqPoint where = sq_point (-1, -1);
  sq_drawn_ring_init (&ring);
  g_autoptr (SqOutline) nothing = sq_drawn_ring_outline (&ring);
  g_assert_cmpuint (sq_outline_n_rings (nothing), ==, 0);
  put (&ring, 0, 0);
  put (&ring, 400, 0);
  g_assert_false (sq_drawn_ring_closes (&ring, &where));
  g_assert_cmpfloat (where.x, ==, -1);
  put (&ring, 400, 300);
  g_assert_true (sq_drawn_ring_closes (&ring, &where));
  put (&ring, 100, 300);
  put (&ring, 100, 100);
  put (&ring, 200, 200);
  g_assert_false (sq_drawn_ring_closes (&ring, &where));
  g_assert_null (sq_drawn_ring_seat (&ring));
  sq_drawn_ring_clear (&ring);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/drawn-ring/clockwise", test_clockwise);
  g_test_add_func ("/window/drawn-ring/crossing", test_crossing);
  g_test_add_func ("/window/drawn-ring/closing", test_closing);
  return g_test_run ();
}
