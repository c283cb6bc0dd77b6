/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/units.h"
#include "geometry/fit.h"

/* A curve with its chain: the chain's segments, all one after the other. */
typedef struct
{
  SqCurve curve;
  gconstpointer data;
  GArray *chain; /* of SqSegment */
} Fitted;

static void
fitted_clear (Fitted *fitted)
{
  g_clear_pointer (&fitted->chain, g_array_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Fitted, fitted_clear)

static GArray *
chain_of_nodes (const GArray *nodes, SqPoint end)
{
  GArray *chain = g_array_new (FALSE, FALSE, sizeof (SqSegment));

  for (guint i = 0; i < nodes->len; i++)
    {
      SqNode node = g_array_index (nodes, SqNode, i);
      SqPoint to = i + 1 < nodes->len ? g_array_index (nodes, SqNode, i + 1).at : end;
      SqSegment segment = { node.at, to, node.bulge };
      g_assert_cmpuint (node.tag, ==, 7);
      g_array_append_val (chain, segment);
    }
  return chain;
}

static SqPoint
curve_point (SqCurve curve, gconstpointer data, double t, SqVector *derivative)
{
  SqPoint at;
  SqVector unused;

  curve (t, &at, derivative != NULL ? derivative : &unused, data);
  return at;
}

static Fitted
fitted_curve (SqCurve curve, gconstpointer data, double within_mm)
{
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));

  g_assert_true (sq_fit_curve (curve, data, within_mm, 7, nodes));
  return (Fitted){ curve, data, chain_of_nodes (nodes, curve_point (curve, data, 1, NULL)) };
}

static void
cubic_curve (double t, SqPoint *at, SqVector *derivative, gconstpointer data)
{
  const SqPoint *p = data;
  SqPoint a = sq_between (p[0], p[1], t), b = sq_between (p[1], p[2], t);
  SqPoint c = sq_between (p[2], p[3], t);
  SqPoint d = sq_between (a, b, t), e = sq_between (b, c, t);

  *at = sq_between (d, e, t);
  *derivative = sq_scale (sq_sub (e, d), 3);
}

static Fitted
fitted_cubic (const SqPoint p[4], double within_mm)
{
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));

  g_assert_true (sq_fit_cubic (p, within_mm, 7, nodes));
  return (Fitted){ cubic_curve, p, chain_of_nodes (nodes, p[3]) };
}

static SqSegment
segment_at (const GArray *chain, guint i)
{
  return g_array_index (chain, SqSegment, i);
}

static double
chain_length_mm (const GArray *chain)
{
  double length = 0;

  for (guint i = 0; i < chain->len; i++)
    length += sq_segment_length_mm (&g_array_index (chain, SqSegment, i));
  return length;
}

/* All turns, to the left and to the right, added up. */
static double
chain_turn_rad (const GArray *chain)
{
  double turn = 0;

  for (guint i = 0; i < chain->len; i++)
    turn += fabs (sq_segment_sweep_rad (&g_array_index (chain, SqSegment, i)));
  return turn;
}

static double
chain_distance_mm (const GArray *chain, SqPoint p)
{
  double least = INFINITY, t;

  for (guint i = 0; i < chain->len; i++)
    least = fmin (least, sq_segment_nearest_mm (&g_array_index (chain, SqSegment, i), p, &t));
  return least;
}

/* Newton's steps on (curve − p)·derivative from @t. */
static double
distance_from_place_mm (const Fitted *fitted, double t, SqPoint p)
{
  double least = INFINITY;

  for (int k = 0; k < 5; k++)
    {
      SqVector d;
      SqPoint at = curve_point (fitted->curve, fitted->data, t, &d);
      least = fmin (least, sq_distance (at, p));
      double speed2 = sq_dot (d, d);
      if (speed2 > 0)
        t = CLAMP (t - sq_dot (sq_sub (at, p), d) / speed2, 0, 1);
    }
  return least;
}

/* From every place that is nearer than those beside it: near a crossing there are two. */
static double
curve_distance_mm (const Fitted *fitted, const SqPoint *samples, guint n, SqPoint p)
{
  double least = INFINITY, before = INFINITY, here = sq_distance (samples[0], p);

  for (guint i = 0; i <= n; i++)
    {
      double after = i < n ? sq_distance (samples[i + 1], p) : INFINITY;
      if (here <= before && here <= after)
        least = fmin (least, distance_from_place_mm (fitted, (double) i / n, p));
      before = here;
      here = after;
    }
  return least;
}

