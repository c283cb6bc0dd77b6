/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dialogs.h"

#include "base/error.h"
#include "window/figures.h"
#include "window/settings.h"

#include <glib/gi18n.h>

#define JOB_SUFFIX ".squab"

/* GtkFileDialog and GtkAlertDialog are newer than GTK 4.8. */
G_GNUC_BEGIN_IGNORE_DEPRECATIONS

typedef struct
{
  GtkWindow *parent;
  SqFileChosen chosen;
  SqAnswered answered;
  gpointer data;
} Asked;

static Asked *
asked_new (GtkWindow *parent, SqFileChosen chosen, SqAnswered answered, gpointer data)
{
  Asked *asked = g_new (Asked, 1);
  *asked = (Asked){ g_object_ref (parent), chosen, answered, data };
  return asked;
}

static void
asked_free (gpointer data, GClosure *closure)
{
  Asked *asked = data;
  (void) closure;
  g_object_unref (asked->parent);
  g_free (asked);
}

/* --- files --------------------------------------------------------------------------------- */

/* The folder chosen from last is where the next dialog begins. */
static void
remember_folder (GFile *file)
{
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autofree char *uri = folder != NULL ? g_file_get_uri (folder) : NULL;
  g_autoptr (GKeyFile) settings = sq_settings_read ();
  if (uri == NULL)
    return;
  g_key_file_set_string (settings, SQ_SETTINGS_FILES, "folder", uri);
  sq_settings_write (settings);
}

static void
begin_in_folder (GtkFileChooser *dialog)
{
  g_autoptr (GKeyFile) settings = sq_settings_read ();
  g_autofree char *uri = g_key_file_get_string (settings, SQ_SETTINGS_FILES, "folder", NULL);
  g_autoptr (GFile) folder = uri != NULL ? g_file_new_for_uri (uri) : NULL;
  if (folder != NULL && g_file_query_exists (folder, NULL))
    gtk_file_chooser_set_current_folder (dialog, folder, NULL);
}

static void
on_file (GtkNativeDialog *dialog, int response, Asked *asked)
{
  g_autoptr (GFile) file = NULL;
  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  if (file != NULL)
    remember_folder (file);
  gtk_native_dialog_hide (dialog);
  asked->chosen (asked->parent, file, asked->data);
  g_object_unref (dialog);
}

/* For files of @kind that end in @suffix. */
static GtkFileChooser *
new_chooser (GtkWindow *parent, const char *title, const char *kind, const char *suffix,
             GtkFileChooserAction action, const char *accept)
{
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (title, parent, action, accept,
                                                              _ ("_Cancel"));
  g_autoptr (GtkFileFilter) own = gtk_file_filter_new ();
  g_autoptr (GtkFileFilter) all = gtk_file_filter_new ();
  g_autofree char *pattern = g_strconcat ("*", suffix, NULL);
  gtk_file_filter_set_name (own, kind);
  gtk_file_filter_add_pattern (own, pattern);
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), own);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), all);
  begin_in_folder (GTK_FILE_CHOOSER (dialog));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  return GTK_FILE_CHOOSER (dialog);
}

