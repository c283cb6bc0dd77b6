/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/marking-cuts.h"

static void
add_box (GArray *boxes, double x0, double y0, double x1, double y1, gboolean is_rectangle)
{
  SqMarkingBox box = { { { x0, y0 }, { x1, y1 } }, is_rectangle, FALSE };

  g_array_append_val (boxes, box);
}

static gboolean
is_in_strip (const GArray *boxes, guint i)
{
  return g_array_index (boxes, SqMarkingBox, i).is_in_strip;
}

static void
assert_cut (const GArray *cuts, guint i, gboolean is_across, double at_mm, double from_mm,
            double to_mm)
{
  g_assert_cmpuint (i, <, cuts->len);
  const SqStraightCut *cut = &g_array_index (cuts, SqStraightCut, i);
  g_assert_cmpint (cut->is_across, ==, is_across);
  g_assert_cmpfloat (cut->at_mm, ==, at_mm);
  g_assert_cmpfloat (cut->from_mm, ==, from_mm);
  g_assert_cmpfloat (cut->to_mm, ==, to_mm);
}

/* A curved top, then boxings across the cloth: two side by side are one strip. The last cut frees what
 * comes after; where something else ends the cloth there is none. */
static void
test_across (void)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (SqMarkingBox));

  add_box (boxes, 0, 0, 500, 1200, FALSE);
  add_box (boxes, 500, 0, 600, 1190, TRUE);
  add_box (boxes, 600, 0, 680, 400, TRUE);
  add_box (boxes, 600, 410, 680, 1100, TRUE);
  add_box (boxes, 700, 0, 900, 300, FALSE);
  g_autoptr (GArray) cuts = sq_marking_cuts (boxes, 900, 1300, TRUE);

  g_assert_cmpuint (cuts->len, ==, 3);
  assert_cut (cuts, 0, TRUE, 500, 0, 1300);
  assert_cut (cuts, 1, TRUE, 600, 0, 1300);
  assert_cut (cuts, 2, TRUE, 680, 0, 1300);
  for (guint i = 0; i < 5; i++)
    g_assert_cmpint (is_in_strip (boxes, i), ==, i >= 1 && i <= 3);
  for (guint i = 0; i < 3; i++)
    g_assert_true (g_array_index (cuts, SqStraightCut, i).from_edge
                   && g_array_index (cuts, SqStraightCut, i).to_edge);
}

/* Strips along all of the roll are parted from a bolt first, and then ripped from its cut end. */
static void
test_along (void)
{
  for (gboolean goes_on = FALSE; goes_on <= TRUE; goes_on++)
    {
      g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (SqMarkingBox));
      add_box (boxes, 0, 0, 2000, 100, TRUE);
      add_box (boxes, 0, 100, 1900, 250, TRUE);
      add_box (boxes, 0, 250, 1000, 900, FALSE);
      add_box (boxes, 950, 250, 2100, 900, FALSE);
      g_autoptr (GArray) cuts = sq_marking_cuts (boxes, 2100, 1400, goes_on);
      g_assert_cmpuint (cuts->len, ==, goes_on ? 3 : 2);
      if (goes_on)
        assert_cut (cuts, 0, TRUE, 2100, 0, 1400);
      assert_cut (cuts, cuts->len - 2, FALSE, 100, 0, 2100);
      assert_cut (cuts, cuts->len - 1, FALSE, 250, 0, 2100);
    }
}

/* Strips along a part of the roll: what they lie on is cut off first. */
static void
test_in_part (void)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (SqMarkingBox));

  add_box (boxes, 0, 0, 800, 60, TRUE);
  add_box (boxes, 0, 60, 800, 120, TRUE);
  add_box (boxes, 0, 120, 420, 700, FALSE);
  add_box (boxes, 400, 120, 800, 700, FALSE);
  add_box (boxes, 800, 0, 1500, 1000, FALSE);
  g_autoptr (GArray) cuts = sq_marking_cuts (boxes, 1500, 1300, TRUE);

  g_assert_cmpuint (cuts->len, ==, 3);
  assert_cut (cuts, 0, TRUE, 800, 0, 1300);
  assert_cut (cuts, 1, FALSE, 60, 0, 800);
  assert_cut (cuts, 2, FALSE, 120, 0, 800);
  g_assert_true (is_in_strip (boxes, 0) && is_in_strip (boxes, 1));
  g_assert_false (is_in_strip (boxes, 2) || is_in_strip (boxes, 4));
}

