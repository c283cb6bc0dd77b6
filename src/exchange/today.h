/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The day that papers bear. */
#pragma once

#include <glib.h>

/* The day of SOURCE_DATE_EPOCH, in UTC, where the environment has it and it is a number of seconds
 * (reproducible-builds.org/specs/source-date-epoch); else today's, here. New text, YYYY-MM-DD. */
char *sq_today (void);

/* Whether @text is a day of the calendar, written YYYY-MM-DD. */
gboolean sq_is_date (const char *text);
