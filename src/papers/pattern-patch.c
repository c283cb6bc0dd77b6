/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern-patch.h"

#include "geometry/box-clip.h"
#include "papers/typeset.h"
#include "words/pattern-words.h"
#include "words/piece-names.h"

/* From the outline to the middle of what stands outside, mm. */
#define BESIDE_MM 3.6
#define EM_MM 3.4

/* Along a broken side, from its corner to the middle of its figure. */
#define ALONG_MM 45.0

/* A break's zigzag: inside of the patch's border. */
#define BREAK_INSIDE_MM 1.5

typedef struct
{
  const SqPatternCorners *corners;
  const SqPatternPart *part;
  SqSceneBuilder *to;
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

  sq_scene_add_text (p->to,
                     &(SqText){ .at = on_page (p, at),
                                .angle_rad = sq_readable_angle_rad (atan2 (turned.y, turned.x)),
                                .em_mm = EM_MM,
                                .width_mm = sq_text_width_em (text, TRUE) * EM_MM,
                                .bold = TRUE,
                                .text = text });
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
  SqPoint foot = at_start ? sq_moved (from, along, ALONG_MM) : sq_moved (to, along, -ALONG_MM);
  g_autofree char *text = sq_words_corner_distance (i, next, sq_distance (from, to), p->style);

  add_text (p, text, sq_moved (foot, outward (p, i), BESIDE_MM), along);
  add_break (p, at_start ? from : to, at_start ? to : from);
}

void
sq_pattern_add_patch (const SqPattern *pattern, const SqPatternPart *part, SqSceneBuilder *to)
{
  const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, part->piece);
  Patch p = { piece->corners, part, to, &pattern->style, pattern->wrong_side ? -1 : 1 };
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
}
