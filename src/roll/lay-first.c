/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-first.h"

#include "roll/lay-filling.h"

#include <string.h>

/* What lies farther than this before the end of what is laid (µm) is left as it is when a new
 * batch begins. */
#define REACH_UM 2000000

/* The smallest step in looking for a height where a slanted piece goes farther in (µm). */
#define LEAST_STEP_UM 500

/* Heights tried of a pattern across before only those beside other pieces are. */
#define MOST_ROWS 96

/* A height at which a shape may be tried, and the least x that may be free there. */
typedef struct
{
  guint pose;
  gint64 y, x;
} Try;

/* What is the same for all copies of a kind on a strip. */
typedef struct
{
  SqLayFilling *filling;
  const SqLayKind *kind;
  SqLayPhase phases[SQ_LAY_MOST_POSES];
  GArray *tries; /* of Try */
} Laying;

/* ---- heights ------------------------------------------------------------------------------- */

static int
compare_tries (gconstpointer a, gconstpointer b)
{
  const Try *p = a, *q = b;

  if (p->pose != q->pose)
    return p->pose < q->pose ? -1 : 1;
  return (p->y > q->y) - (p->y < q->y);
}

static gint64
room_across (const Laying *laying, guint pose)
{
  return (gint64) laying->filling->strip->width - laying->kind->shapes[pose]->width;
}

static void
add_try (Laying *laying, GArray *tries, guint pose, gint64 y, gint64 x)
{
  Try try = { pose, y, MAX (x, laying->filling->floor) };

  if (y >= 0 && y <= room_across (laying, pose))
    g_array_append_val (tries, try);
}

/* The allowed heights next to @y: itself where there is no pattern. */
static void
add_tries_at (Laying *laying, GArray *tries, guint pose, gint64 y, gint64 x)
{
  const SqLayPhase *phase = &laying->phases[pose];
  gint64 last = sq_lay_phase_last_y (phase, y), next = sq_lay_phase_next_y (phase, y);

  add_try (laying, tries, pose, last, x);
  if (next != last)
    add_try (laying, tries, pose, next, x);
}

/* The heights at which a ledge of a shape is level with one of @laid: it stands on it, hangs below
 * it or lies as it does. */
static void
add_tries_beside (Laying *laying, GArray *tries, guint pose, const SqLaid *laid)
{
  const SqLayShape *shape = laying->kind->shapes[pose];
  gint64 x = laid->x + laid->shape->keep.min.x - shape->keep.max.x;

  for (guint i = 0; i < laid->shape->n_ledges; i++)
    for (guint k = 0; k < shape->n_ledges; k++)
      add_tries_at (laying, tries, pose, laid->y + laid->shape->ledges[i] - shape->ledges[k], x);
}

/* All heights of a pattern that has few of them. */
static gboolean
add_all_rows (Laying *laying, guint pose)
{
  const SqLayPhase *phase = &laying->phases[pose];
  gint64 room = room_across (laying, pose);

  if (phase->repeat_across_nm <= 0 || room * 1000 / phase->repeat_across_nm >= MOST_ROWS)
    return FALSE;
  for (gint64 y = sq_lay_phase_next_y (phase, 0); y <= room; y = sq_lay_phase_next_y (phase, y + 1))
    add_try (laying, laying->tries, pose, y, 0);
  return TRUE;
}

static gboolean
has_all_rows (const Laying *laying, guint pose)
{
  const SqLayPhase *phase = &laying->phases[pose];
  return phase->repeat_across_nm > 0
         && room_across (laying, pose) * 1000 / phase->repeat_across_nm < MOST_ROWS;
}

/* Each height once, with the least x it was found for. */
static void
drop_doubles (GArray *tries)
{
  guint n = 0;

  g_array_sort (tries, compare_tries);
  for (guint i = 0; i < tries->len; i++)
    {
      const Try *try = &g_array_index (tries, Try, i);
      Try *last = n > 0 ? &g_array_index (tries, Try, n - 1) : NULL;
      if (last != NULL && compare_tries (last, try) == 0)
        last->x = MIN (last->x, try->x);
      else
        g_array_index (tries, Try, n++) = *try;
    }
  g_array_set_size (tries, n);
}

static void
begin_tries (Laying *laying)
{
  g_array_set_size (laying->tries, 0);
  for (guint q = 0; q < laying->kind->n_shapes; q++)
    {
      if (room_across (laying, q) < 0 || add_all_rows (laying, q))
        continue;
      add_tries_at (laying, laying->tries, q, 0, 0);
      add_tries_at (laying, laying->tries, q, room_across (laying, q), 0);
      for (guint i = 0; i < laying->filling->laid->len; i++)
        add_tries_beside (laying, laying->tries, q,
                          &g_array_index (laying->filling->laid, SqLaid, i));
    }
  drop_doubles (laying->tries);
}

