/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the painter puts where, by looking at pixels. */
#include "drawing/paint.h"
#include "hand-made.h"

#define SIZE 200

static cairo_surface_t *
paint (const SqScene *scene, const SqView *view, const SqTheme *theme)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, SIZE, SIZE);
  cairo_t *cr = cairo_create (surface);
  sq_paint_source (cr, 0xffffff, 1);
  cairo_paint (cr);
  sq_paint_scene (cr, view, theme, scene);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static guint32
pixel (cairo_surface_t *surface, int x, int y)
{
  const guint8 *row = cairo_image_surface_get_data (surface)
                      + y * cairo_image_surface_get_stride (surface);
  return ((const guint32 *) (const void *) row)[x] & 0xffffff;
}

/* Pixels that are not the white ground, and the box of them. */
static guint
inked (cairo_surface_t *surface, SqBox *box)
{
  guint n = 0;
  *box = sq_box_empty ();
  for (int y = 0; y < SIZE; y++)
    for (int x = 0; x < SIZE; x++)
      if (pixel (surface, x, y) != 0xffffff)
        {
          *box = sq_box_with (*box, sq_point (x, y));
          n++;
        }
  return n;
}

static SqScene *
stroke_scene (SqPen pen, const SqNode *nodes, guint n, gboolean is_ring)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  sq_scene_begin_stroke (builder, pen);
  sq_scene_add_nodes (builder, nodes, n, is_ring);
  return sq_scene_builder_end (builder);
}

/* y goes up in a scene and down on a surface; the view's origin is where (0, 0) stands. */
static void
test_turned_over (void)
{
  SqView view = { .scale = 2, .origin = { 20, 180 } };
  SqSceneBuilder *builder = sq_scene_builder_new ();
  sq_scene_begin_colour (builder, 0xff0000, 1);
  g_autoptr (SqPath) box = sq_path_new_rectangle (0, 0, 30, 10);
  sq_scene_add_path (builder, box);
  g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
  cairo_surface_t *surface = paint (scene, &view, sq_theme_light ());
  g_assert_cmphex (pixel (surface, 21, 178), ==, 0xff0000);
  g_assert_cmphex (pixel (surface, 79, 161), ==, 0xff0000);
  g_assert_cmphex (pixel (surface, 19, 178), ==, 0xffffff);
  g_assert_cmphex (pixel (surface, 21, 181), ==, 0xffffff);
  g_assert_cmphex (pixel (surface, 81, 178), ==, 0xffffff);
  g_assert_cmphex (pixel (surface, 21, 158), ==, 0xffffff);
  cairo_surface_destroy (surface);
}

/* Both ways round, minor and major: points of the true circle are inked, its chord is not. */
static void
test_arcs (void)
{
  const double bulges[] = { 0.4, -0.4, 1, -1, 2.2, -2.2 };
  for (guint i = 0; i < G_N_ELEMENTS (bulges); i++)
    {
      SqView view = { .scale = 1, .origin = { 100, 100 } };
      SqNode nodes[] = { { { -25, 0 }, bulges[i], 0 }, { { 25, 0 }, 0, 0 } };
      SqSegment arc = { nodes[0].at, nodes[1].at, bulges[i] };
      g_autoptr (SqScene) scene = stroke_scene (SQ_PEN_INK, nodes, 2, FALSE);
      cairo_surface_t *surface = paint (scene, &view, sq_theme_light ());
      for (double t = 0.05; t < 1; t += 0.05)
        {
          SqPoint p = sq_view_to_device (&view, sq_segment_point (&arc, t));
          g_assert_cmphex (pixel (surface, (int) floor (p.x), (int) floor (p.y)), !=, 0xffffff);
        }
      g_assert_cmphex (pixel (surface, 100, 100), ==, 0xffffff);
      cairo_surface_destroy (surface);
    }
}

/* A cut line is whole, a sew line dashed, a fold dotted: less and less ink. */
static void
test_pens (void)
{
  const SqPen pens[] = { SQ_PEN_CUT, SQ_PEN_SEW, SQ_PEN_FOLD };
  SqView view = { .scale = 1, .origin = { 0, 100.5 } };
  SqNode nodes[] = { { { 10, 0 }, 0, 0 }, { { 190, 0 }, 0, 0 } };
  guint whole[3];
  for (guint i = 0; i < 3; i++)
    {
      g_autoptr (SqScene) scene = stroke_scene (pens[i], nodes, 2, FALSE);
      cairo_surface_t *surface = paint (scene, &view, sq_theme_light ());
      whole[i] = 0;
      for (int x = 0; x < SIZE; x++)
        whole[i] += pixel (surface, x, 100) != 0xffffff;
      cairo_surface_destroy (surface);
    }
  g_assert_cmpuint (whole[0], ==, 180);
  g_assert_cmpuint (whole[1], <, 140);
  g_assert_cmpuint (whole[1], >, 80);
  g_assert_cmpuint (whole[2], <, 140);
}

