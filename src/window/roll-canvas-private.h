/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the drawing and the hands of the roll share. */
#pragma once

#include "plan/leftovers.h"
#include "window/document.h"
#include "window/roll-canvas.h"
#include "window/roll-hold.h"

typedef enum
{
  SQ_FLAWS_REST,
  SQ_FLAWS_MARK, /* the hand draws a new one */
  SQ_FLAWS_MOVE,
} SqFlawsHand;

struct _SqRollCanvas
{
  SqCanvas parent;
  SqDocument *document;
  SqLayFinder *finder;
  SqSelection *selection;
  SqLays *lays;      /* that are shown */
  SqLays *followed;  /* the finder's, when they were taken */
  GArray *leftovers; /* of SqLeftover, of the cloth that is shown; NULL: a piece is held */
  SqKeptLay *kept;   /* shown in their place; NULL: they are shown */
  guint cloth;
  gint at; /* the placed piece the keyboard is on, −1: none */

  SqRollHold *hold; /* NULL: no piece is held */
  SqPoint pressed;  /* where (mm of the roll) */
  gboolean is_moving;
  const char *said; /* why the chosen piece could not go where it was meant to; NULL: nothing */

  SqFlawsHand flaws_hand;
  SqFlaw flaw;         /* that is drawn or moved, as it is now */
  SqId chosen_flaw;    /* 0: none */
  gboolean is_marking; /* the next drag marks a flaw */

  GtkWidget *menu;
  GSimpleActionGroup *actions;
};

/* The lay that is shown; NULL: none. */
const SqClothLay *sq_roll_cloth_lay (const SqRollCanvas *canvas);
/* And its cloth; NULL: the job names none, or there is no lay. */
const SqCloth *sq_roll_cloth (const SqRollCanvas *canvas);
/* The same if a hand may change it: it is of the job that is there now. */
gboolean sq_roll_may_change (SqRollCanvas *canvas);
/* The chosen placed piece, −1: none. */
gint sq_roll_chosen (SqRollCanvas *canvas);
/* Puts the keyboard on placed piece @i, and chooses its piece for all who show it. */
void sq_roll_choose (SqRollCanvas *canvas, gint i);
/* What is shown has changed: drawn anew, and told to a screen reader. */
void sq_roll_show_again (SqRollCanvas *canvas);
/* Takes the lays that the finder has now; while a piece is held, those of the same plan wait. */
void sq_roll_follow (SqRollCanvas *canvas);
/* Shows @lays in place of the finder's, until it has newer ones. */
void sq_roll_show_lays (SqRollCanvas *canvas, const SqLays *lays);
/* "3, front boxing: 46 3⁄4 × 4, 0 – 19 7⁄8 from the cut end, …"; new. */
char *sq_roll_placed_words (SqRollCanvas *canvas, guint i, gboolean is_set);
/* A length of @px pixels on the roll (mm). */
double sq_roll_px_mm (SqRollCanvas *canvas, double px);
SqPoint sq_roll_mm (SqRollCanvas *canvas, SqPoint at);

/* Everything that is shown (mm of the roll). */
SqBox sq_roll_shown_box (const SqRollCanvas *canvas);
/* Whether the pieces of that line of the cut list are chosen. */
gboolean sq_roll_is_chosen (SqRollCanvas *canvas, const SqCutEntry *entry);
void sq_roll_draw (SqCanvas *canvas, GtkSnapshot *snapshot);

/* --- hands: of SqCanvasClass, and what the menu does --- */
gboolean sq_roll_press (SqCanvas *canvas, SqPoint at);
void sq_roll_drag (SqCanvas *canvas, SqPoint at);
void sq_roll_release (SqCanvas *canvas);
void sq_roll_hover (SqCanvas *canvas, const SqPoint *at);
gboolean sq_roll_key (SqCanvas *canvas, guint keyval, GdkModifierType state);
gint sq_roll_piece_under (SqRollCanvas *canvas, SqPoint at);
/* What is held goes back; TRUE: something was. */
gboolean sq_roll_put_back (SqRollCanvas *canvas);
void sq_roll_turn (SqRollCanvas *canvas);
void sq_roll_toggle_pin (SqRollCanvas *canvas);
gboolean sq_roll_is_chosen_pinned (SqRollCanvas *canvas);
void sq_roll_add_hands (SqRollCanvas *canvas);

/* --- flaws --- */
gboolean sq_roll_flaws_press (SqRollCanvas *canvas, SqPoint at);
void sq_roll_flaws_drag (SqRollCanvas *canvas, SqPoint at);
void sq_roll_flaws_release (SqRollCanvas *canvas);
gboolean sq_roll_flaws_put_back (SqRollCanvas *canvas);
gboolean sq_roll_remove_flaw (SqRollCanvas *canvas);
void sq_roll_mark_flaw (SqRollCanvas *canvas, gboolean is_marking);
/* What is over the cloth: their sizes, the chosen one, the one that is drawn. */
void sq_roll_append_flaws (SqRollCanvas *canvas, GtkSnapshot *snapshot);
/* "Flaw: 2 × 3"; new; NULL: none lies there. */
char *sq_roll_flaw_words_at (SqRollCanvas *canvas, SqPoint at);

/* --- menu --- */
void sq_roll_add_menu (SqRollCanvas *canvas);
void sq_roll_open_menu (SqRollCanvas *canvas, const SqPoint *at);
/* What can be done now. */
void sq_roll_show_actions (SqRollCanvas *canvas);