static gboolean
has_try (const GArray *tries, const Try *wanted)
{
  for (guint i = 0; i < tries->len; i++)
    if (compare_tries (&g_array_index (tries, Try, i), wanted) == 0)
      return TRUE;
  return FALSE;
}

/* What the piece laid last opens. Nothing else became free, so the tries there are keep their x. */
static void
add_tries_for_last (Laying *laying)
{
  const GArray *laid = laying->filling->laid;
  g_autoptr (GArray) fresh = g_array_new (FALSE, FALSE, sizeof (Try));

  for (guint q = 0; q < laying->kind->n_shapes; q++)
    if (room_across (laying, q) >= 0 && !has_all_rows (laying, q))
      add_tries_beside (laying, fresh, q, &g_array_index (laid, SqLaid, laid->len - 1));
  for (guint i = 0; i < fresh->len; i++)
    if (!has_try (laying->tries, &g_array_index (fresh, Try, i)))
      g_array_append_val (laying->tries, g_array_index (fresh, Try, i));
}

/* ---- the best place ------------------------------------------------------------------------ */

static gint64
end_of (const Laying *laying, const Try *try)
{
  return try->x + laying->kind->shapes[try->pose]->length;
}

/* Moves @try on and makes it *best if it ends before that does, or as early and lower. */
static gboolean
improve (Laying *laying, Try *try, Try *best, gint64 *best_end)
{
  const SqLayShape *shape = laying->kind->shapes[try->pose];
  gint64 most_end = best->y <= try->y ? *best_end - 1 : *best_end;
  gint64 most = most_end - shape->length;

  try->x = sq_lay_filling_next_x (laying->filling, shape, &laying->phases[try->pose], try->y,
                                  try->x, most);
  if (try->x > most)
    return FALSE;
  *best = *try;
  *best_end = end_of (laying, try);
  return TRUE;
}

static gboolean
is_box (const SqLayShape *shape)
{
  return shape->n_parts == 1 && memcmp (&shape->core, &shape->keep, sizeof shape->core) == 0;
}

/* Looks at ever nearer heights about *best whether the shape goes farther in there. */
static void
refine (Laying *laying, Try *best, gint64 *best_end)
{
  const SqLayShape *shape = laying->kind->shapes[best->pose];
  gint64 room = room_across (laying, best->pose);

  if (is_box (shape) || laying->phases[best->pose].repeat_across_nm > 0)
    return;
  for (gint64 step = shape->width / 4; step >= LEAST_STEP_UM;)
    {
      gboolean better = FALSE;
      for (gint sign = -1; sign <= 1 && !better; sign += 2)
        {
          gint64 from = MAX (laying->filling->floor, best->x - shape->length);
          Try try = { best->pose, best->y + sign * step, from };
          better = try.y >= 0 && try.y <= room && improve (laying, &try, best, best_end);
        }
      if (!better)
        step /= 2;
    }
}

/* Where the next copy goes; FALSE if there is no room on the strip. */
static gboolean
find_place (Laying *laying, Try *best)
{
  gint64 limit = sq_lay_strip_end (laying->filling->strip), best_end = limit;

  *best = (Try){ .y = G_MAXINT64 };
  for (guint i = 0; i < laying->tries->len; i++)
    improve (laying, &g_array_index (laying->tries, Try, i), best, &best_end);
  if (best->y == G_MAXINT64)
    return FALSE;
  Try coarse = *best;
  refine (laying, best, &best_end);
  if (best->y != coarse.y)
    g_array_append_val (laying->tries, *best);
  return TRUE;
}

/* ---- all of them --------------------------------------------------------------------------- */

static void
begin_laying (Laying *laying, const SqLayKinds *kinds, guint kind, SqLayFilling *filling)
{
  const SqLayItem *item = sq_lay_task_item (kinds->task, sq_lay_kind (kinds, kind)->first);

  laying->filling = filling;
  laying->kind = sq_lay_kind (kinds, kind);
  for (guint q = 0; q < laying->kind->n_shapes; q++)
    laying->phases[q] = sq_lay_phase (item, item->poses[q], laying->kind->shapes[q]->at,
                                      filling->strip);
  begin_tries (laying);
}

/* Whether the pattern falls on the strip so that there would be a place, were it empty. Rows take
 * turns in two ways at most. */
static gboolean
has_place_by_pattern (const Laying *laying, guint pose)
{
  const SqLayPhase *phase = &laying->phases[pose];
  gint64 room_along = (gint64) sq_lay_strip_end (laying->filling->strip)
                      - laying->kind->shapes[pose]->length;
  gint64 y = sq_lay_phase_next_y (phase, 0);

  for (guint i = 0; i < 2 && y <= room_across (laying, pose); i++)
    {
      if (sq_lay_phase_next_x (phase, y, 0) <= room_along)
        return TRUE;
      y = sq_lay_phase_next_y (phase, y + 1);
    }
  return FALSE;
}

