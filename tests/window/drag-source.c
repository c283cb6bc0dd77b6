/* SPDX-License-Identifier: GPL-3.0-or-later */
/* drag-source FILE: a small window that is nothing but FILE to be dragged, as from a file manager. */
#include <gtk/gtk.h>

static GdkContentProvider *
on_prepare (GtkDragSource *source, double x, double y, gpointer path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  GSList files = { file, NULL };
  GdkFileList *list = gdk_file_list_new_from_list (&files);
  GdkContentProvider *provider = gdk_content_provider_new_typed (GDK_TYPE_FILE_LIST, list);
  (void) source, (void) x, (void) y;
  g_boxed_free (GDK_TYPE_FILE_LIST, list);
  return provider;
}

int
main (int n_arguments, char **arguments)
{
  if (n_arguments != 2)
    return 1;
  gtk_init ();
  GtkWidget *window = gtk_window_new ();
  GtkWidget *label = gtk_label_new ("A file");
  GtkDragSource *source = gtk_drag_source_new ();
  g_signal_connect (source, "prepare", G_CALLBACK (on_prepare), arguments[1]);
  gtk_widget_add_controller (label, GTK_EVENT_CONTROLLER (source));
  gtk_window_set_title (GTK_WINDOW (window), "Drag source");
  gtk_window_set_default_size (GTK_WINDOW (window), 120, 80);
  gtk_window_set_child (GTK_WINDOW (window), label);
  gtk_window_present (GTK_WINDOW (window));
  while (TRUE)
    g_main_context_iteration (NULL, TRUE);
}
