/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/plan.h"

#include "cover/hand-made.h"

#define SEAT                                                                                       \
  "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},"               \
  "{'id':4,'x':0,'y':500}]"
#define PLATE                                                                                      \
  "'build':'folded-corner','thickness':63.5,'outline':[{'id':1,'x':0,'y':0},"                      \
  "{'id':2,'x':469.9,'y':0},{'id':3,'x':469.9,'y':469.9},{'id':4,'x':0,'y':469.9}]"

static SqJob *
job_of_cushions (const char *cushions)
{
  g_autofree char *text = g_strdup_printf ("{'format':'squab job','version':1,'cloths':[{'id':1},"
                                           "{'id':2,'class':'mesh'}],'cushions':[%s]}",
                                           cushions);
  return job_of_text (text);
}

static const SqCutEntry *
entry (const SqPlan *plan, guint i)
{
  return &g_array_index (plan->cut_list, SqCutEntry, i);
}

/* By cloth as the job lists them; then faces, undersides, strips; then cushion by cushion. */
static void
test_cut_list (void)
{
  g_autoptr (SqJob) job = job_of_cushions ("{'id':5,'count':3,'cloth':{'underside':2}," SEAT "},"
                                           "{'id':6,'count':2," PLATE "}");
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  static const struct
  {
    guint cushion, count;
    SqPieceRole role;
    SqId cloth;
  } expected[] = {
    { 0, 3, SQ_ROLE_FACE, 1 },      { 1, 2, SQ_ROLE_FACE, 1 },      { 1, 2, SQ_ROLE_UNDERSIDE, 1 },
    { 0, 3, SQ_ROLE_BOXING, 1 },    { 0, 3, SQ_ROLE_ZIP_STRIP, 1 }, { 0, 3, SQ_ROLE_ZIP_STRIP, 1 },
    { 0, 3, SQ_ROLE_UNDERSIDE, 2 },
  };

  g_assert_cmpuint (plan->cut_list->len, ==, G_N_ELEMENTS (expected));
  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    {
      const SqCutEntry *e = entry (plan, i);
      const SqPiece *piece = sq_cover_piece (sq_plan_cover (plan, e->cushion), e->piece);
      g_assert_cmpuint (e->number, ==, i + 1);
      g_assert_cmpuint (e->cushion, ==, expected[i].cushion);
      g_assert_cmpuint (e->count, ==, expected[i].count);
      g_assert_cmpint (piece->role, ==, expected[i].role);
      g_assert_cmpuint (e->cloth, ==, expected[i].cloth);
    }
}

/* Two worked plates: 635² less four notches of 69.85², and an underside of 488.95². */
static void
test_totals (void)
{
  g_autoptr (SqJob) job = job_of_cushions ("{'id':1,'count':2," PLATE "}");
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  SqFigures f = sq_plan_figures (plan);
  double cloth = 2 * (635.0 * 635 - 4 * 69.85 * 69.85 + 488.95 * 488.95);
  const SqClothTotal *total = &g_array_index (plan->cloths, SqClothTotal, 0);

  g_assert_cmpuint (plan->cloths->len, ==, 1);
  g_assert_cmpuint (total->cloth, ==, 1);
  g_assert_cmpuint (total->pieces, ==, 4);
  assert_mm (total->area_mm2, cloth);
  g_assert_cmpuint (f.cushions, ==, 2);
  g_assert_cmpuint (f.pieces, ==, 4);
  assert_mm (f.cloth_mm2, cloth);
  /* corner seams 73.025 each, the underside once round */
  assert_mm (f.seam_mm, 2 * (4 * 73.025 + 4 * 469.9));
  assert_mm (f.zip_mm, 2 * (469.9 + 50.8));
  g_assert_cmpuint (f.sliders, ==, 2);
  /* foam 1/2 in larger, 28.8 kg/m³ */
  g_assert_cmpuint (f.foam_parts, ==, 2);
  assert_mm (f.foam_mm3 / 1e6, 2 * 482.6 * 482.6 * 63.5 / 1e6);
  assert_mm (f.foam_g, f.foam_mm3 * 28.8e-6);
  g_assert_cmpuint (f.notes + f.warnings + f.faults, ==, 0);
}

/* A pair is one as drawn and one mirrored: each has its cover and is cut as often. */
static void
test_pairs (void)
{
  g_autoptr (SqJob) job = job_of_cushions ("{'id':1,'count':3,'hand':'pair'," PLATE "},"
                                           "{'id':2," PLATE "}");
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);

  g_assert_cmpuint (plan->covers->len, ==, 3);
  g_assert_false (sq_plan_cover (plan, 0)->mirrored);
  g_assert_cmpuint (sq_plan_cover (plan, 1)->cushion->id, ==, 2);
  g_assert_true (sq_plan_cover (plan, 2)->mirrored);
  g_assert_cmpuint (sq_plan_cover (plan, 2)->cushion->id, ==, 1);
  SqFigures f = sq_plan_figures (plan);
  g_assert_cmpuint (f.cushions, ==, 7);
  g_assert_cmpuint (f.pieces, ==, 14);
}

