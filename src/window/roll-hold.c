/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/roll-hold.h"

#include "drawing/roll-strips.h"
#include "roll/lay-place.h"

struct _SqRollHold
{
  SqLays *base;
  guint cloth, placed;
  SqLayPlacer *placer;
  SqLayPlace start, now;
  SqVector taken; /* where its (0, 0) was drawn when the hand took it */
  SqVector by;    /* the hand's way since then */
  gint over;      /* the strip it is over */
  SqLayFault refused;
  SqLays *lays;
};

static const SqClothLay *
cloth_of (const SqRollHold *hold)
{
  return sq_lays_cloth (hold->base, hold->cloth);
}

static SqVector
drawn_at (const SqRollHold *hold, const SqLayPlace *place)
{
  return sq_add (sq_roll_strip_offset (cloth_of (hold), place->strip),
                 sq_point (place->at.x / SQ_GRID_PER_MM, place->at.y / SQ_GRID_PER_MM));
}

SqRollHold *
sq_roll_hold_new (const SqLays *lays, guint cloth, guint index)
{
  const SqClothLay *own = sq_lays_cloth (lays, cloth);
  const SqPlaced *placed = sq_lay_placed (own->lay, index);
  SqRollHold *hold = g_new0 (SqRollHold, 1);

  hold->base = sq_lays_ref (lays);
  hold->lays = sq_lays_ref (lays);
  hold->cloth = cloth;
  hold->placed = index;
  hold->placer = sq_lay_placer_new (own->task, own->lay, index);
  hold->start = hold->now = (SqLayPlace){ placed->strip, placed->at, placed->pose };
  hold->taken = drawn_at (hold, &hold->start);
  hold->over = (gint) placed->strip;
  return hold;
}

void
sq_roll_hold_free (SqRollHold *hold)
{
  if (hold == NULL)
    return;
  sq_lay_placer_free (hold->placer);
  sq_lays_unref (hold->base);
  sq_lays_unref (hold->lays);
  g_free (hold);
}

/* The lay with the piece at @place; what it takes of the strip is what it took, or up to there. */
static SqLay *
moved (const SqRollHold *hold, const SqLayPlace *place)
{
  const SqClothLay *cloth = cloth_of (hold);
  const SqLay *lay = cloth->lay;
  SqLay *next = sq_lay_new (cloth->task);

  g_array_append_vals (next->placed, lay->placed->data, lay->placed->len);
  g_array_append_vals (next->unlaid, lay->unlaid->data, lay->unlaid->len);
  for (guint i = 0; i < lay->lengths->len; i++)
    g_array_index (next->lengths, gint32, i) = sq_lay_length (lay, i);
  SqPlaced *placed = sq_lay_placed (next, hold->placed);
  placed->strip = place->strip;
  placed->at = place->at;
  placed->pose = place->pose;
  SqGridBox box = sq_lay_item_box (sq_lay_task_item (cloth->task, placed->item), place->pose);
  gint32 *length = &g_array_index (next->lengths, gint32, place->strip);
  *length = MAX (*length, box.max.x + place->at.x);
  return next;
}

static void
put (SqRollHold *hold, const SqLayPlace *place)
{
  g_autoptr (SqLay) lay = moved (hold, place);

  hold->now = *place;
  sq_lays_unref (hold->lays);
  hold->lays = sq_lays_with_lay (hold->base, hold->cloth, lay);
}

static gboolean
try_near (SqRollHold *hold, const SqLayPlace *wish, const SqRollHand *hand)
{
  const SqLayPlaceHow how = { .reach = sq_grid_from_mm (hand->reach_mm),
                              .snap = sq_grid_from_mm (hand->snap_mm),
                              .others_move = hand->others_move };
  SqLayPlace found;

  SqLayFault fault = sq_lay_placer_fault (hold->placer, wish, hand->others_move);
  gboolean is_there = sq_lay_placer_near (hold->placer, wish, &how, &found);
  if (is_there)
    put (hold, &found);
  gboolean is_near = is_there
                     && hypot ((double) found.at.x - wish->at.x, (double) found.at.y - wish->at.y)
                            <= 2.0 * how.snap;
  /* To where the pattern falls it goes from anywhere: that is no refusal. */
  hold->refused = is_near || (is_there && fault == SQ_LAY_PATTERN) ? SQ_LAY_RIGHT : fault;
  return is_there;
}

