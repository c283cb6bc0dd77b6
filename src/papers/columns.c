/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/columns.h"

#define GUTTER_MM 7.0
#define HEAD_MM 9.0
#define GROUP_GAP_MM 2.4

/* A group that would go into one column is torn where it is so high and so much of it has room; of
 * any that is torn so much at least stands at a column's end, and so many lines go on in the next. */
#define HIGH_MM 90.0
#define MUCH_MM 55.0
#define LEAST_TORN_MM 24.0
#define LEAST_LINES 3

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

typedef struct
{
  GArray *lines; /* of Line */
  SqGroupKind kind;
} Group;

struct _SqColumns
{
  SqPages *pages;
  guint n;
  double width_mm;
  GArray *groups; /* of Group */
  SqBox beside;   /* where they begin; empty: below what is there */
};

/* Where columns are set. */
typedef struct
{
  guint first; /* of a page's columns */
  double top_mm, height_mm;
  gboolean tears; /* groups that would go into one column */
} Region;

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

static void
clear_group (gpointer group)
{
  g_array_unref (((Group *) group)->lines);
}

SqColumns *
sq_columns_new (SqPages *pages, double least_mm)
{
  SqColumns *columns = g_new0 (SqColumns, 1);
  SqBox area = sq_pages_area (pages);
  double across_mm = area.max.x - area.min.x;

  columns->pages = pages;
  columns->n = (guint) fmax (1, floor ((across_mm + GUTTER_MM) / (least_mm + GUTTER_MM)));
  columns->width_mm = (across_mm + GUTTER_MM) / columns->n - GUTTER_MM;
  columns->groups = g_array_new (FALSE, FALSE, sizeof (Group));
  columns->beside = sq_box_empty ();
  g_array_set_clear_func (columns->groups, clear_group);
  return columns;
}

void
sq_columns_begin_beside (SqColumns *columns, SqBox taken)
{
  columns->beside = taken;
}

double
sq_columns_width_mm (const SqColumns *columns)
{
  return columns->width_mm;
}

static GArray *
lines_of (const SqColumns *columns, guint group)
{
  return g_array_index (columns->groups, Group, group).lines;
}

static Line *
last_line (const SqColumns *columns)
{
  GArray *group = lines_of (columns, columns->groups->len - 1);

  return &g_array_index (group, Line, group->len - 1);
}

void
sq_columns_group (SqColumns *columns, SqGroupKind kind)
{
  Group group = { g_array_new (FALSE, FALSE, sizeof (Line)), kind };

  g_array_set_clear_func (group.lines, clear_line);
  g_array_append_val (columns->groups, group);
}

