/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/symmetry.h"

#include "base/units.h"
#include "job/frame.h"

SqAxis
sq_axis_through (SqPoint from, SqPoint to)
{
  SqVector along = sq_unit (sq_sub (to, from));

  return (SqAxis){ from, sq_norm (along) > 0 ? along : sq_point (0, 1) };
}

gboolean
sq_outline_front_axis (const SqOutline *outline, SqAxis *axis)
{
  SqFront front;
  guint n;

  if (!sq_outline_front (outline, &front))
    return FALSE;
  const SqCorner *ring = sq_outline_ring (outline, 0, &n);
  *axis = (SqAxis){ sq_between (front.at, ring[(front.edge + 1) % n].at, 0.5),
                    sq_left (front.along) };
  return TRUE;
}

/* --- twins --------------------------------------------------------------------------------- */

/* A ring some corner of which is farther from its image than this share of its extent is no image
 * of another. */
#define FARTHEST_SHARE 0.125

#define NO_TWIN G_MAXUINT

/* All corners of an outline, ring after ring, and who stands opposite whom. Handles are kept as
 * seen from their own end of the edge. */
typedef struct
{
  SqCorner *corners;
  guint *sizes;
  guint n_rings, n;
  guint *next; /* on the ring */
  guint *twin; /* or NO_TWIN */
} Seat;

static void
seat_init (Seat *seat, const SqOutline *outline)
{
  *seat = (Seat){ .n_rings = sq_outline_n_rings (outline) };
  seat->corners = sq_outline_dup_corners (outline, &seat->sizes);
  for (guint r = 0; r < seat->n_rings; r++)
    seat->n += seat->sizes[r];
  seat->next = g_new (guint, seat->n);
  seat->twin = g_new (guint, seat->n);
  for (guint r = 0, first = 0; r < seat->n_rings; first += seat->sizes[r++])
    for (guint i = 0; i < seat->sizes[r]; i++)
      {
        seat->next[first + i] = first + (i + 1) % seat->sizes[r];
        seat->twin[first + i] = NO_TWIN;
      }
  for (guint i = 0; i < seat->n; i++)
    {
      SqCorner *corner = &seat->corners[i];
      corner->control[0] = sq_sub (corner->control[0], corner->at);
      corner->control[1] = sq_sub (corner->control[1], seat->corners[seat->next[i]].at);
    }
}

static void
seat_clear (Seat *seat)
{
  g_free (seat->corners);
  g_free (seat->sizes);
  g_free (seat->next);
  g_free (seat->twin);
}

static SqOutline *
seat_outline (const Seat *seat)
{
  g_autofree SqCorner *corners = g_memdup2 (seat->corners, seat->n * sizeof *corners);

  for (guint i = 0; i < seat->n; i++)
    {
      corners[i].control[0] = sq_add (corners[i].control[0], corners[i].at);
      corners[i].control[1] = sq_add (corners[i].control[1], corners[seat->next[i]].at);
    }
  return sq_outline_new (corners, seat->sizes, seat->n_rings);
}

static double
extent_mm (const SqCorner *ring, guint n)
{
  SqBox box = sq_box_empty ();

  for (guint i = 0; i < n; i++)
    box = sq_box_with (box, ring[i].at);
  return n > 0 ? sq_distance (box.min, box.max) : 0;
}

/* With image i of @a at corner @shift − i of @b: the sum of the squares of what they are apart, or
 * infinite once that is beyond @most; the greatest distance in *@farthest_mm. */
static double
apart_mm2 (const SqAxis *axis, const SqCorner *a, const SqCorner *b, guint n, guint shift,
           double most, double *farthest_mm)
{
  double sum = 0;

  *farthest_mm = 0;
  for (guint i = 0; i < n; i++)
    {
      SqPoint image = sq_axis_mirrored (axis, a[i].at);
      double mm = sq_distance (image, b[(shift + n - i) % n].at);
      sum += mm * mm;
      *farthest_mm = fmax (*farthest_mm, mm);
      if (!(sum < most))
        return INFINITY;
    }
  return sum;
}

typedef struct
{
  double apart_mm2;
  guint other, shift; /* where the other ring starts */
} Match;

/* Tries the ring at @b against the one at @a, both of @n corners. */
static void
try_match (const Seat *seat, const SqAxis *axis, guint a, guint b, guint n, Match *best)
{
  double most_mm = FARTHEST_SHARE * extent_mm (seat->corners + a, n), farthest_mm;

  for (guint shift = 0; shift < n; shift++)
    {
      double mm2 = apart_mm2 (axis, seat->corners + a, seat->corners + b, n, shift, best->apart_mm2,
                              &farthest_mm);
      if (mm2 < best->apart_mm2 && farthest_mm <= most_mm)
        *best = (Match){ mm2, b, shift };
    }
}

