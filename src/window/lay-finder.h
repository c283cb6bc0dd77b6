/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lays a document's plan on threads of their own, again and again as it changes, and better and better
 * while the hand rests. What is shown stays until there is something newer, so a hand that drags never
 * waits. */
#pragma once

#include <gio/gio.h>

#include "plan/lays.h"
#include "window/document.h"

#define SQ_TYPE_LAY_FINDER (sq_lay_finder_get_type ())
G_DECLARE_FINAL_TYPE (SqLayFinder, sq_lay_finder, SQ, LAY_FINDER, GObject)

/* Emits "changed" (no parameters) when there are other lays, and when what is told about the work
 * has changed. Follows @document, which is kept alive, from now on. A search for better lays takes at
 * most so many seconds as the environment's SQUAB_LAY_SECONDS says; 0: there is none. */
SqLayFinder *sq_lay_finder_new (SqDocument *document);

/* The newest lays, borrowed; NULL: none yet. Their plan may be older than the document's. */
const SqLays *sq_lay_finder_get_lays (SqLayFinder *finder);
/* Whether they are of the document's plan now. */
gboolean sq_lay_finder_is_current (SqLayFinder *finder);

/* How far the work on the first lays is, 0 … 1, as soon as it takes longer than one notices; else
 * −1. */
double sq_lay_finder_get_progress (SqLayFinder *finder);
/* For how long better lays than those there are have been looked for (s); −1: they are not. */
double sq_lay_finder_get_searching (SqLayFinder *finder);
/* Gives up laying, or looking for better, until the plan changes or it is asked for again. */
void sq_lay_finder_stop (SqLayFinder *finder);
void sq_lay_finder_again (SqLayFinder *finder);
/* Whether laying the plan of now was given up. */
gboolean sq_lay_finder_is_stopped (SqLayFinder *finder);
/* Whether better lays could be looked for again: there are current ones that are not kept, and looking
 * for better ended or was stopped. */
gboolean sq_lay_finder_can_search (SqLayFinder *finder);

/* Better lays are not looked for as long as somebody holds them: papers, a hand. */
void sq_lay_finder_hold (SqLayFinder *finder);
void sq_lay_finder_release (SqLayFinder *finder);