static double
greatest_deviation_mm (const Fitted *fitted)
{
  enum
  {
    N = 3000,
    EACH = 60
  };
  g_autofree SqPoint *samples = g_new (SqPoint, N + 1);
  double greatest = 0;

  for (guint i = 0; i <= N; i++)
    {
      samples[i] = curve_point (fitted->curve, fitted->data, (double) i / N, NULL);
      greatest = fmax (greatest, chain_distance_mm (fitted->chain, samples[i]));
    }
  for (guint i = 0; i < fitted->chain->len; i++)
    for (guint k = 1; k < EACH; k++)
      {
        SqPoint p = sq_segment_point (&g_array_index (fitted->chain, SqSegment, i),
                                      (double) k / EACH);
        greatest = fmax (greatest, curve_distance_mm (fitted, samples, N, p));
      }
  return greatest;
}

static double
greatest_kink_rad (const GArray *chain)
{
  double greatest = 0;

  for (guint i = 0; i + 1 < chain->len; i++)
    {
      SqSegment a = segment_at (chain, i), b = segment_at (chain, i + 1);
      double kink = sq_angle_rad (sq_segment_direction (&a, 1), sq_segment_direction (&b, 0));
      greatest = fmax (greatest, fabs (kink));
    }
  return greatest;
}

/* Simpson's rule with many steps. */
static double
curve_length_mm (SqCurve curve, gconstpointer data)
{
  enum
  {
    N = 20000
  };
  double sum = 0;

  for (int i = 0; i <= N; i++)
    {
      SqVector d;
      curve_point (curve, data, (double) i / N, &d);
      sum += sq_norm (d) * (i == 0 || i == N ? 1 : i % 2 == 1 ? 4 : 2);
    }
  return sum / (3 * N);
}

static void
assert_near (double a, double b, double within)
{
  if (!(fabs (a - b) <= within))
    g_error ("%.17g and %.17g differ by %g, more than %g", a, b, fabs (a - b), within);
}

static void
assert_points_near (SqPoint a, SqPoint b, double within)
{
  assert_near (a.x, b.x, within);
  assert_near (a.y, b.y, within);
}

static void
assert_chains_near (const GArray *a, const GArray *b, double within)
{
  g_assert_cmpuint (a->len, ==, b->len);
  for (guint i = 0; i < a->len; i++)
    {
      SqSegment s = segment_at (a, i), t = segment_at (b, i);
      assert_points_near (s.from, t.from, within);
      assert_points_near (s.to, t.to, within);
      assert_points_near (sq_segment_point (&s, 0.5), sq_segment_point (&t, 0.5), within);
    }
}

static void
assert_fits (const Fitted *fitted, double within_mm)
{
  g_assert_cmpfloat (greatest_deviation_mm (fitted), <=, within_mm);
  /* A micrometre aside at 10 m: what a chain's shortest arcs leave of a double's precision. */
  g_assert_cmpfloat (greatest_kink_rad (fitted->chain), <=, 1e-7);
}

static double
random_mm (double size)
{
  return g_test_rand_double_range (-size, size);
}

/* An edge of a seat: inner control points anywhere about the chord. */
static void
random_cubic (SqPoint p[4])
{
  double length = g_test_rand_double_range (50, 1500);

  p[0] = sq_point (random_mm (1000), random_mm (1000));
  p[3] = sq_moved (p[0], sq_turned (sq_point (1, 0), random_mm (G_PI)), length);
  for (int i = 1; i < 3; i++)
    p[i] = sq_add (sq_between (p[0], p[3], i / 3.0),
                   sq_point (random_mm (0.6 * length), random_mm (0.6 * length)));
}

static void
reverse_cubic (const SqPoint p[4], SqPoint reversed[4])
{
  for (int i = 0; i < 4; i++)
    reversed[i] = p[3 - i];
}

typedef struct
{
  SqPoint centre;
  double a, b, turn_rad, from_rad, sweep_rad;
} Ellipse;

