/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-phase.h"

static SqLayItem
item_with (SqGridPhase phase)
{
  return (SqLayItem){ .phase = phase };
}

static void
test_free (void)
{
  SqLayItem item = item_with ((SqGridPhase){ .anchor = { 5, 7 } });
  SqLayStrip strip = { .width = 1000 };
  SqLayPhase phase = sq_lay_phase (&item, (SqGridPose){ 0, FALSE }, (SqGrid){ 0, 0 }, &strip);

  g_assert_cmpint (sq_lay_phase_next_y (&phase, 123), ==, 123);
  g_assert_cmpint (sq_lay_phase_last_y (&phase, -5), ==, -5);
  g_assert_cmpint (sq_lay_phase_next_x (&phase, 123, 77), ==, 77);
}

/* Every 1/16 in more than 4 in, a hundred of them: nothing adds up. */
static void
test_sixteenths (void)
{
  SqLayItem item = item_with ((SqGridPhase){ .repeat_across_nm = 103187500 });
  SqLayStrip strip = { .width = 1000 };
  SqLayPhase phase = sq_lay_phase (&item, (SqGridPose){ 0, FALSE }, (SqGrid){ 0, 0 }, &strip);

  g_assert_cmpint (sq_lay_phase_next_y (&phase, 1), ==, 103188);
  g_assert_cmpint (sq_lay_phase_next_y (&phase, 103188), ==, 103188);
  g_assert_cmpint (sq_lay_phase_next_y (&phase, 103189), ==, 206375);
  g_assert_cmpint (sq_lay_phase_last_y (&phase, 206374), ==, 103188);
  g_assert_cmpint (sq_lay_phase_last_y (&phase, 206375), ==, 206375);
  g_assert_cmpint (sq_lay_phase_last_y (&phase, -1), ==, -103187);
  g_assert_cmpint (sq_lay_phase_next_y (&phase, 10318700), ==, 10318750);
}

/* The anchor turns with the piece, and the strip has its own start on the pattern. */
static void
test_turned (void)
{
  SqLayItem item = item_with ((SqGridPhase){ .anchor = { 30, 10 },
                                             .along_nm = 4000,
                                             .across_nm = 5000,
                                             .repeat_along_nm = 100000,
                                             .repeat_across_nm = 50000 });
  SqLayStrip strip = { .width = 1000, .pattern = { 7, 9 } };
  SqLayPhase upright = sq_lay_phase (&item, (SqGridPose){ 0, FALSE }, (SqGrid){ 0, 0 }, &strip);
  SqLayPhase half = sq_lay_phase (&item, (SqGridPose){ 2 * SQ_GRID_QUARTER, FALSE },
                                  (SqGrid){ 0, 0 }, &strip);
  SqLayPhase corner = sq_lay_phase (&item, (SqGridPose){ 0, FALSE }, (SqGrid){ -2, -3 }, &strip);

  /* y + 10 + 9 ≡ 5 mod 50; x + 30 + 7 ≡ 4 mod 100. */
  g_assert_cmpint (sq_lay_phase_next_y (&upright, 0), ==, 36);
  g_assert_cmpint (sq_lay_phase_next_x (&upright, 36, 0), ==, 67);
  g_assert_cmpint (sq_lay_phase_next_y (&half, 0), ==, 6);
  g_assert_cmpint (sq_lay_phase_next_x (&half, 6, 0), ==, 27);
  g_assert_cmpint (sq_lay_phase_next_y (&corner, 0), ==, 33);
  g_assert_cmpint (sq_lay_phase_next_x (&corner, 33, 0), ==, 65);
}

static void
test_drop (void)
{
  SqLayItem item = item_with (
      (SqGridPhase){ .repeat_along_nm = 300000, .repeat_across_nm = 100000, .drop_nm = 150000 });
  SqLayStrip strip = { .width = 1000 };
  SqLayPhase phase = sq_lay_phase (&item, (SqGridPose){ 0, FALSE }, (SqGrid){ 0, 0 }, &strip);

  g_assert_cmpint (sq_lay_phase_next_x (&phase, 0, 1), ==, 300);
  g_assert_cmpint (sq_lay_phase_next_x (&phase, 100, 1), ==, 150);
  g_assert_cmpint (sq_lay_phase_next_x (&phase, 200, 151), ==, 300);
  g_assert_cmpint (sq_lay_phase_next_x (&phase, -100, 151), ==, 450);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-phase/free", test_free);
  g_test_add_func ("/roll/lay-phase/sixteenths", test_sixteenths);
  g_test_add_func ("/roll/lay-phase/turned", test_turned);
  g_test_add_func ("/roll/lay-phase/drop", test_drop);
  return g_test_run ();
}
