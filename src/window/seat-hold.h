/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a hand holds of the seat: it follows the pointer, lands where it tells something, or takes
 * the figure that is typed meanwhile. A draft of the document's, until it is let go. */
#pragma once

#include "job/job.h"
#include "job/snap.h"
#include "window/seat-grips.h"

typedef struct
{
  SqJob *base; /* the job it began with; NULL: nothing is held */
  SqGrip grip;
  SqPoint pressed; /* pixels */
  SqPoint from;    /* where the grip stood, seat coordinates … */
  SqPoint raw;     /* … and where the hand wants it */
  SqSnap snap;
  GString *typed;      /* NULL: nothing */
  const char *mistake; /* in it; NULL: none. Static */
  gboolean is_moving;
  gboolean is_changed; /* the seat is another than it was */
  gboolean is_stopped; /* sides would cross … */
  SqPoint crossing;    /* … here */
} SqSeatHold;

void sq_seat_hold_take (SqSeatCanvas *canvas, SqGrip grip, SqPoint at);
/* The pointer is at @at (pixels). */
void sq_seat_hold_follow (SqSeatCanvas *canvas, SqPoint at);
/* A key while something is held: part of a figure, or the end of it. TRUE: it was for us. */
gboolean sq_seat_hold_key (SqSeatCanvas *canvas, guint keyval);
/* One step of the history, or as it was before. */
void sq_seat_hold_let_go (SqSeatCanvas *canvas, gboolean keep);

/* Why it lands where it does, or what is typed; NULL: nothing. New text. */
char *sq_seat_hold_words (SqSeatCanvas *canvas);
/* Appends guides, words, and the place where sides would cross. */
void sq_seat_hold_append (SqSeatCanvas *canvas, GtkSnapshot *snapshot);
