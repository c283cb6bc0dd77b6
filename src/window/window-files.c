/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Opening, saving, and what happens to changes when a window closes. */
#include "window/window-private.h"

#include "exchange/defaults-file.h"
#include "exchange/job-file.h"
#include "window/application.h"
#include "window/dialogs.h"
#include "window/recovery.h"
#include "window/settings.h"

#include <glib/gi18n.h>

/* --- opening ------------------------------------------------------------------------------- */

static SqWindow *
window_for_new_job (SqWindow *window)
{
  SqWindow *other;
  if (window->document == NULL)
    return window;
  other = sq_window_new (gtk_window_get_application (GTK_WINDOW (window)));
  gtk_window_present (GTK_WINDOW (other));
  return other;
}

/* The window in which @file is open, or NULL. */
static GtkWindow *
window_with (SqWindow *window, GFile *file)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (window));
  for (GList *each = gtk_application_get_windows (application); each != NULL; each = each->next)
    {
      SqDocument *document = SQ_IS_WINDOW (each->data) ? SQ_WINDOW (each->data)->document : NULL;
      GFile *other = document != NULL ? sq_document_get_file (document) : NULL;
      if (other != NULL && g_file_equal (file, other))
        return each->data;
    }
  return NULL;
}

void
sq_window_open (SqWindow *window, GFile *file)
{
  g_autoptr (GError) error = NULL;
  SqDefaults defaults;
  g_autoptr (SqDocument) document = NULL;
  GtkWindow *there;
  g_return_if_fail (SQ_IS_WINDOW (window) && G_IS_FILE (file));
  there = window_with (window, file);
  if (there != NULL)
    {
      gtk_window_present (there);
      return;
    }
  sq_defaults_builtin (&defaults);
  document = sq_document_load (file, &defaults, &error);
  if (document != NULL)
    {
      sq_settings_add_recent (file);
      sq_window_set_document (window_for_new_job (window), document);
    }
  else
    sq_dialog_failed (GTK_WINDOW (window), file, FALSE, error);
}

void
sq_window_start (SqWindow *window, const SqJob *job)
{
  g_autoptr (SqDocument) document = sq_document_new (job, NULL);
  sq_window_set_document (window, document);
}

/* --- what a stopped Squab left --------------------------------------------------------------- */

static void offer_next (SqWindow *window, GPtrArray *leftovers);

static void
on_leftover_answer (GtkWindow *parent, SqAnswer answer, gpointer data)
{
  GPtrArray *leftovers = data;
  SqLeftover *leftover = g_ptr_array_index (leftovers, leftovers->len - 1);
  g_autoptr (GError) error = NULL;
  if (answer == SQ_ANSWER_SAVE)
    {
      g_autoptr (SqDocument) document = sq_leftover_open (leftover, &error);
      if (document != NULL)
        sq_window_set_document (window_for_new_job (SQ_WINDOW (parent)), document);
      else
        {
          g_autoptr (GFile) file = g_file_new_for_path (sq_leftover_title (leftover));
          sq_dialog_failed (parent, file, FALSE, error);
        }
    }
  else if (answer == SQ_ANSWER_DISCARD)
    sq_leftover_drop (leftover);
  g_ptr_array_remove_index (leftovers, leftovers->len - 1);
  offer_next (SQ_WINDOW (parent), leftovers);
}

/* Asks about the last of @leftovers, which it takes. */
static void
offer_next (SqWindow *window, GPtrArray *leftovers)
{
  if (leftovers->len == 0)
    {
      g_ptr_array_unref (leftovers);
      return;
    }
  SqLeftover *leftover = g_ptr_array_index (leftovers, leftovers->len - 1);
  g_autofree char *time = sq_leftover_time (leftover);
  sq_dialog_leftover (GTK_WINDOW (window), sq_leftover_title (leftover), time, on_leftover_answer,
                      leftovers);
}

void
sq_window_offer_leftovers (SqWindow *window)
{
  g_return_if_fail (SQ_IS_WINDOW (window));
  offer_next (window, sq_recovery_find ());
}

void
sq_window_open_sample (SqWindow *window, GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_file_get_path (file);
  SqDefaults defaults;
  g_autoptr (SqJob) job = NULL;
  sq_defaults_builtin (&defaults);
  job = sq_job_load (path, &defaults, &error);
  if (job != NULL)
    sq_window_start (window, job);
  else
    sq_dialog_failed (GTK_WINDOW (window), file, FALSE, error);
}

static void
on_open_chosen (GtkWindow *parent, GFile *file, gpointer data)
{
  (void) data;
  if (file != NULL)
    sq_window_open (SQ_WINDOW (parent), file);
}

static void
on_open (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  (void) action, (void) parameter;
  sq_dialog_open (window, on_open_chosen, NULL);
}

static void
on_open_recent (GSimpleAction *action, GVariant *uri, gpointer window)
{
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (uri, NULL));
  (void) action;
  sq_window_open (window, file);
}

