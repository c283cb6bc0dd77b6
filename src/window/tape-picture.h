/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A seat as it is being taped: with letters and figures, or the way that the tape has come. */
#pragma once

#include <gtk/gtk.h>

#include "plan/plan.h"

#define SQ_TYPE_TAPE_PICTURE (sq_tape_picture_get_type ())
G_DECLARE_FINAL_TYPE (SqTapePicture, sq_tape_picture, SQ, TAPE_PICTURE, GtkWidget)

/* A picture that wants @width × @height pixels. */
GtkWidget *sq_tape_picture_new (int width, int height);
/* Shows the first cover of @plan; without one (NULL) the @n @corners, an open line. */
void sq_tape_picture_show (SqTapePicture *picture, const SqPlan *plan, const SqPoint *corners,
                           guint n);
