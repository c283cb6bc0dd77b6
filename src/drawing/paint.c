/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/paint.h"

#include <string.h>

/* Of all lines of a stroke so many go into one path: cairo's time for a path grows faster than its
 * length where it crosses itself. */
#define LINES_AT_ONCE 16

/* Weight of one pixel's worth of line on paper (mm). */
#define PAPER_UNIT_MM 0.24
/* How far an arc that is printed may be off, in the surface's own units (1/72 in in a PDF): patterns are
 * cut along them. cairo has 0.1 without being told. */
#define PAPER_TOLERANCE 0.01

/* An arc whose rise is less than this (user units) is seen as its chord. */
#define FLAT_RISE 0.01

typedef enum
{
  ORNAMENT_NONE,
  ORNAMENT_ARROWS, /* at both ends */
  ORNAMENT_ZIP,
} Ornament;

/* How a pen looks; lengths in pixels on the screen. */
typedef struct
{
  double width, dash[2]; /* dash[0] 0: solid */
  gboolean is_chalk;
  Ornament ornament;
} PenLook;

static const PenLook pen_looks[SQ_N_PENS] = {
  [SQ_PEN_CUT] = { 1.8, { 0, 0 }, FALSE, ORNAMENT_NONE },
  [SQ_PEN_SEW] = { 1.0, { 5, 3 }, TRUE, ORNAMENT_NONE },
  [SQ_PEN_FOLD] = { 1.3, { 0.01, 3.2 }, TRUE, ORNAMENT_NONE },
  [SQ_PEN_STAY] = { 1.0, { 2, 2 }, TRUE, ORNAMENT_NONE },
  [SQ_PEN_GRAIN] = { 1.1, { 0, 0 }, TRUE, ORNAMENT_ARROWS },
  [SQ_PEN_NOTCH] = { 1.5, { 0, 0 }, TRUE, ORNAMENT_NONE },
  [SQ_PEN_CARRY] = { 0.9, { 1.5, 3 }, TRUE, ORNAMENT_NONE },
  [SQ_PEN_ZIP] = { 0.8, { 1, 1.6 }, TRUE, ORNAMENT_ZIP },
  [SQ_PEN_INK] = { 2.2, { 0, 0 }, FALSE, ORNAMENT_NONE },
  [SQ_PEN_FINISHED] = { 0.9, { 0, 0 }, FALSE, ORNAMENT_NONE },
  [SQ_PEN_HATCH] = { 1.0, { 0, 0 }, FALSE, ORNAMENT_NONE },
  [SQ_PEN_LEADER] = { 0.9, { 0, 0 }, FALSE, ORNAMENT_NONE },
  [SQ_PEN_CHORD] = { 0.9, { 2, 4 }, FALSE, ORNAMENT_NONE },
  [SQ_PEN_GUIDE] = { 1.2, { 4, 4 }, FALSE, ORNAMENT_NONE },
  [SQ_PEN_ACCENT] = { 3.2, { 0, 0 }, FALSE, ORNAMENT_NONE },
  [SQ_PEN_HANDLE] = { 2.0, { 0, 0 }, FALSE, ORNAMENT_NONE },
  [SQ_PEN_GRID] = { 1.0, { 0, 0 }, FALSE, ORNAMENT_NONE },
  [SQ_PEN_GRID_MAIN] = { 1.0, { 0, 0 }, FALSE, ORNAMENT_NONE },
  [SQ_PEN_RULE] = { 0.8, { 0, 0 }, FALSE, ORNAMENT_NONE },
};

typedef struct
{
  cairo_t *cr;
  const SqView *view;
  const SqTheme *theme;
  const SqScene *scene;
  SqChalk chalk;
  double unit;         /* user units of one pixel's worth of line */
  PangoLayout *layout; /* made for the first text */
} Painter;

SqPoint
sq_view_to_device (const SqView *view, SqPoint mm)
{
  return sq_point (view->origin.x + mm.x * view->scale, view->origin.y - mm.y * view->scale);
}

