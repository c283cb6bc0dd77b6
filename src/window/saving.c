/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/saving.h"

#include "window/background.h"
#include "window/form.h"

#include <glib/gi18n.h>

/* What takes no longer is done before one could have read how far it is. */
#define SHOWN_AFTER_S 0.5
#define TICK_MS 100

/* What the thread works on. */
typedef struct
{
  SqSavingWork work;
  gpointer data;
  GDestroyNotify data_free;
} Work;

struct _SqSaving
{
  GtkBox parent;
  GtkWidget *bar, *stop;
  SqBackground *background; /* NULL: nothing is at work */
  Work *work;               /* the background's */
  SqSavingDone done;
  GWeakRef owner;
  guint tick;
};

G_DEFINE_TYPE (SqSaving, sq_saving, GTK_TYPE_BOX)

static guint changed_signal;

/* --- on the thread --------------------------------------------------------------------------- */

static void
work_free (gpointer data)
{
  Work *work = data;
  work->data_free (work->data);
  g_free (work);
}

/* What is found is what went wrong. */
static gpointer
work_on (SqBackground *background, gpointer data, const SqTask *watch)
{
  const Work *work = data;
  GError *error = NULL;
  (void) background;
  work->work (work->data, watch, &error);
  return error;
}

/* --- here ------------------------------------------------------------------------------------ */

static gboolean
on_tick (gpointer data)
{
  SqSaving *saving = data;
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (saving->bar),
                                 sq_background_get_progress (saving->background));
  if (sq_background_get_seconds (saving->background) >= SHOWN_AFTER_S)
    gtk_widget_set_visible (GTK_WIDGET (saving), TRUE);
  return G_SOURCE_CONTINUE;
}

static void
on_over (gpointer self, gpointer error, gboolean is_over)
{
  SqSaving *saving = self;
  SqBackground *background = g_steal_pointer (&saving->background);
  g_autoptr (GObject) owner = g_weak_ref_get (&saving->owner);
  (void) is_over;
  g_clear_handle_id (&saving->tick, g_source_remove);
  gtk_widget_set_visible (GTK_WIDGET (saving), FALSE);
  g_signal_emit (saving, changed_signal, 0);
  if (owner != NULL)
    saving->done (owner, saving->work->data, error);
  sq_background_drop (background);
}

void
sq_saving_begin (SqSaving *saving, SqSavingWork work, gpointer data, GDestroyNotify data_free,
                 SqSavingDone done, GObject *owner)
{
  static const SqBackgroundWork background_work = { work_on, work_free,
                                                    (GDestroyNotify) g_error_free };
  g_return_if_fail (SQ_IS_SAVING (saving) && saving->background == NULL);
  saving->work = g_new (Work, 1);
  *saving->work = (Work){ work, data, data_free };
  saving->done = done;
  g_weak_ref_set (&saving->owner, owner);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (saving->bar), 0);
  saving->background = sq_background_begin (G_OBJECT (saving), &background_work, saving->work,
                                            on_over);
  saving->tick = g_timeout_add (TICK_MS, on_tick, saving);
  g_signal_emit (saving, changed_signal, 0);
}

gboolean
sq_saving_is_busy (SqSaving *saving)
{
  g_return_val_if_fail (SQ_IS_SAVING (saving), FALSE);
  return saving->background != NULL;
}

void
sq_saving_stop (SqSaving *saving)
{
  g_return_if_fail (SQ_IS_SAVING (saving));
  if (saving->background != NULL)
    sq_background_stop (saving->background);
}

GtkWidget *
sq_saving_new (void)
{
  return g_object_new (SQ_TYPE_SAVING, "visible", FALSE, "spacing", 10, NULL);
}

static void
sq_saving_dispose (GObject *object)
{
  SqSaving *saving = SQ_SAVING (object);
  g_clear_handle_id (&saving->tick, g_source_remove);
  g_clear_pointer (&saving->background, sq_background_drop);
  G_OBJECT_CLASS (sq_saving_parent_class)->dispose (object);
}

static void
sq_saving_finalize (GObject *object)
{
  g_weak_ref_clear (&SQ_SAVING (object)->owner);
  G_OBJECT_CLASS (sq_saving_parent_class)->finalize (object);
}

static void
sq_saving_class_init (SqSavingClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_saving_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_saving_finalize;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
sq_saving_init (SqSaving *saving)
{
  saving->bar = gtk_progress_bar_new ();
  saving->stop = sq_form_button (_ ("Stop"));
  g_weak_ref_init (&saving->owner, NULL);
  gtk_widget_set_valign (saving->bar, GTK_ALIGN_CENTER);
  gtk_widget_set_hexpand (saving->bar, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (saving->bar), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Saving"), -1);
  g_signal_connect_swapped (saving->stop, "clicked", G_CALLBACK (sq_saving_stop), saving);
  gtk_box_append (GTK_BOX (saving), saving->bar);
  gtk_box_append (GTK_BOX (saving), saving->stop);
}
