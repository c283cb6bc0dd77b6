/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A seam in words: which runs of which pieces meet, and how long both are; and what a notch says.
 * All texts are new and yours to free. */
#pragma once

#include "cover/cover.h"

/* "Top, edge A–B (front)", "Front boxing, upper edge", "Plate, skirt A–B (front), end at corner
 * B". */
char *sq_words_seam_side (const SqCover *cover, const SqSide *side);
/* "equally long", "1/4 in to ease in". */
char *sq_words_seam_fit (const SqSeam *seam, const SqLengthStyle *style);
/* All of it as one sentence: "Top, edge A–B (front), 45 3/4 in – Front boxing, upper edge, 45 3/4
 * in: equally long". */
char *sq_words_seam_sentence (const SqCover *cover, guint seam, const SqLengthStyle *style);

/* "Double notch on edge C–D (back), cut 3/16 in deep"; "Clip at …". @mark is one of @piece's. */
char *sq_words_notch (const SqCover *cover, guint piece, const SqMark *mark,
                      const SqLengthStyle *style);
/* "Corner B: notch 2 1/2 × 2 1/2 in, its point 3/8 in from the corner"; or that it is a dart. */
char *sq_words_corner_notch (const SqCover *cover, const SqCornerNotch *notch,
                             const SqLengthStyle *style);
