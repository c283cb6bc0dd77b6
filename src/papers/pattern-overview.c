/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern-overview.h"

#include "geometry/box-clip.h"
#include "papers/pattern-squares.h"
#include "words/cautions.h"
#include "words/paper-words.h"
#include "words/pattern-words.h"
#include "words/piece-names.h"

/* Of a piece's place in the list, mm. */
#define CELL_MM 84.0
#define CELL_GAP_MM 7.0
#define CELL_PAD_MM 3.0
#define MAP_GAP_MM 1.5
#define MAP_MOST_MM 56.0
#define WIDE_MAP_MOST_MM 170.0

/* The names on a map: as large as they may be; smaller than the least asks for a map across the whole page,
 * smaller than what can be read for none. */
#define TILE_MOST_EM_MM 3.4
#define TILE_LEAST_EM_MM 2.2
#define TILE_READ_EM_MM 1.2
#define NAME_PAD_MM 0.8

/* Of a piece of which only corners are drawn, and the letters beside it. */
#define CORNER_MAP_MOST_MM 40.0
#define LETTER_MM 4.0
#define LETTER_EM_MM 2.8

/* More sheets than this are not drawn one by one. */
#define MOST_TILES 4000

/* Left at the end of a roll's page: what is kept together must not be torn for want of a little. */
#define ROLL_REST_MM 24.0

/* What must not be torn from its heading. */
#define SQUARES_MM 104.0

/* Cautions that have to do with cutting come first: blades; heat. */
#define N_CAUTIONS 2

static const SqType name_type = { 4.2, TRUE, SQ_TONE_INK };

typedef struct
{
  const SqPattern *pattern;
  SqPages *pages;
  guint n_before; /* pages that these will be */
} Overview;

static double
area_width_mm (const Overview *o)
{
  SqBox area = sq_pages_area (o->pages);

  return area.max.x - area.min.x;
}

/* --- head ----------------------------------------------------------------------------------- */

static gboolean
has_sheets_to_join (const SqPatternSheets *sheets)
{
  for (guint i = 0; i < sheets->pieces->len; i++)
    {
      const SqPatternGrid *grid = sq_pattern_piece (sheets, i)->grid;
      if (grid != NULL && grid->n_used > 1)
        return TRUE;
    }
  return FALSE;
}

static void
add_head (Overview *o, const SqPaperSpec *spec)
{
  const SqPlan *plan = spec->lays->plan;
  g_autofree char *title = sq_words_paper_title (plan->job);
  g_autofree char *state = sq_words_paper_state (plan->job, spec->date);
  g_autoptr (GPtrArray) steps = sq_words_pattern_steps (has_sheets_to_join (o->pattern->sheets),
                                                        spec->pattern.lines);
  g_autoptr (GPtrArray) cautions = sq_words_cautions (plan);
  g_autoptr (GPtrArray) beside = g_ptr_array_new ();
  SqColumn column = sq_pages_block (o->pages, sq_type_height_mm (&sq_type_title, 1), 0);

  sq_set_line (sq_pages_scene (o->pages), &column, SQ_ALIGN_START, &sq_type_title, title);
  column = sq_pages_block (o->pages, sq_type_height_mm (&sq_type_text, 1) + 2, 0);
  sq_set_line (sq_pages_scene (o->pages), &column, SQ_ALIGN_START, &sq_type_text,
               sq_words_paper_kind (SQ_PAPER_PATTERN));
  sq_set_line (sq_pages_scene (o->pages), &column, SQ_ALIGN_END, &sq_type_text, state);
  sq_pages_heading (o->pages, sq_words_check_heading (), SQUARES_MM);
  g_ptr_array_add (beside, (gpointer) sq_words_pattern_side (spec->wrong_side));
  for (guint i = 0; i < MIN (cautions->len, N_CAUTIONS); i++)
    g_ptr_array_add (beside, g_ptr_array_index (cautions, i));
  sq_pages_squares (o->pages, steps, beside);
}

/* --- maps ----------------------------------------------------------------------------------- */

static SqBox
points_box (const SqPatternCorners *corners)
{
  SqBox box = sq_box_empty ();

  for (guint i = 0; i < corners->points->len; i++)
    box = sq_box_with (box, sq_corner_point (corners, i));
  return box;
}

/* A piece as it stands in the list. */
typedef struct
{
  const SqPatternPiece *piece;
  double scale, width_mm, height_mm; /* of its map; 0: none */
  gboolean is_wide;                  /* across the page */
} Cell;

