/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/job.h"

#include <math.h>

static void
foam_clear (gpointer data)
{
  SqFoam *foam = data;
  g_clear_pointer (&foam->unknown, g_ref_string_release);
  g_clear_pointer (&foam->unknown_sheet, g_ref_string_release);
}

static void
cushion_free (gpointer cushion)
{
  sq_cushion_unref (cushion);
}

static void
cloth_free (gpointer cloth)
{
  sq_cloth_unref (cloth);
}

static void
pin_clear (gpointer data)
{
  g_clear_pointer (&((SqPin *) data)->unknown, g_ref_string_release);
}

static void
kept_lay_free (gpointer lay)
{
  sq_kept_lay_unref (lay);
}

static GRefString *
hold (GRefString *text)
{
  return text != NULL ? g_ref_string_acquire (text) : NULL;
}

SqJob *
sq_job_new (const SqDefaults *defaults)
{
  SqJob *job = g_new0 (SqJob, 1);

  job->ref_count = 1;
  job->cushions = g_ptr_array_new_with_free_func (cushion_free);
  job->cloths = g_ptr_array_new_with_free_func (cloth_free);
  job->foams = g_array_new (FALSE, FALSE, sizeof (SqFoam));
  g_array_set_clear_func (job->foams, foam_clear);
  job->pins = g_array_new (FALSE, TRUE, sizeof (SqPin));
  g_array_set_clear_func (job->pins, pin_clear);
  job->kept_lays = g_ptr_array_new_with_free_func (kept_lay_free);
  job->revision = 1;
  job->defaults = *defaults;
  return job;
}

SqJob *
sq_job_dup (const SqJob *job)
{
  SqJob *copy = sq_job_new (&job->defaults);

  copy->units = job->units;
  copy->given = job->given;
  copy->revision = job->revision;
  copy->papers = job->papers;
  hold (copy->papers.unknown);
  hold (copy->papers.unknown_pattern);
  hold (copy->papers.unknown_labels);
  copy->laying = job->laying;
  hold (copy->laying.unknown);
  hold (copy->laying.unknown_plies);
  copy->title = hold (job->title);
  copy->customer = hold (job->customer);
  copy->notes = hold (job->notes);
  copy->unknown = hold (job->unknown);
  copy->rates = job->rates;
  copy->unknown_rates = hold (job->unknown_rates);
  for (guint i = 0; i < job->cushions->len; i++)
    g_ptr_array_add (copy->cushions, sq_cushion_ref (g_ptr_array_index (job->cushions, i)));
  for (guint i = 0; i < job->cloths->len; i++)
    g_ptr_array_add (copy->cloths, sq_cloth_ref (g_ptr_array_index (job->cloths, i)));
  for (guint i = 0; i < job->foams->len; i++)
    {
      SqFoam foam = g_array_index (job->foams, SqFoam, i);

      hold (foam.unknown);
      hold (foam.unknown_sheet);
      g_array_append_val (copy->foams, foam);
    }
  g_array_append_vals (copy->pins, job->pins->data, job->pins->len);
  for (guint i = 0; i < copy->pins->len; i++)
    hold (sq_job_pin (copy, i)->unknown);
  for (guint i = 0; i < job->kept_lays->len; i++)
    g_ptr_array_add (copy->kept_lays, sq_kept_lay_ref (g_ptr_array_index (job->kept_lays, i)));
  return copy;
}

SqJob *
sq_job_ref (const SqJob *job)
{
  SqJob *shared = (SqJob *) job;

  g_return_val_if_fail (job != NULL, NULL);
  g_atomic_int_inc (&shared->ref_count);
  return shared;
}