/* ---- what is shared with the plan before --------------------------------------------------- */

/* The plan's first cushion with another thickness. */
static SqJob *
thicker (const SqJob *job, double thickness_mm)
{
  g_autoptr (SqCushion) c = sq_cushion_dup (g_ptr_array_index (job->cushions, 0));
  c->thickness_mm = thickness_mm;
  c->given |= SQ_GIVEN_THICKNESS;
  return sq_job_with_cushion (job, c);
}

static void
test_covers_shared (void)
{
  g_autoptr (SqJob) job = job_of_cushions ("{'id':1," SEAT "},{'id':2," SEAT "}");
  g_autoptr (SqPlan) before = sq_plan_new (job, NULL);
  g_autoptr (SqJob) edited = thicker (job, 90);
  g_autoptr (SqPlan) after = sq_plan_new (edited, before);

  g_assert_true (sq_plan_cover (after, 0) != sq_plan_cover (before, 0));
  g_assert_true (sq_plan_cover (after, 1) == sq_plan_cover (before, 1));
}

/* A thicker boxing leaves the underside as it was, which lies on the same sew line at the same
 * height. */
static void
test_pieces_shared (void)
{
  g_autoptr (SqJob) job = job_of_cushions ("{'id':1," SEAT "}");
  g_autoptr (SqPlan) before = sq_plan_new (job, NULL);
  g_autoptr (SqJob) edited = thicker (job, 90);
  g_autoptr (SqPlan) after = sq_plan_new (edited, before);
  const SqCover *old = sq_plan_cover (before, 0), *fresh = sq_plan_cover (after, 0);

  g_assert_true (piece_of (fresh, SQ_ROLE_UNDERSIDE) == piece_of (old, SQ_ROLE_UNDERSIDE));
  g_assert_true (piece_of (fresh, SQ_ROLE_BOXING) != piece_of (old, SQ_ROLE_BOXING));
}

/* Cloths and defaults are part of every cover. */
static void
test_surroundings (void)
{
  g_autoptr (SqJob) job = job_of_cushions ("{'id':1," SEAT "}");
  g_autoptr (SqPlan) before = sq_plan_new (job, NULL);
  g_autoptr (SqCloth) vinyl = sq_cloth_dup (sq_job_cloth (job, 1));
  vinyl->kind = SQ_CLOTH_VINYL;
  vinyl->given |= SQ_GIVEN_CLOTH_CLASS;
  g_autoptr (SqJob) edited = sq_job_with_cloth (job, vinyl);
  g_autoptr (SqPlan) after = sq_plan_new (edited, before);
  const SqCover *old = sq_plan_cover (before, 0), *fresh = sq_plan_cover (after, 0);

  g_assert_true (old != fresh);
  /* 3/8 in of allowance instead of 1/2 */
  assert_mm (piece_of (old, SQ_ROLE_FACE)->width_mm, 625.4);
  assert_mm (piece_of (fresh, SQ_ROLE_FACE)->width_mm, 619.05);
}

/* Faces first, then what must be found on the stripes, then strips to rip: though the first cushion's
 * boxing is let run free. */
static void
test_order_of_cutting (void)
{
  g_autoptr (SqJob) job = job_of_text (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'repeat':{'across':60},"
      "'stripes':[{'at':0,'width':20,'colour':'#102030'}]}],'cushions':[{'id':1,'thickness':50,"
      "'build':'boxed','stripes':{'centre_on':'none'},'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':"
      "400,'y':0},{'id':3,'x':400,'y':300},{'id':4,'x':0,'y':300}]},{'id':2,'thickness':50,'build':"
      "'boxed','outline':[{'id':1,'x':0,'y':0},{'id':2,'x':400,'y':0},{'id':3,'x':400,'y':300},"
      "{'id':4,'x':0,'y':300}]}]}");
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  guint turn = 0;

  for (guint i = 0; i < plan->cut_list->len; i++)
    {
      const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, i);
      const SqPiece *piece = sq_cover_piece (sq_plan_cover (plan, entry->cushion), entry->piece);
      gboolean is_large = piece->role == SQ_ROLE_FACE || piece->role == SQ_ROLE_UNDERSIDE;
      guint own = is_large ? 0 : piece->phase.across ? 1 : 2;
      g_assert_cmpuint (own, >=, turn);
      turn = own;
    }
  g_assert_cmpuint (turn, ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/plan/cut-list", test_cut_list);
  g_test_add_func ("/plan/plan/totals", test_totals);
  g_test_add_func ("/plan/plan/pairs", test_pairs);
  g_test_add_func ("/plan/plan/shared/covers", test_covers_shared);
  g_test_add_func ("/plan/plan/shared/pieces", test_pieces_shared);
  g_test_add_func ("/plan/plan/shared/surroundings", test_surroundings);
  g_test_add_func ("/plan/order of cutting", test_order_of_cutting);
  return g_test_run ();
}
