/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/dxf-d6673.h"

#include "exchange/dxf-entities.h"

#define BOUNDARY "1"
#define TURN_POINTS "2"
#define CURVE_POINTS "3"
#define NOTCHES "4"
#define GRAIN "7"
#define INTERNAL "8"
#define CUT_OUTS "11"
#define SEW "14"
#define ANNOTATION "15"

const SqDxfLayer sq_d6673_layers[] = {
  { BOUNDARY, 1 }, { TURN_POINTS, 2 }, { CURVE_POINTS, 3 }, { NOTCHES, 6 },      { GRAIN, 8 },
  { INTERNAL, 4 }, { CUT_OUTS, 30 },   { SEW, 5 },          { ANNOTATION, 140 },
};
const guint sq_d6673_n_layers = G_N_ELEMENTS (sq_d6673_layers);

/* No layer has arcs. */
#define FLATTEN_MM 0.01

/* Of a curve that was flattened: its chords turn little and are about equally long, which a
 * straight side that runs on into a curve is not. A node that turns by more than 30° is a corner.
 * */
#define CURVE_TURN_RAD (G_PI / 6)
#define CURVE_CHORDS 4.0

/* What names a piece is for programs: small, so that it is in nobody's way and in the narrowest
 * strip. */
#define SYSTEM_TEXT_MM 1.5
#define SYSTEM_LINE 1.5

#define MOST_BLOCK_NAME 20 /* with less room than that no reader of the format is known */

/* Patterns of one size: the size has to be called something, and the same everywhere. */
#define ONLY_SIZE "1"

/* --- names ---------------------------------------------------------------------------------- */

static char *
block_name (const char *name)
{
  GString *block = g_string_new (NULL);

  for (; *name != '\0' && block->len < MOST_BLOCK_NAME; name++)
    if (g_ascii_isalnum (*name))
      g_string_append_c (block, g_ascii_toupper (*name));
    else if (block->len > 0 && block->str[block->len - 1] != '_')
      g_string_append_c (block, '_');
  if (block->len > 0 && block->str[block->len - 1] == '_')
    g_string_truncate (block, block->len - 1);
  if (block->len == 0)
    g_string_assign (block, "PIECE");
  return g_string_free (block, FALSE);
}

GPtrArray *
sq_d6673_block_names (const SqCutDrawing *drawing)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GHashTable) taken = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < drawing->shapes->len; i++)
    {
      g_autofree char *base = block_name (sq_cut_shape (drawing, i)->name);
      char *name = g_strdup (base);
      for (guint k = 2; g_hash_table_contains (taken, name); k++)
        {
          g_free (name);
          name = g_strdup_printf ("%s_%u", base, k);
        }
      g_hash_table_add (taken, name);
      g_ptr_array_add (names, name);
    }
  return names;
}

/* --- lines ---------------------------------------------------------------------------------- */

static gboolean
is_on_curve (SqPoint before, SqPoint at, SqPoint after)
{
  SqVector in = sq_sub (at, before), out = sq_sub (after, at);
  double turn = fabs (sq_angle_rad (in, out)), a = sq_norm (in), b = sq_norm (out);

  return turn > SQ_STRAIGHT_BULGE && turn < CURVE_TURN_RAD
         && fmax (a, b) < CURVE_CHORDS * fmin (a, b);
}

/* A point on every node of @path, of lines only. */
static void
add_points (SqDxfOut *out, guint32 owner, const SqPath *path)
{
  const SqNode *nodes = sq_path_nodes (path);
  guint n = sq_path_n_nodes (path);

  for (guint i = 0; i < n; i++)
    {
      gboolean is_end = !sq_path_is_ring (path) && (i == 0 || i == n - 1);
      gboolean curve = !is_end
                       && is_on_curve (nodes[(i + n - 1) % n].at, nodes[i].at,
                                       nodes[(i + 1) % n].at);
      sq_dxf_mark (out, owner, curve ? CURVE_POINTS : TURN_POINTS, nodes[i].at, 0);
    }
}

static void
add_line (SqDxfOut *out, guint32 owner, const char *layer, const SqPath *path)
{
  g_autoptr (SqPath) flat = sq_path_flattened (path, FLATTEN_MM);

  sq_dxf_path (out, owner, layer, flat, TRUE);
  add_points (out, owner, flat);
}

static double
from_cut_line (const SqCutShape *shape, SqPoint at)
{
  double least_mm = INFINITY;

  for (guint i = 0; i < shape->lines->len; i++)
    {
      const SqCutLine *line = sq_cut_line (shape->lines, i);
      if (line->layer == SQ_LAYER_CUT || line->layer == SQ_LAYER_CUT_INSIDE)
        least_mm = fmin (least_mm, sq_path_nearest (line->path, at).distance_mm);
    }
  return least_mm;
}

