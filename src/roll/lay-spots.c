/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-spots.h"

#include "roll/lay-order.h"

GArray *
sq_lay_spots_new (const SqLayKinds *kinds, const SqLay *lay)
{
  GArray *spots = g_array_sized_new (FALSE, FALSE, sizeof (SqLaySpot), lay->placed->len);

  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      if (sq_lay_task_is_pinned (kinds->task, placed->item, placed->copy))
        continue;
      SqLaySpot spot = sq_lay_kinds_spot (kinds, placed->item, placed->pose, placed->strip,
                                          placed->at);
      g_array_append_val (spots, spot);
    }
  return spots;
}

SqLay *
sq_lay_spots_to_lay (const SqLayKinds *kinds, const GArray *spots, const SqLay *like)
{
  g_autofree SqUnlaidWhy *why = g_new0 (SqUnlaidWhy, MAX (kinds->kinds->len, 1));

  for (guint i = 0; i < like->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (like->unlaid, SqUnlaid, i);
      why[kinds->kind_of[unlaid->item]] = unlaid->why;
    }
  return sq_lay_kinds_to_lay (kinds, spots, why);
}

guint
sq_lay_open_strip (const SqLayTask *task, const SqLay *lay)
{
  guint open = 0;
  gboolean is_roll = FALSE;

  for (guint i = 0; i < task->strips->len; i++)
    {
      gboolean roll = sq_lay_task_strip (task, i)->kind == SQ_STRIP_ROLL;
      if (sq_lay_length (lay, i) > 0 && (roll || !is_roll))
        {
          open = i;
          is_roll = roll;
        }
    }
  return open;
}

gint32 *
sq_lay_ends_new (const SqLayTask *task, const SqLay *lay, double shrink)
{
  gint32 *ends = g_new (gint32, task->strips->len);
  guint open = sq_lay_open_strip (task, lay);

  for (guint i = 0; i < task->strips->len; i++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (task, i);
      gint32 laid = sq_lay_length (lay, i);
      ends[i] = strip->length > 0 && laid > 0 ? strip->length : laid;
    }
  gint32 laid = sq_lay_length (lay, open);
  ends[open] = laid - MAX ((gint32) (laid * shrink), 1);
  return ends;
}

void
sq_lay_spots_cut_out (const SqLayKinds *kinds, GArray *spots, guint strip, gint32 end, gint32 by,
                      guint64 chance)
{
  /* the middle first, any other later */
  double share = chance == 0 ? 0.5 : (double) (sq_lay_chance (&chance) >> 11) / 9007199254740992.0;
  double line = share * end;

  for (guint i = 0; i < spots->len; i++)
    {
      SqLaySpot *spot = &g_array_index (spots, SqLaySpot, i);
      double middle = (double) spot->x
                      + sq_lay_kind (kinds, spot->kind)->shapes[spot->pose]->length / 2.0;
      if (spot->strip == strip && middle > line)
        spot->x = MAX (spot->x - by, 0);
    }
}
