/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-ways.h"

#include "roll/lay-boxes.h"
#include "roll/lay-cost.h"
#include "roll/lay-first.h"
#include "roll/lay-straight.h"

/* So many pieces are laid in an attempt, and so many orders at most. */
#define PIECES_OF_ATTEMPT 12000
#define ORDERS_OF_ATTEMPT 300

static const guint n_rules[] = { [SQ_LAY_BY_OUTLINES] = 1,
                                 [SQ_LAY_BY_BOXES] = SQ_N_LAY_BOX_RULES,
                                 [SQ_LAY_BY_CUTS] = SQ_N_LAY_STRAIGHT_RULES };

SqLayWay
sq_lay_way_first (const SqLayKinds *kinds)
{
  return kinds->task->straight ? SQ_LAY_BY_CUTS : SQ_LAY_BY_OUTLINES;
}

SqLayWay
sq_lay_way (const SqLayKinds *kinds)
{
  SqLayWay way = sq_lay_way_first (kinds);

  return way == SQ_LAY_BY_OUTLINES && sq_lay_kinds_are_boxes (kinds) ? SQ_LAY_BY_BOXES : way;
}

SqLay *
sq_lay_by_way (const SqLayKinds *kinds, const GArray *order, SqLayWay way, guint rule,
               const SqTask *watch, double fraction_from, double fraction_to)
{
  switch (way)
    {
    case SQ_LAY_BY_BOXES:
      return sq_lay_boxes (kinds, order, rule, watch);
    case SQ_LAY_BY_CUTS:
      return sq_lay_straight (kinds, order, rule, watch);
    case SQ_LAY_BY_OUTLINES:
      break;
    }
  return sq_lay_first (kinds, order, watch, fraction_from, fraction_to);
}

static guint
orders_of_attempt (const SqLayKinds *kinds, SqLayWay way)
{
  guint n = PIECES_OF_ATTEMPT / MAX (sq_lay_n_pieces (kinds), 1);
  return way == SQ_LAY_BY_OUTLINES ? 1 : CLAMP (n, 1, ORDERS_OF_ATTEMPT);
}

SqLayTrack
sq_lay_track_copy (const SqLayTrack *track)
{
  return (SqLayTrack){ g_array_ref (track->order), track->rule,
                       track->lay != NULL ? sq_lay_ref (track->lay) : NULL };
}

void
sq_lay_track_clear (SqLayTrack *track)
{
  g_clear_pointer (&track->order, g_array_unref);
  g_clear_pointer (&track->lay, sq_lay_unref);
}

/* An order and a rule like the track's: mostly the same rule. */
static SqLayTrack
varied (const SqLayTrack *track, SqLayWay way, guint64 *chance)
{
  SqLayTrack result = { sq_lay_order_shuffled (track->order, chance), track->rule, NULL };

  if (sq_lay_chance (chance) % 4 == 0)
    result.rule = (guint) (sq_lay_chance (chance) % n_rules[way]);
  return result;
}

static SqLayTrack
by_size (const SqLayKinds *kinds, guint64 number)
{
  return (SqLayTrack){ sq_lay_order_new (kinds, (SqLaySort) (number % SQ_N_LAY_SORTS)),
                       (guint) (number / SQ_N_LAY_SORTS), NULL };
}

gboolean
sq_lay_way_attempt (const SqLayKinds *kinds, SqLayWay way, guint64 number, guint64 chance,
                    SqLayTrack *track, const SqTask *watch)
{
  guint n_orders = orders_of_attempt (kinds, way);

  for (guint64 i = number * n_orders; i < (number + 1) * n_orders; i++)
    {
      SqLayTrack tried = i < SQ_N_LAY_SORTS * n_rules[way] ? by_size (kinds, i)
                                                           : varied (track, way, &chance);
      tried.lay = sq_lay_by_way (kinds, tried.order, way, tried.rule, watch, 0, 0);
      gboolean is_stopped = tried.lay == NULL;
      if (!is_stopped
          && (track->lay == NULL || sq_lay_compare (kinds->task, tried.lay, track->lay) <= 0))
        {
          SqLayTrack before = *track;
          *track = tried;
          tried = before;
        }
      sq_lay_track_clear (&tried);
      if (is_stopped)
        return FALSE;
    }
  return TRUE;
}
