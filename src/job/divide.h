/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A seat divided along straight lines. */
#pragma once

#include "job/outline.h"

/* The part of @outline to the left of the line through @at along unit @direction: corners and edges
 * keep their ids, edges over the line end at new corners on it, and the new edge along it stands at
 * a neighbour. No edge is marked as the front. NULL where the line does not pass the outer ring just
 * twice, or passes a hole. */
SqOutline *sq_outline_left_of (const SqOutline *outline, SqPoint at, SqVector direction);
