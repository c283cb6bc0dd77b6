/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Kinds as their boxes alone: what is laid by boxes knows no more of a piece. */
#pragma once

#include "roll/lay-cuts.h"
#include "roll/lay-kinds.h"
#include "roll/lay-phase.h"

/* A kind in one pose. Its origin is that of the cut line's box, as in SqLaySpot. */
typedef struct
{
  gint64 length, width;
  SqLayRect cut;      /* what counts, from the origin: see sq_lay_cut_box */
  SqLayPhase *phases; /* by strip */
} SqLayForm;

typedef struct
{
  SqLayForm *forms; /* one for each pose of the kind */
  guint n;
} SqLayKindForms;

typedef struct
{
  const SqLayKinds *kinds;
  SqLayKindForms *of_kind;
  gint64 least_length, least_width; /* of any form */
} SqLayForms;

/* @kinds is borrowed and must outlive it. */
SqLayForms *sq_lay_forms_new (const SqLayKinds *kinds);
void sq_lay_forms_free (SqLayForms *forms);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLayForms, sq_lay_forms_free)

/* A strip with as much room beyond its edges as half a gap may take. */
SqLayRect sq_lay_strip_rect (const SqLayStrip *strip);
/* @rect as far as it is on the cloth. */
SqLayRect sq_lay_rect_on_cloth (const SqLayStrip *strip, const SqLayRect *rect);
double sq_lay_rect_area (const SqLayRect *rect);
/* Whether they have more in common than an edge. */
gboolean sq_lay_rects_meet (const SqLayRect *a, const SqLayRect *b);
/* What @form takes with its origin at (x, y). */
SqLayRect sq_lay_form_rect (const SqLayForm *form, gint64 x, gint64 y);

/* Where the origin of @form may be within @rect and on the cloth, patterns aside: corners of *room,
 * both included. FALSE where it has no room. */
gboolean sq_lay_form_room (const SqLayForm *form, const SqLayStrip *strip, const SqLayRect *rect,
                           SqLayRect *room);

/* Why what was not laid of kind @kind was not: by all strips as they are when empty. */
SqUnlaidWhy sq_lay_forms_why (const SqLayForms *forms, guint kind);
