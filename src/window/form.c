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
add_key (GtkEventController *keys, guint keyval, GdkModifierType state, GtkShortcutFunc function,
         Form *form)
{
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (keyval, state),
                        gtk_callback_action_new (function, form, NULL)));
}

static void
add_keys (Form *form)
{
  GtkEventController *first = gtk_shortcut_controller_new ();
  GtkEventController *last = gtk_shortcut_controller_new ();
  /* Before notes of several lines take it for a new line; but what is typed is put back first. */
  gtk_event_controller_set_propagation_phase (first, GTK_PHASE_CAPTURE);
  add_key (first, GDK_KEY_Return, GDK_CONTROL_MASK, on_done_key, form);
  add_key (first, GDK_KEY_KP_Enter, GDK_CONTROL_MASK, on_done_key, form);
  add_key (last, GDK_KEY_Escape, 0, on_escape, form);
  gtk_widget_add_controller (GTK_WIDGET (form->window), first);
  gtk_widget_add_controller (GTK_WIDGET (form->window), last);
}

/* Not set as the mnemonic's widget, which GTK finds by itself: screen readers would hear it twice. */
static GtkWidget *
new_label (GtkWidget *widget, const char *text)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  gtk_label_get_text (GTK_LABEL (label)), -1);
  return label;
}

GtkWidget *
sq_form_button (const char *label)
{
  GtkWidget *button = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (button), new_label (button, label));
  gtk_widget_add_css_class (button, "text-button");
  return button;
}

GtkWidget *
sq_form_check (const char *label)
{
  GtkWidget *check = gtk_check_button_new ();
  gtk_check_button_set_child (GTK_CHECK_BUTTON (check), new_label (check, label));
  return check;
}

/* Buttons at both ends of the title bar. */
static GtkWidget *
new_header (Form *form, const char *label)
{
  GtkWidget *header = gtk_header_bar_new ();
  GtkWidget *cancel = sq_form_button (_ ("_Cancel"));
  GtkWidget *done = sq_form_button (label);
  gtk_header_bar_set_show_title_buttons (GTK_HEADER_BAR (header), FALSE);
  gtk_header_bar_pack_start (GTK_HEADER_BAR (header), cancel);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (header), done);
  gtk_widget_add_css_class (done, "suggested-action");
  gtk_window_set_default_widget (form->window, done);
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
