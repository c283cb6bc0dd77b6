/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Jobs on paper, for tests. */
#pragma once

#include "papers/paper.h"

/* Paper @kind of the job that @text describes (single quotes), or of a sample. New. */
SqPaper *paper_of_text (const char *text, SqPaperKind kind, SqSheet sheet);
SqPaper *paper_of_sample (const char *name, SqPaperKind kind, SqSheet sheet);

/* The same in two steps: first lays, and what papers are made from of them on @sheet. */
SqLays *lays_of_text (const char *text);
SqLays *lays_of_sample (const char *name);
SqPaperSpec spec_of_lays (const SqLays *lays, SqSheet sheet);

/* The names of all samples; NULL ends it. */
extern const char *const samples[];

/* A job of @n boxed cushions, each called @name with its number. New text. */
char *many_cushions (guint n, const char *name);
