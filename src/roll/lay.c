/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay.h"

#include "roll/lay-cuts.h"
#include "roll/lay-piece.h"

SqLay *
sq_lay_new (const SqLayTask *task)
{
  SqLay *lay = g_new0 (SqLay, 1);

  lay->ref_count = 1;
  lay->placed = g_array_new (FALSE, TRUE, sizeof (SqPlaced));
  lay->unlaid = g_array_new (FALSE, TRUE, sizeof (SqUnlaid));
  lay->lengths = g_array_new (FALSE, TRUE, sizeof (gint32));
  g_array_set_size (lay->lengths, task->strips->len);
  lay->task_digest = task->digest;
  return lay;
}

SqLay *
sq_lay_ref (const SqLay *lay)
{
  SqLay *l = (SqLay *) lay;
  g_atomic_int_inc (&l->ref_count);
  return l;
}

void
sq_lay_unref (SqLay *lay)
{
  if (lay == NULL || !g_atomic_int_dec_and_test (&lay->ref_count))
    return;
  g_array_unref (lay->placed);
  g_array_unref (lay->unlaid);
  g_array_unref (lay->lengths);
  g_free (lay);
}

double
sq_lay_area_mm2 (const SqLayTask *task, const SqLay *lay, guint strip)
{
  g_autofree guint *counts = g_new0 (guint, task->items->len);
  double area = 0;

  for (guint i = 0; i < lay->placed->len; i++)
    if (sq_lay_placed (lay, i)->strip == strip)
      counts[sq_lay_placed (lay, i)->item]++;
  for (guint i = 0; i < task->items->len; i++)
    if (counts[i] > 0)
      {
        const SqLayItem *item = sq_lay_task_item (task, i);
        area += counts[i] * sq_grid_rings_area_mm2 (item->rings, item->n_rings);
      }
  return area;
}

double
sq_lay_density (const SqLayTask *task, const SqLay *lay, guint strip)
{
  double length_mm = sq_lay_length (lay, strip) / SQ_GRID_PER_MM;
  double width_mm = sq_lay_task_strip (task, strip)->width / SQ_GRID_PER_MM;

  return length_mm > 0 ? sq_lay_area_mm2 (task, lay, strip) / (length_mm * width_mm) : 0;
}

/* Where a placed piece begins. */
typedef struct
{
  guint placed;
  gint32 x, y;
} Begin;

static int
compare_begins (gconstpointer a, gconstpointer b)
{
  const Begin *one = a, *other = b;

  if (one->x != other->x)
    return one->x < other->x ? -1 : 1;
  if (one->y != other->y)
    return one->y < other->y ? -1 : 1;
  return one->placed < other->placed ? -1 : 1;
}

GArray *
sq_lay_along (const SqLayTask *task, const SqLay *lay, guint strip)
{
  g_autoptr (GArray) begins = g_array_new (FALSE, FALSE, sizeof (Begin));
  GArray *along = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      SqGridBox box = sq_lay_item_box (sq_lay_task_item (task, placed->item), placed->pose);
      Begin begin = { i, placed->at.x + box.min.x, placed->at.y + box.min.y };
      if (placed->strip == strip)
        g_array_append_val (begins, begin);
    }
  g_array_sort (begins, compare_begins);
  for (guint i = 0; i < begins->len; i++)
    g_array_append_val (along, g_array_index (begins, Begin, i).placed);
  return along;
}

/* ---- looking it over ----------------------------------------------------------------------- */

/* Each copy once and with its tag, the first ones laid and the rest told as unlaid; only a pinned
 * one may lie where one before it does not. */
static gboolean
counts_are_right (const SqLayTask *task, const SqLay *lay, guint *at)
{
  g_autofree guint64 *counts = g_new0 (guint64, MAX (task->items->len, 1));
  g_autofree guint64 *next = g_new0 (guint64, MAX (task->items->len, 1));

  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      *at = i;
      if (placed->item >= task->items->len || placed->copy < next[placed->item]
          || (placed->copy > next[placed->item]
              && !sq_lay_task_is_pinned (task, placed->item, placed->copy))
          || placed->copy >= sq_lay_task_item (task, placed->item)->demand
          || placed->tag != sq_lay_task_item (task, placed->item)->tag)
        return FALSE;
      next[placed->item] = (guint64) placed->copy + 1;
      counts[placed->item]++;
    }
  for (guint i = 0; i < lay->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (lay->unlaid, SqUnlaid, i);
      if (unlaid->item >= task->items->len)
        return FALSE;
      counts[unlaid->item] += unlaid->count;
    }
  for (guint i = 0; i < task->items->len; i++)
    if (counts[i] != sq_lay_task_item (task, i)->demand)
      return FALSE;
  return TRUE;
}

/* The first pose of each item among all. */
typedef struct
{
  SqLayPiece *pieces;
  guint *first;
} Poses;

