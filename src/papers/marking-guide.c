/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The marking guide: how the cloth lies, what is done first, and piece by piece, in the order of
 * marking, where each mark is along and across. */
#include "papers/columns.h"
#include "papers/kinds.h"
#include "papers/marking-drawing.h"
#include "words/cautions.h"
#include "words/inner-marks.h"
#include "words/lay-words.h"
#include "words/marking-words.h"
#include "words/names.h"
#include "words/paper-words.h"
#include "words/ply-words.h"
#include "words/strip-words.h"

/* What a column holds: letter, along, across, how the line goes on. */
#define COLUMN_MM 78.0
#define INDENT_MM 7.0
#define LETTER_MM 6.5
#define FIGURE_MM 15.0
#define GAP_MM 2.5
#define TICK_MM 3.6

/* A strip's head with its drawing. */
#define LEAST_STRIP_MM 130.0
#define NAME_MM 6.0
#define ROW_MM 5.3
#define KEY_GAP_MM 1.4

static const SqType name_type = { 4.0, TRUE, SQ_TONE_INK };
static const SqType figure_type = { 4.0, FALSE, SQ_TONE_INK };
static const SqType cut_type = { 3.7, FALSE, SQ_TONE_INK };
static const SqType head_type = { 3.1, FALSE, SQ_TONE_DIM };
static const SqType note_type = { 3.2, FALSE, SQ_TONE_INK };
static const SqType strong_type = { 3.7, TRUE, SQ_TONE_INK };
static const SqType side_type = { 5.2, TRUE, SQ_TONE_INK };

/* A strip of cloth as it is spread. */
typedef struct
{
  const SqPaperSpec *spec; /* of the lays that it is of */
  const SqSpreads *spreads;
  guint index; /* of the spread */
  const SqMarking *marking;
} Strip;

/* --- a piece --------------------------------------------------------------------------------- */

static double
wide_mm (const char *text, const SqType *type)
{
  return sq_text_width_em (text, type->bold) * type->em_mm + 0.1;
}

/* The figures of a column of @points, at least so wide. */
static double
figures_mm (const SqSheetTable *points, guint column)
{
  double most_mm = FIGURE_MM;

  for (guint i = 0; i < points->rows->len; i++)
    most_mm = fmax (most_mm, wide_mm (sq_sheet_cell (points, i, column), &figure_type));
  return most_mm;
}

/* A row of @points: letter, along, across, and how the line goes on. */
static void
add_row (SqColumns *columns, const SqSheetTable *points, char *const *cells, const SqType *letter,
         const SqType *figure)
{
  double along_mm = figures_mm (points, 1), across_mm = figures_mm (points, 2);
  double left_mm = INDENT_MM + LETTER_MM;

  sq_columns_line (columns, fmin (sq_type_height_mm (figure, 1), ROW_MM));
  sq_columns_text (columns, INDENT_MM, LETTER_MM, SQ_ALIGN_START, letter, cells[0]);
  sq_columns_text (columns, left_mm, along_mm, SQ_ALIGN_END, figure, cells[1]);
  left_mm += along_mm + GAP_MM;
  sq_columns_text (columns, left_mm, across_mm, SQ_ALIGN_END, figure, cells[2]);
  left_mm += across_mm + GAP_MM;
  sq_columns_text (columns, left_mm, sq_columns_width_mm (columns) - left_mm, SQ_ALIGN_START,
                   &note_type, cells[3]);
}

static void
add_texts (SqColumns *columns, const SqType *type, GPtrArray *texts)
{
  for (guint i = 0; i < texts->len; i++)
    sq_columns_paragraph (columns, INDENT_MM, type, g_ptr_array_index (texts, i));
  g_ptr_array_unref (texts);
}

/* A text with a box to tick; @right, if any, at the end of its first line. */
static void
add_ticked (SqColumns *columns, const SqType *type, const char *text, const char *right)
{
  double width_mm = sq_columns_width_mm (columns) - INDENT_MM;
  double right_mm = wide_mm (right, &figure_type);
  double text_mm = right[0] != '\0' ? width_mm - right_mm - 3 : width_mm;
  g_autoptr (GPtrArray) lines = sq_wrapped (text, text_mm, type);

  for (guint i = 0; i < lines->len; i++)
    {
      sq_columns_line (columns, NAME_MM);
      sq_columns_text (columns, INDENT_MM, text_mm, SQ_ALIGN_START, type,
                       g_ptr_array_index (lines, i));
      if (i > 0)
        continue;
      sq_columns_tick_box (columns, TICK_MM);
      sq_columns_text (columns, INDENT_MM + width_mm - right_mm, right_mm, SQ_ALIGN_END,
                       &figure_type, right);
    }
}

