/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/laws.h"

#include "base/units.h"

/* Rules for ties look to the right, so of equal choices a mirrored seat may take the other one.
 * What is compared here does not hang on that choice, or may differ by what still counts as a
 * tie. */

#define SAME_MM 1e-6

/* A free curve is fitted from its other end. */
static double
within_mm (const SqCushion *cushion)
{
  for (guint r = 0; r < sq_outline_n_rings (cushion->outline); r++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (cushion->outline, r, &n);
      for (guint i = 0; i < n; i++)
        if (corners[i].shape == SQ_SHAPE_CURVE)
          return 4 * SQ_FIT_MM;
    }
  return SAME_MM;
}

static SqSideOf
side_mirrored (SqSideOf side)
{
  return side == SQ_SIDE_LEFT ? SQ_SIDE_RIGHT : side == SQ_SIDE_RIGHT ? SQ_SIDE_LEFT : side;
}

/* @a's every node, mirrored, lies on @b. */
static char *
check_on (const SqPath *a, const SqPath *b, double within)
{
  for (guint i = 0; i < sq_path_n_nodes (a); i++)
    {
      SqPoint p = sq_path_nodes (a)[i].at;
      double d = sq_path_nearest (b, sq_point (-p.x, p.y)).distance_mm;
      if (d > within)
        return g_strdup_printf ("(%.9g, %.9g) mirrored is %.9g mm off", p.x, p.y, d);
    }
  if (fabs (sq_path_area_mm2 (a) - sq_path_area_mm2 (b)) > within * sq_path_length_mm (a))
    return g_strdup_printf ("%.9g mm2, mirrored %.9g", sq_path_area_mm2 (a), sq_path_area_mm2 (b));
  return NULL;
}

/* Whether what is left between curves and clearances may be counted to either edge: parallels that
 * don't meet are joined straight. */
static gboolean
may_have_gaps (const SqCover *cover)
{
  gboolean any_curve = FALSE, any_clearance = FALSE;

  for (guint r = 0; r < sq_outline_n_rings (cover->cushion->outline); r++)
    {
      guint n;
      const SqCorner *corners = sq_outline_ring (cover->cushion->outline, r, &n);
      for (guint i = 0; i < n; i++)
        {
          any_curve |= corners[i].shape != SQ_SHAPE_STRAIGHT;
          any_clearance |= corners[i].kind != SQ_EDGE_FREE
                           || (corners[i].given & SQ_GIVEN_CLEARANCE) != 0;
        }
    }
  return any_curve && any_clearance;
}

/* The edge of @ring, mirrored, that is edge @i of @of: an edge's corner at its end is its start in
 * the mirror. G_MAXUINT: none. */
static guint
mirrored_edge (const SqFinishedRing *of, guint i, const SqFinishedRing *ring)
{
  for (guint k = 0; k < ring->n_edges; k++)
    if (ring->edges[k].id == of->edges[(i + 1) % of->n_edges].id)
      return k;
  return G_MAXUINT;
}

/* Edge for edge: from the front edge on one runs to the right, the other to the left. */
static char *
check_edges (const SqFinishedRing *a, const SqFinishedRing *b, double within)
{
  guint n = a->n_edges;

  if (b->n_edges != n)
    return g_strdup_printf ("%u edges, mirrored %u", n, b->n_edges);
  for (guint i = 0; i < n; i++)
    {
      guint k = mirrored_edge (a, i, b);
      if (k == G_MAXUINT)
        return g_strdup_printf ("edge %u is not in the mirror", a->edges[i].id);
      const SqFinishedEdge *ea = &a->edges[i], *eb = &b->edges[k];
      if (fabs ((ea->own_end_mm - ea->own_start_mm) - (eb->own_end_mm - eb->own_start_mm)) > within
          || eb->side != side_mirrored (ea->side) || eb->kind != ea->kind || eb->seen != ea->seen)
        return g_strdup_printf ("edge %u: %.9g mm on side %u, mirrored %.9g mm on side %u", ea->id,
                                ea->own_end_mm - ea->own_start_mm, ea->side,
                                eb->own_end_mm - eb->own_start_mm, eb->side);
    }
  return NULL;
}

