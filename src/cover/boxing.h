/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The boxing round one ring: into which strips it is cut, and where they are joined. Internal to
 * the room. */
#pragma once

#include "cover/making.h"

typedef enum
{
  SQ_STRIP_PLAIN,
  SQ_STRIP_ZIP, /* an upper and a lower strip with the zip between */
} SqStripKind;

/* One strip's stretch of the ring; stations as in SqFinishedRing, which may be below 0 where the
 * strip runs over the ring's start. */
typedef struct
{
  SqStripKind kind;
  double from_mm, to_mm;
  gboolean tuck_before, tuck_after; /* it runs on over a zip's end there and folds back */
} SqStrip;

/* Where a ring's boxing is opened by a zip; to > from. */
typedef struct
{
  gboolean is_there;
  double from_mm, to_mm;
} SqZipRun;

/* Cuts the boxing round ring @ring into strips that the cloth allows: at corners or clear of them,
 * at back corners first, never in the middle of the front; between equal places the one that leaves
 * the longest shortest strip (common practice, no source). New array of SqStrip in order of travel:
 * plain ones from the zip's end round to its start, then those of the zip. NULL where no strip of
 * any use fits the cloth. */
GArray *sq_boxing_divide (const SqMaking *making, guint ring, const SqZipRun *zip);

/* The same for boxing that stands from @from_mm to @to_mm only, its ends sewn to something else. */
GArray *sq_boxing_divide_part (const SqMaking *making, guint ring, double from_mm, double to_mm);

/* Whether boxing is cut along the roll (plain cloth, stripes side to side) rather than upright,
 * across it. */
gboolean sq_boxing_lies_along (const SqChoices *choices);
