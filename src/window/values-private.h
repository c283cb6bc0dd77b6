/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the values share. */
#pragma once

#include "window/edits.h"
#include "window/value-row.h"
#include "window/values.h"

/* What is only to be read. */
typedef enum
{
  SQ_TEXT_FINISHED,
  SQ_TEXT_ZIP_RUN,
  SQ_TEXT_ZIP_LENGTH,
  SQ_TEXT_FOAM_SIZE,
  SQ_TEXT_FOAM_WEIGHT,
} SqValueText;
#define SQ_N_VALUE_TEXTS (SQ_TEXT_FOAM_WEIGHT + 1)

struct _SqValues
{
  GtkWidget parent;
  SqDocument *document;
  SqSelection *selection;
  GtkWidget *box;
  GtkWidget *place;   /* values of the chosen edge or corner */
  GtkWidget *stripes; /* the group */
  SqValueRow *width, *depth, *name, *count;
  SqValueRow *lengths[SQ_N_LENGTH_VALUES];
  SqValueRow *choices[SQ_N_CHOICE_VALUES];
  SqValueRow *texts[SQ_N_VALUE_TEXTS];
  SqId cloths[3]; /* as shown: face, underside, sides */
};

/* Shows what holds now; and what holds of @cover. */
void sq_values_follow (SqValues *values);
void sq_values_show (SqValues *values, const SqCover *cover);
