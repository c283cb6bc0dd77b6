/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hand-made.h"

#include "geometry/offset.h"

static void
clear_mark (gpointer data)
{
  g_clear_pointer (&((SqMark *) data)->line, sq_path_unref);
}

SqPiece *
hand_piece (SqPieceRole role, SqPath *sew, double allowance_mm, double grain_rad, double across_mm)
{
  SqPiece *piece = g_new0 (SqPiece, 1);
  SqJoinRule mitre = sq_join_rule_mitre ();
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));
  g_array_append_vals (nodes, sq_path_nodes (sew), sq_path_n_nodes (sew));
  for (guint i = 0; i < nodes->len; i++)
    g_array_index (nodes, SqNode, i).tag = 0;
  sq_path_unref (sew);
  sew = sq_path_new ((const SqNode *) nodes->data, nodes->len, TRUE);

  SqRun run = { .role = SQ_RUN_PERIMETER, .allowance_mm = allowance_mm };
  piece->ref_count = 1;
  piece->role = role;
  piece->count = 1;
  piece->n_ordinal = 1;
  piece->sew = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  piece->cut = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  g_ptr_array_add (piece->cut, sq_path_offset_evenly (sew, allowance_mm, &mitre, NULL));
  g_ptr_array_add (piece->sew, sew);
  piece->runs = g_array_new (FALSE, FALSE, sizeof (SqRun));
  g_array_append_val (piece->runs, run);
  piece->marks = g_array_new (FALSE, FALSE, sizeof (SqMark));
  g_array_set_clear_func (piece->marks, clear_mark);
  piece->patches = g_array_new (FALSE, FALSE, sizeof (SqPatch));
  piece->trims = g_array_new (FALSE, FALSE, sizeof (SqTrim));
  piece->corner_notches = g_array_new (FALSE, FALSE, sizeof (SqCornerNotch));
  piece->skirts = g_array_new (FALSE, FALSE, sizeof (SqSkirt));
  piece->grain_rad = grain_rad;
  piece->phase.across = TRUE;
  piece->phase.across_mm = across_mm;
  return piece;
}

SqCloth *
hand_striped_cloth (double at_mm, double width_mm, double repeat_mm)
{
  SqCloth *cloth = sq_cloth_new (1);
  cloth->width_mm = 1400;
  cloth->repeat_across_mm = repeat_mm;
  cloth->stripes = g_new0 (SqStripe, 1);
  cloth->n_stripes = 1;
  cloth->stripes[0] = (SqStripe){ .at_mm = at_mm, .width_mm = width_mm, .colour = 0x2d5f8b };
  cloth->colour = 0xf2ead8;
  cloth->given = SQ_GIVEN_CLOTH_COLOUR;
  return cloth;
}

SqCushion *
hand_cushion (const SqPoint *points, guint n)
{
  g_autofree SqCorner *corners = g_new0 (SqCorner, n);
  for (guint i = 0; i < n; i++)
    {
      corners[i].id = i + 1;
      corners[i].at = points[i];
    }
  corners[0].front = TRUE;
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &n, 1);
  return sq_cushion_new (1, outline);
}

SqCover *
hand_cover (SqCushion *cushion)
{
  SqCover *cover = g_new0 (SqCover, 1);
  cover->ref_count = 1;
  cover->cushion = cushion;
  cover->pieces = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_piece_unref);
  cover->seams = g_array_new (FALSE, FALSE, sizeof (SqSeam));
  cover->problems = g_array_new (FALSE, FALSE, sizeof (SqProblem));
  cover->foam = g_ptr_array_new ();
  return cover;
}
