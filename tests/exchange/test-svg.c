/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/svg.h"

#include "hand-made-drawing.h"

#include <string.h>

/* ---- a reader of path data ----------------------------------------------------------------- */

/* The length and the area of what is drawn, and its least and greatest coordinates, as the file has
 * them: y down, so a ring that is counter-clockwise in the drawing has an area below 0. */
typedef struct
{
  double length_mm, area_mm2;
  SqBox box;
  gboolean is_closed;
  guint arcs;
} Drawn;

/* An arc by its ends, as SVG 1.1 has it in appendix F.6.5 for circles: the centre lies to one side of
 * the chord as the flags tell. */
static SqSegment
arc_from (SqPoint from, SqPoint to, double radius, gboolean large, gboolean sweep)
{
  double half_chord = sq_distance (from, to) / 2;
  double angle = 2 * asin (fmin (half_chord / radius, 1));

  if (large)
    angle = 2 * M_PI - angle;
  /* positive angles turn from x to y */
  return (SqSegment){ from, to, (sweep ? 1 : -1) * tan (angle / 4) };
}

static double
next_number (const char **at)
{
  char *end;
  double number = g_ascii_strtod (*at, &end);

  g_assert_true (end != *at);
  *at = end;
  return number;
}

static SqPoint
next_point (const char **at)
{
  double x = next_number (at);

  return sq_point (x, next_number (at));
}

static void
add (Drawn *drawn, SqSegment s)
{
  drawn->length_mm += sq_segment_length_mm (&s);
  drawn->area_mm2 += sq_segment_area_mm2 (&s);
  drawn->box = sq_box_union (drawn->box, sq_segment_box (&s));
}

/* @at: after the quote of d="…". */
static Drawn
read_path (const char *at)
{
  Drawn drawn = { .box = sq_box_empty () };
  SqPoint start = { 0, 0 }, pen = { 0, 0 };

  while (*at != '"')
    {
      char command = *at++;
      SqPoint from = pen;
      if (command == 'M')
        start = pen = next_point (&at);
      else if (command == 'L')
        {
          pen = next_point (&at);
          add (&drawn, (SqSegment){ from, pen, 0 });
        }
      else if (command == 'A')
        {
          SqPoint radii = next_point (&at);
          g_assert_cmpfloat (radii.x, ==, radii.y);
          g_assert_cmpfloat (next_number (&at), ==, 0);
          gboolean large = next_number (&at) != 0, sweep = next_number (&at) != 0;
          pen = next_point (&at);
          add (&drawn, arc_from (from, pen, radii.x, large, sweep));
          drawn.arcs++;
        }
      else
        {
          g_assert_cmpint (command, ==, 'Z');
          add (&drawn, (SqSegment){ pen, start, 0 });
          drawn.is_closed = TRUE;
        }
    }
  return drawn;
}

/* A drawing that is so large whatever is on it. */
static SqCutDrawing *
drawing_sized (double width_mm, double height_mm)
{
  SqCutDrawing *drawing = drawing_new ("Pads, RIGHT SIDE UP");

  drawing->box = (SqBox){ sq_point (0, 0), sq_point (width_mm, height_mm) };
  return drawing;
}

/* What the file has of @path alone in a drawing 500 high. */
static Drawn
written (SqPath *path)
{
  g_autoptr (SqCutDrawing) drawing = drawing_sized (500, 500);
  SqCutShape *shape = add_shape (drawing, "1 Top");

  add_cut_line (shape, SQ_LAYER_CUT, path);
  add_cut_place (drawing, 0, 0, sq_point (0, 0));
  g_autofree char *svg = sq_svg_write (drawing);
  const char *at = strstr (svg, " d=\"");
  g_assert_nonnull (at);
  return read_path (at + strlen (" d=\""));
}

/* The nodes, as x, y, bulge. */
static SqPath *
bulging (const double (*nodes)[3], guint n, gboolean is_ring)
{
  SqPathBuilder builder;

  sq_path_builder_init (&builder);
  for (guint i = 0; i < n; i++)
    sq_path_builder_add (&builder, sq_point (nodes[i][0], nodes[i][1]), nodes[i][2], 0);
  return sq_path_builder_end (&builder, is_ring);
}

/* ---- tests --------------------------------------------------------------------------------- */

static void
test_lines (void)
{
  Drawn ring = written (sq_path_new_rectangle (10, 20, 110.12345, 50));
  Drawn open = written (bulging ((const double[][3]){ { 10, 20, 0 }, { 13, 24, 0 } }, 2, FALSE));

  g_assert_true (ring.is_closed);
  g_assert_cmpuint (ring.arcs, ==, 0);
  g_assert_cmpfloat (ring.box.min.x, ==, 10);
  g_assert_cmpfloat_with_epsilon (ring.box.max.x, 110.1235, 1e-9);
  g_assert_cmpfloat (ring.box.min.y, ==, 450);
  g_assert_cmpfloat (ring.box.max.y, ==, 480);
  g_assert_cmpfloat_with_epsilon (ring.area_mm2, -100.12345 * 30, 0.01);
  g_assert_false (open.is_closed);
  g_assert_cmpfloat_with_epsilon (open.length_mm, 5, 1e-3);
}

/* Arcs of every sweep, either way round, at a place where their ends are no round numbers: what was
 * rounded may move none of it by more than a hair. */
