/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/names.h"

#include "hand-made.h"

static void
assert_new (GHashTable *said, const char *name)
{
  g_assert_cmpstr (name, !=, "");
  g_assert_true (g_hash_table_add (said, (gpointer) name));
}

static void
test_labels (void)
{
  g_autoptr (GHashTable) said = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < SQ_N_BUILDS; i++)
    assert_new (said, sq_words_build ((SqBuild) i));
  for (guint i = 0; i < SQ_N_EDGE_KINDS; i++)
    assert_new (said, sq_words_edge_kind ((SqEdgeKind) i));
  for (guint i = 0; i < SQ_N_CLOTH_CLASSES; i++)
    assert_new (said, sq_words_cloth_class ((SqClothClass) i));
  for (guint i = 0; i < SQ_N_FOAM_KINDS; i++)
    assert_new (said, sq_words_foam_kind ((SqFoamKind) i));
  for (guint i = 0; i < 4; i++)
    assert_new (said, sq_words_side ((SqSideOf) (1 << i)));
  for (guint i = SQ_ZIP_NONE; i <= SQ_ZIP_UNDERSIDE; i++)
    assert_new (said, sq_words_zip_place ((SqZipPlace) i));
  for (guint i = SQ_WRAP_PLAIN; i <= SQ_WRAP_MITRED; i++)
    assert_new (said, sq_words_wrap_style ((SqWrapStyle) i));
  for (guint i = SQ_STRIPES_FRONT_TO_BACK; i <= SQ_STRIPES_SIDE_TO_SIDE; i++)
    assert_new (said, sq_words_stripes_run ((SqStripesRun) i));
  for (guint i = SQ_CENTRE_STRIPE; i <= SQ_CENTRE_NONE; i++)
    assert_new (said, sq_words_centre_on ((SqCentreOn) i));
  for (guint i = SQ_NOTE; i <= SQ_FAULT; i++)
    assert_new (said, sq_words_severity ((SqSeverity) i));
}

static void
set_name (SqCushion *cushion, const char *name)
{
  g_clear_pointer (&cushion->name, g_ref_string_release);
  cushion->name = g_ref_string_new (name);
}

static void
test_cushion (void)
{
  static const SqDefaults defaults = { 0 };
  g_autoptr (SqJob) empty = sq_job_new (&defaults);
  g_autoptr (SqCushion) first = hand_made_cushion ();
  g_autoptr (SqCushion) second = hand_made_cushion ();
  g_autoptr (SqJob) one = sq_job_with_cushion (empty, first);
  second->id = 9;
  set_name (second, "");
  g_autoptr (SqJob) two = sq_job_with_cushion (one, second);
  g_autofree char *named = sq_words_cushion (two, first);
  g_autofree char *numbered = sq_words_cushion (two, second);
  set_name (first, "Hall\nbench");
  g_autofree char *cleaned = sq_words_cushion (two, first);

  g_assert_cmpstr (named, ==, "Hall bench");
  g_assert_cmpstr (numbered, ==, "Cushion 2");
  g_assert_cmpstr (cleaned, ==, "Hall bench");
}

static void
test_cloth (void)
{
  g_autoptr (SqCloth) cloth = sq_cloth_new (4);
  g_autofree char *numbered = sq_words_cloth (cloth);
  g_autofree char *none = sq_words_cloth (NULL);
  g_clear_pointer (&cloth->name, g_ref_string_release);
  cloth->name = g_ref_string_new ("Awning stripe");
  g_autofree char *named = sq_words_cloth (cloth);

  g_assert_cmpstr (numbered, ==, "Cloth 4");
  g_assert_cmpstr (none, ==, "Cloth");
  g_assert_cmpstr (named, ==, "Awning stripe");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/names/labels", test_labels);
  g_test_add_func ("/words/names/cushion", test_cushion);
  g_test_add_func ("/words/names/cloth", test_cloth);
  return g_test_run ();
}
