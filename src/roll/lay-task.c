/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-task.h"

#include "geometry/offset.h"
#include "roll/lay-pins.h"
#include "roll/ring-crossings.h"

#define NM_PER_MM 1e6
#define MOST_NM_MM 500000.0

/* What flattening and rounding may take from a ring that was grown (mm). */
#define GAP_SLACK_MM 0.005

/* More than computing a corner loses, less than anybody measures. */
#define HALVES_UP_MM 1e-7

static void
clear_item (gpointer data)
{
  SqLayItem *item = data;

  if (item->keep != item->rings)
    sq_grid_rings_free (item->keep, item->n_keep);
  sq_grid_rings_free (item->rings, item->n_rings);
  g_free (item->poses);
}

static void
clear_strip (gpointer data)
{
  g_free (((SqLayStrip *) data)->flaws);
}

SqLayTask *
sq_lay_task_new (gint32 gap)
{
  g_return_val_if_fail (gap >= 0, NULL);

  SqLayTask *task = g_new0 (SqLayTask, 1);
  task->ref_count = 1;
  task->gap = gap;
  task->strips = g_array_new (FALSE, TRUE, sizeof (SqLayStrip));
  g_array_set_clear_func (task->strips, clear_strip);
  task->pins = g_array_new (FALSE, TRUE, sizeof (SqLayPin));
  task->bad_pins = g_array_new (FALSE, TRUE, sizeof (SqLayPin));
  task->items = g_array_new (FALSE, TRUE, sizeof (SqLayItem));
  g_array_set_clear_func (task->items, clear_item);
  return task;
}

/* Keeps what lies on the cloth of the strip's own flaws. */
static void
hold_flaws (SqLayStrip *strip)
{
  guint n = 0;

  for (guint i = 0; i < strip->n_flaws; i++)
    {
      SqGrid a = strip->flaws[i].min, b = strip->flaws[i].max;
      SqGridBox held = { { MAX (MIN (a.x, b.x), 0), MAX (MIN (a.y, b.y), 0) },
                         { MIN (MAX (a.x, b.x), sq_lay_strip_end (strip)),
                           MIN (MAX (a.y, b.y), strip->width) } };
      if (held.min.x < held.max.x && held.min.y < held.max.y)
        strip->flaws[n++] = held;
    }
  strip->n_flaws = n;
}

void
sq_lay_task_add_strip (SqLayTask *task, const SqLayStrip *strip)
{
  g_return_if_fail (task->digest == 0 && strip->width > 0 && strip->length >= 0);

  SqLayStrip held = *strip;
  guint at = task->strips->len;
  held.length = MIN (strip->length, SQ_LAY_LONGEST);
  held.flaws = g_memdup2 (strip->flaws, strip->n_flaws * sizeof (SqGridBox));
  hold_flaws (&held);
  while (at > 0 && sq_lay_task_strip (task, at - 1)->priority > strip->priority)
    at--;
  g_array_insert_val (task->strips, at, held);
}

void
sq_lay_task_set_straight (SqLayTask *task)
{
  g_return_if_fail (task->digest == 0);
  task->straight = TRUE;
}

void
sq_lay_task_add_pin (SqLayTask *task, const SqLayPin *pin)
{
  g_return_if_fail (task->digest == 0 && pin->item < task->items->len
                    && pin->strip < task->strips->len);
  g_array_append_val (task->pins, *pin);
}

/* ---- items --------------------------------------------------------------------------------- */

static gint64
to_nm (double mm)
{
  return llround (CLAMP (mm, -MOST_NM_MM, MOST_NM_MM) * NM_PER_MM);
}

/* Halves of a micrometre, which sixteenths of an inch are, all go up whatever computing them lost: so
 * corners that are in line stay so. */
static gint32
to_um (double mm)
{
  return sq_grid_from_mm (mm + HALVES_UP_MM);
}

static SqGridRing
to_ring (const SqPath *path)
{
  g_autoptr (SqPath) flat = sq_path_flattened (path, SQ_GRID_FLATTEN_MM);
  const SqNode *nodes = sq_path_nodes (flat);
  guint n = sq_path_n_nodes (flat);
  SqGridRing ring = { g_new (SqGrid, n), 0 };

  for (guint i = 0; i < n; i++)
    {
      SqGrid p = { to_um (nodes[i].at.x), to_um (nodes[i].at.y) };
      if (ring.n > 0 && ring.points[ring.n - 1].x == p.x && ring.points[ring.n - 1].y == p.y)
        continue;
      ring.points[ring.n++] = p;
    }
  return ring;
}

/* @path farther out by half the gap; NULL where nothing is left of a hole. An outer ring that
 * can't be grown by its parallel grows as its box. */
