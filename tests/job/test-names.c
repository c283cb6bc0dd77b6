/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/names.h"

#include "base/length.h"
#include "job/laying.h"
#include "job/papers.h"

/* Every enum has a name for each of its values, and no two alike. */
static void
test_complete (void)
{
  const struct
  {
    const char *const *names;
    guint n;
  } lists[] = {
    { sq_unit_names, SQ_UNIT_CM + 1 },
    { sq_build_names, SQ_N_BUILDS },
    { sq_edge_kind_names, SQ_N_EDGE_KINDS },
    { sq_wrap_style_names, SQ_WRAP_MITRED + 1 },
    { sq_edge_build_names, SQ_EDGE_OPEN + 1 },
    { sq_zip_place_names, SQ_N_ZIP_PLACES },
    { sq_zip_method_names, SQ_ZIP_TWO_PART + 1 },
    { sq_welt_at_names, SQ_WELT_BOTH + 1 },
    { sq_welt_cut_names, SQ_WELT_BIAS + 1 },
    { sq_profile_names, SQ_PROFILE_RADIUS + 1 },
    { sq_section_names, SQ_SECTION_D + 1 },
    { sq_filling_names, SQ_FILLING_FOAM_SQUARE + 1 },
    { sq_seams_across_names, SQ_ACROSS_TWO_JOINS + 1 },
    { sq_foam_kind_names, SQ_N_FOAM_KINDS },
    { sq_stripes_run_names, SQ_STRIPES_SIDE_TO_SIDE + 1 },
    { sq_centre_on_names, SQ_CENTRE_NONE + 1 },
    { sq_cloth_class_names, SQ_N_CLOTH_CLASSES },
    { sq_sheet_names, SQ_N_SHEETS },
    { sq_paper_kind_names, SQ_N_PAPER_KINDS },
    { sq_pattern_lines_names, SQ_PATTERN_SEW + 1 },
    { sq_marked_on_names, 2 },
    { sq_unlaid_why_names, 4 },
    { sq_stock_kind_names, SQ_N_STOCK_KINDS },
    { sq_cuts_names, SQ_N_CUTS },
  };

  for (guint i = 0; i < G_N_ELEMENTS (lists); i++)
    {
      g_assert_cmpuint (g_strv_length ((char **) lists[i].names), ==, lists[i].n);
      for (guint a = 0; a < lists[i].n; a++)
        for (guint b = 0; b < a; b++)
          g_assert_cmpstr (lists[i].names[a], !=, lists[i].names[b]);
    }
}

static void
test_order (void)
{
  g_assert_cmpstr (sq_build_name (SQ_BUILD_KNIFE_EDGE), ==, "knife-edge");
  g_assert_cmpstr (sq_zip_place_name (SQ_ZIP_BOXING), ==, "boxing");
  g_assert_cmpstr (sq_foam_kind_name (SQ_FOAM_FAST_DRAINING), ==, "fast-draining");
  g_assert_cmpstr (sq_unit_names[SQ_UNIT_MM], ==, "mm");
  g_assert_cmpstr (sq_edge_kind_names[SQ_EDGE_HULL_LINING], ==, "hull-lining");
  g_assert_cmpstr (sq_wrap_style_names[SQ_WRAP_MITRED], ==, "mitred");
  g_assert_cmpstr (sq_stripes_run_names[SQ_STRIPES_SIDE_TO_SIDE], ==, "side-to-side");
  g_assert_cmpstr (sq_centre_on_names[SQ_CENTRE_MOTIF], ==, "motif");
  g_assert_cmpstr (sq_cloth_class_names[SQ_CLOTH_VINYL], ==, "vinyl");
}

/* As columns of a sheet are named. */
static void
test_revisions (void)
{
  static const struct
  {
    guint revision;
    const char *name;
  } known[] = { { 1, "A" },   { 2, "B" },    { 26, "Z" },    { 27, "AA" },
                { 52, "AZ" }, { 702, "ZZ" }, { 703, "AAA" }, { SQ_MOST_REVISION, "ZZZ" } };
  static const char *const none[] = { "", "a", "A1", " A", "AAAA", "ZZZZZZZZZZZZZZ", "Ä" };

  for (guint i = 0; i < G_N_ELEMENTS (known); i++)
    {
      g_autofree char *name = sq_revision_name (known[i].revision);
      g_assert_cmpstr (name, ==, known[i].name);
      g_assert_cmpuint (sq_revision_of_name (known[i].name), ==, known[i].revision);
    }
  for (guint i = 0; i < G_N_ELEMENTS (none); i++)
    g_assert_cmpuint (sq_revision_of_name (none[i]), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/names/complete", test_complete);
  g_test_add_func ("/job/names/order", test_order);
  g_test_add_func ("/job/names/revisions", test_revisions);
  return g_test_run ();
}
