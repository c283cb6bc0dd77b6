/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a maker must know of a piece besides its size. */
#pragma once

#include "cover/cover.h"

/* Short lines about a piece: corners to cut out or to sew as darts, skirts, allowances, marks. New
 * array of char *, all yours to free with it. */
GPtrArray *sq_words_piece_remarks (const SqCover *cover, guint piece, const SqLengthStyle *style);
/* "Allowance 1/2 in all round", "Allowances: perimeter 1/2 in, zip 3/8 in"; "" for a piece without
 * runs. New text. */
char *sq_words_allowances (const SqPiece *piece, const SqLengthStyle *style);
