/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edit-stripes.h"

#include "cover/choices.h"
#include "window/figures.h"

#include <glib/gi18n.h>

/* --- how they lie -------------------------------------------------------------------------- */

/* The choices of @cover's cushion in @job; @centre_on (may be NULL) instead of its own. */
static SqChoices
choices_of (const SqJob *job, const SqCover *cover, const SqCentreOn *centre_on)
{
  g_autoptr (GArray) problems = g_array_new (FALSE, TRUE, sizeof (SqProblem));
  g_autoptr (SqCushion) cushion = sq_cushion_dup (sq_job_cushion (job, cover->cushion->id));
  SqChoices choices;
  if (centre_on != NULL)
    {
      cushion->stripes.centre_on = *centre_on;
      cushion->given |= SQ_GIVEN_CENTRE_ON;
    }
  sq_choices_resolve (job, cushion, cushion->outline, cover->mirrored, &choices, problems);
  choices.cushion = NULL; /* it goes with this call */
  choices.outline = NULL;
  return choices;
}

const SqCloth *
sq_stripes_cloth (const SqJob *job, const SqCover *cover)
{
  const SqPiece *face = cover != NULL ? sq_figures_face (cover) : NULL;
  const SqCloth *cloth = NULL;
  if (face == NULL || cover->finished == NULL || sq_job_cushion (job, cover->cushion->id) == NULL)
    return NULL;
  if (face->cloth != 0)
    cloth = sq_job_cloth (job, face->cloth);
  return cloth != NULL && sq_cloth_is_striped (cloth) ? cloth : NULL;
}

SqCentreOn
sq_stripes_centre_on (const SqJob *job, const SqCover *cover)
{
  return choices_of (job, cover, NULL).centre_on;
}

/* The direction on the face that a shift counts in. */
static SqVector
shift_direction (const SqChoices *choices, const SqCover *cover)
{
  SqVector front = cover->finished->front_dir;
  return choices->stripes_run == SQ_STRIPES_SIDE_TO_SIDE ? sq_left (front) : front;
}

/* @shift less whole repeats: between half a repeat below 0 and half a repeat. */
static double
reduced (double shift_mm, double repeat_mm)
{
  return repeat_mm > 0 ? shift_mm - repeat_mm * ceil (shift_mm / repeat_mm - 0.5) : shift_mm;
}

/* The shift nearest to @shift that puts a stripe or a gap in the middle of the front. */
static double
nearest_centred (const SqJob *job, const SqCover *cover, const SqChoices *now, double shift_mm,
                 double repeat_mm)
{
  const SqCentreOn targets[] = { SQ_CENTRE_STRIPE, SQ_CENTRE_GAP };
  SqVector across = sq_left (sq_turned (sq_point (1, 0), sq_figures_face (cover)->grain_rad));
  double sense = sq_dot (shift_direction (now, cover), across) < 0 ? -1 : 1, best = INFINITY;
  for (guint i = 0; i < G_N_ELEMENTS (targets); i++)
    {
      SqChoices wanted = choices_of (job, cover, &targets[i]);
      double at = sense * (now->face.centre_across_mm - wanted.face.centre_across_mm);
      double off = reduced (at - shift_mm, repeat_mm);
      if (fabs (off) < fabs (best))
        best = off;
    }
  return shift_mm + best;
}

/* --- changes ------------------------------------------------------------------------------- */

/* A job in which they are shifted by @shift (as @cover counts it). */
static SqJob *
with_shift (const SqJob *job, const SqCover *cover, double shift_mm)
{
  g_autoptr (SqCushion) changed = sq_cushion_dup (sq_job_cushion (job, cover->cushion->id));
  changed->stripes.shift_mm = cover->mirrored ? -shift_mm : shift_mm;
  changed->given |= SQ_GIVEN_STRIPES_SHIFT;
  if (fabs (shift_mm) < 1e-9)
    {
      changed->stripes.shift_mm = 0;
      changed->given &= ~(guint32) SQ_GIVEN_STRIPES_SHIFT;
    }
  if (sq_stripes_centre_on (job, cover) == SQ_CENTRE_NONE)
    {
      changed->stripes.centre_on = SQ_CENTRE_STRIPE;
      changed->given |= SQ_GIVEN_CENTRE_ON;
    }
  return sq_job_with_cushion (job, changed);
}

