/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/paper-words.h"

#include "job/names.h"
#include "words/text-table.h"

#include <glib/gi18n.h>

char *
sq_words_paper_title (const SqJob *job)
{
  g_autofree char *title = sq_text_clean (job->title != NULL ? job->title : "");

  return g_strdup (title[0] != '\0' ? title : _ ("Cushions"));
}

char *
sq_words_paper_state (const SqJob *job, const char *date)
{
  g_autofree char *revision = sq_revision_name (job->revision);

  /* TRANSLATORS: which revision of a paper this is, and of what day. */
  return g_strdup_printf (_ ("Revision %s · %s"), revision, date);
}

char *
sq_words_for_customer (const char *customer)
{
  return g_strdup_printf (_ ("For %s"), customer);
}

char *
sq_words_size (const char *width, const char *length)
{
  return g_strdup_printf ("%s × %s", width, length);
}

char *
sq_words_problem_of (const char *cushion, const char *text)
{
  if (cushion[0] == '\0')
    return g_strdup (text);
  /* TRANSLATORS: a cushion's name, and what is wrong with it. */
  return g_strdup_printf (_ ("%s: %s"), cushion, text);
}

char *
sq_words_page (guint page, guint n_pages)
{
  return g_strdup_printf (_ ("Page %u of %u"), page, n_pages);
}

char *
sq_words_continued (const char *heading)
{
  /* TRANSLATORS: a heading that stood on the page before. */
  return g_strdup_printf (_ ("%s, continued"), heading);
}
