/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/cloth-row.h"

#include "window/cloth-item.h"

#include <glib/gi18n.h>

/* What the row offers now, kept with it. */
#define ITEMS "sq-cloth-items"

/* Of the chosen cloth's name: all rows are equally wide. */
#define SHOWN_CHARS 10

GtkWidget *
sq_cloth_row_new (const char *name)
{
  return sq_value_row_new_items (name, sq_cloth_item_factory (SHOWN_CHARS),
                                 sq_cloth_item_factory (0));
}

static gboolean
offers (GListModel *items, const SqJob *job, guint n_others)
{
  if (items == NULL || g_list_model_get_n_items (items) != job->cloths->len + n_others)
    return FALSE;
  for (guint i = 0; i < job->cloths->len; i++)
    {
      g_autoptr (SqClothItem) item = g_list_model_get_item (items, i);
      if (sq_cloth_item_cloth (item) != g_ptr_array_index (job->cloths, i))
        return FALSE;
    }
  return TRUE;
}

static void
append (GListStore *items, const SqCloth *cloth, guint32 plain, const char *words)
{
  g_autoptr (SqClothItem) item = sq_cloth_item_new (cloth, plain, words);
  g_list_store_append (items, item);
}

void
sq_cloth_row_show (SqValueRow *row, const SqJob *job, SqId id, gboolean is_given)
{
  GListModel *items = g_object_get_data (G_OBJECT (row), ITEMS);
  guint n = job->cloths->len;
  gboolean has_none = id == 0;
  g_autofree guint *values = g_new (guint, n + 4);
  const struct
  {
    guint value;
    const char *words;
    gboolean is_offered;
  } others[] = {
    { 0, _ ("Any cloth"), has_none },
    { SQ_CLOTH_NEW, _ ("New cloth…"), TRUE },
    { SQ_CLOTH_CHANGE, _ ("Change this cloth…"), !has_none },
    { SQ_CLOTH_FROM_SHELF, _ ("From the shelf…"), TRUE },
  };
  guint at = n;
  for (guint i = 0; i < n; i++)
    values[i] = ((const SqCloth *) g_ptr_array_index (job->cloths, i))->id;
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    if (others[i].is_offered)
      values[at++] = others[i].value;
  if (!offers (items, job, at - n))
    {
      GListStore *store = g_list_store_new (SQ_TYPE_CLOTH_ITEM);
      for (guint i = 0; i < n; i++)
        append (store, g_ptr_array_index (job->cloths, i), job->defaults.cloth_colour, NULL);
      for (guint i = 0; i < G_N_ELEMENTS (others); i++)
        if (others[i].is_offered)
          append (store, NULL, 0, others[i].words);
      items = G_LIST_MODEL (store);
      g_object_set_data_full (G_OBJECT (row), ITEMS, store, g_object_unref);
    }
  sq_value_row_show_items (row, id, values, items, is_given);
}
