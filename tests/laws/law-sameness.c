/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/frame.h"
#include "laws/laws.h"

#include "exchange/job-file.h"
#include "laws/compare.h"

/* What turning a seat may change: nothing that a blade could follow; in a seat of more than this
 * round so much more. */
#define TURNED_MM 1e-5
#define TURNED_ROUND_MM 20000.0

static const SqCushion *
cushion_at (const SqJob *job, guint i)
{
  return g_ptr_array_index (job->cushions, i);
}

static char *
plans_differ (const SqPlan *a, const SqPlan *b, const Motion *motion, double within_mm)
{
  if (a->covers->len != b->covers->len)
    return g_strdup_printf ("%u covers, %u", a->covers->len, b->covers->len);
  for (guint i = 0; i < a->covers->len; i++)
    {
      g_autofree char *wrong = covers_differ (sq_plan_cover (a, i), sq_plan_cover (b, i), motion,
                                              within_mm);
      if (wrong != NULL)
        return g_strdup_printf ("cushion %u: %s", i, wrong);
    }
  if (a->cut_list->len != b->cut_list->len || a->cloths->len != b->cloths->len)
    return g_strdup ("another cut list");
  for (guint i = 0; i < a->cut_list->len; i++)
    {
      const SqCutEntry *ea = &g_array_index (a->cut_list, SqCutEntry, i),
                       *eb = &g_array_index (b->cut_list, SqCutEntry, i);
      if (ea->number != eb->number || ea->cushion != eb->cushion || ea->piece != eb->piece
          || ea->count != eb->count || ea->cloth != eb->cloth)
        return g_strdup_printf ("cut list %u: piece %u, piece %u", i, ea->piece, eb->piece);
    }
  return NULL;
}

/* ---- turning ------------------------------------------------------------------------------- */

/* The corner that starts the front edge of @cover's seat; 0: none. A bolster's finished outline is a
 * plan of its own. */
static SqId
front_of (const SqCover *cover)
{
  SqFront front;
  guint n;

  if (cover->build != SQ_BUILD_BOLSTER)
    return cover->finished != NULL ? cover->finished->rings[0].edges[0].id : 0;
  return sq_outline_front (cover->cushion->outline, &front)
             ? sq_outline_ring (cover->cushion->outline, 0, &n)[front.edge].id
             : 0;
}

/* The job with the front edges that its plan found marked. */
static SqJob *
with_fronts_marked (const LawCase *c)
{
  SqJob *job = sq_job_dup (c->job);

  for (guint i = 0; i < c->plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (c->plan, i);
      SqId id = front_of (cover);
      if (id == 0)
        continue;
      SqCorner corner = *sq_outline_corner (cover->cushion->outline, id, NULL, NULL);
      corner.front = TRUE;
      g_autoptr (SqOutline) outline = sq_outline_with_corner (cover->cushion->outline, &corner);
      g_autoptr (SqCushion) marked = sq_cushion_with_outline (cover->cushion, outline);
      SqJob *next = sq_job_with_cushion (job, marked);
      sq_job_unref (job);
      job = next;
    }
  return job;
}

static SqJob *
moved (const SqJob *job, const Motion *motion)
{
  SqJob *result = sq_job_ref (job);

  for (guint i = 0; i < job->cushions->len; i++)
    {
      g_autoptr (SqOutline) outline = sq_outline_moved (cushion_at (job, i)->outline,
                                                        motion->turn_rad, motion->by);
      g_autoptr (SqCushion) cushion = sq_cushion_with_outline (cushion_at (job, i), outline);
      SqJob *next = sq_job_with_cushion (result, cushion);
      sq_job_unref (result);
      result = next;
    }
  return result;
}

/* A clearance can drag a sharp corner far out. */
static double
turned_mm (const SqPlan *plan)
{
  double most = TURNED_ROUND_MM;

  for (guint i = 0; i < plan->covers->len; i++)
    if (sq_plan_cover (plan, i)->finished != NULL)
      most = fmax (most, sq_path_length_mm (sq_plan_cover (plan, i)->finished->rings[0].path));
  return TURNED_MM * most / TURNED_ROUND_MM;
}

