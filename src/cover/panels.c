/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/panels.h"

#include "base/units.h"
#include "cover/cut-line.h"
#include "cover/panels-seams.h"
#include "cover/report.h"
#include "geometry/clip.h"
#include "geometry/crossing.h"
#include "geometry/offset.h"

/* A line that passes a corner nearer than this without going through it would leave a crumb of a
 * side (mm); so would one that leaves a narrower panel, on the average. */
#define CRUMB_MM 1e-3
#define CRUMB_PANEL_MM 0.5

typedef struct
{
  SqPoint at;
  SqVector direction; /* what lies to its left is kept */
} Line;

/* ---- whether it can be --------------------------------------------------------------------- */

/* Where the line enters and leaves the piece. */
static gboolean
find_ends (const SqPiece *piece, const Line *line, SqPoint ends[2])
{
  const SqPath *ring = sq_piece_sew (piece, 0);
  g_autoptr (GArray) chords = sq_ring_chords (ring, line->at, line->direction);

  if (chords->len != 2)
    return FALSE;
  for (guint i = 1; i < piece->sew->len; i++)
    {
      g_autoptr (GArray) in_hole = sq_ring_chords (sq_piece_sew (piece, i), line->at,
                                                   line->direction);
      if (in_hole->len > 0)
        return FALSE;
    }
  for (guint k = 0; k < 2; k++)
    {
      ends[k] = sq_moved (line->at, line->direction, g_array_index (chords, double, k));
      for (guint i = 0; i < sq_path_n_nodes (ring); i++)
        {
          double d = sq_distance (sq_path_nodes (ring)[i].at, ends[k]);
          if (d > SQ_COINCIDE_MM && d < CRUMB_MM)
            return FALSE;
        }
    }
  return TRUE;
}

/* The one ring that lies to the left of the line, or NULL. */
static SqPath *
left_ring (const SqPiece *piece, const Line *line)
{
  g_autoptr (GPtrArray) rings = sq_ring_clipped (sq_piece_sew (piece, 0), line->at, line->direction,
                                                 piece->runs->len);
  SqPath *ring = rings->len == 1 ? rings->pdata[0] : NULL;

  if (ring == NULL || !sq_path_is_simple (ring, NULL)
      || sq_path_area_mm2 (ring) < CRUMB_PANEL_MM * sq_path_length_mm (ring))
    return NULL;
  return sq_path_ref (ring);
}

static gboolean
has_cut_line (const SqPiece *piece, const SqPath *ring, double allowance_mm)
{
  guint n = piece->runs->len;
  g_autofree double *by = g_new (double, n + 1);
  SqJoinRule rule = sq_join_rule_mitre ();
  SqOffsetReport report = { 0 };

  for (guint i = 0; i < n; i++)
    by[i] = sq_piece_run (piece, i)->allowance_mm;
  by[n] = allowance_mm;
  g_autoptr (SqPath) cut = sq_path_offset (ring, by, n + 1, &rule, &report);
  gboolean whole = cut != NULL && report.end != SQ_OFFSET_SPLIT;
  sq_offset_report_clear (&report);
  return whole;
}

gboolean
sq_panels_possible (const SqPiece *piece, SqPoint at, SqVector direction, double allowance_mm)
{
  Line left = { at, direction }, right = { at, sq_scale (direction, -1) };
  SqPoint ends[2];

  if (!find_ends (piece, &left, ends))
    return FALSE;
  g_autoptr (SqPath) a = left_ring (piece, &left);
  g_autoptr (SqPath) b = left_ring (piece, &right);
  return a != NULL && b != NULL && has_cut_line (piece, a, allowance_mm)
         && has_cut_line (piece, b, allowance_mm);
}

/* ---- one panel ----------------------------------------------------------------------------- */

