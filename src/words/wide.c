/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/wide.h"

#include <glib/gi18n.h>

#include "words/lengths.h"
#include "words/ways.h"

/* Whether the cloth lies from side to side when it is turned. */
static gboolean
turns_to_side (const SqWideWay *way)
{
  return way->way.as->stripes.run == SQ_STRIPES_SIDE_TO_SIDE;
}

char *
sq_words_wide_way (const SqWideWay *way, const SqLengthStyle *style)
{
  switch (way->kind)
    {
    case SQ_WIDE_TWO_JOINS:
      return g_strdup (_ ("Two joins"));
    case SQ_WIDE_DIVIDE:
      return g_strdup_printf (
          ngettext ("%u cushion side by side", "%u cushions side by side", way->cushions->len),
          way->cushions->len);
    case SQ_WIDE_TURN:
      return g_strdup (turns_to_side (way) ? _ ("Cloth from side to side")
                                           : _ ("Cloth from front to back"));
    case SQ_WIDE_CLOTH:
      break;
    }
  g_autofree char *width = sq_words_length (way->width_mm, style);
  /* TRANSLATORS: a length. */
  return g_strdup_printf (_ ("Cloth %s wide"), width);
}

static gboolean
is_laid (const SqWay *way)
{
  for (guint i = 0; i < way->cloths->len; i++)
    {
      const SqWayCloth *cloth = &g_array_index (way->cloths, SqWayCloth, i);
      if (isnan (cloth->buy_mm) && cloth->unlaid == 0)
        return FALSE;
    }
  return TRUE;
}

char *
sq_words_wide_offer (const SqWideWay *way, const SqLengthStyle *style)
{
  g_autofree char *name = sq_words_wide_way (way, style);

  if (!way->way.possible)
    /* TRANSLATORS: a way of making the cushion. */
    return g_strdup_printf (_ ("%s: not possible"), name);
  if (!is_laid (&way->way))
    return g_steal_pointer (&name);
  g_autofree char *cloth = sq_words_way_cloth (&way->way, ", ", style);
  /* TRANSLATORS: a way of making the cushion, and the cloth it takes. */
  return g_strdup_printf (_ ("%s: %s"), name, cloth);
}

char *
sq_words_wide_summary (const SqWideWay *way, const SqLengthStyle *style)
{
  g_autofree char *name = sq_words_wide_way (way, style);
  const SqWay *w = &way->way;

  if (!w->possible)
    {
      g_autofree char *why = sq_words_way_why (w, style);
      /* TRANSLATORS: a way of making the cushion; why it is not possible. */
      return g_strdup_printf (_ ("%s: not possible. %s"), name, why);
    }
  g_autofree char *seam = sq_words_long_length (w->seam_mm, style);
  g_autofree char *cloth = sq_words_way_cloth (w, ", ", style);
  g_autofree char *time = sq_words_minutes (w->minutes);
  g_autofree char *cost = sq_words_way_cost (w, " ", style);
  return g_strdup_printf (ngettext ("%s: %u piece, seams %s, cloth %s, time %s, cost %s",
                                    "%s: %u pieces, seams %s, cloth %s, time %s, cost %s",
                                    w->pieces),
                          name, w->pieces, seam, cloth, time, cost);
}
