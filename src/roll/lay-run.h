/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lays a task: feasible at once, then better and better until told to stop. */
#pragma once

#include "base/task.h"
#include "roll/lay.h"

typedef struct
{
  guint64 seed;  /* what chance begins from */
  guint64 steps; /* attempts at a better lay after the first; G_MAXUINT64: until stopped */
  guint threads; /* that may work on it; 0: one. What is found does not depend on it */
} SqLayBudget;

typedef struct
{
  SqTask task;                                      /* is_cancelled is asked from all threads */
  void (*better) (gpointer data, const SqLay *lay); /* may be NULL; called from any thread, one at
                                                       a time, with task.data */
} SqLayWatch;

/* The best lay of @task that is found; what can't be laid is told in it. The first is made by size;
 * of few pieces it is the best of several orders. @warm (may be NULL) is a lay of this task or of an
 * earlier one that has items of the same tags: its order is tried first, and a valid lay of this
 * very task is never made worse.
 *
 * Pure in @task, @warm, seed and the steps really taken, which the result tells. @watch (may be
 * NULL) is asked all the time and told of each better lay, the first included: a stop in the first
 * gives @warm if that is valid, else NULL; a later one gives the best so far. May run on any
 * thread. New reference. */
SqLay *sq_lay_run (const SqLayTask *task, const SqLay *warm, const SqLayBudget *budget,
                   const SqLayWatch *watch);
