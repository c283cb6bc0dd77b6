/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/laws.h"

#include "geometry/geos.h"
#include "job/lay-edits.h"
#include "plan/kept-lays.h"
#include "roll/lay-cost.h"

/* Arcs are flattened so closely for GEOS (mm). */
#define FLAT_MM 0.0005
/* Drawn in by so much no piece meets another (mm): that is what blades follow. */
#define DRAWN_IN_MM 0.005
/* Where a piece lies is told in micrometres. */
#define ROUNDED_MM 0.002

/* A piece on its cloth. */
typedef struct
{
  const SqPiece *piece;
  const SqPlaced *placed;
  double turn_rad;
  SqVector by;
  SqBox box;
} Lying;

static SqPoint
lying_point (const Lying *lying, SqPoint p)
{
  return sq_add (sq_turned (p, lying->turn_rad), lying->by);
}

static Lying
lying_of (const SqPlan *plan, const SqPlaced *placed)
{
  const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, placed->tag);
  Lying lying = { .piece = sq_cover_piece (sq_plan_cover (plan, entry->cushion), entry->piece),
                  .placed = placed,
                  .by = { placed->at.x / 1000.0, placed->at.y / 1000.0 },
                  .box = sq_box_empty () };

  lying.turn_rad = placed->pose.turn * 2 * G_PI / SQ_GRID_WHOLE_TURN - lying.piece->grain_rad;
  g_autoptr (SqPath) moved = sq_path_moved (sq_piece_cut (lying.piece, 0), lying.turn_rad,
                                            lying.by);
  lying.box = sq_path_box (moved);
  return lying;
}

static GEOSGeometry *
ring_of (const Lying *lying, guint ring)
{
  g_autoptr (SqPath) moved = sq_path_moved (sq_piece_cut (lying->piece, ring), lying->turn_rad,
                                            lying->by);
  return geos_polygon (moved, FLAT_MM);
}

/* Without its holes: others may lie in them. */
static GEOSGeometry *
drawn_in (const Lying *lying)
{
  GEOSGeometry *whole = ring_of (lying, 0);

  for (guint i = 1; i < lying->piece->cut->len; i++)
    {
      GEOSGeometry *hole = ring_of (lying, i);
      GEOSGeometry *rest = GEOSDifference_r (geos_context (), whole, hole);
      GEOSGeom_destroy_r (geos_context (), hole);
      GEOSGeom_destroy_r (geos_context (), whole);
      whole = rest;
    }
  GEOSGeometry *result = GEOSBuffer_r (geos_context (), whole, -DRAWN_IN_MM, 4);

  GEOSGeom_destroy_r (geos_context (), whole);
  return result;
}

static double
off_by (double at_mm, double place_mm, double repeat_mm)
{
  return fabs (repeat_mm > 0 ? remainder (at_mm - place_mm, repeat_mm) : at_mm - place_mm);
}

/* Turned as it may be, on the cloth, and the pattern where the piece says. */
static const char *
check_one (const Lying *lying, const SqCloth *cloth, const SqLayTask *task, const SqLay *lay)
{
  double width_mm = sq_lay_task_strip (task, lying->placed->strip)->width / 1000.0;
  double length_mm = sq_lay_length (lay, lying->placed->strip) / 1000.0;
  const SqPhase *phase = &lying->piece->phase;
  SqPoint anchor = lying_point (lying, phase->anchor);
  gint32 turn = lying->placed->pose.turn;

  if (turn != 0
      && (lying->piece->turns == SQ_TURNS_NONE
          || (turn != 2 * SQ_GRID_QUARTER && lying->piece->turns == SQ_TURNS_HALF)))
    return "turned as it may not be";
  if (lying->box.min.x < -ROUNDED_MM || lying->box.min.y < -ROUNDED_MM
      || lying->box.max.x > length_mm + ROUNDED_MM || lying->box.max.y > width_mm + ROUNDED_MM)
    return "beyond the cloth";
  if (phase->across && off_by (anchor.y, phase->across_mm, cloth->repeat_across_mm) > ROUNDED_MM)
    return "stripes are off";
  /* In every other column a dropped pattern is half a repeat on. */
  double along_mm = cloth != NULL ? cloth->repeat_along_mm : 0;
  if (phase->along && cloth->drop > 0 && cloth->repeat_across_mm > 0
      && fmod (fabs (round ((anchor.y - phase->across_mm) / cloth->repeat_across_mm)), 2) > 0.5)
    anchor.x -= cloth->drop * along_mm;
  if (phase->along && off_by (anchor.x, phase->along_mm, along_mm) > ROUNDED_MM)
    return "the motif is off";
  return NULL;
}