static void
find_twins (Seat *seat, const SqAxis *axis)
{
  for (guint r = 0, a = 0; r < seat->n_rings; a += seat->sizes[r++])
    {
      guint n = seat->sizes[r];
      Match best = { .apart_mm2 = INFINITY };
      if (n == 0 || seat->twin[a] != NO_TWIN)
        continue;
      for (guint s = r, b = a; s < (r == 0 ? 1 : seat->n_rings); b += seat->sizes[s++])
        if (seat->sizes[s] == n && seat->twin[b] == NO_TWIN)
          try_match (seat, axis, a, b, n, &best);
      for (guint i = 0; i < n && isfinite (best.apart_mm2); i++)
        {
          guint twin = best.other + (best.shift + n - i) % n;
          seat->twin[a + i] = twin;
          seat->twin[twin] = a + i;
        }
    }
}

/* The image of the edge that starts at corner @i starts where its end's twin is. */
static guint
edge_twin (const Seat *seat, guint i)
{
  return seat->twin[seat->next[i]];
}

GArray *
sq_outline_twins (const SqOutline *outline, const SqAxis *axis)
{
  GArray *result = g_array_new (FALSE, FALSE, sizeof (SqTwins));
  Seat seat;

  seat_init (&seat, outline);
  find_twins (&seat, axis);
  for (guint i = 0; i < seat.n; i++)
    {
      guint twin = seat.twin[i], edge = edge_twin (&seat, i);
      SqTwins twins = { seat.corners[i].id, twin != NO_TWIN ? seat.corners[twin].id : 0,
                        edge != NO_TWIN ? seat.corners[edge].id : 0 };
      g_array_append_val (result, twins);
    }
  seat_clear (&seat);
  return result;
}

/* A handle or another way to go, mirrored. */
static SqVector
mirrored_vector (const SqAxis *axis, SqVector v)
{
  return sq_moved (v, sq_left (axis->along), -2 * sq_cross (axis->along, v));
}

static gboolean
are_edges_alike (const SqAxis *axis, const SqCorner *a, const SqCorner *b, double within_mm)
{
  if ((a->shape == SQ_SHAPE_CURVE) != (b->shape == SQ_SHAPE_CURVE))
    return FALSE;
  if (fabs (a->bow_mm - b->bow_mm) > within_mm)
    return FALSE;
  return a->shape != SQ_SHAPE_CURVE
         || (sq_distance (mirrored_vector (axis, a->control[0]), b->control[1]) <= within_mm
             && sq_distance (mirrored_vector (axis, a->control[1]), b->control[0]) <= within_mm);
}

/* Whether corner @i, which has a twin, and its edge are images of theirs. */
static gboolean
is_image (const Seat *seat, guint i, const SqAxis *axis, double within_mm)
{
  const SqCorner *corner = &seat->corners[i], *twin = &seat->corners[seat->twin[i]];

  return sq_distance (sq_axis_mirrored (axis, corner->at), twin->at) <= within_mm
         && fabs (corner->radius_mm - twin->radius_mm) <= within_mm
         && are_edges_alike (axis, corner, &seat->corners[edge_twin (seat, i)], within_mm);
}

gboolean
sq_outline_is_symmetric (const SqOutline *outline, const SqAxis *axis, double within_mm)
{
  gboolean is_alike = TRUE;
  Seat seat;

  seat_init (&seat, outline);
  find_twins (&seat, axis);
  for (guint i = 0; i < seat.n && is_alike; i++)
    is_alike = seat.twin[i] != NO_TWIN && is_image (&seat, i, axis, within_mm);
  seat_clear (&seat);
  return is_alike;
}

/* --- editing both sides at once ------------------------------------------------------------ */

/* A handle is seen from its corner, which takes a few last bits; less is no change (mm). */
#define CHANGED_MM 1e-9

#define KIND_KEYS (SQ_GIVEN_CLEARANCE | SQ_GIVEN_KIND | SQ_GIVEN_SEEN | SQ_GIVEN_EDGE_BUILD)

static gboolean
is_bent (const SqCorner *before, const SqCorner *after)
{
  return before->shape != after->shape || before->bow_mm != after->bow_mm
         || (after->shape == SQ_SHAPE_CURVE
             && (sq_distance (before->control[0], after->control[0]) > CHANGED_MM
                 || sq_distance (before->control[1], after->control[1]) > CHANGED_MM));
}

static gboolean
is_other_kind (const SqCorner *before, const SqCorner *after)
{
  return before->kind != after->kind || before->clearance_mm != after->clearance_mm
         || before->seen != after->seen || before->build != after->build
         || ((before->given ^ after->given) & KIND_KEYS) != 0;
}