void
sq_columns_line (SqColumns *columns, double height_mm)
{
  Line line = { height_mm, 0, g_array_new (FALSE, FALSE, sizeof (Cell)) };

  g_array_set_clear_func (line.cells, clear_cell);
  g_array_append_val (lines_of (columns, columns->groups->len - 1), line);
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
draw_line (const SqColumns *columns, const Line *line, gboolean goes_on, double left_mm,
           double top_mm)
{
  SqSceneBuilder *scene = sq_pages_scene (columns->pages);

  if (line->tick_mm > 0 && !goes_on)
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

static double
gap_above_mm (const SqColumns *columns, guint i)
{
  return g_array_index (columns->groups, Group, i).kind == SQ_GROUP_CLOSE ? 0 : GROUP_GAP_MM;
}

/* What goes into one column with what is left of group @i from line @from on. */
static double
together_mm (const SqColumns *columns, guint i, guint from)
{
  const Group *group = &g_array_index (columns->groups, Group, i);
  double own_mm = rest_mm (group->lines, from);

  if (from > 0)
    own_mm += g_array_index (group->lines, Line, 0).height_mm;
  if (group->kind != SQ_GROUP_LEADS || i + 1 >= columns->groups->len)
    return own_mm;
  double next_mm = rest_mm (lines_of (columns, i + 1), 0);
  return own_mm + GROUP_GAP_MM + (next_mm > whole_mm (columns) - own_mm ? LEAST_TORN_MM : next_mm);
}

/* What stands above group @i in any case. */
static double
lead_mm (const SqColumns *columns, guint i)
{
  if (i == 0 || g_array_index (columns->groups, Group, i - 1).kind != SQ_GROUP_LEADS)
    return 0;
  return rest_mm (lines_of (columns, i - 1), 0) + GROUP_GAP_MM;
}

/* The line of the group at @at before which it is torn, where @room_mm are left; its end: not at all;
 * @at's: it begins in the next column. */
static guint
tear (const SqColumns *columns, Cursor at, double room_mm, gboolean tears)
{
  const GArray *lines = lines_of (columns, at.group);
  double own_mm = together_mm (columns, at.group, at.line);
  double used_mm = at.line > 0 ? g_array_index (lines, Line, 0).height_mm : 0;
  gboolean may_tear = own_mm + lead_mm (columns, at.group) > whole_mm (columns)
                      || (tears && own_mm > HIGH_MM && room_mm > MUCH_MM);
  guint end = at.line;

  if (own_mm <= room_mm)
    return lines->len;
  if (!may_tear || room_mm < LEAST_TORN_MM)
    return at.line;
  for (; end < lines->len; end++)
    {
      used_mm += g_array_index (lines, Line, end).height_mm;
      if (used_mm > room_mm)
        break;
    }
  return MAX (MIN (end, lines->len - MIN (lines->len, LEAST_LINES)), at.line + 1);
}

/* Sets a column of @region from @at on, at @left_mm; draws it where @draws. What comes after. */
static Cursor
set_column (const SqColumns *columns, Cursor at, const Region *region, gboolean draws,
            double left_mm)
{
  double used_mm = 0;

  while (at.group < columns->groups->len)
    {
      const GArray *lines = lines_of (columns, at.group);
      double gap_mm = used_mm > 0 ? gap_above_mm (columns, at.group) : 0;
      guint end = tear (columns, at, region->height_mm - used_mm - gap_mm, region->tears);
      if (end == at.line)
        return at;
      used_mm += gap_mm;
      for (guint i = 0; i < end; i = MAX (i + 1, at.line))
        {
          const Line *line = &g_array_index (lines, Line, i);
          if (draws)
            draw_line (columns, line, at.line > 0, left_mm, region->top_mm - used_mm);
          used_mm += line->height_mm;
        }
      if (end < lines->len)
        return (Cursor){ at.group, end };
      at = (Cursor){ at.group + 1, 0 };
    }
  return at;
}

/* All columns of @region. */
static Cursor
set_region (const SqColumns *columns, Cursor at, const Region *region, gboolean draws)
{
  for (guint i = region->first; i < columns->n; i++)
    at = set_column (columns, at, region, draws,
                     sq_pages_area (columns->pages).min.x + i * (columns->width_mm + GUTTER_MM));
  return at;
}

/* Makes @region no higher than all from @at on takes whole. */
static void
level (const SqColumns *columns, Cursor at, Region *region)
{
  Region lower = *region;

  lower.tears = FALSE;
  for (lower.height_mm = TRY_MM; lower.height_mm < region->height_mm; lower.height_mm += TRY_MM)
    if (set_region (columns, at, &lower, FALSE).group >= columns->groups->len)
      {
        *region = lower;
        return;
      }
}

/* As many as there are to the right of what they begin beside. */
static Cursor
set_beside (const SqColumns *columns)
{
  const SqBox *taken = &columns->beside;
  double before_mm = taken->max.x + GUTTER_MM / 2 - sq_pages_area (columns->pages).min.x;
  Region region = { (guint) ceil (fmax (before_mm, 0) / (columns->width_mm + GUTTER_MM)),
                    taken->max.y, taken->max.y - taken->min.y, TRUE };

  if (taken->min.x > taken->max.x || region.first >= columns->n)
    return (Cursor){ 0, 0 };
  level (columns, (Cursor){ 0, 0 }, &region);
  return set_region (columns, (Cursor){ 0, 0 }, &region, TRUE);
}

/* What still is to be set, on the page now, if that takes any of it, or on the next. */
static Cursor
set_below (const SqColumns *columns, Cursor at)
{
  Region region = { 0, 0, sq_pages_room_mm (columns->pages), TRUE };

  level (columns, at, &region);
  Cursor next = set_region (columns, at, &region, FALSE);
  if (next.group == at.group && next.line == at.line)
    sq_pages_break (columns->pages);
  else
    {
      region.top_mm = sq_pages_block (columns->pages, region.height_mm, 0).top_mm;
      set_region (columns, at, &region, TRUE);
    }
  return next;
}

void
sq_columns_end (SqColumns *columns)
{
  Cursor at = set_beside (columns);

  sq_pages_gap (columns->pages, GROUP_GAP_MM);
  while (at.group < columns->groups->len)
    at = set_below (columns, at);
  g_array_unref (columns->groups);
  g_free (columns);
}
