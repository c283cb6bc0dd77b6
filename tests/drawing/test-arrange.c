/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/arrange.h"
#include "hand-made.h"

#define MOST_PIECES 16

static const SqTable table = { .width = 620, .height = 640, .margin = 18, .gap = 16, .em = 13 };

/* A face and an underside of @width × @depth and strips all round; @labels has room for all. */
static GPtrArray *
pieces_for (double width, double depth, guint n_strips, SqPieceLabel *labels)
{
  GPtrArray *pieces = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_piece_unref);
  for (guint i = 0; i < 2 + n_strips; i++)
    {
      double length = i < 2 ? width : i % 2 ? depth : width, height = i < 2 ? depth : 76;
      SqPieceRole role = i == 0 ? SQ_ROLE_FACE : i == 1 ? SQ_ROLE_UNDERSIDE : SQ_ROLE_BOXING;
      g_ptr_array_add (pieces,
                       hand_piece (role, sq_path_new_rectangle (50 * i, 0, 50 * i + length, height),
                                   12.7, M_PI / 2, 0));
      labels[i] = (SqPieceLabel){ .name = i < 2 ? "Underside" : "Right front boxing",
                                  .size = "38 1⁄2 × 20 1⁄8",
                                  .count = "cut 1",
                                  .n = 1 };
    }
  return pieces;
}

/* What a piece and its label take, in user units. */
static SqBox
taken (const SqArrangement *a, const GPtrArray *pieces, const SqPieceLabel *labels, guint i)
{
  const SqPiece *piece = g_ptr_array_index (pieces, i);
  gboolean is_inside;
  SqBox box = sq_path_box (sq_piece_cut (piece, 0));
  box = sq_box_union (box, sq_piece_label_box (piece, &labels[i], table.em / a->scale, &is_inside));
  box.min = sq_scale (sq_add (box.min, a->stands[i].offset), a->scale);
  box.max = sq_scale (sq_add (box.max, a->stands[i].offset), a->scale);
  return box;
}

/* @margin_share: of the table's margin, how much of it is still free. */
static void
assert_apart_within (const SqArrangement *a, const GPtrArray *pieces, const SqPieceLabel *labels,
                     double margin_share)
{
  double margin = table.margin * margin_share - 1e-6;
  for (guint i = 0; i < pieces->len; i++)
    {
      SqBox box = taken (a, pieces, labels, i);
      g_assert_cmpfloat (box.min.x, >=, margin);
      g_assert_cmpfloat (box.min.y, >=, margin);
      g_assert_cmpfloat (box.max.x, <=, table.width - margin);
      g_assert_cmpfloat (box.max.y, <=, table.height - margin);
      for (guint j = 0; j < i; j++)
        g_assert_false (sq_box_meets (box, taken (a, pieces, labels, j), 0));
    }
}

static void
assert_apart (const SqArrangement *a, const GPtrArray *pieces, const SqPieceLabel *labels)
{
  assert_apart_within (a, pieces, labels, 1);
}

static void
test_apart (void)
{
  for (int round = 0; round < 300; round++)
    {
      SqPieceLabel labels[MOST_PIECES];
      guint n_strips = (guint) g_test_rand_int_range (0, 9);
      g_autoptr (GPtrArray) pieces = pieces_for (g_test_rand_double_range (200, 3000),
                                                 g_test_rand_double_range (200, 1500), n_strips,
                                                 labels);
      g_autoptr (SqArrangement) a = sq_arrangement_new (pieces, labels, &table, NULL);
      g_assert_cmpuint (a->n_stands, ==, pieces->len);
      assert_apart (a, pieces, labels);
    }
}

/* As large as can be: a little larger and it would no longer fit. */
static void
test_large (void)
{
  SqPieceLabel labels[MOST_PIECES];
  g_autoptr (GPtrArray) pieces = pieces_for (1300, 500, 0, labels);
  g_autoptr (SqArrangement) a = sq_arrangement_new (pieces, labels, &table, NULL);
  double width = 1300 + 2 * 12.7; /* stacked, the table's width decides */
  g_assert_cmpfloat (a->scale * width, <=, table.width - 2 * table.margin + 1e-6);
  g_assert_cmpfloat (a->scale * width, >=, 0.95 * (table.width - 2 * table.margin));
  g_assert_cmpuint (a->stands[0].row, ==, 0);
  g_assert_cmpuint (a->stands[1].row, ==, 1);
}

