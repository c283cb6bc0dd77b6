/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Patterns put together again from what is drawn on their pages. */
#include "geometry/box-clip.h"
#include "papers/job-papers.h"
#include "papers/pattern.h"

/* Lines add up from thousands of ends. */
#define TRUE_MM 0.005
#define SAME_MM 1e-6

/* What patterns are printed on, and how. */
typedef struct
{
  SqSheet sheet;
  double roll_mm, overlap_mm;
  SqPatternLines lines;
  gboolean wrong_side, corners_only;
} Way;

static const Way ways[] = {
  { SQ_SHEET_A4, 0, 10, SQ_PATTERN_BOTH, FALSE, FALSE },
  { SQ_SHEET_LETTER, 0, 0, SQ_PATTERN_SEW, TRUE, FALSE },
  { SQ_SHEET_A0, 0, 25, SQ_PATTERN_CUT, TRUE, FALSE },
  { SQ_SHEET_A4, 914, 10, SQ_PATTERN_BOTH, TRUE, FALSE },
  { SQ_SHEET_A4, 305, 12, SQ_PATTERN_SEW, FALSE, FALSE },
  { SQ_SHEET_A3, 0, 3, SQ_PATTERN_CUT, FALSE, FALSE },
};

static SqPaperSpec
spec_of (const SqLays *lays, const Way *way)
{
  SqPaperSpec spec = spec_of_lays (lays, SQ_SHEET_A4);

  spec.wrong_side = way->wrong_side;
  spec.pattern = (SqPatternChoice){ .sheet = way->sheet,
                                    .roll_mm = way->roll_mm,
                                    .margin_mm = 10,
                                    .overlap_mm = way->overlap_mm,
                                    .lines = way->lines,
                                    .corners_only = way->corners_only };
  return spec;
}

/* --- lengths and areas ---------------------------------------------------------------------- */

/* Adds what lies in @box, the share of one sheet, of the lines that @pen drew on @scene, moved by @back:
 * their length, and what they add to the area of the ring they are of. */
static void
add_drawn (const SqScene *scene, SqPen pen, SqVector back, SqBox box, double *length_mm,
           double *area_mm2)
{
  for (guint i = 0; i < sq_scene_n_items (scene); i++)
    {
      const SqItem *item = sq_scene_item (scene, i);
      for (guint k = 0; item->kind == SQ_ITEM_STROKE && item->pen == pen && k < item->n_lines; k++)
        {
          const SqSceneLine *line = sq_scene_line (scene, item->first_line + k);
          g_autoptr (SqPath) drawn = sq_path_new (sq_scene_nodes (scene, line), line->n,
                                                  line->is_ring);
          g_autoptr (SqPath) path = sq_path_moved (drawn, 0, back);
          g_autoptr (GArray) parts = sq_path_in_box (path, box);
          for (guint p = 0; p < parts->len; p++)
            {
              const SqPath *part = g_array_index (parts, SqPathPart, p).path;
              *length_mm += sq_path_length_mm (part);
              for (guint s = 0; s < sq_path_n_segments (part); s++)
                {
                  SqSegment segment = sq_path_segment (part, s);
                  *area_mm2 += sq_segment_area_mm2 (&segment);
                }
            }
        }
    }
}

/* The share of a sheet, of @piece as posed: neighbours part what they have in common along its middle. */
static SqBox
share (const SqPatternPiece *piece, guint column, guint row)
{
  const SqPatternGrid *grid = piece->grid;
  SqBox box = sq_pattern_grid_window (grid, column, row);
  double half = (grid->window_mm.x - grid->step_mm.x) / 2;

  box.min.x += column > 0 ? half : 0;
  box.max.x -= column + 1 < grid->columns ? half : 0;
  box.max.y -= row > 0 ? half : 0;
  box.min.y += row + 1 < grid->rows ? half : 0;
  return (SqBox){ sq_sub (box.min, piece->offset), sq_sub (box.max, piece->offset) };
}

static double
whole_length_mm (const GPtrArray *rings, double *area_mm2)
{
  double length_mm = 0;

  *area_mm2 = 0;
  for (guint i = 0; i < rings->len; i++)
    {
      length_mm += sq_path_length_mm (g_ptr_array_index (rings, i));
      *area_mm2 += sq_path_area_mm2 (g_ptr_array_index (rings, i));
    }
  return length_mm;
}

