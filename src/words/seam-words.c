/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/seam-words.h"

#include "base/units.h"
#include "words/lengths.h"
#include "words/piece-names.h"
#include "words/text-table.h"

#include <glib/gi18n.h>

/* More edges than this are told by the first and the last of them. */
#define MOST_EDGES 3

/* --- sides --------------------------------------------------------------------------------- */

/* The edges that @side runs along, in order of travel. New array of SqId. */
static GArray *
edges_of (const SqCover *cover, const SqSide *side)
{
  const SqPiece *piece = sq_cover_piece (cover, side->piece);
  GArray *edges = g_array_new (FALSE, FALSE, sizeof (SqId));
  for (guint i = 0, run = side->first_run; i < side->n_runs;
       i++, run = sq_piece_next_run (piece, run))
    {
      SqId edge = sq_piece_run (piece, run)->edge;
      gboolean is_new = edge != 0;
      for (guint k = 0; k < edges->len; k++)
        is_new &= g_array_index (edges, SqId, k) != edge;
      if (is_new)
        g_array_append_val (edges, edge);
    }
  return edges;
}

/* "A–B (front)", "A–B (front), B–C (right)", "A–B (front) … F–A (left)" */
static char *
edge_names (const SqCover *cover, const GArray *edges)
{
  GString *list = g_string_new (NULL);
  if (edges->len > MOST_EDGES)
    {
      g_autofree char *first = sq_words_edge (cover, g_array_index (edges, SqId, 0));
      g_autofree char *last = sq_words_edge (cover, g_array_index (edges, SqId, edges->len - 1));
      /* Translators: the first and the last of several edges in a row. */
      g_string_append_printf (list, _ ("%s … %s"), first, last);
    }
  for (guint i = 0; i < edges->len && edges->len <= MOST_EDGES; i++)
    sq_text_add_to_list (list, sq_words_edge (cover, g_array_index (edges, SqId, i)));
  return g_string_free (list, FALSE);
}

/* Where a run lies on a strip: the words of its edge or end. */
static const char *
place_on_strip (const SqPiece *piece, guint run)
{
  g_autoptr (SqPath) path = sq_piece_run_path (piece, run);
  SqBox all = sq_path_box (sq_piece_sew (piece, 0)), own = sq_path_box (path);
  SqPoint middle = sq_between (own.min, own.max, 0.5), centre = sq_between (all.min, all.max, 0.5);
  if (sq_piece_run (piece, run)->role == SQ_RUN_ZIP)
    return _ ("zip edge");
  if (sq_piece_run (piece, run)->role == SQ_RUN_JOIN)
    return middle.x < centre.x ? _ ("left end") : _ ("right end");
  return middle.y > centre.y ? _ ("upper edge") : _ ("lower edge");
}

/* Of a tube, whose left and right edges are at the bolster's ends. */
static const char *
place_on_tube (const SqPiece *piece, guint run)
{
  g_autoptr (SqPath) path = sq_piece_run_path (piece, run);
  SqBox all = sq_path_box (sq_piece_sew (piece, 0)), own = sq_path_box (path);
  if (sq_piece_run (piece, run)->role == SQ_RUN_ZIP)
    return _ ("zip edge");
  if (sq_piece_run (piece, run)->role == SQ_RUN_JOIN)
    return _ ("long edge");
  return own.max.x < (all.min.x + all.max.x) / 2 ? _ ("left end") : _ ("right end");
}

/* Of a face or an underside. */
static char *
place_on_flat (const SqCover *cover, const SqSide *side)
{
  const SqPiece *piece = sq_cover_piece (cover, side->piece);
  g_autoptr (GArray) edges = edges_of (cover, side);
  g_autofree char *names = edge_names (cover, edges);
  if (edges->len == 0)
    return g_strdup (_ ("a rounded corner"));
  if (sq_piece_run (piece, side->first_run)->role == SQ_RUN_CORNER)
    /* Translators: %s is an edge, as in A–B (front). */
    return g_strdup_printf (_ ("end of skirt %s"), names);
  if (piece->skirts->len > 0)
    return g_strdup_printf (_ ("skirt %s"), names);
  return g_strdup_printf (ngettext ("edge %s", "edges %s", edges->len), names);
}

/* Whether @side of the wrap lies on its top (1), under it (−1), or goes over the front (0). */
static int
height_on_wrap (const SqCover *cover, const SqSide *side)
{
  const SqPiece *piece = sq_cover_piece (cover, side->piece);
  int height = 0;
  for (guint i = 0; i < side->n_runs; i += MAX (side->n_runs - 1, 1))
    {
      g_autoptr (SqPath) run = sq_piece_run_path (piece, sq_side_run (cover, side, i));
      SqPoint middle = sq_path_point_at (run, sq_path_length_mm (run) / 2, NULL);
      height += sq_finished_to_frame (cover->finished, middle).y > 0 ? 1 : -1;
    }
  return CLAMP (height, -1, 1);
}

static char *
place_on_wrap (const SqCover *cover, const SqSide *side)
{
  g_autofree char *edge = place_on_flat (cover, side);
  int height = height_on_wrap (cover, side);
  if (height == 0)
    return g_steal_pointer (&edge);
  /* Translators: %s is "edge C–D (back)". */
  return g_strdup_printf (height > 0 ? _ ("%s of its top") : _ ("%s of its underside"), edge);
}

