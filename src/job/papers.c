/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/job.h"

SqSheet
sq_job_sheet (const SqJob *job)
{
  if (job->given & SQ_GIVEN_SHEET)
    return job->papers.sheet;
  return job->units == SQ_UNIT_IN ? SQ_SHEET_LETTER : SQ_SHEET_A4;
}

SqPatternChoice
sq_job_pattern_choice (const SqJob *job)
{
  SqPatternChoice choice = job->papers.pattern;

  if (!(job->given & SQ_GIVEN_PATTERN_SHEET))
    choice.sheet = sq_job_sheet (job);
  if (!(job->given & SQ_GIVEN_PATTERN_MARGIN))
    choice.margin_mm = job->defaults.pattern_margin_mm;
  if (!(job->given & SQ_GIVEN_PATTERN_OVERLAP))
    choice.overlap_mm = job->defaults.pattern_overlap_mm;
  return choice;
}

SqLabelSheet
sq_job_label_sheet (const SqJob *job)
{
  SqLabelSheet sheet = job->defaults.labels;
  const SqLabelSheet *own = &job->papers.labels;

  if (job->given & SQ_GIVEN_LABEL_COLUMNS)
    sheet.columns = own->columns;
  if (job->given & SQ_GIVEN_LABEL_ROWS)
    sheet.rows = own->rows;
  if (job->given & SQ_GIVEN_LABEL_SIDE)
    sheet.side_mm = own->side_mm;
  if (job->given & SQ_GIVEN_LABEL_TOP)
    sheet.top_mm = own->top_mm;
  if (job->given & SQ_GIVEN_LABEL_ACROSS)
    sheet.across_mm = own->across_mm;
  if (job->given & SQ_GIVEN_LABEL_ALONG)
    sheet.along_mm = own->along_mm;
  return sheet;
}
