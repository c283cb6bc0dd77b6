/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/json-write.h"

#include "base/number.h"
#include "exchange/json-scan.h"

#include <string.h>

#define STEP 2 /* spaces a level is set in by */

typedef struct
{
  char close;
  SqJsonLayout layout;
  gboolean empty;
} Level;

struct _SqJsonWriter
{
  GString *text;
  GArray *levels; /* of Level: what is open */
};

SqJsonWriter *
sq_json_writer_new (void)
{
  SqJsonWriter *writer = g_new (SqJsonWriter, 1);

  writer->text = g_string_new (NULL);
  writer->levels = g_array_new (FALSE, FALSE, sizeof (Level));
  return writer;
}

void
sq_json_writer_free (SqJsonWriter *writer)
{
  g_string_free (writer->text, TRUE);
  g_array_unref (writer->levels);
  g_free (writer);
}

static Level *
innermost (const SqJsonWriter *writer)
{
  guint n = writer->levels->len;
  return n > 0 ? &g_array_index (writer->levels, Level, n - 1) : NULL;
}

static void
new_line (SqJsonWriter *writer)
{
  g_string_append_printf (writer->text, "\n%*s", (int) writer->levels->len * STEP, "");
}

static void
add_quoted (SqJsonWriter *writer, const char *text)
{
  static const char named[] = "\"\\\b\f\n\r\t", letters[] = "\"\\bfnrt";

  g_string_append_c (writer->text, '"');
  for (; *text != '\0'; text++)
    {
      const char *found = strchr (named, *text);

      if (found != NULL)
        g_string_append_printf (writer->text, "\\%c", letters[found - named]);
      else if ((guchar) *text < 0x20)
        g_string_append_printf (writer->text, "\\u%04x", (guint) *text);
      else
        g_string_append_c (writer->text, *text);
    }
  g_string_append_c (writer->text, '"');
}

/* Whatever comes before a value: comma, new line or space. */
static void
begin_value (SqJsonWriter *writer)
{
  Level *level = innermost (writer);

  if (level == NULL)
    return;
  if (!level->empty)
    g_string_append_c (writer->text, ',');
  if (level->layout == SQ_JSON_LINES)
    new_line (writer);
  else if (!level->empty)
    g_string_append_c (writer->text, ' ');
  level->empty = FALSE;
}

static void
begin (SqJsonWriter *writer, const char *key)
{
  begin_value (writer);
  if (key != NULL)
    g_string_append_printf (writer->text, "\"%s\": ", key);
}

static void
open_level (SqJsonWriter *writer, const char *key, SqJsonLayout layout, const char brackets[2])
{
  const Level *outer = innermost (writer);
  gboolean in_line = outer != NULL && outer->layout == SQ_JSON_LINE;
  Level level = { brackets[1], in_line ? SQ_JSON_LINE : layout, TRUE };

  begin (writer, key);
  g_string_append_c (writer->text, brackets[0]);
  g_array_append_val (writer->levels, level);
}

void
sq_json_open_object (SqJsonWriter *writer, const char *key, SqJsonLayout layout)
{
  open_level (writer, key, layout, "{}");
}

void
sq_json_open_array (SqJsonWriter *writer, const char *key, SqJsonLayout layout)
{
  open_level (writer, key, layout, "[]");
}

void
sq_json_close (SqJsonWriter *writer)
{
  Level level;

  g_return_if_fail (writer->levels->len > 0);
  level = *innermost (writer);
  g_array_set_size (writer->levels, writer->levels->len - 1);
  if (level.layout == SQ_JSON_LINES && !level.empty)
    new_line (writer);
  g_string_append_c (writer->text, level.close);
}

void
sq_json_add_number (SqJsonWriter *writer, const char *key, double number)
{
  char buffer[SQ_NUMBER_SIZE];

  begin (writer, key);
  g_string_append (writer->text, sq_number_write (number, buffer));
}

void
sq_json_add_integer (SqJsonWriter *writer, const char *key, gint64 number)
{
  begin (writer, key);
  g_string_append_printf (writer->text, "%" G_GINT64_FORMAT, number);
}

void
sq_json_add_boolean (SqJsonWriter *writer, const char *key, gboolean value)
{
  sq_json_add_text (writer, key, value ? "true" : "false");
}

void
sq_json_add_string (SqJsonWriter *writer, const char *key, const char *text)
{
  if (text == NULL)
    {
      sq_json_add_text (writer, key, "null");
      return;
    }
  begin (writer, key);
  add_quoted (writer, text);
}

void
sq_json_add_digest (SqJsonWriter *writer, const char *key, guint64 digest)
{
  char text[17];

  g_snprintf (text, sizeof text, "%016" G_GINT64_MODIFIER "x", digest);
  sq_json_add_string (writer, key, text);
}

void
sq_json_add_text (SqJsonWriter *writer, const char *key, const char *json)
{
  begin (writer, key);
  g_string_append (writer->text, json);
}

void
sq_json_add_members (SqJsonWriter *writer, const char *object)
{
  g_autoptr (SqJson) json = sq_json_scan (object, -1, NULL);

  g_return_if_fail (json != NULL && sq_json_kind (json, 0) == SQ_JSON_OBJECT);
  for (guint key = 1; key < json->n_tokens; key = json->tokens[key + 1].next)
    {
      begin_value (writer);
      sq_json_append_text (json, key, writer->text);
      g_string_append (writer->text, ": ");
      sq_json_append_text (json, key + 1, writer->text);
    }
}

char *
sq_json_writer_dup_text (const SqJsonWriter *writer)
{
  g_return_val_if_fail (writer->levels->len == 0, NULL);
  return g_strconcat (writer->text->str, "\n", NULL);
}
