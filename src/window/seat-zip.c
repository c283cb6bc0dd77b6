/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/seat-zip.h"

#include "base/units.h"
#include "window/figures.h"

/* How far inside the finished outline it is drawn, and where it is hit (pixels). */
#define INSET 6
#define HIT_FROM 3
#define HIT_TO 14
#define HIT_ACROSS 8

/* Tabs stand so far from its ends, clear of corners and their letters (pixels). */
#define TAB_FROM_END 26
#define TAB_LENGTH 14
#define TAB_WIDTH 9
#define HIT_TAB 11

/* The line is followed in steps of this (pixels) where it is bent. */
#define FLAT_PX 0.2

/* --- the seat as drawn --------------------------------------------------------------------- */

/* The outer finished ring in seat coordinates as drawn: where the cover is the mirror image its
 * stations run the other way. */
typedef struct
{
  const SqCover *cover;
  SqPath *path;
  double whole_mm;
} Ring;

static void
ring_init (Ring *ring, const SqCover *cover)
{
  const SqPath *path = cover->finished->rings[0].path;
  ring->cover = cover;
  ring->path = cover->mirrored ? sq_path_mirrored (path) : sq_path_ref ((SqPath *) path);
  ring->whole_mm = sq_path_length_mm (path);
}

static void
ring_clear (Ring *ring)
{
  g_clear_pointer (&ring->path, sq_path_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Ring, ring_clear)

static guint
n_edges (const Ring *ring)
{
  return ring->cover->finished->rings[0].n_edges;
}

static const SqFinishedEdge *
edge_at (const Ring *ring, guint i)
{
  return &ring->cover->finished->rings[0].edges[i];
}

static double
edge_length_mm (const SqFinishedEdge *edge)
{
  return edge->end_mm - edge->start_mm;
}

static double
edge_start_mm (const Ring *ring, const SqFinishedEdge *edge)
{
  return ring->cover->mirrored ? ring->whole_mm - edge->end_mm : edge->start_mm;
}

/* @station between 0 and the whole. */
static double
wrapped (const Ring *ring, double station_mm)
{
  double s = fmod (station_mm, ring->whole_mm);
  return s < 0 ? s + ring->whole_mm : s;
}

/* The edge that the zip lies along; NULL: none. */
static const SqFinishedEdge *
zip_edge (const Ring *ring)
{
  for (guint i = 0; i < n_edges (ring); i++)
    if (edge_at (ring, i)->id == ring->cover->zip.edge)
      return edge_at (ring, i);
  return NULL;
}

/* Its ends along that edge, as drawn. */
static void
zip_ends (const Ring *ring, const SqFinishedEdge *edge, double *from_mm, double *to_mm)
{
  const SqZip *zip = &ring->cover->zip;
  double length = edge_length_mm (edge);
  *from_mm = ring->cover->mirrored ? length - zip->to_mm : zip->from_mm;
  *to_mm = ring->cover->mirrored ? length - zip->from_mm : zip->to_mm;
}

/* The zip of a boxing as an open path on the ring; NULL: there is none. */
static SqPath *
zip_on_ring (const Ring *ring)
{
  const SqFinishedEdge *edge = zip_edge (ring);
  double from, to;
  if (ring->cover->zip.place != SQ_ZIP_BOXING || edge == NULL)
    return NULL;
  zip_ends (ring, edge, &from, &to);
  from += edge_start_mm (ring, edge);
  to += edge_start_mm (ring, edge);
  return sq_path_part (ring->path, wrapped (ring, from), wrapped (ring, to));
}

/* The zip of an underside, of whose panels each has its stretch of one straight line; NULL: there is
 * none. */
static SqPath *
zip_across (const SqCover *cover)
{
  SqVector along = { 0, 0 };
  SqNode ends[2] = { 0 };
  double low = INFINITY, high = -INFINITY;

  for (guint i = 0; i < cover->pieces->len && cover->zip.place == SQ_ZIP_UNDERSIDE; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      for (guint k = 0; k < piece->marks->len && piece->role == SQ_ROLE_UNDERSIDE; k++)
        {
          const SqMark *mark = &g_array_index (piece->marks, SqMark, k);
          if (mark->kind != SQ_MARK_ZIP || mark->line == NULL)
            continue;
          const SqNode *nodes = sq_path_nodes (mark->line);
          guint n = sq_path_n_nodes (mark->line);
          if (high < low)
            along = sq_sub (nodes[n - 1].at, nodes[0].at);
          for (guint m = 0; m < n; m++)
            {
              double at = sq_dot (nodes[m].at, along);
              if (at < low)
                ends[0].at = nodes[m].at;
              if (at > high)
                ends[1].at = nodes[m].at;
              low = fmin (low, at);
              high = fmax (high, at);
            }
        }
    }
  if (high < low)
    return NULL;
  /* The underside is the image of the cover, which may be the image of the seat. */
  g_autoptr (SqPath) line = sq_path_new (ends, 2, FALSE);
  return cover->mirrored ? sq_path_ref (line) : sq_path_mirrored (line);
}

/* --- drawing ------------------------------------------------------------------------------- */

/* @path moved to its left by @by, corners mitred. */
static SqPath *
moved_left (const SqPath *path, double by, double px_mm)
{
  g_autoptr (SqPath) flat = sq_path_flattened (path, FLAT_PX * px_mm);
  guint n = sq_path_n_nodes (flat);
  const SqNode *nodes = sq_path_nodes (flat);
  SqPathBuilder builder;
  sq_path_builder_init (&builder);
  for (guint i = 0; i < n; i++)
    {
      SqVector before = sq_unit (sq_sub (nodes[MAX (i, 1)].at, nodes[MAX (i, 1) - 1].at));
      guint next = MIN (i + 1, n - 1);
      SqVector after = sq_unit (sq_sub (nodes[next].at, nodes[next - 1].at));
      double turn = fmax (1 + sq_dot (before, after), 0.3);
      SqVector aside = sq_scale (sq_left (sq_add (before, after)), by / turn);
      sq_path_builder_add (&builder, sq_add (nodes[i].at, aside), 0, 0);
    }
  return sq_path_builder_end (&builder, FALSE);
}

/* The line as it is drawn. */
static SqPath *
drawn_line (const SqCover *cover, double px_mm)
{
  g_auto (Ring) ring = { 0 };
  g_autoptr (SqPath) path = NULL;
  if (cover->finished == NULL)
    return NULL;
  if (cover->zip.place == SQ_ZIP_UNDERSIDE)
    return zip_across (cover);
  ring_init (&ring, cover);
  path = zip_on_ring (&ring);
  return path != NULL ? moved_left (path, INSET * px_mm, px_mm) : NULL;
}

/* Where the tab at the start (or the end) stands. */
static SqPoint
tab_at (const SqPath *line, gboolean at_end, double px_mm, SqVector *along)
{
  double length = sq_path_length_mm (line);
  double in = fmin (TAB_FROM_END * px_mm, length / 3);
  return sq_path_point_at (line, at_end ? length - in : in, along);
}

SqScene *
sq_seat_zip_scene (const SqCover *cover, double px_mm)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  g_autoptr (SqPath) line = drawn_line (cover, px_mm);
  if (line != NULL)
    sq_scene_stroke_path (builder, SQ_PEN_ZIP, line);
  for (int i = 0; i < 2 && line != NULL && cover->zip.place == SQ_ZIP_BOXING; i++)
    {
      SqVector along;
      SqPoint at = tab_at (line, i == 1, px_mm, &along);
      double angle = atan2 (along.y, along.x);
      sq_scene_begin_fill (builder, SQ_FILL_HANDLE);
      sq_scene_add_plate (builder, at, TAB_LENGTH * px_mm, TAB_WIDTH * px_mm, angle, 3 * px_mm);
      sq_scene_begin_stroke (builder, SQ_PEN_LEADER);
      sq_scene_add_plate (builder, at, TAB_LENGTH * px_mm, TAB_WIDTH * px_mm, angle, 3 * px_mm);
    }
  return sq_scene_builder_end (builder);
}

