/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/run.h"

#include "base/error.h"
#include "base/ranges.h"
#include "command/files.h"
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
#include "words/lays-csv.h"
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

/* Sheets narrower than this lie on a desk, and are read (mm). */
#define DESK_MM 300

/* Whether @kinds of papers can be made as @spec has them; told as plain text. */
static gboolean
check_papers (const SqPaperSpec *spec, guint kinds, GError **error)
{
  SqPaperSpec plain = *spec;

  plain.style.set = FALSE;
  return sq_paper_spec_check (&plain, kinds, error);
}

/* The pages that are asked for of @n_pages; *@pages NULL: all. FALSE with @error. */
static gboolean
choose_pages (const SqOptions *options, guint n_pages, GArray **pages, GError **error)
{
  *pages = options->pages != NULL ? sq_ranges_read (options->pages, n_pages) : NULL;
  if (options->pages != NULL && *pages == NULL)
    g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, _ ("--pages: “%s” is none of the %u pages"),
                 options->pages, n_pages);
  else if (*pages == NULL && n_pages > SQ_PAPERS_MANY)
    g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE,
                 _ ("that makes %u pages: take larger paper, or say which with --pages"), n_pages);
  else
    return TRUE;
  return FALSE;
}

static gboolean
put_pdf (const SqOptions *options, const char *path, const GPtrArray *papers,
         const SqPaperSpec *spec, GError **error)
{
  g_autoptr (GArray) pages = NULL;
  if (!choose_pages (options, sq_papers_n_pages (papers), &pages, error))
    return FALSE;

  g_autoptr (GBytes) pdf = sq_papers_to_pdf (papers, pages, spec, NULL, error);
  return pdf != NULL && sq_put (path, g_bytes_get_data (pdf, NULL), g_bytes_get_size (pdf), error);
}

static gboolean
put_papers (const SqOptions *options, const char *path, guint kinds, const SqPaperSpec *spec,
            GError **error)
{
  if (!check_papers (spec, kinds, error))
    return FALSE;

  g_autoptr (GPtrArray) papers = sq_papers_new (kinds, spec);
  return put_pdf (options, path, papers, spec, error);
}

static gboolean
put_test_page (const SqOptions *options, const char *path, const SqPaperSpec *spec, GError **error)
{
  if (!check_papers (spec, 1U << SQ_PAPER_PATTERN, error))
    return FALSE;

  g_autoptr (GPtrArray) papers = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_paper_unref);
  g_ptr_array_add (papers, sq_test_page_new (spec));
  return put_pdf (options, path, papers, spec, error);
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
      return put_papers (options, path, 1 << SQ_PAPER_CUT_LIST, spec, error);
    case SQ_OUT_LAYOUT:
      return put_papers (options, path, 1 << SQ_PAPER_LAYOUT, spec, error);
    case SQ_OUT_MARKING:
      return put_papers (options, path, 1 << SQ_PAPER_MARKING, spec, error);
    case SQ_OUT_TICKETS:
      return put_papers (options, path, 1 << SQ_PAPER_TICKETS, spec, error);
    case SQ_OUT_LABELS:
      return put_papers (options, path, 1 << SQ_PAPER_LABELS, spec, error);
    case SQ_OUT_PATTERN:
      return put_papers (options, path, 1 << SQ_PAPER_PATTERN, spec, error);
    case SQ_OUT_TEST_PAGE:
      return put_test_page (options, path, spec, error);
    case SQ_OUT_EVERYTHING:
      return put_papers (options, path, SQ_ALL_PAPER_KINDS, spec, error);
    case SQ_OUT_CSV:
      return sq_put_text (path,
                          options->has_cut_of && options->cut_of == SQ_CUT_LAYS
                              ? sq_words_lays_csv (lays)
                              : sq_words_cut_list_csv (lays->plan),
                          error);
    case SQ_OUT_SVG:
    case SQ_OUT_DXF:
    case SQ_OUT_HPGL:
      return sq_command_files (options, out, lays, spec->wrong_side, spec->entries, error);
    }
  g_return_val_if_reached (FALSE);
}

/* What the command line says of papers instead of the job. Large sheets are asked for patterns: what is
 * read beside them stays on its own where both are made. */
static void
choose_papers (const SqOptions *options, SqPaperSpec *spec)
{
  gboolean is_desk = sq_sheet_size_mm (options->sheet).x < DESK_MM;

  if (options->has_sheet)
    {
      spec->pattern.sheet = options->sheet;
      spec->pattern.roll_mm = 0;
      if (is_desk || options->outs[SQ_OUT_EVERYTHING] == NULL)
        spec->sheet = options->sheet;
    }
  if (options->roll_mm > 0)
    spec->pattern.roll_mm = options->roll_mm;
  if (options->margin_mm >= 0)
    spec->pattern.margin_mm = options->margin_mm;
  if (options->overlap_mm >= 0)
    spec->pattern.overlap_mm = options->overlap_mm;
  if (options->has_pattern_lines)
    spec->pattern.lines = options->pattern_lines;
  if (options->corners_only)
    spec->pattern.corners_only = TRUE;
  if (options->has_side)
    spec->wrong_side = options->wrong_side;
  if (options->label_sheet != NULL)
    sscanf (options->label_sheet, "%ux%u", &spec->labels.columns, &spec->labels.rows);
  spec->skipped_labels = options->skipped_labels;
}

/* The lines of the cut list that are asked for; *@entries NULL: all. FALSE with @error. */
static gboolean
choose_entries (const SqOptions *options, const SqPlan *plan, GArray **entries, GError **error)
{
  *entries = NULL;
  if (options->pieces == NULL)
    return TRUE;
  *entries = sq_ranges_read (options->pieces, plan->cut_list->len);
  if (*entries == NULL)
    {
      g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE,
                   _ ("--pieces: “%s” is none of the %u numbers of the cut list"), options->pieces,
                   plan->cut_list->len);
      return FALSE;
    }
  for (guint i = 0; i < (*entries)->len; i++)
    g_array_index (*entries, guint, i)--; /* numbers are from 1 */
  return TRUE;
}

static gboolean
put_all (const SqOptions *options, const SqLays *lays, GError **error)
{
  const SqJob *job = lays->plan->job;
  g_autofree char *today = options->date != NULL ? g_strdup (options->date) : sq_today ();
  SqPaperSpec spec = sq_paper_spec (lays, decimal_sign (), today);
  gboolean any = FALSE;

  g_autoptr (GArray) entries = NULL;

  if (!choose_entries (options, lays->plan, &entries, error))
    return FALSE;
  spec.entries = entries;
  choose_papers (options, &spec);
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