/* Where the sheets of column or row @i begin on the map: in the middle of what two have in common. */
static double
begin_mm (guint i, guint n, double step_mm, double window_mm)
{
  double overlap_mm = window_mm - step_mm;

  if (i == 0)
    return 0;
  return i * step_mm + (i < n ? overlap_mm / 2 : overlap_mm);
}

static double
tile_em_mm (const Cell *cell)
{
  const SqPatternGrid *grid = cell->piece->grid;
  g_autofree char *longest = sq_words_tile (grid->columns - 1, grid->rows - 1);
  double across_mm = grid->step_mm.x * cell->scale, along_mm = grid->step_mm.y * cell->scale;

  return fmin (TILE_MOST_EM_MM,
               fmin (0.85 * across_mm / sq_text_width_em (longest, FALSE), 0.7 * along_mm));
}

static void
scale_map (Cell *cell, double width_mm, double most_mm)
{
  const SqPatternGrid *grid = cell->piece->grid;
  double across_mm = begin_mm (grid->columns, grid->columns, grid->step_mm.x, grid->window_mm.x);
  double along_mm = begin_mm (grid->rows, grid->rows, grid->step_mm.y, grid->window_mm.y);

  cell->scale = fmin (width_mm / across_mm, most_mm / along_mm);
  cell->width_mm = across_mm * cell->scale;
  cell->height_mm = along_mm * cell->scale;
}

static void
scale_corners (Cell *cell, double width_mm)
{
  SqBox box = points_box (cell->piece->corners);
  SqVector size = sq_sub (box.max, box.min);
  const double beside = 2 * LETTER_MM;

  cell->scale = fmin ((width_mm - beside) / size.x, (CORNER_MAP_MOST_MM - beside) / size.y);
  cell->width_mm = size.x * cell->scale + beside;
  cell->height_mm = size.y * cell->scale + beside;
}

/* Adds the outline of @piece, which lies on the cell's map, small. */
static void
add_small (GPtrArray *small, const Overview *o, const Cell *cell, const SqPatternPiece *piece,
           SqPoint corner)
{
  const GPtrArray *rings = sq_pattern_rings (piece->piece, o->pattern->choice.lines);
  SqVector to_grid = sq_sub (piece->offset, piece->grid->corner);

  for (guint i = 0; i < rings->len; i++)
    {
      const SqPath *ring = g_ptr_array_index (rings, i);
      guint n = sq_path_n_nodes (ring);
      g_autofree SqNode *nodes = g_memdup2 (sq_path_nodes (ring), n * sizeof (SqNode));
      for (guint k = 0; k < n; k++)
        {
          SqPoint posed = sq_pattern_posed (piece->pose, nodes[k].at);
          nodes[k].at = sq_moved (corner, sq_add (posed, to_grid), cell->scale);
          if (piece->pose.mirrored)
            nodes[k].bulge = -nodes[k].bulge;
        }
      g_ptr_array_add (small, sq_path_new (nodes, n, TRUE));
    }
}

/* The outlines of all that lies on the cell's sheets. New array of SqPath. */
static GPtrArray *
small_outlines (const Overview *o, const Cell *cell, SqPoint corner)
{
  const SqPatternSheets *sheets = o->pattern->sheets;
  GPtrArray *small = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);

  for (guint i = 0; i < sheets->pieces->len; i++)
    if (sq_pattern_piece (sheets, i)->grid == cell->piece->grid)
      add_small (small, o, cell, sq_pattern_piece (sheets, i), corner);
  return small;
}

static gboolean
is_on_outline (const GPtrArray *outline, SqBox box)
{
  for (guint i = 0; i < outline->len; i++)
    if (sq_path_meets_box (g_ptr_array_index (outline, i), box))
      return TRUE;
  return FALSE;
}

