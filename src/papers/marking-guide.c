/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The marking guide: how the cloth lies, what is done first, and piece by piece, in the order of
 * marking, where each mark is along and across. */
#include "papers/columns.h"
#include "papers/kinds.h"
#include "words/cautions.h"
#include "words/inner-marks.h"
#include "words/lay-words.h"
#include "words/marking-words.h"
#include "words/names.h"
#include "words/paper-words.h"
#include "words/ply-words.h"
#include "words/strip-words.h"

/* What a column holds: letter, along, across, how the line goes on. */
#define COLUMN_MM 80.0
#define INDENT_MM 7.0
#define LETTER_MM 8.0
#define FIGURE_MM 22.0
#define TICK_MM 3.6
#define LINE_MM 6.0

static const SqType name_type = { 4.3, TRUE, SQ_TONE_INK };
static const SqType figure_type = { 4.3, FALSE, SQ_TONE_INK };
static const SqType head_type = { 3.1, FALSE, SQ_TONE_DIM };
static const SqType strong_type = { 3.7, TRUE, SQ_TONE_INK };
static const SqType side_type = { 5.2, TRUE, SQ_TONE_INK };

/* --- a piece --------------------------------------------------------------------------------- */

/* A row of a table of points. */
static void
add_row (SqColumns *columns, char *const *cells, const SqType *letter, const SqType *figure)
{
  double note_mm = INDENT_MM + LETTER_MM + 2 * FIGURE_MM + 3;

  sq_columns_line (columns, sq_type_height_mm (figure, 1));
  sq_columns_text (columns, INDENT_MM, LETTER_MM, SQ_ALIGN_START, letter, cells[0]);
  sq_columns_text (columns, INDENT_MM + LETTER_MM, FIGURE_MM, SQ_ALIGN_END, figure, cells[1]);
  sq_columns_text (columns, INDENT_MM + LETTER_MM + FIGURE_MM, FIGURE_MM, SQ_ALIGN_END, figure,
                   cells[2]);
  sq_columns_text (columns, note_mm, sq_columns_width_mm (columns) - note_mm, SQ_ALIGN_START,
                   &sq_type_small, cells[3]);
}

static void
add_texts (SqColumns *columns, const SqType *type, GPtrArray *texts)
{
  for (guint i = 0; i < texts->len; i++)
    sq_columns_paragraph (columns, INDENT_MM, type, g_ptr_array_index (texts, i));
  g_ptr_array_unref (texts);
}

/* Which copy it is stands at the right of the first line. */
static void
add_name (SqColumns *columns, const char *name, const char *copy)
{
  double width_mm = sq_columns_width_mm (columns) - INDENT_MM;
  double copy_mm = sq_text_width_em (copy, FALSE) * figure_type.em_mm + 0.1;
  double name_mm = copy[0] != '\0' ? width_mm - copy_mm - 3 : width_mm;
  g_autoptr (GPtrArray) lines = sq_wrapped (name, name_mm, &name_type);

  sq_columns_group (columns);
  for (guint i = 0; i < lines->len; i++)
    {
      sq_columns_line (columns, LINE_MM);
      sq_columns_text (columns, INDENT_MM, name_mm, SQ_ALIGN_START, &name_type,
                       g_ptr_array_index (lines, i));
      if (i > 0)
        continue;
      sq_columns_tick_box (columns, TICK_MM);
      sq_columns_text (columns, INDENT_MM + width_mm - copy_mm, copy_mm, SQ_ALIGN_END, &figure_type,
                       copy);
    }
}

