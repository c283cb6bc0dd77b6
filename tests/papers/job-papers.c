/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/job-papers.h"

#include "cover/hand-made.h"
#include "exchange/defaults-file.h"
#include "exchange/job-file.h"

const char *const samples[] = {
  "bay-seat",        "berth-bolsters", "berth-pair",   "bow-seat",  "cabin-pads",  "dining-pads",
  "folded-stool",    "half-round",     "pier-bench",   "round-pad", "square-seat", "striped-bench",
  "wheelhouse-seat", "window-seat",    "worked-plate", NULL
};

static SqLays *
lays_of_job (const SqJob *job)
{
  const SqLayBudget first = { .seed = 1, .steps = 0 };
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);

  return sq_lays_new (plan, NULL, &first, NULL);
}

SqLays *
lays_of_text (const char *text)
{
  g_autoptr (SqJob) job = job_of_text (text);

  return lays_of_job (job);
}

SqLays *
lays_of_sample (const char *name)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *file = g_strconcat (name, ".squab", NULL);
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "samples", file, NULL);
  SqDefaults defaults;

  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_load (path, &defaults, &error);
  g_assert_no_error (error);
  return lays_of_job (job);
}

SqPaperSpec
spec_of_lays (const SqLays *lays, SqSheet sheet)
{
  SqPaperSpec spec = sq_paper_spec (lays, '.', "2026-03-01");

  spec.sheet = sheet;
  return spec;
}

SqPaper *
paper_of_text (const char *text, SqPaperKind kind, SqSheet sheet)
{
  g_autoptr (SqLays) lays = lays_of_text (text);
  SqPaperSpec spec = spec_of_lays (lays, sheet);

  return sq_paper_new (kind, &spec);
}

SqPaper *
paper_of_sample (const char *name, SqPaperKind kind, SqSheet sheet)
{
  g_autoptr (SqLays) lays = lays_of_sample (name);
  SqPaperSpec spec = spec_of_lays (lays, sheet);

  return sq_paper_new (kind, &spec);
}

char *
many_cushions (guint n, const char *name)
{
  GString *text = g_string_new ("{'format':'squab job','version':1,'units':'in','cushions':[");

  for (guint i = 1; i <= n; i++)
    g_string_append_printf (
        text,
        "%s{'id':%u,'name':'%s %u','thickness':76.2,'build':'boxed','outline':[{'id':1,'x':0,"
        "'y':0,'front':true},{'id':2,'x':%u,'y':0,'radius':40},{'id':3,'x':%u,'y':400},{'id':4,"
        "'x':%u,'y':520},{'id':5,'x':0,'y':500,'kind':'wall'}]}",
        i > 1 ? "," : "", i, name, i, 500 + i * 20, 500 + i * 20, 400 + i * 20);
  g_string_append (text, "]}");
  return g_string_free (text, FALSE);
}
