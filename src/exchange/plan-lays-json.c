/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/plan-lays-json.h"

#include "base/units.h"
#include "job/names.h"
#include "plan/leftovers.h"
#include "plan/work.h"

static const char *
strip_kind_name (SqStripKind kind)
{
  switch (kind)
    {
    case SQ_STRIP_ROLL:
      return "roll";
    case SQ_STRIP_REMNANT:
      return "remnant";
    case SQ_STRIP_SHEET:
      return "sheet";
    }
  g_return_val_if_reached ("");
}

/* A bolt in stock is a roll that is not bought. */
static void
add_strips (SqJsonWriter *json, const SqLays *lays, const SqClothLay *cloth)
{
  sq_json_open_array (json, "strips", SQ_JSON_LINES);
  for (guint i = 0; i < cloth->task->strips->len; i++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (cloth->task, i);
      const SqStock *stock = sq_lays_stock (lays, cloth, i);
      SqStripKind kind = stock != NULL && stock->kind == SQ_STOCK_BOLT ? SQ_STRIP_ROLL
                                                                       : strip->kind;
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_string (json, "kind", strip_kind_name (kind));
      sq_json_add_number (json, "width", strip->width / SQ_GRID_PER_MM);
      sq_json_add_number (json, "length", sq_lay_length (cloth->lay, i) / SQ_GRID_PER_MM);
      if (stock != NULL)
        {
          sq_json_add_integer (json, "stock", stock->id);
          sq_json_add_number (json, "whole_length", strip->length / SQ_GRID_PER_MM);
        }
      sq_json_close (json);
    }
  sq_json_close (json);
}

/* The share of all strips, as far as they are laid, that lies under pieces. */
static double
density_of (const SqClothLay *cloth)
{
  double cut_mm2 = 0, laid_mm2 = 0;

  for (guint i = 0; i < cloth->task->strips->len; i++)
    {
      cut_mm2 += sq_lay_area_mm2 (cloth->task, cloth->lay, i);
      laid_mm2 += sq_lay_length (cloth->lay, i) / SQ_GRID_PER_MM
                  * (sq_lay_task_strip (cloth->task, i)->width / SQ_GRID_PER_MM);
    }
  return laid_mm2 > 0 ? cut_mm2 / laid_mm2 : 0;
}

static void
add_entry (SqJsonWriter *json, const SqCutEntry *entry)
{
  sq_json_add_integer (json, "cushion", entry->cushion);
  sq_json_add_integer (json, "piece", entry->piece);
}

static void
add_placed (SqJsonWriter *json, const SqLays *lays, const SqLay *lay)
{
  sq_json_open_array (json, "placed", SQ_JSON_LINES);
  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      double turn_rad;
      SqPoint at;
      sq_lays_place (lays, placed, &turn_rad, &at);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      add_entry (json, sq_lays_entry (lays, placed));
      sq_json_add_integer (json, "copy", placed->copy);
      sq_json_add_integer (json, "strip", placed->strip);
      sq_json_add_number (json, "x", at.x);
      sq_json_add_number (json, "y", at.y);
      sq_json_add_number (json, "turn", sq_turn_deg (turn_rad));
      /* a mirrored cushion has pieces of its own: none is turned over on the cloth */
      sq_json_add_boolean (json, "mirrored", FALSE);
      sq_json_close (json);
    }
  sq_json_close (json);
}

static void
add_unlaid (SqJsonWriter *json, const SqLays *lays, const SqClothLay *cloth)
{
  sq_json_open_array (json, "unlaid", SQ_JSON_LINES);
  for (guint i = 0; i < cloth->lay->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (cloth->lay->unlaid, SqUnlaid, i);
      guint line = sq_lay_task_item (cloth->task, unlaid->item)->tag;
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      add_entry (json, &g_array_index (lays->plan->cut_list, SqCutEntry, line));
      sq_json_add_integer (json, "count", unlaid->count);
      sq_json_add_string (json, "why", sq_unlaid_why_names[unlaid->why]);
      sq_json_close (json);
    }
  sq_json_close (json);
}

