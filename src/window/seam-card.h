/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small card over the pieces that says of the chosen seam what meets, and how long both are. */
#pragma once

#include "window/pieces-canvas.h"

#define SQ_TYPE_SEAM_CARD (sq_seam_card_get_type ())
G_DECLARE_FINAL_TYPE (SqSeamCard, sq_seam_card, SQ, SEAM_CARD, GtkWidget)

/* Follows @document and @selection from now on, clear of the seam as @pieces shows it; NULL:
 * nothing. */
void sq_seam_card_set_document (SqSeamCard *card, SqDocument *document, SqSelection *selection,
                                SqPiecesCanvas *pieces);
