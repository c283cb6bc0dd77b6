/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/ticks.h"

#include "base/units.h"
#include "geometry/crossing.h"

/* How far out from the sew line the cut line is there; NAN: it does not lie that way. */
static double
way_out_mm (const SqPiece *piece, SqPoint at, SqVector out)
{
  double nearest_mm = NAN;

  for (guint ring = 0; ring < piece->cut->len; ring++)
    {
      g_autoptr (GArray) chords = sq_ring_chords (sq_piece_cut (piece, ring), at, out);
      for (guint i = 0; i < chords->len; i++)
        {
          double mm = g_array_index (chords, double, i);
          if (mm > -SQ_COINCIDE_MM && !(mm >= nearest_mm))
            nearest_mm = mm;
        }
    }
  return nearest_mm;
}

guint
sq_mark_ticks (const SqPiece *piece, const SqMark *mark, SqSegment *ticks)
{
  SqVector out = sq_turned (sq_point (1, 0), mark->angle_rad);
  guint count = mark->kind == SQ_MARK_CLIP ? 1 : CLAMP (mark->count, 1, SQ_MOST_TICKS), n = 0;

  if ((mark->kind != SQ_MARK_NOTCH && mark->kind != SQ_MARK_CLIP) || mark->depth_mm <= 0)
    return 0;
  for (guint i = 0; i < count; i++)
    {
      SqPoint foot = sq_moved (mark->at, sq_left (out),
                               (i - (count - 1) / 2.0) * SQ_TICKS_APART_MM);
      double to_cut_mm = way_out_mm (piece, foot, out);
      if (!isfinite (to_cut_mm))
        continue;
      ticks[n++] = (SqSegment){ sq_moved (foot, out, to_cut_mm),
                                sq_moved (foot, out, to_cut_mm - mark->depth_mm), 0 };
    }
  return n;
}