static void
ellipse_curve (double t, SqPoint *at, SqVector *derivative, gconstpointer data)
{
  const Ellipse *e = data;
  double angle = e->from_rad + e->sweep_rad * t;

  *at = sq_add (e->centre,
                sq_turned (sq_point (e->a * cos (angle), e->b * sin (angle)), e->turn_rad));
  *derivative = sq_scale (
      sq_turned (sq_point (-e->a * sin (angle), e->b * cos (angle)), e->turn_rad), e->sweep_rad);
}

/* Complete elliptic integral of the second kind times 4 a, by the arithmetic-geometric mean. */
static double
ellipse_perimeter_mm (double a, double b)
{
  double m = a, g = b, c = sqrt (a * a - b * b), sum = c * c / 2, power = 1;

  while (fabs (c) > 1e-12 * a)
    {
      c = (m - g) / 2;
      double next = (m + g) / 2;
      g = sqrt (m * g);
      m = next;
      sum += power * c * c;
      power *= 2;
    }
  return 2 * G_PI / m * (a * a - sum);
}

static void
test_line (void)
{
  const SqPoint lines[][4] = {
    { { 10, 20 }, { 40, 60 }, { 70, 100 }, { 100, 140 } },
    { { 10, 20 }, { 10, 20 }, { 100, 140 }, { 100, 140 } }, /* control points on the ends */
    { { 10, 20 }, { 100, 140 }, { 10, 20 }, { 100, 140 } }, /* stands in the middle, goes on */
    { { 0, 0 }, { 120, 0 }, { 50, 0 }, { 100, 0 } },        /* handle beyond the end */
  };

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_auto (Fitted) fitted = fitted_cubic (lines[i], SQ_FIT_MM);
      g_assert_cmpuint (fitted.chain->len, ==, 1);
      g_assert_false (sq_segment_is_arc (&g_array_index (fitted.chain, SqSegment, 0)));
      assert_points_near (segment_at (fitted.chain, 0).from, lines[i][0], 0);
    }
}

static void
test_refused (void)
{
  const SqPoint cubics[][4] = {
    { { 5, 5 }, { 5, 5 }, { 5, 5 }, { 5, 5 } },
    { { 0, 0 }, { 100, 100 }, { 0, 100 }, { 100, 0 } }, /* cusp half-way */
    { { 0, 0 }, { 300, 0 }, { -100, 0 }, { 100, 0 } },  /* goes back over itself */
    { { 0, 0 }, { 1, NAN }, { 2, 0 }, { 3, 0 } },
    { { 0, 0 }, { 1, INFINITY }, { 2, 0 }, { 3, 0 } },
  };
  SqNode kept = { { 1, 2 }, 3, 4 };
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));
  g_array_append_val (nodes, kept);

  for (guint i = 0; i < G_N_ELEMENTS (cubics); i++)
    g_assert_false (sq_fit_cubic (cubics[i], SQ_FIT_MM, 7, nodes));

  /* A cusp that no halving meets: x = (t − 0.3)², y = (t − 0.3)³, as control points. */
  SqPoint cusp[4];
  for (int i = 0; i < 4; i++)
    {
      static const double linear[] = { 0, 1 / 3.0, 2 / 3.0, 1 }, square[] = { 0, 0, 1 / 3.0, 1 };
      static const double cube[] = { 0, 0, 0, 1 };
      const double c = 0.3;
      cusp[i].x = 1000 * (square[i] - 2 * c * linear[i] + c * c);
      cusp[i].y = 1000 * (cube[i] - 3 * c * square[i] + 3 * c * c * linear[i] - c * c * c);
    }
  g_assert_false (sq_fit_cubic (cusp, SQ_FIT_MM, 7, nodes));

  /* Too many pieces. */
  const Ellipse ellipse = { { 0, 0 }, 1e5, 3e4, 0, 0, 2 * G_PI };
  g_assert_false (sq_fit_curve (ellipse_curve, &ellipse, 1e-6, 7, nodes));
  g_assert_cmpuint (nodes->len, ==, 1);
  g_assert_cmpuint (g_array_index (nodes, SqNode, 0).tag, ==, 4);
}

