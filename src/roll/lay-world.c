/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-world.h"

#include <math.h>

/* Pairs weigh each by itself, so pieces may not be too many. */
#define MOST_PIECES 512
/* Tables for all pairs of shapes. */
#define MOST_SHAPES 2048
/* Products of a table's numbers fit up to this size of a piece (µm). */
#define LARGEST_UM 200000000

/* ---- shapes -------------------------------------------------------------------------------- */

static SqLayWorldShape
shape_of_kind (const SqLayKinds *kinds, guint kind, guint pose)
{
  const SqLayItem *item = sq_lay_task_item (kinds->task, sq_lay_kind (kinds, kind)->first);
  const SqLayShape *outline = sq_lay_kind (kinds, kind)->shapes[pose];
  SqLayParts *parts = sq_lay_parts_new (item, item->poses[pose]);

  return (SqLayWorldShape){ .parts = parts,
                            .box = parts->box,
                            .length = outline->length,
                            .width = outline->width,
                            .side_um = (float) MIN (outline->length, outline->width),
                            .weight = (float) sqrt (sqrt (parts->hull)),
                            .kind = kind,
                            .pose = pose };
}

static void
add_shapes (SqLayWorld *world)
{
  const SqLayKinds *kinds = world->kinds;
  guint n = 0;

  for (guint i = 0; i < kinds->kinds->len; i++)
    for (guint pose = 0; pose < sq_lay_kind (kinds, i)->n_shapes; pose++, n++)
      {
        if (pose == 0)
          world->first_shape[i] = n;
        world->shapes[n] = shape_of_kind (kinds, i, pose);
      }
  for (guint k = 0; k < world->n_strips; k++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (kinds->task, k);
      for (guint i = 0; i < strip->n_flaws; i++, n++)
        {
          SqGridBox box = strip->flaws[i];
          SqGrid size = { box.max.x - box.min.x, box.max.y - box.min.y };
          SqLayPlace flaw = { n, k, box.min.x, (gint32) (box.min.y + world->strip_y[k]) };
          world->shapes[n].parts = sq_lay_parts_new_box (size);
          world->shapes[n].box = world->shapes[n].parts->box;
          world->shapes[n].weight = (float) sqrt (sqrt (world->shapes[n].parts->hull));
          g_array_append_val (world->fixed, flaw);
        }
    }
}

/* Weights about 1, so that losses are lengths. */
static void
even_weights (SqLayWorld *world)
{
  float sum = 0;

  for (guint i = 0; i < world->n_shapes; i++)
    sum += world->shapes[i].weight;
  for (guint i = 0; i < world->n_shapes; i++)
    world->shapes[i].weight = sqrtf (world->shapes[i].weight * (float) world->n_shapes / sum);
}

static void
add_phases (SqLayWorld *world)
{
  const SqLayKinds *kinds = world->kinds;

  for (guint i = 0; i < kinds->kinds->len; i++)
    {
      const SqLayKind *kind = sq_lay_kind (kinds, i);
      const SqLayItem *item = sq_lay_task_item (kinds->task, kind->first);
      world->is_phased[i] = item->phase.repeat_along_nm > 0 || item->phase.repeat_across_nm > 0;
      for (guint pose = 0; pose < kind->n_shapes; pose++)
        for (guint k = 0; k < world->n_strips; k++)
          world->phases[(world->first_shape[i] + pose) * world->n_strips + k] = sq_lay_phase (
              item, item->poses[pose], kind->shapes[pose]->at, sq_lay_task_strip (kinds->task, k));
    }
}

