/* SPDX-License-Identifier: GPL-3.0-or-later */
/* That a lay is looked over so that whatever is wrong with it is found. */
#include "roll/made-task.h"

/* Four squares of 100 mm in two rows on 200 mm, with stripes to keep to, and one too wide. */
static SqLayTask *
squares (double gap_mm)
{
  SqLayTask *task = made_task (200, gap_mm);

  add_path (task, sq_path_new_rectangle (0, 0, 100, 100),
            (SqLayItemSpec){
                .turns = SQ_LAY_UPRIGHT | SQ_LAY_HALF, .repeat_across_mm = 50, .demand = 4 });
  add_rectangle (task, 10, 201, SQ_LAY_UPRIGHT, 2);
  sq_lay_task_seal (task);
  return task;
}

/* Three of 100 × 200 mm, the second of them pinned, on a bolt with a flaw: one at each end of the
 * bolt, one between. */
static SqLayTask *
on_a_bolt (void)
{
  SqLayTask *task = sq_lay_task_new (0);
  SqGridBox flaw = { { 100000, 0 }, { 110000, 1000 } };
  const SqLayStrip strip = { .width = 200000, .length = 410000, .flaws = &flaw, .n_flaws = 1 };
  const SqLayPin pin = { .copy = 1, .at = { 310000, 0 } };

  sq_lay_task_add_strip (task, &strip);
  add_rectangle (task, 100, 200, SQ_LAY_UPRIGHT, 3);
  sq_lay_task_add_pin (task, &pin);
  sq_lay_task_seal (task);
  return task;
}

/* A copy to spoil. */
static SqLay *
copy_of (const SqLay *lay)
{
  SqLay *copy = g_memdup2 (lay, sizeof *lay);

  copy->ref_count = 1;
  copy->placed = g_array_copy (lay->placed);
  copy->unlaid = g_array_copy (lay->unlaid);
  copy->lengths = g_array_copy (lay->lengths);
  return copy;
}

static void
test_right (void)
{
  g_autoptr (SqLayTask) task = squares (0);
  g_autoptr (SqLay) lay = lay_of (task, 0);

  g_assert_cmpint (sq_lay_fault (task, lay, NULL), ==, SQ_LAY_RIGHT);
  g_assert_true (sq_lay_is_valid (task, lay));
  g_assert_cmpuint (lay->placed->len, ==, 4);
  g_assert_cmpint (sq_lay_length (lay, 0), ==, 200000);
  g_assert_cmpfloat (sq_lay_area_mm2 (task, lay, 0), ==, 40000);
  g_assert_cmpfloat (sq_lay_density (task, lay, 0), ==, 1);
}

static void
spoil_task (SqLay *lay)
{
  lay->task_digest++;
}

static void
spoil_strips (SqLay *lay)
{
  g_array_set_size (lay->lengths, 2);
}

static void
spoil_copy (SqLay *lay)
{
  sq_lay_placed (lay, 3)->copy = 2;
}

static void
spoil_missing (SqLay *lay)
{
  g_array_set_size (lay->placed, 3);
}

static void
spoil_unlaid (SqLay *lay)
{
  g_array_index (lay->unlaid, SqUnlaid, 0).count = 1;
}

static void
spoil_item (SqLay *lay)
{
  sq_lay_placed (lay, 0)->item = 7;
}

static void
spoil_turn (SqLay *lay)
{
  sq_lay_placed (lay, 1)->pose.turn = SQ_GRID_QUARTER;
}

static void
spoil_length (SqLay *lay)
{
  sq_lay_length (lay, 0)--;
}

static void
spoil_start (SqLay *lay)
{
  sq_lay_placed (lay, 0)->at.x = -1;
}

static void
spoil_edge (SqLay *lay)
{
  sq_lay_placed (lay, 0)->at.y += 150000;
}

static void
spoil_strip (SqLay *lay)
{
  sq_lay_placed (lay, 2)->strip = 1;
}

static void
spoil_pattern (SqLay *lay)
{
  for (guint i = 0; i < lay->placed->len; i++)
    sq_lay_placed (lay, i)->at.y -= sq_lay_placed (lay, i)->at.y > 0;
}

static void
spoil_place (SqLay *lay)
{
  sq_lay_length (lay, 0) += 10;
  for (guint i = 0; i < lay->placed->len; i++)
    sq_lay_placed (lay, i)->at.x += sq_lay_placed (lay, i)->at.x == 0;
}

typedef struct
{
  const char *name;
  void (*spoil) (SqLay *);
  SqLayFault fault;
} Spoil;

static const Spoil spoils[] = {
  { "of another task", spoil_task, SQ_LAY_OTHER_TASK },
  { "another number of strips", spoil_strips, SQ_LAY_OTHER_TASK },
  { "a copy twice", spoil_copy, SQ_LAY_COUNT },
  { "a copy missing", spoil_missing, SQ_LAY_COUNT },
  { "told as laid", spoil_unlaid, SQ_LAY_COUNT },
  { "no such item", spoil_item, SQ_LAY_COUNT },
  { "turned", spoil_turn, SQ_LAY_POSE },
  { "longer than told", spoil_length, SQ_LAY_OUTSIDE },
  { "before the cut end", spoil_start, SQ_LAY_OUTSIDE },
  { "over the edge", spoil_edge, SQ_LAY_OUTSIDE },
  { "no such strip", spoil_strip, SQ_LAY_OUTSIDE },
  { "off the stripes", spoil_pattern, SQ_LAY_PATTERN },
  { "over another", spoil_place, SQ_LAY_OVERLAP },
};

