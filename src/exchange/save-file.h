/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Saving so that there is always a whole file: the old one, or the new one. */
#pragma once

#include <glib.h>

/* Writes @text, @length bytes, to @path: into a new file in the same folder, which takes the place
 * of the old one once all of it is on the disk. The old one's permissions are kept, and a symbolic
 * link goes on pointing to what it points to. What is no file with a content of its own (a device,
 * a pipe) is written to as it is.
 *
 * FALSE with SQ_ERROR_WRITE and a message that begins with @path; the old file is then whole and
 * nothing else is left behind. */
gboolean sq_file_save (const char *path, const char *text, gsize length, GError **error);
