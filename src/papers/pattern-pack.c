/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern-pack.h"

#include "roll/lay-run.h"

/* A lay goes along x from its strip's start; on paper that is downwards from the sheet's top. */
#define QUARTERS_DOWN 3

static SqBox
box_of (const GPtrArray *rings)
{
  return sq_path_box (g_ptr_array_index (rings, 0));
}

static double
area_mm2 (const GArray *items)
{
  double area = 0;

  for (guint i = 0; i < items->len; i++)
    {
      SqBox box = box_of (g_array_index (items, SqToPack, i).rings);
      area += (box.max.x - box.min.x + SQ_PATTERN_GAP_MM)
              * (box.max.y - box.min.y + SQ_PATTERN_GAP_MM);
    }
  return area;
}

static SqLayTask *
task_with (const GArray *items, SqVector room_mm, guint n_sheets)
{
  SqLayTask *task = sq_lay_task_new (sq_grid_from_mm (SQ_PATTERN_GAP_MM));
  SqLayStrip sheet = { .kind = SQ_STRIP_SHEET,
                       .width = sq_grid_from_mm (room_mm.x),
                       .length = sq_grid_from_mm (room_mm.y) };

  for (guint i = 0; i < n_sheets; i++)
    sq_lay_task_add_strip (task, &sheet);
  for (guint i = 0; i < items->len; i++)
    {
      SqLayItemSpec spec = {
        .rings = g_array_index (items, SqToPack, i).rings,
        .turns = SQ_LAY_UPRIGHT | SQ_LAY_QUARTER | SQ_LAY_HALF | SQ_LAY_THREE_QUARTERS,
        .demand = 1,
        .tag = i,
      };
      sq_lay_task_add (task, &spec);
    }
  sq_lay_task_seal (task);
  return task;
}

static gboolean
is_full (const SqLay *lay)
{
  for (guint i = 0; i < lay->unlaid->len; i++)
    if (g_array_index (lay->unlaid, SqUnlaid, i).why == SQ_UNLAID_NO_ROOM)
      return TRUE;
  return FALSE;
}

/* A lay fills one sheet after the other, so there may be more than are needed. */
static SqLay *
run (const GArray *items, SqVector room_mm)
{
  const SqLayBudget first = { .seed = 1, .steps = 0 };
  guint least = (guint) ceil (area_mm2 (items) / (room_mm.x * room_mm.y));
  guint n = MIN (items->len, least + least / 2 + 1);

  for (;;)
    {
      g_autoptr (SqLayTask) task = task_with (items, room_mm, n);
      SqLay *lay = sq_lay_run (task, NULL, &first, NULL);
      if (!is_full (lay) || n >= items->len)
        return lay;
      sq_lay_unref (lay);
      n = MIN (items->len, 2 * n);
    }
}

static int
by_sheet (gconstpointer a, gconstpointer b)
{
  const SqPacked *x = a, *y = b;

  if (x->sheet != y->sheet)
    return x->sheet < y->sheet ? -1 : 1;
  return x->item < y->item ? -1 : x->item > y->item;
}

GArray *
sq_pattern_pack (const GArray *items, SqVector room_mm)
{
  GArray *packed = g_array_new (FALSE, FALSE, sizeof (SqPacked));

  if (items->len == 0)
    return packed;
  g_autoptr (SqLay) lay = run (items, room_mm);
  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      SqPacked own = {
        .item = g_array_index (items, SqToPack, placed->tag).item,
        .sheet = placed->strip,
        .quarters = ((guint) placed->pose.turn / SQ_GRID_QUARTER + QUARTERS_DOWN) % 4,
        .at = sq_point (placed->at.y / SQ_GRID_PER_MM, -placed->at.x / SQ_GRID_PER_MM),
      };
      g_array_append_val (packed, own);
    }
  g_array_sort (packed, by_sheet);
  return packed;
}
