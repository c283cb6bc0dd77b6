/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All dialogs, in one place: each tells its answer to a function once it is closed. */
#pragma once

#include <gtk/gtk.h>

/* @file is borrowed; NULL: the user thought better of it. */
typedef void (*SqFileChosen) (GtkWindow *parent, GFile *file, gpointer data);

void sq_dialog_open (GtkWindow *parent, SqFileChosen chosen, gpointer data);
/* @file: where it is now, or NULL with @name for a new one. */
void sq_dialog_save (GtkWindow *parent, GFile *file, const char *name, SqFileChosen chosen,
                     gpointer data);

/* The same for what is no job: of files of @kind that end in @suffix. */
void sq_dialog_export (GtkWindow *parent, const char *title, const char *kind, const char *suffix,
                       const char *name, SqFileChosen chosen, gpointer data);

/* The same for a folder that files are to be saved into. */
void sq_dialog_folder (GtkWindow *parent, const char *title, SqFileChosen chosen, gpointer data);

typedef enum
{
  SQ_ANSWER_CANCEL,
  SQ_ANSWER_DISCARD,
  SQ_ANSWER_SAVE,
} SqAnswer;
typedef void (*SqAnswered) (GtkWindow *parent, SqAnswer answer, gpointer data);

/* Asks what is to become of the changes of the job @title. */
void sq_dialog_unsaved (GtkWindow *parent, const char *title, SqAnswered answered, gpointer data);

/* Tells that somebody else has changed @file since it was opened: SAVE saves over it, DISCARD asks
 * for another name. */
void sq_dialog_overwrite (GtkWindow *parent, GFile *file, SqAnswered answered, gpointer data);

/* Tells of a job that was being changed when Squab was stopped: SAVE opens what was kept, DISCARD
 * throws it away, CANCEL leaves it for later. */
void sq_dialog_leftover (GtkWindow *parent, const char *title, const char *time,
                         SqAnswered answered, gpointer data);

/* Asks whether so many pages are meant: SAVE, which @all is the label of, or CANCEL. */
void sq_dialog_many_pages (GtkWindow *parent, guint n_pages, const char *all, SqAnswered answered,
                           gpointer data);

/* Asks whether @n of @n_files that are in @folder already are to be replaced: SAVE or CANCEL. */
void sq_dialog_replace (GtkWindow *parent, guint n, guint n_files, const char *folder,
                        SqAnswered answered, gpointer data);

/* Says that @file couldn't be opened (or saved), and why. */
void sq_dialog_failed (GtkWindow *parent, GFile *file, gboolean saving, const GError *error);

/* Says that nothing here shows the help pages, which lie in @folder. */
void sq_dialog_no_help (GtkWindow *parent, const char *folder);

void sq_dialog_about (GtkWindow *parent);
