/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The ways out for a face wider than its cloth, as buttons: what each takes, and a click takes it. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"

#define SQ_TYPE_WIDE_OFFERS (sq_wide_offers_get_type ())
G_DECLARE_FINAL_TYPE (SqWideOffers, sq_wide_offers, SQ, WIDE_OFFERS, GtkWidget)

/* What is offered for @cushion as it is in @document now; how much cloth each way takes follows as soon
 * as it is laid, on a thread: "changed" (no parameters). Floating. */
GtkWidget *sq_wide_offers_new (SqDocument *document, SqId cushion);