/* The end that is on the cut line, and how far the other one is from there. */
static void
add_notch (SqDxfOut *out, guint32 owner, const SqCutShape *shape, const SqPath *tick)
{
  SqPoint from = sq_path_nodes (tick)[0].at;
  SqPoint to = sq_path_nodes (tick)[sq_path_n_nodes (tick) - 1].at;
  gboolean turned = from_cut_line (shape, to) < from_cut_line (shape, from);

  sq_dxf_mark (out, owner, NOTCHES, turned ? to : from, sq_distance (from, to));
}

static void
add_grain (SqDxfOut *out, guint32 owner, const SqPath *path)
{
  const SqNode *nodes = sq_path_nodes (path);

  sq_dxf_line (out, owner, GRAIN, nodes[0].at, nodes[sq_path_n_nodes (path) - 1].at);
}

static void
add_shape_line (SqDxfOut *out, guint32 owner, const SqCutShape *shape, const SqCutLine *line)
{
  switch (line->layer)
    {
    case SQ_LAYER_CUT:
      add_line (out, owner, BOUNDARY, line->path);
      break;
    case SQ_LAYER_CUT_INSIDE:
      add_line (out, owner, CUT_OUTS, line->path);
      break;
    case SQ_LAYER_SEW:
      add_line (out, owner, SEW, line->path);
      break;
    case SQ_LAYER_NOTCH:
      add_notch (out, owner, shape, line->path);
      break;
    case SQ_LAYER_GRAIN:
      add_grain (out, owner, line->path);
      break;
    case SQ_LAYER_FOLD:
    case SQ_LAYER_ZIP:
    case SQ_LAYER_CORNER:
    case SQ_LAYER_STAY:
      add_line (out, owner, INTERNAL, line->path);
      break;
    case SQ_LAYER_TEXT:
    case SQ_LAYER_CLOTH:
    default:
      break;
    }
}

/* --- texts ---------------------------------------------------------------------------------- */

typedef struct
{
  const char *label, *value;
} SystemText;

/* One below the other, the last of them above @at. */
static void
add_system_texts (SqDxfOut *out, guint32 owner, SqPoint at, const SystemText *texts, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      const SqCutText text = {
        .at = sq_point (at.x, at.y + (n - 1 - i) * SYSTEM_TEXT_MM * SYSTEM_LINE),
        .height_mm = SYSTEM_TEXT_MM,
        .text = (char *) texts[i].value,
      };
      sq_dxf_text (out, owner, BOUNDARY, texts[i].label, &text);
    }
}

/* Above the first text of a piece; its middle where it has none. */
static SqPoint
system_text_at (const SqCutShape *shape)
{
  SqBox box = sq_box_empty ();

  if (shape->texts->len > 0)
    {
      const SqCutText *first = sq_cut_text (shape->texts, 0);
      return sq_point (first->at.x, first->at.y + first->height_mm * SYSTEM_LINE);
    }
  for (guint i = 0; i < shape->lines->len; i++)
    box = sq_box_union (box, sq_path_box (sq_cut_line (shape->lines, i)->path));
  return box.min.x > box.max.x ? sq_point (0, 0) : sq_between (box.min, box.max, 0.5);
}

static void
add_texts (SqDxfOut *out, guint32 owner, const GArray *texts)
{
  for (guint i = 0; i < texts->len; i++)
    sq_dxf_text (out, owner, ANNOTATION, "", sq_cut_text (texts, i));
}

/* --- pieces and drawing --------------------------------------------------------------------- */

void
sq_d6673_block (SqDxfOut *out, guint32 record, const char *name, const SqCutShape *shape,
                const char *title)
{
  g_autofree char *count = g_strdup_printf ("%u", shape->count);
  const SystemText texts[] = {
    { "Piece Name: ", shape->name }, { "Size: ", ONLY_SIZE },
    { "Quantity: ", count },         { "Category: ", "" },
    { "Fabric: ", shape->cloth },    { "Annotation: ", title },
  };

  sq_dxf_begin_block (out, record, BOUNDARY, name);
  for (guint i = 0; i < shape->lines->len; i++)
    add_shape_line (out, record, shape, sq_cut_line (shape->lines, i));
  add_system_texts (out, record, system_text_at (shape), texts, G_N_ELEMENTS (texts));
  add_texts (out, record, shape->texts);
  sq_dxf_end_block (out, record, BOUNDARY);
}

void
sq_d6673_drawing (SqDxfOut *out, guint32 owner, const SqCutDrawing *drawing,
                  const GPtrArray *blocks)
{
  const SqPoint below = sq_point (0, -10 * SYSTEM_TEXT_MM * SYSTEM_LINE);
  const SystemText texts[] = {
    { "Style Name: ", drawing->name },
    { "Sample Size: ", ONLY_SIZE },
    { "Grade Rule Table: ", "" },
    { "Units: ", "METRIC" },
  };

  add_system_texts (out, owner, below, texts, G_N_ELEMENTS (texts));
  add_texts (out, owner, drawing->texts);
  for (guint i = 0; i < drawing->places->len; i++)
    {
      const SqCutPlace *place = sq_cut_place (drawing, i);
      sq_dxf_insert (out, owner, BOUNDARY, g_ptr_array_index (blocks, place->shape), place);
    }
}
