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

static gboolean
is_same (const SqCloth *cloth, const GArray *stock)
{
  if (cloth->stock->len != stock->len)
    return FALSE;
  for (guint i = 0; i < stock->len; i++)
    {
      const SqStock *a = sq_cloth_stock (cloth, i), *b = &g_array_index (stock, SqStock, i);
      if (a->id != b->id || a->kind != b->kind || a->length_mm != b->length_mm
          || a->width_mm != b->width_mm)
        return FALSE;
    }
  return TRUE;
}

static gboolean
is_in (const GArray *stock, SqId id)
{
  for (guint i = 0; i < stock->len; i++)
    if (g_array_index (stock, SqStock, i).id == id)
      return TRUE;
  return FALSE;
}

void
sq_edit_stock (SqDocument *document, SqId id, const GArray *stock)
{
  g_autoptr (SqJob) job = sq_job_ref (sq_document_get_job (document));
  const SqCloth *cloth = sq_job_cloth (job, id);
  if (cloth == NULL || is_same (cloth, stock))
    return;
  g_autoptr (SqCloth) old = sq_cloth_ref (cloth);
  for (guint i = 0; i < old->stock->len; i++)
    if (!is_in (stock, sq_cloth_stock (old, i)->id))
      {
        g_autoptr (SqJob) before = g_steal_pointer (&job);
        job = sq_job_without_stock (before, id, sq_cloth_stock (old, i)->id);
      }
  for (guint i = 0; i < stock->len; i++)
    {
      g_autoptr (SqJob) before = g_steal_pointer (&job);
      SqStock own = g_array_index (stock, SqStock, i);
      if (own.id == 0)
        own.id = sq_job_new_stock_id (before, id);
      job = sq_job_with_stock (before, id, &own);
    }
  sq_document_edit (document, job, _ ("Cloth at hand"), NULL);
}

void
sq_edit_cutting (SqDocument *document, SqCuts cuts, guint most, double table_mm)
{
  const SqJob *job = sq_document_get_job (document);
  if (job->laying.cuts == cuts && job->laying.most_plies == most
      && job->laying.table_mm == table_mm)
    return;
  g_autoptr (SqJob) cut = sq_job_with_cuts (job, cuts);
  push (document, sq_job_with_plies (cut, most, table_mm), g_strdup (_ ("How cloth is cut")));
}