void
sq_job_unref (SqJob *job)
{
  g_return_if_fail (job != NULL);
  if (!g_atomic_int_dec_and_test (&job->ref_count))
    return;
  g_clear_pointer (&job->title, g_ref_string_release);
  g_clear_pointer (&job->customer, g_ref_string_release);
  g_clear_pointer (&job->notes, g_ref_string_release);
  g_clear_pointer (&job->unknown, g_ref_string_release);
  g_clear_pointer (&job->unknown_rates, g_ref_string_release);
  g_clear_pointer (&job->papers.unknown, g_ref_string_release);
  g_clear_pointer (&job->papers.unknown_pattern, g_ref_string_release);
  g_clear_pointer (&job->papers.unknown_labels, g_ref_string_release);
  g_clear_pointer (&job->laying.unknown, g_ref_string_release);
  g_clear_pointer (&job->laying.unknown_plies, g_ref_string_release);
  g_ptr_array_unref (job->cushions);
  g_ptr_array_unref (job->cloths);
  g_array_unref (job->foams);
  g_array_unref (job->pins);
  g_ptr_array_unref (job->kept_lays);
  g_free (job);
}

/* Where the cushion with @id stands, or how many there are. */
static guint
cushion_index (const SqJob *job, SqId id)
{
  guint i = 0;

  while (i < job->cushions->len
         && ((const SqCushion *) g_ptr_array_index (job->cushions, i))->id != id)
    i++;
  return i;
}

static guint
cloth_index (const SqJob *job, SqId id)
{
  guint i = 0;

  while (i < job->cloths->len && ((const SqCloth *) g_ptr_array_index (job->cloths, i))->id != id)
    i++;
  return i;
}

static guint
kept_index (const SqJob *job, SqId cloth)
{
  guint i = 0;

  while (i < job->kept_lays->len
         && ((const SqKeptLay *) g_ptr_array_index (job->kept_lays, i))->cloth != cloth)
    i++;
  return i;
}

const SqCushion *
sq_job_cushion (const SqJob *job, SqId id)
{
  guint i = cushion_index (job, id);
  return i < job->cushions->len ? g_ptr_array_index (job->cushions, i) : NULL;
}

const SqCloth *
sq_job_cloth (const SqJob *job, SqId id)
{
  guint i = cloth_index (job, id);
  return i < job->cloths->len ? g_ptr_array_index (job->cloths, i) : NULL;
}

const SqFoam *
sq_job_foam (const SqJob *job, SqFoamKind kind)
{
  for (guint i = 0; i < job->foams->len; i++)
    if (g_array_index (job->foams, SqFoam, i).kind == kind)
      return &g_array_index (job->foams, SqFoam, i);
  return NULL;
}

gboolean
sq_job_has_rate (const SqJob *job, SqRate rate)
{
  return (job->given & SQ_GIVEN_RATE (rate)) && job->rates.of[rate] >= 0;
}

double
sq_job_rate (const SqJob *job, SqRate rate)
{
  return sq_job_has_rate (job, rate) ? job->rates.of[rate] : job->defaults.rates.of[rate];
}

const SqKeptLay *
sq_job_kept_lay (const SqJob *job, SqId cloth)
{
  guint i = kept_index (job, cloth);
  return i < job->kept_lays->len ? g_ptr_array_index (job->kept_lays, i) : NULL;
}

SqId
sq_job_new_cushion_id (const SqJob *job)
{
  SqId id = 1;

  for (guint i = 0; i < job->cushions->len; i++)
    id = MAX (id, ((const SqCushion *) g_ptr_array_index (job->cushions, i))->id + 1);
  while (id == 0 || sq_job_cushion (job, id) != NULL)
    id++;
  return id;
}

SqId
sq_job_new_cloth_id (const SqJob *job)
{
  SqId id = 1;

  for (guint i = 0; i < job->cloths->len; i++)
    id = MAX (id, ((const SqCloth *) g_ptr_array_index (job->cloths, i))->id + 1);
  while (id == 0 || sq_job_cloth (job, id) != NULL)
    id++;
  return id;
}

/* Puts @item, a reference of its own, at @index or at the end. */
static void
put (GPtrArray *list, guint index, gpointer item)
{
  if (index == list->len)
    {
      g_ptr_array_add (list, item);
      return;
    }
  g_ptr_array_remove_index (list, index);
  g_ptr_array_insert (list, (gint) index, item);
}

