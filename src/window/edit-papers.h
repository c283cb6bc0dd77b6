/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What of a job is printed, and which revision of its papers that is. */
#pragma once

#include "window/document.h"

/* The sheet; one kind of paper more or less. Steps that follow each other are one. */
void sq_edit_paper_sheet (SqDocument *document, SqSheet sheet);
void sq_edit_paper_kind (SqDocument *document, SqPaperKind kind, gboolean is_wanted);

/* The papers are those of the next revision. */
void sq_edit_next_revision (SqDocument *document);
