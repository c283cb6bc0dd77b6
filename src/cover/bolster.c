/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Bolster: a tube, joined along the back with the zip in the join, and two ends. */
#include "cover/bolster.h"

#include "base/units.h"
#include "cover/notches.h"
#include "cover/report.h"
#include "cover/ways.h"
#include "cover/welt.h"
#include "cover/zip.h"

enum
{
  STEP_ZIP = 1,
  STEP_JOIN,
  STEP_ENDS,
};

typedef struct
{
  SqMaking *making;
  SqPath *section;
  double girth_mm, length_mm;
  guint n_runs;       /* of an end: one a side of the section */
  double zip_at[2];   /* along the tube; alike: none */
  guint lower, upper; /* of the tube: first run of its long sides, … */
  guint left, right;  /* … of its ends, */
  guint tube, ends[2];
} Bolster;

/* Stations of the section between which side @i lies. */
static void
side_stations (const Bolster *b, guint i, double *from, double *to)
{
  *from = i == 0 ? 0 : sq_path_station_mm (b->section, 1);
  *to = i + 1 == b->n_runs ? b->girth_mm : sq_path_station_mm (b->section, 1);
}

/* ---- tube ---------------------------------------------------------------------------------- */

/* One of the long sides, travelled from @x0 to @x1 at height @y: the join, with the zip in its
 * middle. Returns its first run. */
static guint
draw_join (const Bolster *b, SqDraft *draft, SqId edge, double x0, double x1, double y)
{
  const SqChoices *c = &b->making->choices;
  gboolean backwards = x1 < x0;
  guint first = sq_draft_run (draft, SQ_RUN_JOIN, edge, c->join_mm);

  sq_draft_node (draft, sq_point (x0, y), 0);
  if (b->zip_at[0] == b->zip_at[1])
    return first;
  sq_draft_run (draft, SQ_RUN_ZIP, edge, c->zip_mm);
  sq_draft_node (draft, sq_point (b->zip_at[backwards ? 1 : 0], y), 0);
  sq_draft_run (draft, SQ_RUN_JOIN, edge, c->join_mm);
  sq_draft_node (draft, sq_point (b->zip_at[backwards ? 0 : 1], y), 0);
  return first;
}

/* One of its ends, up or down. Returns its first run. */
static guint
draw_end (const Bolster *b, SqDraft *draft, double x, gboolean upwards)
{
  guint first = draft->piece->runs->len;

  for (guint k = 0; k < b->n_runs; k++)
    {
      double from, to;
      side_stations (b, upwards ? k : b->n_runs - 1 - k, &from, &to);
      sq_draft_run (draft, SQ_RUN_PERIMETER, 0, b->making->choices.perimeter_mm);
      sq_draft_node (draft, sq_point (x, upwards ? from : to), 0);
    }
  return first;
}

static SqPoint3
in_space (const Bolster *b, double x, double y, double z)
{
  SqPoint p = sq_finished_from_frame (b->making->cover->finished, sq_point (x, y));
  return (SqPoint3){ p.x, p.y, z };
}

static SqPoint3
minus (SqPoint3 a, SqPoint3 b)
{
  return (SqPoint3){ a.x - b.x, a.y - b.y, a.z - b.z };
}

/* Where a point of the section lies at the left end; the section has its x from the back. */
static SqPoint3
section_in_space (const Bolster *b, SqPoint p)
{
  SqBox extent = b->making->cover->finished->extent;
  return in_space (b, 0, extent.max.y - p.x, p.y);
}

/* The tube is rolled up along its y; what lies to the left of that is the way to the left end. */
static void
add_tube_patches (const Bolster *b, SqDraft *draft)
{
  SqPoint3 to_left = minus (in_space (b, 0, 0, 0), in_space (b, 1, 0, 0));

  for (guint i = 0; i < sq_path_n_segments (b->section); i++)
    {
      SqSegment s = sq_path_segment (b->section, i);
      double y0 = sq_path_station_mm (b->section, i), y1 = sq_path_station_mm (b->section, i + 1);
      gboolean is_arc = sq_segment_is_arc (&s);
      SqPoint3 at = section_in_space (b, s.from);
      SqPoint3 along = minus (section_in_space (b, sq_add (s.from, sq_segment_direction (&s, 0))),
                              at);
      sq_draft_patch (draft, is_arc ? SQ_PATCH_CYLINDER : SQ_PATCH_PLANE,
                      sq_path_new_rectangle (0, y0, b->length_mm, y1), sq_point (0, y0), at, along,
                      to_left, is_arc ? sq_segment_radius_mm (&s) : 0);
      sq_draft_patch_along (draft, sq_point (0, 1));
    }
}

static void
mark_line (SqPiece *piece, SqMarkKind kind, SqPoint from, SqPoint to)
{
  SqNode line[] = { { from, 0, 0 }, { to, 0, 0 } };
  sq_piece_add_mark (piece, kind, 1, from, 0, 0, sq_path_new (line, 2, FALSE), -1, 0);
}

