/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Units and tolerances. Everything is computed in millimetres and radians; files and people use
 * other units, and the conversions stand here and nowhere else. */
#pragma once

#include <math.h>

#define SQ_MM_PER_INCH 25.4 /* exact */
#define SQ_MM_PER_FOOT 304.8
#define SQ_MM_PER_YARD 914.4
#define SQ_MM_PER_CM 10.0
#define SQ_MM_PER_M 1000.0

#define SQ_MM3_PER_LITRE 1e6
#define SQ_G_PER_KG 1000.0
#define SQ_G_PER_POUND 453.59237 /* exact */

#define SQ_RAD_PER_DEG (M_PI / 180.0)
#define SQ_DEG_PER_RAD (180.0 / M_PI)

/* A turn in degrees, from 0 to less than 360. */
static inline double
sq_turn_deg (double turn_rad)
{
  double turn = fmod (turn_rad * SQ_DEG_PER_RAD, 360);

  if (turn < 0)
    turn += 360;
  return turn < 360 ? turn : 0;
}

/* Two points nearer than this are one point (mm): far below a thread's width, far above what
 * doubles lose over a 100 m seat. */
#define SQ_COINCIDE_MM 1e-7

/* A direction change below this is no corner (rad): at 10 m it is 0.1 micrometre aside. */
#define SQ_STRAIGHT_RAD 1e-8

/* How far an arc chain may lie from the curve it replaces (mm). */
#define SQ_FIT_MM 0.005

/* The law of the trade: what two sides of a seam may differ by, beyond their stated ease (mm). */
#define SQ_SEAM_MM 0.02

/* All edges within this of the best are equally good, and a rule for ties decides (mm). */
#define SQ_TIE_MM 0.5

/* What a measured opening may lack and still count as enough (mm). */
#define SQ_OPENING_MM 0.5
