/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A plan laid on its cloths: for each of them what is to be laid, where everything lies, and what
 * to buy for it. */
#pragma once

#include "plan/foam-lays.h"
#include "plan/lay-choice.h"
#include "plan/plies.h"
#include "roll/lay-run.h"

/* The lay of one cloth. */
typedef struct
{
  SqId cloth; /* 0: the job names none */
  SqLayTask *task;
  SqLay *lay;
  SqCutsLay
      by_cuts[2]; /* for free cuts, for straight ones: one of them has @task, whichever is worth
                           it by what they take */
  const SqKeptLay *kept; /* the job's kept lay of this cloth, borrowed; NULL: none */
  gboolean is_kept;      /* @lay is it; else, if there is one, it is out of date */
  gboolean is_given;     /* @lay is none that the budget finds: see sq_lays_with_lay */
  SqPurchase purchase;   /* for @lay */
  SqPlies *plies;        /* the same for a lot, several layers deep; NULL: the job asks for none */
} SqClothLay;

/* Which of by_cuts @cloth is laid as: 1, for straight ones; 0. */
#define sq_cloth_lay_cuts(cloth) ((cloth)->task->straight ? 1U : 0U)

/* Immutable, shared by reference. */
typedef struct
{
  gint ref_count;
  SqPlan *plan;
  SqLayBudget budget;
  GArray *cloths; /* of SqClothLay: one for each of the plan's cloths, in their order */
  GArray *foams;  /* of SqFoamLay */
} SqLays;

/* Lays @plan with @budget for each cloth, for straight cuts or for free ones: sq_cuts_are_straight tells
 * by a first lay of either. A lay that the job keeps is taken as it is where it still
 * is one of what is to be laid. @before (may be NULL) is only a source of lays of the same
 * tasks found with the same budget: the result is the same without it. Long work for @watch (may be
 * NULL); NULL if it was stopped. May run on any thread. New reference. */
SqLays *sq_lays_new (const SqPlan *plan, const SqLays *before, const SqLayBudget *budget,
                     const SqTask *watch);
/* The same, each lay begun from the one @warm has of its cloth, so that a small change of the plan does
 * not turn the roll upside down; a lay of the very task is taken as it is. Pure in @plan, @warm (NULL:
 * as sq_lays_new without any before) and @budget. */
SqLays *sq_lays_new_from (const SqPlan *plan, const SqLays *warm, const SqLayBudget *budget,
                          const SqTask *watch);
SqLays *sq_lays_ref (const SqLays *lays);
void sq_lays_unref (SqLays *lays);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLays, sq_lays_unref)

/* The same with @lay, a right one of the task of cloth @i, for that cloth. New reference. */
SqLays *sq_lays_with_lay (const SqLays *lays, guint i, const SqLay *lay);

/* The same with one ply of each lot for its cloth's lay, a strip for each of its lays in turn; what is
 * to be bought is left out. New reference. */
SqLays *sq_lays_of_plies (const SqLays *lays);

#define sq_lays_cloth(lays, i) (&g_array_index ((lays)->cloths, SqClothLay, (i)))

/* Pieces that no lay could take. */
guint sq_lays_n_unlaid (const SqLays *lays);

/* Whether the cover of the piece that is @unlaid on @cloth tells already that it is wider than its
 * cloth. */
gboolean sq_lays_is_told (const SqLays *lays, const SqClothLay *cloth, const SqUnlaid *unlaid);

/* The line of the cut list that @placed, of one of the lays of @lays, is a copy of. Borrowed. */
const SqCutEntry *sq_lays_entry (const SqLays *lays, const SqPlaced *placed);
/* And its piece. Borrowed. */
const SqPiece *sq_lays_piece (const SqLays *lays, const SqPlaced *placed);

/* What pins call it, and the pin that would hold it just where it lies on @cloth. */
SqPinned sq_lays_pinned (const SqLays *lays, const SqPlaced *placed);
SqPin sq_lays_pin (const SqLays *lays, const SqClothLay *cloth, const SqPlaced *placed);
/* Whether the lay of @cloth keeps to a pin of it. */
gboolean sq_lays_is_pinned (const SqClothLay *cloth, const SqPlaced *placed);
/* The line of the cut list, the copy and the fault of a pin that could not be kept: of bad_pins of
 * the task. SQ_LAY_POSE, SQ_LAY_OUTSIDE, SQ_LAY_PATTERN, SQ_LAY_FLAW; SQ_LAY_OVERLAP with an earlier
 * pin's. */
const SqCutEntry *sq_lays_bad_pin (const SqLays *lays, const SqClothLay *cloth, guint i,
                                   guint *copy, SqLayFault *fault);

/* What strip @strip of @cloth is in its stock; NULL: the roll that is to be bought. Borrowed. */
const SqStock *sq_lays_stock (const SqLays *lays, const SqClothLay *cloth, guint strip);

/* Where that piece lies: a point of it, turned by *@turn_rad about (0, 0) and moved by *@at, is on
 * the roll (mm; along from the cut end, across from the near usable edge). */
void sq_lays_place (const SqLays *lays, const SqPlaced *placed, double *turn_rad, SqPoint *at);
/* What its cut line takes there. */
SqBox sq_lays_box (const SqLays *lays, const SqPlaced *placed);
