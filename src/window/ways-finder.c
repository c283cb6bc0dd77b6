/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/ways-finder.h"

/* One run on the thread. Shared by both sides; what changes in it is atomic. */
typedef struct
{
  gatomicrefcount ref_count;
  SqJob *job;
  SqCushion *cushion;
  gint is_cancelled;
} Run;

struct _SqWaysFinder
{
  GObject parent;
  SqDocument *document;
  SqSelection *selection;
  SqJob *job; /* what the ways are of */
  SqWays *ways;
  Run *run; /* NULL: nothing is being laid */
  guint later;
};

G_DEFINE_TYPE (SqWaysFinder, sq_ways_finder, G_TYPE_OBJECT)

static guint changed_signal;

/* --- on the thread --------------------------------------------------------------------------- */

static Run *
run_ref (Run *run)
{
  g_atomic_ref_count_inc (&run->ref_count);
  return run;
}

static void
run_unref (gpointer data)
{
  Run *run = data;
  if (!g_atomic_ref_count_dec (&run->ref_count))
    return;
  sq_job_unref (run->job);
  sq_cushion_unref (run->cushion);
  g_free (run);
}

static gboolean
is_cancelled (gpointer data)
{
  return g_atomic_int_get (&((Run *) data)->is_cancelled);
}

static void
lay (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Run *run = data;
  const SqTask watch = { .is_cancelled = is_cancelled, .data = run };
  (void) source, (void) cancellable;
  g_task_return_pointer (task, sq_ways_new (run->job, run->cushion, TRUE, &watch),
                         (GDestroyNotify) sq_ways_unref);
}

/* --- here ------------------------------------------------------------------------------------ */

static void begin (SqWaysFinder *finder);

static void
say (SqWaysFinder *finder)
{
  g_signal_emit (finder, changed_signal, 0);
}

static void
on_laid (GObject *source, GAsyncResult *result, gpointer data)
{
  GWeakRef *weak = data;
  g_autoptr (SqWaysFinder) finder = g_weak_ref_get (weak);
  g_autoptr (SqWays) ways = g_task_propagate_pointer (G_TASK (result), NULL);
  (void) source;
  g_weak_ref_clear (weak);
  g_free (weak);
  if (finder == NULL || finder->document == NULL)
    return;
  gboolean is_current = ways != NULL && finder->run->job == finder->job && finder->ways != NULL
                        && finder->ways->cushion == ways->cushion;
  g_clear_pointer (&finder->run, run_unref);
  if (is_current)
    {
      g_clear_pointer (&finder->ways, sq_ways_unref);
      finder->ways = g_steal_pointer (&ways);
      say (finder);
    }
  begin (finder);
}

static void
begin (SqWaysFinder *finder)
{
  if (finder->run != NULL || finder->ways == NULL || finder->ways->has_lays)
    return;
  finder->run = g_new0 (Run, 1);
  g_atomic_ref_count_init (&finder->run->ref_count);
  finder->run->job = sq_job_ref (finder->job);
  finder->run->cushion = sq_cushion_ref (finder->ways->cushion);
  /* Whoever lets the finder go does not wait for the thread. */
  GWeakRef *weak = g_new (GWeakRef, 1);
  g_weak_ref_init (weak, finder);
  g_autoptr (GTask) task = g_task_new (NULL, NULL, on_laid, weak);
  g_task_set_task_data (task, run_ref (finder->run), run_unref);
  g_task_run_in_thread (task, lay);
}

/* What is there now, without lays; what is being laid for something older is given up. */
static void
compare (SqWaysFinder *finder)
{
  const SqJob *job = sq_document_get_job (finder->document);
  const SqCushion *cushion = sq_job_cushion (job, sq_selection_cushion (finder->selection));
  if (job == finder->job && (finder->ways != NULL ? finder->ways->cushion : NULL) == cushion)
    return;
  if (finder->run != NULL)
    g_atomic_int_set (&finder->run->is_cancelled, TRUE);
  g_clear_pointer (&finder->ways, sq_ways_unref);
  g_clear_pointer (&finder->job, sq_job_unref);
  finder->job = sq_job_ref (job);
  if (cushion != NULL)
    finder->ways = sq_ways_new (job, cushion, FALSE, NULL);
  begin (finder);
}

static gboolean
on_later (gpointer data)
{
  SqWaysFinder *finder = data;
  finder->later = 0;
  compare (finder);
  say (finder);
  return G_SOURCE_REMOVE;
}

/* After the frame of a drag, not in it. */
static void
on_changed (SqWaysFinder *finder)
{
  if (finder->later == 0)
    finder->later = g_idle_add (on_later, finder);
}

const SqWays *
sq_ways_finder_get_ways (SqWaysFinder *finder)
{
  g_return_val_if_fail (SQ_IS_WAYS_FINDER (finder), NULL);
  compare (finder);
  return finder->ways;
}

SqWaysFinder *
sq_ways_finder_new (SqDocument *document, SqSelection *selection)
{
  SqWaysFinder *finder = g_object_new (SQ_TYPE_WAYS_FINDER, NULL);
  finder->document = g_object_ref (document);
  finder->selection = g_object_ref (selection);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_changed), finder, G_CONNECT_SWAPPED);
  g_signal_connect_object (selection, "changed", G_CALLBACK (on_changed), finder,
                           G_CONNECT_SWAPPED);
  return finder;
}

static void
sq_ways_finder_dispose (GObject *object)
{
  SqWaysFinder *finder = SQ_WAYS_FINDER (object);
  g_clear_handle_id (&finder->later, g_source_remove);
  if (finder->run != NULL)
    g_atomic_int_set (&finder->run->is_cancelled, TRUE);
  g_clear_object (&finder->document);
  g_clear_object (&finder->selection);
  G_OBJECT_CLASS (sq_ways_finder_parent_class)->dispose (object);
}

static void
sq_ways_finder_finalize (GObject *object)
{
  SqWaysFinder *finder = SQ_WAYS_FINDER (object);
  g_clear_pointer (&finder->ways, sq_ways_unref);
  g_clear_pointer (&finder->job, sq_job_unref);
  g_clear_pointer (&finder->run, run_unref);
  G_OBJECT_CLASS (sq_ways_finder_parent_class)->finalize (object);
}

static void
sq_ways_finder_class_init (SqWaysFinderClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_ways_finder_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_ways_finder_finalize;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
sq_ways_finder_init (SqWaysFinder *finder)
{
  (void) finder;
}
