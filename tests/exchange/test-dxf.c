/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/dxf.h"

#include "dxf-reader.h"
#include "hand-made-drawing.h"

#include <stdlib.h>
#include <string.h>

/* A square of 100 mm with a round corner of 20 mm and a round hole, a sew line, a notch written
 * from inside outwards, a fold, grain and a text, twice; and a plain strip. */
static SqCutDrawing *
make_drawing (void)
{
  SqCutDrawing *drawing = drawing_new ("Bay seat, RIGHT SIDE UP");
  SqCutShape *shape = add_shape (drawing, "1 Top");
  const SqNode outer[] = { { { 0, 0 }, 0, 0 },
                           { { 100, 0 }, 0, 1 },
                           { { 100, 80 }, tan (G_PI / 8), 2 },
                           { { 80, 100 }, 0, 3 },
                           { { 0, 100 }, 0, 4 } };
  g_autoptr (SqPath) hole = sq_path_new_circle (sq_point (50, 50), 10);

  add_cut_line (shape, SQ_LAYER_CUT, sq_path_new (outer, G_N_ELEMENTS (outer), TRUE));
  add_cut_line (shape, SQ_LAYER_CUT_INSIDE, sq_path_reversed (hole));
  add_cut_line (shape, SQ_LAYER_SEW, sq_path_new_rectangle (10, 10, 90, 90));
  add_cut_segment (shape, SQ_LAYER_NOTCH, sq_point (30, 6), sq_point (30, 0));
  add_cut_segment (shape, SQ_LAYER_FOLD, sq_point (10, 30), sq_point (90, 30));
  add_cut_segment (shape, SQ_LAYER_GRAIN, sq_point (20, 20), sq_point (20, 80));
  add_cut_text (shape, sq_point (30, 70), 5, "1 Top");
  shape = add_shape (drawing, "2 Strip");
  add_cut_line (shape, SQ_LAYER_CUT, sq_path_new_rectangle (0, 0, 300, 40));
  add_cut_segment (shape, SQ_LAYER_GRAIN, sq_point (100, 20), sq_point (200, 20));
  add_cut_place (drawing, 0, 0, sq_point (0, 0));
  add_cut_place (drawing, 0, G_PI / 2, sq_point (220, 0));
  add_cut_place (drawing, 1, 0, sq_point (0, 120));
  return drawing;
}

static GArray *
groups_of (const SqCutDrawing *drawing, SqDxfRelease release, SqDxfLayers layers)
{
  g_autofree char *text = sq_dxf_write (drawing, release, layers);
  g_autofree char *again = sq_dxf_write (drawing, release, layers);

  g_assert_cmpstr (text, ==, again);
  return read_groups (text);
}

static void
assert_sections (const GArray *groups, const char *expected)
{
  g_autoptr (GString) found = g_string_new (NULL);

  for (guint i = 0; i + 1 < groups->len; i++)
    if (group_at (groups, i)->code == 0 && g_str_equal (group_at (groups, i)->value, "SECTION"))
      g_string_append_printf (found, " %s", group_at (groups, i + 1)->value);
  g_assert_cmpstr (found->str, ==, expected);
  g_assert_cmpint (group_at (groups, groups->len - 1)->code, ==, 0);
  g_assert_cmpstr (group_at (groups, groups->len - 1)->value, ==, "EOF");
}

static void
test_sections (void)
{
  g_autoptr (SqCutDrawing) drawing = make_drawing ();
  g_autoptr (GArray) r12 = groups_of (drawing, SQ_DXF_R12, SQ_DXF_PLAIN);
  g_autoptr (GArray) bare = groups_of (drawing, SQ_DXF_R12, SQ_DXF_D6673);
  g_autoptr (GArray) r2000 = groups_of (drawing, SQ_DXF_R2000, SQ_DXF_PLAIN);
  g_autoptr (GArray) pieces = groups_of (drawing, SQ_DXF_R2000, SQ_DXF_D6673);
  const char *const all = " HEADER CLASSES TABLES BLOCKS ENTITIES OBJECTS";

  assert_sections (r12, " HEADER TABLES BLOCKS ENTITIES");
  /* no tables and an empty header: ezdxf.readthedocs.io, "ASTM-D6673-10 Exporter" */
  assert_sections (bare, " HEADER BLOCKS ENTITIES");
  g_assert_cmpstr (group_at (bare, 2)->value, ==, "ENDSEC");
  assert_sections (r2000, all);
  assert_sections (pieces, all);
  g_assert_true (has_group (r12, 1, "AC1009"));
  g_assert_true (has_group (r2000, 1, "AC1015"));
  g_assert_true (has_group (pieces, 1, "AC1015"));
}

