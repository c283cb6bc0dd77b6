/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/task.h"

gboolean
sq_task_step (const SqTask *task, double fraction)
{
  g_return_val_if_fail (fraction >= 0.0 && fraction <= 1.0, TRUE);

  if (task == NULL)
    return TRUE;
  if (task->is_cancelled != NULL && task->is_cancelled (task->data))
    return FALSE; /* and no progress after the stop: whoever listened may be gone */
  if (task->progress != NULL)
    task->progress (task->data, fraction);
  return TRUE;
}
