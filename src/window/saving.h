/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The row in which saving shows how far it is, and is stopped. What is quick never shows. */
#pragma once

#include <gtk/gtk.h>

#include "base/task.h"

#define SQ_TYPE_SAVING (sq_saving_get_type ())
G_DECLARE_FINAL_TYPE (SqSaving, sq_saving, SQ, SAVING, GtkBox)

/* On a thread: does the work with @data. FALSE with @error, SQ_ERROR_CANCELLED where @watch stopped
 * it. */
typedef gboolean (*SqSavingWork) (gpointer data, const SqTask *watch, GError **error);
/* On the main loop, at the end: @error is NULL, or why nothing was saved; both are borrowed. Not called
 * where @owner is gone. */
typedef void (*SqSavingDone) (gpointer owner, gpointer data, const GError *error);

/* Emits "changed" (no parameters) when it gets busy and when it is no more. */
GtkWidget *sq_saving_new (void);

/* Does @work; @owner may go any time. @data is taken, and freed on any thread. Nothing else may be at
 * work. */
void sq_saving_begin (SqSaving *saving, SqSavingWork work, gpointer data, GDestroyNotify data_free,
                      SqSavingDone done, GObject *owner);
gboolean sq_saving_is_busy (SqSaving *saving);
/* Stops what is at work, if anything is; @done is told of it as of an error. */
void sq_saving_stop (SqSaving *saving);
