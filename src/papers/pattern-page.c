/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern-page.h"

#include "geometry/box-clip.h"
#include "papers/pattern-notes.h"
#include "papers/pattern-patch.h"
#include "papers/typeset.h"
#include "words/paper-words.h"
#include "words/pattern-words.h"

/* Of the caption, mm. */
#define CAPTION_GAP_MM 1.6
#define CAPTION_SPACE_MM 4.0

/* A match mark for every so many mm of an edge, at least two. */
#define MATCH_APART_MM 600.0

/* The name of the sheet beyond an edge: from the edge, or deeper, and along it where no line is. */
#define BEYOND_MM 5.0
#define BEYOND_DEEPER_MM 4.5
#define BEYOND_DEEP 2
#define BEYOND_STEPS 24

static const SqType page_type = { 5.2, TRUE, SQ_TONE_INK };
static const SqType name_type = { 4.2, TRUE, SQ_TONE_INK };
static const SqType state_type = { 3.1, FALSE, SQ_TONE_INK };
static const SqType beyond_type = { 3.4, TRUE, SQ_TONE_INK };

/* A sheet while it is drawn. */
typedef struct
{
  SqPattern *pattern;
  guint index;
  const SqPatternSheet *sheet;
  SqSceneBuilder *to;
  GPtrArray *drawn; /* of SqPath: the piece's lines on it; of a tiled piece */
} Page;

SqPatternSides
sq_pattern_sides (const SqPatternPiece *piece, const SqPatternPart *part)
{
  gint column = (gint) part->column, row = (gint) part->row;

  if (piece->grid == NULL)
    return (SqPatternSides){ FALSE, FALSE, FALSE, FALSE };
  return (SqPatternSides){ sq_pattern_grid_has (piece->grid, column - 1, row),
                           sq_pattern_grid_has (piece->grid, column + 1, row),
                           sq_pattern_grid_has (piece->grid, column, row - 1),
                           sq_pattern_grid_has (piece->grid, column, row + 1) };
}

/* --- the piece's lines ---------------------------------------------------------------------- */

static void
add_part_of_line (Page *page, const SqPathPart *part, SqVector at)
{
  SqPath *moved = sq_path_moved (part->path, 0, at);

  sq_scene_add_part (page->to, moved, part->from_mm);
  g_ptr_array_add (page->drawn, moved);
}

/* Those of @part that lie on the sheet. */
static void
add_lines (Page *page, const SqPatternPart *part)
{
  const SqPatternPiece *piece = sq_pattern_piece (page->pattern->sheets, part->piece);
  g_autoptr (GArray) lines = piece->lines != NULL
                                 ? g_array_ref (piece->lines)
                                 : sq_pattern_lines_new (piece->piece, page->pattern->choice.lines,
                                                         part->pose);
  SqBox window = sq_pattern_window (page->pattern->sheets, part, page->sheet);
  gint pen = -1;

  for (guint i = 0; i < lines->len; i++)
    {
      const SqPatternLine *line = sq_pattern_line (lines, i);
      if (!sq_box_meets (line->box, window, 0))
        continue;
      g_autoptr (GArray) parts = sq_path_in_box (line->path, window);
      if (parts->len > 0 && pen != (gint) line->pen)
        sq_scene_begin_stroke (page->to, line->pen);
      pen = parts->len > 0 ? (gint) line->pen : pen;
      for (guint k = 0; k < parts->len; k++)
        add_part_of_line (page, &g_array_index (parts, SqPathPart, k), part->at);
    }
}

static void
add_notes (Page *page, const SqPatternPart *part)
{
  guint sheet;

  if (sq_pattern_piece (page->pattern->sheets, part->piece)->corners != NULL)
    {
      g_autoptr (GArray) taken = sq_pattern_add_patch (page->pattern, part, page->drawn, page->to);
      sq_pattern_patch_notes (page->pattern, part, page->index, taken, page->to);
      return;
    }
  g_autoptr (SqScene) notes = sq_pattern_notes (page->pattern, part->piece, &sheet);
  if (sheet == page->index)
    sq_scene_add_scene (page->to, notes, sq_point (0, 0), 1);
  else if (page->sheet->n_parts > 1) /* the caption doesn't tell which is which */
    sq_pattern_add_name (page->pattern, part, page->index, page->to);
}

/* --- edges where another sheet follows -------------------------------------------------------- */

/* A side of the sheet's box: from one corner on, and the way in. */
typedef struct
{
  SqPoint from, to;
  SqVector in;
} Edge;

/* As far as they lie in the box. */
static void
add_clipped (Page *page, const SqNode *nodes, guint n, gboolean is_ring)
{
  g_autoptr (SqPath) path = sq_path_new (nodes, n, is_ring);
  g_autoptr (GArray) parts = sq_path_in_box (path, page->sheet->box);

  for (guint i = 0; i < parts->len; i++)
    sq_scene_add_path (page->to, g_array_index (parts, SqPathPart, i).path);
}

