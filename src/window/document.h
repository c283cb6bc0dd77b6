/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The job a window works on: its history, the plan that follows from it, and the file it is kept
 * in. Every change goes through here; widgets read and listen. */
#pragma once

#include <gio/gio.h>

#include "plan/plan.h"

#define SQ_TYPE_DOCUMENT (sq_document_get_type ())
G_DECLARE_FINAL_TYPE (SqDocument, sq_document, SQ, DOCUMENT, GObject)

/* Emits "changed" (no parameters) when job and plan have. Properties, read only, with notify:
 *   job (pointer to const SqJob), title, place (words about its file), undo-words, redo-words
 *   (texts), can-undo, can-redo, modified, symmetric (booleans). */

/* @job as it came from @file (NULL: from none); counts as saved. */
SqDocument *sq_document_new (const SqJob *job, GFile *file);
/* The same, but with changes that are in no file yet. */
SqDocument *sq_document_new_changed (const SqJob *job, GFile *file);
/* Reads @file, what is not given following @defaults; NULL with @error as of sq_job_load(). */
SqDocument *sq_document_load (GFile *file, const SqDefaults *defaults, GError **error);

const SqJob *sq_document_get_job (SqDocument *document);
/* Of the job now. */
const SqPlan *sq_document_get_plan (SqDocument *document);
/* The cover of the cushion, or NULL; its place among the job's in *@index (may be NULL). */
const SqCover *sq_document_get_cover (SqDocument *document, SqId cushion, guint *index);
GFile *sq_document_get_file (SqDocument *document);
const char *sq_document_get_title (SqDocument *document);
const char *sq_document_get_place (SqDocument *document);

/* Whether outlines are edited on both sides of their axis at once. A switch of the window at work,
 * not of the job: no step of the history, and in no file. Off at first. */
gboolean sq_document_is_symmetric (SqDocument *document);
void sq_document_set_symmetric (SqDocument *document, gboolean is_symmetric);
gboolean sq_document_is_modified (SqDocument *document);

/* Whether the file is another than was read or written here last; one that is gone is not. */
gboolean sq_document_is_file_changed (SqDocument *document);

/* Writes the job to @file, which is its file from now on. The old file is whole in any case. */
gboolean sq_document_save (SqDocument *document, GFile *file, GError **error);

/* Makes @job the one now: one step of the history, in @words. A step with the same @key (may be
 * NULL) as the one before becomes one with it, unless sealed. */
void sq_document_edit (SqDocument *document, const SqJob *job, const char *words, const char *key);
void sq_document_seal (SqDocument *document);

/* A draft: shown and computed like any job, but no step yet. Kept, it is one; dropped, it never
 * was. An edit, undo or redo drops it. */
void sq_document_try (SqDocument *document, const SqJob *job);
void sq_document_keep (SqDocument *document, const char *words);
void sq_document_drop (SqDocument *document);

void sq_document_undo (SqDocument *document);
void sq_document_redo (SqDocument *document);
/* As sq_history_words(); going drops a draft. */
const char *sq_document_words (SqDocument *document, int by, gboolean *exists);
void sq_document_go (SqDocument *document, int by);