static void
add_pinned (SqLayWorld *world)
{
  for (guint i = 0; i < world->kinds->pinned->len; i++)
    {
      SqLayPlace place = sq_lay_world_place (world,
                                             &g_array_index (world->kinds->pinned, SqLaySpot, i));
      g_array_append_val (world->fixed, place);
    }
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

SqLayWorld *
sq_lay_world_new (const SqLayKinds *kinds, const GArray *spots)
{
  guint n_shapes = 0, n_strips = kinds->task->strips->len;

  for (guint i = 0; i < kinds->kinds->len; i++)
    n_shapes += sq_lay_kind (kinds, i)->n_shapes;
  for (guint k = 0; k < n_strips; k++)
    n_shapes += sq_lay_task_strip (kinds->task, k)->n_flaws;
  if (!is_fit (kinds, spots, n_shapes))
    return NULL;

  SqLayWorld *world = g_new0 (SqLayWorld, 1);
  world->kinds = kinds;
  world->n_shapes = n_shapes;
  world->n_strips = n_strips;
  world->shapes = g_new0 (SqLayWorldShape, n_shapes);
  world->first_shape = g_new0 (guint, kinds->kinds->len);
  world->nofits = g_new0 (SqLayNofit *, (gsize) n_shapes * n_shapes);
  world->strip_y = g_new0 (gint64, n_strips + 1);
  world->phases = g_new0 (SqLayPhase, (gsize) n_shapes * n_strips);
  world->is_phased = g_new0 (gboolean, kinds->kinds->len);
  world->fixed = g_array_new (FALSE, FALSE, sizeof (SqLayPlace));
  g_mutex_init (&world->lock);
  for (guint k = 0; k < n_strips; k++)
    world->strip_y[k + 1] = world->strip_y[k] + sq_lay_task_strip (kinds->task, k)->width;
  add_shapes (world);
  even_weights (world);
  add_phases (world);
  add_pinned (world);
  return world;
}

void
sq_lay_world_free (SqLayWorld *world)
{
  for (guint i = 0; i < world->n_shapes; i++)
    g_clear_pointer (&world->shapes[i].parts, sq_lay_parts_free);
  for (gsize i = 0; i < (gsize) world->n_shapes * world->n_shapes; i++)
    sq_lay_nofit_free (world->nofits[i]);
  g_free (world->shapes);
  g_free (world->first_shape);
  g_free (world->nofits);
  g_free (world->strip_y);
  g_free (world->phases);
  g_free (world->is_phased);
  g_array_unref (world->fixed);
  g_mutex_clear (&world->lock);
  g_free (world);
}

const SqLayNofit *
sq_lay_world_make_nofit (SqLayWorld *world, guint moving, guint fixed)
{
  SqLayNofit **place = &world->nofits[(gsize) moving * world->n_shapes + fixed];

  g_mutex_lock (&world->lock);
  if (*place == NULL)
    {
      SqLayNofit *made = sq_lay_nofit_new (world->shapes[moving].parts, world->shapes[fixed].parts);
      g_atomic_pointer_set (place, made);
    }
  g_mutex_unlock (&world->lock);
  return *place;
}

/* ---- places ---------------------------------------------------------------------------------- */

SqLayPlace
sq_lay_world_place (const SqLayWorld *world, const SqLaySpot *spot)
{
  return (SqLayPlace){ world->first_shape[spot->kind] + spot->pose, spot->strip, (gint32) spot->x,
                       (gint32) (spot->y + world->strip_y[spot->strip]) };
}

SqLaySpot
sq_lay_world_spot (const SqLayWorld *world, const SqLayPlace *place)
{
  const SqLayWorldShape *shape = &world->shapes[place->shape];

  return (SqLaySpot){ shape->kind, place->strip, shape->pose, place->x,
                      place->y - world->strip_y[place->strip] };
}

gboolean
sq_lay_world_room (const SqLayWorld *world, guint shape, guint strip, gint32 end, gint32 *most_x,
                   gint32 *most_y)
{
  const SqLayWorldShape *s = &world->shapes[shape];

  *most_x = end - s->length;
  *most_y = sq_lay_task_strip (world->kinds->task, strip)->width - s->width;
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

gboolean
sq_lay_world_settle (const SqLayWorld *world, gint32 end, SqLayPlace *place, gint64 x, gint64 y)
{
  gint32 most_x, most_y, at_x;

  if (!sq_lay_world_room (world, place->shape, place->strip, end, &most_x, &most_y))
    return FALSE;
  x = CLAMP (x, 0, most_x);
  y = CLAMP (y, 0, most_y);
  if (world->is_phased[world->shapes[place->shape].kind])
    {
      const SqLayPhase *phase = &world->phases[place->shape * world->n_strips + place->strip];
      gint64 last = sq_lay_phase_last_y (phase, y), next = sq_lay_phase_next_y (phase, y);
      y = last >= 0 && (y - last <= next - y || next > most_y) ? last : next;
      if (y < 0 || y > most_y || !snap_x (phase, y, x, most_x, &at_x))
        return FALSE;
      x = at_x;
    }
  place->x = (gint32) x;
  place->y = (gint32) (y + world->strip_y[place->strip]);
  return TRUE;
}
