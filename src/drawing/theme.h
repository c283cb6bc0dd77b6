/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The colours of bench, paper and chalk, light and dark. */
#pragma once

#include "drawing/scene.h"

/* All 0xrrggbb. */
typedef struct
{
  guint32 paper, grid, grid_main; /* the sheet the seat is drawn on */
  guint32 seat;                   /* the seat's own area on it */
  guint32 table;                  /* what the pieces lie on */
  guint32 ink, dim, hatch;
  guint32 accent, good;           /* lines and areas */
  guint32 accent_text, good_text; /* the same for texts: 4.5 : 1 on paper, table and plate */
  guint32 plate;                  /* behind texts on cloth */
  double plate_alpha;
  guint32 shadow;
  double shadow_alpha;
} SqTheme;

/* Static. */
const SqTheme *sq_theme_light (void);
const SqTheme *sq_theme_dark (void);
/* Black on white, for paper. */
const SqTheme *sq_theme_print (void);

/* Relative luminance 0 … 1 and contrast 1 … 21 of two colours (WCAG 2.1). */
double sq_luminance (guint32 rgb);
double sq_contrast (guint32 a, guint32 b);
/* @t = 0 gives @a, 1 gives @b; in sRGB. */
guint32 sq_colour_between (guint32 a, guint32 b, double t);

/* Chalk for lines on a ground: the colour of the line, and of the halo beneath it that keeps it
 * readable where the ground's other colours come near. */
typedef struct
{
  guint32 line, halo;
  double halo_alpha; /* 0: none needed */
} SqChalk;

SqChalk sq_chalk_on (const SqTheme *theme, const SqGround *ground);
