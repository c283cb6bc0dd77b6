/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/safe-edit.h"

#include "base/units.h"
#include "geometry/crossing.h"
#include "job/edge.h"
#include "job/frame.h"

/* A drag is tried at so many places before it is narrowed down, so that a corner is not taken
 * through a thin part and out again. */
#define TRIES 16

/* The stop is found to this (mm). */
#define STOP_MM 1e-5
#define MOST_HALVINGS 60

/* --- good ---------------------------------------------------------------------------------- */

static gboolean
is_sound_ring (const SqOutline *outline, guint ring, const SqPath *path, SqPoint *where)
{
  guint n;
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  double sense = ring == 0 ? 1 : -1;

  *where = n > 0 ? corners[0].at : sq_point (0, 0);
  if (path == NULL || !sq_path_is_simple (path, where))
    return FALSE;
  *where = corners[0].at;
  return sense * sq_path_area_mm2 (path) > 0;
}

static gboolean
are_apart (const SqPath *a, const SqPath *b, SqPoint *where)
{
  *where = sq_path_nodes (b)[0].at;
  if (sq_paths_distance_mm (a, b) <= SQ_TIE_MM)
    {
      g_autoptr (GArray) crossings = sq_paths_crossings (a, b);
      if (crossings->len > 0)
        *where = g_array_index (crossings, SqCrossing, 0).at;
      return FALSE;
    }
  return sq_path_winding (a, *where) == 0 && sq_path_winding (b, sq_path_nodes (a)[0].at) == 0;
}

static gboolean
are_rings_apart (const GPtrArray *paths, SqPoint *where)
{
  for (guint i = 1; i < paths->len; i++)
    {
      if (!sq_ring_contains (paths->pdata[0], paths->pdata[i], SQ_TIE_MM, where))
        return FALSE;
      for (guint j = 1; j < i; j++)
        if (!are_apart (paths->pdata[j], paths->pdata[i], where))
          return FALSE;
    }
  return TRUE;
}

gboolean
sq_outline_is_good (const SqOutline *outline, SqPoint *where)
{
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  SqPoint place;

  g_return_val_if_fail (outline != NULL, FALSE);
  if (where == NULL)
    where = &place;
  *where = sq_point (0, 0);
  for (guint r = 0; r < sq_outline_n_rings (outline); r++)
    {
      SqPath *path = sq_outline_path (outline, r, NULL);
      gboolean is_sound = is_sound_ring (outline, r, path, where);
      if (path != NULL)
        g_ptr_array_add (paths, path);
      if (!is_sound)
        return FALSE;
    }
  return paths->len > 0 && are_rings_apart (paths, where);
}

/* --- on the way from one outline to another ------------------------------------------------ */

/* The corners of both, edges brought to one shape where they differ. */
typedef struct
{
  SqCorner *before, *after;
  guint *sizes;
  guint n_rings, n;
} Way;

/* The handles of an edge as it lies. An arc's cubic passes through its middle where its handles are
 * 4/3 tan (sweep / 4) radii long, which is (1 + bulge²) / 3 chords. */
static void
make_curve (SqCorner *corner, const SqCorner *next)
{
  SqSegment s = sq_edge_segment (corner, next);
  double handle_mm = sq_distance (s.from, s.to) * (1 + s.bulge * s.bulge) / 3;

  if (corner->shape == SQ_SHAPE_CURVE)
    return;
  corner->control[0] = sq_moved (s.from, sq_segment_direction (&s, 0), handle_mm);
  corner->control[1] = sq_moved (s.to, sq_segment_direction (&s, 1), -handle_mm);
  corner->shape = SQ_SHAPE_CURVE;
}

static gboolean
are_same_corners (const SqOutline *a, const SqOutline *b)
{
  guint n_rings = sq_outline_n_rings (a);

  if (n_rings != sq_outline_n_rings (b))
    return FALSE;
  for (guint r = 0; r < n_rings; r++)
    {
      guint n, m;
      const SqCorner *one = sq_outline_ring (a, r, &n), *other = sq_outline_ring (b, r, &m);
      if (n != m)
        return FALSE;
      for (guint i = 0; i < n; i++)
        if (one[i].id != other[i].id)
          return FALSE;
    }
  return TRUE;
}

