/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/lay-tasks.h"

#include "base/units.h"

/* A cloth without a repeat has its stripes once: one place across. Longer than any cloth is wide. */
#define ONCE_MM 100000.0

static guint
lay_turns (const SqPiece *piece, const SqCloth *cloth, gboolean is_matched)
{
  /* A half turn needs an axis of the stripes just where the piece must lie. */
  if (is_matched && piece->phase.across
      && !sq_cloth_is_mirrored_about (cloth, piece->phase.across_mm))
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

/* ---- what there is to lay on --------------------------------------------------------------- */

/* Remnants are used up first, then bolts; only what is left is bought. */
enum
{
  FIRST_REMNANTS,
  THEN_BOLTS,
  THEN_BOUGHT,
};

/* The boxes of the flaws on @stock that cover anything. */
static GArray *
flaws_on (const SqCloth *cloth, SqId stock)
{
  GArray *boxes = g_array_new (FALSE, FALSE, sizeof (SqGridBox));

  for (guint i = 0; cloth != NULL && i < cloth->flaws->len; i++)
    {
      const SqFlaw *flaw = sq_cloth_flaw (cloth, i);
      SqGridBox box = { { sq_grid_from_mm (flaw->x_mm), sq_grid_from_mm (flaw->y_mm) },
                        { sq_grid_from_mm (flaw->x_mm + flaw->along_mm),
                          sq_grid_from_mm (flaw->y_mm + flaw->across_mm) } };
      if (flaw->stock == stock && box.max.x > box.min.x && box.max.y > box.min.y)
        g_array_append_val (boxes, box);
    }
  return boxes;
}

static void
add_strip (SqLayTask *task, const SqCloth *cloth, SqId stock, SqLayStrip strip)
{
  g_autoptr (GArray) flaws = flaws_on (cloth, stock);

  strip.tag = stock;
  strip.flaws = (SqGridBox *) (gpointer) flaws->data;
  strip.n_flaws = flaws->len;
  sq_lay_task_add_strip (task, &strip);
}

static void
add_strips (SqLayTask *task, const SqCloth *cloth, double width_mm)
{
  for (guint i = 0; cloth != NULL && i < cloth->stock->len; i++)
    {
      const SqStock *stock = sq_cloth_stock (cloth, i);
      SqLayStrip strip = {
        .kind = SQ_STRIP_REMNANT,
        .width = grid_width (stock->width_mm > 0 ? stock->width_mm : width_mm),
        .length = grid_width (stock->length_mm),
        .priority = stock->kind == SQ_STOCK_REMNANT ? FIRST_REMNANTS : THEN_BOLTS,
      };
      if (stock->length_mm > 0)
        add_strip (task, cloth, stock->id, strip);
    }
  add_strip (task, cloth, 0,
             (SqLayStrip){
                 .kind = SQ_STRIP_ROLL, .width = grid_width (width_mm), .priority = THEN_BOUGHT });
}

/* ---- pins ---------------------------------------------------------------------------------- */

SqPinned
sq_plan_pinned (const SqPlan *plan, guint line, guint copy)
{
  const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, line);
  const SqCover *cover = sq_plan_cover (plan, entry->cushion);
  const SqPiece *piece = sq_cover_piece (cover, entry->piece);

  return (SqPinned){ .cloth = entry->cloth,
                     .cushion = cover->cushion->id,
                     .mirrored = cover->mirrored,
                     .role = piece->role,
                     .ordinal = piece->ordinal,
                     .copy = copy };
}

/* The item that @of is a copy of, or how many there are. */
static guint
item_of (const SqPlan *plan, const SqLayTask *task, const SqPinned *of)
{
  guint i = 0;

  for (; i < task->items->len; i++)
    {
      const SqLayItem *item = sq_lay_task_item (task, i);
      SqPinned pinned = sq_plan_pinned (plan, item->tag, of->copy);
      if (sq_pinned_equal (&pinned, of) && of->copy < item->demand)
        break;
    }
  return i;
}

static guint
strip_of (const SqLayTask *task, SqId stock)
{
  guint i = 0;

  while (i < task->strips->len && sq_lay_task_strip (task, i)->tag != stock)
    i++;
  return i;
}

static gint32
to_grid (double mm)
{
  return (gint32) round (CLAMP (mm * SQ_GRID_PER_MM, -SQ_LAY_LONGEST, SQ_LAY_LONGEST));
}

