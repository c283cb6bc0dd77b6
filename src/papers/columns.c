/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/columns.h"

#define GUTTER_MM 7.0
#define HEAD_MM 12.0
#define GROUP_GAP_MM 2.4

/* So much of a group at least stands under its first line at a column's end. */
#define LEAST_TORN_MM 24.0

/* Columns of a last page are made longer by so much until all goes in. */
#define TRY_MM 4.0

typedef struct
{
  double left_mm, width_mm;
  SqAlign align;
  SqType type;
  char *text;
} Cell;

typedef struct
{
  double height_mm, tick_mm;
  GArray *cells; /* of Cell */
} Line;

struct _SqColumns
{
  SqPages *pages;
  guint n;
  double width_mm;
  GPtrArray *groups; /* of GArray of Line */
};

/* The first line that is not set yet. */
typedef struct
{
  guint group, line;
} Cursor;

static void
clear_cell (gpointer cell)
{
  g_free (((Cell *) cell)->text);
}

static void
clear_line (gpointer line)
{
  g_array_unref (((Line *) line)->cells);
}

SqColumns *
sq_columns_new (SqPages *pages, double least_mm)
{
  SqColumns *columns = g_new0 (SqColumns, 1);
  SqBox area = sq_pages_area (pages);
  double whole_mm = area.max.x - area.min.x;

  columns->pages = pages;
  columns->n = (guint) fmax (1, floor ((whole_mm + GUTTER_MM) / (least_mm + GUTTER_MM)));
  columns->width_mm = (whole_mm + GUTTER_MM) / columns->n - GUTTER_MM;
  columns->groups = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  return columns;
}

double
sq_columns_width_mm (const SqColumns *columns)
{
  return columns->width_mm;
}

static GArray *
group_at (const SqColumns *columns, guint i)
{
  return g_ptr_array_index (columns->groups, i);
}

static Line *
last_line (const SqColumns *columns)
{
  GArray *group = group_at (columns, columns->groups->len - 1);

  return &g_array_index (group, Line, group->len - 1);
}

void
sq_columns_group (SqColumns *columns)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (Line));

  g_array_set_clear_func (lines, clear_line);
  g_ptr_array_add (columns->groups, lines);
}

void
sq_columns_line (SqColumns *columns, double height_mm)
{
  Line line = { height_mm, 0, g_array_new (FALSE, FALSE, sizeof (Cell)) };

  g_array_set_clear_func (line.cells, clear_cell);
  g_array_append_val (group_at (columns, columns->groups->len - 1), line);
}

void
sq_columns_text (SqColumns *columns, double left_mm, double width_mm, SqAlign align,
                 const SqType *type, const char *text)
{
  Cell cell = { left_mm, width_mm, align, *type, g_strdup (text) };

  g_array_append_val (last_line (columns)->cells, cell);
}

void
sq_columns_tick_box (SqColumns *columns, double side_mm)
{
  last_line (columns)->tick_mm = side_mm;
}

void
sq_columns_paragraph (SqColumns *columns, double left_mm, const SqType *type, const char *text)
{
  double width_mm = columns->width_mm - left_mm;
  g_autoptr (GPtrArray) lines = sq_wrapped (text, width_mm, type);

  for (guint i = 0; i < lines->len; i++)
    {
      sq_columns_line (columns, sq_type_height_mm (type, 1));
      sq_columns_text (columns, left_mm, width_mm, SQ_ALIGN_START, type,
                       g_ptr_array_index (lines, i));
    }
}

/* --- setting --------------------------------------------------------------------------------- */

static void
draw_tick_box (SqSceneBuilder *scene, SqPoint left_middle, double side_mm)
{
  double x = left_middle.x, y = left_middle.y - side_mm / 2;
  g_autoptr (SqPath) box = sq_path_new_rectangle (x, y, x + side_mm, y + side_mm);

  sq_scene_stroke_path (scene, SQ_PEN_INK, box);
}

