/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Labels to stick or pin on pieces: one for each, of a lot one for each bundle, in the order in which
 * they come off the table. The number and the name are what is looked for across a table, so they
 * are large; what there is no room for on a small label is left out, the least important first. */
#include "papers/arrow.h"
#include "papers/kinds.h"
#include "papers/pages.h"
#include "papers/piece-drawing.h"
#include "words/label-words.h"
#include "words/paper-words.h"
#include "words/pattern-words.h"

/* The size at which types are as below; others are larger or smaller with the label. */
#define PLAIN_WIDTH_MM 86.0
#define PLAIN_HEIGHT_MM 42.0
#define LEAST_SCALE 0.5
#define MOST_SCALE 2.4

/* What stays empty: of a label, of the sheet. */
#define PAD_SHARE 0.06
#define LEAST_PAD_MM 1.2
#define MOST_PAD_MM 5.0
#define PRINTER_MM 6.5

#define ROUNDING_MM 0.01
#define GAP_EM 0.3 /* between number, name and arrows */
#define TICK_MM 2.5
#define NAME_STEP 0.92 /* a name is tried smaller and smaller */
#define LEAST_NAME_MM 2.3

/* em, mm: on a label of plain size, and at least. */
typedef struct
{
  double plain_mm, least_mm;
  gboolean bold;
} Size;

static const Size number_size = { 10.5, 5.2, TRUE };
static const Size name_size = { 5.4, 3.2, TRUE };
static const Size arrow_size = { 3.7, 2.2, TRUE };
static const Size strong_size = { 3.9, 2.4, TRUE };
static const Size middle_size = { 3.6, 2.3, FALSE };
static const Size small_size = { 3.1, 2.1, FALSE };
static const Size foot_size = { 2.7, 2.0, FALSE };

/* All that pages are drawn from. */
typedef struct
{
  SqSpreads *spreads;
  GArray *bundles; /* of SqBundle */
  SqPaperSpec spec;
  char *date;
  guint skipped;
} Labels;

/* One label as it is set. */
typedef struct
{
  SqSceneBuilder *scene;
  SqBox box; /* that may be written in */
  double scale;
} Label;

static SqType
type_of (const Label *label, const Size *size)
{
  return (SqType){ fmax (size->plain_mm * label->scale, size->least_mm), size->bold, SQ_TONE_INK };
}

static double
text_width_mm (const SqType *type, const char *text)
{
  return sq_text_width_em (text, type->bold) * type->em_mm + ROUNDING_MM;
}

static double
width_mm (const Label *label)
{
  return label->box.max.x - label->box.min.x;
}

/* --- arrows ----------------------------------------------------------------------------------- */

/* What stands at the right of the head. */
typedef struct
{
  const char *face; /* NULL: no front */
  double up_rad;    /* where the cloth's up is on the label; NAN: it has none */
  SqType type;
  double width_mm;
} Arrows;

static double
arrows_width_mm (const Arrows *arrows)
{
  double height_mm = sq_type_height_mm (&arrows->type, 2), width = 0;

  if (arrows->face != NULL)
    width += fmax (text_width_mm (&arrows->type, arrows->face),
                   text_width_mm (&arrows->type, sq_words_pattern_front ()))
             + 0.5 * height_mm;
  if (!isnan (arrows->up_rad))
    width += fmax (text_width_mm (&arrows->type, sq_words_up ()), 0.6 * height_mm)
             + (width > 0 ? arrows->type.em_mm : 0);
  return width;
}

static Arrows
arrows_of (const Label *label, const SqLabelText *text, double up_rad, double most_mm)
{
  Arrows arrows = { text->face, up_rad, type_of (label, &arrow_size), 0 };
  double width = arrows_width_mm (&arrows);

  if (width > most_mm)
    arrows.type.em_mm = fmax (arrows.type.em_mm * most_mm / width, arrow_size.least_mm);
  if (arrows.face != NULL && arrows_width_mm (&arrows) > most_mm)
    arrows.up_rad = NAN;
  arrows.width_mm = arrows_width_mm (&arrows);
  return arrows;
}

