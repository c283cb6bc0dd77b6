/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cut list: read at arm's length, under bad light, with shears in the other hand. So the number,
 * how many and the size are large, every piece has its drawing, and a box to tick. */
#include "papers/kinds.h"
#include "papers/piece-drawing.h"
#include "papers/tables.h"
#include "words/paper-words.h"
#include "words/piece-label.h"

/* Of a piece's line, from the left: box and number, drawing, texts. */
#define NUMBER_MM 15.0
#define DRAWING_MM 62.0
#define COLUMN_GAP_MM 4.0
#define TICK_MM 5.5
#define MOST_DRAWING_MM 42.0
#define LINE_PAD_MM 2.4

/* Of the column of texts: what "cut 2" has at its right. */
#define COUNT_MM 26.0

static const SqType number_type = { 5.4, TRUE, SQ_TONE_INK };
static const SqType name_type = { 4.4, TRUE, SQ_TONE_INK };
static const SqType size_type = { 6.2, TRUE, SQ_TONE_INK };
static const SqType remark_type = { 3.5, FALSE, SQ_TONE_INK };

typedef struct
{
  const SqPlan *plan;
  const SqPaperSpec *spec;
  const SqCutSheet *sheet;
  SqPages *pages;
} List;

/* --- head ----------------------------------------------------------------------------------- */

static void
add_head (List *list)
{
  const SqCutSheet *sheet = list->sheet;
  SqColumn column = sq_pages_block (list->pages, sq_type_height_mm (&sq_type_title, 1) + 1, 0);
  g_autofree char *state = sq_words_paper_state (list->plan->job, list->spec->date);
  SqColumn right = column;

  column.width_mm *= 0.66;
  right.left_mm += column.width_mm + 2;
  right.width_mm -= column.width_mm + 2;
  sq_set_line (sq_pages_scene (list->pages), &column, SQ_ALIGN_START, &sq_type_title, sheet->title);
  sq_set_line (sq_pages_scene (list->pages), &right, SQ_ALIGN_END, &sq_type_text, state);
  if (sheet->customer[0] != '\0')
    {
      g_autofree char *text = sq_words_for_customer (sheet->customer);
      sq_pages_paragraph (list->pages, &sq_type_text, text);
    }
  sq_pages_paragraph (list->pages, &sq_type_small, sheet->units);
  if (sheet->notes[0] != '\0')
    {
      sq_pages_gap (list->pages, 1.5);
      sq_pages_paragraph (list->pages, &sq_type_text, sheet->notes);
    }
}

/* --- before you cut ------------------------------------------------------------------------- */

/* Grey behind what must not be overlooked, with a bar at its left. */
static void
add_ground (List *list, const SqColumn *column, double height_mm)
{
  SqSceneBuilder *scene = sq_pages_scene (list->pages);
  double middle_mm = column->top_mm - height_mm / 2;

  sq_scene_begin_colour (scene, 0xeeeeee, 1);
  sq_scene_add_plate (scene, sq_point (column->left_mm + column->width_mm / 2, middle_mm),
                      column->width_mm, height_mm, 0, 0);
  sq_scene_begin_colour (scene, 0x000000, 1);
  sq_scene_add_plate (scene, sq_point (column->left_mm + 0.6, middle_mm), 1.2, height_mm, 0, 0);
}

static void
add_problem (List *list, const SqSheetProblem *problem)
{
  SqBox area = sq_pages_area (list->pages);
  const double name_mm = 22;
  double width_mm = area.max.x - area.min.x - name_mm - 6;
  SqType bold = sq_type_text;

  bold.bold = TRUE;
  double name_height_mm = sq_paragraph_height_mm (width_mm, &bold, problem->cushion);
  double height_mm = name_height_mm
                     + sq_paragraph_height_mm (width_mm, &sq_type_text, problem->text) + 1.6;
  SqColumn column = sq_pages_block (list->pages, height_mm, 0);

  add_ground (list, &column, height_mm);
  column.top_mm -= 0.8;
  column.left_mm += 3.5;
  column.width_mm = name_mm;
  sq_set_line (sq_pages_scene (list->pages), &column, SQ_ALIGN_START, &bold, problem->name);
  column.left_mm += name_mm;
  column.width_mm = width_mm;
  /* In a line of its own a name runs whichever way it does. */
  column.top_mm -= sq_set_paragraph (sq_pages_scene (list->pages), &column, &bold,
                                     problem->cushion);
  sq_set_paragraph (sq_pages_scene (list->pages), &column, &sq_type_text, problem->text);
}

