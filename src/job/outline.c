/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/outline.h"

#include <string.h>

#include "base/units.h"
#include "geometry/crossing.h"
#include "geometry/fit.h"

struct _SqOutline
{
  gint ref_count;
  guint n_rings;
  guint *starts; /* where each ring begins in corners, and where the last one ends */
  SqCorner *corners;
};

static GRefString *
hold (GRefString *text)
{
  return text != NULL ? g_ref_string_acquire (text) : NULL;
}

/* @corner as it reads back from a file: no minus zero, and nothing its shape does not use. */
static void
settle (SqCorner *corner)
{
  corner->at = sq_point (corner->at.x + 0.0, corner->at.y + 0.0);
  corner->bow_mm = corner->shape == SQ_SHAPE_BOW ? corner->bow_mm + 0.0 : 0;
  for (guint k = 0; k < 2; k++)
    corner->control[k] = corner->shape == SQ_SHAPE_CURVE
                             ? sq_point (corner->control[k].x + 0.0, corner->control[k].y + 0.0)
                             : sq_point (0, 0);
}

/* An outline of @corners, whose texts it takes references to. */
static SqOutline *
make (const SqCorner *corners, const guint *starts, guint n_rings)
{
  SqOutline *outline = g_new (SqOutline, 1);

  outline->ref_count = 1;
  outline->n_rings = n_rings;
  outline->starts = g_memdup2 (starts, (n_rings + 1) * sizeof *starts);
  outline->corners = g_memdup2 (corners, starts[n_rings] * sizeof *corners);
  for (guint i = 0; i < starts[n_rings]; i++)
    {
      SqCorner *corner = &outline->corners[i];

      settle (corner);
      hold (corner->note);
      hold (corner->corner_note);
      hold (corner->unknown);
    }
  return outline;
}

SqOutline *
sq_outline_new (const SqCorner *corners, const guint *ring_sizes, guint n_rings)
{
  g_autofree guint *starts = g_new (guint, n_rings + 1);

  starts[0] = 0;
  for (guint i = 0; i < n_rings; i++)
    starts[i + 1] = starts[i] + ring_sizes[i];
  g_return_val_if_fail (starts[n_rings] == 0 || corners != NULL, NULL);
  return make (corners, starts, n_rings);
}

SqOutline *
sq_outline_ref (const SqOutline *outline)
{
  SqOutline *shared = (SqOutline *) outline;

  g_return_val_if_fail (outline != NULL, NULL);
  g_atomic_int_inc (&shared->ref_count);
  return shared;
}

void
sq_outline_unref (SqOutline *outline)
{
  g_return_if_fail (outline != NULL);
  if (!g_atomic_int_dec_and_test (&outline->ref_count))
    return;
  for (guint i = 0; i < outline->starts[outline->n_rings]; i++)
    {
      g_clear_pointer (&outline->corners[i].note, g_ref_string_release);
      g_clear_pointer (&outline->corners[i].corner_note, g_ref_string_release);
      g_clear_pointer (&outline->corners[i].unknown, g_ref_string_release);
    }
  g_free (outline->starts);
  g_free (outline->corners);
  g_free (outline);
}

guint
sq_outline_n_rings (const SqOutline *outline)
{
  return outline->n_rings;
}

const SqCorner *
sq_outline_ring (const SqOutline *outline, guint ring, guint *n_corners)
{
  if (ring >= outline->n_rings)
    {
      *n_corners = 0;
      return NULL;
    }
  *n_corners = outline->starts[ring + 1] - outline->starts[ring];
  return outline->corners + outline->starts[ring];
}

const SqCorner *
sq_outline_corner (const SqOutline *outline, SqId id, guint *ring, guint *index)
{
  for (guint r = 0; r < outline->n_rings; r++)
    for (guint i = outline->starts[r]; i < outline->starts[r + 1]; i++)
      if (outline->corners[i].id == id)
        {
          if (ring != NULL)
            *ring = r;
          if (index != NULL)
            *index = i - outline->starts[r];
          return &outline->corners[i];
        }
  return NULL;
}

SqId
sq_outline_new_corner_id (const SqOutline *outline)
{
  SqId greatest = 0;

  for (guint i = 0; i < outline->starts[outline->n_rings]; i++)
    greatest = MAX (greatest, outline->corners[i].id);
  if (greatest < G_MAXUINT32)
    return greatest + 1;
  for (SqId id = 1;; id++)
    if (sq_outline_corner (outline, id, NULL, NULL) == NULL)
      return id;
}

