/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-search.h"

#include "roll/lay-nofit.h"
#include "roll/lay-order.h"
#include "roll/lay-phase.h"

#include <math.h>
#include <string.h>

/* Pairs weigh each by itself, so pieces may not be too many. */
#define MOST_PIECES 512
/* Tables for all pairs of shapes. */
#define MOST_SHAPES 2048
/* Products of a table's numbers fit up to this size of a piece (µm). */
#define LARGEST_UM 200000000

/* Places looked at for a piece: about where it lies, and anywhere. */
#define N_NEAR 6
#define N_WIDE 24
/* So many of them are followed downhill. */
#define N_FOLLOWED 3

/* Steps downhill, in shares of the shape's smaller side: followed, and for the best at last. */
#define COARSE_FROM 0.25f
#define COARSE_TO 0.02f
#define FINE_FROM 0.02f
#define FINE_TO 0.0008f

/* Pairs in each other's way weigh so many times more after a round; the others so many times what
 * they did. */
#define HEAVIER 1.2f
#define HEAVIER_YET 0.8f
#define LIGHTER 0.95f

/* Compared four at a time. */
#define LANES 4
typedef gint32 Lanes __attribute__ ((vector_size (LANES * sizeof (gint32))));

/* A shape as the search knows it: of a kind in a pose, or of a flaw. */
typedef struct
{
  SqLayParts *parts;
  SqGridBox box;        /* of the parts */
  gint32 length, width; /* of the cut line's box; 0: a flaw */
  float side_um;        /* the smaller of both */
  float weight;         /* what overlaps of it count: large and hollow ones are hard to place */
  guint kind, pose;
} Shape;

struct _SqLaySearch
{
  const SqLayKinds *kinds;
  guint n_shapes, n_pieces, n_strips;
  Shape *shapes;
  guint *first_shape;  /* by kind: that of its first pose */
  SqLayNofit **nofits; /* by shape and shape, the first being the lesser; made when asked for */
  GMutex lock;         /* of making them */
  gint64 *strip_y;     /* strips lie side by side: where each begins */
  SqLayPhase *phases;  /* by shape and strip */
  gboolean *is_phased; /* by kind */
  gboolean *is_pinned; /* by piece */
  GArray *flaws;       /* of Flaw */
};

typedef struct
{
  guint shape;
  gint32 x, y;
} Flaw;

/* ---- shapes -------------------------------------------------------------------------------- */

static Shape
shape_of_kind (const SqLayKinds *kinds, guint kind, guint pose)
{
  const SqLayItem *item = sq_lay_task_item (kinds->task, sq_lay_kind (kinds, kind)->first);
  const SqLayShape *outline = sq_lay_kind (kinds, kind)->shapes[pose];
  SqLayParts *parts = sq_lay_parts_new (item, item->poses[pose]);

  return (Shape){ .parts = parts,
                  .box = parts->box,
                  .length = outline->length,
                  .width = outline->width,
                  .side_um = (float) MIN (outline->length, outline->width),
                  .weight = (float) sqrt (sqrt (parts->hull)),
                  .kind = kind,
                  .pose = pose };
}

static void
add_shapes (SqLaySearch *search)
{
  const SqLayKinds *kinds = search->kinds;
  guint n = 0;

  for (guint i = 0; i < kinds->kinds->len; i++)
    for (guint pose = 0; pose < sq_lay_kind (kinds, i)->n_shapes; pose++, n++)
      {
        if (pose == 0)
          search->first_shape[i] = n;
        search->shapes[n] = shape_of_kind (kinds, i, pose);
      }
  for (guint k = 0; k < search->n_strips; k++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (kinds->task, k);
      for (guint i = 0; i < strip->n_flaws; i++, n++)
        {
          SqGridBox box = strip->flaws[i];
          SqGrid size = { box.max.x - box.min.x, box.max.y - box.min.y };
          Flaw flaw = { n, box.min.x, (gint32) (box.min.y + search->strip_y[k]) };
          search->shapes[n].parts = sq_lay_parts_new_box (size);
          search->shapes[n].box = search->shapes[n].parts->box;
          search->shapes[n].weight = (float) sqrt (sqrt (search->shapes[n].parts->hull));
          g_array_append_val (search->flaws, flaw);
        }
    }
}

