/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the values share. */
#pragma once

#include "cover/choices.h"
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
  SQ_TEXT_STUFFED,
  SQ_TEXT_INSERT,
  SQ_TEXT_WELT_STRIPS,
} SqValueText;
#define SQ_N_VALUE_TEXTS (SQ_TEXT_WELT_STRIPS + 1)

struct _SqValues
{
  GtkWidget parent;
  SqDocument *document;
  SqSelection *selection;
  GtkWidget *box;
  GtkWidget *place;          /* values of the chosen edge or corner */
  GtkWidget *stripes, *welt; /* groups */
  SqValueRow *width, *depth, *name, *count;
  SqValueRow *lengths[SQ_N_LENGTH_VALUES];
  SqValueRow *choices[SQ_N_CHOICE_VALUES];
  SqValueRow *texts[SQ_N_VALUE_TEXTS];
  SqId cloths[4]; /* as shown: face, underside, sides, welt */
};

/* Shows what holds now; and what holds of @cover. */
void sq_values_follow (SqValues *values);
void sq_values_show (SqValues *values, const SqCover *cover);

/* The rows' own ways of showing things, shared by the files. */
void sq_values_show_length (SqValues *values, const SqCushion *cushion, SqLengthValue i, double mm,
                            const SqLengthStyle *style);
void sq_values_show_choice (SqValues *values, const SqCushion *cushion, SqChoiceValue i,
                            guint value, const guint *offered, const char *const *names, guint n);
/* Takes @text. */
void sq_values_show_text (SqValues *values, SqValueText i, char *text);
void sq_values_set_used (SqValueRow *row, gboolean is_used);

/* How the cover is built, with what only its way asks; and its welt. */
void sq_values_show_way (SqValues *values, const SqCover *cover, const SqChoices *choices,
                         const SqLengthStyle *style);
void sq_values_show_welt (SqValues *values, const SqCover *cover, const SqChoices *choices,
                          const SqLengthStyle *style);