SqPoint
sq_view_to_mm (const SqView *view, SqPoint device)
{
  return sq_point ((device.x - view->origin.x) / view->scale,
                   (view->origin.y - device.y) / view->scale);
}

SqView
sq_view_fit (SqBox box, double width, double height, double margin)
{
  SqView view = { .scale = 1, .medium = SQ_MEDIUM_SCREEN };
  double w = box.max.x - box.min.x, h = box.max.y - box.min.y;
  SqPoint middle = sq_between (box.min, box.max, 0.5);
  if (!(w >= 0 && h >= 0))
    middle = sq_point (0, 0);
  else if (w > 0 || h > 0)
    view.scale = fmax (fmin ((width - 2 * margin) / w, (height - 2 * margin) / h), 1e-6);
  view.origin = sq_point (width / 2 - middle.x * view.scale, height / 2 + middle.y * view.scale);
  return view;
}

void
sq_paint_source (cairo_t *cr, guint32 rgb, double alpha)
{
  cairo_set_source_rgba (cr, (rgb >> 16 & 0xff) / 255.0, (rgb >> 8 & 0xff) / 255.0,
                         (rgb & 0xff) / 255.0, alpha);
}

static void
enter_mm (const Painter *p)
{
  cairo_save (p->cr);
  cairo_translate (p->cr, p->view->origin.x, p->view->origin.y);
  cairo_scale (p->cr, p->view->scale, -p->view->scale); /* here y turns over */
}

static void
add_segment (const Painter *p, const SqSegment *s)
{
  double rise = fabs (s->bulge) * sq_distance (s->from, s->to) / 2;
  if (!sq_segment_is_arc (s) || rise * p->view->scale < FLAT_RISE)
    {
      cairo_line_to (p->cr, s->to.x, s->to.y);
      return;
    }
  SqPoint centre = sq_segment_centre (s);
  double radius = fabs (sq_segment_radius_mm (s));
  double start = atan2 (s->from.y - centre.y, s->from.x - centre.x);
  double sweep = sq_segment_sweep_rad (s);
  if (sweep > 0)
    cairo_arc (p->cr, centre.x, centre.y, radius, start, start + sweep);
  else
    cairo_arc_negative (p->cr, centre.x, centre.y, radius, start, start + sweep);
}

/* Adds line @i of the scene to the path; in mm. */
static void
add_line (const Painter *p, guint i)
{
  const SqSceneLine *line = sq_scene_line (p->scene, i);
  const SqNode *nodes = sq_scene_nodes (p->scene, line);
  guint n_segments = line->is_ring ? line->n : line->n - 1;
  cairo_move_to (p->cr, nodes[0].at.x, nodes[0].at.y);
  for (guint s = 0; s < n_segments; s++)
    {
      SqSegment segment = { nodes[s].at, nodes[(s + 1) % line->n].at, nodes[s].bulge };
      add_segment (p, &segment);
    }
  if (line->is_ring)
    cairo_close_path (p->cr);
}

static void
add_lines (const Painter *p, guint first, guint n)
{
  enter_mm (p);
  for (guint i = 0; i < n; i++)
    add_line (p, first + i);
  cairo_restore (p->cr);
}

static guint32
pen_colour (const Painter *p, SqPen pen)
{
  const SqTheme *theme = p->theme;
  if (pen_looks[pen].is_chalk)
    return p->chalk.line;
  switch (pen)
    {
    case SQ_PEN_FINISHED:
    case SQ_PEN_LEADER:
    case SQ_PEN_CHORD:
      return theme->dim;
    case SQ_PEN_HATCH:
      return theme->hatch;
    case SQ_PEN_GUIDE:
    case SQ_PEN_ACCENT:
      return theme->accent;
    case SQ_PEN_GRID:
      return theme->grid;
    case SQ_PEN_GRID_MAIN:
      return theme->grid_main;
    case SQ_PEN_CUT:
    case SQ_PEN_SEW:
    case SQ_PEN_FOLD:
    case SQ_PEN_STAY:
    case SQ_PEN_GRAIN:
    case SQ_PEN_NOTCH:
    case SQ_PEN_CARRY:
    case SQ_PEN_ZIP:
    case SQ_PEN_INK:
    case SQ_PEN_HANDLE:
    case SQ_PEN_RULE:
    default:
      return theme->ink;
    }
}

