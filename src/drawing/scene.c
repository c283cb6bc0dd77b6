/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/scene.h"

#include <string.h>

struct _SqScene
{
  gint ref_count;
  GArray *items; /* of SqItem */
  GArray *lines; /* of SqSceneLine */
  GArray *nodes; /* of SqNode */
  GArray *texts; /* of SqText, their strings in chunk */
  GStringChunk *chunk;
  SqGround ground;
};

struct _SqSceneBuilder
{
  SqScene *scene;
};

SqScene *
sq_scene_ref (const SqScene *scene)
{
  SqScene *own = (SqScene *) scene;
  g_return_val_if_fail (scene != NULL, NULL);
  g_atomic_int_inc (&own->ref_count);
  return own;
}

void
sq_scene_unref (SqScene *scene)
{
  g_return_if_fail (scene != NULL);
  if (!g_atomic_int_dec_and_test (&scene->ref_count))
    return;
  g_array_unref (scene->items);
  g_array_unref (scene->lines);
  g_array_unref (scene->nodes);
  g_array_unref (scene->texts);
  g_string_chunk_free (scene->chunk);
  g_free (scene);
}

guint
sq_scene_n_items (const SqScene *scene)
{
  g_return_val_if_fail (scene != NULL, 0);
  return scene->items->len;
}

const SqItem *
sq_scene_item (const SqScene *scene, guint i)
{
  g_return_val_if_fail (scene != NULL && i < scene->items->len, NULL);
  return &g_array_index (scene->items, SqItem, i);
}

const SqSceneLine *
sq_scene_line (const SqScene *scene, guint i)
{
  g_return_val_if_fail (scene != NULL && i < scene->lines->len, NULL);
  return &g_array_index (scene->lines, SqSceneLine, i);
}

const SqNode *
sq_scene_nodes (const SqScene *scene, const SqSceneLine *line)
{
  g_return_val_if_fail (scene != NULL && line->first + line->n <= scene->nodes->len, NULL);
  return &g_array_index (scene->nodes, SqNode, line->first);
}

const SqText *
sq_scene_text (const SqScene *scene, guint i)
{
  g_return_val_if_fail (scene != NULL && i < scene->texts->len, NULL);
  return &g_array_index (scene->texts, SqText, i);
}

const SqGround *
sq_scene_ground (const SqScene *scene)
{
  g_return_val_if_fail (scene != NULL, NULL);
  return &scene->ground;
}

static guint
line_n_segments (const SqSceneLine *line)
{
  return line->is_ring ? line->n : line->n - 1;
}

static SqBox
text_box (const SqText *text)
{
  SqBox box = sq_box_empty ();
  SqVector along = sq_turned (sq_point (text->width_mm / 2, 0), text->angle_rad);
  SqVector up = sq_turned (sq_point (0, SQ_TEXT_HEIGHT_EM * text->em_mm / 2), text->angle_rad);
  for (int i = 0; i < 4; i++)
    box = sq_box_with (box,
                       sq_moved (sq_moved (text->at, along, i & 1 ? 1 : -1), up, i & 2 ? 1 : -1));
  return box;
}

SqBox
sq_scene_box (const SqScene *scene)
{
  SqBox box = sq_box_empty ();
  g_return_val_if_fail (scene != NULL, box);
  for (guint i = 0; i < scene->lines->len; i++)
    {
      const SqSceneLine *line = sq_scene_line (scene, i);
      const SqNode *nodes = sq_scene_nodes (scene, line);
      for (guint s = 0; s < line_n_segments (line); s++)
        {
          SqSegment segment = { nodes[s].at, nodes[(s + 1) % line->n].at, nodes[s].bulge };
          box = sq_box_union (box, sq_segment_box (&segment));
        }
    }
  for (guint i = 0; i < scene->texts->len; i++)
    box = sq_box_union (box, text_box (sq_scene_text (scene, i)));
  return box;
}

const char *
sq_pen_name (SqPen pen)
{
  static const char *const names[SQ_N_PENS] = { "cut",   "sew",       "fold",   "stay",
                                                "grain", "notch",     "carry",  "zip",
                                                "ink",   "finished",  "hatch",  "leader",
                                                "chord", "guide",     "accent", "handle",
                                                "grid",  "grid-main", "rule" };
  g_return_val_if_fail ((guint) pen < SQ_N_PENS, NULL);
  return names[pen];
}

/* A length in the dump: 0.001 mm, never "-0". */
static void
dump_number (GString *out, double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  double rounded = round (value * 1000) / 1000 + 0.0;
  g_string_append_printf (out, " %s",
                          g_ascii_formatd (text, sizeof text, "%.3f", rounded == 0 ? 0 : rounded));
}