/* Of a lot: how deep it is cut and each ply, then what every other depth would take. */
static void
add_plies (SqJsonWriter *json, const SqLays *lays, const SqPlies *plies)
{
  const SqPlyLay *best = sq_plies_best (plies);

  sq_json_open_object (json, "plies", SQ_JSON_LINES);
  sq_json_add_integer (json, "plies", best->plies);
  sq_json_add_integer (json, "lays", best->lays);
  sq_json_add_number (json, "longest", best->longest_mm);
  sq_json_add_number (json, "minutes_saved", sq_ply_lay (plies, 0)->minutes - best->minutes);
  sq_json_open_array (json, "depths", SQ_JSON_LINES);
  for (guint i = 0; i < plies->depths->len; i++)
    {
      const SqPlyLay *depth = sq_ply_lay (plies, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_integer (json, "plies", depth->plies);
      sq_json_add_integer (json, "lays", depth->lays);
      sq_json_add_number (json, "cloth", depth->cloth_mm);
      sq_json_add_number (json, "buy", depth->buy_mm);
      sq_json_add_number (json, "minutes", depth->minutes);
      sq_json_add_integer (json, "spares", depth->spares);
      sq_json_add_integer (json, "unlaid", depth->unlaid);
      sq_json_close (json);
    }
  sq_json_close (json);
  sq_json_open_array (json, "strips", SQ_JSON_LINES);
  for (guint i = 0; i < best->task->strips->len; i++)
    {
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_number (json, "width", sq_lay_task_strip (best->task, i)->width / SQ_GRID_PER_MM);
      sq_json_add_number (json, "length", sq_lay_length (best->lay, i) / SQ_GRID_PER_MM);
      sq_json_close (json);
    }
  sq_json_close (json);
  add_placed (json, lays, best->lay);
  sq_json_close (json);
}

/* What was chosen; for either what is to buy of a first lay and the minutes it takes to cut. */
static void
add_cuts (SqJsonWriter *json, const SqLays *lays, const SqClothLay *cloth)
{
  static const char *const names[] = { "free", "straight" };

  sq_json_add_string (json, "cuts", names[sq_cloth_lay_cuts (cloth)]);
  sq_json_open_array (json, "cutting", SQ_JSON_LINES);
  for (guint k = 0; k < 2; k++)
    {
      const SqCutsLay *own = &cloth->by_cuts[k];
      if (own->lay == NULL)
        continue;
      SqCutting cutting = sq_lay_cutting (own->task, own->lay);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_string (json, "cuts", names[k]);
      sq_json_add_number (json, "buy", own->purchase.buy_mm);
      sq_json_add_integer (json, "unlaid", own->purchase.unlaid);
      sq_json_add_integer (json, "straight_cuts", cutting.cuts);
      sq_json_add_number (json, "straight_length", cutting.straight_mm);
      sq_json_add_number (json, "outline_length", cutting.outline_mm);
      sq_json_add_number (json, "minutes", sq_cutting_minutes (&cutting, lays->plan->job));
      sq_json_close (json);
    }
  sq_json_close (json);
}

void
sq_plan_add_lays (SqJsonWriter *json, const SqLays *lays)
{
  sq_json_open_array (json, "lays", SQ_JSON_LINES);
  for (guint i = 0; i < lays->cloths->len; i++)
    {
      const SqClothLay *cloth = sq_lays_cloth (lays, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINES);
      sq_json_add_integer (json, "cloth", cloth->cloth);
      add_strips (json, lays, cloth);
      sq_json_add_number (json, "density", density_of (cloth));
      sq_json_add_integer (json, "seed", (gint64) cloth->lay->seed);
      sq_json_add_integer (json, "steps", (gint64) cloth->lay->steps);
      sq_json_add_digest (json, "digest", cloth->task->digest);
      add_cuts (json, lays, cloth);
      add_placed (json, lays, cloth->lay);
      add_unlaid (json, lays, cloth);
      if (cloth->plies != NULL)
        add_plies (json, lays, cloth->plies);
      sq_json_close (json);
    }
  sq_json_close (json);
}

/* What is laid on each piece that is there. */
static void
add_stock (SqJsonWriter *json, const SqClothLay *cloth)
{
  sq_json_open_array (json, "stock", SQ_JSON_LINE);
  for (guint i = 0; i < cloth->task->strips->len; i++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (cloth->task, i);
      if (strip->kind != SQ_STRIP_REMNANT || sq_lay_length (cloth->lay, i) == 0)
        continue;
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_integer (json, "id", strip->tag);
      sq_json_add_number (json, "laid", sq_lay_length (cloth->lay, i) / SQ_GRID_PER_MM);
      sq_json_close (json);
    }
  sq_json_close (json);
}

/* Rectangles that are worth keeping, along and across, from the cut end and the near edge. */
static void
add_leftovers (SqJsonWriter *json, const SqClothLay *cloth)
{
  g_autoptr (GArray) leftovers = sq_lays_leftovers (cloth);

  sq_json_open_array (json, "leftovers", SQ_JSON_LINE);
  for (guint i = 0; i < leftovers->len; i++)
    {
      const SqLeftover *left = &g_array_index (leftovers, SqLeftover, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_number (json, "along", left->along_mm);
      sq_json_add_number (json, "across", left->across_mm);
      sq_json_add_number (json, "x", left->x_mm);
      sq_json_add_number (json, "y", left->y_mm);
      sq_json_add_integer (json, "strip", left->strip);
      sq_json_close (json);
    }
  sq_json_close (json);
}

void
sq_plan_add_purchase (SqJsonWriter *json, const SqLays *lays)
{
  sq_json_open_array (json, "purchase", SQ_JSON_LINES);
  for (guint i = 0; i < lays->cloths->len; i++)
    {
      const SqClothLay *cloth = sq_lays_cloth (lays, i);
      const SqPurchase *p = &cloth->purchase;
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_integer (json, "cloth", cloth->cloth);
      sq_json_add_integer (json, "bolts", p->bolts);
      sq_json_add_number (json, "laid", p->laid_mm);
      sq_json_add_number (json, "squaring", p->squaring_mm);
      sq_json_add_number (json, "pattern", p->pattern_mm);
      sq_json_add_number (json, "buy", p->buy_mm);
      sq_json_add_number (json, "sold_by", sq_sold_by_mm (lays->plan->job));
      sq_json_add_number (json, "waste", p->waste);
      sq_json_add_integer (json, "unlaid", p->unlaid);
      add_stock (json, cloth);
      add_leftovers (json, cloth);
      sq_json_open_array (json, "added", SQ_JSON_LINE);
      sq_json_close (json);
      sq_json_close (json);
    }
  sq_json_close (json);
}