/* Dashes of a line that has gone on for @from_mm already. */
static void
set_dash (const Painter *p, const PenLook *look, double from_mm)
{
  double dash[2] = { look->dash[0] * p->unit, look->dash[1] * p->unit };
  cairo_set_dash (p->cr, dash, look->dash[0] > 0 ? 2 : 0, from_mm * p->view->scale);
  cairo_set_line_cap (p->cr, look->dash[0] > 0 && look->dash[0] < 1 ? CAIRO_LINE_CAP_ROUND
                                                                    : CAIRO_LINE_CAP_BUTT);
}

static double
from_mm_of (const Painter *p, const SqItem *item, guint i)
{
  return sq_scene_line (p->scene, item->first_line + i)->from_mm;
}

/* How many lines of an item from its @first on go into one path: a few whose dashes begin alike. */
static guint
n_at_once (const Painter *p, const SqItem *item, guint first)
{
  gboolean is_dashed = pen_looks[item->pen].dash[0] > 0;
  guint n = 1;

  while (n < LINES_AT_ONCE && first + n < item->n_lines
         && (!is_dashed || from_mm_of (p, item, first + n) == from_mm_of (p, item, first)))
    n++;
  return n;
}

/* Strokes an item's lines, a few at a time. */
static void
stroke_lines (const Painter *p, const SqItem *item, double width, gboolean with_dash)
{
  cairo_set_line_width (p->cr, width);
  for (guint i = 0, n; i < item->n_lines; i += n)
    {
      n = n_at_once (p, item, i);
      if (with_dash)
        set_dash (p, &pen_looks[item->pen], from_mm_of (p, item, i));
      add_lines (p, item->first_line + i, n);
      cairo_stroke (p->cr);
    }
}

/* A line's end in user space, and the unit direction away from it into the line. */
static SqPoint
line_end (const Painter *p, const SqSceneLine *line, gboolean last, SqVector *inward)
{
  const SqNode *nodes = sq_scene_nodes (p->scene, line);
  guint s = last ? line->n - 2 : 0;
  SqSegment segment = { nodes[s].at, nodes[s + 1].at, nodes[s].bulge };
  SqVector along = sq_segment_direction (&segment, last ? 1 : 0);
  *inward = last ? sq_point (-along.x, along.y) : sq_point (along.x, -along.y);
  return sq_view_to_device (p->view, last ? segment.to : segment.from);
}

static void
paint_arrows (const Painter *p, const SqItem *item)
{
  for (guint i = 0; i < 2 * item->n_lines; i++)
    {
      const SqSceneLine *line = sq_scene_line (p->scene, item->first_line + i / 2);
      SqVector in;
      SqPoint other = line_end (p, line, !(i & 1), &in);
      SqPoint tip = line_end (p, line, i & 1, &in);
      double head = fmin (8 * p->unit, 0.4 * sq_distance (tip, other));
      SqPoint base = sq_moved (tip, in, head);
      SqPoint a = sq_moved (base, sq_left (in), head / 3);
      SqPoint b = sq_moved (base, sq_right (in), head / 3);
      cairo_move_to (p->cr, tip.x, tip.y);
      cairo_line_to (p->cr, a.x, a.y);
      cairo_line_to (p->cr, b.x, b.y);
      cairo_close_path (p->cr);
      cairo_fill (p->cr);
    }
}

