/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/ticket-words.h"

#include "words/cut-sheet-tables.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/piece-names.h"
#include "words/strip-words.h"

#include <glib/gi18n.h>

char *
sq_words_ticket_lay (const SqSpread *spread)
{
  return g_strdup_printf (_ ("Lay %u of %u"), spread->number, spread->n);
}

static const SqCloth *
cloth_of (const SqSpread *spread)
{
  return sq_plan_cloth (spread->lays->plan, sq_spread_cloth (spread)->cloth);
}

char *
sq_words_ticket_name (const SqSpread *spread)
{
  g_autofree char *cloth = sq_words_cloth (cloth_of (spread));

  /* TRANSLATORS: a cloth, and which of its lays. */
  return g_strdup_printf (_ ("%s, lay %u of %u"), cloth, spread->number, spread->n);
}

char *
sq_words_ticket_plies (const SqSpread *spread, const SqLengthStyle *style)
{
  SqLengthStyle with_unit = *style;
  with_unit.with_unit = TRUE;
  g_autofree char *length = sq_words_length (spread->ply_mm, &with_unit);

  /* TRANSLATORS: layers of cloth, and how long each is. */
  return g_strdup_printf (ngettext ("%u ply, %s long", "%u plies, each %s long", spread->plies),
                          spread->plies, length);
}

char *
sq_words_ticket_from (const SqSpread *spread, const SqLengthStyle *style)
{
  g_autofree char *strip = sq_words_strip (spread->lays, sq_spread_cloth (spread), spread->strip,
                                           style);
  g_autofree char *all = sq_words_long_length (spread->plies * spread->ply_mm, style);

  if (spread->plies == 1)
    return g_strdup_printf (_ ("From: %s"), strip);
  /* TRANSLATORS: the roll that is cut, with its width, and how much of it. */
  return g_strdup_printf (_ ("From: %s · %s in all"), strip, all);
}

const char *
sq_words_ticket_lie (gboolean wrong_side)
{
  return wrong_side ? _ ("Cut end at the left, near edge above")
                    : _ ("Cut end at the left, near edge below");
}

const char *
sq_words_ticket_see_layout (void)
{
  return _ ("Where everything lies: see the layout.");
}

const char *
sq_words_ticket_up (const SqSpread *spread)
{
  const SqCloth *cloth = cloth_of (spread);

  if (cloth == NULL || !cloth->one_way)
    return NULL;
  return cloth->up_is_start ? _ ("One-way cloth: its up to the left, the same in every ply")
                            : _ ("One-way cloth: its up to the right, the same in every ply");
}

/* --- what is cut ------------------------------------------------------------------------------ */

/* Of a line of the cut list. */
typedef struct
{
  guint each, spares;
} Tally;

static Tally *
tally_of (const SqSpreads *spreads, guint i)
{
  const SqSpread *spread = sq_spreads_at (spreads, i);
  const SqLay *lay = sq_spread_cloth (spread)->lay;
  Tally *tally = g_new0 (Tally, MAX (spreads->lays->plan->cut_list->len, 1));

  for (guint k = 0; k < lay->placed->len; k++)
    if (sq_lay_placed (lay, k)->strip == spread->strip)
      {
        SqBundle bundle = sq_spreads_bundle (spreads, i, sq_lay_placed (lay, k));
        tally[bundle.entry].each++;
        tally[bundle.entry].spares += bundle.spares;
      }
  return tally;
}

/* "" for none. */
static char *
count_text (guint count)
{
  return count > 0 ? g_strdup_printf ("%u", count) : g_strdup ("");
}

static void
add_sum (SqSheetTable *table, guint each, guint plies, guint spares)
{
  char *cells[] = {
    g_strdup (""),     g_strdup (_ ("All pieces")), g_strdup (""),
    count_text (each), count_text (each * plies),   count_text (spares),
  };

  sq_sheet_table_add (table, cells);
}

void
sq_words_ticket_table (SqSheetTable *table, const SqSpreads *spreads, guint i)
{
  const SqPlan *plan = spreads->lays->plan;
  g_autofree Tally *tally = tally_of (spreads, i);
  guint plies = sq_spreads_at (spreads, i)->plies, each = 0, spares = 0;
  const char *const heads[] = {
    _ ("No"),       _ ("Piece"),  plan->covers->len > 1 ? _ ("Cushion") : "",
    _ ("In a ply"), _ ("In all"), _ ("Spare"),
    NULL,
  };

  sq_sheet_table_begin (table, "", "rllrrr", heads);
  for (guint k = 0; k < plan->cut_list->len; k++)
    {
      const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, k);
      if (tally[k].each == 0)
        continue;
      char *cells[] = {
        g_strdup_printf ("%u", entry->number),
        sq_words_piece (sq_plan_cover (plan, entry->cushion), entry->piece),
        sq_sheet_cushion_name (plan, entry->cushion),
        count_text (tally[k].each),
        count_text (tally[k].each * plies),
        count_text (tally[k].spares),
      };
      sq_sheet_table_add (table, cells);
      each += tally[k].each;
      spares += tally[k].spares;
    }
  add_sum (table, each, plies, spares);
}

char *
sq_words_ticket_unlaid (const SqSpreads *spreads, guint index)
{
  guint count = sq_spreads_n_unlaid (spreads, index);

  if (count == 0)
    return NULL;
  return g_strdup_printf (
      ngettext ("%u piece of this cloth is in no lay: see the layout for the reason.",
                "%u pieces of this cloth are in no lay: see the layout for the reason.", count),
      count);
}

/* --- what is signed --------------------------------------------------------------------------- */

const char *
sq_words_ticket_box (SqTicketBox box)
{
  switch (box)
    {
    case SQ_TICKET_FIRST_OFF:
      return _ ("First-off approved");
    case SQ_TICKET_SPREAD:
      return _ ("Spread");
    case SQ_TICKET_CUT:
      return _ ("Cut");
    case SQ_TICKET_BUNDLED:
      return _ ("Bundled");
    case SQ_TICKET_COUNTED:
      return _ ("Counted");
    }
  g_return_val_if_reached ("");
}

const char *
sq_words_ticket_by (void)
{
  /* TRANSLATORS: before a rule on which whoever did it signs. */
  return _ ("by");
}

const char *
sq_words_ticket_date (void)
{
  /* TRANSLATORS: before a rule on which the day is written. */
  return _ ("date");
}

const char *
sq_words_no_tickets (void)
{
  return _ ("There is no piece to cut.");
}