char *
law_turning (const LawCase *c)
{
  g_autoptr (SqJob) marked = with_fronts_marked (c);
  g_autoptr (SqPlan) plan = sq_plan_new (marked, NULL);
  char *wrong = plans_differ (c->plan, plan, NULL, 0);
  if (wrong != NULL)
    {
      g_autofree char *what = wrong;
      return g_strdup_printf ("marking the front that was found anyway: %s", what);
    }
  GRand *chance = g_rand_new_with_seed (c->seed);
  Motion motion = { g_rand_double_range (chance, 0, 2 * G_PI),
                    { g_rand_double_range (chance, -2000, 2000),
                      g_rand_double_range (chance, -2000, 2000) } };
  g_rand_free (chance);
  g_autoptr (SqJob) turned = moved (marked, &motion);
  g_autoptr (SqPlan) after = sq_plan_new (turned, NULL);
  return plans_differ (plan, after, &motion, turned_mm (plan));
}

/* ---- the plan before ----------------------------------------------------------------------- */

/* The job with one cushion changed as chance has it. */
static SqJob *
edited (const SqJob *job, guint32 seed)
{
  GRand *chance = g_rand_new_with_seed (seed);
  const SqCushion *cushion = cushion_at (
      job, (guint) g_rand_int_range (chance, 0, (gint32) job->cushions->len));
  g_autoptr (SqCushion) changed = NULL;
  gboolean is_drawn = sq_outline_n_rings (cushion->outline) > 0;
  guint n = 1;
  const SqCorner *corners = is_drawn ? sq_outline_ring (cushion->outline, 0, &n) : NULL;
  gint32 i = g_rand_int_range (chance, 0, (gint32) n);
  gint32 way = g_rand_int_range (chance, is_drawn ? 0 : 1, 4);

  if (way == 0)
    {
      SqVector by = { g_rand_double_range (chance, -5, 5), g_rand_double_range (chance, -5, 5) };
      g_autoptr (SqOutline) outline = sq_outline_with_corner_moved (cushion->outline, corners[i].id,
                                                                    by);
      changed = sq_cushion_with_outline (cushion, outline);
    }
  else
    changed = sq_cushion_dup (cushion);
  if (way == 1)
    {
      changed->zip.tuck_mm += 1;
      changed->given |= SQ_GIVEN_ZIP_TUCK;
    }
  if (way == 2)
    {
      changed->thickness_mm += 1;
      changed->given |= SQ_GIVEN_THICKNESS;
    }
  g_rand_free (chance); /* way 3: another cushion that is the same */
  return sq_job_with_cushion (job, changed);
}

/* Every piece that is equal to one of the cover before is that one. */
static char *
check_sharing (const SqPlan *plan, const SqPlan *before)
{
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i), *old = sq_plan_cover (before, i);
      if (cover->cushion == old->cushion && cover != old)
        return g_strdup_printf ("cushion %u is the same, its cover is not", i);
      for (guint p = 0; p < cover->pieces->len; p++)
        {
          const SqPiece *piece = sq_cover_piece (cover, p);
          gboolean is_shared = FALSE, has_equal = FALSE;
          for (guint k = 0; k < old->pieces->len; k++)
            {
              g_autofree char *wrong = pieces_differ (piece, sq_cover_piece (old, k));
              has_equal |= wrong == NULL;
              is_shared |= piece == sq_cover_piece (old, k);
            }
          if (is_shared != has_equal)
            return g_strdup_printf ("cushion %u, piece %u: %s", i, p,
                                    has_equal ? "equal, but not shared" : "shared, but not equal");
        }
    }
  return NULL;
}

char *
law_before (const LawCase *c)
{
  g_autoptr (SqPlan) again = sq_plan_new (c->job, c->plan);
  for (guint i = 0; i < again->covers->len; i++)
    if (sq_plan_cover (again, i) != sq_plan_cover (c->plan, i))
      return g_strdup_printf ("cushion %u: the same job does not share its cover", i);

  g_autoptr (SqJob) job = edited (c->job, c->seed);
  g_autoptr (SqPlan) alone = sq_plan_new (job, NULL);
  g_autoptr (SqPlan) after = sq_plan_new (job, c->plan);
  char *wrong = plans_differ (alone, after, NULL, 0);
  return wrong != NULL ? wrong : check_sharing (after, c->plan);
}

/* ---- saving -------------------------------------------------------------------------------- */

char *
law_saving (const LawCase *c)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = sq_job_write (c->job);
  g_autoptr (SqJob) job = sq_job_read (text, -1, &c->job->defaults, &error);
  if (job == NULL)
    return g_strdup_printf ("what was written can't be read: %s", error->message);
  g_autofree char *again = sq_job_write (job);
  if (!g_str_equal (text, again))
    return g_strdup_printf ("written again it is another text:\n%s\n%s", text, again);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  return plans_differ (c->plan, plan, NULL, 0);
}
