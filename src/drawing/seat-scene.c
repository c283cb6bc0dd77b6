/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/seat-scene.h"

#include "drawing/piece-scene.h"
#include "drawing/seat-drawn.h"
#include "drawing/seat-notes.h"
#include "geometry/crossing.h"
#include "words/names.h"
#include "words/piece-names.h"

/* How faint the stripes are on the seat. */
#define STRIPE_ALPHA 0.14

/* A finished outline nearer to the seat's than this is the same to the eye (mm). */
#define SAME_MM 0.1

/* What stands at an edge: ticks from the outline outwards, and a line along their far ends. In em;
 * slant is along the edge. */
typedef struct
{
  double spacing, depth, slant;
  gboolean closed;
  double other_depth; /* of every second tick; 0: as the others */
} Hatch;

static const Hatch hatches[SQ_N_EDGE_KINDS] = {
  [SQ_EDGE_FREE] = { 0, 0, 0, FALSE, 0 },
  [SQ_EDGE_WALL] = { 0.62, 0.62, 0.5, FALSE, 0 },
  [SQ_EDGE_WELL] = { 0.62, 0.6, 0, FALSE, 0.3 },
  [SQ_EDGE_HULL_LINING] = { 0.62, 0.55, -0.5, TRUE, 0 },
  [SQ_EDGE_ARM] = { 0.62, 0.5, 0.5, TRUE, 0 },
  [SQ_EDGE_NEIGHBOUR] = { 0, 0.42, 0, TRUE, 0 },
  [SQ_EDGE_LID_HINGE] = { 1.3, 0.36, 0, TRUE, 0 },
};

double
sq_seat_hatch_depth_em (SqEdgeKind kind)
{
  g_return_val_if_fail ((guint) kind < SQ_N_EDGE_KINDS, 0);
  return hatches[kind].depth;
}

/* Ticks along the segments of @path with @tag, and the line along their ends. */
static void
add_hatch (SqSceneBuilder *builder, const SqPath *path, guint32 tag, const Hatch *hatch,
           double em_mm)
{
  double spacing = hatch->spacing * em_mm, next = spacing / 2, done = 0;
  guint count = 0;
  for (guint i = 0; i < sq_path_n_segments (path); i++)
    {
      SqSegment segment = sq_path_segment (path, i);
      double length = sq_segment_length_mm (&segment);
      if (sq_path_nodes (path)[i].tag != tag)
        continue;
      if (hatch->closed)
        {
          SqSegment far = sq_segment_offset (&segment, hatch->depth * em_mm, NULL);
          SqNode nodes[] = { { far.from, far.bulge, 0 }, { far.to, 0, 0 } };
          sq_scene_add_nodes (builder, nodes, 2, FALSE);
        }
      for (; spacing > 0 && next < done + length; next += spacing, count++)
        {
          double t = (next - done) / length;
          double depth = count % 2 == 1 && hatch->other_depth > 0 ? hatch->other_depth
                                                                  : hatch->depth;
          SqPoint foot = sq_segment_point (&segment, t);
          SqVector along = sq_segment_direction (&segment, t);
          SqPoint end = sq_moved (foot, sq_right (along), depth * em_mm);
          sq_scene_add_line (builder, foot, sq_moved (end, along, hatch->slant * em_mm));
        }
      done += length;
    }
}

static void
add_hatches (SqSceneBuilder *builder, const SqOutline *outline, double em_mm)
{
  sq_scene_begin_stroke (builder, SQ_PEN_HATCH);
  for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (outline, ring, &n);
      g_autoptr (SqPath) path = sq_seat_ring (outline, ring);
      for (guint i = 0; path != NULL && i < n; i++)
        if (hatches[corners[i].kind].depth > 0)
          add_hatch (builder, path, i, &hatches[corners[i].kind], em_mm);
    }
}

/* Straight from corner to corner where an outer edge is bent: what its length is measured along. */
static void
add_chords (SqSceneBuilder *builder, const SqOutline *outline)
{
  guint n;
  const SqCorner *corners = sq_outline_ring (outline, 0, &n);
  sq_scene_begin_stroke (builder, SQ_PEN_CHORD);
  for (guint i = 0; i < n; i++)
    if (corners[i].shape != SQ_SHAPE_STRAIGHT)
      sq_scene_add_line (builder, corners[i].at, corners[(i + 1) % n].at);
}

static gboolean
is_same (const SqPath *a, const SqPath *b)
{
  SqBox x = sq_path_box (a), y = sq_path_box (b);
  return fabs (sq_path_length_mm (a) - sq_path_length_mm (b)) < SAME_MM
         && sq_distance (x.min, y.min) < SAME_MM && sq_distance (x.max, y.max) < SAME_MM;
}

