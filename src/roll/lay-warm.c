/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-warm.h"

#include "roll/lay-filling.h"
#include "roll/lay-first.h"
#include "roll/lay-piece.h"

/* No piece is moved farther than this across, nor along, to make room (µm). */
#define REACH_UM 250000

/* Heights are tried this far apart (µm), as long as one nearer has no room. */
#define STEP_UM 5000

/* How much longer than a fresh lay it may be. */
#define MOST_LONGER 1.02

typedef struct
{
  SqLayKept kept;
  guint laid; /* its number on the strip */
} Moved;

typedef struct
{
  const SqLayKinds *kinds;
  SqLayFilling *fillings; /* one a strip */
  GArray *moved;          /* of Moved: what has its place, in the order they are taken */
  SqLayPiece **pieces;    /* by kind, then pose; NULL where not looked at yet */
} Warming;

/* ---- what lay where ------------------------------------------------------------------------ */

static int
compare_old (gconstpointer a, gconstpointer b)
{
  const SqLayKept *p = a, *q = b;

  if (p->spot.strip != q->spot.strip)
    return p->spot.strip < q->spot.strip ? -1 : 1;
  if (p->spot.x != q->spot.x)
    return p->spot.x < q->spot.x ? -1 : 1;
  if (p->spot.y != q->spot.y)
    return p->spot.y < q->spot.y ? -1 : 1;
  if (p->item != q->item)
    return p->item < q->item ? -1 : 1;
  return (p->copy > q->copy) - (p->copy < q->copy);
}

/* Where @placed, a copy of @item now, lay; FALSE if it can't lie there any more. */
static gboolean
find_old (const SqLayKinds *kinds, guint i, const SqPlaced *placed, SqLayKept *old)
{
  const SqLayItem *item = sq_lay_task_item (kinds->task, i);

  if (item->crosses || placed->copy >= item->demand
      || sq_lay_item_pose (item, placed->pose) == G_MAXUINT
      || placed->strip >= kinds->task->strips->len
      || sq_lay_task_is_pinned (kinds->task, i, placed->copy))
    return FALSE;
  *old = (SqLayKept){ i, placed->copy,
                      sq_lay_kinds_spot (kinds, i, placed->pose, placed->strip, placed->at) };
  return TRUE;
}

static GArray *
old_places (const SqLayKinds *kinds, const SqLay *warm)
{
  g_autoptr (GHashTable) by_tag = sq_lay_task_tags (kinds->task);
  GArray *places = g_array_new (FALSE, FALSE, sizeof (SqLayKept));

  for (guint i = 0; i < warm->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (warm, i);
      guint item = GPOINTER_TO_UINT (g_hash_table_lookup (by_tag, GUINT_TO_POINTER (placed->tag)));
      SqLayKept old;
      if (item > 0 && find_old (kinds, item - 1, placed, &old))
        g_array_append_val (places, old);
    }
  g_array_sort (places, compare_old);
  return places;
}

/* ---- the nearest place --------------------------------------------------------------------- */

static const SqLayPiece *
piece_of (Warming *warming, const SqLaySpot *spot)
{
  const SqLayKind *kind = sq_lay_kind (warming->kinds, spot->kind);
  SqLayPiece **pieces = &warming->pieces[spot->kind];

  if (*pieces == NULL)
    *pieces = g_new0 (SqLayPiece, kind->n_shapes);
  SqLayPiece *piece = &(*pieces)[spot->pose];
  if (piece->trapezoids == NULL)
    *piece = sq_lay_piece (sq_lay_task_item (warming->kinds->task, kind->first),
                           kind->shapes[spot->pose]->pose);
  return piece;
}

static SqGrid
at_of (const Warming *warming, const SqLaySpot *spot)
{
  SqGrid corner = sq_lay_kind (warming->kinds, spot->kind)->shapes[spot->pose]->at;
  return (SqGrid){ (gint32) (spot->x - corner.x), (gint32) (spot->y - corner.y) };
}

/* Whether nothing is in the way at @spot itself: shapes are larger than pieces now and then, so the
 * pieces are asked. */
static gboolean
is_free (Warming *warming, const SqLaySpot *spot)
{
  const SqLayKinds *kinds = warming->kinds;
  const SqLayKind *kind = sq_lay_kind (kinds, spot->kind);
  const SqLayPiece *piece = piece_of (warming, spot);
  SqGrid at = at_of (warming, spot);

  if (sq_lay_piece_fault (piece, sq_lay_task_item (kinds->task, kind->first),
                          kind->shapes[spot->pose]->pose, at,
                          sq_lay_task_strip (kinds->task, spot->strip))
      != SQ_LAY_RIGHT)
    return FALSE;
  for (guint i = 0; i < kinds->pinned->len + warming->moved->len; i++)
    {
      const SqLaySpot *other
          = i < kinds->pinned->len
                ? &g_array_index (kinds->pinned, SqLaySpot, i)
                : &g_array_index (warming->moved, Moved, i - kinds->pinned->len).kept.spot;
      if (other->strip == spot->strip
          && sq_lay_pieces_overlap (piece, at, piece_of (warming, other), at_of (warming, other)))
        return FALSE;
    }
  return TRUE;
}

