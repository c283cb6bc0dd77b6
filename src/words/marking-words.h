/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How cloth is marked, in words and figures; each figure is rounded once, from the exact place. All
 * texts are new and yours to free, but for static ones. */
#pragma once

#include "plan/marking.h"
#include "plan/spreads.h"
#include "words/cut-sheet.h"

/* "Marking guide: Harbour stripe" */
char *sq_words_marking_of (const char *cloth);
/* The same over a lot's lays, of which the top ply is marked. */
char *sq_words_marking_of_plies (const char *cloth);
/* How to read the figures: what they are in, what they count from, how points are joined. */
char *sq_words_marking_key (const SqLengthStyle *style);
/* How the cloth lies on the table: its ends and edges, whichever side is up. Static. */
const char *sq_words_marking_lie (gboolean wrong_side);
/* Where nothing is cut from a cloth. Static. */
const char *sq_words_marking_nothing (void);

/* What is done once, before the pieces of a strip: squaring, trimming, flaws. New array of texts, its
 * own. */
GPtrArray *sq_words_marking_before (const SqLays *lays, const SqMarking *marking,
                                    const SqLengthStyle *style);

/* The heading over the straight cuts of @marking, of how cloth is parted; how they are made. Static. */
const char *sq_words_strips_first (const SqLays *lays, const SqMarking *marking);
const char *sq_words_strips_how (const SqLays *lays, const SqMarking *marking);
/* "Rip across at 19 7/8, right through"; "Cut along at 4, from 0 to 72 5/8": cut @i. */
char *sq_words_straight_cut (const SqLays *lays, const SqMarking *marking, guint i,
                             const SqLengthStyle *style);
/* Headings over the pieces that those cuts free, and over those that they don't. Static. */
const char *sq_words_strip_pieces (void);
const char *sq_words_other_pieces (void);

/* "3  Front boxing", of several cushions with its own. */
char *sq_words_marked (const SqLays *lays, const SqMarking *marking, guint i);
/* Which copies of it are cut there: "2 of 8", "5–8 of 16", "spare"; "" of a single one. @bundle is what
 * becomes of it. */
char *sq_words_marked_copies (const SqLays *lays, const SqBundle *bundle);
/* Point @i of a piece, counted over all its rings: "a", "b" … "z", "aa" … */
char *sq_words_mark_letter (guint i);
/* The points of piece @i: letter, along, across, and of an arc how it runs. None of a straight
 * rectangle. Free with sq_sheet_table_clear(). */
void sq_words_mark_points (SqSheetTable *table, const SqMarking *marking, guint i,
                           const SqLengthStyle *style);
/* "along 19 7/8 – 23 7/8", "across 1 3/8 – 48 1/8": all there is to say of the outline of a straight
 * rectangle; none of other pieces. New array of texts, its own. */
GPtrArray *sq_words_mark_ranges (const SqMarking *marking, guint i, const SqLengthStyle *style);
