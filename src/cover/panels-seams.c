/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/panels-seams.h"

#include "base/units.h"
#include "cover/panels.h"

/* ---- a run begins -------------------------------------------------------------------------- */

/* Node @at of ring @ring begins a run; all runs after it move up by one. Returns the new run, or
 * the one that begins there already. */
static guint
begin_run (SqMaking *making, guint index, guint ring, guint at)
{
  SqPiece *piece = sq_making_piece (making, index);
  const SqNode *nodes = sq_path_nodes (sq_piece_sew (piece, ring));
  guint tag = nodes[at].tag;

  if (sq_piece_run (piece, tag)->from == at)
    return tag;
  SqRun tail = *sq_piece_run (piece, tag);
  g_array_insert_val (piece->runs, tag + 1, tail);
  for (guint r = ring; r < piece->sew->len; r++)
    {
      const SqPath *old = sq_piece_sew (piece, r);
      guint n = sq_path_n_nodes (old);
      g_autofree SqNode *moved = g_memdup2 (sq_path_nodes (old), n * sizeof (SqNode));
      for (guint k = 0; k < n; k++)
        if (moved[k].tag > tag || (r == ring && moved[k].tag == tag && k >= at))
          moved[k].tag++;
      piece->sew->pdata[r] = sq_path_new (moved, n, TRUE);
      sq_path_unref ((SqPath *) old);
    }
  for (guint i = 0; i < piece->trims->len; i++)
    {
      SqTrim *trim = &g_array_index (piece->trims, SqTrim, i);
      trim->run += trim->run > tag ? 1 : 0;
    }
  sq_piece_measure_runs (piece);
  for (guint i = 0; i < making->cover->seams->len; i++)
    for (guint k = 0; k < 2; k++)
      {
        SqSeam *seam = sq_cover_seam (making->cover, i);
        SqSide *side = k == 0 ? &seam->a : &seam->b;
        if (side->n_runs == 0 || side->piece != index)
          continue;
        guint run = side->first_run + (side->first_run > tag ? 1 : 0), n = side->n_runs;
        side->first_run = run;
        for (guint j = 0; j < n; j++, run = sq_piece_next_run (piece, run))
          if (run == tag)
            {
              side->n_runs++;
              break;
            }
      }
  return tag + 1;
}

/* The run that begins @station_mm along ring @ring, made if there is none. */
static guint
run_from_station (SqMaking *making, guint index, guint ring, double station_mm)
{
  SqPiece *piece = sq_making_piece (making, index);
  const SqPath *sew = sq_piece_sew (piece, ring);
  double whole = sq_path_length_mm (sew);
  SqPath *split = sq_path_split_at (sew, &station_mm, 1);

  piece->sew->pdata[ring] = split;
  sq_path_unref ((SqPath *) sew);
  sq_piece_measure_runs (piece);
  guint i = 0;
  while (i + 1 < sq_path_n_nodes (split)
         && fabs (remainder (sq_path_station_mm (split, i) - station_mm, whole))
                > 2 * SQ_COINCIDE_MM)
    i++;
  return begin_run (making, index, ring, i);
}

/* ---- the seam over it ---------------------------------------------------------------------- */

/* How far into @side run @run begins; 0 at its start, −1: not in it. */
static double
along_side_mm (const SqCover *cover, const SqSide *side, guint piece, guint run)
{
  double along = 0;

  for (guint i = 0; i < side->n_runs && side->piece == piece; i++)
    {
      guint own = sq_side_run (cover, side, i);
      if (own == run)
        return along;
      along += sq_piece_run (sq_cover_piece (cover, piece), own)->length_mm;
    }
  return -1;
}

/* Makes a run begin @along_mm from the start of @side. */
static void
break_side (SqMaking *making, const SqSide *side, double along_mm)
{
  const SqPiece *piece = sq_cover_piece (making->cover, side->piece);

  for (guint i = 0; i < side->n_runs; i++)
    {
      const SqRun *run = sq_piece_run (piece, sq_side_run (making->cover, side, i));
      /* Figures of two pieces differ in their last bits. */
      if (fabs (along_mm) < 10 * SQ_COINCIDE_MM)
        return;
      if (along_mm < run->length_mm - 10 * SQ_COINCIDE_MM)
        {
          double start = sq_path_station_mm (sq_piece_sew (piece, run->ring), run->from);
          run_from_station (making, side->piece, run->ring, start + along_mm);
          sq_piece_remake_cut (sq_making_piece (making, side->piece));
          return;
        }
      along_mm -= run->length_mm;
    }
}

