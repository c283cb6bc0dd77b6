/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edit-kept.h"

#include "plan/kept-lays.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* What each line of the cut list is called; NULL ends it. */
static char **
names_of (const SqPlan *plan)
{
  char **names = g_new0 (char *, plan->cut_list->len + 1);
  for (guint i = 0; i < plan->cut_list->len; i++)
    {
      const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, i);
      g_autofree char *piece = sq_words_piece (sq_plan_cover (plan, entry->cushion), entry->piece);
      names[i] = g_strdup_printf ("%u  %s", entry->number, piece);
    }
  return names;
}

/* @job, which is taken, with the lay of one cloth kept. */
static SqJob *
with_kept (SqJob *job, const SqLays *lays, guint index, char *const *names)
{
  g_autoptr (SqJob) before = job;
  const SqClothLay *cloth = sq_lays_cloth (lays, index);
  g_autoptr (SqKeptLay) kept = cloth->is_kept
                                   ? NULL
                                   : sq_lays_keep (lays, index, (const char *const *) names);
  return kept != NULL ? sq_job_with_kept_lay (before, kept) : sq_job_ref (before);
}

static void
keep (SqDocument *document, const SqLays *lays, guint from, guint to, const char *words)
{
  const SqJob *now = sq_document_get_job (document);
  g_auto (GStrv) names = names_of (lays->plan);
  g_autoptr (SqJob) job = sq_job_ref (now);
  for (guint i = from; i < to; i++)
    job = with_kept (g_steal_pointer (&job), lays, i, names);
  if (job != now)
    sq_document_edit (document, job, words, NULL);
}

void
sq_edit_keep_lay (SqDocument *document, const SqLays *lays, guint index)
{
  keep (document, lays, index, index + 1, _ ("Keep the lay"));
}

void
sq_edit_keep_lays (SqDocument *document, const SqLays *lays)
{
  keep (document, lays, 0, lays->cloths->len, _ ("Keep the lays"));
}

void
sq_edit_let_lay_go (SqDocument *document, SqId cloth)
{
  g_autoptr (SqJob) job = sq_job_without_kept_lay (sq_document_get_job (document), cloth);
  sq_document_edit (document, job, _ ("Let the kept lay go"), NULL);
}
