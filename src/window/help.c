/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/help.h"

#include "window/dialogs.h"

static const char *
folder (void)
{
  const char *given = g_getenv ("SQUAB_HELPDIR");
  return given != NULL ? given : SQ_HELP_DIR;
}

/* What is asked for, while the desktop is being asked. */
typedef struct
{
  GtkWindow *parent;
  char *page;
} Asked;

static void
asked_free (Asked *asked)
{
  g_clear_object (&asked->parent);
  g_free (asked->page);
  g_free (asked);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Asked, asked_free)

static void
on_browser (GObject *parent, GAsyncResult *result, gpointer data)
{
  g_autoptr (Asked) asked = data;
  if (!gtk_show_uri_full_finish (GTK_WINDOW (parent), result, NULL))
    sq_dialog_no_help (asked->parent, folder ());
}

/* Takes @asked. */
static void
show_in_browser (Asked *asked)
{
  g_autofree char *name = g_strconcat (asked->page, ".html", NULL);
  g_autoptr (GFile) file = g_file_new_build_filename (folder (), name, NULL);
  g_autofree char *uri = g_file_get_uri (file);
  if (g_file_query_exists (file, NULL))
    {
      gtk_show_uri_full (asked->parent, uri, GDK_CURRENT_TIME, NULL, on_browser, asked);
      return;
    }
  sq_dialog_no_help (asked->parent, folder ());
  asked_free (asked);
}

static void
on_viewer (GObject *parent, GAsyncResult *result, gpointer data)
{
  if (gtk_show_uri_full_finish (GTK_WINDOW (parent), result, NULL))
    asked_free (data);
  else
    show_in_browser (data);
}

void
sq_help_show (GtkWindow *parent, const char *page)
{
  Asked *asked = g_new (Asked, 1);
  g_autofree char *uri = g_strconcat ("help:squab/", page, NULL);
  *asked = (Asked){ parent != NULL ? g_object_ref (parent) : NULL, g_strdup (page) };
  if (g_getenv ("SQUAB_HELPDIR") != NULL)
    show_in_browser (asked);
  else
    gtk_show_uri_full (parent, uri, GDK_CURRENT_TIME, NULL, on_viewer, asked);
}

static gboolean
on_f1 (GtkWidget *widget, GVariant *arguments, gpointer page)
{
  (void) arguments;
  sq_help_show (GTK_WINDOW (gtk_widget_get_root (widget)), page);
  return TRUE;
}

void
sq_help_on_f1 (GtkWidget *widget, const char *page)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();
  if (GTK_IS_WINDOW (widget))
    gtk_shortcut_controller_set_scope (GTK_SHORTCUT_CONTROLLER (keys), GTK_SHORTCUT_SCOPE_GLOBAL);
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_F1, 0),
                        gtk_callback_action_new (on_f1, (gpointer) page, NULL)));
  gtk_widget_add_controller (widget, keys);
}
