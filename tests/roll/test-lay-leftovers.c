/* SPDX-License-Identifier: GPL-3.0-or-later */
/* That what is left is free, apart, worth keeping, and the largest there is: looked for anew in every
 * rectangle of a grid where all lies on one. */
#include "roll/lay-leftovers.h"
#include "roll/made-task.h"
#include "roll/trapezoids.h"

#define CELL 10000 /* µm */
#define N_X 60
#define N_Y 24

#define box_at(boxes, i) (&g_array_index ((boxes), SqGridBox, (i)))

static gboolean
boxes_overlap (const SqGridBox *a, const SqGridBox *b)
{
  return a->min.x < b->max.x && b->min.x < a->max.x && a->min.y < b->max.y && b->min.y < a->max.y;
}

static gboolean
piece_reaches_into (const SqLayTask *task, const SqPlaced *placed, const SqGridBox *box)
{
  const SqLayItem *item = sq_lay_task_item (task, placed->item);
  SqGrid corners[] = { box->min, { box->max.x, box->min.y }, box->max, { box->min.x, box->max.y } };
  const SqGridRing ring = { corners, G_N_ELEMENTS (corners) };
  SqGridRing *rings = sq_grid_rings_posed (item->rings, item->n_rings, placed->pose);
  g_autoptr (GArray) piece = sq_trapezoids_new (rings, item->n_rings);
  g_autoptr (GArray) free = sq_trapezoids_new (&ring, 1);

  sq_grid_rings_free (rings, item->n_rings);
  return sq_trapezoids_overlap (piece, placed->at, free, (SqGrid){ 0, 0 });
}

static void
assert_free (const SqLayTask *task, const SqLay *lay, guint strip, gint32 end, const GArray *boxes)
{
  const SqLayStrip *own = sq_lay_task_strip (task, strip);

  for (guint i = 0; i < boxes->len; i++)
    {
      const SqGridBox *box = box_at (boxes, i);
      g_assert_cmpint (box->min.x, >=, 0);
      g_assert_cmpint (box->min.y, >=, 0);
      g_assert_cmpint (box->max.x, <=, end);
      g_assert_cmpint (box->max.y, <=, own->width);
      for (guint k = 0; k < i; k++)
        g_assert_false (boxes_overlap (box, box_at (boxes, k)));
      for (guint k = 0; k < own->n_flaws; k++)
        g_assert_false (boxes_overlap (box, &own->flaws[k]));
      for (guint k = 0; k < lay->placed->len; k++)
        if (sq_lay_placed (lay, k)->strip == strip)
          g_assert_false (piece_reaches_into (task, sq_lay_placed (lay, k), box));
    }
}

/* Pieces of all sorts, by the thousand; beside them there is room left. */
static void
test_free (void)
{
  static const SqLayLeast least[] = { { 40000, 60000 }, { 60000, 40000 }, { 200000, 15000 } };
  guint found = 0;

  for (guint32 seed = 1; seed <= 60; seed++)
    {
      g_autoptr (SqLayTask) task = random_task (seed);
      const SqLayBudget first = { .seed = 1 };
      g_autoptr (SqLay) lay = sq_lay_run (task, NULL, &first, NULL);
      for (guint s = 0; s < task->strips->len; s++)
        {
          gint32 end = MIN (sq_lay_length (lay, s) + 70000,
                            sq_lay_strip_end (sq_lay_task_strip (task, s)));
          g_autoptr (GArray) boxes = sq_lay_leftovers (task, lay, s, end, least, 3);
          assert_free (task, lay, s, end, boxes);
          found += boxes->len;
        }
    }
  g_assert_cmpuint (found, >, 100);
}

/* Where one piece ends a tenth of a millimetre above another, what is above both is told whole. */
static void
test_uneven (void)
{
  const SqLayLeast least = { 400000, 100000 };
  g_autoptr (SqLayTask) task = made_task (250, 0);

  add_rectangle (task, 300, 149.9, SQ_LAY_UPRIGHT, 1);
  add_rectangle (task, 300, 149.8, SQ_LAY_UPRIGHT, 1);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_autoptr (GArray) boxes = sq_lay_leftovers (task, lay, 0, sq_lay_length (lay, 0), &least, 1);
  g_assert_cmpuint (boxes->len, ==, 1);
  g_assert_cmpint (box_at (boxes, 0)->min.y, >=, 149900);
  g_assert_cmpint (box_at (boxes, 0)->min.y, <=, 150100);
  g_assert_cmpint (box_at (boxes, 0)->max.y, ==, 250000);
}

