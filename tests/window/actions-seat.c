/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/actions.h"

#include "job/edge.h"
#include "job/safe-edit.h"
#include "job/sides.h"
#include "job/symmetry.h"
#include "window/edit-place.h"
#include "window/edit-shape.h"
#include "window/edit-stripes.h"
#include "window/edits.h"
#include "window/figures.h"

/* --- by hand ----------------------------------------------------------------------------------- */

/* A corner or edge moved through a few places, as a hand does; put back now and then. */
void
act_drag (Maker *maker)
{
  g_autoptr (SqJob) base = sq_job_ref (sq_document_get_job (maker->document));
  const SqCushion *cushion = any_cushion (maker);
  const SqCushion *before = sq_job_cushion (base, cushion->id);
  SqId corner = any_corner (maker, cushion)->id;
  gboolean is_edge = happens (maker, 0.4);
  for (guint i = 1 + one_of (maker, 5); i > 0; i--)
    {
      SqVector by = { between (maker, -120, 120), between (maker, -120, 120) };
      g_autoptr (SqOutline) moved = sq_edit_outline_moved (maker->document, before->outline, corner,
                                                           is_edge, by);
      g_autoptr (SqOutline) good = sq_outline_last_good (before->outline, moved, NULL, NULL);
      g_autoptr (SqCushion) held = sq_cushion_with_outline (before, good);
      g_autoptr (SqJob) job = sq_job_with_cushion (base, held);
      sq_document_try (maker->document, job);
    }
  if (happens (maker, 0.8))
    sq_document_keep (maker->document, "Move");
  else
    sq_document_drop (maker->document);
}

/* By arrow keys: a row of steps that are one. */
void
act_nudge (Maker *maker)
{
  const SqCushion *cushion = any_cushion (maker);
  SqId corner = any_corner (maker, cushion)->id, id = cushion->id;
  gboolean is_edge = happens (maker, 0.4);
  g_autofree char *key = g_strdup_printf ("nudge %u %u %d", id, corner, is_edge);
  for (guint i = 1 + one_of (maker, 3); i > 0; i--)
    {
      const SqJob *now = sq_document_get_job (maker->document);
      double step = sq_figures_step_mm (now);
      SqVector by = { step * (one_of (maker, 3) - 1.0), step * (one_of (maker, 3) - 1.0) };
      sq_edit_move (maker->document, id, corner, is_edge, by, "Move", key);
    }
}

/* --- by figures -------------------------------------------------------------------------------- */

void
act_extents (Maker *maker)
{
  sq_edit_extents (maker->document, any_cushion (maker)->id, between (maker, 250, 1500),
                   between (maker, 250, 1200));
}

void
act_place_length (Maker *maker)
{
  static const double ranges[SQ_N_PLACE_LENGTHS][2] = {
    [SQ_PLACE_SIDE] = { 60, 1200 },
    [SQ_PLACE_RISE] = { -60, 90 },
    [SQ_PLACE_CLEARANCE] = { -6, 12 },
    [SQ_PLACE_RADIUS] = { 0, 60 },
  };
  const SqCushion *cushion = any_cushion (maker);
  SqPlaceLength length = (SqPlaceLength) one_of (maker, SQ_N_PLACE_LENGTHS);
  double mm = between (maker, ranges[length][0], ranges[length][1]);
  if (happens (maker, 0.05))
    mm *= 20; /* more than can be */
  sq_edit_place_length (maker->document, cushion->id, any_corner (maker, cushion)->id, length,
                        happens (maker, 0.7) ? &mm : NULL);
}

void
act_angle (Maker *maker)
{
  const SqCushion *cushion = any_cushion (maker);
  SqId corner = any_corner (maker, cushion)->id;
  SqStays stays = happens (maker, 0.5) ? SQ_STAYS_START : SQ_STAYS_END;
  double angle = between (maker, 40, 200) * G_PI / 180;
  SqOutline *outline = sq_outline_with_angle (cushion->outline, corner, angle, stays, NULL);
  push_outline (maker, cushion, outline, "Angle");
}

void
act_edge_kind (Maker *maker)
{
  const SqCushion *cushion = any_cushion (maker);
  guint kind = one_of (maker, SQ_N_EDGE_KINDS);
  sq_edit_edge_kind (maker->document, cushion->id, any_corner (maker, cushion)->id,
                     happens (maker, 0.7) ? &kind : NULL);
}

/* --- other corners ----------------------------------------------------------------------------- */

