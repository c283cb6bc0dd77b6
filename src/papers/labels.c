/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/kinds.h"
#include "papers/pages.h"
#include "words/paper-words.h"

void
sq_labels_make (SqPaper *paper, const SqPaperSpec *spec)
{
  g_autofree char *title = sq_words_paper_title (spec->lays->plan->job);
  SqPages *pages = sq_pages_new (spec, FALSE, title);

  sq_pages_heading (pages, sq_words_paper_kind (SQ_PAPER_LABELS), 0);
  sq_pages_end (pages, paper->pages);
}
