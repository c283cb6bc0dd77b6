/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/compare.h"

/* What is being compared, and how closely. */
typedef struct
{
  const Motion *motion; /* NULL: none */
  double within_mm;
  gboolean mirrored; /* points of the piece are the seat's, x → −x */
  gboolean in_seat;  /* points move with the seat */
} Glass;

#define DIFFER(...)                                                                                \
  do                                                                                               \
    return g_strdup_printf (__VA_ARGS__);                                                          \
  while (0)

static gboolean
alike (const Glass *g, double a, double b)
{
  return fabs (a - b) <= g->within_mm;
}

/* @p of the second cover as it was before the motion. */
static SqPoint
brought_back (const Glass *g, SqPoint p)
{
  if (g->motion == NULL || !g->in_seat)
    return p;
  if (g->mirrored)
    p.x = -p.x;
  p = sq_turned (sq_sub (p, g->motion->by), -g->motion->turn_rad);
  if (g->mirrored)
    p.x = -p.x;
  return p;
}

static gboolean
points_alike (const Glass *g, SqPoint a, SqPoint b)
{
  return sq_distance (a, brought_back (g, b)) <= g->within_mm;
}

static gboolean
angles_alike (const Glass *g, double a, double b)
{
  if (g->motion == NULL)
    return a == b;
  double turn = g->in_seat ? (g->mirrored ? -1 : 1) * g->motion->turn_rad : 0;
  return fabs (remainder (a - (b - turn), 2 * G_PI)) < 1e-6;
}

static char *
paths_differ (const Glass *g, const SqPath *a, const SqPath *b)
{
  guint n = sq_path_n_nodes (a);

  if (n != sq_path_n_nodes (b) || sq_path_is_ring (a) != sq_path_is_ring (b))
    DIFFER ("%u nodes, %u nodes", n, sq_path_n_nodes (b));
  for (guint i = 0; i < n; i++)
    {
      const SqNode *na = &sq_path_nodes (a)[i], *nb = &sq_path_nodes (b)[i];
      double half = sq_distance (na->at, sq_path_nodes (a)[(i + 1) % n].at) / 2;
      if (!points_alike (g, na->at, nb->at))
        {
          SqPoint back = brought_back (g, nb->at);
          DIFFER ("node %u at (%.17g, %.17g), (%.17g, %.17g)", i, na->at.x, na->at.y, back.x,
                  back.y);
        }
      if (fabs (na->bulge - nb->bulge) * half > g->within_mm || na->tag != nb->tag)
        DIFFER ("node %u: bulge %.17g tag %u, bulge %.17g tag %u", i, na->bulge, na->tag, nb->bulge,
                nb->tag);
    }
  return NULL;
}

/* ---- pieces -------------------------------------------------------------------------------- */

static char *
rings_differ (const Glass *g, const char *what, const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    DIFFER ("%u %s rings, %u", a->len, what, b->len);
  for (guint i = 0; i < a->len; i++)
    {
      g_autofree char *wrong = paths_differ (g, a->pdata[i], b->pdata[i]);
      if (wrong != NULL)
        DIFFER ("%s ring %u: %s", what, i, wrong);
    }
  return NULL;
}

static char *
runs_differ (const Glass *g, const SqPiece *a, const SqPiece *b)
{
  if (a->runs->len != b->runs->len)
    DIFFER ("%u runs, %u", a->runs->len, b->runs->len);
  for (guint i = 0; i < a->runs->len; i++)
    {
      const SqRun *ra = sq_piece_run (a, i), *rb = sq_piece_run (b, i);
      if (ra->role != rb->role || ra->edge != rb->edge || ra->ring != rb->ring
          || ra->from != rb->from || ra->to != rb->to
          || !alike (g, ra->allowance_mm, rb->allowance_mm)
          || !alike (g, ra->length_mm, rb->length_mm))
        DIFFER ("run %u: edge %u, %.17g mm; edge %u, %.17g mm", i, ra->edge, ra->length_mm,
                rb->edge, rb->length_mm);
    }
  return NULL;
}

