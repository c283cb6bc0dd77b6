/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/cut-sheet.h"

#include "words/cautions.h"
#include "words/cut-sheet-tables.h"
#include "words/lay-words.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/piece-names.h"
#include "words/piece-remarks.h"
#include "words/problems.h"
#include "words/strip-words.h"
#include "words/text-table.h"

#include <glib/gi18n.h>

static char *
cleaned (const char *text)
{
  return sq_text_clean (text != NULL ? text : "");
}

/* --- before cutting ------------------------------------------------------------------------ */

/* Takes the texts. */
static void
add_problem (SqCutSheet *sheet, SqSeverity severity, char *cushion, char *text)
{
  SqSheetProblem problem = { severity, g_strdup (sq_words_severity (severity)), cushion, text };

  g_array_append_val (sheet->problems, problem);
}

static void
add_problems_of (SqCutSheet *sheet, const SqPlan *plan, SqSeverity severity,
                 const SqLengthStyle *style)
{
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      for (guint k = 0; k < cover->problems->len; k++)
        {
          const SqProblem *problem = sq_cover_problem (cover, k);
          if (problem->severity == severity)
            add_problem (sheet, severity, sq_sheet_cushion_name (plan, i),
                         sq_words_problem (problem, cover, style));
        }
    }
}

static void
add_unlaid (SqCutSheet *sheet, const SqLays *lays, const SqLengthStyle *style)
{
  for (guint i = 0; i < lays->cloths->len; i++)
    {
      const SqClothLay *cloth = sq_lays_cloth (lays, i);
      for (guint k = 0; k < cloth->lay->unlaid->len; k++)
        {
          const SqUnlaid *unlaid = &g_array_index (cloth->lay->unlaid, SqUnlaid, k);
          if (!sq_lays_is_told (lays, cloth, unlaid))
            add_problem (sheet, SQ_FAULT, g_strdup (""),
                         sq_words_unlaid (lays, cloth, unlaid, style));
        }
    }
}

static void
add_bad_pins (SqCutSheet *sheet, const SqLays *lays)
{
  for (guint i = 0; i < lays->cloths->len; i++)
    for (guint k = 0; k < sq_lays_cloth (lays, i)->task->bad_pins->len; k++)
      add_problem (sheet, SQ_NOTE, g_strdup (""),
                   sq_words_bad_pin (lays, sq_lays_cloth (lays, i), k));
}

static void
add_problems (SqCutSheet *sheet, const SqPlan *plan, const SqLays *lays, const SqLengthStyle *style)
{
  add_problems_of (sheet, plan, SQ_FAULT, style);
  if (lays != NULL)
    add_unlaid (sheet, lays, style);
  add_problems_of (sheet, plan, SQ_WARNING, style);
  add_problems_of (sheet, plan, SQ_NOTE, style);
  if (lays != NULL)
    add_bad_pins (sheet, lays);
}

/* --- what is cut from one cloth ------------------------------------------------------------- */

/* Of what kind @cloth is and what of it matters in cutting; keys that were not given as the job's
 * defaults have them. */
static char *
about_cloth (const SqPlan *plan, const SqCloth *cloth, const SqLengthStyle *style)
{
  const SqDefaults *house = &plan->job->defaults;
  GString *text = g_string_new (NULL);
  SqClothClass kind = cloth->given & SQ_GIVEN_CLOTH_CLASS ? cloth->kind : house->cloth_class;
  g_autofree char *width = sq_words_length (
      cloth->given & SQ_GIVEN_CLOTH_WIDTH ? cloth->width_mm : house->cloth_width_mm, style);

  sq_text_add_to_list (text, g_strdup (sq_words_cloth_class (kind)));
  sq_text_add_to_list (text, g_strdup_printf (_ ("%s usable width"), width));
  if (sq_cloth_is_striped (cloth))
    sq_text_add_to_list (text, g_strdup (_ ("striped")));
  if (cloth->one_way)
    sq_text_add_to_list (text, g_strdup (_ ("one way up")));
  return g_string_free (text, FALSE);
}

static char *
right_side_text (const SqCover *cover, const SqPiece *piece)
{
  GString *text = g_string_new (_ ("right side up"));

  switch (piece->role)
    {
    case SQ_ROLE_FACE:
    case SQ_ROLE_UNDERSIDE:
      sq_text_add_to_list (text, g_strdup (_ ("arrow to the front")));
      break;
    case SQ_ROLE_BOXING:
    case SQ_ROLE_ZIP_STRIP:
    case SQ_ROLE_LET_IN:
      sq_text_add_to_list (text, g_strdup (_ ("its top above")));
      break;
    case SQ_ROLE_WRAP:
      sq_text_add_to_list (text, g_strdup (_ ("its top part above")));
      break;
    case SQ_ROLE_SIDE:
    case SQ_ROLE_DISC:
      sq_text_add_to_list (text, g_strdup (_ ("its top above")));
      break;
    case SQ_ROLE_WELT:
    case SQ_ROLE_TUBE:
      break;
    }
  if (cover->mirrored)
    sq_text_add_to_list (text, g_strdup (_ ("mirrored")));
  return g_string_free (text, FALSE);
}

