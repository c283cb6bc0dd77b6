/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-task.h"

static void
clear_item (gpointer data)
{
  SqLayItem *item = data;

  for (guint i = 0; i < item->n_rings; i++)
    g_free (item->rings[i].points);
  g_free (item->rings);
}

SqLayTask *
sq_lay_task_new (gint32 width)
{
  SqLayTask *task = g_new0 (SqLayTask, 1);

  task->ref_count = 1;
  task->width = width;
  task->items = g_array_new (FALSE, TRUE, sizeof (SqLayItem));
  g_array_set_clear_func (task->items, clear_item);
  return task;
}

static gint32
to_grid (double mm)
{
  return (gint32) lround (CLAMP (mm, -500000.0, 500000.0) * SQ_GRID_PER_MM);
}

static SqGridRing
to_ring (const SqPath *path, double turn_rad)
{
  g_autoptr (SqPath) turned = sq_path_moved (path, turn_rad, sq_point (0, 0));
  g_autoptr (SqPath) flat = sq_path_flattened (turned, SQ_GRID_FLATTEN_MM);
  const SqNode *nodes = sq_path_nodes (flat);
  guint n = sq_path_n_nodes (flat);
  SqGridRing ring = { g_new (SqGrid, n), 0 };

  for (guint i = 0; i < n; i++)
    {
      SqGrid p = { to_grid (nodes[i].at.x), to_grid (nodes[i].at.y) };
      if (ring.n > 0 && ring.points[ring.n - 1].x == p.x && ring.points[ring.n - 1].y == p.y)
        continue;
      ring.points[ring.n++] = p;
    }
  return ring;
}

void
sq_lay_task_add (SqLayTask *task, const SqLayItemSpec *spec)
{
  g_return_if_fail (task->digest == 0 && spec->rings->len > 0);

  SqPoint anchor = sq_turned (spec->anchor, spec->turn_rad);
  SqLayItem item = {
    .rings = g_new (SqGridRing, spec->rings->len),
    .n_rings = spec->rings->len,
    .turns = spec->turns,
    .phase = { .anchor = { to_grid (anchor.x), to_grid (anchor.y) },
               .along = to_grid (spec->along_mm),
               .across = to_grid (spec->across_mm),
               .repeat_along = to_grid (spec->repeat_along_mm),
               .repeat_across = to_grid (spec->repeat_across_mm) },
    .demand = spec->demand,
    .tag = spec->tag,
  };
  for (guint i = 0; i < spec->rings->len; i++)
    item.rings[i] = to_ring (g_ptr_array_index (spec->rings, i), spec->turn_rad);
  g_array_append_val (task->items, item);
}

static void
digest_words (guint64 *state, const gint32 *words, gsize n)
{
  for (gsize i = 0; i < n; i++)
    {
      *state = (*state ^ (guint32) words[i]) * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);
      *state ^= *state >> 32;
    }
}

void
sq_lay_task_seal (SqLayTask *task)
{
  guint64 state = 1;

  digest_words (&state, &task->width, 1);
  for (guint i = 0; i < task->items->len; i++)
    {
      const SqLayItem *item = &g_array_index (task->items, SqLayItem, i);
      const gint32 head[] = { (gint32) item->turns,      (gint32) item->demand,
                              (gint32) item->tag,        item->phase.anchor.x,
                              item->phase.anchor.y,      item->phase.along,
                              item->phase.across,        item->phase.repeat_along,
                              item->phase.repeat_across, (gint32) item->n_rings };
      digest_words (&state, head, G_N_ELEMENTS (head));
      for (guint k = 0; k < item->n_rings; k++)
        digest_words (&state, &item->rings[k].points[0].x, 2 * (gsize) item->rings[k].n);
    }
  task->digest = state != 0 ? state : 1;
}

SqLayTask *
sq_lay_task_ref (const SqLayTask *task)
{
  SqLayTask *t = (SqLayTask *) task;
  g_atomic_int_inc (&t->ref_count);
  return t;
}

void
sq_lay_task_unref (SqLayTask *task)
{
  if (task == NULL || !g_atomic_int_dec_and_test (&task->ref_count))
    return;
  g_array_unref (task->items);
  g_free (task);
}