static char *
marks_differ (const Glass *g, const SqPiece *a, const SqPiece *b)
{
  if (a->marks->len != b->marks->len)
    DIFFER ("%u marks, %u", a->marks->len, b->marks->len);
  for (guint i = 0; i < a->marks->len; i++)
    {
      const SqMark *ma = &g_array_index (a->marks, SqMark, i),
                   *mb = &g_array_index (b->marks, SqMark, i);
      if (ma->kind != mb->kind || ma->count != mb->count || ma->seam != mb->seam
          || !alike (g, ma->depth_mm, mb->depth_mm) || !alike (g, ma->station_mm, mb->station_mm)
          || !points_alike (g, ma->at, mb->at) || (ma->line == NULL) != (mb->line == NULL)
          || (ma->kind == SQ_MARK_NOTCH && !angles_alike (g, ma->angle_rad, mb->angle_rad)))
        DIFFER ("mark %u: %u ticks at (%.9g, %.9g), station %.17g; %u ticks at (%.9g, %.9g), "
                "station %.17g",
                i, ma->count, ma->at.x, ma->at.y, ma->station_mm, mb->count, mb->at.x, mb->at.y,
                mb->station_mm);
      g_autofree char *wrong = ma->line != NULL ? paths_differ (g, ma->line, mb->line) : NULL;
      if (wrong != NULL)
        DIFFER ("line of mark %u: %s", i, wrong);
    }
  return NULL;
}

static gboolean
points3_alike (SqPoint3 a, SqPoint3 b)
{
  return a.x == b.x && a.y == b.y && a.z == b.z;
}

static char *
patches_differ (const Glass *g, const SqPiece *a, const SqPiece *b)
{
  if (a->patches->len != b->patches->len)
    DIFFER ("%u patches, %u", a->patches->len, b->patches->len);
  for (guint i = 0; i < a->patches->len; i++)
    {
      const SqPatch *pa = &g_array_index (a->patches, SqPatch, i),
                    *pb = &g_array_index (b->patches, SqPatch, i);
      g_autofree char *wrong = paths_differ (g, pa->region, pb->region);
      if (wrong != NULL)
        DIFFER ("region of patch %u: %s", i, wrong);
      if (pa->kind != pb->kind)
        DIFFER ("patch %u is of another kind", i);
      /* Where the seat was moved its map into space was too; the folding law looks at that. */
      if (g->motion == NULL
          && (pa->radius_mm != pb->radius_mm || !points_alike (g, pa->origin, pb->origin)
              || !points3_alike (pa->at, pb->at) || !points3_alike (pa->ex, pb->ex)
              || !points3_alike (pa->ey, pb->ey)))
        DIFFER ("patch %u is folded elsewhere", i);
    }
  return NULL;
}

static char *
trims_differ (const Glass *g, const SqPiece *a, const SqPiece *b)
{
  if (a->trims->len != b->trims->len)
    DIFFER ("%u trims, %u", a->trims->len, b->trims->len);
  for (guint i = 0; i < a->trims->len; i++)
    {
      const SqTrim *ta = &g_array_index (a->trims, SqTrim, i),
                   *tb = &g_array_index (b->trims, SqTrim, i);
      if (ta->run != tb->run || ta->ring != tb->ring || ta->from != tb->from || ta->to != tb->to
          || ta->why != tb->why || !alike (g, ta->distance_mm, tb->distance_mm))
        DIFFER ("trim %u: run %u, %.17g mm; run %u, %.17g mm", i, ta->run, ta->distance_mm, tb->run,
                tb->distance_mm);
    }
  return NULL;
}

