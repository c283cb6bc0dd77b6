/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Writing what the command line asks for. */
#pragma once

#include <glib.h>

/* Writes @text to the file @path, or to standard output for "-". FALSE with SQ_ERROR_WRITE. */
gboolean sq_put (const char *path, const char *text, gsize length, GError **error);
/* The same; takes @text. */
gboolean sq_put_text (const char *path, char *text, GError **error);
