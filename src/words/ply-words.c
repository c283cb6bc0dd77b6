/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/ply-words.h"

#include "words/lay-words.h"
#include "words/lengths.h"

#include <glib/gi18n.h>

char *
sq_words_plies (const SqPlies *plies, const SqLengthStyle *style)
{
  const SqPlyLay *best = sq_plies_best (plies);
  g_autofree char *buy = sq_words_sold_length (best->buy_mm, style);

  /* TRANSLATORS: layers of cloth that are cut at once, and how much cloth that takes. */
  return g_strdup_printf (ngettext ("%u ply, %s to buy", "%u plies, %s to buy", best->plies),
                          best->plies, buy);
}

/* Takes @text. */
static void
say (GString *out, char *text)
{
  if (out->len > 0)
    g_string_append (out, "; ");
  g_string_append (out, text);
  g_free (text);
}

static void
say_lays (GString *out, const SqPlyLay *best, const SqLengthStyle *style)
{
  g_autofree char *longest = sq_words_long_length (best->longest_mm, style);

  if (best->lays == 1)
    say (out, g_strdup_printf (_ ("one lay, a ply %s long"), longest));
  else if (best->lays > 1)
    say (out, g_strdup_printf (_ ("%u lays one after the other, a ply %s long at most"), best->lays,
                               longest));
  if (best->lays > 0 && best->plies > 1)
    say (out, g_strdup (_ ("every ply right side up")));
}

static void
say_minutes (GString *out, const SqPlies *plies)
{
  long saved = lround (sq_ply_lay (plies, 0)->minutes - sq_plies_best (plies)->minutes);

  if (saved > 0)
    say (out, g_strdup_printf (ngettext ("%ld minute less than one ply at a time",
                                         "%ld minutes less than one ply at a time",
                                         (unsigned long) saved),
                               saved));
  else if (saved < 0)
    say (out, g_strdup_printf (ngettext ("%ld minute more than one ply at a time",
                                         "%ld minutes more than one ply at a time",
                                         (unsigned long) -saved),
                               -saved));
}

char *
sq_words_plies_reckoned (const SqPlies *plies, const SqLengthStyle *style)
{
  const SqPlyLay *best = sq_plies_best (plies);
  GString *out = g_string_new (NULL);

  say_lays (out, best, style);
  say_minutes (out, plies);
  if (best->spares > 0)
    say (out, g_strdup_printf (ngettext ("%u piece more than is wanted",
                                         "%u pieces more than are wanted", best->spares),
                               best->spares));
  if (best->unlaid > 0)
    say (out, g_strdup_printf (ngettext ("%u piece does not go on the table",
                                         "%u pieces do not go on the table", best->unlaid),
                               best->unlaid));
  return g_string_free (out, FALSE);
}

char *
sq_words_plies_of (const char *cloth)
{
  /* TRANSLATORS: layers of cloth that are cut at once, of a cloth. */
  return g_strdup_printf (_ ("Plies: %s"), cloth);
}

char *
sq_words_ply_lay (const SqPlies *plies, guint strip, const SqLengthStyle *style)
{
  const SqPlyLay *best = sq_plies_best (plies);
  g_autofree char *length = sq_words_long_length (sq_ply_length_mm (best, strip), style);
  guint n = 0;

  for (guint i = 0; i <= strip; i++)
    n += sq_lay_length (best->lay, i) > 0;
  /* TRANSLATORS: which of several lays on a table, how many layers of cloth it has, their length. */
  return g_strdup_printf (
      ngettext ("Lay %u of %u, %u ply of %s", "Lay %u of %u, %u plies of %s", best->plies), n,
      best->lays, best->plies, length);
}
