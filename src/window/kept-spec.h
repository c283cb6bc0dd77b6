/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What papers are made from, kept as long as they are worked on, on whatever thread. */
#pragma once

#include "papers/paper.h"

typedef struct
{
  SqPaperSpec spec; /* borrows from the rest */
  SqLays *lays;
  GArray *entries; /* NULL: all */
  char *date;
} SqKeptSpec;

/* New, with all that @spec borrows. An atomic reference count: g_atomic_rc_box_acquire(), … */
SqKeptSpec *sq_kept_spec_new (const SqPaperSpec *spec);
void sq_kept_spec_unref (SqKeptSpec *kept);
