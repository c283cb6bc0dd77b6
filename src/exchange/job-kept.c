/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What of a job file is about papers: their revision and choice, and the lays that were printed. */
#include "exchange/job-keys.h"
#include "exchange/plan-piece-json.h"
#include "job/names.h"

#include <math.h>

/* A roll is 1,600 m at most; what lies on it goes no farther (mm). */
#define MOST_ALONG_MM 2e6
#define MOST_TURN_DEG 360.0

/* An arc with more of it is a full circle but for a hair. */
#define MOST_BULGE 100.0

#define FOR_EACH(json, token, at)                                                                  \
  for (guint at = (token) + 1; at < (json)->tokens[token].next; at = (json)->tokens[at].next)

/* Revisions and choice ----------------------------------------------------------------------- */

static gboolean
read_revision (const SqJson *json, guint token, guint *revision, GError **error)
{
  if (!sq_read_kind (json, token, SQ_JSON_STRING, error))
    return FALSE;
  g_autofree char *name = sq_json_dup_string (json, token);
  *revision = sq_revision_of_name (name);
  return *revision > 0 || sq_refuse (json, token, error, "not a revision as A, B … Z, AA");
}

static void
write_revision (SqJsonWriter *writer, const char *key, guint revision)
{
  g_autofree char *name = sq_revision_name (revision);
  sq_json_add_string (writer, key, name);
}

gboolean
sq_read_revision (const SqJson *json, guint token, gpointer job, GError **error)
{
  return read_revision (json, token, &((SqJob *) job)->revision, error);
}

void
sq_write_revision (SqJsonWriter *writer, const char *key, gconstpointer job)
{
  if (((const SqJob *) job)->revision > 1)
    write_revision (writer, key, ((const SqJob *) job)->revision);
}

gboolean
sq_read_kept_revision (const SqJson *json, guint token, gpointer lay, GError **error)
{
  return read_revision (json, token, &((SqKeptLay *) lay)->revision, error);
}

void
sq_write_kept_revision (SqJsonWriter *writer, const char *key, gconstpointer lay)
{
  if (((const SqKeptLay *) lay)->revision > 0)
    write_revision (writer, key, ((const SqKeptLay *) lay)->revision);
}

gboolean
sq_read_paper_kinds (const SqJson *json, guint token, gpointer record, GError **error)
{
  SqJob *job = record;

  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  FOR_EACH (json, token, at)
  {
    guint kind = 0;
    if (!sq_read_word (json, at, sq_paper_kind_names, &kind, error))
      return FALSE;
    if (job->papers.kinds & (1u << kind))
      return sq_refuse (json, at, error, "a paper for the second time");
    job->papers.kinds |= 1u << kind;
  }
  return TRUE;
}

void
sq_write_paper_kinds (SqJsonWriter *writer, const char *key, gconstpointer job)
{
  sq_json_open_array (writer, key, SQ_JSON_LINE);
  for (guint i = 0; i < SQ_N_PAPER_KINDS; i++)
    if (((const SqJob *) job)->papers.kinds & (1u << i))
      sq_json_add_string (writer, NULL, sq_paper_kind_names[i]);
  sq_json_close (writer);
}

/* Cut lines ---------------------------------------------------------------------------------- */

static gboolean
read_node (const SqJson *json, guint token, SqNode *node, GError **error)
{
  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  if (sq_json_n_values (json, token) != 3)
    return sq_refuse (json, token, error, "not a corner as [x, y, bulge]");
  if (!sq_read_length (json, token + 1, &node->at.x, error)
      || !sq_read_length (json, token + 2, &node->at.y, error)
      || !sq_read_number (json, token + 3, &node->bulge, error))
    return FALSE;
  return fabs (node->bulge) <= MOST_BULGE || sq_refuse (json, token + 3, error, "out of range");
}

static SqPath *
read_ring (const SqJson *json, guint token, GError **error)
{
  g_autoptr (GArray) nodes = g_array_new (FALSE, TRUE, sizeof (SqNode));

  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return NULL;
  FOR_EACH (json, token, at)
  {
    SqNode node = { 0 };
    if (!read_node (json, at, &node, error))
      return NULL;
    g_array_append_val (nodes, node);
  }
  if (nodes->len >= 2)
    return sq_path_new ((const SqNode *) (gpointer) nodes->data, nodes->len, TRUE);
  sq_refuse (json, token, error, "fewer than two corners");
  return NULL;
}