/* Where the piece would be if it lay wherever the hand is. */
static SqLayPlace
wish_of (const SqRollHold *hold)
{
  SqVector at = sq_sub (sq_add (hold->taken, hold->by),
                        sq_roll_strip_offset (cloth_of (hold), (guint) hold->over));

  return (SqLayPlace){ (guint) hold->over,
                       { sq_grid_from_mm (at.x), sq_grid_from_mm (at.y) },
                       hold->now.pose };
}

gboolean
sq_roll_hold_move (SqRollHold *hold, SqVector by, gint strip, const SqRollHand *hand)
{
  if (strip >= 0)
    hold->over = strip;
  hold->by = by;
  SqLayPlace wish = wish_of (hold);
  return try_near (hold, &wish, hand);
}

/* Twice the middle of the piece's box in @pose, from its (0, 0). */
static SqGrid
twice_middle (const SqRollHold *hold, SqGridPose pose)
{
  const SqPlaced *placed = sq_lay_placed (cloth_of (hold)->lay, hold->placed);
  SqGridBox box = sq_lay_item_box (sq_lay_task_item (cloth_of (hold)->task, placed->item), pose);

  return sq_grid_add (box.min, box.max);
}

gboolean
sq_roll_hold_turn (SqRollHold *hold, const SqRollHand *hand)
{
  const SqPlaced *placed = sq_lay_placed (cloth_of (hold)->lay, hold->placed);
  const SqLayItem *item = sq_lay_task_item (cloth_of (hold)->task, placed->item);
  guint first = sq_lay_item_pose (item, hold->now.pose);
  SqGrid middle = twice_middle (hold, hold->now.pose);

  for (guint i = 1; i < item->n_poses; i++)
    {
      SqLayPlace wish = hold->now;
      wish.pose = item->poses[(first + i) % item->n_poses];
      SqGrid turned = twice_middle (hold, wish.pose);
      SqVector by = sq_point ((middle.x - turned.x) / 2 / SQ_GRID_PER_MM,
                              (middle.y - turned.y) / 2 / SQ_GRID_PER_MM);
      wish.at.x += (middle.x - turned.x) / 2;
      wish.at.y += (middle.y - turned.y) / 2;
      if (!try_near (hold, &wish, hand))
        continue;
      hold->taken = sq_add (hold->taken, by);
      return TRUE;
    }
  return FALSE;
}

/* How far a step goes: to where the pattern falls next, at least. */
static gint32
step (gint64 repeat_nm, double step_mm)
{
  gint32 own = sq_grid_from_mm (step_mm);
  gint64 repeat = repeat_nm / 1000;

  return repeat > own && repeat < G_MAXINT32 ? (gint32) repeat : own;
}

gboolean
sq_roll_hold_nudge (SqRollHold *hold, int along, int across, double step_mm)
{
  const SqPlaced *placed = sq_lay_placed (cloth_of (hold)->lay, hold->placed);
  const SqGridPhase *phase = &sq_lay_task_item (cloth_of (hold)->task, placed->item)->phase;
  gint32 by = along != 0 ? step (phase->repeat_along_nm, step_mm)
                         : step (phase->repeat_across_nm, step_mm);
  const SqRollHand hand = { .reach_mm = by / 2 / SQ_GRID_PER_MM };
  SqLayPlace wish = hold->now;

  wish.at.x += along * by;
  wish.at.y += across * by;
  return try_near (hold, &wish, &hand);
}

guint
sq_roll_hold_placed (const SqRollHold *hold)
{
  return hold->placed;
}

SqLayFault
sq_roll_hold_refused (const SqRollHold *hold)
{
  return hold->refused;
}

gboolean
sq_roll_hold_is_moved (const SqRollHold *hold)
{
  return hold->now.strip != hold->start.strip || hold->now.at.x != hold->start.at.x
         || hold->now.at.y != hold->start.at.y
         || !sq_grid_pose_equal (hold->now.pose, hold->start.pose);
}

const SqLays *
sq_roll_hold_lays (const SqRollHold *hold)
{
  return hold->lays;
}

SqPin
sq_roll_hold_pin (const SqRollHold *hold)
{
  const SqClothLay *cloth = sq_lays_cloth (hold->lays, hold->cloth);
  return sq_lays_pin (hold->lays, cloth, sq_lay_placed (cloth->lay, hold->placed));
}
