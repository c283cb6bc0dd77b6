/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The kinds of ways that are compared, and a cushion's choices changed to one of them. Internal to the
 * room. */
#pragma once

#include "job/job.h"

typedef struct
{
  SqBuild build;
  gboolean welt;  /* boxed with a welt; of others: as the cushion has it */
  gboolean mixed; /* folded, some edges boxed */
} SqWayKind;

#define SQ_N_WAY_KINDS 8
/* In the order they are shown in. */
extern const SqWayKind sq_way_kinds[SQ_N_WAY_KINDS];

/* Which of them @cushion of @job is. */
guint sq_way_kind_of (const SqJob *job, const SqCushion *cushion);

/* @cushion as one of @kind, with what that way can't have left to the rules. NULL where it would be
 * the same as another kind. */
SqCushion *sq_way_kind_apply (const SqWayKind *kind, const SqCushion *cushion);
