/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/put.h"

#include "base/error.h"
#include "exchange/save-file.h"

#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

gboolean
sq_put (const char *path, const char *text, gsize length, GError **error)
{
  if (!g_str_equal (path, "-"))
    return sq_file_save (path, text, length, error);
  if (fwrite (text, 1, length, stdout) == length && fflush (stdout) == 0)
    return TRUE;
  g_set_error_literal (error, SQ_ERROR, SQ_ERROR_WRITE, _ ("standard output can’t be written"));
  return FALSE;
}

gboolean
sq_put_text (const char *path, char *text, GError **error)
{
  g_autofree char *own = text;

  return sq_put (path, own, strlen (own), error);
}
