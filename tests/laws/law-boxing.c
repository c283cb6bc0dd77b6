/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/laws.h"

#include "base/units.h"

/* The stretch of the outline that a strip is sewn to; stations as its x, cyclic. */
typedef struct
{
  guint hole;
  double from_mm, to_mm;
  gboolean is_zip;
} Strip;

static Strip
strip_of (const SqPiece *piece)
{
  Strip strip = { piece->hole, INFINITY, -INFINITY, piece->role == SQ_ROLE_ZIP_STRIP };

  for (guint i = 0; i < piece->runs->len; i++)
    {
      const SqRun *run = sq_piece_run (piece, i);
      const SqNode *nodes = sq_path_nodes (sq_piece_sew (piece, 0));
      if (run->role != SQ_RUN_PERIMETER)
        continue;
      strip.from_mm = fmin (strip.from_mm, fmin (nodes[run->from].at.x, nodes[run->to].at.x));
      strip.to_mm = fmax (strip.to_mm, fmax (nodes[run->from].at.x, nodes[run->to].at.x));
    }
  return strip;
}

/* Plain strips and lower halves of the zip: together once round each ring. */
static GArray *
strips_of (const SqCover *cover)
{
  GArray *strips = g_array_new (FALSE, FALSE, sizeof (Strip));

  for (guint i = 0; i < cover->pieces->len; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      if (piece->role == SQ_ROLE_BOXING || (piece->role == SQ_ROLE_ZIP_STRIP && !piece->upper))
        {
          Strip strip = strip_of (piece);
          g_array_append_val (strips, strip);
        }
    }
  return strips;
}

static double
apart (double a, double b, double whole)
{
  return fabs (remainder (a - b, whole));
}

/* ---- the cloth ----------------------------------------------------------------------------- */

static double
cloth_width_mm (const LawCase *c, SqId id)
{
  const SqCloth *cloth = sq_plan_cloth (c->plan, id);
  return cloth != NULL && (cloth->given & SQ_GIVEN_CLOTH_WIDTH) ? cloth->width_mm
                                                                : c->job->defaults.cloth_width_mm;
}

/* A strip across the roll is no longer than the cloth is wide; one along it no longer than the
 * rule of the house. */
static char *
check_length (const LawCase *c, const SqCover *cover, guint index)
{
  const SqPiece *piece = sq_cover_piece (cover, index);
  SqBox sew = sq_path_box (sq_piece_sew (piece, 0)), cut = sq_path_box (sq_piece_cut (piece, 0));
  gboolean along = fabs (cos (piece->grain_rad)) > 0.5;
  double width = cloth_width_mm (c, piece->cloth);

  if (along && sew.max.x - sew.min.x > c->job->defaults.boxing_plain_most_mm + 1e-6)
    return g_strdup_printf ("strip %u is %.9g mm long", index, sew.max.x - sew.min.x);
  if (!along && cut.max.x - cut.min.x > width + 1e-6)
    return g_strdup_printf ("strip %u is %.9g mm long, the cloth %.9g wide", index,
                            cut.max.x - cut.min.x, width);
  return NULL;
}

/* ---- the joins ----------------------------------------------------------------------------- */

/* How far @station is from the nearest corner that a boxing turns at. */
static double
from_corner_mm (const SqFinishedRing *ring, double station)
{
  double nearest = INFINITY, whole = sq_path_length_mm (ring->path);

  for (guint i = 0; i < ring->n_edges; i++)
    if (fabs (ring->edges[i].turn_rad) > 5 * SQ_RAD_PER_DEG)
      nearest = fmin (nearest, apart (ring->edges[i].start_mm, station, whole));
  return nearest;
}

static gboolean
is_zip_end (const SqCover *cover, const Strip *strip, double station)
{
  const SqFinishedRing *ring = &cover->finished->rings[0];
  double whole = sq_path_length_mm (ring->path);

  if (cover->zip.place != SQ_ZIP_BOXING || strip->hole != 0)
    return FALSE;
  for (guint i = 0; i < ring->n_edges; i++)
    if (ring->edges[i].id == cover->zip.edge)
      return apart (ring->edges[i].start_mm + cover->zip.from_mm, station, whole) < 1e-6
             || apart (ring->edges[i].start_mm + cover->zip.to_mm, station, whole) < 1e-6;
  return FALSE;
}

static char *
check_joins (const LawCase *c, const SqCover *cover, const GArray *strips)
{
  double clear = c->job->defaults.join_clear_mm - 1e-6;

  if (has_problem (cover, SQ_PROBLEM_JOIN_NO_ROOM))
    return NULL;
  for (guint i = 0; i < strips->len; i++)
    {
      const Strip *s = &g_array_index (strips, Strip, i);
      const SqFinishedRing *ring = &cover->finished->rings[s->hole];
      double whole = sq_path_length_mm (ring->path), corner = from_corner_mm (ring, s->from_mm);
      if (whole - (s->to_mm - s->from_mm) < 1e-6)
        continue; /* one strip all round: its join is where it has to be */
      if (s->to_mm - s->from_mm < clear && !is_zip_end (cover, s, s->from_mm))
        return g_strdup_printf ("joins %.9g mm apart", s->to_mm - s->from_mm);
      if (is_zip_end (cover, s, s->from_mm))
        continue;
      if (corner > 1e-6 && corner < clear)
        return g_strdup_printf ("a join %.9g mm from a corner", corner);
      for (guint k = 0; k < strips->len; k++)
        {
          const Strip *other = &g_array_index (strips, Strip, k);
          double d = apart (other->from_mm, s->from_mm, whole);
          if (k != i && other->hole == s->hole && d < clear)
            return g_strdup_printf ("joins %.9g mm apart", d);
        }
    }
  return NULL;
}