/* Brings edge @i of a ring of @n to the same shape on both sides. A straight edge is a bow without
 * a rise. */
static void
match_shapes (SqCorner *before, SqCorner *after, guint n, guint i)
{
  if (before[i].shape == after[i].shape)
    return;
  if (before[i].shape == SQ_SHAPE_CURVE || after[i].shape == SQ_SHAPE_CURVE)
    {
      make_curve (&before[i], &before[(i + 1) % n]);
      make_curve (&after[i], &after[(i + 1) % n]);
    }
  else
    before[i].shape = after[i].shape = SQ_SHAPE_BOW;
}

static void
way_init (Way *way, const SqOutline *before, const SqOutline *after)
{
  way->before = sq_outline_dup_corners (before, NULL);
  way->after = sq_outline_dup_corners (after, &way->sizes);
  way->n_rings = sq_outline_n_rings (after);
  way->n = 0;
  for (guint r = 0; r < way->n_rings; way->n += way->sizes[r++])
    for (guint i = 0; i < way->sizes[r]; i++)
      match_shapes (way->before + way->n, way->after + way->n, way->sizes[r], i);
}

static void
way_clear (Way *way)
{
  g_free (way->before);
  g_free (way->after);
  g_free (way->sizes);
}

static double
mixed (double a, double b, double share)
{
  return a + (b - a) * share;
}

static SqOutline *
at_share (const Way *way, double share)
{
  g_autofree SqCorner *corners = g_memdup2 (way->after, way->n * sizeof *corners);

  for (guint i = 0; i < way->n; i++)
    {
      const SqCorner *a = &way->before[i], *b = &way->after[i];
      corners[i].at = sq_between (a->at, b->at, share);
      corners[i].radius_mm = mixed (a->radius_mm, b->radius_mm, share);
      corners[i].bow_mm = mixed (a->bow_mm, b->bow_mm, share);
      for (guint k = 0; k < 2; k++)
        corners[i].control[k] = sq_between (a->control[k], b->control[k], share);
    }
  return sq_outline_new (corners, way->sizes, way->n_rings);
}

/* How far anything goes on the whole way. */
static double
way_mm (const Way *way)
{
  double most_mm = 0;

  for (guint i = 0; i < way->n; i++)
    {
      const SqCorner *a = &way->before[i], *b = &way->after[i];
      most_mm = fmax (most_mm, sq_distance (a->at, b->at));
      most_mm = fmax (most_mm, fabs (b->bow_mm - a->bow_mm));
      for (guint k = 0; k < 2; k++)
        most_mm = fmax (most_mm, sq_distance (a->control[k], b->control[k]));
    }
  return most_mm;
}

static gboolean
is_good_at (const Way *way, double share, SqPoint *where)
{
  g_autoptr (SqOutline) outline = at_share (way, share);
  return sq_outline_is_good (outline, where);
}

/* The share of the way where it stops being good, as the last that is. */
static double
find_stop (const Way *way, SqPoint *crossing)
{
  double good = 0, crossed = 1, length_mm = way_mm (way);
  SqPoint where;

  for (guint i = 1; i < TRIES; i++)
    if (!is_good_at (way, (double) i / TRIES, &where))
      {
        crossed = (double) i / TRIES;
        *crossing = where;
        break;
      }
    else
      good = (double) i / TRIES;
  for (guint i = 0; i < MOST_HALVINGS && (crossed - good) * length_mm > STOP_MM; i++)
    {
      double share = (good + crossed) / 2;
      if (is_good_at (way, share, &where))
        good = share;
      else
        {
          crossed = share;
          *crossing = where;
        }
    }
  return good;
}

static SqOutline *
stopped (const SqOutline *before, const SqOutline *after, double *share, SqPoint *crossing)
{
  SqOutline *result;
  Way way;

  way_init (&way, before, after);
  *share = find_stop (&way, crossing);
  result = *share > 0 ? at_share (&way, *share) : sq_outline_ref (before);
  way_clear (&way);
  return result;
}