char *
sq_words_seam_side (const SqCover *cover, const SqSide *side)
{
  const SqPiece *piece = sq_cover_piece (cover, side->piece);
  g_autofree char *name = sq_words_piece (cover, side->piece);
  g_autofree char *place = NULL;
  if (side->n_runs == 0)
    return g_strdup (_ ("Hem"));
  if (piece->role == SQ_ROLE_BOXING || piece->role == SQ_ROLE_ZIP_STRIP)
    place = g_strdup (place_on_strip (piece, side->first_run));
  else if (piece->role == SQ_ROLE_TUBE)
    place = g_strdup (place_on_tube (piece, side->first_run));
  else if (piece->role == SQ_ROLE_DISC)
    place = g_strdup (_ ("all round"));
  else if (piece->role == SQ_ROLE_WRAP)
    place = place_on_wrap (cover, side);
  else if (piece->role == SQ_ROLE_SIDE
           && sq_piece_run (piece, side->first_run)->role == SQ_RUN_JOIN)
    place = g_strdup (_ ("back end"));
  else
    place = place_on_flat (cover, side);
  /* Translators: a piece and a place on it: "Front boxing, upper edge". */
  return g_strdup_printf (_ ("%s, %s"), name, place);
}

char *
sq_words_seam_fit (const SqSeam *seam, const SqLengthStyle *style)
{
  g_autofree char *ease = NULL;
  if (fabs (seam->ease_mm) < SQ_SEAM_MM)
    return g_strdup (_ ("equally long"));
  ease = sq_words_fine_length (fabs (seam->ease_mm), style);
  return g_strdup_printf (_ ("%s to ease in"), ease);
}

char *
sq_words_seam_sentence (const SqCover *cover, guint index, const SqLengthStyle *style)
{
  const SqSeam *seam = sq_cover_seam (cover, index);
  g_autofree char *a = sq_words_seam_side (cover, &seam->a);
  g_autofree char *b = sq_words_seam_side (cover, &seam->b);
  g_autofree char *length_a = sq_words_length (seam->length_a_mm, style);
  g_autofree char *length_b = sq_words_length (seam->length_b_mm, style);
  g_autofree char *fit = sq_words_seam_fit (seam, style);
  if (seam->b.n_runs == 0)
    return g_strdup_printf (_ ("%s, %s: hem"), a, length_a);
  /* Translators: two sides that meet in a seam, each with its length, and how they fit. */
  return g_strdup_printf (_ ("%s, %s – %s, %s: %s"), a, length_a, b, length_b, fit);
}

/* --- notches ------------------------------------------------------------------------------- */

/* The run whose sew line the mark stands on. */
static guint
run_at (const SqPiece *piece, SqPoint at)
{
  double best = INFINITY;
  guint found = 0;
  for (guint ring = 0; ring < piece->sew->len; ring++)
    {
      const SqPath *sew = sq_piece_sew (piece, ring);
      SqNearest nearest = sq_path_nearest (sew, at);
      if (nearest.distance_mm >= best)
        continue;
      best = nearest.distance_mm;
      found = sq_path_nodes (sew)[nearest.segment].tag;
    }
  return MIN (found, piece->runs->len - 1);
}

char *
sq_words_notch (const SqCover *cover, guint index, const SqMark *mark, const SqLengthStyle *style)
{
  const SqPiece *piece = sq_cover_piece (cover, index);
  const SqRun *run = sq_piece_run (piece, run_at (piece, mark->at));
  g_autofree char *depth = sq_words_fine_length (mark->depth_mm, style);
  const char *kind = mark->kind == SQ_MARK_CLIP ? _ ("Clip")
                     : mark->count <= 1         ? _ ("Single notch")
                     : mark->count == 2         ? _ ("Double notch")
                                                : _ ("Triple notch");
  if (run->edge == 0)
    /* Translators: the kind of a notch, and how deep it is cut. */
    return g_strdup_printf (_ ("%s, cut %s deep"), kind, depth);
  g_autofree char *edge = sq_words_edge (cover, run->edge);
  /* Translators: the kind of a notch, the edge it stands on, and how deep it is cut. */
  return g_strdup_printf (_ ("%s on edge %s, cut %s deep"), kind, edge, depth);
}

char *
sq_words_corner_notch (const SqCover *cover, const SqCornerNotch *notch, const SqLengthStyle *style)
{
  g_autofree char *corner = sq_words_corner (cover->cushion, notch->corner);
  g_autofree char *leg = sq_words_figure (notch->leg_mm, style);
  g_autofree char *leg_again = sq_words_length (notch->leg_mm, style);
  g_autofree char *apex = sq_words_fine_length (notch->apex_mm, style);
  if (notch->dart)
    return g_strdup_printf (_ ("Corner %s: nothing is cut out; a dart"), corner);
  /* Translators: what is cut out at a corner, and how far its inner point is from the corner. */
  return g_strdup_printf (_ ("Corner %s: cut out %s × %s, its point %s from the corner"), corner,
                          leg, leg_again, apex);
}