static void
add_piece (SqColumns *columns, const SqPaperSpec *spec, const SqMarking *marking, guint i)
{
  g_autofree char *name = sq_words_marked (spec->lays, marking, i);
  g_autofree char *copy = sq_words_marked_copy (spec->lays, marking, i);
  SqSheetTable points;

  sq_words_mark_points (&points, marking, i, &spec->style);
  add_name (columns, name, copy);
  add_texts (columns, &figure_type, sq_words_mark_ranges (marking, i, &spec->style));
  if (points.rows->len > 0)
    add_row (columns, points.heads, &head_type, &head_type);
  for (guint k = 0; k < points.rows->len; k++)
    add_row (columns, g_ptr_array_index (points.rows, k), &name_type, &figure_type);
  add_texts (columns, &sq_type_small, sq_words_marks_inside (marking, i, &spec->style));
  sq_sheet_table_clear (&points);
}

/* Those that straight cuts free, or the others; nothing where there are none. */
static void
add_pieces (SqPages *pages, const SqPaperSpec *spec, const SqMarking *marking, gboolean in_strip,
            const char *heading)
{
  SqColumns *columns = sq_columns_new (pages, COLUMN_MM);
  gboolean is_first = TRUE;

  for (guint i = 0; i < marking->pieces->len; i++)
    {
      if (sq_marked_piece (marking, i)->is_in_strip != in_strip)
        continue;
      if (is_first)
        {
          sq_pages_gap (pages, 4);
          sq_pages_heading (pages, heading, 30);
        }
      is_first = FALSE;
      add_piece (columns, spec, marking, i);
    }
  sq_columns_end (columns);
}

/* --- a strip --------------------------------------------------------------------------------- */

static void
add_straight_cuts (SqPages *pages, const SqPaperSpec *spec, const SqMarking *marking)
{
  if (marking->cuts->len == 0)
    return;
  sq_pages_gap (pages, 4);
  sq_pages_heading (pages, sq_words_strips_first (spec->lays, marking), 20);
  sq_pages_paragraph (pages, &sq_type_small, sq_words_strips_how (spec->lays, marking));
  sq_pages_gap (pages, 1.5);
  SqColumns *columns = sq_columns_new (pages, COLUMN_MM);
  for (guint i = 0; i < marking->cuts->len; i++)
    {
      g_autofree char *text = sq_words_straight_cut (spec->lays, marking, i, &spec->style);
      sq_columns_group (columns);
      sq_columns_line (columns, LINE_MM);
      sq_columns_tick_box (columns, TICK_MM);
      sq_columns_text (columns, INDENT_MM, sq_columns_width_mm (columns) - INDENT_MM,
                       SQ_ALIGN_START, &strong_type, text);
    }
  sq_columns_end (columns);
}

static void
add_strip (SqPages *pages, const SqPaperSpec *spec, guint index, guint strip, const char *name)
{
  g_autoptr (SqMarking) marking = sq_marking_new (spec->lays, index, strip, spec->wrong_side,
                                                  &spec->style);
  g_autoptr (GPtrArray) before = sq_words_marking_before (spec->lays, marking, &spec->style);

  sq_pages_block (pages, 0, 50);
  sq_pages_paragraph (pages, &side_type, sq_words_side_up (spec->wrong_side));
  if (name != NULL)
    sq_pages_paragraph (pages, &strong_type, name);
  sq_pages_paragraph (pages, &sq_type_text, sq_words_marking_lie (spec->wrong_side));
  for (guint i = 0; i < before->len; i++)
    sq_pages_paragraph (pages, &sq_type_text, g_ptr_array_index (before, i));
  add_straight_cuts (pages, spec, marking);
  add_pieces (pages, spec, marking, TRUE, sq_words_strip_pieces ());
  add_pieces (pages, spec, marking, FALSE, sq_words_other_pieces ());
  sq_pages_gap (pages, 6);
}

/* --- a cloth --------------------------------------------------------------------------------- */

