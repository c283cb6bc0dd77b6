/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the hands and the drawing of the paper share. */
#pragma once

#include "job/snap.h"
#include "window/drawn-ring.h"
#include "window/seat-draw.h"

struct _SqSeatDraw
{
  SqCanvas parent;
  SqUnit units;
  double step_mm;
  SqDrawnRing ring;

  gboolean has_place;  /* something would be put somewhere … */
  SqPoint raw;         /* … where the hand is … */
  SqSnap snap;         /* … and where it lands */
  gboolean by_keys;    /* the hand is the cross-hair */
  gboolean is_closing; /* it would close the ring */
  gboolean is_crossing;
  SqPoint crossing;
  GString *typed;      /* the figure that is typed; NULL: none */
  const char *mistake; /* in it, or that sides would cross; NULL: none. Static */
  gint64 pressed_us;
  SqPoint pressed;  /* pixels */
  gboolean has_put; /* that press put a corner */
};

SqLengthStyle sq_seat_draw_style (SqSeatDraw *draw);
/* What is said beside the hand; NULL: nothing. New. */
char *sq_seat_draw_words (SqSeatDraw *draw);
/* Of SqCanvasClass. */
SqView sq_seat_draw_fit (SqCanvas *canvas, int width, int height);
void sq_seat_draw_draw (SqCanvas *canvas, GtkSnapshot *snapshot);
