/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/laws.h"

#include "base/units.h"

static const SqRun *
run_of (const SqCover *cover, const SqSide *side, guint i)
{
  return sq_piece_run (sq_cover_piece (cover, side->piece), sq_side_run (cover, side, i));
}

/* Run @i of side a meets run n − 1 − i of side b. */
static char *
check_runs (const SqCover *cover, guint index)
{
  const SqSeam *seam = sq_cover_seam (cover, index);
  guint n = seam->a.n_runs;

  if (seam->b.n_runs != n)
    return g_strdup_printf ("seam %u: %u runs meet %u", index, n, seam->b.n_runs);
  for (guint i = 0; i < n; i++)
    {
      const SqRun *a = run_of (cover, &seam->a, i), *b = run_of (cover, &seam->b, n - 1 - i);
      if (fabs (a->length_mm - b->length_mm) > SQ_SEAM_MM)
        return g_strdup_printf ("seam %u, run %u: %.9g mm meets %.9g mm", index, i, a->length_mm,
                                b->length_mm);
      if (seam->kind == SQ_SEAM_PERIMETER && a->edge != b->edge)
        return g_strdup_printf ("seam %u, run %u: edge %u meets edge %u", index, i, a->edge,
                                b->edge);
      if (a->role != b->role)
        return g_strdup_printf ("seam %u, run %u: a %s meets a %s", index, i,
                                sq_run_role_name (a->role), sq_run_role_name (b->role));
    }
  return NULL;
}

static char *
check_lengths (const SqCover *cover, guint index)
{
  const SqSeam *seam = sq_cover_seam (cover, index);
  const SqSide *sides[] = { &seam->a, &seam->b };
  const double stated[] = { seam->length_a_mm, seam->length_b_mm };

  for (guint k = 0; k < 2; k++)
    {
      double sum = 0;
      for (guint i = 0; i < sides[k]->n_runs; i++)
        sum += run_of (cover, sides[k], i)->length_mm;
      if (fabs (sum - stated[k]) > 1e-6)
        return g_strdup_printf ("seam %u: side %c is %.9g mm, not %.9g", index, "ab"[k], sum,
                                stated[k]);
    }
  if (fabs (stated[0] - stated[1] - seam->ease_mm) > SQ_SEAM_MM)
    return g_strdup_printf ("seam %u: %.9g mm meets %.9g mm, ease %.9g", index, stated[0],
                            stated[1], seam->ease_mm);
  return NULL;
}

static char *
check_use (const SqCover *cover)
{
  for (guint p = 0; p < cover->pieces->len; p++)
    {
      const SqPiece *piece = sq_cover_piece (cover, p);
      g_autofree guint *uses = g_new0 (guint, piece->runs->len);
      for (guint s = 0; s < cover->seams->len; s++)
        {
          const SqSeam *seam = sq_cover_seam (cover, s);
          const SqSide *sides[] = { &seam->a, &seam->b };
          for (guint k = 0; k < 2; k++)
            for (guint i = 0; sides[k]->piece == p && i < sides[k]->n_runs; i++)
              uses[sq_side_run (cover, sides[k], i)]++;
        }
      for (guint r = 0; r < piece->runs->len; r++)
        {
          SqRunRole role = sq_piece_run (piece, r)->role;
          gboolean is_sewn = role == SQ_RUN_PERIMETER || role == SQ_RUN_CORNER
                             || role == SQ_RUN_JOIN || role == SQ_RUN_ZIP;
          if (uses[r] != (is_sewn ? 1 : 0))
            return g_strdup_printf ("piece %u (%s), run %u (%s) is in %u seams", p,
                                    sq_piece_role_name (piece->role), r, sq_run_role_name (role),
                                    uses[r]);
        }
    }
  return NULL;
}

static char *
check_cover (const SqCover *cover)
{
  char *wrong = NULL;

  for (guint i = 0; i < cover->seams->len && wrong == NULL; i++)
    {
      wrong = check_lengths (cover, i);
      if (wrong == NULL)
        wrong = check_runs (cover, i);
    }
  /* Without a boxing its seams are not there either, and the cover says so. */
  if (wrong == NULL && !has_problem (cover, SQ_PROBLEM_BOXING_TOO_SHORT))
    wrong = check_use (cover);
  return wrong;
}

char *
law_seams (const LawCase *c)
{
  char *wrong = NULL;

  for (guint i = 0; i < c->plan->covers->len && wrong == NULL; i++)
    wrong = check_cover (sq_plan_cover (c->plan, i));
  return wrong;
}

/* ---- notches ------------------------------------------------------------------------------- */

static int
compare_stations (gconstpointer a, gconstpointer b)
{
  const SqMark *ma = *(const SqMark *const *) a, *mb = *(const SqMark *const *) b;
  return ma->station_mm < mb->station_mm ? -1 : ma->station_mm > mb->station_mm;
}

/* The marks of @piece on seam @seam by increasing station; borrowed. */
static GPtrArray *
marks_on (const SqPiece *piece, guint seam)
{
  GPtrArray *marks = g_ptr_array_new ();

  for (guint i = 0; i < piece->marks->len; i++)
    {
      SqMark *mark = &g_array_index (piece->marks, SqMark, i);
      if (mark->kind == SQ_MARK_NOTCH && mark->seam == (gint) seam)
        g_ptr_array_add (marks, mark);
    }
  g_ptr_array_sort (marks, compare_stations);
  return marks;
}

