/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/svg.h"

#include "base/number.h"
#include "base/units.h"

/* An arc that rises less above its chord is written as that: readers that count in single precision
 * lose circles that are so large. */
#define FLAT_MM 0.001

/* Of one arc command at most. It has ends and radius but no centre, and near half a turn the centre
 * follows badly from them: at 100 mm, ends rounded by 0.0001 mm would move it by 0.1 mm. */
#define MOST_SWEEP_RAD (2 * M_PI / 3)

/* Capitals of a usual sans-serif are that high. */
#define CAPITALS_PER_EM 0.72

/* All dark enough to be read on white. */
static const char *const colours[SQ_N_CUT_LAYERS] = {
  [SQ_LAYER_CUT] = "#d00000",    [SQ_LAYER_CUT_INSIDE] = "#c000a0", [SQ_LAYER_SEW] = "#0050d0",
  [SQ_LAYER_NOTCH] = "#008030",  [SQ_LAYER_FOLD] = "#7030c0",       [SQ_LAYER_ZIP] = "#a06000",
  [SQ_LAYER_CORNER] = "#007880", [SQ_LAYER_STAY] = "#607000",       [SQ_LAYER_GRAIN] = "#505050",
  [SQ_LAYER_TEXT] = "#000000",   [SQ_LAYER_CLOTH] = "#909090",
};

typedef struct
{
  GString *out;
  double height_mm;
} Svg;

static void
add_number (Svg *svg, double number)
{
  char text[SQ_NUMBER_SIZE];

  g_string_append (svg->out, sq_number_write (round (number * 1e4) / 1e4, text));
}

/* The one place where y is turned over: in the file it runs down. */
static void
add_point (Svg *svg, SqPoint p)
{
  add_number (svg, p.x);
  g_string_append_c (svg->out, ' ');
  add_number (svg, svg->height_mm - p.y);
}

static void
add_pair (Svg *svg, double a, double b, const char *unit, const char *between)
{
  add_number (svg, a);
  g_string_append (svg->out, unit);
  g_string_append (svg->out, between);
  add_number (svg, b);
  g_string_append (svg->out, unit);
}

/* XML 1.0 has no place for most control characters, not even escaped. */
static void
add_escaped (Svg *svg, const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autoptr (GString) clean = g_string_new (NULL);

  for (const char *at = valid; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar c = g_utf8_get_char (at);
      if (!g_unichar_iscntrl (c) && (c & 0xfffe) != 0xfffe)
        g_string_append_unichar (clean, c);
    }
  g_autofree char *escaped = g_markup_escape_text (clean->str, -1);
  g_string_append (svg->out, escaped);
}

static void
add_element (Svg *svg, const char *name, const char *text)
{
  g_string_append_printf (svg->out, "<%s>", name);
  add_escaped (svg, text);
  g_string_append_printf (svg->out, "</%s>\n", name);
}

/* ---- lines --------------------------------------------------------------------------------- */

static void
add_arc (Svg *svg, const SqSegment *arc)
{
  double sweep_rad = fabs (sq_segment_sweep_rad (arc));
  guint n = (guint) fmax (ceil (sweep_rad / MOST_SWEEP_RAD - SQ_STRAIGHT_RAD), 1);

  for (guint i = 0; i < n; i++)
    {
      SqSegment part = sq_segment_part (arc, i / (double) n, (i + 1) / (double) n);
      double radius_mm = fabs (sq_segment_radius_mm (arc));
      g_string_append_c (svg->out, 'A');
      add_pair (svg, radius_mm, radius_mm, "", " ");
      /* y runs down, so what turns to the left here turns by a negative angle there */
      g_string_append (svg->out, arc->bulge > 0 ? " 0 0 0 " : " 0 0 1 ");
      add_point (svg, i + 1 == n ? arc->to : part.to);
    }
}

static gboolean
is_flat (const SqSegment *s)
{
  return fabs (s->bulge) * sq_distance (s->from, s->to) / 2 < FLAT_MM;
}

static void
add_path (Svg *svg, const SqPath *path)
{
  guint n = sq_path_n_segments (path);

  g_string_append (svg->out, "<path d=\"M");
  add_point (svg, sq_path_nodes (path)[0].at);
  for (guint i = 0; i < n; i++)
    {
      SqSegment s = sq_path_segment (path, i);
      if (!is_flat (&s))
        add_arc (svg, &s);
      else if (!sq_path_is_ring (path) || i + 1 < n)
        {
          g_string_append_c (svg->out, 'L');
          add_point (svg, s.to);
        }
    }
  g_string_append (svg->out, sq_path_is_ring (path) ? "Z\"/>\n" : "\"/>\n");
}

static void
add_text (Svg *svg, const SqCutText *text)
{
  g_string_append (svg->out, "<text font-size=\"");
  add_number (svg, text->height_mm / CAPITALS_PER_EM);
  g_string_append (svg->out, "\" transform=\"translate(");
  add_point (svg, text->at);
  g_string_append (svg->out, ") rotate(");
  add_number (svg, -text->angle_rad * SQ_DEG_PER_RAD);
  g_string_append (svg->out, ")\">");
  add_escaped (svg, text->text);
  g_string_append (svg->out, "</text>\n");
}