static const SqLayPiece *
piece_of (const SqLayTask *task, Poses *all, const SqPlaced *placed)
{
  const SqLayItem *item = sq_lay_task_item (task, placed->item);
  SqLayPiece *piece
      = &all->pieces[all->first[placed->item] + sq_lay_item_pose (item, placed->pose)];

  if (piece->trapezoids == NULL)
    *piece = sq_lay_piece (item, placed->pose);
  return piece;
}

static SqLayFault
fault_of_one (const SqLayTask *task, const SqLay *lay, const SqPlaced *placed, Poses *all)
{
  const SqLayItem *item = sq_lay_task_item (task, placed->item);

  if (sq_lay_item_pose (item, placed->pose) == G_MAXUINT)
    return SQ_LAY_POSE;
  if (placed->strip >= task->strips->len)
    return SQ_LAY_OUTSIDE;

  const SqLayStrip *strip = sq_lay_task_strip (task, placed->strip);
  const SqLayPiece *piece = piece_of (task, all, placed);
  gint32 length = sq_lay_length (lay, placed->strip);
  if ((gint64) piece->box.max.x + placed->at.x > length || length > sq_lay_strip_end (strip))
    return SQ_LAY_OUTSIDE;
  return sq_lay_piece_fault (piece, item, placed->pose, placed->at, strip);
}

static gboolean
is_kept_to (const SqLay *lay, const SqLayPin *pin, guint *at)
{
  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      *at = i;
      if (placed->item == pin->item && placed->copy == pin->copy)
        return placed->strip == pin->strip && placed->at.x == pin->at.x && placed->at.y == pin->at.y
               && sq_grid_pose_equal (placed->pose, pin->pose);
    }
  return FALSE;
}

/* A piece's place on its strip, for going along it. */
typedef struct
{
  guint placed, strip;
  gint64 from, to;
} Reach;

static int
compare_reaches (gconstpointer a, gconstpointer b)
{
  const Reach *x = a, *y = b;

  if (x->strip != y->strip)
    return x->strip < y->strip ? -1 : 1;
  if (x->from != y->from)
    return x->from < y->from ? -1 : 1;
  return (x->placed > y->placed) - (x->placed < y->placed);
}

static gboolean
any_overlap (const SqLayTask *task, const SqLay *lay, Poses *all, guint *at)
{
  g_autoptr (GArray) reaches = g_array_new (FALSE, FALSE, sizeof (Reach));

  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      const SqLayPiece *piece = piece_of (task, all, placed);
      Reach reach = { i, placed->strip, (gint64) piece->keep_box.min.x + placed->at.x,
                      (gint64) piece->keep_box.max.x + placed->at.x };
      g_array_append_val (reaches, reach);
    }
  g_array_sort (reaches, compare_reaches);
  for (guint i = 0; i < reaches->len; i++)
    for (guint k = i + 1; k < reaches->len; k++)
      {
        const Reach *a = &g_array_index (reaches, Reach, i);
        const Reach *b = &g_array_index (reaches, Reach, k);
        const SqPlaced *pa = sq_lay_placed (lay, a->placed), *pb = sq_lay_placed (lay, b->placed);
        if (b->strip != a->strip || b->from >= a->to)
          break;
        if (sq_lay_pieces_overlap (piece_of (task, all, pa), pa->at, piece_of (task, all, pb),
                                   pb->at))
          {
            *at = b->placed;
            return TRUE;
          }
      }
  return FALSE;
}

static SqLayFault
find_fault (const SqLayTask *task, const SqLay *lay, Poses *all, guint *at)
{
  if (lay->task_digest != task->digest || lay->lengths->len != task->strips->len)
    return SQ_LAY_OTHER_TASK;
  if (!counts_are_right (task, lay, at))
    return SQ_LAY_COUNT;
  for (guint i = 0; i < lay->placed->len; i++)
    {
      SqLayFault fault = fault_of_one (task, lay, sq_lay_placed (lay, i), all);
      *at = i;
      if (fault != SQ_LAY_RIGHT)
        return fault;
    }
  for (guint i = 0; i < task->pins->len; i++)
    if (!is_kept_to (lay, &g_array_index (task->pins, SqLayPin, i), at))
      return SQ_LAY_PIN;
  if (any_overlap (task, lay, all, at))
    return SQ_LAY_OVERLAP;
  return task->straight && !sq_lay_is_straight (task, lay, NULL, NULL) ? SQ_LAY_CUTS : SQ_LAY_RIGHT;
}

SqLayFault
sq_lay_fault (const SqLayTask *task, const SqLay *lay, guint *at)
{
  g_autofree guint *first = g_new0 (guint, task->items->len + 1);
  for (guint i = 0; i < task->items->len; i++)
    first[i + 1] = first[i] + sq_lay_task_item (task, i)->n_poses;
  guint n = first[task->items->len];
  g_autofree SqLayPiece *pieces = g_new0 (SqLayPiece, MAX (n, 1));
  Poses all = { pieces, first };
  guint nowhere = 0;
  SqLayFault fault = find_fault (task, lay, &all, at != NULL ? at : &nowhere);

  for (guint i = 0; i < n; i++)
    sq_lay_piece_clear (&pieces[i]);
  return fault;
}