static char *
corners_differ (const Glass *g, const SqPiece *a, const SqPiece *b)
{
  if (a->corner_notches->len != b->corner_notches->len || a->skirts->len != b->skirts->len)
    DIFFER ("%u notches and %u skirts, %u and %u", a->corner_notches->len, a->skirts->len,
            b->corner_notches->len, b->skirts->len);
  for (guint i = 0; i < a->corner_notches->len; i++)
    {
      const SqCornerNotch *na = &g_array_index (a->corner_notches, SqCornerNotch, i),
                          *nb = &g_array_index (b->corner_notches, SqCornerNotch, i);
      if (na->corner != nb->corner || na->dart != nb->dart || !alike (g, na->apex_mm, nb->apex_mm)
          || !alike (g, na->leg_mm, nb->leg_mm) || !alike (g, na->mouth_mm, nb->mouth_mm))
        DIFFER ("notch %u: leg %.17g, %.17g", i, na->leg_mm, nb->leg_mm);
    }
  for (guint i = 0; i < a->skirts->len; i++)
    {
      const SqSkirt *sa = &g_array_index (a->skirts, SqSkirt, i),
                    *sb = &g_array_index (b->skirts, SqSkirt, i);
      if (sa->edge != sb->edge || sa->depth_mm != sb->depth_mm)
        DIFFER ("skirt %u: %.17g deep, %.17g", i, sa->depth_mm, sb->depth_mm);
    }
  return NULL;
}

static char *
figures_differ (const Glass *g, const SqPiece *a, const SqPiece *b)
{
  double round_mm = 0;

  if (a->role != b->role || a->ordinal != b->ordinal || a->n_ordinal != b->n_ordinal
      || a->sides != b->sides || a->hole != b->hole || a->upper != b->upper || a->cloth != b->cloth
      || a->count != b->count)
    DIFFER ("%s %u of %u on sides %u, %s %u of %u on sides %u", sq_piece_role_name (a->role),
            a->ordinal, a->n_ordinal, a->sides, sq_piece_role_name (b->role), b->ordinal,
            b->n_ordinal, b->sides);
  for (guint i = 0; i < a->cut->len; i++)
    round_mm += sq_path_length_mm (sq_piece_cut (a, i));
  if (fabs (a->area_mm2 - b->area_mm2) > g->within_mm * round_mm
      || !alike (g, a->width_mm, b->width_mm) || !alike (g, a->height_mm, b->height_mm))
    DIFFER ("%.17g mm2, %.17g × %.17g mm; %.17g mm2, %.17g × %.17g mm", a->area_mm2, a->width_mm,
            a->height_mm, b->area_mm2, b->width_mm, b->height_mm);
  if (!angles_alike (g, a->grain_rad, b->grain_rad) || a->turns != b->turns)
    DIFFER ("grain %.17g, %.17g", a->grain_rad, b->grain_rad);
  if (a->phase.along != b->phase.along || a->phase.across != b->phase.across
      || a->phase.along_mm != b->phase.along_mm || a->phase.across_mm != b->phase.across_mm
      || ((a->phase.along || a->phase.across)
          && !points_alike (g, a->phase.anchor, b->phase.anchor)))
    DIFFER ("the pattern lies elsewhere");
  return NULL;
}

static char *
piece_differs (const Glass *g, const SqPiece *a, const SqPiece *b)
{
  char *wrong = figures_differ (g, a, b);

  if (wrong == NULL)
    wrong = rings_differ (g, "sew", a->sew, b->sew);
  if (wrong == NULL)
    wrong = rings_differ (g, "cut", a->cut, b->cut);
  if (wrong == NULL)
    wrong = runs_differ (g, a, b);
  if (wrong == NULL)
    wrong = marks_differ (g, a, b);
  if (wrong == NULL)
    wrong = patches_differ (g, a, b);
  if (wrong == NULL)
    wrong = trims_differ (g, a, b);
  if (wrong == NULL)
    wrong = corners_differ (g, a, b);
  return wrong;
}

/* Pieces of a seat of the other hand are mirrored the other way round. */
static char *
pieces_of_hand_differ (const SqPiece *a, const SqPiece *b, gboolean other_hand,
                       const Motion *motion, double within_mm)
{
  Glass g = { motion, within_mm, (a->role == SQ_ROLE_UNDERSIDE) != other_hand,
              a->role == SQ_ROLE_FACE || a->role == SQ_ROLE_UNDERSIDE || a->role == SQ_ROLE_WRAP };

  return piece_differs (&g, a, b);
}

char *
pieces_differ (const SqPiece *a, const SqPiece *b)
{
  return pieces_of_hand_differ (a, b, FALSE, NULL, 0);
}