static SqPath *
grown (const SqPath *path, double by_mm, gboolean is_hole)
{
  SqJoinRule mitre = sq_join_rule_mitre (); /* a rectangle stays one */
  SqPath *result = sq_path_offset_evenly (path, by_mm, &mitre, NULL);
  SqBox box = sq_path_box (path);

  if (result != NULL || is_hole)
    return result;
  return sq_path_new_rectangle (box.min.x - by_mm, box.min.y - by_mm, box.max.x + by_mm,
                                box.max.y + by_mm);
}

/* Rounded as corners are, so that a piece just as wide as the cloth is that. */
static SqGridBox
to_box (const SqPath *path)
{
  SqBox box = sq_path_box (path);

  return (SqGridBox){ { to_um (box.min.x), to_um (box.min.y) },
                      { to_um (box.max.x), to_um (box.max.y) } };
}

static void
add_rings (SqLayItem *item, const SqLayItemSpec *spec)
{
  gint32 gap = item->gap;
  double by_mm = gap / SQ_GRID_PER_MM / 2 + GAP_SLACK_MM;

  item->rings = g_new (SqGridRing, spec->rings->len);
  item->keep = gap > 0 ? g_new (SqGridRing, spec->rings->len) : item->rings;
  for (guint i = 0; i < spec->rings->len; i++)
    {
      const SqPath *ring = g_ptr_array_index (spec->rings, i);
      g_autoptr (SqPath) turned = sq_path_moved (ring, spec->turn_rad, sq_point (0, 0));
      g_autoptr (SqPath) wide = gap > 0 ? grown (turned, by_mm, i > 0) : NULL;
      if (i == 0)
        item->box = to_box (turned);
      item->rings[item->n_rings++] = to_ring (turned);
      if (wide != NULL)
        item->keep[item->n_keep++] = to_ring (wide);
    }
  if (gap == 0)
    item->n_keep = item->n_rings;
}

static void
add_poses (SqLayItem *item, const SqLayItemSpec *spec)
{
  guint steps = spec->steps > 0 ? spec->steps : SQ_N_LAY_TURNS;

  if (spec->n_poses > 0)
    {
      item->poses = g_memdup2 (spec->poses, spec->n_poses * sizeof *spec->poses);
      item->n_poses = spec->n_poses;
      return;
    }
  item->poses = g_new (SqGridPose, 2 * steps);
  for (guint mirrored = 0; mirrored <= (spec->may_mirror ? 1 : 0); mirrored++)
    for (guint i = 0; i < steps; i++)
      if (spec->steps > 0 || (spec->turns & (1u << i)))
        item->poses[item->n_poses++] = (SqGridPose){
          (gint32) ((i * (gint64) SQ_GRID_WHOLE_TURN + steps / 2) / steps), mirrored != 0
        };
}

void
sq_lay_task_add (SqLayTask *task, const SqLayItemSpec *spec)
{
  const guint all = (1 << SQ_N_LAY_TURNS) - 1;
  g_return_if_fail (task->digest == 0 && spec->rings->len > 0);
  g_return_if_fail (spec->n_poses > 0 ? spec->n_poses <= SQ_LAY_MOST_POSES
                    : spec->steps > 0 ? spec->steps <= SQ_LAY_MOST_STEPS
                                      : spec->turns != 0 && (spec->turns & ~all) == 0);

  SqPoint anchor = sq_turned (spec->anchor, spec->turn_rad);
  SqLayItem item = {
    .phase = { .anchor = { sq_grid_from_mm (anchor.x), sq_grid_from_mm (anchor.y) },
               .along_nm = to_nm (spec->along_mm),
               .across_nm = to_nm (spec->across_mm),
               .repeat_along_nm = to_nm (spec->repeat_along_mm),
               .repeat_across_nm = to_nm (spec->repeat_across_mm),
               .drop_nm = to_nm (spec->drop_mm) },
    .gap = spec->gap_mm > 0 ? sq_grid_from_mm (spec->gap_mm) : task->gap,
    .priority = spec->priority,
    .demand = spec->demand,
    .tag = spec->tag,
  };
  add_rings (&item, spec);
  add_poses (&item, spec);
  item.crosses = sq_grid_rings_cross (item.rings, item.n_rings);
  g_array_append_val (task->items, item);
}

/* ---- digest -------------------------------------------------------------------------------- */

static void
digest_number (guint64 *state, gint64 number)
{
  *state = (*state ^ (guint64) number) * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);
  *state ^= *state >> 32;
}

static void
digest_numbers (guint64 *state, const gint64 *numbers, gsize n)
{
  for (gsize i = 0; i < n; i++)
    digest_number (state, numbers[i]);
}

static void
digest_rings (guint64 *state, const SqGridRing *rings, guint n_rings)
{
  digest_number (state, n_rings);
  for (guint i = 0; i < n_rings; i++)
    {
      digest_number (state, rings[i].n);
      for (guint k = 0; k < rings[i].n; k++)
        {
          digest_number (state, rings[i].points[k].x);
          digest_number (state, rings[i].points[k].y);
        }
    }
}

