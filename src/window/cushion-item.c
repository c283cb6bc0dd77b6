/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/cushion-item.h"

#include "window/figures.h"
#include "words/lengths.h"
#include "words/names.h"

#include <glib/gi18n.h>

struct _SqCushionItem
{
  GObject parent;
  SqPlan *plan;
  guint i;
  char *name, *words;
};

G_DEFINE_TYPE (SqCushionItem, sq_cushion_item, G_TYPE_OBJECT)

static guint changed_signal, rename_signal;

/* Takes @text; whether it is another one. */
static gboolean
set_text (char **now, char *text)
{
  gboolean is_same = g_strcmp0 (*now, text) == 0;
  g_free (*now);
  *now = text;
  return !is_same;
}

static char *
make_name (const SqPlan *plan, const SqCushion *cushion)
{
  g_autofree char *name = sq_words_cushion (plan->job, cushion);
  if (cushion->count == 1 || cushion->hand == SQ_HAND_PAIR)
    return g_steal_pointer (&name);
  /* Translators: how many of them, and the cushion's name. */
  return g_strdup_printf (_ ("%u × %s"), cushion->count, name);
}

/* NULL: as drawn. */
static char *
hand_words (const SqCushion *cushion)
{
  if (cushion->hand == SQ_HAND_PAIR)
    return g_strdup_printf (ngettext ("%u pair", "%u pairs", cushion->count), cushion->count);
  return cushion->hand == SQ_HAND_MIRRORED ? g_strdup (_ ("mirror image")) : NULL;
}

static char *
make_words (const SqPlan *plan, const SqCover *cover)
{
  SqLengthStyle style = sq_figures_style (plan->job);
  g_autofree char *thickness = sq_words_length (cover->thickness_mm, &style);
  g_autofree char *hand = hand_words (cover->cushion);
  /* Translators: a way of building, and how thick. */
  g_autofree char *words = g_strdup_printf (_ ("%s, %s"), sq_words_build (cover->build), thickness);
  return hand != NULL ? g_strdup_printf ("%s\n%s", words, hand) : g_steal_pointer (&words);
}

void
sq_cushion_item_rename (SqCushionItem *item)
{
  g_return_if_fail (SQ_IS_CUSHION_ITEM (item));
  g_signal_emit (item, rename_signal, 0);
}

void
sq_cushion_item_follow (SqCushionItem *item, const SqPlan *plan, guint i)
{
  const SqCover *before = item->plan != NULL ? sq_plan_cover (item->plan, item->i) : NULL;
  const SqCover *cover = sq_plan_cover (plan, i);
  gboolean is_changed = before != cover;
  SqPlan *own = sq_plan_ref (plan);
  if (is_changed || item->i != i || item->plan->job->units != plan->job->units)
    {
      is_changed |= set_text (&item->name, make_name (plan, cover->cushion));
      is_changed |= set_text (&item->words, make_words (plan, cover));
    }
  g_clear_pointer (&item->plan, sq_plan_unref);
  item->plan = own;
  item->i = i;
  if (is_changed)
    g_signal_emit (item, changed_signal, 0);
}

SqCushionItem *
sq_cushion_item_new (const SqPlan *plan, guint i)
{
  SqCushionItem *item = g_object_new (SQ_TYPE_CUSHION_ITEM, NULL);
  sq_cushion_item_follow (item, plan, i);
  return item;
}

SqId
sq_cushion_item_id (SqCushionItem *item)
{
  return sq_plan_cover (item->plan, item->i)->cushion->id;
}

const SqPlan *
sq_cushion_item_plan (SqCushionItem *item, guint *i)
{
  *i = item->i;
  return item->plan;
}

const char *
sq_cushion_item_name (SqCushionItem *item)
{
  return item->name;
}

const char *
sq_cushion_item_words (SqCushionItem *item)
{
  return item->words;
}

static void
sq_cushion_item_finalize (GObject *object)
{
  SqCushionItem *item = SQ_CUSHION_ITEM (object);
  g_clear_pointer (&item->plan, sq_plan_unref);
  g_free (item->name);
  g_free (item->words);
  G_OBJECT_CLASS (sq_cushion_item_parent_class)->finalize (object);
}

static void
sq_cushion_item_class_init (SqCushionItemClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sq_cushion_item_finalize;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  rename_signal = g_signal_new ("rename", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                NULL, NULL, G_TYPE_NONE, 0);
}

static void
sq_cushion_item_init (SqCushionItem *item)
{
  (void) item;
}