static void
test_wrong (void)
{
  g_autoptr (SqLayTask) task = squares (0);
  g_autoptr (SqLay) lay = lay_of (task, 0);

  for (guint i = 0; i < G_N_ELEMENTS (spoils); i++)
    {
      g_autoptr (SqLay) spoiled = copy_of (lay);
      spoils[i].spoil (spoiled);
      g_test_message ("%s", spoils[i].name);
      g_assert_cmpint (sq_lay_fault (task, spoiled, NULL), ==, spoils[i].fault);
      g_assert_false (sq_lay_is_valid (task, spoiled));
    }
}

static void
spoil_flaw (SqLay *lay)
{
  sq_lay_placed (lay, 2)->at.x--;
}

static void
spoil_pin (SqLay *lay)
{
  sq_lay_placed (lay, 1)->at.x--;
}

static void
spoil_pinned_copy (SqLay *lay)
{
  SqUnlaid unlaid = { 0, 1, SQ_UNLAID_NO_ROOM };

  g_array_remove_index (lay->placed, 1);
  g_array_append_val (lay->unlaid, unlaid);
}

static void
spoil_end (SqLay *lay)
{
  sq_lay_placed (lay, 1)->at.x++;
  sq_lay_length (lay, 0)++;
}

static void
spoil_told_end (SqLay *lay)
{
  sq_lay_length (lay, 0)++;
}

static const Spoil bolt_spoils[] = {
  { "on the flaw", spoil_flaw, SQ_LAY_FLAW },
  { "off its pin", spoil_pin, SQ_LAY_PIN },
  { "a pinned one left out, and one after it laid", spoil_pinned_copy, SQ_LAY_COUNT },
  { "over the bolt's end", spoil_end, SQ_LAY_OUTSIDE },
  { "longer than the bolt", spoil_told_end, SQ_LAY_OUTSIDE },
};

static void
test_wrong_on_bolt (void)
{
  g_autoptr (SqLayTask) task = on_a_bolt ();
  g_autoptr (SqLay) lay = lay_of (task, 0);

  g_assert_cmpint (sq_lay_fault (task, lay, NULL), ==, SQ_LAY_RIGHT);
  g_assert_cmpint (sq_lay_placed (lay, 2)->at.x, ==, 110000);
  for (guint i = 0; i < G_N_ELEMENTS (bolt_spoils); i++)
    {
      g_autoptr (SqLay) spoiled = copy_of (lay);
      bolt_spoils[i].spoil (spoiled);
      g_test_message ("%s", bolt_spoils[i].name);
      g_assert_cmpint (sq_lay_fault (task, spoiled, NULL), ==, bolt_spoils[i].fault);
    }
}

/* Without its pinned copy, one may not be missing before those that lie. */
static void
test_pinned_beyond (void)
{
  g_autoptr (SqLayTask) task = sq_lay_task_new (0);
  const SqLayPin pin = { .copy = 2 };

  add_strip (task, SQ_STRIP_SHEET, 200, 200, 0);
  add_rectangle (task, 100, 200, SQ_LAY_UPRIGHT, 4);
  sq_lay_task_add_pin (task, &pin);
  g_autoptr (SqLay) lay = lay_of (task, 0);
  g_autoptr (SqLay) spoiled = copy_of (lay);

  g_assert_cmpuint (lay->placed->len, ==, 2);
  g_assert_cmpint (sq_lay_fault (task, lay, NULL), ==, SQ_LAY_RIGHT);
  sq_lay_placed (spoiled, 0)->copy = 1;
  g_assert_cmpint (sq_lay_fault (task, spoiled, NULL), ==, SQ_LAY_COUNT);
}

/* A lay that is right where touching is allowed is not where there must be a gap. */
static void
test_gap (void)
{
  g_autoptr (SqLayTask) close = squares (0), apart = squares (5);
  g_autoptr (SqLay) lay = lay_of (close, 0);
  g_autoptr (SqLay) copy = copy_of (lay);
  guint at = 99;

  copy->task_digest = apart->digest;
  g_assert_cmpint (sq_lay_fault (apart, copy, &at), ==, SQ_LAY_OVERLAP);
  g_assert_cmpuint (at, <, 4);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay/right", test_right);
  g_test_add_func ("/roll/lay/wrong", test_wrong);
  g_test_add_func ("/roll/lay/wrong-on-bolt", test_wrong_on_bolt);
  g_test_add_func ("/roll/lay/pinned-beyond", test_pinned_beyond);
  g_test_add_func ("/roll/lay/gap", test_gap);
  return g_test_run ();
}