/* Boxings beside each other, all as long, are cut off together and then ripped one from the other. */
static void
test_equal (void)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (SqMarkingBox));

  add_box (boxes, 0, 0, 800, 60, TRUE);
  add_box (boxes, 0, 70, 800, 130, TRUE);
  add_box (boxes, 800, 0, 1500, 1000, FALSE);
  g_autoptr (GArray) cuts = sq_marking_cuts (boxes, 1500, 1300, TRUE);

  g_assert_cmpuint (cuts->len, ==, 4);
  assert_cut (cuts, 0, TRUE, 800, 0, 1300);
  assert_cut (cuts, 1, FALSE, 60, 0, 800);
  assert_cut (cuts, 2, FALSE, 70, 0, 800);
  assert_cut (cuts, 3, FALSE, 130, 0, 800);
}

/* Nothing right through where pieces stand in each other's way, and of unequal breadth no strip. */
static void
test_none (void)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (SqMarkingBox));

  /* Round a middle, each in the next one's way: five boxes no straight cut parts. */
  add_box (boxes, 0, 0, 200, 100, TRUE);
  add_box (boxes, 200, 0, 300, 200, TRUE);
  add_box (boxes, 100, 200, 300, 300, TRUE);
  add_box (boxes, 0, 100, 100, 300, TRUE);
  add_box (boxes, 100, 100, 200, 200, TRUE);
  g_autoptr (GArray) cuts = sq_marking_cuts (boxes, 300, 300, FALSE);
  g_assert_cmpuint (cuts->len, ==, 0);
  for (guint i = 0; i < 5; i++)
    g_assert_false (is_in_strip (boxes, i));

  g_autoptr (GArray) none = g_array_new (FALSE, FALSE, sizeof (SqMarkingBox));
  g_autoptr (GArray) no_cuts = sq_marking_cuts (none, 0, 1300, TRUE);
  g_assert_cmpuint (no_cuts->len, ==, 0);
}

/* Whatever lies there: no cut goes through a piece, and what is freed lies between two of them or at an
 * edge, as broad as it is. */
static void
test_random (void)
{
  for (guint round = 0; round < 500; round++)
    {
      g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (SqMarkingBox));
      for (guint i = 0; i < 12; i++)
        {
          double x = 100 * g_test_rand_int_range (0, 12), y = 100 * (i % 6);
          double along = 50 * g_test_rand_int_range (1, 9),
                 across = 50 * g_test_rand_int_range (1, 3);
          SqBox box = { { x, y }, { x + along, y + across } };
          gboolean is_free = TRUE;
          for (guint k = 0; k < boxes->len; k++)
            is_free &= !sq_box_meets (g_array_index (boxes, SqMarkingBox, k).box, box, -1);
          if (is_free)
            add_box (boxes, box.min.x, box.min.y, box.max.x, box.max.y, g_test_rand_bit ());
        }
      g_autoptr (GArray) cuts = sq_marking_cuts (boxes, 1700, 700, TRUE);
      for (guint i = 0; i < cuts->len; i++)
        for (guint k = 0; k < boxes->len; k++)
          {
            const SqStraightCut *cut = &g_array_index (cuts, SqStraightCut, i);
            const SqMarkingBox *own = &g_array_index (boxes, SqMarkingBox, k);
            SqBox line = cut->is_across
                             ? (SqBox){ { cut->at_mm, cut->from_mm }, { cut->at_mm, cut->to_mm } }
                             : (SqBox){ { cut->from_mm, cut->at_mm }, { cut->to_mm, cut->at_mm } };
            g_assert_false (sq_box_meets (own->box, line, -0.1));
          }
      for (guint k = 0; k < boxes->len; k++)
        {
          const SqMarkingBox *own = &g_array_index (boxes, SqMarkingBox, k);
          guint sides = 0;
          for (guint i = 0; i < cuts->len; i++)
            {
              const SqStraightCut *cut = &g_array_index (cuts, SqStraightCut, i);
              double at = cut->at_mm;
              sides |= cut->is_across && at == own->box.min.x ? 1 : 0;
              sides |= cut->is_across && at == own->box.max.x ? 2 : 0;
              sides |= !cut->is_across && at == own->box.min.y ? 4 : 0;
              sides |= !cut->is_across && at == own->box.max.y ? 8 : 0;
            }
          sides |= own->box.min.x == 0 ? 1 : 0;
          sides |= own->box.max.x == 1700 ? 2 : 0;
          sides |= own->box.min.y == 0 ? 4 : 0;
          sides |= own->box.max.y == 700 ? 8 : 0;
          if (own->is_in_strip)
            g_assert_true (own->is_rectangle && ((sides & 3) == 3 || (sides & 12) == 12));
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/marking-cuts/across", test_across);
  g_test_add_func ("/plan/marking-cuts/along", test_along);
  g_test_add_func ("/plan/marking-cuts/in part", test_in_part);
  g_test_add_func ("/plan/marking-cuts/equal", test_equal);
  g_test_add_func ("/plan/marking-cuts/none", test_none);
  g_test_add_func ("/plan/marking-cuts/random", test_random);
  return g_test_run ();
}
