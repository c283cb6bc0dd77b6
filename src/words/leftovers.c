/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/leftovers.h"

#include <glib/gi18n.h>

#include "words/lengths.h"
#include "words/text-table.h"

/* What a line can name; of a lot there can be a hundred. */
#define MOST_NAMED 8

char *
sq_words_leftover (const SqLeftover *leftover, const SqLengthStyle *style)
{
  g_autofree char *along = sq_words_figure (leftover->along_mm, style);
  g_autofree char *across = sq_words_length (leftover->across_mm, style);

  /* TRANSLATORS: length and width. */
  return g_strdup_printf (_ ("%s × %s"), along, across);
}

char *
sq_words_leftovers (const GArray *leftovers, const SqLengthStyle *style)
{
  g_autoptr (GString) list = g_string_new (NULL);
  guint named = leftovers->len > MOST_NAMED ? MOST_NAMED - 1 : leftovers->len;
  guint more = leftovers->len - named;

  for (guint i = 0; i < named; i++)
    sq_text_add_to_list (list,
                         sq_words_leftover (&g_array_index (leftovers, SqLeftover, i), style));
  if (more > 0)
    /* TRANSLATORS: the end of a list of pieces of cloth, the largest first. */
    sq_text_add_to_list (list, g_strdup_printf (ngettext ("%u smaller", "%u smaller", more), more));
  /* TRANSLATORS: a list of sizes. */
  return leftovers->len > 0 ? g_strdup_printf (_ ("Leftovers worth keeping: %s"), list->str)
                            : g_strdup ("");
}