/* ---- covers -------------------------------------------------------------------------------- */

static char *
seams_differ (const Glass *g, const SqCover *a, const SqCover *b)
{
  if (a->seams->len != b->seams->len)
    DIFFER ("%u seams, %u", a->seams->len, b->seams->len);
  for (guint i = 0; i < a->seams->len; i++)
    {
      const SqSeam *sa = sq_cover_seam (a, i), *sb = sq_cover_seam (b, i);
      if (sa->kind != sb->kind || sa->step != sb->step || sa->a.piece != sb->a.piece
          || sa->a.first_run != sb->a.first_run || sa->a.n_runs != sb->a.n_runs
          || sa->b.piece != sb->b.piece || sa->b.first_run != sb->b.first_run
          || sa->b.n_runs != sb->b.n_runs || sa->ease_mm != sb->ease_mm
          || !alike (g, sa->length_a_mm, sb->length_a_mm)
          || !alike (g, sa->length_b_mm, sb->length_b_mm))
        DIFFER ("seam %u: %.17g mm, %.17g mm", i, sa->length_a_mm, sb->length_a_mm);
    }
  return NULL;
}

static gboolean
problems_alike (const Glass *g, const SqProblem *a, const SqProblem *b)
{
  if (a->code != b->code || a->severity != b->severity || a->place.kind != b->place.kind
      || a->place.cushion != b->place.cushion || a->place.item != b->place.item
      || a->place.key != b->place.key)
    return FALSE;
  for (guint i = 0; i < SQ_N_FIXES; i++)
    if (a->fixes[i].kind != b->fixes[i].kind || a->fixes[i].item != b->fixes[i].item)
      return FALSE;
  /* Any one of the places where a ring crosses itself. */
  if (a->code == SQ_PROBLEM_OUTLINE_CROSSES && g->motion != NULL)
    return TRUE;
  /* The largest radius that fits is found to 0.01 mm. */
  double within = a->code == SQ_PROBLEM_RADIUS_TOO_LARGE && g->within_mm > 0 ? 0.02 : g->within_mm;
  return fabs (a->facts[0] - b->facts[0]) <= within && fabs (a->facts[1] - b->facts[1]) <= within;
}

static char *
problem_lists_differ (const Glass *g, const SqCover *a, const SqCover *b)
{
  if (a->problems->len != b->problems->len)
    DIFFER ("%u problems, %u", a->problems->len, b->problems->len);
  for (guint i = 0; i < a->problems->len; i++)
    {
      const SqProblem *pa = sq_cover_problem (a, i), *pb = sq_cover_problem (b, i);
      if (!problems_alike (g, pa, pb))
        DIFFER ("problem %u: %s (%.17g, %.17g) at %u, %s (%.17g, %.17g) at %u", i,
                sq_problem_code_name (pa->code), pa->facts[0], pa->facts[1], pa->place.item,
                sq_problem_code_name (pb->code), pb->facts[0], pb->facts[1], pb->place.item);
    }
  return NULL;
}

static char *
zips_differ (const Glass *g, const SqZip *a, const SqZip *b)
{
  if (a->place != b->place || a->edge != b->edge || a->opening != b->opening
      || a->sliders != b->sliders || !alike (g, a->from_mm, b->from_mm)
      || !alike (g, a->to_mm, b->to_mm) || !alike (g, a->at_mm, b->at_mm)
      || !alike (g, a->run_mm, b->run_mm) || !alike (g, a->length_mm, b->length_mm)
      || !alike (g, a->needed_mm, b->needed_mm))
    DIFFER ("zip at edge %u, %.17g … %.17g; at edge %u, %.17g … %.17g", a->edge, a->from_mm,
            a->to_mm, b->edge, b->from_mm, b->to_mm);
  return NULL;
}