static void
draw_line (const SqColumns *columns, const Line *line, double left_mm, double top_mm)
{
  SqSceneBuilder *scene = sq_pages_scene (columns->pages);

  if (line->tick_mm > 0)
    draw_tick_box (scene, sq_point (left_mm, top_mm - line->height_mm / 2), line->tick_mm);
  for (guint i = 0; i < line->cells->len; i++)
    {
      const Cell *cell = &g_array_index (line->cells, Cell, i);
      SqColumn column = { left_mm + cell->left_mm, top_mm, cell->width_mm };
      sq_set_line (scene, &column, cell->align, &cell->type, cell->text);
    }
}

static double
rest_mm (const GArray *group, guint from)
{
  double height_mm = 0;

  for (guint i = from; i < group->len; i++)
    height_mm += g_array_index (group, Line, i).height_mm;
  return height_mm;
}

/* What a page has room for at most, below its head. */
static double
whole_mm (const SqColumns *columns)
{
  SqBox area = sq_pages_area (columns->pages);

  return area.max.y - area.min.y - HEAD_MM;
}

/* Sets a column from @at on, @height_mm long, at @left_mm; draws it where @draws. What comes after. */
static Cursor
set_column (const SqColumns *columns, Cursor at, double height_mm, gboolean draws, double left_mm,
            double top_mm)
{
  double used_mm = 0;

  while (at.group < columns->groups->len)
    {
      const GArray *group = group_at (columns, at.group);
      const Line *head = &g_array_index (group, Line, 0);
      double own_mm = rest_mm (group, at.line) + (at.line > 0 ? head->height_mm : 0);
      double gap_mm = used_mm > 0 ? GROUP_GAP_MM : 0;
      gboolean fits = used_mm + gap_mm + own_mm <= height_mm;
      /* What goes into no column is torn where there is room for a piece of it. */
      if (!fits && (own_mm <= whole_mm (columns) || height_mm - used_mm - gap_mm < LEAST_TORN_MM))
        return at;
      used_mm += gap_mm;
      if (at.line > 0 && draws)
        draw_line (columns, head, left_mm, top_mm - used_mm);
      if (at.line > 0)
        used_mm += head->height_mm;
      for (guint first = at.line; at.line < group->len; at.line++)
        {
          const Line *line = &g_array_index (group, Line, at.line);
          if (used_mm + line->height_mm > height_mm && at.line > first)
            return at;
          if (draws)
            draw_line (columns, line, left_mm, top_mm - used_mm);
          used_mm += line->height_mm;
        }
      at = (Cursor){ at.group + 1, 0 };
    }
  return at;
}

/* All columns of a page. */
static Cursor
set_page (const SqColumns *columns, Cursor at, double height_mm, gboolean draws, SqColumn area)
{
  for (guint i = 0; i < columns->n; i++)
    at = set_column (columns, at, height_mm, draws,
                     area.left_mm + i * (columns->width_mm + GUTTER_MM), area.top_mm);
  return at;
}

/* The least height that takes all from @at on, at most @most_mm. */
static double
least_height_mm (const SqColumns *columns, Cursor at, double most_mm)
{
  for (double mm = TRY_MM; mm < most_mm; mm += TRY_MM)
    if (set_page (columns, at, mm, FALSE, (SqColumn){ 0, 0, 0 }).group >= columns->groups->len)
      return mm;
  return most_mm;
}

void
sq_columns_end (SqColumns *columns)
{
  Cursor at = { 0, 0 };

  while (at.group < columns->groups->len)
    {
      double room_mm = sq_pages_room_mm (columns->pages);
      double height_mm = least_height_mm (columns, at, room_mm);
      Cursor next = set_page (columns, at, height_mm, FALSE, (SqColumn){ 0, 0, 0 });
      if (next.group == at.group && next.line == at.line)
        {
          sq_pages_break (columns->pages);
          continue;
        }
      SqColumn area = sq_pages_block (columns->pages, height_mm, 0);
      at = set_page (columns, at, height_mm, TRUE, area);
    }
  g_ptr_array_unref (columns->groups);
  g_free (columns);
}
