/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/plan-json.h"

#include "exchange/json-write.h"
#include "exchange/plan-foam-json.h"
#include "exchange/plan-lays-json.h"
#include "exchange/plan-piece-json.h"
#include "exchange/plan-problem-json.h"
#include "exchange/plan-ways-json.h"
#include "job/names.h"

#define VERSION 1

static void
add_empty (SqJsonWriter *json, const char *key)
{
  sq_json_open_array (json, key, SQ_JSON_LINE);
  sq_json_close (json);
}

/* The finished outline as the top has it. */
static void
add_top (SqJsonWriter *json, const SqCover *cover, double flatten_mm)
{
  sq_json_open_array (json, "top", SQ_JSON_LINES);
  for (guint i = 0; cover->finished != NULL && i < cover->finished->n_rings; i++)
    sq_plan_add_path (json, NULL, cover->finished->rings[i].path, flatten_mm);
  sq_json_close (json);
}

/* The underside as seen from above: the top's outline, or less under a mitred wrap. */
static void
add_underside (SqJsonWriter *json, const SqCover *cover, double flatten_mm)
{
  sq_json_open_array (json, "underside", SQ_JSON_LINES);
  for (guint i = 0; cover->underside != NULL && i < cover->underside->len; i++)
    {
      g_autoptr (SqPath) from_above = sq_path_mirrored (cover->underside->pdata[i]);
      sq_plan_add_path (json, NULL, from_above, flatten_mm);
    }
  sq_json_close (json);
}

static void
add_rings (SqJsonWriter *json, const char *key, const GPtrArray *rings, double flatten_mm)
{
  sq_json_open_array (json, key, SQ_JSON_LINES);
  for (guint i = 0; i < rings->len; i++)
    sq_plan_add_path (json, NULL, g_ptr_array_index (rings, i), flatten_mm);
  sq_json_close (json);
}

static void
add_outlines (SqJsonWriter *json, const SqCover *cover, double flatten_mm)
{
  sq_json_open_object (json, "outlines", SQ_JSON_LINES);
  add_top (json, cover, flatten_mm);
  add_underside (json, cover, flatten_mm);
  if (cover->foam->len > 0)
    add_rings (json, "foam", ((const SqFoamPart *) g_ptr_array_index (cover->foam, 0))->rings,
               flatten_mm);
  else
    add_empty (json, "foam");
  sq_json_close (json);
}

static void
add_seam_side (SqJsonWriter *json, const char *key, const SqCover *cover, const SqSide *side,
               double length_mm)
{
  if (side->n_runs == 0)
    {
      sq_json_add_text (json, key, "null");
      return;
    }
  sq_json_open_object (json, key, SQ_JSON_LINE);
  sq_json_add_integer (json, "piece", side->piece);
  sq_json_open_array (json, "runs", SQ_JSON_LINE);
  for (guint i = 0; i < side->n_runs; i++)
    sq_json_add_integer (json, NULL, sq_side_run (cover, side, i));
  sq_json_close (json);
  sq_json_add_number (json, "length", length_mm);
  sq_json_close (json);
}