gboolean
sq_read_cut (const SqJson *json, guint token, gpointer record, GError **error)
{
  SqKeptPiece *piece = record;

  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  if (sq_json_n_values (json, token) == 0)
    return sq_refuse (json, token, error, "no outline");
  piece->cut = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  FOR_EACH (json, token, at)
  {
    SqPath *ring = read_ring (json, at, error);
    if (ring == NULL)
      return FALSE;
    g_ptr_array_add (piece->cut, ring);
  }
  return TRUE;
}

void
sq_write_cut (SqJsonWriter *writer, const char *key, gconstpointer record)
{
  const SqKeptPiece *piece = record;

  sq_json_open_array (writer, key, SQ_JSON_LINE);
  for (guint i = 0; i < piece->cut->len; i++)
    sq_plan_add_path (writer, NULL, g_ptr_array_index (piece->cut, i), 0);
  sq_json_close (writer);
}

/* The lays ----------------------------------------------------------------------------------- */

/* Whether each item of the list @key of the lay @token has, at @member, less than @n. */
static gboolean
check_indexes (const SqJson *json, guint token, const char *key, const char *member, guint n,
               GError **error)
{
  guint list = sq_json_member (json, token, key);

  if (list == 0)
    return TRUE;
  FOR_EACH (json, list, at)
  {
    guint index = sq_json_member (json, at, member);
    if (sq_json_number (json, index) >= n)
      return sq_refuse (json, index, error, "there is none of this number");
  }
  return TRUE;
}

/* A roll is that long at most, and what lies on it goes no farther. */
static gboolean
check_number (const SqJson *json, guint object, const char *key, double most, GError **error)
{
  guint token = sq_json_member (json, object, key);

  return fabs (sq_json_number (json, token)) <= most
         || sq_refuse (json, token, error, "out of range");
}

static gboolean
check_places (const SqJson *json, guint lay, GError **error)
{
  guint placed = sq_json_member (json, lay, "placed"),
        strips = sq_json_member (json, lay, "strips");

  FOR_EACH (json, strips, at)
  if (!check_number (json, at, "length", MOST_ALONG_MM, error))
    return FALSE;
  FOR_EACH (json, placed, at)
  if (!check_number (json, at, "x", MOST_ALONG_MM, error)
      || !check_number (json, at, "y", MOST_ALONG_MM, error)
      || !check_number (json, at, "turn", MOST_TURN_DEG, error))
    return FALSE;
  return TRUE;
}

static SqKeptLay *
read_kept_lay (const SqJson *json, guint token, GError **error)
{
  g_autoptr (SqKeptLay) lay = sq_kept_lay_new (0);

  if (!sq_fields_read (&sq_kept_lay_keys, json, token, lay, error)
      || !check_places (json, token, error)
      || !check_indexes (json, token, "placed", "piece", lay->pieces->len, error)
      || !check_indexes (json, token, "placed", "strip", lay->strips->len, error)
      || !check_indexes (json, token, "unlaid", "piece", lay->pieces->len, error))
    return NULL;
  return g_steal_pointer (&lay);
}

gboolean
sq_read_kept_lays (const SqJson *json, guint token, gpointer record, GError **error)
{
  SqJob *job = record;

  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  FOR_EACH (json, token, at)
  {
    SqKeptLay *lay = read_kept_lay (json, at, error);
    if (lay == NULL)
      return FALSE;
    if (sq_job_kept_lay (job, lay->cloth) != NULL)
      {
        sq_kept_lay_unref (lay);
        return sq_refuse (json, at, error, "a second lay of one cloth");
      }
    g_ptr_array_add (job->kept_lays, lay);
  }
  return TRUE;
}

void
sq_write_kept_lays (SqJsonWriter *writer, const char *key, gconstpointer job)
{
  const GPtrArray *lays = ((const SqJob *) job)->kept_lays;

  if (lays->len == 0)
    return;
  sq_json_open_array (writer, key, SQ_JSON_LINES);
  for (guint i = 0; i < lays->len; i++)
    {
      sq_json_open_object (writer, NULL, SQ_JSON_LINES);
      sq_fields_write (&sq_kept_lay_keys, writer, g_ptr_array_index (lays, i));
      sq_json_close (writer);
    }
  sq_json_close (writer);
}