SqOutline *
sq_outline_last_good (const SqOutline *before, const SqOutline *after, double *share,
                      SqPoint *crossing)
{
  SqOutline *result = NULL;
  double way = 1;
  SqPoint where;

  g_return_val_if_fail (before != NULL && after != NULL, NULL);
  if (sq_outline_is_good (after, &where) || !sq_outline_is_good (before, NULL))
    result = sq_outline_ref (after);
  else if (are_same_corners (before, after))
    result = stopped (before, after, &way, &where);
  else
    {
      result = sq_outline_ref (before);
      way = 0;
    }
  if (share != NULL)
    *share = way;
  if (crossing != NULL && way < 1)
    *crossing = where;
  return result;
}

/* --- edges and holes ----------------------------------------------------------------------- */

SqOutline *
sq_outline_with_edge_as_curve (const SqOutline *outline, SqId edge)
{
  guint ring, index, n;
  const SqCorner *old = sq_outline_corner (outline, edge, &ring, &index);

  if (old == NULL)
    return NULL;
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  SqCorner corner = *old;
  make_curve (&corner, &corners[(index + 1) % n]);
  return sq_outline_with_corner (outline, &corner);
}

SqOutline *
sq_outline_with_hole (const SqOutline *outline, const SqCorner *corners, guint n, SqId *first_id)
{
  guint n_rings = sq_outline_n_rings (outline), total = 0;
  SqId id = sq_outline_new_corner_id (outline);

  g_return_val_if_fail (corners != NULL || n == 0, NULL);
  if (n_rings == 0)
    return NULL;
  g_autofree guint *old_sizes = NULL;
  g_autofree SqCorner *old = sq_outline_dup_corners (outline, &old_sizes);
  g_autofree guint *sizes = g_new (guint, n_rings + 1);
  for (guint r = 0; r < n_rings; r++)
    total += sizes[r] = old_sizes[r];
  sizes[n_rings] = n;
  g_autofree SqCorner *all = g_new (SqCorner, total + n);
  for (guint i = 0; i < total; i++)
    all[i] = old[i];
  if (first_id != NULL)
    *first_id = id;
  for (guint i = 0; i < n; i++)
    {
      all[total + i] = corners[i];
      all[total + i].id = id;
      do
        id++;
      while (id == 0 || sq_outline_corner (outline, id, NULL, NULL) != NULL);
    }
  g_autoptr (SqOutline) result = sq_outline_new (all, sizes, n_rings + 1);
  return sq_outline_turned_right (result);
}

/* The front's direction, or x where there is no front. */
static SqVector
along_front (const SqOutline *outline)
{
  SqFront front;

  return sq_outline_front (outline, &front) ? front.along : sq_point (1, 0);
}

SqOutline *
sq_outline_with_rectangular_hole (const SqOutline *outline, SqPoint centre, double width_mm,
                                  double depth_mm, SqId *first_id)
{
  static const SqVector signs[] = { { -1, -1 }, { -1, 1 }, { 1, 1 }, { 1, -1 } };
  SqVector along = along_front (outline);
  SqCorner corners[G_N_ELEMENTS (signs)] = { 0 };

  for (guint i = 0; i < G_N_ELEMENTS (signs); i++)
    corners[i].at = sq_moved (sq_moved (centre, along, signs[i].x * width_mm / 2), sq_left (along),
                              signs[i].y * depth_mm / 2);
  return sq_outline_with_hole (outline, corners, G_N_ELEMENTS (corners), first_id);
}

SqOutline *
sq_outline_with_round_hole (const SqOutline *outline, SqPoint centre, double diameter_mm,
                            SqId *first_id)
{
  SqVector along = along_front (outline);
  SqCorner corners[] = {
    { .at = sq_moved (centre, along, -diameter_mm / 2), .shape = SQ_SHAPE_BOW },
    { .at = sq_moved (centre, along, diameter_mm / 2), .shape = SQ_SHAPE_BOW },
  };

  /* Outward is away from the cloth, into the hole. */
  corners[0].bow_mm = corners[1].bow_mm = -diameter_mm / 2;
  return sq_outline_with_hole (outline, corners, G_N_ELEMENTS (corners), first_id);
}
