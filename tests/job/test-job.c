/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/job.h"

#include <math.h>

static SqCushion *
cushion_with_id (SqId id)
{
  g_autoptr (SqOutline) outline = sq_outline_new (NULL, NULL, 0);
  return sq_cushion_new (id, outline);
}

static SqJob *
job_of_three (void)
{
  SqDefaults defaults = { .thickness_mm = 76.2 };
  SqJob *job = sq_job_new (&defaults);

  for (SqId id = 1; id <= 3; id++)
    g_ptr_array_add (job->cushions, cushion_with_id (id));
  g_ptr_array_add (job->cloths, sq_cloth_new (7));
  return job;
}

static void
test_new_cushion (void)
{
  g_autoptr (SqCushion) cushion = cushion_with_id (4);

  g_assert_cmpuint (cushion->id, ==, 4);
  g_assert_cmpstr (cushion->name, ==, "");
  g_assert_cmpuint (cushion->count, ==, 1);
  g_assert_cmpuint (cushion->given, ==, 0);
}

static void
test_untouched_shared (void)
{
  g_autoptr (SqJob) job = job_of_three ();
  g_autoptr (SqCushion) changed = sq_cushion_dup (sq_job_cushion (job, 2));
  g_autoptr (SqJob) next = NULL;

  changed->count = 5;
  next = sq_job_with_cushion (job, changed);
  g_assert_true (sq_job_cushion (next, 1) == sq_job_cushion (job, 1));
  g_assert_true (sq_job_cushion (next, 3) == sq_job_cushion (job, 3));
  g_assert_true (sq_job_cloth (next, 7) == sq_job_cloth (job, 7));
  g_assert_true (sq_job_cushion (next, 2) == changed);
  g_assert_true (g_ptr_array_index (next->cushions, 1) == changed);
  g_assert_cmpuint (sq_job_cushion (job, 2)->count, ==, 1);
  g_assert_cmpuint (next->cushions->len, ==, 3);
  g_assert_cmpfloat (next->defaults.thickness_mm, ==, 76.2);
}

static void
test_moved (void)
{
  g_autoptr (SqJob) job = job_of_three ();
  g_autoptr (SqJob) last = sq_job_with_cushion_moved (job, 1, 2);
  const SqId expected[] = { 2, 3, 1 };

  for (guint i = 0; i < 3; i++)
    {
      const SqCushion *cushion = g_ptr_array_index (last->cushions, i);
      g_assert_cmpuint (cushion->id, ==, expected[i]);
      g_assert_true (cushion == sq_job_cushion (job, cushion->id));
    }
  g_assert_null (sq_job_with_cushion_moved (job, 1, -1));
  g_assert_null (sq_job_with_cushion_moved (job, 3, 1));
  g_assert_null (sq_job_with_cushion_moved (job, 9, 0));
}

static void
test_add_and_remove (void)
{
  g_autoptr (SqJob) job = job_of_three ();
  g_autoptr (SqCushion) fourth = cushion_with_id (sq_job_new_cushion_id (job));
  g_autoptr (SqJob) more = sq_job_with_cushion (job, fourth);
  g_autoptr (SqJob) fewer = sq_job_without_cushion (more, 1);
  g_autoptr (SqJob) same = sq_job_without_cushion (more, 99);

  g_assert_cmpuint (fourth->id, ==, 4);
  g_assert_true (g_ptr_array_index (more->cushions, 3) == fourth);
  g_assert_cmpuint (fewer->cushions->len, ==, 3);
  g_assert_null (sq_job_cushion (fewer, 1));
  g_assert_nonnull (sq_job_cushion (job, 1));
  g_assert_cmpuint (same->cushions->len, ==, 4);
}

static void
test_cloths (void)
{
  g_autoptr (SqJob) job = job_of_three ();
  g_autoptr (SqCloth) cloth = sq_cloth_dup (sq_job_cloth (job, 7));
  g_autoptr (SqJob) next = NULL;

  cloth->width_mm = 1400;
  next = sq_job_with_cloth (job, cloth);
  g_assert_cmpuint (next->cloths->len, ==, 1);
  g_assert_cmpfloat (sq_job_cloth (next, 7)->width_mm, ==, 1400);
  g_assert_cmpfloat (sq_job_cloth (job, 7)->width_mm, ==, 0);
  g_assert_cmpuint (sq_job_new_cloth_id (next), ==, 8);
}