static void
test_names (void)
{
  g_assert_cmpstr (sq_dxf_release_names[SQ_DXF_R12], ==, "r12");
  g_assert_cmpstr (sq_dxf_release_names[SQ_DXF_R2000], ==, "r2000");
  g_assert_null (sq_dxf_release_names[2]);
  g_assert_cmpstr (sq_dxf_layers_names[SQ_DXF_PLAIN], ==, "plain");
  g_assert_cmpstr (sq_dxf_layers_names[SQ_DXF_D6673], ==, "d6673");
  g_assert_null (sq_dxf_layers_names[2]);
}

/* 4 is millimetres: help.autodesk.com, INSUNITS. R12 has no such variable. */
static void
test_units (void)
{
  g_autoptr (SqCutDrawing) drawing = make_drawing ();
  g_autoptr (GArray) r12 = groups_of (drawing, SQ_DXF_R12, SQ_DXF_PLAIN);
  g_autoptr (GArray) r2000 = groups_of (drawing, SQ_DXF_R2000, SQ_DXF_PLAIN);

  g_assert_false (has_group (r12, 9, "$INSUNITS"));
  g_assert_cmpint (atoi (group_at (r2000, find_group (r2000, 0, 9, "$INSUNITS") + 1)->value), ==,
                   4);
  g_assert_cmpint (atoi (group_at (r2000, find_group (r2000, 0, 9, "$MEASUREMENT") + 1)->value), ==,
                   1);
}

static void
test_extent (void)
{
  g_autoptr (SqCutDrawing) drawing = make_drawing ();

  for (SqDxfRelease release = SQ_DXF_R12; release <= SQ_DXF_R2000; release++)
    {
      g_autoptr (GArray) groups = groups_of (drawing, release, SQ_DXF_PLAIN);
      guint min = find_group (groups, 0, 9, "$EXTMIN"), max = find_group (groups, 0, 9, "$EXTMAX");
      g_assert_cmpstr (group_at (groups, min + 1)->value, ==, "0.0");
      g_assert_cmpstr (group_at (groups, min + 2)->value, ==, "0.0");
      g_assert_cmpstr (group_at (groups, max + 1)->value, ==, "300.0");
      g_assert_cmpstr (group_at (groups, max + 2)->value, ==, "160.0");
    }
}

static gboolean
is_reference (int code)
{
  return code == 330 || code == 340 || code == 350 || code == 390;
}

static guint
handle_of (const char *value)
{
  return (guint) strtoul (value, NULL, 16);
}

/* Every handle once, every one that is referred to there, and all below the next free one. */
static void
assert_handles (const GArray *groups)
{
  g_autoptr (GHashTable) handles = g_hash_table_new (g_direct_hash, g_direct_equal);
  guint seed = find_group (groups, 0, 9, "$HANDSEED") + 1;
  guint next = handle_of (group_at (groups, seed)->value);

  for (guint i = 0; i < groups->len; i++)
    {
      const Group *group = group_at (groups, i);
      guint handle = handle_of (group->value);
      if (i == seed || (group->code != 5 && group->code != 105))
        continue;
      g_assert_cmpuint (handle, >, 0);
      g_assert_cmpuint (handle, <, next);
      g_assert_true (g_hash_table_add (handles, GUINT_TO_POINTER (handle)));
    }
  for (guint i = 0; i < groups->len; i++)
    {
      guint handle = handle_of (group_at (groups, i)->value);
      if (is_reference (group_at (groups, i)->code) && handle != 0)
        g_assert_true (g_hash_table_contains (handles, GUINT_TO_POINTER (handle)));
    }
}

