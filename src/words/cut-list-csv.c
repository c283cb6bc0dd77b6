/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/cut-list-csv.h"

#include "base/units.h"
#include "words/csv.h"
#include "words/names.h"
#include "words/piece-names.h"

/* Names of columns are for programs: the same in every language. */
#define HEADS "number,cloth,cushion,piece,count,width,length,unit\r\n"

static void
add_length (GString *out, double mm, SqUnit unit)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  switch (unit)
    {
    case SQ_UNIT_IN:
      g_ascii_formatd (text, sizeof text, "%.4f", mm / SQ_MM_PER_INCH);
      break;
    case SQ_UNIT_CM:
      g_ascii_formatd (text, sizeof text, "%.3f", mm / SQ_MM_PER_CM);
      break;
    case SQ_UNIT_MM:
      g_ascii_formatd (text, sizeof text, "%.2f", mm);
      break;
    }
  g_string_append_printf (out, "%s,", text);
}

static void
add_entry (GString *out, const SqPlan *plan, const SqCutEntry *entry)
{
  static const char *const units[] = {
    [SQ_UNIT_IN] = "in", [SQ_UNIT_MM] = "mm", [SQ_UNIT_CM] = "cm"
  };
  const SqCover *cover = sq_plan_cover (plan, entry->cushion);
  const SqPiece *piece = sq_cover_piece (cover, entry->piece);
  g_autofree char *cloth = sq_words_cloth (sq_plan_cloth (plan, entry->cloth));
  g_autofree char *cushion = sq_words_cover (plan->job, cover);
  g_autofree char *name = sq_words_piece (cover, entry->piece);

  g_string_append_printf (out, "%u,", entry->number);
  sq_csv_add (out, cloth);
  sq_csv_add (out, cushion);
  sq_csv_add (out, name);
  g_string_append_printf (out, "%u,", entry->count);
  add_length (out, piece->width_mm, plan->job->units);
  add_length (out, piece->height_mm, plan->job->units);
  g_string_append_printf (out, "%s\r\n", units[plan->job->units]);
}

char *
sq_words_cut_list_csv (const SqPlan *plan)
{
  GString *out = g_string_new (HEADS);

  for (guint i = 0; i < plan->cut_list->len; i++)
    add_entry (out, plan, &g_array_index (plan->cut_list, SqCutEntry, i));
  return g_string_free (out, FALSE);
}