static void
add_seams (SqJsonWriter *json, const SqCover *cover)
{
  sq_json_open_array (json, "seams", SQ_JSON_LINES);
  for (guint i = 0; i < cover->seams->len; i++)
    {
      const SqSeam *seam = sq_cover_seam (cover, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_string (json, "kind", sq_seam_kind_name (seam->kind));
      add_seam_side (json, "a", cover, &seam->a, seam->length_a_mm);
      add_seam_side (json, "b", cover, &seam->b, seam->length_b_mm);
      sq_json_add_number (json, "ease", seam->ease_mm);
      sq_json_add_integer (json, "step", seam->step);
      sq_json_close (json);
    }
  sq_json_close (json);
}

static void
add_foam (SqJsonWriter *json, const SqCover *cover, double flatten_mm)
{
  sq_json_open_array (json, "foam", SQ_JSON_LINES);
  for (guint i = 0; i < cover->foam->len; i++)
    {
      const SqFoamPart *part = g_ptr_array_index (cover->foam, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINES);
      sq_json_add_string (json, "material", sq_foam_kind_name (part->kind));
      add_rings (json, "rings", part->rings, flatten_mm);
      sq_json_add_number (json, "thickness", part->thickness_mm);
      sq_json_add_number (json, "oversize", part->oversize_mm);
      sq_json_add_integer (json, "count", part->count);
      sq_json_add_number (json, "volume", part->volume_mm3);
      sq_json_add_number (json, "weight", part->weight_g);
      sq_json_close (json);
    }
  sq_json_close (json);
}

static const char *
opening_name (SqOpening opening)
{
  switch (opening)
    {
    case SQ_OPENING_GOES_IN:
      return "goes-in";
    case SQ_OPENING_FOLD:
      return "fold";
    case SQ_OPENING_TOO_SHORT:
      return "too-short";
    }
  g_return_val_if_reached ("");
}

static void
add_zip (SqJsonWriter *json, const SqZip *zip)
{
  sq_json_open_object (json, "zip", SQ_JSON_LINE);
  sq_json_add_number (json, "length", zip->length_mm);
  sq_json_add_string (json, "place", sq_zip_place_name (zip->place));
  if (zip->place != SQ_ZIP_NONE)
    {
      sq_json_add_string (json, "method", sq_zip_method_names[zip->method]);
      sq_json_add_integer (json, "edge", zip->edge);
      sq_json_add_number (json, "from", zip->from_mm);
      sq_json_add_number (json, "to", zip->to_mm);
      sq_json_add_number (json, "at", zip->at_mm);
      sq_json_add_number (json, "run", zip->run_mm);
      sq_json_add_number (json, "needed", zip->needed_mm);
      sq_json_add_string (json, "opening", opening_name (zip->opening));
      sq_json_add_integer (json, "sliders", zip->sliders);
    }
  sq_json_close (json);
}

static void
add_welt (SqJsonWriter *json, const SqWelt *welt)
{
  if (welt->at == SQ_WELT_NONE)
    {
      sq_json_add_text (json, "welt", "null");
      return;
    }
  sq_json_open_object (json, "welt", SQ_JSON_LINE);
  sq_json_add_string (json, "at", sq_welt_at_names[welt->at]);
  sq_json_add_string (json, "cut", sq_welt_cut_names[welt->cut]);
  sq_json_add_number (json, "cord", welt->cord_mm);
  sq_json_add_number (json, "strip", welt->strip_mm);
  sq_json_add_number (json, "length", welt->length_mm);
  sq_json_add_integer (json, "strips", welt->n_strips);
  sq_json_close (json);
}

static void
add_filled (SqJsonWriter *json, const char *key, const SqFilled *filled)
{
  if (filled->length_mm <= 0)
    {
      sq_json_add_text (json, key, "null");
      return;
    }
  sq_json_open_object (json, key, SQ_JSON_LINE);
  sq_json_add_number (json, "length", filled->length_mm);
  sq_json_add_number (json, "depth", filled->depth_mm);
  sq_json_add_number (json, "thickness", filled->thickness_mm);
  sq_json_close (json);
}

static void
add_problems (SqJsonWriter *json, const SqCover *cover, const SqLengthStyle *style)
{
  sq_json_open_array (json, "problems", SQ_JSON_LINES);
  for (guint i = 0; i < cover->problems->len; i++)
    sq_plan_add_problem (json, NULL, sq_cover_problem (cover, i), cover, style);
  sq_json_close (json);
}

static void
begin_cushion (SqJsonWriter *json, const SqCover *cover, double flatten_mm,
               const SqLengthStyle *style)
{
  sq_json_open_object (json, NULL, SQ_JSON_LINES);
  sq_json_add_integer (json, "id", cover->cushion->id);
  sq_json_add_string (json, "name", cover->cushion->name);
  sq_json_add_integer (json, "count", cover->cushion->count);
  add_outlines (json, cover, flatten_mm);
  sq_json_open_array (json, "pieces", SQ_JSON_LINES);
  for (guint i = 0; i < cover->pieces->len; i++)
    sq_plan_add_piece (json, cover, i, flatten_mm);
  sq_json_close (json);
  add_seams (json, cover);
  add_foam (json, cover, flatten_mm);
  add_zip (json, &cover->zip);
  add_problems (json, cover, style);
  add_empty (json, "matches");
  sq_json_add_text (json, "survey", "null");
  sq_json_add_string (json, "hand",
                      sq_hand_name (cover->mirrored ? SQ_HAND_MIRRORED : SQ_HAND_AS_DRAWN));
  sq_json_add_string (json, "build", sq_build_name (cover->build));
  add_welt (json, &cover->welt);
  add_filled (json, "insert", &cover->insert);
  add_filled (json, "stuffed", &cover->stuffed);
}

static void
add_cushions (SqJsonWriter *json, const SqPlan *plan, double flatten_mm, gboolean with_ways,
              const SqLengthStyle *style)
{
  sq_json_open_array (json, "cushions", SQ_JSON_LINES);
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      begin_cushion (json, cover, flatten_mm, style);
      /* A pair's ways are of both: they stand with the first of them. */
      const SqCushion *asked = i < plan->job->cushions->len ? cover->cushion : NULL;
      if (with_ways)
        {
          sq_plan_add_ways (json, plan->job, asked, style);
          sq_plan_add_wide (json, plan->job, asked, style);
        }
      sq_json_close (json);
    }
  sq_json_close (json);
}