static void
add_piece (SqColumns *columns, const Strip *strip, guint i)
{
  const SqSpread *spread = sq_spreads_at (strip->spreads, strip->index);
  const SqMarking *marking = strip->marking;
  const SqPaperSpec *spec = strip->spec;
  const SqPlaced *placed = sq_lay_placed (sq_spread_cloth (spread)->lay,
                                          sq_marked_piece (marking, i)->placed);
  SqBundle bundle = sq_spreads_bundle (strip->spreads, strip->index, placed);
  g_autofree char *name = sq_words_marked (spread->lays, marking, i);
  g_autofree char *copy = sq_words_marked_copies (spread->lays, &bundle);
  SqSheetTable points;

  sq_words_mark_points (&points, marking, i, &spec->style);
  sq_columns_group (columns, SQ_GROUP_ALONE);
  add_ticked (columns, &name_type, name, copy);
  add_texts (columns, &figure_type, sq_words_mark_ranges (marking, i, &spec->style));
  if (points.rows->len > 0)
    add_row (columns, &points, points.heads, &head_type, &head_type);
  for (guint k = 0; k < points.rows->len; k++)
    add_row (columns, &points, g_ptr_array_index (points.rows, k), &name_type, &figure_type);
  add_texts (columns, &note_type, sq_words_marks_inside (marking, i, &spec->style));
  sq_sheet_table_clear (&points);
}

static void
add_heading (SqColumns *columns, const char *heading)
{
  sq_columns_group (columns, SQ_GROUP_LEADS);
  sq_columns_paragraph (columns, 0, &strong_type, heading);
}

/* Those that straight cuts free, or the others; nothing where there are none. */
static void
add_pieces (SqColumns *columns, const Strip *strip, gboolean in_strip, const char *heading)
{
  const SqMarking *marking = strip->marking;
  gboolean is_first = TRUE;

  for (guint i = 0; i < marking->pieces->len; i++)
    {
      if (sq_marked_piece (marking, i)->is_in_strip != in_strip)
        continue;
      if (is_first)
        add_heading (columns, heading);
      is_first = FALSE;
      add_piece (columns, strip, i);
    }
}

/* --- a strip --------------------------------------------------------------------------------- */

/* How to read the figures, and what to mind. */
static void
add_key (SqColumns *columns, const SqPaperSpec *spec)
{
  g_autofree char *key = sq_words_marking_key (&spec->style);
  g_autoptr (GPtrArray) cautions = sq_words_cutting_cautions (spec->lays->plan);

  sq_columns_group (columns, SQ_GROUP_ALONE);
  sq_columns_paragraph (columns, 0, &note_type, key);
  for (guint i = 0; i < cautions->len; i++)
    {
      sq_columns_line (columns, KEY_GAP_MM);
      sq_columns_paragraph (columns, 0, &note_type, g_ptr_array_index (cautions, i));
    }
}

static void
add_straight_cuts (SqColumns *columns, const SqPaperSpec *spec, const SqMarking *marking)
{
  if (marking->cuts->len == 0)
    return;
  add_heading (columns, sq_words_strips_first (spec->lays, marking));
  sq_columns_paragraph (columns, 0, &note_type, sq_words_strips_how (spec->lays, marking));
  for (guint i = 0; i < marking->cuts->len; i++)
    {
      g_autofree char *text = sq_words_straight_cut (spec->lays, marking, i, &spec->style);
      sq_columns_group (columns, i == 0 ? SQ_GROUP_ALONE : SQ_GROUP_CLOSE);
      add_ticked (columns, &cut_type, text, "");
    }
}

/* What it is called, where there are others; NULL: it is the roll that is bought, alone. */
static char *
strip_name (const SqPaperSpec *spec, const SqSpread *spread)
{
  const SqClothLay *cloth = sq_spread_cloth (spread);

  if (spread->is_lot)
    return sq_words_ply_lay (sq_lays_cloth (spec->lays, spread->cloth)->plies, spread->strip,
                             &spec->style);
  return sq_words_names_strips (cloth)
             ? sq_words_strip (spread->lays, cloth, spread->strip, &spec->style)
             : NULL;
}