/* The nearest place so far, and how far that is. */
typedef struct
{
  gint64 x, y, distance;
} Nearest;

/* Looks at the height @y for places nearer to @old. */
static void
look_at (SqLayFilling *filling, const SqLayShape *shape, const SqLayPhase *phase,
         const SqLaySpot *old, gint64 y, Nearest *nearest)
{
  gint64 across = ABS (y - old->y), end = sq_lay_strip_end (filling->strip) - shape->length;
  gint64 most = MIN (end, old->x + nearest->distance - across - 1);
  gint64 least = MAX (filling->floor, old->x - (nearest->distance - across - 1));

  if (y < 0 || y > filling->strip->width - shape->width || most < least)
    return;
  gint64 right = sq_lay_filling_next_x (filling, shape, phase, y, MAX (old->x, least), most);
  if (right <= most)
    *nearest = (Nearest){ right, y, across + ABS (right - old->x) };
  least = MAX (least, old->x - (nearest->distance - across - 1));
  gint64 left = sq_lay_filling_last_x (filling, shape, phase, y, MIN (old->x, most), least);
  if (left >= least)
    *nearest = (Nearest){ left, y, across + ABS (left - old->x) };
}

/* The allowed height nearest to @y, @up or down from it. */
static gint64
allowed_y (const SqLayPhase *phase, gint64 y, gboolean up)
{
  return up ? sq_lay_phase_next_y (phase, y) : sq_lay_phase_last_y (phase, y);
}

static gboolean
find_near (SqLayFilling *filling, const SqLayShape *shape, const SqLayPhase *phase,
           const SqLaySpot *old, Nearest *nearest)
{
  gint64 room = filling->strip->width - shape->width;
  gint64 up = allowed_y (phase, CLAMP (old->y, 0, MAX (room, 0)), TRUE);
  gint64 down = allowed_y (phase, up - 1, FALSE);

  *nearest = (Nearest){ .distance = REACH_UM };
  while (up - old->y < nearest->distance || old->y - down < nearest->distance)
    {
      if (up - old->y < nearest->distance)
        look_at (filling, shape, phase, old, up, nearest);
      if (old->y - down < nearest->distance)
        look_at (filling, shape, phase, old, down, nearest);
      up = allowed_y (phase, up + STEP_UM, TRUE);
      down = allowed_y (phase, down - STEP_UM, FALSE);
    }
  return nearest->distance < REACH_UM;
}

static SqLayPhase
phase_of (const Warming *warming, const SqLaySpot *spot)
{
  const SqLayKind *kind = sq_lay_kind (warming->kinds, spot->kind);
  const SqLayShape *shape = kind->shapes[spot->pose];

  return sq_lay_phase (sq_lay_task_item (warming->kinds->task, kind->first), shape->pose, shape->at,
                       sq_lay_task_strip (warming->kinds->task, spot->strip));
}

/* Gives @old its place, if there is one near. */
static void
keep (Warming *warming, const SqLayKept *old)
{
  SqLayFilling *filling = &warming->fillings[old->spot.strip];
  const SqLayShape *shape = sq_lay_kind (warming->kinds, old->spot.kind)->shapes[old->spot.pose];
  Moved moved = { *old, filling->laid->len };

  if (!is_free (warming, &old->spot))
    {
      SqLayPhase phase = phase_of (warming, &old->spot);
      Nearest nearest;
      if (!find_near (filling, shape, &phase, &old->spot, &nearest))
        return;
      moved.kept.spot.x = nearest.x;
      moved.kept.spot.y = nearest.y;
    }
  sq_lay_filling_put (filling, shape, moved.kept.spot.x, moved.kept.spot.y);
  g_array_append_val (warming->moved, moved);
}

/* ---- the rest ------------------------------------------------------------------------------ */

static void
slide (Warming *warming)
{
  for (guint i = 0; i < warming->moved->len; i++)
    {
      Moved *moved = &g_array_index (warming->moved, Moved, i);
      SqLayFilling *filling = &warming->fillings[moved->kept.spot.strip];
      SqLayPhase phase = phase_of (warming, &moved->kept.spot);
      moved->kept.spot.x = sq_lay_filling_slid_x (filling, moved->laid, &phase);
      sq_lay_filling_move (filling, moved->laid, moved->kept.spot.x);
    }
}