static void
dump_lines (GString *out, const SqScene *scene, const SqItem *item)
{
  for (guint i = 0; i < item->n_lines; i++)
    {
      const SqSceneLine *line = sq_scene_line (scene, item->first_line + i);
      const SqNode *nodes = sq_scene_nodes (scene, line);
      g_string_append (out, line->is_ring ? "\n  ring" : "\n  line");
      for (guint n = 0; n < line->n; n++)
        {
          dump_number (out, nodes[n].at.x);
          dump_number (out, nodes[n].at.y);
          if (fabs (nodes[n].bulge) >= 0.0005)
            {
              g_string_append (out, " ~");
              dump_number (out, nodes[n].bulge);
            }
          if (n + 1 < line->n)
            g_string_append (out, ",");
        }
    }
}

static void
dump_text (GString *out, const SqText *text)
{
  static const char *const tones[] = { "ink", "dim", "accent", "good" };
  g_string_append_printf (out, "text %s%s%s", tones[text->tone], text->bold ? " bold" : "",
                          text->align == SQ_ALIGN_START ? " start"
                          : text->align == SQ_ALIGN_END ? " end"
                                                        : "");
  dump_number (out, text->at.x);
  dump_number (out, text->at.y);
  dump_number (out, text->angle_rad);
  dump_number (out, text->em_mm);
  dump_number (out, text->width_mm);
  g_string_append_printf (out, " \"%s\"", text->text);
  if (text->detail != NULL)
    g_string_append_printf (out, " \"%s\"", text->detail);
}

char *
sq_scene_dump (const SqScene *scene)
{
  static const char *const fills[SQ_N_FILLS] = { "colour", "seat",   "shadow",
                                                 "plate",  "handle", "accent" };
  GString *out = g_string_new (NULL);
  g_return_val_if_fail (scene != NULL, g_string_free (out, FALSE));
  if (scene->ground.is_cloth)
    g_string_append_printf (out, "ground %06x %06x %06x\n", scene->ground.mean,
                            scene->ground.lightest, scene->ground.darkest);
  for (guint i = 0; i < scene->items->len; i++)
    {
      const SqItem *item = sq_scene_item (scene, i);
      if (item->kind == SQ_ITEM_TEXT)
        dump_text (out, sq_scene_text (scene, item->text));
      else if (item->kind == SQ_ITEM_STROKE)
        g_string_append_printf (out, "stroke %s", sq_pen_name (item->pen));
      else
        g_string_append_printf (out, "fill %s", fills[item->fill]);
      if (item->kind == SQ_ITEM_FILL && item->fill == SQ_FILL_COLOUR)
        {
          g_string_append_printf (out, " %06x", item->rgb);
          dump_number (out, item->alpha);
        }
      dump_lines (out, scene, item);
      g_string_append_c (out, '\n');
    }
  return g_string_free (out, FALSE);
}

SqSceneBuilder *
sq_scene_builder_new (void)
{
  SqSceneBuilder *builder = g_new0 (SqSceneBuilder, 1);
  SqScene *scene = g_new0 (SqScene, 1);
  scene->ref_count = 1;
  scene->items = g_array_new (FALSE, FALSE, sizeof (SqItem));
  scene->lines = g_array_new (FALSE, FALSE, sizeof (SqSceneLine));
  scene->nodes = g_array_new (FALSE, FALSE, sizeof (SqNode));
  scene->texts = g_array_new (FALSE, FALSE, sizeof (SqText));
  scene->chunk = g_string_chunk_new (256);
  builder->scene = scene;
  return builder;
}

/* The item being added to; NULL if the last one was a text, or there is none. */
static SqItem *
open_item (SqScene *scene)
{
  SqItem *last = scene->items->len > 0
                     ? &g_array_index (scene->items, SqItem, scene->items->len - 1)
                     : NULL;
  return last != NULL && last->kind != SQ_ITEM_TEXT ? last : NULL;
}

/* Items that nothing was added to are no items. */
static void
drop_empty_item (SqScene *scene)
{
  const SqItem *last = open_item (scene);
  if (last != NULL && last->n_lines == 0)
    g_array_set_size (scene->items, scene->items->len - 1);
}

SqScene *
sq_scene_builder_end (SqSceneBuilder *builder)
{
  SqScene *scene;
  g_return_val_if_fail (builder != NULL, NULL);
  scene = builder->scene;
  drop_empty_item (scene);
  g_free (builder);
  return scene;
}