/* The two fine lines beside the teeth. */
static void
stroke_tapes (const Painter *p, const SqSceneLine *line, double aside)
{
  const SqNode *nodes = sq_scene_nodes (p->scene, line);
  enter_mm (p);
  for (guint s = 0; s + 1 < line->n; s++)
    for (int side = -1; side <= 1; side += 2)
      {
        SqSegment segment = { nodes[s].at, nodes[s + 1].at, nodes[s].bulge };
        segment = sq_segment_offset (&segment, side * aside / p->view->scale, NULL);
        cairo_move_to (p->cr, segment.from.x, segment.from.y);
        add_segment (p, &segment);
      }
  cairo_restore (p->cr);
  cairo_stroke (p->cr);
}

static void
paint_slider (const Painter *p, const SqSceneLine *line)
{
  SqVector in;
  SqPoint end = line_end (p, line, FALSE, &in);
  cairo_save (p->cr);
  cairo_translate (p->cr, end.x, end.y);
  cairo_rotate (p->cr, atan2 (in.y, in.x));
  cairo_scale (p->cr, p->unit, p->unit);
  cairo_move_to (p->cr, 3, -3);
  cairo_line_to (p->cr, 10, -2);
  cairo_line_to (p->cr, 10, 2);
  cairo_line_to (p->cr, 3, 3);
  cairo_close_path (p->cr);
  cairo_rectangle (p->cr, 10, -1.3, 7, 2.6); /* its tab */
  cairo_fill (p->cr);
  cairo_restore (p->cr);
}

static void
paint_zip (const Painter *p, const SqItem *item)
{
  cairo_set_dash (p->cr, NULL, 0, 0);
  cairo_set_line_width (p->cr, 0.8 * p->unit);
  for (guint i = 0; i < item->n_lines; i++)
    {
      const SqSceneLine *line = sq_scene_line (p->scene, item->first_line + i);
      stroke_tapes (p, line, 2.4 * p->unit);
      if (line->from_mm <= 0)
        paint_slider (p, line);
    }
}

/* What keeps a line readable on cloth of any colour: chalk's halo, a hairline of the table beside
 * the cut line, white or black beside what is chosen. */
static SqChalk
halo_of (const Painter *p, SqPen pen)
{
  SqChalk halo = p->chalk;
  if (pen_looks[pen].is_chalk)
    return halo;
  halo.halo_alpha = 0;
  if (!sq_scene_ground (p->scene)->is_cloth)
    return halo;
  if (pen == SQ_PEN_CUT)
    halo = (SqChalk){ .halo = p->theme->table, .halo_alpha = 0.5 };
  else if (pen == SQ_PEN_ACCENT)
    halo = (SqChalk){ .halo = sq_contrast (p->theme->accent, 0xffffff) > 3 ? 0xffffff : 0x1f1d1a,
                      .halo_alpha = 0.8 };
  return halo;
}

static void
paint_halo (const Painter *p, const SqItem *item, double width)
{
  SqChalk halo = halo_of (p, item->pen);
  if (halo.halo_alpha <= 0)
    return;
  sq_paint_source (p->cr, halo.halo, halo.halo_alpha);
  cairo_set_dash (p->cr, NULL, 0, 0);
  cairo_set_line_cap (p->cr, CAIRO_LINE_CAP_ROUND);
  stroke_lines (p, item, width, FALSE);
}

static void
paint_stroke (const Painter *p, const SqItem *item)
{
  const PenLook *look = &pen_looks[item->pen];
  double width = look->width * p->unit;
  gboolean is_zip = look->ornament == ORNAMENT_ZIP;
  cairo_set_line_join (p->cr, CAIRO_LINE_JOIN_ROUND);
  paint_halo (p, item, is_zip ? 7.5 * p->unit : width + 1.8 * p->unit);
  sq_paint_source (p->cr, pen_colour (p, item->pen), item->alpha);
  stroke_lines (p, item, is_zip ? 3.2 * p->unit : width, TRUE);
  if (is_zip)
    paint_zip (p, item);
  else if (look->ornament == ORNAMENT_ARROWS)
    paint_arrows (p, item);
}

