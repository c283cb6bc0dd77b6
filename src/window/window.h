/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A window: one job on the bench, or an invitation to begin one. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"
#include "window/seat-canvas.h"

#define SQ_TYPE_WINDOW (sq_window_get_type ())
G_DECLARE_FINAL_TYPE (SqWindow, sq_window, SQ, WINDOW, GtkApplicationWindow)

SqWindow *sq_window_new (GtkApplication *application);

/* The job it shows; NULL: none, it invites. */
SqDocument *sq_window_get_document (SqWindow *window);
void sq_window_set_document (SqWindow *window, SqDocument *document);

/* Opens @file here if the window is still empty, else in a window of its own. A sentence says what
 * went wrong. */
void sq_window_open (SqWindow *window, GFile *file);

/* Offers, one after the other, jobs that were being changed when Squab was stopped. */
void sq_window_offer_leftovers (SqWindow *window);

/* The three canvases and what is chosen, for the bench. */
SqSeatCanvas *sq_window_get_seat (SqWindow *window);
SqCanvas *sq_window_get_pieces (SqWindow *window);
SqCanvas *sq_window_get_roll (SqWindow *window);
SqSelection *sq_window_get_selection (SqWindow *window);