static void
add_strip (SqPages *pages, const SqPaperSpec *spec, const SqSpreads *spreads, guint index)
{
  const SqSpread *spread = sq_spreads_at (spreads, index);
  SqPaperSpec own = *spec;
  own.lays = spread->lays;
  g_autoptr (SqMarking) marking = sq_marking_new (own.lays, spread->cloth, spread->strip,
                                                  own.wrong_side, &own.style);
  g_autoptr (GPtrArray) before = sq_words_marking_before (own.lays, marking, &own.style);
  g_autofree char *name = strip_name (spec, spread);
  Strip strip = { &own, spreads, index, marking };

  sq_pages_block (pages, 0, LEAST_STRIP_MM);
  sq_pages_gap (pages, 2);
  sq_pages_paragraph (pages, &side_type, sq_words_side_up (own.wrong_side));
  if (name != NULL)
    sq_pages_paragraph (pages, &strong_type, name);
  sq_pages_paragraph (pages, &sq_type_text, sq_words_marking_lie (own.wrong_side));
  for (guint i = 0; i < before->len; i++)
    sq_pages_paragraph (pages, &sq_type_text, g_ptr_array_index (before, i));
  sq_pages_gap (pages, 2);
  SqBox drawn = sq_marking_drawing (pages, &own, marking);
  SqColumns *columns = sq_columns_new (pages, COLUMN_MM);
  sq_columns_begin_beside (columns, drawn);
  if (spread->number == 1)
    add_key (columns, &own);
  add_straight_cuts (columns, &own, marking);
  add_pieces (columns, &strip, TRUE, sq_words_strip_pieces ());
  add_pieces (columns, &strip, FALSE, sq_words_other_pieces ());
  sq_columns_end (columns);
  sq_pages_gap (pages, 8);
}

/* --- a cloth --------------------------------------------------------------------------------- */

static void
begin_cloth (SqPages *pages, const char *name, const char *heading)
{
  sq_pages_set_running (pages, NULL);
  sq_pages_break (pages);
  sq_pages_bookmark (pages, name);
  sq_pages_heading (pages, heading, 40);
  sq_pages_set_running (pages, heading);
}

/* What of it has no place, and pins that could not be kept. */
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

/* A lot is cut as its plies lie on the table: what its lay on one roll is like is left out. */
static gboolean
is_lot (const SqSpreads *spreads, guint cloth)
{
  for (guint i = 0; i < spreads->all->len; i++)
    if (sq_spreads_at (spreads, i)->cloth == cloth)
      return sq_spreads_at (spreads, i)->is_lot;
  return FALSE;
}

static void
add_plies (SqPages *pages, const SqPaperSpec *spec, const SqPlies *plies)
{
  g_autofree char *text = sq_words_plies (plies, &spec->style);
  g_autofree char *reckoned = sq_words_plies_reckoned (plies, &spec->style);

  sq_pages_paragraph (pages, &strong_type, text);
  sq_pages_paragraph (pages, &sq_type_small, reckoned);
  sq_pages_gap (pages, 3);
}

static void
add_cloth (SqPages *pages, const SqPaperSpec *spec, const SqSpreads *spreads, guint index)
{
  const SqClothLay *cloth = sq_lays_cloth (spec->lays, index);
  gboolean lot = is_lot (spreads, index);
  g_autofree char *name = sq_words_cloth (sq_plan_cloth (spec->lays->plan, cloth->cloth));
  g_autofree char *heading = lot ? sq_words_marking_of_plies (name) : sq_words_marking_of (name);
  g_autofree char *unused = sq_words_unused_stock (spec->lays, cloth);

  begin_cloth (pages, name, heading);
  if (lot)
    add_plies (pages, spec, cloth->plies);
  else
    add_unlaid (pages, spec, cloth);
  if (cloth->lay->placed->len == 0 && !lot)
    sq_pages_paragraph (pages, &sq_type_text, sq_words_marking_nothing ());
  for (guint i = 0; i < spreads->all->len; i++)
    if (sq_spreads_at (spreads, i)->cloth == index)
      add_strip (pages, spec, spreads, i);
  if (unused != NULL && !lot)
    sq_pages_paragraph (pages, &sq_type_small, unused);
}

void
sq_marking_guide_make (SqPaper *paper, const SqPaperSpec *spec)
{
  g_autofree char *title = sq_words_paper_title (spec->lays->plan->job);
  g_autoptr (SqSpreads) spreads = sq_spreads_new (spec->lays);
  SqPages *pages = sq_pages_new (spec, TRUE, title);

  for (guint i = 0; i < spec->lays->cloths->len; i++)
    add_cloth (pages, spec, spreads, i);
  sq_pages_end (pages, paper->pages);
}
