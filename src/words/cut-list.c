/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/cut-list.h"

#include "words/cut-sheet.h"
#include "words/text-table.h"

#include <glib/gi18n.h>
#include <string.h>

#define INDENT 2
#define MOST 98 /* columns */

/* Before which column the remarks of a line stand. */
#define REMARK_COLUMN 2

static void
add_heading (GString *out, const char *text)
{
  g_string_append_printf (out, "\n%s\n", text);
}

static void
add_title (GString *out, const SqCutSheet *sheet)
{
  g_string_append_printf (out, "%s\n", sheet->title);
  for (guint i = MIN (sq_text_width (sheet->title), MOST); i > 0; i--)
    g_string_append (out, "=");
  g_string_append_c (out, '\n');
  if (sheet->customer[0] != '\0')
    g_string_append_printf (out, _ ("For %s\n"), sheet->customer);
  g_string_append_printf (out, "%s\n", sheet->units);
}

/* The table takes its texts, so it gets copies. */
static void
add_cells (SqTextTable *text, char *const *cells, guint n)
{
  g_autofree char **copies = g_new0 (char *, n + 1);

  for (guint i = 0; i < n; i++)
    copies[i] = g_strdup (cells[i]);
  sq_text_table_add_row (text, copies);
}

static void
add_table (GString *out, const SqSheetTable *table)
{
  g_autoptr (SqTextTable) text = sq_text_table_new (table->aligns);
  guint n = (guint) strlen (table->aligns);

  if (table->rows->len == 0)
    return;
  add_heading (out, table->heading);
  if (table->heads != NULL)
    add_cells (text, table->heads, n);
  for (guint i = 0; i < table->rows->len; i++)
    add_cells (text, g_ptr_array_index (table->rows, i), n);
  sq_text_table_append (text, out, INDENT, MOST);
}

static void
add_problems (GString *out, const SqCutSheet *sheet)
{
  g_autoptr (SqTextTable) text = sq_text_table_new ("lll");

  if (sheet->problems->len == 0)
    return;
  add_heading (out, sheet->before);
  for (guint i = 0; i < sheet->problems->len; i++)
    {
      const SqSheetProblem *problem = &g_array_index (sheet->problems, SqSheetProblem, i);
      char *const cells[] = { problem->name, problem->cushion, problem->text };
      add_cells (text, cells, G_N_ELEMENTS (cells));
    }
  sq_text_table_append (text, out, INDENT, MOST);
}

static void
add_line (SqTextTable *text, const SqSheetLine *line)
{
  char *cells[] = {
    g_strdup_printf ("%u", line->number), g_strdup (line->cushion), g_strdup (line->piece_alone),
    g_strdup_printf ("%u", line->count),  g_strdup (line->width),   g_strdup (line->length),
  };

  sq_text_table_add_row (text, cells);
  for (guint i = 0; i < line->remarks->len; i++)
    sq_text_table_add_remark (text, REMARK_COLUMN, g_strdup (g_ptr_array_index (line->remarks, i)));
}

static void
add_indented (GString *out, const char *text)
{
  if (text[0] == '\0')
    return;
  g_string_append_printf (out, "%*s", INDENT, "");
  sq_text_append_wrapped (out, text, INDENT, MOST);
}

static void
add_cloth (GString *out, const SqSheetCloth *cloth, gboolean has_cushions)
{
  g_autoptr (SqTextTable) text = sq_text_table_new ("rllrrr");
  char *heads[] = {
    g_strdup (_ ("No")),    g_strdup (has_cushions ? _ ("Cushion") : ""),
    g_strdup (_ ("Piece")), g_strdup (_ ("Count")),
    g_strdup (_ ("Width")), g_strdup (_ ("Length")),
  };

  if (cloth->name[0] != '\0')
    g_string_append_printf (out, _ ("\nCLOTH  %s: %s\n"), cloth->name, cloth->sum);
  else
    g_string_append_printf (out, _ ("\nCLOTH  %s\n"), cloth->sum);
  add_indented (out, cloth->about);
  sq_text_table_add_row (text, heads);
  for (guint i = 0; i < cloth->lines->len; i++)
    add_line (text, sq_sheet_line (cloth, i));
  sq_text_table_append (text, out, INDENT, MOST);
}

static void
add_cautions (GString *out, const SqCutSheet *sheet)
{
  add_heading (out, sheet->at_work);
  for (guint i = 0; i < sheet->cautions->len; i++)
    {
      g_string_append (out, "  - ");
      sq_text_append_wrapped (out, g_ptr_array_index (sheet->cautions, i), INDENT + 2, MOST);
    }
}

char *
sq_words_cut_list (const SqPlan *plan, const SqLays *lays, const SqLengthStyle *style)
{
  g_autoptr (SqCutSheet) sheet = sq_cut_sheet_new (plan, lays, style);
  GString *out = g_string_new (NULL);

  add_title (out, sheet);
  add_table (out, &sheet->cushions);
  add_problems (out, sheet);
  for (guint i = 0; i < sheet->cloths->len; i++)
    add_cloth (out, sq_cut_sheet_cloth (sheet, i), plan->covers->len > 1);
  add_table (out, &sheet->zips);
  add_table (out, &sheet->foam);
  add_table (out, &sheet->foam_sheets);
  add_table (out, &sheet->totals);
  add_cautions (out, sheet);
  return g_string_free (out, FALSE);
}
