/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Thousands of actions on one document, by chance: no law is broken, all can be undone and redone to
 * the last bit, and memory stays in bounds. SQUAB_ACTIONS: how many (10,000, a tenth under
 * sanitizers); SQUAB_ACTIONS_SEED: another run of chance. */
#include <malloc.h>
#include <stdlib.h>

#include "exchange/defaults-file.h"
#include "exchange/job-file.h"
#include "job/sides.h"
#include "laws/compare.h"
#include "laws/report.h"
#include "window/actions.h"

#ifdef __SANITIZE_ADDRESS__
#define IS_SANITIZED 1
#else
#define IS_SANITIZED 0
#endif

#define USUAL_ACTIONS (IS_SANITIZED ? 1000 : 10000)
#define ACTIONS_A_CHECK 50
#define NEEDLE_RAD 0.2
#define MOST_BYTES_AN_ACTION 8192
/* What the libraries keep for themselves once they were used in a new way. */
#define SLACK_BYTES 16384

static guint
number_from (const char *name, guint otherwise)
{
  const char *text = g_getenv (name);
  return text != NULL ? (guint) strtoul (text, NULL, 10) : otherwise;
}

static gsize
bytes_in_use (void)
{
  struct mallinfo2 info = mallinfo2 ();
  return info.uordblks + info.hblkhd;
}

static SqDocument *
open_sample (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "samples",
                                                 "bay-seat.squab", NULL);
  g_autoptr (GError) error = NULL;
  SqDefaults defaults;
  g_autoptr (SqJob) job = NULL;
  sq_defaults_builtin (&defaults);
  job = sq_job_load (path, &defaults, &error);
  g_assert_no_error (error);
  return sq_document_new (job, NULL);
}

static char *
text_of (SqDocument *document)
{
  return sq_job_write (sq_document_get_job (document));
}

/* --- checks ------------------------------------------------------------------------------------ */

/* Seats that could be sewn: no corner sharper than NEEDLE_RAD, no arc of more than a half circle. Of
 * others only that nothing falls over is asked: where halves of a hole are alike to the last bit,
 * or a needle runs out to kilometres, the laws have nothing to hold on to. */
static gboolean
is_sewable (const SqOutline *outline)
{
  for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
    {
      guint n;
      g_autofree SqSideReading *sides = sq_outline_side_readings (outline, ring, &n);
      for (guint i = 0; i < n; i++)
        if (sides[i].true_angle_rad < NEEDLE_RAD || sides[i].true_angle_rad > 2 * G_PI - NEEDLE_RAD
            || sides[i].angle_rad < NEEDLE_RAD || sides[i].angle_rad > 2 * G_PI - NEEDLE_RAD
            || fabs (sides[i].rise_mm) > sides[i].chord_mm / 2)
          return FALSE;
    }
  return TRUE;
}

static void
check_laws (SqDocument *document, guint32 seed, const char *after)
{
  g_autoptr (SqJob) job = sq_job_dup (sq_document_get_job (document));
  for (guint i = job->cushions->len; i-- > 0;)
    if (!is_sewable (((const SqCushion *) job->cushions->pdata[i])->outline))
      g_ptr_array_remove_index (job->cushions, i);
  if (job->cushions->len == 0)
    return;
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  LawCase c = { seed, job, plan };
  for (guint i = 0; i < n_laws; i++)
    {
      g_autofree char *wrong = laws[i].law (&c);
      if (wrong == NULL)
        continue;
      g_test_message ("after action %u, %s:", seed, after);
      report_broken (seed, &laws[i], job, wrong);
      g_test_fail ();
    }
}

/* The plan, which shares what it can with all before it, is what a new one is. */
static void
check_plan (SqDocument *document)
{
  const SqPlan *shared = sq_document_get_plan (document);
  g_autoptr (SqPlan) fresh = sq_plan_new (sq_document_get_job (document), NULL);
  g_assert_cmpuint (shared->covers->len, ==, fresh->covers->len);
  for (guint i = 0; i < fresh->covers->len; i++)
    {
      g_autofree char *differs = covers_differ (sq_plan_cover (shared, i), sq_plan_cover (fresh, i),
                                                NULL, 0);
      g_assert_cmpstr (differs, ==, NULL);
    }
}

/* A step back and one forward lead to the same job. */
static void
check_step (SqDocument *document)
{
  g_autofree char *before = text_of (document), *after = NULL;
  gboolean can_undo;
  g_object_get (document, "can-undo", &can_undo, NULL);
  if (!can_undo)
    return;
  sq_document_undo (document);
  sq_document_redo (document);
  after = text_of (document);
  g_assert_cmpstr (after, ==, before);
}

