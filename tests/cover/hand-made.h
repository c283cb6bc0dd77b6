/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Small jobs written down where they are tested, and questions asked of their covers. */
#pragma once

#include "cover/cover.h"

/* The job in @text, a job file but with ' for ". */
SqJob *job_of_text (const char *text);

/* The job with one cushion whose keys are @cushion; @rest (may be NULL) are further keys of the job,
 * each with a comma after it. */
SqJob *job_of (const char *cushion, const char *rest);

/* The cover of that cushion. */
SqCover *cover_of (const char *cushion);
SqCover *cover_in (const char *rest, const char *cushion);

/* A rectangle from (0, 0), corners 1 to 4 from the left end of the front, as `'outline':[…]`; the
 * edges' other keys are @keys[0] to @keys[3] (NULL, or each with a comma before it). New text. */
char *rectangle (double width_mm, double depth_mm, const char *const keys[4]);

/* A cover of such a rectangle with further @keys of the cushion. */
SqCover *cover_of_rectangle (double width_mm, double depth_mm, const char *keys);

/* Equal to 1e-6 mm. */
#define assert_mm(a, b) g_assert_cmpfloat_with_epsilon ((a), (b), 1e-6)

/* The first problem of @code, or NULL. */
const SqProblem *find_problem (const SqCover *cover, SqProblemCode code);

/* The first piece of @role. */
const SqPiece *piece_of (const SqCover *cover, SqPieceRole role);

/* Asserts that @path has a node within 1e-6 mm of (x, y). */
void assert_node (const SqPath *path, double x, double y);

/* Sum of one side's lengths of all seams of @kind. */
double seams_mm (const SqCover *cover, SqSeamKind kind);
