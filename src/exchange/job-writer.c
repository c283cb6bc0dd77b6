/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/job-file.h"
#include "exchange/job-keys.h"

#include "exchange/save-file.h"

#include <string.h>

void
sq_write_bow (SqJsonWriter *writer, const char *key, gconstpointer record)
{
  const SqCorner *corner = record;

  if (corner->shape == SQ_SHAPE_BOW)
    sq_json_add_number (writer, key, corner->bow_mm);
}

void
sq_write_curve (SqJsonWriter *writer, const char *key, gconstpointer record)
{
  const SqCorner *corner = record;

  if (corner->shape != SQ_SHAPE_CURVE)
    return;
  sq_json_open_array (writer, key, SQ_JSON_LINE);
  for (guint i = 0; i < 2; i++)
    {
      sq_json_open_array (writer, NULL, SQ_JSON_LINE);
      sq_json_add_number (writer, NULL, corner->control[i].x);
      sq_json_add_number (writer, NULL, corner->control[i].y);
      sq_json_close (writer);
    }
  sq_json_close (writer);
}

static void
write_ring (SqJsonWriter *writer, const char *key, const SqOutline *outline, guint ring)
{
  guint n;
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);

  sq_json_open_array (writer, key, SQ_JSON_LINES);
  for (guint i = 0; i < n; i++)
    {
      sq_json_open_object (writer, NULL, SQ_JSON_LINE);
      sq_fields_write (&sq_corner_keys, writer, &corners[i]);
      sq_json_close (writer);
    }
  sq_json_close (writer);
}

void
sq_write_outline (SqJsonWriter *writer, const char *key, gconstpointer record)
{
  const SqCushion *cushion = record;

  if (sq_outline_n_rings (cushion->outline) > 0)
    write_ring (writer, key, cushion->outline, 0);
}

void
sq_write_holes (SqJsonWriter *writer, const char *key, gconstpointer record)
{
  const SqCushion *cushion = record;

  if (sq_outline_n_rings (cushion->outline) < 2)
    return;
  sq_json_open_array (writer, key, SQ_JSON_LINES);
  for (guint ring = 1; ring < sq_outline_n_rings (cushion->outline); ring++)
    write_ring (writer, NULL, cushion->outline, ring);
  sq_json_close (writer);
}

void
sq_write_stripes (SqJsonWriter *writer, const char *key, gconstpointer record)
{
  const SqCloth *cloth = record;

  if (cloth->n_stripes == 0)
    return;
  sq_json_open_array (writer, key, SQ_JSON_LINES);
  for (guint i = 0; i < cloth->n_stripes; i++)
    {
      sq_json_open_object (writer, NULL, SQ_JSON_LINE);
      sq_fields_write (&sq_stripe_keys, writer, &cloth->stripes[i]);
      sq_json_close (writer);
    }
  sq_json_close (writer);
}

/* A list of objects, each on lines of its own; nothing where there are none. */
static void
write_list (SqJsonWriter *writer, const char *key, const SqFields *fields,
            const gconstpointer *records, guint n)
{
  if (n == 0)
    return;
  sq_json_open_array (writer, key, SQ_JSON_LINES);
  for (guint i = 0; i < n; i++)
    {
      sq_json_open_object (writer, NULL, SQ_JSON_LINES);
      sq_fields_write (fields, writer, records[i]);
      sq_json_close (writer);
    }
  sq_json_close (writer);
}

void
sq_write_cushions (SqJsonWriter *writer, const char *key, gconstpointer record)
{
  const GPtrArray *cushions = ((const SqJob *) record)->cushions;

  write_list (writer, key, &sq_cushion_keys, (const gconstpointer *) cushions->pdata,
              cushions->len);
}

void
sq_write_cloths (SqJsonWriter *writer, const char *key, gconstpointer record)
{
  const GPtrArray *cloths = ((const SqJob *) record)->cloths;

  write_list (writer, key, &sq_cloth_keys, (const gconstpointer *) cloths->pdata, cloths->len);
}

void
sq_write_foams (SqJsonWriter *writer, const char *key, gconstpointer record)
{
  const GArray *foams = ((const SqJob *) record)->foams;
  g_autofree gconstpointer *records = g_new (gconstpointer, foams->len);

  for (guint i = 0; i < foams->len; i++)
    records[i] = &g_array_index (foams, SqFoam, i);
  write_list (writer, key, &sq_foam_keys, records, foams->len);
}

char *
sq_job_write (const SqJob *job)
{
  g_autoptr (SqJsonWriter) writer = sq_json_writer_new ();

  sq_json_open_object (writer, NULL, SQ_JSON_LINES);
  sq_json_add_string (writer, "format", SQ_JOB_FORMAT);
  sq_json_add_integer (writer, "version", SQ_JOB_VERSION);
  sq_fields_write (&sq_job_keys, writer, job);
  sq_json_close (writer);
  return sq_json_writer_dup_text (writer);
}

gboolean
sq_job_save (const SqJob *job, const char *path, GError **error)
{
  g_autofree char *text = sq_job_write (job);

  return sq_file_save (path, text, strlen (text), error);
}
