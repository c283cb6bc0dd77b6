/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cells of tables that other programs read (RFC 4180). Internal to the room. */
#pragma once

#include <glib.h>

/* Adds @text as a cell, in quotes where it needs them, and a comma. What a spreadsheet would take for a
 * formula begins with an apostrophe. */
void sq_csv_add (GString *out, const char *text);
