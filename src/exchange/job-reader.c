/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/job-file.h"
#include "exchange/job-keys.h"

#include "exchange/read-file.h"

#include <math.h>

#define MOST_CORNERS 5000 /* on one ring */
#define MOST_CUSHIONS 10000
#define MOST_STOCK 1000 /* pieces, flaws, of one cloth */

/* Beyond what a roll is, what lies on one is out of range (mm): as that of a kept lay. */
#define MOST_ALONG_MM 2e6
#define MOST_TURN_DEG 360.0

/* What has an id of its own kind, and where it was read. */
typedef struct
{
  SqId *id;
  guint token;
} Named;

static int
compare_named (gconstpointer a, gconstpointer b)
{
  const Named *x = a, *y = b;

  if (*x->id != *y->id)
    return *x->id < *y->id ? -1 : 1;
  return (x->token > y->token) - (x->token < y->token);
}

/* Refuses ids that come twice, and gives those that have none, in the order of the file, the least
 * that are free. */
static gboolean
settle_ids (GArray *named, const SqJson *json, GError **error)
{
  guint first = 0, taken;
  SqId next = 1;

  g_array_sort (named, compare_named);
  for (guint i = 0; i < named->len; i++)
    {
      const Named *item = &g_array_index (named, Named, i);

      if (*item->id == 0)
        first = i + 1;
      else if (i > 0 && *item->id == *g_array_index (named, Named, i - 1).id)
        return sq_refuse (json, sq_json_member (json, item->token, "id"), error,
                          "an id for the second time");
    }
  taken = first;
  for (guint i = 0; i < first; i++)
    {
      for (; taken < named->len && *g_array_index (named, Named, taken).id == next; taken++)
        next++;
      *g_array_index (named, Named, i).id = next++;
    }
  return TRUE;
}

static void
add_named (GArray *named, SqId *id, guint token)
{
  Named item = { id, token };
  g_array_append_val (named, item);
}

/* Corners ------------------------------------------------------------------------------------ */

gboolean
sq_read_bow (const SqJson *json, guint token, gpointer record, GError **error)
{
  SqCorner *corner = record;

  if (corner->shape == SQ_SHAPE_CURVE)
    return sq_refuse (json, token, error, "an edge can't have a bow and a curve");
  corner->shape = SQ_SHAPE_BOW;
  return sq_read_length (json, token, &corner->bow_mm, error);
}

static gboolean
read_point (const SqJson *json, guint token, SqPoint *point, GError **error)
{
  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  if (sq_json_n_values (json, token) != 2)
    return sq_refuse (json, token, error, "not a point as [x, y]");
  return sq_read_length (json, token + 1, &point->x, error)
         && sq_read_length (json, token + 2, &point->y, error);
}

gboolean
sq_read_curve (const SqJson *json, guint token, gpointer record, GError **error)
{
  SqCorner *corner = record;

  if (corner->shape == SQ_SHAPE_BOW)
    return sq_refuse (json, token, error, "an edge can't have a bow and a curve");
  corner->shape = SQ_SHAPE_CURVE;
  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  if (sq_json_n_values (json, token) != 2)
    return sq_refuse (json, token, error, "not two points");
  return read_point (json, token + 1, &corner->control[0], error)
         && read_point (json, json->tokens[token + 1].next, &corner->control[1], error);
}

/* The rings of a cushion as they are read. */
typedef struct
{
  GArray *corners; /* of SqCorner */
  GArray *tokens;  /* of guint, of each corner */
  GArray *sizes;   /* of guint, of each ring */
} Rings;

static void
corner_clear (gpointer data)
{
  SqCorner *corner = data;

  g_clear_pointer (&corner->note, g_ref_string_release);
  g_clear_pointer (&corner->corner_note, g_ref_string_release);
  g_clear_pointer (&corner->unknown, g_ref_string_release);
}

static gboolean
read_ring (const SqJson *json, guint token, Rings *rings, GError **error)
{
  guint n;

  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  n = sq_json_n_values (json, token);
  if (n > MOST_CORNERS)
    return sq_refuse (json, token, error, "more than 5,000 corners");
  g_array_append_val (rings->sizes, n);
  for (guint at = token + 1; at < json->tokens[token].next; at = json->tokens[at].next)
    {
      SqCorner corner = { 0 };
      gboolean good = sq_fields_read (&sq_corner_keys, json, at, &corner, error);

      g_array_append_val (rings->corners, corner);
      g_array_append_val (rings->tokens, at);
      if (!good)
        return FALSE;
    }
  return TRUE;
}