/* Weights about 1, so that losses are lengths. */
static void
even_weights (SqLaySearch *search)
{
  float sum = 0;

  for (guint i = 0; i < search->n_shapes; i++)
    sum += search->shapes[i].weight;
  for (guint i = 0; i < search->n_shapes; i++)
    search->shapes[i].weight = sqrtf (search->shapes[i].weight * (float) search->n_shapes / sum);
}

static void
add_phases (SqLaySearch *search)
{
  const SqLayKinds *kinds = search->kinds;

  for (guint i = 0; i < kinds->kinds->len; i++)
    {
      const SqLayKind *kind = sq_lay_kind (kinds, i);
      const SqLayItem *item = sq_lay_task_item (kinds->task, kind->first);
      search->is_phased[i] = item->phase.repeat_along_nm > 0 || item->phase.repeat_across_nm > 0;
      for (guint pose = 0; pose < kind->n_shapes; pose++)
        for (guint k = 0; k < search->n_strips; k++)
          search->phases[(search->first_shape[i] + pose) * search->n_strips + k] = sq_lay_phase (
              item, item->poses[pose], kind->shapes[pose]->at, sq_lay_task_strip (kinds->task, k));
    }
}

static gboolean
is_pinned (const SqLayKinds *kinds, const SqLaySpot *spot)
{
  const SqLayTask *task = kinds->task;

  for (guint i = 0; i < task->pins->len; i++)
    {
      const SqLayPin *pin = &g_array_index (task->pins, SqLayPin, i);
      const SqLayItem *item = sq_lay_task_item (task, pin->item);
      if (kinds->kind_of[pin->item] != spot->kind || pin->strip != spot->strip
          || !sq_grid_pose_equal (pin->pose, item->poses[spot->pose]))
        continue;
      SqGrid corner = sq_lay_item_box (item, pin->pose).min;
      if ((gint64) pin->at.x + corner.x == spot->x && (gint64) pin->at.y + corner.y == spot->y)
        return TRUE;
    }
  return FALSE;
}

/* Whether all of it fits the numbers that are used. */
static gboolean
is_fit (const SqLayKinds *kinds, const GArray *spots, guint n_shapes)
{
  const SqLayTask *task = kinds->task;
  gint64 across = 0;

  for (guint k = 0; k < task->strips->len; k++)
    across += sq_lay_task_strip (task, k)->width;
  for (guint i = 0; i < task->items->len; i++)
    {
      SqGridBox box = sq_lay_task_item (task, i)->box;
      if ((gint64) box.max.x - box.min.x > LARGEST_UM
          || (gint64) box.max.y - box.min.y > LARGEST_UM)
        return FALSE;
    }
  return spots->len > 1 && spots->len <= MOST_PIECES && n_shapes <= MOST_SHAPES
         && across < G_MAXINT32 / 2;
}

SqLaySearch *
sq_lay_search_new (const SqLayKinds *kinds, const GArray *spots)
{
  guint n_shapes = 0, n_strips = kinds->task->strips->len;

  for (guint i = 0; i < kinds->kinds->len; i++)
    n_shapes += sq_lay_kind (kinds, i)->n_shapes;
  for (guint k = 0; k < n_strips; k++)
    n_shapes += sq_lay_task_strip (kinds->task, k)->n_flaws;
  if (!is_fit (kinds, spots, n_shapes))
    return NULL;

  SqLaySearch *search = g_new0 (SqLaySearch, 1);
  search->kinds = kinds;
  search->n_shapes = n_shapes;
  search->n_pieces = spots->len;
  search->n_strips = n_strips;
  search->shapes = g_new0 (Shape, n_shapes);
  search->first_shape = g_new0 (guint, kinds->kinds->len);
  search->nofits = g_new0 (SqLayNofit *, (gsize) n_shapes * n_shapes);
  search->strip_y = g_new0 (gint64, n_strips + 1);
  search->phases = g_new0 (SqLayPhase, (gsize) n_shapes * n_strips);
  search->is_phased = g_new0 (gboolean, kinds->kinds->len);
  search->is_pinned = g_new0 (gboolean, spots->len);
  search->flaws = g_array_new (FALSE, FALSE, sizeof (Flaw));
  g_mutex_init (&search->lock);
  for (guint k = 0; k < n_strips; k++)
    search->strip_y[k + 1] = search->strip_y[k] + sq_lay_task_strip (kinds->task, k)->width;
  add_shapes (search);
  even_weights (search);
  add_phases (search);
  for (guint i = 0; i < spots->len; i++)
    search->is_pinned[i] = is_pinned (kinds, &g_array_index (spots, SqLaySpot, i));
  return search;
}

