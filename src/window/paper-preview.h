/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Papers as they will come out, a page at a time: all of it, or what is seen of one that is much longer
 * than wide, as those on rolls are. */
#pragma once

#include <gtk/gtk.h>

#include "papers/paper.h"

#define SQ_TYPE_PAPER_PREVIEW (sq_paper_preview_get_type ())
G_DECLARE_FINAL_TYPE (SqPaperPreview, sq_paper_preview, SQ, PAPER_PREVIEW, GtkWidget)

/* Emits "turned" (no parameters) when another page is shown. */

/* Shows @papers (of SqPaper) from now on, the same page as before where there is one. A reference is
 * taken; NULL: nothing. */
void sq_paper_preview_set_papers (SqPaperPreview *preview, GPtrArray *papers);

/* What is shown (of SqPaper), borrowed; NULL: nothing. */
const GPtrArray *sq_paper_preview_get_papers (SqPaperPreview *preview);
/* Of all papers together. */
guint sq_paper_preview_n_pages (SqPaperPreview *preview);
/* From 0, of them. */
guint sq_paper_preview_page (SqPaperPreview *preview);
/* So many pages further, held to the first and last. */
void sq_paper_preview_turn (SqPaperPreview *preview, int pages);

/* The paper of the page that is shown, and the page's place in it; NULL: none. Borrowed. */
const SqPaper *sq_paper_preview_paper (SqPaperPreview *preview, guint *page);
/* "Patterns · page 7 of 31": new text. */
char *sq_paper_preview_words (SqPaperPreview *preview);
