/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/free-room.h"

#define ROUNDS 60

/* A room 100 × 60 with a line across it at 40: what is below is larger. */
static void
test_line (void)
{
  g_autoptr (SqFreeRoom) room = sq_free_room_new ((SqBox){ { 0, 0 }, { 100, 60 } }, 1);
  const SqNode nodes[] = { { { -5, 40.5 }, 0, 0 }, { { 105, 40.5 }, 0, 0 } };
  g_autoptr (SqPath) line = sq_path_new (nodes, 2, FALSE);
  SqBox best;

  sq_free_room_block_path (room, line);
  g_assert_cmpfloat_with_epsilon (sq_free_room_best (room, sq_point (10, 8), &best), 5, 1e-9);
  g_assert_cmpfloat_with_epsilon (best.max.y - best.min.y, 40, 1e-9);
  g_assert_cmpfloat_with_epsilon (best.min.y, 0, 1e-9);
  /* a flat box goes in ten times */
  g_assert_cmpfloat_with_epsilon (sq_free_room_best (room, sq_point (10, 1), &best), 10, 1e-9);
  sq_free_room_block_box (room, (SqBox){ { 0, 0 }, { 100, 60 } });
  g_assert_cmpfloat (sq_free_room_best (room, sq_point (10, 1), &best), ==, 0);
}

/* Only what lies in a ring, and not in its hole, is free; lines are followed to a tenth of a cell. */
static void
test_ring (void)
{
  g_autoptr (SqFreeRoom) room = sq_free_room_new ((SqBox){ { 0, 0 }, { 100, 100 } }, 1);
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  g_autoptr (SqPath) hole = sq_path_new_circle (sq_point (50, 50), 20);
  SqBox best;

  g_ptr_array_add (rings, sq_path_new_circle (sq_point (50, 50), 40));
  g_ptr_array_add (rings, sq_path_reversed (hole));
  for (guint i = 0; i < rings->len; i++)
    sq_free_room_block_path (room, g_ptr_array_index (rings, i));
  sq_free_room_block_outside (room, rings);
  double scale = sq_free_room_best (room, sq_point (1, 1), &best);
  g_assert_cmpfloat (scale, >, 10);
  for (guint i = 0; i < 4; i++)
    {
      SqPoint corner = { i & 1 ? best.min.x : best.max.x, i & 2 ? best.min.y : best.max.y };
      g_assert_cmpfloat (sq_distance (corner, sq_point (50, 50)), <=, 40.1);
      g_assert_cmpfloat (sq_distance (corner, sq_point (50, 50)), >=, 19.9);
    }
}

/* The best by trying all rectangles of cells. */
static double
best_of_all (guint8 blocked[12][15], SqVector size)
{
  double best = 0;

  for (guint top = 0; top < 12; top++)
    for (guint low = top; low < 12; low++)
      for (guint left = 0; left < 15; left++)
        for (guint right = left; right < 15; right++)
          {
            gboolean is_free = TRUE;
            for (guint row = top; row <= low && is_free; row++)
              for (guint i = left; i <= right && is_free; i++)
                is_free = !blocked[row][i];
            if (is_free)
              best = fmax (best, fmin ((right - left + 1) / size.x, (low - top + 1) / size.y));
          }
  return best;
}

static void
test_random (void)
{
  for (guint round = 0; round < ROUNDS; round++)
    {
      g_autoptr (SqFreeRoom) room = sq_free_room_new ((SqBox){ { 0, 0 }, { 15, 12 } }, 1);
      guint8 blocked[12][15] = { { 0 } };
      SqVector size = { g_test_rand_double_range (1, 6), g_test_rand_double_range (1, 4) };
      SqBox best;
      for (guint i = 0; i < 4 + round % 20; i++)
        {
          gint column = g_test_rand_int_range (0, 15), row = g_test_rand_int_range (0, 12);
          SqPoint at = { column + 0.5, row + 0.5 };
          blocked[row][column] = 1;
          sq_free_room_block_box (room, (SqBox){ at, at });
        }
      g_assert_cmpfloat_with_epsilon (sq_free_room_best (room, size, &best),
                                      best_of_all (blocked, size), 1e-9);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/free-room/line", test_line);
  g_test_add_func ("/free-room/ring", test_ring);
  g_test_add_func ("/free-room/random", test_random);
  return g_test_run ();
}
