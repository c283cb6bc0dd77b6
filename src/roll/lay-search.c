/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-search.h"

#include "roll/lay-order.h"

#include <math.h>
#include <string.h>

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

/* ---- a state ------------------------------------------------------------------------------- */

/* Pieces first, then what is fixed. */
typedef struct
{
  SqLayWorld *world;
  const gint32 *ends;
  guint n_free, n, stride; /* pieces; all; all, a whole number of lanes */
  SqLayPlace *places;
  gint32 *x0, *x1, *y0, *y1; /* the boxes of their parts, by lanes */
  float *losses, *weights;   /* by two of them; stride apart */
  guint64 chance;
} State;

static gint32 *
lanes_new (guint n)
{
  return g_aligned_alloc0 (n, sizeof (gint32), sizeof (Lanes));
}

static void
put (State *state, guint i, SqLayPlace place)
{
  const SqGridBox *box = &state->world->shapes[place.shape].box;

  state->places[i] = place;
  state->x0[i] = place.x + box->min.x;
  state->x1[i] = place.x + box->max.x;
  state->y0[i] = place.y + box->min.y;
  state->y1[i] = place.y + box->max.y;
}

static State *
state_new (SqLayWorld *world, const GArray *spots, const gint32 *ends, guint64 seed)
{
  State *state = g_new0 (State, 1);

  state->world = world;
  state->ends = ends;
  state->n_free = spots->len;
  state->n = spots->len + world->fixed->len;
  state->stride = (state->n + LANES - 1) / LANES * LANES;
  state->places = g_new0 (SqLayPlace, state->n);
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
    put (state, i, sq_lay_world_place (world, &g_array_index (spots, SqLaySpot, i)));
  for (guint i = 0; i < world->fixed->len; i++)
    put (state, spots->len + i, g_array_index (world->fixed, SqLayPlace, i));
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
to_spots (const SqLayWorld *world, const SqLayPlace *places, GArray *spots)
{
  for (guint i = 0; i < spots->len; i++)
    g_array_index (spots, SqLaySpot, i) = sq_lay_world_spot (world, &places[i]);
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

static gboolean
room_for (const State *state, guint shape, guint strip, gint32 *most_x, gint32 *most_y)
{
  return sq_lay_world_room (state->world, shape, strip, state->ends[strip], most_x, most_y);
}

static gboolean
settle (const State *state, SqLayPlace *place, gint64 x, gint64 y)
{
  return sq_lay_world_settle (state->world, state->ends[place->strip], place, x, y);
}

/* Any pose. */
static guint
any_shape (State *state, guint shape)
{
  const SqLayWorldShape *s = &state->world->shapes[shape];
  const SqLayKinds *kinds = state->world->kinds;
  guint n = sq_lay_kind (kinds, s->kind)->n_shapes;

  return n == 1 ? shape : shape - s->pose + chance_below (state, n);
}

/* A strip by the room it has for @shape; FALSE where none has any. */
static gboolean
any_strip (State *state, guint shape, guint *strip, gint32 *most_x, gint32 *most_y)
{
  double all = 0;
  guint n = state->world->n_strips;

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
anywhere (State *state, guint shape, SqLayPlace *place)
{
  gint32 most_x, most_y;

  place->shape = any_shape (state, shape);
  if (!any_strip (state, place->shape, &place->strip, &most_x, &most_y))
    return FALSE;
  gint32 x = chance_up_to (state, most_x), y = chance_up_to (state, most_y);
  return settle (state, place, x, y);
}

static gboolean
near_by (State *state, const SqLayPlace *from, SqLayPlace *place)
{
  const SqLayWorldShape *old = &state->world->shapes[from->shape];
  *place = *from;
  place->shape = any_shape (state, from->shape);
  const SqLayWorldShape *new = &state->world->shapes[place->shape];
  /* The middle goes anywhere in the old box. */
  gint64 x = from->x + chance_up_to (state, old->length) - new->length / 2;
  gint64 y = from->y - state->world->strip_y[from->strip] + chance_up_to (state, old->width)
             - new->width / 2;
  return settle (state, place, x, y);
}

/* ---- losses -------------------------------------------------------------------------------- */

static inline float
pair_loss (State *state, const SqLayPlace *place, guint i)
{
  SqLayWorld *world = state->world;
  const SqLayPlace *other = &state->places[i];
  float depth = sq_lay_world_depth (world, place->shape, other->shape, place->x - other->x,
                                    place->y - other->y);

  return depth == 0
             ? 0
             : depth * world->shapes[place->shape].weight * world->shapes[other->shape].weight;
}

/* What piece @i would lose at @place; as soon as that is @bound or more, something that is. */
static float
look (State *state, guint i, const SqLayPlace *place, float bound)
{
  const SqGridBox *box = &state->world->shapes[place->shape].box;
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

/* Notes what piece @i and the others lose by each other; what is fixed does not move for what is. */
static void
note_losses (State *state, guint i)
{
  const SqLayPlace *place = &state->places[i];

  for (guint k = 0; k < state->n; k++)
    {
      gboolean apart = k == i || (i >= state->n_free && k >= state->n_free)
                       || state->x0[k] >= state->x1[i] || state->x1[k] <= state->x0[i]
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
  SqLayPlace place;
  float loss;
} Sample;

static gboolean
try_step (State *state, guint i, Sample *sample, float step_x, float step_y)
{
  SqLayPlace place = sample->place;
  gint64 x = place.x + (gint64) step_x;
  gint64 y = place.y - state->world->strip_y[place.strip] + (gint64) step_y;

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
  const SqLayPlace from = state->places[i];
  float side = state->world->shapes[from.shape].side_um;
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
  for (guint i = state->n_free; i < state->n; i++)
    {
      const SqLayPlace *place = &state->places[i];
      gint32 length = state->world->shapes[place->shape].length; /* 0: a flaw */
      if (length > 0 && place->x + length > state->ends[place->strip])
        return FALSE;
    }
  for (guint i = 0; i < state->n_free; i++)
    {
      SqLayPlace place = state->places[i];
      gboolean fits = settle (state, &place, place.x, place.y - state->world->strip_y[place.strip]);
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
    if (is_in_way (state, i))
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
strike (State *state, guint patience, guint *order, SqLayPlace *best, double *least,
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
          memcpy (best, state->places, state->n * sizeof (SqLayPlace));
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
sq_lay_search_separate (SqLayWorld *world, GArray *spots, const gint32 *ends, guint64 seed,
                        SqLayEffort effort, gboolean (*is_cancelled) (gpointer), gpointer data,
                        double *loss)
{
  State *state = state_new (world, spots, ends, seed);
  g_autofree guint *order = g_new (guint, state->n);
  g_autofree SqLayPlace *best = g_new (SqLayPlace, state->n);
  double least = G_MAXDOUBLE;
  float most;
  gboolean goes_on = draw_in (state);

  if (goes_on)
    {
      for (guint i = 0; i < state->n; i++)
        note_losses (state, i);
      least = all_losses (state, &most);
      memcpy (best, state->places, state->n * sizeof (SqLayPlace));
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
    to_spots (world, best, spots);
  if (loss != NULL)
    *loss = least;
  state_free (state);
  return least == 0;
}

/* ---- drawing together ---------------------------------------------------------------------- */

static int
compare_lefts (gconstpointer a, gconstpointer b, gpointer data)
{
  const SqLayPlace *places = data;
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
  float step = state->world->shapes[state->places[i].shape].side_um / 4;

  while (step >= 1)
    {
      SqLayPlace place = state->places[i];
      if (settle (state, &place, place.x + (gint64) (step * (float) x),
                  place.y - state->world->strip_y[place.strip] + (gint64) (step * (float) y))
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
sq_lay_search_compact (SqLayWorld *world, GArray *spots, const gint32 *ends)
{
  State *state = state_new (world, spots, ends, 1);
  g_autofree guint *order = g_new (guint, state->n);
  gboolean moved = TRUE;

  for (guint pass = 0; pass < 4 && moved; pass++)
    {
      moved = FALSE;
      for (guint i = 0; i < state->n_free; i++)
        order[i] = i;
      g_qsort_with_data (order, (gint) state->n_free, sizeof (guint), compare_lefts, state->places);
      for (guint i = 0; i < state->n_free; i++)
        {
          moved |= slide (state, order[i], -1, 0);
          slide (state, order[i], 0, pass % 2 == 0 ? -1 : 1);
          moved |= slide (state, order[i], -1, 0);
        }
    }
  to_spots (world, state->places, spots);
  state_free (state);
}

/* ---- changing places ----------------------------------------------------------------------- */

void
sq_lay_search_swap (SqLayWorld *world, GArray *spots, guint64 seed)
{
  guint64 chance = seed;
  double all = 0;

  for (guint i = 0; i < spots->len; i++)
    all += world->shapes[sq_lay_world_place (world, &g_array_index (spots, SqLaySpot, i)).shape]
               .parts->hull;
  double mean = all / spots->len;
  for (guint tries = 0; tries < 64; tries++)
    {
      guint i = (guint) (sq_lay_chance (&chance) % spots->len);
      guint k = (guint) (sq_lay_chance (&chance) % spots->len);
      SqLaySpot *a = &g_array_index (spots, SqLaySpot, i),
                *b = &g_array_index (spots, SqLaySpot, k);
      const SqLayWorldShape *sa = &world->shapes[sq_lay_world_place (world, a).shape];
      const SqLayWorldShape *sb = &world->shapes[sq_lay_world_place (world, b).shape];
      if (a->kind == b->kind || sa->parts->hull < mean / 2 || sb->parts->hull < mean / 2)
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
