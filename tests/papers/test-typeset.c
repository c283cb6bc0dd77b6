/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/typeset.h"

static const SqType type = { 4, FALSE, SQ_TONE_INK };

static double
width_mm (const char *text)
{
  return sq_text_width_em (text, type.bold) * type.em_mm;
}

/* The lines hold all of the text, in order, but for spaces at breaks; none is too wide. */
static void
assert_wraps (const char *text, double most_mm)
{
  g_autoptr (GPtrArray) lines = sq_wrapped (text, most_mm, &type);
  g_autoptr (GString) all = g_string_new (NULL);
  g_autoptr (GString) wanted = g_string_new (text);

  for (guint i = 0; i < lines->len; i++)
    {
      const char *line = g_ptr_array_index (lines, i);
      g_assert_true (g_utf8_validate (line, -1, NULL));
      if (g_utf8_strlen (line, -1) > 1)
        g_assert_cmpfloat (width_mm (line), <=, most_mm);
      g_string_append (all, line);
    }
  g_string_replace (all, " ", "", 0);
  g_string_replace (wanted, " ", "", 0);
  g_string_replace (wanted, "\n", "", 0);
  g_assert_cmpstr (all->str, ==, wanted->str);
}

static void
test_wrapped (void)
{
  static const char *const texts[] = {
    "",
    "Top",
    "Mark, notch and clip every piece before it is moved from the table.",
    "Verylongwordthathasnospaceinitandgoesonandonandonuntilitisbroken",
    "前面的座垫需要两块布料，请在裁剪之前核对条纹的位置。",
    "وسادة المقعد الأمامية مع سحاب طويل",
    "one\ntwo\n\nfour",
    "a  b   c"
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    for (double most_mm = 2; most_mm < 200; most_mm *= 1.7)
      assert_wraps (texts[i], most_mm);
}

static void
test_breaks (void)
{
  g_autoptr (GPtrArray) lines = sq_wrapped ("one two\nthree", 1000, &type);
  g_autoptr (GPtrArray) words = sq_wrapped ("one two three", width_mm ("one two"), &type);

  g_assert_cmpuint (lines->len, ==, 2);
  g_assert_cmpstr (g_ptr_array_index (lines, 0), ==, "one two");
  g_assert_cmpstr (g_ptr_array_index (lines, 1), ==, "three");
  g_assert_cmpuint (words->len, ==, 2);
  g_assert_cmpstr (g_ptr_array_index (words, 0), ==, "one two");
}

static SqScene *
line_in (double width, SqAlign align, const char *text)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  sq_set_line (builder, &(SqColumn){ 10, 50, width }, align, &type, text);
  return sq_scene_builder_end (builder);
}

static void
test_line_stands_in_its_column (void)
{
  for (guint align = SQ_ALIGN_MIDDLE; align <= SQ_ALIGN_END; align++)
    {
      g_autoptr (SqScene) scene = line_in (100, (SqAlign) align, "Front boxing");
      SqBox box = sq_scene_box (scene);
      double rest_mm = 100 - width_mm ("Front boxing");
      double left_mm = align == SQ_ALIGN_START ? 0 : align == SQ_ALIGN_END ? rest_mm : rest_mm / 2;
      g_assert_cmpfloat_with_epsilon (box.min.x, 10 + left_mm, 1e-9);
      g_assert_cmpfloat (box.max.y, <=, 50);
      g_assert_cmpfloat (box.min.y, >=, 50 - sq_type_height_mm (&type, 1));
    }
}

static void
test_right_to_left (void)
{
  g_autoptr (SqScene) scene = line_in (100, SQ_ALIGN_START, "כרית קדמית");

  g_assert_cmpfloat_with_epsilon (sq_scene_box (scene).max.x, 110, 1e-9);
}

static void
test_too_wide (void)
{
  g_autoptr (SqScene) scene = line_in (30, SQ_ALIGN_START, "The seat at the head of the stairs");
  const SqText *text = sq_scene_text (scene, 0);

  g_assert_true (g_str_has_suffix (text->text, "…"));
  g_assert_true (g_str_has_prefix (text->text, "The"));
  g_assert_cmpfloat (sq_scene_box (scene).max.x, <=, 40 + 1e-9);
}

static void
test_paragraph (void)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  const char *words = "Boxing to the top, from the back, notch to notch.";
  double height_mm = sq_set_paragraph (builder, &(SqColumn){ 0, 100, 40 }, &type, words);
  g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
  SqBox box = sq_scene_box (scene);

  g_assert_cmpfloat_with_epsilon (height_mm, sq_paragraph_height_mm (40, &type, words), 1e-9);
  g_assert_cmpuint (sq_scene_n_items (scene), >, 2);
  g_assert_cmpfloat (box.max.x, <=, 40 + 1e-9);
  g_assert_cmpfloat (box.min.y, >=, 100 - height_mm);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/papers/typeset/wrapped", test_wrapped);
  g_test_add_func ("/papers/typeset/breaks", test_breaks);
  g_test_add_func ("/papers/typeset/line in its column", test_line_stands_in_its_column);
  g_test_add_func ("/papers/typeset/right to left", test_right_to_left);
  g_test_add_func ("/papers/typeset/too wide", test_too_wide);
  g_test_add_func ("/papers/typeset/paragraph", test_paragraph);
  return g_test_run ();
}
