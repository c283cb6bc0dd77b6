/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/arrow.h"

/* Half of the shaft, mm. */
#define SHAFT_MM 0.26

/* Half of the head, as a part of its length. */
#define HEAD 0.45

/* All of it is an area: nobody takes it for one of the lines it stands beside. */
void
sq_set_arrow (SqSceneBuilder *builder, SqPoint at, SqVector to, double length_mm, double head_mm)
{
  SqPoint tip = sq_moved (at, to, length_mm / 2), base = sq_moved (tip, to, -head_mm);
  SqPoint end = sq_moved (at, to, -length_mm / 2);
  SqVector left = sq_left (to);
  const SqNode ring[] = { { tip, 0, 0 },
                          { sq_moved (base, left, HEAD * head_mm), 0, 0 },
                          { sq_moved (base, left, SHAFT_MM), 0, 0 },
                          { sq_moved (end, left, SHAFT_MM), 0, 0 },
                          { sq_moved (end, left, -SHAFT_MM), 0, 0 },
                          { sq_moved (base, left, -SHAFT_MM), 0, 0 },
                          { sq_moved (base, left, -HEAD * head_mm), 0, 0 } };

  sq_scene_begin_colour (builder, 0, 1);
  sq_scene_add_nodes (builder, ring, G_N_ELEMENTS (ring), TRUE);
}