static void
add_arrow (Label *label, SqPoint middle, double angle_rad, double length_mm)
{
  sq_set_arrow (label->scene, middle, sq_turned (sq_point (1, 0), angle_rad), length_mm,
                0.4 * length_mm);
}

/* The face above FRONT, its arrow at their right; at the left of them the cloth's up. */
static void
add_arrows (Label *label, const Arrows *arrows)
{
  const SqType *type = &arrows->type;
  double line_mm = sq_type_height_mm (type, 1), top = label->box.max.y;
  SqColumn column = { label->box.max.x - arrows->width_mm, top, 0 };

  if (!isnan (arrows->up_rad))
    {
      column.width_mm = fmax (text_width_mm (type, sq_words_up ()), 1.2 * line_mm);
      SqColumn word = { column.left_mm, top - line_mm, column.width_mm };
      add_arrow (label, sq_point (column.left_mm + column.width_mm / 2, top - line_mm / 2),
                 arrows->up_rad, 0.9 * line_mm);
      sq_set_line (label->scene, &word, SQ_ALIGN_MIDDLE, type, sq_words_up ());
      column.left_mm += column.width_mm + type->em_mm;
    }
  if (arrows->face == NULL)
    return;
  column.width_mm = label->box.max.x - line_mm - column.left_mm;
  sq_set_line (label->scene, &column, SQ_ALIGN_END, type, arrows->face);
  column.top_mm -= line_mm;
  sq_set_line (label->scene, &column, SQ_ALIGN_END, type, sq_words_pattern_front ());
  add_arrow (label, sq_point (label->box.max.x - 0.4 * line_mm, top - line_mm), -M_PI / 2,
             1.8 * line_mm);
}

/* --- the head --------------------------------------------------------------------------------- */

/* A word may be broken nowhere. */
static gboolean
has_room_for_words (const char *text, double most_mm, const SqType *type)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);

  for (guint i = 0; words[i] != NULL; i++)
    if (text_width_mm (type, words[i]) > most_mm)
      return FALSE;
  return TRUE;
}

/* The type in which @text goes into a box, as large as it can be; one that is too small to be read
 * where it does not. */
static SqType
fitting_type (const char *text, double most_mm, double height_mm, SqType type)
{
  for (; type.em_mm >= LEAST_NAME_MM; type.em_mm *= NAME_STEP)
    if (sq_type_height_mm (&type, 1) <= height_mm && has_room_for_words (text, most_mm, &type)
        && sq_paragraph_height_mm (most_mm, &type, text) <= height_mm)
      break;
  return type;
}

/* What is wanted below the head in any case: whose it is. */
static double
least_below_mm (const Label *label)
{
  SqType cushion = type_of (label, &strong_size), which = type_of (label, &middle_size);

  return sq_type_height_mm (&cushion, 1) + sq_type_height_mm (&which, 1);
}

/* Number, name and arrows: the name beside the number or, where it becomes larger by that, below it.
 * Gives what is free below. */
