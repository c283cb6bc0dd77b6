/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The bands of a striped cloth as a list to be changed: where each begins, how wide it is, its
 * colour; in the order in which they lie over each other. */
#pragma once

#include <gtk/gtk.h>

#include "base/length.h"
#include "job/cloth.h"

#define SQ_TYPE_CLOTH_BANDS (sq_cloth_bands_get_type ())
G_DECLARE_FINAL_TYPE (SqClothBands, sq_cloth_bands, SQ, CLOTH_BANDS, GtkWidget)

/* Emits "edited" (pointer to const SqCloth: as it is to be now). */
GtkWidget *sq_cloth_bands_new (void);
void sq_cloth_bands_show (SqClothBands *bands, const SqCloth *cloth, const SqLengthStyle *style);
/* Takes what is typed now; whether all of it can be read. */
gboolean sq_cloth_bands_take (SqClothBands *bands);
