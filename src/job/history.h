/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Undo without limit: a list of jobs, each with the words for the step that led to it. */
#pragma once

#include "job/job.h"

typedef struct _SqHistory SqHistory;

/* Starts at @job, which counts as saved. */
SqHistory *sq_history_new (const SqJob *job);
void sq_history_free (SqHistory *history);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqHistory, sq_history_free)

/* The job now; borrowed. */
const SqJob *sq_history_now (const SqHistory *history);

/* Makes @job the one now and drops what could be redone. A push with the same @key (may be NULL)
 * as the one before replaces it, until sealed: a drag is one step. Pushing the job that is already
 * now does nothing. @words (as shown in the undo menu) is copied. */
void sq_history_push (SqHistory *history, const SqJob *job, const char *words, const char *key);
/* The next push starts a step of its own. */
void sq_history_seal (SqHistory *history);

/* What undo or redo would take back or do again, borrowed; NULL: nothing. */
const char *sq_history_undo_words (const SqHistory *history);
const char *sq_history_redo_words (const SqHistory *history);
/* FALSE if there is nothing. Undoing gives back the very same job. */
gboolean sq_history_undo (SqHistory *history);
gboolean sq_history_redo (SqHistory *history);

/* The words of the step that led to the job @by steps from now (0: to the job now, < 0: to one
 * before), borrowed; *@exists (may be NULL): whether there is such a job. NULL for the first. */
const char *sq_history_words (const SqHistory *history, int by, gboolean *exists);
/* Goes @by steps on, or back; FALSE and nothing where there are not so many. */
gboolean sq_history_go (SqHistory *history, int by);

/* Remembers the job now as saved; it stays a step to come back to: the next push starts another. */
void sq_history_set_saved (SqHistory *history);
/* No job of it counts as saved until one is. */
void sq_history_set_unsaved (SqHistory *history);
gboolean sq_history_is_saved (const SqHistory *history);
