/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edit-ways.h"

#include "window/figures.h"
#include "words/names.h"
#include "words/ways.h"
#include "words/wide.h"

#include <glib/gi18n.h>
#include <math.h>

void
sq_edit_way (SqDocument *document, const SqWay *way)
{
  const SqJob *job = sq_document_get_job (document);
  if (sq_job_cushion (job, way->as->id) == NULL || sq_job_cushion (job, way->as->id) == way->as)
    return;
  g_autoptr (SqJob) next = sq_job_with_cushion (job, way->as);
  /* TRANSLATORS: a step that can be undone; a way of building. */
  g_autofree char *words = g_strdup_printf (_ ("Build as “%s”"), sq_words_way (way));
  sq_document_edit (document, next, words, NULL);
}

/* The parts of @cushion in @job, which is not shared yet, by its name and a number. */
static void
number_parts (SqJob *job, const SqCushion *cushion, const SqWideWay *way)
{
  guint n = 0;
  if (cushion->name[0] == '\0' || way->cushions->len < 2)
    return;
  for (guint i = 0; i < job->cushions->len; i++)
    {
      SqCushion *part = job->cushions->pdata[i];
      if (!g_ptr_array_find (way->cushions, part, NULL))
        continue;
      SqCushion *named = sq_cushion_dup (part);
      /* TRANSLATORS: a cushion's name, and which of the parts it was divided into. */
      g_autofree char *name = g_strdup_printf (_ ("%s %u"), cushion->name, ++n);
      g_ref_string_release (named->name);
      named->name = g_ref_string_new (name);
      job->cushions->pdata[i] = named;
      sq_cushion_unref (part);
    }
}

void
sq_edit_wide (SqDocument *document, const SqWide *wide, guint i)
{
  const SqJob *job = sq_document_get_job (document);
  const SqCushion *now = sq_job_cushion (job, wide->cushion->id);
  const SqWideWay *way = sq_wide_way (wide, i);
  g_autoptr (SqJob) next = now != NULL ? sq_wide_apply (way, now, job) : NULL;
  if (next == NULL)
    return;
  number_parts (next, now, way);
  SqLengthStyle style = sq_figures_style (job);
  g_autofree char *words = sq_words_wide_way (way, &style);
  sq_document_edit (document, next, words, NULL);
}

void
sq_edit_rate (SqDocument *document, SqRate rate, const double *value)
{
  g_autoptr (SqJob) next = sq_job_with_rate (sq_document_get_job (document), rate,
                                             value != NULL ? *value : NAN);
  sq_document_edit (document, next, _ ("Rates"), NULL);
}

void
sq_edit_foam_price (SqDocument *document, SqFoamKind kind, const double *price)
{
  g_autoptr (SqJob) next = sq_job_with_foam_price (sq_document_get_job (document), kind,
                                                   price != NULL ? *price : NAN);
  sq_document_edit (document, next, _ ("Price of foam"), NULL);
}

void
sq_edit_cloth_price (SqDocument *document, SqId id, const double *price)
{
  const SqJob *job = sq_document_get_job (document);
  const SqCloth *now = sq_job_cloth (job, id);
  if (now == NULL)
    return;
  g_autoptr (SqCloth) cloth = sq_cloth_dup (now);
  g_autofree char *name = sq_words_cloth (now);
  g_autofree char *words = g_strdup_printf (_ ("Price of %s"), name);
  cloth->price = price != NULL ? *price : 0;
  cloth->given &= ~(guint32) SQ_GIVEN_CLOTH_PRICE;
  if (price != NULL)
    cloth->given |= SQ_GIVEN_CLOTH_PRICE;
  g_autoptr (SqJob) next = sq_job_with_cloth (job, cloth);
  sq_document_edit (document, next, words, NULL);
}
