/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lays in words: what to buy, what could not be laid. All texts are new and yours to free. */
#pragma once

#include "plan/lays.h"

/* A length of cloth as it is sold: "2 1/8 yd", "1.8 m". */
char *sq_words_sold_length (double mm, const SqLengthStyle *style);

/* "2 1/8 yd to buy, 31 % waste"; "nothing to buy". */
char *sq_words_purchase (const SqPurchase *purchase, const SqLengthStyle *style);
/* How that came about: "1.76 yd laid, 2 in to square the end, rounded up to 1/8 yd". */
char *sq_words_purchase_reckoned (const SqJob *job, const SqPurchase *purchase,
                                  const SqLengthStyle *style);

/* Why copies of a piece are not in the lay of @cloth, and what can be done about it. Names the
 * piece, and its cushion where there are several. */
char *sq_words_unlaid (const SqLays *lays, const SqClothLay *cloth, const SqUnlaid *unlaid,
                       const SqLengthStyle *style);