void
sq_lay_search_free (SqLaySearch *search)
{
  for (guint i = 0; i < search->n_shapes; i++)
    g_clear_pointer (&search->shapes[i].parts, sq_lay_parts_free);
  for (gsize i = 0; i < (gsize) search->n_shapes * search->n_shapes; i++)
    sq_lay_nofit_free (search->nofits[i]);
  g_free (search->shapes);
  g_free (search->first_shape);
  g_free (search->nofits);
  g_free (search->strip_y);
  g_free (search->phases);
  g_free (search->is_phased);
  g_free (search->is_pinned);
  g_array_unref (search->flaws);
  g_mutex_clear (&search->lock);
  g_free (search);
}

static const SqLayNofit *
make_nofit (SqLaySearch *search, guint moving, guint fixed)
{
  SqLayNofit **place = &search->nofits[(gsize) moving * search->n_shapes + fixed];

  g_mutex_lock (&search->lock);
  if (*place == NULL)
    {
      SqLayNofit *made = sq_lay_nofit_new (search->shapes[moving].parts,
                                           search->shapes[fixed].parts);
      g_atomic_pointer_set (place, made);
    }
  g_mutex_unlock (&search->lock);
  return *place;
}

static inline float
depth_of (SqLaySearch *search, guint moving, guint fixed, gint32 dx, gint32 dy)
{
  guint a = MIN (moving, fixed), b = MAX (moving, fixed);
  const SqLayNofit *nofit = g_atomic_pointer_get (
      &search->nofits[(gsize) a * search->n_shapes + b]);

  if (G_UNLIKELY (nofit == NULL))
    nofit = make_nofit (search, a, b);
  return a == moving ? sq_lay_nofit_depth (nofit, dx, dy) : sq_lay_nofit_depth (nofit, -dx, -dy);
}

/* ---- a state ------------------------------------------------------------------------------- */

/* Where something lies, the strips side by side. */
typedef struct
{
  guint shape, strip;
  gint32 x, y;
} Place;

/* Pieces first, then flaws. */
typedef struct
{
  SqLaySearch *search;
  const gint32 *ends;
  guint n_free, n, stride; /* pieces; all; all, a whole number of lanes */
  Place *places;
  gint32 *x0, *x1, *y0, *y1; /* the boxes of their parts, by lanes */
  float *losses, *weights;   /* by two of them; stride apart */
  guint64 chance;
} State;

static gint32 *
lanes_new (guint n)
{
  return g_aligned_alloc0 (n, sizeof (gint32), sizeof (Lanes));
}

static guint
shape_at (const SqLaySearch *search, const SqLaySpot *spot)
{
  return search->first_shape[spot->kind] + spot->pose;
}

static void
put (State *state, guint i, Place place)
{
  const SqGridBox *box = &state->search->shapes[place.shape].box;

  state->places[i] = place;
  state->x0[i] = place.x + box->min.x;
  state->x1[i] = place.x + box->max.x;
  state->y0[i] = place.y + box->min.y;
  state->y1[i] = place.y + box->max.y;
}

static State *
state_new (SqLaySearch *search, const GArray *spots, const gint32 *ends, guint64 seed)
{
  State *state = g_new0 (State, 1);

  state->search = search;
  state->ends = ends;
  state->n_free = spots->len;
  state->n = spots->len + search->flaws->len;
  state->stride = (state->n + LANES - 1) / LANES * LANES;
  state->places = g_new0 (Place, state->n);
  state->x0 = lanes_new (state->stride);
  state->x1 = lanes_new (state->stride);
  state->y0 = lanes_new (state->stride);
  state->y1 = lanes_new (state->stride);
  state->losses = g_new0 (float, (gsize) state->n * state->stride);
  state->weights = g_new (float, (gsize) state->n * state->stride);
  state->chance = seed;
  for (gsize i = 0; i < (gsize) state->n * state->stride; i++)
    state->weights[i] = 1;
  /* What fills up the lanes overlaps nothing. */
  for (guint i = 0; i < state->stride; i++)
    {
      state->x0[i] = G_MAXINT32;
      state->x1[i] = G_MININT32;
    }
  for (guint i = 0; i < spots->len; i++)
    {
      const SqLaySpot *spot = &g_array_index (spots, SqLaySpot, i);
      put (state, i,
           (Place){ shape_at (search, spot), spot->strip, (gint32) spot->x,
                    (gint32) (spot->y + search->strip_y[spot->strip]) });
    }
  for (guint i = 0; i < search->flaws->len; i++)
    {
      const Flaw *flaw = &g_array_index (search->flaws, Flaw, i);
      put (state, spots->len + i, (Place){ flaw->shape, 0, flaw->x, flaw->y });
    }
  return state;
}

