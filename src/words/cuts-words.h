/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Straight cuts or free ones, in words: what is chosen for a cloth, and what straight ones take. All
 * texts but labels are new and yours to free. */
#pragma once

#include "job/laying.h"
#include "plan/lays.h"

/* What may be chosen, as a label: "As is worth it". Static. */
const char *sq_words_cuts (SqCuts cuts);

/* What straight cuts take against free ones, where @cloth is laid for them: "Straight cuts, right
 * through: 0.3 m more cloth, 12 min less."; else the same as what they would take. "" where not both were
 * laid. */
char *sq_words_straight_cuts (const SqLays *lays, const SqClothLay *cloth,
                              const SqLengthStyle *style);
