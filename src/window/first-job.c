/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/first-job.h"

#include "base/units.h"
#include "window/figures.h"

#include <langinfo.h>

SqUnit
sq_first_job_units (void)
{
  const char *measure = nl_langinfo (_NL_MEASUREMENT_MEASUREMENT);
  return measure != NULL && measure[0] == 2 ? SQ_UNIT_IN : SQ_UNIT_MM;
}

SqLengthStyle
sq_first_job_style (SqUnit units)
{
  SqLengthStyle style = sq_length_style_default (units);
  style.decimal = sq_figures_decimal ();
  style.with_unit = TRUE;
  return style;
}

double
sq_first_job_rounded_mm (SqUnit units, double mm)
{
  double step = units == SQ_UNIT_IN ? SQ_MM_PER_INCH : SQ_MM_PER_CM;
  return round (mm / step) * step;
}

SqOutline *
sq_first_job_outline (const SqOutline *bare, const SqEdgeKind kinds[SQ_N_TOWARDS], SqUnit units,
                      const SqDefaults *defaults)
{
  SqOutline *now = sq_outline_with_kinds_towards (bare, kinds);
  guint n;
  sq_outline_ring (now, 0, &n);
  for (guint i = 0; i < n; i++)
    {
      SqCorner corner = sq_outline_ring (now, 0, &n)[i];
      SqOutline *next;
      if (corner.kind == SQ_EDGE_FREE)
        corner.given &= ~(guint32) SQ_GIVEN_KIND; /* that is what a side is anyway */
      else if (units != SQ_UNIT_IN)
        {
          corner.clearance_mm = defaults->clearance_metric_mm[corner.kind];
          corner.given |= SQ_GIVEN_CLEARANCE;
        }
      next = sq_outline_with_corner (now, &corner);
      sq_outline_unref (now);
      now = next;
    }
  return now;
}

SqJob *
sq_first_job_new (const SqOutline *outline, double thickness_mm, SqUnit units,
                  const SqDefaults *defaults)
{
  g_autoptr (SqCushion) cushion = sq_cushion_new (1, outline);
  g_autoptr (SqJob) bare = sq_job_new (defaults);
  SqJob *job;
  cushion->thickness_mm = thickness_mm;
  cushion->given |= SQ_GIVEN_THICKNESS;
  job = sq_job_with_cushion (bare, cushion);
  job->units = units;
  job->given |= SQ_GIVEN_UNITS;
  return job;
}
