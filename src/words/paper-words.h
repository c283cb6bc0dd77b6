/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands round the edges of every paper. All texts are new and yours to free. */
#pragma once

#include "job/job.h"

/* What a paper of @job is called that has no other title: the job's, without control
 * characters, or "Cushions". */
char *sq_words_paper_title (const SqJob *job);
/* "Cut list", "Patterns": as a label. Static. */
const char *sq_words_paper_kind (SqPaperKind kind);
/* "A4", "Letter", "ANSI E". Static. */
const char *sq_words_sheet (SqSheet sheet);
/* That a task was stopped by who asked for it. Static. */
const char *sq_words_stopped (void);
/* That a pattern has no room on paper of that width; that labels come out too small to be read. */
char *sq_words_no_room_for_pattern (double paper_mm, double margin_mm, double overlap_mm,
                                    const SqLengthStyle *style);
/* That no page is as wide as that roll, but only @most_mm. */
char *sq_words_roll_too_wide (double roll_mm, double most_mm, const SqLengthStyle *style);
char *sq_words_no_room_for_labels (double width_mm, double height_mm, const SqLengthStyle *style);
/* What a file for machines is called within: "Harbour bench · revision A · RIGHT SIDE UP". */
char *sq_words_cut_file_title (const SqJob *job, gboolean wrong_side);
/* "RIGHT SIDE UP", "WRONG SIDE UP": how cloth or paper lies. Static. */
const char *sq_words_side_up (gboolean wrong_side);
/* "Revision A · 2026-11-25" */
char *sq_words_paper_state (const SqJob *job, const char *date);
/* "For Pier House" */
char *sq_words_for_customer (const char *customer);
/* "47 7/8 × 19 7/8", of figures. */
char *sq_words_size (const char *width, const char *length);
/* "Layout: Harbour stripe" */
char *sq_words_layout_of (const char *cloth);
/* "RIGHT SIDE UP · scale 1 : 12" and, of a part of a long roll, " · goes on at 62 1/2" */
char *sq_words_layout_state (gboolean wrong_side, double scale, double from_mm,
                             const SqLengthStyle *style);
/* What stands at the roll's cut end and along its near usable edge. Static. */
const char *sq_words_cut_end (void);
const char *sq_words_near_edge (void);
/* What stands at an arrow to the up of a cloth that has one, and to the front of a seat. Static. */
const char *sq_words_up (void);
const char *sq_words_front (void);
/* "Page 2 of 3" */
char *sq_words_page (guint page, guint n_pages);
/* "Harbour stripe, continued" */
char *sq_words_continued (const char *heading);
