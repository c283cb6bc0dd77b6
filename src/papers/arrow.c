/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/arrow.h"

void
sq_set_arrow (SqSceneBuilder *builder, SqPoint at, SqVector to, double length_mm, double head_mm)
{
  SqPoint tip = sq_moved (at, to, length_mm / 2), base = sq_moved (tip, to, -head_mm);
  const SqNode head[] = { { tip, 0, 0 },
                          { sq_moved (base, sq_left (to), 0.45 * head_mm), 0, 0 },
                          { sq_moved (base, sq_left (to), -0.45 * head_mm), 0, 0 } };

  sq_scene_begin_stroke (builder, SQ_PEN_INK);
  sq_scene_add_line (builder, sq_moved (at, to, -length_mm / 2), base);
  sq_scene_begin_colour (builder, 0, 1);
  sq_scene_add_nodes (builder, head, G_N_ELEMENTS (head), TRUE);
}
