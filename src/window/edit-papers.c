/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edit-papers.h"

#include "job/names.h"
#include "papers/paper.h"

#include <glib/gi18n.h>

static void
edit_choice (SqDocument *document, const SqJob *job)
{
  sq_document_edit (document, job, _ ("Choice of papers"), "papers");
}

void
sq_edit_paper_sheet (SqDocument *document, SqSheet sheet)
{
  g_autoptr (SqJob) job = sq_job_dup (sq_document_get_job (document));
  if ((job->given & SQ_GIVEN_SHEET) && job->papers.sheet == sheet)
    return;
  job->given |= SQ_GIVEN_SHEET;
  job->papers.sheet = sheet;
  edit_choice (document, job);
}

void
sq_edit_paper_kind (SqDocument *document, SqPaperKind kind, gboolean is_wanted)
{
  g_autoptr (SqJob) job = sq_job_dup (sq_document_get_job (document));
  guint before = sq_paper_kinds (job), bit = 1u << kind;
  guint after = is_wanted ? before | bit : before & ~bit;
  if (after == before)
    return;
  job->given |= SQ_GIVEN_PAPER_KINDS;
  job->papers.kinds = after;
  edit_choice (document, job);
}

void
sq_edit_next_revision (SqDocument *document)
{
  g_autoptr (SqJob) job = sq_job_dup (sq_document_get_job (document));
  job->revision++;
  g_autofree char *name = sq_revision_name (job->revision);
  g_autofree char *words = g_strdup_printf (_ ("Revision %s"), name);
  sq_document_edit (document, job, words, NULL);
}
