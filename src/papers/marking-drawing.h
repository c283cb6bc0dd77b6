/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A strip of cloth as it is marked: the pieces with their numbers, their points with the letters they
 * have in the lists. Internal to the room. */
#pragma once

#include "papers/pages.h"
#include "plan/marking.h"

/* Draws @marking of @spec's lays, of the side that lies up. What its end takes of the page. */
SqBox sq_marking_drawing (SqPages *pages, const SqPaperSpec *spec, const SqMarking *marking);