static gboolean
on_drop (GtkDropTarget *target, const GValue *value, double x, double y, SqWindow *window)
{
  const GSList *files = gdk_file_list_get_files (g_value_get_boxed (value));
  (void) target, (void) x, (void) y;
  for (const GSList *file = files; file != NULL; file = file->next)
    sq_window_open (window, file->data);
  return files != NULL;
}

/* --- saving -------------------------------------------------------------------------------- */

/* What comes after saving. */
typedef enum
{
  THEN_STAY,
  THEN_CLOSE,
} Then;

static void
close_now (SqWindow *window)
{
  window->is_closing = TRUE;
  gtk_window_close (GTK_WINDOW (window));
}

/* The window stays, and with it the program, should that be closing window after window. */
static void
stay (SqWindow *window)
{
  window->is_asking = FALSE;
  sq_application_stop_quitting (SQ_APPLICATION (gtk_window_get_application (GTK_WINDOW (window))));
}

static void
save_to (SqWindow *window, GFile *file, Then then)
{
  g_autoptr (GError) error = NULL;
  if (!sq_document_save (window->document, file, &error))
    {
      stay (window);
      sq_dialog_failed (GTK_WINDOW (window), file, TRUE, error);
    }
  else
    {
      sq_settings_add_recent (file);
      if (then == THEN_CLOSE)
        close_now (window);
    }
}

static void
on_save_chosen (GtkWindow *parent, GFile *file, gpointer then)
{
  if (file != NULL && SQ_WINDOW (parent)->document != NULL)
    save_to (SQ_WINDOW (parent), file, (Then) GPOINTER_TO_INT (then));
  else
    stay (SQ_WINDOW (parent));
}

static void
save_as (SqWindow *window, Then then)
{
  sq_dialog_save (GTK_WINDOW (window), sq_document_get_file (window->document),
                  sq_document_get_title (window->document), on_save_chosen, GINT_TO_POINTER (then));
}

static void
on_overwrite_answer (GtkWindow *parent, SqAnswer answer, gpointer then)
{
  SqWindow *window = SQ_WINDOW (parent);
  if (window->document == NULL || answer == SQ_ANSWER_CANCEL)
    stay (window);
  else if (answer == SQ_ANSWER_SAVE)
    save_to (window, sq_document_get_file (window->document), (Then) GPOINTER_TO_INT (then));
  else
    save_as (window, (Then) GPOINTER_TO_INT (then));
}

static void
save (SqWindow *window, Then then)
{
  GFile *file = sq_document_get_file (window->document);
  if (file == NULL)
    save_as (window, then);
  else if (sq_document_is_file_changed (window->document))
    sq_dialog_overwrite (GTK_WINDOW (window), file, on_overwrite_answer, GINT_TO_POINTER (then));
  else
    save_to (window, file, then);
}

static void
on_save (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  (void) action, (void) parameter;
  save (window, THEN_STAY);
}

static void
on_save_as (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  (void) action, (void) parameter;
  save_as (window, THEN_STAY);
}

/* --- closing ------------------------------------------------------------------------------- */

static void
on_answer (GtkWindow *parent, SqAnswer answer, gpointer data)
{
  SqWindow *window = SQ_WINDOW (parent);
  (void) data;
  if (answer == SQ_ANSWER_SAVE && window->document != NULL)
    save (window, THEN_CLOSE);
  else if (answer == SQ_ANSWER_DISCARD)
    close_now (window);
  else
    stay (window);
}

void
sq_window_hold_session (SqWindow *window, gboolean is_modified)
{
  GtkApplication *application = GTK_APPLICATION (g_application_get_default ());
  if (is_modified == (window->held != 0))
    return;
  if (is_modified)
    window->held = gtk_application_inhibit (application, GTK_WINDOW (window),
                                            GTK_APPLICATION_INHIBIT_LOGOUT,
                                            _ ("A job has changes that are not saved"));
  else
    {
      gtk_application_uninhibit (application, window->held);
      window->held = 0;
    }
}

gboolean
sq_window_may_close (SqWindow *window)
{
  if (window->is_closing || window->document == NULL || !sq_document_is_modified (window->document))
    return TRUE;
  if (window->is_asking)
    return FALSE;
  window->is_asking = TRUE;
  gtk_window_present (GTK_WINDOW (window));
  sq_dialog_unsaved (GTK_WINDOW (window), sq_document_get_title (window->document), on_answer,
                     NULL);
  return FALSE;
}

void
sq_window_add_file_actions (SqWindow *window)
{
  const GActionEntry entries[] = {
    { .name = "open", .activate = on_open },
    { .name = "open-recent", .activate = on_open_recent, .parameter_type = "s" },
    { .name = "save", .activate = on_save },
    { .name = "save-as", .activate = on_save_as }
  };
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);
  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  g_signal_connect (target, "drop", G_CALLBACK (on_drop), window);
  gtk_widget_add_controller (GTK_WIDGET (window), GTK_EVENT_CONTROLLER (target));
}
