/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Makes a job that breaks a law as small as it can be. */
#pragma once

#include "laws/laws.h"

/* The smallest job found, by leaving out cushions, corners, holes, curves and choices one by one,
 * for which @law still does not hold. A new job, @job itself where nothing can go. */
SqJob *shrink_job (const SqJob *job, guint32 seed, Law law);