static void
test_handles (void)
{
  g_autoptr (SqCutDrawing) drawing = make_drawing ();

  for (SqDxfLayers layers = SQ_DXF_PLAIN; layers <= SQ_DXF_D6673; layers++)
    {
      g_autoptr (GArray) r12 = groups_of (drawing, SQ_DXF_R12, layers);
      g_autoptr (GArray) r2000 = groups_of (drawing, SQ_DXF_R2000, layers);
      for (guint i = 0; i < r12->len; i++)
        {
          int code = group_at (r12, i)->code;
          g_assert_false (code == 5 || code == 100 || code == 105 || code == 330);
        }
      assert_handles (r2000);
    }
}

static SqPath *
first_of (const GArray *groups, const char *layer)
{
  guint from, to;

  find_section (groups, "ENTITIES", &from, &to);
  for (guint i = from; i < to; i = next_entity (groups, i, to))
    if (g_strcmp0 (value_of (groups, i, to, 8), layer) == 0)
      return path_of (groups, i, to);
  g_error ("nothing on layer %s", layer);
}

/* The bulge of a quarter of a circle is 0.414214, of half a circle 1, and < 0 where the arc runs
 * clockwise: qiita.com/tydesign/items/cab9d9cf6a625204707c. */
static void
test_bulges (void)
{
  g_autoptr (SqCutDrawing) drawing = make_drawing ();

  for (SqDxfRelease release = SQ_DXF_R12; release <= SQ_DXF_R2000; release++)
    {
      g_autoptr (GArray) groups = groups_of (drawing, release, SQ_DXF_PLAIN);
      g_autoptr (SqPath) cut = first_of (groups, "CUT");
      g_autoptr (SqPath) hole = first_of (groups, "CUT-INSIDE");
      g_assert_true (sq_path_is_ring (cut));
      g_assert_cmpuint (sq_path_n_nodes (cut), ==, 5);
      g_assert_cmpfloat_with_epsilon (sq_path_nodes (cut)[2].bulge, 0.414214, 1e-6);
      g_assert_cmpfloat (sq_path_nodes (cut)[0].bulge, ==, 0);
      g_assert_cmpuint (sq_path_n_nodes (hole), ==, 2);
      g_assert_cmpfloat (sq_path_nodes (hole)[0].bulge, ==, -1);
      /* the square without what the corner lost, and the circle */
      g_assert_cmpfloat_with_epsilon (sq_path_area_mm2 (cut), 1e4 - 400 + 100 * G_PI, 1e-6);
      g_assert_cmpfloat_with_epsilon (sq_path_area_mm2 (hole), -100 * G_PI, 1e-6);
    }
}

/* Every layer that something is on, but the spaces' own 0. */
static GHashTable *
layers_in_use (const GArray *groups)
{
  GHashTable *layers = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < groups->len; i++)
    if (group_at (groups, i)->code == 8 && !g_str_equal (group_at (groups, i)->value, "0"))
      g_hash_table_add (layers, group_at (groups, i)->value);
  return layers;
}

static void
test_plain_layers (void)
{
  g_autoptr (SqCutDrawing) drawing = make_drawing ();

  for (SqDxfRelease release = SQ_DXF_R12; release <= SQ_DXF_R2000; release++)
    {
      g_autoptr (GArray) groups = groups_of (drawing, release, SQ_DXF_PLAIN);
      g_autoptr (GHashTable) used = layers_in_use (groups);
      g_autoptr (GHashTable) colours = g_hash_table_new (g_direct_hash, g_direct_equal);
      guint from = find_group (groups, 0, 0, "LAYER"), to = find_group (groups, from, 0, "ENDTAB");
      for (SqCutLayer layer = 0; layer < SQ_N_CUT_LAYERS; layer++)
        {
          g_autofree char *name = g_ascii_strup (sq_cut_layer_name (layer), -1);
          guint entry = find_group (groups, from, 2, name);
          g_assert_cmpuint (entry, <, to);
          g_assert_cmpint (group_at (groups, entry + 2)->code, ==, 62);
          g_assert_true (g_hash_table_add (
              colours, GINT_TO_POINTER (atoi (group_at (groups, entry + 2)->value))));
          g_hash_table_remove (used, name);
        }
      g_assert_cmpuint (g_hash_table_size (used), ==, 0);
    }
}

