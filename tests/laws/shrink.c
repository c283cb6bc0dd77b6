/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/shrink.h"

/* One way to make a job smaller; @step 0, 1, 2 … tries one thing after the other. NULL: no more
 * steps; @job itself (a new reference): this step changes nothing. */
typedef SqJob *(*Reduction) (const SqJob *job, guint step);

static const SqCushion *
cushion_at (const SqJob *job, guint i)
{
  return i < job->cushions->len ? g_ptr_array_index (job->cushions, i) : NULL;
}

static SqJob *
without_cushion (const SqJob *job, guint step)
{
  const SqCushion *cushion = cushion_at (job, step);

  if (cushion == NULL)
    return NULL;
  return job->cushions->len > 1 ? sq_job_without_cushion (job, cushion->id) : sq_job_ref (job);
}

static SqJob *
without_cloth (const SqJob *job, guint step)
{
  if (step >= job->cloths->len)
    return NULL;
  SqJob *smaller = sq_job_dup (job);
  g_ptr_array_remove_index (smaller->cloths, step);
  return smaller;
}

static SqJob *
without_foam (const SqJob *job, guint step)
{
  if (step >= job->foams->len)
    return NULL;
  SqJob *smaller = sq_job_dup (job);
  g_array_remove_index (smaller->foams, step);
  return smaller;
}

static SqJob *
with_outline (const SqJob *job, const SqCushion *cushion, SqOutline *outline)
{
  g_autoptr (SqOutline) taken = outline;
  g_autoptr (SqOutline) right = sq_outline_turned_right (taken);
  g_autoptr (SqCushion) changed = sq_cushion_with_outline (cushion, right);
  return sq_job_with_cushion (job, changed);
}

static SqJob *
without_hole (const SqJob *job, guint step)
{
  const SqCushion *cushion = cushion_at (job, step);

  if (cushion == NULL)
    return NULL;
  return sq_outline_n_rings (cushion->outline) > 1
             ? with_outline (job, cushion, sq_outline_without_ring (cushion->outline, 1))
             : sq_job_ref (job);
}

/* The corner that step @step / @n_ways is about; NULL past the last. */
static const SqCorner *
corner_of_step (const SqJob *job, guint index, const SqCushion **cushion)
{
  for (guint i = 0; (*cushion = cushion_at (job, i)) != NULL; i++)
    for (guint r = 0; r < sq_outline_n_rings ((*cushion)->outline); r++)
      {
        guint n;
        const SqCorner *corners = sq_outline_ring ((*cushion)->outline, r, &n);
        if (index < n)
          return &corners[index];
        index -= n;
      }
  return NULL;
}

static SqJob *
without_corner (const SqJob *job, guint step)
{
  const SqCushion *cushion;
  const SqCorner *corner = corner_of_step (job, step, &cushion);

  if (corner == NULL)
    return NULL;
  return with_outline (job, cushion, sq_outline_without_corner (cushion->outline, corner->id));
}

#define N_CORNER_WAYS 8

static SqJob *
with_plainer_corner (const SqJob *job, guint step)
{
  const SqCushion *cushion;
  const SqCorner *corner = corner_of_step (job, step / N_CORNER_WAYS, &cushion);

  if (corner == NULL)
    return NULL;
  SqCorner plain = *corner;
  switch (step % N_CORNER_WAYS)
    {
    case 0:
      plain.shape = SQ_SHAPE_STRAIGHT;
      break;
    case 1:
      plain.radius_mm = 0;
      plain.given &= ~(guint32) SQ_GIVEN_RADIUS;
      break;
    case 2:
      plain.given &= ~(guint32) SQ_GIVEN_CLEARANCE;
      break;
    case 3:
      plain.kind = SQ_EDGE_FREE;
      plain.given &= ~(guint32) SQ_GIVEN_KIND;
      break;
    case 4:
      plain.given &= ~(guint32) SQ_GIVEN_SEEN;
      break;
    case 5:
      plain.front = FALSE;
      break;
    case 6:
      plain.at = sq_point (round (plain.at.x / 10) * 10, round (plain.at.y / 10) * 10);
      break;
    default:
      plain.at = sq_point (round (plain.at.x), round (plain.at.y));
      plain.bow_mm = round (plain.bow_mm);
      plain.radius_mm = round (plain.radius_mm);
    }
  if (plain.shape == corner->shape && plain.radius_mm == corner->radius_mm
      && plain.given == corner->given && plain.front == corner->front && plain.at.x == corner->at.x
      && plain.at.y == corner->at.y && plain.bow_mm == corner->bow_mm)
    return sq_job_ref (job);
  return with_outline (job, cushion, sq_outline_with_corner (cushion->outline, &plain));
}

static SqJob *
without_choice (const SqJob *job, guint step)
{
  const SqCushion *cushion = cushion_at (job, step / 32);
  guint32 key = (guint32) 1 << (step % 32);

  if (cushion == NULL)
    return NULL;
  if (!(cushion->given & key))
    return sq_job_ref (job);
  g_autoptr (SqCushion) changed = sq_cushion_dup (cushion);
  changed->given &= ~key;
  if (key == SQ_GIVEN_COUNT)
    changed->count = 1;
  return sq_job_with_cushion (job, changed);
}

static SqJob *
with_rounder_figures (const SqJob *job, guint step)
{
  const SqCushion *cushion = cushion_at (job, step);

  if (cushion == NULL)
    return NULL;
  g_autoptr (SqCushion) c = sq_cushion_dup (cushion);
  double *figures[] = { &c->thickness_mm,        &c->wrap.depth_mm,
                        &c->allowance.corner_mm, &c->allowance.perimeter_mm,
                        &c->allowance.zip_mm,    &c->allowance.join_mm,
                        &c->foam.oversize_mm,    &c->foam.batting_mm,
                        &c->zip.from_mm,         &c->zip.to_mm,
                        &c->zip.at_mm,           &c->zip.extension_mm,
                        &c->zip.tuck_mm,         &c->stripes.shift_mm };
  gboolean any = FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      any |= *figures[i] != round (*figures[i]);
      *figures[i] = round (*figures[i]);
    }
  return any ? sq_job_with_cushion (job, c) : sq_job_ref (job);
}

static gboolean
is_broken (const SqJob *job, guint32 seed, Law law)
{
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  LawCase c = { seed, job, plan };
  g_autofree char *wrong = law (&c);

  return wrong != NULL;
}

/* Takes every step of @reduce that leaves the law broken; whether any did. */
static gboolean
reduce_all (SqJob **job, guint32 seed, Law law, Reduction reduce)
{
  gboolean any = FALSE;

  for (guint step = 0;;)
    {
      SqJob *smaller = reduce (*job, step);
      if (smaller == NULL)
        return any;
      if (smaller != *job && is_broken (smaller, seed, law))
        {
          sq_job_unref (*job);
          *job = smaller;
          any = TRUE;
          continue;
        }
      sq_job_unref (smaller);
      step++;
    }
}

SqJob *
shrink_job (const SqJob *job, guint32 seed, Law law)
{
  static const Reduction reductions[] = {
    without_cushion, without_hole,   without_corner,      without_cloth,
    without_foam,    without_choice, with_plainer_corner, with_rounder_figures,
  };
  SqJob *now = sq_job_ref (job);
  gboolean any = TRUE;

  while (any)
    {
      any = FALSE;
      for (guint i = 0; i < G_N_ELEMENTS (reductions); i++)
        any |= reduce_all (&now, seed, law, reductions[i]);
    }
  return now;
}
