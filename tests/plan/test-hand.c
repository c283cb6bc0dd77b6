/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Left and right hand: a mirrored cushion, and a pair. */
#include "exchange/defaults-file.h"
#include "plan/plan.h"

static SqCushion *
a_seat (SqHand hand)
{
  const SqCorner corners[] = {
    { .id = 11, .at = { 0, 0 }, .front = TRUE },
    { .id = 12, .at = { 900, 0 }, .radius_mm = 40, .given = SQ_GIVEN_RADIUS },
    { .id = 13, .at = { 1000, 420 }, .kind = SQ_EDGE_WALL, .given = SQ_GIVEN_KIND },
    { .id = 14, .at = { 40, 500 }, .shape = SQ_SHAPE_BOW, .bow_mm = 25 },
  };
  const guint n = G_N_ELEMENTS (corners);
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &n, 1);
  SqCushion *cushion = sq_cushion_new (5, outline);

  cushion->hand = hand;
  cushion->count = 3;
  cushion->given = SQ_GIVEN_HAND | SQ_GIVEN_COUNT;
  return cushion;
}

static SqPlan *
plan_of (const SqCushion *cushion)
{
  SqDefaults defaults;
  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) empty = sq_job_new (&defaults);
  g_autoptr (SqJob) job = sq_job_with_cushion (empty, cushion);
  return sq_plan_new (job, NULL);
}

/* The edge with @id in @cover, as @side says. */
static SqSideOf
side_of (const SqCover *cover, SqId id)
{
  const SqFinishedRing *ring = &cover->finished->rings[0];

  for (guint i = 0; i < ring->n_edges; i++)
    if (ring->edges[i].id == id)
      return ring->edges[i].side;
  g_assert_not_reached ();
}

static void
test_pair (void)
{
  g_autoptr (SqCushion) cushion = a_seat (SQ_HAND_PAIR);
  g_autoptr (SqPlan) plan = plan_of (cushion);

  g_assert_cmpuint (plan->covers->len, ==, 2);
  const SqCover *drawn = sq_plan_cover (plan, 0), *image = sq_plan_cover (plan, 1);
  g_assert_false (drawn->mirrored);
  g_assert_true (image->mirrored);
  g_assert_cmpuint (sq_plan_figures (plan).cushions, ==, 6);
  g_assert_cmpuint (drawn->pieces->len, ==, image->pieces->len);

  /* An edge keeps its name, and lies on the other side. */
  g_assert_cmpint (side_of (drawn, 12), ==, SQ_SIDE_RIGHT);
  g_assert_cmpint (side_of (image, 12), ==, SQ_SIDE_LEFT);
  g_assert_cmpint (side_of (image, 13), ==, SQ_SIDE_BACK);
  g_assert_cmpuint (image->zip.edge, ==, drawn->zip.edge);
  g_assert_cmpfloat (fabs (image->zip.run_mm - drawn->zip.run_mm), <, 1e-9);

  /* The image's top is the drawn one's underside seen right side up. */
  g_autoptr (SqPath) top = sq_path_mirrored (sq_piece_cut (sq_cover_piece (image, 0), 0));
  g_assert_cmpfloat (fabs (sq_path_area_mm2 (top)
                           - sq_path_area_mm2 (sq_piece_cut (sq_cover_piece (drawn, 0), 0))),
                     <, 1e-6);
  for (guint i = 0; i < sq_path_n_nodes (top); i++)
    g_assert_cmpfloat (
        sq_path_nearest (sq_piece_cut (sq_cover_piece (drawn, 0), 0), sq_path_nodes (top)[i].at)
            .distance_mm,
        <, 1e-6);
}

static void
test_shared (void)
{
  g_autoptr (SqCushion) cushion = a_seat (SQ_HAND_PAIR);
  g_autoptr (SqPlan) plan = plan_of (cushion);
  g_autoptr (SqPlan) again = sq_plan_new (plan->job, plan);

  for (guint i = 0; i < 2; i++)
    g_assert_true (sq_plan_cover (plan, i) == sq_plan_cover (again, i));
}

static void
test_mirrored (void)
{
  g_autoptr (SqCushion) cushion = a_seat (SQ_HAND_MIRRORED);
  g_autoptr (SqPlan) plan = plan_of (cushion);
  g_autoptr (SqCushion) zipped = sq_cushion_dup (cushion);

  g_assert_cmpuint (plan->covers->len, ==, 1);
  g_assert_true (sq_plan_cover (plan, 0)->mirrored);

  /* A zip from 100 to 600 along the back, as drawn, is as far from the same corners in the image. */
  zipped->zip.edge = 13;
  zipped->zip.from_mm = 100;
  zipped->zip.to_mm = 600;
  zipped->given |= SQ_GIVEN_ZIP_EDGE | SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO;
  g_autoptr (SqPlan) image = plan_of (zipped);
  zipped->hand = SQ_HAND_AS_DRAWN;
  g_autoptr (SqPlan) drawn = plan_of (zipped);
  const SqZip *a = &sq_plan_cover (drawn, 0)->zip, *b = &sq_plan_cover (image, 0)->zip;
  const SqFinishedRing *ring = &sq_plan_cover (drawn, 0)->finished->rings[0];
  double length = 0;
  for (guint i = 0; i < ring->n_edges; i++)
    if (ring->edges[i].id == 13)
      length = ring->edges[i].end_mm - ring->edges[i].start_mm;
  g_assert_cmpfloat (fabs (a->from_mm - 100), <, 1e-9);
  g_assert_cmpfloat (fabs (b->from_mm - (length - 600)), <, 1e-9);
  g_assert_cmpfloat (fabs (b->to_mm - (length - 100)), <, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/hand/pair", test_pair);
  g_test_add_func ("/plan/hand/shared", test_shared);
  g_test_add_func ("/plan/hand/mirrored", test_mirrored);
  return g_test_run ();
}