/* Numbers only, layer 0 unused: "DXF ASTM File Format", a public documentation after D6673-10. */
static void
test_numbered_layers (void)
{
  const char *const numbers[] = { "1", "2", "3", "4", "7", "8", "11", "14", "15" };
  g_autoptr (SqCutDrawing) drawing = make_drawing ();

  for (SqDxfRelease release = SQ_DXF_R12; release <= SQ_DXF_R2000; release++)
    {
      g_autoptr (GArray) groups = groups_of (drawing, release, SQ_DXF_D6673);
      g_autoptr (GHashTable) used = layers_in_use (groups);
      for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
        g_assert_true (g_hash_table_remove (used, numbers[i]));
      g_assert_cmpuint (g_hash_table_size (used), ==, 0);
      g_assert_false (has_group (groups, 0, "LWPOLYLINE"));
      g_assert_false (release == SQ_DXF_R12 && has_group (groups, 8, "0"));
    }
}

static guint
count_in_block (const GArray *groups, const char *block, const char *type, const char *layer)
{
  guint from, to, n = 0;

  find_block (groups, block, &from, &to);
  for (guint i = from; i < to; i = next_entity (groups, i, to))
    if (g_str_equal (group_at (groups, i)->value, type)
        && g_str_equal (value_of (groups, i, to, 8), layer))
      n++;
  return n;
}

static void
test_block (void)
{
  g_autoptr (SqCutDrawing) drawing = make_drawing ();
  g_autoptr (GArray) groups = groups_of (drawing, SQ_DXF_R12, SQ_DXF_D6673);
  guint from, to;

  find_block (groups, "1_TOP", &from, &to);
  for (guint i = from; i < to; i++)
    g_assert_cmpint (group_at (groups, i)->code, !=, 42);
  g_assert_cmpuint (count_in_block (groups, "1_TOP", "POLYLINE", "1"), ==, 1);
  g_assert_cmpuint (count_in_block (groups, "1_TOP", "POLYLINE", "11"), ==, 1);
  g_assert_cmpuint (count_in_block (groups, "1_TOP", "POLYLINE", "14"), ==, 1);
  g_assert_cmpuint (count_in_block (groups, "1_TOP", "LINE", "8"), ==, 1);
  g_assert_cmpuint (count_in_block (groups, "1_TOP", "LINE", "7"), ==, 1);
  g_assert_cmpuint (count_in_block (groups, "1_TOP", "TEXT", "15"), ==, 1);
  /* three corners and both ends of the round one, four of the sew line, both ends of the fold */
  g_assert_cmpuint (count_in_block (groups, "1_TOP", "POINT", "2"), ==, 5 + 4 + 2);
  g_assert_cmpuint (count_in_block (groups, "1_TOP", "POINT", "3"), >, 20);
  g_assert_cmpuint (count_in_block (groups, "2_STRIP", "POINT", "2"), ==, 4);
  g_assert_cmpuint (count_in_block (groups, "2_STRIP", "POINT", "3"), ==, 0);
  g_assert_cmpuint (count_in_block (groups, "2_STRIP", "LINE", "7"), ==, 1);
}

/* It begins at the cut line, whichever way its line runs; its depth is z, as a public note on the
 * standard has it. */
