/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edit-laying.h"

#include "words/piece-names.h"

#include <glib/gi18n.h>

/* Takes @job and @words. */
static void
push (SqDocument *document, SqJob *job, char *words)
{
  sq_document_edit (document, job, words, NULL);
  sq_job_unref (job);
  g_free (words);
}

static char *
piece_words (const SqPlan *plan, const SqCutEntry *entry, const char *pattern)
{
  g_autofree char *name = sq_words_piece (sq_plan_cover (plan, entry->cushion), entry->piece);
  return g_strdup_printf (pattern, name);
}

void
sq_edit_pin (SqDocument *document, const SqPlan *plan, const SqCutEntry *entry, const SqPin *pin,
             gboolean is_moved)
{
  push (document, sq_job_with_pin (sq_document_get_job (document), pin),
        piece_words (plan, entry, is_moved ? _ ("Move %s on the roll") : _ ("Pin %s on the roll")));
}

void
sq_edit_unpin (SqDocument *document, const SqPlan *plan, const SqCutEntry *entry,
               const SqPinned *of)
{
  push (document, sq_job_without_pin (sq_document_get_job (document), of),
        piece_words (plan, entry, _ ("Unpin %s")));
}

void
sq_edit_unpin_all (SqDocument *document, SqId cloth)
{
  push (document, sq_job_without_pins (sq_document_get_job (document), cloth),
        g_strdup (_ ("Unpin all pieces")));
}

void
sq_edit_flaw (SqDocument *document, SqId cloth, const SqFlaw *flaw)
{
  const SqJob *job = sq_document_get_job (document);
  SqFlaw own = *flaw;
  if (own.id == 0)
    own.id = sq_job_new_flaw_id (job, cloth);
  push (document, sq_job_with_flaw (job, cloth, &own),
        g_strdup (flaw->id == 0 ? _ ("Mark a flaw") : _ ("Move a flaw")));
}

void
sq_edit_remove_flaw (SqDocument *document, SqId cloth, SqId flaw)
{
  push (document, sq_job_without_flaw (sq_document_get_job (document), cloth, flaw),
        g_strdup (_ ("Remove a flaw")));
}

void
sq_edit_stock (SqDocument *document, SqId cloth, const SqStock *stock)
{
  const SqJob *job = sq_document_get_job (document);
  SqStock own = *stock;
  if (own.id == 0)
    own.id = sq_job_new_stock_id (job, cloth);
  push (document, sq_job_with_stock (job, cloth, &own),
        g_strdup (stock->id == 0 ? _ ("Add cloth at hand") : _ ("Change cloth at hand")));
}

void
sq_edit_remove_stock (SqDocument *document, SqId cloth, SqId stock)
{
  push (document, sq_job_without_stock (sq_document_get_job (document), cloth, stock),
        g_strdup (_ ("Remove cloth at hand")));
}

void
sq_edit_cuts (SqDocument *document, SqCuts cuts)
{
  push (document, sq_job_with_cuts (sq_document_get_job (document), cuts),
        g_strdup (_ ("How cloth is cut")));
}

void
sq_edit_plies (SqDocument *document, guint most, double table_mm)
{
  push (document, sq_job_with_plies (sq_document_get_job (document), most, table_mm),
        g_strdup (_ ("Layers cut at once")));
}
