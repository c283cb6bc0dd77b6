/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/run.h"

#include "base/error.h"
#include "exchange/defaults-file.h"
#include "exchange/job-file.h"
#include "exchange/plan-json.h"
#include "exchange/save-file.h"
#include "plan/lays.h"
#include "words/cut-list.h"
#include "words/lay-words.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/problems.h"

#include <glib/gi18n.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>

/* As GLib gives no UTF-8 decimal sign, and Squab knows two. */
static char
decimal_sign (void)
{
  return localeconv ()->decimal_point[0] == ',' ? ',' : '.';
}

/* Writes @text to the file @path, or to standard output for "-" and NULL. */
static gboolean
put (const char *path, const char *text, GError **error)
{
  gsize length = strlen (text);

  if (path != NULL && !g_str_equal (path, "-"))
    return sq_file_save (path, text, length, error);
  if (fwrite (text, 1, length, stdout) == length && fflush (stdout) == 0)
    return TRUE;
  g_set_error_literal (error, SQ_ERROR, SQ_ERROR_WRITE, _ ("standard output can’t be written"));
  return FALSE;
}

static gboolean
put_all (const SqOptions *options, const SqJob *job, const SqLays *lays, GError **error)
{
  SqLengthStyle style = sq_words_length_style (job, decimal_sign ());

  if (options->save != NULL)
    {
      g_autofree char *text = sq_job_write (job);
      if (!put (options->save, text, error))
        return FALSE;
    }
  if (options->plan != NULL)
    {
      g_autofree char *text = sq_plan_write (lays, options->flatten_mm, &style);
      if (!put (options->plan, text, error))
        return FALSE;
    }
  if (options->save != NULL || options->plan != NULL)
    return TRUE;

  g_autofree char *list = sq_words_cut_list (lays->plan, lays, &style);
  return put (NULL, list, error);
}

static const char *
problem_pattern (SqSeverity severity)
{
  switch (severity)
    {
    case SQ_NOTE:
      return _ ("squab-cut: note: %s\n");
    case SQ_WARNING:
      return _ ("squab-cut: warning: %s\n");
    case SQ_FAULT:
      return _ ("squab-cut: error: %s\n");
    }
  g_return_val_if_reached ("%s\n");
}

static void
say_unlaid (const SqLays *lays, const SqLengthStyle *style)
{
  for (guint i = 0; i < lays->cloths->len; i++)
    {
      const SqClothLay *cloth = sq_lays_cloth (lays, i);
      for (guint k = 0; k < cloth->lay->unlaid->len; k++)
        {
          g_autofree char *text = sq_words_unlaid (
              lays, cloth, &g_array_index (cloth->lay->unlaid, SqUnlaid, k), style);
          fprintf (stderr, problem_pattern (SQ_FAULT), text);
        }
    }
}

static void
say_problems (const SqLays *lays)
{
  const SqPlan *plan = lays->plan;
  SqLengthStyle style = sq_words_length_style (plan->job, decimal_sign ());

  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      for (guint k = 0; k < cover->problems->len; k++)
        {
          const SqProblem *problem = sq_cover_problem (cover, k);
          g_autofree char *cushion = sq_words_cover (plan->job, cover);
          g_autofree char *text = sq_words_problem (problem, cover, &style);
          /* TRANSLATORS: a cushion's name, and what is wrong with it. */
          g_autofree char *named = g_strdup_printf (_ ("%s: %s"), cushion, text);
          fprintf (stderr, problem_pattern (problem->severity),
                   plan->covers->len > 1 ? named : text);
        }
    }
  say_unlaid (lays, &style);
}

int
sq_command_run (const SqOptions *options, GError **error)
{
  const SqLayBudget first = { .seed = 1 };
  SqDefaults defaults;
  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_load (options->file, &defaults, error);
  if (job == NULL)
    return -1;

  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &first, NULL);
  if (!put_all (options, job, lays, error))
    return -1;
  say_problems (lays);
  return sq_plan_figures (plan).faults > 0 || sq_lays_n_unlaid (lays) > 0 ? 1 : 0;
}
