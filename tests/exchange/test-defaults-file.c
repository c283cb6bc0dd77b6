/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All figures: common practice, no source. */
#include "exchange/defaults-file.h"

#include "base/error.h"
#include "base/units.h"

#include <string.h>

static char *
source_text (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "defaults.json", NULL);
  char *text = NULL;

  g_file_get_contents (path, &text, NULL, NULL);
  g_assert_nonnull (text);
  return text;
}

static void
test_builtin (void)
{
  g_autofree char *text = source_text ();
  SqDefaults d, from_file;
  g_autoptr (GError) error = NULL;

  sq_defaults_builtin (&d);
  g_assert_true (sq_defaults_read (text, -1, &from_file, &error));
  g_assert_no_error (error);
  g_assert_cmpmem (&d, sizeof d, &from_file, sizeof from_file);
}

/* The file's decimals are exact, products of doubles are not always. */
static void
assert_inches (double mm, double inches)
{
  g_assert_cmpfloat_with_epsilon (mm, inches * SQ_MM_PER_INCH, 1e-12);
}

static void
test_inches (void)
{
  SqDefaults d;

  sq_defaults_builtin (&d);
  assert_inches (d.thickness_mm, 3);
  assert_inches (d.step_in_mm, 0.125);
  assert_inches (d.clearance_mm[SQ_EDGE_WALL], 0.125);
  assert_inches (d.clearance_mm[SQ_EDGE_WELL], 0.1875);
  assert_inches (d.clearance_mm[SQ_EDGE_HULL_LINING], 0.25);
  assert_inches (d.clearance_mm[SQ_EDGE_ARM], -0.125);
  g_assert_cmpfloat (d.clearance_metric_mm[SQ_EDGE_ARM], ==, -3);
  assert_inches (d.wall_clearance_soft_mm, 0.25);
  assert_inches (d.wall_soft_over_mm, 4);
  assert_inches (d.corner_allowance_mm, 0.5);
  assert_inches (d.hem_allowance_mm, 1);
  assert_inches (d.folded_perimeter_mm, 0.375);
  assert_inches (d.boxed_perimeter_mm[SQ_CLOTH_CANVAS], 0.5);
  assert_inches (d.boxed_perimeter_mm[SQ_CLOTH_LOOSE_WEAVE], 0.625);
  assert_inches (d.boxed_perimeter_mm[SQ_CLOTH_VINYL], 0.375);
  assert_inches (d.wrap_depth_mm, 0.375);
  assert_inches (d.wrap_plain_warn_mm, 0.5);
  assert_inches (d.wrap_mitred_from_mm, 0.75);
  assert_inches (d.notch_leg_least_mm, 0.25);
  assert_inches (d.zip_tuck_mm, 1);
  assert_inches (d.zip_boxing_least_mm, 1.5);
  assert_inches (d.return_least_mm, 2);
  assert_inches (d.return_most_mm, 6);
  g_assert_cmpfloat (d.return_most_share, ==, 1.0 / 3);
  g_assert_cmpfloat (d.zip_third_share, ==, 1.0 / 3);
  assert_inches (d.zip_middle_under_mm, 24);
  assert_inches (d.two_sliders_over_mm, 60);
  assert_inches (d.notch_depth_mm, 0.1875);
  assert_inches (d.notch_straight_over_mm, 24);
  assert_inches (d.notch_straight_spacing_mm, 12);
  assert_inches (d.cloth_width_mm, 53);
  assert_inches (d.oversize_firm_mm, 0.25);
  assert_inches (d.oversize_stiff_mm, 0.125);
}

