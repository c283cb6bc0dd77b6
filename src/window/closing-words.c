/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/closing-words.h"

#include "window/figures.h"
#include "window/side-walk.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

char *
sq_closing_words (const SqJob *job, const SqCushion *cushion, SqId edge, double taped_mm,
                  gboolean *is_off)
{
  SqLengthStyle style = sq_figures_style (job);
  g_autofree char *name = sq_words_edge_corners (cushion, edge);
  g_autofree char *closes = NULL, *off = NULL, *taped = NULL;
  guint ring = 0;
  double closes_mm = 0, more_mm;
  sq_outline_corner (cushion->outline, edge, &ring, NULL);
  more_mm = sq_walk_misclosure_mm (cushion->outline, ring, taped_mm, &closes_mm);
  closes = sq_length_format (closes_mm, &style);
  *is_off = taped_mm > 0 && sq_length_rounded_mm (fabs (more_mm), &style) > 0;
  if (taped_mm <= 0)
    /* Translators: a side's letters and its length. */
    return g_strdup_printf (_ ("%s closes the seat at %s: it follows from the others."), name,
                            closes);
  if (!*is_off)
    return g_strdup_printf (_ ("%s closes at %s, as taped."), name, closes);
  off = sq_length_format (fabs (more_mm), &style);
  taped = sq_length_format (taped_mm, &style);
  if (more_mm < 0)
    /* Translators: a side's letters, its length, by how much that is more, and the length taped. */
    return g_strdup_printf (_ ("%s closes at %s: %s more than taped (%s)."), name, closes, off,
                            taped);
  return g_strdup_printf (_ ("%s closes at %s: %s less than taped (%s)."), name, closes, off,
                          taped);
}
