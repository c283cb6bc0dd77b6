/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-order.h"

/* Pieces of a batch: each is tried against all others of its batch. Large batches take less cloth;
 * the time for one grows with its pieces and with how many of them differ. */
#define BATCH 96
#define LARGE_BATCH 192

/* Up to so many pieces or kinds there is time for large ones. */
#define FEW_PIECES 1000
#define FEW_KINDS 64

/* ---- by priority --------------------------------------------------------------------------- */

static gboolean
all_end (const SqLayTask *task)
{
  for (guint i = 0; i < task->strips->len; i++)
    if (sq_lay_task_strip (task, i)->length == 0)
      return FALSE;
  return TRUE;
}

/* The level of each kind: its priority, or the same of all where there is room for all. */
static gint *
levels_new (const SqLayKinds *kinds)
{
  gint *levels = g_new0 (gint, MAX (kinds->kinds->len, 1));

  if (all_end (kinds->task))
    for (guint i = 0; i < kinds->kinds->len; i++)
      levels[i] = sq_lay_task_item (kinds->task, sq_lay_kind (kinds, i)->first)->priority;
  return levels;
}

/* ---- by size ------------------------------------------------------------------------------- */

typedef struct
{
  guint kind;
  gint level;
  gint64 size, area;
} Sized;

/* As it lies in the first pose it may take. */
static gint64
size_of (const SqLayKind *kind, SqLaySort sort)
{
  gint64 length = kind->shapes[0]->length, width = kind->shapes[0]->width;
  switch (sort)
    {
    case SQ_LAY_BY_REACH:
      return (length + width) * MAX (length, width);
    case SQ_LAY_BY_AREA:
      return length * width;
    case SQ_LAY_BY_WIDTH:
      return width;
    case SQ_LAY_BY_LENGTH:
      return length;
    case SQ_LAY_BY_GIRTH:
      break;
    }
  return length + width;
}

static int
compare_sized (gconstpointer a, gconstpointer b)
{
  const Sized *x = a, *y = b;

  if (x->level != y->level)
    return x->level < y->level ? -1 : 1;
  if (x->size != y->size)
    return x->size > y->size ? -1 : 1;
  if (x->area != y->area)
    return x->area > y->area ? -1 : 1;
  return (x->kind > y->kind) - (x->kind < y->kind);
}

static GArray *
sorted_kinds (const SqLayKinds *kinds, SqLaySort sort)
{
  g_autofree gint *levels = levels_new (kinds);
  GArray *sorted = g_array_new (FALSE, FALSE, sizeof (Sized));

  for (guint i = 0; i < kinds->kinds->len; i++)
    {
      const SqLayKind *kind = sq_lay_kind (kinds, i);
      Sized sized = { i, levels[i], size_of (kind, sort), size_of (kind, SQ_LAY_BY_AREA) };
      g_array_append_val (sorted, sized);
    }
  g_array_sort (sorted, compare_sized);
  return sorted;
}

/* How many of the numbers from … to − 1 leave @rest when divided by @by. */
static guint64
count_dealt (guint64 from, guint64 to, guint64 rest, guint64 by)
{
  return (to + by - 1 - rest) / by - (from + by - 1 - rest) / by;
}

guint
sq_lay_n_pieces (const SqLayKinds *kinds)
{
  guint64 total = 0;

  for (guint i = 0; i < kinds->kinds->len; i++)
    total += sq_lay_kind (kinds, i)->count;
  return (guint) MIN (total, SQ_LAY_MOST_PIECES);
}

static guint
batch_size (const SqLayKinds *kinds)
{
  gboolean few = sq_lay_n_pieces (kinds) <= FEW_PIECES || kinds->kinds->len <= FEW_KINDS;
  return few ? LARGE_BATCH : BATCH;
}

/* By reach it takes a few hundredths less cloth, but longer, which counts where there is much. */
SqLaySort
sq_lay_sort_first (const SqLayKinds *kinds)
{
  return sq_lay_n_pieces (kinds) <= FEW_PIECES ? SQ_LAY_BY_REACH : SQ_LAY_BY_AREA;
}

/* Deals the kinds of one level, from … to − 1 of @sorted, out to batches; *n_pieces, how many there
 * are in all, grows up to SQ_LAY_MOST_PIECES. */
