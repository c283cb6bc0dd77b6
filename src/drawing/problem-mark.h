/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The mark that a problem has at its place. */
#pragma once

#include "cover/problem.h"
#include "drawing/scene.h"

/* Its radius, in em of ordinary text. */
#define SQ_PROBLEM_MARK_EM 0.62

/* A ring about (0, 0) with a sign in it: chalk red and "!", for a note quiet and "i". @em_mm is the
 * size of ordinary text. New scene. */
SqScene *sq_problem_mark_scene (SqSeverity severity, double em_mm);
