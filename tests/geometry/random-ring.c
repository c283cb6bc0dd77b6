/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "geometry/random-ring.h"

SqPoint
random_point (double reach_mm)
{
  double x = g_test_rand_double_range (-reach_mm, reach_mm);
  double y = g_test_rand_double_range (-reach_mm, reach_mm);
  return sq_point (x, y);
}

/* Mostly as in seats: slight bows, now and then half a circle or more. */
static double
random_bulge (void)
{
  double bulge = pow (10, g_test_rand_double_range (-3, 0.3));
  return g_test_rand_bit () ? bulge : -bulge;
}

/* Whether the segment sets off into its sector and arrives out of it, 3° or more aside. */
static gboolean
keeps_to_sector (const SqSegment *s)
{
  SqVector in = sq_segment_direction (s, 0), out = sq_segment_direction (s, 1);
  double margin = sin (3 * G_PI / 180);

  return sq_cross (sq_unit (s->from), in) > margin && sq_cross (sq_unit (s->to), out) > margin;
}

SqPath *
random_ring (guint n_nodes, double reach_mm, double arcs)
{
  g_autofree SqNode *nodes = g_new0 (SqNode, n_nodes);
  double start = g_test_rand_double_range (0, 2 * G_PI), step = 2 * G_PI / n_nodes;

  for (guint i = 0; i < n_nodes; i++)
    {
      double angle = start + (i + g_test_rand_double_range (-0.2, 0.2)) * step;
      double radius = reach_mm * g_test_rand_double_range (1.0 / 3, 1);
      nodes[i] = (SqNode){ { radius * cos (angle), radius * sin (angle) }, 0, i };
    }
  for (guint i = 0; i < n_nodes; i++)
    if (g_test_rand_double () < arcs)
      {
        SqSegment s = { nodes[i].at, nodes[(i + 1) % n_nodes].at, random_bulge () };
        while (!keeps_to_sector (&s) && fabs (s.bulge) > 1e-4)
          s.bulge /= 2;
        nodes[i].bulge = fabs (s.bulge) > 1e-4 ? s.bulge : 0;
      }
  return sq_path_new (nodes, n_nodes, TRUE);
}

SqPath *
random_tangle (guint n_nodes, double reach_mm, double arcs, gboolean is_ring)
{
  g_autofree SqNode *nodes = g_new0 (SqNode, n_nodes);

  for (guint i = 0; i < n_nodes; i++)
    nodes[i] = (SqNode){ random_point (reach_mm),
                         g_test_rand_double () < arcs ? random_bulge () : 0, i };
  return sq_path_new (nodes, n_nodes, is_ring);
}
