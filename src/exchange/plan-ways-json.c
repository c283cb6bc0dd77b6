/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/plan-ways-json.h"

#include "exchange/plan-problem-json.h"
#include "job/names.h"

/* A number, or null where it is not known. */
static void
add_known (SqJsonWriter *json, const char *key, double number)
{
  if (isnan (number))
    sq_json_add_text (json, key, "null");
  else
    sq_json_add_number (json, key, number);
}

static void
add_cloths (SqJsonWriter *json, const SqWay *way)
{
  sq_json_open_array (json, "cloth", SQ_JSON_LINE);
  for (guint i = 0; i < way->cloths->len; i++)
    {
      const SqWayCloth *cloth = &g_array_index (way->cloths, SqWayCloth, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_integer (json, "cloth", cloth->cloth);
      sq_json_add_number (json, "area", cloth->area_mm2);
      add_known (json, "length", cloth->buy_mm);
      sq_json_close (json);
    }
  sq_json_close (json);
}

static void
add_cost (SqJsonWriter *json, const SqWay *way)
{
  guint lacks = 0;
  double cost = sq_way_cost (way, &lacks);

  sq_json_add_number (json, "cost", cost);
  sq_json_open_object (json, "costs", SQ_JSON_LINE);
  add_known (json, "cloth", way->cloth_cost);
  add_known (json, "foam", way->foam_cost);
  add_known (json, "work", way->work_cost);
  sq_json_close (json);
  sq_json_open_array (json, "unknown", SQ_JSON_LINE);
  if (lacks & SQ_COST_CLOTH)
    sq_json_add_string (json, NULL, "cloth");
  if (lacks & SQ_COST_FOAM)
    sq_json_add_string (json, NULL, "foam");
  sq_json_close (json);
}

static void
add_figures (SqJsonWriter *json, const SqWay *way)
{
  sq_json_add_text (json, "why", "null");
  sq_json_add_integer (json, "pieces", way->pieces);
  sq_json_add_number (json, "seam_length", way->seam_mm);
  add_cloths (json, way);
  sq_json_open_object (json, "foam", SQ_JSON_LINE);
  sq_json_add_number (json, "volume", way->foam_mm3);
  sq_json_add_number (json, "weight", way->foam_g);
  sq_json_close (json);
  sq_json_add_number (json, "minutes", way->minutes);
  add_cost (json, way);
}

/* The same keys for what can't be built. */
static void
add_no_figures (SqJsonWriter *json, const SqWay *way, const SqLengthStyle *style)
{
  static const char *const unknown[] = { "pieces",  "seam_length", "cloth", "foam",
                                         "minutes", "cost",        "costs" };

  sq_plan_add_problem (json, "why", &way->why, way->where, style);
  for (guint i = 0; i < G_N_ELEMENTS (unknown); i++)
    sq_json_add_text (json, unknown[i], i == 2 ? "[]" : "null");
  sq_json_add_text (json, "unknown", "[]");
}

/* What both comparisons say of a way. */
static void
add_way (SqJsonWriter *json, const SqWay *way, gboolean is_in_use, const SqLengthStyle *style)
{
  sq_json_add_boolean (json, "in_use", is_in_use);
  sq_json_add_boolean (json, "possible", way->possible);
  if (way->possible)
    add_figures (json, way);
  else
    add_no_figures (json, way, style);
}

void
sq_plan_add_ways (SqJsonWriter *json, const SqJob *job, const SqCushion *cushion,
                  const SqLengthStyle *style)
{
  g_autoptr (SqWays) ways = cushion != NULL ? sq_ways_new (job, cushion, TRUE, NULL) : NULL;

  sq_json_open_array (json, "ways", SQ_JSON_LINES);
  for (guint i = 0; ways != NULL && i < ways->ways->len; i++)
    {
      const SqWay *way = sq_ways_way (ways, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINES);
      sq_json_add_string (json, "build", sq_build_name (way->build));
      sq_json_add_boolean (json, "welt", way->welt);
      sq_json_add_boolean (json, "mixed", way->mixed);
      add_way (json, way, i == ways->in_use, style);
      sq_json_close (json);
    }
  sq_json_close (json);
}

void
sq_plan_add_wide (SqJsonWriter *json, const SqJob *job, const SqCushion *cushion,
                  const SqLengthStyle *style)
{
  g_autoptr (SqWide) wide = cushion != NULL ? sq_wide_new (job, cushion, TRUE, NULL) : NULL;

  sq_json_open_array (json, "wide", SQ_JSON_LINES);
  for (guint i = 0; wide != NULL && i < wide->ways->len; i++)
    {
      const SqWideWay *way = sq_wide_way (wide, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINES);
      sq_json_add_string (json, "way", sq_wide_kind_name (way->kind));
      sq_json_add_integer (json, "cushions", way->cushions->len);
      add_known (json, "width", way->kind == SQ_WIDE_CLOTH ? way->width_mm : NAN);
      add_way (json, &way->way, (gint) i == wide->in_use, style);
      sq_json_close (json);
    }
  sq_json_close (json);
}

void
sq_plan_add_rates (SqJsonWriter *json, const SqJob *job)
{
  sq_json_open_object (json, "rates", SQ_JSON_LINES);
  for (SqRate rate = 0; rate < SQ_N_RATES; rate++)
    sq_json_add_number (json, sq_rate_names[rate], sq_job_rate (job, rate));
  sq_json_open_array (json, "samples", SQ_JSON_LINE);
  for (SqRate rate = 0; rate < SQ_N_RATES; rate++)
    if (!sq_job_has_rate (job, rate))
      sq_json_add_string (json, NULL, sq_rate_names[rate]);
  sq_json_close (json);
  sq_json_close (json);
}
