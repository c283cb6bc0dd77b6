/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/timed-lay.h"

#include <time.h>

/* More threads than this share one lay to little use. */
#define MOST_THREADS_UNASKED 4

typedef struct
{
  gboolean cpu;
  double from_s, limit_s;
  SqLay *best;                       /* told of last */
  gint has_best, looked_ms, is_over; /* atomic */
} Clock;

static double
seconds_now (gboolean cpu)
{
  struct timespec now;

  clock_gettime (cpu ? CLOCK_PROCESS_CPUTIME_ID : CLOCK_MONOTONIC, &now);
  return (double) now.tv_sec + (double) now.tv_nsec / 1e9;
}

/* Asked all the time: the clock, which may be dear to read, is looked at once in a millisecond. */
static gboolean
is_over (gpointer data)
{
  Clock *clock = data;
  gint ms = (gint) (g_get_monotonic_time () / 1000 & G_MAXINT);

  if (g_atomic_int_get (&clock->looked_ms) != ms)
    {
      g_atomic_int_set (&clock->looked_ms, ms);
      g_atomic_int_set (&clock->is_over,
                        seconds_now (clock->cpu) - clock->from_s >= clock->limit_s);
    }
  return g_atomic_int_get (&clock->has_best) && g_atomic_int_get (&clock->is_over);
}

static void
on_better (gpointer data, const SqLay *lay)
{
  Clock *clock = data;

  g_clear_pointer (&clock->best, sq_lay_unref);
  clock->best = sq_lay_ref (lay);
  g_atomic_int_set (&clock->has_best, TRUE);
}

SqLay *
sq_timed_lay (const SqLayTask *task, const SqOptions *options, double *seconds)
{
  Clock clock = { .cpu = options->cpu,
                  .from_s = options->cpu ? 0 : seconds_now (FALSE),
                  .limit_s = options->seconds };
  SqLayWatch watch = { .task = { .is_cancelled = is_over, .data = &clock }, .better = on_better };
  SqLayBudget budget = { .seed = options->seed,
                         .steps = options->steps,
                         .threads = options->threads > 0
                                        ? options->threads
                                        : MIN (g_get_num_processors (), MOST_THREADS_UNASKED) };
  SqLay *lay = sq_lay_run (task, NULL, &budget, &watch);

  if (lay == NULL) /* stopped before the last of the first ones */
    lay = sq_lay_ref (clock.best);
  g_clear_pointer (&clock.best, sq_lay_unref);
  if (seconds != NULL)
    *seconds = seconds_now (clock.cpu) - clock.from_s;
  return lay;
}