static void
test_circle (void)
{
  const Ellipse circle = { { 30, -40 }, 250, 250, 0.3, 0.1, 1.9 };
  g_auto (Fitted) arc = fitted_curve (ellipse_curve, &circle, SQ_FIT_MM);

  g_assert_cmpuint (arc.chain->len, ==, 1);
  assert_near (sq_segment_radius_mm (&g_array_index (arc.chain, SqSegment, 0)), 250, 1e-9);
  assert_near (chain_length_mm (arc.chain), 250 * 1.9, 1e-9);

  /* Once round: closed, and still a circle. */
  const Ellipse whole = { { 30, -40 }, 250, 250, 0.3, 0.1, -2 * G_PI };
  g_auto (Fitted) ring = fitted_curve (ellipse_curve, &whole, SQ_FIT_MM);
  g_assert_cmpuint (ring.chain->len, ==, 2);
  assert_near (chain_length_mm (ring.chain), 500 * G_PI, 1e-9);
  assert_fits (&ring, 1e-9);
}

/* The usual cubic for a quarter of a circle, handles 4/3 tan (π/8) of the radius: it lies outside
 * the circle by 2.73e-4 of the radius at most (derived: its distance from the centre is stationary
 * at t = 0.2113). */
static void
test_quarter_circle (void)
{
  const double r = 300, h = 4.0 / 3 * tan (G_PI / 8) * r;
  const SqPoint p[4] = { { r, 0 }, { r, h }, { h, r }, { 0, r } };
  g_auto (Fitted) close = fitted_cubic (p, SQ_FIT_MM);
  double most = 0;

  assert_fits (&close, SQ_FIT_MM);
  for (guint i = 0; i < close.chain->len; i++)
    for (int k = 0; k <= 20; k++)
      {
        SqSegment s = segment_at (close.chain, i);
        double outside = sq_norm (sq_segment_point (&s, k / 20.0)) - r;
        g_assert_cmpfloat (outside, >=, -SQ_FIT_MM);
        most = fmax (most, outside);
      }
  assert_near (most, 2.7253e-4 * r, SQ_FIT_MM);

  /* Where that much may be wrong, one arc is enough. */
  g_auto (Fitted) rough = fitted_cubic (p, 0.1);
  g_assert_cmpuint (rough.chain->len, ==, 1);
  assert_near (sq_segment_radius_mm (&g_array_index (rough.chain, SqSegment, 0)), r, 1e-9);
}

static void
test_ellipse (void)
{
  const double axes[][2] = { { 300, 200 }, { 500, 100 }, { 400, 390 }, { 1000, 50 } };

  for (guint i = 0; i < G_N_ELEMENTS (axes); i++)
    {
      double a = axes[i][0], b = axes[i][1];
      const Ellipse ellipse = { { 70, 80 }, a, b, 0.4, 0.7, 2 * G_PI };
      g_auto (Fitted) fitted = fitted_curve (ellipse_curve, &ellipse, SQ_FIT_MM);
      double perimeter = ellipse_perimeter_mm (a, b), length = chain_length_mm (fitted.chain);

      assert_fits (&fitted, SQ_FIT_MM);
      assert_near (length, perimeter, 0.001);
      /* Ramanujan's second formula, from memory; its error is of the order h^10. */
      double h = (a - b) * (a - b) / ((a + b) * (a + b));
      double ramanujan = G_PI * (a + b) * (1 + 3 * h / (10 + sqrt (4 - 3 * h)));
      assert_near (length, ramanujan, 0.001 + perimeter * pow (h, 5) * 1e-2);
      g_test_message ("ellipse %g x %g: %u arcs, length off by %.2g mm", a, b, fitted.chain->len,
                      length - perimeter);
    }
}

static void
test_ends_on_controls (void)
{
  const SqPoint cubics[][4] = {
    { { 0, 0 }, { 0, 0 }, { 200, 150 }, { 400, 0 } },
    { { 0, 0 }, { 200, 150 }, { 400, 0 }, { 400, 0 } },
    { { 0, 0 }, { 1e-8, -1e-8 }, { 200, 150 }, { 400, 0 } }, /* noise of a drawing program */
  };

  for (guint i = 0; i < G_N_ELEMENTS (cubics); i++)
    {
      const SqPoint *p = cubics[i];
      g_auto (Fitted) fitted = fitted_cubic (p, SQ_FIT_MM);
      SqSegment first = segment_at (fitted.chain, 0);
      SqSegment last = segment_at (fitted.chain, fitted.chain->len - 1);
      SqVector start = sq_sub (i == 1 ? p[1] : p[2], p[0]), end = sq_sub (p[3], p[i == 1 ? 1 : 2]);

      assert_fits (&fitted, SQ_FIT_MM);
      assert_near (sq_angle_rad (sq_segment_direction (&first, 0), start), 0, 1e-9);
      assert_near (sq_angle_rad (sq_segment_direction (&last, 1), end), 0, 1e-9);
    }
}

