/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "dxf-reader.h"

#include <stdlib.h>
#include <string.h>

static void
clear_group (gpointer group)
{
  g_free (((Group *) group)->value);
}

/* The line at *@text, which goes on to the next. */
static char *
read_line (const char **text)
{
  const char *end = *text;
  char *line;

  /* not strstr(), for which a sanitizer measures all that is left, line after line */
  while (*end != '\r' && *end != '\0')
    end++;
  g_assert_true (g_str_has_prefix (end, "\r\n"));
  line = g_strndup (*text, (gsize) (end - *text));
  g_assert_true (g_str_is_ascii (line));
  for (const char *c = line; *c != '\0'; c++)
    g_assert_false (g_ascii_iscntrl (*c));
  *text = end + 2;
  return line;
}

GArray *
read_groups (const char *text)
{
  GArray *groups = g_array_new (FALSE, FALSE, sizeof (Group));

  g_array_set_clear_func (groups, clear_group);
  while (*text != '\0')
    {
      g_autofree char *code = read_line (&text);
      char *end;
      Group group = { (int) strtol (code, &end, 10), read_line (&text) };

      g_assert_cmpstr (end, ==, "");
      g_assert_true (end > code);
      g_array_append_val (groups, group);
    }
  return groups;
}

static gboolean
is_group (const Group *group, int code, const char *value)
{
  return group->code == code && g_str_equal (group->value, value);
}

guint
find_group (const GArray *groups, guint from, int code, const char *value)
{
  for (guint i = from; i < groups->len; i++)
    if (is_group (group_at (groups, i), code, value))
      return i;
  g_error ("no group %d %s", code, value);
}

gboolean
has_group (const GArray *groups, int code, const char *value)
{
  for (guint i = 0; i < groups->len; i++)
    if (is_group (group_at (groups, i), code, value))
      return TRUE;
  return FALSE;
}

void
find_section (const GArray *groups, const char *name, guint *from, guint *to)
{
  *from = find_group (groups, 0, 2, name) + 1;
  g_assert_true (is_group (group_at (groups, *from - 2), 0, "SECTION"));
  *to = find_group (groups, *from, 0, "ENDSEC");
}

void
find_block (const GArray *groups, const char *name, guint *from, guint *to)
{
  guint section, end;

  find_section (groups, "BLOCKS", &section, &end);
  *from = next_entity (groups, find_group (groups, section, 2, name), end);
  *to = find_group (groups, *from, 0, "ENDBLK");
}

guint
next_entity (const GArray *groups, guint i, guint to)
{
  for (i++; i < to; i++)
    if (group_at (groups, i)->code == 0 && !g_str_equal (group_at (groups, i)->value, "VERTEX")
        && !g_str_equal (group_at (groups, i)->value, "SEQEND"))
      return i;
  return to;
}

const char *
value_of (const GArray *groups, guint i, guint to, int code)
{
  for (i++; i < to && group_at (groups, i)->code != 0; i++)
    if (group_at (groups, i)->code == code)
      return group_at (groups, i)->value;
  return NULL;
}

double
number_of (const GArray *groups, guint i, guint to, int code)
{
  const char *value = value_of (groups, i, to, code);
  char *end;

  g_assert_nonnull (value);
  double number = g_ascii_strtod (value, &end);
  g_assert_cmpstr (end, ==, "");
  return number;
}

SqPoint
point_of (const GArray *groups, guint i, guint to, int code)
{
  return sq_point (number_of (groups, i, to, code), number_of (groups, i, to, code + 10));
}

static SqPath *
line_of (const GArray *groups, guint i, guint to)
{
  const SqNode nodes[] = { { point_of (groups, i, to, 10), 0, 0 },
                           { point_of (groups, i, to, 11), 0, 0 } };

  return sq_path_new (nodes, G_N_ELEMENTS (nodes), FALSE);
}

/* The points between @from and @to: each begins with its x. */
static SqPath *
points_of (const GArray *groups, guint from, guint to, gboolean is_ring)
{
  g_autoptr (GArray) nodes = g_array_new (FALSE, TRUE, sizeof (SqNode));

  for (guint i = from; i < to; i++)
    {
      double value = g_ascii_strtod (group_at (groups, i)->value, NULL);
      if (group_at (groups, i)->code == 10)
        g_array_append_val (nodes, ((SqNode){ { value, 0 }, 0, 0 }));
      else if (group_at (groups, i)->code == 20)
        g_array_index (nodes, SqNode, nodes->len - 1).at.y = value;
      else if (group_at (groups, i)->code == 42)
        g_array_index (nodes, SqNode, nodes->len - 1).bulge = value;
    }
  return sq_path_new ((const SqNode *) (gpointer) nodes->data, nodes->len, is_ring);
}

SqPath *
path_of (const GArray *groups, guint i, guint to)
{
  guint end = next_entity (groups, i, to);

  if (g_str_equal (group_at (groups, i)->value, "LINE"))
    return line_of (groups, i, to);
  gboolean is_ring = (int) number_of (groups, i, to, 70) & 1;
  if (g_str_equal (group_at (groups, i)->value, "LWPOLYLINE"))
    {
      g_autofree char *n = g_strstrip (g_strdup (value_of (groups, i, to, 90)));
      SqPath *path = points_of (groups, i, end, is_ring);
      g_assert_cmpint (atoi (n), ==, (int) sq_path_n_nodes (path));
      return path;
    }
  g_assert_cmpstr (group_at (groups, i)->value, ==, "POLYLINE");
  g_assert_cmpstr (group_at (groups, end - 1)->value, !=, "");
  return points_of (groups, find_group (groups, i, 0, "VERTEX"), end, is_ring);
}