static double
add_head (Label *label, const SqLabelText *text, double up_rad)
{
  SqType number = type_of (label, &number_size), name = type_of (label, &name_size);
  double gap_mm = GAP_EM * number.em_mm, number_mm = text_width_mm (&number, text->number);
  double height_mm = sq_type_height_mm (&number, 1);
  Arrows arrows = arrows_of (label, text, up_rad, width_mm (label) - number_mm - gap_mm);
  double taken_mm = arrows.width_mm > 0 ? arrows.width_mm + gap_mm : 0;
  SqColumn column = { label->box.min.x, label->box.max.y, number_mm };
  SqColumn beside = { label->box.min.x + number_mm + gap_mm, label->box.max.y,
                      width_mm (label) - number_mm - gap_mm - taken_mm };
  SqType at_side = fitting_type (text->name, beside.width_mm, height_mm, name);
  double left_mm = label->box.max.y - label->box.min.y - height_mm;
  SqType at_foot = fitting_type (text->name, width_mm (label), left_mm - least_below_mm (label),
                                 name);

  sq_set_line (label->scene, &column, SQ_ALIGN_START, &number, text->number);
  add_arrows (label, &arrows);
  column.top_mm -= height_mm;
  if (at_side.em_mm >= LEAST_NAME_MM && at_side.em_mm > 0.75 * at_foot.em_mm)
    {
      /* in the middle of the number's height */
      beside.top_mm -= (height_mm - sq_paragraph_height_mm (beside.width_mm, &at_side, text->name))
                       / 2;
      sq_set_paragraph (label->scene, &beside, &at_side, text->name);
      return column.top_mm;
    }
  column.width_mm = width_mm (label);
  at_foot.em_mm = fmax (at_foot.em_mm, LEAST_NAME_MM);
  if (sq_paragraph_height_mm (column.width_mm, &at_foot, text->name) <= left_mm)
    return column.top_mm - sq_set_paragraph (label->scene, &column, &at_foot, text->name);
  sq_set_line (label->scene, &column, SQ_ALIGN_START, &at_foot, text->name);
  return column.top_mm - sq_type_height_mm (&at_foot, 1);
}

/* --- what stands below ------------------------------------------------------------------------ */

/* A line, as large as it becomes. */
typedef struct
{
  const char *text, *right; /* the latter ends the same line; NULL: nothing */
  SqType type;
  double height_mm; /* 0: left out */
} Row;

/* In the order in which they are read. */
enum
{
  ROW_BUNDLE,
  ROW_CUSHION,
  ROW_WHICH,
  ROW_PLACE,
  ROW_LIES,
  ROW_JOB,
  ROW_STATE,
  N_ROWS
};

/* In the order in which they are given room. */
static const guint importance[N_ROWS] = { ROW_WHICH, ROW_BUNDLE, ROW_CUSHION, ROW_LIES,
                                          ROW_PLACE, ROW_STATE,  ROW_JOB };

static Row
row_of (const Label *label, const char *text, const Size *size)
{
  SqType type = type_of (label, size);
  double wide = text_width_mm (&type, text) / width_mm (label);

  if (wide > 1) /* a little smaller before it takes two lines */
    type.em_mm = fmax (fmax (type.em_mm / wide, 0.8 * type.em_mm), foot_size.least_mm);
  return (Row){ text, NULL, type, 0 };
}

/* In as many lines as it takes; else one of them. Gives what is left. */
static double
give_room (const Label *label, Row *row, double left_mm)
{
  if (row->text[0] == '\0')
    return left_mm;
  row->height_mm = sq_paragraph_height_mm (width_mm (label), &row->type, row->text);
  if (row->height_mm > left_mm)
    row->height_mm = sq_type_height_mm (&row->type, 1);
  if (row->height_mm > left_mm)
    row->height_mm = 0;
  return left_mm - row->height_mm;
}

static void
set_row (const Label *label, const Row *row, double top_mm)
{
  SqColumn column = { label->box.min.x, top_mm, width_mm (label) };

  if (row->right != NULL)
    {
      sq_set_line (label->scene, &column, SQ_ALIGN_END, &row->type, row->right);
      column.width_mm = text_width_mm (&row->type, row->text); /* whichever way it runs */
    }
  if (row->height_mm > 1.5 * sq_type_height_mm (&row->type, 1))
    sq_set_paragraph (label->scene, &column, &row->type, row->text);
  else
    sq_set_line (label->scene, &column, SQ_ALIGN_START, &row->type, row->text);
}

