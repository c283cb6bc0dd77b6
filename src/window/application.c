/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/application.h"

#ifdef SQ_BENCH
#include "window/bench-drag.h"
#endif
#include "window/dialogs.h"
#include "window/help.h"
#include "window/look.h"
#include "window/recovery.h"
#include "window/resources.h"
#include "window/settings.h"
#include "window/window.h"

struct _SqApplication
{
  GtkApplication parent;
  gboolean has_offered; /* what a stopped Squab left */
  gboolean is_quitting; /* window after window */
};

G_DEFINE_TYPE (SqApplication, sq_application, GTK_TYPE_APPLICATION)

static void
on_new_window (GSimpleAction *action, GVariant *parameter, gpointer application)
{
  (void) action, (void) parameter;
  gtk_window_present (GTK_WINDOW (sq_window_new (application)));
}

static void
on_about (GSimpleAction *action, GVariant *parameter, gpointer application)
{
  (void) action, (void) parameter;
  sq_dialog_about (gtk_application_get_active_window (application));
}

static void
on_help (GSimpleAction *action, GVariant *parameter, gpointer application)
{
  (void) action, (void) parameter;
  sq_help_show (gtk_application_get_active_window (application), "index");
}

static gboolean
close_next (gpointer data)
{
  SqApplication *application = data;
  GList *windows = gtk_application_get_windows (GTK_APPLICATION (application));
  while (windows != NULL && !SQ_IS_WINDOW (windows->data))
    windows = windows->next;
  if (application->is_quitting && windows != NULL)
    gtk_window_close (windows->data);
  return G_SOURCE_REMOVE;
}

/* Closes window after window: each may ask about its changes, and stay. */
static void
on_quit (GSimpleAction *action, GVariant *parameter, gpointer application)
{
  (void) action, (void) parameter;
  SQ_APPLICATION (application)->is_quitting = TRUE;
  close_next (application);
}

void
sq_application_stop_quitting (SqApplication *application)
{
  g_return_if_fail (SQ_IS_APPLICATION (application));
  application->is_quitting = FALSE;
}

/* The next one once this has gone wholly. */
static void
sq_application_window_removed (GtkApplication *application, GtkWindow *window)
{
  GTK_APPLICATION_CLASS (sq_application_parent_class)->window_removed (application, window);
  if (SQ_IS_WINDOW (window) && SQ_APPLICATION (application)->is_quitting)
    g_idle_add (close_next, application);
}

static void
add_keys (GtkApplication *application)
{
  static const struct
  {
    const char *action, *keys[4];
  } accels[] = {
    { "app.new-window", { "<Control>n" } },
    { "app.help", { "F1" } },
    { "app.quit", { "<Control>q" } },
    { "window.close", { "<Control>w" } },
    { "win.open", { "<Control>o" } },
    { "win.save", { "<Control>s" } },
    { "win.save-as", { "<Control><Shift>s" } },
    { "win.undo", { "<Control>z" } },
    { "win.redo", { "<Control><Shift>z", "<Control>y" } },
    { "win.steps", { "<Control>h" } },
    { "win.job", { "<Control>j" } },
    { "win.print", { "<Control>p" } },
    { "win.ways", { "<Control>b" } },
    { "win.zoom-in", { "<Control>plus", "<Control>equal", "<Control>KP_Add" } },
    { "win.zoom-out", { "<Control>minus", "<Control>KP_Subtract" } },
    { "win.cushion-add", { "<Control><Shift>n" } },
    { "win.cushion-add-taped", { "<Control>t" } },
    { "win.cushion-draw", { "<Control><Shift>d" } },
    { "win.cushion-duplicate", { "<Control>d" } },
    { "win.symmetric", { "<Control><Shift>m" } },
    { "win.cushion-mirror", { "<Control>m" } },
    { "win.cushion-hole", { "<Shift><Control>h" } },
    { "win.cushion-up", { "<Alt>Up" } },
    { "win.cushion-down", { "<Alt>Down" } },
    { "win.cushion-rename", { "F2" } },
    { "win.fit", { "<Control>0", "<Control>KP_0" } },
    { "win.problems", { "F8" } },
    { "win.roll", { "F7" } },
    { "win.sides", { "F9" } },
    { "win.fullscreen", { "F11" } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (accels); i++)
    gtk_application_set_accels_for_action (application, accels[i].action, accels[i].keys);
}

static void
sq_application_startup (GApplication *application)
{
  const GActionEntry entries[] = { { .name = "new-window", .activate = on_new_window },
                                   { .name = "help", .activate = on_help },
                                   { .name = "about", .activate = on_about },
                                   { .name = "quit", .activate = on_quit } };
  sq_resources_register_resource ();
  G_APPLICATION_CLASS (sq_application_parent_class)->startup (application);
  g_action_map_add_action_entries (G_ACTION_MAP (application), entries, G_N_ELEMENTS (entries),
                                   application);
  add_keys (GTK_APPLICATION (application));
  sq_settings_add_colours (G_ACTION_MAP (application));
  sq_look_load (gdk_display_get_default ());
}

/* Once, in the first window. */
static void
offer_leftovers (GApplication *application, SqWindow *window)
{
  SqApplication *self = SQ_APPLICATION (application);
  if (!self->has_offered)
    sq_window_offer_leftovers (window);
  self->has_offered = TRUE;
}

static void
sq_application_activate (GApplication *application)
{
  SqWindow *window = sq_window_new (GTK_APPLICATION (application));
  gtk_window_present (GTK_WINDOW (window));
  offer_leftovers (application, window);
}

static void
sq_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (application));
  SqWindow *window = SQ_IS_WINDOW (active) ? SQ_WINDOW (active)
                                           : sq_window_new (GTK_APPLICATION (application));
  (void) hint;
  gtk_window_present (GTK_WINDOW (window));
  for (int i = 0; i < n_files; i++)
    sq_window_open (window, files[i]);
  offer_leftovers (application, window);
#ifdef SQ_BENCH
  sq_bench_drag (window);
#endif
}

/* Windows are still there only where it is ended from outside, as by a session that ends. */
static void
sq_application_shutdown (GApplication *application)
{
  GList *windows = gtk_application_get_windows (GTK_APPLICATION (application));
  for (GList *each = windows; each != NULL; each = each->next)
    {
      SqDocument *document = SQ_IS_WINDOW (each->data) ? sq_window_get_document (each->data) : NULL;
      if (document != NULL)
        sq_recovery_leave (document);
    }
  G_APPLICATION_CLASS (sq_application_parent_class)->shutdown (application);
}

static void
sq_application_class_init (SqApplicationClass *class)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (class);
  application_class->startup = sq_application_startup;
  application_class->activate = sq_application_activate;
  application_class->open = sq_application_open;
  application_class->shutdown = sq_application_shutdown;
  GTK_APPLICATION_CLASS (class)->window_removed = sq_application_window_removed;
}

static void
sq_application_init (SqApplication *application)
{
  (void) application;
}

SqApplication *
sq_application_new (void)
{
  return g_object_new (SQ_TYPE_APPLICATION, "application-id", "org.squab.Squab", "flags",
                       G_APPLICATION_HANDLES_OPEN, "resource-base-path", "/org/squab/Squab",
                       "register-session", TRUE, NULL);
}
