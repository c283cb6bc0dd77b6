/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern-corners.h"

#include "base/units.h"

/* Sides that turn by less go on straight (rad): runs divide what is one side to the eye. */
#define STRAIGHT_RAD 1e-6

guint
sq_corner_next (const SqPatternCorners *corners, guint i)
{
  return (i + 1) % corners->points->len;
}

gboolean
sq_corner_is_broken (const SqPatternCorners *corners, guint i)
{
  return corners->patch_of[i] != corners->patch_of[sq_corner_next (corners, i)];
}

/* --- corners -------------------------------------------------------------------------------- */

/* The points at which @ring turns, mirrored if so wanted; NULL: it has arcs. */
static GArray *
turning_points (const SqPath *ring, gboolean mirrored)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (SqPoint));
  guint n = sq_path_n_segments (ring);

  for (guint i = 0; i < n; i++)
    {
      SqSegment before = sq_path_segment (ring, (i + n - 1) % n), s = sq_path_segment (ring, i);
      if (sq_segment_is_arc (&s))
        return NULL;
      double turn = sq_angle_rad (sq_segment_direction (&before, 1), sq_segment_direction (&s, 0));
      SqPoint at = sq_pattern_posed ((SqPatternPose){ mirrored, 0 }, s.from);
      if (fabs (turn) > STRAIGHT_RAD)
        g_array_append_val (points, at);
    }
  return g_steal_pointer (&points);
}

/* --- patches -------------------------------------------------------------------------------- */

static void
clear_patch (gpointer data)
{
  g_array_unref (((SqCornerPatch *) data)->corners);
}

static gboolean
legs_meet (SqBox a, SqBox b)
{
  return sq_box_meets (a, b, 2 * SQ_CORNER_LEG_MM + 2 * SQ_CORNER_BESIDE_MM);
}

/* Puts two patches whose legs meet into one. FALSE: there are none. */
static gboolean
merge_two (GArray *patches)
{
  for (guint i = 0; i < patches->len; i++)
    for (guint k = i + 1; k < patches->len; k++)
      {
        SqCornerPatch *a = &g_array_index (patches, SqCornerPatch, i);
        SqCornerPatch *b = &g_array_index (patches, SqCornerPatch, k);
        if (!legs_meet (a->window, b->window))
          continue;
        a->window = sq_box_union (a->window, b->window);
        g_array_append_vals (a->corners, b->corners->data, b->corners->len);
        g_array_remove_index (patches, k);
        return TRUE;
      }
  return FALSE;
}

static int
ascending (gconstpointer a, gconstpointer b)
{
  const guint *x = a, *y = b;

  return *x < *y ? -1 : *x > *y;
}

/* A patch has all of its corners' legs, as far as the piece goes. */
static void
grow (SqCornerPatch *patch, SqBox piece)
{
  const double leg = SQ_CORNER_LEG_MM, beside = SQ_CORNER_BESIDE_MM;
  SqBox *window = &patch->window;

  window->min.x = fmax (window->min.x - leg, piece.min.x - beside);
  window->min.y = fmax (window->min.y - leg, piece.min.y - beside);
  window->max.x = fmin (window->max.x + leg, piece.max.x + beside);
  window->max.y = fmin (window->max.y + leg, piece.max.y + beside);
  g_array_sort (patch->corners, ascending);
}

/* Has the corners of a patch in the order of travel: the ring may begin within it. */
static void
set_in_order (const SqPatternCorners *corners, GArray *own)
{
  g_autofree guint *all = g_memdup2 (own->data, own->len * sizeof (guint));
  guint n = own->len, first = 0;

  for (guint i = 0; i < n; i++)
    {
      guint before = (all[i] + corners->points->len - 1) % corners->points->len;
      if (sq_corner_is_broken (corners, before))
        first = i;
    }
  for (guint i = 0; i < n; i++)
    g_array_index (own, guint, i) = all[(first + i) % n];
}

static void
make_patches (SqPatternCorners *corners)
{
  SqBox all = sq_box_empty ();

  for (guint i = 0; i < corners->points->len; i++)
    {
      SqPoint at = sq_corner_point (corners, i);
      SqCornerPatch patch = { { at, at }, g_array_new (FALSE, FALSE, sizeof (guint)) };
      all = sq_box_with (all, at);
      g_array_append_val (patch.corners, i);
      g_array_append_val (corners->patches, patch);
    }
  while (merge_two (corners->patches))
    ;
  corners->patch_of = g_new0 (guint, corners->points->len);
  for (guint i = 0; i < corners->patches->len; i++)
    {
      SqCornerPatch *patch = sq_corner_patch (corners, i);
      grow (patch, all);
      for (guint k = 0; k < patch->corners->len; k++)
        corners->patch_of[g_array_index (patch->corners, guint, k)] = i;
    }
  for (guint i = 0; i < corners->patches->len; i++)
    set_in_order (corners, sq_corner_patch (corners, i)->corners);
}

SqPatternCorners *
sq_pattern_corners_new (const SqPiece *piece, SqPatternLines lines, gboolean mirrored)
{
  const GPtrArray *rings = sq_pattern_rings (piece, lines);
  GArray *points = rings->len == 1 ? turning_points (g_ptr_array_index (rings, 0), mirrored) : NULL;

  if (points == NULL)
    return NULL;
  SqPatternCorners *corners = g_new0 (SqPatternCorners, 1);
  corners->points = points;
  corners->patches = g_array_new (FALSE, FALSE, sizeof (SqCornerPatch));
  g_array_set_clear_func (corners->patches, clear_patch);
  make_patches (corners);
  if (corners->patches->len >= 2)
    return corners;
  sq_pattern_corners_free (corners);
  return NULL;
}

void
sq_pattern_corners_free (SqPatternCorners *corners)
{
  g_array_unref (corners->points);
  g_array_unref (corners->patches);
  g_free (corners->patch_of);
  g_free (corners);
}

/* --- diagonals ------------------------------------------------------------------------------ */

/* Two patches are held by the two sides between them and what crosses these. */
static void
add_crossed (GArray *diagonals, const SqPatternCorners *corners)
{
  gint first = -1;

  for (guint i = 0; i < corners->points->len; i++)
    {
      if (!sq_corner_is_broken (corners, i))
        continue;
      if (first < 0)
        {
          first = (gint) i;
          continue;
        }
      const SqDiagonal both[] = { { (guint) first, i },
                                  { sq_corner_next (corners, (guint) first),
                                    sq_corner_next (corners, i) } };
      g_array_append_vals (diagonals, both, G_N_ELEMENTS (both));
      return;
    }
}

/* The middle one of a patch. */
static guint
key_of (const SqPatternCorners *corners, guint patch)
{
  const GArray *own = sq_corner_patch (corners, patch)->corners;

  return g_array_index (own, guint, own->len / 2);
}

GArray *
sq_corner_diagonals (const SqPatternCorners *corners)
{
  GArray *diagonals = g_array_new (FALSE, FALSE, sizeof (SqDiagonal));
  guint n = corners->patches->len;

  if (n == 2)
    add_crossed (diagonals, corners);
  for (guint i = 0; n >= 4 && i < (n == 4 ? 2 : n); i++)
    {
      SqDiagonal diagonal = { key_of (corners, i), key_of (corners, (i + 2) % n) };
      g_array_append_val (diagonals, diagonal);
    }
  return diagonals;
}
