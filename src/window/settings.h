/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is remembered from one run to the next: squab/window.ini below the user's state. Losing it
 * costs nobody work, so errors are not told. */
#pragma once

#include <gtk/gtk.h>

/* The groups of the file. */
#define SQ_SETTINGS_WINDOW "window"
#define SQ_SETTINGS_FILES "files"
#define SQ_SETTINGS_FOLDED "folded"     /* groups of values, by their keys */
#define SQ_SETTINGS_MACHINES "machines" /* files for plotters and cutting tables */

/* What is remembered now, empty if nothing is; new. */
GKeyFile *sq_settings_read (void);
/* Remembers @settings; the file is the old one or the new one, never half of it. */
void sq_settings_write (GKeyFile *settings);

/* The jobs opened or saved last that are still there, the newest first; new array of GFile. */
GPtrArray *sq_settings_recent (void);
/* Puts @file first among them. */
void sq_settings_add_recent (GFile *file);
/* The same as a menu, each item being win.open-recent with the file's URI; borrowed. It follows
 * sq_settings_add_recent(). */
GMenuModel *sq_settings_recent_menu (void);

/* How the application's windows are coloured: the action app.colours, "desktop", "light" or "dark",
 * as it was chosen last. */
void sq_settings_add_colours (GActionMap *application);