/* The same line, but for @from_mm of its start; where that is 0, all of it. */
static cairo_surface_t *
paint_part (SqPen pen, double from_mm)
{
  SqView view = { .scale = 1, .origin = { 0, 100.5 } };
  SqNode nodes[] = { { { 10 + from_mm, 0 }, 0, 0 }, { { 190, 0 }, 0, 0 } };
  g_autoptr (SqPath) path = sq_path_new (nodes, 2, FALSE);
  SqSceneBuilder *builder = sq_scene_builder_new ();

  sq_scene_begin_stroke (builder, pen);
  sq_scene_add_part (builder, path, from_mm);
  g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
  return paint (scene, &view, sq_theme_light ());
}

/* A part of a line has its dashes where the whole has them, and a zip's slider only at its own start. */
static void
test_parts (void)
{
  const SqPen pens[] = { SQ_PEN_CUT, SQ_PEN_SEW, SQ_PEN_STAY, SQ_PEN_FOLD, SQ_PEN_ZIP };

  for (guint i = 0; i < G_N_ELEMENTS (pens); i++)
    {
      cairo_surface_t *whole = paint_part (pens[i], 0), *part = paint_part (pens[i], 43);
      for (int x = 60; x < SIZE; x++)
        for (int y = 90; y < 110; y++)
          g_assert_cmphex (pixel (whole, x, y), ==, pixel (part, x, y));
      cairo_surface_destroy (whole);
      cairo_surface_destroy (part);
    }
}

/* On paper lines are as thick as in mm, whatever the context's unit. */
static void
test_paper_weight (void)
{
  SqNode nodes[] = { { { 0, 5 }, 0, 0 }, { { 9, 5 }, 0, 0 } };
  g_autoptr (SqScene) scene = stroke_scene (SQ_PEN_INK, nodes, 2, FALSE);
  SqBox box;
  SqView view = { .scale = 20, .origin = { 0, 200 }, .medium = SQ_MEDIUM_PAPER };
  cairo_surface_t *surface = paint (scene, &view, sq_theme_print ());
  inked (surface, &box);
  double height = (box.max.y - box.min.y + 1) / view.scale;
  g_assert_cmpfloat (height, >, 0.4); /* mm */
  g_assert_cmpfloat (height, <, 0.7);
  cairo_surface_destroy (surface);
}

/* A text stays within its box, whatever the font makes of it, at any angle. */
static void
test_text_in_its_box (void)
{
  for (int degrees = -75; degrees <= 90; degrees += 15)
    {
      SqView view = { .scale = 1, .origin = { 100, 100 } };
      SqText text = { .em_mm = 20, .angle_rad = degrees * M_PI / 180, .text = "Wide 18 1⁄2 MMM" };
      SqVector along = sq_turned (sq_point (1, 0), text.angle_rad);
      text.width_mm = 110; /* less than it wants */
      SqSceneBuilder *builder = sq_scene_builder_new ();
      sq_scene_add_text (builder, &text);
      g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
      cairo_surface_t *surface = paint (scene, &view, sq_theme_light ());
      SqBox box;
      g_assert_cmpuint (inked (surface, &box), >, 200);
      for (int y = 0; y < SIZE; y++)
        for (int x = 0; x < SIZE; x++)
          if (pixel (surface, x, y) != 0xffffff)
            {
              SqPoint p = sq_view_to_mm (&view, sq_point (x + 0.5, y + 0.5));
              g_assert_cmpfloat (fabs (sq_dot (p, along)), <=, text.width_mm / 2 + 1.5);
              g_assert_cmpfloat (fabs (sq_cross (along, p)), <=,
                                 text.em_mm * SQ_TEXT_HEIGHT_EM / 2 + 1.5);
            }
      cairo_surface_destroy (surface);
    }
}

/* The estimate of widths is no fantasy: what it says is at most a third more than a common font
 * takes. */
static void
test_estimate (void)
{
  const char *texts[] = { "37 5⁄8",    "R 1 1⁄2", "Front boxing", "46 3⁄4 × 20 1⁄8 · cut 1",
                          "mm",        "12.7 mm", "WMw",          "22 % waste",
                          "mummy mmmm" };
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      SqView view = { .scale = 1, .origin = { 100, 100 } };
      SqText text = { .em_mm = 12, .width_mm = SIZE, .text = texts[i] };
      SqSceneBuilder *builder = sq_scene_builder_new ();
      sq_scene_add_text (builder, &text);
      g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
      cairo_surface_t *surface = paint (scene, &view, sq_theme_light ());
      SqBox box;
      inked (surface, &box);
      double estimate = sq_text_width_em (texts[i], FALSE) * 12, width = box.max.x - box.min.x;
      g_test_message ("%s: %.0f of %.0f", texts[i], width, estimate);
      g_assert_cmpfloat (width, >, estimate * 0.6);
      g_assert_cmpfloat (width, <, estimate * 1.02);
      cairo_surface_destroy (surface);
    }
}

