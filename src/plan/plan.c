/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/plan.h"

#include <string.h>

/* Every input of a cover but the cushion: if all of them are the same things, so is the cover. */
static gboolean
same_surroundings (const SqJob *a, const SqJob *b)
{
  if (a->cloths->len != b->cloths->len || a->foams->len != b->foams->len)
    return FALSE;
  for (guint i = 0; i < a->cloths->len; i++)
    if (g_ptr_array_index (a->cloths, i) != g_ptr_array_index (b->cloths, i))
      return FALSE;
  return (a->foams->len == 0
          || memcmp (a->foams->data, b->foams->data, a->foams->len * sizeof (SqFoam)) == 0)
         && memcmp (&a->defaults, &b->defaults, sizeof a->defaults) == 0;
}

/* The cover of the cushion with the same id and hand in @before, most likely at the same place. */
static const SqCover *
cover_before (const SqPlan *before, SqId id, gboolean mirrored, guint likely)
{
  for (guint i = 0; before != NULL && i < before->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (before, (likely + i) % before->covers->len);
      if (cover->cushion->id == id && cover->mirrored == mirrored)
        return cover;
    }
  return NULL;
}

static void
add_cover_of (SqPlan *plan, const SqCushion *cushion, gboolean mirrored, const SqPlan *before,
              gboolean shareable)
{
  const SqCover *old = cover_before (before, cushion->id, mirrored, plan->covers->len);

  g_ptr_array_add (plan->covers, shareable && old != NULL && old->cushion == cushion
                                     ? sq_cover_ref (old)
                                     : sq_cover_new (plan->job, cushion, mirrored, old));
}

static SqHand
hand_of (const SqCushion *cushion)
{
  return (cushion->given & SQ_GIVEN_HAND) ? cushion->hand : SQ_HAND_AS_DRAWN;
}

static void
make_covers (SqPlan *plan, const SqPlan *before)
{
  const GPtrArray *cushions = plan->job->cushions;
  gboolean shareable = before != NULL && same_surroundings (plan->job, before->job);

  for (guint i = 0; i < cushions->len; i++)
    {
      const SqCushion *cushion = g_ptr_array_index (cushions, i);
      add_cover_of (plan, cushion, hand_of (cushion) == SQ_HAND_MIRRORED, before, shareable);
    }
  for (guint i = 0; i < cushions->len; i++)
    {
      const SqCushion *cushion = g_ptr_array_index (cushions, i);
      if (hand_of (cushion) == SQ_HAND_PAIR)
        add_cover_of (plan, cushion, TRUE, before, shareable);
    }
}

/* ---- the cut list -------------------------------------------------------------------------- */

static guint
cloth_place (const SqJob *job, SqId id)
{
  for (guint i = 0; i < job->cloths->len; i++)
    if (((const SqCloth *) g_ptr_array_index (job->cloths, i))->id == id)
      return i;
  return G_MAXUINT;
}

/* As one cuts: first what is large, then what must be found on the pattern, then strips to rip. */
static guint
turn_of (const SqPiece *piece)
{
  if (piece->role == SQ_ROLE_FACE || piece->role == SQ_ROLE_UNDERSIDE)
    return 0;
  return piece->phase.across || piece->phase.along ? 1 : 2;
}

/* By cloth; then as one cuts; then cushion by cushion. */
static int
compare_entries (gconstpointer a, gconstpointer b, gpointer data)
{
  const SqCutEntry *x = a, *y = b;
  const SqPlan *plan = data;
  const SqPiece *px = sq_cover_piece (sq_plan_cover (plan, x->cushion), x->piece);
  const SqPiece *py = sq_cover_piece (sq_plan_cover (plan, y->cushion), y->piece);
  guint cx = cloth_place (plan->job, x->cloth), cy = cloth_place (plan->job, y->cloth);

  if (cx != cy)
    return cx < cy ? -1 : 1;
  if (turn_of (px) != turn_of (py))
    return turn_of (px) < turn_of (py) ? -1 : 1;
  if (px->role != py->role)
    return px->role < py->role ? -1 : 1;
  if (x->cushion != y->cushion)
    return x->cushion < y->cushion ? -1 : 1;
  return x->piece < y->piece ? -1 : x->piece > y->piece;
}

