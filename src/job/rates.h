/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a maker's work takes and costs: rates that the time and price of a cover are reckoned by. */
#pragma once

#include <glib.h>

typedef enum
{
  SQ_RATE_WAGE,     /* of an hour, in the maker's money */
  SQ_RATE_CUT,      /* minutes: a piece marked and cut … */
  SQ_RATE_SEW,      /* … a metre of seam … */
  SQ_RATE_CORNER,   /* … a corner sewn, or turned at … */
  SQ_RATE_ZIP,      /* … a zip put in … */
  SQ_RATE_WELT,     /* … a metre of welt made … */
  SQ_RATE_FOAM,     /* … a block of foam cut … */
  SQ_RATE_HANDLING, /* … and what a cushion takes besides */
} SqRate;
#define SQ_N_RATES (SQ_RATE_HANDLING + 1)

typedef struct
{
  double of[SQ_N_RATES]; /* by SqRate; none below 0 counts */
} SqRates;
