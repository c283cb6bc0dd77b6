/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/lay-finder.h"

/* The work is told of after this; a run that was begun for an older plan is given up after the
 * other (µs). */
#define NOTICED_US 500000
#define STALE_US 300000
/* How often it is looked at meanwhile (ms). */
#define LOOK_MS 150

/* One run on the thread. Shared by both sides; what changes in it is atomic. */
typedef struct
{
  gatomicrefcount ref_count;
  SqPlan *plan;
  SqLays *before;
  gint is_cancelled;
  gint permille;
} Run;

struct _SqLayFinder
{
  GObject parent;
  SqDocument *document;
  SqLays *lays;
  Run *run; /* NULL: nothing is being laid */
  gint64 begun_us;
  guint look;          /* source; 0: none */
  SqPlan *stopped_for; /* laying this was given up; NULL: nothing was */
};

G_DEFINE_TYPE (SqLayFinder, sq_lay_finder, G_TYPE_OBJECT)

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
  sq_plan_unref (run->plan);
  sq_lays_unref (run->before);
  g_free (run);
}

static gboolean
is_cancelled (gpointer data)
{
  return g_atomic_int_get (&((Run *) data)->is_cancelled);
}

static void
on_progress (gpointer data, double fraction)
{
  g_atomic_int_set (&((Run *) data)->permille, (gint) (1000 * fraction));
}

static void
lay (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Run *run = data;
  const SqLayBudget first = { .seed = 1 };
  const SqTask watch = { is_cancelled, on_progress, run };
  (void) source, (void) cancellable;
  g_task_return_pointer (task, sq_lays_new (run->plan, run->before, &first, &watch),
                         (GDestroyNotify) sq_lays_unref);
}

/* --- here ------------------------------------------------------------------------------------ */

static void begin (SqLayFinder *finder);

static void
say (SqLayFinder *finder)
{
  g_signal_emit (finder, changed_signal, 0);
}

static void
end_look (SqLayFinder *finder)
{
  g_clear_handle_id (&finder->look, g_source_remove);
}

static void
on_laid (GObject *source, GAsyncResult *result, gpointer data)
{
  GWeakRef *weak = data;
  g_autoptr (SqLayFinder) finder = g_weak_ref_get (weak);
  g_autoptr (SqLays) lays = g_task_propagate_pointer (G_TASK (result), NULL);
  (void) source;
  g_weak_ref_clear (weak);
  g_free (weak);
  if (finder == NULL || finder->document == NULL)
    return;
  g_clear_pointer (&finder->run, run_unref);
  end_look (finder);
  if (lays != NULL)
    {
      g_clear_pointer (&finder->lays, sq_lays_unref);
      finder->lays = g_steal_pointer (&lays);
    }
  begin (finder);
  say (finder);
}

static gboolean
on_look (gpointer data)
{
  SqLayFinder *finder = data;
  if (g_get_monotonic_time () - finder->begun_us > NOTICED_US)
    say (finder);
  return G_SOURCE_CONTINUE;
}

/* Starts a run if there is something to lay and none is running. */
static void
begin (SqLayFinder *finder)
{
  const SqPlan *plan = sq_document_get_plan (finder->document);
  if (finder->run != NULL || sq_lay_finder_is_current (finder) || finder->stopped_for == plan)
    return;
  g_clear_pointer (&finder->stopped_for, sq_plan_unref);
  finder->run = g_new0 (Run, 1);
  g_atomic_ref_count_init (&finder->run->ref_count);
  finder->run->plan = sq_plan_ref (plan);
  finder->run->before = finder->lays != NULL ? sq_lays_ref (finder->lays) : NULL;
  finder->begun_us = g_get_monotonic_time ();
  finder->look = g_timeout_add (LOOK_MS, on_look, finder);
  /* Whoever lets the finder go does not wait for the thread. */
  GWeakRef *weak = g_new (GWeakRef, 1);
  g_weak_ref_init (weak, finder);
  g_autoptr (GTask) task = g_task_new (NULL, NULL, on_laid, weak);
  g_task_set_task_data (task, run_ref (finder->run), run_unref);
  g_task_run_in_thread (task, lay);
}

