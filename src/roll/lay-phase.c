/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-phase.h"

#define NM_PER_UM 1000

static gint64
floor_div (gint64 a, gint64 b)
{
  return a / b - (a % b != 0 && (a < 0) != (b < 0));
}

/* Half up. */
static gint64
to_um (gint64 nm)
{
  return floor_div (nm + NM_PER_UM / 2, NM_PER_UM);
}

SqLayPhase
sq_lay_phase (const SqLayItem *item, SqGridPose pose, SqGrid at, const SqLayStrip *strip)
{
  SqGrid anchor = sq_grid_posed (item->phase.anchor, pose);
  gint64 off_x = (gint64) at.x - anchor.x - strip->pattern.x;
  gint64 off_y = (gint64) at.y - anchor.y - strip->pattern.y;

  return (SqLayPhase){ .along_nm = item->phase.along_nm + off_x * NM_PER_UM,
                       .across_nm = item->phase.across_nm + off_y * NM_PER_UM,
                       .repeat_along_nm = item->phase.repeat_along_nm,
                       .repeat_across_nm = item->phase.repeat_across_nm,
                       .drop_nm = item->phase.drop_nm };
}

/* The number of the first place from @from_nm on, one every @repeat_nm, that rounds to @um or
 * more. */
static gint64
first_place (gint64 from_nm, gint64 repeat_nm, gint64 um)
{
  return -floor_div (from_nm + NM_PER_UM / 2 - um * NM_PER_UM, repeat_nm);
}

gint64
sq_lay_phase_next_y (const SqLayPhase *phase, gint64 y)
{
  if (phase->repeat_across_nm <= 0)
    return y;
  gint64 column = first_place (phase->across_nm, phase->repeat_across_nm, y);
  return to_um (phase->across_nm + column * phase->repeat_across_nm);
}

gint64
sq_lay_phase_last_y (const SqLayPhase *phase, gint64 y)
{
  if (phase->repeat_across_nm <= 0)
    return y;
  gint64 column = first_place (phase->across_nm, phase->repeat_across_nm, y + 1) - 1;
  return to_um (phase->across_nm + column * phase->repeat_across_nm);
}

/* Where the pattern begins in the column at the allowed height @y. */
static gint64
begin_of_column (const SqLayPhase *phase, gint64 y)
{
  if (phase->drop_nm != 0 && phase->repeat_across_nm > 0
      && first_place (phase->across_nm, phase->repeat_across_nm, y) % 2 != 0)
    return phase->along_nm + phase->drop_nm;
  return phase->along_nm;
}

gint64
sq_lay_phase_next_x (const SqLayPhase *phase, gint64 y, gint64 x)
{
  gint64 from_nm = begin_of_column (phase, y), repeat_nm = phase->repeat_along_nm;

  if (repeat_nm <= 0)
    return x;
  return to_um (from_nm + first_place (from_nm, repeat_nm, x) * repeat_nm);
}

gint64
sq_lay_phase_last_x (const SqLayPhase *phase, gint64 y, gint64 x)
{
  gint64 from_nm = begin_of_column (phase, y), repeat_nm = phase->repeat_along_nm;

  if (repeat_nm <= 0)
    return x;
  return to_um (from_nm + (first_place (from_nm, repeat_nm, x + 1) - 1) * repeat_nm);
}
