/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/paper-words.h"

#include "job/names.h"
#include "words/lengths.h"
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
sq_words_layout_of (const char *cloth)
{
  /* TRANSLATORS: of a cloth. */
  return g_strdup_printf (_ ("Layout: %s"), cloth);
}

char *
sq_words_layout_state (double scale, double from_mm, const SqLengthStyle *style)
{
  g_autofree char *from = sq_words_length (from_mm, style);

  if (from_mm <= 0)
    return g_strdup_printf (_ ("RIGHT SIDE UP · scale 1 : %g"), scale);
  return g_strdup_printf (_ ("RIGHT SIDE UP · scale 1 : %g · goes on at %s"), scale, from);
}

const char *
sq_words_cut_end (void)
{
  return _ ("cut end");
}

const char *
sq_words_near_edge (void)
{
  return _ ("near edge, without the selvedge");
}

const char *
sq_words_up (void)
{
  /* TRANSLATORS: beside an arrow: this way is up on a cloth that has an up and a down. */
  return _ ("up");
}

const char *
sq_words_front (void)
{
  /* TRANSLATORS: beside an arrow to the front edge of a seat. */
  return _ ("front");
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
