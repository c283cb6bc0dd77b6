/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The dialog of papers, for its own files: papers-dialog shows, papers-out takes away. */
#pragma once

#include "window/background.h"
#include "window/kept-spec.h"
#include "window/machine-files.h"
#include "window/paper-choices.h"
#include "window/paper-preview.h"
#include "window/papers-dialog.h"
#include "window/saving.h"

struct _SqPapersDialog
{
  GtkWindow parent;
  SqDocument *document;
  SqLayFinder *finder;
  char *today;
  SqLays *lays;         /* what the papers are made of; NULL: none yet */
  SqKeptSpec *kept;     /* how; NULL: they can't be made so */
  GPtrArray *papers;    /* that are ready; NULL: none yet … */
  SqBackground *making; /* … and the rest is on its way; NULL: that is all */
  SqPaperChoices *choices;
  SqMachineFiles *machines;
  SqSaving *saving;
  GtkWidget *side, *foot, *refusal, *page, *back, *forth, *message, *print, *pdf, *csv, *text;
  GtkWidget *positions, *json, *note;
  SqPaperPreview *preview;
};

/* Says what became of what was saved or printed last, in the foot, and what the maker has to know of it
 * above (NULL: nothing). */
void sq_papers_dialog_say (SqPapersDialog *dialog, const char *text, const char *note);
/* Whether all papers that are wanted are made, and there are any. */
gboolean sq_papers_dialog_is_ready (SqPapersDialog *dialog);

/* Ask what there is to be asked, and do it. */
void sq_papers_dialog_save_pdf (SqPapersDialog *dialog);
void sq_papers_dialog_save_table (SqPapersDialog *dialog);
void sq_papers_dialog_save_text (SqPapersDialog *dialog);
void sq_papers_dialog_save_positions (SqPapersDialog *dialog);
void sq_papers_dialog_save_json (SqPapersDialog *dialog);
void sq_papers_dialog_save_machine_files (SqPapersDialog *dialog);
void sq_papers_dialog_print (SqPapersDialog *dialog);
/* Of patterns as they are chosen, if they can be made so. */
void sq_papers_dialog_print_test_page (SqPapersDialog *dialog);