static void
state_free (State *state)
{
  g_free (state->places);
  g_aligned_free (state->x0);
  g_aligned_free (state->x1);
  g_aligned_free (state->y0);
  g_aligned_free (state->y1);
  g_free (state->losses);
  g_free (state->weights);
  g_free (state);
}

/* @places as spots. */
static void
to_spots (const SqLaySearch *search, const Place *places, GArray *spots)
{
  for (guint i = 0; i < spots->len; i++)
    {
      const Shape *shape = &search->shapes[places[i].shape];
      g_array_index (spots, SqLaySpot, i) = (SqLaySpot){ shape->kind, places[i].strip, shape->pose,
                                                         places[i].x,
                                                         places[i].y
                                                             - search->strip_y[places[i].strip] };
    }
}

/* ---- chance -------------------------------------------------------------------------------- */

/* 0 … n − 1. */
static guint
chance_below (State *state, guint n)
{
  return (guint) (((sq_lay_chance (&state->chance) >> 32) * n) >> 32);
}

/* 0 … most. */
static gint32
chance_up_to (State *state, gint32 most)
{
  return (gint32) (((sq_lay_chance (&state->chance) >> 32) * ((guint64) most + 1)) >> 32);
}

/* ---- places a piece may take --------------------------------------------------------------- */

/* The greatest x and y of @shape on @strip; FALSE where it does not go in. */
static gboolean
room_for (const State *state, guint shape, guint strip, gint32 *most_x, gint32 *most_y)
{
  const Shape *s = &state->search->shapes[shape];

  *most_x = state->ends[strip] - s->length;
  *most_y = sq_lay_task_strip (state->search->kinds->task, strip)->width - s->width;
  return *most_x >= 0 && *most_y >= 0;
}

/* The allowed place of those next to @at, stepping back where it is beyond @most. */
static gboolean
snap_x (const SqLayPhase *phase, gint64 y, gint64 at, gint32 most, gint32 *x)
{
  gint64 next = sq_lay_phase_next_x (phase, y, at);
  gint64 repeat = phase->repeat_along_nm / 1000;

  if (next != at && repeat > 0)
    {
      gint64 last = sq_lay_phase_next_x (phase, y, next - repeat - 1);
      if (last >= 0 && last < next && (next > most || at - last < next - at))
        next = last;
    }
  *x = (gint32) next;
  return next >= 0 && next <= most;
}

/* Moves @place, x and y on the strip from 0, into the strip and to the nearest place of its
 * pattern. FALSE where there is none. */
static gboolean
settle (const State *state, Place *place, gint64 x, gint64 y)
{
  const SqLaySearch *search = state->search;
  gint32 most_x, most_y, at_x;

  if (!room_for (state, place->shape, place->strip, &most_x, &most_y))
    return FALSE;
  x = CLAMP (x, 0, most_x);
  y = CLAMP (y, 0, most_y);
  if (search->is_phased[search->shapes[place->shape].kind])
    {
      const SqLayPhase *phase = &search->phases[place->shape * search->n_strips + place->strip];
      gint64 last = sq_lay_phase_last_y (phase, y), next = sq_lay_phase_next_y (phase, y);
      y = last >= 0 && (y - last <= next - y || next > most_y) ? last : next;
      if (y < 0 || y > most_y || !snap_x (phase, y, x, most_x, &at_x))
        return FALSE;
      x = at_x;
    }
  place->x = (gint32) x;
  place->y = (gint32) (y + search->strip_y[place->strip]);
  return TRUE;
}

/* Any pose. */
static guint
any_shape (State *state, guint shape)
{
  const Shape *s = &state->search->shapes[shape];
  const SqLayKinds *kinds = state->search->kinds;
  guint n = sq_lay_kind (kinds, s->kind)->n_shapes;

  return n == 1 ? shape : shape - s->pose + chance_below (state, n);
}

