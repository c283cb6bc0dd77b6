/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern-lines.h"

#include "cover/ticks.h"

/* What an outline may differ by from its mirror image, and still be it (mm): below what shears do. */
#define OWN_MIRROR_MM 0.1

SqVector
sq_pattern_posed (SqPatternPose pose, SqVector v)
{
  if (pose.mirrored)
    v.x = -v.x;
  for (guint i = 0; i < pose.quarters; i++)
    v = sq_left (v);
  return v;
}

SqBox
sq_pattern_box_turned (SqBox box, guint quarters)
{
  SqPatternPose pose = { FALSE, quarters };

  return sq_box_with (sq_box_with (sq_box_empty (), sq_pattern_posed (pose, box.min)),
                      sq_pattern_posed (pose, box.max));
}

SqPath *
sq_pattern_path_posed (SqPatternPose pose, const SqPath *path)
{
  guint n = sq_path_n_nodes (path);
  g_autofree SqNode *nodes = g_memdup2 (sq_path_nodes (path), n * sizeof (SqNode));

  for (guint i = 0; i < n; i++)
    {
      nodes[i].at = sq_pattern_posed (pose, nodes[i].at);
      if (pose.mirrored)
        nodes[i].bulge = -nodes[i].bulge;
    }
  return sq_path_new (nodes, n, sq_path_is_ring (path));
}

const GPtrArray *
sq_pattern_rings (const SqPiece *piece, SqPatternLines lines)
{
  return lines == SQ_PATTERN_SEW ? piece->sew : piece->cut;
}

/* --- lines ---------------------------------------------------------------------------------- */

typedef struct
{
  const SqPiece *piece;
  SqPatternLines which;
  SqPatternPose pose;
  GArray *lines; /* of SqPatternLine */
} Drawing;

static void
add_path (Drawing *d, const SqPath *path, SqPen pen)
{
  SqPatternLine line = { sq_pattern_path_posed (d->pose, path), pen, sq_box_empty () };

  line.box = sq_path_box (line.path);
  g_array_append_val (d->lines, line);
}

/* The sew line run by run; a run that is folded is no seam. */
static void
add_runs (Drawing *d)
{
  SqPen seam = d->which == SQ_PATTERN_SEW ? SQ_PEN_INK : SQ_PEN_SEW;

  for (guint i = 0; i < d->piece->runs->len; i++)
    {
      g_autoptr (SqPath) path = sq_piece_run_path (d->piece, i);
      add_path (d, path, sq_piece_run (d->piece, i)->role == SQ_RUN_FOLD ? SQ_PEN_FOLD : seam);
    }
}

static void
add_marked (Drawing *d, SqMarkKind kind, SqPen pen)
{
  for (guint i = 0; i < d->piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (d->piece->marks, SqMark, i);
      if (mark->kind == kind && mark->line != NULL)
        add_path (d, mark->line, pen);
    }
}

/* Where there is no cut line, a notch begins at the sew line, as deep; a clip, which ends there, must
 * not seem to go beyond. */
static SqSegment
tick_at_sew (const SqMark *mark, SqSegment tick)
{
  SqVector in = sq_unit (sq_sub (tick.to, tick.from));
  SqPoint foot = sq_moved (tick.from, in, sq_dot (sq_sub (mark->at, tick.from), in));

  if (mark->kind == SQ_MARK_CLIP)
    return tick;
  return (SqSegment){ foot, sq_moved (foot, in, mark->depth_mm), 0 };
}

static void
add_ticks (Drawing *d)
{
  for (guint i = 0; i < d->piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (d->piece->marks, SqMark, i);
      SqSegment ticks[SQ_MOST_TICKS];
      guint n = sq_mark_ticks (d->piece, mark, ticks);
      for (guint k = 0; k < n; k++)
        {
          SqSegment tick = d->which == SQ_PATTERN_SEW ? tick_at_sew (mark, ticks[k]) : ticks[k];
          const SqNode nodes[] = { { tick.from, 0, 0 }, { tick.to, 0, 0 } };
          g_autoptr (SqPath) path = sq_path_new (nodes, 2, FALSE);
          add_path (d, path, SQ_PEN_NOTCH);
        }
    }
}

static void
clear_line (gpointer data)
{
  sq_path_unref (((SqPatternLine *) data)->path);
}

GArray *
sq_pattern_no_lines (void)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (SqPatternLine));

  g_array_set_clear_func (lines, clear_line);
  return lines;
}

GArray *
sq_pattern_lines_new (const SqPiece *piece, SqPatternLines lines, SqPatternPose pose)
{
  Drawing d = { piece, lines, pose, sq_pattern_no_lines () };

  if (lines != SQ_PATTERN_CUT)
    add_runs (&d);
  add_marked (&d, SQ_MARK_FOLD, SQ_PEN_FOLD);
  add_marked (&d, SQ_MARK_CORNER, SQ_PEN_CARRY);
  add_marked (&d, SQ_MARK_STAY, SQ_PEN_STAY);
  add_marked (&d, SQ_MARK_ZIP, SQ_PEN_ZIP);
  add_ticks (&d);
  if (lines != SQ_PATTERN_SEW)
    for (guint ring = 0; ring < piece->cut->len; ring++)
      add_path (&d, sq_piece_cut (piece, ring), SQ_PEN_CUT);
  return d.lines;
}

SqBox
sq_pattern_lines_box (const GArray *lines)
{
  SqBox box = sq_box_empty ();

  for (guint i = 0; i < lines->len; i++)
    box = sq_box_union (box, sq_pattern_line (lines, i)->box);
  return box;
}

/* --- a piece's own mirror image --------------------------------------------------------------- */

static gboolean
is_on_rings (const SqPiece *piece, SqPoint p)
{
  for (guint ring = 0; ring < piece->cut->len; ring++)
    if (sq_path_nearest (sq_piece_cut (piece, ring), p).distance_mm < OWN_MIRROR_MM)
      return TRUE;
  return FALSE;
}

/* Whether the mirror image about the line through @middle along unit @axis lies on the rings. */
static gboolean
is_mirror_about (const SqPiece *piece, SqPoint middle, SqVector axis)
{
  for (guint ring = 0; ring < piece->cut->len; ring++)
    for (guint i = 0; i < sq_path_n_segments (sq_piece_cut (piece, ring)); i++)
      for (guint half = 0; half < 2; half++)
        {
          SqSegment s = sq_path_segment (sq_piece_cut (piece, ring), i);
          SqVector from = sq_sub (sq_segment_point (&s, half / 2.0), middle);
          double along = sq_dot (from, axis), left = sq_cross (axis, from);
          SqPoint image = sq_moved (sq_moved (middle, axis, along), sq_left (axis), -left);
          if (!is_on_rings (piece, image))
            return FALSE;
        }
  return TRUE;
}

gboolean
sq_pattern_is_own_mirror (const SqPiece *piece)
{
  SqVector grain = sq_turned (sq_point (1, 0), piece->grain_rad);
  g_autoptr (SqPath) level = sq_path_moved (sq_piece_cut (piece, 0), -piece->grain_rad,
                                            sq_point (0, 0));
  SqBox box = sq_path_box (level);
  SqPoint middle = sq_turned (sq_between (box.min, box.max, 0.5), piece->grain_rad);

  return is_mirror_about (piece, middle, grain) || is_mirror_about (piece, middle, sq_left (grain));
}
