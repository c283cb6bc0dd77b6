/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/across.h"

#include "base/units.h"
#include "cover/panels.h"
#include "cover/report.h"

/* The middle of plain cloth is tried narrower by this share of the cloth, so many times. */
#define STEP_SHARE (1.0 / 32)
#define N_STEPS 24

/* Lays are in whole micrometres: what they may be off by at most (mm). */
#define LAY_MM 0.005

/* A join is sewn before all else. */
#define STEP_JOINS 1

/* A piece as it would lie on the roll, and where it could be joined; stations across the grain. */
typedef struct
{
  const SqPiece *piece;
  const SqClothChoice *cloth;
  double join_mm, clear_mm;
  SqVector along, across; /* unit; the grain, and to its left */
  SqBox sew, cut;         /* of the outlines: x along the grain, y across */
  SqPoint centre;         /* in the same way: what the joins are symmetric about */
} Wide;

typedef struct
{
  double at[2];
  guint n;
} Joins;

static const SqClothChoice *
cloth_of (const SqChoices *c, const SqPiece *piece)
{
  const SqClothChoice *cloths[] = { &c->underside, &c->sides, &c->welt };

  for (guint k = 0; k < G_N_ELEMENTS (cloths); k++)
    if (cloths[k]->id == piece->cloth)
      return cloths[k];
  return &c->face;
}

/* Width across the roll in the narrowest turn that the piece may take. */
static double
least_width_mm (const SqPiece *piece)
{
  return piece->turns == SQ_TURNS_QUARTER ? fmin (piece->width_mm, piece->height_mm)
                                          : piece->width_mm;
}

static gboolean
is_too_wide (const SqPiece *piece, const SqClothChoice *cloth)
{
  return least_width_mm (piece) > cloth->width_mm + SQ_COINCIDE_MM;
}

static gboolean
may_be_joined (const SqPiece *piece)
{
  return piece->role == SQ_ROLE_FACE || piece->role == SQ_ROLE_UNDERSIDE
         || piece->role == SQ_ROLE_WRAP;
}

/* ---- where --------------------------------------------------------------------------------- */

/* The box of @path as it would lie on the roll: x along the grain, y across. */
static SqBox
box_on_grain (const SqPath *path, double grain_rad)
{
  g_autoptr (SqPath) turned = sq_path_moved (path, -grain_rad, sq_point (0, 0));
  return sq_path_box (turned);
}

static Wide
look_at (const SqMaking *making, const SqPiece *piece, const SqClothChoice *cloth)
{
  Wide w = { .piece = piece,
             .cloth = cloth,
             .join_mm = making->choices.join_mm,
             .clear_mm = making->choices.house->join_clear_mm };

  w.along = sq_point (cos (piece->grain_rad), sin (piece->grain_rad));
  w.across = sq_left (w.along);
  w.sew = box_on_grain (sq_piece_sew (piece, 0), piece->grain_rad);
  w.cut = box_on_grain (sq_piece_cut (piece, 0), piece->grain_rad);
  w.centre = sq_between (w.cut.min, w.cut.max, 0.5);
  if (piece->phase.across)
    w.centre.y = sq_dot (piece->phase.anchor, w.across);
  return w;
}

/* Whether a zip runs along the line at @station, or all but along it. */
static gboolean
runs_by_zip (const Wide *w, double station)
{
  const SqPiece *piece = w->piece;

  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (piece->marks, SqMark, i);
      if (mark->kind != SQ_MARK_ZIP || mark->line == NULL)
        continue;
      SqBox box = box_on_grain (mark->line, piece->grain_rad);
      if (box.min.y > station - w->clear_mm && box.max.y < station + w->clear_mm)
        return TRUE;
    }
  return FALSE;
}

/* Whether a panel whose cut line goes from @low to @high beside the centre fits the cloth, with its
 * pattern where it has to fall. */
