/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/cloth-shelf.h"

#include "base/error.h"
#include "exchange/job-keys.h"
#include "exchange/read-file.h"
#include "exchange/save-file.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <string.h>

#define SHELF_FORMAT "squab cloths"
#define SHELF_VERSION 1

/* A shelf is a job of nothing but cloths; keys of newer programs are kept as a job's are. */
static const SqField shelf_fields[] = {
  { .key = "format", .kind = SQ_FIELD_SKIPPED },
  { .key = "version", .kind = SQ_FIELD_SKIPPED },
  { .key = "cloths", .kind = SQ_FIELD_OWN, .read = sq_read_cloths, .write = sq_write_cloths },
};
static const SqFields shelf_keys = { shelf_fields, G_N_ELEMENTS (shelf_fields),
                                     G_STRUCT_OFFSET (SqJob, given), TRUE,
                                     G_STRUCT_OFFSET (SqJob, unknown) };

char *
sq_cloth_shelf_path (void)
{
  return g_build_filename (g_get_user_data_dir (), "squab", "cloths.json", NULL);
}

static gboolean
read_shelf (const char *text, gsize length, SqJob *shelf, GError **error)
{
  g_autoptr (SqJson) json = sq_json_scan (text, (gssize) length, error);

  return json != NULL && sq_check_format (json, SHELF_FORMAT, SHELF_VERSION, error)
         && sq_fields_read (&shelf_keys, json, 0, shelf, error);
}

static SqJob *
load (const char *path, GError **error)
{
  const SqDefaults none = { 0 };
  g_autoptr (SqJob) shelf = sq_job_new (&none);
  g_autofree char *text = NULL, *name = g_filename_display_name (path);
  gsize length;

  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return g_steal_pointer (&shelf);
  if (!sq_file_load (path, SQ_JSON_MOST_BYTES, &text, &length, error))
    return NULL;
  if (!read_shelf (text, length, shelf, error))
    {
      g_prefix_error (error, "%s: ", name);
      return NULL;
    }
  return g_steal_pointer (&shelf);
}

static gboolean
save (const char *path, const SqJob *shelf, GError **error)
{
  g_autoptr (SqJsonWriter) writer = sq_json_writer_new ();
  g_autofree char *folder = g_path_get_dirname (path), *text = NULL;

  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      g_autofree char *name = g_filename_display_name (folder);
      g_set_error (error, SQ_ERROR, SQ_ERROR_WRITE, "%s: %s", name, g_strerror (errno));
      return FALSE;
    }
  sq_json_open_object (writer, NULL, SQ_JSON_LINES);
  sq_json_add_string (writer, "format", SHELF_FORMAT);
  sq_json_add_integer (writer, "version", SHELF_VERSION);
  sq_fields_write (&shelf_keys, writer, shelf);
  sq_json_close (writer);
  text = sq_json_writer_dup_text (writer);
  return sq_file_save (path, text, strlen (text), error);
}

GPtrArray *
sq_cloth_shelf_load (const char *path, GError **error)
{
  g_autoptr (SqJob) shelf = load (path, error);

  return shelf != NULL ? g_ptr_array_ref (shelf->cloths) : NULL;
}

gboolean
sq_cloth_shelf_put (const char *path, const SqCloth *cloth, GError **error)
{
  g_autoptr (SqJob) shelf = load (path, error);
  g_autoptr (SqJob) next = NULL;
  g_autoptr (SqCloth) own = NULL;

  if (shelf == NULL)
    return FALSE;
  own = sq_cloth_dup (cloth);
  own->id = sq_job_new_cloth_id (shelf);
  g_array_set_size (own->stock, 0);
  g_array_set_size (own->flaws, 0);
  for (guint i = shelf->cloths->len; i-- > 0;)
    {
      const SqCloth *other = g_ptr_array_index (shelf->cloths, i);
      if (strcmp (other->name, cloth->name) == 0)
        own->id = other->id;
    }
  next = sq_job_with_cloth (shelf, own);
  return save (path, next, error);
}

gboolean
sq_cloth_shelf_take_off (const char *path, const char *name, GError **error)
{
  g_autoptr (SqJob) shelf = load (path, error);
  guint before;

  if (shelf == NULL)
    return FALSE;
  before = shelf->cloths->len;
  for (guint i = before; i-- > 0;)
    if (strcmp (((const SqCloth *) g_ptr_array_index (shelf->cloths, i))->name, name) == 0)
      g_ptr_array_remove_index (shelf->cloths, i);
  return shelf->cloths->len == before || save (path, shelf, error);
}
