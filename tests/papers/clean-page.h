/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether a page can be read. */
#pragma once

#include "papers/paper.h"

/* Fails the test where a text or line of @page leaves the sheet less @margin_mm, or two texts lie on
 * each other. */
void assert_page_is_clean (const SqPage *page, double margin_mm);

/* The same for all pages of @paper. */
void assert_paper_is_clean (const SqPaper *paper);

/* How often @wanted is all of a text of @page. */
guint count_text (const SqPage *page, const char *wanted);
/* Whether @part is in a text of any page. */
gboolean has_text (const SqPaper *paper, const char *part);
