/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The changes a window makes to a cushion, each with its words for the undo list. */
#pragma once

#include "window/document.h"

/* Values of a cushion that are lengths. */
typedef enum
{
  SQ_LENGTH_THICKNESS,
  SQ_LENGTH_WRAP_DEPTH,
  SQ_LENGTH_PERIMETER, /* allowances … */
  SQ_LENGTH_CORNER,
  SQ_LENGTH_ZIP,
  SQ_LENGTH_JOIN,
  SQ_LENGTH_ZIP_EXTENSION,
  SQ_LENGTH_ZIP_TUCK,
  SQ_LENGTH_STRIPES_SHIFT,
  SQ_LENGTH_FOAM_OVERSIZE,
  SQ_LENGTH_FOAM_BATTING,
  SQ_LENGTH_PROFILE_RADIUS, /* what only some ways of building ask … */
  SQ_LENGTH_SPLIT_UPPER,
  SQ_LENGTH_DRAW_IN,
  SQ_LENGTH_BOLSTER_DIAMETER,
  SQ_LENGTH_BOLSTER_LENGTH,
  SQ_LENGTH_BOLSTER_RISE,
  SQ_LENGTH_WELT_CORD,
  SQ_LENGTH_WELT_OVERLAP,
} SqLengthValue;
#define SQ_N_LENGTH_VALUES (SQ_LENGTH_WELT_OVERLAP + 1)

/* Values that are one of a few. */
typedef enum
{
  SQ_CHOICE_BUILD,
  SQ_CHOICE_WRAP_STYLE,
  SQ_CHOICE_ZIP_PLACE,
  SQ_CHOICE_ZIP_EDGE, /* an id; 0: the rules choose */
  SQ_CHOICE_FOAM,
  SQ_CHOICE_STRIPES_RUN,
  SQ_CHOICE_CENTRE_ON,
  SQ_CHOICE_HAND,
  SQ_CHOICE_ZIP_METHOD,
  SQ_CHOICE_REVERSIBLE, /* 0: no, 1: yes */
  SQ_CHOICE_SEAMS_ACROSS,
  SQ_CHOICE_PROFILE,
  SQ_CHOICE_FILLING,
  SQ_CHOICE_SECTION,
  SQ_CHOICE_WELT_AT,
  SQ_CHOICE_WELT_CUT,
  SQ_CHOICE_CLOTH_FACE, /* ids */
  SQ_CHOICE_CLOTH_UNDERSIDE,
  SQ_CHOICE_CLOTH_SIDES,
  SQ_CHOICE_CLOTH_WELT,
} SqChoiceValue;
#define SQ_N_CHOICE_VALUES (SQ_CHOICE_CLOTH_WELT + 1)

/* Whether the maker gave it; what is not given follows the rules and defaults. */
gboolean sq_edit_length_is_given (const SqCushion *cushion, SqLengthValue value);
gboolean sq_edit_choice_is_given (const SqCushion *cushion, SqChoiceValue value);

/* Gives the value, in mm; or leaves it to the rules (NULL). One step. */
void sq_edit_length (SqDocument *document, SqId cushion, SqLengthValue value, const double *mm);
void sq_edit_choice (SqDocument *document, SqId cushion, SqChoiceValue value,
                     const guint32 *choice);

/* Names it, or leaves it without a name (empty or NULL). One step. */
void sq_edit_name (SqDocument *document, SqId cushion, const char *name);
/* How many of it, or pairs of it; NULL: one. One step. */
void sq_edit_count (SqDocument *document, SqId cushion, const guint *count);
/* Stretches the seat to @width_mm × @depth_mm. One step; FALSE and nothing where it can't be. */
gboolean sq_edit_extents (SqDocument *document, SqId cushion, double width_mm, double depth_mm);

/* Moves it @by places further down in the job (up: < 0), as far as there are. One step. */
void sq_edit_order (SqDocument *document, SqId cushion, int by);

/* Pins @text (empty or NULL: nothing) to the corner, or to the edge that starts there. One step. */
void sq_edit_note (SqDocument *document, SqId cushion, SqId corner, gboolean is_edge,
                   const char *text);

/* Puts @cloth into the job, in the place of the one of its id; id 0: a new one. Where @value (one
 * of SQ_CHOICE_CLOTH_…, NULL: none) is given, @cushion is made of it there. One step. */
void sq_edit_cloth (SqDocument *document, const SqCloth *cloth, SqId cushion,
                    const SqChoiceValue *value);

/* Does what a problem offers. One step, in the words of its button. */
void sq_edit_fix (SqDocument *document, SqId cushion, const SqFix *fix);
