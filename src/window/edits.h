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
} SqLengthValue;
#define SQ_N_LENGTH_VALUES (SQ_LENGTH_JOIN + 1)

/* Values that are one of a few. */
typedef enum
{
  SQ_CHOICE_BUILD,
  SQ_CHOICE_WRAP_STYLE,
  SQ_CHOICE_ZIP_PLACE,
  SQ_CHOICE_ZIP_EDGE, /* an id; 0: the rules choose */
  SQ_CHOICE_FOAM,
  SQ_CHOICE_STRIPES_RUN,
} SqChoiceValue;
#define SQ_N_CHOICE_VALUES (SQ_CHOICE_STRIPES_RUN + 1)

/* Whether the maker gave it; what is not given follows the rules and defaults. */
gboolean sq_edit_length_is_given (const SqCushion *cushion, SqLengthValue value);
gboolean sq_edit_choice_is_given (const SqCushion *cushion, SqChoiceValue value);

/* Gives the value, in mm; or leaves it to the rules (NULL). One step. */
void sq_edit_length (SqDocument *document, SqId cushion, SqLengthValue value, const double *mm);
void sq_edit_choice (SqDocument *document, SqId cushion, SqChoiceValue value,
                     const guint32 *choice);

/* Does what a problem offers. One step, in the words of its button. */
void sq_edit_fix (SqDocument *document, SqId cushion, const SqFix *fix);

/* A job as @job with the cushion's corner (or the edge that starts there) moved by @by; NULL if it
 * isn't there. New. */
SqJob *sq_edit_moved (const SqJob *job, SqId cushion, SqId corner, gboolean is_edge, SqVector by);
/* "Move corner B", "Move edge A–B"; new text. */
char *sq_edit_moved_words (const SqCushion *cushion, SqId corner, gboolean is_edge);
