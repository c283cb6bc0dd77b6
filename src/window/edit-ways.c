/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edit-ways.h"

#include "words/names.h"
#include "words/ways.h"

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