/* Runs that are folded are no sew line, and dotted. */
static double
folded_mm (const SqPiece *piece, SqPatternLines lines)
{
  double length_mm = 0;

  for (guint i = 0; lines == SQ_PATTERN_SEW && i < piece->runs->len; i++)
    if (sq_piece_run (piece, i)->role == SQ_RUN_FOLD)
      length_mm += sq_piece_run (piece, i)->length_mm;
  return length_mm;
}

static void
check_tiled (const SqPaper *paper, const SqPattern *pattern, const SqPatternPiece *piece)
{
  SqPen pen = pattern->choice.lines == SQ_PATTERN_SEW ? SQ_PEN_INK : SQ_PEN_CUT;
  double length_mm = 0, area_mm2 = 0, whole_mm2;
  double whole_mm = whole_length_mm (sq_pattern_rings (piece->piece, pattern->choice.lines),
                                     &whole_mm2);
  double folds_mm = folded_mm (piece->piece, pattern->choice.lines);

  guint index = (guint) (piece - sq_pattern_piece (pattern->sheets, 0));
  for (guint i = piece->first; i <= piece->last; i++)
    {
      const SqPatternPart *part = sq_pattern_part_on (pattern->sheets, index, i);
      SqBox own = share (piece, part->column, part->row);
      /* others of its row are above and below */
      SqBox extent = sq_pattern_lines_box (piece->lines);
      own.min.y = fmax (own.min.y, extent.min.y - 1);
      own.max.y = fmin (own.max.y, extent.max.y + 1);
      g_autoptr (SqScene) scene = sq_paper_page_scene (paper, pattern->n_before + i);
      add_drawn (scene, pen, sq_scale (part->at, -1), own, &length_mm, &area_mm2);
    }
  g_assert_cmpfloat_with_epsilon (length_mm, whole_mm - folds_mm, TRUE_MM);
  /* mirrored rings run the other way round */
  if (folds_mm == 0)
    g_assert_cmpfloat_with_epsilon (fabs (area_mm2), whole_mm2, TRUE_MM * whole_mm);
}

/* What lies whole on sheets: all of one at once. */
static void
check_packed (const SqPaper *paper, const SqPattern *pattern, guint index)
{
  const SqPatternSheet *sheet = sq_pattern_sheet (pattern->sheets, index);
  SqPen pen = pattern->choice.lines == SQ_PATTERN_SEW ? SQ_PEN_INK : SQ_PEN_CUT;
  g_autoptr (SqScene) scene = sq_paper_page_scene (paper, pattern->n_before + index);
  double length_mm = 0, area_mm2 = 0, whole_mm = 0, whole_mm2 = 0, folds_mm = 0;
  SqBox page = { { 0, 0 }, sheet->size_mm };

  for (guint i = 0; i < sheet->n_parts; i++)
    {
      const SqPatternPart *part = sq_pattern_part (pattern->sheets, sheet->first_part + i);
      const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, part->piece);
      double own_mm2;
      whole_mm += whole_length_mm (sq_pattern_rings (piece->piece, pattern->choice.lines),
                                   &own_mm2);
      whole_mm2 += own_mm2;
      folds_mm += folded_mm (piece->piece, pattern->choice.lines);
    }
  add_drawn (scene, pen, sq_point (0, 0), page, &length_mm, &area_mm2);
  g_assert_cmpfloat_with_epsilon (length_mm, whole_mm - folds_mm, TRUE_MM);
  if (folds_mm == 0)
    g_assert_cmpfloat_with_epsilon (fabs (area_mm2), whole_mm2, TRUE_MM * whole_mm);
}

/* --- sheets left out ------------------------------------------------------------------------ */

static gboolean
has_line (const GArray *lines, SqBox box)
{
  for (guint i = 0; i < lines->len; i++)
    {
      g_autoptr (GArray) parts = sq_path_in_box (sq_pattern_line (lines, i)->path, box);
      if (parts->len > 0)
        return TRUE;
    }
  return FALSE;
}

/* Whether a piece that shares @grid has a line in @box of it. */
static gboolean
is_drawn_on (const SqPattern *pattern, const SqPatternGrid *grid, SqBox box)
{
  for (guint i = 0; i < pattern->sheets->pieces->len; i++)
    {
      const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, i);
      SqBox own = { sq_sub (box.min, piece->offset), sq_sub (box.max, piece->offset) };
      if (piece->grid == grid && has_line (piece->lines, own))
        return TRUE;
    }
  return FALSE;
}