static void
test_steps_and_words (void)
{
  SqDefaults d;

  sq_defaults_builtin (&d);
  g_assert_cmpuint (d.n_notch_steps, ==, 3);
  assert_inches (d.notch_steps[1].over_radius_mm, 4);
  assert_inches (d.notch_steps[1].spacing_mm, 2);
  g_assert_cmpfloat (d.notch_steps[2].over_radius_mm, ==, 0);
  g_assert_cmpuint (d.n_oversize_seat, ==, 3);
  assert_inches (d.oversize_seat[0].up_to_mm, 36);
  g_assert_cmpfloat (d.oversize_seat[2].up_to_mm, ==, INFINITY);
  assert_inches (d.oversize_seat[2].oversize_mm, 1);
  g_assert_cmpint (d.build, ==, SQ_BUILD_BOXED);
  g_assert_cmpint (d.foam_kind, ==, SQ_FOAM_SEAT);
  g_assert_cmpint (d.cloth_class, ==, SQ_CLOTH_CANVAS);
  g_assert_cmpint (d.stripes_run, ==, SQ_STRIPES_FRONT_TO_BACK);
  g_assert_cmpint (d.centre_on, ==, SQ_CENTRE_STRIPE);
  for (guint i = 0; i < SQ_N_CLOTH_CLASSES; i++)
    g_assert_cmpfloat (d.cloth_thickness_mm[i], >, 0);
}

/* The text with @old, which it has, turned into @new_text. */
static char *
changed (const char *text, const char *old, const char *new_text)
{
  const char *at = strstr (text, old);

  g_assert_nonnull (at);
  return g_strdup_printf ("%.*s%s%s", (int) (at - text), text, new_text, at + strlen (old));
}

static void
test_refused (void)
{
  static const struct
  {
    const char *old, *new_text;
    SqError code;
    const char *message;
  } changes[] = {
    { "\"squab defaults\"", "\"squab job\"", SQ_ERROR_SYNTAX, "its \"format\"" },
    { "\"version\": 1", "\"version\": 2", SQ_ERROR_NEWER, "" },
    { "\"thickness\": 76.2", "\"thickness\": \"76.2\"", SQ_ERROR_VALUE, "cushion.thickness: " },
    { "\"thickness\": 76.2", "\"thicknes\": 76.2", SQ_ERROR_VALUE, "cushion.thickness: missing" },
    { "\"thickness\": 76.2", "\"thickness\": 76.2, \"more\": 1", SQ_ERROR_VALUE, "cushion.more: " },
    { "\"wall\": 3.175", "\"wall\": 100001", SQ_ERROR_VALUE, "clearance.wall: " },
    { "\"over_radius\": 0, \"spacing\": 25.4", "\"over_radius\": 0", SQ_ERROR_VALUE,
      "notches.curves[2].spacing: missing" },
    { "{\"oversize\": 25.4}", "{\"oversize\": 1}, {\"oversize\": 1}, {\"oversize\": 1}",
      SQ_ERROR_VALUE, "foam.oversize_seat[4]: " },
    { "\"colour\": \"#ddd3bf\"", "\"colour\": \"beige\"", SQ_ERROR_VALUE, "cloth.colour: " },
    { "\"class\": \"canvas\"", "\"class\": \"silk\"", SQ_ERROR_VALUE, "cloth.class: " },
  };
  g_autofree char *text = source_text ();

  for (guint i = 0; i < G_N_ELEMENTS (changes); i++)
    {
      g_autofree char *bad = changed (text, changes[i].old, changes[i].new_text);
      g_autoptr (GError) error = NULL;
      SqDefaults d = { .thickness_mm = 1 };

      g_assert_false (sq_defaults_read (bad, -1, &d, &error));
      g_assert_error (error, SQ_ERROR, (int) changes[i].code);
      g_assert_true (g_str_has_prefix (error->message, changes[i].message));
      g_assert_cmpfloat (d.thickness_mm, ==, 1);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/defaults-file/builtin", test_builtin);
  g_test_add_func ("/exchange/defaults-file/inches", test_inches);
  g_test_add_func ("/exchange/defaults-file/steps-and-words", test_steps_and_words);
  g_test_add_func ("/exchange/defaults-file/refused", test_refused);
  return g_test_run ();
}