SqJob *
sq_stripes_moved (const SqJob *job, const SqCover *cover, SqVector by, double reach_mm)
{
  const SqCloth *cloth = sq_stripes_cloth (job, cover);
  double step = sq_figures_step_mm (job), shift, centred;
  SqChoices now;
  if (cloth == NULL)
    return NULL;
  now = choices_of (job, cover, NULL);
  shift = now.stripes_shift_mm + sq_dot (by, shift_direction (&now, cover));
  centred = nearest_centred (job, cover, &now, shift, cloth->repeat_across_mm);
  if (fabs (centred - shift) <= reach_mm)
    shift = centred;
  else
    shift = round (shift / step) * step;
  return with_shift (job, cover, reduced (shift, cloth->repeat_across_mm));
}

const char *
sq_stripes_moved_words (void)
{
  return _ ("Shift the stripes");
}

gboolean
sq_edit_step_stripes (SqDocument *document, const SqCover *cover, int steps)
{
  const SqJob *job = sq_document_get_job (document);
  const SqCloth *cloth = sq_stripes_cloth (job, cover);
  g_autoptr (SqJob) moved = NULL;
  g_autofree char *key = NULL;
  double shift;
  if (cloth == NULL)
    return FALSE;
  shift = choices_of (job, cover, NULL).stripes_shift_mm + steps * sq_figures_step_mm (job);
  moved = with_shift (job, cover, reduced (shift, cloth->repeat_across_mm));
  key = g_strdup_printf ("stripes %u", cover->cushion->id);
  sq_document_edit (document, moved, sq_stripes_moved_words (), key);
  return TRUE;
}

static void
push (SqDocument *document, const SqCushion *changed, const char *words)
{
  g_autoptr (SqJob) job = sq_job_with_cushion (sq_document_get_job (document), changed);
  sq_document_edit (document, job, words, NULL);
}

void
sq_edit_turn_stripes (SqDocument *document, const SqCover *cover)
{
  const SqJob *job = sq_document_get_job (document);
  g_autoptr (SqCushion) changed = sq_cushion_dup (sq_job_cushion (job, cover->cushion->id));
  SqStripesRun now = choices_of (job, cover, NULL).stripes_run;
  changed->stripes.run = now == SQ_STRIPES_FRONT_TO_BACK ? SQ_STRIPES_SIDE_TO_SIDE
                                                         : SQ_STRIPES_FRONT_TO_BACK;
  changed->given |= SQ_GIVEN_STRIPES_RUN;
  push (document, changed, _ ("Turn the stripes"));
}

void
sq_edit_centre_stripes (SqDocument *document, const SqCover *cover, SqCentreOn centre_on)
{
  const SqJob *job = sq_document_get_job (document);
  g_autoptr (SqCushion) changed = sq_cushion_dup (sq_job_cushion (job, cover->cushion->id));
  changed->stripes.centre_on = centre_on;
  changed->stripes.shift_mm = 0;
  changed->given |= SQ_GIVEN_CENTRE_ON;
  changed->given &= ~(guint32) SQ_GIVEN_STRIPES_SHIFT;
  push (document, changed, _ ("Centre the stripes"));
}

void
sq_edit_zip_on_edge (SqDocument *document, SqId cushion, SqId edge)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  g_autoptr (SqCushion) changed = sq_cushion_dup (now);
  changed->zip.place = SQ_ZIP_BOXING;
  changed->zip.edge = edge;
  changed->given &= ~(guint32) (SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO | SQ_GIVEN_ZIP_AT);
  changed->given |= SQ_GIVEN_ZIP_PLACE | SQ_GIVEN_ZIP_EDGE;
  push (document, changed, _ ("Move the zip"));
}