/* ---- groups -------------------------------------------------------------------------------- */

static gboolean
has_layer (const GArray *lines, const GArray *texts, SqCutLayer layer)
{
  for (guint i = 0; i < lines->len; i++)
    if (sq_cut_line (lines, i)->layer == layer)
      return TRUE;
  return layer == SQ_LAYER_TEXT && texts->len > 0;
}

static void
open_group (Svg *svg, SqCutLayer layer, guint number, const char *title)
{
  g_string_append_printf (svg->out, "<g id=\"%s-%u\">\n", sq_cut_layer_name (layer), number);
  add_element (svg, "title", title);
}

static void
add_place (Svg *svg, const SqCutDrawing *drawing, guint i, SqCutLayer layer)
{
  const SqCutPlace *place = sq_cut_place (drawing, i);
  const SqCutShape *shape = sq_cut_shape (drawing, place->shape);

  if (!has_layer (shape->lines, shape->texts, layer))
    return;
  open_group (svg, layer, i + 1, shape->name);
  for (guint k = 0; k < shape->lines->len; k++)
    if (sq_cut_line (shape->lines, k)->layer == layer)
      {
        g_autoptr (SqPath) path = sq_cut_line_placed (sq_cut_line (shape->lines, k), place);
        add_path (svg, path);
      }
  for (guint k = 0; layer == SQ_LAYER_TEXT && k < shape->texts->len; k++)
    {
      SqCutText text = sq_cut_text_placed (sq_cut_text (shape->texts, k), place);
      add_text (svg, &text);
    }
  g_string_append (svg->out, "</g>\n");
}

/* What belongs to no piece. */
static void
add_own (Svg *svg, const SqCutDrawing *drawing, SqCutLayer layer)
{
  if (!has_layer (drawing->lines, drawing->texts, layer))
    return;
  open_group (svg, layer, 0, drawing->name);
  for (guint i = 0; i < drawing->lines->len; i++)
    if (sq_cut_line (drawing->lines, i)->layer == layer)
      add_path (svg, sq_cut_line (drawing->lines, i)->path);
  for (guint i = 0; layer == SQ_LAYER_TEXT && i < drawing->texts->len; i++)
    add_text (svg, sq_cut_text (drawing->texts, i));
  g_string_append (svg->out, "</g>\n");
}

static gboolean
draws_layer (const SqCutDrawing *drawing, SqCutLayer layer)
{
  gboolean found = has_layer (drawing->lines, drawing->texts, layer);

  for (guint i = 0; !found && i < drawing->shapes->len; i++)
    found = has_layer (sq_cut_shape (drawing, i)->lines, sq_cut_shape (drawing, i)->texts, layer);
  return found;
}

static void
add_layer (Svg *svg, const SqCutDrawing *drawing, SqCutLayer layer)
{
  if (!draws_layer (drawing, layer))
    return;
  g_string_append_printf (svg->out, "<g id=\"%s\" ", sq_cut_layer_name (layer));
  g_string_append_printf (
      svg->out, layer == SQ_LAYER_TEXT ? "fill=\"%s\" stroke=\"none\">\n" : "stroke=\"%s\">\n",
      colours[layer]);
  add_element (svg, "title", sq_cut_layer_name (layer));
  add_own (svg, drawing, layer);
  for (guint i = 0; i < drawing->places->len; i++)
    add_place (svg, drawing, i, layer);
  g_string_append (svg->out, "</g>\n");
}

/* ---- the file ------------------------------------------------------------------------------ */

static void
add_head (Svg *svg, const SqCutDrawing *drawing)
{
  double width_mm = drawing->box.max.x;

  g_string_append (svg->out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                             "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"");
  add_pair (svg, width_mm, svg->height_mm, "mm", "\" height=\"");
  g_string_append (svg->out, "\" viewBox=\"0 0 ");
  add_pair (svg, width_mm, svg->height_mm, "", " ");
  g_string_append (svg->out, "\" fill=\"none\" stroke-width=\"");
  add_number (svg, SQ_SVG_LINE_MM);
  g_string_append (svg->out, "\" stroke-linejoin=\"round\" font-family=\"sans-serif\">\n");
  add_element (svg, "title", drawing->name);
  g_string_append (svg->out, "<desc>");
  add_escaped (svg, drawing->title);
  g_string_append (svg->out, " · 1 : 1 · ");
  add_pair (svg, width_mm, svg->height_mm, " mm", " × ");
  g_string_append (svg->out, "</desc>\n");
}

char *
sq_svg_write (const SqCutDrawing *drawing)
{
  Svg svg = { g_string_new (NULL), drawing->box.max.y };

  add_head (&svg, drawing);
  for (int layer = SQ_N_CUT_LAYERS - 1; layer >= 0; layer--)
    add_layer (&svg, drawing, (SqCutLayer) layer);
  g_string_append (svg.out, "</svg>\n");
  return g_string_free (svg.out, FALSE);
}
