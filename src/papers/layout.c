/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The layout sheet: each cloth's roll at a round scale, the cut end at the left, and a table of
 * where every piece lies. A long roll goes on in bands below each other; every piece lies whole in
 * one of them, and is only outlined where it lies in the next, too. */
#include "drawing/roll-scene.h"
#include "papers/kinds.h"
#include "papers/tables.h"
#include "words/lay-words.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/paper-words.h"
#include "words/piece-names.h"
#include "words/ply-words.h"
#include "words/strip-words.h"

#define FIGURE_EM_MM 2.9
#define LABEL_EM_MM 3.2

/* Beside the roll: figures across; below: figures along and the edge's name; above: a line. */
#define LEFT_MM 15.0
#define BELOW_MM 22.0
#define ABOVE_MM 6.0
#define RIGHT_MM 9.0 /* for the cloth's up */

/* The roll's width on paper, where it fits at once and where it goes on in bands. */
#define MOST_HIGH_MM 105.0
#define MOST_BAND_MM 62.0
#define LEAST_HIGH_MM 34.0
#define LEAST_WITH_TABLE_MM 62.0

static const SqType figure_type = { FIGURE_EM_MM, FALSE, SQ_TONE_INK };

/* A placed piece, and its outer cut line where it lies on its strip. */
typedef struct
{
  guint placed;
  SqPath *cut;
} Lying;

/* One strip's drawing as it goes on. */
typedef struct
{
  SqPages *pages;
  const SqPaperSpec *spec;
  const SqLays *lays;
  guint cloth, strip;
  SqBox box;    /* of all of the strip */
  double scale; /* 1 : so much */
  GArray *cuts; /* of Lying */
} Roll;

/* A part of it: what lies between two places along the roll, and where that is on the page. */
typedef struct
{
  double from_mm, to_mm;
  double before_mm; /* where the band before ends: what is whole there is outlined here */
  SqPoint at;       /* on the page: the roll's (from, 0) */
} Band;

static const double scales[] = { 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200 };

/* The largest round scale at which @length_mm is at most @most_mm on paper. */
static double
scale_for (double length_mm, double most_mm)
{
  guint i = 0;

  while (i + 1 < G_N_ELEMENTS (scales) && length_mm / scales[i] > most_mm)
    i++;
  return scales[i];
}

static double
band_room_mm (const Roll *roll)
{
  SqBox area = sq_pages_area (roll->pages);

  return area.max.x - area.min.x - LEFT_MM - RIGHT_MM;
}

static const SqPath *
cut_of (const Roll *roll, guint i)
{
  return g_array_index (roll->cuts, Lying, i).cut;
}

/* How high the roll may be drawn: so that its table goes onto the same page, if enough is left. */
static double
most_high_mm (const Roll *roll, double table_mm)
{
  double room_mm = sq_pages_room_mm (roll->pages) - ABOVE_MM - BELOW_MM;

  if (room_mm - table_mm >= LEAST_WITH_TABLE_MM)
    room_mm -= table_mm;
  return fmin (room_mm, MOST_HIGH_MM);
}

/* In one band if the roll is not too narrow then; else in bands, no piece longer than one. */
static void
choose_scale (Roll *roll, double table_mm)
{
  double width_mm = roll->box.max.y, length_mm = roll->box.max.x, longest_mm = 0;
  double whole = fmax (scale_for (width_mm, most_high_mm (roll, table_mm)),
                       scale_for (length_mm, band_room_mm (roll)));

  roll->scale = whole;
  if (width_mm / whole >= LEAST_HIGH_MM)
    return;
  for (guint i = 0; i < roll->cuts->len; i++)
    {
      SqBox box = sq_path_box (cut_of (roll, i));
      longest_mm = fmax (longest_mm, box.max.x - box.min.x);
    }
  roll->scale = fmin (whole, fmax (scale_for (width_mm, MOST_BAND_MM),
                                   scale_for (longest_mm, band_room_mm (roll))));
}

/* --- what is drawn of a band ----------------------------------------------------------------- */

static SqPoint
to_page (const Roll *roll, const Band *band, SqPoint p)
{
  return sq_add (band->at, sq_point ((p.x - band->from_mm) / roll->scale, p.y / roll->scale));
}

/* Each piece is drawn whole in the first band that has all of it: nobody cuts it twice. */
static gboolean
is_drawn_in (const Band *band, SqBox box)
{
  return box.min.x >= band->from_mm - 0.01 && box.max.x <= band->to_mm + 0.01
         && box.max.x > band->before_mm + 0.01;
}