static void
add_match_mark (Page *page, SqPoint at)
{
  const double r = SQ_MATCH_MARK_MM;
  const SqNode diamond[] = { { { at.x + r, at.y }, 0, 0 },
                             { { at.x, at.y + r }, 0, 0 },
                             { { at.x - r, at.y }, 0, 0 },
                             { { at.x, at.y - r }, 0, 0 } };
  const SqNode across[] = { diamond[2], diamond[0] }, upright[] = { diamond[3], diamond[1] };

  add_clipped (page, diamond, G_N_ELEMENTS (diamond), TRUE);
  add_clipped (page, across, 2, FALSE);
  add_clipped (page, upright, 2, FALSE);
}

static guint
n_match_marks (const Edge *edge)
{
  return (guint) fmax (2, ceil (sq_distance (edge->from, edge->to) / MATCH_APART_MM));
}

static void
add_match_marks (Page *page, const Edge *edge)
{
  guint n = n_match_marks (edge);

  sq_scene_begin_stroke (page->to, SQ_PEN_RULE);
  for (guint i = 0; i < n; i++)
    add_match_mark (page, sq_moved (sq_between (edge->from, edge->to, (i + 0.5) / n), edge->in,
                                    page->pattern->choice.overlap_mm / 2));
}

static gboolean
is_free (const Page *page, SqBox box)
{
  for (guint i = 0; i < page->drawn->len; i++)
    if (sq_path_meets_box (g_ptr_array_index (page->drawn, i), box))
      return FALSE;
  return TRUE;
}

/* The @i-th place along an edge, 0 … 1: from the middle out, between the two match marks there. */
static double
along_edge (const Edge *edge, guint i)
{
  guint n = n_match_marks (edge);
  double aside = (i + 1) / 2 * 0.36 / n / (BEYOND_STEPS / 2.0);

  return (double) (n / 2) / n + (i % 2 == 1 ? aside : -aside);
}

/* The name of the sheet beyond. */
static void
add_beyond (Page *page, const Edge *edge, guint column, guint row)
{
  g_autofree char *name = sq_words_tile (column, row);
  double deep_mm = fmax (page->pattern->choice.overlap_mm / 2, BEYOND_MM);
  SqVector half = sq_point (sq_text_width_em (name, TRUE) * beyond_type.em_mm / 2,
                            SQ_TEXT_HEIGHT_EM * beyond_type.em_mm / 2);
  SqPoint at = { 0, 0 };

  for (guint i = 0; i < BEYOND_DEEP * BEYOND_STEPS; i++)
    {
      double in_mm = fmax (deep_mm, fabs (sq_dot (half, edge->in)) + 0.5)
                     + i / BEYOND_STEPS * BEYOND_DEEPER_MM;
      at = sq_moved (sq_between (edge->from, edge->to, along_edge (edge, i % BEYOND_STEPS)),
                     edge->in, in_mm);
      if (is_free (page, (SqBox){ sq_sub (at, half), sq_add (at, half) }))
        break;
    }
  sq_scene_add_text (page->to, &(SqText){ .at = at,
                                          .em_mm = beyond_type.em_mm,
                                          .width_mm = 2 * half.x,
                                          .bold = TRUE,
                                          .text = name });
}

/* Where this sheet is trimmed, or up to where another is laid onto it. */
static void
add_trim (Page *page, const Edge *edge, gboolean is_trimmed)
{
  double in_mm = is_trimmed ? 0 : page->pattern->choice.overlap_mm;

  sq_scene_begin_stroke (page->to, is_trimmed ? SQ_PEN_CHORD : SQ_PEN_LEADER);
  sq_scene_add_line (page->to, sq_moved (edge->from, edge->in, in_mm),
                     sq_moved (edge->to, edge->in, in_mm));
}

