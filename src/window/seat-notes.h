/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Notes pinned to edges and corners of the seat: read at their marks, and by screen readers. */
#pragma once

#include "window/seat-canvas.h"

/* Shows a note's text where the pointer rests on its mark. */
void sq_seat_notes_watch (SqSeatCanvas *canvas);
/* What is noted at the chosen edge or corner; NULL: nothing. Borrowed. */
const char *sq_seat_notes_chosen (SqSeatCanvas *canvas);