/* A strip by the room it has for @shape; FALSE where none has any. */
static gboolean
any_strip (State *state, guint shape, guint *strip, gint32 *most_x, gint32 *most_y)
{
  double all = 0;
  guint n = state->search->n_strips;

  if (n == 1)
    {
      *strip = 0;
      return room_for (state, shape, 0, most_x, most_y);
    }
  for (guint k = 0; k < n; k++)
    if (room_for (state, shape, k, most_x, most_y))
      all += (*most_x + 1.0) * (*most_y + 1.0);
  double at = all * (double) (sq_lay_chance (&state->chance) >> 11) / 9007199254740992.0;
  for (guint k = 0; k < n; k++)
    if (room_for (state, shape, k, most_x, most_y))
      {
        *strip = k;
        at -= (*most_x + 1.0) * (*most_y + 1.0);
        if (at <= 0)
          return TRUE;
      }
  return all > 0 && room_for (state, shape, *strip, most_x, most_y);
}

static gboolean
anywhere (State *state, guint shape, Place *place)
{
  gint32 most_x, most_y;

  place->shape = any_shape (state, shape);
  if (!any_strip (state, place->shape, &place->strip, &most_x, &most_y))
    return FALSE;
  gint32 x = chance_up_to (state, most_x), y = chance_up_to (state, most_y);
  return settle (state, place, x, y);
}

static gboolean
near_by (State *state, const Place *from, Place *place)
{
  const Shape *old = &state->search->shapes[from->shape];
  *place = *from;
  place->shape = any_shape (state, from->shape);
  const Shape *new = &state->search->shapes[place->shape];
  /* The middle goes anywhere in the old box. */
  gint64 x = from->x + chance_up_to (state, old->length) - new->length / 2;
  gint64 y = from->y - state->search->strip_y[from->strip] + chance_up_to (state, old->width)
             - new->width / 2;
  return settle (state, place, x, y);
}

/* ---- losses -------------------------------------------------------------------------------- */

static inline float
pair_loss (State *state, const Place *place, guint i)
{
  SqLaySearch *search = state->search;
  const Place *other = &state->places[i];
  float depth = depth_of (search, place->shape, other->shape, place->x - other->x,
                          place->y - other->y);

  return depth == 0
             ? 0
             : depth * search->shapes[place->shape].weight * search->shapes[other->shape].weight;
}

/* What piece @i would lose at @place; as soon as that is @bound or more, something that is. */
static float
look (State *state, guint i, const Place *place, float bound)
{
  const SqGridBox *box = &state->search->shapes[place->shape].box;
  const Lanes from_x = (Lanes){ 0 } + (place->x + box->min.x);
  const Lanes to_x = (Lanes){ 0 } + (place->x + box->max.x);
  const Lanes from_y = (Lanes){ 0 } + (place->y + box->min.y);
  const Lanes to_y = (Lanes){ 0 } + (place->y + box->max.y);
  const Lanes *x0 = (const Lanes *) (gconstpointer) state->x0;
  const Lanes *x1 = (const Lanes *) (gconstpointer) state->x1;
  const Lanes *y0 = (const Lanes *) (gconstpointer) state->y0;
  const Lanes *y1 = (const Lanes *) (gconstpointer) state->y1;
  const float *weights = &state->weights[(gsize) i * state->stride];
  float sum = 0;

  for (guint group = 0; group < state->stride / LANES; group++)
    {
      union
      {
        Lanes lanes;
        guint64 halves[2];
        gint32 each[LANES];
      } hit = { (x0[group] < to_x) & (x1[group] > from_x) & (y0[group] < to_y)
                & (y1[group] > from_y) };
      if ((hit.halves[0] | hit.halves[1]) == 0)
        continue;
      for (guint lane = 0; lane < LANES; lane++)
        {
          guint k = group * LANES + lane;
          if (hit.each[lane] == 0 || k == i)
            continue;
          float loss = pair_loss (state, place, k);
          if (loss == 0)
            continue;
          sum += loss * weights[k];
          if (sum >= bound)
            return sum;
        }
    }
  return sum;
}