static void
digest_box (guint64 *state, const SqGridBox *box)
{
  const gint64 numbers[] = { box->min.x, box->min.y, box->max.x, box->max.y };
  digest_numbers (state, numbers, G_N_ELEMENTS (numbers));
}

static void
digest_pose (guint64 *state, SqGridPose pose)
{
  digest_number (state, pose.turn);
  digest_number (state, pose.mirrored);
}

void
sq_lay_task_seal (SqLayTask *task)
{
  guint64 state = 1;

  sq_lay_pins_judge (task);
  digest_number (&state, task->gap);
  digest_number (&state, task->straight);
  for (guint i = 0; i < task->strips->len; i++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (task, i);
      const gint64 numbers[] = { strip->kind,     strip->width,     strip->length,
                                 strip->priority, strip->pattern.x, strip->pattern.y };
      digest_numbers (&state, numbers, G_N_ELEMENTS (numbers));
      digest_number (&state, strip->n_flaws);
      for (guint k = 0; k < strip->n_flaws; k++)
        digest_box (&state, &strip->flaws[k]);
    }
  for (guint i = 0; i < task->items->len; i++)
    {
      const SqLayItem *item = sq_lay_task_item (task, i);
      const SqGridPhase *phase = &item->phase;
      const gint64 numbers[] = { item->demand,     item->priority,         item->gap,
                                 phase->anchor.x,  phase->anchor.y,        phase->along_nm,
                                 phase->across_nm, phase->repeat_along_nm, phase->repeat_across_nm,
                                 phase->drop_nm };
      digest_numbers (&state, numbers, G_N_ELEMENTS (numbers));
      digest_box (&state, &item->box);
      digest_number (&state, item->n_poses);
      for (guint k = 0; k < item->n_poses; k++)
        digest_pose (&state, item->poses[k]);
      digest_rings (&state, item->rings, item->n_rings);
    }
  for (guint i = 0; i < task->pins->len; i++)
    {
      const SqLayPin *pin = &g_array_index (task->pins, SqLayPin, i);
      const gint64 numbers[] = { pin->item, pin->copy, pin->strip, pin->at.x, pin->at.y };
      digest_numbers (&state, numbers, G_N_ELEMENTS (numbers));
      digest_pose (&state, pin->pose);
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
  g_array_unref (task->pins);
  g_array_unref (task->bad_pins);
  g_array_unref (task->strips);
  g_free (task);
}

GHashTable *
sq_lay_task_tags (const SqLayTask *task)
{
  GHashTable *by_tag = g_hash_table_new (NULL, NULL);

  for (guint i = task->items->len; i > 0; i--)
    g_hash_table_insert (by_tag, GUINT_TO_POINTER (sq_lay_task_item (task, i - 1)->tag),
                         GUINT_TO_POINTER (i));
  return by_tag;
}

guint
sq_lay_item_pose (const SqLayItem *item, SqGridPose pose)
{
  for (guint i = 0; i < item->n_poses; i++)
    if (sq_grid_pose_equal (item->poses[i], pose))
      return i;
  return G_MAXUINT;
}

gboolean
sq_lay_task_is_pinned (const SqLayTask *task, guint item, guint copy)
{
  for (guint i = 0; i < task->pins->len; i++)
    {
      const SqLayPin *pin = &g_array_index (task->pins, SqLayPin, i);
      if (pin->item == item && pin->copy == copy)
        return TRUE;
    }
  return FALSE;
}

SqGridBox
sq_lay_item_box (const SqLayItem *item, SqGridPose pose)
{
  if (pose.turn % SQ_GRID_QUARTER == 0)
    {
      SqGrid a = sq_grid_posed (item->box.min, pose), b = sq_grid_posed (item->box.max, pose);
      return (SqGridBox){ { MIN (a.x, b.x), MIN (a.y, b.y) }, { MAX (a.x, b.x), MAX (a.y, b.y) } };
    }
  /* How far an arc bulges from its chords is not known here; it is no farther than this. */
  const gint32 more = (gint32) (SQ_GRID_FLATTEN_MM * SQ_GRID_PER_MM);
  SqGridRing *posed = sq_grid_rings_posed (item->rings, item->n_rings, pose);
  SqGridBox box = sq_grid_rings_box (posed, item->n_rings);
  sq_grid_rings_free (posed, item->n_rings);
  return (SqGridBox){ { box.min.x - more, box.min.y - more },
                      { box.max.x + more, box.max.y + more } };
}

gint32
sq_lay_strip_end (const SqLayStrip *strip)
{
  return strip->length > 0 ? strip->length : SQ_LAY_LONGEST;
}