static void
ask_file (GtkFileChooser *dialog, GtkWindow *parent, SqFileChosen chosen, gpointer data)
{
  g_signal_connect_data (dialog, "response", G_CALLBACK (on_file),
                         asked_new (parent, chosen, NULL, data), asked_free, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

void
sq_dialog_open (GtkWindow *parent, SqFileChosen chosen, gpointer data)
{
  ask_file (new_chooser (parent, _ ("Open a job"), _ ("Squab jobs"), JOB_SUFFIX,
                         GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open")),
            parent, chosen, data);
}

void
sq_dialog_save (GtkWindow *parent, GFile *file, const char *name, SqFileChosen chosen,
                gpointer data)
{
  GtkFileChooser *dialog = new_chooser (parent, _ ("Save the job"), _ ("Squab jobs"), JOB_SUFFIX,
                                        GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"));
  g_autofree char *with_suffix = g_strconcat (name, JOB_SUFFIX, NULL);
  if (file != NULL)
    gtk_file_chooser_set_file (dialog, file, NULL);
  else
    gtk_file_chooser_set_current_name (dialog, with_suffix);
  ask_file (dialog, parent, chosen, data);
}

void
sq_dialog_export (GtkWindow *parent, const char *title, const char *kind, const char *suffix,
                  const char *name, SqFileChosen chosen, gpointer data)
{
  GtkFileChooser *dialog = new_chooser (parent, title, kind, suffix, GTK_FILE_CHOOSER_ACTION_SAVE,
                                        _ ("_Save"));
  gtk_file_chooser_set_current_name (dialog, name);
  ask_file (dialog, parent, chosen, data);
}

void
sq_dialog_folder (GtkWindow *parent, const char *title, SqFileChosen chosen, gpointer data)
{
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (
      title, parent, GTK_FILE_CHOOSER_ACTION_SELECT_FOLDER, _ ("_Save"), _ ("_Cancel"));
  begin_in_folder (GTK_FILE_CHOOSER (dialog));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  ask_file (GTK_FILE_CHOOSER (dialog), parent, chosen, data);
}

/* --- questions ------------------------------------------------------------------------------ */

static void
on_answer (GtkDialog *dialog, int response, Asked *asked)
{
  SqAnswer answer = response == SQ_ANSWER_SAVE || response == SQ_ANSWER_DISCARD
                        ? (SqAnswer) response
                        : SQ_ANSWER_CANCEL;
  g_autoptr (GtkWindow) parent = g_object_ref (asked->parent);
  SqAnswered answered = asked->answered;
  gpointer data = asked->data;
  gtk_window_destroy (GTK_WINDOW (dialog));
  answered (parent, answer, data);
}

/* Asks with three ways to answer, or two where @discard is NULL; the last is what Enter does. Takes
 * @question, gives the button that discards. */
static GtkWidget *
ask (GtkWindow *parent, char *question, const char *more, const char *discard, const char *cancel,
     const char *save, SqAnswered answered, gpointer data)
{
  GtkWidget *dialog = gtk_message_dialog_new (
      parent, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT, GTK_MESSAGE_QUESTION,
      GTK_BUTTONS_NONE, "%s", question);
  GtkWidget *button = discard != NULL
                          ? gtk_dialog_add_button (GTK_DIALOG (dialog), discard, SQ_ANSWER_DISCARD)
                          : NULL;
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s", more);
  gtk_dialog_add_button (GTK_DIALOG (dialog), cancel, SQ_ANSWER_CANCEL);
  gtk_dialog_add_button (GTK_DIALOG (dialog), save, SQ_ANSWER_SAVE);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), SQ_ANSWER_SAVE);
  g_signal_connect_data (dialog, "response", G_CALLBACK (on_answer),
                         asked_new (parent, NULL, answered, data), asked_free, 0);
  gtk_window_present (GTK_WINDOW (dialog));
  g_free (question);
  return button;
}

void
sq_dialog_unsaved (GtkWindow *parent, const char *title, SqAnswered answered, gpointer data)
{
  GtkWidget *discard = ask (parent, g_strdup_printf (_ ("Save the changes to “%s”?"), title),
                            _ ("Without saving they are lost."), _ ("Close _without saving"),
                            _ ("_Cancel"), _ ("_Save"), answered, data);
  gtk_widget_add_css_class (discard, "destructive-action");
}

void
sq_dialog_overwrite (GtkWindow *parent, GFile *file, SqAnswered answered, gpointer data)
{
  g_autofree char *path = g_file_get_basename (file);
  g_autofree char *name = g_filename_display_name (path);
  ask (parent, g_strdup_printf (_ ("“%s” was changed by somebody else"), name),
       _ ("Since it was opened here, another program has written it. Save over it, or under "
          "another name."),
       _ ("Save _as…"), _ ("_Cancel"), _ ("_Save over it"), answered, data);
}

void
sq_dialog_leftover (GtkWindow *parent, const char *title, const char *time, SqAnswered answered,
                    gpointer data)
{
  /* Translators: %s is a date and a time. */
  g_autofree char *more = g_strdup_printf (
      _ ("Its changes were kept, the last time %s. Open them to go on, and save them."), time);
  ask (parent, g_strdup_printf (_ ("Squab was stopped while “%s” was being changed"), title), more,
       _ ("_Throw them away"), _ ("_Later"), _ ("_Open them"), answered, data);
}

void
sq_dialog_many_pages (GtkWindow *parent, guint n_pages, const char *all, SqAnswered answered,
                      gpointer data)
{
  g_autofree char *n = sq_figures_count (n_pages);
  /* Translators: a number above 10,000. */
  ask (parent, g_strdup_printf (_ ("That makes %s pages"), n),
       _ ("Larger paper makes fewer of them, and so does naming the pieces that are wanted."), NULL,
       _ ("_Cancel"), all, answered, data);
}

void
sq_dialog_replace (GtkWindow *parent, guint n, guint n_files, const char *folder,
                   SqAnswered answered, gpointer data)
{
  g_autofree char *shown = g_filename_display_basename (folder);
  /* Translators: how many are there, of how many that are to be saved. */
  g_autofree char *more = g_strdup_printf (
      ngettext ("%u of %u file would be replaced.", "%u of %u files would be replaced.", n_files),
      n, n_files);
  /* Translators: a folder's name. */
  ask (parent, g_strdup_printf (_ ("Files of these names are in “%s” already"), shown), more, NULL,
       _ ("_Cancel"), _ ("_Replace them"), answered, data);
}

/* What the maker can do about it. */
static const char *
advice (const GError *error)
{
  if (error->domain != SQ_ERROR)
    return "";
  switch (error->code)
    {
    case SQ_ERROR_SYNTAX:
      return _ ("It is not a Squab job, or it was damaged. Look for an older copy of it.");
    case SQ_ERROR_VALUE:
      return _ ("Something in it can’t be right. Correct the file, or look for an older copy.");
    case SQ_ERROR_NEWER:
      return _ ("It was saved by a newer Squab. Open it with that one.");
    case SQ_ERROR_READ:
      return _ ("See whether it is still there and may be read.");
    case SQ_ERROR_WRITE:
      return _ ("The file is as it was before. Save under another name, or in another folder.");
    default:
      return "";
    }
}

void
sq_dialog_failed (GtkWindow *parent, GFile *file, gboolean saving, const GError *error)
{
  g_autofree char *path = g_file_get_basename (file);
  g_autofree char *name = g_filename_display_name (path);
  GtkWidget *dialog = gtk_message_dialog_new (
      parent, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT, GTK_MESSAGE_ERROR,
      GTK_BUTTONS_CLOSE, saving ? _ ("“%s” could not be saved") : _ ("“%s” could not be opened"),
      name);
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s\n\n%s", advice (error),
                                            error->message);
  g_signal_connect (dialog, "response", G_CALLBACK (gtk_window_destroy), NULL);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
sq_dialog_no_help (GtkWindow *parent, const char *folder)
{
  g_autofree char *shown = g_filename_display_name (folder);
  GtkWidget *dialog = gtk_message_dialog_new (
      parent, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT, GTK_MESSAGE_INFO,
      GTK_BUTTONS_CLOSE, "%s", _ ("Nothing here can show the help"));
  gtk_message_dialog_format_secondary_text (
      GTK_MESSAGE_DIALOG (dialog), _ ("Its pages are for a web browser, and lie in %s."), shown);
  g_signal_connect (dialog, "response", G_CALLBACK (gtk_window_destroy), NULL);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
sq_dialog_about (GtkWindow *parent)
{
  gtk_show_about_dialog (parent, "program-name", "Squab", "version", SQ_VERSION, "comments",
                         _ ("Cushion covers from the measures of the seat"), "license-type",
                         GTK_LICENSE_GPL_3_0, "logo-icon-name", "org.squab.Squab", NULL);
}

G_GNUC_END_IGNORE_DEPRECATIONS