static void
add_line (SqSheetCloth *cloth, const SqPlan *plan, guint index, const SqLengthStyle *style)
{
  const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, index);
  const SqCover *cover = sq_plan_cover (plan, entry->cushion);
  const SqPiece *piece = sq_cover_piece (cover, entry->piece);
  SqSheetLine line = {
    .entry = index,
    .number = entry->number,
    .count = entry->count,
    .cushion = sq_sheet_cushion_name (plan, entry->cushion),
    .piece = sq_words_piece (cover, entry->piece),
    .piece_alone = sq_words_piece_on_plan (cover, entry->piece),
    .width = sq_words_figure (piece->width_mm, style),
    .length = sq_words_figure (piece->height_mm, style),
    .right_side = right_side_text (cover, piece),
    .remarks = sq_words_piece_remarks (cover, entry->piece, style),
  };

  g_array_append_val (cloth->lines, line);
}

static void
clear_line (gpointer data)
{
  SqSheetLine *line = data;

  g_free (line->cushion);
  g_free (line->piece);
  g_free (line->piece_alone);
  g_free (line->width);
  g_free (line->length);
  g_free (line->right_side);
  g_ptr_array_unref (line->remarks);
}

static void
add_cloth (SqCutSheet *sheet, const SqPlan *plan, const SqLays *lays, guint index,
           const SqLengthStyle *style)
{
  const SqClothTotal *total = &g_array_index (plan->cloths, SqClothTotal, index);
  const SqClothLay *own = lays != NULL ? sq_lays_cloth (lays, index) : NULL;
  const SqCloth *cloth = sq_plan_cloth (plan, total->cloth);
  g_autofree char *area = sq_words_area (total->area_mm2, style);
  SqSheetCloth part = {
    .cloth = total->cloth,
    .name = cloth != NULL ? sq_words_cloth (cloth) : g_strdup (""),
    .about = cloth != NULL ? about_cloth (plan, cloth, style) : g_strdup (""),
    .sum = g_strdup_printf (ngettext ("%u piece, %s", "%u pieces, %s", total->pieces),
                            total->pieces, area),
    .buy = own != NULL ? sq_words_purchase (&own->purchase, style) : g_strdup (""),
    .reckoned = lays != NULL ? sq_words_reckoned (lays, own, style) : g_strdup (""),
    .lines = g_array_new (FALSE, FALSE, sizeof (SqSheetLine)),
  };

  g_array_set_clear_func (part.lines, clear_line);
  for (guint i = 0; i < plan->cut_list->len; i++)
    if (g_array_index (plan->cut_list, SqCutEntry, i).cloth == total->cloth)
      add_line (&part, plan, i, style);
  g_array_append_val (sheet->cloths, part);
}

static void
clear_cloth (gpointer data)
{
  SqSheetCloth *cloth = data;

  g_free (cloth->name);
  g_free (cloth->about);
  g_free (cloth->sum);
  g_free (cloth->buy);
  g_free (cloth->reckoned);
  g_array_unref (cloth->lines);
}

/* --- all of it ------------------------------------------------------------------------------ */

static void
clear_problem (gpointer data)
{
  SqSheetProblem *problem = data;

  g_free (problem->name);
  g_free (problem->cushion);
  g_free (problem->text);
}

SqCutSheet *
sq_cut_sheet_new (const SqPlan *plan, const SqLays *lays, const SqLengthStyle *style)
{
  SqCutSheet *sheet = g_new0 (SqCutSheet, 1);

  sheet->title = cleaned (plan->job->title != NULL ? plan->job->title : _ ("Cushions to cut"));
  sheet->customer = cleaned (plan->job->customer);
  sheet->notes = cleaned (plan->job->notes);
  sheet->units = g_strdup_printf (_ ("Lengths in %s. Sizes are of the cut line: width across the "
                                     "cloth, length along it."),
                                  sq_words_unit (style->unit));
  sheet->before = _ ("BEFORE YOU CUT");
  sheet->cloth = _ ("CLOTH");
  sheet->at_work = _ ("AT WORK");
  sheet->problems = g_array_new (FALSE, FALSE, sizeof (SqSheetProblem));
  g_array_set_clear_func (sheet->problems, clear_problem);
  sheet->cloths = g_array_new (FALSE, FALSE, sizeof (SqSheetCloth));
  g_array_set_clear_func (sheet->cloths, clear_cloth);
  sq_sheet_add_cushions (&sheet->cushions, plan, style);
  add_problems (sheet, plan, lays, style);
  for (guint i = 0; i < plan->cloths->len; i++)
    add_cloth (sheet, plan, lays, i, style);
  sq_sheet_add_zips (&sheet->zips, plan, style);
  sq_sheet_add_foam (&sheet->foam, plan, style);
  sq_sheet_add_foam_sheets (&sheet->foam_sheets, lays, style);
  sq_sheet_add_totals (&sheet->totals, plan, lays, style);
  sheet->cautions = sq_words_cautions (plan);
  return sheet;
}

void
sq_cut_sheet_free (SqCutSheet *sheet)
{
  if (sheet == NULL)
    return;
  g_free (sheet->title);
  g_free (sheet->customer);
  g_free (sheet->notes);
  g_free (sheet->units);
  sq_sheet_table_clear (&sheet->cushions);
  g_array_unref (sheet->problems);
  g_array_unref (sheet->cloths);
  sq_sheet_table_clear (&sheet->zips);
  sq_sheet_table_clear (&sheet->foam);
  sq_sheet_table_clear (&sheet->foam_sheets);
  sq_sheet_table_clear (&sheet->totals);
  g_ptr_array_unref (sheet->cautions);
  g_free (sheet);
}

const char *
sq_sheet_cell (const SqSheetTable *table, guint row, guint column)
{
  return ((char **) g_ptr_array_index (table->rows, row))[column];
}
