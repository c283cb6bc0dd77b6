/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Points and vectors in a plane: x right, y up, mm. Small values, passed and returned by value. */
#pragma once

#include <glib.h>
#include <math.h>

typedef struct
{
  double x, y;
} SqPoint;

typedef SqPoint SqVector;

typedef struct
{
  SqPoint min, max; /* min.x > max.x: empty */
} SqBox;

static inline SqPoint
sq_point (double x, double y)
{
  return (SqPoint){ x, y };
}

static inline SqVector
sq_add (SqVector a, SqVector b)
{
  return (SqVector){ a.x + b.x, a.y + b.y };
}

static inline SqVector
sq_sub (SqVector a, SqVector b)
{
  return (SqVector){ a.x - b.x, a.y - b.y };
}

static inline SqVector
sq_scale (SqVector a, double by)
{
  return (SqVector){ a.x * by, a.y * by };
}

/* @from moved by @by times @along. */
static inline SqPoint
sq_moved (SqPoint from, SqVector along, double by)
{
  return (SqPoint){ from.x + along.x * by, from.y + along.y * by };
}

/* The point that divides a → b at @t (0 is a, 1 is b). */
static inline SqPoint
sq_between (SqPoint a, SqPoint b, double t)
{
  return (SqPoint){ a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t };
}

static inline double
sq_dot (SqVector a, SqVector b)
{
  return a.x * b.x + a.y * b.y;
}

/* > 0 where @b lies to the left of @a. */
static inline double
sq_cross (SqVector a, SqVector b)
{
  return a.x * b.y - a.y * b.x;
}

static inline double
sq_norm (SqVector a)
{
  return sqrt (a.x * a.x + a.y * a.y);
}

static inline double
sq_distance (SqPoint a, SqPoint b)
{
  return sq_norm (sq_sub (b, a));
}

/* @a at length 1; (0, 0) stays. */
static inline SqVector
sq_unit (SqVector a)
{
  double n = sq_norm (a);
  return n > 0 ? sq_scale (a, 1 / n) : a;
}

/* Turned a quarter to the left. */
static inline SqVector
sq_left (SqVector a)
{
  return (SqVector){ -a.y, a.x };
}

/* Turned a quarter to the right: outward, for a direction along a ring's travel. */
static inline SqVector
sq_right (SqVector a)
{
  return (SqVector){ a.y, -a.x };
}

/* Turned by @by_rad counter-clockwise about (0, 0). */
static inline SqVector
sq_turned (SqVector a, double by_rad)
{
  double c = cos (by_rad), s = sin (by_rad);
  return (SqVector){ a.x * c - a.y * s, a.x * s + a.y * c };
}

/* Angle from @a to @b, −π … π, > 0 to the left. */
static inline double
sq_angle_rad (SqVector a, SqVector b)
{
  return atan2 (sq_cross (a, b), sq_dot (a, b));
}

static inline SqBox
sq_box_empty (void)
{
  return (SqBox){ { INFINITY, INFINITY }, { -INFINITY, -INFINITY } };
}

static inline SqBox
sq_box_with (SqBox box, SqPoint p)
{
  return (SqBox){ { fmin (box.min.x, p.x), fmin (box.min.y, p.y) },
                  { fmax (box.max.x, p.x), fmax (box.max.y, p.y) } };
}

static inline SqBox
sq_box_union (SqBox a, SqBox b)
{
  return (SqBox){ { fmin (a.min.x, b.min.x), fmin (a.min.y, b.min.y) },
                  { fmax (a.max.x, b.max.x), fmax (a.max.y, b.max.y) } };
}

static inline gboolean
sq_box_meets (SqBox a, SqBox b, double within_mm)
{
  return a.min.x <= b.max.x + within_mm && b.min.x <= a.max.x + within_mm
         && a.min.y <= b.max.y + within_mm && b.min.y <= a.max.y + within_mm;
}
