/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reading a whole file that must not be too large. */
#pragma once

#include <glib.h>

/* The content of the file @path into *@content (yours, a NUL after it) and *@length; not more than
 * @most bytes are ever held. FALSE with SQ_ERROR_READ and a message that begins with @path. */
gboolean sq_file_load (const char *path, gsize most, char **content, gsize *length, GError **error);