guint
sq_seat_zip_at (const SqCover *cover, SqPoint at, double px_mm)
{
  g_autoptr (SqPath) line = drawn_line (cover, px_mm);
  SqVector along;
  SqNearest nearest;
  double off;
  if (line == NULL)
    return SQ_THING_NONE;
  nearest = sq_path_nearest (line, at);
  if (cover->zip.place == SQ_ZIP_UNDERSIDE)
    return nearest.distance_mm <= HIT_ACROSS * px_mm ? SQ_THING_ZIP_ACROSS : SQ_THING_NONE;
  for (int i = 0; i < 2; i++)
    if (sq_distance (tab_at (line, i == 1, px_mm, NULL), at) <= HIT_TAB * px_mm)
      return i == 1 ? SQ_THING_ZIP_END : SQ_THING_ZIP_START;
  /* Only on the inner side: the outline itself is for the edge. */
  sq_path_point_at (line, nearest.station_mm, &along);
  off = INSET * px_mm + sq_cross (along, sq_sub (at, nearest.at));
  return nearest.distance_mm <= HIT_TO * px_mm && off >= HIT_FROM * px_mm && off <= HIT_TO * px_mm
             ? SQ_THING_ZIP
             : SQ_THING_NONE;
}

/* --- moving -------------------------------------------------------------------------------- */