/* The corners to change before an outline is made of them again; texts are borrowed. */
static SqCorner *
borrowed_corners (const SqOutline *outline, guint room_for_more)
{
  guint n = outline->starts[outline->n_rings];
  SqCorner *corners = g_new0 (SqCorner, n + room_for_more);

  if (n > 0)
    memcpy (corners, outline->corners, n * sizeof *corners);
  return corners;
}

SqCorner *
sq_outline_dup_corners (const SqOutline *outline, guint **ring_sizes)
{
  if (ring_sizes != NULL)
    {
      *ring_sizes = g_new (guint, outline->n_rings);
      for (guint r = 0; r < outline->n_rings; r++)
        (*ring_sizes)[r] = outline->starts[r + 1] - outline->starts[r];
    }
  return borrowed_corners (outline, 0);
}

SqOutline *
sq_outline_with_corner (const SqOutline *outline, const SqCorner *corner)
{
  const SqCorner *old = sq_outline_corner (outline, corner->id, NULL, NULL);
  g_autofree SqCorner *corners = borrowed_corners (outline, 0);

  g_return_val_if_fail (old != NULL, NULL);
  corners[old - outline->corners] = *corner;
  return make (corners, outline->starts, outline->n_rings);
}

SqOutline *
sq_outline_with_corner_after (const SqOutline *outline, SqId after, const SqCorner *corner)
{
  guint ring = 0, n = outline->starts[outline->n_rings], place;
  const SqCorner *before = sq_outline_corner (outline, after, &ring, NULL);
  g_autofree SqCorner *corners = borrowed_corners (outline, 1);
  g_autofree guint *starts = g_memdup2 (outline->starts, (outline->n_rings + 1) * sizeof *starts);

  g_return_val_if_fail (before != NULL, NULL);
  place = (guint) (before - outline->corners) + 1;
  memmove (corners + place + 1, corners + place, (n - place) * sizeof *corners);
  corners[place] = *corner;
  for (guint r = ring + 1; r <= outline->n_rings; r++)
    starts[r]++;
  return make (corners, starts, outline->n_rings);
}

/* The corner before (by = n − 1) or after (by = 1) @index on its ring. */
static SqCorner *
neighbour (SqCorner *ring, guint n, guint index, guint by)
{
  return &ring[(index + by) % n];
}

/* Moves corner @index and the curve handles that hang on it. */
static void
move_corner (SqCorner *ring, guint n, guint index, SqVector by)
{
  SqCorner *before = neighbour (ring, n, index, n - 1);

  ring[index].at = sq_add (ring[index].at, by);
  ring[index].control[0] = sq_add (ring[index].control[0], by);
  before->control[1] = sq_add (before->control[1], by);
}

SqOutline *
sq_outline_without_corner (const SqOutline *outline, SqId id)
{
  guint ring = 0, index = 0, n, total = outline->starts[outline->n_rings], place;
  const SqCorner *gone = sq_outline_corner (outline, id, &ring, &index);
  g_autofree SqCorner *corners = borrowed_corners (outline, 0);
  g_autofree guint *starts = g_memdup2 (outline->starts, (outline->n_rings + 1) * sizeof *starts);
  SqCorner *first, *before, *after;

  g_return_val_if_fail (gone != NULL, NULL);
  place = (guint) (gone - outline->corners);
  first = corners + starts[ring];
  n = starts[ring + 1] - starts[ring];
  before = neighbour (first, n, index, n - 1);
  after = neighbour (first, n, index, 1);
  before->control[1] = sq_add (before->control[1], sq_sub (after->at, gone->at));
  before->front |= gone->front;
  memmove (corners + place, corners + place + 1, (total - place - 1) * sizeof *corners);
  for (guint r = ring + 1; r <= outline->n_rings; r++)
    starts[r]--;
  return make (corners, starts, outline->n_rings);
}

SqOutline *
sq_outline_without_ring (const SqOutline *outline, guint ring)
{
  guint from, to, total = outline->starts[outline->n_rings];
  g_autofree SqCorner *corners = borrowed_corners (outline, 0);
  g_autofree guint *starts = g_memdup2 (outline->starts, (outline->n_rings + 1) * sizeof *starts);

  g_return_val_if_fail (ring < outline->n_rings, NULL);
  from = starts[ring];
  to = starts[ring + 1];
  memmove (corners + from, corners + to, (total - to) * sizeof *corners);
  for (guint r = ring + 1; r < outline->n_rings; r++)
    starts[r] = starts[r + 1] - (to - from);
  return make (corners, starts, outline->n_rings - 1);
}