static void
add_scene (Roll *roll, const Band *band, SqScene *scene, SqVector place)
{
  sq_scene_add_scene (sq_pages_scene (roll->pages), scene, to_page (roll, band, place),
                      1 / roll->scale);
  sq_scene_unref (scene);
}

static void
add_piece (Roll *roll, const Band *band, guint i)
{
  const SqClothLay *cloth = sq_lays_cloth (roll->lays, roll->cloth);
  guint placed = g_array_index (roll->cuts, Lying, i).placed;
  const SqCutEntry *entry = sq_lays_entry (roll->lays, sq_lay_placed (cloth->lay, placed));
  g_autofree char *name = sq_words_piece (sq_plan_cover (roll->lays->plan, entry->cushion),
                                          entry->piece);
  SqRollLook look = { LABEL_EM_MM * roll->scale, TRUE, 0xffffff };
  SqVector place = sq_sub (sq_roll_piece_place (roll->lays, roll->cloth, placed),
                           sq_roll_strip_offset (cloth, roll->strip));

  for (guint layer = SQ_ROLL_SHAPE; layer <= SQ_ROLL_LABEL; layer++)
    add_scene (
        roll, band,
        sq_roll_piece_scene (roll->lays, roll->cloth, placed, (SqRollLayer) layer, name, &look),
        place);
}

/* The part of @nodes on one side of the line across the roll at @x_mm (Sutherland and Hodgman,
 * Communications of the ACM 17, 1974). */
static GArray *
clipped (const GArray *nodes, double x_mm, int side)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (SqNode));

  for (guint i = 0; i < nodes->len; i++)
    {
      SqPoint a = g_array_index (nodes, SqNode, i).at;
      SqPoint b = g_array_index (nodes, SqNode, (i + 1) % nodes->len).at;
      double da = side * (a.x - x_mm), db = side * (b.x - x_mm);
      SqNode node = { a, 0, 0 };
      if (da >= 0)
        g_array_append_val (out, node);
      node.at = sq_between (a, b, da / (da - db));
      if ((da < 0) != (db < 0))
        g_array_append_val (out, node);
    }
  return out;
}

/* A piece that is drawn whole in another band: dashed, as far as it reaches into this one. */
static void
add_reaching (Roll *roll, const Band *band, guint i)
{
  g_autoptr (SqPath) flat = sq_path_flattened (cut_of (roll, i), 0.1 * roll->scale);
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));

  g_array_append_vals (nodes, sq_path_nodes (flat), sq_path_n_nodes (flat));
  g_autoptr (GArray) right = clipped (nodes, band->from_mm, 1);
  g_autoptr (GArray) both = clipped (right, band->to_mm, -1);
  if (both->len < 3)
    return;
  for (guint k = 0; k < both->len; k++)
    {
      SqNode *node = &g_array_index (both, SqNode, k);
      node->at = to_page (roll, band, node->at);
    }
  sq_scene_begin_stroke (sq_pages_scene (roll->pages), SQ_PEN_SEW);
  sq_scene_add_nodes (sq_pages_scene (roll->pages), (const SqNode *) (gpointer) both->data,
                      both->len, TRUE);
}

/* --- running dimensions ---------------------------------------------------------------------- */