/* Moves both ends by @by: to the edge's ends within @reach, else to whole @step. */
static void
shift (double length_mm, double by_mm, double reach_mm, double step_mm, double *from_mm,
       double *to_mm)
{
  double run = *to_mm - *from_mm, from = *from_mm + by_mm;
  if (fabs (from) <= reach_mm && fabs (from + run - length_mm) <= reach_mm)
    {
      *from_mm = 0;
      *to_mm = length_mm;
      return;
    }
  if (fabs (from) <= reach_mm)
    from = 0;
  else if (fabs (from + run - length_mm) <= reach_mm)
    from = length_mm - run;
  else
    from = round (from / step_mm) * step_mm;
  *from_mm = from;
  *to_mm = from + run;
}

/* One end: to those of the edge, else to whole steps. */
static double
pulled (double at_mm, double length_mm, double reach_mm, double step_mm)
{
  if (fabs (at_mm) <= reach_mm)
    return 0;
  if (fabs (at_mm - length_mm) <= reach_mm)
    return length_mm;
  return round (at_mm / step_mm) * step_mm;
}

/* The shortest and the longest zip that a boxing round the ring has room for, held to whole steps
 * within. As the cover judges it. */
static void
limits (const SqJob *job, const SqCushion *cushion, double whole_mm, double *least_mm,
        double *most_mm)
{
  const SqDefaults *house = &job->defaults;
  double tuck = (cushion->given & SQ_GIVEN_ZIP_TUCK) ? cushion->zip.tuck_mm : house->zip_tuck_mm;
  *least_mm = house->join_clear_mm;
  *most_mm = whole_mm - fmax (4 * fmax (tuck, 0), 2 * house->join_clear_mm);
}

/* The edge at @station; NULL where the zip covers it as well: it then stays on its own. */
static const SqFinishedEdge *
other_edge (const Ring *ring, const SqFinishedEdge *own, double from_mm, double to_mm,
            double station_mm)
{
  double along = wrapped (ring, station_mm - edge_start_mm (ring, own) - from_mm);
  if (along <= to_mm - from_mm)
    return NULL;
  for (guint i = 0; i < n_edges (ring); i++)
    {
      const SqFinishedEdge *edge = edge_at (ring, i);
      if (wrapped (ring, station_mm - edge_start_mm (ring, edge)) < edge_length_mm (edge))
        return edge != own ? edge : NULL;
    }
  return NULL;
}

/* Along @edge from @from to @to; all of it is left to the edge's own length. */
static void
set_run (SqCushion *cushion, const SqFinishedEdge *edge, double from_mm, double to_mm)
{
  gboolean is_all = fabs (from_mm) < SQ_SEAM_MM
                    && fabs (to_mm - edge_length_mm (edge)) < SQ_SEAM_MM;
  cushion->zip.edge = edge->id;
  cushion->zip.from_mm = is_all ? 0 : from_mm;
  cushion->zip.to_mm = is_all ? 0 : to_mm;
  cushion->given &= ~(guint32) (SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO | SQ_GIVEN_ZIP_AT);
  cushion->given |= SQ_GIVEN_ZIP_EDGE;
  if (!is_all)
    cushion->given |= SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO;
}