static void
paint_fill (const Painter *p, const SqItem *item)
{
  const SqTheme *theme = p->theme;
  const struct
  {
    guint32 rgb;
    double alpha;
  } looks[SQ_N_FILLS] = {
    [SQ_FILL_COLOUR] = { item->rgb, item->alpha },
    [SQ_FILL_SEAT] = { theme->seat, 1 },
    [SQ_FILL_SHADOW] = { theme->shadow, theme->shadow_alpha },
    [SQ_FILL_PLATE] = { theme->plate, theme->plate_alpha },
    [SQ_FILL_HANDLE] = { theme->seat, 1 },
    [SQ_FILL_ACCENT] = { theme->accent, 0.18 },
  };
  cairo_save (p->cr);
  if (item->fill == SQ_FILL_SHADOW)
    cairo_translate (p->cr, p->unit, 1.6 * p->unit); /* light from the upper left */
  add_lines (p, item->first_line, item->n_lines);
  sq_paint_source (p->cr, looks[item->fill].rgb, looks[item->fill].alpha);
  cairo_fill (p->cr);
  cairo_restore (p->cr);
}

static guint32
tone_colour (const SqTheme *theme, SqTone tone)
{
  const guint32 tones[] = { [SQ_TONE_INK] = theme->ink,
                            [SQ_TONE_DIM] = theme->dim,
                            [SQ_TONE_ACCENT] = theme->accent_text,
                            [SQ_TONE_GOOD] = theme->good_text };
  return tones[tone];
}

static void
add_attribute (PangoAttrList *list, PangoAttribute *attribute, gsize start, gsize end)
{
  attribute->start_index = (guint) start;
  attribute->end_index = (guint) end;
  pango_attr_list_insert (list, attribute);
}

/* Bytes of the space between a whole number and a fraction that begins at @at; 0: there is none. */
static gsize
space_before (const char *text, const char *at)
{
  static const char *const spaces[] = { " ", "\xc2\xa0" };

  for (gsize i = 0; i < G_N_ELEMENTS (spaces); i++)
    {
      gsize n = strlen (spaces[i]);
      if (at > text + n && memcmp (at - n, spaces[i], n) == 0
          && g_ascii_isdigit (at[-(gssize) n - 1]))
        return n;
    }
  return 0;
}

void
sq_paint_set_fractions (PangoAttrList *list, const char *text, double em)
{
  const char *slash = text;
  while ((slash = strstr (slash, SQ_FRACTION_SLASH)) != NULL)
    {
      const char *from = slash, *to = slash + 3;
      while (from > text && g_ascii_isdigit (from[-1]))
        from--;
      while (g_ascii_isdigit (*to))
        to++;
      gsize a = (gsize) (from - text), b = (gsize) (slash - text), c = (gsize) (to - text);
      add_attribute (list, pango_attr_font_features_new ("tnum=1,frac=0,numr=0,dnom=0"), a, c);
      add_attribute (list, pango_attr_scale_new (SQ_FRACTION_EM), a, b);
      add_attribute (list, pango_attr_rise_new ((int) (0.27 * em * PANGO_SCALE)), a, b);
      add_attribute (list, pango_attr_scale_new (SQ_FRACTION_EM), b + 3, c);
      /* nearer to its whole number */
      if (space_before (text, from) > 0)
        add_attribute (list, pango_attr_letter_spacing_new ((int) (-0.14 * em * PANGO_SCALE)),
                       a - space_before (text, from), a);
      slash = to;
    }
}

static void
set_detail (PangoAttrList *list, const SqTheme *theme, gsize start, gsize end)
{
  const guint32 dim = theme->dim;
  add_attribute (list, pango_attr_weight_new (PANGO_WEIGHT_NORMAL), start, end);
  add_attribute (list, pango_attr_scale_new (SQ_DETAIL_EM), start, end);
  add_attribute (list,
                 pango_attr_foreground_new ((guint16) ((dim >> 16 & 0xff) * 0x101),
                                            (guint16) ((dim >> 8 & 0xff) * 0x101),
                                            (guint16) ((dim & 0xff) * 0x101)),
                 start, end);
}

