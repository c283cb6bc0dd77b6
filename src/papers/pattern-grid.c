/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern-grid.h"

#include <string.h>

#include "geometry/box-clip.h"

/* Half of the strongest line, and a hair: it is drawn whole where it is a sheet's edge. */
#define EDGE_MM 0.4

/* What is looked at as far as it goes. */
#define FAR_MM 1e9

guint
sq_pattern_grid_count (double length_mm, double window_mm, double overlap_mm)
{
  double n = ceil ((length_mm + 2 * EDGE_MM - overlap_mm) / (window_mm - overlap_mm) - 1e-9);

  return (guint) fmax (n, 1);
}

gboolean
sq_pattern_grid_has (const SqPatternGrid *grid, gint column, gint row)
{
  return column >= 0 && row >= 0 && (guint) column < grid->columns && (guint) row < grid->rows
         && grid->used[(gsize) row * grid->columns + (guint) column] != 0;
}

SqBox
sq_pattern_grid_window (const SqPatternGrid *grid, guint column, guint row)
{
  SqPoint corner = sq_add (grid->corner,
                           sq_point (column * grid->step_mm.x, -(row * grid->step_mm.y)));

  return (SqBox){ { corner.x, corner.y - grid->window_mm.y },
                  { corner.x + grid->window_mm.x, corner.y } };
}

/* --- which are used --------------------------------------------------------------------------- */

/* Those of @n windows, each @step after the one before, from 0, that a stretch from @from to @to comes
 * to. */
static void
range_of (double from, double to, double window, double step, guint n, guint *first, guint *last)
{
  *first = (guint) CLAMP (ceil ((from - window) / step), 0, n - 1);
  *last = (guint) CLAMP (floor (to / step), 0, n - 1);
}

static void
use (SqPatternGrid *grid, guint column, SqBox box)
{
  guint first, last;

  range_of (grid->corner.y - box.max.y, grid->corner.y - box.min.y, grid->window_mm.y,
            grid->step_mm.y, grid->rows, &first, &last);
  for (guint row = first; row <= last; row++)
    {
      guint8 *used = &grid->used[(gsize) row * grid->columns + column];
      grid->n_used += *used == 0;
      *used = 1;
    }
}

/* In one column what is left of a segment is in one piece or two, and comes to all rows between its
 * ends. */
static void
use_segment (SqPatternGrid *grid, const SqSegment *s)
{
  SqBox box = sq_segment_box (s);
  guint first, last;

  range_of (box.min.x - grid->corner.x, box.max.x - grid->corner.x, grid->window_mm.x,
            grid->step_mm.x, grid->columns, &first, &last);
  for (guint column = first; column <= last; column++)
    {
      SqBox slab = sq_pattern_grid_window (grid, column, 0);
      SqStretch stretches[SQ_MOST_STRETCHES];
      slab.min.y = -FAR_MM;
      slab.max.y = FAR_MM;
      guint n = sq_segment_in_box (s, slab, stretches);
      for (guint i = 0; i < n; i++)
        {
          SqSegment part = sq_segment_part (s, stretches[i].from, stretches[i].to);
          use (grid, column, sq_segment_box (&part));
        }
    }
}

/* --- what joins ------------------------------------------------------------------------------- */

/* The neighbour of @at on side @side, 0 … 3; G_MAXUINT: there is none. */
static guint
neighbour (const SqPatternGrid *grid, guint at, guint side)
{
  guint column = at % grid->columns, row = at / grid->columns;

  switch (side)
    {
    case 0:
      return column > 0 ? at - 1 : G_MAXUINT;
    case 1:
      return column + 1 < grid->columns ? at + 1 : G_MAXUINT;
    case 2:
      return row > 0 ? at - grid->columns : G_MAXUINT;
    default:
      return row + 1 < grid->rows ? at + grid->columns : G_MAXUINT;
    }
}

/* The way back from @at, which is not joined yet, to what is. */
static void
join (SqPatternGrid *grid, const guint *from, guint at)
{
  for (; from[at] != at; at = from[at])
    if (grid->used[at] == 0)
      {
        grid->used[at] = 1;
        grid->n_used++;
      }
}

/* What is joined to sheet @start goes into @queue; from there on to the nearest sheet that is not, over
 * those left out. FALSE: all are joined. */
static gboolean
join_nearest (SqPatternGrid *grid, guint start, guint *queue, guint *from)
{
  guint n_cells = grid->columns * grid->rows, head = 0, tail = 0, n_joined;

  memset (from, 0xff, n_cells * sizeof (guint));
  from[start] = start;
  queue[tail++] = start;
  for (; head < tail; head++)
    for (guint side = 0; side < 4; side++)
      {
        guint next = neighbour (grid, queue[head], side);
        if (next == G_MAXUINT || grid->used[next] == 0 || from[next] != G_MAXUINT)
          continue;
        from[next] = next;
        queue[tail++] = next;
      }
  n_joined = tail;
  if (n_joined == grid->n_used)
    return FALSE;
  for (head = 0; head < tail; head++)
    for (guint side = 0; side < 4; side++)
      {
        guint next = neighbour (grid, queue[head], side);
        if (next == G_MAXUINT || from[next] != G_MAXUINT)
          continue;
        from[next] = queue[head];
        queue[tail++] = next;
        if (grid->used[next] != 0)
          {
            join (grid, from, next);
            return TRUE;
          }
      }
  return FALSE;
}

/* A hole in the middle of a large piece has its place only if sheets lead there. */
static void
join_all (SqPatternGrid *grid)
{
  guint n_cells = grid->columns * grid->rows, start = 0;
  g_autofree guint *queue = g_new (guint, n_cells);
  g_autofree guint *from = g_new (guint, n_cells);

  while (start + 1 < n_cells && grid->used[start] == 0)
    start++;
  while (join_nearest (grid, start, queue, from))
    ;
}

SqPatternGrid *
sq_pattern_grid_new (const GArray *lines, SqVector window_mm, double overlap_mm)
{
  SqPatternGrid *grid = g_new0 (SqPatternGrid, 1);
  SqBox box = sq_pattern_lines_box (lines);
  SqVector size = sq_sub (box.max, box.min);

  grid->window_mm = window_mm;
  grid->step_mm = sq_sub (window_mm, sq_point (overlap_mm, overlap_mm));
  grid->columns = sq_pattern_grid_count (size.x, window_mm.x, overlap_mm);
  grid->rows = sq_pattern_grid_count (size.y, window_mm.y, overlap_mm);
  SqVector all = sq_point (window_mm.x + (grid->columns - 1) * grid->step_mm.x,
                           window_mm.y + (grid->rows - 1) * grid->step_mm.y);
  grid->corner = sq_point (box.min.x - (all.x - size.x) / 2, box.max.y + (all.y - size.y) / 2);
  grid->used = g_new0 (guint8, (gsize) grid->columns * grid->rows);
  for (guint i = 0; i < lines->len; i++)
    {
      const SqPath *path = sq_pattern_line (lines, i)->path;
      for (guint k = 0; k < sq_path_n_segments (path); k++)
        {
          SqSegment s = sq_path_segment (path, k);
          use_segment (grid, &s);
        }
    }
  join_all (grid);
  return grid;
}

void
sq_pattern_grid_free (SqPatternGrid *grid)
{
  g_free (grid->used);
  g_free (grid);
}
