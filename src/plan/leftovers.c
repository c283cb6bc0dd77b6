/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/leftovers.h"

#include "roll/lay-leftovers.h"

/* What is worth keeping at least, in µm; common practice, no source. */
#define INCH 25400
static const SqLayLeast least[] = {
  { 12 * INCH, 18 * INCH },
  { 18 * INCH, 12 * INCH },
  { 36 * INCH, 4 * INCH },
};

/* How far along a strip there surely is cloth. */
static gint32
end_of (const SqClothLay *cloth, guint strip)
{
  const SqPurchase *p = &cloth->purchase;
  const SqLayStrip *own = sq_lay_task_strip (cloth->task, strip);

  if (own->kind != SQ_STRIP_ROLL)
    return own->length;
  /* what is bought over all rolls is not told of each */
  if (p->bolts != 1)
    return sq_lay_length (cloth->lay, strip);
  return MAX (sq_grid_from_mm (p->buy_mm - p->squaring_mm - p->pattern_mm),
              sq_lay_length (cloth->lay, strip));
}

static int
compare_sizes (gconstpointer a, gconstpointer b)
{
  const SqLeftover *x = a, *y = b;
  double more = y->along_mm * y->across_mm - x->along_mm * x->across_mm;

  if (more != 0)
    return more > 0 ? 1 : -1;
  if (x->strip != y->strip)
    return x->strip < y->strip ? -1 : 1;
  return (x->x_mm > y->x_mm) - (x->x_mm < y->x_mm);
}

static void
add_of_strip (GArray *all, const SqClothLay *cloth, guint strip)
{
  g_autoptr (GArray) boxes = sq_lay_leftovers (cloth->task, cloth->lay, strip,
                                               end_of (cloth, strip), least, G_N_ELEMENTS (least));

  for (guint i = 0; i < boxes->len; i++)
    {
      const SqGridBox *box = &g_array_index (boxes, SqGridBox, i);
      SqLeftover left = { .strip = strip,
                          .x_mm = box->min.x / SQ_GRID_PER_MM,
                          .y_mm = box->min.y / SQ_GRID_PER_MM,
                          .along_mm = (box->max.x - box->min.x) / SQ_GRID_PER_MM,
                          .across_mm = (box->max.y - box->min.y) / SQ_GRID_PER_MM };
      g_array_append_val (all, left);
    }
}

GArray *
sq_lays_leftovers (const SqClothLay *cloth)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (SqLeftover));

  for (guint i = 0; i < cloth->task->strips->len; i++)
    if (sq_lay_length (cloth->lay, i) > 0)
      add_of_strip (all, cloth, i);
  g_array_sort (all, compare_sizes);
  return all;
}
