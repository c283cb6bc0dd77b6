/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The seat as drawn on brown paper, in seat coordinates. */
#pragma once

#include "base/length.h"
#include "cover/cover.h"
#include "drawing/scene.h"

typedef enum
{
  SQ_SEAT_FILL,       /* its area, the face cloth's stripes faintly on it */
  SQ_SEAT_LINES,      /* outline, finished outline, hatching, holes */
  SQ_SEAT_DIMENSIONS, /* figures along edges, letters of corners, the front's word, notes */
} SqSeatLayer;

/* How it is to be shown. Texts keep their size on the screen, so they follow the scale. */
typedef struct
{
  double em_mm;         /* size of ordinary text in mm of the seat: pixels / view.scale */
  SqLengthStyle length; /* of the figures */
  SqBox room;           /* what can be seen, mm: figures keep inside; empty: no border */
  SqId corner;          /* the chosen one, whose angle is a figure even where it is square; or 0 */
} SqSeatLook;

/* What a figure on the seat measures, so that a click on it can become a field. */
typedef enum
{
  SQ_MEASURE_LENGTH, /* of the edge that starts at corner, along its chord */
  SQ_MEASURE_RISE,   /* of that edge's bow */
  SQ_MEASURE_RADIUS, /* of the rounding at corner */
  SQ_MEASURE_ANGLE,  /* inside the seat at corner, between chords */
} SqMeasure;

typedef struct
{
  SqMeasure measure;
  SqId corner;
  double value_mm;
  double value_rad;           /* of an angle, which has no value_mm */
  gboolean is_sign;           /* a square angle: its sign stands in the corner, no figure */
  SqPoint at;                 /* middle of its box … */
  double angle_rad;           /* … along its reading direction … */
  double width_mm, height_mm; /* … and its size */
  SqPoint foot;               /* the place on the outline it belongs to */
  gboolean is_far;            /* moved away from there: a leader shows where it belongs, … */
  SqPoint leader;             /* … from foot to here */
  char text[48];
} SqDimension;

/* A rise has a small bow before its figure that takes this much of its box, in em. */
#define SQ_RISE_SIGN_EM 1.2

/* Sides of the sign of a right angle, in em: it shows beyond a corner's handle. */
#define SQ_SQUARE_SIGN_EM 0.75

/* The figures of @cushion, where they stand: outside the edges, not over each other, the seat or
 * the border of the room. What finds no place is left out, the least important first. Square
 * corners between straight edges have a sign of SQ_SQUARE_SIGN_EM inside. New array of
 * SqDimension. */
GArray *sq_seat_dimensions (const SqCushion *cushion, const SqSeatLook *look);

/* The dimension at @p, or NULL; borrowed from @dimensions. */
const SqDimension *sq_seat_dimension_at (const GArray *dimensions, SqPoint p, double within_mm);

/* One layer of the seat of @cover's cushion. @face is the cloth its stripes are of, may be NULL.
 * New scene. */
SqScene *sq_seat_scene (const SqCover *cover, const SqCloth *face, SqSeatLayer layer,
                        const SqSeatLook *look);

/* The paper's grid over @room: lines every @step_mm, each @main_every-th a main one; steps that
 * come nearer than @least_mm are left out. New scene. */
SqScene *sq_paper_grid_scene (SqBox room, double step_mm, guint main_every, double least_mm);
