/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/instance-lay.h"

#include "base/number.h"
#include "exchange/json-write.h"
#include "job/names.h"

#include <math.h>

/* The picture: what the strip is wide, and what is left around it (user units of the SVG). */
#define STRIP_HEIGHT 480.0
#define MARGIN 24.0
#define FONT_HEIGHT 13.0

/* ---- JSON ---------------------------------------------------------------------------------- */

static void
add_placed (SqJsonWriter *json, const SqInstance *instance, const SqLay *lay)
{
  double per_unit = SQ_GRID_PER_MM * instance->per_unit_mm;

  sq_json_open_array (json, "placed", SQ_JSON_LINES);
  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_integer (json, "cushion", 0);
      sq_json_add_integer (json, "piece", placed->tag);
      sq_json_add_integer (json, "copy", placed->copy);
      sq_json_add_integer (json, "strip", placed->strip);
      sq_json_add_number (json, "x", placed->at.x / per_unit);
      sq_json_add_number (json, "y", placed->at.y / per_unit);
      sq_json_add_number (json, "turn", placed->pose.turn / 1000.0);
      sq_json_add_boolean (json, "mirrored", placed->pose.mirrored);
      sq_json_close (json);
    }
  sq_json_close (json);
}

static void
add_unlaid (SqJsonWriter *json, const SqInstance *instance, const SqLay *lay)
{
  sq_json_open_array (json, "unlaid", SQ_JSON_LINES);
  for (guint i = 0; i < lay->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (lay->unlaid, SqUnlaid, i);
      sq_json_open_object (json, NULL, SQ_JSON_LINE);
      sq_json_add_integer (json, "cushion", 0);
      sq_json_add_integer (json, "piece", sq_lay_task_item (instance->task, unlaid->item)->tag);
      sq_json_add_integer (json, "count", unlaid->count);
      sq_json_add_string (json, "why", sq_unlaid_why_names[unlaid->why]);
      sq_json_close (json);
    }
  sq_json_close (json);
}

static void
add_strip (SqJsonWriter *json, const SqInstance *instance, const SqLay *lay)
{
  sq_json_open_array (json, "strips", SQ_JSON_LINES);
  sq_json_open_object (json, NULL, SQ_JSON_LINE);
  sq_json_add_string (json, "kind", "roll");
  sq_json_add_number (json, "width", instance->strip_height);
  sq_json_add_number (json, "length", sq_instance_length (instance, lay));
  sq_json_close (json);
  sq_json_close (json);
}

char *
sq_instance_lay_json (const SqInstance *instance, const SqLay *lay)
{
  g_autoptr (SqJsonWriter) json = sq_json_writer_new ();

  sq_json_open_object (json, NULL, SQ_JSON_LINES);
  sq_json_add_string (json, "name", instance->name);
  sq_json_open_array (json, "lays", SQ_JSON_LINES);
  sq_json_open_object (json, NULL, SQ_JSON_LINES);
  sq_json_add_integer (json, "cloth", 0);
  add_strip (json, instance, lay);
  sq_json_add_number (json, "density", sq_instance_density (instance, lay));
  sq_json_add_integer (json, "seed", (gint64) lay->seed);
  sq_json_add_integer (json, "steps", (gint64) lay->steps);
  sq_json_add_digest (json, "digest", instance->task->digest);
  add_placed (json, instance, lay);
  add_unlaid (json, instance, lay);
  sq_json_close (json);
  sq_json_close (json);
  sq_json_close (json);
  return sq_json_writer_dup_text (json);
}

/* ---- the picture --------------------------------------------------------------------------- */

/* Hues that are told apart, all of one quiet lightness; an item's is by its place. */
static const char *const fills[] = { "#dfe6ee", "#ece3d4", "#dde9df", "#eadde6",
                                     "#e8e6cf", "#d9e6e8", "#eee0da", "#e2e0ef" };

typedef struct
{
  GString *svg;
  double per_um; /* user units of a micrometre */
  double height_um;
} Picture;

static void
add_number (GString *svg, double number)
{
  char text[SQ_NUMBER_SIZE];

  g_string_append (svg, sq_number_write (round (number * 1000) / 1000, text));
}

/* The picture's y runs down, the strip's across from the near edge up. */
static void
add_point (Picture *picture, SqGrid p)
{
  add_number (picture->svg, MARGIN + p.x * picture->per_um);
  g_string_append_c (picture->svg, ' ');
  add_number (picture->svg, MARGIN + (picture->height_um - p.y) * picture->per_um);
}

static void
add_ring (Picture *picture, const SqGridRing *ring, SqGrid at)
{
  for (guint i = 0; i < ring->n; i++)
    {
      g_string_append (picture->svg, i == 0 ? "M" : "L");
      add_point (picture, sq_grid_add (ring->points[i], at));
    }
  g_string_append (picture->svg, "Z");
}

/* The middle of the widest stretch that a line through the middle of the ring's height has in it:
 * a place for its number that is never in a dent. */
