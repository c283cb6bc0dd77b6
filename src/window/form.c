/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/form.h"

#include <glib/gi18n.h>

typedef struct
{
  GtkWindow *window;
  SqFormDone done;
  gpointer data;
  GDestroyNotify data_free;
} Form;

static void
form_free (gpointer data)
{
  Form *form = data;
  form->data_free (form->data);
  g_free (form);
}

static void
on_done (Form *form)
{
  if (form->done (form->data))
    gtk_window_destroy (form->window);
}

static gboolean
on_done_key (GtkWidget *widget, GVariant *arguments, gpointer form)
{
  (void) widget, (void) arguments;
  on_done (form);
  return GDK_EVENT_STOP;
}

static gboolean
on_escape (GtkWidget *widget, GVariant *arguments, gpointer form)
{
  (void) widget, (void) arguments;
  gtk_window_destroy (((Form *) form)->window);
  return GDK_EVENT_STOP;
}

static void
add_keys (Form *form)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();
  const struct
  {
    guint keyval;
    GdkModifierType state;
    GtkShortcutFunc function;
  } shortcuts[] = { { GDK_KEY_Return, GDK_CONTROL_MASK, on_done_key },
                    { GDK_KEY_KP_Enter, GDK_CONTROL_MASK, on_done_key },
                    { GDK_KEY_Escape, 0, on_escape } };
  for (guint i = 0; i < G_N_ELEMENTS (shortcuts); i++)
    gtk_shortcut_controller_add_shortcut (
        GTK_SHORTCUT_CONTROLLER (keys),
        gtk_shortcut_new (gtk_keyval_trigger_new (shortcuts[i].keyval, shortcuts[i].state),
                          gtk_callback_action_new (shortcuts[i].function, form, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (form->window), keys);
}

/* Buttons at both ends of the title bar. */
static GtkWidget *
new_header (Form *form, const char *label)
{
  GtkWidget *header = gtk_header_bar_new ();
  GtkWidget *cancel = gtk_button_new_with_mnemonic (_ ("_Cancel"));
  GtkWidget *done = gtk_button_new_with_mnemonic (label);
  gtk_header_bar_set_show_title_buttons (GTK_HEADER_BAR (header), FALSE);
  gtk_header_bar_pack_start (GTK_HEADER_BAR (header), cancel);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (header), done);
  gtk_widget_add_css_class (done, "suggested-action");
  g_signal_connect_swapped (cancel, "clicked", G_CALLBACK (gtk_window_destroy), form->window);
  g_signal_connect_swapped (done, "clicked", G_CALLBACK (on_done), form);
  return header;
}

GtkWidget *
sq_form_heading (const char *text)
{
  GtkWidget *heading = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_widget_add_css_class (heading, "heading");
  return heading;
}

GtkWidget *
sq_form_new (GtkWindow *parent, const char *title, const char *label, GtkWidget *content,
             SqFormDone done, gpointer data, GDestroyNotify data_free)
{
  GtkWidget *window = gtk_window_new (), *scrolled = gtk_scrolled_window_new ();
  Form *form = g_new (Form, 1);
  *form = (Form){ GTK_WINDOW (window), done, data, data_free };
  gtk_window_set_title (GTK_WINDOW (window), title);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_modal (GTK_WINDOW (window), TRUE);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
  gtk_window_set_titlebar (GTK_WINDOW (window), new_header (form, label));
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), 560);
  gtk_scrolled_window_set_max_content_width (GTK_SCROLLED_WINDOW (scrolled), 1100);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), content);
  gtk_widget_add_css_class (content, "form");
  gtk_window_set_child (GTK_WINDOW (window), scrolled);
  add_keys (form);
  g_object_set_data_full (G_OBJECT (window), "sq-form", form, form_free);
  return window;
}
