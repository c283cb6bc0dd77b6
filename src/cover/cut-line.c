/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/cut-line.h"

#include "geometry/offset.h"

static SqTrimWhy
why_of (SqTrimKind kind)
{
  switch (kind)
    {
    case SQ_TRIM_MITRE:
      return SQ_WHY_MITRE;
    case SQ_TRIM_STEP:
      return SQ_WHY_STEP;
    case SQ_TRIM_ROUND:
    case SQ_TRIM_BEVEL:
      break;
    }
  return SQ_WHY_BEND;
}

static void
list_trims (SqPiece *piece, guint ring, const SqPath *cut, const SqOffsetReport *report)
{
  const SqPath *sew = sq_piece_sew (piece, ring);

  for (guint i = 0; i < report->trims->len; i++)
    {
      const SqOffsetTrim *t = &g_array_index (report->trims, SqOffsetTrim, i);
      SqSegment s = sq_path_segment (cut, t->first);
      SqTrim trim = {
        .run = t->tag_before, .ring = ring, .from = t->first, .to = t->last, .why = why_of (t->kind)
      };
      trim.distance_mm = sq_path_nearest (sew, sq_segment_point (&s, 0.5)).distance_mm;
      g_array_append_val (piece->trims, trim);
    }
}

gboolean
sq_piece_make_cut (SqPiece *piece)
{
  g_autofree double *by = g_new (double, piece->runs->len);
  SqJoinRule rule = sq_join_rule_mitre ();
  gboolean whole = TRUE;

  for (guint i = 0; i < piece->runs->len; i++)
    by[i] = sq_piece_run (piece, i)->allowance_mm;
  for (guint ring = 0; ring < piece->sew->len; ring++)
    {
      const SqPath *sew = sq_piece_sew (piece, ring);
      SqOffsetReport report = { 0 };
      SqPath *cut = sq_path_offset (sew, by, piece->runs->len, &rule, &report);
      if (cut != NULL)
        list_trims (piece, ring, cut, &report);
      whole = whole && cut != NULL && report.end != SQ_OFFSET_SPLIT;
      g_ptr_array_add (piece->cut, cut != NULL ? cut : sq_path_ref (sew));
      sq_offset_report_clear (&report);
    }
  return whole;
}