/* A loop is a curve like any other; a closed one starts and ends in the same point. */
static void
test_loops (void)
{
  const SqPoint cubics[][4] = {
    { { 0, 0 }, { 500, 300 }, { -200, 300 }, { 300, 0 } },
    { { 0, 0 }, { 300, 200 }, { -300, 200 }, { 0, 0 } },
    { { 0, 0 }, { 302, 300 }, { -2, 300 }, { 300, 0 } },
    { { 0, 0 }, { 100.02, 100 }, { -0.02, 100 }, { 100, 0 } }, /* nearly a cusp */
    { { 0, 0 }, { 99.9, 100 }, { 0.1, 100 }, { 100, 0 } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cubics); i++)
    {
      g_auto (Fitted) fitted = fitted_cubic (cubics[i], SQ_FIT_MM);
      assert_fits (&fitted, SQ_FIT_MM);
      g_test_message ("loop %u: %u arcs", i, fitted.chain->len);
    }
}

/* A curve within ε of its chain is longer by ε times the turn at most, and a little for weaving. */
static void
test_random_cubics (void)
{
  guint arcs = 0;
  double length_off = 0;

  for (int i = 0; i < 60; i++)
    {
      SqPoint p[4];
      random_cubic (p);
      g_auto (Fitted) fitted = fitted_cubic (p, SQ_FIT_MM);
      SqSegment first = segment_at (fitted.chain, 0);
      SqSegment last = segment_at (fitted.chain, fitted.chain->len - 1);
      double off = chain_length_mm (fitted.chain) - curve_length_mm (cubic_curve, p);

      assert_fits (&fitted, SQ_FIT_MM);
      assert_points_near (first.from, p[0], 0);
      assert_near (sq_angle_rad (sq_segment_direction (&first, 0), sq_sub (p[1], p[0])), 0, 1e-9);
      assert_near (sq_angle_rad (sq_segment_direction (&last, 1), sq_sub (p[3], p[2])), 0, 1e-9);
      assert_near (off, 0, SQ_FIT_MM * (1 + chain_turn_rad (fitted.chain)));
      length_off = fmax (length_off, fabs (off));
      arcs += fitted.chain->len;
    }
  g_test_message ("60 cubics: %.1f arcs each, length off by %.2g mm at most", arcs / 60.0,
                  length_off);
}

/* A finer fit is nearer: the tolerance is obeyed, not just met. */
static void
test_tolerances (void)
{
  const SqPoint p[4] = { { 0, 0 }, { 150, 200 }, { 350, -120 }, { 600, 40 } };

  for (double within = 1; within > 5e-5; within /= 10)
    {
      g_auto (Fitted) fitted = fitted_cubic (p, within);
      assert_fits (&fitted, within);
    }
}

static GArray *
reversed_chain (const GArray *chain)
{
  GArray *reversed = g_array_new (FALSE, FALSE, sizeof (SqSegment));

  for (guint i = chain->len; i-- > 0;)
    {
      SqSegment s = sq_segment_reversed (&g_array_index (chain, SqSegment, i));
      g_array_append_val (reversed, s);
    }
  return reversed;
}

static void
test_reversed (void)
{
  for (int i = 0; i < 500; i++)
    {
      SqPoint p[4], q[4];
      random_cubic (p);
      reverse_cubic (p, q);
      g_auto (Fitted) there = fitted_cubic (p, SQ_FIT_MM), back = fitted_cubic (q, SQ_FIT_MM);
      g_autoptr (GArray) there_reversed = reversed_chain (there.chain);
      assert_chains_near (there_reversed, back.chain, 1e-9);
    }
}