static gboolean
fits (const Wide *w, double low, double high)
{
  const SqClothChoice *cloth = w->cloth;
  const SqPhase *phase = &w->piece->phase;
  double at = phase->across ? phase->across_mm : cloth->centre_across_mm;

  if (high - low > cloth->width_mm + SQ_COINCIDE_MM)
    return FALSE;
  if (!cloth->phase_across)
    return TRUE;
  /* The first place over the near edge; a pattern without a repeat is there once. */
  if (cloth->repeat_across_mm > 0)
    at += cloth->repeat_across_mm * ceil ((-low - at) / cloth->repeat_across_mm);
  return at + low >= 0 && at + high <= cloth->width_mm - LAY_MM;
}

/* A cushion and its mirror image are joined at the same places. */
static gboolean
fits_both_hands (const Wide *w, double low, double high)
{
  return fits (w, low, high) && fits (w, -high, -low);
}

/* Whether a middle @middle_mm wide between sew lines leaves panels that fit the cloth. A side that
 * ends before the middle does has no join. */
static gboolean
try_middle (const Wide *w, double middle_mm, Joins *joins)
{
  double from = w->cut.min.y - w->centre.y, to = w->cut.max.y - w->centre.y; /* the middle's */
  double half = middle_mm / 2;

  joins->n = 0;
  for (int side = -1; side <= 1; side += 2)
    {
      double at = w->centre.y + side * half;
      double beyond = side < 0 ? at - w->sew.min.y : w->sew.max.y - at;
      if (beyond <= 0)
        continue;
      gboolean side_fits = side < 0 ? fits_both_hands (w, from, w->join_mm - half)
                                    : fits_both_hands (w, half - w->join_mm, to);
      if (beyond < w->clear_mm - 1e-6 || !side_fits || runs_by_zip (w, at)
          || !sq_panels_possible (w->piece, sq_scale (w->across, at), w->along, w->join_mm))
        return FALSE;
      joins->at[joins->n++] = at;
    }
  for (guint i = 0; i < joins->n; i++)
    if (joins->at[i] < w->centre.y)
      from = -half - w->join_mm;
    else
      to = half + w->join_mm;
  return joins->n > 0 && fits_both_hands (w, from, to);
}

/* The widest middle there is a place for. */
static gboolean
find_joins (const Wide *w, Joins *joins)
{
  double most = w->cloth->width_mm - 2 * w->join_mm, repeat = w->cloth->repeat_across_mm;

  if (repeat > 0)
    {
      for (double n = floor ((most + 1e-6) / repeat); n >= 1; n--)
        if (try_middle (w, n * repeat, joins))
          return TRUE;
      return FALSE;
    }
  /* Sides are no narrower than joins have to be apart. */
  double room = 2 * (fmin (w->centre.y - w->sew.min.y, w->sew.max.y - w->centre.y) - w->clear_mm);
  most = fmin (most, room);
  for (guint i = 0; i < N_STEPS; i++)
    if (most > w->clear_mm && try_middle (w, most * (1 - i * STEP_SHARE), joins))
      return TRUE;
  return FALSE;
}

/* ---- joining ------------------------------------------------------------------------------- */

static SqProblem *
report_width (SqMaking *making, guint i, SqProblemCode code, const SqClothChoice *cloth)
{
  const SqPiece *piece = sq_cover_piece (making->cover, i);
  const SqChoices *c = &making->choices;
  SqProblem *p = sq_report_piece (making->cover->problems, code, SQ_FAULT, c->cushion, i);

  p->facts[0] = least_width_mm (piece);
  p->facts[1] = cloth->width_mm;
  return p;
}

/* Stripes the other way, where the piece fits so. */
static void
offer_turn (const SqChoices *c, const SqPiece *piece, SqProblem *problem, guint k)
{
  SqStripesRun other = c->stripes_run == SQ_STRIPES_SIDE_TO_SIDE ? SQ_STRIPES_FRONT_TO_BACK
                                                                 : SQ_STRIPES_SIDE_TO_SIDE;

  if (may_be_joined (piece) && piece->height_mm <= problem->facts[1])
    problem->fixes[k] = (SqFix){ SQ_FIX_STRIPES_RUN, 0, other };
}