/* Job and revision stand in one line, if it has room for both. */
static void
join_foot (const Label *label, Row *job, Row *state)
{
  SqType type = type_of (label, &foot_size);
  double both_mm = text_width_mm (&type, job->text) + text_width_mm (&type, state->text)
                   + 2 * type.em_mm;

  type.em_mm = fmax (type.em_mm * fmin (width_mm (label) / both_mm, 1), foot_size.least_mm);
  if (both_mm > 1.2 * width_mm (label)
      || text_width_mm (&type, job->text) + text_width_mm (&type, state->text) > width_mm (label))
    return;
  job->type = type;
  job->right = state->text;
  state->text = "";
}

static void
add_rows (Label *label, const SqLabelText *text, double top_mm)
{
  Row rows[N_ROWS] = {
    [ROW_BUNDLE] = row_of (label, text->bundle, &strong_size),
    [ROW_CUSHION] = row_of (label, text->cushion, &strong_size),
    [ROW_WHICH] = row_of (label, text->which, &middle_size),
    [ROW_PLACE] = row_of (label, text->place, &small_size),
    [ROW_LIES] = row_of (label, text->lies, &small_size),
    [ROW_JOB] = row_of (label, text->job, &foot_size),
    [ROW_STATE] = row_of (label, text->state, &foot_size),
  };
  double left_mm = top_mm - label->box.min.y;

  join_foot (label, &rows[ROW_JOB], &rows[ROW_STATE]);
  for (guint i = 0; i < N_ROWS; i++)
    left_mm = give_room (label, &rows[importance[i]], left_mm);
  for (guint i = 0; i < N_ROWS; i++)
    {
      if (i == ROW_JOB)
        top_mm -= left_mm; /* the foot stands at the foot */
      if (rows[i].height_mm > 0)
        set_row (label, &rows[i], top_mm);
      top_mm -= rows[i].height_mm;
    }
}

/* --- a label ---------------------------------------------------------------------------------- */

/* Place @place of a sheet, row by row from its upper left. */
static SqBox
cell_of (const SqPaperSpec *spec, guint place)
{
  const SqLabelSheet *sheet = &spec->labels;
  SqVector page = sq_sheet_size_mm (spec->sheet), size = sq_label_size_mm (sheet, spec->sheet);
  double left = sheet->side_mm + place % sheet->columns * (size.x + sheet->across_mm);
  double top = page.y - sheet->top_mm - place / sheet->columns * (size.y + sheet->along_mm);

  return (SqBox){ { left, top - size.y }, { left + size.x, top } };
}

/* Ticks at the corners, to cut along on paper that is not cut yet. */
static void
add_ticks (SqSceneBuilder *scene, SqBox cell, SqVector page)
{
  for (guint i = 0; i < 4; i++)
    {
      SqPoint at = { i % 2 ? cell.max.x : cell.min.x, i / 2 ? cell.max.y : cell.min.y };
      SqVector in = { i % 2 ? -TICK_MM : TICK_MM, i / 2 ? -TICK_MM : TICK_MM };
      if (at.x < PRINTER_MM || at.y < PRINTER_MM || at.x > page.x - PRINTER_MM
          || at.y > page.y - PRINTER_MM)
        continue;
      sq_scene_begin_stroke (scene, SQ_PEN_RULE);
      sq_scene_add_line (scene, at, sq_add (at, sq_point (in.x, 0)));
      sq_scene_add_line (scene, at, sq_add (at, sq_point (0, in.y)));
    }
}

static SqBox
writable (SqBox cell, SqVector page)
{
  SqVector size = sq_sub (cell.max, cell.min);
  double pad_mm = CLAMP (PAD_SHARE * fmin (size.x, size.y), LEAST_PAD_MM, MOST_PAD_MM);

  return (
      SqBox){ { fmax (cell.min.x + pad_mm, PRINTER_MM), fmax (cell.min.y + pad_mm, PRINTER_MM) },
              { fmin (cell.max.x - pad_mm, page.x - PRINTER_MM),
                fmin (cell.max.y - pad_mm, page.y - PRINTER_MM) } };
}

