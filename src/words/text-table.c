/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/text-table.h"

#include <glib/gi18n.h>
#include <string.h>

#define GAP 2 /* columns between two columns of a table */

struct _SqTextTable
{
  char *aligns;
  guint n_columns;
  GPtrArray *lines; /* of Line */
};

typedef struct
{
  char **cells; /* a row's, or one remark's */
  guint column; /* of a remark, beginning at it */
  gboolean is_remark;
} Line;

static guint
width_of_char (gunichar c)
{
  return g_unichar_iszerowidth (c) ? 0 : g_unichar_iswide (c) ? 2 : 1;
}

guint
sq_text_width (const char *text)
{
  guint width = 0;

  for (const char *c = text; *c != '\0'; c = g_utf8_next_char (c))
    width += width_of_char (g_utf8_get_char (c));
  return width;
}

char *
sq_text_clean (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString *clean = g_string_new (NULL);

  for (const char *c = valid; *c != '\0'; c = g_utf8_next_char (c))
    {
      gunichar character = g_utf8_get_char (c);
      g_string_append_unichar (clean, g_unichar_iscntrl (character) ? ' ' : character);
    }
  g_strstrip (clean->str);
  return g_string_free (clean, FALSE);
}

char *
sq_text_unbroken (const char *text)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);

  return g_strjoinv ("\xc2\xa0", words);
}

void
sq_text_add_to_list (GString *list, char *text)
{
  if (list->len > 0)
    /* TRANSLATORS: between the things of a list. */
    g_string_append (list, _ (", "));
  g_string_append (list, text);
  g_free (text);
}

static void
append_spaces (GString *out, guint n)
{
  g_string_append_printf (out, "%*s", (int) n, "");
}

/* Whether a line may end between @before and @after, two characters that stand side by side. */
static gboolean
breaks_between (gunichar before, gunichar after)
{
  return g_unichar_iswide (before) && g_unichar_iswide (after) && !g_unichar_ispunct (after);
}

/* Whether a line may end at the space between @before and @after. */
static gboolean
breaks_at_space (gunichar before, gunichar after)
{
  const gunichar times = 0xd7;

  return !g_unichar_isdigit (before) && before != times && after != times;
}

/* How many bytes of @text fit into @room columns: up to the last place for a break, or, with none,
 * as many characters as fit. */
static gsize
bytes_of_line (const char *text, guint room)
{
  const char *last_break = NULL, *c = text;
  gunichar before = 0;
  guint width = 0;

  while (*c != '\0')
    {
      gunichar character = g_utf8_get_char (c);
      const char *next = g_utf8_next_char (c);
      if (c > text && character == ' ' && breaks_at_space (before, g_utf8_get_char (next)))
        last_break = c;
      else if (c > text && breaks_between (before, character))
        last_break = c;
      width += width_of_char (character);
      if (width > room && character != ' ')
        break;
      before = character;
      c = next;
    }
  if (*c == '\0')
    return (gsize) (c - text);
  if (last_break != NULL)
    return (gsize) (last_break - text);
  return (gsize) (MAX (c, g_utf8_next_char (text)) - text);
}

void
sq_text_append_wrapped (GString *out, const char *text, guint indent, guint most)
{
  guint room = most > indent + 10 ? most - indent : 10;
  gsize n = bytes_of_line (text, room);

  g_string_append_len (out, text, (gssize) n);
  g_string_append_c (out, '\n');
  for (text += n + strspn (text + n, " "); *text != '\0'; text += n + strspn (text + n, " "))
    {
      append_spaces (out, indent);
      n = bytes_of_line (text, room);
      g_string_append_len (out, text, (gssize) n);
      g_string_append_c (out, '\n');
    }
}

static void
line_free (gpointer data)
{
  Line *line = data;

  g_strfreev (line->cells);
  g_free (line);
}

SqTextTable *
sq_text_table_new (const char *aligns)
{
  SqTextTable *table = g_new (SqTextTable, 1);

  table->aligns = g_strdup (aligns);
  table->n_columns = (guint) strlen (aligns);
  table->lines = g_ptr_array_new_with_free_func (line_free);
  return table;
}

void
sq_text_table_free (SqTextTable *table)
{
  g_free (table->aligns);
  g_ptr_array_unref (table->lines);
  g_free (table);
}

static void
add_line (SqTextTable *table, char *const *cells, guint n_cells, guint column, gboolean is_remark)
{
  Line *line = g_new0 (Line, 1);

  line->cells = g_new0 (char *, n_cells + 1);
  memcpy (line->cells, cells, n_cells * sizeof (char *));
  line->column = column;
  line->is_remark = is_remark;
  g_ptr_array_add (table->lines, line);
}

void
sq_text_table_add_row (SqTextTable *table, char *const *cells)
{
  add_line (table, cells, table->n_columns, 0, FALSE);
}

void
sq_text_table_add_remark (SqTextTable *table, guint column, char *text)
{
  g_return_if_fail (column < table->n_columns);
  add_line (table, &text, 1, column, TRUE);
}

static guint
widest_cell (const SqTextTable *table, guint column)
{
  guint widest = 0;

  for (guint i = 0; i < table->lines->len; i++)
    {
      const Line *line = g_ptr_array_index (table->lines, i);
      if (!line->is_remark)
        widest = MAX (widest, sq_text_width (line->cells[column]));
    }
  return widest;
}

/* Where the columns begin, counted from the table's left, and where one more would. */
static guint *
column_starts (const SqTextTable *table)
{
  guint *starts = g_new (guint, table->n_columns + 1);

  starts[0] = 0;
  for (guint c = 0; c < table->n_columns; c++)
    {
      guint widest = widest_cell (table, c);
      starts[c + 1] = starts[c] + (widest > 0 ? widest + GAP : 0);
    }
  return starts;
}

static void
append_row (const SqTextTable *table, const Line *line, const guint *starts, GString *out,
            guint indent, guint most)
{
  guint last = table->n_columns - 1, at = 0;

  append_spaces (out, indent);
  for (guint c = 0; c <= last; c++)
    {
      const char *cell = line->cells[c];
      guint width = sq_text_width (cell);
      guint start = table->aligns[c] == 'r' ? starts[c + 1] - GAP - width : starts[c];
      if (width == 0)
        continue;
      append_spaces (out, start - at);
      at = start + width;
      if (c == last && table->aligns[c] == 'l')
        {
          sq_text_append_wrapped (out, cell, indent + start, most);
          return;
        }
      g_string_append (out, cell);
    }
  g_string_append_c (out, '\n');
}

void
sq_text_table_append (const SqTextTable *table, GString *out, guint indent, guint most)
{
  g_autofree guint *starts = column_starts (table);

  for (guint i = 0; i < table->lines->len; i++)
    {
      const Line *line = g_ptr_array_index (table->lines, i);
      if (!line->is_remark)
        {
          append_row (table, line, starts, out, indent, most);
          continue;
        }
      append_spaces (out, indent + starts[line->column]);
      sq_text_append_wrapped (out, line->cells[0], indent + starts[line->column], most);
    }
}