static void
make_tube (Bolster *b)
{
  const SqFinishedRing *ring = &b->making->cover->finished->rings[0];
  SqId back = ring->edges[b->making->cover->finished->back].id;
  SqDraft draft;

  sq_draft_begin (&draft, SQ_ROLE_TUBE, &b->making->choices.face);
  b->lower = draw_join (b, &draft, back, 0, b->length_mm, 0);
  b->right = draw_end (b, &draft, b->length_mm, TRUE);
  b->upper = draw_join (b, &draft, back, b->length_mm, 0, b->girth_mm);
  b->left = draw_end (b, &draft, 0, FALSE);
  add_tube_patches (b, &draft);
  sq_lay_tube_on_cloth (b->making, draft.piece);
  b->tube = sq_making_add_piece (b->making, &draft);

  SqPiece *piece = sq_making_piece (b->making, b->tube);
  double fold = sq_path_station_mm (b->section, 1);
  if (b->n_runs > 1)
    mark_line (piece, SQ_MARK_CORNER, sq_point (0, fold), sq_point (b->length_mm, fold));
  for (guint k = 0; k < 2 && b->zip_at[0] < b->zip_at[1]; k++)
    {
      double y = k == 0 ? 0 : b->girth_mm;
      mark_line (piece, SQ_MARK_ZIP, sq_point (b->zip_at[0], y), sq_point (b->zip_at[1], y));
    }
}

/* ---- ends ---------------------------------------------------------------------------------- */

/* The left end has the section as it is, the right one mirrored. */
static guint
make_end (const Bolster *b, gboolean is_right)
{
  const SqChoices *c = &b->making->choices;
  g_autoptr (SqPath) ring = is_right ? sq_path_mirrored (b->section) : sq_path_ref (b->section);
  double x = is_right ? b->length_mm : 0, side = is_right ? -1 : 1;
  SqPoint3 origin = section_in_space (b, sq_point (0, 0));
  SqPoint3 forwards = minus (section_in_space (b, sq_point (side, 0)), origin);
  SqPoint3 at = in_space (b, x, b->making->cover->finished->extent.max.y, 0);
  SqDraft draft;

  sq_draft_begin (&draft, SQ_ROLE_DISC, &c->sides);
  draft.piece->sides = is_right ? SQ_SIDE_RIGHT : SQ_SIDE_LEFT;
  for (guint i = 0; i < sq_path_n_nodes (ring); i++)
    {
      const SqNode *node = &sq_path_nodes (ring)[i];
      if (i < b->n_runs)
        sq_draft_run (&draft, SQ_RUN_PERIMETER, 0, c->perimeter_mm);
      sq_draft_node (&draft, node->at, node->bulge);
    }
  sq_draft_patch (&draft, SQ_PATCH_PLANE, sq_path_ref (ring), sq_point (0, 0), at, forwards,
                  (SqPoint3){ 0, 0, 1 }, 0);
  sq_lay_upright_on_cloth (draft.piece, &c->sides);
  return sq_making_add_piece (b->making, &draft);
}

/* Quarters of a round end; middles and the corner of others. The join is at the back, and the notch
 * there or above it is double, so that no end goes on turned. */
static void
notch_end (const Bolster *b, guint seam, gboolean is_right)
{
  double corner = sq_path_station_mm (b->section, 1), g = b->girth_mm;
  const double quarters[] = { g / 8, 3 * g / 8, 5 * g / 8, 7 * g / 8 };
  const double others[] = { corner / 2, corner, (corner + g) / 2 };
  guint n = b->n_runs == 1 ? G_N_ELEMENTS (quarters) : G_N_ELEMENTS (others);

  for (guint i = 0; i < n; i++)
    {
      double at = b->n_runs == 1 ? quarters[i] : others[i];
      sq_notch_seam (b->making, seam, is_right ? g - at : at, i + 1 == n ? 2 : 1);
    }
}

static void
sew_end (const Bolster *b, gboolean is_right)
{
  const SqChoices *c = &b->making->choices;
  SqSide end = { b->ends[is_right], 0, b->n_runs };
  SqSide tube = { b->tube, is_right ? b->right : b->left, b->n_runs };
  guint seam = sq_making_add_seam (b->making,
                                   c->welt_at != SQ_WELT_NONE ? SQ_SEAM_WELT : SQ_SEAM_PERIMETER,
                                   end, tube, STEP_ENDS);

  notch_end (b, seam, is_right);
}

static void
sew_join (const Bolster *b)
{
  guint n = b->zip_at[0] < b->zip_at[1] ? 3 : 1;

  for (guint i = 0; i < n; i++)
    {
      SqSide lower = { b->tube, b->lower + i, 1 }, upper = { b->tube, b->upper + n - 1 - i, 1 };
      sq_making_add_seam (b->making, i == 1 ? SQ_SEAM_ZIP : SQ_SEAM_JOIN, lower, upper,
                          i == 1 ? STEP_ZIP : STEP_JOIN);
    }
}

void
sq_way_bolster (SqMaking *making)
{
  const SqChoices *c = &making->choices;
  g_autoptr (SqPath) section = sq_bolster_section (c);
  Bolster b = { .making = making,
                .section = section,
                .girth_mm = sq_path_length_mm (section),
                .length_mm = c->bolster_length_mm,
                .n_runs = c->bolster_section == SQ_SECTION_ROUND ? 1 : 2 };

  if (c->zip_place == SQ_ZIP_TUBE)
    sq_zip_along_tube (making, &b.zip_at[0], &b.zip_at[1]);
  make_tube (&b);
  b.ends[0] = make_end (&b, FALSE);
  b.ends[1] = make_end (&b, TRUE);
  sew_join (&b);
  sew_end (&b, FALSE);
  sew_end (&b, TRUE);
  if (c->welt_at != SQ_WELT_NONE)
    sq_welt_make (making, 2, b.girth_mm);
}