/* Why a kind does not go onto its strip any more, or at all. */
static SqUnlaidWhy
why_not (const Laying *laying)
{
  SqUnlaidWhy why = SQ_UNLAID_TOO_WIDE;

  for (guint q = 0; q < laying->kind->n_shapes; q++)
    if (room_across (laying, q) >= 0
        && laying->kind->shapes[q]->length <= sq_lay_strip_end (laying->filling->strip))
      why = MAX (why, has_place_by_pattern (laying, q) ? SQ_UNLAID_NO_ROOM : SQ_UNLAID_PATTERN);
  return why;
}

/* A lay while it is made. */
typedef struct
{
  const SqLayKinds *kinds;
  SqLayFilling *fillings; /* one a strip */
  GArray *spots;          /* of SqLaySpot */
  SqUnlaidWhy *why;       /* by kind: the best that was found on any strip */
  const SqTask *watch;
  double fraction_from, fraction_to;
  guint n_pieces, n_done;
} Making;

static gboolean
step (Making *making)
{
  double share = making->n_done++ / (double) MAX (making->n_pieces, 1);
  double fraction = making->fraction_from + (making->fraction_to - making->fraction_from) * share;
  return sq_task_step (making->watch, CLAMP (fraction, 0.0, 1.0));
}

/* Lays up to @count copies on one strip; *count is what is left. FALSE if it was stopped. */
static gboolean
lay_on_strip (Making *making, Laying *laying, guint kind, guint strip, guint *count)
{
  Try place;

  begin_laying (laying, making->kinds, kind, &making->fillings[strip]);
  for (; *count > 0; (*count)--)
    {
      if (!step (making))
        return FALSE;
      if (!find_place (laying, &place))
        break;
      SqLaySpot spot = { kind, strip, place.pose, place.x, place.y };
      g_array_append_val (making->spots, spot);
      sq_lay_filling_put (laying->filling, laying->kind->shapes[place.pose], place.x, place.y);
      add_tries_for_last (laying);
    }
  if (*count > 0)
    making->why[kind] = strip == 0 ? why_not (laying) : MAX (making->why[kind], why_not (laying));
  return TRUE;
}

static gboolean
lay_all (Making *making, const GArray *order)
{
  guint n_strips = making->kinds->task->strips->len;
  g_autoptr (GArray) tries = g_array_new (FALSE, FALSE, sizeof (Try));
  Laying laying = { .tries = tries };

  for (guint i = 0; i < order->len; i++)
    {
      const SqLayRun *run = &g_array_index (order, SqLayRun, i);
      guint left = run->count;
      for (guint k = 0; k < n_strips && run->starts_batch; k++)
        sq_lay_filling_leave (&making->fillings[k], REACH_UM);
      for (guint k = 0; k < n_strips && left > 0; k++)
        if (!lay_on_strip (making, &laying, run->kind, k, &left))
          return FALSE;
    }
  return TRUE;
}

GArray *
sq_lay_first_spots (const SqLayKinds *kinds, const GArray *order, const GArray *kept,
                    SqUnlaidWhy *why, const SqTask *watch, double fraction_from, double fraction_to)
{
  guint n_strips = kinds->task->strips->len;
  GArray *spots = g_array_new (FALSE, FALSE, sizeof (SqLaySpot));
  Making making = { .kinds = kinds,
                    .fillings = sq_lay_fillings_new (kinds),
                    .spots = spots,
                    .why = why,
                    .watch = watch,
                    .fraction_from = fraction_from,
                    .fraction_to = fraction_to };

  for (guint i = 0; kept != NULL && i < kept->len; i++)
    {
      const SqLaySpot *spot = &g_array_index (kept, SqLaySpot, i);
      sq_lay_filling_put (&making.fillings[spot->strip],
                          sq_lay_kind (kinds, spot->kind)->shapes[spot->pose], spot->x, spot->y);
    }
  for (guint i = 0; i < kinds->kinds->len; i++)
    why[i] = n_strips > 0 ? SQ_UNLAID_NO_ROOM : SQ_UNLAID_TOO_WIDE;
  for (guint i = 0; i < order->len; i++)
    making.n_pieces += g_array_index (order, SqLayRun, i).count;
  if (!lay_all (&making, order))
    g_clear_pointer (&spots, g_array_unref);
  sq_lay_fillings_free (making.fillings, n_strips);
  return spots;
}

SqLay *
sq_lay_first (const SqLayKinds *kinds, const GArray *order, const SqTask *watch,
              double fraction_from, double fraction_to)
{
  g_autofree SqUnlaidWhy *why = g_new0 (SqUnlaidWhy, MAX (kinds->kinds->len, 1));
  g_autoptr (GArray) spots = sq_lay_first_spots (kinds, order, NULL, why, watch, fraction_from,
                                                 fraction_to);

  return spots != NULL ? sq_lay_kinds_to_lay (kinds, spots, why) : NULL;
}
