/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern-squares.h"

#include "base/units.h"
#include "words/pattern-words.h"

#define SQUARE_MM 100.0
#define SQUARE_INCH_MM (4 * SQ_MM_PER_INCH)

/* Inside a square, and below one. */
#define PAD_MM 5.0
#define GAP_MM 4.0

static const SqType side_type = { 9, TRUE, SQ_TONE_INK };

/* Of the texts, the largest that has room. */
static const double ems_mm[] = { 4.6, 4.2, 3.8, 3.4, 3.0 };

#define PARAGRAPH_MM 1.6

/* Of what stands beside the squares: how wide at least and at most. */
#define BESIDE_LEAST_MM 50.0
#define BESIDE_MOST_MM 90.0

static double
texts_height_mm (const GPtrArray *texts, double width_mm, const SqType *type)
{
  double height_mm = 0;

  for (guint i = 0; i < texts->len; i++)
    height_mm += PARAGRAPH_MM
                 + sq_paragraph_height_mm (width_mm, type, g_ptr_array_index (texts, i));
  return height_mm;
}

static SqType
type_for (const GPtrArray *texts, double width_mm, double height_mm)
{
  SqType type = sq_type_text;

  for (guint i = 0; i < G_N_ELEMENTS (ems_mm); i++)
    {
      type.em_mm = ems_mm[i];
      if (texts_height_mm (texts, width_mm, &type) <= height_mm)
        break;
    }
  return type;
}

void
sq_set_square (SqSceneBuilder *builder, SqPoint at, double side_mm, const char *name,
               const GPtrArray *texts)
{
  const SqNode ring[] = { { at, 0, 0 },
                          { { at.x + side_mm, at.y }, 0, 0 },
                          { { at.x + side_mm, at.y + side_mm }, 0, 0 },
                          { { at.x, at.y + side_mm }, 0, 0 } };
  SqColumn column = { at.x + PAD_MM, at.y + side_mm - PAD_MM, side_mm - 2 * PAD_MM };

  sq_scene_begin_stroke (builder, SQ_PEN_RULE);
  sq_scene_add_nodes (builder, ring, G_N_ELEMENTS (ring), TRUE);
  sq_set_line (builder, &column, SQ_ALIGN_START, &side_type, name);
  column.top_mm -= sq_type_height_mm (&side_type, 1) + 2;
  SqType type = type_for (texts, column.width_mm, column.top_mm - at.y);
  for (guint i = 0; i < texts->len; i++)
    column.top_mm -= PARAGRAPH_MM
                     + sq_set_paragraph (builder, &column, &type, g_ptr_array_index (texts, i));
}

/* In the middle of the page where the area is narrower than a square. */
static double
left_of (const SqColumn *column, double side_mm)
{
  return column->left_mm + fmin ((column->width_mm - side_mm) / 2, 0);
}

/* What stands right of the squares, from @left_mm on, or else below them. */
static void
set_beside (SqPages *pages, SqColumn column, double left_mm, const GPtrArray *texts)
{
  SqType bold = sq_type_text;

  bold.bold = TRUE;
  column.width_mm = fmin (sq_pages_area (pages).max.x - left_mm, BESIDE_MOST_MM);
  column.left_mm = left_mm;
  for (guint i = 0; i < texts->len; i++)
    {
      const SqType *type = i == 0 ? &bold : &sq_type_text;
      const char *text = g_ptr_array_index (texts, i);
      if (column.width_mm < BESIDE_LEAST_MM)
        sq_pages_paragraph (pages, type, text);
      else
        column.top_mm -= PARAGRAPH_MM
                         + sq_set_paragraph (sq_pages_scene (pages), &column, type, text);
    }
}

void
sq_pages_squares (SqPages *pages, const GPtrArray *texts, const GPtrArray *beside)
{
  g_autoptr (GPtrArray) how = g_ptr_array_new ();
  SqBox area = sq_pages_area (pages);
  gboolean is_wide = area.max.x - area.min.x >= SQUARE_MM + SQUARE_INCH_MM + GAP_MM;

  g_ptr_array_add (how, (gpointer) sq_words_check_how ());
  SqColumn first = sq_pages_block (pages, (is_wide ? SQUARE_INCH_MM : SQUARE_MM) + GAP_MM,
                                   is_wide ? 0 : SQUARE_INCH_MM);
  SqColumn second = first;
  sq_set_square (sq_pages_scene (pages),
                 sq_point (left_of (&first, SQUARE_MM), first.top_mm - SQUARE_MM), SQUARE_MM,
                 sq_words_square_mm (), how);
  if (is_wide)
    second.left_mm += SQUARE_MM + GAP_MM;
  else
    second = sq_pages_block (pages, SQUARE_INCH_MM + GAP_MM, 0);
  sq_set_square (sq_pages_scene (pages),
                 sq_point (left_of (&second, SQUARE_INCH_MM), second.top_mm - SQUARE_INCH_MM),
                 SQUARE_INCH_MM, sq_words_square_inch (), texts);
  set_beside (pages, first, second.left_mm + SQUARE_INCH_MM + 1.5 * GAP_MM, beside);
}