/* Adds @ring, whose tags are runs of @whole, or their number for the line, to @panel. */
static void
add_ring (SqPiece *panel, const SqPiece *whole, const SqPath *ring, const SqRun *on_line,
          SqRunMoved *moved, guint which)
{
  guint n = sq_path_n_nodes (ring), before = G_MAXUINT;
  g_autofree SqNode *nodes = g_memdup2 (sq_path_nodes (ring), n * sizeof (SqNode));

  for (guint i = 0; i < n; i++)
    {
      guint old = nodes[i].tag;
      if (old != before)
        {
          SqRun run = old < whole->runs->len ? *sq_piece_run (whole, old) : *on_line;
          run.ring = panel->sew->len;
          if (old < whole->runs->len)
            moved[old] = (SqRunMoved){ which, panel->runs->len };
          g_array_append_val (panel->runs, run);
          before = old;
        }
      nodes[i].tag = panel->runs->len - 1;
    }
  g_ptr_array_add (panel->sew, sq_path_new (nodes, n, TRUE));
}

static void
add_rings (SqPiece *panel, const SqPiece *whole, const Line *line, const SqRun *on_line,
           SqRunMoved *moved, guint which)
{
  g_autoptr (SqPath) outer = left_ring (whole, line);

  add_ring (panel, whole, outer, on_line, moved, which);
  for (guint i = 1; i < whole->sew->len; i++)
    {
      const SqPath *hole = sq_piece_sew (whole, i);
      if (sq_path_winding (outer, sq_path_nodes (hole)[0].at) != 0)
        add_ring (panel, whole, hole, on_line, moved, which);
    }
}

static void
add_patches (SqPiece *panel, const SqPiece *whole, const Line *line)
{
  for (guint i = 0; i < whole->patches->len; i++)
    {
      const SqPatch *patch = &g_array_index (whole->patches, SqPatch, i);
      /* Regions are taken either way round. */
      g_autoptr (SqPath) region = sq_path_area_mm2 (patch->region) < 0
                                      ? sq_path_reversed (patch->region)
                                      : sq_path_ref (patch->region);
      g_autoptr (GPtrArray) regions = sq_ring_clipped (region, line->at, line->direction, 0);
      for (guint k = 0; k < regions->len; k++)
        {
          SqPatch part = *patch;
          part.region = sq_path_ref (regions->pdata[k]);
          g_array_append_val (panel->patches, part);
        }
    }
}

static void
add_marks (SqPiece *panel, const SqPiece *whole, const Line *line, const GArray *by_seam,
           guint which)
{
  for (guint i = 0; i < whole->marks->len; i++)
    {
      SqMark mark = g_array_index (whole->marks, SqMark, i);
      gint by = g_array_index (by_seam, gint, i);
      double left = sq_cross (line->direction, sq_sub (mark.at, line->at));
      if (mark.line == NULL)
        {
          /* On the line itself: once. */
          gboolean is_left = which == 0 ? left >= 0 : left > 0;
          if (by >= 0 ? (guint) by == which : is_left)
            g_array_append_val (panel->marks, mark);
          continue;
        }
      g_autoptr (GPtrArray) parts = sq_path_clipped (mark.line, line->at, line->direction);
      for (guint k = 0; k < parts->len; k++)
        {
          mark.line = sq_path_ref (parts->pdata[k]);
          mark.at = sq_path_nodes (mark.line)[0].at;
          g_array_append_val (panel->marks, mark);
        }
    }
}

static gboolean
has_run_of (const SqPiece *panel, SqId edge)
{
  for (guint i = 0; i < panel->runs->len; i++)
    if (sq_piece_run (panel, i)->edge == edge)
      return TRUE;
  return FALSE;
}

/* Where the seat's corner @id is on a piece of seat coordinates. */
static SqPoint
corner_on (const SqFinished *finished, SqId id, gboolean mirrored)
{
  const SqFinishedRing *ring = &finished->rings[0];

  for (guint i = 0; i < ring->n_edges; i++)
    if (ring->edges[i].corner == id)
      {
        SqPoint at = sq_path_point_at (ring->path, ring->edges[i].start_mm, NULL);
        return mirrored ? sq_point (-at.x, at.y) : at;
      }
  return sq_point (0, 0);
}