void
sq_scene_set_ground (SqSceneBuilder *builder, const SqGround *ground)
{
  g_return_if_fail (builder != NULL && ground != NULL);
  builder->scene->ground = *ground;
}

static void
begin_item (SqSceneBuilder *builder, SqItem item)
{
  g_return_if_fail (builder != NULL);
  drop_empty_item (builder->scene);
  item.first_line = builder->scene->lines->len;
  g_array_append_val (builder->scene->items, item);
}

void
sq_scene_begin_stroke (SqSceneBuilder *builder, SqPen pen)
{
  begin_item (builder, (SqItem){ .kind = SQ_ITEM_STROKE, .pen = pen, .alpha = 1 });
}

void
sq_scene_begin_fill (SqSceneBuilder *builder, SqFill fill)
{
  begin_item (builder, (SqItem){ .kind = SQ_ITEM_FILL, .fill = fill, .alpha = 1 });
}

void
sq_scene_begin_colour (SqSceneBuilder *builder, guint32 rgb, double alpha)
{
  begin_item (builder, (SqItem){ .kind = SQ_ITEM_FILL,
                                 .fill = SQ_FILL_COLOUR,
                                 .rgb = rgb & 0xffffff,
                                 .alpha = alpha });
}

static void
add_nodes (SqSceneBuilder *builder, const SqNode *nodes, guint n, gboolean is_ring, double from_mm)
{
  SqScene *scene;
  SqItem *item;
  SqSceneLine line = { 0, n, is_ring, from_mm };
  g_return_if_fail (builder != NULL && n >= 2);
  scene = builder->scene;
  item = open_item (scene);
  g_return_if_fail (item != NULL);
  line.first = scene->nodes->len;
  g_array_append_vals (scene->nodes, nodes, n);
  g_array_append_val (scene->lines, line);
  item->n_lines++;
}

void
sq_scene_add_nodes (SqSceneBuilder *builder, const SqNode *nodes, guint n, gboolean is_ring)
{
  add_nodes (builder, nodes, n, is_ring, 0);
}

void
sq_scene_add_part (SqSceneBuilder *builder, const SqPath *path, double from_mm)
{
  add_nodes (builder, sq_path_nodes (path), sq_path_n_nodes (path), sq_path_is_ring (path),
             from_mm);
}

void
sq_scene_add_path (SqSceneBuilder *builder, const SqPath *path)
{
  sq_scene_add_nodes (builder, sq_path_nodes (path), sq_path_n_nodes (path),
                      sq_path_is_ring (path));
}

void
sq_scene_add_line (SqSceneBuilder *builder, SqPoint from, SqPoint to)
{
  SqNode nodes[] = { { from, 0, 0 }, { to, 0, 0 } };
  sq_scene_add_nodes (builder, nodes, 2, FALSE);
}

void
sq_scene_add_circle (SqSceneBuilder *builder, SqPoint centre, double radius_mm)
{
  SqNode nodes[] = { { sq_point (centre.x + radius_mm, centre.y), 1, 0 },
                     { sq_point (centre.x - radius_mm, centre.y), 1, 0 } };
  sq_scene_add_nodes (builder, nodes, 2, TRUE);
}

