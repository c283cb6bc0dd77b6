/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Long work asks this whether to go on, and says how far it is. */
#pragma once

#include <glib.h>

typedef struct
{
  gboolean (*is_cancelled) (gpointer data);          /* may be NULL; called from any thread */
  void (*progress) (gpointer data, double fraction); /* may be NULL; 0 … 1, never decreasing */
  gpointer data;
} SqTask;

/* Says @fraction and asks whether to go on. @task may be NULL: always TRUE. */
gboolean sq_task_step (const SqTask *task, double fraction);
