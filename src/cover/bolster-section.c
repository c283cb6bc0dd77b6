/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/units.h"
#include "cover/bolster.h"
#include "cover/report.h"
#include "job/frame.h"

/* Times its diameter, a bolster is about so long (common practice, no source): offered where
 * nothing says how long it is. */
#define USUAL_LENGTH 4

/* From front to back. */
static double
depth_mm (const SqChoices *c)
{
  return c->bolster_section == SQ_SECTION_D ? c->bolster_rise_mm : c->bolster_diameter_mm;
}

static double
height_mm (const SqChoices *c)
{
  return c->bolster_section == SQ_SECTION_HALF_ROUND ? c->bolster_diameter_mm / 2
                                                     : c->bolster_diameter_mm;
}

static gboolean
measure_diameter (SqChoices *c, double seat_depth, GArray *problems)
{
  double usual = seat_depth > SQ_COINCIDE_MM ? seat_depth : c->thickness_mm;

  if (c->bolster_diameter_mm > SQ_COINCIDE_MM)
    return TRUE;
  SqProblem *p = sq_report_key (problems, SQ_PROBLEM_BOLSTER_DIAMETER, SQ_FAULT, c->cushion,
                                "bolster.diameter");
  p->facts[0] = c->bolster_diameter_mm;
  p->fixes[0] = (SqFix){ SQ_FIX_BOLSTER_DIAMETER, 0, usual };
  if (fabs (usual - c->thickness_mm) > SQ_COINCIDE_MM)
    p->fixes[1] = (SqFix){ SQ_FIX_BOLSTER_DIAMETER, 0, c->thickness_mm };
  c->bolster_diameter_mm = usual;
  return FALSE;
}

static gboolean
measure_length (SqChoices *c, double seat_length, GArray *problems)
{
  double usual = seat_length > SQ_COINCIDE_MM ? seat_length : USUAL_LENGTH * c->bolster_diameter_mm;

  if (c->bolster_length_mm > SQ_COINCIDE_MM)
    return TRUE;
  SqProblem *p = sq_report_key (problems, SQ_PROBLEM_BOLSTER_LENGTH, SQ_FAULT, c->cushion,
                                "bolster.length");
  p->facts[0] = c->bolster_length_mm;
  p->fixes[0] = (SqFix){ SQ_FIX_BOLSTER_LENGTH, 0, usual };
  c->bolster_length_mm = usual;
  return FALSE;
}

/* More than half a circle would overhang its back. */
static gboolean
measure_rise (SqChoices *c, GArray *problems)
{
  double most = c->bolster_diameter_mm / 2;

  if (c->bolster_section != SQ_SECTION_D
      || (c->bolster_rise_mm > SQ_COINCIDE_MM && c->bolster_rise_mm <= most + SQ_COINCIDE_MM))
    return TRUE;
  SqProblem *p = sq_report_key (problems, SQ_PROBLEM_BOLSTER_RISE, SQ_FAULT, c->cushion,
                                "bolster.rise");
  p->facts[0] = c->bolster_rise_mm;
  p->facts[1] = c->bolster_diameter_mm;
  p->fixes[0] = (SqFix){ SQ_FIX_BOLSTER_RISE, 0, most };
  c->bolster_rise_mm = most;
  return FALSE;
}

gboolean
sq_bolster_measure (SqChoices *c, GArray *problems)
{
  double seat_length = 0, seat_depth = 0;

  sq_outline_extents_mm (c->outline, &seat_length, &seat_depth);
  gboolean good = measure_diameter (c, seat_depth, problems);
  good &= measure_length (c, seat_length, problems);
  good &= measure_rise (c, problems);
  c->thickness_mm = height_mm (c);
  return good;
}

SqOutline *
sq_bolster_outline (const SqChoices *c)
{
  const SqPoint at[] = { { 0, 0 },
                         { c->bolster_length_mm, 0 },
                         { c->bolster_length_mm, depth_mm (c) },
                         { 0, depth_mm (c) } };
  SqCorner corners[4];
  guint n = 4;

  for (guint i = 0; i < n; i++)
    corners[i] = (SqCorner){
      .id = i + 1, .at = at[i], .front = i == 0, .given = SQ_GIVEN_CLEARANCE /* none */
    };
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &n, 1);
  return c->mirrored ? sq_outline_mirrored (outline) : g_steal_pointer (&outline);
}

SqPath *
sq_bolster_section (const SqChoices *c)
{
  double d = c->bolster_diameter_mm, eighth = d / 2 * (1 - G_SQRT2 / 2);
  /* An arc's bulge is twice its rise by its chord. */
  const SqNode round[] = { { { eighth, eighth }, 1, 0 }, { { d - eighth, d - eighth }, 1, 0 } };
  const SqNode half_round[] = { { { 0, 0 }, 0, 0 }, { { d, 0 }, 1, 1 } };
  const SqNode arc_and_back[] = { { { 0, 0 }, 2 * c->bolster_rise_mm / d, 0 }, { { 0, d }, 0, 1 } };

  switch (c->bolster_section)
    {
    case SQ_SECTION_HALF_ROUND:
      return sq_path_new (half_round, 2, TRUE);
    case SQ_SECTION_D:
      return sq_path_new (arc_and_back, 2, TRUE);
    case SQ_SECTION_ROUND:
      break;
    }
  return sq_path_new (round, 2, TRUE);
}
