/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One function for each kind of paper: fills @paper, which has no page yet, with one at least.
 * Internal to the room. */
#pragma once

#include "papers/paper.h"

void sq_cut_list_make (SqPaper *paper, const SqPaperSpec *spec);
void sq_layout_make (SqPaper *paper, const SqPaperSpec *spec);
void sq_marking_guide_make (SqPaper *paper, const SqPaperSpec *spec);
void sq_tickets_make (SqPaper *paper, const SqPaperSpec *spec);
void sq_labels_make (SqPaper *paper, const SqPaperSpec *spec);
void sq_pattern_make (SqPaper *paper, const SqPaperSpec *spec);

/* A paper of @pages (of SqPage), which it takes. New reference. */
SqPaper *sq_paper_new_of_pages (SqPaperKind kind, GArray *pages);
