/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/seat-notes.h"

#include "drawing/seat-drawn.h"

/* Where the marks stand: along an edge, off it, and off a corner; in shares and em. */
#define ALONG_EDGE 0.3
#define OFF_EDGE_EM 1.3
#define OFF_CORNER_EM 3.0

/* The corner of the leaf that is turned down, and its lines, in shares of its side. */
#define TURNED 0.36
#define FIRST_LINE 0.52
#define SECOND_LINE 0.76
#define LINE_MARGIN 0.22

static gboolean
edge_mark (const SqPath *ring, guint i, double em_mm, SqPoint *mark)
{
  SqPoint at;
  SqVector along;
  if (!sq_seat_edge_point (ring, i, ALONG_EDGE, &at, &along))
    return FALSE;
  *mark = sq_moved (at, sq_left (along), OFF_EDGE_EM * em_mm);
  return TRUE;
}

/* Along the middle of the angle between the edges that meet at corner @i. */
static gboolean
corner_mark (const SqPath *ring, const SqCorner *corners, guint n, guint i, double em_mm,
             SqPoint *mark)
{
  SqPoint end, start;
  SqVector in, out, middle;
  if (!sq_seat_edge_point (ring, (i + n - 1) % n, 1, &end, &in)
      || !sq_seat_edge_point (ring, i, 0, &start, &out))
    return FALSE;
  middle = sq_add (sq_left (in), sq_left (out));
  if (sq_dot (middle, middle) < 1e-6)
    return FALSE;
  *mark = sq_moved (corners[i].at, sq_unit (middle), OFF_CORNER_EM * em_mm);
  return TRUE;
}

GArray *
sq_seat_notes (const SqCushion *cushion, double em_mm)
{
  GArray *notes = g_array_new (FALSE, FALSE, sizeof (SqPinnedNote));
  const SqOutline *outline = cushion->outline;
  for (guint r = 0; r < sq_outline_n_rings (outline); r++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (outline, r, &n);
      g_autoptr (SqPath) ring = sq_seat_ring (outline, r);
      for (guint i = 0; ring != NULL && i < n; i++)
        {
          SqPinnedNote note = { corners[i].id, TRUE, sq_point (0, 0), corners[i].note };
          if (note.text != NULL && edge_mark (ring, i, em_mm, &note.at))
            g_array_append_val (notes, note);
          note.is_edge = FALSE;
          note.text = corners[i].corner_note;
          if (note.text != NULL && corner_mark (ring, corners, n, i, em_mm, &note.at))
            g_array_append_val (notes, note);
        }
    }
  return notes;
}

const SqPinnedNote *
sq_seat_note_at (const GArray *notes, SqPoint p, double within_mm)
{
  for (guint i = 0; i < notes->len; i++)
    {
      const SqPinnedNote *note = &g_array_index (notes, SqPinnedNote, i);
      if (fabs (note->at.x - p.x) <= within_mm && fabs (note->at.y - p.y) <= within_mm)
        return note;
    }
  return NULL;
}

/* @x and @y in shares of the leaf's side, from its upper left corner down. */
static SqPoint
on_leaf (SqPoint middle, double side_mm, double x, double y)
{
  return sq_point (middle.x + (x - 0.5) * side_mm, middle.y + (0.5 - y) * side_mm);
}

static void
draw_mark (SqSceneBuilder *builder, SqPoint at, double side_mm)
{
  const SqNode leaf[] = { { on_leaf (at, side_mm, 0, 0), 0, 0 },
                          { on_leaf (at, side_mm, 0, 1), 0, 0 },
                          { on_leaf (at, side_mm, 1, 1), 0, 0 },
                          { on_leaf (at, side_mm, 1, TURNED), 0, 0 },
                          { on_leaf (at, side_mm, 1 - TURNED, 0), 0, 0 } };
  const SqNode turned[] = { { on_leaf (at, side_mm, 1 - TURNED, 0), 0, 0 },
                            { on_leaf (at, side_mm, 1 - TURNED, TURNED), 0, 0 },
                            { on_leaf (at, side_mm, 1, TURNED), 0, 0 } };
  sq_scene_add_nodes (builder, leaf, G_N_ELEMENTS (leaf), TRUE);
  sq_scene_add_nodes (builder, turned, G_N_ELEMENTS (turned), FALSE);
  for (guint i = 0; i < 2; i++)
    {
      double y = i == 0 ? FIRST_LINE : SECOND_LINE;
      sq_scene_add_line (builder, on_leaf (at, side_mm, LINE_MARGIN, y),
                         on_leaf (at, side_mm, 1 - LINE_MARGIN, y));
    }
}

void
sq_seat_notes_draw (SqSceneBuilder *builder, const SqCushion *cushion, double em_mm)
{
  g_autoptr (GArray) notes = sq_seat_notes (cushion, em_mm);
  if (notes->len > 0)
    sq_scene_begin_stroke (builder, SQ_PEN_LEADER);
  for (guint i = 0; i < notes->len; i++)
    draw_mark (builder, g_array_index (notes, SqPinnedNote, i).at, SQ_NOTE_MARK_EM * em_mm);
}