/* None that is left out has a line; one without any is there only to join others. */
static void
check_left_out (const SqPattern *pattern, const SqPatternPiece *piece)
{
  const SqPatternGrid *grid = piece->grid;
  guint n_used = 0, n_sheets = 0;

  for (guint row = 0; row < grid->rows; row++)
    for (guint column = 0; column < grid->columns; column++)
      {
        gboolean is_used = sq_pattern_grid_has (grid, (gint) column, (gint) row);
        gboolean is_drawn = is_drawn_on (pattern, grid, sq_pattern_grid_window (grid, column, row));
        g_assert_true (is_used || !is_drawn);
        if (piece->piece->cut->len == 1)
          g_assert_true (is_drawn || !is_used);
        n_used += is_used;
      }
  for (guint i = 0; i < pattern->sheets->sheets->len; i++)
    {
      const SqPatternSheet *sheet = sq_pattern_sheet (pattern->sheets, i);
      const SqPatternPart *first = sq_pattern_part (pattern->sheets, sheet->first_part);
      n_sheets += sq_pattern_piece (pattern->sheets, first->piece)->grid == grid;
    }
  g_assert_cmpuint (n_used, ==, grid->n_used);
  g_assert_cmpuint (n_used, ==, n_sheets);
}

/* --- match marks ---------------------------------------------------------------------------- */

/* The sheet at a place of @grid. */
static guint
sheet_at (const SqPattern *pattern, const SqPatternGrid *grid, guint column, guint row)
{
  for (guint i = 0; i < pattern->sheets->sheets->len; i++)
    {
      const SqPatternPart *part = sq_pattern_part (
          pattern->sheets, sq_pattern_sheet (pattern->sheets, i)->first_part);
      if (sq_pattern_piece (pattern->sheets, part->piece)->grid == grid && part->column == column
          && part->row == row)
        return i;
    }
  g_assert_not_reached ();
}

static int
compare_points (gconstpointer a, gconstpointer b)
{
  const SqPoint *p = a, *q = b;

  if (fabs (p->x - q->x) > SAME_MM)
    return p->x < q->x ? -1 : 1;
  return fabs (p->y - q->y) <= SAME_MM ? 0 : p->y < q->y ? -1 : 1;
}

/* The nodes of all fine lines of sheet @index in @box, both of the piece's grid. */
static GArray *
marks_in (const SqPaper *paper, const SqPattern *pattern, guint index, SqBox box)
{
  GArray *points = g_array_new (FALSE, FALSE, sizeof (SqPoint));
  const SqPatternSheet *sheet = sq_pattern_sheet (pattern->sheets, index);
  const SqPatternPart *part = sq_pattern_part (pattern->sheets, sheet->first_part);
  SqVector to_page = sq_sub (part->at, sq_pattern_piece (pattern->sheets, part->piece)->offset);
  g_autoptr (SqScene) scene = sq_paper_page_scene (paper, pattern->n_before + index);

  for (guint i = 0; i < sq_scene_n_items (scene); i++)
    {
      const SqItem *item = sq_scene_item (scene, i);
      for (guint k = 0;
           item->kind == SQ_ITEM_STROKE && item->pen == SQ_PEN_RULE && k < item->n_lines; k++)
        {
          const SqSceneLine *line = sq_scene_line (scene, item->first_line + k);
          for (guint n = 0; n < line->n; n++)
            {
              SqPoint at = sq_sub (sq_scene_nodes (scene, line)[n].at, to_page);
              if (sq_box_meets (box, (SqBox){ at, at }, SAME_MM))
                g_array_append_val (points, at);
            }
        }
    }
  g_array_sort (points, compare_points);
  return points;
}

/* Two neighbours have the same marks on what they have in common; at least two of them, of 8 nodes of
 * a diamond and a cross, which all lie there where there is room. On a narrow overlap each sheet cuts
 * them off at its own edge. */