static void
test_notch (void)
{
  g_autoptr (SqCutDrawing) drawing = make_drawing ();
  g_autoptr (GArray) groups = groups_of (drawing, SQ_DXF_R12, SQ_DXF_D6673);
  guint from, to;

  g_assert_cmpuint (count_in_block (groups, "1_TOP", "POINT", "4"), ==, 1);
  find_block (groups, "1_TOP", &from, &to);
  for (guint i = from; i < to; i = next_entity (groups, i, to))
    if (g_str_equal (value_of (groups, i, to, 8), "4"))
      {
        g_assert_cmpfloat (number_of (groups, i, to, 10), ==, 30);
        g_assert_cmpfloat (number_of (groups, i, to, 20), ==, 0);
        g_assert_cmpfloat (number_of (groups, i, to, 30), ==, 6);
      }
}

static void
test_inserts (void)
{
  g_autoptr (SqCutDrawing) drawing = make_drawing ();
  g_autoptr (GArray) groups = groups_of (drawing, SQ_DXF_R2000, SQ_DXF_D6673);
  const char *const names[] = { "1_TOP", "1_TOP", "2_STRIP" };
  guint from, to, n = 0;

  find_section (groups, "ENTITIES", &from, &to);
  for (guint i = from; i < to; i = next_entity (groups, i, to))
    if (g_str_equal (group_at (groups, i)->value, "INSERT"))
      {
        const SqCutPlace *place = sq_cut_place (drawing, n);
        g_assert_cmpstr (value_of (groups, i, to, 2), ==, names[n]);
        g_assert_cmpfloat (number_of (groups, i, to, 10), ==, place->at.x);
        g_assert_cmpfloat (number_of (groups, i, to, 20), ==, place->at.y);
        g_assert_cmpfloat (number_of (groups, i, to, 50), ==, place->turn_rad * 180 / G_PI);
        n++;
      }
  g_assert_cmpuint (n, ==, 3);
}

/* What 33 real files say: github.com/ksons/astm-parser. */
static void
test_system_texts (void)
{
  g_autoptr (SqCutDrawing) drawing = make_drawing ();
  g_autoptr (GArray) groups = groups_of (drawing, SQ_DXF_R12, SQ_DXF_D6673);
  guint from, to;

  g_assert_true (has_group (groups, 1, "Piece Name: 1 Top"));
  g_assert_true (has_group (groups, 1, "Piece Name: 2 Strip"));
  g_assert_true (has_group (groups, 1, "Quantity: 2"));
  g_assert_true (has_group (groups, 1, "Fabric: Canvas"));
  g_assert_true (has_group (groups, 1, "Annotation: Bay seat, RIGHT SIDE UP"));
  find_section (groups, "ENTITIES", &from, &to);
  g_assert_cmpuint (find_group (groups, from, 1, "Style Name: Bay seat"), <, to);
  g_assert_cmpuint (find_group (groups, from, 1, "Units: METRIC"), <, to);
}

/* What each of @names is called as a block. */
static void
assert_block_names (const char *const *names, const char *const *blocks)
{
  g_autoptr (SqCutDrawing) drawing = drawing_new ("");

  for (guint i = 0; names[i] != NULL; i++)
    {
      add_cut_line (add_shape (drawing, names[i]), SQ_LAYER_CUT,
                    sq_path_new_rectangle (0, 0, 10, 10));
      add_cut_place (drawing, i, 0, sq_point (20.0 * i, 0));
    }
  g_autoptr (GArray) groups = groups_of (drawing, SQ_DXF_R2000, SQ_DXF_D6673);
  for (guint i = 0; blocks[i] != NULL; i++)
    {
      guint from, to;
      find_block (groups, blocks[i], &from, &to);
    }
}

static void
test_block_names (void)
{
  g_autofree char *long_name = g_strnfill (500, 'x');
  const char *const names[] = {
    "3 Front boxing", "3 Front boxing", "3 front-BOXING", "",  "\"'\n/\\",
    "座面",           "12 Å座-y",       long_name,        NULL
  };
  const char *const blocks[] = { "3_FRONT_BOXING",
                                 "3_FRONT_BOXING_2",
                                 "3_FRONT_BOXING_3",
                                 "PIECE",
                                 "PIECE_2",
                                 "PIECE_3",
                                 "XXXXXXXXXXXXXXXXXXXX",
                                 "12_Y",
                                 NULL };

  assert_block_names (names, blocks);
}

