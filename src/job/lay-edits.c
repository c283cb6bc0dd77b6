/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/lay-edits.h"

gboolean
sq_pinned_equal (const SqPinned *a, const SqPinned *b)
{
  return a->cloth == b->cloth && a->cushion == b->cushion && !a->mirrored == !b->mirrored
         && a->role == b->role && a->ordinal == b->ordinal && a->copy == b->copy;
}

/* ---- a cloth's lists ----------------------------------------------------------------------- */

SqId
sq_job_new_stock_id (const SqJob *job, SqId cloth_id)
{
  const SqCloth *cloth = sq_job_cloth (job, cloth_id);
  SqId most = 0;

  for (guint i = 0; cloth != NULL && i < cloth->stock->len; i++)
    most = MAX (most, sq_cloth_stock (cloth, i)->id);
  for (guint i = 0; cloth != NULL && i < cloth->flaws->len; i++)
    most = MAX (most, sq_cloth_flaw (cloth, i)->stock);
  for (guint i = 0; i < job->pins->len; i++)
    if (sq_job_pin (job, i)->of.cloth == cloth_id)
      most = MAX (most, sq_job_pin (job, i)->stock);
  for (most++; most == 0 || (cloth != NULL && sq_cloth_find_stock (cloth, most) != NULL);)
    most++;
  return most;
}

SqId
sq_job_new_flaw_id (const SqJob *job, SqId cloth_id)
{
  const SqCloth *cloth = sq_job_cloth (job, cloth_id);
  SqId most = 0;

  for (guint i = 0; cloth != NULL && i < cloth->flaws->len; i++)
    most = MAX (most, sq_cloth_flaw (cloth, i)->id);
  for (most++; most == 0 || (cloth != NULL && sq_cloth_find_flaw (cloth, most) != NULL);)
    most++;
  return most;
}

/* A copy of @job's cloth @id to change; NULL where there is none. */
static SqCloth *
changed_cloth (const SqJob *job, SqId id)
{
  const SqCloth *cloth = sq_job_cloth (job, id);
  return cloth != NULL ? sq_cloth_dup (cloth) : NULL;
}

static SqJob *
with_changed (const SqJob *job, SqCloth *cloth)
{
  g_autoptr (SqCloth) own = cloth;
  return own != NULL ? sq_job_with_cloth (job, own) : sq_job_dup (job);
}

static guint
stock_index (const SqCloth *cloth, SqId id)
{
  guint i = 0;

  while (i < cloth->stock->len && sq_cloth_stock (cloth, i)->id != id)
    i++;
  return i;
}

static guint
flaw_index (const SqCloth *cloth, SqId id)
{
  guint i = 0;

  while (i < cloth->flaws->len && sq_cloth_flaw (cloth, i)->id != id)
    i++;
  return i;
}

SqJob *
sq_job_with_stock (const SqJob *job, SqId cloth_id, const SqStock *stock)
{
  SqCloth *cloth = changed_cloth (job, cloth_id);

  if (cloth != NULL)
    {
      guint i = stock_index (cloth, stock->id);
      if (i == cloth->stock->len)
        g_array_set_size (cloth->stock, i + 1);
      SqStock *place = sq_cloth_stock (cloth, i);
      GRefString *unknown = place->unknown;
      *place = *stock;
      place->unknown = unknown;
    }
  return with_changed (job, cloth);
}

SqJob *
sq_job_without_stock (const SqJob *job, SqId cloth_id, SqId stock)
{
  SqCloth *cloth = changed_cloth (job, cloth_id);
  guint i = cloth != NULL ? stock_index (cloth, stock) : 0;

  if (cloth != NULL && i < cloth->stock->len)
    g_array_remove_index (cloth->stock, i);
  return with_changed (job, cloth);
}

SqJob *
sq_job_with_flaw (const SqJob *job, SqId cloth_id, const SqFlaw *flaw)
{
  SqCloth *cloth = changed_cloth (job, cloth_id);

  if (cloth != NULL)
    {
      guint i = flaw_index (cloth, flaw->id);
      if (i == cloth->flaws->len)
        g_array_set_size (cloth->flaws, i + 1);
      SqFlaw *place = sq_cloth_flaw (cloth, i);
      GRefString *unknown = place->unknown;
      *place = *flaw;
      place->unknown = unknown;
    }
  return with_changed (job, cloth);
}

SqJob *
sq_job_without_flaw (const SqJob *job, SqId cloth_id, SqId flaw)
{
  SqCloth *cloth = changed_cloth (job, cloth_id);
  guint i = cloth != NULL ? flaw_index (cloth, flaw) : 0;

  if (cloth != NULL && i < cloth->flaws->len)
    g_array_remove_index (cloth->flaws, i);
  return with_changed (job, cloth);
}

/* ---- pins ---------------------------------------------------------------------------------- */

static guint
pin_index (const SqJob *job, const SqPinned *of)
{
  guint i = 0;

  while (i < job->pins->len && !sq_pinned_equal (&sq_job_pin (job, i)->of, of))
    i++;
  return i;
}

const SqPin *
sq_job_find_pin (const SqJob *job, const SqPinned *of)
{
  guint i = pin_index (job, of);
  return i < job->pins->len ? sq_job_pin (job, i) : NULL;
}

SqJob *
sq_job_with_pin (const SqJob *job, const SqPin *pin)
{
  SqJob *next = sq_job_dup (job);
  guint i = pin_index (next, &pin->of);

  if (i == next->pins->len)
    g_array_set_size (next->pins, i + 1);
  SqPin *place = sq_job_pin (next, i);
  GRefString *unknown = place->unknown;
  *place = *pin;
  place->unknown = unknown;
  return next;
}

SqJob *
sq_job_without_pin (const SqJob *job, const SqPinned *of)
{
  SqJob *next = sq_job_dup (job);
  guint i = pin_index (next, of);

  if (i < next->pins->len)
    g_array_remove_index (next->pins, i);
  return next;
}

SqJob *
sq_job_without_pins (const SqJob *job, SqId cloth)
{
  SqJob *next = sq_job_dup (job);

  for (guint i = next->pins->len; i-- > 0;)
    if (sq_job_pin (next, i)->of.cloth == cloth)
      g_array_remove_index (next->pins, i);
  return next;
}

/* ---- the choice ---------------------------------------------------------------------------- */

SqJob *
sq_job_with_cuts (const SqJob *job, SqCuts cuts)
{
  SqJob *next = sq_job_dup (job);

  next->laying.cuts = cuts;
  return next;
}

SqJob *
sq_job_with_plies (const SqJob *job, guint most, double table_mm)
{
  SqJob *next = sq_job_dup (job);

  next->laying.most_plies = most;
  next->laying.table_mm = table_mm;
  return next;
}