/* Notes what piece @i and the others lose by each other. */
static void
note_losses (State *state, guint i)
{
  const Place *place = &state->places[i];

  for (guint k = 0; k < state->n; k++)
    {
      gboolean apart = k == i || state->x0[k] >= state->x1[i] || state->x1[k] <= state->x0[i]
                       || state->y0[k] >= state->y1[i] || state->y1[k] <= state->y0[i];
      float loss = apart ? 0 : pair_loss (state, place, k);
      state->losses[(gsize) i * state->stride + k] = loss;
      state->losses[(gsize) k * state->stride + i] = loss;
    }
}

static gboolean
is_in_way (const State *state, guint i)
{
  const float *losses = &state->losses[(gsize) i * state->stride];

  for (guint k = 0; k < state->n; k++)
    if (losses[k] > 0)
      return TRUE;
  return FALSE;
}

/* Of all pairs; *@most gets that of the worst. */
static double
all_losses (const State *state, float *most)
{
  double sum = 0;

  *most = 0;
  for (guint i = 0; i < state->n; i++)
    for (guint k = 0; k < i; k++)
      {
        float loss = state->losses[(gsize) i * state->stride + k];
        sum += loss;
        *most = MAX (*most, loss);
      }
  return sum;
}

/* ---- downhill ------------------------------------------------------------------------------ */

typedef struct
{
  Place place;
  float loss;
} Sample;

static gboolean
try_step (State *state, guint i, Sample *sample, float step_x, float step_y)
{
  Place place = sample->place;
  gint64 x = place.x + (gint64) step_x;
  gint64 y = place.y - state->search->strip_y[place.strip] + (gint64) step_y;

  if (!settle (state, &place, x, y) || (place.x == sample->place.x && place.y == sample->place.y))
    return FALSE;
  float loss = look (state, i, &place, sample->loss);
  if (loss >= sample->loss)
    return FALSE;
  *sample = (Sample){ place, loss };
  return TRUE;
}

/* Steps along an axis or a diagonal, whichever chance takes, as long as they lead down; else
 * shorter ones. */
static void
go_down (State *state, guint i, Sample *sample, float from_um, float to_um)
{
  static const float axes[][2] = { { 1, 0 }, { 0, 1 }, { 0.7f, 0.7f }, { 0.7f, -0.7f } };
  guint axis = chance_below (state, G_N_ELEMENTS (axes));
  float step = MAX (from_um, 2);

  while (step >= MAX (to_um, 1) && sample->loss > 0)
    {
      float x = step * axes[axis][0], y = step * axes[axis][1];
      if (try_step (state, i, sample, x, y) || try_step (state, i, sample, -x, -y))
        step *= 1.1f;
      else
        {
          step *= 0.5f;
          axis = chance_below (state, G_N_ELEMENTS (axes));
        }
    }
}

/* ---- one piece ----------------------------------------------------------------------------- */

/* Keeps @sample among the best of @all, those far from each other; returns what another must stay
 * below. */
static float
keep_sample (Sample *all, guint *n, const Sample *sample, float apart_um)
{
  guint at = *n, same = *n;

  for (guint i = 0; i < *n; i++)
    if (all[i].place.shape == sample->place.shape && all[i].place.strip == sample->place.strip
        && fabsf ((float) all[i].place.x - (float) sample->place.x) < apart_um
        && fabsf ((float) all[i].place.y - (float) sample->place.y) < apart_um)
      same = i;
  if (same < *n)
    {
      if (all[same].loss <= sample->loss)
        return *n < N_FOLLOWED ? G_MAXFLOAT : all[*n - 1].loss;
      memmove (&all[same], &all[same + 1], (*n - same - 1) * sizeof (Sample));
      (*n)--;
    }
  if (*n == N_FOLLOWED)
    (*n)--;
  for (at = *n; at > 0 && all[at - 1].loss > sample->loss; at--)
    all[at] = all[at - 1];
  all[at] = *sample;
  (*n)++;
  return *n < N_FOLLOWED ? G_MAXFLOAT : all[*n - 1].loss;
}

/* Moves piece @i to where it is least in the way, of the places that are looked at; never to a worse
 * one. */