static void
test_arcs (void)
{
  const double sweeps_deg[] = {
    1, 30, 89.9, 90, 119.9, 120, 121, 179.99, 180, 180.01, 240, 270, 350
  };

  for (guint i = 0; i < G_N_ELEMENTS (sweeps_deg); i++)
    for (int turn = -1; turn <= 1; turn += 2)
      {
        double half = sweeps_deg[i] * M_PI / 360, radius = 100.0 / 3;
        double c = 250 + 1.0 / 7, x = radius * sin (half), y = radius * cos (half);
        const double nodes[][3] = { { c - turn * x, c - y, turn * tan (half / 2) },
                                    { c + turn * x, c - y, 0 } };
        g_autoptr (SqPath) path = bulging (nodes, 2, TRUE);
        SqBox box = sq_path_box (path);
        Drawn drawn = written (sq_path_ref (path));
        g_assert_true (drawn.is_closed);
        g_assert_cmpuint (drawn.arcs, ==, (guint) ceil (sweeps_deg[i] / 120 - 1e-6));
        g_assert_cmpfloat_with_epsilon (drawn.length_mm, sq_path_length_mm (path), 0.002);
        g_assert_cmpfloat_with_epsilon (drawn.area_mm2, -sq_path_area_mm2 (path), 0.05);
        g_assert_cmpfloat_with_epsilon (drawn.box.min.x, box.min.x, 5e-4);
        g_assert_cmpfloat_with_epsilon (drawn.box.max.x, box.max.x, 5e-4);
        g_assert_cmpfloat_with_epsilon (drawn.box.min.y, 500 - box.max.y, 5e-4);
        g_assert_cmpfloat_with_epsilon (drawn.box.max.y, 500 - box.min.y, 5e-4);
      }
}

static void
test_circle (void)
{
  Drawn circle = written (sq_path_new_circle (sq_point (200, 100), 60));

  g_assert_cmpuint (circle.arcs, ==, 4);
  g_assert_cmpfloat_with_epsilon (circle.length_mm, 2 * M_PI * 60, 1e-3);
  g_assert_cmpfloat_with_epsilon (circle.area_mm2, -M_PI * 3600, 0.02);
}

/* Nothing is left of an arc that rises by less than a micrometre. */
static void
test_flat_arc (void)
{
  Drawn flat = written (bulging ((const double[][3]){ { 0, 0, 1e-6 }, { 400, 0, 0 } }, 2, FALSE));

  g_assert_cmpuint (flat.arcs, ==, 0);
  g_assert_cmpfloat (flat.length_mm, ==, 400);
}

static SqCutDrawing *
two_copies (void)
{
  SqCutDrawing *drawing = drawing_sized (300, 200.5);
  SqCutShape *shape = add_shape (drawing, "1 <Top> & \"co\"\001");
  SqCutLine edge = { SQ_LAYER_CLOTH, sq_path_new_rectangle (0, 0, 300, 200.5) };

  add_cut_line (shape, SQ_LAYER_CUT, sq_path_new_rectangle (0, 0, 100, 50));
  add_cut_segment (shape, SQ_LAYER_NOTCH, sq_point (50, 0), sq_point (50, 6));
  add_cut_text (shape, sq_point (20, 20), 7.2, "4 × ½ <in>\t");
  add_cut_place (drawing, 0, 0, sq_point (10, 10));
  add_cut_place (drawing, 0, M_PI_2, sq_point (200, 10));
  g_array_append_val (drawing->lines, edge);
  return drawing;
}

/* Each of @parts stands in @text, after the one before. */
static void
assert_in_order (const char *text, const char *const *parts)
{
  for (guint i = 0; parts[i] != NULL; i++)
    {
      const char *found = strstr (text, parts[i]);
      if (found == NULL)
        g_error ("no %s in %s", parts[i], text);
      text = found + strlen (parts[i]);
    }
}

static void
test_groups (void)
{
  const char *const parts[] = {
    "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\"",
    "width=\"300mm\" height=\"200.5mm\" viewBox=\"0 0 300 200.5\" fill=\"none\"",
    "stroke-width=\"0.08\"",
    "<title>Bay seat</title>",
    "<desc>Pads, RIGHT SIDE UP · 1 : 1 · 300 mm × 200.5 mm</desc>",
    "<g id=\"cloth\" stroke=\"#",
    "<g id=\"cloth-0\">",
    "d=\"M0 200.5L300 200.5L300 0L0 0Z\"",
    "<g id=\"text\" fill=\"#000000\" stroke=\"none\">",
    "<g id=\"text-1\">",
    "<text font-size=\"10\" transform=\"translate(30 170.5) rotate(0)\">4 × ½ &lt;in&gt;</text>",
    "<g id=\"text-2\">",
    "translate(180 170.5) rotate(-90)",
    "<g id=\"notch\"",
    "<title>notch</title>",
    "<g id=\"notch-1\">",
    "d=\"M60 190.5L60 184.5\"",
    "<g id=\"cut\"",
    "<g id=\"cut-1\">\n<title>1 &lt;Top&gt; &amp; &quot;co&quot;</title>",
    "<g id=\"cut-2\">",
    "d=\"M200 190.5L200 90.5L150 90.5L150 190.5Z\"",
    "</svg>\n",
    NULL,
  };
  g_autoptr (SqCutDrawing) drawing = two_copies ();
  g_autofree char *svg = sq_svg_write (drawing);
  g_autofree char *again = sq_svg_write (drawing);

  assert_in_order (svg, parts);
  g_assert_cmpstr (svg, ==, again);
  g_assert_null (strstr (svg, "id=\"sew\""));
  g_assert_null (strstr (svg, "id=\"grain\""));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/svg/lines", test_lines);
  g_test_add_func ("/svg/arcs", test_arcs);
  g_test_add_func ("/svg/circle", test_circle);
  g_test_add_func ("/svg/flat arc", test_flat_arc);
  g_test_add_func ("/svg/groups", test_groups);
  return g_test_run ();
}
