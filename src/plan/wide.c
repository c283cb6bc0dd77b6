/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/wide.h"

#include "base/units.h"
#include "job/divide.h"
#include "plan/way-figures.h"

/* A cushion is divided into no more than this. */
#define MOST_PARTS 8

/* A cloth that is said to be a little wider than it has to be (mm): lays are in whole micrometres. */
#define SPARE_MM 0.01

/* ---- which faces --------------------------------------------------------------------------- */

static gboolean
is_face (const SqPiece *piece)
{
  return piece->role == SQ_ROLE_FACE || piece->role == SQ_ROLE_UNDERSIDE
         || piece->role == SQ_ROLE_WRAP;
}

/* The first face of @cover that is wider than its cloth, from @from on; G_MAXUINT: none. */
static guint
next_wide (const SqCover *cover, guint from)
{
  guint found = G_MAXUINT;

  for (guint i = 0; i < cover->problems->len; i++)
    {
      const SqProblem *p = sq_cover_problem (cover, i);
      if ((p->code == SQ_PROBLEM_WIDER_THAN_CLOTH || p->code == SQ_PROBLEM_ACROSS_NO_PLACE)
          && p->place.item >= from && is_face (sq_cover_piece (cover, p->place.item)))
        found = MIN (found, p->place.item);
    }
  return found;
}

static SqCushion *
with_joins (const SqCushion *cushion, SqSeamsAcross across)
{
  SqCushion *changed = sq_cushion_dup (cushion);

  changed->seams_across = across;
  if (across == SQ_ACROSS_NONE)
    changed->given &= ~(guint32) SQ_GIVEN_SEAMS_ACROSS;
  else
    changed->given |= SQ_GIVEN_SEAMS_ACROSS;
  return changed;
}

/* ---- the ways ------------------------------------------------------------------------------ */

static void
clear_wide_way (gpointer data)
{
  SqWideWay *way = data;

  g_clear_pointer (&way->cushions, g_ptr_array_unref);
  sq_way_clear (&way->way);
}

static GPtrArray *
new_cushions (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) sq_cushion_unref);
}

static GPtrArray *
one_cushion (SqCushion *cushion)
{
  GPtrArray *cushions = new_cushions ();

  g_ptr_array_add (cushions, cushion);
  return cushions;
}

static SqStripesRun
stripes_run (const SqJob *job, const SqCushion *cushion)
{
  return cushion->given & SQ_GIVEN_STRIPES_RUN ? cushion->stripes.run : job->defaults.stripes_run;
}

/* The cushion plain, its cloth turned a quarter. */
static SqCushion *
turned (const SqJob *job, const SqCushion *cushion)
{
  SqCushion *changed = with_joins (cushion, SQ_ACROSS_NONE);

  changed->stripes.run = stripes_run (job, cushion) == SQ_STRIPES_SIDE_TO_SIDE
                             ? SQ_STRIPES_FRONT_TO_BACK
                             : SQ_STRIPES_SIDE_TO_SIDE;
  changed->given |= SQ_GIVEN_STRIPES_RUN;
  return changed;
}

/* ---- dividing ------------------------------------------------------------------------------ */

/* Marks as front the edge that runs most nearly as the seat's front does, the longest of them. */
static SqOutline *
with_front (const SqOutline *outline, SqVector front_dir)
{
  guint n, front = 0;
  const SqCorner *ring = sq_outline_ring (outline, 0, &n);
  double best = -INFINITY, longest = 0;

  for (guint i = 0; i < n; i++)
    {
      SqVector chord = sq_sub (ring[(i + 1) % n].at, ring[i].at);
      double length = sq_norm (chord), along = sq_dot (sq_unit (chord), front_dir);
      if (ring[i].kind == SQ_EDGE_NEIGHBOUR && (ring[i].given & SQ_GIVEN_KIND))
        continue;
      if (along < best - 1e-6 || (along < best + 1e-6 && length <= longest))
        continue;
      front = i;
      best = along;
      longest = length;
    }
  /* It comes first, so that corners are named from it. */
  g_autofree guint *sizes = NULL;
  g_autofree SqCorner *corners = sq_outline_dup_corners (outline, &sizes);
  for (guint i = 0; i < n; i++)
    corners[i] = ring[(front + i) % n];
  corners[0].front = TRUE;
  return sq_outline_new (corners, sizes, sq_outline_n_rings (outline));
}

/* A part of the cushion; where a zip was along one of its edges is left to the rules. */
static SqCushion *
part_of (const SqCushion *cushion, const SqOutline *outline, SqVector front_dir, SqId id)
{
  g_autoptr (SqOutline) marked = with_front (outline, front_dir);
  g_autoptr (SqCushion) plain = with_joins (cushion, SQ_ACROSS_NONE);
  SqCushion *part = sq_cushion_with_outline (plain, marked);

  part->id = id;
  part->given &= ~(guint32) (SQ_GIVEN_ZIP_EDGE | SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO
                             | SQ_GIVEN_ZIP_AT);
  return part;
}