/* ---- on a grid ----------------------------------------------------------------------------- */

static void
fill_cells (gboolean taken[N_X][N_Y], const SqGridBox *box)
{
  for (gint32 x = box->min.x / CELL; x < MIN (box->max.x / CELL, N_X); x++)
    for (gint32 y = box->min.y / CELL; y < box->max.y / CELL; y++)
      taken[x][y] = TRUE;
}

static gboolean
cells_are_free (gboolean taken[N_X][N_Y], int x0, int x1, int y0, int y1)
{
  for (int x = x0; x < x1; x++)
    for (int y = y0; y < y1; y++)
      if (taken[x][y])
        return FALSE;
  return TRUE;
}

static int
largest_of_cells (gboolean taken[N_X][N_Y], int least_x, int least_y)
{
  int most = 0;

  for (int x0 = 0; x0 < N_X; x0++)
    for (int y0 = 0; y0 < N_Y; y0++)
      for (int x1 = x0 + least_x; x1 <= N_X; x1++)
        for (int y1 = y0 + least_y; y1 <= N_Y; y1++)
          if ((x1 - x0) * (y1 - y0) > most && cells_are_free (taken, x0, x1, y0, y1))
            most = (x1 - x0) * (y1 - y0);
  return most;
}

static SqLayTask *
task_on_grid (GRand *rand)
{
  SqLayTask *task = made_task (N_Y * 10, 0);
  gint n = g_rand_int_range (rand, 3, 9);

  for (gint i = 0; i < n; i++)
    add_rectangle (task, 10 * g_rand_int_range (rand, 3, 16), 10 * g_rand_int_range (rand, 3, 13),
                   SQ_LAY_UPRIGHT, 1);
  return task;
}

/* One after the other, each is as large as any rectangle of cells that is still free. */
static void
test_largest (void)
{
  const SqLayLeast least = { 4 * CELL, 3 * CELL };
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);
  guint found = 0;

  for (guint round = 0; round < 40; round++)
    {
      g_autoptr (SqLayTask) task = task_on_grid (rand);
      g_autoptr (SqLay) lay = lay_of (task, 0);
      g_autoptr (GArray) boxes = sq_lay_leftovers (task, lay, 0, N_X * CELL, &least, 1);
      gboolean taken[N_X][N_Y] = { { FALSE } };
      for (guint i = 0; i < lay->placed->len; i++)
        {
          const SqPlaced *placed = sq_lay_placed (lay, i);
          SqGridBox box = sq_lay_item_box (sq_lay_task_item (task, placed->item), placed->pose);
          box.min = sq_grid_add (box.min, placed->at);
          box.max = sq_grid_add (box.max, placed->at);
          fill_cells (taken, &box);
        }
      for (guint i = 0; i < boxes->len; i++)
        {
          const SqGridBox *box = box_at (boxes, i);
          gint64 cells = (gint64) (box->max.x - box->min.x) * (box->max.y - box->min.y)
                         / ((gint64) CELL * CELL);
          g_assert_cmpint (cells, ==, largest_of_cells (taken, 4, 3));
          fill_cells (taken, box);
        }
      g_assert_cmpint (largest_of_cells (taken, 4, 3), ==, 0);
      found += boxes->len;
    }
  g_assert_cmpuint (found, >, 60);
}

/* A disc of 200 mm in the near corner of 200 × 300: beside it 100 mm, which no corner of its box
 * reaches into, and inside a frame its hole. */