/* All panels of a piece lie the same way in a cloth with a pattern, and where it falls is settled
 * for all of them by one point. */
static void
settle_pattern (SqPiece *piece, const Wide *w)
{
  const SqClothChoice *cloth = w->cloth;

  if (!cloth->phase_across && !cloth->phase_along)
    return;
  piece->turns = SQ_TURNS_NONE;
  if (piece->phase.across || piece->phase.along)
    return;
  piece->phase = (SqPhase){ .along = cloth->phase_along,
                            .across = cloth->phase_across,
                            .anchor = sq_turned (w->centre, piece->grain_rad),
                            .along_mm = cloth->centre_along_mm,
                            .across_mm = cloth->centre_across_mm };
}

static void
put_off_seams (SqCover *cover)
{
  for (guint i = 0; i < cover->seams->len; i++)
    sq_cover_seam (cover, i)->step += STEP_JOINS;
}

/* Returns how many pieces there are more. */
static guint
join_piece (SqMaking *making, guint i, const Wide *w, const Joins *joins)
{
  guint n = 0;

  settle_pattern (sq_making_piece (making, i), w);
  /* From the right of the grain to the left: the left part is divided further. */
  for (guint k = 0; k < joins->n; k++)
    n += sq_panels_split (making, i, sq_scale (w->across, joins->at[k]), w->along, SQ_SEAM_JOIN,
                          SQ_RUN_JOIN, w->join_mm, STEP_JOINS)
             ? 1
             : 0;
  return n;
}

void
sq_across_join (SqMaking *making)
{
  const SqChoices *c = &making->choices;
  SqCover *cover = making->cover;
  gboolean any = FALSE;

  if (c->seams_across != SQ_ACROSS_TWO_JOINS)
    return;
  for (guint i = 0; i < cover->pieces->len; i++)
    {
      SqPiece *piece = sq_making_piece (making, i);
      const SqClothChoice *cloth = cloth_of (c, piece);
      Joins joins;
      sq_piece_measure (piece);
      if (!may_be_joined (piece) || !is_too_wide (piece, cloth))
        continue;
      Wide w = look_at (making, piece, cloth);
      if (!find_joins (&w, &joins))
        {
          offer_turn (c, piece, report_width (making, i, SQ_PROBLEM_ACROSS_NO_PLACE, cloth), 0);
          continue;
        }
      if (!any)
        put_off_seams (cover);
      any = TRUE;
      i += join_piece (making, i, &w, &joins);
    }
}

static gboolean
is_told (const SqCover *cover, guint piece)
{
  for (guint i = 0; i < cover->problems->len; i++)
    {
      const SqProblem *p = sq_cover_problem (cover, i);
      if (p->code == SQ_PROBLEM_ACROSS_NO_PLACE && p->place.item == piece)
        return TRUE;
    }
  return FALSE;
}

void
sq_across_check (SqMaking *making)
{
  const SqChoices *c = &making->choices;
  const SqCover *cover = making->cover;

  for (guint i = 0; i < cover->pieces->len; i++)
    {
      const SqPiece *piece = sq_cover_piece (cover, i);
      const SqClothChoice *cloth = cloth_of (c, piece);
      Joins joins;
      if (!is_too_wide (piece, cloth) || is_told (cover, i))
        continue;
      SqProblem *p = report_width (making, i, SQ_PROBLEM_WIDER_THAN_CLOTH, cloth);
      Wide w = look_at (making, piece, cloth);
      guint k = 0;
      if (may_be_joined (piece) && c->seams_across == SQ_ACROSS_NONE && find_joins (&w, &joins))
        p->fixes[k++] = (SqFix){ SQ_FIX_SEAMS_ACROSS, 0, SQ_ACROSS_TWO_JOINS };
      offer_turn (c, piece, p, k);
    }
}
