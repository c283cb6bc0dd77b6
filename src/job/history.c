/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/history.h"

/* A job, and what led to it from the one before. */
typedef struct
{
  SqJob *job;
  char *words, *key;
} Step;

struct _SqHistory
{
  GPtrArray *steps; /* of Step; never empty */
  guint now;
  gboolean sealed;
  SqJob *saved;
};

static void
step_free (gpointer data)
{
  Step *step = data;

  sq_job_unref (step->job);
  g_free (step->words);
  g_free (step->key);
  g_free (step);
}

static Step *
step_at (const SqHistory *history, guint index)
{
  return g_ptr_array_index (history->steps, index);
}

static void
append (SqHistory *history, const SqJob *job, const char *words, const char *key)
{
  Step *step = g_new (Step, 1);

  *step = (Step){ sq_job_ref (job), g_strdup (words), g_strdup (key) };
  g_ptr_array_add (history->steps, step);
  history->now = history->steps->len - 1;
}

SqHistory *
sq_history_new (const SqJob *job)
{
  SqHistory *history = g_new0 (SqHistory, 1);

  history->steps = g_ptr_array_new_with_free_func (step_free);
  append (history, job, NULL, NULL);
  history->saved = sq_job_ref (job);
  return history;
}

void
sq_history_free (SqHistory *history)
{
  g_ptr_array_unref (history->steps);
  g_clear_pointer (&history->saved, sq_job_unref);
  g_free (history);
}

const SqJob *
sq_history_now (const SqHistory *history)
{
  return step_at (history, history->now)->job;
}

void
sq_history_push (SqHistory *history, const SqJob *job, const char *words, const char *key)
{
  gboolean continues;

  if (job == sq_history_now (history))
    return;
  continues = !history->sealed && key != NULL
              && g_strcmp0 (step_at (history, history->now)->key, key) == 0;
  g_ptr_array_set_size (history->steps, (gint) (continues ? history->now : history->now + 1));
  append (history, job, words, key);
  history->sealed = FALSE;
}

void
sq_history_seal (SqHistory *history)
{
  history->sealed = TRUE;
}

const char *
sq_history_undo_words (const SqHistory *history)
{
  return history->now > 0 ? step_at (history, history->now)->words : NULL;
}

const char *
sq_history_redo_words (const SqHistory *history)
{
  guint next = history->now + 1;
  return next < history->steps->len ? step_at (history, next)->words : NULL;
}

static gboolean
has_step (const SqHistory *history, int by)
{
  gint64 index = (gint64) history->now + by;

  return index >= 0 && index < history->steps->len;
}

const char *
sq_history_words (const SqHistory *history, int by, gboolean *exists)
{
  gboolean has_it = has_step (history, by);

  if (exists != NULL)
    *exists = has_it;
  return has_it ? step_at (history, history->now + (guint) by)->words : NULL;
}

gboolean
sq_history_go (SqHistory *history, int by)
{
  if (!has_step (history, by))
    return FALSE;
  history->now += (guint) by;
  history->sealed = TRUE;
  return TRUE;
}

gboolean
sq_history_undo (SqHistory *history)
{
  return sq_history_go (history, -1);
}

gboolean
sq_history_redo (SqHistory *history)
{
  return sq_history_go (history, 1);
}

void
sq_history_set_saved (SqHistory *history)
{
  SqJob *saved = sq_job_ref (sq_history_now (history));

  g_clear_pointer (&history->saved, sq_job_unref);
  history->saved = saved;
  history->sealed = TRUE;
}

void
sq_history_set_unsaved (SqHistory *history)
{
  g_clear_pointer (&history->saved, sq_job_unref);
}

gboolean
sq_history_is_saved (const SqHistory *history)
{
  return history->saved == sq_history_now (history);
}
