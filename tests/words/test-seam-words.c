/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/seam-words.h"

#include "exchange/defaults-file.h"
#include "plan/plan.h"

static SqCover *
cover_built_as (SqBuild build)
{
  static const guint sizes[] = { 4 };
  const SqCorner corners[] = { { .id = 1, .at = { 0, 0 } },
                               { .id = 2, .at = { 508, 0 } },
                               { .id = 3, .at = { 508, 406.4 } },
                               { .id = 4, .at = { 0, 406.4 } } };
  g_autoptr (SqOutline) outline = sq_outline_new (corners, sizes, 1);
  g_autoptr (SqCushion) cushion = sq_cushion_new (1, outline);
  SqDefaults defaults;

  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_new (&defaults);
  cushion->build = build;
  cushion->given |= SQ_GIVEN_BUILD;
  return sq_cover_new (job, cushion, FALSE, NULL);
}

static void
assert_seam (const SqCover *cover, const char *a, const char *b)
{
  for (guint i = 0; i < cover->seams->len; i++)
    {
      const SqSeam *seam = sq_cover_seam (cover, i);
      g_autofree char *said_a = sq_words_seam_side (cover, &seam->a);
      g_autofree char *said_b = sq_words_seam_side (cover, &seam->b);
      if (strcmp (a, said_a) == 0 && strcmp (b, said_b) == 0)
        return;
      g_test_message ("%s – %s", said_a, said_b);
    }
  g_error ("no seam is said to be “%s – %s”", a, b);
}

static void
test_boxed (void)
{
  g_autoptr (SqCover) cover = cover_built_as (SQ_BUILD_BOXED);

  assert_seam (cover, "Top, edge C–D (back)", "Upper zip strip, upper edge");
  assert_seam (cover, "Lower zip strip, zip edge", "Upper zip strip, zip edge");
}

/* The wrap has the back's edge twice, and its sides go from one of them to the other. */
static void
test_wrapped_front (void)
{
  g_autoptr (SqCover) cover = cover_built_as (SQ_BUILD_WRAPPED_FRONT);

  assert_seam (cover, "Wrap, edge C–D (back) of its top", "Upper zip strip, upper edge");
  assert_seam (cover, "Wrap, edge C–D (back) of its underside", "Lower zip strip, lower edge");
  assert_seam (cover, "Wrap, edge B–C (right)", "Right side, edge B–C (right)");
  assert_seam (cover, "Left side, back end", "Upper zip strip, right end");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/seam-words/boxed", test_boxed);
  g_test_add_func ("/words/seam-words/wrapped-front", test_wrapped_front);
  return g_test_run ();
}