static void
begin_cloth (SqPages *pages, const SqPaperSpec *spec, const char *heading)
{
  g_autofree char *key = sq_words_marking_key (&spec->style);
  g_autoptr (GPtrArray) cautions = sq_words_cutting_cautions (spec->lays->plan);

  sq_pages_set_running (pages, NULL);
  sq_pages_break (pages);
  sq_pages_bookmark (pages, heading);
  sq_pages_heading (pages, heading, 40);
  sq_pages_set_running (pages, heading);
  sq_pages_paragraph (pages, &sq_type_small, key);
  for (guint i = 0; i < cautions->len; i++)
    sq_pages_paragraph (pages, &sq_type_small, g_ptr_array_index (cautions, i));
  sq_pages_gap (pages, 3);
}

static void
add_unlaid (SqPages *pages, const SqPaperSpec *spec, const SqClothLay *cloth)
{
  for (guint i = 0; i < cloth->lay->unlaid->len; i++)
    {
      g_autofree char *text = sq_words_unlaid (
          spec->lays, cloth, &g_array_index (cloth->lay->unlaid, SqUnlaid, i), &spec->style);
      sq_pages_paragraph (pages, &strong_type, text);
    }
  for (guint i = 0; i < cloth->task->bad_pins->len; i++)
    {
      g_autofree char *text = sq_words_bad_pin (spec->lays, cloth, i);
      sq_pages_paragraph (pages, &sq_type_text, text);
    }
}

static void
add_cloth (SqPages *pages, const SqPaperSpec *spec, guint index)
{
  const SqClothLay *cloth = sq_lays_cloth (spec->lays, index);
  g_autofree char *name = sq_words_cloth (sq_plan_cloth (spec->lays->plan, cloth->cloth));
  g_autofree char *heading = sq_words_marking_of (name);
  g_autofree char *unused = sq_words_unused_stock (spec->lays, cloth);

  begin_cloth (pages, spec, heading);
  add_unlaid (pages, spec, cloth);
  if (cloth->lay->placed->len == 0)
    sq_pages_paragraph (pages, &sq_type_text, sq_words_marking_nothing ());
  for (guint i = 0; i < cloth->task->strips->len; i++)
    if (sq_lay_length (cloth->lay, i) > 0)
      {
        g_autofree char *strip = sq_words_names_strips (cloth)
                                     ? sq_words_strip (spec->lays, cloth, i, &spec->style)
                                     : NULL;
        add_strip (pages, spec, index, i, strip);
      }
  if (unused != NULL)
    sq_pages_paragraph (pages, &sq_type_small, unused);
}

/* The top ply of each lay of a lot. */
static void
add_plies (SqPages *pages, const SqPaperSpec *spec, guint index)
{
  const SqClothLay *cloth = sq_lays_cloth (spec->lays, index);
  const SqPlyLay *best = sq_plies_best (cloth->plies);
  g_autoptr (SqLays) lays = sq_lays_of_plies (spec->lays);
  SqPaperSpec of_plies = *spec;
  g_autofree char *name = sq_words_cloth (sq_plan_cloth (spec->lays->plan, cloth->cloth));
  g_autofree char *heading = sq_words_marking_of_plies (name);

  of_plies.lays = lays;
  begin_cloth (pages, spec, heading);
  for (guint i = 0; i < best->task->strips->len; i++)
    if (sq_lay_length (best->lay, i) > 0)
      {
        g_autofree char *which = sq_words_ply_lay (cloth->plies, i, &spec->style);
        add_strip (pages, &of_plies, index, i, which);
      }
}

void
sq_marking_guide_make (SqPaper *paper, const SqPaperSpec *spec)
{
  g_autofree char *title = sq_words_paper_title (spec->lays->plan->job);
  SqPages *pages = sq_pages_new (spec, TRUE, title);

  for (guint i = 0; i < spec->lays->cloths->len; i++)
    {
      const SqPlies *plies = sq_lays_cloth (spec->lays, i)->plies;
      add_cloth (pages, spec, i);
      if (plies != NULL && sq_plies_best (plies)->lays > 0)
        add_plies (pages, spec, i);
    }
  sq_pages_end (pages, paper->pages);
}
