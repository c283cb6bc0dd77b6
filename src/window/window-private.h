/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the window share. */
#pragma once

#include "window/cushion-list.h"
#include "window/pieces-canvas.h"
#include "window/problems.h"
#include "window/roll-pane.h"
#include "window/seam-card.h"
#include "window/seat-draw.h"
#include "window/sides-table.h"
#include "window/start-page.h"
#include "window/steps-menu.h"
#include "window/values.h"
#include "window/window.h"

struct _SqWindow
{
  GtkApplicationWindow parent;
  SqDocument *document;
  SqLayFinder *finder; /* of its lays */
  SqSelection *selection;
  gboolean is_closing;        /* the question about changes is answered */
  gboolean is_asking;         /* and here it still stands */
  gboolean is_offer_declined; /* to make a seat alike on both sides */
  int roll_height;            /* with its caption, unfolded (pixels) */
  gboolean is_roll_fitted;    /* the divider has had its first place */
  guint held;                 /* the session, against logging out; 0: not */

  GtkWidget *title, *subtitle, *save, *print, *steps, *undo, *all_steps, *redo, *zooms;
  GMenu *recent_menu;
  GtkWidget *notice, *notice_words;
  GtkWidget *stack, *bench, *middle, *seat_pane, *pieces_pane;
  GtkWidget *seat_only, *pieces_only, *seat_words, *pieces_words;
  GtkWidget *symmetry_offer, *symmetry_words;
  GtkWidget *revealer, *figures, *count, *count_words;
  SqSeatDraw *draw;
  SqStartPage *start_page;
  SqCushionList *cushions;
  SqSeatCanvas *seat;
  SqSidesTable *sides;
  SqPiecesCanvas *pieces;
  SqSeamCard *seam_card;
  SqValues *values;
  SqProblems *problems;
  SqRollPane *roll;
  SqStepsMenu *steps_menu;
  GtkWidget *ways; /* the dialog; NULL: it is not open */
};

/* Files: win.open, win.save and win.save-as; dropping files; the question before closing. */
void sq_window_add_file_actions (SqWindow *window);
gboolean sq_window_may_close (SqWindow *window);
/* Logging out waits as long as there are changes: the session is told. */
void sq_window_hold_session (SqWindow *window, gboolean is_modified);
/* Whole cushions: win.cushion-add and so on. */
void sq_window_add_cushion_actions (SqWindow *window);
/* Drawing a seat, the first one or another: win.cushion-draw. */
void sq_window_add_draw_actions (SqWindow *window);
gboolean sq_window_is_drawing (SqWindow *window);
/* A cushion on @outline beside the chosen one: as thick, of its cloths and made the same way. One
 * step; it is chosen. */
void sq_window_add_cushion_on (SqWindow *window, const SqOutline *outline);
/* Both sides alike: win.symmetric and what it offers. Following: the document is there. */
void sq_window_add_symmetry_actions (SqWindow *window);
void sq_window_follow_symmetry (SqWindow *window);
/* A job from the start page; a sample, which becomes a new job. */
void sq_window_start (SqWindow *window, const SqJob *job);
void sq_window_open_sample (SqWindow *window, GFile *file);