SqJob *
sq_job_with_cushion (const SqJob *job, const SqCushion *cushion)
{
  SqJob *next = sq_job_dup (job);

  put (next->cushions, cushion_index (next, cushion->id), sq_cushion_ref (cushion));
  return next;
}

SqJob *
sq_job_without_cushion (const SqJob *job, SqId id)
{
  SqJob *next = sq_job_dup (job);
  guint index = cushion_index (next, id);

  if (index < next->cushions->len)
    g_ptr_array_remove_index (next->cushions, index);
  for (guint i = next->pins->len; i-- > 0;)
    if (sq_job_pin (next, i)->of.cushion == id)
      g_array_remove_index (next->pins, i);
  return next;
}

SqJob *
sq_job_with_cushion_moved (const SqJob *job, SqId id, int by)
{
  guint index = cushion_index (job, id);
  gint64 place = (gint64) index + by;

  if (index >= job->cushions->len || place < 0 || place >= job->cushions->len)
    return NULL;
  SqJob *next = sq_job_dup (job);
  gpointer cushion = g_ptr_array_steal_index (next->cushions, index);
  g_ptr_array_insert (next->cushions, (gint) place, cushion);
  return next;
}

SqJob *
sq_job_with_cloth (const SqJob *job, const SqCloth *cloth)
{
  SqJob *next = sq_job_dup (job);

  put (next->cloths, cloth_index (next, cloth->id), sq_cloth_ref (cloth));
  return next;
}

SqJob *
sq_job_without_cloth (const SqJob *job, SqId id)
{
  SqJob *next = sq_job_without_kept_lay (job, id);
  guint index = cloth_index (next, id);

  if (index < next->cloths->len)
    g_ptr_array_remove_index (next->cloths, index);
  for (guint i = next->pins->len; i-- > 0;)
    if (sq_job_pin (next, i)->of.cloth == id)
      g_array_remove_index (next->pins, i);
  return next;
}

SqJob *
sq_job_with_kept_lay (const SqJob *job, const SqKeptLay *lay)
{
  SqJob *next = sq_job_dup (job);

  put (next->kept_lays, kept_index (next, lay->cloth), sq_kept_lay_ref (lay));
  return next;
}

SqJob *
sq_job_without_kept_lay (const SqJob *job, SqId cloth)
{
  SqJob *next = sq_job_dup (job);
  guint index = kept_index (next, cloth);

  if (index < next->kept_lays->len)
    g_ptr_array_remove_index (next->kept_lays, index);
  return next;
}

SqJob *
sq_job_with_rate (const SqJob *job, SqRate rate, double value)
{
  SqJob *next = sq_job_dup (job);

  next->rates.of[rate] = isnan (value) ? 0 : value;
  next->given &= ~SQ_GIVEN_RATE (rate);
  if (!isnan (value))
    next->given |= SQ_GIVEN_RATE (rate);
  return next;
}

/* An id that no foam of the job has. */
static SqId
new_foam_id (const SqJob *job)
{
  SqId id = 1;

  for (guint i = 0; i < job->foams->len; i++)
    id = MAX (id, g_array_index (job->foams, SqFoam, i).id + 1);
  return id;
}

SqJob *
sq_job_with_foam_price (const SqJob *job, SqFoamKind kind, double price)
{
  SqJob *next = sq_job_dup (job);
  SqFoam *foam = (SqFoam *) sq_job_foam (next, kind);

  if (foam == NULL)
    {
      SqFoam fresh = { .id = new_foam_id (job), .kind = kind };
      g_array_append_val (next->foams, fresh);
      foam = &g_array_index (next->foams, SqFoam, next->foams->len - 1);
    }
  foam->price = isnan (price) ? 0 : price;
  foam->given &= ~(guint32) SQ_GIVEN_FOAM_PRICE;
  if (!isnan (price))
    foam->given |= SQ_GIVEN_FOAM_PRICE;
  return next;
}