/* The greatest id leaves no next one: the first that is free is taken, never 0. */
static void
test_new_ids_at_the_end (void)
{
  g_autoptr (SqJob) job = job_of_three ();

  g_ptr_array_add (job->cushions, cushion_with_id (G_MAXUINT32));
  g_ptr_array_add (job->cloths, sq_cloth_new (G_MAXUINT32));
  g_assert_cmpuint (sq_job_new_cushion_id (job), ==, 4);
  g_assert_cmpuint (sq_job_new_cloth_id (job), ==, 8);
}

static void
test_dup_keeps_all (void)
{
  g_autoptr (SqJob) job = job_of_three ();
  g_autoptr (SqJob) copy = NULL;
  SqFoam foam = { .id = 3, .kind = SQ_FOAM_FIRM, .ifd_n = 222, .given = SQ_GIVEN_FOAM_IFD };

  foam.unknown = g_ref_string_new ("{\"sheet\": [1, 2]}");
  g_array_append_val (job->foams, foam);
  job->units = SQ_UNIT_CM;
  job->given = SQ_GIVEN_UNITS;
  job->title = g_ref_string_new ("Bay");
  job->notes = g_ref_string_new ("n");
  job->unknown = g_ref_string_new ("{\"rows\": []}");
  job->revision = 4;
  job->papers = (SqPapersChoice){ .sheet = SQ_SHEET_LETTER,
                                  .kinds = 2,
                                  .unknown = g_ref_string_new ("{\"folded\": true}"),
                                  .unknown_pattern = g_ref_string_new ("{\"brown\": true}"),
                                  .unknown_labels = g_ref_string_new ("{\"linen\": true}") };
  copy = sq_job_dup (job);
  g_assert_true (copy->title == job->title && copy->notes == job->notes);
  g_assert_null (copy->customer);
  g_assert_true (copy->unknown == job->unknown);
  g_assert_cmpint (copy->units, ==, SQ_UNIT_CM);
  g_assert_cmpuint (copy->revision, ==, 4);
  g_assert_cmpint (copy->papers.sheet, ==, SQ_SHEET_LETTER);
  g_assert_cmpuint (copy->papers.kinds, ==, 2);
  g_assert_true (copy->papers.unknown == job->papers.unknown);
  g_assert_cmpuint (copy->given, ==, SQ_GIVEN_UNITS);
  g_assert_cmpfloat (sq_job_foam (copy, SQ_FOAM_FIRM)->ifd_n, ==, 222);
  g_assert_true (sq_job_foam (copy, SQ_FOAM_FIRM)->unknown == foam.unknown);
  g_assert_null (sq_job_foam (copy, SQ_FOAM_SEAT));
}

static SqKeptLay *
kept_lay_of (SqId cloth, guint revision)
{
  SqKeptLay *lay = sq_kept_lay_new (cloth);

  lay->revision = revision;
  return lay;
}

/* One lay of each cloth is kept; edits share the others. */
static void
test_kept_lays (void)
{
  g_autoptr (SqJob) job = job_of_three ();
  g_autoptr (SqKeptLay) one = kept_lay_of (7, 1);
  g_autoptr (SqKeptLay) other = kept_lay_of (0, 1);
  g_autoptr (SqKeptLay) newer = kept_lay_of (7, 2);
  g_autoptr (SqJob) with_one = sq_job_with_kept_lay (job, one);
  g_autoptr (SqJob) with_both = sq_job_with_kept_lay (with_one, other);
  g_autoptr (SqJob) with_newer = sq_job_with_kept_lay (with_both, newer);
  g_autoptr (SqJob) without = sq_job_without_kept_lay (with_newer, 7);
  g_autoptr (SqJob) unchanged = sq_job_without_kept_lay (without, 7);

  g_assert_null (sq_job_kept_lay (job, 7));
  g_assert_true (sq_job_kept_lay (with_both, 7) == one);
  g_assert_true (sq_job_kept_lay (with_newer, 7) == newer);
  g_assert_true (sq_job_kept_lay (with_newer, 0) == other);
  g_assert_cmpuint (with_newer->kept_lays->len, ==, 2);
  g_assert_true (sq_job_kept_lay (with_both, 7) == one);
  g_assert_null (sq_job_kept_lay (without, 7));
  g_assert_true (sq_job_kept_lay (without, 0) == other);
  g_assert_cmpuint (unchanged->kept_lays->len, ==, 1);
  g_assert_true (g_ptr_array_index (with_both->cushions, 0)
                 == g_ptr_array_index (job->cushions, 0));
}