static SqGrid
place_in (const SqGridRing *ring, SqGridBox box)
{
  double y = (box.min.y + (double) box.max.y) / 2 + 0.5, best = -1;
  SqGrid place = { (box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2 };
  g_autoptr (GArray) cuts = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i < ring->n; i++)
    {
      SqGrid a = ring->points[i], b = ring->points[(i + 1) % ring->n];
      if ((a.y < y) == (b.y < y))
        continue;
      double x = a.x + (y - a.y) / ((double) b.y - a.y) * ((double) b.x - a.x);
      guint k = 0;
      while (k < cuts->len && g_array_index (cuts, double, k) < x)
        k++;
      g_array_insert_val (cuts, k, x);
    }
  for (guint i = 0; i + 1 < cuts->len; i += 2)
    {
      double from = g_array_index (cuts, double, i), to = g_array_index (cuts, double, i + 1);
      if (to - from > best)
        {
          best = to - from;
          place.x = (gint32) ((from + to) / 2);
        }
    }
  return place;
}

static void
add_item (Picture *picture, const SqLayTask *task, const SqPlaced *placed)
{
  const SqLayItem *item = sq_lay_task_item (task, placed->item);
  SqGridRing *rings = sq_grid_rings_posed (item->rings, item->n_rings, placed->pose);
  SqGrid place = place_in (&rings[0], sq_grid_rings_box (rings, item->n_rings));

  g_string_append_printf (picture->svg, "<path fill=\"%s\" d=\"",
                          fills[placed->tag % G_N_ELEMENTS (fills)]);
  for (guint i = 0; i < item->n_rings; i++)
    add_ring (picture, &rings[i], placed->at);
  g_string_append (picture->svg, "\"/>\n<text transform=\"translate(");
  add_point (picture, sq_grid_add (place, placed->at));
  g_string_append_printf (picture->svg, ")\" dy=\"0.35em\">%u</text>\n", placed->tag);
  sq_grid_rings_free (rings, item->n_rings);
}

/* ` name="value"` */
static void
add_attribute (GString *svg, const char *name, double value)
{
  g_string_append_printf (svg, " %s=\"", name);
  add_number (svg, value);
  g_string_append_c (svg, '"');
}

static void
add_head (GString *svg, double width, double height)
{
  g_string_append (svg, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ");
  add_number (svg, width);
  g_string_append_c (svg, ' ');
  add_number (svg, height);
  g_string_append (svg, "\">\n<style>\n"
                        "path { stroke: #3c4650; stroke-width: 0.8; stroke-linejoin: round }\n"
                        "text { font-family: sans-serif; text-anchor: middle; fill: #3c4650 }\n"
                        "</style>\n<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n");
}

static void
add_strip_box (GString *svg, double length)
{
  g_string_append (svg, "<rect");
  add_attribute (svg, "x", MARGIN);
  add_attribute (svg, "y", MARGIN);
  add_attribute (svg, "width", length);
  add_attribute (svg, "height", STRIP_HEIGHT);
  g_string_append (svg, " fill=\"#f6f5f2\" stroke=\"#9aa3ab\" stroke-width=\"1.2\"/>\n");
}

/* Name, density and length, under the strip. */
static void
add_caption (GString *svg, const SqInstance *instance, const SqLay *lay)
{
  char density[SQ_NUMBER_SIZE], length[SQ_NUMBER_SIZE];
  g_autofree char *name = g_markup_escape_text (instance->name, -1);

  g_ascii_formatd (density, sizeof density, "%.3f", 100 * sq_instance_density (instance, lay));
  sq_number_write (sq_instance_length (instance, lay), length);
  g_string_append (svg, "<text style=\"text-anchor: start\"");
  add_attribute (svg, "x", MARGIN);
  add_attribute (svg, "y", MARGIN + STRIP_HEIGHT + 1.6 * FONT_HEIGHT);
  add_attribute (svg, "font-size", FONT_HEIGHT);
  g_string_append_printf (svg, " xml:space=\"preserve\">%s   %s %%   %s</text>\n", name, density,
                          length);
}

char *
sq_instance_lay_svg (const SqInstance *instance, const SqLay *lay)
{
  double height_um = sq_lay_task_strip (instance->task, 0)->width;
  Picture picture = { g_string_new (NULL), STRIP_HEIGHT / height_um, height_um };
  double length = sq_lay_length (lay, 0) * picture.per_um;

  add_head (picture.svg, length + 2 * MARGIN, STRIP_HEIGHT + 2 * MARGIN + FONT_HEIGHT);
  add_strip_box (picture.svg, length);
  g_string_append (picture.svg, "<g");
  add_attribute (picture.svg, "font-size", 0.75 * FONT_HEIGHT);
  g_string_append (picture.svg, ">\n");
  for (guint i = 0; i < lay->placed->len; i++)
    add_item (&picture, instance->task, sq_lay_placed (lay, i));
  g_string_append (picture.svg, "</g>\n");
  add_caption (picture.svg, instance, lay);
  g_string_append (picture.svg, "</svg>\n");
  return g_string_free (picture.svg, FALSE);
}
