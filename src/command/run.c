/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/run.h"

#include "base/error.h"
#include "command/put.h"
#include "command/timed-lay.h"
#include "exchange/defaults-file.h"
#include "exchange/job-file.h"
#include "exchange/plan-json.h"
#include "exchange/today.h"
#include "papers/paper.h"
#include "plan/lays.h"
#include "words/cut-list-csv.h"
#include "words/cut-list.h"
#include "words/lay-words.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/problems.h"
#include "words/strip-words.h"
#include "words/ways.h"

#include <glib/gi18n.h>
#include <locale.h>
#include <stdio.h>

/* As GLib gives no UTF-8 decimal sign, and Squab knows two. */
static char
decimal_sign (void)
{
  return localeconv ()->decimal_point[0] == ',' ? ',' : '.';
}

static gboolean
put_papers (const char *path, guint kinds, const SqPaperSpec *spec, GError **error)
{
  g_autoptr (GPtrArray) papers = sq_papers_new (kinds, spec);
  g_autoptr (GBytes) pdf = sq_papers_to_pdf (papers, spec, error);

  return pdf != NULL && sq_put (path, g_bytes_get_data (pdf, NULL), g_bytes_get_size (pdf), error);
}

static gboolean
put_out (const SqOptions *options, SqOut out, const SqPaperSpec *spec, GError **error)
{
  const SqLays *lays = spec->lays;
  const char *path = options->outs[out];
  SqLengthStyle style = sq_words_length_style (lays->plan->job, decimal_sign ());

  switch (out)
    {
    case SQ_OUT_PLAN:
      return sq_put_text (path, sq_plan_write (lays, options->flatten_mm, options->ways, &style),
                          error);
    case SQ_OUT_SAVE:
      return sq_put_text (path, sq_job_write (lays->plan->job), error);
    case SQ_OUT_CUT_LIST:
      return put_papers (path, 1 << SQ_PAPER_CUT_LIST, spec, error);
    case SQ_OUT_LAYOUT:
      return put_papers (path, 1 << SQ_PAPER_LAYOUT, spec, error);
    case SQ_OUT_EVERYTHING:
      return put_papers (path, (1 << SQ_N_PAPER_KINDS) - 1, spec, error);
    case SQ_OUT_CSV:
      return sq_put_text (path, sq_words_cut_list_csv (lays->plan), error);
    case SQ_OUT_SVG:
      break;
    }
  g_return_val_if_reached (FALSE);
}

static gboolean
put_all (const SqOptions *options, const SqLays *lays, GError **error)
{
  const SqJob *job = lays->plan->job;
  g_autofree char *today = options->date != NULL ? g_strdup (options->date) : sq_today ();
  SqPaperSpec spec = sq_paper_spec (lays, decimal_sign (), today);
  gboolean any = FALSE;

  if (options->has_sheet)
    spec.sheet = options->sheet;
  for (guint out = 0; out < SQ_N_OUTS; out++)
    if (options->outs[out] != NULL)
      {
        any = TRUE;
        if (!put_out (options, (SqOut) out, &spec, error))
          return FALSE;
      }
  if (any)
    return TRUE;

  SqLengthStyle style = sq_words_length_style (job, decimal_sign ());
  if (options->ways)
    return sq_put_text ("-", sq_words_ways (job, &style), error);
  return sq_put_text ("-", sq_words_cut_list (lays->plan, lays, &style), error);
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
          const SqUnlaid *unlaid = &g_array_index (cloth->lay->unlaid, SqUnlaid, k);
          if (sq_lays_is_told (lays, cloth, unlaid))
            continue;
          g_autofree char *text = sq_words_unlaid (lays, cloth, unlaid, style);
          fprintf (stderr, problem_pattern (SQ_FAULT), text);
        }
    }
}

static void
say_bad_pins (const SqLays *lays)
{
  for (guint i = 0; i < lays->cloths->len; i++)
    for (guint k = 0; k < sq_lays_cloth (lays, i)->task->bad_pins->len; k++)
      {
        g_autofree char *text = sq_words_bad_pin (lays, sq_lays_cloth (lays, i), k);
        fprintf (stderr, problem_pattern (SQ_NOTE), text);
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
  say_bad_pins (lays);
}

/* The first lays at once, then each cloth's as long as it may take. */
static SqLays *
find_lays (const SqOptions *options, const SqPlan *plan)
{
  const SqLayBudget first = { .seed = options->seed };
  SqLays *lays = sq_lays_new (plan, NULL, &first, NULL);

  for (guint i = 0; i < lays->cloths->len && options->steps > 0; i++)
    {
      if (sq_lays_cloth (lays, i)->is_kept)
        continue;
      g_autoptr (SqLay) lay = sq_timed_lay (sq_lays_cloth (lays, i)->task, options, NULL);
      g_autoptr (SqLays) before = lays;
      lays = sq_lays_with_lay (before, i, lay);
    }
  return lays;
}

int
sq_command_run (const SqOptions *options, GError **error)
{
  SqDefaults defaults;
  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_load (options->file, &defaults, error);
  if (job == NULL)
    return -1;

  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLays) lays = find_lays (options, plan);
  if (!put_all (options, lays, error))
    return -1;
  say_problems (lays);
  return sq_plan_figures (plan).faults > 0 || sq_lays_n_unlaid (lays) > 0 ? 1 : 0;
}
