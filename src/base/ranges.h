/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which of a numbered list: "1, 3-5, 8". */
#pragma once

#include <glib.h>

/* Reads numbers from 1 and ranges of them, with commas between them, a dash in them and blanks round them; up to
 * @most, what is above is left out of a range but refused alone. An end that is left open goes to the
 * first or last. New array of guint, ascending, each once; NULL where @text is none, or names none. */
GArray *sq_ranges_read (const char *text, guint most);