static void
add_skirts (SqPiece *panel, const SqPiece *whole, const Line *line, const SqFinished *finished)
{
  gboolean mirrored = whole->role == SQ_ROLE_UNDERSIDE;

  for (guint i = 0; i < whole->skirts->len; i++)
    {
      SqSkirt skirt = g_array_index (whole->skirts, SqSkirt, i);
      if (has_run_of (panel, skirt.edge))
        g_array_append_val (panel->skirts, skirt);
    }
  for (guint i = 0; i < whole->corner_notches->len; i++)
    {
      SqCornerNotch notch = g_array_index (whole->corner_notches, SqCornerNotch, i);
      SqPoint at = corner_on (finished, notch.corner, mirrored);
      if (sq_cross (line->direction, sq_sub (at, line->at)) > 0)
        g_array_append_val (panel->corner_notches, notch);
    }
}

/* Darts of @whole whose run went to the panel. */
static void
add_darts (SqPiece *panel, const SqPiece *whole, const SqRunMoved *moved, guint which)
{
  for (guint i = 0; i < whole->trims->len; i++)
    {
      const SqTrim *trim = &g_array_index (whole->trims, SqTrim, i);
      if (trim->why == SQ_WHY_DART && moved[trim->run].panel == which)
        sq_piece_add_dart (panel, moved[trim->run].run,
                           sq_path_nodes (sq_piece_cut (whole, trim->ring))[trim->from].at);
    }
}

static SqPiece *
panel_like (const SqPiece *whole)
{
  SqPiece *panel = sq_piece_new (whole->role);

  panel->sides = whole->sides;
  panel->hole = whole->hole;
  panel->upper = whole->upper;
  panel->cloth = whole->cloth;
  panel->count = whole->count;
  panel->grain_rad = whole->grain_rad;
  panel->turns = whole->turns;
  panel->phase = whole->phase;
  return panel;
}

/* ---- all of it ----------------------------------------------------------------------------- */

static void
finish_panel (SqMaking *making, guint index)
{
  SqPiece *panel = sq_making_piece (making, index);

  sq_piece_measure_runs (panel);
  if (!sq_piece_make_cut (panel))
    sq_report_piece (making->cover->problems, SQ_PROBLEM_CUT_SPLIT, SQ_FAULT,
                     making->choices.cushion, index);
}

gboolean
sq_panels_split (SqMaking *making, guint index, SqPoint at, SqVector direction, SqSeamKind kind,
                 SqRunRole role, double allowance_mm, guint step)
{
  const Line lines[2] = { { at, direction }, { at, sq_scale (direction, -1) } };
  const SqRun on_line = { .role = role, .allowance_mm = allowance_mm };
  SqPoint ends[2];

  if (!sq_panels_possible (sq_making_piece (making, index), at, direction, allowance_mm)
      || !find_ends (sq_making_piece (making, index), &lines[0], ends))
    return FALSE;
  for (guint k = 0; k < 2; k++)
    sq_seams_break_at (making, index, ends[k]);

  g_autoptr (SqPiece) whole = sq_piece_ref (sq_making_piece (making, index));
  g_autofree SqRunMoved *moved = g_new0 (SqRunMoved, whole->runs->len);
  SqPiece *panels[2];
  for (guint k = 0; k < 2; k++)
    {
      panels[k] = panel_like (whole);
      add_rings (panels[k], whole, &lines[k], &on_line, moved, k);
    }
  g_autoptr (GArray) by_seam = sq_seams_divide (making, index, moved);
  sq_piece_unref (g_ptr_array_index (making->cover->pieces, index));
  g_ptr_array_index (making->cover->pieces, index) = panels[0];
  g_ptr_array_insert (making->cover->pieces, (gint) index + 1, panels[1]);
  for (guint k = 0; k < 2; k++)
    {
      add_patches (panels[k], whole, &lines[k]);
      add_marks (panels[k], whole, &lines[k], by_seam, k);
      add_skirts (panels[k], whole, &lines[k], making->cover->finished);
      finish_panel (making, index + k);
      add_darts (panels[k], whole, moved, k);
    }
  /* The outer ring of each ends along the line. */
  SqSide sides[2];
  for (guint k = 0; k < 2; k++)
    {
      const SqPath *outer = sq_piece_sew (panels[k], 0);
      sides[k] = (SqSide){ index + k, sq_path_nodes (outer)[sq_path_n_nodes (outer) - 1].tag, 1 };
    }
  sq_making_add_seam (making, kind, sides[0], sides[1], step);
  return TRUE;
}