/* From one end of the history to the other; the number of steps. */
static guint
travel (SqDocument *document, const char *can, void (*go) (SqDocument *document))
{
  guint n = 0;
  gboolean is_possible;
  for (g_object_get (document, can, &is_possible, NULL); is_possible;
       g_object_get (document, can, &is_possible, NULL))
    {
      go (document);
      n++;
    }
  return n;
}

static guint
count_built (SqDocument *document)
{
  const SqPlan *plan = sq_document_get_plan (document);
  guint n = 0;
  for (guint i = 0; i < plan->covers->len; i++)
    n += sq_plan_cover (plan, i)->pieces->len > 0;
  return n;
}

/* --- runs -------------------------------------------------------------------------------------- */

/* No figure is one that can't be. */
static void
check_finite (SqDocument *document, const char *after)
{
  const SqJob *job = sq_document_get_job (document);
  for (guint i = 0; i < job->cushions->len; i++)
    {
      const SqOutline *outline = ((const SqCushion *) job->cushions->pdata[i])->outline;
      for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
        {
          guint n;
          const SqCorner *corners = sq_outline_ring (outline, ring, &n);
          for (guint k = 0; k < n; k++)
            if (!isfinite (corners[k].at.x) || !isfinite (corners[k].at.y)
                || !isfinite (corners[k].bow_mm) || !isfinite (corners[k].radius_mm))
              g_error ("corner %u of cushion %u after %s", corners[k].id, i, after);
        }
    }
}

/* @n actions; *@n_covers and *@n_built (may be NULL) are what was there at the checks. */
static void
act (Maker *maker, guint n, guint *n_covers, guint *n_built)
{
  for (guint i = 1; i <= n; i++)
    {
      const char *name = maker_act (maker);
      check_finite (maker->document, name);
      if (n_built == NULL || i % ACTIONS_A_CHECK != 0)
        continue;
      check_laws (maker->document, i, name);
      check_plan (maker->document);
      check_step (maker->document);
      *n_covers += sq_document_get_plan (maker->document)->covers->len;
      *n_built += count_built (maker->document);
    }
}

static void
test_laws (void)
{
  guint n = number_from ("SQUAB_ACTIONS", USUAL_ACTIONS), n_covers = 0, n_built = 0, back, forth;
  g_autoptr (GRand) chance = g_rand_new_with_seed (number_from ("SQUAB_ACTIONS_SEED", 1));
  g_autoptr (SqDocument) document = open_sample ();
  g_autofree char *first = text_of (document), *last = NULL, *again = NULL;
  Maker maker = { chance, document };
  gint64 start = g_get_monotonic_time ();

  act (&maker, n, &n_covers, &n_built);
  travel (document, "can-redo", sq_document_redo);
  last = text_of (document);
  back = travel (document, "can-undo", sq_document_undo);
  again = text_of (document);
  g_assert_cmpstr (again, ==, first);
  g_assert_false (sq_document_is_modified (document));
  forth = travel (document, "can-redo", sq_document_redo);
  g_free (again);
  again = text_of (document);
  g_assert_cmpstr (again, ==, last);
  g_assert_cmpuint (back, ==, forth);
  g_test_message ("%u actions, %u steps, %u of %u covers built, %.1f s", n, back, n_built, n_covers,
                  (double) (g_get_monotonic_time () - start) / 1e6);
  g_assert_cmpuint (n_built * 2, >, n_covers);
  g_assert_cmpuint (back, >, n / 4);
}

static void
test_memory (void)
{
  guint n = number_from ("SQUAB_ACTIONS", USUAL_ACTIONS);
  g_autoptr (GRand) chance = g_rand_new_with_seed (number_from ("SQUAB_ACTIONS_SEED", 2));
  g_autoptr (SqDocument) warm = open_sample ();
  Maker maker = { chance, warm };
  gsize start, most = 0, end;

  act (&maker, MIN (n, 500), NULL, NULL);
  g_clear_object (&warm);

  start = bytes_in_use ();
  maker.document = open_sample ();
  for (guint i = 0; i < n; i += ACTIONS_A_CHECK)
    {
      act (&maker, ACTIONS_A_CHECK, NULL, NULL);
      most = MAX (most, bytes_in_use ());
    }
  g_object_unref (maker.document);
  end = bytes_in_use ();
  g_test_message ("%u actions: %.0f bytes each, %.0f left in all", n,
                  ((double) most - (double) start) / n, (double) end - (double) start);
  g_assert_cmpfloat (((double) most - (double) start) / n, <=, MOST_BYTES_AN_ACTION);
  g_assert_cmpfloat ((double) end - (double) start, <=, SLACK_BYTES);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/actions/laws", test_laws);
  if (!IS_SANITIZED) /* a sanitizer has a heap of its own */
    g_test_add_func ("/window/actions/memory", test_memory);
  return g_test_run ();
}
