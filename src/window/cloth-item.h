/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A cloth in a list, with its picture and its name. */
#pragma once

#include <gtk/gtk.h>

#include "job/cloth.h"

#define SQ_TYPE_CLOTH_ITEM (sq_cloth_item_get_type ())
G_DECLARE_FINAL_TYPE (SqClothItem, sq_cloth_item, SQ, CLOTH_ITEM, GObject)

/* @cloth in the colour @plain where it has none; NULL with only @words (else taken from the cloth):
 * something that can be done. */
SqClothItem *sq_cloth_item_new (const SqCloth *cloth, guint32 plain, const char *words);
/* Borrowed; the cloth may be NULL. */
const SqCloth *sq_cloth_item_cloth (SqClothItem *item);
const char *sq_cloth_item_words (SqClothItem *item);
/* Rows for such items, with so many characters of each name; 0: all. */
GtkListItemFactory *sq_cloth_item_factory (int most_chars);
