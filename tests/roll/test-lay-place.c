/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where one piece of a lay may be put, by cases worked out by hand and by chance. */
#include "roll/lay-place.h"

#include "roll/lay-phase.h"
#include "roll/made-task.h"

#define UPRIGHT ((SqGridPose){ 0, FALSE })

static const SqLayPlaceHow close_by = { .reach = 60000, .snap = 4000 };

/* Two of 100 × 50 mm on a roll of 200 mm: the first at the corner. */
static SqLay *
lay_two (SqLayTask *task)
{
  add_rectangle (task, 100, 50, SQ_LAY_UPRIGHT, 2);
  return lay_of (task, 0);
}

static guint
other_than_at (const SqLay *lay, gint32 x, gint32 y)
{
  const SqPlaced *placed = sq_lay_placed (lay, 0);
  return placed->at.x == x && placed->at.y == y ? 1 : 0;
}

/* Where the second may lie near @x, @y (mm). */
static gboolean
put (SqLayPlacer *placer, double x, double y, const SqLayPlaceHow *how, SqGrid *at)
{
  SqLayPlace wish = { 0, { (gint32) (x * 1000), (gint32) (y * 1000) }, UPRIGHT }, found;
  gboolean is_there = sq_lay_placer_near (placer, &wish, how, &found);

  if (is_there)
    {
      g_assert_cmpint (sq_lay_placer_fault (placer, &found, how->others_move), ==, SQ_LAY_RIGHT);
      *at = found.at;
    }
  return is_there;
}

static void
assert_at (SqGrid at, double x_mm, double y_mm)
{
  g_assert_cmpint (at.x, ==, (gint32) (x_mm * 1000));
  g_assert_cmpint (at.y, ==, (gint32) (y_mm * 1000));
}

static void
test_touching (void)
{
  g_autoptr (SqLayTask) task = made_task (200, 0);
  g_autoptr (SqLay) lay = lay_two (task);
  g_autoptr (SqLayPlacer) placer = sq_lay_placer_new (task, lay, other_than_at (lay, 0, 0));
  SqGrid at;

  g_assert_true (put (placer, 150, 100, &close_by, &at)); /* free, and nothing near */
  assert_at (at, 150, 100);
  g_assert_true (put (placer, 102, 3, &close_by, &at)); /* both the other and the edge */
  assert_at (at, 100, 0);
  g_assert_true (put (placer, 30, 53, &close_by, &at)); /* above the other */
  assert_at (at, 30, 50);
  g_assert_true (put (placer, 3, 52, &close_by, &at)); /* … and at the cut end */
  assert_at (at, 0, 50);
  g_assert_true (put (placer, 20, 30, &close_by, &at)); /* on it: 20 up is nearer than 80 on */
  assert_at (at, 20, 50);
  g_assert_true (put (placer, 90, 10, &close_by, &at));
  assert_at (at, 100, 10);
  g_assert_true (put (placer, -30, 170, &close_by, &at)); /* off the cloth */
  assert_at (at, 0, 150);
}

static void
test_refused (void)
{
  const SqLayPlaceHow near = { .reach = 10000, .snap = 2000 };
  const SqLayPlaceHow over = { .reach = 10000, .snap = 2000, .others_move = TRUE };
  g_autoptr (SqLayTask) task = made_task (200, 0);
  g_autoptr (SqLay) lay = lay_two (task);
  g_autoptr (SqLayPlacer) placer = sq_lay_placer_new (task, lay, other_than_at (lay, 0, 0));
  SqLayPlace wish = { 0, { 20000, 20000 }, UPRIGHT };
  SqLayPlace turned = { 0, { 150000, 0 }, { SQ_GRID_QUARTER, FALSE } }, found;
  SqGrid at;

  g_assert_false (put (placer, 20, 20, &near, &at));
  g_assert_cmpint (sq_lay_placer_fault (placer, &wish, FALSE), ==, SQ_LAY_OVERLAP);
  g_assert_cmpint (sq_lay_placer_fault (placer, &turned, FALSE), ==, SQ_LAY_POSE);
  g_assert_false (sq_lay_placer_near (placer, &turned, &near, &found));
  g_assert_true (put (placer, 20, 20, &over, &at)); /* the other makes way */
  assert_at (at, 20, 20);
  g_assert_false (put (placer, -11, 100, &near, &at));
}

/* An L's corner takes a square just as large, and it may be pushed in from either side. */
static void
test_notch (void)
{
  const SqNode nodes[] = {
    { sq_point (0, 0), 0, 0 },     { sq_point (100, 0), 0, 0 }, { sq_point (100, 40), 0, 0 },
    { sq_point (60, 40), 0, 0 },   { sq_point (60, 80), 0, 0 }, { sq_point (100, 80), 0, 0 },
    { sq_point (100, 120), 0, 0 }, { sq_point (0, 120), 0, 0 },
  };
  g_autoptr (SqLayTask) task = made_task (120, 0);
  SqGrid at;

  add_path (task, sq_path_new (nodes, G_N_ELEMENTS (nodes), TRUE), (SqLayItemSpec){ .demand = 1 });
  add_rectangle (task, 40, 40, SQ_LAY_UPRIGHT, 1);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_autoptr (SqLayPlacer) placer = sq_lay_placer_new (task, lay, 1);
  g_assert_cmpint (sq_lay_placed (lay, 0)->at.x, ==, 0);
  g_assert_true (put (placer, 63, 42, &close_by, &at));
  assert_at (at, 60, 40);
  g_assert_true (put (placer, 70, 44, &close_by, &at)); /* only one height fits */
  assert_at (at, 70, 40);
}