static SqPoint
point_on (Maker *maker, const SqOutline *outline, SqId edge)
{
  guint ring, i, n;
  const SqCorner *corners;
  sq_outline_corner (outline, edge, &ring, &i);
  corners = sq_outline_ring (outline, ring, &n);
  return sq_edge_point (&corners[i], &corners[(i + 1) % n], between (maker, 0.2, 0.8));
}

void
act_add_corner (Maker *maker)
{
  const SqCushion *cushion = any_cushion (maker);
  SqId edge = any_corner (maker, cushion)->id;
  if (n_corners (cushion->outline) < MOST_CORNERS)
    sq_edit_add_corner (maker->document, cushion->id, edge,
                        point_on (maker, cushion->outline, edge));
}

void
act_remove_corner (Maker *maker)
{
  const SqCushion *cushion = any_cushion (maker);
  sq_edit_remove_corner (maker->document, cushion->id, any_corner (maker, cushion)->id);
}

/* An edge becomes a free curve, and a handle of it is moved. */
void
act_curve (Maker *maker)
{
  const SqCushion *cushion = any_cushion (maker);
  SqId edge = any_corner (maker, cushion)->id;
  g_autoptr (SqOutline) curve = sq_outline_with_edge_as_curve (cushion->outline, edge);
  SqCorner corner = *sq_outline_corner (curve, edge, NULL, NULL);
  guint handle = one_of (maker, 2);
  corner.control[handle] = sq_add (corner.control[handle],
                                   sq_point (between (maker, -40, 40), between (maker, -40, 40)));
  push_outline (maker, cushion, sq_outline_with_corner (curve, &corner), "Curve");
}

/* An edge straight, an arc or a curve, or the front. */
void
act_edge_shape (Maker *maker)
{
  const SqCushion *cushion = any_cushion (maker);
  SqId edge = any_corner (maker, cushion)->id;
  if (happens (maker, 0.8))
    sq_edit_edge_shape (maker->document, cushion->id, edge, (SqEdgeShape) one_of (maker, 3));
  else if (sq_outline_n_rings (cushion->outline) == 1)
    sq_edit_front (maker->document, cushion->id, edge);
}

/* The middle of the outer ring's corners. */
static SqPoint
middle_of (const SqOutline *outline)
{
  guint n;
  const SqCorner *corners = sq_outline_ring (outline, 0, &n);
  SqPoint middle = { 0, 0 };
  for (guint i = 0; i < n; i++)
    middle = sq_moved (middle, corners[i].at, 1.0 / n);
  return middle;
}

/* A hole is cut, or closed again. */
void
act_hole (Maker *maker)
{
  const SqCushion *cushion = any_cushion (maker);
  SqPoint at = middle_of (cushion->outline);
  double size = between (maker, 20, 120);
  SqOutline *outline;
  if (sq_outline_n_rings (cushion->outline) > 1)
    outline = sq_outline_without_ring (cushion->outline, 1);
  else if (happens (maker, 0.5))
    outline = sq_outline_with_round_hole (cushion->outline, at, size, NULL);
  else
    outline = sq_outline_with_rectangular_hole (cushion->outline, at, size, size / 2, NULL);
  push_outline (maker, cushion, outline, "Hole");
}

/* A seat made alike on both sides, or something done to it on both. */
void
act_symmetry (Maker *maker)
{
  const SqCushion *cushion = any_cushion (maker);
  SqId corner = any_corner (maker, cushion)->id;
  SqVector by = { between (maker, -40, 40), between (maker, -40, 40) };
  SqAxis axis;
  SqOutline *outline;
  if (!sq_outline_front_axis (cushion->outline, &axis))
    return;
  if (happens (maker, 0.3))
    outline = sq_outline_made_symmetric (cushion->outline, &axis, happens (maker, 0.5));
  else
    {
      g_autoptr (SqOutline) moved = sq_outline_with_corner_moved (cushion->outline, corner, by);
      outline = sq_outline_symmetric_edit (cushion->outline, moved, &axis, TRUE);
    }
  push_outline (maker, cushion, outline, "Symmetry");
}

void
act_turn (Maker *maker)
{
  const SqCushion *cushion = any_cushion (maker);
  SqOutline *outline = sq_outline_moved (cushion->outline, between (maker, 0, 2 * G_PI),
                                         sq_point (between (maker, -100, 100), 0));
  push_outline (maker, cushion, outline, "Turn");
}