/* In the middle of the sheet, or where else on it the outline does not run. */
static void
add_tile_name (SqSceneBuilder *scene, SqBox tile, const GPtrArray *outline, double em_mm,
               const char *name)
{
  static const double shares[] = { 0.5, 0.25, 0.75, 0.12, 0.88, 0, 1 };
  const guint n = G_N_ELEMENTS (shares);
  SqVector half = sq_point (sq_text_width_em (name, FALSE) * em_mm / 2,
                            SQ_TEXT_HEIGHT_EM * em_mm / 2);
  SqVector inside = sq_add (half, sq_point (NAME_PAD_MM, NAME_PAD_MM / 2));
  SqBox room = { sq_add (tile.min, inside), sq_sub (tile.max, inside) };
  SqPoint at = sq_between (tile.min, tile.max, 0.5);

  for (guint i = 0; i < n * n; i++)
    {
      SqPoint place = { room.min.x + shares[i % n] * (room.max.x - room.min.x),
                        room.min.y + shares[i / n] * (room.max.y - room.min.y) };
      if (is_on_outline (outline, (SqBox){ sq_sub (place, half), sq_add (place, half) }))
        continue;
      at = place;
      break;
    }
  sq_scene_add_text (scene,
                     &(SqText){ .at = at, .em_mm = em_mm, .width_mm = 2 * half.x, .text = name });
}

static SqBox
tile_box (const Cell *cell, SqPoint corner, guint column, guint row)
{
  const SqPatternGrid *grid = cell->piece->grid;
  double x[2], y[2];

  for (guint i = 0; i < 2; i++)
    {
      x[i] = begin_mm (column + i, grid->columns, grid->step_mm.x, grid->window_mm.x);
      y[i] = begin_mm (row + i, grid->rows, grid->step_mm.y, grid->window_mm.y);
    }
  return (SqBox){ sq_moved (corner, sq_point (x[0], -y[1]), cell->scale),
                  sq_moved (corner, sq_point (x[1], -y[0]), cell->scale) };
}

static void
add_tile (SqSceneBuilder *scene, const Cell *cell, const GPtrArray *outline, SqPoint corner,
          guint column, guint row)
{
  SqBox box = tile_box (cell, corner, column, row);
  const SqNode ring[] = { { box.min, 0, 0 },
                          { { box.max.x, box.min.y }, 0, 0 },
                          { box.max, 0, 0 },
                          { { box.min.x, box.max.y }, 0, 0 } };
  double em_mm = tile_em_mm (cell);

  sq_scene_begin_stroke (scene, SQ_PEN_LEADER);
  sq_scene_add_nodes (scene, ring, G_N_ELEMENTS (ring), TRUE);
  if (!sq_pattern_grid_has (cell->piece->grid, (gint) column, (gint) row))
    {
      sq_scene_add_line (scene, ring[0].at, ring[2].at);
      sq_scene_add_line (scene, ring[1].at, ring[3].at);
      return;
    }
  g_autofree char *name = sq_words_tile (column, row);
  if (em_mm >= TILE_READ_EM_MM)
    add_tile_name (scene, box, outline, em_mm, name);
}

/* Whether one of the @n points @places is so near to @at that letters would lie on each other. */
static gboolean
is_crowded (SqPoint at, const SqPoint *places, guint n)
{
  for (guint i = 0; i < n; i++)
    if (fabs (places[i].x - at.x) < 1.6 * LETTER_EM_MM
        && fabs (places[i].y - at.y) < 1.4 * LETTER_EM_MM)
      return TRUE;
  return FALSE;
}

/* A piece of which only corners are drawn, with their letters as far as there is room for them: on the
 * corners themselves they are all. */
static void
add_corner_map (const Overview *o, const Cell *cell, SqPoint corner)
{
  const SqPatternCorners *corners = cell->piece->corners;
  SqSceneBuilder *scene = sq_pages_scene (o->pages);
  guint n = corners->points->len, n_letters = 0;
  g_autofree SqNode *nodes = g_new0 (SqNode, n);
  g_autofree SqPoint *letters = g_new0 (SqPoint, n);
  SqBox box = points_box (corners);
  SqPoint middle = sq_between (box.min, box.max, 0.5);

  for (guint i = 0; i < n; i++)
    {
      SqPoint point = sq_corner_point (corners, i);
      g_autofree char *letter = sq_words_letters (i);
      nodes[i].at = sq_moved (sq_add (corner, sq_point (LETTER_MM, -LETTER_MM)),
                              sq_sub (point, sq_point (box.min.x, box.max.y)), cell->scale);
      SqPoint at = sq_moved (nodes[i].at, sq_unit (sq_sub (point, middle)), LETTER_MM / 2);
      if (is_crowded (at, letters, n_letters))
        continue;
      letters[n_letters++] = at;
      sq_scene_add_text (scene,
                         &(SqText){ .at = at,
                                    .em_mm = LETTER_EM_MM,
                                    .width_mm = sq_text_width_em (letter, FALSE) * LETTER_EM_MM,
                                    .text = letter });
    }
  sq_scene_begin_stroke (scene, SQ_PEN_CUT);
  sq_scene_add_nodes (scene, nodes, n, TRUE);
}