/* Stripes of 30 mm: only every 30 mm across, wherever the hand is, and beside what is pinned. */
static void
test_pattern (void)
{
  g_autoptr (SqLayTask) task = made_task (200, 0);
  SqGrid at;

  add_path (task, sq_path_new_rectangle (0, 0, 100, 50),
            (SqLayItemSpec){ .across_mm = 5,
                             .repeat_across_mm = 30,
                             .along_mm = 7,
                             .repeat_along_mm = 40,
                             .drop_mm = 20,
                             .demand = 2 });
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_autoptr (SqLayPlacer) placer = sq_lay_placer_new (task, lay, 0);
  g_assert_true (put (placer, 300, 66, &close_by, &at));
  assert_at (at, 287, 65);
  g_assert_true (put (placer, 300, 98, &close_by, &at)); /* a dropped column */
  assert_at (at, 307, 95);
}

static void
test_flaw_and_strips (void)
{
  SqGridBox flaw = { { 100000, 0 }, { 120000, 60000 } };
  const SqLayStrip bolt = { .width = 100000, .length = 300000, .flaws = &flaw, .n_flaws = 1 };
  const SqLayPlaceHow near = { .reach = 30000, .snap = 1000 };
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);
  SqLayPlace wish = { 0, { 90000, 10000 }, UPRIGHT }, found;

  sq_lay_task_add_strip (task, &bolt);
  add_rectangle (task, 50, 30, SQ_LAY_UPRIGHT, 1);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_autoptr (SqLayPlacer) placer = sq_lay_placer_new (task, lay, 0);
  g_assert_cmpint (sq_lay_placer_fault (placer, &wish, TRUE), ==, SQ_LAY_FLAW);
  g_assert_true (sq_lay_placer_near (placer, &wish, &near, &found));
  assert_at (found.at, 120, 10);
  wish.at = (SqGrid){ 270000, 60000 }; /* over the bolt's end */
  g_assert_cmpint (sq_lay_placer_fault (placer, &wish, TRUE), ==, SQ_LAY_OUTSIDE);
  g_assert_true (sq_lay_placer_near (placer, &wish, &near, &found));
  assert_at (found.at, 250, 60);
  wish.strip = 1;
  g_assert_false (sq_lay_placer_near (placer, &wish, &near, &found));
}

/* @lay with one piece put elsewhere: as right as it was. */
static void
assert_right (const SqLayTask *task, const SqLay *lay, guint index, const SqLayPlace *place)
{
  g_autoptr (SqLay) moved = g_memdup2 (lay, sizeof *lay);
  SqGridBox box;

  moved->ref_count = 1;
  moved->placed = g_array_copy (lay->placed);
  moved->unlaid = g_array_copy (lay->unlaid);
  moved->lengths = g_array_copy (lay->lengths);
  SqPlaced *placed = sq_lay_placed (moved, index);
  placed->at = place->at;
  placed->pose = place->pose;
  placed->strip = place->strip;
  box = sq_lay_item_box (sq_lay_task_item (task, placed->item), place->pose);
  gint32 *length = &g_array_index (moved->lengths, gint32, place->strip);
  *length = MAX (*length, box.max.x + place->at.x);
  g_assert_cmpint (sq_lay_fault (task, moved, NULL), ==, SQ_LAY_RIGHT);
}

/* Wherever a hand goes on random lays: what is found is right, within reach, and where the piece lay
 * already it may lie still. */
static void
test_random (void)
{
  const SqLayPlaceHow how = { .reach = 80000, .snap = 3000 };
  g_autoptr (GRand) random = g_rand_new_with_seed (6);
  guint n_found = 0;

  for (guint32 seed = 1; seed <= 60; seed++)
    {
      g_autoptr (SqLayTask) task = random_task (seed);
      g_autoptr (SqLay) lay = sq_lay_run (task, NULL, &(SqLayBudget){ .seed = 1 }, NULL);
      for (guint i = 0; i < MIN (lay->placed->len, 4); i++)
        {
          const SqPlaced *placed = sq_lay_placed (lay, i);
          const SqLayItem *item = sq_lay_task_item (task, placed->item);
          g_autoptr (SqLayPlacer) placer = sq_lay_placer_new (task, lay, i);
          SqLayPlace own = { placed->strip, placed->at, placed->pose }, found;
          gboolean is_pin = FALSE;
          for (guint k = 0; k < task->pins->len; k++)
            is_pin |= g_array_index (task->pins, SqLayPin, k).item == placed->item;
          g_assert_cmpint (sq_lay_placer_fault (placer, &own, FALSE), ==, SQ_LAY_RIGHT);
          for (guint k = 0; k < 12; k++)
            {
              SqLayPlace wish = own;
              wish.at.x += g_rand_int_range (random, -200000, 200000);
              wish.at.y += g_rand_int_range (random, -200000, 200000);
              wish.pose = item->poses[g_rand_int_range (random, 0, (gint32) item->n_poses)];
              if (is_pin || !sq_lay_placer_near (placer, &wish, &how, &found))
                continue;
              n_found++;
              g_assert_cmpint (ABS (found.at.x - wish.at.x), <=, how.reach);
              g_assert_cmpint (ABS (found.at.y - wish.at.y), <=, how.reach);
              assert_right (task, lay, i, &found);
            }
        }
    }
  g_assert_cmpuint (n_found, >, 200);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-place/touching", test_touching);
  g_test_add_func ("/roll/lay-place/refused", test_refused);
  g_test_add_func ("/roll/lay-place/notch", test_notch);
  g_test_add_func ("/roll/lay-place/pattern", test_pattern);
  g_test_add_func ("/roll/lay-place/flaw and strips", test_flaw_and_strips);
  g_test_add_func ("/roll/lay-place/random", test_random);
  return g_test_run ();
}
