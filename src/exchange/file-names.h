/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Names of files from names that people gave. */
#pragma once

#include <glib.h>

/* @name as the name of a file: without slashes, characters that other systems refuse, control
 * characters, dots and blanks at its ends; at most 100 bytes of whole UTF-8 characters; @otherwise where nothing is left. New text. */
char *sq_file_name (const char *name, const char *otherwise);
