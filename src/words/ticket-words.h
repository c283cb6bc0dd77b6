/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands on the ticket that goes with a lay. Texts are new and yours to free, but for static
 * ones. */
#pragma once

#include "plan/spreads.h"
#include "words/cut-sheet.h"

/* "Lay 1 of 4" */
char *sq_words_ticket_lay (const SqSpread *spread);
/* "Harbour stripe, lay 1 of 4" */
char *sq_words_ticket_name (const SqSpread *spread);
/* "6 plies, each 2400 mm long" */
char *sq_words_ticket_plies (const SqSpread *spread, const SqLengthStyle *style);
/* "From: Remnant 1 · 900 × 800 mm"; of several plies with how much they are in all. */
char *sq_words_ticket_from (const SqSpread *spread, const SqLengthStyle *style);
/* Where the up of a one-way cloth points in every ply; NULL: it has none. Static. */
const char *sq_words_ticket_up (const SqSpread *spread);

/* Where a drawing of it has its ends and edges; @wrong_side: with that up. Static. */
const char *sq_words_ticket_lie (gboolean wrong_side);
/* Where one finds what is too long to be drawn here. Static. */
const char *sq_words_ticket_see_layout (void);

/* What is cut from spread @i: number, piece, cushion, of each ply and in all, what is spare. Free
 * with sq_sheet_table_clear(). */
void sq_words_ticket_table (SqSheetTable *table, const SqSpreads *spreads, guint i);

/* How much of what is wanted of cloth @index is in no lay; NULL: all of it is. */
char *sq_words_ticket_unlaid (const SqSpreads *spreads, guint index);

/* What is ticked and signed. */
typedef enum
{
  SQ_TICKET_FIRST_OFF, /* the first piece is right: signed before the rest is cut */
  SQ_TICKET_SPREAD,
  SQ_TICKET_CUT,
  SQ_TICKET_BUNDLED,
  SQ_TICKET_COUNTED,
} SqTicketBox;
#define SQ_N_TICKET_BOXES (SQ_TICKET_COUNTED + 1)

/* All static: at a box; before a rule to write a name or a date on; that nothing is cut. */
const char *sq_words_ticket_box (SqTicketBox box);
const char *sq_words_ticket_by (void);
const char *sq_words_ticket_date (void);
const char *sq_words_no_tickets (void);
