/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/box-clip.h"

#include "base/units.h"

/* ---- a segment ----------------------------------------------------------------------------- */

/* Its ends, and places where it crosses the lines of a box's sides: two each at most. */
#define MOST_PLACES 10

typedef struct
{
  double at[MOST_PLACES];
  guint n;
} Places;

static gboolean
is_in (SqBox box, SqPoint p)
{
  return p.x >= box.min.x - SQ_COINCIDE_MM && p.x <= box.max.x + SQ_COINCIDE_MM
         && p.y >= box.min.y - SQ_COINCIDE_MM && p.y <= box.max.y + SQ_COINCIDE_MM;
}

/* Keeps them ascending. */
static void
add_place (Places *places, double t)
{
  guint i = places->n;

  if (!(t > 0 && t < 1))
    return;
  for (; i > 0 && places->at[i - 1] > t; i--)
    places->at[i] = places->at[i - 1];
  places->at[i] = t;
  places->n++;
}

/* Where the circle about @centre comes to the line @off from it along one axis: it is so far from
 * the centre along the other one. NAN: nowhere. */
static double
half_chord (double radius, double off)
{
  return fabs (off) < radius ? sqrt (radius * radius - off * off) : NAN;
}

static void
add_arc_places (Places *places, const SqSegment *s, SqBox box)
{
  SqPoint centre = sq_segment_centre (s);
  double radius = fabs (sq_segment_radius_mm (s));

  for (guint side = 0; side < 4; side++)
    {
      double at = side == 0 ? box.min.x : side == 1 ? box.max.x : side == 2 ? box.min.y : box.max.y;
      double half = half_chord (radius, at - (side < 2 ? centre.x : centre.y));
      for (int k = -1; k <= 1 && isfinite (half); k += 2)
        add_place (places, sq_segment_place (s, side < 2 ? sq_point (at, centre.y + k * half)
                                                         : sq_point (centre.x + k * half, at)));
    }
}

static void
add_line_places (Places *places, const SqSegment *s, SqBox box)
{
  SqVector along = sq_sub (s->to, s->from);

  if (along.x != 0)
    {
      add_place (places, (box.min.x - s->from.x) / along.x);
      add_place (places, (box.max.x - s->from.x) / along.x);
    }
  if (along.y != 0)
    {
      add_place (places, (box.min.y - s->from.y) / along.y);
      add_place (places, (box.max.y - s->from.y) / along.y);
    }
}

guint
sq_segment_in_box (const SqSegment *s, SqBox box, SqStretch out[SQ_MOST_STRETCHES])
{
  Places places = { { 0 }, 0 };
  double from = 0;
  guint n = 0;

  if (sq_segment_is_arc (s))
    add_arc_places (&places, s, box);
  else
    add_line_places (&places, s, box);
  for (guint i = 0; i <= places.n; i++)
    {
      double to = i < places.n ? places.at[i] : 1;
      if (is_in (box, sq_segment_point (s, (from + to) / 2)))
        {
          if (n > 0 && out[n - 1].to >= from)
            out[n - 1].to = to;
          else if (to > from && n < SQ_MOST_STRETCHES)
            out[n++] = (SqStretch){ from, to };
        }
      from = to;
    }
  return n;
}

/* ---- a path -------------------------------------------------------------------------------- */

/* A part as it grows. */
typedef struct
{
  GArray *parts; /* of SqPathPart, done */
  GArray *nodes; /* of SqNode: of the part now; empty: there is none */
  SqPoint end;   /* where it has come to */
  double from_mm;
} Clip;

static void
end_part (Clip *clip)
{
  SqPathPart part = { .from_mm = clip->from_mm };

  if (clip->nodes->len == 0)
    return;
  SqNode last = { clip->end, 0, 0 };
  g_array_append_val (clip->nodes, last);
  part.path = sq_path_new ((const SqNode *) (gpointer) clip->nodes->data, clip->nodes->len, FALSE);
  g_array_append_val (clip->parts, part);
  g_array_set_size (clip->nodes, 0);
}

/* Adds the stretches of @s, which begins at @station_mm; @box is that of the whole segment. */
static void
add_segment (Clip *clip, const SqSegment *s, guint32 tag, SqBox box, double station_mm)
{
  SqStretch stretches[SQ_MOST_STRETCHES];
  guint n = sq_segment_in_box (s, box, stretches);

  for (guint i = 0; i < n; i++)
    {
      SqSegment part = stretches[i].from > 0 || stretches[i].to < 1
                           ? sq_segment_part (s, stretches[i].from, stretches[i].to)
                           : *s;
      SqNode node = { part.from, part.bulge, tag };
      if (stretches[i].from > 0)
        end_part (clip);
      if (clip->nodes->len == 0)
        clip->from_mm = station_mm + stretches[i].from * sq_segment_length_mm (s);
      g_array_append_val (clip->nodes, node);
      clip->end = part.to;
    }
  if (n == 0 || stretches[n - 1].to < 1)
    end_part (clip);
}

static void
clear_part (gpointer data)
{
  sq_path_unref (((SqPathPart *) data)->path);
}

/* The part now has come to a ring's start, where the first part begins: they are one. */
static void
join_round (Clip *clip)
{
  SqPathPart *first = &g_array_index (clip->parts, SqPathPart, 0);

  g_array_append_vals (clip->nodes, sq_path_nodes (first->path), sq_path_n_nodes (first->path) - 1);
  clip->end = sq_path_nodes (first->path)[sq_path_n_nodes (first->path) - 1].at;
  g_array_remove_index (clip->parts, 0);
  end_part (clip);
}

GArray *
sq_path_in_box (const SqPath *path, SqBox box)
{
  Clip clip = { g_array_new (FALSE, FALSE, sizeof (SqPathPart)),
                g_array_new (FALSE, FALSE, sizeof (SqNode)),
                { 0, 0 },
                0 };
  SqBox own = sq_path_box (path);
  double station_mm = 0;

  g_array_set_clear_func (clip.parts, clear_part);
  if (is_in (box, own.min) && is_in (box, own.max))
    {
      SqPathPart whole = { sq_path_ref (path), 0 };
      g_array_append_val (clip.parts, whole);
    }
  else if (sq_box_meets (box, own, SQ_COINCIDE_MM))
    for (guint i = 0; i < sq_path_n_segments (path); i++)
      {
        SqSegment s = sq_path_segment (path, i);
        add_segment (&clip, &s, sq_path_nodes (path)[i].tag, box, station_mm);
        station_mm += sq_segment_length_mm (&s);
      }
  if (clip.nodes->len > 0 && clip.parts->len > 0 && sq_path_is_ring (path)
      && g_array_index (clip.parts, SqPathPart, 0).from_mm == 0)
    join_round (&clip);
  else
    end_part (&clip);
  g_array_unref (clip.nodes);
  return clip.parts;
}

gboolean
sq_path_meets_box (const SqPath *path, SqBox box)
{
  SqStretch stretches[SQ_MOST_STRETCHES];

  if (!sq_box_meets (sq_path_box (path), box, SQ_COINCIDE_MM))
    return FALSE;
  for (guint i = 0; i < sq_path_n_segments (path); i++)
    {
      SqSegment s = sq_path_segment (path, i);
      if (sq_box_meets (sq_segment_box (&s), box, SQ_COINCIDE_MM)
          && sq_segment_in_box (&s, box, stretches) > 0)
        return TRUE;
    }
  return FALSE;
}
