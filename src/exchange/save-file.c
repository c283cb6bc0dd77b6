/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/save-file.h"

#include "base/error.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

#define MOST_LINKS 40 /* as many as the system itself follows */

/* What @path is in the end, behind all symbolic links; a file that is not there yet is fine. NULL
 * with errno where they go round in circles. */
static char *
final_target (const char *path)
{
  char *target = g_strdup (path);

  for (guint i = 0; i <= MOST_LINKS; i++)
    {
      g_autofree char *link = g_file_read_link (target, NULL);
      g_autofree char *folder = g_path_get_dirname (target);

      if (link == NULL)
        return target;
      g_free (target);
      target = g_path_is_absolute (link) ? g_steal_pointer (&link)
                                         : g_build_filename (folder, link, NULL);
    }
  g_free (target);
  errno = ELOOP;
  return NULL;
}

static gboolean
write_all (int file, const char *text, gsize length)
{
  while (length > 0)
    {
      gssize n = write (file, text, length);

      if (n < 0 && errno == EINTR)
        continue;
      if (n < 0)
        return FALSE;
      text += n;
      length -= (gsize) n;
    }
  return TRUE;
}

/* Closes @file in any case; FALSE with the errno of what went wrong first. */
static gboolean
closed (int file, gboolean good)
{
  int reason = errno;

  if (close (file) == 0 || !good)
    {
      errno = reason;
      return good;
    }
  return FALSE;
}

static gboolean
write_through (const char *path, const char *text, gsize length)
{
  int file = g_open (path, O_WRONLY | O_CLOEXEC, 0);

  return file >= 0 && closed (file, write_all (file, text, length));
}

/* Some file systems can't flush a folder; the file is there all the same. */
static void
flush_folder (const char *folder)
{
  int file = g_open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);

  if (file < 0)
    return;
  fsync (file);
  close (file);
}

/* Puts a new file in the place of @path, which is no link. @old: its state, NULL if there is
 * none. */
static gboolean
replace (const char *path, const struct stat *old, const char *text, gsize length)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *draft = g_build_filename (folder, ".squab-XXXXXX", NULL);
  int file = g_mkstemp_full (draft, O_WRONLY | O_CLOEXEC, 0666);
  gboolean good;
  int reason;

  if (file < 0)
    return FALSE;
  good = (old == NULL || fchmod (file, old->st_mode & 07777) == 0) && write_all (file, text, length)
         && fsync (file) == 0;
  if (closed (file, good) && g_rename (draft, path) == 0)
    {
      flush_folder (folder);
      return TRUE;
    }
  reason = errno;
  g_unlink (draft);
  errno = reason;
  return FALSE;
}

static gboolean
save (const char *path, const char *text, gsize length)
{
  g_autofree char *target = final_target (path);
  struct stat old;

  if (target == NULL)
    return FALSE;
  if (stat (target, &old) != 0)
    return errno == ENOENT && replace (target, NULL, text, length);
  if (S_ISDIR (old.st_mode))
    {
      errno = EISDIR;
      return FALSE;
    }
  if (!S_ISREG (old.st_mode))
    return write_through (target, text, length);
  /* A file that may not be written is not to be replaced either. */
  return faccessat (AT_FDCWD, target, W_OK, AT_EACCESS) == 0
         && replace (target, &old, text, length);
}

gboolean
sq_file_save (const char *path, const char *text, gsize length, GError **error)
{
  g_autofree char *name = NULL;
  int reason;

  if (save (path, text, length))
    return TRUE;
  reason = errno;
  name = g_filename_display_name (path);
  g_set_error (error, SQ_ERROR, SQ_ERROR_WRITE, "%s: %s", name, g_strerror (reason));
  return FALSE;
}