/* Many lines in one item, one in each of many: the same picture. */
static void
test_many_lines (void)
{
  SqSceneBuilder *together = sq_scene_builder_new (), *apart = sq_scene_builder_new ();
  sq_scene_begin_stroke (together, SQ_PEN_HATCH);
  for (int i = 0; i < 90; i++)
    {
      SqPoint from = { 10 + 2 * i, 10 }, to = { 14 + 2 * i, 190 };
      sq_scene_add_line (together, from, to);
      sq_scene_begin_stroke (apart, SQ_PEN_HATCH);
      sq_scene_add_line (apart, from, to);
    }
  g_autoptr (SqScene) a = sq_scene_builder_end (together);
  g_autoptr (SqScene) b = sq_scene_builder_end (apart);
  SqView view = { .scale = 1, .origin = { 0, 200 } };
  cairo_surface_t *x = paint (a, &view, sq_theme_light ());
  cairo_surface_t *y = paint (b, &view, sq_theme_light ());
  SqBox box_a, box_b;
  guint n = inked (x, &box_a);
  g_assert_cmpuint (n, >, 10000);
  g_assert_cmpuint (n, ==, inked (y, &box_b));
  cairo_surface_destroy (x);
  cairo_surface_destroy (y);
}

static void
test_context_is_left_alone (void)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, SIZE, SIZE);
  cairo_t *cr = cairo_create (surface);
  SqNode nodes[] = { { { 0, 5 }, 0, 0 }, { { 9, 5 }, 0, 0 } };
  g_autoptr (SqScene) scene = stroke_scene (SQ_PEN_ZIP, nodes, 2, FALSE);
  SqView view = { .scale = 3, .origin = { 5, 100 } };
  cairo_matrix_t before, after;
  cairo_set_line_width (cr, 7);
  cairo_translate (cr, 3, 4);
  cairo_get_matrix (cr, &before);
  sq_paint_scene (cr, &view, sq_theme_light (), scene);
  cairo_get_matrix (cr, &after);
  g_assert_cmpmem (&before, sizeof before, &after, sizeof after);
  g_assert_cmpfloat (cairo_get_line_width (cr), ==, 7);
  g_assert_cmpint (cairo_get_dash_count (cr), ==, 0);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
test_views (void)
{
  SqView view = sq_view_fit ((SqBox){ { -100, 20 }, { 300, 120 } }, 500, 400, 50);
  SqPoint low = sq_view_to_device (&view, sq_point (-100, 20));
  SqPoint high = sq_view_to_device (&view, sq_point (300, 120));
  SqPoint back = sq_view_to_mm (&view, low);
  g_assert_cmpfloat_with_epsilon (view.scale, 1, 1e-12);
  g_assert_cmpfloat_with_epsilon (low.x, 50, 1e-9);
  g_assert_cmpfloat_with_epsilon (high.x, 450, 1e-9);
  g_assert_cmpfloat_with_epsilon (low.y + high.y, 400, 1e-9);
  g_assert_cmpfloat (low.y, >, high.y);
  g_assert_cmpfloat_with_epsilon (back.x, -100, 1e-9);
  g_assert_cmpfloat_with_epsilon (back.y, 20, 1e-9);
  g_assert_cmpfloat (sq_view_fit (sq_box_empty (), 500, 400, 50).scale, ==, 1);
}

static gboolean
is_nearer (PangoAttribute *attribute, gpointer data)
{
  (void) data;
  return attribute->klass->type == PANGO_ATTR_LETTER_SPACING;
}

/* A fraction stands nearer to its whole number, to nothing else. */
static void
test_fractions (void)
{
  const struct
  {
    const char *text;
    gboolean is_nearer;
  } cases[] = {
    { "18 1⁄2", TRUE }, { "1⁄2", FALSE }, { "19; 1⁄4 more", FALSE }, { " 1⁄2", FALSE }
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      PangoAttrList *list = pango_attr_list_new ();
      sq_paint_set_fractions (list, cases[i].text, 10);
      PangoAttrList *nearer = pango_attr_list_filter (list, is_nearer, NULL);
      g_assert_cmpint (nearer != NULL, ==, cases[i].is_nearer);
      g_clear_pointer (&nearer, pango_attr_list_unref);
      pango_attr_list_unref (list);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/paint/turned-over", test_turned_over);
  g_test_add_func ("/drawing/paint/arcs", test_arcs);
  g_test_add_func ("/drawing/paint/pens", test_pens);
  g_test_add_func ("/drawing/paint/parts", test_parts);
  g_test_add_func ("/drawing/paint/paper-weight", test_paper_weight);
  g_test_add_func ("/drawing/paint/text-in-its-box", test_text_in_its_box);
  g_test_add_func ("/drawing/paint/fractions", test_fractions);
  g_test_add_func ("/drawing/paint/estimate", test_estimate);
  g_test_add_func ("/drawing/paint/many-lines", test_many_lines);
  g_test_add_func ("/drawing/paint/context-is-left-alone", test_context_is_left_alone);
  g_test_add_func ("/drawing/paint/views", test_views);
  return g_test_run ();
}