void
sq_seams_break_at (SqMaking *making, guint index, SqPoint at)
{
  SqCover *cover = making->cover;
  SqNearest near = sq_path_nearest (sq_piece_sew (sq_cover_piece (cover, index), 0), at);
  guint run = run_from_station (making, index, 0, near.station_mm);

  for (guint i = 0; i < cover->seams->len; i++)
    for (guint k = 0; k < 2; k++)
      {
        const SqSeam seam = *sq_cover_seam (cover, i);
        const SqSide *own = k == 0 ? &seam.a : &seam.b, *other = k == 0 ? &seam.b : &seam.a;
        double along = along_side_mm (cover, own, index, run);
        if (along <= 0 || other->n_runs == 0)
          continue;
        break_side (making, other, seam.length_b_mm - along);
        return;
      }
}

/* ---- seams become two ---------------------------------------------------------------------- */

typedef struct
{
  SqMaking *making;
  guint piece;
  const SqRunMoved *moved;
  GArray *seams;  /* of SqSeam: the new ones … */
  GArray *origin; /* … of guint: which they came from … */
  GArray *from;   /* … of double: and where on its side a they begin */
} Division;

/* Where @side goes from one panel to the other: stations of side a. Of side b they are counted from
 * its end, so that all of what its length differs by is left at the end of a. */
static void
add_passages (const Division *d, const SqSide *side, GArray *passages, double b_mm, gboolean is_b)
{
  const SqCover *cover = d->making->cover;
  double along = 0;

  for (guint i = 0; i + 1 < side->n_runs && side->piece == d->piece; i++)
    {
      guint run = sq_side_run (cover, side, i), next = sq_side_run (cover, side, i + 1);
      along += sq_piece_run (sq_cover_piece (cover, side->piece), run)->length_mm;
      double at = is_b ? b_mm - along : along;
      if (d->moved[run].panel != d->moved[next].panel)
        g_array_append_val (passages, at);
    }
}

/* The runs of @side from @from_mm to @to_mm of it, by their new numbers. */
static SqSide
part_of_side (const Division *d, const SqSide *side, double from_mm, double to_mm, double *length)
{
  const SqCover *cover = d->making->cover;
  SqSide part = { .piece = side->piece + (side->piece > d->piece ? 1 : 0) };
  double along = 0;

  *length = 0;
  for (guint i = 0; i < side->n_runs; i++)
    {
      guint run = sq_side_run (cover, side, i);
      double run_mm = sq_piece_run (sq_cover_piece (cover, side->piece), run)->length_mm;
      double middle = along + run_mm / 2;
      along += run_mm;
      if (middle < from_mm || middle > to_mm)
        continue;
      if (part.n_runs++ == 0)
        {
          gboolean divided = side->piece == d->piece;
          part.first_run = divided ? d->moved[run].run : run;
          part.piece += divided ? d->moved[run].panel : 0;
        }
      *length += run_mm;
    }
  return part;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return x < y ? -1 : x > y;
}

static void
divide_seam (Division *d, guint index)
{
  const SqSeam *seam = sq_cover_seam (d->making->cover, index);
  g_autoptr (GArray) passages = g_array_new (FALSE, FALSE, sizeof (double));
  double from = 0, a_mm = seam->length_a_mm, b_mm = seam->length_b_mm;

  add_passages (d, &seam->a, passages, b_mm, FALSE);
  add_passages (d, &seam->b, passages, b_mm, TRUE);
  g_array_append_val (passages, a_mm);
  g_array_sort (passages, compare_doubles);
  for (guint i = 0; i < passages->len; i++)
    {
      double to = g_array_index (passages, double, i);
      SqSeam part = *seam;
      if (to - from < 100 * SQ_COINCIDE_MM)
        continue;
      part.a = part_of_side (d, &seam->a, from, to, &part.length_a_mm);
      part.b = part_of_side (d, &seam->b, to < a_mm ? b_mm - to : 0, b_mm - from,
                             &part.length_b_mm);
      part.ease_mm = to < a_mm ? 0 : seam->ease_mm;
      g_array_append_val (d->seams, part);
      g_array_append_val (d->origin, index);
      g_array_append_val (d->from, from);
      from = to;
    }
}

