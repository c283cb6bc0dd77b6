/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Short ways to write down a problem. Internal to the room. */
#pragma once

#include "base/units.h"
#include "cover/problem.h"

/* Each appends one problem to @problems and returns it, to be filled further at once. */
SqProblem *sq_report_cushion (GArray *problems, SqProblemCode code, SqSeverity severity,
                              const SqCushion *cushion);
SqProblem *sq_report_corner (GArray *problems, SqProblemCode code, SqSeverity severity,
                             const SqCushion *cushion, SqId corner);
SqProblem *sq_report_edge (GArray *problems, SqProblemCode code, SqSeverity severity,
                           const SqCushion *cushion, SqId edge);
SqProblem *sq_report_piece (GArray *problems, SqProblemCode code, SqSeverity severity,
                            const SqCushion *cushion, guint piece);
/* @key: static text. */
SqProblem *sq_report_key (GArray *problems, SqProblemCode code, SqSeverity severity,
                          const SqCushion *cushion, const char *key);
