/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/dxf-out.h"

#include <stdlib.h>
#include <string.h>

#define LENGTH_DECIMALS 6
#define RATIO_DECIMALS 12

/* What a string may have, in bytes: DXF reference, "Group code value types" (2049 since R2000, 255
 * before). */
#define MOST_R12 255
#define MOST_R2000 2049

static void
add_code (SqDxfOut *out, int code)
{
  g_string_append_printf (out->text, "%3d\r\n", code);
}

void
sq_dxf_string (SqDxfOut *out, int code, const char *value)
{
  add_code (out, code);
  g_string_append (out->text, value);
  g_string_append (out->text, "\r\n");
}

void
sq_dxf_groups (SqDxfOut *out, const char *groups)
{
  g_auto (GStrv) all = g_strsplit (groups, "|", -1);

  for (guint i = 0; all[i] != NULL; i++)
    {
      char *value;
      int code = (int) strtol (all[i], &value, 10);
      sq_dxf_string (out, code, *value == ' ' ? value + 1 : value);
    }
}

void
sq_dxf_integer (SqDxfOut *out, int code, int value)
{
  add_code (out, code);
  g_string_append_printf (out->text, "%6d\r\n", value);
}

void
sq_dxf_handle (SqDxfOut *out, int code, guint32 handle)
{
  add_code (out, code);
  g_string_append_printf (out->text, "%X\r\n", handle);
}

/* Never with the decimal comma of a language, never "-0.0". */
static void
add_number (SqDxfOut *out, int code, double value, int decimals)
{
  char format[8], number[G_ASCII_DTOSTR_BUF_SIZE + 320];
  gsize end;

  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (number, sizeof number, format, value);
  for (end = strlen (number); number[end - 1] == '0' && number[end - 2] != '.'; end--)
    number[end - 1] = '\0';
  sq_dxf_string (out, code, strcmp (number, "-0.0") == 0 ? "0.0" : number);
}

void
sq_dxf_length (SqDxfOut *out, int code, double value_mm)
{
  add_number (out, code, value_mm, LENGTH_DECIMALS);
}

void
sq_dxf_ratio (SqDxfOut *out, int code, double value)
{
  add_number (out, code, value, RATIO_DECIMALS);
}

void
sq_dxf_point (SqDxfOut *out, int code, SqPoint point, double z_mm)
{
  sq_dxf_length (out, code, point.x);
  sq_dxf_length (out, code + 10, point.y);
  sq_dxf_length (out, code + 20, z_mm);
}

/* How @c is written after @before. A backslash would begin a code, "%%" one for special characters,
 * and a caret alone a control character. The dot between two words is in nearly every text, and a
 * dash is read the same by old machines, which know no codes. */
static void
encode (gunichar c, char before, char code[16])
{
  if (g_unichar_iscntrl (c) || c == 0x2028 || c == 0x2029)
    g_strlcpy (code, " ", 16);
  else if (c == 0xb7)
    g_strlcpy (code, "-", 16);
  else if (c == '%')
    g_strlcpy (code, before == '%' ? " %" : "%", 16);
  else if (c == '^')
    g_strlcpy (code, "^ ", 16);
  else if (c < 128 && c != '\\')
    g_snprintf (code, 16, "%c", (char) c);
  else if (c < 0x10000)
    g_snprintf (code, 16, "\\U+%04X", c);
  else
    g_snprintf (code, 16, "\\U+%04X\\U+%04X", 0xd800 + ((c - 0x10000) >> 10),
                0xdc00 + ((c - 0x10000) & 0x3ff));
}

void
sq_dxf_words (SqDxfOut *out, int code, const char *label, const char *words)
{
  gsize most = out->release == SQ_DXF_R12 ? MOST_R12 : MOST_R2000;
  g_autofree char *valid = g_utf8_make_valid (words, -1);
  g_autoptr (GString) line = g_string_new (label);

  for (const char *at = valid; *at != '\0'; at = g_utf8_next_char (at))
    {
      char next[16];

      encode (g_utf8_get_char (at), line->len > 0 ? line->str[line->len - 1] : '\0', next);
      if (line->len + strlen (next) > most)
        break;
      g_string_append (line, next);
    }
  sq_dxf_string (out, code, line->str);
}

void
sq_dxf_subclass (SqDxfOut *out, const char *name)
{
  if (out->release != SQ_DXF_R12)
    sq_dxf_string (out, 100, name);
}

guint32
sq_dxf_entity (SqDxfOut *out, const char *type, guint32 owner, const char *layer)
{
  guint32 handle = out->next_handle++;

  sq_dxf_string (out, 0, type);
  if (out->release != SQ_DXF_R12)
    {
      sq_dxf_handle (out, 5, handle);
      sq_dxf_handle (out, 330, owner);
    }
  sq_dxf_subclass (out, "AcDbEntity");
  sq_dxf_string (out, 8, layer);
  return handle;
}
