/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern-tiles.h"

#include "papers/pattern-pack.h"

/* Lines are drawn whole at an edge. */
#define INSET_MM 0.5

static SqVector
size_of (SqBox box)
{
  return sq_sub (box.max, box.min);
}

/* --- one piece alone ------------------------------------------------------------------------ */

/* A way to divide a piece. */
typedef struct
{
  gboolean is_lying, is_turned;
  SqPatternGrid *grid;
  GArray *lines;
} Tiling;

static void
clear_tiling (Tiling *tiling)
{
  sq_pattern_grid_free (tiling->grid);
  g_array_unref (tiling->lines);
}

/* On a roll, bands are as long as the piece, or equal parts of it. */
static double
band_mm (const SqPatternChoice *choice, double length_mm, double most_mm)
{
  guint n = sq_pattern_grid_count (length_mm, most_mm, choice->overlap_mm);

  return (length_mm + 2 * INSET_MM + (n - 1) * choice->overlap_mm) / n;
}

static Tiling
tile (const SqPaperSpec *spec, const SqPiece *piece, gboolean is_lying, gboolean is_turned)
{
  const SqPatternChoice *choice = &spec->pattern;
  SqVector window = sq_pattern_room_mm (choice, is_lying);
  SqPatternPose pose = { spec->wrong_side, is_turned ? 1 : 0 };
  Tiling tiling = { is_lying, is_turned, NULL, sq_pattern_lines_new (piece, choice->lines, pose) };

  if (choice->roll_mm > 0)
    window.y = band_mm (choice, size_of (sq_pattern_lines_box (tiling.lines)).y, window.y);
  tiling.grid = sq_pattern_grid_new (tiling.lines, window, choice->overlap_mm);
  return tiling;
}

/* What counts is the number of sheets; of a roll the paper. */
static double
cost (const SqPaperSpec *spec, const Tiling *tiling)
{
  return tiling->grid->n_used * (spec->pattern.roll_mm > 0 ? tiling->grid->window_mm.y : 1);
}

/* Upright before lying, as it lies before turned, where the others take no less. */
static Tiling
best_tiling (const SqPaperSpec *spec, const SqPiece *piece)
{
  Tiling best = tile (spec, piece, FALSE, FALSE);

  for (guint way = 1; way < 4; way++)
    {
      if ((way & 1) != 0 && spec->pattern.roll_mm > 0)
        continue;
      Tiling other = tile (spec, piece, (way & 1) != 0, (way & 2) != 0);
      if (cost (spec, &other) < cost (spec, &best) - 1e-6)
        {
          Tiling worse = best;
          best = other;
          other = worse;
        }
      clear_tiling (&other);
    }
  return best;
}

void
sq_pattern_divide (SqPatternSheets *sheets, const SqPaperSpec *spec, guint index)
{
  SqPatternPiece *piece = sq_pattern_piece (sheets, index);
  Tiling tiling = best_tiling (spec, piece->piece);

  piece->lines = tiling.lines;
  piece->grid = tiling.grid;
  piece->lead = index;
  piece->is_lying = tiling.is_lying;
  piece->pose = (SqPatternPose){ spec->wrong_side, tiling.is_turned ? 1 : 0 };
  g_ptr_array_add (sheets->grids, tiling.grid);
}

/* --- rows ----------------------------------------------------------------------------------- */

/* A piece that may lie in a row. */
typedef struct
{
  guint piece;
  double length_mm, width_mm;
  guint n_alone; /* sheets that it takes alone */
} Strip;

/* A row as it is filled. */
typedef struct
{
  SqPatternRow *row;
  double height_mm, length_mm;
  guint n_alone;
} Filling;

static void
free_row (gpointer data)
{
  SqPatternRow *row = data;

  g_array_unref (row->pieces);
  g_free (row);
}

static guint
n_sheets_mm (const SqPatternChoice *choice, double length_mm, gboolean is_lying)
{
  return sq_pattern_grid_count (length_mm, sq_pattern_room_mm (choice, is_lying).x,
                                choice->overlap_mm);
}

static SqVector
extent (const SqPaperSpec *spec, const SqPiece *piece)
{
  g_autoptr (GArray) lines = sq_pattern_lines_new (piece, spec->pattern.lines,
                                                   (SqPatternPose){ spec->wrong_side, 0 });

  return size_of (sq_pattern_lines_box (lines));
}

/* The longest first: they lie beside their likes. */
static int
by_length (gconstpointer a, gconstpointer b)
{
  const Strip *x = a, *y = b;

  if (x->length_mm != y->length_mm)
    return x->length_mm > y->length_mm ? -1 : 1;
  return x->piece < y->piece ? -1 : x->piece > y->piece;
}

/* All pieces of which sheets that are wide enough could take one row. */
static GArray *
all_strips (const SqPatternSheets *sheets, const SqPaperSpec *spec, const gboolean *is_wanted)
{
  GArray *strips = g_array_new (FALSE, FALSE, sizeof (Strip));

  for (guint i = 0; i < sheets->pieces->len; i++)
    {
      SqVector size = is_wanted[i] ? extent (spec, sq_pattern_piece (sheets, i)->piece)
                                   : sq_point (0, 0);
      Strip strip = { i, fmax (size.x, size.y), fmin (size.x, size.y), 0 };
      strip.n_alone = MIN (n_sheets_mm (&spec->pattern, strip.length_mm, FALSE),
                           n_sheets_mm (&spec->pattern, strip.length_mm, TRUE));
      if (is_wanted[i])
        g_array_append_val (strips, strip);
    }
  g_array_sort (strips, by_length);
  return strips;
}

