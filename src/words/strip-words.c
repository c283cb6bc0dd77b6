/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/strip-words.h"

#include "words/lay-words.h"
#include "words/lengths.h"
#include "words/text-table.h"

#include <glib/gi18n.h>

char *
sq_words_stock (const SqCloth *cloth, const SqStock *stock)
{
  guint number = 1;

  for (guint i = 0; i < cloth->stock->len && sq_cloth_stock (cloth, i)->id != stock->id; i++)
    number += sq_cloth_stock (cloth, i)->kind == stock->kind;
  /* TRANSLATORS: pieces of cloth that are there already, counted from 1. */
  return g_strdup_printf (stock->kind == SQ_STOCK_REMNANT ? _ ("Remnant %u") : _ ("Bolt %u"),
                          number);
}

char *
sq_words_strip_name (const SqLays *lays, const SqClothLay *cloth, guint strip)
{
  const SqStock *stock = sq_lays_stock (lays, cloth, strip);

  return stock != NULL ? sq_words_stock (sq_plan_cloth (lays->plan, cloth->cloth), stock)
                       : g_strdup (_ ("Roll to buy"));
}

/* A remnant is told as one lays it out, a bolt as cloth is sold. */
char *
sq_words_strip_size (const SqLays *lays, const SqClothLay *cloth, guint strip,
                     const SqLengthStyle *style)
{
  const SqLayStrip *own = sq_lay_task_strip (cloth->task, strip);
  const SqStock *stock = sq_lays_stock (lays, cloth, strip);
  double length_mm = own->length / SQ_GRID_PER_MM;
  SqLengthStyle with_unit = *style;
  with_unit.with_unit = TRUE;
  g_autofree char *width = sq_words_length (own->width / SQ_GRID_PER_MM, &with_unit);
  g_autofree char *length = NULL;

  if (stock == NULL)
    return g_strdup_printf (_ ("%s wide"), width);
  length = stock->kind == SQ_STOCK_REMNANT ? sq_words_figure (length_mm, style)
                                           : sq_words_long_length (length_mm, style);
  /* TRANSLATORS: length and width. */
  return g_strdup_printf (_ ("%s × %s"), length, width);
}

char *
sq_words_strip (const SqLays *lays, const SqClothLay *cloth, guint strip,
                const SqLengthStyle *style)
{
  g_autofree char *name = sq_words_strip_name (lays, cloth, strip);
  g_autofree char *size = sq_words_strip_size (lays, cloth, strip, style);

  /* TRANSLATORS: a piece of cloth, and its size. */
  return g_strdup_printf (_ ("%s · %s"), name, size);
}

gboolean
sq_words_names_strips (const SqClothLay *cloth)
{
  return cloth->task->strips->len > 1;
}

/* Across, a bolt is as the roll is; a remnant may be from anywhere. */
const char *
sq_words_trim_first (const SqLays *lays, const SqClothLay *cloth, guint strip)
{
  const SqStock *stock = sq_lays_stock (lays, cloth, strip);
  gboolean across, along;

  if (stock == NULL
      || !sq_cloth_has_phase (sq_plan_cloth (lays->plan, cloth->cloth), &across, &along))
    return NULL;
  across = across && stock->kind == SQ_STOCK_REMNANT;
  if (across && along)
    return _ ("Trim it first to where the pattern begins, at its cut end and its near edge: all is "
              "measured from there.");
  if (across)
    return _ ("Trim it first to where the pattern begins at its near edge: all is measured from "
              "there.");
  return along
             ? _ ("Trim it first to where the pattern begins at its cut end: all is measured from "
                  "there.")
             : NULL;
}

/* What is there that something lies on, or nothing does. */
static GString *
list_stock (const SqLays *lays, const SqClothLay *cloth, gboolean is_used)
{
  GString *list = g_string_new (NULL);

  for (guint i = 0; i < cloth->task->strips->len; i++)
    if (sq_lays_stock (lays, cloth, i) != NULL && (sq_lay_length (cloth->lay, i) > 0) == is_used)
      sq_text_add_to_list (list, sq_words_strip_name (lays, cloth, i));
  return list;
}

char *
sq_words_unused_stock (const SqLays *lays, const SqClothLay *cloth)
{
  g_autoptr (GString) list = list_stock (lays, cloth, FALSE);

  /* TRANSLATORS: a list of remnants and bolts. */
  return list->len > 0 ? g_strdup_printf (_ ("Nothing lies on %s."), list->str) : NULL;
}

char *
sq_words_reckoned (const SqLays *lays, const SqClothLay *cloth, const SqLengthStyle *style)
{
  g_autoptr (GString) list = list_stock (lays, cloth, TRUE);
  g_autofree char *bought = cloth->purchase.bolts > 0 ? sq_words_purchase_reckoned (
                                lays->plan->job, &cloth->purchase, style)
                                                      : g_strdup ("");

  if (list->len == 0)
    return g_steal_pointer (&bought);
  /* TRANSLATORS: a list of remnants and bolts. */
  g_autofree char *there = g_strdup_printf (_ ("Laid on %s."), list->str);
  if (bought[0] == '\0')
    return g_steal_pointer (&there);
  /* TRANSLATORS: what there is that is laid on; how much is to buy for the rest. */
  return g_strdup_printf (_ ("%s For the rest: %s"), there, bought);
}

const char *
sq_words_hatched_flaws (void)
{
  return _ ("Hatched: flaws; nothing is cut from there.");
}

static const char *
fault_text (SqLayFault fault)
{
  switch (fault)
    {
    case SQ_LAY_POSE:
      return _ ("it may not be turned like that");
    case SQ_LAY_OUTSIDE:
      return _ ("it would leave the cloth");
    case SQ_LAY_PATTERN:
      return _ ("its pattern would not fall right");
    case SQ_LAY_FLAW:
      return _ ("it would lie on a flaw");
    case SQ_LAY_RIGHT:
    case SQ_LAY_OTHER_TASK:
    case SQ_LAY_COUNT:
    case SQ_LAY_PIN:
    case SQ_LAY_CUTS:
    case SQ_LAY_OVERLAP:
      break;
    }
  return _ ("it would lie on another pinned piece");
}

char *
sq_words_bad_pin (const SqLays *lays, const SqClothLay *cloth, guint i)
{
  guint copy;
  SqLayFault fault;
  const SqCutEntry *entry = sq_lays_bad_pin (lays, cloth, i, &copy, &fault);
  g_autofree char *named = sq_words_copy (lays, entry, copy);

  /* TRANSLATORS: a piece, and why. */
  return g_strdup_printf (_ ("%s can’t lie where it was pinned: %s. It is laid elsewhere."), named,
                          fault_text (fault));
}
