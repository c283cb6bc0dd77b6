/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-kinds.h"

#include <string.h>

/* ---- equal items --------------------------------------------------------------------------- */

static gboolean
same_rings (const SqLayItem *a, SqGrid corner_a, const SqLayItem *b, SqGrid corner_b)
{
  for (guint i = 0; i < a->n_rings; i++)
    {
      if (a->rings[i].n != b->rings[i].n)
        return FALSE;
      for (guint k = 0; k < a->rings[i].n; k++)
        {
          SqGrid p = a->rings[i].points[k], q = b->rings[i].points[k];
          if ((gint64) p.x - corner_a.x != (gint64) q.x - corner_b.x
              || (gint64) p.y - corner_a.y != (gint64) q.y - corner_b.y)
            return FALSE;
        }
    }
  return TRUE;
}

static gboolean
same_phase (const SqGridPhase *a, SqGrid corner_a, const SqGridPhase *b, SqGrid corner_b)
{
  if (a->repeat_along_nm != b->repeat_along_nm || a->repeat_across_nm != b->repeat_across_nm)
    return FALSE;
  if (a->repeat_along_nm == 0 && a->repeat_across_nm == 0)
    return TRUE;
  return a->along_nm == b->along_nm && a->across_nm == b->across_nm && a->drop_nm == b->drop_nm
         && (gint64) a->anchor.x - corner_a.x == (gint64) b->anchor.x - corner_b.x
         && (gint64) a->anchor.y - corner_a.y == (gint64) b->anchor.y - corner_b.y;
}

static gboolean
same_size (const SqGridBox *a, const SqGridBox *b)
{
  return (gint64) a->max.x - a->min.x == (gint64) b->max.x - b->min.x
         && (gint64) a->max.y - a->min.y == (gint64) b->max.y - b->min.y;
}

static gboolean
same_poses (const SqLayItem *a, const SqLayItem *b)
{
  if (a->n_poses != b->n_poses)
    return FALSE;
  for (guint i = 0; i < a->n_poses; i++)
    if (!sq_grid_pose_equal (a->poses[i], b->poses[i]))
      return FALSE;
  return TRUE;
}

static gboolean
has_quarters_alone (const SqLayItem *item)
{
  for (guint i = 0; i < item->n_poses; i++)
    if (item->poses[i].turn % SQ_GRID_QUARTER != 0)
      return FALSE;
  return TRUE;
}

static gboolean
are_equal (const SqLayItem *a, const SqLayItem *b)
{
  SqGrid corner_a = a->box.min, corner_b = b->box.min;

  /* Turned by no quarters, corners are rounded where they lie. */
  if (!has_quarters_alone (a) && (corner_a.x != corner_b.x || corner_a.y != corner_b.y))
    return FALSE;
  return same_poses (a, b) && a->gap == b->gap && a->priority == b->priority
         && a->crosses == b->crosses && a->n_rings == b->n_rings && same_size (&a->box, &b->box)
         && same_phase (&a->phase, corner_a, &b->phase, corner_b)
         && same_rings (a, corner_a, b, corner_b);
}

/* The same for equal items. */
static guint64
key_of (const SqLayItem *item)
{
  const SqGridBox *box = &item->box;
  guint64 key = item->n_poses;
  const gint64 numbers[] = { item->n_rings, item->rings[0].n, (gint64) box->max.x - box->min.x,
                             (gint64) box->max.y - box->min.y };

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    key = (key ^ (guint64) numbers[i]) * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);
  return key;
}

/* The kind of @item among those with its key, or G_MAXUINT. */
static guint
find_kind (const SqLayKinds *kinds, const SqLayItem *item, const GArray *same_key)
{
  for (guint i = 0; same_key != NULL && i < same_key->len; i++)
    {
      guint kind = g_array_index (same_key, guint, i);
      if (are_equal (sq_lay_task_item (kinds->task, sq_lay_kind (kinds, kind)->first), item))
        return kind;
    }
  return G_MAXUINT;
}

static guint
add_kind (SqLayKinds *kinds, guint first)
{
  const SqLayItem *item = sq_lay_task_item (kinds->task, first);
  SqLayKind kind = { .first = first,
                     .shapes = g_new (SqLayShape *, item->n_poses),
                     .n_shapes = item->n_poses };

  for (guint i = 0; i < item->n_poses; i++)
    kind.shapes[i] = sq_lay_shape_new (item, item->poses[i]);
  g_array_append_val (kinds->kinds, kind);
  return kinds->kinds->len - 1;
}

static void
clear_kind (gpointer data)
{
  SqLayKind *kind = data;

  for (guint i = 0; i < kind->n_shapes; i++)
    sq_lay_shape_free (kind->shapes[i]);
  g_free (kind->shapes);
}