/* A cushion with another outline keeps everything else. */
static void
test_with_outline (void)
{
  SqCorner corners[3] = { { .id = 1 }, { .id = 2, .at = { 1, 0 } }, { .id = 3, .at = { 0, 1 } } };
  const guint sizes[] = { 3 };
  g_autoptr (SqOutline) outline = sq_outline_new (corners, sizes, 1);
  g_autoptr (SqCushion) cushion = cushion_with_id (9);
  g_autoptr (SqCushion) next = NULL;

  cushion->unknown[SQ_ON_ZIP] = g_ref_string_new ("{\"method\": \"two-part\"}");
  cushion->given = SQ_GIVEN_ZIP_AT;
  next = sq_cushion_with_outline (cushion, outline);
  g_assert_true (next->outline == outline);
  g_assert_cmpuint (sq_outline_n_rings (cushion->outline), ==, 0);
  g_assert_cmpuint (next->id, ==, 9);
  g_assert_cmpuint (next->given, ==, SQ_GIVEN_ZIP_AT);
  g_assert_true (next->unknown[SQ_ON_ZIP] == cushion->unknown[SQ_ON_ZIP]);
}

/* A rate counts once it is given, and is the sample again when it is taken back; below 0 it never
 * counts. */
static void
test_rates (void)
{
  SqDefaults defaults = { .rates.of[SQ_RATE_ZIP] = 12 };
  g_autoptr (SqJob) job = sq_job_new (&defaults);
  g_autoptr (SqJob) own = sq_job_with_rate (job, SQ_RATE_ZIP, 0);
  g_autoptr (SqJob) back = sq_job_with_rate (own, SQ_RATE_ZIP, NAN);
  g_autoptr (SqJob) wrong = sq_job_with_rate (job, SQ_RATE_ZIP, -1);

  g_assert_false (sq_job_has_rate (job, SQ_RATE_ZIP));
  g_assert_cmpfloat (sq_job_rate (job, SQ_RATE_ZIP), ==, 12);
  g_assert_true (sq_job_has_rate (own, SQ_RATE_ZIP));
  g_assert_false (sq_job_has_rate (own, SQ_RATE_WELT));
  g_assert_cmpfloat (sq_job_rate (own, SQ_RATE_ZIP), ==, 0);
  g_assert_cmpfloat (sq_job_rate (back, SQ_RATE_ZIP), ==, 12);
  g_assert_cmpuint (back->given, ==, job->given);
  g_assert_cmpfloat (sq_job_rate (wrong, SQ_RATE_ZIP), ==, 12);
}

/* A foam that the job does not have yet is added for its price. */
static void
test_foam_price (void)
{
  g_autoptr (SqJob) job = sq_job_new (&(SqDefaults){ 0 });
  g_autoptr (SqJob) one = sq_job_with_foam_price (job, SQ_FOAM_FIRM, 480);
  g_autoptr (SqJob) two = sq_job_with_foam_price (one, SQ_FOAM_SEAT, 300);
  g_autoptr (SqJob) back = sq_job_with_foam_price (two, SQ_FOAM_FIRM, NAN);

  g_assert_cmpuint (one->foams->len, ==, 1);
  g_assert_cmpuint (sq_job_foam (one, SQ_FOAM_FIRM)->given, ==, SQ_GIVEN_FOAM_PRICE);
  g_assert_cmpfloat (sq_job_foam (one, SQ_FOAM_FIRM)->price, ==, 480);
  g_assert_cmpuint (sq_job_foam (two, SQ_FOAM_FIRM)->id, !=, sq_job_foam (two, SQ_FOAM_SEAT)->id);
  g_assert_cmpuint (back->foams->len, ==, 2);
  g_assert_cmpuint (sq_job_foam (back, SQ_FOAM_FIRM)->given, ==, 0);
  g_assert_cmpuint (job->foams->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/job/kept-lays", test_kept_lays);
  g_test_add_func ("/job/cushion/new", test_new_cushion);
  g_test_add_func ("/job/cushion/with-outline", test_with_outline);
  g_test_add_func ("/job/job/untouched-shared", test_untouched_shared);
  g_test_add_func ("/job/job/moved", test_moved);
  g_test_add_func ("/job/job/add-and-remove", test_add_and_remove);
  g_test_add_func ("/job/job/cloths", test_cloths);
  g_test_add_func ("/job/job/new-ids-at-the-end", test_new_ids_at_the_end);
  g_test_add_func ("/job/job/rates", test_rates);
  g_test_add_func ("/job/job/foam-price", test_foam_price);
  g_test_add_func ("/job/job/dup-keeps-all", test_dup_keeps_all);
  return g_test_run ();
}
