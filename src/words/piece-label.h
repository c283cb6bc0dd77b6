/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is written on a piece beside its name. */
#pragma once

#include "cover/cover.h"

/* "46 3⁄4 × 20 1⁄8": the cut line's width across the grain and its height along it, as @style shows
 * lengths. New text. */
char *sq_words_piece_size (const SqPiece *piece, const SqLengthStyle *style);
/* "cut 2": how many are cut in all. New text. */
char *sq_words_cut_count (guint count);
/* "seen right side up" for a piece that lies mirrored to the seat, else NULL. Static. */
const char *sq_words_piece_seen (const SqPiece *piece);
