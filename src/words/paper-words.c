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

const char *
sq_words_paper_kind (SqPaperKind kind)
{
  switch (kind)
    {
    case SQ_PAPER_CUT_LIST:
      return _ ("Cut list");
    case SQ_PAPER_LAYOUT:
      return _ ("Layout");
    case SQ_PAPER_MARKING:
      return _ ("Marking guide");
    case SQ_PAPER_TICKETS:
      return _ ("Cut tickets");
    case SQ_PAPER_LABELS:
      return _ ("Labels");
    case SQ_PAPER_PATTERN:
      return _ ("Patterns");
    }
  g_return_val_if_reached ("");
}

const char *
sq_words_sheet (SqSheet sheet)
{
  static const char *const names[SQ_N_SHEETS] = {
    "A4", "A3", "A2", "A1", "A0", N_ ("Letter"), "ANSI B", "ANSI C", "ANSI D", "ANSI E",
  };

  return _ (names[sheet]);
}

const char *
sq_words_stopped (void)
{
  return _ ("Stopped.");
}

char *
sq_words_no_room_for_pattern (double paper_mm, double margin_mm, double overlap_mm,
                              const SqLengthStyle *style)
{
  g_autofree char *paper = sq_words_length (paper_mm, style);
  g_autofree char *margin = sq_words_length (margin_mm, style);
  g_autofree char *overlap = sq_words_length (overlap_mm, style);

  /* TRANSLATORS: three lengths. */
  return g_strdup_printf (_ ("Paper %s wide is too narrow for margins of %s and an overlap of %s: "
                             "nothing is left for the pattern."),
                          paper, margin, overlap);
}

char *
sq_words_roll_too_wide (double roll_mm, double most_mm, const SqLengthStyle *style)
{
  g_autofree char *roll = sq_words_length (roll_mm, style);
  g_autofree char *most = sq_words_length (most_mm, style);

  /* TRANSLATORS: two lengths. */
  return g_strdup_printf (_ ("No page can be as wide as a roll of %s: take one of %s at most."),
                          roll, most);
}

char *
sq_words_no_room_for_labels (double width_mm, double height_mm, const SqLengthStyle *style)
{
  g_autofree char *width = sq_words_length (fmax (width_mm, 0), style);
  g_autofree char *height = sq_words_length (fmax (height_mm, 0), style);

  /* TRANSLATORS: two lengths. */
  return g_strdup_printf (
      _ ("Labels %s wide and %s high can’t be read: take fewer rows or columns, "
         "or smaller margins."),
      width, height);
}

char *
sq_words_cut_file_title (const SqJob *job, gboolean wrong_side)
{
  g_autofree char *title = sq_words_paper_title (job);
  g_autofree char *revision = sq_revision_name (job->revision);

  /* TRANSLATORS: a job's name, its revision, and which side of the cloth is up. */
  return g_strdup_printf (_ ("%s · revision %s · %s"), title, revision,
                          sq_words_side_up (wrong_side));
}

const char *
sq_words_side_up (gboolean wrong_side)
{
  return wrong_side ? _ ("WRONG SIDE UP") : _ ("RIGHT SIDE UP");
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
sq_words_layout_state (gboolean wrong_side, double scale, double from_mm,
                       const SqLengthStyle *style)
{
  const char *side = sq_words_side_up (wrong_side);
  g_autofree char *from = sq_words_length (from_mm, style);

  if (from_mm <= 0)
    /* TRANSLATORS: which side of the cloth lies up; a scale. */
    return g_strdup_printf (_ ("%s · scale 1 : %g"), side, scale);
  /* TRANSLATORS: which side of the cloth lies up; a scale; a length. */
  return g_strdup_printf (_ ("%s · scale 1 : %g · goes on at %s"), side, scale, from);
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