static void
add_pin (SqLayTask *task, const SqPlan *plan, const SqPin *pin)
{
  SqLayPin held = { .item = item_of (plan, task, &pin->of),
                    .copy = pin->of.copy,
                    .strip = strip_of (task, pin->stock),
                    .at = { to_grid (pin->at.x), to_grid (pin->at.y) } };

  if (held.item == task->items->len || held.strip == task->strips->len)
    return;
  guint line = sq_lay_task_item (task, held.item)->tag;
  const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, line);
  const SqPiece *piece = sq_cover_piece (sq_plan_cover (plan, entry->cushion), entry->piece);
  double turn = sq_turn_deg (pin->turn_deg * SQ_RAD_PER_DEG + piece->grain_rad) * 1000;
  held.pose.turn = (gint32) fmod (round (turn), SQ_GRID_WHOLE_TURN);
  sq_lay_task_add_pin (task, &held);
}

/* ---- the task ------------------------------------------------------------------------------ */

static void
add_item (SqLayTask *task, const SqPlan *plan, const SqCloth *cloth, guint line,
          gboolean is_matched, guint plies)
{
  const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, line);
  const SqPiece *piece = sq_cover_piece (sq_plan_cover (plan, entry->cushion), entry->piece);
  SqLayItemSpec spec = {
    .rings = piece->cut,
    .turn_rad = -piece->grain_rad,
    .turns = lay_turns (piece, cloth, is_matched),
    .anchor = piece->phase.anchor,
    .along_mm = piece->phase.along_mm,
    .across_mm = piece->phase.across_mm,
    .repeat_along_mm = is_matched && piece->phase.along ? cloth->repeat_along_mm : 0,
    .repeat_across_mm = is_matched && piece->phase.across ? repeat_across_mm (cloth) : 0,
    .drop_mm = is_matched && piece->phase.along ? cloth->drop * cloth->repeat_along_mm : 0,
    .demand = entry->count / plies + (entry->count % plies > 0),
    .tag = line,
  };

  sq_lay_task_add (task, &spec);
}

static double
roll_width_mm (const SqPlan *plan, const SqCloth *cloth)
{
  return cloth != NULL && (cloth->given & SQ_GIVEN_CLOTH_WIDTH)
             ? cloth->width_mm
             : plan->job->defaults.cloth_width_mm;
}

static void
add_items (SqLayTask *task, const SqPlan *plan, SqId id, gboolean is_matched, guint plies)
{
  for (guint i = 0; i < plan->cut_list->len; i++)
    if (g_array_index (plan->cut_list, SqCutEntry, i).cloth == id)
      add_item (task, plan, sq_plan_cloth (plan, id), i, is_matched, plies);
}

SqLayTask *
sq_plan_lay_task_otherwise (const SqPlan *plan, SqId id, guint otherwise)
{
  const SqCloth *cloth = sq_plan_cloth (plan, id);
  SqLayTask *task = sq_lay_task_new (0);

  add_strips (task, otherwise & SQ_LAY_ALL_BOUGHT ? NULL : cloth, roll_width_mm (plan, cloth));
  add_items (task, plan, id, !(otherwise & SQ_LAY_UNMATCHED), 1);
  for (guint i = 0; i < plan->job->pins->len; i++)
    if (sq_job_pin (plan->job, i)->of.cloth == id && !(otherwise & SQ_LAY_ALL_BOUGHT))
      add_pin (task, plan, sq_job_pin (plan->job, i));
  if ((otherwise & SQ_LAY_STRAIGHT)
      || (plan->job->laying.cuts == SQ_CUTS_STRAIGHT && !(otherwise & SQ_LAY_FREE)))
    sq_lay_task_set_straight (task);
  sq_lay_task_seal (task);
  return task;
}

SqLayTask *
sq_plan_lay_task (const SqPlan *plan, SqId id)
{
  return sq_plan_lay_task_otherwise (plan, id, 0);
}

SqLayTask *
sq_plan_lay_task_deep (const SqPlan *plan, SqId id, guint plies, guint tables, double table_mm)
{
  SqLayTask *task = sq_lay_task_new (0);
  SqLayStrip strip = { .kind = SQ_STRIP_ROLL,
                       .tag = G_MAXUINT,
                       .width = grid_width (roll_width_mm (plan, sq_plan_cloth (plan, id))),
                       .length = tables > 0 ? grid_width (table_mm) : 0 };

  for (guint i = 0; i < MAX (tables, 1); i++)
    sq_lay_task_add_strip (task, &strip);
  add_items (task, plan, id, TRUE, plies);
  sq_lay_task_seal (task);
  return task;
}