/* The outer ring, there or not, and the holes. */
static gboolean
read_rings (const SqJson *json, guint cushion, Rings *rings, GError **error)
{
  guint outline = sq_json_member (json, cushion, "outline");
  guint holes = sq_json_member (json, cushion, "holes");
  guint none = 0;

  if (outline != 0 && !read_ring (json, outline, rings, error))
    return FALSE;
  if (holes == 0)
    return TRUE;
  if (!sq_read_kind (json, holes, SQ_JSON_ARRAY, error))
    return FALSE;
  if (outline == 0 && sq_json_n_values (json, holes) > 0)
    g_array_append_val (rings->sizes, none);
  for (guint at = holes + 1; at < json->tokens[holes].next; at = json->tokens[at].next)
    if (!read_ring (json, at, rings, error))
      return FALSE;
  return TRUE;
}

static gboolean
check_front (const SqJson *json, const Rings *rings, GError **error)
{
  guint n_outer = rings->sizes->len > 0 ? g_array_index (rings->sizes, guint, 0) : 0;
  gboolean marked = FALSE;

  for (guint i = 0; i < rings->corners->len; i++)
    {
      guint token = g_array_index (rings->tokens, guint, i);

      if (!g_array_index (rings->corners, SqCorner, i).front)
        continue;
      if (marked || i >= n_outer)
        return sq_refuse (json, sq_json_member (json, token, "front"), error,
                          marked ? "a second front" : "the front can't be at a hole");
      marked = TRUE;
    }
  return TRUE;
}

static gboolean
settle_corner_ids (const SqJson *json, Rings *rings, GError **error)
{
  g_autoptr (GArray) named = g_array_new (FALSE, FALSE, sizeof (Named));

  for (guint i = 0; i < rings->corners->len; i++)
    add_named (named, &g_array_index (rings->corners, SqCorner, i).id,
               g_array_index (rings->tokens, guint, i));
  return settle_ids (named, json, error);
}

static SqOutline *
read_outline (const SqJson *json, guint cushion, GError **error)
{
  Rings rings = { g_array_new (FALSE, FALSE, sizeof (SqCorner)),
                  g_array_new (FALSE, FALSE, sizeof (guint)),
                  g_array_new (FALSE, FALSE, sizeof (guint)) };
  SqOutline *result = NULL;

  g_array_set_clear_func (rings.corners, corner_clear);
  if (read_rings (json, cushion, &rings, error) && check_front (json, &rings, error)
      && settle_corner_ids (json, &rings, error))
    {
      g_autoptr (SqOutline) outline = sq_outline_new (
          (const SqCorner *) (gpointer) rings.corners->data,
          (const guint *) (gpointer) rings.sizes->data, rings.sizes->len);

      result = sq_outline_turned_right (outline);
    }
  g_array_unref (rings.corners);
  g_array_unref (rings.tokens);
  g_array_unref (rings.sizes);
  return result;
}

/* Lists of the job -------------------------------------------------------------------------- */

static SqCushion *
read_cushion (const SqJson *json, guint token, GError **error)
{
  g_autoptr (SqOutline) outline = NULL;
  g_autoptr (SqCushion) cushion = NULL;

  if (!sq_read_kind (json, token, SQ_JSON_OBJECT, error))
    return NULL;
  outline = read_outline (json, token, error);
  if (outline == NULL)
    return NULL;
  cushion = sq_cushion_new (0, outline);
  if (!sq_fields_read (&sq_cushion_keys, json, token, cushion, error))
    return NULL;
  return g_steal_pointer (&cushion);
}

gboolean
sq_read_cushions (const SqJson *json, guint token, gpointer record, GError **error)
{
  SqJob *job = record;
  g_autoptr (GArray) named = g_array_new (FALSE, FALSE, sizeof (Named));

  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  if (sq_json_n_values (json, token) > MOST_CUSHIONS)
    return sq_refuse (json, token, error, "more than 10,000 cushions");
  for (guint at = token + 1; at < json->tokens[token].next; at = json->tokens[at].next)
    {
      SqCushion *cushion = read_cushion (json, at, error);

      if (cushion == NULL)
        return FALSE;
      g_ptr_array_add (job->cushions, cushion);
      add_named (named, &cushion->id, at);
    }
  return settle_ids (named, json, error);
}

gboolean
sq_read_stripes (const SqJson *json, guint token, gpointer record, GError **error)
{
  SqCloth *cloth = record;

  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  cloth->stripes = g_new0 (SqStripe, sq_json_n_values (json, token));
  for (guint at = token + 1; at < json->tokens[token].next; at = json->tokens[at].next)
    if (!sq_fields_read (&sq_stripe_keys, json, at, &cloth->stripes[cloth->n_stripes++], error))
      return FALSE;
  return TRUE;
}

gboolean
sq_read_cloths (const SqJson *json, guint token, gpointer record, GError **error)
{
  SqJob *job = record;
  g_autoptr (GArray) named = g_array_new (FALSE, FALSE, sizeof (Named));

  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  for (guint at = token + 1; at < json->tokens[token].next; at = json->tokens[at].next)
    {
      SqCloth *cloth = sq_cloth_new (0);

      g_ptr_array_add (job->cloths, cloth);
      if (!sq_fields_read (&sq_cloth_keys, json, at, cloth, error))
        return FALSE;
      add_named (named, &cloth->id, at);
    }
  return settle_ids (named, json, error);
}

