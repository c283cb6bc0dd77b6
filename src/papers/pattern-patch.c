/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern-patch.h"

#include "geometry/box-clip.h"
#include "geometry/crossing.h"
#include "papers/typeset.h"
#include "words/pattern-words.h"
#include "words/piece-names.h"

/* From the outline to the middle of what stands outside, mm. */
#define BESIDE_MM 3.6
#define EM_MM 3.4

/* Along a broken side, from its corner to the middle of its figure: where it would lie on a tick, more or
 * less. */
static const double alongs_mm[] = { 45, 40, 50, 35, 55, 30, 60 };
/* Outside of it; where there are too many ticks inside. */
static const double asides_mm[] = { BESIDE_MM, -BESIDE_MM, -3 * BESIDE_MM, -5 * BESIDE_MM };

/* A break's zigzag: inside of the patch's border. */
#define BREAK_INSIDE_MM 1.5

typedef struct
{
  const SqPatternCorners *corners;
  const SqPatternPart *part;
  SqSceneBuilder *to;
  const GPtrArray *drawn; /* of SqPath, on the page */
  GArray *taken;          /* of SqBox: by texts */
  const SqLengthStyle *style;
  double outward; /* 1: right of the way round, −1: left of it, where the pattern is mirrored */
} Patch;

static SqPoint
on_page (const Patch *p, SqPoint at)
{
  return sq_add (sq_pattern_posed ((SqPatternPose){ FALSE, p->part->pose.quarters }, at),
                 p->part->at);
}

static void
add_text (const Patch *p, const char *text, SqPoint at, SqVector along)
{
  SqVector turned = sq_pattern_posed ((SqPatternPose){ FALSE, p->part->pose.quarters }, along);
  SqText own = { .at = on_page (p, at),
                 .angle_rad = sq_readable_angle_rad (atan2 (turned.y, turned.x)),
                 .em_mm = EM_MM,
                 .width_mm = sq_text_width_em (text, TRUE) * EM_MM,
                 .bold = TRUE,
                 .text = text };
  double half_mm = SQ_TEXT_HEIGHT_EM * EM_MM / 2;
  SqVector half = sq_point (fabs (turned.x) * own.width_mm / 2 + half_mm,
                            fabs (turned.y) * own.width_mm / 2 + half_mm);
  SqBox box = { sq_sub (own.at, half), sq_add (own.at, half) };

  sq_scene_add_text (p->to, &own);
  g_array_append_val (p->taken, box);
}

/* Whether a text of @width_mm along unit @along, its middle at @at of the piece, is clear of all that is
 * drawn. */
static gboolean
is_clear (const Patch *p, SqPoint at, SqVector along, double width_mm)
{
  const SqNode ends[] = { { on_page (p, sq_moved (at, along, -width_mm / 2)), 0, 0 },
                          { on_page (p, sq_moved (at, along, width_mm / 2)), 0, 0 } };
  g_autoptr (SqPath) axis = sq_path_new (ends, 2, FALSE);
  SqBox box = sq_path_box (axis);

  for (guint i = 0; i < p->drawn->len; i++)
    {
      const SqPath *path = g_ptr_array_index (p->drawn, i);
      if (sq_box_meets (sq_path_box (path), box, BESIDE_MM)
          && sq_paths_distance_mm (path, axis) < SQ_TEXT_HEIGHT_EM * EM_MM / 2 + 0.1)
        return FALSE;
    }
  return TRUE;
}

/* Unit, away from the piece, beside the side from corner @i to the next. */
static SqVector
outward (const Patch *p, guint i)
{
  SqVector along = sq_sub (sq_corner_point (p->corners, sq_corner_next (p->corners, i)),
                           sq_corner_point (p->corners, i));

  return sq_scale (sq_right (sq_unit (along)), p->outward);
}

/* Half way between both sides, outside; inside, where the corner turns inward, is where they
 * part. */