static char *
check_pairs (const SqCover *cover, guint index)
{
  const SqSeam *seam = sq_cover_seam (cover, index);
  if (seam->a.piece == seam->b.piece)
    return NULL;
  g_autoptr (GPtrArray) a = marks_on (sq_cover_piece (cover, seam->a.piece), index);
  g_autoptr (GPtrArray) b = marks_on (sq_cover_piece (cover, seam->b.piece), index);

  if (a->len != b->len)
    return g_strdup_printf ("seam %u: %u notches meet %u", index, a->len, b->len);
  for (guint i = 0; i < a->len; i++)
    {
      const SqMark *ma = a->pdata[i], *mb = b->pdata[b->len - 1 - i];
      double met = seam->length_b_mm - mb->station_mm;
      if (fabs (ma->station_mm - met) > 1e-6 || ma->count != mb->count)
        return g_strdup_printf ("seam %u: %u ticks at %.9g mm meet %u at %.9g", index, ma->count,
                                ma->station_mm, mb->count, met);
    }
  return NULL;
}

/* Every notch lies on its seam's sew line where it says, and leaves half the allowance whole. */
static char *
check_notch (const SqCover *cover, guint p, const SqMark *mark)
{
  const SqPiece *piece = sq_cover_piece (cover, p);
  const SqSeam *seam = sq_cover_seam (cover, (guint) mark->seam);
  const SqSide *side = seam->a.piece == p ? &seam->a : &seam->b;
  double rest = mark->station_mm;

  for (guint i = 0; i < side->n_runs; i++)
    {
      const SqRun *run = run_of (cover, side, i);
      if (rest > run->length_mm + 1e-6)
        {
          rest -= run->length_mm;
          continue;
        }
      const SqPath *ring = sq_piece_sew (piece, run->ring);
      SqPoint at = sq_path_point_at (ring, sq_path_station_mm (ring, run->from) + rest, NULL);
      if (sq_distance (at, mark->at) > 1e-6)
        return g_strdup_printf ("piece %u: a notch is %.9g mm from its station", p,
                                sq_distance (at, mark->at));
      if (mark->depth_mm > run->allowance_mm / 2 + 1e-9)
        return g_strdup_printf ("piece %u: a notch %.9g deep in an allowance of %.9g", p,
                                mark->depth_mm, run->allowance_mm);
      return NULL;
    }
  return g_strdup_printf ("piece %u: a notch at %.9g, past its seam's end", p, mark->station_mm);
}

static guint
ticks_of (SqSideOf side)
{
  return side == SQ_SIDE_BACK ? 2 : side == SQ_SIDE_RIGHT ? 3 : 1;
}

/* Ticks on the face: 1, but for the middles of edges. A mark is told by the place it has on the
 * finished outline, or below it on a skirt. */
static char *
check_ticks (const SqCover *cover)
{
  guint top = first_piece (cover, SQ_ROLE_FACE);
  if (top == G_MAXUINT)
    return NULL;
  const SqPiece *piece = sq_cover_piece (cover, top);

  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (piece->marks, SqMark, i);
      guint expected = 1;
      if (mark->kind != SQ_MARK_NOTCH)
        continue;
      for (guint r = 0; r < cover->finished->n_rings; r++)
        for (guint k = 0; k < cover->finished->rings[r].n_edges; k++)
          {
            const SqFinishedRing *ring = &cover->finished->rings[r];
            const SqFinishedEdge *e = &ring->edges[k];
            double depth = piece->skirts->len > 0
                               ? g_array_index (piece->skirts, SqSkirt, 0).depth_mm
                               : 0;
            SqVector dir;
            SqPoint middle = sq_path_point_at (ring->path, (e->own_start_mm + e->own_end_mm) / 2,
                                               &dir);
            SqPoint below = sq_moved (middle, sq_right (dir), depth);
            if (e->own_end_mm > e->own_start_mm
                && fmin (sq_distance (mark->at, middle), sq_distance (mark->at, below)) < 1e-6)
              expected = ticks_of (e->side);
          }
      if (mark->count != expected)
        return g_strdup_printf ("%u ticks at (%.6g, %.6g), not %u", mark->count, mark->at.x,
                                mark->at.y, expected);
    }
  return NULL;
}

static char *
check_cover_notches (const SqCover *cover)
{
  char *wrong = NULL;

  for (guint i = 0; i < cover->seams->len && wrong == NULL; i++)
    wrong = check_pairs (cover, i);
  for (guint p = 0; p < cover->pieces->len; p++)
    {
      const SqPiece *piece = sq_cover_piece (cover, p);
      for (guint i = 0; i < piece->marks->len && wrong == NULL; i++)
        {
          const SqMark *mark = &g_array_index (piece->marks, SqMark, i);
          if (mark->kind == SQ_MARK_NOTCH)
            wrong = check_notch (cover, p, mark);
        }
    }
  /* The edges of a knife-edge face are not those of the outline. */
  return wrong != NULL || cover->pieces->len == 0 || cover->build == SQ_BUILD_KNIFE_EDGE
             ? wrong
             : check_ticks (cover);
}

char *
law_notches (const LawCase *c)
{
  char *wrong = NULL;

  for (guint i = 0; i < c->plan->covers->len && wrong == NULL; i++)
    wrong = check_cover_notches (sq_plan_cover (c->plan, i));
  return wrong;
}
