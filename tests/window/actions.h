/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a maker does to a job, by chance: every edit that a window can make, with figures that can be
 * typed or dragged, sensible ones mostly. */
#pragma once

#include "window/document.h"

typedef struct
{
  GRand *chance;
  SqDocument *document;
} Maker;

/* Does something, and says what it was. Static. */
const char *maker_act (Maker *maker);

/* --- for the actions --------------------------------------------------------------------------- */

#define MOST_CUSHIONS 5
#define MOST_CORNERS 14

gboolean happens (Maker *maker, double probability);
double between (Maker *maker, double low, double high);
guint one_of (Maker *maker, guint n);
/* A cushion of the job, and a corner of it, holes included. */
const SqCushion *any_cushion (Maker *maker);
const SqCorner *any_corner (Maker *maker, const SqCushion *cushion);
guint n_corners (const SqOutline *outline);
/* One step of the history: @outline, which it takes (NULL: nothing), is @cushion's from now on. */
void push_outline (Maker *maker, const SqCushion *cushion, SqOutline *outline, const char *words);

/* Values, cloths, stripes, zips and problems. */
void act_length (Maker *maker);
void act_way (Maker *maker);
void act_rate (Maker *maker);
void act_choice (Maker *maker);
void act_name (Maker *maker);
void act_count (Maker *maker);
void act_cloth (Maker *maker);
void act_fix (Maker *maker);
void act_stripes (Maker *maker);
void act_zip (Maker *maker);

/* Seats. */
void act_drag (Maker *maker);
void act_nudge (Maker *maker);
void act_extents (Maker *maker);
void act_place_length (Maker *maker);
void act_angle (Maker *maker);
void act_edge_kind (Maker *maker);
void act_add_corner (Maker *maker);
void act_remove_corner (Maker *maker);
void act_curve (Maker *maker);
void act_edge_shape (Maker *maker);
void act_hole (Maker *maker);
void act_symmetry (Maker *maker);
void act_turn (Maker *maker);

/* Whole cushions. */
void act_add_cushion (Maker *maker);
void act_copy_cushion (Maker *maker);
void act_mirror_cushion (Maker *maker);
void act_remove_cushion (Maker *maker);
void act_move_cushion (Maker *maker);
