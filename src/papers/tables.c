/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/tables.h"

#include <string.h>

#define ABOVE_MM 5.0 /* the heading; a table that has none */
#define BARE_ABOVE_MM 1.5
#define GAP_MM 4.0
/* No column of words is made narrower. */
#define LEAST_MM 24.0
#define ROW_GAP_MM 0.6
/* A table up to so high is not torn. */
#define MOST_WHOLE_MM 120.0

static const SqType head_type = { 3.1, FALSE, SQ_TONE_DIM };

typedef struct
{
  SqPages *pages;
  const SqSheetTable *table;
  guint n;
  double *widths_mm;
} Grid;

static double
cell_width_mm (const char *text, const SqType *type)
{
  return text[0] != '\0' ? sq_text_width_em (text, type->bold) * type->em_mm + 0.1 : 0;
}

static double
whole_width_mm (const Grid *grid)
{
  double whole = 0;

  for (guint i = 0; i < grid->n; i++)
    whole += grid->widths_mm[i] + (grid->widths_mm[i] > 0 ? GAP_MM : 0);
  return whole - GAP_MM;
}

/* A column that says nothing has no width, whatever its head. */
static void
measure (Grid *grid)
{
  for (guint i = 0; i < grid->n; i++)
    {
      double *width_mm = &grid->widths_mm[i];
      for (guint row = 0; row < grid->table->rows->len; row++)
        *width_mm = fmax (*width_mm,
                          cell_width_mm (sq_sheet_cell (grid->table, row, i), &sq_type_text));
      if (grid->table->heads != NULL && *width_mm > 0)
        *width_mm = fmax (*width_mm, cell_width_mm (grid->table->heads[i], &head_type));
    }
}

/* Takes from the widest column of words until all of them fit. */
static void
narrow (Grid *grid, double most_mm)
{
  while (whole_width_mm (grid) > most_mm)
    {
      guint widest = 0;
      for (guint i = 1; i < grid->n; i++)
        if (grid->widths_mm[i] > grid->widths_mm[widest])
          widest = i;
      double less_mm = fmin (whole_width_mm (grid) - most_mm, 2);
      grid->widths_mm[widest] = fmax (grid->widths_mm[widest] - less_mm, 1);
      if (grid->widths_mm[widest] < LEAST_MM)
        break;
    }
}

static double
row_height_mm (const Grid *grid, char *const *cells, const SqType *type)
{
  double height_mm = sq_type_height_mm (type, 1);

  for (guint i = 0; i < grid->n; i++)
    if (cells[i][0] != '\0' && grid->widths_mm[i] > 0)
      height_mm = fmax (height_mm, sq_paragraph_height_mm (grid->widths_mm[i], type, cells[i]));
  return height_mm;
}

static void
add_row (Grid *grid, char *const *cells, const SqType *type, double with_mm)
{
  SqColumn column = sq_pages_block (grid->pages, row_height_mm (grid, cells, type) + ROW_GAP_MM,
                                    with_mm);
  SqSceneBuilder *scene = sq_pages_scene (grid->pages);

  for (guint i = 0; i < grid->n; i++)
    {
      column.width_mm = grid->widths_mm[i];
      if (column.width_mm <= 0)
        continue;
      if (grid->table->aligns[i] == 'r')
        sq_set_line (scene, &column, SQ_ALIGN_END, type, cells[i]);
      else
        sq_set_paragraph (scene, &column, type, cells[i]);
      column.left_mm += column.width_mm + GAP_MM;
    }
}

static double
table_height_mm (const Grid *grid)
{
  double height_mm = grid->table->heads != NULL ? sq_type_height_mm (&head_type, 1) + ROW_GAP_MM
                                                : 0;

  for (guint i = 0; i < grid->table->rows->len; i++)
    height_mm += row_height_mm (grid, g_ptr_array_index (grid->table->rows, i), &sq_type_text)
                 + ROW_GAP_MM;
  return height_mm;
}

/* Columns as wide as they become in @pages; *@grid is filled, its widths are yours. */
static void
grid_init (Grid *grid, SqPages *pages, const SqSheetTable *table)
{
  SqBox area = sq_pages_area (pages);

  *grid = (Grid){ pages, table, (guint) strlen (table->aligns), NULL };
  grid->widths_mm = g_new0 (double, grid->n);
  measure (grid);
  narrow (grid, area.max.x - area.min.x);
}

/* The heading and what is free above it. */
static double
heading_height_mm (const SqSheetTable *table)
{
  return table->heading[0] != '\0' ? ABOVE_MM + sq_type_height_mm (&sq_type_heading, 1) + 1
                                   : BARE_ABOVE_MM;
}

double
sq_pages_table_height_mm (SqPages *pages, const SqSheetTable *table)
{
  Grid grid;

  if (table->rows->len == 0)
    return 0;
  grid_init (&grid, pages, table);
  double height_mm = heading_height_mm (table) + table_height_mm (&grid);
  g_free (grid.widths_mm);
  return height_mm;
}

void
sq_pages_table (SqPages *pages, const SqSheetTable *table)
{
  Grid grid;

  if (table->rows->len == 0)
    return;
  grid_init (&grid, pages, table);
  sq_pages_gap (pages, table->heading[0] != '\0' ? ABOVE_MM : BARE_ABOVE_MM);
  if (table->heading[0] != '\0')
    sq_pages_heading (pages, table->heading, fmin (table_height_mm (&grid), MOST_WHOLE_MM));
  if (table->heads != NULL)
    add_row (&grid, table->heads, &head_type,
             row_height_mm (&grid, g_ptr_array_index (table->rows, 0), &sq_type_text) + ROW_GAP_MM);
  for (guint i = 0; i < table->rows->len; i++)
    {
      char *const *row = g_ptr_array_index (table->rows, i);
      double height_mm = row_height_mm (&grid, row, &sq_type_text) + ROW_GAP_MM;
      if (table->heads != NULL && height_mm > sq_pages_room_mm (pages))
        {
          sq_pages_break (pages); /* it goes on under its heads */
          add_row (&grid, table->heads, &head_type, 0);
        }
      add_row (&grid, row, &sq_type_text, 0);
    }
  g_free (grid.widths_mm);
}