static void
check_neighbours (const SqPaper *paper, const SqPattern *pattern, const SqPatternPiece *piece,
                  guint column, guint row, guint columns, guint rows)
{
  SqBox a = sq_pattern_grid_window (piece->grid, column, row);
  SqBox b = sq_pattern_grid_window (piece->grid, column + columns, row + rows);
  SqBox both = { { fmax (a.min.x, b.min.x), fmax (a.min.y, b.min.y) },
                 { fmin (a.max.x, b.max.x), fmin (a.max.y, b.max.y) } };
  double overlap_mm = pattern->choice.overlap_mm;
  gboolean is_cut_off = overlap_mm > 0 && overlap_mm < 2 * SQ_MATCH_MARK_MM;
  double inside_mm = is_cut_off ? 0.001 : 0;
  /* at its ends begin the marks of other edges, and the rule above the caption */
  double ends_mm = fmax (overlap_mm, 10);
  both.min.x += rows * ends_mm + columns * inside_mm;
  both.max.x -= rows * ends_mm + columns * inside_mm;
  both.min.y += columns * ends_mm + rows * inside_mm;
  both.max.y -= columns * ends_mm + rows * inside_mm;
  g_autoptr (GArray) here = marks_in (paper, pattern, sheet_at (pattern, piece->grid, column, row),
                                      both);
  g_autoptr (GArray) there = marks_in (
      paper, pattern, sheet_at (pattern, piece->grid, column + columns, row + rows), both);

  g_assert_cmpuint (here->len, >=, overlap_mm >= 2 * SQ_MATCH_MARK_MM ? 16 : 8);
  g_assert_cmpuint (here->len, ==, there->len);
  for (guint i = 0; i < here->len; i++)
    g_assert_cmpfloat (
        sq_distance (g_array_index (here, SqPoint, i), g_array_index (there, SqPoint, i)), <,
        SAME_MM);
}

static void
check_marks (const SqPaper *paper, const SqPattern *pattern, const SqPatternPiece *piece)
{
  const SqPatternGrid *grid = piece->grid;

  for (guint row = 0; row < grid->rows; row++)
    for (guint column = 0; column < grid->columns; column++)
      {
        if (!sq_pattern_grid_has (grid, (gint) column, (gint) row))
          continue;
        if (sq_pattern_grid_has (grid, (gint) column + 1, (gint) row))
          check_neighbours (paper, pattern, piece, column, row, 1, 0);
        if (sq_pattern_grid_has (grid, (gint) column, (gint) row + 1))
          check_neighbours (paper, pattern, piece, column, row, 0, 1);
      }
}

/* --- tests ---------------------------------------------------------------------------------- */

static void
check_paper (const SqLays *lays, const Way *way, gboolean with_marks)
{
  SqPaperSpec spec = spec_of (lays, way);
  g_autoptr (SqPaper) paper = sq_paper_new (SQ_PAPER_PATTERN, &spec);
  const SqPattern *pattern = paper->source;

  for (guint i = 0; i < pattern->sheets->pieces->len; i++)
    {
      const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, i);
      if (piece->grid == NULL)
        continue;
      check_tiled (paper, pattern, piece);
      check_left_out (pattern, piece);
      if (with_marks)
        check_marks (paper, pattern, piece);
    }
  for (guint i = 0; i < pattern->sheets->sheets->len; i++)
    {
      const SqPatternPart *first = sq_pattern_part (
          pattern->sheets, sq_pattern_sheet (pattern->sheets, i)->first_part);
      if (sq_pattern_piece (pattern->sheets, first->piece)->grid == NULL)
        check_packed (paper, pattern, i);
    }
}

static void
test_samples (void)
{
  for (guint i = 0; samples[i] != NULL; i++)
    {
      g_autoptr (SqLays) lays = lays_of_sample (samples[i]);
      for (guint k = 0; k < G_N_ELEMENTS (ways); k++)
        check_paper (lays, &ways[k], (i + k) % 3 == 0);
    }
}

/* A hole in the middle of a seat that is larger than several sheets: those between it and the rim have no
 * line, but without them nobody would know where it is. */