/* @n parts as wide, from the left of @across to its right. NULL where it can't be divided so. */
static GPtrArray *
divided (const SqJob *job, const SqCushion *cushion, SqVector across, SqVector front_dir, guint n)
{
  g_autoptr (GPtrArray) parts = new_cushions ();
  g_autoptr (SqPath) path = sq_outline_path (cushion->outline, 0, NULL);
  g_autoptr (SqOutline) rest = sq_outline_ref (cushion->outline);
  SqId id = sq_job_new_cushion_id (job);
  g_autoptr (SqPath) flat = sq_path_moved (path, -atan2 (across.y, across.x), sq_point (0, 0));
  SqBox box = sq_path_box (flat);

  for (guint i = 1; i < n; i++)
    {
      double at = box.min.x + (box.max.x - box.min.x) * i / n;
      SqVector up = sq_left (across);
      g_autoptr (SqOutline) part = sq_outline_left_of (rest, sq_scale (across, at), up);
      SqOutline *more = sq_outline_left_of (rest, sq_scale (across, at), sq_scale (up, -1));
      sq_outline_unref (rest);
      rest = more;
      if (part == NULL || more == NULL)
        return NULL;
      g_ptr_array_add (parts, part_of (cushion, part, front_dir, i == 1 ? cushion->id : id++));
    }
  g_ptr_array_add (parts, part_of (cushion, rest, front_dir, id));
  return g_steal_pointer (&parts);
}

static gboolean
any_is_wide (const SqJob *job, const GPtrArray *cushions)
{
  for (guint i = 0; i < cushions->len; i++)
    {
      g_autoptr (SqCover) cover = sq_cover_new (job, cushions->pdata[i], FALSE, NULL);
      if (next_wide (cover, 0) != G_MAXUINT)
        return TRUE;
    }
  return FALSE;
}

/* As few parts as go: NULL where no number of them does. */
static GPtrArray *
divide (const SqJob *job, const SqCover *cover)
{
  const SqPiece *wide = sq_cover_piece (cover, next_wide (cover, 0));
  SqVector front = cover->finished->front_dir;
  SqVector along = { cos (wide->grain_rad), sin (wide->grain_rad) };
  /* Along the front or from front to back, whichever the grain is not. */
  gboolean sideways = fabs (sq_dot (along, sq_left (front))) > 0.5;

  if (wide->role == SQ_ROLE_UNDERSIDE)
    {
      along.x = -along.x;
      sideways = fabs (sq_dot (along, sq_left (front))) > 0.5;
    }
  for (guint n = 2; n <= MOST_PARTS; n++)
    {
      g_autoptr (GPtrArray) parts = divided (job, cover->cushion,
                                             sideways ? front : sq_left (front), front, n);
      if (parts != NULL && !any_is_wide (job, parts))
        return g_steal_pointer (&parts);
    }
  return NULL;
}

/* ---- wider cloth --------------------------------------------------------------------------- */

/* The usable width that @piece takes, its pattern where it has to fall. */
static double
needed_mm (const SqPiece *piece, const SqCloth *cloth)
{
  double width = piece->turns == SQ_TURNS_QUARTER ? fmin (piece->width_mm, piece->height_mm)
                                                  : piece->width_mm;
  g_autoptr (SqPath) flat = sq_path_moved (sq_piece_cut (piece, 0), -piece->grain_rad,
                                           sq_point (0, 0));
  SqBox box = sq_path_box (flat);

  if (!piece->phase.across || cloth == NULL)
    return width + SPARE_MM;
  SqVector along = { cos (piece->grain_rad), sin (piece->grain_rad) };
  double anchor = sq_cross (along, piece->phase.anchor), at = piece->phase.across_mm;
  double low = box.min.y - anchor, high = box.max.y - anchor, repeat = cloth->repeat_across_mm;
  /* Without a repeat the pattern is there once; where that is too near the edge no width helps. */
  if (repeat > 0)
    at += repeat * ceil ((-low - at) / repeat);
  return at + high + SPARE_MM;
}

/* The job with each cloth as wide as faces of @cover take; *@width_mm: the widest. */
static SqJob *
with_wider_cloths (const SqJob *job, const SqCover *cover, double *width_mm)
{
  SqJob *wider = sq_job_dup (job);

  *width_mm = 0;
  for (guint i = 0; (i = next_wide (cover, i)) != G_MAXUINT; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      double needed = needed_mm (piece, sq_job_cloth (job, piece->cloth));
      *width_mm = fmax (*width_mm, needed);
      if (piece->cloth == 0)
        wider->defaults.cloth_width_mm = fmax (wider->defaults.cloth_width_mm, needed);
      for (guint k = 0; k < wider->cloths->len; k++)
        {
          const SqCloth *old = wider->cloths->pdata[k];
          if (old->id != piece->cloth)
            continue;
          SqCloth *cloth = sq_cloth_dup (old);
          cloth->width_mm = cloth->given & SQ_GIVEN_CLOTH_WIDTH ? fmax (old->width_mm, needed)
                                                                : needed;
          /* What it costs is another cloth's affair. */
          cloth->given &= ~(guint32) SQ_GIVEN_CLOTH_PRICE;
          cloth->given |= SQ_GIVEN_CLOTH_WIDTH;
          wider->cloths->pdata[k] = cloth;
          sq_cloth_unref ((SqCloth *) old);
        }
    }
  return wider;
}