static gboolean
is_rounded_otherwise (const SqCorner *before, const SqCorner *after)
{
  return before->radius_mm != after->radius_mm
         || ((before->given ^ after->given) & SQ_GIVEN_RADIUS) != 0;
}

static void
copy_given (SqCorner *to, const SqCorner *from, guint32 keys)
{
  to->given = (to->given & ~keys) | (from->given & keys);
}

static void
copy_radius (SqCorner *to, const SqCorner *from)
{
  to->radius_mm = from->radius_mm;
  copy_given (to, from, SQ_GIVEN_RADIUS);
}

static void
copy_kind (SqCorner *to, const SqCorner *from)
{
  to->kind = from->kind;
  to->clearance_mm = from->clearance_mm;
  to->seen = from->seen;
  to->build = from->build;
  copy_given (to, from, KIND_KEYS);
}

static void
copy_bend (SqCorner *to, const SqCorner *from, const SqAxis *axis)
{
  SqVector first = mirrored_vector (axis, from->control[1]);
  SqVector second = mirrored_vector (axis, from->control[0]);

  to->shape = from->shape;
  to->bow_mm = from->bow_mm;
  to->control[0] = first;
  to->control[1] = second;
}

/* Corner @i and its twin @j (not before it). */
static void
edit_corners (const SqCorner *before, SqCorner *now, guint i, guint j, const SqAxis *axis)
{
  gboolean i_moved = sq_distance (before[i].at, now[i].at) > 0;
  gboolean j_moved = sq_distance (before[j].at, now[j].at) > 0;

  if (i == j)
    {
      if (i_moved)
        now[i].at = sq_axis_foot (axis, now[i].at);
      return;
    }
  if (i_moved && j_moved)
    now[i].at = sq_between (now[i].at, sq_axis_mirrored (axis, now[j].at), 0.5);
  if (i_moved)
    now[j].at = sq_axis_mirrored (axis, now[i].at);
  else if (j_moved)
    now[i].at = sq_axis_mirrored (axis, now[j].at);
  if (is_rounded_otherwise (&before[i], &now[i]))
    copy_radius (&now[j], &now[i]);
  else if (is_rounded_otherwise (&before[j], &now[j]))
    copy_radius (&now[i], &now[j]);
}

/* The edge from corner @e across the axis to its twin: one handle is the image of the other. */
static void
edit_edge_across (const SqCorner *before, SqCorner *now, guint e, const SqAxis *axis)
{
  if (now[e].shape != SQ_SHAPE_CURVE || !is_bent (&before[e], &now[e]))
    return;
  if (before[e].shape == SQ_SHAPE_CURVE
      && sq_distance (before[e].control[0], now[e].control[0]) <= CHANGED_MM)
    now[e].control[0] = mirrored_vector (axis, now[e].control[1]);
  else
    now[e].control[1] = mirrored_vector (axis, now[e].control[0]);
}

static void
edit_edges (const SqCorner *before, SqCorner *now, guint e, guint f, const SqAxis *axis,
            gboolean kinds)
{
  if (e == f)
    {
      edit_edge_across (before, now, e, axis);
      return;
    }
  if (is_bent (&before[e], &now[e]))
    copy_bend (&now[f], &now[e], axis);
  else if (is_bent (&before[f], &now[f]))
    copy_bend (&now[e], &now[f], axis);
  if (kinds && is_other_kind (&before[e], &now[e]))
    copy_kind (&now[f], &now[e]);
  else if (kinds && is_other_kind (&before[f], &now[f]))
    copy_kind (&now[e], &now[f]);
}

static gboolean
are_same_corners (const Seat *a, const Seat *b)
{
  if (a->n_rings != b->n_rings || a->n != b->n)
    return FALSE;
  for (guint r = 0; r < a->n_rings; r++)
    if (a->sizes[r] != b->sizes[r])
      return FALSE;
  for (guint i = 0; i < a->n; i++)
    if (a->corners[i].id != b->corners[i].id)
      return FALSE;
  return TRUE;
}

SqOutline *
sq_outline_symmetric_edit (const SqOutline *before, const SqOutline *after, const SqAxis *axis,
                           gboolean kinds)
{
  SqOutline *result;
  Seat old, now;

  seat_init (&old, before);
  seat_init (&now, after);
  if (are_same_corners (&old, &now))
    {
      find_twins (&old, axis);
      for (guint i = 0; i < old.n; i++)
        {
          guint twin = old.twin[i], edge = edge_twin (&old, i);
          if (twin != NO_TWIN && i <= twin)
            edit_corners (old.corners, now.corners, i, twin, axis);
          if (edge != NO_TWIN && i <= edge)
            edit_edges (old.corners, now.corners, i, edge, axis, kinds);
        }
      result = seat_outline (&now);
    }
  else
    result = sq_outline_ref (after);
  seat_clear (&old);
  seat_clear (&now);
  return result;
}
