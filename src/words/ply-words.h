/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lots cut several layers deep, in words. All texts are new and yours to free. */
#pragma once

#include "words/cut-sheet.h"

/* "6 plies, 24.6 m to buy". */
char *sq_words_plies (const SqPlies *plies, const SqLengthStyle *style);
/* How that lies on the table and what it saves: "2 lays one after the other, a ply 4.10 m long at most;
 * all right side up; 96 minutes less than one ply at a time; 2 pieces more than are wanted". */
char *sq_words_plies_reckoned (const SqPlies *plies, const SqLengthStyle *style);

/* "Plies: Sailcloth", over drawings of them; "Lay 2 of 3, 6 plies of 2.40 m": the one
 * on strip @strip. */
char *sq_words_plies_of (const char *cloth);
char *sq_words_ply_lay (const SqPlies *plies, guint strip, const SqLengthStyle *style);
