/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/read-file.h"

#include "base/error.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <unistd.h>

static gboolean
refuse (const char *path, const char *why, GError **error)
{
  g_autofree char *name = g_filename_display_name (path);

  g_set_error (error, SQ_ERROR, SQ_ERROR_READ, "%s: %s", name, why);
  return FALSE;
}

/* Appends all that can be read, but no more than one byte beyond @most; FALSE with errno. */
static gboolean
read_all (int file, gsize most, GByteArray *bytes)
{
  guint8 part[65536];

  while (bytes->len <= most)
    {
      gssize n = read (file, part, MIN (sizeof part, most + 1 - bytes->len));

      if (n < 0 && errno == EINTR)
        continue;
      if (n <= 0)
        return n == 0;
      g_byte_array_append (bytes, part, (guint) n);
    }
  return TRUE;
}

gboolean
sq_file_load (const char *path, gsize most, char **content, gsize *length, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  int file = g_open (path, O_RDONLY | O_CLOEXEC, 0), reason;
  gboolean good;

  if (file < 0)
    return refuse (path, g_strerror (errno), error);
  good = read_all (file, most, bytes);
  reason = errno;
  close (file);
  if (!good)
    return refuse (path, g_strerror (reason), error);
  if (bytes->len > most)
    return refuse (path, "too large", error);
  *length = bytes->len;
  g_byte_array_append (bytes, (const guint8 *) "", 1);
  *content = (char *) g_byte_array_free (g_steal_pointer (&bytes), FALSE);
  return TRUE;
}