static void
add_map (const Overview *o, const Cell *cell, SqPoint corner)
{
  const SqPatternGrid *grid = cell->piece->grid;
  SqSceneBuilder *scene = sq_pages_scene (o->pages);

  if (cell->piece->corners != NULL)
    {
      add_corner_map (o, cell, corner);
      return;
    }
  g_autoptr (GPtrArray) outline = small_outlines (o, cell, corner);
  if ((gsize) grid->columns * grid->rows <= MOST_TILES)
    for (guint row = 0; row < grid->rows; row++)
      for (guint column = 0; column < grid->columns; column++)
        add_tile (scene, cell, outline, corner, column, row);
  sq_scene_begin_stroke (scene, SQ_PEN_CUT);
  for (guint i = 0; i < outline->len; i++)
    sq_scene_add_path (scene, g_ptr_array_index (outline, i));
}

/* --- the list ------------------------------------------------------------------------------- */

static Cell
make_cell (const Overview *o, const SqPatternPiece *piece)
{
  Cell cell = { piece, 0, 0, 0, FALSE };

  if (piece->corners != NULL)
    scale_corners (&cell, fmin (CELL_MM, area_width_mm (o)));
  if (piece->grid == NULL || piece->grid->n_used < 2
      || piece != sq_pattern_piece (o->pattern->sheets, piece->lead))
    return cell;
  scale_map (&cell, fmin (CELL_MM, area_width_mm (o)), MAP_MOST_MM);
  if (tile_em_mm (&cell) >= TILE_LEAST_EM_MM)
    return cell;
  cell.is_wide = TRUE;
  scale_map (&cell, area_width_mm (o), WIDE_MAP_MOST_MM);
  return cell;
}

static double
cell_height_mm (const Cell *cell)
{
  double texts_mm = sq_type_height_mm (&name_type, 1) + sq_type_height_mm (&sq_type_text, 1);

  return texts_mm + (cell->height_mm > 0 ? MAP_GAP_MM + cell->height_mm : 0) + CELL_PAD_MM;
}

static char *
pages_text (const Overview *o, const SqPatternPiece *piece)
{
  const SqPatternSheets *sheets = o->pattern->sheets;
  guint first = o->n_before + piece->first + 1, last = o->n_before + piece->last + 1;

  if (piece->corners != NULL)
    return sq_words_pattern_corners_on (first, last);
  if (piece->grid == NULL)
    return sq_words_pattern_on_page (first);
  guint index = (guint) (piece - sq_pattern_piece (sheets, 0));
  const SqPatternPart *a = sq_pattern_part_on (sheets, index, piece->first);
  const SqPatternPart *b = sq_pattern_part_on (sheets, index, piece->last);
  g_autofree char *first_tile = sq_words_tile (a->column, a->row);
  g_autofree char *last_tile = sq_words_tile (b->column, b->row);
  char *text = sq_words_pattern_on_pages (first, last, first_tile, last_tile);
  if (piece->lead == index)
    return text;
  g_autofree char *own = text;
  guint entry = sq_pattern_piece (sheets, piece->lead)->entry;
  return sq_words_pattern_with (
      own, g_array_index (o->pattern->plan->cut_list, SqCutEntry, entry).number);
}

static void
add_cell (const Overview *o, const Cell *cell, SqColumn column)
{
  SqSceneBuilder *scene = sq_pages_scene (o->pages);
  g_autofree char *piece = sq_words_pattern_name (o->pattern->plan, cell->piece->entry);
  g_autofree char *name = sq_words_pattern_of_cushion (o->pattern->plan, cell->piece->entry, piece);
  g_autofree char *pages = pages_text (o, cell->piece);

  sq_set_line (scene, &column, SQ_ALIGN_START, &name_type, name);
  column.top_mm -= sq_type_height_mm (&name_type, 1);
  sq_set_line (scene, &column, SQ_ALIGN_START, &sq_type_text, pages);
  column.top_mm -= sq_type_height_mm (&sq_type_text, 1) + MAP_GAP_MM;
  if (cell->height_mm > 0)
    add_map (o, cell, sq_point (column.left_mm, column.top_mm));
}

