/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small drawing of a cushion in its cloth, from above or made up. */
#pragma once

#include <gtk/gtk.h>

#include "plan/plan.h"

#define SQ_TYPE_CUSHION_PICTURE (sq_cushion_picture_get_type ())
G_DECLARE_FINAL_TYPE (SqCushionPicture, sq_cushion_picture, SQ, CUSHION_PICTURE, GtkWidget)

/* A picture that wants @width × @height pixels. */
GtkWidget *sq_cushion_picture_new (int width, int height);
/* Shows cover @i of @plan; NULL: nothing. */
void sq_cushion_picture_show (SqCushionPicture *picture, const SqPlan *plan, guint i);
/* The same as it will be when it is made up, or from above where it can't be. */
void sq_cushion_picture_show_made_up (SqCushionPicture *picture, const SqPlan *plan, guint i);