/* Into the first of @fillings that has room for it, or a new one. */
static void
fill_in (GArray *fillings, const Strip *strip, double most_mm, gboolean is_lying)
{
  guint i = 0;

  while (i < fillings->len
         && g_array_index (fillings, Filling, i).height_mm + SQ_PATTERN_GAP_MM + strip->width_mm
                > most_mm)
    i++;
  if (i == fillings->len)
    {
      Filling fresh = { g_new0 (SqPatternRow, 1), -SQ_PATTERN_GAP_MM, strip->length_mm, 0 };
      fresh.row->pieces = g_array_new (FALSE, FALSE, sizeof (guint));
      fresh.row->is_lying = is_lying;
      g_array_append_val (fillings, fresh);
    }
  Filling *filling = &g_array_index (fillings, Filling, i);
  filling->height_mm += SQ_PATTERN_GAP_MM + strip->width_mm;
  filling->n_alone += strip->n_alone;
  g_array_append_val (filling->row->pieces, strip->piece);
}

static int
ascending (gconstpointer a, gconstpointer b)
{
  const guint *x = a, *y = b;

  return *x < *y ? -1 : *x > *y;
}

/* The rows on sheets that lie so, and how many sheets they spare; those that spare none are left out. */
static GPtrArray *
rows_on (const GArray *strips, const SqPatternChoice *choice, gboolean is_lying, guint *n_spared)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func (free_row);
  g_autoptr (GArray) fillings = g_array_new (FALSE, FALSE, sizeof (Filling));
  double most_mm = sq_pattern_room_mm (choice, is_lying).y - 2 * INSET_MM;

  *n_spared = 0;
  for (guint i = 0; i < strips->len; i++)
    if (g_array_index (strips, Strip, i).width_mm <= most_mm)
      fill_in (fillings, &g_array_index (strips, Strip, i), most_mm, is_lying);
  for (guint i = 0; i < fillings->len; i++)
    {
      Filling *filling = &g_array_index (fillings, Filling, i);
      guint n = n_sheets_mm (choice, filling->length_mm, is_lying);
      if (n >= filling->n_alone)
        {
          free_row (filling->row);
          continue;
        }
      *n_spared += filling->n_alone - n;
      g_array_sort (filling->row->pieces, ascending);
      g_ptr_array_add (rows, filling->row);
    }
  return rows;
}

GPtrArray *
sq_pattern_rows (const SqPatternSheets *sheets, const SqPaperSpec *spec, const gboolean *is_wanted)
{
  g_autoptr (GArray) strips = all_strips (sheets, spec, is_wanted);
  guint n_upright, n_lying;
  GPtrArray *upright = rows_on (strips, &spec->pattern, FALSE, &n_upright);
  GPtrArray *lying = rows_on (strips, &spec->pattern, TRUE, &n_lying);
  gboolean is_lying = n_lying > n_upright;

  g_ptr_array_unref (is_lying ? upright : lying);
  return is_lying ? lying : upright;
}

/* Adds @lines, moved by @offset. */
static void
add_moved (GArray *all, const GArray *lines, SqVector offset)
{
  for (guint i = 0; i < lines->len; i++)
    {
      const SqPatternLine *line = sq_pattern_line (lines, i);
      SqPatternLine moved = { sq_path_moved (line->path, 0, offset),
                              line->pen,
                              { sq_add (line->box.min, offset), sq_add (line->box.max, offset) } };
      g_array_append_val (all, moved);
    }
}

void
sq_pattern_divide_row (SqPatternSheets *sheets, const SqPaperSpec *spec, const SqPatternRow *row)
{
  g_autoptr (GArray) all = sq_pattern_no_lines ();
  double top_mm = 0;

  for (guint i = 0; i < row->pieces->len; i++)
    {
      SqPatternPiece *piece = sq_pattern_piece (sheets, g_array_index (row->pieces, guint, i));
      SqVector size = extent (spec, piece->piece);
      piece->pose = (SqPatternPose){ spec->wrong_side, size.y > size.x ? 1 : 0 };
      piece->lines = sq_pattern_lines_new (piece->piece, spec->pattern.lines, piece->pose);
      SqBox box = sq_pattern_lines_box (piece->lines);
      piece->offset = sq_point (-box.min.x, top_mm - box.max.y);
      piece->is_lying = row->is_lying;
      piece->lead = g_array_index (row->pieces, guint, 0);
      top_mm -= box.max.y - box.min.y + SQ_PATTERN_GAP_MM;
      add_moved (all, piece->lines, piece->offset);
    }
  SqPatternGrid *grid = sq_pattern_grid_new (
      all, sq_pattern_room_mm (&spec->pattern, row->is_lying), spec->pattern.overlap_mm);
  for (guint i = 0; i < row->pieces->len; i++)
    sq_pattern_piece (sheets, g_array_index (row->pieces, guint, i))->grid = grid;
  g_ptr_array_add (sheets->grids, grid);
}
