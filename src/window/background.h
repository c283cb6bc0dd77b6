/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Work on a thread for an object that must not wait for it: begun with what it works on, told to
 * stop, asked how far it is; what it finds arrives on the main loop, several times if it finds
 * better. */
#pragma once

#include <glib-object.h>

#include "base/task.h"

typedef struct _SqBackground SqBackground;

typedef struct
{
  /* On the thread: what is found last, or NULL (stopped, or nothing). @data is what was handed to
   * begin; @watch is to be asked often: it stops within a few ms. */
  gpointer (*work) (SqBackground *background, gpointer data, const SqTask *watch);
  GDestroyNotify free_data;  /* on any thread */
  GDestroyNotify free_found; /* on any thread */
} SqBackgroundWork;

/* On the main loop, while @owner lives and has not dropped the work: @found is borrowed, NULL: nothing.
 * @is_over: it was the last; the owner lets the work go. */
typedef void (*SqBackgroundFound) (gpointer owner, gpointer found, gboolean is_over);

/* Begins @work, which must stay, for @owner, which may go any time and is not kept alive. @data is
 * taken. New; to be let go with sq_background_drop(). */
SqBackground *sq_background_begin (GObject *owner, const SqBackgroundWork *work, gpointer data,
                                   SqBackgroundFound found);

/* On the thread, in work: @found (taken) is better than what was there. What the main loop has not
 * seen yet is left out. */
void sq_background_publish (SqBackground *background, gpointer found);

/* Stops the work as soon as may be; its end still arrives. */
void sq_background_stop (SqBackground *background);
/* How far it is, 0 … 1, and for how long it has been at it (s). */
double sq_background_get_progress (SqBackground *background);
double sq_background_get_seconds (SqBackground *background);
/* Stops the work and lets it go: nothing of it arrives any more. */
void sq_background_drop (SqBackground *background);
