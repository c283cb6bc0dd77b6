/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/recovery.h"

#include "base/error.h"
#include "exchange/defaults-file.h"
#include "exchange/job-file.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

/* So long after the last change it is kept (ms). */
#define PAUSE 500

#define GROUP "job"
#define KEEPER "sq-keeper"
#define LEFTOVER "sq-leftover" /* on the document that was made of it */

static const char *const endings[] = { ".squab", ".ini", ".lock" };

static char *
folder_name (void)
{
  return g_build_filename (g_get_user_state_dir (), "squab", "recovery", NULL);
}

/* Whether the open @fd is what @path is now: who held it before may have taken it away. */
static gboolean
is_same_file (int fd, const char *path)
{
  struct stat held, there;
  return fstat (fd, &held) == 0 && stat (path, &there) == 0 && held.st_dev == there.st_dev
         && held.st_ino == there.st_ino;
}

/* Opens the lock @path and holds it; −1 if somebody else does, or it can't be. */
static int
take_lock (const char *path)
{
  int fd = g_open (path, O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (fd >= 0 && (flock (fd, LOCK_EX | LOCK_NB) != 0 || !is_same_file (fd, path)))
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

/* What is known of one document, as long as that lives and is written. */
typedef struct
{
  SqDocument *document; /* borrowed; NULL: gone */
  char *stem;
  int lock;
  guint timeout;
  gboolean is_writing, is_again, has_failed, is_there, is_left;
  SqKeepTold told;
  gpointer data;
} Keeper;

static void
keeper_free (Keeper *keeper)
{
  if (!keeper->is_left)
    remove_all (keeper->stem);
  if (keeper->lock >= 0)
    close (keeper->lock);
  g_free (keeper->stem);
  g_free (keeper);
}

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

static Writing *
writing_new (Keeper *keeper)
{
  GFile *file = sq_document_get_file (keeper->document);
  Writing *writing = g_new0 (Writing, 1);
  writing->job = sq_job_ref (sq_document_get_job (keeper->document));
  writing->stem = g_strdup (keeper->stem);
  writing->title = g_strdup (sq_document_get_title (keeper->document));
  writing->file = file != NULL ? g_file_get_uri (file) : NULL;
  return writing;
}

static gboolean
write_about (const Writing *writing, GError **error)
{
  g_autoptr (GKeyFile) about = g_key_file_new ();
  g_autofree char *path = g_strconcat (writing->stem, ".ini", NULL);
  g_key_file_set_string (about, GROUP, "title", writing->title);
  g_key_file_set_int64 (about, GROUP, "time", g_get_real_time () / G_USEC_PER_SEC);
  if (writing->file != NULL)
    g_key_file_set_string (about, GROUP, "uri", writing->file);
  return g_key_file_save_to_file (about, path, error);
}

static gboolean
write_out (const Writing *writing, GError **error)
{
  g_autofree char *path = g_strconcat (writing->stem, ".squab", NULL);
  return write_about (writing, error) && sq_job_save (writing->job, path, error);
}

static void
write_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  GError *error = NULL;
  (void) source, (void) cancellable;
  if (write_out (data, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void keep_soon (Keeper *keeper);

/* Tells when keeping has begun to fail, and when it works again. */
static void
tell (Keeper *keeper, const GError *error)
{
  gboolean fails = error != NULL;
  if (fails == keeper->has_failed)
    return;
  keeper->has_failed = fails;
  if (keeper->told != NULL)
    keeper->told (keeper->document, error, keeper->data);
}

static void
on_written (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;
  Keeper *keeper = data;
  (void) source;
  g_task_propagate_boolean (G_TASK (result), &error);
  keeper->is_writing = FALSE;
  if (keeper->document == NULL)
    keeper_free (keeper);
  else
    {
      tell (keeper, error);
      if (keeper->is_again)
        keep_soon (keeper);
    }
  g_application_release (g_application_get_default ());
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
  keeper->is_writing = keeper->is_there = TRUE;
  g_application_hold (g_application_get_default ()); /* not to end while it is written */
  task = g_task_new (NULL, NULL, on_written, keeper);
  g_task_set_task_data (task, writing_new (keeper), writing_free);
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
  keeper->document = NULL;
  if (!keeper->is_writing)
    keeper_free (keeper);
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

struct _SqLeftover
{
  char *stem, *title, *uri;
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
  g_free (leftover->uri);
  g_free (leftover);
}

/* What was left is kept on where it is: at no time is it nowhere. */
static void
adopt (Keeper *keeper, SqLeftover *leftover)
{
  keeper->stem = g_steal_pointer (&leftover->stem);
  keeper->lock = leftover->lock;
  keeper->is_there = TRUE;
  leftover->lock = -1;
  sq_leftover_free (leftover);
}

/* A place of its own for @keeper. */
static void
take_place (Keeper *keeper)
{
  g_autofree char *folder = folder_name ();
  g_autofree char *name = g_uuid_string_random ();
  g_autofree char *lock = NULL;
  keeper->stem = g_build_filename (folder, name, NULL);
  lock = g_strconcat (keeper->stem, ".lock", NULL);
  keeper->lock = g_mkdir_with_parents (folder, 0700) == 0 ? take_lock (lock) : -1;
}

void
sq_recovery_keep (SqDocument *document, SqKeepTold told, gpointer data)
{
  SqLeftover *leftover;
  Keeper *keeper;
  g_return_if_fail (SQ_IS_DOCUMENT (document));
  keeper = g_new0 (Keeper, 1);
  keeper->document = document;
  keeper->told = told;
  keeper->data = data;
  leftover = g_object_steal_data (G_OBJECT (document), LEFTOVER);
  if (leftover != NULL)
    adopt (keeper, leftover);
  else
    take_place (keeper);
  g_signal_connect (document, "changed", G_CALLBACK (on_changed), keeper);
  g_signal_connect (document, "notify::modified", G_CALLBACK (on_modified), keeper);
  g_object_set_data (G_OBJECT (document), KEEPER, keeper);
  g_object_weak_ref (G_OBJECT (document), on_gone, keeper);
  if (sq_document_is_modified (document))
    keep_soon (keeper);
}

void
sq_recovery_leave (SqDocument *document)
{
  Keeper *keeper = g_object_get_data (G_OBJECT (document), KEEPER);
  if (keeper == NULL || !sq_document_is_modified (document))
    return;
  Writing *writing = writing_new (keeper);
  keeper->is_left = write_out (writing, NULL); /* nobody is there to be told */
  writing_free (writing);
}

/* --- what was left ------------------------------------------------------------------------- */

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
      leftover->uri = g_key_file_get_string (about, GROUP, "uri", NULL);
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

static SqLeftover *
leftover_moved (SqLeftover *leftover)
{
  SqLeftover *moved = g_memdup2 (leftover, sizeof *leftover);
  *leftover = (SqLeftover){ .lock = -1, .title = g_strdup (leftover->title) };
  return moved;
}

SqDocument *
sq_leftover_open (SqLeftover *leftover, GError **error)
{
  g_autofree char *path = g_strconcat (leftover->stem, ".squab", NULL);
  g_autoptr (GFile) file = leftover->uri != NULL ? g_file_new_for_uri (leftover->uri) : NULL;
  SqDocument *document = NULL;
  SqDefaults defaults;
  g_autoptr (SqJob) job = NULL;
  sq_defaults_builtin (&defaults);
  job = sq_job_load (path, &defaults, error);
  if (job == NULL)
    return NULL;
  document = sq_document_new_changed (job, file);
  g_object_set_data_full (G_OBJECT (document), LEFTOVER, leftover_moved (leftover),
                          (GDestroyNotify) sq_leftover_free);
  return document;
}

void
sq_leftover_drop (SqLeftover *leftover)
{
  remove_all (leftover->stem);
}
