/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/units.h"
#include "cover/report.h"
#include "cover/zip.h"

/* A tube's join is closed for so much at both ends (common practice, no source). */
#define OFF_TUBE_END_MM (2 * SQ_MM_PER_INCH)

/* A filling goes in from an end of the opening, bent: two thirds of its length will do, and half of
 * it with some force. */
static void
judge_tube (SqMaking *making, double length)
{
  const SqChoices *c = &making->choices;
  SqZip *zip = &making->cover->zip;

  zip->needed_mm = length * 2 / 3;
  zip->sliders = zip->run_mm > c->house->two_sliders_over_mm + SQ_COINCIDE_MM ? 2 : 1;
  zip->length_mm = zip->run_mm + 2 * c->zip_extension_mm;
  zip->opening = SQ_OPENING_GOES_IN;
  if (zip->run_mm >= zip->needed_mm - SQ_OPENING_MM)
    return;
  gboolean fold = c->foam_folds && zip->run_mm >= length / 2 - SQ_OPENING_MM;
  zip->opening = fold ? SQ_OPENING_FOLD : SQ_OPENING_TOO_SHORT;
  SqProblem *p = sq_report_edge (making->cover->problems,
                                 fold ? SQ_PROBLEM_ZIP_FOLD_FOAM : SQ_PROBLEM_ZIP_TOO_SHORT,
                                 fold ? SQ_NOTE : SQ_FAULT, c->cushion, zip->edge);
  p->facts[0] = zip->run_mm;
  p->facts[1] = fold ? length : c->foam_folds ? length / 2 : zip->needed_mm;
  p->fixes[0] = (SqFix){ SQ_FIX_ZIP_RULES, 0, 0 };
}

void
sq_zip_along_tube (SqMaking *making, double *from, double *to)
{
  const SqChoices *c = &making->choices;
  const SqFinished *f = making->cover->finished;
  const SqFinishedEdge *back = &f->rings[0].edges[f->back];
  const SqCushion *cushion = c->cushion;
  SqZip *zip = &making->cover->zip;
  double length = back->end_mm - back->start_mm;
  double off = fmin (OFF_TUBE_END_MM, length / 6);
  SqZipRun run = { FALSE, off, length - off };

  if (cushion->given & SQ_GIVEN_ZIP_FROM)
    run.from_mm = cushion->zip.from_mm;
  if (cushion->given & SQ_GIVEN_ZIP_TO)
    run.to_mm = cushion->zip.to_mm;
  if (c->mirrored)
    run = (SqZipRun){ FALSE, length - run.to_mm, length - run.from_mm };
  double least = fmin (c->house->join_clear_mm, length / 4);
  if (run.from_mm < least - SQ_COINCIDE_MM || run.to_mm > length - least + SQ_COINCIDE_MM
      || run.to_mm - run.from_mm < least)
    {
      SqProblem *p = sq_report_key (making->cover->problems, SQ_PROBLEM_ZIP_TOO_LONG, SQ_FAULT,
                                    cushion, "zip.to");
      p->facts[0] = run.to_mm - run.from_mm;
      p->facts[1] = length - 2 * least;
      p->fixes[0] = (SqFix){ SQ_FIX_ZIP_RULES, 0, 0 };
      run = (SqZipRun){ FALSE, off, length - off };
    }
  zip->place = SQ_ZIP_TUBE;
  zip->method = c->zip_method;
  zip->edge = back->id;
  zip->from_mm = run.from_mm;
  zip->to_mm = run.to_mm;
  zip->run_mm = run.to_mm - run.from_mm;
  judge_tube (making, length);
  /* The back is travelled from right to left. */
  *from = length - run.to_mm;
  *to = length - run.from_mm;
}