/* The finished outline where the seat is drawn; NULL: there is none. New. */
static SqPath *
finished_ring (const SqCover *cover, guint ring)
{
  const SqFinished *finished = cover->finished;
  if (finished == NULL || ring >= finished->n_rings)
    return NULL;
  return cover->mirrored ? sq_path_mirrored (finished->rings[ring].path)
                         : sq_path_ref (finished->rings[ring].path);
}

/* How many rings there are to show: of what is drawn, or of the plan of a bolster that nothing is
 * drawn for. */
static guint
n_rings_of (const SqCover *cover)
{
  guint n = sq_outline_n_rings (cover->cushion->outline);
  return n == 0 && cover->finished != NULL ? cover->finished->n_rings : n;
}

static SqPath *
ring_of (const SqCover *cover, guint ring)
{
  return sq_outline_n_rings (cover->cushion->outline) == 0
             ? finished_ring (cover, ring)
             : sq_seat_ring (cover->cushion->outline, ring);
}

static void
add_lines (SqSceneBuilder *builder, const SqCover *cover, double em_mm)
{
  const SqOutline *outline = cover->cushion->outline;
  add_hatches (builder, outline, em_mm);
  add_chords (builder, outline);
  for (guint ring = 0; ring < n_rings_of (cover); ring++)
    {
      g_autoptr (SqPath) path = ring_of (cover, ring);
      g_autoptr (SqPath) finished = finished_ring (cover, ring);
      if (path == NULL)
        continue;
      if (finished != NULL && !is_same (path, finished))
        sq_scene_stroke_path (builder, SQ_PEN_FINISHED, finished);
      sq_scene_stroke_path (builder, SQ_PEN_INK, path);
    }
}

/* The face's stripes where the finished cushion will show them; a mirrored one has none here: what
 * is drawn is not the seat it is for. */
static void
add_stripes (SqSceneBuilder *builder, const SqCover *cover, const SqCloth *face)
{
  g_autoptr (GPtrArray) rings = g_ptr_array_new ();
  if (cover->finished == NULL || cover->mirrored)
    return;
  for (guint ring = 0; ring < cover->finished->n_rings; ring++)
    g_ptr_array_add (rings, cover->finished->rings[ring].path);
  for (guint i = 0; i < cover->pieces->len; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      if (piece->role != SQ_ROLE_FACE && piece->role != SQ_ROLE_WRAP)
        continue;
      sq_scene_add_stripes (builder, rings, face, piece->grain_rad, &piece->phase, STRIPE_ALPHA);
      return;
    }
}

static void
add_fill (SqSceneBuilder *builder, const SqCover *cover, const SqCloth *face)
{
  sq_scene_begin_fill (builder, SQ_FILL_SEAT);
  for (guint ring = 0; ring < n_rings_of (cover); ring++)
    {
      g_autoptr (SqPath) path = ring_of (cover, ring);
      if (path != NULL)
        sq_scene_add_path (builder, path);
    }
  if (face != NULL && sq_cloth_is_striped (face))
    add_stripes (builder, cover, face);
}

/* A small bow on its chord before the figure of a rise. */
static void
add_rise_sign (SqSceneBuilder *builder, const SqDimension *dimension, double em_mm)
{
  SqVector along = sq_turned (sq_point (1, 0), dimension->angle_rad), up = sq_left (along);
  SqPoint left = sq_moved (dimension->at, along, -dimension->width_mm / 2 + 0.1 * em_mm);
  SqPoint from = sq_moved (left, up, -0.22 * em_mm), to = sq_moved (from, along, 0.9 * em_mm);
  SqNode bow[] = { { to, 0.75, 0 }, { from, 0, 0 } };
  sq_scene_begin_stroke (builder, SQ_PEN_LEADER);
  sq_scene_add_nodes (builder, bow, 2, TRUE);
}

/* Two short lines that make a square with the corner's edges. */
static void
add_square_sign (SqSceneBuilder *builder, const SqDimension *sign)
{
  SqVector along = sq_turned (sq_point (sign->width_mm / 2, 0), sign->angle_rad);
  SqVector up = sq_left (along);
  SqPoint far = sq_add (sign->at, sq_add (along, up));
  SqNode nodes[] = { { sq_add (sign->at, sq_sub (along, up)), 0, 0 },
                     { far, 0, 0 },
                     { sq_add (sign->at, sq_sub (up, along)), 0, 0 } };
  sq_scene_begin_stroke (builder, SQ_PEN_LEADER);
  sq_scene_add_nodes (builder, nodes, G_N_ELEMENTS (nodes), FALSE);
}