/* How @text is written in @release. */
static char *
written (const char *text, SqDxfRelease release)
{
  g_autoptr (SqCutDrawing) drawing = drawing_new ("");
  guint from, to;

  add_cut_text (add_shape (drawing, "1"), sq_point (1, 2), 3, text);
  add_cut_place (drawing, 0, 0, sq_point (0, 0));
  g_autoptr (GArray) groups = groups_of (drawing, release, SQ_DXF_PLAIN);
  find_section (groups, "ENTITIES", &from, &to);
  g_assert_cmpstr (group_at (groups, from)->value, ==, "TEXT");
  return g_strdup (value_of (groups, from, to, 1));
}

static void
test_texts (void)
{
  static const struct
  {
    const char *text, *written;
  } cases[] = {
    { "Top", "Top" },
    { "", "" },
    { "座面", "\\U+5EA7\\U+9762" },
    { "א", "\\U+05D0" },
    { "🪑", "\\U+D83E\\U+DE91" },
    { "a\nb\tc\r", "a b c " },
    { "\"it's\" 1/2", "\"it's\" 1/2" },
    { "\\U+0041", "\\U+005CU+0041" },
    { "100%%d", "100% %d" },
    { "5^J", "5^ J" },
    { "cut 1 · right", "cut 1 - right" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    for (SqDxfRelease release = SQ_DXF_R12; release <= SQ_DXF_R2000; release++)
      {
        g_autofree char *found = written (cases[i].text, release);
        g_assert_cmpstr (found, ==, cases[i].written);
      }
}

/* A string has at most 255 bytes in R12, 2049 from R2000 on: DXF reference, group code value types.
 * No code is cut through. */
static void
test_long_texts (void)
{
  g_autoptr (GString) name = g_string_new (NULL);

  for (guint i = 0; i < 500; i++)
    g_string_append (name, "座");
  g_autofree char *old = written (name->str, SQ_DXF_R12);
  g_autofree char *newer = written (name->str, SQ_DXF_R2000);
  g_assert_cmpuint (strlen (old), ==, 252);
  g_assert_cmpuint (strlen (newer), ==, 2044);
  g_assert_true (g_str_has_suffix (old, "\\U+5EA7"));
  g_assert_true (g_str_has_suffix (newer, "\\U+5EA7"));
}

static void
test_empty (void)
{
  g_autoptr (SqCutDrawing) drawing = drawing_new ("");

  for (SqDxfRelease release = SQ_DXF_R12; release <= SQ_DXF_R2000; release++)
    for (SqDxfLayers layers = SQ_DXF_PLAIN; layers <= SQ_DXF_D6673; layers++)
      {
        g_autoptr (GArray) groups = groups_of (drawing, release, layers);
        for (guint i = 0; i < groups->len; i++)
          g_assert_null (strstr (group_at (groups, i)->value, "inf"));
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/dxf/sections", test_sections);
  g_test_add_func ("/exchange/dxf/names", test_names);
  g_test_add_func ("/exchange/dxf/units", test_units);
  g_test_add_func ("/exchange/dxf/extent", test_extent);
  g_test_add_func ("/exchange/dxf/handles", test_handles);
  g_test_add_func ("/exchange/dxf/bulges", test_bulges);
  g_test_add_func ("/exchange/dxf/plain-layers", test_plain_layers);
  g_test_add_func ("/exchange/dxf/numbered-layers", test_numbered_layers);
  g_test_add_func ("/exchange/dxf/block", test_block);
  g_test_add_func ("/exchange/dxf/notch", test_notch);
  g_test_add_func ("/exchange/dxf/inserts", test_inserts);
  g_test_add_func ("/exchange/dxf/system-texts", test_system_texts);
  g_test_add_func ("/exchange/dxf/block-names", test_block_names);
  g_test_add_func ("/exchange/dxf/texts", test_texts);
  g_test_add_func ("/exchange/dxf/long-texts", test_long_texts);
  g_test_add_func ("/exchange/dxf/empty", test_empty);
  return g_test_run ();
}