static void
test_round_and_hole (void)
{
  const SqLayLeast least = { 100000, 100000 };
  g_autoptr (SqLayTask) task = made_task (200, 0);
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);

  g_ptr_array_add (rings, sq_path_new_rectangle (0, 0, 200, 200));
  g_ptr_array_add (rings, sq_path_new_rectangle (40, 40, 160, 140));
  SqLayItemSpec spec = { .rings = rings, .turns = SQ_LAY_UPRIGHT, .demand = 1 };
  sq_lay_task_add (task, &spec);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_autoptr (GArray) boxes = sq_lay_leftovers (task, lay, 0, 300000, &least, 1);

  g_assert_cmpuint (boxes->len, ==, 2);
  g_assert_cmpint (box_at (boxes, 0)->min.x, ==, 200000);
  g_assert_cmpint (box_at (boxes, 0)->max.y, ==, 200000);
  g_assert_cmpint (box_at (boxes, 1)->min.x, ==, 40000);
  g_assert_cmpint (box_at (boxes, 1)->max.x, ==, 160000);
  g_assert_cmpint (box_at (boxes, 1)->min.y, ==, 40000);
  g_assert_cmpint (box_at (boxes, 1)->max.y, ==, 140000);
}

/* 3,000 pieces with slanted sides, on 45 m of cloth and more. */
static void
test_quick (void)
{
  static const SqLayLeast least[] = { { 304800, 457200 }, { 457200, 304800 }, { 914400, 101600 } };
  g_autoptr (SqLayTask) task = made_task (1346.2, 0);

  for (guint i = 0; i < 10; i++)
    {
      double w = 120 + 23.7 * i, h = 90 + 31.3 * i;
      const SqPoint corners[] = { { 0, 0 }, { w, 7 }, { w - 20, h }, { 15, h } };
      add_path (task, sq_path_new_polygon (corners, 4),
                (SqLayItemSpec){ .turns = SQ_LAY_UPRIGHT, .demand = 300 });
    }
  g_autoptr (SqLay) lay = lay_of (task, 0);
  gint32 end = sq_lay_length (lay, 0) + 300000;
  gint64 start = g_get_monotonic_time ();
  g_autoptr (GArray) boxes = sq_lay_leftovers (task, lay, 0, end, least, 3);
  double took_s = (g_get_monotonic_time () - start) / 1e6;

  g_test_message ("3,000 pieces, %u leftovers: %.3f s", boxes->len, took_s);
  g_assert_cmpfloat (took_s, <, 2);
  assert_free (task, lay, 0, end, boxes);
}

/* 200 flaws across most of the cloth leave as many rectangles between them, no two alike. */
static void
test_many (void)
{
  static const SqLayLeast least[] = { { 304800, 457200 }, { 457200, 304800 }, { 914400, 101600 } };
  const gint32 width = 1346200;
  SqGridBox flaws[200];
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);
  gint32 x = 500000;

  for (guint i = 0; i < G_N_ELEMENTS (flaws); i++)
    {
      gint32 y = (gint32) (i * 7919 % 300) * 1000;
      flaws[i] = (SqGridBox){ { x, y }, { x + 20000, y + width - 300000 } };
      x += 900000 + (gint32) (i * 6761 % 600) * 1000;
    }
  sq_lay_task_add_strip (task, &(SqLayStrip){ .kind = SQ_STRIP_ROLL,
                                              .width = width,
                                              .flaws = flaws,
                                              .n_flaws = G_N_ELEMENTS (flaws) });
  add_rectangle (task, 300, 300, SQ_LAY_UPRIGHT, 1);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  gint64 start = g_get_monotonic_time ();
  g_autoptr (GArray) boxes = sq_lay_leftovers (task, lay, 0, x, least, 3);
  double took_s = (g_get_monotonic_time () - start) / 1e6;

  g_test_message ("%u leftovers: %.3f s", boxes->len, took_s);
  g_assert_cmpuint (boxes->len, >=, 200);
  g_assert_cmpfloat (took_s, <, 5);
  assert_free (task, lay, 0, x, boxes);
  for (guint i = 1; i < boxes->len; i++)
    {
      const SqGridBox *a = box_at (boxes, i - 1), *b = box_at (boxes, i);
      g_assert_cmpint ((gint64) (a->max.x - a->min.x) * (a->max.y - a->min.y), >=,
                       (gint64) (b->max.x - b->min.x) * (b->max.y - b->min.y));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-leftovers/free", test_free);
  g_test_add_func ("/roll/lay-leftovers/uneven", test_uneven);
  g_test_add_func ("/roll/lay-leftovers/largest", test_largest);
  g_test_add_func ("/roll/lay-leftovers/hole", test_round_and_hole);
  g_test_add_func ("/roll/lay-leftovers/quick", test_quick);
  g_test_add_func ("/roll/lay-leftovers/many", test_many);
  return g_test_run ();
}
