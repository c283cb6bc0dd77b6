/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lays in words: what to buy, what could not be laid. All texts are new and yours to free. */
#pragma once

#include "words/cut-sheet.h"

/* A length of cloth as it is sold: "2 1/8 yd", "1.8 m". */
char *sq_words_sold_length (double mm, const SqLengthStyle *style);

/* "2 1/8 yd to buy, 31 % waste"; "nothing to buy"; and whether that is beside what is there. */
char *sq_words_purchase (const SqPurchase *purchase, const SqLengthStyle *style);
/* How that came about: "1.76 yd laid, 2 in to square the end, rounded up to 1/8 yd". */
char *sq_words_purchase_reckoned (const SqJob *job, const SqPurchase *purchase,
                                  const SqLengthStyle *style);

/* Where everything lies on cloth @index of @lays: number, piece, cushion (where there are several),
 * which copy, from – to along the roll from the cut end, from – to across from the near edge, how it
 * is turned; in order along the roll. Free with sq_sheet_table_clear(). */
void sq_words_lay_table (SqSheetTable *table, const SqLays *lays, guint index,
                         const SqLengthStyle *style);
/* The piece of a line of the cut list: "Front boxing" or, of several cushions, "Bay seat, front
 * boxing". Which copy of it: "2 of 8"; "" of a single one. */
char *sq_words_entry_piece (const SqLays *lays, const SqCutEntry *entry);
char *sq_words_which_copy (const SqCutEntry *entry, guint copy);
/* "Bay seat, front boxing, 2 of 8": one copy of a line of the cut list; no cushion where there is
 * only one. */
char *sq_words_copy (const SqLays *lays, const SqCutEntry *entry, guint copy);
/* "3, front boxing, copy 2 of 8": what is said of a placed piece in a line of its own. */
char *sq_words_placed (const SqLays *lays, const SqPlaced *placed);

/* "0 – 19 7/8 from the cut end, 2 – 49 7/8 from the near edge, half turn"; before it, "Remnant 2: "
 * where there is any. */
char *sq_words_lying (const SqLays *lays, const SqPlaced *placed, const SqLengthStyle *style);

/* That a kept lay is out of date. */
char *sq_words_kept_old (const SqKeptLay *kept);

/* Why copies of a piece are not in the lay of @cloth, and what can be done about it. Names the
 * piece, and its cushion where there are several. */
char *sq_words_unlaid (const SqLays *lays, const SqClothLay *cloth, const SqUnlaid *unlaid,
                       const SqLengthStyle *style);
