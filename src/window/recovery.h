/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Nothing is lost: what changes is kept in a folder of its own until it is saved or given up, and
 * what a stopped program left there is offered. The folder is squab/recovery below the user's
 * state; each job has there <name>.squab, <name>.ini (its file, title and time) and <name>.lock,
 * which is held as long as its program lives. */
#pragma once

#include "window/document.h"

/* Keeps @document's changes from now on, half a second after the last one, on another thread; stops
 * and takes everything away when the document goes. @told (may be NULL) hears, once, why nothing
 * can be kept, and of no error once it can again. */
typedef void (*SqKeepTold) (SqDocument *document, const GError *error, gpointer data);
void sq_recovery_keep (SqDocument *document, SqKeepTold told, gpointer data);

/* Writes what of @document is not saved at once, and leaves it there when the document goes: the
 * program is ended by something else than its user. */
void sq_recovery_leave (SqDocument *document);

/* Something left behind by a program that is no more. */
typedef struct _SqLeftover SqLeftover;

/* All of them; new array that owns them. They are ours until freed: no other Squab offers them. */
GPtrArray *sq_recovery_find (void);
void sq_leftover_free (SqLeftover *leftover);

/* What it was called. */
const char *sq_leftover_title (const SqLeftover *leftover);
/* When it was kept last, in the user's time; new text. */
char *sq_leftover_time (const SqLeftover *leftover);
/* Reads it: a document with changes to save, that goes to the file it came from (or none) and is
 * kept on where it was. NULL with @error as of sq_job_load(); the leftover stays then. */
SqDocument *sq_leftover_open (SqLeftover *leftover, GError **error);
/* Takes it away; not to be called once it was opened. */
void sq_leftover_drop (SqLeftover *leftover);