static void
move_piece (State *state, guint i)
{
  const Place from = state->places[i];
  float side = state->search->shapes[from.shape].side_um;
  Sample best[N_FOLLOWED + 1], sample = { from, look (state, i, &from, G_MAXFLOAT) };
  guint n = 0;
  float bound = keep_sample (best, &n, &sample, 0.05f * side);

  for (guint k = 0; k < N_NEAR + N_WIDE && best[0].loss > 0; k++)
    {
      if (!(k < N_NEAR ? near_by (state, &from, &sample.place)
                       : anywhere (state, from.shape, &sample.place)))
        continue;
      sample.loss = look (state, i, &sample.place, bound);
      if (sample.loss < bound)
        bound = keep_sample (best, &n, &sample, 0.05f * side);
    }
  guint least = 0;
  for (guint k = 0; k < n && best[least].loss > 0; k++)
    {
      go_down (state, i, &best[k], COARSE_FROM * side, COARSE_TO * side);
      if (best[k].loss < best[least].loss)
        least = k;
    }
  go_down (state, i, &best[least], FINE_FROM * side, FINE_TO * side);
  put (state, i, best[least].place);
  note_losses (state, i);
}

/* ---- making room --------------------------------------------------------------------------- */

/* Moves what lies beyond an end before it. FALSE where something does not go in at all. */
static gboolean
draw_in (State *state)
{
  for (guint i = 0; i < state->n_free; i++)
    {
      Place place = state->places[i];
      gint32 most_x, most_y;
      if (state->search->is_pinned[i])
        {
          if (!room_for (state, place.shape, place.strip, &most_x, &most_y) || place.x > most_x)
            return FALSE;
          continue;
        }
      gboolean fits = settle (state, &place, place.x,
                              place.y - state->search->strip_y[place.strip]);
      for (guint tries = 0; !fits && tries < 64; tries++)
        fits = anywhere (state, place.shape, &place);
      if (!fits)
        return FALSE;
      put (state, i, place);
    }
  return TRUE;
}

static void
shuffle (State *state, guint *order, guint n)
{
  for (guint i = n; i > 1; i--)
    {
      guint k = chance_below (state, i), swapped = order[i - 1];
      order[i - 1] = order[k];
      order[k] = swapped;
    }
}

static void
weigh_again (State *state, float most)
{
  for (gsize i = 0; i < (gsize) state->n * state->stride; i++)
    {
      float loss = state->losses[i], *weight = &state->weights[i];
      *weight = loss > 0 ? *weight * (HEAVIER + HEAVIER_YET * loss / most)
                         : MAX (*weight * LIGHTER, 1);
    }
}

/* One round: every piece that is in the way, in any order. FALSE if it was cancelled. */
static gboolean
move_round (State *state, guint *order, gboolean (*is_cancelled) (gpointer), gpointer data)
{
  guint n = 0;

  for (guint i = 0; i < state->n_free; i++)
    if (!state->search->is_pinned[i] && is_in_way (state, i))
      order[n++] = i;
  shuffle (state, order, n);
  for (guint i = 0; i < n; i++)
    {
      if (is_cancelled != NULL && is_cancelled (data))
        return FALSE;
      if (is_in_way (state, order[i]))
        move_piece (state, order[i]);
    }
  return TRUE;
}

/* A round's worth of rounds: until nothing overlaps, or it gets no nearer. @best and *@least are the
 * nearest so far. FALSE if it was cancelled. */
static gboolean
strike (State *state, guint patience, guint *order, Place *best, double *least,
        gboolean (*is_cancelled) (gpointer), gpointer data)
{
  double begun = *least;
  float most;

  for (guint idle = 0; idle<patience && * least> 0; idle++)
    {
      if (!move_round (state, order, is_cancelled, data))
        return FALSE;
      double loss = all_losses (state, &most);
      if (loss < *least)
        {
          *least = loss;
          memcpy (best, state->places, state->n * sizeof (Place));
          if (loss < 0.98 * begun)
            {
              begun = loss;
              idle = 0;
            }
        }
      if (loss > 0)
        weigh_again (state, most);
    }
  return TRUE;
}

gboolean
sq_lay_search_separate (SqLaySearch *search, GArray *spots, const gint32 *ends, guint64 seed,
                        SqLayEffort effort, gboolean (*is_cancelled) (gpointer), gpointer data,
                        double *loss)
{
  State *state = state_new (search, spots, ends, seed);
  g_autofree guint *order = g_new (guint, state->n);
  g_autofree Place *best = g_new (Place, state->n);
  double least = G_MAXDOUBLE;
  float most;
  gboolean goes_on = draw_in (state);

  if (goes_on)
    {
      for (guint i = 0; i < state->n; i++)
        note_losses (state, i);
      least = all_losses (state, &most);
      memcpy (best, state->places, state->n * sizeof (Place));
    }
  for (guint strikes = 0; goes_on && strikes < effort.strikes && least > 0;)
    {
      double before = least;
      goes_on = strike (state, effort.patience, order, best, &least, is_cancelled, data);
      strikes = least < 0.98 * before ? 0 : strikes + 1;
      for (guint i = 0; i < state->n_free; i++)
        put (state, i, best[i]);
      for (guint i = 0; i < state->n; i++)
        note_losses (state, i);
    }
  if (least < G_MAXDOUBLE)
    to_spots (search, best, spots);
  if (loss != NULL)
    *loss = least;
  state_free (state);
  return least == 0;
}