static char *
foams_differ (const Glass *g, const SqCover *a, const SqCover *b)
{
  if (a->foam->len != b->foam->len)
    DIFFER ("%u parts of foam, %u", a->foam->len, b->foam->len);
  for (guint i = 0; i < a->foam->len; i++)
    {
      const SqFoamPart *pa = a->foam->pdata[i], *pb = b->foam->pdata[i];
      char *wrong = rings_differ (g, "foam", pa->rings, pb->rings);
      if (wrong != NULL)
        return wrong;
      if (pa->kind != pb->kind || !alike (g, pa->thickness_mm, pb->thickness_mm)
          || pa->oversize_mm != pb->oversize_mm || pa->count != pb->count
          || fabs (pa->volume_mm3 / pb->volume_mm3 - 1) > g->within_mm
          || fabs (pa->weight_g / pb->weight_g - 1) > g->within_mm)
        DIFFER ("foam of %.17g mm3, %.17g", pa->volume_mm3, pb->volume_mm3);
    }
  return NULL;
}

static char *
finished_differ (const Glass *g, const SqFinished *a, const SqFinished *b)
{
  if ((a == NULL) != (b == NULL))
    DIFFER ("only one outline could be finished");
  if (a == NULL)
    return NULL;
  if (a->n_rings != b->n_rings || a->back != b->back)
    DIFFER ("%u finished rings, %u; back %u, %u", a->n_rings, b->n_rings, a->back, b->back);
  for (guint r = 0; r < a->n_rings; r++)
    {
      char *wrong = paths_differ (g, a->rings[r].path, b->rings[r].path);
      if (wrong != NULL)
        return wrong;
      for (guint i = 0; i < a->rings[r].n_edges; i++)
        {
          const SqFinishedEdge *ea = &a->rings[r].edges[i], *eb = &b->rings[r].edges[i];
          if (ea->id != eb->id || ea->side != eb->side || ea->seen != eb->seen
              || ea->is_straight != eb->is_straight || !alike (g, ea->start_mm, eb->start_mm)
              || !alike (g, ea->end_mm, eb->end_mm) || !alike (g, ea->radius_mm, eb->radius_mm))
            DIFFER ("edge %u of ring %u: id %u side %u %.17g … %.17g, id %u side %u %.17g … %.17g",
                    i, r, ea->id, ea->side, ea->start_mm, ea->end_mm, eb->id, eb->side,
                    eb->start_mm, eb->end_mm);
        }
    }
  return NULL;
}

static gboolean
leaves_hole_out (const SqCover *cover)
{
  return cover->finished->n_rings < sq_outline_n_rings (cover->cushion->outline);
}

char *
covers_differ (const SqCover *a, const SqCover *b, const Motion *motion, double within_mm)
{
  /* A bolster lies in a plan of its own, wherever its seat does. */
  Glass g = { a->build == SQ_BUILD_BOLSTER ? NULL : motion, within_mm, a->mirrored, TRUE };
  /* Of a seat that is no seat one may say this or that, where an edge touches another within the
   * last bits; and so of a hole that is none. */
  if (within_mm > 0 && a->finished == NULL && b->finished == NULL)
    return NULL;
  char *wrong = within_mm > 0 && a->finished != NULL && leaves_hole_out (a)
                    ? NULL
                    : problem_lists_differ (&g, a, b);

  if (wrong == NULL
      && (a->build != b->build || fabs (a->thickness_mm - b->thickness_mm) > within_mm))
    DIFFER ("another build or thickness");
  if (wrong == NULL && a->mirrored != b->mirrored)
    DIFFER ("the other hand");
  if (wrong == NULL && a->pieces->len != b->pieces->len)
    DIFFER ("%u pieces, %u", a->pieces->len, b->pieces->len);
  if (wrong == NULL)
    wrong = finished_differ (&g, a->finished, b->finished);
  if (wrong == NULL)
    wrong = zips_differ (&g, &a->zip, &b->zip);
  if (wrong == NULL)
    wrong = seams_differ (&g, a, b);
  if (wrong == NULL)
    wrong = foams_differ (&g, a, b);
  for (guint i = 0; i < a->pieces->len && wrong == NULL; i++)
    {
      g_autofree char *here = pieces_of_hand_differ (sq_cover_piece (a, i), sq_cover_piece (b, i),
                                                     a->mirrored, motion, within_mm);
      if (here != NULL)
        wrong = g_strdup_printf ("piece %u: %s", i, here);
    }
  return wrong;
}
