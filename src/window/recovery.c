/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/recovery.h"

#include "base/error.h"
#include "exchange/defaults-file.h"
#include "exchange/job-file.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/file.h>
#include <unistd.h>

/* So long after the last change it is kept (ms). */
#define PAUSE 500

#define GROUP "job"

static const char *const endings[] = { ".squab", ".ini", ".lock" };

static char *
folder_name (void)
{
  return g_build_filename (g_get_user_state_dir (), "squab", "recovery", NULL);
}

/* Opens the lock @path and holds it; −1 if somebody else does, or it can't be. */
static int
take_lock (const char *path)
{
  int fd = g_open (path, O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (fd >= 0 && flock (fd, LOCK_EX | LOCK_NB) != 0)
    {
      close (fd);
      return -1;
    }
  return fd;
}

/* Takes away all that is called @stem. The lock goes last: while it is there, it is held. */
static void
remove_all (const char *stem)
{
  for (guint i = 0; i < G_N_ELEMENTS (endings); i++)
    {
      g_autofree char *path = g_strconcat (stem, endings[i], NULL);
      g_unlink (path);
    }
}

/* --- keeping ------------------------------------------------------------------------------- */

/* What is known of one document, as long as that lives. */
typedef struct
{
  SqDocument *document; /* borrowed */
  char *stem;
  int lock;
  guint timeout;
  gboolean is_writing, is_again, has_failed, is_there;
  GCancellable *gone; /* cancelled with the document */
  SqKeepFailed failed;
  gpointer data;
} Keeper;

/* One writing, on a thread of its own. */
typedef struct
{
  SqJob *job;
  char *stem, *title, *file;
} Writing;

static void
writing_free (gpointer data)
{
  Writing *writing = data;
  sq_job_unref (writing->job);
  g_free (writing->stem);
  g_free (writing->title);
  g_free (writing->file);
  g_free (writing);
}

static gboolean
write_about (const Writing *writing, GError **error)
{
  g_autoptr (GKeyFile) about = g_key_file_new ();
  g_autofree char *path = g_strconcat (writing->stem, ".ini", NULL);
  g_key_file_set_string (about, GROUP, "title", writing->title);
  g_key_file_set_int64 (about, GROUP, "time", g_get_real_time () / G_USEC_PER_SEC);
  if (writing->file != NULL)
    g_key_file_set_string (about, GROUP, "file", writing->file);
  return g_key_file_save_to_file (about, path, error);
}

static void
write_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Writing *writing = data;
  GError *error = NULL;
  g_autofree char *path = g_strconcat (writing->stem, ".squab", NULL);
  (void) source, (void) cancellable;
  if (write_about (writing, &error) && sq_job_save (writing->job, path, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void keep_soon (Keeper *keeper);

static void
on_written (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;
  GTask *task = G_TASK (result);
  Writing *writing = g_task_get_task_data (task);
  Keeper *keeper = data;
  gboolean is_gone = g_cancellable_is_cancelled (g_task_get_cancellable (task));
  (void) source;
  if (!g_task_propagate_boolean (task, &error) && !is_gone && !keeper->has_failed)
    {
      keeper->has_failed = TRUE;
      if (keeper->failed != NULL)
        keeper->failed (keeper->document, error, keeper->data);
    }
  if (is_gone)
    {
      remove_all (writing->stem); /* the document went while it was written */
      return;
    }
  keeper->is_writing = FALSE;
  if (keeper->is_again)
    keep_soon (keeper);
}

/* Saved, or as it came: nothing of it needs keeping. */
static void
keep_nothing (Keeper *keeper)
{
  static const char *const kept[] = { ".squab", ".ini" };
  for (guint i = 0; i < G_N_ELEMENTS (kept); i++)
    {
      g_autofree char *path = g_strconcat (keeper->stem, kept[i], NULL);
      g_unlink (path);
    }
  keeper->is_there = FALSE;
}

static gboolean
keep_now (gpointer data)
{
  Keeper *keeper = data;
  GFile *file = sq_document_get_file (keeper->document);
  Writing *writing;
  g_autoptr (GTask) task = NULL;
  keeper->timeout = 0;
  if (keeper->is_writing)
    {
      keeper->is_again = TRUE;
      return G_SOURCE_REMOVE;
    }
  keeper->is_again = FALSE;
  if (!sq_document_is_modified (keeper->document))
    {
      if (keeper->is_there)
        keep_nothing (keeper);
      return G_SOURCE_REMOVE;
    }
  writing = g_new0 (Writing, 1);
  writing->job = sq_job_ref (sq_document_get_job (keeper->document));
  writing->stem = g_strdup (keeper->stem);
  writing->title = g_strdup (sq_document_get_title (keeper->document));
  writing->file = file != NULL ? g_file_get_path (file) : NULL;
  keeper->is_writing = keeper->is_there = TRUE;
  task = g_task_new (NULL, keeper->gone, on_written, keeper);
  g_task_set_check_cancellable (task, FALSE);
  g_task_set_task_data (task, writing, writing_free);
  g_task_run_in_thread (task, write_thread);
  return G_SOURCE_REMOVE;
}

static void
keep_soon (Keeper *keeper)
{
  g_clear_handle_id (&keeper->timeout, g_source_remove);
  keeper->timeout = g_timeout_add (PAUSE, keep_now, keeper);
}

static void
on_gone (gpointer data, GObject *document)
{
  Keeper *keeper = data;
  (void) document;
  g_clear_handle_id (&keeper->timeout, g_source_remove);
  g_cancellable_cancel (keeper->gone);
  if (!keeper->is_writing)
    remove_all (keeper->stem);
  if (keeper->lock >= 0)
    close (keeper->lock);
  g_object_unref (keeper->gone);
  g_free (keeper->stem);
  g_free (keeper);
}

static void
on_changed (SqDocument *document, gpointer keeper)
{
  (void) document;
  keep_soon (keeper);
}

static void
on_modified (SqDocument *document, GParamSpec *spec, gpointer keeper)
{
  (void) document, (void) spec;
  keep_soon (keeper);
}

void
sq_recovery_keep (SqDocument *document, SqKeepFailed failed, gpointer data)
{
  g_autofree char *folder = folder_name ();
  g_autofree char *name = g_uuid_string_random ();
  g_autofree char *lock = NULL;
  Keeper *keeper;
  g_return_if_fail (SQ_IS_DOCUMENT (document));
  keeper = g_new0 (Keeper, 1);
  keeper->document = document;
  keeper->stem = g_build_filename (folder, name, NULL);
  keeper->gone = g_cancellable_new ();
  keeper->failed = failed;
  keeper->data = data;
  lock = g_strconcat (keeper->stem, ".lock", NULL);
  keeper->lock = g_mkdir_with_parents (folder, 0700) == 0 ? take_lock (lock) : -1;
  g_signal_connect (document, "changed", G_CALLBACK (on_changed), keeper);
  g_signal_connect (document, "notify::modified", G_CALLBACK (on_modified), keeper);
  g_object_weak_ref (G_OBJECT (document), on_gone, keeper);
  if (sq_document_is_modified (document))
    keep_soon (keeper);
}

/* --- what was left ------------------------------------------------------------------------- */

struct _SqLeftover
{
  char *stem, *title, *file;
  gint64 time;
  int lock;
};

void
sq_leftover_free (SqLeftover *leftover)
{
  if (leftover->lock >= 0)
    close (leftover->lock);
  g_free (leftover->stem);
  g_free (leftover->title);
  g_free (leftover->file);
  g_free (leftover);
}

static SqLeftover *
leftover_new (const char *stem)
{
  g_autofree char *lock = g_strconcat (stem, ".lock", NULL);
  g_autofree char *about_path = g_strconcat (stem, ".ini", NULL);
  g_autoptr (GKeyFile) about = g_key_file_new ();
  SqLeftover *leftover;
  int fd = take_lock (lock);
  if (fd < 0)
    return NULL;
  leftover = g_new0 (SqLeftover, 1);
  leftover->stem = g_strdup (stem);
  leftover->lock = fd;
  if (g_key_file_load_from_file (about, about_path, G_KEY_FILE_NONE, NULL))
    {
      leftover->title = g_key_file_get_string (about, GROUP, "title", NULL);
      leftover->file = g_key_file_get_string (about, GROUP, "file", NULL);
      leftover->time = g_key_file_get_int64 (about, GROUP, "time", NULL);
    }
  if (leftover->title == NULL)
    leftover->title = g_path_get_basename (stem);
  return leftover;
}

/* A lock whose program went before anything had changed. */
static void
remove_stale_lock (const char *folder, const char *name)
{
  g_autofree char *stem = g_strndup (name, strlen (name) - strlen (".lock"));
  g_autofree char *job = g_strconcat (folder, G_DIR_SEPARATOR_S, stem, ".squab", NULL);
  g_autofree char *lock = g_build_filename (folder, name, NULL);
  int fd;
  if (g_file_test (job, G_FILE_TEST_EXISTS) || (fd = take_lock (lock)) < 0)
    return;
  g_unlink (lock);
  close (fd);
}

GPtrArray *
sq_recovery_find (void)
{
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_leftover_free);
  g_autofree char *folder = folder_name ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = NULL;
      SqLeftover *leftover;
      if (g_str_has_suffix (name, ".lock"))
        remove_stale_lock (folder, name);
      if (!g_str_has_suffix (name, ".squab"))
        continue;
      path = g_build_filename (folder, name, NULL);
      path[strlen (path) - strlen (".squab")] = '\0';
      leftover = leftover_new (path);
      if (leftover != NULL)
        g_ptr_array_add (found, leftover);
    }
  return found;
}

const char *
sq_leftover_title (const SqLeftover *leftover)
{
  return leftover->title;
}

char *
sq_leftover_time (const SqLeftover *leftover)
{
  g_autoptr (GDateTime) time = g_date_time_new_from_unix_local (leftover->time);
  return time != NULL ? g_date_time_format (time, "%x %H:%M") : g_strdup ("");
}

SqDocument *
sq_leftover_open (SqLeftover *leftover, GError **error)
{
  g_autofree char *path = g_strconcat (leftover->stem, ".squab", NULL);
  g_autoptr (GFile) file = leftover->file != NULL ? g_file_new_for_path (leftover->file) : NULL;
  SqDefaults defaults;
  g_autoptr (SqJob) job = NULL;
  sq_defaults_builtin (&defaults);
  job = sq_job_load (path, &defaults, error);
  return job != NULL ? sq_document_new_changed (job, file) : NULL;
}

void
sq_leftover_drop (SqLeftover *leftover)
{
  remove_all (leftover->stem);
}
