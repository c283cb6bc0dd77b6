/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/lays-csv.h"

#include "cover/hand-made.h"
#include "words/cut-list-csv.h"

#include <string.h>

enum
{
  CLOTH,
  STRIP,
  NUMBER,
  CUSHION,
  PIECE,
  COPY,
  X,
  Y,
  TURN,
  MIRRORED,
  ALONG_FROM,
  ALONG_TO,
  ACROSS_FROM,
  ACROSS_TO,
  N_COLUMNS
};

static SqLays *
lays_with (const char *more)
{
  const SqLayBudget first = { .seed = 1, .steps = 0 };
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'in',"
      "'cloths':[{'id':1,'width':1400%s}],"
      "'cushions':[{'id':1,'name':'Seat','count':2,'thickness':60,'outline':[{'id':1,'x':0,'y':0},"
      "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':500},{'id':4,'x':0,'y':500}]}]}",
      more);
  g_autoptr (SqJob) job = job_of_text (text);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  return sq_lays_new (plan, NULL, &first, NULL);
}

/* The cells of a line, without their quotes. */
static GStrv
split (const char *line)
{
  g_autoptr (GStrvBuilder) cells = g_strv_builder_new ();
  g_autoptr (GString) cell = g_string_new (NULL);
  gboolean in_quotes = FALSE;

  for (const char *at = line; *at != '\0'; at++)
    if (*at == '"')
      in_quotes = !in_quotes;
    else if (*at == ',' && !in_quotes)
      {
        g_strv_builder_add (cells, cell->str);
        g_string_truncate (cell, 0);
      }
    else
      g_string_append_c (cell, *at);
  g_strv_builder_add (cells, cell->str);
  return g_strv_builder_end (cells);
}

static void
assert_figure (const char *cell, double mm)
{
  g_assert_nonnull (strchr (cell, '.'));
  g_assert_cmpfloat_with_epsilon (g_ascii_strtod (cell, NULL), mm, 0.0005001);
}

/* A line for each copy, of the figures that the lay has; by strips. */
static void
test_lines (void)
{
  g_autoptr (SqLays) lays = lays_with (
      ",'name':'=Canvas','stock':[{'id':2,'kind':'remnant','length':700}]");
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);
  g_autofree char *csv = sq_words_lays_csv (lays);
  g_auto (GStrv) lines = g_strsplit (csv, "\r\n", -1);
  guint line = 1;

  g_assert_cmpstr (lines[0], ==,
                   "cloth,strip,number,cushion,piece,copy,x,y,turn,mirrored,along_from,along_to,"
                   "across_from,across_to");
  g_assert_cmpuint (g_strv_length (lines), ==, cloth->lay->placed->len + 2);
  for (guint strip = 0; strip < 2; strip++)
    for (guint i = 0; i < cloth->lay->placed->len; i++)
      {
        const SqPlaced *placed = sq_lay_placed (cloth->lay, i);
        if (placed->strip != strip)
          continue;
        g_auto (GStrv) cells = split (lines[line++]);
        SqBox box = sq_lays_box (lays, placed);
        g_assert_cmpuint (g_strv_length (cells), ==, N_COLUMNS);
        g_assert_cmpstr (cells[CLOTH], ==, "'=Canvas");
        g_assert_cmpstr (cells[STRIP], ==, strip == 0 ? "Remnant 1" : "Roll to buy");
        g_assert_cmpint (atoi (cells[NUMBER]), ==, sq_lays_entry (lays, placed)->number);
        g_assert_cmpstr (cells[CUSHION], ==, "Seat");
        g_assert_cmpint (atoi (cells[COPY]), ==, placed->copy + 1);
        assert_figure (cells[X], placed->at.x / 1000.0);
        assert_figure (cells[Y], placed->at.y / 1000.0);
        g_assert_cmpstr (cells[MIRRORED], ==, "0");
        assert_figure (cells[ALONG_FROM], box.min.x);
        assert_figure (cells[ALONG_TO], box.max.x);
        assert_figure (cells[ACROSS_FROM], box.min.y);
        assert_figure (cells[ACROSS_TO], box.max.y);
      }
  g_assert_null (strstr (csv, "-0.000"));
}

/* What a line says of place and turn puts the piece into the box it says. */
static void
test_places (void)
{
  g_autoptr (SqLays) lays = lays_with ("");
  g_autofree char *csv = sq_words_lays_csv (lays);
  g_auto (GStrv) lines = g_strsplit (csv, "\r\n", -1);

  for (guint line = 1; lines[line][0] != '\0'; line++)
    {
      g_auto (GStrv) cells = split (lines[line]);
      guint number = (guint) atoi (cells[NUMBER]);
      const SqCutEntry *entry = &g_array_index (lays->plan->cut_list, SqCutEntry, number - 1);
      const SqPiece *piece = sq_cover_piece (sq_plan_cover (lays->plan, entry->cushion),
                                             entry->piece);
      SqPoint at = { g_ascii_strtod (cells[X], NULL), g_ascii_strtod (cells[Y], NULL) };
      double turn_rad = g_ascii_strtod (cells[TURN], NULL) * G_PI / 180;
      g_autoptr (SqPath) cut = sq_path_moved (sq_piece_cut (piece, 0), turn_rad, at);
      SqBox box = sq_path_box (cut);

      assert_figure (cells[ALONG_FROM], box.min.x);
      assert_figure (cells[ALONG_TO], box.max.x);
      assert_figure (cells[ACROSS_FROM], box.min.y);
      assert_figure (cells[ACROSS_TO], box.max.y);
    }
}

/* Names that need quotes have them in both tables. */
static void
test_quotes (void)
{
  g_autoptr (SqLays) lays = lays_with (",'name':'Canvas, 10 oz'");
  g_autofree char *csv = sq_words_lays_csv (lays);
  g_autofree char *list = sq_words_cut_list_csv (lays->plan);

  g_assert_nonnull (strstr (csv, "\r\n\"Canvas, 10 oz\",Roll to buy,"));
  g_assert_nonnull (strstr (list, "\r\n1,\"Canvas, 10 oz\",Seat,"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/lays csv/lines", test_lines);
  g_test_add_func ("/lays csv/places", test_places);
  g_test_add_func ("/lays csv/quotes", test_quotes);
  return g_test_run ();
}
