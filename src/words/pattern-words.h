/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What full-scale patterns say: on every piece, in every sheet's caption, and on the first page. All
 * texts are new and yours to free where nothing else is said. */
#pragma once

#include "plan/plan.h"

/* "3 Front boxing": number and name of line @entry of the cut list. */
char *sq_words_pattern_name (const SqPlan *plan, guint entry);
/* @text, and of which cushion that line is, if there are several: "3 Front boxing · Hall bench". */
char *sq_words_pattern_of_cushion (const SqPlan *plan, guint entry, const char *text);
/* What else is written on a piece, what matters most first: which side is up, how many are cut of which
 * cloth, of which cushion, TOP or UNDERSIDE, hand (@own_mirror: the piece is its own mirror image), what
 * its lines are, whose it is. New array of its own texts. */
GPtrArray *sq_words_pattern_notes (const SqPlan *plan, guint entry, SqPatternLines lines,
                                   gboolean wrong_side, gboolean own_mirror,
                                   const SqLengthStyle *style);
/* "TOP", "UNDERSIDE"; NULL for what is neither. Static. */
const char *sq_words_pattern_face (SqPieceRole role);
/* At an arrow to the front of a seat, to a piece's upper edge, to the up of a cloth. Static. */
const char *sq_words_pattern_front (void);
const char *sq_words_pattern_top (void);
const char *sq_words_pattern_up (void);

/* "B2": the sheet in column 1, row 1, from 0. */
char *sq_words_tile (guint column, guint row);
/* "3 · B2": sheet @tile of piece @number. */
char *sq_words_tile_page (guint number, const char *tile);
/* What is on a sheet beside each other: "3 Front boxing · 4 Back boxing". */
char *sq_words_pattern_together (const GPtrArray *names);
/* "Bay seat · Revision A · 2026-11-25" */
char *sq_words_pattern_state (const SqJob *job, const char *date);

/* "A to B 47 1/2 in": how far corner @b is from corner @a, from 0. */
char *sq_words_corner_distance (guint a, guint b, double mm, const SqLengthStyle *style);

/* Of the first pages. Static where const. */
const char *sq_words_check_heading (void);
const char *sq_words_check_how (void);
const char *sq_words_square_mm (void);
const char *sq_words_square_inch (void);
const char *sq_words_pattern_pieces (void);
/* Short lines on what to do, numbered; @on_sheets: there are sheets to put together. New array of its own
 * texts. */
GPtrArray *sq_words_pattern_steps (gboolean on_sheets, SqPatternLines lines);
/* "WRONG SIDE UP: …", and what that means. Static. */
const char *sq_words_pattern_side (gboolean wrong_side);
/* "page 5"; "pages 5 to 12, 7 sheets: A1 to C3". */
char *sq_words_pattern_on_page (guint page);
char *sq_words_pattern_on_pages (guint first, guint last, const char *first_tile,
                                 const char *last_tile);
/* The same for a piece that lies on the sheets of another: "pages 5–12: A1 to C3, with 2". */
char *sq_words_pattern_with (const char *on_pages, guint number);
/* "corners only: page 5", "corners only: pages 5–6". */
char *sq_words_pattern_corners_on (guint first, guint last);
/* How corners become a piece. Static. */
const char *sq_words_pattern_corners (void);
/* That a map's crossed sheets are left out. Static. */
const char *sq_words_pattern_left_out (void);

/* Of the test page. Static. */
const char *sq_words_test_page (void);
const char *sq_words_test_page_if (void);
/* What rulers are in. */
const char *sq_words_ruler_mm (void);
const char *sq_words_ruler_inch (void);
