/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands on the label of a piece. */
#pragma once

#include "plan/spreads.h"

/* Texts of their own, but for face; "" where there is nothing to say. */
typedef struct
{
  char *number;     /* in the cut list */
  char *name;       /* "Right and back boxing" */
  const char *face; /* "TOP", "UNDERSIDE", in capitals: it has a front; else NULL. Static */
  char *bundle;     /* "6 plies · copies 1–6 of 16" */
  char *cushion;    /* its name */
  char *which;      /* "cushion 1 of 2 · as drawn", and "piece 1 of 2" of that cushion */
  char *place;      /* "at the right and the back, its top above" */
  char *lies;       /* "Harbour stripe · Remnant 1" */
  char *job;        /* "Bay seat · For Pier House" */
  char *state;      /* "Revision A · 2026-11-25" */
} SqLabelText;

/* Of bundle @bundle of @spreads; @date as it is to be read. */
void sq_words_label (SqLabelText *label, const SqSpreads *spreads, const SqBundle *bundle,
                     const char *date);
void sq_label_text_clear (SqLabelText *label);

/* That there is nothing to label. Static. */
const char *sq_words_no_labels (void);
