/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Prints where everything of random tasks lies, for two builds to be compared. */
#include <stdio.h>

#include "roll/made-task.h"

#define N_TASKS 200

int
main (void)
{
  for (guint32 seed = 1; seed <= N_TASKS; seed++)
    {
      g_autoptr (SqLayTask) task = random_task (seed);
      g_autoptr (SqLay) lay = lay_of (task, seed % 20 == 0 ? 2 : 0);
      printf ("%u: %016" G_GINT64_MODIFIER "x, %u not\n", seed, lay->task_digest, lay->unlaid->len);
      for (guint i = 0; i < lay->placed->len; i++)
        {
          const SqPlaced *p = sq_lay_placed (lay, i);
          printf ("%u %u %u %d %d %d %d\n", p->item, p->copy, p->strip, p->at.x, p->at.y,
                  p->pose.turn, p->pose.mirrored);
        }
    }
  return 0;
}
