/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Measures the live loop in the real window: SQUAB_BENCH=drag:N drags a corner for N frames, does
 * the same with the canvases wholly damaged, then pans and zooms, and prints a row for each. Built
 * only with -Dbench=true. */
#pragma once

#include "window/window.h"

/* Begins if the environment asks for it; the program ends with the last frame, with status 1 if a
 * frame drawn from kept nodes differed from one drawn anew. */
void sq_bench_drag (SqWindow *window);
