/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/selection.h"

struct _SqSelection
{
  GObject parent;
  SqPlace place;
};

G_DEFINE_TYPE (SqSelection, sq_selection, G_TYPE_OBJECT)

static guint changed_signal, problem_signal;

static void
sq_selection_class_init (SqSelectionClass *class)
{
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  problem_signal = g_signal_new ("problem", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
}

static void
sq_selection_init (SqSelection *selection)
{
  selection->place.kind = SQ_AT_CUSHION;
}

SqSelection *
sq_selection_new (void)
{
  return g_object_new (SQ_TYPE_SELECTION, NULL);
}

const SqPlace *
sq_selection_place (SqSelection *selection)
{
  return &selection->place;
}

SqId
sq_selection_cushion (SqSelection *selection)
{
  return selection->place.cushion;
}

guint32
sq_selection_item (SqSelection *selection, guint kind)
{
  return selection->place.kind == kind ? selection->place.item : 0;
}

void
sq_selection_choose (SqSelection *selection, const SqPlace *place)
{
  SqPlace *now = &selection->place;
  g_return_if_fail (SQ_IS_SELECTION (selection));
  if (now->kind == place->kind && now->cushion == place->cushion && now->item == place->item
      && g_strcmp0 (now->key, place->key) == 0)
    return;
  *now = *place;
  g_signal_emit (selection, changed_signal, 0);
}

void
sq_selection_choose_cushion (SqSelection *selection, SqId cushion)
{
  SqPlace place = { .kind = SQ_AT_CUSHION, .cushion = cushion };
  if (cushion != selection->place.cushion)
    sq_selection_choose (selection, &place);
}

void
sq_selection_choose_part (SqSelection *selection, guint kind, guint32 item)
{
  SqPlace place = { .kind = kind, .cushion = selection->place.cushion, .item = item };
  sq_selection_choose (selection, &place);
}

void
sq_selection_show_problem (SqSelection *selection, const SqPlace *place)
{
  g_return_if_fail (SQ_IS_SELECTION (selection));
  g_signal_emit (selection, problem_signal, 0, place);
}