static void
add_dimension (SqSceneBuilder *builder, const SqDimension *dimension)
{
  double em_mm = dimension->height_mm / SQ_TEXT_HEIGHT_EM;
  SqText text = { .at = dimension->at,
                  .angle_rad = dimension->angle_rad,
                  .em_mm = em_mm,
                  .width_mm = dimension->width_mm,
                  .tone = dimension->measure == SQ_MEASURE_LENGTH ? SQ_TONE_INK : SQ_TONE_DIM,
                  .text = dimension->text };
  if (dimension->is_sign)
    {
      add_square_sign (builder, dimension);
      return;
    }
  if (dimension->measure == SQ_MEASURE_RISE)
    {
      SqVector along = sq_turned (sq_point (1, 0), dimension->angle_rad);
      add_rise_sign (builder, dimension, em_mm);
      text.width_mm -= SQ_RISE_SIGN_EM * em_mm;
      text.at = sq_moved (text.at, along, SQ_RISE_SIGN_EM * em_mm / 2);
    }
  if (dimension->is_far)
    {
      sq_scene_begin_stroke (builder, SQ_PEN_LEADER);
      sq_scene_add_line (builder, dimension->foot, dimension->leader);
    }
  sq_scene_add_text (builder, &text);
}

/* The middle of the angle inside corner @i, a unit vector, and the sine of half that angle. */
static SqVector
inward_at (const SqPath *path, guint32 n, guint i, SqPoint *at, double *sine)
{
  SqVector in = sq_point (1, 0), out = sq_point (1, 0);
  guint n_segments = sq_path_n_segments (path);
  for (guint s = 0; s < n_segments; s++)
    {
      SqSegment segment = sq_path_segment (path, s);
      guint32 tag = sq_path_nodes (path)[s].tag;
      guint32 before = sq_path_nodes (path)[(s + n_segments - 1) % n_segments].tag;
      if (tag == n + i) /* rounded: from the middle of the arc */
        {
          *at = sq_segment_point (&segment, 0.5);
          *sine = 1;
          return sq_left (sq_segment_direction (&segment, 0.5));
        }
      if (tag == i && before != i)
        {
          SqSegment last = sq_path_segment (path, (s + n_segments - 1) % n_segments);
          *at = segment.from;
          in = sq_segment_direction (&last, 1);
          out = sq_segment_direction (&segment, 0);
        }
    }
  SqVector middle = sq_turned (out, (M_PI - sq_angle_rad (in, out)) / 2);
  *sine = sin ((M_PI - sq_angle_rad (in, out)) / 2);
  return middle;
}

static gboolean
has_sign (const GArray *dimensions, SqId corner)
{
  for (guint i = 0; i < dimensions->len; i++)
    {
      const SqDimension *dimension = &g_array_index (dimensions, SqDimension, i);
      if (dimension->is_sign && dimension->corner == corner)
        return TRUE;
    }
  return FALSE;
}

/* The corners' letters, just inside; beyond the sign of a right angle. */
static void
add_letters (SqSceneBuilder *builder, const SqCushion *cushion, const GArray *dimensions,
             double em_mm)
{
  const SqOutline *outline = cushion->outline;
  for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (outline, ring, &n);
      g_autoptr (SqPath) path = sq_seat_ring (outline, ring);
      for (guint i = 0; path != NULL && i < n; i++)
        {
          g_autofree char *letter = sq_words_corner (cushion, corners[i].id);
          SqPoint at = corners[i].at;
          double sine = 1, away = has_sign (dimensions, corners[i].id) ? 1.25 : 1.05;
          SqVector inward = inward_at (path, n, i, &at, &sine);
          SqText text = { .em_mm = 0.9 * em_mm, .tone = SQ_TONE_DIM, .text = letter };
          text.at = sq_moved (at, inward, em_mm * fmin (away / fmax (sine, 0.3), 2.2));
          text.width_mm = sq_text_width_em (letter, FALSE) * text.em_mm;
          sq_scene_add_text (builder, &text);
        }
    }
}

static gboolean
is_front (const SqCover *cover, const SqCorner *corner)
{
  if (cover->finished != NULL && cover->finished->n_rings > 0)
    return corner->id == cover->finished->rings[0].edges[0].id;
  return corner->front;
}