static void
add_level (GArray *order, const SqLayKinds *kinds, const GArray *sorted, guint from, guint to,
           guint64 *n_pieces)
{
  guint64 size = batch_size (kinds), total = 0;

  for (guint i = from; i < to; i++)
    total += sq_lay_kind (kinds, g_array_index (sorted, Sized, i).kind)->count;
  total = MIN (total, SQ_LAY_MOST_PIECES - *n_pieces);
  *n_pieces += total;
  guint64 n_batches = (total + size - 1) / size;
  for (guint64 batch = 0; batch < n_batches; batch++)
    {
      gboolean starts = n_batches > 1 || order->len == 0;
      guint64 begin = 0, end;
      for (guint i = from; i < to && begin < total; i++, begin = end)
        {
          const Sized *sized = &g_array_index (sorted, Sized, i);
          end = MIN (begin + sq_lay_kind (kinds, sized->kind)->count, total);
          guint count = (guint) count_dealt (begin, end, batch, n_batches);
          SqLayRun run = { sized->kind, count, starts, sized->level };
          if (run.count == 0)
            continue;
          g_array_append_val (order, run);
          starts = FALSE;
        }
    }
}

GArray *
sq_lay_order_new (const SqLayKinds *kinds, SqLaySort sort)
{
  g_autoptr (GArray) sorted = sorted_kinds (kinds, sort);
  GArray *order = g_array_new (FALSE, FALSE, sizeof (SqLayRun));
  guint64 n_pieces = 0;

  for (guint from = 0, to; from < sorted->len; from = to)
    {
      gint level = g_array_index (sorted, Sized, from).level;
      for (to = from; to < sorted->len && g_array_index (sorted, Sized, to).level == level;)
        to++;
      add_level (order, kinds, sorted, from, to, &n_pieces);
    }
  return order;
}

/* ---- as a lay has it ----------------------------------------------------------------------- */

typedef struct
{
  gint level;
  guint kind, count, strip; /* strip: G_MAXUINT of what does not lie, in the order of x */
  gint64 x, y;
} Lying;

static int
compare_lying (gconstpointer a, gconstpointer b)
{
  const Lying *p = a, *q = b;

  if (p->level != q->level)
    return p->level < q->level ? -1 : 1;
  if (p->strip != q->strip)
    return p->strip < q->strip ? -1 : 1;
  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  if (p->y != q->y)
    return p->y < q->y ? -1 : 1;
  return (p->kind > q->kind) - (p->kind < q->kind);
}

/* The pieces of @lay whose tag an item has. */
static GArray *
lying_pieces (const SqLayKinds *kinds, const SqLay *lay)
{
  const SqLayTask *task = kinds->task;
  g_autoptr (GHashTable) by_tag = sq_lay_task_tags (kinds->task);
  GArray *pieces = g_array_new (FALSE, FALSE, sizeof (Lying));

  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      guint item = GPOINTER_TO_UINT (g_hash_table_lookup (by_tag, GUINT_TO_POINTER (placed->tag)));
      if (item == 0)
        continue;
      guint kind = kinds->kind_of[item - 1];
      guint pose = sq_lay_item_pose (sq_lay_task_item (task, item - 1), placed->pose);
      SqGrid corner = pose != G_MAXUINT ? sq_lay_kind (kinds, kind)->shapes[pose]->at
                                        : (SqGrid){ 0, 0 };
      Lying lying = { .kind = kind,
                      .count = 1,
                      .strip = placed->strip,
                      .x = (gint64) placed->at.x + corner.x,
                      .y = (gint64) placed->at.y + corner.y };
      g_array_append_val (pieces, lying);
    }
  g_array_sort (pieces, compare_lying);
  return pieces;
}

/* Drops what there is more of than of its kind is wanted, and adds what is missing. */
static void
match_counts (const SqLayKinds *kinds, GArray *pieces)
{
  g_autoptr (GArray) sorted = sorted_kinds (kinds, SQ_LAY_BY_AREA);
  g_autofree guint *left = g_new (guint, MAX (kinds->kinds->len, 1));
  guint n = 0;

  for (guint i = 0; i < kinds->kinds->len; i++)
    left[i] = sq_lay_kind (kinds, i)->count;
  for (guint i = 0; i < pieces->len; i++)
    {
      guint kind = g_array_index (pieces, Lying, i).kind;
      if (left[kind] == 0)
        continue;
      left[kind]--;
      g_array_index (pieces, Lying, n++) = g_array_index (pieces, Lying, i);
    }
  g_array_set_size (pieces, n);
  for (guint i = 0; i < sorted->len; i++)
    {
      guint kind = g_array_index (sorted, Sized, i).kind;
      Lying missing = { .kind = kind, .count = left[kind], .strip = G_MAXUINT, .x = i };
      if (missing.count > 0)
        g_array_append_val (pieces, missing);
    }
}