/* Where the cloth's up is as the label lies on the piece; NAN if it has none. */
static double
up_of (const SqPlan *plan, guint entry)
{
  const SqCutEntry *own = &g_array_index (plan->cut_list, SqCutEntry, entry);
  const SqCover *cover = sq_plan_cover (plan, own->cushion);
  const SqPiece *piece = sq_cover_piece (cover, own->piece);
  const SqCloth *cloth = sq_plan_cloth (plan, own->cloth);

  if (cloth == NULL || !cloth->one_way)
    return NAN;
  return piece->grain_rad + (cloth->up_is_start ? M_PI : 0)
         + sq_piece_drawing_turn_rad (cover, piece);
}

static void
add_label (SqSceneBuilder *scene, const Labels *labels, guint place, const SqBundle *bundle)
{
  SqVector page = sq_sheet_size_mm (labels->spec.sheet);
  SqBox cell = cell_of (&labels->spec, place);
  Label label = { scene, writable (cell, page), 1 };
  SqLabelText text;

  label.scale = CLAMP (fmin (width_mm (&label) / PLAIN_WIDTH_MM,
                             (label.box.max.y - label.box.min.y) / PLAIN_HEIGHT_MM),
                       LEAST_SCALE, MOST_SCALE);
  sq_words_label (&text, labels->spreads, bundle, labels->date);
  add_ticks (scene, cell, page);
  add_rows (&label, &text,
            add_head (&label, &text, up_of (labels->spreads->lays->plan, bundle->entry)));
  sq_label_text_clear (&text);
}

/* --- the sheets ------------------------------------------------------------------------------- */

static guint
per_sheet (const Labels *labels)
{
  return labels->spec.labels.columns * labels->spec.labels.rows;
}

static SqScene *
draw_page (gconstpointer source, guint page)
{
  const Labels *labels = source;
  SqSceneBuilder *scene = sq_scene_builder_new ();
  guint n = per_sheet (labels);

  for (guint place = page == 0 ? labels->skipped : 0; place < n; place++)
    {
      guint i = page * n + place - labels->skipped;
      if (i < labels->bundles->len)
        add_label (scene, labels, place, &g_array_index (labels->bundles, SqBundle, i));
    }
  return sq_scene_builder_end (scene);
}

static void
labels_free (gpointer data)
{
  Labels *labels = data;

  sq_spreads_free (labels->spreads);
  g_array_unref (labels->bundles);
  g_free (labels->date);
  g_free (labels);
}

static Labels *
labels_new (const SqPaperSpec *spec)
{
  Labels *labels = g_new0 (Labels, 1);

  labels->spreads = sq_spreads_new (spec->lays);
  labels->bundles = sq_spreads_bundles (labels->spreads, spec->entries);
  labels->date = g_strdup (spec->date);
  labels->spec = *spec;
  labels->skipped = spec->skipped_labels % per_sheet (labels);
  return labels;
}

static void
add_empty (SqPaper *paper, const SqPaperSpec *spec)
{
  g_autofree char *title = sq_words_paper_title (spec->lays->plan->job);
  SqPages *pages = sq_pages_new (spec, FALSE, title);

  sq_pages_heading (pages, sq_words_paper_kind (SQ_PAPER_LABELS), 0);
  sq_pages_paragraph (pages, &sq_type_text, sq_words_no_labels ());
  sq_pages_end (pages, paper->pages);
}

void
sq_labels_make (SqPaper *paper, const SqPaperSpec *spec)
{
  Labels *labels = labels_new (spec);
  SqVector size = sq_sheet_size_mm (spec->sheet);
  SqPage page = { size.x, size.y, NULL, NULL };

  if (labels->bundles->len == 0)
    {
      labels_free (labels);
      add_empty (paper, spec);
      return;
    }
  for (guint i = 0; i < labels->bundles->len + labels->skipped; i += per_sheet (labels))
    g_array_append_val (paper->pages, page);
  paper->draw = draw_page;
  paper->source = labels;
  paper->source_free = labels_free;
}
