/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The seat as figures: what a tape and a bevel say of each side, seats made from such figures, and
 * figures typed over. A side is an edge; its length, unless called true, is that of its chord, and
 * typed angles are those between chords: that is what a tape and a bevel laid on two corners and
 * their neighbours read, whatever bends between them. Angles are those inside the ring (a hole's
 * own angles in a hole), whichever way it runs. Corners are sharp: roundings come after. */
#pragma once

#include "job/outline.h"

typedef struct
{
  SqId edge;             /* the corner that starts it */
  double chord_mm;       /* straight from corner to corner */
  double length_mm;      /* along it */
  double rise_mm;        /* where it is farthest from its chord, outward positive */
  double bend_radius_mm; /* of a bow; infinite for others */
  double rounding_mm;    /* of the corner that starts it */
  double angle_rad;      /* there, between chords, 0 … 2π; 0 where a side has no length */
  double true_angle_rad; /* there, between the edges as they really leave it */
} SqSideReading;

/* The sides of ring @ring in its order, *@n of them. New array. */
SqSideReading *sq_outline_side_readings (const SqOutline *outline, guint ring, guint *n);

/* The end of a side that stays where it is. */
typedef enum
{
  SQ_STAYS_START,
  SQ_STAYS_END,
} SqStays;

/* Why a figure can't be. */
typedef enum
{
  SQ_SIDES_FINE,
  SQ_SIDES_NOT_POSITIVE, /* a length that is not above 0, an angle not between 0 and a full turn */
  SQ_SIDES_TOO_LONG,     /* the side that takes it up would vanish or turn over; or over 100 m */
  SQ_SIDES_TOO_SHORT,    /* the same, for being too short; a bow shorter than its rise allows */
  SQ_SIDES_CROSS,        /* sides would meet that are not neighbours, or the ring turn inside out */
  SQ_SIDES_NO_DIRECTION, /* the side has no length now, or there are too few sides for it to act */
} SqSidesResult;

/* Edits by a figure give a new outline, or NULL and *@result (may be NULL). Ids, notes, kinds,
 * rises and radii stay; handles of curves move with their own end of the edge. Only the ring of
 * the edge moves. A ring that crossed itself before may do so after.
 *
 * The edge that starts at @edge made @length_mm long. The end named by @stays stays, the other
 * moves along the edge; what comes after it moves along with it, up to the first edge that is
 * parallel to this one (within 1e-6 rad). That one takes up the change, so that all angles stay.
 * Where there is none the edge at the end that stays takes it up, and turns for it. */
SqOutline *sq_outline_with_side_length (const SqOutline *outline, SqId edge, double length_mm,
                                        SqStays stays, SqSidesResult *result);

/* The angle at @corner made @angle_rad. Of its two sides the one before (SQ_STAYS_START) or after
 * it (SQ_STAYS_END) stays; the others turn about the corner with the other side, but for the one
 * that closes the ring at the far end of the side that stays: it takes up the change. Needs 3
 * corners. */
SqOutline *sq_outline_with_angle (const SqOutline *outline, SqId corner, double angle_rad,
                                  SqStays stays, SqSidesResult *result);

/* --- a seat taped side by side ------------------------------------------------------------- */

/* Corner A is at (0, 0), the first side, the front, runs along x, and so on counter-clockwise:
 * n_sides sides and the angles between them, angles_rad[i] at the end of side i (n_sides − 1 of
 * them; n_sides + 1 corners). */
void sq_sides_walk (const double *sides_mm, const double *angles_rad, guint n_sides,
                    SqPoint *corners);

/* What closes a walk: a side from its last corner back to the first. */
typedef struct
{
  double side_mm;
  double last_angle_rad;  /* at the last corner */
  double first_angle_rad; /* at corner A */
} SqClosing;

/* The outline that such a walk of at least 2 sides and the side that closes it enclose: corners
 * with ids 1, 2, 3 …, the first edge marked as the front. *@closing (may be NULL) says what was
 * not taped; it is filled too where the sides cross, all 0 where a figure can't be. NULL where a
 * figure can't be: *@bad (may be NULL) is its place in the order in which they are taped, first
 * side, first angle, second side …, or −1 if it is no single one; *@result (may be NULL) says
 * why. */
SqOutline *sq_outline_from_sides (const double *sides_mm, const double *angles_rad, guint n_sides,
                                  SqClosing *closing, SqSidesResult *result, gint *bad);

/* How much longer the last side was taped than the side that closes the walk of the others:
 * @n_sides (at least 3) sides, the last one closing, and the n_sides − 2 angles between the
 * others. */
double sq_sides_misclosure_mm (const double *sides_mm, const double *angles_rad, guint n_sides);