/* ---- marks --------------------------------------------------------------------------------- */

/* Whether @mark, of a seam that the piece is both sides of, is nearer to its side b. */
static gboolean
lies_on_b (const SqCover *cover, const SqSeam *seam, const SqMark *mark)
{
  const SqPiece *piece = sq_cover_piece (cover, seam->a.piece);
  double nearest[2] = { INFINITY, INFINITY };

  for (guint k = 0; k < 2; k++)
    {
      const SqSide *side = k == 0 ? &seam->a : &seam->b;
      for (guint i = 0; i < side->n_runs; i++)
        {
          g_autoptr (SqPath) path = sq_piece_run_path (piece, sq_side_run (cover, side, i));
          nearest[k] = fmin (nearest[k], sq_path_nearest (path, mark->at).distance_mm);
        }
    }
  return nearest[1] < nearest[0];
}

/* @mark, of piece @piece, gets the number of the new seam it lies on, and its place there. Returns
 * that piece's new number. */
static guint
move_mark (const Division *d, guint piece, SqMark *mark)
{
  const SqCover *cover = d->making->cover;
  const SqSeam *old = sq_cover_seam (cover, (guint) mark->seam);
  gboolean on_b = old->a.piece != piece
                  || (old->b.n_runs > 0 && old->b.piece == piece && lies_on_b (cover, old, mark));
  double along = on_b ? old->length_b_mm - mark->station_mm : mark->station_mm;
  guint found = G_MAXUINT, old_index = (guint) mark->seam;

  for (guint i = 0; i < d->seams->len; i++)
    if (g_array_index (d->origin, guint, i) == old_index
        && (found == G_MAXUINT || g_array_index (d->from, double, i) < along - 5 * SQ_COINCIDE_MM))
      found = i;
  const SqSeam *seam = &g_array_index (d->seams, SqSeam, found);
  double into = along - g_array_index (d->from, double, found);
  mark->seam = (gint) found;
  mark->station_mm = fmax (on_b ? seam->length_b_mm - into : into, 0);
  return on_b ? seam->b.piece : seam->a.piece;
}

static GArray *
move_marks (const Division *d)
{
  const SqCover *cover = d->making->cover;
  GArray *panels = g_array_new (FALSE, FALSE, sizeof (gint));

  for (guint p = 0; p < cover->pieces->len; p++)
    {
      SqPiece *piece = sq_making_piece (d->making, p);
      for (guint i = 0; i < piece->marks->len; i++)
        {
          SqMark *mark = &g_array_index (piece->marks, SqMark, i);
          gint panel = mark->seam < 0 ? -1 : (gint) move_mark (d, p, mark) - (gint) p;
          if (p == d->piece)
            g_array_append_val (panels, panel);
        }
    }
  return panels;
}

/* ---- all of it ----------------------------------------------------------------------------- */

static void
renumber_problems (SqMaking *making, guint piece)
{
  for (guint i = 0; i < making->cover->problems->len; i++)
    {
      SqProblem *p = sq_cover_problem (making->cover, i);
      p->place.item += p->place.kind == SQ_AT_PIECE && p->place.item > piece ? 1 : 0;
    }
}

GArray *
sq_seams_divide (SqMaking *making, guint piece, const SqRunMoved *moved)
{
  SqCover *cover = making->cover;
  Division d = { .making = making, .piece = piece, .moved = moved };

  d.seams = g_array_new (FALSE, TRUE, sizeof (SqSeam));
  d.origin = g_array_new (FALSE, FALSE, sizeof (guint));
  d.from = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint i = 0; i < cover->seams->len; i++)
    divide_seam (&d, i);
  GArray *panels = move_marks (&d);
  renumber_problems (making, piece);
  g_array_unref (cover->seams);
  cover->seams = d.seams;
  g_array_unref (d.origin);
  g_array_unref (d.from);
  return panels;
}