/* Whether a level or turned @text would stand wholly on the material. */
static gboolean
is_on_material (const SqOutline *outline, const SqText *text)
{
  SqVector along = sq_turned (sq_point (text->width_mm / 2, 0), text->angle_rad);
  SqVector up = sq_turned (sq_point (0, SQ_TEXT_HEIGHT_EM * text->em_mm / 2), text->angle_rad);
  SqPoint high = sq_add (text->at, up), low = sq_sub (text->at, up);
  SqPoint corners[] = { sq_sub (low, along), sq_add (low, along), sq_add (high, along),
                        sq_sub (high, along) };
  g_autoptr (SqPath) box = sq_path_new_polygon (corners, G_N_ELEMENTS (corners));
  int winding = 0;
  for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
    {
      g_autoptr (SqPath) path = sq_seat_ring (outline, ring);
      if (path == NULL)
        continue;
      if (sq_paths_distance_mm (path, box) <= 0)
        return FALSE;
      winding += sq_path_winding (path, text->at);
    }
  return winding != 0;
}

/* The word at the front edge, inside it, where there is room. */
static void
add_front (SqSceneBuilder *builder, const SqCover *cover, double em_mm)
{
  const SqOutline *outline = cover->cushion->outline;
  const char *word = sq_words_side (SQ_SIDE_FRONT);
  guint n;
  const SqCorner *corners = sq_outline_ring (outline, 0, &n);
  g_autoptr (SqPath) path = sq_seat_ring (outline, 0);
  for (guint i = 0; path != NULL && i < n; i++)
    {
      SqPoint at;
      SqVector along;
      if (!is_front (cover, &corners[i]) || !sq_seat_edge_point (path, i, 0.5, &at, &along))
        continue;
      /* Not on a chord that runs near inside. */
      double rise = sq_dot (sq_sub (at, corners[i].at), sq_right (along));
      double clear = rise > 0.2 * em_mm && rise < 2.2 * em_mm ? rise : 0;
      SqText text = { .at = sq_moved (at, sq_left (along), clear + 0.95 * em_mm),
                      .angle_rad = sq_readable_angle_rad (atan2 (along.y, along.x)),
                      .em_mm = 0.9 * em_mm,
                      .width_mm = sq_text_width_em (word, FALSE) * 0.9 * em_mm,
                      .tone = SQ_TONE_DIM,
                      .text = word };
      if (is_on_material (outline, &text))
        sq_scene_add_text (builder, &text);
    }
}

SqScene *
sq_seat_scene (const SqCover *cover, const SqCloth *face, SqSeatLayer layer, const SqSeatLook *look)
{
  g_return_val_if_fail (cover != NULL && look != NULL, NULL);
  SqSceneBuilder *builder = sq_scene_builder_new ();
  if (layer == SQ_SEAT_FILL)
    add_fill (builder, cover, face);
  else if (layer == SQ_SEAT_LINES)
    add_lines (builder, cover, look->em_mm);
  else
    {
      g_autoptr (GArray) dimensions = sq_seat_dimensions (cover->cushion, look);
      add_letters (builder, cover->cushion, dimensions, look->em_mm);
      add_front (builder, cover, look->em_mm);
      sq_seat_notes_draw (builder, cover->cushion, look->em_mm);
      for (guint i = 0; i < dimensions->len; i++)
        add_dimension (builder, &g_array_index (dimensions, SqDimension, i));
    }
  return sq_scene_builder_end (builder);
}

static void
add_grid_lines (SqSceneBuilder *builder, SqBox room, double step_mm, guint main_every,
                gboolean mains)
{
  for (int axis = 0; axis < 2; axis++)
    {
      double low = axis == 0 ? room.min.x : room.min.y;
      double high = axis == 0 ? room.max.x : room.max.y;
      for (double k = ceil (low / step_mm); k <= floor (high / step_mm); k++)
        {
          double at = k * step_mm;
          if ((remainder (k, MAX (main_every, 1)) == 0) != mains)
            continue;
          if (axis == 0)
            sq_scene_add_line (builder, sq_point (at, room.min.y), sq_point (at, room.max.y));
          else
            sq_scene_add_line (builder, sq_point (room.min.x, at), sq_point (room.max.x, at));
        }
    }
}

SqScene *
sq_paper_grid_scene (SqBox room, double step_mm, guint main_every, double least_mm)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  g_return_val_if_fail (step_mm > 0 && least_mm > 0, sq_scene_builder_end (builder));
  /* Fine steps that share the main ones evenly; then main steps alone, and their doubles. */
  guint fine = 1;
  while (fine < main_every && (main_every % fine != 0 || step_mm * fine < least_mm))
    fine++;
  step_mm *= fine;
  main_every /= fine;
  while (step_mm < least_mm)
    step_mm *= 2;
  sq_scene_begin_stroke (builder, SQ_PEN_GRID);
  add_grid_lines (builder, room, step_mm, main_every, FALSE);
  sq_scene_begin_stroke (builder, SQ_PEN_GRID_MAIN);
  add_grid_lines (builder, room, step_mm, main_every, TRUE);
  return sq_scene_builder_end (builder);
}
