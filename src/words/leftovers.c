/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/leftovers.h"

#include <glib/gi18n.h>

#include "words/lengths.h"
#include "words/text-table.h"

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

  for (guint i = 0; i < leftovers->len; i++)
    sq_text_add_to_list (list,
                         sq_words_leftover (&g_array_index (leftovers, SqLeftover, i), style));
  /* TRANSLATORS: a list of sizes. */
  return leftovers->len > 0 ? g_strdup_printf (_ ("Leftovers worth keeping: %s"), list->str)
                            : g_strdup ("");
}
