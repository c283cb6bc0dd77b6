/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/drawn-ring.h"

#include "base/units.h"
#include "geometry/crossing.h"
#include "job/frame.h"

void
sq_drawn_ring_init (SqDrawnRing *ring)
{
  ring->corners = g_array_new (FALSE, FALSE, sizeof (SqPoint));
}

void
sq_drawn_ring_clear (SqDrawnRing *ring)
{
  g_array_unref (ring->corners);
  ring->corners = NULL;
}

SqOutline *
sq_drawn_ring_outline (const SqDrawnRing *ring)
{
  guint n = ring->corners->len;
  g_autofree SqCorner *corners = g_new0 (SqCorner, n);
  for (guint i = 0; i < n; i++)
    {
      corners[i].id = i + 1;
      corners[i].at = g_array_index (ring->corners, SqPoint, i);
    }
  return sq_outline_new (corners, &n, n > 0 ? 1 : 0);
}

/* The corners and, if given, one more at @next, as a path. New. */
static SqPath *
path_of (const SqDrawnRing *ring, const SqPoint *next, gboolean is_closed)
{
  g_autoptr (GArray) nodes = g_array_new (FALSE, TRUE, sizeof (SqNode));
  for (guint i = 0; i < ring->corners->len; i++)
    g_array_append_vals (nodes, &(SqNode){ .at = g_array_index (ring->corners, SqPoint, i) }, 1);
  if (next != NULL)
    g_array_append_vals (nodes, &(SqNode){ .at = *next }, 1);
  return sq_path_new ((const SqNode *) nodes->data, nodes->len, is_closed);
}

gboolean
sq_drawn_ring_takes (const SqDrawnRing *ring, SqPoint at, SqPoint *where)
{
  for (guint i = 0; i < ring->corners->len; i++)
    if (sq_distance (at, g_array_index (ring->corners, SqPoint, i)) < SQ_TIE_MM)
      {
        *where = at;
        return FALSE;
      }
  if (ring->corners->len == 0)
    return TRUE;
  g_autoptr (SqPath) path = path_of (ring, &at, FALSE);
  return sq_path_is_simple (path, where);
}

gboolean
sq_drawn_ring_closes (const SqDrawnRing *ring, SqPoint *where)
{
  if (ring->corners->len < 3)
    return FALSE;
  g_autoptr (SqPath) path = path_of (ring, NULL, TRUE);
  return sq_path_is_simple (path, where);
}

/* @outline with the ids 1, 2, 3 … from its front on, which is marked and starts at (0, 0). */
static SqOutline *
from_its_front (const SqOutline *outline)
{
  guint n;
  const SqCorner *drawn = sq_outline_ring (outline, 0, &n);
  g_autofree SqCorner *corners = g_new0 (SqCorner, n);
  SqFront front;
  sq_outline_front (outline, &front);
  for (guint i = 0; i < n; i++)
    {
      corners[i].id = i + 1;
      corners[i].at = sq_sub (drawn[(front.edge + i) % n].at, front.at);
    }
  corners[0].front = TRUE;
  return sq_outline_new (corners, &n, 1);
}

SqOutline *
sq_drawn_ring_seat (const SqDrawnRing *ring)
{
  SqPoint where;
  if (!sq_drawn_ring_closes (ring, &where))
    return NULL;
  g_autoptr (SqOutline) drawn = sq_drawn_ring_outline (ring);
  g_autoptr (SqOutline) turned = sq_outline_turned_right (drawn);
  return from_its_front (turned);
}