static void
test_hole (void)
{
  const Way way = { SQ_SHEET_A4, 0, 10, SQ_PATTERN_CUT, FALSE, FALSE };
  g_autoptr (SqLays) lays = lays_of_text (
      "{'format':'squab job','version':1,'cushions':[{'id':1,'thickness':76.2,'build':'boxed',"
      "'outline':[{'id':1,'x':0,'y':0,'front':true},{'id':2,'x':2000,'y':0},{'id':3,'x':2000,"
      "'y':2000},{'id':4,'x':0,'y':2000}],'holes':[[{'id':11,'x':960,'y':960},{'id':12,'x':960,"
      "'y':1040},{'id':13,'x':1040,'y':1040},{'id':14,'x':1040,'y':960}]]}]}");
  SqPaperSpec spec = spec_of (lays, &way);
  g_autoptr (SqPaper) paper = sq_paper_new (SQ_PAPER_PATTERN, &spec);
  const SqPattern *pattern = paper->source;
  guint n_empty = 0, n_left_out = 0;

  check_paper (lays, &way, TRUE);
  for (guint i = 0; i < pattern->sheets->pieces->len; i++)
    {
      const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, i);
      if (piece->piece->cut->len < 2)
        continue;
      for (guint row = 0; row < piece->grid->rows; row++)
        for (guint column = 0; column < piece->grid->columns; column++)
          {
            gboolean is_used = sq_pattern_grid_has (piece->grid, (gint) column, (gint) row);
            n_left_out += !is_used;
            n_empty += is_used
                       && !has_line (piece->lines,
                                     sq_pattern_grid_window (piece->grid, column, row));
          }
    }
  g_assert_cmpuint (n_empty, >=, 2);
  g_assert_cmpuint (n_left_out, >, n_empty);
}

/* 24 × 20 in on A4 with margins of 10 mm and no overlap: 190 mm of width need 4 sheets, and what margins
 * and caption leave of the height 2; lying ones 3 times 3 (of 254 mm). */
static void
test_fewest (void)
{
  const Way way = { SQ_SHEET_A4, 0, 0, SQ_PATTERN_CUT, FALSE, FALSE };
  /* knife edge without a core: cut 609.6 × 508 */
  g_autoptr (SqLays) lays = lays_of_text (
      "{'format':'squab job','version':1,'cushions':[{'id':1,'thickness':76.2,'build':'boxed',"
      "'allowances':{'perimeter':12.7},'outline':[{'id':1,'x':0,'y':0,'front':true},{'id':2,"
      "'x':584.2,'y':0},{'id':3,'x':584.2,'y':482.6},{'id':4,'x':0,'y':482.6}]}]}");
  SqPaperSpec spec = spec_of (lays, &way);
  g_autoptr (SqPaper) paper = sq_paper_new (SQ_PAPER_PATTERN, &spec);
  const SqPattern *pattern = paper->source;
  const SqPatternPiece *top = sq_pattern_piece (pattern->sheets, 0);

  g_assert_cmpfloat_with_epsilon (top->piece->width_mm, 609.6, 1e-6);
  g_assert_cmpfloat_with_epsilon (top->piece->height_mm, 508, 1e-6);
  g_assert_false (top->is_lying);
  g_assert_cmpuint (top->grid->columns * top->grid->rows, ==, 8);
}

/* A bench 1800 long, on A1: its top, 525 deep, boxing of 2800 and zip strips of 1800 lie below each other on
 * upright sheets, 841 high, and take six of 574; alone, on lying ones, 3, 4, 3 and 3. */
static void
test_row (void)
{
  const Way way = { SQ_SHEET_A1, 0, 10, SQ_PATTERN_BOTH, FALSE, FALSE };
  g_autoptr (SqLays) lays = lays_of_text (
      "{'format':'squab job','version':1,'cushions':[{'id':1,'thickness':76.2,'build':'boxed',"
      "'outline':[{'id':1,'x':0,'y':0,'front':true},{'id':2,'x':1800,'y':0},{'id':3,'x':1800,"
      "'y':500},{'id':4,'x':0,'y':500}]}]}");
  SqPaperSpec spec = spec_of (lays, &way);
  g_autoptr (SqPaper) paper = sq_paper_new (SQ_PAPER_PATTERN, &spec);
  const SqPattern *pattern = paper->source;
  const SqPatternPiece *top = sq_pattern_piece (pattern->sheets, 0);
  guint n = 0;

  for (guint i = 0; i < pattern->sheets->pieces->len; i++)
    {
      const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, i);
      g_assert_true (piece->grid == sq_pattern_piece (pattern->sheets, piece->lead)->grid);
      n += piece->lead == 0;
    }
  g_assert_cmpuint (n, ==, 4);
  g_assert_cmpuint (top->grid->rows, ==, 1);
  g_assert_cmpuint (top->grid->n_used, ==, 6);
  check_paper (lays, &way, TRUE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pattern/samples", test_samples);
  g_test_add_func ("/pattern/hole", test_hole);
  g_test_add_func ("/pattern/fewest", test_fewest);
  g_test_add_func ("/pattern/row", test_row);
  return g_test_run ();
}