gboolean
sq_read_foams (const SqJson *json, guint token, gpointer record, GError **error)
{
  SqJob *job = record;
  g_autoptr (GArray) named = g_array_new (FALSE, FALSE, sizeof (Named));
  guint index = 0;

  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  for (guint at = token + 1; at < json->tokens[token].next; at = json->tokens[at].next)
    {
      SqFoam foam = { 0 };
      gboolean good = sq_fields_read (&sq_foam_keys, json, at, &foam, error);

      g_array_append_val (job->foams, foam);
      if (!good)
        return FALSE;
    }
  for (guint at = token + 1; at < json->tokens[token].next; at = json->tokens[at].next)
    add_named (named, &g_array_index (job->foams, SqFoam, index++).id, at);
  return settle_ids (named, json, error);
}

/* What a job is laid on ---------------------------------------------------------------------- */

/* @list was read from the list @token; ids are at @offset of its records. */
static gboolean
settle_list (const SqJson *json, guint token, GArray *list, gsize offset, GError **error)
{
  g_autoptr (GArray) named = g_array_new (FALSE, FALSE, sizeof (Named));
  gsize size = g_array_get_element_size (list);
  guint index = 0;

  if (list->len > MOST_STOCK)
    return sq_refuse (json, token, error, "more than 1,000");
  for (guint at = token + 1; at < json->tokens[token].next; at = json->tokens[at].next)
    add_named (named, (SqId *) (gpointer) (list->data + index++ * size + offset), at);
  return settle_ids (named, json, error);
}

gboolean
sq_check_stock (const SqJson *json, guint token, gpointer cloth, GError **error)
{
  return settle_list (json, token, ((SqCloth *) cloth)->stock, G_STRUCT_OFFSET (SqStock, id),
                      error);
}

gboolean
sq_check_flaws (const SqJson *json, guint token, gpointer cloth, GError **error)
{
  return settle_list (json, token, ((SqCloth *) cloth)->flaws, G_STRUCT_OFFSET (SqFlaw, id), error);
}

static gboolean
check_within (const SqJson *json, guint pin, const char *key, double most, GError **error)
{
  guint token = sq_json_member (json, pin, key);

  return fabs (sq_json_number (json, token)) <= most
         || sq_refuse (json, token, error, "out of range");
}

static guint
hash_pinned (gconstpointer data)
{
  const SqPinned *of = data;

  return ((of->cushion * 31 + of->role) * 31 + of->ordinal) * 31 + of->copy;
}

static gboolean
equal_pinned (gconstpointer a, gconstpointer b)
{
  return sq_pinned_equal (a, b);
}

gboolean
sq_check_pins (const SqJson *json, guint token, gpointer record, GError **error)
{
  const SqJob *job = record;
  g_autoptr (GHashTable) seen = g_hash_table_new (hash_pinned, equal_pinned);
  guint index = 0;

  for (guint at = token + 1; at < json->tokens[token].next; at = json->tokens[at].next)
    {
      if (!check_within (json, at, "x", MOST_ALONG_MM, error)
          || !check_within (json, at, "y", MOST_ALONG_MM, error)
          || !check_within (json, at, "turn", MOST_TURN_DEG, error))
        return FALSE;
      if (!g_hash_table_add (seen, &sq_job_pin (job, index++)->of))
        return sq_refuse (json, at, error, "a second pin of one piece");
    }
  return TRUE;
}

/* The whole ----------------------------------------------------------------------------------- */

SqJob *
sq_job_read (const char *text, gssize length, const SqDefaults *defaults, GError **error)
{
  g_autoptr (SqJson) json = NULL;
  g_autoptr (SqJob) job = NULL;

  g_return_val_if_fail (text != NULL && defaults != NULL, NULL);
  json = sq_json_scan (text, length, error);
  if (json == NULL || !sq_check_format (json, SQ_JOB_FORMAT, SQ_JOB_VERSION, error))
    return NULL;
  job = sq_job_new (defaults);
  if (!sq_fields_read (&sq_job_keys, json, 0, job, error))
    return NULL;
  return g_steal_pointer (&job);
}

SqJob *
sq_job_load (const char *path, const SqDefaults *defaults, GError **error)
{
  g_autofree char *text = NULL;
  gsize length;
  SqJob *job;

  if (!sq_file_load (path, SQ_JSON_MOST_BYTES, &text, &length, error))
    return NULL;
  job = sq_job_read (text, (gssize) length, defaults, error);
  if (job == NULL)
    {
      g_autofree char *name = g_filename_display_name (path);
      g_prefix_error (error, "%s: ", name);
    }
  return job;
}