/* Where the box of @i begins in its own coordinates as its pose number @pose has it. */
static SqGrid
corner_of (const SqLayKinds *kinds, guint i, guint pose)
{
  const SqLayItem *item = sq_lay_task_item (kinds->task, i);

  if (item->poses[pose].turn % SQ_GRID_QUARTER == 0)
    return sq_lay_item_box (item, item->poses[pose]).min;
  return sq_lay_kind (kinds, kinds->kind_of[i])->shapes[pose]->at;
}

SqLaySpot
sq_lay_kinds_spot (const SqLayKinds *kinds, guint i, SqGridPose pose, guint strip, SqGrid at)
{
  guint number = sq_lay_item_pose (sq_lay_task_item (kinds->task, i), pose);
  SqGrid corner = corner_of (kinds, i, number);

  return (SqLaySpot){ kinds->kind_of[i], strip, number, (gint64) at.x + corner.x,
                      (gint64) at.y + corner.y };
}

static void
add_count (SqLayKind *kind, const SqLayItem *item)
{
  if (!item->crosses)
    kind->count = item->demand > G_MAXUINT - kind->count ? G_MAXUINT : kind->count + item->demand;
}

static void
add_pinned (SqLayKinds *kinds)
{
  for (guint i = 0; i < kinds->task->pins->len; i++)
    {
      const SqLayPin *pin = &g_array_index (kinds->task->pins, SqLayPin, i);
      SqLaySpot spot = sq_lay_kinds_spot (kinds, pin->item, pin->pose, pin->strip, pin->at);
      g_array_append_val (kinds->pinned, spot);
      sq_lay_kind (kinds, spot.kind)->count--;
    }
}

SqLayKinds *
sq_lay_kinds_new (const SqLayTask *task)
{
  g_autoptr (GHashTable) by_key = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free,
                                                         (GDestroyNotify) g_array_unref);
  SqLayKinds *kinds = g_new0 (SqLayKinds, 1);

  kinds->task = task;
  kinds->kinds = g_array_new (FALSE, TRUE, sizeof (SqLayKind));
  g_array_set_clear_func (kinds->kinds, clear_kind);
  kinds->pinned = g_array_new (FALSE, FALSE, sizeof (SqLaySpot));
  kinds->kind_of = g_new0 (guint, MAX (task->items->len, 1));
  for (guint i = 0; i < task->items->len; i++)
    {
      const SqLayItem *item = sq_lay_task_item (task, i);
      guint64 key = key_of (item);
      GArray *same_key = g_hash_table_lookup (by_key, &key);
      guint kind = find_kind (kinds, item, same_key);
      if (same_key == NULL)
        {
          same_key = g_array_new (FALSE, FALSE, sizeof (guint));
          g_hash_table_insert (by_key, g_memdup2 (&key, sizeof key), same_key);
        }
      if (kind == G_MAXUINT)
        {
          kind = add_kind (kinds, i);
          g_array_append_val (same_key, kind);
        }
      kinds->kind_of[i] = kind;
      add_count (sq_lay_kind (kinds, kind), item);
    }
  add_pinned (kinds);
  return kinds;
}

void
sq_lay_kinds_free (SqLayKinds *kinds)
{
  g_array_unref (kinds->kinds);
  g_array_unref (kinds->pinned);
  g_free (kinds->kind_of);
  g_free (kinds);
}

/* ---- the lay ------------------------------------------------------------------------------- */

/* @item at @spot, which is of its kind. */
static SqPlaced
placed_at (const SqLayKinds *kinds, guint i, const SqLaySpot *spot)
{
  const SqLayItem *item = sq_lay_task_item (kinds->task, i);
  SqGrid corner = corner_of (kinds, i, spot->pose);

  return (SqPlaced){ .item = i,
                     .tag = item->tag,
                     .strip = spot->strip,
                     .pose = item->poses[spot->pose],
                     .at = { (gint32) (spot->x - corner.x), (gint32) (spot->y - corner.y) } };
}

/* Spots by kind, each kind's in the order of laying: their indexes, and where each kind's begin. */
static guint *
sort_by_kind (const GArray *spots, guint n_kinds, guint **starts)
{
  guint *sorted = g_new (guint, MAX (spots->len, 1));
  g_autofree guint *next = g_new0 (guint, n_kinds + 1);

  *starts = g_new0 (guint, n_kinds + 1);
  for (guint i = 0; i < spots->len; i++)
    (*starts)[g_array_index (spots, SqLaySpot, i).kind + 1]++;
  for (guint i = 0; i < n_kinds; i++)
    (*starts)[i + 1] += (*starts)[i];
  memcpy (next, *starts, (n_kinds + 1) * sizeof (guint));
  for (guint i = 0; i < spots->len; i++)
    sorted[next[g_array_index (spots, SqLaySpot, i).kind]++] = i;
  return sorted;
}

static int
compare_kept (gconstpointer a, gconstpointer b)
{
  const SqLayKept *p = a, *q = b;

  if (p->item != q->item)
    return p->item < q->item ? -1 : 1;
  return (p->copy > q->copy) - (p->copy < q->copy);
}