/* Adds @count copies of @kind; a batch begins every @size pieces. */
static void
add_run (GArray *order, guint size, const Lying *lying, guint *n_pieces)
{
  guint count = lying->count;

  while (count > 0 && *n_pieces < SQ_LAY_MOST_PIECES)
    {
      SqLayRun *last = order->len > 0 ? &g_array_index (order, SqLayRun, order->len - 1) : NULL;
      guint room = size - *n_pieces % size;
      guint now = MIN (MIN (count, room), SQ_LAY_MOST_PIECES - *n_pieces);
      SqLayRun run = { lying->kind, now, room == size, lying->level };
      if (last != NULL && last->kind == lying->kind && room < size)
        last->count += now;
      else
        g_array_append_val (order, run);
      *n_pieces += now;
      count -= now;
    }
}

GArray *
sq_lay_order_new_as (const SqLayKinds *kinds, const SqLay *lay)
{
  g_autoptr (GArray) pieces = lying_pieces (kinds, lay);
  g_autofree gint *levels = levels_new (kinds);
  GArray *order = g_array_new (FALSE, FALSE, sizeof (SqLayRun));
  guint n_pieces = 0, size = batch_size (kinds);

  match_counts (kinds, pieces);
  for (guint i = 0; i < pieces->len; i++)
    g_array_index (pieces, Lying, i).level = levels[g_array_index (pieces, Lying, i).kind];
  g_array_sort (pieces, compare_lying);
  for (guint i = 0; i < pieces->len; i++)
    add_run (order, size, &g_array_index (pieces, Lying, i), &n_pieces);
  return order;
}

/* ---- by chance ----------------------------------------------------------------------------- */

guint64
sq_lay_chance (guint64 *chance)
{
  guint64 z = *chance += G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);

  z = (z ^ (z >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return z ^ (z >> 31);
}

static guint
one_of (guint64 *chance, guint n)
{
  return (guint) (sq_lay_chance (chance) % n);
}

/* Cuts the run at @i in two, if it has more than one piece. */
static void
split_run (GArray *order, guint i, guint64 *chance)
{
  SqLayRun *run = &g_array_index (order, SqLayRun, i);
  SqLayRun rest = *run;

  if (run->count < 2)
    return;
  run->count = 1 + one_of (chance, run->count - 1);
  rest.count -= run->count;
  rest.starts_batch = FALSE;
  g_array_insert_val (order, i + 1, rest);
}

/* Whether run @i may not be moved before where it begins: it opens a batch, or a level. */
static gboolean
is_bound (const GArray *order, guint i)
{
  const SqLayRun *run = &g_array_index (order, SqLayRun, i);
  return run->starts_batch || run->level != g_array_index (order, SqLayRun, i - 1).level;
}

/* Where the runs that may change places with run @i begin, and where they end. */
static void
find_batch (const GArray *order, guint i, guint *from, guint *to)
{
  *from = i;
  *to = i + 1;
  while (*from > 0 && !is_bound (order, *from))
    (*from)--;
  while (*to < order->len && !is_bound (order, *to))
    (*to)++;
}

/* Puts the run at @from where the one at @to is; batches stay. */
static void
move_run (GArray *order, guint from, guint to)
{
  SqLayRun run = g_array_index (order, SqLayRun, from);
  gint by = from < to ? 1 : -1;

  for (guint i = from; i != to; i = (guint) ((gint) i + by))
    {
      g_array_index (order, SqLayRun, i).kind
          = g_array_index (order, SqLayRun, i + (guint) by).kind;
      g_array_index (order, SqLayRun, i).count
          = g_array_index (order, SqLayRun, i + (guint) by).count;
    }
  g_array_index (order, SqLayRun, to).kind = run.kind;
  g_array_index (order, SqLayRun, to).count = run.count;
}

GArray *
sq_lay_order_shuffled (const GArray *order, guint64 *chance)
{
  GArray *shuffled = g_array_copy ((GArray *) order);
  guint n_moves = 1 + one_of (chance, 3);

  for (guint i = 0; i < n_moves && shuffled->len > 1; i++)
    {
      guint at = one_of (chance, shuffled->len), from, to;
      if (one_of (chance, 3) == 0)
        split_run (shuffled, at, chance);
      find_batch (shuffled, at, &from, &to);
      move_run (shuffled, at, from + one_of (chance, to - from));
    }
  return shuffled;
}
