/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/kept-lays.h"

#include "base/units.h"

/* What a number in a file gives back exactly: seed and steps beyond it are told as it. */
#define MOST_EXACT (G_GUINT64_CONSTANT (1) << 53)

/* A kept turn is a pose's but for what degrees lose. */
#define TURN_SLACK 1e-3

static const SqPiece *
piece_of_line (const SqPlan *plan, guint line)
{
  const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, line);
  return sq_cover_piece (sq_plan_cover (plan, entry->cushion), entry->piece);
}

/* ---- keeping ------------------------------------------------------------------------------- */

static void
keep_strips (SqKeptLay *kept, const SqClothLay *cloth)
{
  for (guint i = 0; i < cloth->task->strips->len; i++)
    {
      SqKeptStrip strip = {
        .width_mm = sq_lay_task_strip (cloth->task, i)->width / SQ_GRID_PER_MM,
        .length_mm = sq_lay_length (cloth->lay, i) / SQ_GRID_PER_MM,
      };
      g_array_append_val (kept->strips, strip);
    }
}

static void
keep_pieces (SqKeptLay *kept, const SqLays *lays, const SqLayTask *task, const char *const *names)
{
  for (guint i = 0; i < task->items->len; i++)
    {
      guint line = sq_lay_task_item (task, i)->tag;
      const SqCutEntry *entry = &g_array_index (lays->plan->cut_list, SqCutEntry, line);
      const SqCover *cover = sq_plan_cover (lays->plan, entry->cushion);
      SqKeptPiece piece = {
        .cushion = cover->cushion->id,
        .mirrored = cover->mirrored,
        .piece = entry->piece,
        .name = names != NULL ? g_ref_string_new (names[line]) : NULL,
        .cut = g_ptr_array_ref (sq_cover_piece (cover, entry->piece)->cut),
      };
      g_array_append_val (kept->pieces, piece);
    }
}

static void
keep_places (SqKeptLay *kept, const SqLays *lays, const SqLay *lay)
{
  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *p = sq_lay_placed (lay, i);
      SqKeptPlaced placed = { .piece = p->item, .copy = p->copy, .strip = p->strip };
      double turn_rad;
      sq_lays_place (lays, p, &turn_rad, &placed.at);
      placed.turn_deg = sq_turn_deg (turn_rad);
      g_array_append_val (kept->placed, placed);
    }
  for (guint i = 0; i < lay->unlaid->len; i++)
    {
      const SqUnlaid *u = &g_array_index (lay->unlaid, SqUnlaid, i);
      SqKeptUnlaid unlaid = { .piece = u->item, .count = u->count, .why = u->why };
      g_array_append_val (kept->unlaid, unlaid);
    }
}

SqKeptLay *
sq_lays_keep (const SqLays *lays, guint i, const char *const *names)
{
  const SqClothLay *cloth = sq_lays_cloth (lays, i);

  if (cloth->lay->placed->len == 0)
    return NULL;
  SqKeptLay *kept = sq_kept_lay_new (cloth->cloth);
  kept->digest = cloth->task->digest;
  kept->seed = MIN (cloth->lay->seed, MOST_EXACT);
  kept->steps = MIN (cloth->lay->steps, MOST_EXACT);
  kept->revision = lays->plan->job->revision;
  keep_strips (kept, cloth);
  keep_pieces (kept, lays, cloth->task, names);
  keep_places (kept, lays, cloth->lay);
  return kept;
}

/* ---- finding again ------------------------------------------------------------------------- */

/* The whole micrometres that @mm are; FALSE where it is none, or too far. */
static gboolean
to_grid (double mm, gint32 *grid)
{
  double um = round (mm * SQ_GRID_PER_MM);

  if (!(fabs (um) <= SQ_LAY_LONGEST) || um / SQ_GRID_PER_MM != mm)
    return FALSE;
  *grid = (gint32) um;
  return TRUE;
}

/* @turn_deg, to which the grain's turn comes, as a pose's; FALSE where it is none's. */
static gboolean
to_turn (double turn_deg, double grain_rad, gint32 *turn)
{
  double thousandths = sq_turn_deg (turn_deg * SQ_RAD_PER_DEG + grain_rad) * 1000;

  *turn = (gint32) round (thousandths) % SQ_GRID_WHOLE_TURN;
  return fabs (thousandths - round (thousandths)) <= TURN_SLACK;
}

static gboolean
add_placed (SqLay *lay, const SqKeptPlaced *kept, const SqPlan *plan, const SqLayTask *task)
{
  SqPlaced placed = { .item = kept->piece, .copy = kept->copy, .strip = kept->strip };

  if (kept->piece >= task->items->len)
    return FALSE;
  placed.tag = sq_lay_task_item (task, kept->piece)->tag;
  if (!to_grid (kept->at.x, &placed.at.x) || !to_grid (kept->at.y, &placed.at.y)
      || !to_turn (kept->turn_deg, piece_of_line (plan, placed.tag)->grain_rad, &placed.pose.turn))
    return FALSE;
  g_array_append_val (lay->placed, placed);
  return TRUE;
}

static gboolean
add_all (SqLay *lay, const SqKeptLay *kept, const SqPlan *plan, const SqLayTask *task)
{
  for (guint i = 0; i < kept->strips->len; i++)
    if (!to_grid (sq_kept_lay_strip (kept, i)->length_mm, &sq_lay_length (lay, i)))
      return FALSE;
  for (guint i = 0; i < kept->placed->len; i++)
    if (!add_placed (lay, sq_kept_lay_placed (kept, i), plan, task))
      return FALSE;
  for (guint i = 0; i < kept->unlaid->len; i++)
    {
      const SqKeptUnlaid *u = sq_kept_lay_unlaid (kept, i);
      SqUnlaid unlaid = { u->piece, u->count, (SqUnlaidWhy) u->why };
      g_array_append_val (lay->unlaid, unlaid);
    }
  return TRUE;
}

SqLay *
sq_kept_lay_found (const SqKeptLay *kept, const SqPlan *plan, const SqLayTask *task)
{
  g_autoptr (SqLay) lay = NULL;

  if (kept->digest != task->digest || kept->strips->len != task->strips->len)
    return NULL;
  lay = sq_lay_new (task);
  lay->seed = kept->seed;
  lay->steps = kept->steps;
  return add_all (lay, kept, plan, task) && sq_lay_is_valid (task, lay) ? g_steal_pointer (&lay)
                                                                        : NULL;
}
