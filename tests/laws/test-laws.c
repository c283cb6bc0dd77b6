/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The laws on random jobs. SQUAB_LAWS: how many (10,000); SQUAB_LAWS_SEED: the first seed, to see a
 * failure again. */
#include <stdlib.h>

#include "job/names.h"
#include "laws/laws.h"
#include "laws/random-job.h"
#include "laws/report.h"

typedef struct
{
  guint held, broken;
  gint64 cpu_us;
} Tally;

static guint
number_from (const char *name, guint otherwise)
{
  const char *text = g_getenv (name);
  return text != NULL ? (guint) strtoul (text, NULL, 10) : otherwise;
}

/* What of a random job was built, so that laws don't hold only because there is nothing. */
static void
count_pieces (const SqPlan *plan, guint n_built[SQ_N_BUILDS], guint *n_bare)
{
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      guint *n = cover->pieces->len == 0 ? n_bare : &n_built[cover->build];
      (*n)++;
    }
}

static void
test_laws (void)
{
  guint n = number_from ("SQUAB_LAWS", 10000), first = number_from ("SQUAB_LAWS_SEED", 1);
  guint n_built[SQ_N_BUILDS] = { 0 }, n_bare = 0, n_broken = 0;
  g_autofree Tally *tallies = g_new0 (Tally, n_laws);

  for (guint32 seed = first; seed < first + n; seed++)
    {
      g_autoptr (SqJob) job = random_job (seed);
      g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
      LawCase c = { seed, job, plan };
      count_pieces (plan, n_built, &n_bare);
      for (guint i = 0; i < n_laws; i++)
        {
          gint64 start = g_get_monotonic_time ();
          g_autofree char *wrong = laws[i].law (&c);
          tallies[i].cpu_us += g_get_monotonic_time () - start;
          if (wrong == NULL)
            tallies[i].held++;
          else if (tallies[i].broken++ < 3)
            report_broken (seed, &laws[i], job, wrong);
        }
    }
  g_test_message ("%u jobs from seed %u, %u covers that can't be made", n, first, n_bare);
  for (guint i = 0; i < SQ_N_BUILDS; i++)
    g_test_message ("%s: %u covers", sq_build_names[i], n_built[i]);
  for (guint i = 0; i < n_laws; i++)
    {
      g_test_message ("%-10s held %u, broken %u, %.2f s", laws[i].name, tallies[i].held,
                      tallies[i].broken, (double) tallies[i].cpu_us / 1e6);
      n_broken += tallies[i].broken;
    }
  g_assert_cmpuint (n_broken, ==, 0);
  if (n > 100)
    {
      g_assert_cmpuint (n_built[SQ_BUILD_FOLDED_CORNER], >, n / 5);
      g_assert_cmpuint (n_built[SQ_BUILD_BOXED], >, n / 5);
      g_assert_cmpuint (n_built[SQ_BUILD_WRAPPED_FRONT], >, n / 20);
      g_assert_cmpuint (n_built[SQ_BUILD_SPLIT_SIDE], >, n / 20);
      g_assert_cmpuint (n_built[SQ_BUILD_KNIFE_EDGE], >, n / 30);
      g_assert_cmpuint (n_built[SQ_BUILD_BOLSTER], >, n / 50);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/laws/random-jobs", test_laws);
  return g_test_run ();
}
