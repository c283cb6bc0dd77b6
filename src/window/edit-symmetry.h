/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Seats made alike on both sides of their front's axis. */
#pragma once

#include "job/symmetry.h"
#include "window/document.h"

/* Whether the cushion's seat is; one without a front is not. */
gboolean sq_edit_is_symmetric (SqDocument *document, SqId cushion);
/* Makes it so: its left or right half, seen from the front, and that half's mirror image. One step;
 * FALSE and nothing where it can't be. */
gboolean sq_edit_make_symmetric (SqDocument *document, SqId cushion, gboolean from_left);
/* Whether both ends of the edge that starts at @edge move when one does, as @document edits
 * symmetrically and the edge crosses *@axis. */
gboolean sq_edit_is_across (SqDocument *document, const SqOutline *outline, SqId edge,
                            SqAxis *axis);
