/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small piece of a cloth as it lies, stripes upright, drawn as pieces are. */
#pragma once

#include <gtk/gtk.h>

#include "job/cloth.h"

#define SQ_TYPE_CLOTH_PICTURE (sq_cloth_picture_get_type ())
G_DECLARE_FINAL_TYPE (SqClothPicture, sq_cloth_picture, SQ, CLOTH_PICTURE, GtkWidget)

/* A picture that wants @width × @height pixels. */
GtkWidget *sq_cloth_picture_new (int width, int height);
/* Shows @span_mm of @cloth from side to side, in the colour @plain where it has none of its own.
 * NULL: plain. */
void sq_cloth_picture_show (SqClothPicture *picture, const SqCloth *cloth, guint32 plain,
                            double span_mm);
/* So much of a cloth that its stripes are seen to recur. */
double sq_cloth_picture_span_mm (const SqCloth *cloth);