static void
test_symmetric (void)
{
  const SqPoint p[4] = { { -200, 0 }, { -120, 150 }, { 120, 150 }, { 200, 0 } };
  g_auto (Fitted) fitted = fitted_cubic (p, SQ_FIT_MM);
  g_autoptr (GArray) mirrored = reversed_chain (fitted.chain);

  for (guint i = 0; i < mirrored->len; i++)
    {
      SqSegment *s = &g_array_index (mirrored, SqSegment, i);
      *s = (SqSegment){ { -s->from.x, s->from.y }, { -s->to.x, s->to.y }, -s->bulge };
    }
  assert_chains_near (fitted.chain, mirrored, 1e-9);
}

static void
test_turned (void)
{
  for (int i = 0; i < 500; i++)
    {
      SqPoint p[4], q[4];
      double turn = random_mm (G_PI);
      SqVector by = { random_mm (500), random_mm (500) };
      random_cubic (p);
      for (int k = 0; k < 4; k++)
        q[k] = sq_add (sq_turned (p[k], turn), by);
      g_auto (Fitted) plain = fitted_cubic (p, SQ_FIT_MM), turned = fitted_cubic (q, SQ_FIT_MM);
      for (guint k = 0; k < plain.chain->len; k++)
        {
          SqSegment *s = &g_array_index (plain.chain, SqSegment, k);
          s->from = sq_add (sq_turned (s->from, turn), by);
          s->to = sq_add (sq_turned (s->to, turn), by);
        }
      assert_chains_near (plain.chain, turned.chain, 1e-9);
    }
}

static void
test_mirrored (void)
{
  for (int i = 0; i < 200; i++)
    {
      SqPoint p[4], q[4];
      random_cubic (p);
      for (int k = 0; k < 4; k++)
        q[k] = sq_point (-p[k].x, p[k].y);
      g_auto (Fitted) plain = fitted_cubic (p, SQ_FIT_MM), mirror = fitted_cubic (q, SQ_FIT_MM);
      for (guint k = 0; k < plain.chain->len; k++)
        {
          SqSegment *s = &g_array_index (plain.chain, SqSegment, k);
          *s = (SqSegment){ { -s->from.x, s->from.y }, { -s->to.x, s->to.y }, -s->bulge };
        }
      assert_chains_near (plain.chain, mirror.chain, 1e-9);
    }
}

/* Only said, not judged: a loaded machine is no fault of the fit. */
static void
test_speed (void)
{
  enum
  {
    N = 200,
    ROUNDS = 20
  };
  SqPoint p[N][4];
  g_autoptr (GArray) nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));
  for (int i = 0; i < N; i++)
    random_cubic (p[i]);
  gint64 start = g_get_monotonic_time ();
  guint arcs = 0;
  for (int round = 0; round < ROUNDS; round++)
    for (int i = 0; i < N; i++)
      {
        g_array_set_size (nodes, 0);
        g_assert_true (sq_fit_cubic (p[i], SQ_FIT_MM, 0, nodes));
        arcs += nodes->len;
      }
  double us = (double) (g_get_monotonic_time () - start);
  g_test_message ("%.0f ns a cubic, %.1f arcs each", us * 1000 / (N * ROUNDS),
                  (double) arcs / (N * ROUNDS));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/fit/line", test_line);
  g_test_add_func ("/geometry/fit/refused", test_refused);
  g_test_add_func ("/geometry/fit/circle", test_circle);
  g_test_add_func ("/geometry/fit/quarter-circle", test_quarter_circle);
  g_test_add_func ("/geometry/fit/ellipse", test_ellipse);
  g_test_add_func ("/geometry/fit/ends-on-controls", test_ends_on_controls);
  g_test_add_func ("/geometry/fit/loops", test_loops);
  g_test_add_func ("/geometry/fit/random-cubics", test_random_cubics);
  g_test_add_func ("/geometry/fit/tolerances", test_tolerances);
  g_test_add_func ("/geometry/fit/reversed", test_reversed);
  g_test_add_func ("/geometry/fit/symmetric", test_symmetric);
  g_test_add_func ("/geometry/fit/turned", test_turned);
  g_test_add_func ("/geometry/fit/mirrored", test_mirrored);
  g_test_add_func ("/geometry/fit/speed", test_speed);
  return g_test_run ();
}