/* What has no place yet, the greatest first, as one batch. */
static GArray *
order_of_rest (const SqLayKinds *kinds, const GArray *kept)
{
  g_autoptr (GArray) all = sq_lay_order_new (kinds, SQ_LAY_BY_AREA);
  g_autofree guint *left = g_new0 (guint, MAX (kinds->kinds->len, 1));
  GArray *rest = g_array_new (FALSE, FALSE, sizeof (SqLayRun));

  for (guint i = 0; i < kinds->kinds->len; i++)
    left[i] = sq_lay_kind (kinds, i)->count;
  for (guint i = 0; i < kept->len; i++)
    left[g_array_index (kept, SqLayKept, i).spot.kind]--;
  for (guint i = 0; i < all->len; i++)
    {
      SqLayRun run = g_array_index (all, SqLayRun, i);
      run.count = MIN (run.count, left[run.kind]);
      run.starts_batch = rest->len == 0;
      left[run.kind] -= run.count;
      if (run.count > 0)
        g_array_append_val (rest, run);
    }
  return rest;
}

static SqLay *
lay_rest (const Warming *warming, const SqTask *watch)
{
  const SqLayKinds *kinds = warming->kinds;
  g_autofree SqUnlaidWhy *why = g_new0 (SqUnlaidWhy, MAX (kinds->kinds->len, 1));
  g_autoptr (GArray) kept = g_array_new (FALSE, FALSE, sizeof (SqLayKept));
  g_autoptr (GArray) taken = g_array_new (FALSE, FALSE, sizeof (SqLaySpot));

  for (guint i = 0; i < warming->moved->len; i++)
    {
      const SqLayKept *k = &g_array_index (warming->moved, Moved, i).kept;
      g_array_append_val (kept, *k);
      g_array_append_val (taken, k->spot);
    }
  g_autoptr (GArray) rest = order_of_rest (kinds, kept);
  g_autoptr (GArray) spots = sq_lay_first_spots (kinds, rest, taken, why, watch, 0, 1);
  return spots != NULL ? sq_lay_kinds_to_lay_with (kinds, kept, spots, why) : NULL;
}

/* ---- whether it is any good ---------------------------------------------------------------- */

static double
cloth_of (const SqLayTask *task, const SqLay *lay)
{
  double area = 0;

  for (guint i = 0; i < task->strips->len; i++)
    area += (double) sq_lay_length (lay, i) * sq_lay_task_strip (task, i)->width;
  return area;
}

static guint64
count_unlaid (const SqLay *lay)
{
  guint64 n = 0;

  for (guint i = 0; i < lay->unlaid->len; i++)
    n += g_array_index (lay->unlaid, SqUnlaid, i).count;
  return n;
}

static gboolean
is_good (const SqLayTask *task, const SqLay *lay, const SqLay *fresh)
{
  return count_unlaid (lay) <= count_unlaid (fresh)
         && cloth_of (task, lay) <= MOST_LONGER * cloth_of (task, fresh);
}

static void
free_pieces (Warming *warming)
{
  for (guint i = 0; i < warming->kinds->kinds->len; i++)
    for (guint k = 0; warming->pieces[i] != NULL && k < sq_lay_kind (warming->kinds, i)->n_shapes;
         k++)
      sq_lay_piece_clear (&warming->pieces[i][k]);
  for (guint i = 0; i < warming->kinds->kinds->len; i++)
    g_free (warming->pieces[i]);
  g_free (warming->pieces);
}

SqLay *
sq_lay_warm (const SqLayKinds *kinds, const SqLay *warm, const SqLay *fresh, const SqTask *watch)
{
  g_autoptr (GArray) old = old_places (kinds, warm);
  g_autoptr (GArray) moved = g_array_new (FALSE, FALSE, sizeof (Moved));
  Warming warming = { .kinds = kinds,
                      .fillings = sq_lay_fillings_new (kinds),
                      .moved = moved,
                      .pieces = g_new0 (SqLayPiece *, MAX (kinds->kinds->len, 1)) };
  SqLay *lay = NULL;

  for (guint i = 0; i < old->len; i++)
    keep (&warming, &g_array_index (old, SqLayKept, i));
  if (moved->len > 0 && 2 * moved->len >= sq_lay_n_pieces (kinds))
    {
      slide (&warming);
      lay = lay_rest (&warming, watch);
    }
  if (lay != NULL && fresh != NULL && !is_good (kinds->task, lay, fresh))
    g_clear_pointer (&lay, sq_lay_unref);
  free_pieces (&warming);
  sq_lay_fillings_free (warming.fillings, kinds->task->strips->len);
  return lay;
}