static int
compare_figures (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Adds one figure at @mm, if it is not too near to the last. */
static void
add_dimension (Roll *roll, const Band *band, double mm, gboolean is_along, double *last_mm)
{
  g_autofree char *text = sq_words_figure (mm, &roll->spec->style);
  double width_mm = sq_text_width_em (text, FALSE) * FIGURE_EM_MM;
  double apart_mm = SQ_TEXT_HEIGHT_EM * FIGURE_EM_MM + 0.1;
  SqSceneBuilder *scene = sq_pages_scene (roll->pages);
  SqPoint edge = is_along ? to_page (roll, band, sq_point (mm, 0))
                          : to_page (roll, band, sq_point (band->from_mm, mm));
  double along = is_along ? edge.x : edge.y;
  SqVector out = is_along ? sq_point (0, -1) : sq_point (-1, 0);

  if (along - *last_mm < apart_mm)
    return;
  *last_mm = along;
  sq_scene_begin_stroke (scene, SQ_PEN_RULE);
  sq_scene_add_line (scene, edge, sq_moved (edge, out, 1.6));
  sq_scene_add_text (scene, &(SqText){ .at = sq_moved (edge, out, 2 + width_mm / 2),
                                       .angle_rad = is_along ? M_PI / 2 : 0,
                                       .em_mm = FIGURE_EM_MM,
                                       .width_mm = width_mm,
                                       .text = text });
}

/* Where pieces begin and end along the near edge, and across from it: each from the exact figure,
 * so nothing adds up; where they crowd, some are left to the table. */
static void
add_dimensions (Roll *roll, const Band *band, gboolean is_along)
{
  g_autoptr (GArray) figures = g_array_new (FALSE, FALSE, sizeof (double));
  double last_mm = -1000, end_mm = is_along ? fmin (band->to_mm, roll->box.max.x) : roll->box.max.y;

  for (guint i = 0; i < roll->cuts->len; i++)
    {
      SqBox box = sq_path_box (cut_of (roll, i));
      if (!is_drawn_in (band, box))
        continue;
      g_array_append_val (figures, *(is_along ? &box.min.x : &box.min.y));
      g_array_append_val (figures, *(is_along ? &box.max.x : &box.max.y));
    }
  g_array_append_val (figures, end_mm);
  g_array_sort (figures, compare_figures);
  for (guint i = 0; i < figures->len; i++)
    add_dimension (roll, band, g_array_index (figures, double, i), is_along, &last_mm);
}

/* --- a band ---------------------------------------------------------------------------------- */

/* One head, towards the cloth's up, at the right of the roll. */
static void
add_up (Roll *roll, const Band *band)
{
  const SqCloth *cloth = sq_plan_cloth (roll->lays->plan,
                                        sq_lays_cloth (roll->lays, roll->cloth)->cloth);
  SqSceneBuilder *scene = sq_pages_scene (roll->pages);

  if (cloth == NULL || !cloth->one_way)
    return;
  SqVector up = sq_point (cloth->up_is_start ? -1 : 1, 0);
  SqPoint end = to_page (roll, band, sq_point (band->to_mm, roll->box.max.y / 2));
  SqPoint middle = sq_add (end, sq_point (RIGHT_MM / 2, 0)), tip = sq_moved (middle, up, 3);
  SqPoint base = sq_moved (tip, up, -2.4);
  const SqNode head[] = { { tip, 0, 0 },
                          { sq_moved (base, sq_left (up), 1.1), 0, 0 },
                          { sq_moved (base, sq_left (up), -1.1), 0, 0 } };
  SqColumn word = { middle.x - RIGHT_MM / 2, middle.y + 6, RIGHT_MM };

  sq_scene_begin_stroke (scene, SQ_PEN_INK);
  sq_scene_add_line (scene, sq_moved (middle, up, -3), base);
  sq_scene_begin_colour (scene, 0, 1);
  sq_scene_add_nodes (scene, head, G_N_ELEMENTS (head), TRUE);
  sq_set_line (scene, &word, SQ_ALIGN_MIDDLE, &figure_type, sq_words_up ());
}

static void
add_names (Roll *roll, const Band *band, const SqColumn *column)
{
  SqSceneBuilder *scene = sq_pages_scene (roll->pages);
  g_autofree char *state = sq_words_layout_state (roll->scale, band->from_mm, &roll->spec->style);
  SqColumn above = { column->left_mm + LEFT_MM, column->top_mm, column->width_mm - LEFT_MM };
  SqColumn below = { above.left_mm, band->at.y - BELOW_MM + 4, above.width_mm };
  SqType bold = figure_type;

  bold.bold = TRUE;
  sq_set_line (scene, &above, SQ_ALIGN_START, &bold, state);
  sq_set_line (scene, &below, SQ_ALIGN_START, &figure_type, sq_words_near_edge ());
  if (band->from_mm <= 0)
    {
      SqColumn end = { column->left_mm, column->top_mm, LEFT_MM - 1 };
      sq_set_line (scene, &end, SQ_ALIGN_END, &figure_type, sq_words_cut_end ());
    }
}

static void
add_band (Roll *roll, Band *band)
{
  double height_mm = roll->box.max.y / roll->scale;
  SqColumn column = sq_pages_block (roll->pages, ABOVE_MM + height_mm + BELOW_MM, 0);
  SqRollLook look = { LABEL_EM_MM * roll->scale, TRUE, 0xffffff };

  band->at = sq_point (column.left_mm + LEFT_MM, column.top_mm - ABOVE_MM - height_mm);
  add_scene (
      roll, band,
      sq_roll_strip_scene (roll->lays, roll->cloth, roll->strip, band->from_mm, band->to_mm, &look),
      sq_point (0, 0));
  add_scene (
      roll, band,
      sq_roll_strip_end_scene (roll->lays, roll->cloth, roll->strip, band->from_mm, band->to_mm),
      sq_point (0, 0));
  for (guint i = 0; i < roll->cuts->len; i++)
    {
      SqBox box = sq_path_box (cut_of (roll, i));
      if (is_drawn_in (band, box))
        add_piece (roll, band, i);
      else if (box.min.x < band->to_mm && box.max.x > band->from_mm)
        add_reaching (roll, band, i);
    }
  add_dimensions (roll, band, TRUE);
  add_dimensions (roll, band, FALSE);
  add_names (roll, band, &column);
  add_up (roll, band);
}

/* Where the next band begins: at the first piece that is not whole in this one or one before. */
static double
next_from_mm (const Roll *roll, const Band *band)
{
  double next_mm = band->to_mm;

  for (guint i = 0; i < roll->cuts->len; i++)
    {
      SqBox box = sq_path_box (cut_of (roll, i));
      if (box.max.x > band->to_mm + 0.01)
        next_mm = fmin (next_mm, box.min.x);
    }
  return fmax (next_mm, band->from_mm + 1); /* it goes on in any case */
}

static void
add_roll (Roll *roll)
{
  double length_mm = band_room_mm (roll) * roll->scale, before_mm = -1;

  for (double from_mm = 0; from_mm < roll->box.max.x;)
    {
      Band band = { .from_mm = from_mm,
                    .to_mm = fmin (from_mm + length_mm, roll->box.max.x),
                    .before_mm = before_mm };
      add_band (roll, &band);
      if (band.to_mm >= roll->box.max.x)
        break;
      from_mm = next_from_mm (roll, &band);
      before_mm = band.to_mm;
    }
}

/* --- a cloth --------------------------------------------------------------------------------- */

static void
add_unlaid (SqPages *pages, const SqPaperSpec *spec, const SqClothLay *cloth)
{
  SqType bold = sq_type_text;

  bold.bold = TRUE;
  for (guint i = 0; i < cloth->lay->unlaid->len; i++)
    {
      g_autofree char *text = sq_words_unlaid (
          spec->lays, cloth, &g_array_index (cloth->lay->unlaid, SqUnlaid, i), &spec->style);
      sq_pages_paragraph (pages, &bold, text);
    }
  for (guint i = 0; i < cloth->task->bad_pins->len; i++)
    {
      g_autofree char *text = sq_words_bad_pin (spec->lays, cloth, i);
      sq_pages_paragraph (pages, &sq_type_text, text);
    }
}

static void
clear_lying (gpointer lying)
{
  sq_path_unref (((Lying *) lying)->cut);
}

/* The pieces on the strip, in its own coordinates. */
static void
add_cuts (Roll *roll)
{
  const SqClothLay *cloth = sq_lays_cloth (roll->lays, roll->cloth);
  SqVector by = sq_scale (sq_roll_strip_offset (cloth, roll->strip), -1);

  for (guint i = 0; i < cloth->lay->placed->len; i++)
    if (sq_lay_placed (cloth->lay, i)->strip == roll->strip)
      {
        g_autoptr (SqPath) cut = sq_roll_piece_cut (roll->lays, roll->cloth, i);
        Lying lying = { i, sq_path_moved (cut, 0, by) };
        g_array_append_val (roll->cuts, lying);
      }
}

/* The last strip that something lies on has the table on its page. */
static gboolean
is_last (const SqClothLay *cloth, guint strip)
{
  for (guint i = strip + 1; i < cloth->task->strips->len; i++)
    if (sq_lay_length (cloth->lay, i) > 0)
      return FALSE;
  return TRUE;
}

/* Draws a strip, under @name if there is one, no farther than @end_mm. */
static void
add_strip (SqPages *pages, const SqPaperSpec *spec, guint index, guint strip, const char *name,
           double end_mm, double table_mm)
{
  const SqClothLay *cloth = sq_lays_cloth (spec->lays, index);
  g_autoptr (GArray) cuts = g_array_new (FALSE, FALSE, sizeof (Lying));
  Roll roll = { pages, spec, spec->lays, index, strip, sq_roll_strip_box (cloth, strip), 1, cuts };
  SqType bold = sq_type_text;

  roll.box.max.x = fmin (roll.box.max.x, end_mm);
  g_array_set_clear_func (cuts, clear_lying);
  add_cuts (&roll);
  bold.bold = TRUE;
  if (name != NULL)
    {
      sq_pages_block (pages, 0, LEAST_HIGH_MM + ABOVE_MM + BELOW_MM + 10);
      const char *trim = sq_words_trim_first (spec->lays, cloth, strip);
      sq_pages_paragraph (pages, &bold, name);
      if (trim != NULL)
        sq_pages_paragraph (pages, &sq_type_small, trim);
      sq_pages_gap (pages, 1);
    }
  choose_scale (&roll, table_mm);
  add_roll (&roll);
  if (sq_lay_task_strip (cloth->task, strip)->n_flaws > 0)
    sq_pages_paragraph (pages, &sq_type_small, sq_words_hatched_flaws ());
  sq_pages_gap (pages, 2);
}

static void
add_strips (SqPages *pages, const SqPaperSpec *spec, guint index)
{
  const SqClothLay *cloth = sq_lays_cloth (spec->lays, index);
  g_autofree char *unused = sq_words_unused_stock (spec->lays, cloth);
  SqSheetTable table;

  sq_words_lay_table (&table, spec->lays, index, &spec->style);
  for (guint i = 0; i < cloth->task->strips->len; i++)
    if (sq_lay_length (cloth->lay, i) > 0)
      {
        g_autofree char *name = sq_words_names_strips (cloth)
                                    ? sq_words_strip (spec->lays, cloth, i, &spec->style)
                                    : NULL;
        add_strip (pages, spec, index, i, name, HUGE_VAL,
                   is_last (cloth, i) ? sq_pages_table_height_mm (pages, &table) : 0);
      }
  if (unused != NULL)
    sq_pages_paragraph (pages, &sq_type_small, unused);
  sq_pages_table (pages, &table);
  sq_sheet_table_clear (&table);
}

static void
add_cloth (SqPages *pages, const SqPaperSpec *spec, guint index)
{
  const SqClothLay *cloth = sq_lays_cloth (spec->lays, index);
  g_autofree char *name = sq_words_cloth (sq_plan_cloth (spec->lays->plan, cloth->cloth));
  g_autofree char *heading = sq_words_layout_of (name);
  g_autofree char *buy = sq_words_purchase (&cloth->purchase, &spec->style);
  g_autofree char *reckoned = sq_words_reckoned (spec->lays, cloth, &spec->style);
  SqType bold = sq_type_text;

  bold.bold = TRUE;
  sq_pages_set_running (pages, NULL);
  sq_pages_break (pages);
  sq_pages_heading (pages, heading, 40);
  sq_pages_set_running (pages, heading);
  sq_pages_paragraph (pages, &bold, buy);
  if (reckoned[0] != '\0')
    sq_pages_paragraph (pages, &sq_type_small, reckoned);
  add_unlaid (pages, spec, cloth);
  sq_pages_gap (pages, 2);
  add_strips (pages, spec, index);
}

/* A lot's lays as they lie on the table, a ply of each. */
static void
add_plies (SqPages *pages, const SqPaperSpec *spec, guint index)
{
  const SqClothLay *cloth = sq_lays_cloth (spec->lays, index);
  const SqPlyLay *best = sq_plies_best (cloth->plies);
  g_autoptr (SqLays) lays = sq_lays_of_plies (spec->lays);
  SqPaperSpec of_plies = *spec;
  g_autofree char *name = sq_words_cloth (sq_plan_cloth (spec->lays->plan, cloth->cloth));
  g_autofree char *heading = sq_words_plies_of (name);
  g_autofree char *plies = sq_words_plies (cloth->plies, &spec->style);
  g_autofree char *reckoned = sq_words_plies_reckoned (cloth->plies, &spec->style);
  SqType bold = sq_type_text;

  of_plies.lays = lays;
  bold.bold = TRUE;
  sq_pages_set_running (pages, NULL);
  sq_pages_break (pages);
  sq_pages_heading (pages, heading, 40);
  sq_pages_set_running (pages, heading);
  sq_pages_paragraph (pages, &bold, plies);
  sq_pages_paragraph (pages, &sq_type_small, reckoned);
  sq_pages_gap (pages, 2);
  for (guint i = 0; i < best->task->strips->len; i++)
    if (sq_lay_length (best->lay, i) > 0)
      {
        g_autofree char *which = sq_words_ply_lay (cloth->plies, i, &spec->style);
        add_strip (pages, &of_plies, index, i, which, sq_ply_length_mm (best, i), 0);
      }
}

void
sq_layout_make (SqPaper *paper, const SqPaperSpec *spec)
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