void
sq_scene_add_plate (SqSceneBuilder *builder, SqPoint centre, double width_mm, double height_mm,
                    double angle_rad, double radius_mm)
{
  double w = width_mm / 2, h = height_mm / 2, r = fmin (radius_mm, fmin (w, h));
  double quarter = tan (M_PI / 8);
  SqNode nodes[] = {
    { { r - w, -h }, 0, 0 },      { { w - r, -h }, quarter, 0 }, { { w, r - h }, 0, 0 },
    { { w, h - r }, quarter, 0 }, { { w - r, h }, 0, 0 },        { { r - w, h }, quarter, 0 },
    { { -w, h - r }, 0, 0 },      { { -w, r - h }, quarter, 0 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (nodes); i++)
    nodes[i].at = sq_add (centre, sq_turned (nodes[i].at, angle_rad));
  sq_scene_add_nodes (builder, nodes, G_N_ELEMENTS (nodes), TRUE);
}

void
sq_scene_add_text (SqSceneBuilder *builder, const SqText *text)
{
  SqText own = *text;
  g_return_if_fail (text->text != NULL);
  own.text = g_string_chunk_insert (builder->scene->chunk, text->text);
  if (text->detail != NULL)
    own.detail = g_string_chunk_insert (builder->scene->chunk, text->detail);
  begin_item (builder,
              (SqItem){ .kind = SQ_ITEM_TEXT, .text = builder->scene->texts->len, .alpha = 1 });
  g_array_append_val (builder->scene->texts, own);
}

/* The lines of @item of @scene, moved and scaled, to the item begun last. */
static void
add_scaled_lines (SqSceneBuilder *builder, const SqScene *scene, const SqItem *item, SqPoint origin,
                  double scale)
{
  g_autoptr (GArray) scaled = g_array_new (FALSE, FALSE, sizeof (SqNode));

  for (guint i = 0; i < item->n_lines; i++)
    {
      const SqSceneLine *line = sq_scene_line (scene, item->first_line + i);
      g_array_set_size (scaled, 0);
      g_array_append_vals (scaled, sq_scene_nodes (scene, line), line->n);
      for (guint k = 0; k < line->n; k++)
        {
          SqNode *node = &g_array_index (scaled, SqNode, k);
          node->at = sq_add (origin, sq_scale (node->at, scale));
        }
      add_nodes (builder, (const SqNode *) (gpointer) scaled->data, line->n, line->is_ring,
                 line->from_mm * scale);
    }
}

void
sq_scene_add_scene (SqSceneBuilder *builder, const SqScene *scene, SqPoint origin, double scale)
{
  g_return_if_fail (builder != NULL && scene != NULL && scale > 0);
  for (guint i = 0; i < scene->items->len; i++)
    {
      const SqItem *item = sq_scene_item (scene, i);
      if (item->kind == SQ_ITEM_TEXT)
        {
          SqText text = *sq_scene_text (scene, item->text);
          text.at = sq_add (origin, sq_scale (text.at, scale));
          text.em_mm *= scale;
          text.width_mm *= scale;
          sq_scene_add_text (builder, &text);
          continue;
        }
      begin_item (builder, *item);
      open_item (builder->scene)->n_lines = 0;
      add_scaled_lines (builder, scene, item, origin, scale);
    }
}

void
sq_scene_stroke_path (SqSceneBuilder *builder, SqPen pen, const SqPath *path)
{
  sq_scene_begin_stroke (builder, pen);
  sq_scene_add_path (builder, path);
}

void
sq_scene_fill_path (SqSceneBuilder *builder, SqFill fill, const SqPath *path)
{
  sq_scene_begin_fill (builder, fill);
  sq_scene_add_path (builder, path);
}

static double
char_width_em (gunichar c)
{
  if (c == 0x2044) /* between the small figures of a fraction */
    return 0.2;
  if (c == ' ' || c == 0xa0 || c == 0xb7)
    return 0.33;
  if (g_unichar_isdigit (c))
    return 0.64;
  if (c < 0x80 && strchr (".,:;'!|ijl()[]", (int) c) != NULL)
    return 0.39;
  if (c == 'm' || c == 'M' || c == 'W' || c == '%' || c == '@')
    return 1;
  if (c == 'w')
    return 0.84;
  if (g_unichar_iswide (c))
    return 1.05;
  return g_unichar_isupper (c) ? 0.76 : c < 0x80 ? 0.62 : 0.84;
}

/* Whether the figure at @c belongs to a fraction: figures, then a fraction slash, on one side. */
static gboolean
is_in_fraction (const char *text, const char *c)
{
  const char *before = c, *after = c;
  while (before > text && g_ascii_isdigit (before[-1]))
    before--;
  while (g_ascii_isdigit (*after))
    after++;
  return g_ascii_isdigit (*c)
         && (g_str_has_prefix (after, SQ_FRACTION_SLASH)
             || (before - text >= 3 && g_str_has_prefix (before - 3, SQ_FRACTION_SLASH)));
}

double
sq_text_width_em (const char *text, gboolean bold)
{
  double width = 0.1;
  g_return_val_if_fail (text != NULL, 0);
  for (const char *c = text; *c != '\0'; c = g_utf8_next_char (c))
    width += char_width_em (g_utf8_get_char (c)) * (is_in_fraction (text, c) ? SQ_FRACTION_EM : 1);
  return bold ? width * 1.1 : width;
}

double
sq_text_with_detail_width_em (const char *text, gboolean bold, const char *detail)
{
  double width = sq_text_width_em (text, bold);
  if (detail != NULL)
    width += 0.6 + SQ_DETAIL_EM * sq_text_width_em (detail, FALSE);
  return width;
}

double
sq_readable_angle_rad (double angle_rad)
{
  double a = remainder (angle_rad, 2 * M_PI), most = M_PI / 2 + SQ_LEAN_RAD;
  if (a > most)
    a -= M_PI;
  else if (a <= most - M_PI)
    a += M_PI;
  return a;
}