/* ---- all of them --------------------------------------------------------------------------- */

/* Takes @cushions. FALSE if it was stopped. */
static gboolean
add_way (SqWide *wide, const SqJob *job, SqWideKind kind, GPtrArray *cushions, double width_mm,
         const SqTask *watch)
{
  SqWideWay way = { .kind = kind, .cushions = cushions, .width_mm = width_mm };
  g_autoptr (SqJob) own = sq_way_job (job, cushions);

  way.way.as = sq_cushion_ref (cushions->pdata[0]);
  way.way.build = way.way.as->build;
  way.way.cloths = g_array_new (FALSE, FALSE, sizeof (SqWayCloth));
  gboolean finished = sq_way_reckon (&way.way, own, wide->has_lays, watch);
  g_array_append_val (wide->ways, way);
  return finished;
}

static gboolean
add_ways (SqWide *wide, const SqJob *job, const SqCover *cover, const SqTask *watch)
{
  GPtrArray *parts = divide (job, cover);
  double width;
  g_autoptr (SqJob) wider = with_wider_cloths (job, cover, &width);

  return add_way (wide, job, SQ_WIDE_TWO_JOINS,
                  one_cushion (with_joins (cover->cushion, SQ_ACROSS_TWO_JOINS)), 0, watch)
         && (parts == NULL || add_way (wide, job, SQ_WIDE_DIVIDE, parts, 0, watch))
         && add_way (wide, job, SQ_WIDE_TURN, one_cushion (turned (job, cover->cushion)), 0, watch)
         && add_way (wide, wider, SQ_WIDE_CLOTH, one_cushion (sq_cushion_ref (cover->cushion)),
                     width, watch);
}

SqWide *
sq_wide_new (const SqJob *job, const SqCushion *cushion, gboolean with_lays, const SqTask *watch)
{
  g_autoptr (SqWide) wide = g_new0 (SqWide, 1);
  gboolean joined = (cushion->given & SQ_GIVEN_SEAMS_ACROSS)
                    && cushion->seams_across == SQ_ACROSS_TWO_JOINS;
  g_autoptr (SqCushion) plain = joined ? with_joins (cushion, SQ_ACROSS_NONE)
                                       : sq_cushion_ref (cushion);
  g_autoptr (SqCover) cover = sq_cover_new (job, plain, FALSE, NULL);

  wide->ref_count = 1;
  wide->cushion = sq_cushion_ref (cushion);
  wide->has_lays = with_lays;
  wide->ways = g_array_new (FALSE, TRUE, sizeof (SqWideWay));
  g_array_set_clear_func (wide->ways, clear_wide_way);
  wide->in_use = -1;
  if (next_wide (cover, 0) == G_MAXUINT)
    return g_steal_pointer (&wide);
  wide->in_use = joined ? SQ_WIDE_TWO_JOINS : -1;
  return add_ways (wide, job, cover, watch) ? g_steal_pointer (&wide) : NULL;
}

SqWide *
sq_wide_ref (const SqWide *wide)
{
  SqWide *w = (SqWide *) wide;
  g_atomic_int_inc (&w->ref_count);
  return w;
}

void
sq_wide_unref (SqWide *wide)
{
  if (wide == NULL || !g_atomic_int_dec_and_test (&wide->ref_count))
    return;
  g_array_unref (wide->ways);
  sq_cushion_unref (wide->cushion);
  g_free (wide);
}

const SqWideWay *
sq_wide_way (const SqWide *wide, guint i)
{
  return &g_array_index (wide->ways, SqWideWay, i);
}

const char *
sq_wide_kind_name (SqWideKind kind)
{
  static const char *const names[] = { "two-joins", "divide", "turn", "wider-cloth" };
  g_return_val_if_fail (kind < G_N_ELEMENTS (names), NULL);
  return names[kind];
}

SqJob *
sq_wide_apply (const SqWideWay *way, const SqCushion *cushion, const SqJob *job)
{
  guint at = 0;

  while (at < job->cushions->len
         && ((const SqCushion *) job->cushions->pdata[at])->id != cushion->id)
    at++;
  if (at == job->cushions->len || way->kind == SQ_WIDE_CLOTH)
    return NULL;
  SqJob *changed = sq_job_dup (job);
  g_ptr_array_remove_index (changed->cushions, at);
  for (guint i = 0; i < way->cushions->len; i++)
    g_ptr_array_insert (changed->cushions, (gint) (at + i),
                        sq_cushion_ref (way->cushions->pdata[i]));
  return changed;
}
