/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Why a dragged thing lands where it does. */
#pragma once

#include "base/length.h"
#include "job/cushion.h"
#include "job/snap.h"

/* "square to A–B", as it stands beside a guide; letters are those of @cushion, lengths in @style.
 * New text. */
char *sq_words_snap_reason (const SqCushion *cushion, SqDragKind drag, const SqSnapReason *reason,
                            const SqLengthStyle *style);