/* Whether any of the flaws that the job tells of lies under the piece. */
static gboolean
is_on_flaw (const Lying *lying, const SqCloth *cloth, const SqLayTask *task)
{
  guint stock = sq_lay_task_strip (task, lying->placed->strip)->tag;
  GEOSGeometry *drawn = drawn_in (lying);
  gboolean is_on = FALSE;

  for (guint i = 0; cloth != NULL && i < cloth->flaws->len && !is_on; i++)
    {
      const SqFlaw *flaw = sq_cloth_flaw (cloth, i);
      if (flaw->stock != stock || !(flaw->along_mm > 0.1 && flaw->across_mm > 0.1))
        continue;
      g_autoptr (SqPath) box = sq_path_new_rectangle (
          flaw->x_mm, flaw->y_mm, flaw->x_mm + flaw->along_mm, flaw->y_mm + flaw->across_mm);
      GEOSGeometry *geos = geos_polygon (box, FLAT_MM);
      is_on = GEOSIntersects_r (geos_context (), drawn, geos) != 0;
      GEOSGeom_destroy_r (geos_context (), geos);
    }
  GEOSGeom_destroy_r (geos_context (), drawn);
  return is_on;
}

/* Nothing lies beyond the end of what is there. */
static gboolean
ends_hold (const SqCloth *cloth, const SqLayTask *task, const SqLay *lay)
{
  for (guint i = 0; i + 1 < task->strips->len; i++)
    {
      const SqStock *stock = sq_cloth_find_stock (cloth, sq_lay_task_strip (task, i)->tag);
      if (sq_lay_length (lay, i) / 1000.0 > stock->length_mm + ROUNDED_MM)
        return FALSE;
    }
  return TRUE;
}

/* Whether any two of @lying overlap. */
static gboolean
any_meet (const Lying *lying, guint n)
{
  g_autofree GEOSGeometry **drawn = g_new0 (GEOSGeometry *, MAX (n, 1));
  gboolean meet = FALSE;

  for (guint i = 0; i < n; i++)
    drawn[i] = drawn_in (&lying[i]);
  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < i && !meet; k++)
      meet = lying[i].placed->strip == lying[k].placed->strip
             && sq_box_meets (lying[i].box, lying[k].box, -DRAWN_IN_MM)
             && GEOSIntersects_r (geos_context (), drawn[i], drawn[k]) != 0;
  for (guint i = 0; i < n; i++)
    GEOSGeom_destroy_r (geos_context (), drawn[i]);
  return meet;
}

/* Each line of the cut list as often as it says, laid or told as not laid. */
static gboolean
counts_hold (const SqPlan *plan, const SqLayTask *task, const SqLay *lay)
{
  g_autofree guint *counts = g_new0 (guint, plan->cut_list->len + 1);

  for (guint i = 0; i < lay->placed->len; i++)
    counts[sq_lay_placed (lay, i)->tag]++;
  for (guint i = 0; i < lay->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (lay->unlaid, SqUnlaid, i);
      counts[sq_lay_task_item (task, unlaid->item)->tag] += unlaid->count;
    }
  for (guint i = 0; i < task->items->len; i++)
    {
      guint tag = sq_lay_task_item (task, i)->tag;
      if (counts[tag] != g_array_index (plan->cut_list, SqCutEntry, tag).count)
        return FALSE;
    }
  return TRUE;
}

static const char *
check_purchase (const SqPlan *plan, const SqLayTask *task, const SqLay *lay)
{
  SqPurchase p = sq_plan_purchase (plan, task, lay);
  double needed_mm = p.laid_mm + p.squaring_mm + p.pattern_mm, step_mm = sq_sold_by_mm (plan->job);

  gboolean is_bought = sq_lay_length (lay, task->strips->len - 1) > 0;

  if (p.bolts != (is_bought ? 1 : 0) || p.buy_mm < needed_mm - 0.001
      || p.buy_mm > needed_mm + step_mm || p.waste < 0 || p.waste > 1)
    return "too much or too little to buy";
  return NULL;
}

/* Strips of the outer boxing are made so short that their stripes can be met, if these recur at all
 * often. */
static gboolean
finds_no_stripe (const SqLays *lays, const SqClothLay *cloth, const SqUnlaid *unlaid)
{
  guint tag = sq_lay_task_item (cloth->task, unlaid->item)->tag;
  const SqCutEntry *entry = &g_array_index (lays->plan->cut_list, SqCutEntry, tag);
  const SqPiece *piece = sq_cover_piece (sq_plan_cover (lays->plan, entry->cushion), entry->piece);
  const SqCloth *own = sq_plan_cloth (lays->plan, cloth->cloth);
  double width_mm = sq_lay_task_strip (cloth->task, cloth->task->strips->len - 1)->width / 1000.0;

  return unlaid->why == SQ_UNLAID_PATTERN && piece->role == SQ_ROLE_BOXING && !piece->phase.along
         && own->repeat_across_mm > 0 && own->repeat_across_mm < 0.3 * width_mm;
}