static void
on_changed (SqLayFinder *finder)
{
  if (finder->run != NULL && finder->run->plan != sq_document_get_plan (finder->document)
      && g_get_monotonic_time () - finder->begun_us > STALE_US)
    g_atomic_int_set (&finder->run->is_cancelled, TRUE);
  begin (finder);
}

const SqLays *
sq_lay_finder_get_lays (SqLayFinder *finder)
{
  g_return_val_if_fail (SQ_IS_LAY_FINDER (finder), NULL);
  return finder->lays;
}

gboolean
sq_lay_finder_is_current (SqLayFinder *finder)
{
  g_return_val_if_fail (SQ_IS_LAY_FINDER (finder), FALSE);
  return finder->lays != NULL && finder->document != NULL
         && finder->lays->plan == sq_document_get_plan (finder->document);
}

double
sq_lay_finder_get_progress (SqLayFinder *finder)
{
  g_return_val_if_fail (SQ_IS_LAY_FINDER (finder), -1);
  if (finder->run == NULL || g_get_monotonic_time () - finder->begun_us <= NOTICED_US)
    return -1;
  return g_atomic_int_get (&finder->run->permille) / 1000.0;
}

void
sq_lay_finder_stop (SqLayFinder *finder)
{
  g_return_if_fail (SQ_IS_LAY_FINDER (finder));
  if (finder->run == NULL)
    return;
  g_atomic_int_set (&finder->run->is_cancelled, TRUE);
  g_clear_pointer (&finder->stopped_for, sq_plan_unref);
  finder->stopped_for = sq_plan_ref (sq_document_get_plan (finder->document));
}

void
sq_lay_finder_again (SqLayFinder *finder)
{
  g_return_if_fail (SQ_IS_LAY_FINDER (finder));
  g_clear_pointer (&finder->stopped_for, sq_plan_unref);
  begin (finder);
  say (finder);
}

gboolean
sq_lay_finder_is_stopped (SqLayFinder *finder)
{
  g_return_val_if_fail (SQ_IS_LAY_FINDER (finder), FALSE);
  return finder->run == NULL && finder->document != NULL
         && finder->stopped_for == sq_document_get_plan (finder->document);
}

SqLayFinder *
sq_lay_finder_new (SqDocument *document)
{
  SqLayFinder *finder = g_object_new (SQ_TYPE_LAY_FINDER, NULL);
  finder->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_changed), finder, G_CONNECT_SWAPPED);
  begin (finder);
  return finder;
}

static void
sq_lay_finder_dispose (GObject *object)
{
  SqLayFinder *finder = SQ_LAY_FINDER (object);
  end_look (finder);
  if (finder->run != NULL)
    g_atomic_int_set (&finder->run->is_cancelled, TRUE);
  if (finder->document != NULL)
    g_signal_handlers_disconnect_by_data (finder->document, finder);
  g_clear_object (&finder->document);
  G_OBJECT_CLASS (sq_lay_finder_parent_class)->dispose (object);
}

static void
sq_lay_finder_finalize (GObject *object)
{
  SqLayFinder *finder = SQ_LAY_FINDER (object);
  g_clear_pointer (&finder->lays, sq_lays_unref);
  g_clear_pointer (&finder->run, run_unref);
  g_clear_pointer (&finder->stopped_for, sq_plan_unref);
  G_OBJECT_CLASS (sq_lay_finder_parent_class)->finalize (object);
}

static void
sq_lay_finder_class_init (SqLayFinderClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_lay_finder_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_lay_finder_finalize;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
sq_lay_finder_init (SqLayFinder *finder)
{
  (void) finder;
}
