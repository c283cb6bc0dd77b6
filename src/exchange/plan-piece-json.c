/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/plan-piece-json.h"

#include "base/units.h"
#include "words/piece-names.h"

guint
sq_plan_piece_id (guint index)
{
  return index + 1;
}

static SqPath *
as_written (const SqPath *path, double flatten_mm)
{
  return flatten_mm > 0 ? sq_path_flattened (path, flatten_mm) : sq_path_ref ((SqPath *) path);
}

void
sq_plan_add_path (SqJsonWriter *json, const char *key, const SqPath *path, double flatten_mm)
{
  g_autoptr (SqPath) written = as_written (path, flatten_mm);
  const SqNode *nodes = sq_path_nodes (written);

  sq_json_open_array (json, key, SQ_JSON_LINE);
  for (guint i = 0; i < sq_path_n_nodes (written); i++)
    {
      sq_json_open_array (json, NULL, SQ_JSON_LINE);
      sq_json_add_number (json, NULL, nodes[i].at.x);
      sq_json_add_number (json, NULL, nodes[i].at.y);
      sq_json_add_number (json, NULL, nodes[i].bulge);
      sq_json_close (json);
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

/* For every ring: where its nodes stand among those that are written. Flattening keeps each node as
 * it is, in order, and adds others between. */
static guint **
new_node_indexes (const GPtrArray *rings, double flatten_mm)
{
  guint **indexes = g_new0 (guint *, rings->len + 1);

  for (guint r = 0; r < rings->len; r++)
    {
      const SqPath *ring = g_ptr_array_index (rings, r);
      g_autoptr (SqPath) written = as_written (ring, flatten_mm);
      const SqNode *nodes = sq_path_nodes (ring), *out = sq_path_nodes (written);
      guint n_out = sq_path_n_nodes (written), at = 0;
      indexes[r] = g_new (guint, sq_path_n_nodes (ring));
      for (guint i = 0; i < sq_path_n_nodes (ring); i++)
        {
          while (at < n_out && (out[at].at.x != nodes[i].at.x || out[at].at.y != nodes[i].at.y))
            at++;
          g_assert (at < n_out);
          indexes[r][i] = at++;
        }
    }
  return indexes;
}

static void
free_node_indexes (guint **indexes, guint n_rings)
{
  for (guint r = 0; r < n_rings; r++)
    g_free (indexes[r]);
  g_free (indexes);
}

static void
add_runs (SqJsonWriter *json, const SqPiece *piece, double flatten_mm)
{
  guint **nodes = new_node_indexes (piece->sew, flatten_mm);

  sq_json_open_array (json, "runs", SQ_JSON_LINES);
  for (guint i = 0; i < piece->runs->len; i++)
    {
      const SqRun *run = sq_piece_run (piece, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_string (json, "role", sq_run_role_name (run->role));
      sq_json_add_integer (json, "edge", run->edge);
      sq_json_add_integer (json, "ring", run->ring);
      sq_json_add_integer (json, "from", nodes[run->ring][run->from]);
      sq_json_add_integer (json, "to", nodes[run->ring][run->to]);
      sq_json_add_number (json, "allowance", run->allowance_mm);
      sq_json_add_number (json, "length", run->length_mm);
      sq_json_close (json);
    }
  sq_json_close (json);
  free_node_indexes (nodes, piece->sew->len);
}

static double
degrees (double rad)
{
  return rad * SQ_DEG_PER_RAD;
}

static void
add_mark (SqJsonWriter *json, const SqMark *mark, double flatten_mm)
{
  sq_json_open_object (json, NULL, SQ_JSON_LINE);
  sq_json_add_string (json, "kind", sq_mark_kind_name (mark->kind));
  if (mark->line != NULL)
    sq_plan_add_path (json, "path", mark->line, flatten_mm);
  else
    {
      sq_json_add_integer (json, "count", mark->count);
      sq_json_add_number (json, "x", mark->at.x);
      sq_json_add_number (json, "y", mark->at.y);
      sq_json_add_number (json, "angle", degrees (mark->angle_rad));
      sq_json_add_number (json, "depth", mark->depth_mm);
      if (mark->seam >= 0)
        sq_json_add_integer (json, "seam", mark->seam);
      else
        sq_json_add_text (json, "seam", "null");
    }
  sq_json_close (json);
}

static void
add_marks (SqJsonWriter *json, const SqPiece *piece, double flatten_mm)
{
  sq_json_open_array (json, "marks", SQ_JSON_LINES);
  for (guint i = 0; i < piece->marks->len; i++)
    add_mark (json, &g_array_index (piece->marks, SqMark, i), flatten_mm);
  sq_json_close (json);
}

static void
add_corner_notches (SqJsonWriter *json, const SqPiece *piece)
{
  sq_json_open_array (json, "corner_notches", SQ_JSON_LINES);
  for (guint i = 0; i < piece->corner_notches->len; i++)
    {
      const SqCornerNotch *notch = &g_array_index (piece->corner_notches, SqCornerNotch, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_integer (json, "corner", notch->corner);
      sq_json_add_number (json, "apex", notch->apex_mm);
      sq_json_add_number (json, "leg", notch->leg_mm);
      sq_json_add_number (json, "mouth", notch->mouth_mm);
      sq_json_add_boolean (json, "dart", notch->dart);
      sq_json_close (json);
    }
  sq_json_close (json);
}

static void
add_skirts (SqJsonWriter *json, const SqPiece *piece)
{
  sq_json_open_array (json, "skirts", SQ_JSON_LINES);
  for (guint i = 0; i < piece->skirts->len; i++)
    {
      const SqSkirt *skirt = &g_array_index (piece->skirts, SqSkirt, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_integer (json, "edge", skirt->edge);
      sq_json_add_number (json, "depth", skirt->depth_mm);
      sq_json_close (json);
    }
  sq_json_close (json);
}

static void
add_trims (SqJsonWriter *json, const SqPiece *piece, double flatten_mm)
{
  guint **nodes = new_node_indexes (piece->cut, flatten_mm);

  sq_json_open_array (json, "trims", SQ_JSON_LINES);
  for (guint i = 0; i < piece->trims->len; i++)
    {
      const SqTrim *trim = &g_array_index (piece->trims, SqTrim, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_integer (json, "run", trim->run);
      sq_json_add_integer (json, "ring", trim->ring);
      sq_json_add_integer (json, "from", nodes[trim->ring][trim->from]);
      sq_json_add_integer (json, "to", nodes[trim->ring][trim->to]);
      sq_json_add_number (json, "distance", trim->distance_mm);
      sq_json_add_string (json, "why", sq_trim_why_name (trim->why));
      sq_json_close (json);
    }
  sq_json_close (json);
  free_node_indexes (nodes, piece->cut->len);
}

static void
add_phase (SqJsonWriter *json, const SqPhase *phase)
{
  if (!phase->across && !phase->along)
    {
      sq_json_add_text (json, "phase", "null");
      return;
    }
  sq_json_open_object (json, "phase", SQ_JSON_LINE);
  sq_json_add_boolean (json, "across", phase->across);
  sq_json_add_boolean (json, "along", phase->along);
  sq_json_add_number (json, "x", phase->anchor.x);
  sq_json_add_number (json, "y", phase->anchor.y);
  sq_json_add_number (json, "u", phase->along_mm);
  sq_json_add_number (json, "v", phase->across_mm);
  sq_json_close (json);
}

void
sq_plan_add_piece (SqJsonWriter *json, const SqCover *cover, guint index, double flatten_mm)
{
  const SqPiece *piece = sq_cover_piece (cover, index);
  g_autofree char *name = sq_words_piece (cover, index);

  sq_json_open_object (json, NULL, SQ_JSON_LINES);
  sq_json_add_integer (json, "id", sq_plan_piece_id (index));
  sq_json_add_string (json, "role", sq_piece_role_name (piece->role));
  sq_json_add_string (json, "name", name);
  sq_json_add_string (json, "side", "right");
  sq_json_add_integer (json, "count", piece->count);
  sq_json_add_integer (json, "cloth", piece->cloth);
  sq_json_add_number (json, "grain", sq_turn_deg (piece->grain_rad));
  sq_json_add_string (json, "turns", sq_turns_name (piece->turns));
  sq_json_add_number (json, "area", piece->area_mm2);
  sq_json_add_number (json, "width", piece->width_mm);
  sq_json_add_number (json, "height", piece->height_mm);
  add_rings (json, "sew", piece->sew, flatten_mm);
  add_rings (json, "cut", piece->cut, flatten_mm);
  add_runs (json, piece, flatten_mm);
  add_marks (json, piece, flatten_mm);
  add_corner_notches (json, piece);
  add_skirts (json, piece);
  add_trims (json, piece, flatten_mm);
  add_phase (json, &piece->phase);
  sq_json_close (json);
}
