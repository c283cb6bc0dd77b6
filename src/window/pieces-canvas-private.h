/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the drawing and the hands of the pieces' canvas share. */
#pragma once

#include "drawing/arrange.h"
#include "window/pieces-canvas.h"
#include "window/problem-marks.h"

struct _SqPiecesCanvas
{
  SqCanvas parent;
  SqDocument *document;
  SqSelection *selection;
  SqCover *cover;             /* of the chosen cushion; NULL: none */
  GArray *labels;             /* of SqPieceLabel, owning their texts */
  SqArrangement *arrangement; /* of the cover's pieces; NULL: none yet */

  gint hovered_seam; /* −1: none */
  GtkWidget *menu;
  GSimpleActionGroup *actions; /* of the menu */

  /* Of a drag of the stripes: */
  SqJob *base;         /* the job it began with; NULL: none */
  SqCover *held_cover; /* and the cover */
  guint held;          /* piece */
  SqPoint pressed;
  gboolean is_moving;
};

/* Where a piece's (0, 0) is from the view's origin, in whole pixels. */
SqPoint sq_pieces_stand (SqPiecesCanvas *canvas, guint piece);
/* The chosen seam, −1: none. */
gint sq_pieces_chosen_seam (SqPiecesCanvas *canvas);
/* Marks of problems at pieces and seams, where they stand. New array of SqProblemMark. */
GArray *sq_pieces_marks (SqPiecesCanvas *canvas);

/* The menu, and opening it at @at; NULL: in the middle. */
void sq_pieces_add_menu (SqPiecesCanvas *canvas);
void sq_pieces_open_menu (SqPiecesCanvas *canvas, const SqPoint *at);
/* Chooses the seam or piece there; its index, −1: none. */
gint sq_pieces_choose_at (SqPiecesCanvas *canvas, SqPoint at);
/* The second button opens the menu. */
void sq_pieces_add_hands (SqPiecesCanvas *canvas);

/* Of SqCanvasClass and GtkWidgetClass. */
gboolean sq_pieces_press (SqCanvas *canvas, SqPoint at);
void sq_pieces_drag (SqCanvas *canvas, SqPoint at);
void sq_pieces_release (SqCanvas *canvas);
void sq_pieces_hover (SqCanvas *canvas, const SqPoint *at);
gboolean sq_pieces_key (SqCanvas *canvas, guint keyval, GdkModifierType state);
gboolean sq_pieces_query_tooltip (GtkWidget *widget, int x, int y, gboolean by_keyboard,
                                  GtkTooltip *tooltip);
