/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/spreads.h"

static gboolean
is_lot (const SqClothLay *cloth)
{
  const SqPlyLay *best = cloth->plies != NULL ? sq_plies_best (cloth->plies) : NULL;

  return best != NULL && best->lays > 0 && (best->plies > 1 || best->lays > 1);
}

const SqClothLay *
sq_spread_cloth (const SqSpread *spread)
{
  return sq_lays_cloth (spread->lays, spread->cloth);
}

/* Cloth @index as it is cut, and how deep. */
static const SqClothLay *
cut_as (const SqSpreads *spreads, guint index, guint *plies)
{
  const SqClothLay *own = sq_lays_cloth (spreads->lays, index);

  *plies = is_lot (own) ? sq_plies_best (own->plies)->plies : 1;
  return is_lot (own) ? sq_lays_cloth (spreads->of_plies, index) : own;
}

static void
add_cloth (SqSpreads *spreads, guint index)
{
  const SqClothLay *own = sq_lays_cloth (spreads->lays, index);
  gboolean lot = is_lot (own);
  SqSpread spread = { .lays = lot ? spreads->of_plies : spreads->lays,
                      .cloth = index,
                      .is_lot = lot,
                      .plies = lot ? sq_plies_best (own->plies)->plies : 1 };
  const SqLay *lay = sq_spread_cloth (&spread)->lay;
  guint first = spreads->all->len;

  for (spread.strip = 0; spread.strip < lay->lengths->len; spread.strip++)
    if (sq_lay_length (lay, spread.strip) > 0)
      {
        spread.number++;
        spread.ply_mm = lot ? sq_ply_length_mm (sq_plies_best (own->plies), spread.strip)
                            : sq_lay_length (lay, spread.strip) / SQ_GRID_PER_MM;
        g_array_append_val (spreads->all, spread);
      }
  for (guint i = first; i < spreads->all->len; i++)
    sq_spreads_at (spreads, i)->n = spread.number;
}

SqSpreads *
sq_spreads_new (const SqLays *lays)
{
  SqSpreads *spreads = g_new0 (SqSpreads, 1);

  spreads->lays = sq_lays_ref (lays);
  spreads->all = g_array_new (FALSE, TRUE, sizeof (SqSpread));
  for (guint i = 0; i < lays->cloths->len; i++)
    if (spreads->of_plies == NULL && is_lot (sq_lays_cloth (lays, i)))
      spreads->of_plies = sq_lays_of_plies (lays);
  for (guint i = 0; i < lays->cloths->len; i++)
    add_cloth (spreads, i);
  return spreads;
}

void
sq_spreads_free (SqSpreads *spreads)
{
  g_array_unref (spreads->all);
  g_clear_pointer (&spreads->of_plies, sq_lays_unref);
  sq_lays_unref (spreads->lays);
  g_free (spreads);
}

/* --- what comes off -------------------------------------------------------------------------- */

/* Of a lot one place in a lay is so many copies. */
static SqBundle
bundle_of (const SqPlan *plan, guint entry, guint place, guint plies)
{
  guint wanted = g_array_index (plan->cut_list, SqCutEntry, entry).count;
  guint first = MIN (place * plies, wanted), count = MIN (plies, wanted - first);

  return (SqBundle){ entry, first, count, plies - count, -1 };
}

SqBundle
sq_spreads_bundle (const SqSpreads *spreads, guint i, const SqPlaced *placed)
{
  SqBundle bundle = bundle_of (spreads->lays->plan, placed->tag, placed->copy,
                               sq_spreads_at (spreads, i)->plies);

  bundle.spread = (gint) i;
  return bundle;
}

static int
compare_entries (gconstpointer a, gconstpointer b)
{
  guint x = *(const guint *) a, y = *(const guint *) b;

  return (x > y) - (x < y);
}

static gboolean
is_wanted (const GArray *entries, guint entry)
{
  return entries == NULL
         || g_array_binary_search ((GArray *) entries, &entry, compare_entries, NULL);
}

static void
add_laid (GArray *bundles, const SqSpreads *spreads, guint i, const GArray *entries)
{
  const SqSpread *spread = sq_spreads_at (spreads, i);
  const SqClothLay *cloth = sq_spread_cloth (spread);
  g_autoptr (GArray) along = sq_lay_along (cloth->task, cloth->lay, spread->strip);

  for (guint k = 0; k < along->len && bundles->len < SQ_LAY_MOST_PIECES; k++)
    {
      const SqPlaced *placed = sq_lay_placed (cloth->lay, g_array_index (along, guint, k));
      SqBundle bundle = sq_spreads_bundle (spreads, i, placed);
      if (is_wanted (entries, bundle.entry))
        g_array_append_val (bundles, bundle);
    }
}

/* The copies of one place, each by itself. */
static void
add_single (GArray *bundles, SqBundle bundle)
{
  SqBundle one = { bundle.entry, bundle.first, 1, 0, -1 };

  for (; one.first < bundle.first + bundle.count && bundles->len < SQ_LAY_MOST_PIECES; one.first++)
    g_array_append_val (bundles, one);
}

/* What is wanted of cloth @index and not in its lay: placed pieces stand by item and copy. */
static void
add_unlaid (GArray *bundles, const SqSpreads *spreads, guint index, const GArray *entries)
{
  guint plies;
  const SqClothLay *cloth = cut_as (spreads, index, &plies);
  const GArray *placed = cloth->lay->placed;
  guint next = 0;

  for (guint i = 0; i < cloth->task->items->len; i++)
    {
      const SqLayItem *item = sq_lay_task_item (cloth->task, i);
      gboolean wanted = is_wanted (entries, item->tag);
      for (guint copy = 0; copy < item->demand; copy++)
        if (next < placed->len && sq_lay_placed (cloth->lay, next)->item == i
            && sq_lay_placed (cloth->lay, next)->copy == copy)
          next++;
        else if (wanted)
          add_single (bundles, bundle_of (spreads->lays->plan, item->tag, copy, plies));
    }
}

guint
sq_spreads_n_unlaid (const SqSpreads *spreads, guint index)
{
  guint plies, count = 0;
  const SqClothLay *cloth = cut_as (spreads, index, &plies);

  if (plies > 1)
    return sq_plies_best (sq_lays_cloth (spreads->lays, index)->plies)->unlaid;
  for (guint i = 0; i < cloth->lay->unlaid->len; i++)
    count += g_array_index (cloth->lay->unlaid, SqUnlaid, i).count;
  return count;
}

GArray *
sq_spreads_bundles (const SqSpreads *spreads, const GArray *entries)
{
  GArray *bundles = g_array_new (FALSE, FALSE, sizeof (SqBundle));

  for (guint i = 0; i < spreads->all->len; i++)
    add_laid (bundles, spreads, i, entries);
  for (guint i = 0; i < spreads->lays->cloths->len; i++)
    add_unlaid (bundles, spreads, i, entries);
  return bundles;
}