static void
add_problems (List *list)
{
  if (list->sheet->problems->len == 0)
    return;
  sq_pages_gap (list->pages, 5);
  sq_pages_heading (list->pages, list->sheet->before, 20);
  for (guint i = 0; i < list->sheet->problems->len; i++)
    add_problem (list, &g_array_index (list->sheet->problems, SqSheetProblem, i));
}

/* --- a piece to cut ------------------------------------------------------------------------- */

/* Where the cloth's up points in the piece; NAN if it has none. */
static double
up_of (const List *list, const SqPiece *piece)
{
  const SqCloth *cloth = sq_plan_cloth (list->plan, piece->cloth);

  if (cloth == NULL || !cloth->one_way)
    return NAN;
  return piece->grain_rad + (cloth->up_is_start ? M_PI : 0);
}

static double
texts_height_mm (const SqSheetLine *line, double width_mm)
{
  double height_mm = sq_paragraph_height_mm (width_mm - COUNT_MM, &name_type, line->piece)
                     + sq_type_height_mm (&size_type, 1)
                     + sq_paragraph_height_mm (width_mm, &remark_type, line->right_side);

  if (line->cushion[0] != '\0')
    height_mm += sq_type_height_mm (&remark_type, 1);
  for (guint i = 0; i < line->remarks->len; i++)
    height_mm += sq_paragraph_height_mm (width_mm, &remark_type,
                                         g_ptr_array_index (line->remarks, i));
  return height_mm;
}

static void
add_texts (List *list, SqColumn column, const SqSheetLine *line)
{
  SqSceneBuilder *scene = sq_pages_scene (list->pages);
  g_autofree char *count = sq_words_cut_count (line->count);
  g_autofree char *size = sq_words_size (line->width, line->length);
  SqColumn name = column;

  name.width_mm -= COUNT_MM;
  sq_set_line (scene, &column, SQ_ALIGN_END, &name_type, count);
  column.top_mm -= sq_set_paragraph (scene, &name, &name_type, line->piece);
  if (line->cushion[0] != '\0')
    {
      sq_set_line (scene, &column, SQ_ALIGN_START, &remark_type, line->cushion);
      column.top_mm -= sq_type_height_mm (&remark_type, 1);
    }
  sq_set_line (scene, &column, SQ_ALIGN_START, &size_type, size);
  column.top_mm -= sq_type_height_mm (&size_type, 1);
  column.top_mm -= sq_set_paragraph (scene, &column, &remark_type, line->right_side);
  for (guint i = 0; i < line->remarks->len; i++)
    column.top_mm -= sq_set_paragraph (scene, &column, &remark_type,
                                       g_ptr_array_index (line->remarks, i));
}

static void
add_number (List *list, SqColumn column, guint number)
{
  SqSceneBuilder *scene = sq_pages_scene (list->pages);
  g_autofree char *text = g_strdup_printf ("%u", number);
  double low = column.top_mm - TICK_MM - 0.6, left = column.left_mm + 0.4;
  const SqNode box[] = { { { left, low }, 0, 0 },
                         { { left + TICK_MM, low }, 0, 0 },
                         { { left + TICK_MM, low + TICK_MM }, 0, 0 },
                         { { left, low + TICK_MM }, 0, 0 } };

  sq_scene_begin_stroke (scene, SQ_PEN_RULE);
  sq_scene_add_nodes (scene, box, G_N_ELEMENTS (box), TRUE);
  column.top_mm -= TICK_MM + 1.4;
  column.width_mm = NUMBER_MM - 2;
  sq_set_line (scene, &column, SQ_ALIGN_START, &number_type, text);
}