SqOutline *
sq_outline_with_corner_moved (const SqOutline *outline, SqId id, SqVector by)
{
  guint ring = 0, index = 0;
  const SqCorner *corner = sq_outline_corner (outline, id, &ring, &index);
  g_autofree SqCorner *corners = borrowed_corners (outline, 0);

  g_return_val_if_fail (corner != NULL, NULL);
  move_corner (corners + outline->starts[ring], outline->starts[ring + 1] - outline->starts[ring],
               index, by);
  return make (corners, outline->starts, outline->n_rings);
}

SqOutline *
sq_outline_with_edge_moved (const SqOutline *outline, SqId id, SqVector by)
{
  guint ring = 0, index = 0, n;
  const SqCorner *corner = sq_outline_corner (outline, id, &ring, &index);
  g_autofree SqCorner *corners = borrowed_corners (outline, 0);

  g_return_val_if_fail (corner != NULL, NULL);
  n = outline->starts[ring + 1] - outline->starts[ring];
  move_corner (corners + outline->starts[ring], n, index, by);
  if (n > 1)
    move_corner (corners + outline->starts[ring], n, (index + 1) % n, by);
  return make (corners, outline->starts, outline->n_rings);
}

SqOutline *
sq_outline_moved (const SqOutline *outline, double turn_rad, SqVector by)
{
  g_autofree SqCorner *corners = borrowed_corners (outline, 0);

  for (guint i = 0; i < outline->starts[outline->n_rings]; i++)
    {
      SqPoint *points[] = { &corners[i].at, &corners[i].control[0], &corners[i].control[1] };

      for (guint k = 0; k < G_N_ELEMENTS (points); k++)
        *points[k] = sq_add (turn_rad != 0 ? sq_turned (*points[k], turn_rad) : *points[k], by);
    }
  return make (corners, outline->starts, outline->n_rings);
}

/* @corner with the edge of @edge travelled the other way. */
static SqCorner
with_edge_reversed (const SqCorner *corner, const SqCorner *edge)
{
  SqCorner result = *edge;

  result.id = corner->id;
  result.at = corner->at;
  result.radius_mm = corner->radius_mm;
  result.corner_note = corner->corner_note;
  result.given = (corner->given & SQ_GIVEN_RADIUS) | (edge->given & ~(guint32) SQ_GIVEN_RADIUS);
  result.control[0] = edge->control[1];
  result.control[1] = edge->control[0];
  return result;
}

/* The one reversal of a ring; it still begins at the same corner. What a newer program said of a
 * corner goes with the edge, as all keys but radius, its place and its note do. */
static void
reverse_ring (SqCorner *ring, guint n)
{
  g_autofree SqCorner *old = g_memdup2 (ring, n * sizeof *ring);

  for (guint i = 0; i < n; i++)
    ring[i] = with_edge_reversed (&old[(n - i) % n], &old[n - 1 - i]);
}

SqOutline *
sq_outline_mirrored (const SqOutline *outline)
{
  g_autofree SqCorner *corners = borrowed_corners (outline, 0);

  for (guint i = 0; i < outline->starts[outline->n_rings]; i++)
    {
      corners[i].at.x = -corners[i].at.x;
      corners[i].control[0].x = -corners[i].control[0].x;
      corners[i].control[1].x = -corners[i].control[1].x;
    }
  for (guint r = 0; r < outline->n_rings; r++)
    reverse_ring (corners + outline->starts[r], outline->starts[r + 1] - outline->starts[r]);
  return make (corners, outline->starts, outline->n_rings);
}

SqSegment
sq_edge_segment (const SqCorner *corner, const SqCorner *next)
{
  double chord_mm = sq_distance (corner->at, next->at);
  double bulge = corner->shape == SQ_SHAPE_BOW && chord_mm > SQ_COINCIDE_MM
                     ? 2 * corner->bow_mm / chord_mm
                     : 0;

  return (SqSegment){ corner->at, next->at, bulge };
}

/* What a cubic adds to the signed area of a ring it is a side of: Green's theorem, in closed
 * form. */
static double
cubic_area_mm2 (SqPoint a, SqPoint b, SqPoint c, SqPoint d)
{
  return (6 * sq_cross (a, b) + 3 * sq_cross (a, c) + sq_cross (a, d) + 3 * sq_cross (b, c)
          + 3 * sq_cross (b, d) + 6 * sq_cross (c, d))
         / 20;
}