static gboolean
move_along (const SqSeatThings *things, SqCushion *cushion, SqPoint from_at, SqPoint to_at,
            double reach_mm)
{
  g_auto (Ring) ring = { 0 };
  const SqFinishedEdge *edge, *other;
  double step = sq_figures_step_mm (things->base), from, to, by, least, most, station;
  ring_init (&ring, things->cover);
  edge = zip_edge (&ring);
  if (edge == NULL)
    return FALSE;
  zip_ends (&ring, edge, &from, &to);
  station = sq_path_nearest (ring.path, to_at).station_mm;
  by = wrapped (&ring, station - sq_path_nearest (ring.path, from_at).station_mm);
  if (by > ring.whole_mm / 2)
    by -= ring.whole_mm;
  other = things->kind == SQ_THING_ZIP ? other_edge (&ring, edge, from, to, station) : NULL;
  if (other != NULL)
    {
      set_run (cushion, other, 0, edge_length_mm (other));
      return TRUE;
    }
  limits (things->base, cushion, ring.whole_mm, &least, &most);
  if (things->kind == SQ_THING_ZIP)
    shift (edge_length_mm (edge), by, reach_mm, step, &from, &to);
  else if (things->kind == SQ_THING_ZIP_START)
    from = CLAMP (pulled (from + by, edge_length_mm (edge), reach_mm, step), to - most, to - least);
  else
    to = CLAMP (pulled (to + by, edge_length_mm (edge), reach_mm, step), from + least, from + most);
  set_run (cushion, edge, from, to);
  return TRUE;
}

/* Towards the side that an underside's zip is measured from, as the cover has it: the edge asked
 * for, else the back or the right. */
static SqVector
measured_from (const SqCover *cover, const SqFinishedEdge *edge)
{
  const SqFinished *finished = cover->finished;
  const SqPath *path = finished->rings[0].path;
  SqPoint a = sq_path_point_at (path, edge->own_start_mm, NULL);
  SqPoint b = sq_path_point_at (path, edge->own_end_mm, NULL);
  SqVector toward = sq_right (sq_unit (sq_sub (b, a)));
  SqVector in_frame = { sq_dot (toward, finished->front_dir),
                        sq_cross (finished->front_dir, toward) };
  gboolean is_level = fabs (in_frame.y) >= fabs (in_frame.x) - 1e-9;
  if (!(cover->cushion->given & SQ_GIVEN_ZIP_EDGE) && (is_level ? in_frame.y < 0 : in_frame.x < 0))
    toward = sq_scale (toward, -1);
  return toward;
}

static gboolean
move_across (const SqSeatThings *things, SqCushion *cushion, SqVector by)
{
  g_auto (Ring) ring = { 0 };
  const SqFinishedEdge *edge;
  double step = sq_figures_step_mm (things->base), across, at;
  SqVector toward;
  ring_init (&ring, things->cover);
  edge = zip_edge (&ring);
  if (edge == NULL)
    return FALSE;
  toward = measured_from (things->cover, edge);
  g_autoptr (SqPath) turned = sq_path_moved (things->cover->finished->rings[0].path,
                                             -atan2 (toward.y, toward.x), sq_point (0, 0));
  SqBox box = sq_path_box (turned);
  across = box.max.x - box.min.x;
  if (things->cover->mirrored)
    by.x = -by.x;
  at = round ((things->cover->zip.at_mm - sq_dot (by, toward)) / step) * step;
  cushion->zip.at_mm = CLAMP (at, step, fmax (across - step, step));
  cushion->given |= SQ_GIVEN_ZIP_AT;
  return TRUE;
}

SqJob *
sq_seat_zip_moved (const SqSeatThings *things, SqPoint from, SqPoint to, double reach_mm)
{
  const SqCushion *now = sq_job_cushion (things->base, things->cover->cushion->id);
  g_autoptr (SqCushion) changed = now != NULL ? sq_cushion_dup (now) : NULL;
  gboolean is_done;
  if (changed == NULL || things->cover->finished == NULL)
    return NULL;
  is_done = things->kind == SQ_THING_ZIP_ACROSS ? move_across (things, changed, sq_sub (to, from))
                                                : move_along (things, changed, from, to, reach_mm);
  return is_done ? sq_job_with_cushion (things->base, changed) : NULL;
}
