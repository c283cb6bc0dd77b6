/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Random paths for tests that hold for any path. Chance comes from g_test_rand_*(), so a failing
 * seed can be run again. */
#pragma once

#include "geometry/path.h"

/* A simple counter-clockwise ring of @n_nodes (3 or more) about the origin, its nodes from a third
 * of @reach_mm to @reach_mm away, about so many of its segments arcs as @arcs (0 … 1) says, of
 * either turn; tags 0, 1, …. It is simple because every segment keeps to its own sector: an arc
 * sets off into it at both its ends, and a circle re-enters a half plane no sooner than it left.
 * No two segments but neighbours come near each other except close to the origin. */
SqPath *random_ring (guint n_nodes, double reach_mm, double arcs);

/* A closed path through random points of a square, with random bulges: hardly ever simple. */
SqPath *random_tangle (guint n_nodes, double reach_mm, double arcs, gboolean is_ring);

/* A point of the square that reaches @reach_mm from the origin. */
SqPoint random_point (double reach_mm);