static char *
check_notches (const SqPiece *a, const SqPiece *b)
{
  for (guint i = 0; i < a->corner_notches->len; i++)
    {
      const SqCornerNotch *na = &g_array_index (a->corner_notches, SqCornerNotch, i), *nb = NULL;
      for (guint k = 0; k < b->corner_notches->len; k++)
        if (g_array_index (b->corner_notches, SqCornerNotch, k).corner == na->corner)
          nb = &g_array_index (b->corner_notches, SqCornerNotch, k);
      if (nb == NULL || nb->dart != na->dart || fabs (nb->leg_mm - na->leg_mm) > SAME_MM
          || fabs (nb->mouth_mm - na->mouth_mm) > SAME_MM)
        return g_strdup_printf ("corner %u has another notch in the mirror", na->corner);
    }
  return NULL;
}

/* How many seams the underside, or the wrap, has round it, and how short the shortest is. */
static void
measure_strips (const SqCover *cover, guint *n, double *shortest)
{
  guint piece = cover->build == SQ_BUILD_WRAPPED_FRONT ? 0 : 1;

  *n = 0;
  *shortest = INFINITY;
  for (guint i = 0; i < cover->seams->len; i++)
    {
      const SqSeam *seam = sq_cover_seam (cover, i);
      if (seam->kind != SQ_SEAM_PERIMETER || (seam->a.piece != piece && seam->b.piece != piece))
        continue;
      (*n)++;
      *shortest = fmin (*shortest, seam->length_a_mm);
    }
}

/* Of two edges that are as far back the one to the right is the back. */
static gboolean
backs_match (const SqCover *a, const SqCover *b)
{
  return mirrored_edge (&a->finished->rings[0], a->finished->back, &b->finished->rings[0])
         == b->finished->back;
}

/* Of two sides that are as long a zip may be parallel to the other one. */
static gboolean
zips_match (const SqCover *a, const SqCover *b)
{
  const SqFinishedRing *ring_a = &a->finished->rings[0], *ring_b = &b->finished->rings[0];

  for (guint i = 0; i < ring_a->n_edges; i++)
    if (ring_a->edges[i].id == a->zip.edge)
      {
        guint k = mirrored_edge (ring_a, i, ring_b);
        return k != G_MAXUINT && ring_b->edges[k].id == b->zip.edge;
      }
  return a->zip.place == b->zip.place;
}

static gboolean
zip_is_in_seam (const SqCover *cover)
{
  return cover->zip.place == SQ_ZIP_BACK_SEAM || cover->zip.place == SQ_ZIP_SIDE_SEAM;
}

/* A zip that runs front to back is a third from the right, and so not mirrored. */
static gboolean
zip_is_told_by_hand (const SqCover *cover)
{
  for (guint p = 0; p < cover->pieces->len; p++)
    {
      const SqPiece *under = sq_cover_piece (cover, p);
      for (guint i = 0; i < under->marks->len && under->role == SQ_ROLE_UNDERSIDE; i++)
        {
          const SqMark *mark = &g_array_index (under->marks, SqMark, i);
          if (mark->kind != SQ_MARK_ZIP)
            continue;
          const SqNode *ends = sq_path_nodes (mark->line);
          SqVector along = { -(ends[1].at.x - ends[0].at.x), ends[1].at.y - ends[0].at.y };
          return fabs (sq_dot (along, cover->finished->front_dir)) * 1.000001
                 < fabs (sq_cross (cover->finished->front_dir, along));
        }
    }
  return FALSE;
}

static gboolean
is_face (SqPieceRole role)
{
  return role == SQ_ROLE_FACE || role == SQ_ROLE_UNDERSIDE || role == SQ_ROLE_WRAP;
}

/* Whether a face is of several panels. */
static gboolean
is_divided (const SqCover *cover)
{
  for (guint i = 0; i < cover->pieces->len; i++)
    if (is_face (sq_cover_piece (cover, i)->role) && sq_cover_piece (cover, i)->n_ordinal > 1)
      return TRUE;
  return FALSE;
}

