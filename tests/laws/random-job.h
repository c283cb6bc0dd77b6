/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Jobs made of chance alone, as wild as a maker's own and wilder. */
#pragma once

#include "job/job.h"

/* One or two cushions of 3 to 14 corners with everything that acts on a plan; the same @seed gives
 * the same job. Most of them can be built. */
SqJob *random_job (guint32 seed);
