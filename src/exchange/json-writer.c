/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/json-writer.h"

#include "base/number.h"

#include <string.h>

void
sq_json_begin (SqJsonWriter *json)
{
  *json = (SqJsonWriter){ .text = g_string_new (NULL), .is_empty = TRUE };
}

char *
sq_json_end (SqJsonWriter *json)
{
  g_assert (json->depth == 0);
  g_string_append_c (json->text, '\n');
  return g_string_free (g_steal_pointer (&json->text), FALSE);
}

static void
break_line (SqJsonWriter *json)
{
  g_string_append_c (json->text, '\n');
  for (guint i = 0; i < json->depth; i++)
    g_string_append (json->text, "  ");
}

/* What stands between two members. */
static void
separate (SqJsonWriter *json)
{
  if (!json->is_empty)
    g_string_append_c (json->text, ',');
  if (json->inline_depth > 0)
    g_string_append (json->text, json->is_empty ? "" : " ");
  else if (json->depth > 0)
    break_line (json);
  json->is_empty = FALSE;
}

static void
append_character (GString *out, guchar c)
{
  switch (c)
    {
    case '"':
      g_string_append (out, "\\\"");
      break;
    case '\\':
      g_string_append (out, "\\\\");
      break;
    case '\n':
      g_string_append (out, "\\n");
      break;
    case '\t':
      g_string_append (out, "\\t");
      break;
    default:
      if (c < 0x20)
        g_string_append_printf (out, "\\u%04x", c);
      else
        g_string_append_c (out, (char) c);
    }
}

static void
append_quoted (GString *out, const char *text)
{
  g_string_append_c (out, '"');
  for (const char *c = text; *c != '\0'; c++)
    append_character (out, (guchar) *c);
  g_string_append_c (out, '"');
}

static void
begin_value (SqJsonWriter *json, const char *key)
{
  separate (json);
  if (key == NULL)
    return;
  append_quoted (json->text, key);
  g_string_append (json->text, ": ");
}

static void
append_value (SqJsonWriter *json, const char *key, const char *value)
{
  begin_value (json, key);
  g_string_append (json->text, value);
}

static void
open_container (SqJsonWriter *json, const char *key, SqJsonLayout layout, const char *bracket)
{
  append_value (json, key, bracket);
  json->depth++;
  if (json->inline_depth > 0 || layout == SQ_JSON_INLINE)
    json->inline_depth++;
  json->is_empty = TRUE;
}

static void
close_container (SqJsonWriter *json, char bracket)
{
  g_assert (json->depth > 0);
  json->depth--;
  if (json->inline_depth > 0)
    json->inline_depth--;
  else if (!json->is_empty)
    break_line (json);
  g_string_append_c (json->text, bracket);
  json->is_empty = FALSE;
}

void
sq_json_open_object (SqJsonWriter *json, const char *key, SqJsonLayout layout)
{
  open_container (json, key, layout, "{");
}

void
sq_json_close_object (SqJsonWriter *json)
{
  close_container (json, '}');
}

void
sq_json_open_array (SqJsonWriter *json, const char *key, SqJsonLayout layout)
{
  open_container (json, key, layout, "[");
}

void
sq_json_close_array (SqJsonWriter *json)
{
  close_container (json, ']');
}

void
sq_json_number (SqJsonWriter *json, const char *key, double value)
{
  char buffer[SQ_NUMBER_SIZE];
  append_value (json, key, sq_number_write (value, buffer));
}

void
sq_json_string (SqJsonWriter *json, const char *key, const char *text)
{
  if (text == NULL)
    {
      sq_json_null (json, key);
      return;
    }
  begin_value (json, key);
  append_quoted (json->text, text);
}

void
sq_json_boolean (SqJsonWriter *json, const char *key, gboolean value)
{
  append_value (json, key, value ? "true" : "false");
}

void
sq_json_null (SqJsonWriter *json, const char *key)
{
  append_value (json, key, "null");
}

void
sq_json_members (SqJsonWriter *json, const char *object)
{
  if (object == NULL)
    return;
  const char *first = strchr (object, '{'), *last = strrchr (object, '}');
  g_return_if_fail (first != NULL && last != NULL && first < last);
  g_autofree char *members = g_strndup (first + 1, (gsize) (last - first - 1));
  g_strstrip (members);
  if (members[0] != '\0')
    append_value (json, NULL, members);
}
