/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Values under a heading, which folds them away. */
#pragma once

#include <gtk/gtk.h>

#define SQ_TYPE_VALUE_GROUP (sq_value_group_get_type ())
G_DECLARE_FINAL_TYPE (SqValueGroup, sq_value_group, SQ, VALUE_GROUP, GtkWidget)

/* @key names it in the settings, where it is remembered whether it is folded; @is_folded holds until
 * it was folded or unfolded for the first time. */
GtkWidget *sq_value_group_new (const char *name, const char *key, gboolean is_folded);
/* @row comes last. */
void sq_value_group_add (SqValueGroup *group, GtkWidget *row);
