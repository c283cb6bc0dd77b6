/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/label-words.h"

#include "cover/hand-made.h"

/* A pair of three boxed seats of 600 × 500 for a harbour hall. */
static SqSpreads *
spreads_of_pair (void)
{
  const SqLayBudget first = { .seed = 1 };
  g_autoptr (SqJob) job = job_of_text (
      "{'format':'squab job','version':1,'units':'mm','title':'Hall','customer':'Pier House',"
      "'cloths':[{'id':1,'name':'Harbour stripe','width':1400}],'cushions':[{'id':1,'name':'Bench',"
      "'count':3,'hand':'pair','thickness':60,'build':'boxed','outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':600,'y':0},{'id':3,'x':500,'y':500},{'id':4,'x':0,'y':500}]}]}");
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);

  return sq_spreads_new (lays);
}

/* Line of the cut list of the first piece of @role. */
static guint
entry_of (const SqSpreads *spreads, SqPieceRole role, gboolean mirrored)
{
  const SqPlan *plan = spreads->lays->plan;

  for (guint i = 0; i < plan->cut_list->len; i++)
    {
      const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, i);
      const SqCover *cover = sq_plan_cover (plan, entry->cushion);
      if (cover->mirrored == mirrored && sq_cover_piece (cover, entry->piece)->role == role)
        return i;
    }
  g_assert_not_reached ();
}

static void
test_single (void)
{
  g_autoptr (SqSpreads) spreads = spreads_of_pair ();
  SqBundle bundle = { entry_of (spreads, SQ_ROLE_UNDERSIDE, TRUE), 1, 1, 0, 0 };
  SqLabelText label;

  sq_words_label (&label, spreads, &bundle, "2026-03-01");
  g_assert_cmpstr (label.name, ==, "Underside");
  g_assert_cmpstr (label.face, ==, "UNDERSIDE");
  g_assert_cmpstr (label.bundle, ==, "");
  g_assert_cmpstr (label.cushion, ==, "Bench");
  g_assert_cmpstr (label.which, ==, "cushion 2 of 3 · MIRRORED");
  g_assert_cmpstr (label.place, ==, "");
  g_assert_cmpstr (label.lies, ==, "Harbour stripe");
  g_assert_cmpstr (label.job, ==, "Hall · For Pier House");
  g_assert_cmpstr (label.state, ==, "Revision A · 2026-03-01");
  sq_label_text_clear (&label);
}

/* Boxing has no front, but a place. */
static void
test_place (void)
{
  g_autoptr (SqSpreads) spreads = spreads_of_pair ();
  SqBundle bundle = { entry_of (spreads, SQ_ROLE_ZIP_STRIP, FALSE), 0, 1, 0, -1 };
  SqLabelText label;

  sq_words_label (&label, spreads, &bundle, "2026-03-01");
  g_assert_null (label.face);
  g_assert_cmpstr (label.which, ==, "cushion 1 of 3 · as drawn");
  g_assert_cmpstr (label.place, ==, "at the back, its top above");
  g_assert_cmpstr (label.lies, ==, "Harbour stripe · not laid");
  sq_label_text_clear (&label);
}

static void
test_bundles (void)
{
  static const struct
  {
    SqBundle bundle;
    const char *bundle_text, *which;
  } cases[] = {
    { { 0, 0, 2, 0, 0 }, "2 plies · copies 1–2 of 3", "cushions 1–2 of 3 · as drawn" },
    { { 0, 2, 1, 1, 0 }, "2 plies · copy 3 of 3 · 1 spare", "cushion 3 of 3 · as drawn" },
    { { 0, 0, 3, 3, 0 }, "6 plies · copies 1–3 of 3 · 3 spares", "cushions 1–3 of 3 · as drawn" },
  };
  g_autoptr (SqSpreads) spreads = spreads_of_pair ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SqBundle bundle = cases[i].bundle;
      SqLabelText label;
      bundle.entry = entry_of (spreads, SQ_ROLE_FACE, FALSE);
      sq_words_label (&label, spreads, &bundle, "2026-03-01");
      g_assert_cmpstr (label.face, ==, "TOP");
      g_assert_cmpstr (label.bundle, ==, cases[i].bundle_text);
      g_assert_cmpstr (label.which, ==, cases[i].which);
      sq_label_text_clear (&label);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/label/single", test_single);
  g_test_add_func ("/words/label/place", test_place);
  g_test_add_func ("/words/label/bundles", test_bundles);
  return g_test_run ();
}
