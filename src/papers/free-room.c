/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/free-room.h"

#define MOST_CELLS 90000

/* A line is followed in steps of this part of a cell. */
#define STEP 0.25

struct _SqFreeRoom
{
  SqBox box;
  double cell_mm;
  guint columns, rows;
  guint8 *blocked; /* row after row, from below */
};

SqFreeRoom *
sq_free_room_new (SqBox box, double cell_mm)
{
  SqFreeRoom *room = g_new0 (SqFreeRoom, 1);
  SqVector size = sq_sub (box.max, box.min);

  room->box = box;
  room->cell_mm = fmax (cell_mm, sqrt (fmax (size.x, 0) * fmax (size.y, 0) / MOST_CELLS));
  room->columns = (guint) fmax (size.x / room->cell_mm, 0);
  room->rows = (guint) fmax (size.y / room->cell_mm, 0);
  room->blocked = g_new0 (guint8, room->columns * room->rows + 1);
  return room;
}

void
sq_free_room_free (SqFreeRoom *room)
{
  g_free (room->blocked);
  g_free (room);
}

/* The cell at @mm from the first one, held to the @n there are. */
static guint
cell_at (const SqFreeRoom *room, double mm, guint n)
{
  return (guint) CLAMP (floor (mm / room->cell_mm), 0, (double) n - 1);
}

static void
block_at (SqFreeRoom *room, SqPoint p)
{
  double x = floor ((p.x - room->box.min.x) / room->cell_mm);
  double y = floor ((p.y - room->box.min.y) / room->cell_mm);

  if (x >= 0 && y >= 0 && x < room->columns && y < room->rows)
    room->blocked[(guint) y * room->columns + (guint) x] = 1;
}

void
sq_free_room_block_path (SqFreeRoom *room, const SqPath *path)
{
  for (guint i = 0; i < sq_path_n_segments (path); i++)
    {
      SqSegment s = sq_path_segment (path, i);
      if (!sq_box_meets (sq_segment_box (&s), room->box, 0))
        continue;
      guint n = 1 + (guint) (sq_segment_length_mm (&s) / (STEP * room->cell_mm));
      for (guint k = 0; k <= n; k++)
        block_at (room, sq_segment_is_arc (&s) ? sq_segment_point (&s, (double) k / n)
                                               : sq_between (s.from, s.to, (double) k / n));
    }
}

void
sq_free_room_block_box (SqFreeRoom *room, SqBox box)
{
  if (!sq_box_meets (box, room->box, 0) || room->columns == 0 || room->rows == 0)
    return;
  guint left = cell_at (room, box.min.x - room->box.min.x, room->columns);
  guint right = cell_at (room, box.max.x - room->box.min.x, room->columns);
  guint low = cell_at (room, box.min.y - room->box.min.y, room->rows);
  guint high = cell_at (room, box.max.y - room->box.min.y, room->rows);

  for (guint row = low; row <= high; row++)
    for (guint column = left; column <= right; column++)
      room->blocked[row * room->columns + column] = 1;
}

static gboolean
is_outside (const GPtrArray *rings, SqPoint p)
{
  int winding = 0;

  for (guint i = 0; i < rings->len; i++)
    winding += sq_path_winding (g_ptr_array_index (rings, i), p);
  return winding == 0;
}

void
sq_free_room_block_outside (SqFreeRoom *room, const GPtrArray *rings)
{
  g_autofree guint8 *outside = g_new0 (guint8, room->columns + 1);
  g_autofree guint8 *below = g_new0 (guint8, room->columns + 1);

  /* no line parts a free cell from the free one below or left of it: they lie on the same side */
  for (guint row = 0; row < room->rows; row++)
    {
      guint8 *blocked = room->blocked + row * room->columns;
      for (guint i = 0; i < room->columns; i++)
        {
          SqPoint middle = sq_moved (room->box.min, sq_point (i + 0.5, row + 0.5), room->cell_mm);
          if (blocked[i])
            outside[i] = 2; /* not known */
          else if (i > 0 && outside[i - 1] < 2)
            outside[i] = outside[i - 1];
          else if (row > 0 && below[i] < 2)
            outside[i] = below[i];
          else
            outside[i] = is_outside (rings, middle);
        }
      for (guint i = 0; i < room->columns; i++)
        {
          blocked[i] = blocked[i] || outside[i] == 1;
          below[i] = outside[i];
        }
    }
}

/* A rectangle of cells that reaches down from the row now: from column @left on, @height high. */
typedef struct
{
  guint left, height;
} Bar;

/* What has been found. */
typedef struct
{
  const SqFreeRoom *room;
  SqVector size;
  double scale;
  SqBox box;
} Best;

static void
try_bar (Best *best, guint row, Bar bar, guint right)
{
  const SqFreeRoom *room = best->room;
  double width = (right - bar.left) * room->cell_mm, height = bar.height * room->cell_mm;
  double scale = fmin (width / best->size.x, height / best->size.y);

  if (scale <= best->scale)
    return;
  best->scale = scale;
  best->box.min = sq_moved (room->box.min, sq_point (bar.left, row + 1.0 - bar.height),
                            room->cell_mm);
  best->box.max = sq_add (best->box.min, sq_point (width, height));
}

/* Every rectangle that can't grow ends in some row; there, those that begin farther left are lower. */
double
sq_free_room_best (const SqFreeRoom *room, SqVector size, SqBox *box)
{
  Best best = { room, size, 0, sq_box_empty () };
  g_autofree guint *heights = g_new0 (guint, room->columns + 1);
  g_autofree Bar *bars = g_new (Bar, room->columns + 1);

  for (guint row = 0; row < room->rows; row++)
    {
      guint n = 0;
      for (guint i = 0; i <= room->columns; i++)
        {
          guint height = 0, left = i;
          if (i < room->columns && !room->blocked[row * room->columns + i])
            height = heights[i] + 1;
          heights[i] = height;
          while (n > 0 && bars[n - 1].height > height)
            {
              left = bars[--n].left;
              try_bar (&best, row, bars[n], i);
            }
          if (height > 0 && (n == 0 || bars[n - 1].height < height))
            bars[n++] = (Bar){ left, height };
        }
    }
  *box = best.box;
  return best.scale;
}