static void
add_line (List *list, const SqSheetLine *line)
{
  const SqCutEntry *entry = &g_array_index (list->plan->cut_list, SqCutEntry, line->entry);
  const SqCover *cover = sq_plan_cover (list->plan, entry->cushion);
  SqBox area = sq_pages_area (list->pages);
  double left_mm = NUMBER_MM + DRAWING_MM + COLUMN_GAP_MM;
  double width_mm = area.max.x - area.min.x - left_mm;
  double drawing_mm = sq_piece_drawing_height_mm (cover, entry->piece, DRAWING_MM, MOST_DRAWING_MM);
  double height_mm = fmax (fmax (texts_height_mm (line, width_mm), drawing_mm), 17)
                     + 2 * LINE_PAD_MM;
  SqColumn column = sq_pages_block (list->pages, height_mm, 0);
  SqSceneBuilder *scene = sq_pages_scene (list->pages);
  double top_mm = column.top_mm - LINE_PAD_MM;
  SqBox box = { { column.left_mm + NUMBER_MM, top_mm - drawing_mm },
                { column.left_mm + NUMBER_MM + DRAWING_MM, top_mm } };

  sq_scene_begin_stroke (scene, SQ_PEN_RULE);
  sq_scene_add_line (scene, sq_point (column.left_mm, column.top_mm),
                     sq_point (column.left_mm + column.width_mm, column.top_mm));
  column.top_mm = top_mm;
  add_number (list, column, line->number);
  SqDrawingWords words = { sq_words_front (), sq_words_up (),
                           up_of (list, sq_cover_piece (cover, entry->piece)) };
  sq_piece_drawing_add (scene, cover, entry->piece, box, &list->spec->style, &words);
  column.left_mm += left_mm;
  column.width_mm = width_mm;
  add_texts (list, column, line);
}

static void
add_cloth (List *list, const SqSheetCloth *cloth)
{
  const char *name = cloth->name[0] != '\0' ? cloth->name : list->sheet->cloth;
  SqType buy_type = sq_type_text;

  buy_type.bold = TRUE;
  sq_pages_gap (list->pages, 6);
  sq_pages_heading (list->pages, name, 62);
  sq_pages_bookmark (list->pages, name);
  sq_pages_set_running (list->pages, name);
  if (cloth->about[0] != '\0')
    sq_pages_paragraph (list->pages, &sq_type_text, cloth->about);
  if (cloth->buy[0] != '\0')
    sq_pages_paragraph (list->pages, &buy_type, cloth->buy);
  if (cloth->reckoned[0] != '\0')
    sq_pages_paragraph (list->pages, &sq_type_small, cloth->reckoned);
  sq_pages_paragraph (list->pages, &sq_type_small, cloth->sum);
  sq_pages_gap (list->pages, 1.5);
  for (guint i = 0; i < cloth->lines->len; i++)
    add_line (list, sq_sheet_line (cloth, i));
  sq_pages_set_running (list->pages, NULL);
}

/* --- the end -------------------------------------------------------------------------------- */

static void
add_cautions (List *list)
{
  sq_pages_gap (list->pages, 5);
  sq_pages_heading (list->pages, list->sheet->at_work, 20);
  for (guint i = 0; i < list->sheet->cautions->len; i++)
    {
      const char *text = g_ptr_array_index (list->sheet->cautions, i);
      SqBox area = sq_pages_area (list->pages);
      double width_mm = area.max.x - area.min.x - 5;
      SqColumn column = sq_pages_block (
          list->pages, sq_paragraph_height_mm (width_mm, &sq_type_text, text) + 0.6, 0);
      SqSceneBuilder *scene = sq_pages_scene (list->pages);
      sq_scene_begin_colour (scene, 0x000000, 1);
      sq_scene_add_circle (scene, sq_point (column.left_mm + 1.5, column.top_mm - 2.4), 0.55);
      column.left_mm += 5;
      column.width_mm = width_mm;
      sq_set_paragraph (scene, &column, &sq_type_text, text);
    }
}

void
sq_cut_list_make (SqPaper *paper, const SqPaperSpec *spec)
{
  g_autoptr (SqCutSheet) sheet = sq_cut_sheet_new (spec->lays->plan, spec->lays, &spec->style);
  g_autofree char *title = sq_words_paper_title (spec->lays->plan->job);
  List list = { spec->lays->plan, spec, sheet, sq_pages_new (spec, FALSE, title) };

  add_head (&list);
  add_problems (&list);
  sq_pages_table (list.pages, &sheet->cushions);
  for (guint i = 0; i < sheet->cloths->len; i++)
    add_cloth (&list, sq_cut_sheet_cloth (sheet, i));
  sq_pages_table (list.pages, &sheet->zips);
  sq_pages_table (list.pages, &sheet->foam);
  sq_pages_table (list.pages, &sheet->foam_sheets);
  sq_pages_table (list.pages, &sheet->totals);
  add_cautions (&list);
  sq_pages_end (list.pages, paper->pages);
}
