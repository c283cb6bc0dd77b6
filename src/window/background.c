/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/background.h"

#include <gio/gio.h>

/* Shared by both sides. Atomic: is_stopped, permille; under the lock: fresh, delivery; the owner's
 * side only: owner. */
struct _SqBackground
{
  gatomicrefcount ref_count;
  const SqBackgroundWork *work;
  SqBackgroundFound found;
  GWeakRef owner;
  gpointer data;
  gint64 begun_us;
  gint is_stopped;
  gint permille;
  GMutex lock;
  gpointer fresh; /* found, and not yet delivered; NULL: nothing */
  guint delivery; /* source; 0: none */
};

static SqBackground *
ref (SqBackground *background)
{
  g_atomic_ref_count_inc (&background->ref_count);
  return background;
}

static void
unref (gpointer data)
{
  SqBackground *background = data;
  if (!g_atomic_ref_count_dec (&background->ref_count))
    return;
  g_weak_ref_clear (&background->owner);
  if (background->data != NULL)
    background->work->free_data (background->data);
  if (background->fresh != NULL)
    background->work->free_found (background->fresh);
  g_mutex_clear (&background->lock);
  g_free (background);
}

/* --- on the thread --------------------------------------------------------------------------- */

static gboolean
is_stopped (gpointer data)
{
  return g_atomic_int_get (&((SqBackground *) data)->is_stopped);
}

static void
on_progress (gpointer data, double fraction)
{
  g_atomic_int_set (&((SqBackground *) data)->permille, (gint) (1000 * fraction));
}

static void
work_on (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  SqBackground *background = data;
  const SqTask watch = { is_stopped, on_progress, background };
  (void) source, (void) cancellable;
  g_task_return_pointer (task, background->work->work (background, background->data, &watch),
                         background->work->free_found);
}

/* --- on the main loop ------------------------------------------------------------------------ */

static void
deliver (SqBackground *background, gpointer found, gboolean is_over)
{
  g_autoptr (GObject) owner = g_weak_ref_get (&background->owner);
  if (owner != NULL && (found != NULL || is_over))
    background->found (owner, found, is_over);
  if (found != NULL)
    background->work->free_found (found);
}

static gpointer
take_fresh (SqBackground *background)
{
  g_mutex_lock (&background->lock);
  gpointer found = g_steal_pointer (&background->fresh);
  background->delivery = 0;
  g_mutex_unlock (&background->lock);
  return found;
}

static gboolean
on_delivery (gpointer data)
{
  SqBackground *background = data;
  deliver (background, take_fresh (background), FALSE);
  return G_SOURCE_REMOVE;
}

static void
on_over (GObject *source, GAsyncResult *result, gpointer data)
{
  SqBackground *background = data;
  gpointer found = g_task_propagate_pointer (G_TASK (result), NULL);
  (void) source;
  deliver (background, take_fresh (background), FALSE);
  deliver (background, found, TRUE);
  unref (background);
}

/* --- for both -------------------------------------------------------------------------------- */

SqBackground *
sq_background_begin (GObject *owner, const SqBackgroundWork *what, gpointer data,
                     SqBackgroundFound found)
{
  SqBackground *background = g_new0 (SqBackground, 1);
  g_atomic_ref_count_init (&background->ref_count);
  background->work = what;
  background->found = found;
  background->data = data;
  background->begun_us = g_get_monotonic_time ();
  g_weak_ref_init (&background->owner, owner);
  g_mutex_init (&background->lock);
  g_autoptr (GTask) task = g_task_new (NULL, NULL, on_over, ref (background));
  g_task_set_task_data (task, ref (background), unref);
  g_task_run_in_thread (task, work_on);
  return background;
}

void
sq_background_publish (SqBackground *background, gpointer found)
{
  g_mutex_lock (&background->lock);
  gpointer older = background->fresh;
  background->fresh = found;
  if (background->delivery == 0)
    background->delivery = g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, on_delivery, ref (background),
                                            unref);
  g_mutex_unlock (&background->lock);
  if (older != NULL)
    background->work->free_found (older);
}

void
sq_background_stop (SqBackground *background)
{
  g_atomic_int_set (&background->is_stopped, TRUE);
}

double
sq_background_get_progress (SqBackground *background)
{
  return g_atomic_int_get (&background->permille) / 1000.0;
}

double
sq_background_get_seconds (SqBackground *background)
{
  return (double) (g_get_monotonic_time () - background->begun_us) / G_USEC_PER_SEC;
}

void
sq_background_drop (SqBackground *background)
{
  sq_background_stop (background);
  g_weak_ref_set (&background->owner, NULL);
  unref (background);
}