/* Whether piece @p of @a is, mirrored, one of the same role of @b. */
static char *
check_face (const SqCover *a, guint p, const SqCover *b, double within)
{
  const SqPiece *face = sq_cover_piece (a, p);
  char *wrong = NULL;

  for (guint q = 0; q < b->pieces->len; q++)
    {
      const SqPiece *other = sq_cover_piece (b, q);
      if (other->role != face->role)
        continue;
      g_clear_pointer (&wrong, g_free);
      if (face->cut->len != other->cut->len)
        wrong = g_strdup ("rings are missing in the mirror");
      for (guint r = 0; r < face->cut->len && wrong == NULL; r++)
        wrong = check_on (sq_piece_cut (face, r), sq_piece_cut (other, r), within);
      if (wrong == NULL)
        return check_notches (face, other);
    }
  return wrong != NULL ? wrong : g_strdup ("a face is missing in the mirror");
}

/* Of a cut line that falls into halves as great the mirror may keep the other one. */
static char *
check_faces (const SqCover *a, const SqCover *b, double within)
{
  if (has_problem (a, SQ_PROBLEM_CUT_SPLIT))
    return NULL;
  /* A zip in a seam has its own allowance, wherever the tie lets it lie. */
  if (zip_is_in_seam (a) && !zips_match (a, b))
    return NULL;
  for (guint p = 0; p < a->pieces->len; p++)
    {
      SqPieceRole role = sq_cover_piece (a, p)->role;
      if (!is_face (role)
          || (role == SQ_ROLE_UNDERSIDE && (is_divided (a) || is_divided (b))
              && (zip_is_told_by_hand (a) || zip_is_told_by_hand (b) || !zips_match (a, b))))
        continue;
      char *wrong = check_face (a, p, b, within);
      if (wrong != NULL)
        return wrong;
    }
  return NULL;
}

static char *
check_zip (const SqCover *a, const SqCover *b, double within)
{
  if (zip_is_told_by_hand (a) || zip_is_told_by_hand (b) || !zips_match (a, b))
    return NULL;
  if (a->zip.place != b->zip.place || fabs (a->zip.run_mm - b->zip.run_mm) > SQ_TIE_MM + within)
    return g_strdup_printf ("a zip of %.9g mm, mirrored %.9g", a->zip.run_mm, b->zip.run_mm);
  return NULL;
}

static char *
check_choices (const SqCover *a, const SqCover *b, double within)
{
  guint n_a, n_b;
  double shortest_a, shortest_b;

  /* A zip in the seam divides strips that are joined at the right of two corners as good. */
  if (zip_is_in_seam (a) || is_divided (a) || is_divided (b))
    return check_zip (a, b, within);
  measure_strips (a, &n_a, &shortest_a);
  measure_strips (b, &n_b, &shortest_b);
  if (n_a != n_b || fabs (shortest_a - shortest_b) > SQ_TIE_MM + within)
    return g_strdup_printf ("%u seams with the underside, the shortest %.9g mm; mirrored %u and "
                            "%.9g",
                            n_a, shortest_a, n_b, shortest_b);
  return check_zip (a, b, within);
}

/* The same edge is front in the mirror only if it is marked; keys that name an edge or say where
 * along it, or to which side, can't be mirrored by leaving them as they are. */
static SqCushion *
prepared (const SqCover *cover)
{
  SqId id = cover->finished->rings[0].edges[0].id;
  SqCorner corner = *sq_outline_corner (cover->cushion->outline, id, NULL, NULL);
  corner.front = TRUE;
  g_autoptr (SqOutline) outline = sq_outline_with_corner (cover->cushion->outline, &corner);
  SqCushion *cushion = sq_cushion_with_outline (cover->cushion, outline);
  cushion->given &= ~(guint32) (SQ_GIVEN_ZIP_EDGE | SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO
                                | SQ_GIVEN_STRIPES_SHIFT);
  return cushion;
}

/* Asking for the other hand cuts just what a mirrored seat is cut to. */
static char *
check_other_hand (const SqCover *mirrored_seat, const SqCover *other_hand)
{
  if (mirrored_seat->pieces->len != other_hand->pieces->len)
    return g_strdup_printf ("the other hand has %u pieces, not %u", other_hand->pieces->len,
                            mirrored_seat->pieces->len);
  for (guint p = 0; p < other_hand->pieces->len; p++)
    {
      const SqPath *a = sq_piece_cut (sq_cover_piece (mirrored_seat, p), 0),
                   *b = sq_piece_cut (sq_cover_piece (other_hand, p), 0);
      if (sq_path_n_nodes (a) != sq_path_n_nodes (b))
        return g_strdup_printf ("piece %u of the other hand has another cut line", p);
      for (guint i = 0; i < sq_path_n_nodes (a); i++)
        if (sq_distance (sq_path_nodes (a)[i].at, sq_path_nodes (b)[i].at) > SAME_MM)
          return g_strdup_printf ("piece %u of the other hand is cut elsewhere", p);
    }
  return NULL;
}

