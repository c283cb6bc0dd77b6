/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/lays-csv.h"

#include "base/units.h"
#include "words/csv.h"
#include "words/names.h"
#include "words/piece-names.h"
#include "words/strip-words.h"

/* Names of columns are for programs: the same in every language. */
#define HEADS                                                                                      \
  "cloth,strip,number,cushion,piece,copy,x,y,turn,mirrored,along_from,along_to,across_from,"       \
  "across_to\r\n"

/* Lays are in whole micrometres. */
static void
add_number (GString *out, double number)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  /* no "-0.000" */
  g_ascii_formatd (text, sizeof text, "%.3f", round (number * 1e3) / 1e3 + 0.0);
  g_string_append (out, text);
}

static void
add_numbers (GString *out, const double *numbers, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      add_number (out, numbers[i]);
      g_string_append (out, i + 1 < n ? "," : "");
    }
}

static void
add_placed (GString *out, const SqLays *lays, const SqClothLay *cloth, const SqPlaced *placed)
{
  const SqCutEntry *entry = sq_lays_entry (lays, placed);
  const SqCover *cover = sq_plan_cover (lays->plan, entry->cushion);
  g_autofree char *cloth_name = sq_words_cloth (sq_plan_cloth (lays->plan, cloth->cloth));
  g_autofree char *strip = sq_words_strip_name (lays, cloth, placed->strip);
  g_autofree char *cushion = sq_words_cover (lays->plan->job, cover);
  g_autofree char *piece = sq_words_piece (cover, entry->piece);
  SqBox box = sq_lays_box (lays, placed);
  double turn_rad;
  SqPoint at;

  sq_lays_place (lays, placed, &turn_rad, &at);
  sq_csv_add (out, cloth_name);
  sq_csv_add (out, strip);
  g_string_append_printf (out, "%u,", entry->number);
  sq_csv_add (out, cushion);
  sq_csv_add (out, piece);
  g_string_append_printf (out, "%u,", placed->copy + 1);
  add_numbers (out, (const double[]){ at.x, at.y, sq_turn_deg (turn_rad) }, 3);
  g_string_append (out, placed->pose.mirrored ? ",1," : ",0,");
  add_numbers (out, (const double[]){ box.min.x, box.max.x, box.min.y, box.max.y }, 4);
  g_string_append (out, "\r\n");
}

char *
sq_words_lays_csv (const SqLays *lays)
{
  GString *out = g_string_new (HEADS);

  for (guint i = 0; i < lays->cloths->len; i++)
    {
      const SqClothLay *cloth = sq_lays_cloth (lays, i);
      for (guint strip = 0; strip < cloth->task->strips->len; strip++)
        for (guint k = 0; k < cloth->lay->placed->len; k++)
          if (sq_lay_placed (cloth->lay, k)->strip == strip)
            add_placed (out, lays, cloth, sq_lay_placed (cloth->lay, k));
    }
  return g_string_free (out, FALSE);
}