static void
add_to_cloth (SqPlan *plan, const SqCutEntry *entry, const SqPiece *piece)
{
  SqClothTotal *total = NULL;

  for (guint i = 0; i < plan->cloths->len && total == NULL; i++)
    if (g_array_index (plan->cloths, SqClothTotal, i).cloth == entry->cloth)
      total = &g_array_index (plan->cloths, SqClothTotal, i);
  if (total == NULL)
    {
      SqClothTotal fresh = { .cloth = entry->cloth };
      g_array_append_val (plan->cloths, fresh);
      total = &g_array_index (plan->cloths, SqClothTotal, plan->cloths->len - 1);
    }
  total->pieces += entry->count;
  total->area_mm2 += piece->area_mm2 * entry->count;
}

static void
make_cut_list (SqPlan *plan)
{
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      for (guint k = 0; k < cover->pieces->len; k++)
        {
          const SqPiece *piece = sq_cover_piece (cover, k);
          SqCutEntry entry = { .cushion = i,
                               .piece = k,
                               .count = piece->count * cover->cushion->count,
                               .cloth = piece->cloth };
          g_array_append_val (plan->cut_list, entry);
        }
    }
  g_array_sort_with_data (plan->cut_list, compare_entries, plan);
  for (guint i = 0; i < plan->cut_list->len; i++)
    {
      SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, i);
      entry->number = i + 1;
      add_to_cloth (plan, entry,
                    sq_cover_piece (sq_plan_cover (plan, entry->cushion), entry->piece));
    }
}

SqPlan *
sq_plan_new (const SqJob *job, const SqPlan *before)
{
  g_return_val_if_fail (job != NULL, NULL);

  SqPlan *plan = g_new0 (SqPlan, 1);
  plan->ref_count = 1;
  plan->job = sq_job_ref (job);
  plan->covers = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_cover_unref);
  plan->cut_list = g_array_new (FALSE, TRUE, sizeof (SqCutEntry));
  plan->cloths = g_array_new (FALSE, TRUE, sizeof (SqClothTotal));
  make_covers (plan, before);
  make_cut_list (plan);
  return plan;
}

SqPlan *
sq_plan_ref (const SqPlan *plan)
{
  SqPlan *p = (SqPlan *) plan;
  g_atomic_int_inc (&p->ref_count);
  return p;
}

void
sq_plan_unref (SqPlan *plan)
{
  if (plan == NULL || !g_atomic_int_dec_and_test (&plan->ref_count))
    return;
  sq_job_unref (plan->job);
  g_ptr_array_unref (plan->covers);
  g_array_unref (plan->cut_list);
  g_array_unref (plan->cloths);
  g_free (plan);
}

const SqCover *
sq_plan_cover (const SqPlan *plan, guint i)
{
  return g_ptr_array_index (plan->covers, i);
}

static void
add_cover (SqFigures *f, const SqCover *cover)
{
  guint count = cover->cushion->count;

  f->cushions += count;
  for (guint i = 0; i < cover->pieces->len; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      f->pieces += piece->count * count;
      f->cloth_mm2 += piece->area_mm2 * piece->count * count;
    }
  for (guint i = 0; i < cover->seams->len; i++)
    f->seam_mm += sq_cover_seam (cover, i)->length_a_mm * count;
  for (guint i = 0; i < cover->foam->len; i++)
    {
      const SqFoamPart *part = g_ptr_array_index (cover->foam, i);
      f->foam_parts += part->count * count;
      f->foam_mm3 += part->volume_mm3 * part->count * count;
      f->foam_g += part->weight_g * part->count * count;
    }
  f->zip_mm += cover->zip.length_mm * count;
  f->sliders += cover->zip.sliders * count;
  for (guint i = 0; i < cover->problems->len; i++)
    {
      SqSeverity severity = sq_cover_problem (cover, i)->severity;
      f->notes += severity == SQ_NOTE;
      f->warnings += severity == SQ_WARNING;
      f->faults += severity == SQ_FAULT;
    }
}

SqFigures
sq_plan_figures (const SqPlan *plan)
{
  SqFigures f = { 0 };

  for (guint i = 0; i < plan->covers->len; i++)
    add_cover (&f, sq_plan_cover (plan, i));
  return f;
}

const SqCloth *
sq_plan_cloth (const SqPlan *plan, SqId id)
{
  return sq_job_cloth (plan->job, id);
}
