/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/typeset.h"

#include <fribidi.h>
#include <pango/pangocairo.h>

static double
width_mm (const char *text, const SqType *type)
{
  return sq_text_width_em (text, type->bold) * type->em_mm;
}

double
sq_type_height_mm (const SqType *type, guint n_lines)
{
  return n_lines * SQ_LEADING_EM * type->em_mm;
}

/* How many bytes of @text, whole characters but at least one, go into @most_mm. */
static gsize
bytes_that_fit (const char *text, double most_mm, const SqType *type)
{
  const char *end = g_utf8_next_char (text);

  while (*end != '\0')
    {
      const char *next = g_utf8_next_char (end);
      g_autofree char *longer = g_strndup (text, (gsize) (next - text));
      if (width_mm (longer, type) > most_mm)
        break;
      end = next;
    }
  return (gsize) (end - text);
}

/* @text, or as much of it as goes into @most_mm with "…" after it. */
static char *
shortened (const char *text, double most_mm, const SqType *type)
{
  if (text[0] == '\0' || width_mm (text, type) <= most_mm)
    return g_strdup (text);
  double room_mm = most_mm - width_mm ("…", type);
  g_autofree char *start = g_strndup (text, bytes_that_fit (text, room_mm, type));
  return g_strconcat (g_strchomp (start), "…", NULL);
}

/* By its first letter that has a direction. */
static gboolean
is_right_to_left (const char *text)
{
  for (const char *c = text; *c != '\0'; c = g_utf8_next_char (c))
    {
      FriBidiCharType type = fribidi_get_bidi_type (g_utf8_get_char (c));
      if (FRIBIDI_IS_LETTER (type) && FRIBIDI_IS_STRONG (type))
        return FRIBIDI_IS_RTL (type);
    }
  return FALSE;
}

void
sq_set_line (SqSceneBuilder *builder, const SqColumn *column, SqAlign align, const SqType *type,
             const char *text)
{
  g_autofree char *fitting = shortened (text, column->width_mm, type);
  double own_mm = fmin (width_mm (fitting, type), column->width_mm);
  double left_mm = column->left_mm;

  if (fitting[0] == '\0')
    return;
  if (align == SQ_ALIGN_START && is_right_to_left (fitting))
    align = SQ_ALIGN_END;
  if (align == SQ_ALIGN_END)
    left_mm += column->width_mm - own_mm;
  else if (align == SQ_ALIGN_MIDDLE)
    left_mm += (column->width_mm - own_mm) / 2;
  sq_scene_add_text (builder, &(SqText){ .at = { left_mm + own_mm / 2,
                                                 column->top_mm - sq_type_height_mm (type, 1) / 2 },
                                         .em_mm = type->em_mm,
                                         .width_mm = own_mm,
                                         .align = align,
                                         .tone = type->tone,
                                         .bold = type->bold,
                                         .text = fitting });
}

/* The bytes of the first line of @text, and at *@next those up to the second one. @attrs are of its
 * characters. */
static gsize
first_line (const char *text, const PangoLogAttr *attrs, double most_mm, const SqType *type,
            gsize *next)
{
  const char *c = text, *end = text;

  for (guint i = 1; *c != '\0'; i++)
    {
      c = g_utf8_next_char (c);
      if (*c != '\0' && !attrs[i].is_line_break)
        continue;
      g_autofree char *line = g_strndup (text, (gsize) (c - text));
      g_strchomp (line);
      if (end > text && width_mm (line, type) > most_mm)
        break;
      end = c;
      if (attrs[i].is_mandatory_break)
        break;
    }
  g_autofree char *line = g_strndup (text, (gsize) (end - text));
  g_strchomp (line);
  *next = (gsize) (end - text);
  if (line[0] != '\0' && width_mm (line, type) > most_mm) /* a word longer than the column */
    *next = bytes_that_fit (text, most_mm, type);
  return MIN (*next, strlen (line));
}

GPtrArray *
sq_wrapped (const char *text, double width, const SqType *type)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  int n = (int) g_utf8_strlen (text, -1) + 1;
  g_autofree PangoLogAttr *attrs = g_new0 (PangoLogAttr, n);

  pango_get_log_attrs (text, -1, -1, pango_language_from_string ("en"), attrs, n);
  for (gsize next; *text != '\0'; text += next)
    {
      guint at = (guint) n - 1 - (guint) g_utf8_strlen (text, -1);
      gsize length = first_line (text, attrs + at, width, type, &next);
      g_ptr_array_add (lines, g_strndup (text, length));
    }
  return lines;
}

double
sq_set_paragraph (SqSceneBuilder *builder, const SqColumn *column, const SqType *type,
                  const char *text)
{
  g_autoptr (GPtrArray) lines = sq_wrapped (text, column->width_mm, type);
  SqColumn line = *column;
  SqAlign align = is_right_to_left (text) ? SQ_ALIGN_END : SQ_ALIGN_START;

  for (guint i = 0; i < lines->len; i++)
    {
      sq_set_line (builder, &line, align, type, g_ptr_array_index (lines, i));
      line.top_mm -= sq_type_height_mm (type, 1);
    }
  return sq_type_height_mm (type, lines->len);
}

double
sq_paragraph_height_mm (double width, const SqType *type, const char *text)
{
  g_autoptr (GPtrArray) lines = sq_wrapped (text, width, type);

  return sq_type_height_mm (type, lines->len);
}