/* Cells beside each other, as many as go into a row from @first on. How many. */
static guint
add_row (const Overview *o, const GArray *cells, guint first)
{
  const Cell *cell = &g_array_index (cells, Cell, first);
  guint most = (guint) ((area_width_mm (o) + CELL_GAP_MM) / (CELL_MM + CELL_GAP_MM)), n = 0;
  double height_mm = 0;

  do
    height_mm = fmax (height_mm, cell_height_mm (&cell[n++]));
  while (n < most && first + n < cells->len && !cell[0].is_wide && !cell[n].is_wide);
  SqColumn column = sq_pages_block (o->pages, height_mm, 0);
  if (!cell[0].is_wide)
    column.width_mm = fmin (CELL_MM, column.width_mm);
  for (guint i = 0; i < n; i++)
    {
      add_cell (o, &cell[i], column);
      column.left_mm += CELL_MM + CELL_GAP_MM;
    }
  return n;
}

static gboolean
has_corners (const SqPatternSheets *sheets)
{
  for (guint i = 0; i < sheets->pieces->len; i++)
    if (sq_pattern_piece (sheets, i)->corners != NULL)
      return TRUE;
  return FALSE;
}

static gboolean
has_left_out (const SqPatternSheets *sheets)
{
  for (guint i = 0; i < sheets->pieces->len; i++)
    {
      const SqPatternGrid *grid = sq_pattern_piece (sheets, i)->grid;
      if (grid != NULL && grid->n_used < grid->columns * grid->rows)
        return TRUE;
    }
  return FALSE;
}

static void
add_list (const Overview *o)
{
  const GArray *pieces = o->pattern->sheets->pieces;
  g_autoptr (GArray) cells = g_array_new (FALSE, FALSE, sizeof (Cell));

  if (pieces->len == 0)
    return;
  for (guint i = 0; i < pieces->len; i++)
    {
      Cell cell = make_cell (o, sq_pattern_piece (o->pattern->sheets, i));
      g_array_append_val (cells, cell);
    }
  sq_pages_gap (o->pages, 4);
  sq_pages_heading (o->pages, sq_words_pattern_pieces (), 20);
  if (has_left_out (o->pattern->sheets))
    sq_pages_paragraph (o->pages, &sq_type_small, sq_words_pattern_left_out ());
  if (has_corners (o->pattern->sheets))
    sq_pages_paragraph (o->pages, &sq_type_small, sq_words_pattern_corners ());
  sq_pages_gap (o->pages, 1.5);
  for (guint i = 0; i < cells->len;)
    i += add_row (o, cells, i);
}

/* --- all ------------------------------------------------------------------------------------ */

/* The pages, of @size_mm, if they are @n_before in all; new array of SqPage. *@room_mm: what is left of
 * the last one. */
static GArray *
make (const SqPattern *pattern, const SqPaperSpec *spec, SqVector size_mm, guint n_before,
      double *room_mm)
{
  g_autofree char *title = sq_words_paper_title (spec->lays->plan->job);
  Overview o = { pattern, sq_pages_new_sized (spec, size_mm, title), n_before };
  GArray *pages = g_array_new (FALSE, FALSE, sizeof (SqPage));

  add_head (&o, spec);
  add_list (&o);
  *room_mm = sq_pages_room_mm (o.pages);
  sq_pages_set_following (o.pages, pattern->sheets->sheets->len);
  sq_pages_end (o.pages, pages);
  return pages;
}

static void
drop (GArray *pages)
{
  for (guint i = 0; i < pages->len; i++)
    {
      sq_scene_unref (g_array_index (pages, SqPage, i).scene);
      g_free (g_array_index (pages, SqPage, i).bookmark);
    }
  g_array_unref (pages);
}

/* How many pages these are decides the numbers on them, but nothing of how they are set. */
void
sq_pattern_overview (SqPattern *pattern, const SqPaperSpec *spec, GArray *out)
{
  SqVector size = sq_pattern_paper_mm (&spec->pattern, FALSE);
  gboolean is_roll = spec->pattern.roll_mm > 0;
  double room_mm;

  if (is_roll)
    size.y = SQ_PATTERN_LONGEST_MM;
  GArray *pages = make (pattern, spec, size, 1, &room_mm);
  if (is_roll && pages->len == 1)
    size.y -= fmax (room_mm - ROLL_REST_MM, 0);
  if (is_roll || pages->len > 1)
    {
      guint n = pages->len;
      drop (pages);
      pages = make (pattern, spec, size, n, &room_mm);
    }
  pattern->n_before = pages->len;
  g_array_append_vals (out, pages->data, pages->len);
  g_array_unref (pages);
}
