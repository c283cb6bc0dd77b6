/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/dxf.h"

#include "exchange/dxf-d6673.h"
#include "exchange/dxf-entities.h"

const char *const sq_dxf_release_names[] = { "r12", "r2000", NULL };
const char *const sq_dxf_layers_names[] = { "plain", "d6673", NULL };

/* DXF colour indexes: no two alike, all to be told apart on black and on white. */
static const int colours[SQ_N_CUT_LAYERS] = {
  [SQ_LAYER_CUT] = 7,   [SQ_LAYER_CUT_INSIDE] = 1, [SQ_LAYER_SEW] = 5,     [SQ_LAYER_NOTCH] = 6,
  [SQ_LAYER_FOLD] = 3,  [SQ_LAYER_ZIP] = 4,        [SQ_LAYER_CORNER] = 30, [SQ_LAYER_STAY] = 32,
  [SQ_LAYER_GRAIN] = 8, [SQ_LAYER_TEXT] = 140,     [SQ_LAYER_CLOTH] = 9,
};

/* In capitals: R12 knows no others. */
static char *
layer_name (SqCutLayer layer)
{
  return g_ascii_strup (sq_cut_layer_name (layer), -1);
}

/* --- by our own names ----------------------------------------------------------------------- */

static void
add_line (SqDxfOut *out, SqCutLayer layer, const SqPath *path)
{
  g_autofree char *name = layer_name (layer);

  sq_dxf_path (out, SQ_DXF_MODEL, name, path, FALSE);
}

static void
add_text (SqDxfOut *out, const SqCutText *text)
{
  g_autofree char *name = layer_name (SQ_LAYER_TEXT);

  sq_dxf_text (out, SQ_DXF_MODEL, name, "", text);
}

static void
add_placed (SqDxfOut *out, const SqCutShape *shape, const SqCutPlace *place)
{
  for (guint i = 0; i < shape->lines->len; i++)
    {
      const SqCutLine *line = sq_cut_line (shape->lines, i);
      g_autoptr (SqPath) placed = sq_cut_line_placed (line, place);
      add_line (out, line->layer, placed);
    }
  for (guint i = 0; i < shape->texts->len; i++)
    {
      const SqCutText placed = sq_cut_text_placed (sq_cut_text (shape->texts, i), place);
      add_text (out, &placed);
    }
}

static void
add_plain_entities (SqDxfOut *out, const SqCutDrawing *drawing)
{
  for (guint i = 0; i < drawing->places->len; i++)
    {
      const SqCutPlace *place = sq_cut_place (drawing, i);
      add_placed (out, sq_cut_shape (drawing, place->shape), place);
    }
  for (guint i = 0; i < drawing->lines->len; i++)
    {
      const SqCutLine *line = sq_cut_line (drawing->lines, i);
      add_line (out, line->layer, line->path);
    }
  for (guint i = 0; i < drawing->texts->len; i++)
    add_text (out, sq_cut_text (drawing->texts, i));
}

/* --- the file ------------------------------------------------------------------------------- */

static void
add_tables (SqDxfOut *out, SqBox box, SqDxfLayers layers, const GPtrArray *blocks)
{
  SqDxfLayer plain[SQ_N_CUT_LAYERS];
  char *names[SQ_N_CUT_LAYERS];

  if (layers == SQ_DXF_D6673)
    {
      sq_dxf_tables (out, box, sq_d6673_layers, sq_d6673_n_layers, blocks);
      return;
    }
  for (guint i = 0; i < SQ_N_CUT_LAYERS; i++)
    plain[i] = (SqDxfLayer){ names[i] = layer_name (i), colours[i] };
  sq_dxf_tables (out, box, plain, SQ_N_CUT_LAYERS, blocks);
  for (guint i = 0; i < SQ_N_CUT_LAYERS; i++)
    g_free (names[i]);
}

/* The spaces, which R12 has unsaid, and @blocks, one for each shape; or none of these. */
static void
add_blocks (SqDxfOut *out, const SqCutDrawing *drawing, const GPtrArray *blocks)
{
  sq_dxf_begin_section (out, "BLOCKS");
  if (out->release != SQ_DXF_R12)
    {
      sq_dxf_begin_block (out, SQ_DXF_MODEL, "0", "*Model_Space");
      sq_dxf_end_block (out, SQ_DXF_MODEL, "0");
      sq_dxf_begin_block (out, SQ_DXF_PAPER, "0", "*Paper_Space");
      sq_dxf_end_block (out, SQ_DXF_PAPER, "0");
    }
  for (guint i = 0; i < blocks->len; i++)
    sq_d6673_block (out, SQ_DXF_PIECES + i, g_ptr_array_index (blocks, i),
                    sq_cut_shape (drawing, i), drawing->title);
  sq_dxf_end_section (out);
}

static void
add_entities (SqDxfOut *out, const SqCutDrawing *drawing, SqDxfLayers layers,
              const GPtrArray *blocks)
{
  sq_dxf_begin_section (out, "ENTITIES");
  if (layers == SQ_DXF_D6673)
    sq_d6673_drawing (out, SQ_DXF_MODEL, drawing, blocks);
  else
    add_plain_entities (out, drawing);
  sq_dxf_end_section (out);
}

/* Some cutters' readers of D6673 take R12 only, and nothing before the blocks but an empty header:
 * ezdxf.readthedocs.io, "ASTM-D6673-10 Exporter". R12 lets all of that be left out. */
static gboolean
is_bare (SqDxfRelease release, SqDxfLayers layers)
{
  return release == SQ_DXF_R12 && layers == SQ_DXF_D6673;
}

char *
sq_dxf_write (const SqCutDrawing *drawing, SqDxfRelease release, SqDxfLayers layers)
{
  g_autoptr (GPtrArray) blocks = layers == SQ_DXF_D6673 ? sq_d6673_block_names (drawing)
                                                        : g_ptr_array_new ();
  SqDxfOut head = { g_string_new (NULL), release, 0 };
  SqDxfOut out = { g_string_new (NULL), release, SQ_DXF_PIECES + blocks->len };
  SqBox box = drawing->box;

  if (box.min.x > box.max.x)
    box = (SqBox){ { 0, 0 }, { 0, 0 } };
  if (!is_bare (release, layers))
    add_tables (&out, box, layers, blocks);
  add_blocks (&out, drawing, blocks);
  add_entities (&out, drawing, layers, blocks);
  sq_dxf_objects (&out, box);
  sq_dxf_string (&out, 0, "EOF");

  /* the header says which handle is free, and comes first */
  if (is_bare (release, layers))
    {
      sq_dxf_begin_section (&head, "HEADER");
      sq_dxf_end_section (&head);
    }
  else
    sq_dxf_header (&head, box, out.next_handle);
  g_string_append_len (head.text, out.text->str, (gssize) out.text->len);
  g_string_free (out.text, TRUE);
  return g_string_free (head.text, FALSE);
}