static void
add_edges (Page *page, const SqPatternPart *part)
{
  const SqPatternPiece *piece = sq_pattern_piece (page->pattern->sheets, part->piece);
  SqPatternSides sides = sq_pattern_sides (piece, part);
  SqBox box = page->sheet->box;
  SqPoint right_low = { box.max.x, box.min.y }, left_high = { box.min.x, box.max.y };
  const struct
  {
    gboolean is_there, is_trimmed;
    Edge edge;
    gint columns, rows;
  } all[] = {
    { sides.left, TRUE, { box.min, left_high, { 1, 0 } }, -1, 0 },
    { sides.above, TRUE, { left_high, box.max, { 0, -1 } }, 0, -1 },
    { sides.right, FALSE, { right_low, box.max, { -1, 0 } }, 1, 0 },
    { sides.below, FALSE, { box.min, right_low, { 0, 1 } }, 0, 1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    {
      if (!all[i].is_there)
        continue;
      add_trim (page, &all[i].edge, all[i].is_trimmed);
      add_match_marks (page, &all[i].edge);
      add_beyond (page, &all[i].edge, part->column + (guint) all[i].columns,
                  part->row + (guint) all[i].rows);
    }
}

/* --- the caption -------------------------------------------------------------------------------- */

static guint
entry_of (const SqPattern *pattern, const SqPatternPart *part)
{
  return sq_pattern_piece (pattern->sheets, part->piece)->entry;
}

/* Whether part @i is the first of its piece on the sheet. */
static gboolean
is_new (const SqPatternPart *parts, guint i)
{
  for (guint k = 0; k < i; k++)
    if (parts[k].piece == parts[i].piece)
      return FALSE;
  return TRUE;
}

static guint
number_of (const SqPattern *pattern, guint piece)
{
  guint entry = sq_pattern_piece (pattern->sheets, piece)->entry;

  return g_array_index (pattern->plan->cut_list, SqCutEntry, entry).number;
}

/* What a tiled sheet is called; NULL for others. */
static char *
page_name (const Page *page)
{
  const SqPattern *pattern = page->pattern;
  const SqPatternPart *part = sq_pattern_part (pattern->sheets, page->sheet->first_part);

  if (sq_pattern_piece (pattern->sheets, part->piece)->grid == NULL)
    return NULL;
  g_autofree char *tile = sq_words_tile (part->column, part->row);
  const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, part->piece);
  return sq_words_tile_page (number_of (pattern, piece->lead), tile);
}

/* What is on a sheet: its pieces' names, or of several, where these take more than @width_mm, numbers
 * alone. */
static char *
pieces_text (const Page *page, double width_mm)
{
  const SqPattern *pattern = page->pattern;
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) numbers = g_ptr_array_new_with_free_func (g_free);
  const SqPatternPart *parts = sq_pattern_part (pattern->sheets, page->sheet->first_part);

  for (guint i = 0; i < page->sheet->n_parts; i++)
    {
      if (!is_new (parts, i))
        continue;
      g_ptr_array_add (names, sq_words_pattern_name (pattern->plan, entry_of (pattern, &parts[i])));
      g_ptr_array_add (numbers, g_strdup_printf ("%u", number_of (pattern, parts[i].piece)));
    }
  if (names->len == 1)
    return sq_words_pattern_of_cushion (pattern->plan, entry_of (pattern, parts),
                                        g_ptr_array_index (names, 0));
  g_autofree char *text = sq_words_pattern_together (names);
  if (sq_text_width_em (text, TRUE) * name_type.em_mm > width_mm)
    return sq_words_pattern_together (numbers);
  return g_steal_pointer (&text);
}

static void
add_caption (Page *page)
{
  const SqPattern *pattern = page->pattern;
  SqPoint low = { page->sheet->box.min.x, page->sheet->box.min.y - SQ_PATTERN_CAPTION_MM };
  double width_mm = page->sheet->box.max.x - low.x;
  SqColumn column = { low.x, low.y + SQ_PATTERN_CAPTION_MM - CAPTION_GAP_MM, width_mm };
  const char *side_up = sq_words_side_up (pattern->wrong_side);
  double side_mm = sq_text_width_em (side_up, TRUE) * name_type.em_mm;
  g_autofree char *name = page_name (page);
  g_autofree char *state = sq_words_pattern_state (pattern->plan->job, pattern->date);
  g_autofree char *number = sq_words_page (pattern->n_before + page->index + 1,
                                           pattern->n_before + pattern->sheets->sheets->len);

  sq_scene_begin_stroke (page->to, SQ_PEN_RULE);
  sq_scene_add_line (page->to, sq_point (low.x, column.top_mm + 0.6),
                     sq_point (low.x + width_mm, column.top_mm + 0.6));
  sq_set_line (page->to, &column, SQ_ALIGN_END, &name_type, side_up);
  column.width_mm -= side_mm + CAPTION_SPACE_MM;
  if (name != NULL)
    {
      double name_mm = sq_text_width_em (name, TRUE) * page_type.em_mm + CAPTION_SPACE_MM;
      sq_set_line (page->to, &column, SQ_ALIGN_START, &page_type, name);
      column.left_mm += name_mm;
      column.width_mm -= name_mm;
    }
  g_autofree char *pieces = pieces_text (page, column.width_mm);
  sq_set_line (page->to, &column, SQ_ALIGN_START, &name_type, pieces);

  double number_mm = sq_text_width_em (number, FALSE) * state_type.em_mm;
  column = (SqColumn){ low.x, low.y + sq_type_height_mm (&state_type, 1) + 0.2, width_mm };
  sq_set_line (page->to, &column, SQ_ALIGN_END, &state_type, number);
  column.width_mm -= number_mm + CAPTION_SPACE_MM;
  sq_set_line (page->to, &column, SQ_ALIGN_START, &state_type, state);
}

SqScene *
sq_pattern_page_scene (SqPattern *pattern, guint index)
{
  Page page = { pattern, index, sq_pattern_sheet (pattern->sheets, index), sq_scene_builder_new (),
                g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref) };
  const SqPatternPart *parts = sq_pattern_part (pattern->sheets, page.sheet->first_part);

  for (guint i = 0; i < page.sheet->n_parts; i++)
    add_lines (&page, &parts[i]);
  add_edges (&page, parts); /* all on a sheet are divided alike */
  for (guint i = 0; i < page.sheet->n_parts; i++)
    add_notes (&page, &parts[i]);
  add_caption (&page);
  g_ptr_array_unref (page.drawn);
  return sq_scene_builder_end (page.to);
}
