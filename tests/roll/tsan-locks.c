/* SPDX-License-Identifier: GPL-3.0-or-later */
/* GLib's locks as pthreads' in their place, for the thread sanitizer: it knows those, while GLib, not
 * built for it, locks by system calls of its own that it can't see. So nothing of ours need be
 * suppressed. */
#include <glib.h>
#include <pthread.h>

static pthread_mutex_t *
mutex_of (GMutex *mutex)
{
  return ((gpointer *) mutex)[0];
}

static pthread_cond_t *
cond_of (GCond *cond)
{
  return ((gpointer *) cond)[0];
}

void
g_mutex_init (GMutex *mutex)
{
  pthread_mutex_t *mine = g_new (pthread_mutex_t, 1);

  pthread_mutex_init (mine, NULL);
  ((gpointer *) mutex)[0] = mine;
}

void
g_mutex_clear (GMutex *mutex)
{
  pthread_mutex_destroy (mutex_of (mutex));
  g_free (mutex_of (mutex));
}

void
g_mutex_lock (GMutex *mutex)
{
  pthread_mutex_lock (mutex_of (mutex));
}

void
g_mutex_unlock (GMutex *mutex)
{
  pthread_mutex_unlock (mutex_of (mutex));
}

void
g_cond_init (GCond *cond)
{
  pthread_cond_t *mine = g_new (pthread_cond_t, 1);

  pthread_cond_init (mine, NULL);
  ((gpointer *) cond)[0] = mine;
}

void
g_cond_clear (GCond *cond)
{
  pthread_cond_destroy (cond_of (cond));
  g_free (cond_of (cond));
}

void
g_cond_wait (GCond *cond, GMutex *mutex)
{
  pthread_cond_wait (cond_of (cond), mutex_of (mutex));
}

void
g_cond_signal (GCond *cond)
{
  pthread_cond_signal (cond_of (cond));
}

void
g_cond_broadcast (GCond *cond)
{
  pthread_cond_broadcast (cond_of (cond));
}