static char *
check_sums (const SqCover *cover, const GArray *strips)
{
  for (guint r = 0; r < cover->finished->n_rings; r++)
    {
      double sum = 0, whole = sq_path_length_mm (cover->finished->rings[r].path);
      for (guint i = 0; i < strips->len; i++)
        {
          const Strip *s = &g_array_index (strips, Strip, i);
          sum += s->hole == r ? s->to_mm - s->from_mm : 0;
        }
      if (fabs (sum - whole) > 1e-6)
        return g_strdup_printf ("strips of ring %u are %.9g mm, its outline %.9g", r, sum, whole);
    }
  return NULL;
}

/* Every strip is as high as the cushion, or half that beside a zip between two. */
static char *
check_height (const SqCover *cover, guint index)
{
  const SqPiece *piece = sq_cover_piece (cover, index);
  SqBox sew = sq_path_box (sq_piece_sew (piece, 0));
  gboolean half = piece->role == SQ_ROLE_ZIP_STRIP && cover->zip.method == SQ_ZIP_TWO_PART;
  double expected = cover->thickness_mm * (half ? 0.5 : 1);

  if (fabs (sew.max.y - sew.min.y - expected) > 1e-9)
    return g_strdup_printf ("strip %u is %.9g mm high, not %.9g", index, sew.max.y - sew.min.y,
                            expected);
  return NULL;
}

/* ---- plates -------------------------------------------------------------------------------- */

/* The face, or a panel of it, that has skirts; NULL: none. */
static const SqPiece *
plate_of (const SqCover *cover)
{
  for (guint i = 0; i < cover->pieces->len; i++)
    if (sq_cover_piece (cover, i)->skirts->len > 0)
      return sq_cover_piece (cover, i);
  return NULL;
}

/* Skirts and the boxing let in between them go once round, and are equally high. */
static char *
check_plate (const SqCover *cover)
{
  const SqPiece *plate = plate_of (cover);
  double whole = sq_path_length_mm (cover->finished->rings[0].path), sum = 0;
  double depth = plate != NULL ? g_array_index (plate->skirts, SqSkirt, 0).depth_mm : 0;

  for (guint i = 0; i < cover->seams->len; i++)
    {
      const SqSeam *seam = sq_cover_seam (cover, i);
      gboolean below = seam->kind == SQ_SEAM_PERIMETER || seam->kind == SQ_SEAM_ZIP
                       || seam->kind == SQ_SEAM_WELT;
      SqPieceRole roles[] = { sq_cover_piece (cover, seam->a.piece)->role,
                              sq_cover_piece (cover, seam->b.piece)->role };
      /* a zip of two parts lies between two undersides */
      if (below && (roles[0] == SQ_ROLE_UNDERSIDE) != (roles[1] == SQ_ROLE_UNDERSIDE))
        sum += seam->length_a_mm;
    }
  if (fabs (sum - whole) > 1e-6)
    return g_strdup_printf ("skirts and strips are %.9g mm long, the outline %.9g", sum, whole);
  for (guint i = 0; i < cover->pieces->len && depth > 0; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      SqBox sew = sq_path_box (sq_piece_sew (piece, 0));
      if ((piece->role == SQ_ROLE_BOXING || piece->role == SQ_ROLE_LET_IN)
          && fabs (sew.max.y - sew.min.y - depth) > 1e-9)
        return g_strdup_printf ("boxing %.9g mm high beside skirts of %.9g", sew.max.y - sew.min.y,
                                depth);
    }
  return NULL;
}

/* Whether a cover has skirts with boxing let in between them. */
static gboolean
is_mixed (const SqCover *cover)
{
  gboolean has_skirts = plate_of (cover) != NULL;

  return cover->build == SQ_BUILD_BOXED
             ? has_skirts
             : cover->build == SQ_BUILD_FOLDED_CORNER
                   && (first_piece (cover, SQ_ROLE_BOXING) != G_MAXUINT
                       || first_piece (cover, SQ_ROLE_LET_IN) != G_MAXUINT);
}

char *
law_boxing (const LawCase *c)
{
  for (guint i = 0; i < c->plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (c->plan, i);
      char *wrong = NULL;
      if (is_mixed (cover) && (wrong = check_plate (cover)) != NULL)
        return wrong;
      if (is_mixed (cover) || cover->build != SQ_BUILD_BOXED || cover->pieces->len == 0
          || has_problem (cover, SQ_PROBLEM_BOXING_TOO_SHORT))
        continue;
      g_autoptr (GArray) strips = strips_of (cover);
      wrong = check_sums (cover, strips);
      if (wrong == NULL)
        wrong = check_joins (c, cover, strips);
      for (guint p = 0; p < cover->pieces->len && wrong == NULL; p++)
        {
          SqPieceRole role = sq_cover_piece (cover, p)->role;
          if (role != SQ_ROLE_BOXING && role != SQ_ROLE_ZIP_STRIP)
            continue;
          wrong = check_length (c, cover, p);
          if (wrong == NULL)
            wrong = check_height (cover, p);
        }
      if (wrong != NULL)
        return wrong;
    }
  return NULL;
}
