/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/cuts-words.h"

#include <glib/gi18n.h>

#include "plan/work.h"
#include "words/lay-words.h"
#include "words/lengths.h"
#include "words/ways.h"

/* Less is no difference: lengths as sold (mm), times to the minute. */
#define SAME_MM 0.5
#define SAME_MINUTES 0.5

const char *
sq_words_cuts (SqCuts cuts)
{
  switch (cuts)
    {
    case SQ_CUTS_BY_RULE:
      return _ ("As is worth it");
    case SQ_CUTS_FREE:
      return _ ("Freely round each piece");
    case SQ_CUTS_STRAIGHT:
      return _ ("Straight, right through");
    }
  g_return_val_if_reached ("");
}

static char *
cloth_text (double more_mm, const SqLengthStyle *style)
{
  g_autofree char *length = sq_words_sold_length (fabs (more_mm), style);

  if (fabs (more_mm) < SAME_MM)
    return g_strdup (_ ("no more cloth"));
  /* TRANSLATORS: a length of cloth. */
  return g_strdup_printf (more_mm > 0 ? _ ("%s more cloth") : _ ("%s less cloth"), length);
}

static char *
time_text (double more_minutes)
{
  g_autofree char *time = sq_words_minutes (fabs (more_minutes));

  if (fabs (more_minutes) < SAME_MINUTES)
    return g_strdup (_ ("the same time"));
  /* TRANSLATORS: a time, of work. */
  return g_strdup_printf (more_minutes > 0 ? _ ("%s more") : _ ("%s less"), time);
}

static double
minutes (const SqLays *lays, const SqCutsLay *own)
{
  SqCutting cutting = sq_lay_cutting (own->task, own->lay);
  return sq_cutting_minutes (&cutting, lays->plan->job);
}

char *
sq_words_straight_cuts (const SqLays *lays, const SqClothLay *cloth, const SqLengthStyle *style)
{
  const SqCutsLay *free = &cloth->by_cuts[0], *straight = &cloth->by_cuts[1];

  if (free->lay == NULL || straight->lay == NULL)
    return g_strdup ("");
  if (straight->purchase.unlaid > free->purchase.unlaid)
    return g_strdup (_ ("Straight cuts, right through, leave no room for all pieces."));
  if (free->purchase.unlaid > straight->purchase.unlaid)
    return g_strdup ("");
  g_autofree char *length = cloth_text (straight->purchase.buy_mm - free->purchase.buy_mm, style);
  g_autofree char *time = time_text (minutes (lays, straight) - minutes (lays, free));
  if (cloth->task->straight)
    /* TRANSLATORS: more or less cloth, more or less time. */
    return g_strdup_printf (_ ("Straight cuts, right through: %s, %s."), length, time);
  /* TRANSLATORS: more or less cloth, more or less time. */
  return g_strdup_printf (_ ("Straight cuts, right through, would take %s, %s."), length, time);
}
