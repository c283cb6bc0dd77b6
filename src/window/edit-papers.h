/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What of a job is printed, how, and which revision of its papers that is. */
#pragma once

#include "window/document.h"

/* The job's choice of papers is @choice, and of it is the maker's own what the bits in @given
 * (SqJobGiven, of papers alone) say. Steps that follow each other are one; where nothing changes there
 * is none. */
void sq_edit_papers (SqDocument *document, const SqPapersChoice *choice, guint32 given);

/* Those bits that the job has now. */
guint32 sq_edit_papers_given (const SqJob *job);

/* The papers are those of the next revision. */
void sq_edit_next_revision (SqDocument *document);
