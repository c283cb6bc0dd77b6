/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-piece.h"

#include "roll/lay-phase.h"
#include "roll/trapezoids.h"

SqLayPiece
sq_lay_piece (const SqLayItem *item, SqGridPose pose)
{
  SqGridRing *keep = sq_grid_rings_posed (item->keep, item->n_keep, pose);
  SqLayPiece piece = { sq_lay_item_box (item, pose), sq_grid_rings_box (keep, item->n_keep),
                       sq_trapezoids_new (keep, item->n_keep) };

  sq_grid_rings_free (keep, item->n_keep);
  return piece;
}

void
sq_lay_piece_clear (SqLayPiece *piece)
{
  g_clear_pointer (&piece->trapezoids, g_array_unref);
}

static gboolean
boxes_meet (const SqGridBox *a, SqGrid at_a, const SqGridBox *b, SqGrid at_b)
{
  return (gint64) a->min.x + at_a.x < (gint64) b->max.x + at_b.x
         && (gint64) b->min.x + at_b.x < (gint64) a->max.x + at_a.x
         && (gint64) a->min.y + at_a.y < (gint64) b->max.y + at_b.y
         && (gint64) b->min.y + at_b.y < (gint64) a->max.y + at_a.y;
}

static gboolean
is_on (const SqLayPiece *piece, SqGrid at, const SqGridBox *flaw)
{
  const SqGrid nowhere = { 0, 0 };
  const SqGrid corners[] = {
    flaw->min, { flaw->max.x, flaw->min.y }, flaw->max, { flaw->min.x, flaw->max.y }
  };
  const SqGridRing ring = { (SqGrid *) corners, G_N_ELEMENTS (corners) };

  if (!boxes_meet (&piece->keep_box, at, flaw, nowhere))
    return FALSE;
  g_autoptr (GArray) trapezoids = sq_trapezoids_new (&ring, 1);
  return sq_trapezoids_overlap (piece->trapezoids, at, trapezoids, nowhere);
}

SqLayFault
sq_lay_piece_fault (const SqLayPiece *piece, const SqLayItem *item, SqGridPose pose, SqGrid at,
                    const SqLayStrip *strip)
{
  if ((gint64) piece->box.min.x + at.x < 0
      || (gint64) piece->box.max.x + at.x > sq_lay_strip_end (strip)
      || (gint64) piece->box.min.y + at.y < 0 || (gint64) piece->box.max.y + at.y > strip->width)
    return SQ_LAY_OUTSIDE;

  SqLayPhase phase = sq_lay_phase (item, pose, (SqGrid){ 0, 0 }, strip);
  if (sq_lay_phase_next_y (&phase, at.y) != at.y
      || sq_lay_phase_next_x (&phase, at.y, at.x) != at.x)
    return SQ_LAY_PATTERN;
  for (guint i = 0; i < strip->n_flaws; i++)
    if (is_on (piece, at, &strip->flaws[i]))
      return SQ_LAY_FLAW;
  return SQ_LAY_RIGHT;
}

gboolean
sq_lay_pieces_overlap (const SqLayPiece *a, SqGrid at_a, const SqLayPiece *b, SqGrid at_b)
{
  return boxes_meet (&a->keep_box, at_a, &b->keep_box, at_b)
         && sq_trapezoids_overlap (a->trapezoids, at_a, b->trapezoids, at_b);
}
