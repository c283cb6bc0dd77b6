/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-ways.h"

#include "roll/lay-boxes.h"
#include "roll/lay-cost.h"
#include "roll/lay-first.h"
#include "roll/lay-straight.h"

/* So many pieces are laid in an attempt, and so many orders at most. */
#define PIECES_OF_ATTEMPT 4000
#define ORDERS_OF_ATTEMPT 100

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

/* Takes @lay and @order, and keeps them where they are no worse than what there is. */
static void
keep_better (const SqLayKinds *kinds, SqLay *lay, GArray *order, SqLay **best, GArray **best_order)
{
  if (*best == NULL || sq_lay_compare (kinds->task, lay, *best) <= 0)
    {
      g_clear_pointer (best, sq_lay_unref);
      g_array_unref (*best_order);
      *best = lay;
      *best_order = order;
      return;
    }
  sq_lay_unref (lay);
  g_array_unref (order);
}

SqLay *
sq_lay_way_attempt (const SqLayKinds *kinds, SqLayWay way, guint64 number, guint64 chance,
                    GArray **order, const SqTask *watch)
{
  guint n_orders = orders_of_attempt (kinds, way);
  guint64 n_by_size = SQ_N_LAY_SORTS * n_rules[way];
  guint chosen = (guint) (sq_lay_chance (&chance) % n_rules[way]);
  SqLay *best = NULL;

  for (guint64 i = number * n_orders; i < (number + 1) * n_orders; i++)
    {
      gboolean is_by_size = i < n_by_size;
      guint rule = is_by_size ? (guint) (i / SQ_N_LAY_SORTS) : chosen;
      gboolean is_same = n_orders > 1 && i == number * n_orders;
      GArray *tried = is_by_size ? sq_lay_order_new (kinds, (SqLaySort) (i % SQ_N_LAY_SORTS))
                      : is_same  ? g_array_ref (*order)
                                 : sq_lay_order_shuffled (*order, &chance);
      SqLay *lay = sq_lay_by_way (kinds, tried, way, rule, watch, 0, 0);
      if (lay == NULL)
        {
          g_array_unref (tried);
          g_clear_pointer (&best, sq_lay_unref);
          return NULL;
        }
      keep_better (kinds, lay, tried, &best, order);
    }
  return best;
}
