/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Packings of rectangles into a strip as textbooks have them, to measure lays by: J. Jylänki, A
 * Thousand Ways to Pack the Bin, 2010; E. K. Burke, G. Kendall, G. Whitwell, A New Placement Heuristic
 * for the Orthogonal Stock-Cutting Problem, 2004. */
#pragma once

#include <glib.h>

typedef struct
{
  gint length, width;
} Rectangle;

/* The shortest strip of @width on which any of these lays @n rectangles, which may be turned a quarter,
 * over @n_orders orders: by size in four ways, then by chance; each by a skyline (bottom left, least
 * waste, best fit), by taking what fits best next, and by guillotine cuts (best area, short side and
 * long side). */
gint best_packing (const Rectangle *rectangles, guint n, gint width, guint n_orders, GRand *chance);

/* Cuts @length × @width into @n rectangles, each cut right through one that is left (the way E. Hopper,
 * B. C. H. Turton make such sets, An empirical investigation of meta-heuristic and heuristic
 * algorithms for a 2D packing problem, 2001). */
Rectangle *cut_up (gint length, gint width, guint n, GRand *chance);