static void
add_cut_list (SqJsonWriter *json, const SqPlan *plan)
{
  sq_json_open_array (json, "cut_list", SQ_JSON_LINES);
  for (guint i = 0; i < plan->cut_list->len; i++)
    {
      const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_integer (json, "number", entry->number);
      sq_json_add_integer (json, "cushion", entry->cushion);
      sq_json_add_integer (json, "piece", entry->piece);
      sq_json_add_integer (json, "count", entry->count);
      sq_json_add_integer (json, "cloth", entry->cloth);
      sq_json_close (json);
    }
  sq_json_close (json);
}

static void
add_totals (SqJsonWriter *json, const SqPlan *plan)
{
  SqFigures figures = sq_plan_figures (plan);

  sq_json_open_object (json, "totals", SQ_JSON_LINES);
  sq_json_add_integer (json, "cushions", figures.cushions);
  sq_json_add_integer (json, "pieces", figures.pieces);
  sq_json_add_number (json, "cloth_area", figures.cloth_mm2);
  sq_json_open_array (json, "cloths", SQ_JSON_LINES);
  for (guint i = 0; i < plan->cloths->len; i++)
    {
      const SqClothTotal *total = &g_array_index (plan->cloths, SqClothTotal, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_integer (json, "cloth", total->cloth);
      sq_json_add_integer (json, "pieces", total->pieces);
      sq_json_add_number (json, "area", total->area_mm2);
      sq_json_close (json);
    }
  sq_json_close (json);
  sq_json_add_integer (json, "foam_parts", figures.foam_parts);
  sq_json_add_number (json, "foam_volume", figures.foam_mm3);
  sq_json_add_number (json, "foam_weight", figures.foam_g);
  sq_json_add_number (json, "zip_length", figures.zip_mm);
  sq_json_add_integer (json, "sliders", figures.sliders);
  sq_json_add_number (json, "seam_length", figures.seam_mm);
  sq_json_add_integer (json, "notes", figures.notes);
  sq_json_add_integer (json, "warnings", figures.warnings);
  sq_json_add_integer (json, "errors", figures.faults);
  sq_json_close (json);
}

char *
sq_plan_write (const SqLays *lays, double flatten_mm, gboolean with_ways,
               const SqLengthStyle *style)
{
  const SqPlan *plan = lays->plan;
  g_autoptr (SqJsonWriter) json = sq_json_writer_new ();

  g_return_val_if_fail (isfinite (flatten_mm) && flatten_mm >= 0, NULL);
  sq_json_open_object (json, NULL, SQ_JSON_LINES);
  sq_json_add_string (json, "format", "squab plan");
  sq_json_add_integer (json, "version", VERSION);
  add_cushions (json, plan, flatten_mm, with_ways, style);
  sq_plan_add_lays (json, lays);
  sq_plan_add_purchase (json, lays);
  sq_plan_add_foam_lays (json, lays);
  sq_json_open_object (json, "price", SQ_JSON_LINE);
  sq_json_close (json);
  add_cut_list (json, plan);
  add_totals (json, plan);
  if (with_ways)
    sq_plan_add_rates (json, plan->job);
  sq_json_close (json);
  return sq_json_writer_dup_text (json);
}