/* ---- drawing together ---------------------------------------------------------------------- */

static int
compare_lefts (gconstpointer a, gconstpointer b, gpointer data)
{
  const Place *places = data;
  guint p = *(const guint *) a, q = *(const guint *) b;

  if (places[p].x != places[q].x)
    return places[p].x < places[q].x ? -1 : 1;
  return p < q ? -1 : p > q;
}

/* Steps of the one kind, ever shorter, as long as nothing overlaps. */
static gboolean
slide (State *state, guint i, gint32 x, gint32 y)
{
  gboolean moved = FALSE;
  float step = state->search->shapes[state->places[i].shape].side_um / 4;

  while (step >= 1)
    {
      Place place = state->places[i];
      if (settle (state, &place, place.x + (gint64) (step * (float) x),
                  place.y - state->search->strip_y[place.strip] + (gint64) (step * (float) y))
          && (place.x - state->places[i].x) * x >= 0 && (place.y - state->places[i].y) * y >= 0
          && (place.x != state->places[i].x || place.y != state->places[i].y)
          && look (state, i, &place, G_MINFLOAT) == 0)
        {
          put (state, i, place);
          moved = TRUE;
        }
      else
        step /= 2;
    }
  return moved;
}

void
sq_lay_search_compact (SqLaySearch *search, GArray *spots, const gint32 *ends)
{
  State *state = state_new (search, spots, ends, 1);
  g_autofree guint *order = g_new (guint, state->n);
  gboolean moved = TRUE;

  for (guint pass = 0; pass < 4 && moved; pass++)
    {
      moved = FALSE;
      for (guint i = 0; i < state->n_free; i++)
        order[i] = i;
      g_qsort_with_data (order, (gint) state->n_free, sizeof (guint), compare_lefts, state->places);
      for (guint i = 0; i < state->n_free; i++)
        if (!search->is_pinned[order[i]])
          {
            moved |= slide (state, order[i], -1, 0);
            slide (state, order[i], 0, pass % 2 == 0 ? -1 : 1);
            moved |= slide (state, order[i], -1, 0);
          }
    }
  to_spots (search, state->places, spots);
  state_free (state);
}

/* ---- changing places ----------------------------------------------------------------------- */

void
sq_lay_search_swap (SqLaySearch *search, GArray *spots, guint64 seed)
{
  guint64 chance = seed;
  double all = 0;

  for (guint i = 0; i < spots->len; i++)
    all += search->shapes[shape_at (search, &g_array_index (spots, SqLaySpot, i))].parts->hull;
  double mean = all / spots->len;
  for (guint tries = 0; tries < 64; tries++)
    {
      guint i = (guint) (sq_lay_chance (&chance) % spots->len);
      guint k = (guint) (sq_lay_chance (&chance) % spots->len);
      SqLaySpot *a = &g_array_index (spots, SqLaySpot, i),
                *b = &g_array_index (spots, SqLaySpot, k);
      const Shape *sa = &search->shapes[shape_at (search, a)];
      const Shape *sb = &search->shapes[shape_at (search, b)];
      if (a->kind == b->kind || search->is_pinned[i] || search->is_pinned[k]
          || sa->parts->hull < mean / 2 || sb->parts->hull < mean / 2)
        continue;
      gint64 ax = a->x + sa->length / 2, ay = a->y + sa->width / 2;
      gint64 bx = b->x + sb->length / 2, by = b->y + sb->width / 2;
      guint strip = a->strip;
      a->strip = b->strip;
      b->strip = strip;
      a->x = bx - sa->length / 2;
      a->y = by - sa->width / 2;
      b->x = ax - sb->length / 2;
      b->y = ay - sb->width / 2;
      return;
    }
}