/* Signed area of a ring with its bows taken straight, and what the bows add. Bows count apart
 * because they bulge outward whichever way a file's ring runs. */
static void
ring_area_mm2 (const SqCorner *ring, guint n, double *straight, double *bows)
{
  *straight = *bows = 0;
  for (guint i = 0; i < n; i++)
    {
      const SqCorner *corner = &ring[i], *next = &ring[(i + 1) % n];
      SqPoint from = sq_sub (corner->at, ring->at), to = sq_sub (next->at, ring->at);

      if (corner->shape == SQ_SHAPE_CURVE)
        *straight += cubic_area_mm2 (from, sq_sub (corner->control[0], ring->at),
                                     sq_sub (corner->control[1], ring->at), to);
      else
        {
          SqSegment arc = { from, to, sq_edge_segment (corner, next).bulge };

          *straight += sq_cross (from, to) / 2;
          *bows += sq_segment_area_mm2 (&arc) - sq_cross (from, to) / 2;
        }
    }
}

/* A node for each edge; FALSE at a curve that can't be fitted, with *@bad_edge. */
static SqPath *
ring_path (const SqCorner *ring, guint n, guint *bad_edge)
{
  g_autoptr (GArray) nodes = g_array_sized_new (FALSE, FALSE, sizeof (SqNode), n);

  for (guint i = 0; i < n; i++)
    {
      const SqCorner *corner = &ring[i], *next = &ring[(i + 1) % n];
      const SqPoint control[4] = { corner->at, corner->control[0], corner->control[1], next->at };
      SqNode node = { corner->at, sq_edge_segment (corner, next).bulge, i };

      if (corner->shape != SQ_SHAPE_CURVE)
        g_array_append_val (nodes, node);
      else if (!sq_fit_cubic (control, SQ_FIT_MM, i, nodes))
        {
          *bad_edge = i;
          return NULL;
        }
    }
  return sq_path_new ((const SqNode *) nodes->data, nodes->len, TRUE);
}

SqPath *
sq_outline_path (const SqOutline *outline, guint ring, guint *bad_edge)
{
  guint n, bad = 0;
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  SqPath *path = n >= 2 ? ring_path (corners, n, &bad) : NULL;

  if (bad_edge != NULL)
    *bad_edge = bad;
  return path;
}

static gboolean
ring_is_simple (const SqCorner *ring, guint n)
{
  guint bad_edge;
  g_autoptr (SqPath) path = ring_path (ring, n, &bad_edge);

  return path != NULL && sq_path_is_simple (path, NULL);
}

/* Whether the ring needs to be, and was, reversed to run in @sense (1 counter-clockwise, −1
 * clockwise).
 *
 * Bows are outward positive, so a ring and its reverse are different shapes, and both may run the
 * right way: a disc with a mouth cut out to its middle is, reversed, a wedge with a round cap. The
 * ring as it stands is then believed if it is simple; else it was written the other way round. A
 * ring is only reversed if it would not be reversed again. */
static gboolean
turn_ring (SqCorner *ring, guint n, double sense)
{
  g_autofree SqCorner *reversed = NULL;
  double straight, bows, turned_straight, turned_bows;

  ring_area_mm2 (ring, n, &straight, &bows);
  if (sense * (straight + bows) > 0 && sense * straight >= 0)
    return FALSE;
  reversed = g_memdup2 (ring, n * sizeof *ring);
  reverse_ring (reversed, n);
  ring_area_mm2 (reversed, n, &turned_straight, &turned_bows);
  if (!(sense * (turned_straight + turned_bows) > 0 && sense * turned_straight >= 0))
    return FALSE;
  if (sense * (straight + bows) > 0 && ring_is_simple (ring, n))
    return FALSE;
  memcpy (ring, reversed, n * sizeof *ring);
  return TRUE;
}

SqOutline *
sq_outline_turned_right (const SqOutline *outline)
{
  g_autofree SqCorner *corners = borrowed_corners (outline, 0);
  gboolean any = FALSE;

  for (guint r = 0; r < outline->n_rings; r++)
    {
      guint n = outline->starts[r + 1] - outline->starts[r];

      if (n >= 2 && turn_ring (corners + outline->starts[r], n, r == 0 ? 1 : -1))
        any = TRUE;
    }
  return any ? make (corners, outline->starts, outline->n_rings) : sq_outline_ref (outline);
}