static void
add_letter (const Patch *p, guint i)
{
  guint before = (i + p->corners->points->len - 1) % p->corners->points->len;
  g_autofree char *letter = sq_words_letters (i);
  SqVector out = sq_unit (sq_add (outward (p, before), outward (p, i)));
  SqVector right = sq_pattern_posed ((SqPatternPose){ FALSE, (4 - p->part->pose.quarters) % 4 },
                                     sq_point (1, 0));

  add_text (p, letter, sq_moved (sq_corner_point (p->corners, i), out, 1.2 * BESIDE_MM), right);
}

/* A zigzag across the broken side from @from to @to, where it leaves the patch. */
static void
add_break (const Patch *p, SqPoint from, SqPoint to)
{
  const SqSegment side = { from, to, 0 };
  SqStretch stretches[SQ_MOST_STRETCHES];
  SqVector along = sq_unit (sq_sub (to, from)), left = sq_left (along);
  guint n = sq_segment_in_box (&side, sq_corner_patch (p->corners, p->part->patch)->window,
                               stretches);

  if (n == 0)
    return;
  SqPoint end = sq_moved (sq_between (from, to, stretches[0].to), along, -BREAK_INSIDE_MM);
  const struct
  {
    double left, along;
  } steps[] = { { -3, 0 }, { -1, 0.8 }, { 1, -0.8 }, { 3, 0 } };
  SqNode nodes[G_N_ELEMENTS (steps)];
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    nodes[i] = (SqNode){
      on_page (p, sq_moved (sq_moved (end, left, steps[i].left), along, steps[i].along)), 0, 0
    };
  sq_scene_begin_stroke (p->to, SQ_PEN_RULE);
  sq_scene_add_nodes (p->to, nodes, G_N_ELEMENTS (nodes), FALSE);
}

/* At the end of the broken side from corner @i, or of the one to it. */
static void
add_side (const Patch *p, guint i, gboolean at_start)
{
  guint next = sq_corner_next (p->corners, i);
  SqPoint from = sq_corner_point (p->corners, i), to = sq_corner_point (p->corners, next);
  SqVector along = sq_unit (sq_sub (to, from));
  g_autofree char *text = sq_words_corner_distance (i, next, sq_distance (from, to), p->style);
  double width_mm = sq_text_width_em (text, TRUE) * EM_MM;
  SqPoint at = { 0, 0 };

  for (guint k = 0; k < G_N_ELEMENTS (alongs_mm) * G_N_ELEMENTS (asides_mm); k++)
    {
      double along_mm = alongs_mm[k % G_N_ELEMENTS (alongs_mm)];
      SqPoint foot = at_start ? sq_moved (from, along, along_mm) : sq_moved (to, along, -along_mm);
      at = sq_moved (foot, outward (p, i), asides_mm[k / G_N_ELEMENTS (alongs_mm)]);
      if (is_clear (p, at, along, width_mm))
        break;
    }
  add_text (p, text, at, along);
  add_break (p, at_start ? from : to, at_start ? to : from);
}

GArray *
sq_pattern_add_patch (const SqPattern *pattern, const SqPatternPart *part, const GPtrArray *drawn,
                      SqSceneBuilder *to)
{
  const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, part->piece);
  Patch p = { piece->corners,
              part,
              to,
              drawn,
              g_array_new (FALSE, FALSE, sizeof (SqBox)),
              &pattern->style,
              pattern->wrong_side ? -1 : 1 };
  const GArray *own = sq_corner_patch (p.corners, part->patch)->corners;

  for (guint k = 0; k < own->len; k++)
    {
      guint i = g_array_index (own, guint, k);
      guint before = (i + p.corners->points->len - 1) % p.corners->points->len;
      add_letter (&p, i);
      if (sq_corner_is_broken (p.corners, i))
        add_side (&p, i, TRUE);
      if (sq_corner_is_broken (p.corners, before))
        add_side (&p, before, FALSE);
    }
  return p.taken;
}