/* What is pinned, by item, then copy. */
static GArray *
sorted_pins (const SqLayKinds *kinds)
{
  GArray *pins = g_array_new (FALSE, FALSE, sizeof (SqLayKept));

  for (guint i = 0; i < kinds->pinned->len; i++)
    {
      const SqLayPin *pin = &g_array_index (kinds->task->pins, SqLayPin, i);
      SqLayKept pinned = { pin->item, pin->copy, g_array_index (kinds->pinned, SqLaySpot, i) };
      g_array_append_val (pins, pinned);
    }
  g_array_sort (pins, compare_kept);
  return pins;
}

/* Copies that have their places, by item, then copy; next is the first not dealt out. */
typedef struct
{
  GArray *all; /* of SqLayKept */
  guint next;
} Line;

/* Copies dealt out, item by item. */
typedef struct
{
  const SqLayKinds *kinds;
  const GArray *spots;
  guint *sorted, *next, *starts; /* see sort_by_kind */
  Line pins, kept;
  SqLay *lay;
} Dealing;

/* The first in @line, if it is of @item, else NULL. */
static const SqLayKept *
head_of (const Line *line, guint item)
{
  const SqLayKept *head = line->next < line->all->len
                              ? &g_array_index (line->all, SqLayKept, line->next)
                              : NULL;
  return head != NULL && head->item == item ? head : NULL;
}

static void
add_placed (Dealing *dealing, const SqLaySpot *spot, guint item, guint copy)
{
  gint64 end = spot->x + sq_lay_kind (dealing->kinds, spot->kind)->shapes[spot->pose]->length;
  gint32 *length = &sq_lay_length (dealing->lay, spot->strip);
  SqPlaced placed = placed_at (dealing->kinds, item, spot);

  placed.copy = copy;
  g_array_append_val (dealing->lay->placed, placed);
  *length = MAX (*length, (gint32) end);
}

/* Lays copy number *copy of item @i, or a pinned one after it; FALSE where there is nothing left for
 * it. */
static gboolean
deal_one (Dealing *dealing, guint i, guint *copy)
{
  const SqLayKept *pin = head_of (&dealing->pins, i), *kept = head_of (&dealing->kept, i);
  guint kind = dealing->kinds->kind_of[i], *next = &dealing->next[kind];
  gboolean has_spot = *next < dealing->starts[kind + 1];

  if (pin != NULL && (pin->copy <= *copy || (kept == NULL && !has_spot)))
    {
      *copy = pin->copy;
      dealing->pins.next++;
      add_placed (dealing, &pin->spot, i, *copy);
    }
  else if (kept != NULL && (kept->copy <= *copy || !has_spot))
    {
      dealing->kept.next++;
      add_placed (dealing, &kept->spot, i, *copy);
    }
  else if (has_spot)
    {
      guint spot = dealing->sorted[(*next)++];
      add_placed (dealing, &g_array_index (dealing->spots, SqLaySpot, spot), i, *copy);
    }
  else
    return FALSE;
  return TRUE;
}

static void
deal (Dealing *dealing, guint i, const SqUnlaidWhy *why_of_kind)
{
  const SqLayItem *item = sq_lay_task_item (dealing->kinds->task, i);
  guint laid = 0;

  for (guint copy = 0; copy < item->demand && deal_one (dealing, i, &copy); copy++)
    laid++;
  SqUnlaid unlaid = { i, item->demand - laid,
                      item->crosses ? SQ_UNLAID_CROSSES : why_of_kind[dealing->kinds->kind_of[i]] };
  if (unlaid.count > 0)
    g_array_append_val (dealing->lay->unlaid, unlaid);
}

SqLay *
sq_lay_kinds_to_lay_with (const SqLayKinds *kinds, const GArray *kept, const GArray *spots,
                          const SqUnlaidWhy *why_of_kind)
{
  g_autofree guint *starts = NULL;
  g_autofree guint *sorted = sort_by_kind (spots, kinds->kinds->len, &starts);
  g_autofree guint *next = g_memdup2 (starts, (kinds->kinds->len + 1) * sizeof (guint));
  g_autoptr (GArray) pins = sorted_pins (kinds);
  g_autoptr (GArray) line = g_array_copy ((GArray *) kept);
  Dealing dealing = { .kinds = kinds,
                      .spots = spots,
                      .sorted = sorted,
                      .next = next,
                      .starts = starts,
                      .pins = { pins, 0 },
                      .kept = { line, 0 },
                      .lay = sq_lay_new (kinds->task) };

  g_array_sort (line, compare_kept);
  for (guint i = 0; i < kinds->task->items->len; i++)
    deal (&dealing, i, why_of_kind);
  return dealing.lay;
}

SqLay *
sq_lay_kinds_to_lay (const SqLayKinds *kinds, const GArray *spots, const SqUnlaidWhy *why_of_kind)
{
  g_autoptr (GArray) none = g_array_new (FALSE, FALSE, sizeof (SqLayKept));
  return sq_lay_kinds_to_lay_with (kinds, none, spots, why_of_kind);
}
