/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/lay-tasks.h"

/* A cloth without a repeat has its stripes once: one place across. Longer than any cloth is wide. */
#define ONCE_MM 100000.0

static guint
lay_turns (const SqPiece *piece, const SqCloth *cloth)
{
  /* A half turn needs an axis of the stripes just where the piece must lie. */
  if (piece->phase.across && !sq_cloth_is_mirrored_about (cloth, piece->phase.across_mm))
    return SQ_LAY_UPRIGHT;
  switch (piece->turns)
    {
    case SQ_TURNS_NONE:
      return SQ_LAY_UPRIGHT;
    case SQ_TURNS_HALF:
      return SQ_LAY_UPRIGHT | SQ_LAY_HALF;
    case SQ_TURNS_QUARTER:
    case SQ_TURNS_FREE:
      break;
    }
  return SQ_LAY_UPRIGHT | SQ_LAY_QUARTER | SQ_LAY_HALF | SQ_LAY_THREE_QUARTERS;
}

static double
repeat_across_mm (const SqCloth *cloth)
{
  return cloth->repeat_across_mm > 0 ? cloth->repeat_across_mm : ONCE_MM;
}

/* Rounded down, but for what was lost in computing it; a cloth has some width. */
static gint32
grid_width (double mm)
{
  return MAX (sq_grid_from_mm (floor (mm * SQ_GRID_PER_MM + 1e-6) / SQ_GRID_PER_MM), 1);
}

SqLayTask *
sq_plan_lay_task (const SqPlan *plan, SqId id)
{
  const SqCloth *cloth = sq_plan_cloth (plan, id);
  double width = cloth != NULL && (cloth->given & SQ_GIVEN_CLOTH_WIDTH)
                     ? cloth->width_mm
                     : plan->job->defaults.cloth_width_mm;
  SqLayStrip roll = { .kind = SQ_STRIP_ROLL, .width = grid_width (width) };
  SqLayTask *task = sq_lay_task_new (0);

  sq_lay_task_add_strip (task, &roll);

  for (guint i = 0; i < plan->cut_list->len; i++)
    {
      const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, i);
      const SqPiece *piece = sq_cover_piece (sq_plan_cover (plan, entry->cushion), entry->piece);
      if (entry->cloth != id)
        continue;
      SqLayItemSpec spec = {
        .rings = piece->cut,
        .turn_rad = -piece->grain_rad,
        .turns = lay_turns (piece, cloth),
        .anchor = piece->phase.anchor,
        .along_mm = piece->phase.along_mm,
        .across_mm = piece->phase.across_mm,
        .repeat_along_mm = piece->phase.along ? cloth->repeat_along_mm : 0,
        .repeat_across_mm = piece->phase.across ? repeat_across_mm (cloth) : 0,
        .drop_mm = piece->phase.along ? cloth->drop * cloth->repeat_along_mm : 0,
        .demand = entry->count,
        .tag = i,
      };
      sq_lay_task_add (task, &spec);
    }
  sq_lay_task_seal (task);
  return task;
}