/* A drag: 200 steps of 2 mm. Rows stay, and the scale changes only now and then. */
/* Faces of several parts: neither a column of all nor one row, whose labels alone would be wider than
 * the table. */
static void
test_parts (void)
{
  SqPieceLabel labels[MOST_PIECES];
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_piece_unref);
  guint n_rows = 0;

  for (guint i = 0; i < 6; i++)
    {
      g_ptr_array_add (pieces,
                       hand_piece (i < 3 ? SQ_ROLE_FACE : SQ_ROLE_UNDERSIDE,
                                   sq_path_new_rectangle (0, 0, i % 3 == 1 ? 700 : 150, 500), 12.7,
                                   M_PI / 2, 0));
      labels[i] = (SqPieceLabel){
        .name = "Underside, part 1 of 3", .size = "8 1⁄2 × 20 1⁄8", .count = "cut 1", .n = 1
      };
    }
  g_autoptr (SqArrangement) a = sq_arrangement_new (pieces, labels, &table, NULL);
  for (guint i = 0; i < 6; i++)
    n_rows = MAX (n_rows, a->stands[i].row + 1);
  g_assert_cmpuint (n_rows, >=, 2);
  g_assert_cmpuint (n_rows, <=, 4);
  assert_apart (a, pieces, labels);
}

static void
test_stable (void)
{
  SqArrangement *before = NULL;
  guint rows_changed = 0, scale_changed = 0;
  for (int step = 0; step < 200; step++)
    {
      SqPieceLabel labels[MOST_PIECES];
      g_autoptr (GPtrArray) pieces = pieces_for (900 + 2 * step, 480 + step, 5, labels);
      SqArrangement *now = sq_arrangement_new (pieces, labels, &table, before);
      /* Under the hand, pieces that keep their places may grow into the margin. */
      assert_apart_within (now, pieces, labels, 0.1);
      for (guint i = 0; before != NULL && i < now->n_stands; i++)
        if (now->stands[i].row != before->stands[i].row)
          {
            rows_changed++;
            break;
          }
      if (before != NULL && now->scale != before->scale)
        scale_changed++;
      g_clear_pointer (&before, sq_arrangement_free);
      before = now;
    }
  sq_arrangement_free (before);
  g_assert_cmpuint (rows_changed, <=, 1);
  g_assert_cmpuint (scale_changed, <=, 25);
}

/* One edit and back: the picture is the one from before. */
static void
test_there_and_back (void)
{
  SqPieceLabel labels[MOST_PIECES];
  g_autoptr (GPtrArray) pieces = pieces_for (900, 480, 5, labels);
  g_autoptr (GPtrArray) wider = pieces_for (905, 480, 5, labels);
  g_autoptr (SqArrangement) first = sq_arrangement_new (pieces, labels, &table, NULL);
  g_autoptr (SqArrangement) second = sq_arrangement_new (wider, labels, &table, first);
  g_autoptr (SqArrangement) third = sq_arrangement_new (pieces, labels, &table, second);
  g_assert_cmpfloat (second->scale, ==, first->scale);
  for (guint i = 0; i < first->n_stands; i++)
    {
      g_assert_cmpfloat (third->stands[i].offset.x, ==, first->stands[i].offset.x);
      g_assert_cmpfloat (third->stands[i].offset.y, ==, first->stands[i].offset.y);
    }
}

static void
test_none (void)
{
  g_autoptr (GPtrArray) pieces = g_ptr_array_new ();
  g_autoptr (SqArrangement) a = sq_arrangement_new (pieces, NULL, &table, NULL);
  g_assert_cmpuint (a->n_stands, ==, 0);
  g_assert_cmpfloat (a->scale, >, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/arrange/apart", test_apart);
  g_test_add_func ("/drawing/arrange/large", test_large);
  g_test_add_func ("/drawing/arrange/parts", test_parts);
  g_test_add_func ("/drawing/arrange/stable", test_stable);
  g_test_add_func ("/drawing/arrange/there-and-back", test_there_and_back);
  g_test_add_func ("/drawing/arrange/none", test_none);
  return g_test_run ();
}
