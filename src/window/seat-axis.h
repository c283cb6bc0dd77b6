/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The axis on both sides of which a seat is edited alike, drawn while that is switched on. */
#pragma once

#include "window/seat-canvas.h"

void sq_seat_axis_append (SqSeatCanvas *canvas, GtkSnapshot *snapshot);