static PangoLayout *
lay_text (Painter *p, const SqText *text, double em)
{
  g_autoptr (PangoFontDescription) font = pango_font_description_new ();
  g_autoptr (PangoAttrList) list = pango_attr_list_new ();
  /* An em space is near the gap that the box's width allows for. */
  g_autofree char *whole = text->detail != NULL
                               ? g_strconcat (text->text, "\u2002", text->detail, NULL)
                               : g_strdup (text->text);
  gsize end = strlen (whole);
  if (p->layout == NULL)
    {
      p->layout = pango_cairo_create_layout (p->cr);
      /* Letters stand on whole pixels of a screen; paper has none. */
      pango_context_set_round_glyph_positions (pango_layout_get_context (p->layout),
                                               p->view->medium == SQ_MEDIUM_SCREEN);
    }
  pango_font_description_set_family (font, p->view->font != NULL ? p->view->font : "Sans");
  pango_font_description_set_weight (font,
                                     text->bold ? PANGO_WEIGHT_SEMIBOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size (font, em * PANGO_SCALE);
  pango_layout_set_font_description (p->layout, font);
  add_attribute (list, pango_attr_font_features_new ("tnum=1"), 0, end);
  if (text->detail != NULL)
    set_detail (list, p->theme, strlen (text->text), end);
  sq_paint_set_fractions (list, whole, em);
  pango_layout_set_text (p->layout, whole, -1);
  pango_layout_set_attributes (p->layout, list);
  return p->layout;
}

static void
paint_text (Painter *p, const SqText *text)
{
  double em = text->em_mm * p->view->scale, room = text->width_mm * p->view->scale;
  PangoLayout *layout = lay_text (p, text, em);
  PangoRectangle logical;
  SqPoint at = sq_view_to_device (p->view, text->at);
  pango_layout_get_extents (layout, NULL, &logical);
  double width = (double) logical.width / PANGO_SCALE;
  double shrink = width > room ? room / width : 1;
  double left = text->align == SQ_ALIGN_START ? -room / 2
                : text->align == SQ_ALIGN_END ? room / 2 - width * shrink
                                              : -width * shrink / 2;
  double baseline = (double) pango_layout_get_baseline (layout) / PANGO_SCALE;

  cairo_save (p->cr);
  cairo_translate (p->cr, at.x, at.y);
  cairo_rotate (p->cr, -text->angle_rad);
  /* Figures stand about 0.72 em high: their middle goes to the box's. */
  cairo_translate (p->cr, left, (0.36 * em - baseline) * shrink);
  cairo_scale (p->cr, shrink, shrink);
  cairo_move_to (p->cr, 0, 0);
  sq_paint_source (p->cr, tone_colour (p->theme, text->tone), 1);
  pango_cairo_show_layout (p->cr, layout);
  cairo_restore (p->cr);
}

void
sq_paint_scene (cairo_t *cr, const SqView *view, const SqTheme *theme, const SqScene *scene)
{
  g_return_if_fail (cr != NULL && view != NULL && theme != NULL && scene != NULL);
  Painter p = { .cr = cr, .view = view, .theme = theme, .scene = scene };
  p.chalk = sq_chalk_on (theme, sq_scene_ground (scene));
  p.unit = (view->weight > 0 ? view->weight : 1)
           * (view->medium == SQ_MEDIUM_PAPER ? PAPER_UNIT_MM * view->scale : 1);
  cairo_save (cr);
  cairo_new_path (cr);
  if (view->medium == SQ_MEDIUM_PAPER)
    cairo_set_tolerance (cr, PAPER_TOLERANCE);
  for (guint i = 0; i < sq_scene_n_items (scene); i++)
    {
      const SqItem *item = sq_scene_item (scene, i);
      if (item->kind == SQ_ITEM_STROKE)
        paint_stroke (&p, item);
      else if (item->kind == SQ_ITEM_FILL)
        paint_fill (&p, item);
      else
        paint_text (&p, sq_scene_text (scene, item->text));
    }
  cairo_restore (cr);
  g_clear_object (&p.layout);
}
