/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/report.h"

#include "exchange/job-file.h"
#include "laws/shrink.h"

void
report_broken (guint32 seed, const LawEntry *entry, const SqJob *job, const char *wrong)
{
  g_autoptr (SqJob) small = shrink_job (job, seed, entry->law);
  g_autoptr (SqPlan) plan = sq_plan_new (small, NULL);
  LawCase c = { seed, small, plan };
  g_autofree char *still = entry->law (&c);
  g_autofree char *text = sq_job_write (small);

  g_test_message ("SQUAB_LAWS_SEED=%u: %s: %s", seed, entry->name, wrong);
  g_test_message ("a small job: %s", still);
  g_test_message ("%s", text);
}
