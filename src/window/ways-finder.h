/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Compares the ways of building the chosen cushion, again and again as the document changes: what needs
 * no lay at once, the rest on a thread. */
#pragma once

#include "plan/ways.h"
#include "window/document.h"
#include "window/selection.h"

#define SQ_TYPE_WAYS_FINDER (sq_ways_finder_get_type ())
G_DECLARE_FINAL_TYPE (SqWaysFinder, sq_ways_finder, SQ, WAYS_FINDER, GObject)

/* Emits "changed" (no parameters) when there is something newer. */
SqWaysFinder *sq_ways_finder_new (SqDocument *document, SqSelection *selection);

/* Of the cushion as it is now, with lays as soon as they are found. Borrowed; NULL: no cushion is
 * chosen. */
const SqWays *sq_ways_finder_get_ways (SqWaysFinder *finder);