/* What is kept is the same lay again. */
static gboolean
is_found_again (const SqLays *lays, guint i)
{
  const SqClothLay *cloth = sq_lays_cloth (lays, i);
  g_autoptr (SqKeptLay) kept = sq_lays_keep (lays, i, NULL);

  if (kept == NULL)
    return cloth->lay->placed->len == 0;
  g_autoptr (SqLay) found = sq_kept_lay_found (kept, lays->plan, cloth->task);
  return found != NULL && sq_lay_compare (cloth->task, found, cloth->lay) == 0;
}

static const char *
check_cloth (const SqLays *lays, guint index)
{
  const SqPlan *plan = lays->plan;
  const SqLayTask *task = sq_lays_cloth (lays, index)->task;
  const SqLay *lay = sq_lays_cloth (lays, index)->lay;
  const SqCloth *cloth = sq_plan_cloth (plan, sq_lays_cloth (lays, index)->cloth);
  guint n = lay->placed->len;
  g_autofree Lying *lying = g_new (Lying, MAX (n, 1));

  if (!counts_hold (plan, task, lay))
    return "not as often as wanted";
  for (guint i = 0; i < n; i++)
    {
      lying[i] = lying_of (plan, sq_lay_placed (lay, i));
      const char *wrong = check_one (&lying[i], cloth, task, lay);
      if (wrong != NULL)
        return wrong;
      if (is_on_flaw (&lying[i], cloth, task))
        return "on a flaw";
    }
  if (!ends_hold (cloth, task, lay))
    return "over the end of what is there";
  for (guint i = 0; i < lay->unlaid->len; i++)
    if (finds_no_stripe (lays, sq_lays_cloth (lays, index),
                         &g_array_index (lay->unlaid, SqUnlaid, i)))
      return "boxing whose stripes can't be met";
  if (any_meet (lying, n))
    return "two overlap";
  if (!sq_lay_is_valid (task, lay))
    return "it is found wrong";
  if (!is_found_again (lays, index))
    return "once kept it is not found again";
  return check_purchase (plan, task, lay);
}

/* A piece that is pinned where it lies is kept there, and all else can still be laid. */
static const char *
check_pinned (const LawCase *c, const SqLays *lays, guint index)
{
  const SqClothLay *cloth = sq_lays_cloth (lays, index);
  const SqPlaced *placed = sq_lay_placed (cloth->lay, c->seed % cloth->lay->placed->len);
  SqPin pin = sq_lays_pin (lays, cloth, placed);
  g_autoptr (SqJob) job = sq_job_with_pin (c->job, &pin);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLays) pinned = sq_lays_new (plan, NULL, &lays->budget, NULL);
  const SqClothLay *now = sq_lays_cloth (pinned, index);
  guint n_unlaid = cloth->purchase.unlaid;

  if (now->task->pins->len != 1 || now->task->bad_pins->len != 0)
    return "where it lies it can't be pinned";
  if (!sq_lay_is_valid (now->task, now->lay))
    return "with a pin it is found wrong";
  return now->purchase.unlaid > n_unlaid && cloth->task->strips->len == 1
             ? "with a pin less can be laid"
             : NULL;
}

/* The same of foam on its sheets, by the lay's own judge. */
static const char *
check_foam (const SqPlan *plan, const SqFoamLay *foam)
{
  guint n = 0;

  for (guint i = 0; i < foam->parts->len; i++)
    {
      const SqFoamOf *of = sq_foam_lay_part (foam, i);
      const SqCover *cover = sq_plan_cover (plan, of->cushion);
      const SqFoamPart *part = g_ptr_array_index (cover->foam, of->part);
      if (part->kind != foam->kind || fabs (part->thickness_mm - foam->thickness_mm) > 0.02)
        return "foam on sheets of another kind";
      n += part->count * cover->cushion->count;
    }
  if (foam->lay->placed->len + foam->unlaid != n)
    return "foam not as often as wanted";
  if (!sq_lay_is_valid (foam->task, foam->lay))
    return "foam is laid wrong";
  return foam->waste < -1e-9 || foam->waste > 1 ? "more foam cut than there is" : NULL;
}

char *
law_lays (const LawCase *c)
{
  const SqLayBudget budget = { .seed = 1, .steps = 0 };
  g_autoptr (SqLays) lays = sq_lays_new (c->plan, NULL, &budget, NULL);

  for (guint i = 0; i < lays->cloths->len; i++)
    {
      const char *wrong = check_cloth (lays, i);
      if (wrong == NULL && c->seed % 4 == 0 && sq_lays_cloth (lays, i)->lay->placed->len > 0)
        wrong = check_pinned (c, lays, i);
      if (wrong != NULL)
        return g_strdup_printf ("on cloth %u: %s", sq_lays_cloth (lays, i)->cloth, wrong);
    }
  for (guint i = 0; i < lays->foams->len; i++)
    {
      const char *wrong = check_foam (c->plan, sq_foam_lay (lays->foams, i));
      if (wrong != NULL)
        return g_strdup (wrong);
    }
  return NULL;
}
