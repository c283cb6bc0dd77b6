/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a finished outline is made. Internal to the room. */
#pragma once

#include "cover/choices.h"
#include "cover/finished.h"

/* Seat → clearance per edge → rounding. NULL if the outline can't be used; everything wrong is
 * appended to @problems. Holes that can't be used are left out. */
SqFinished *sq_finished_new (const SqChoices *choices, GArray *problems);