/* The two faces of a knife edge are each other's mirror image, cut and sewn. */
static char *
check_congruent (const SqCover *cover)
{
  if (cover->build != SQ_BUILD_KNIFE_EDGE || cover->pieces->len == 0)
    return NULL;
  const SqPiece *top = sq_cover_piece (cover, first_piece (cover, SQ_ROLE_FACE)),
                *under = sq_cover_piece (cover, first_piece (cover, SQ_ROLE_UNDERSIDE));
  if (is_divided (cover))
    return NULL;
  char *wrong = check_on (sq_piece_sew (top, 0), sq_piece_sew (under, 0), SAME_MM);
  return wrong != NULL ? wrong : check_on (sq_piece_cut (top, 0), sq_piece_cut (under, 0), SAME_MM);
}

/* Clearances may leave a crumb of a seat whose edges are all equal within a tie. */
static gboolean
is_crumb (const SqCover *cover)
{
  return sq_path_length_mm (cover->finished->rings[0].path) < 20 * SQ_TIE_MM;
}

static char *
check_cover (const LawCase *c, const SqCover *cover)
{
  g_autoptr (SqCushion) cushion = prepared (cover);
  g_autoptr (SqOutline) outline = sq_outline_mirrored (cushion->outline);
  g_autoptr (SqCushion) opposite = sq_cushion_with_outline (cushion, outline);
  g_autoptr (SqCover) a = sq_cover_new (c->job, cushion, FALSE, NULL);
  g_autoptr (SqCover) b = sq_cover_new (c->job, opposite, FALSE, NULL);
  double within = within_mm (cushion);
  char *wrong = NULL;

  if (b->finished == NULL || a->finished->n_rings != b->finished->n_rings)
    return g_strdup ("the mirrored seat can't be finished");
  for (guint r = 0; r < a->finished->n_rings && wrong == NULL; r++)
    {
      wrong = check_on (a->finished->rings[r].path, b->finished->rings[r].path, within);
      if (wrong == NULL && !may_have_gaps (cover))
        wrong = check_edges (&a->finished->rings[r], &b->finished->rings[r], within);
    }
  if (wrong == NULL && (a->pieces->len == 0) != (b->pieces->len == 0))
    /* A side that a skirt or a wrap can follow may get a gap that it can't. */
    return may_have_gaps (cover) ? NULL : g_strdup ("the mirrored cover can't be made");
  g_autoptr (SqCover) other_hand = sq_cover_new (c->job, cushion, TRUE, NULL);
  if (wrong == NULL)
    wrong = check_other_hand (b, other_hand);
  /* What a gap is counted to tells where a wrap's side begins. */
  gboolean same_sides = a->build != SQ_BUILD_WRAPPED_FRONT || !may_have_gaps (cover);
  if (wrong == NULL && a->pieces->len > 0 && same_sides)
    wrong = check_faces (a, b, within);
  /* What follows from the lengths of edges, and from which one is the back. */
  if (wrong == NULL && a->pieces->len > 0 && !may_have_gaps (cover) && backs_match (a, b))
    wrong = check_choices (a, b, within);
  return wrong;
}

char *
law_mirroring (const LawCase *c)
{
  char *wrong = NULL;

  for (guint i = 0; i < c->plan->covers->len && wrong == NULL; i++)
    {
      const SqCover *cover = sq_plan_cover (c->plan, i);
      wrong = check_congruent (cover);
      /* A bolster is its own mirror image, wherever its seat lies. */
      if (wrong == NULL && cover->finished != NULL && cover->build != SQ_BUILD_BOLSTER
          && !is_crumb (cover))
        wrong = check_cover (c, cover);
    }
  return wrong;
}
