/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Tasks made by hand and by chance, for tests of the lay. */
#pragma once

#include "roll/lay-run.h"

/* A roll as long as needed, @width_mm wide, and nothing to lay yet. */
SqLayTask *made_task (double width_mm, double gap_mm);
void add_strip (SqLayTask *task, SqStripKind kind, double width_mm, double length_mm,
                gint priority);
/* @spec with @path (taken) for its only ring; turns of 0 are upright, a demand of 0 is 1. */
void add_path (SqLayTask *task, SqPath *path, SqLayItemSpec spec);
void add_rectangle (SqLayTask *task, double length_mm, double width_mm, guint turns, guint demand);

/* Seals @task and lays it in as many steps. */
SqLay *lay_of (SqLayTask *task, guint64 steps);

/* A task of 1 to 40 pieces of all sorts: rounded, notched, with holes, slivers, as wide as the
 * cloth, wider, crossed; in quarters, mirrored, in free turns; several strips and sheets, flaws,
 * pins, gaps, patterns and drops. The same @seed gives the same task. */
SqLayTask *random_task (guint32 seed);

/* The same, but for straight cuts. */
SqLayTask *random_straight_task (guint32 seed);
