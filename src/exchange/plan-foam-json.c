/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/plan-foam-json.h"

#include "job/names.h"

static void
add_of (SqJsonWriter *json, const SqFoamLay *foam, guint tag)
{
  sq_json_add_integer (json, "cushion", sq_foam_lay_part (foam, tag)->cushion);
  sq_json_add_integer (json, "foam", sq_foam_lay_part (foam, tag)->part);
}

static void
add_strips (SqJsonWriter *json, const SqFoamLay *foam)
{
  sq_json_open_array (json, "strips", SQ_JSON_LINES);
  for (guint i = 0; i < foam->task->strips->len; i++)
    {
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_string (json, "kind", "sheet");
      sq_json_add_number (json, "width", foam->width_mm);
      sq_json_add_number (json, "length", foam->length_mm);
      sq_json_close (json);
    }
  sq_json_close (json);
}

static void
add_placed (SqJsonWriter *json, const SqFoamLay *foam)
{
  sq_json_open_array (json, "placed", SQ_JSON_LINES);
  for (guint i = 0; i < foam->lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (foam->lay, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      add_of (json, foam, placed->tag);
      sq_json_add_integer (json, "copy", placed->copy);
      sq_json_add_integer (json, "strip", placed->strip);
      sq_json_add_number (json, "x", placed->at.x / SQ_GRID_PER_MM);
      sq_json_add_number (json, "y", placed->at.y / SQ_GRID_PER_MM);
      sq_json_add_number (json, "turn", placed->pose.turn / 1000.0);
      sq_json_add_boolean (json, "mirrored", placed->pose.mirrored);
      sq_json_close (json);
    }
  sq_json_close (json);
}

static void
add_unlaid (SqJsonWriter *json, const SqFoamLay *foam)
{
  sq_json_open_array (json, "unlaid", SQ_JSON_LINES);
  for (guint i = 0; i < foam->lay->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (foam->lay->unlaid, SqUnlaid, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      add_of (json, foam, sq_lay_task_item (foam->task, unlaid->item)->tag);
      sq_json_add_integer (json, "count", unlaid->count);
      sq_json_add_string (json, "why", sq_unlaid_why_names[unlaid->why]);
      sq_json_close (json);
    }
  sq_json_close (json);
}

void
sq_plan_add_foam_lays (SqJsonWriter *json, const SqLays *lays)
{
  sq_json_open_array (json, "foam_lays", SQ_JSON_LINES);
  for (guint i = 0; i < lays->foams->len; i++)
    {
      const SqFoamLay *foam = sq_foam_lay (lays->foams, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINES);
      sq_json_add_string (json, "material", sq_foam_kind_name (foam->kind));
      sq_json_add_number (json, "thickness", foam->thickness_mm);
      sq_json_add_number (json, "kerf", foam->kerf_mm);
      sq_json_add_integer (json, "sheets", foam->sheets);
      sq_json_add_number (json, "waste", foam->waste);
      add_strips (json, foam);
      add_placed (json, foam);
      add_unlaid (json, foam);
      sq_json_close (json);
    }
  sq_json_close (json);
}
