/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The ways out for a cushion with a face wider than its cloth, side by side: whether each can be, and
 * what it takes. */
#pragma once

#include "plan/ways.h"

typedef enum
{
  SQ_WIDE_TWO_JOINS, /* a middle and two sides, joined on the repeat */
  SQ_WIDE_DIVIDE,    /* into several cushions beside each other, as few as go */
  SQ_WIDE_TURN,      /* the cloth's length from side to side, or, where it is, front to back */
  SQ_WIDE_CLOTH,     /* wider cloth */
} SqWideKind;
#define SQ_N_WIDE_KINDS 4

typedef struct
{
  SqWideKind kind;
  GPtrArray
      *cushions;   /* of SqCushion, in the cushion's stead: the first has its id, others have new
                          ones of the job */
  double width_mm; /* WIDER_CLOTH: the usable width it takes, of face or underside; else 0 */
  SqWay way;       /* all its figures, of all these cushions together; as is the first of them */
} SqWideWay;

/* Immutable, shared by reference. */
typedef struct
{
  gint ref_count;
  SqCushion *cushion; /* as it was asked about */
  GArray *ways;       /* of SqWideWay, in the order of SqWideKind; none where no face is too wide */
  gint in_use;        /* which of them the cushion is already, or −1 */
  gboolean has_lays;
} SqWide;

/* The ways out for @cushion of @job; @with_lays: with what cloth is to be bought, from a first lay of
 * each. What wider cloth costs is not known. Pure; may run on any thread. Long work for @watch (may be
 * NULL), NULL if it was stopped. New reference. */
SqWide *sq_wide_new (const SqJob *job, const SqCushion *cushion, gboolean with_lays,
                     const SqTask *watch);
SqWide *sq_wide_ref (const SqWide *wide);
void sq_wide_unref (SqWide *wide);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqWide, sq_wide_unref)

/* Borrowed. */
const SqWideWay *sq_wide_way (const SqWide *wide, guint i);

/* "two-joins", "divide", "turn", "wider-cloth": as files have it. Static. */
const char *sq_wide_kind_name (SqWideKind kind);

/* @job with what @way has in the stead of @cushion: new. NULL where @cushion is not in it, or where
 * the way is no edit of the job (wider cloth). */
SqJob *sq_wide_apply (const SqWideWay *way, const SqCushion *cushion, const SqJob *job);
