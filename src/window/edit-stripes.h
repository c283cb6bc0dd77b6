/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the stripes lie on a cushion, moved, turned, centred, and which edge has the zip; each with its
 * words. */
#pragma once

#include "window/document.h"

/* Whether the face's cloth has stripes, and which; NULL: it has none. Borrowed from the job. */
const SqCloth *sq_stripes_cloth (const SqJob *job, const SqCover *cover);

/* A job as @job with the stripes of @cover's cushion moved by @by (mm in the coordinates of the
 * cover's face): to whole steps, or so that a stripe or gap is in the middle of the front where
 * that is within @reach_mm. Stripes that were centred on nothing match from now on. NULL where
 * there is nothing to move. New. */
SqJob *sq_stripes_moved (const SqJob *job, const SqCover *cover, SqVector by, double reach_mm);
/* The words for it. Static. */
const char *sq_stripes_moved_words (void);

/* Moves them by @steps of the job across their direction. A row of such steps is one. */
gboolean sq_edit_step_stripes (SqDocument *document, const SqCover *cover, int steps);
/* Front to back becomes side to side, and back. One step. */
void sq_edit_turn_stripes (SqDocument *document, const SqCover *cover);
/* Puts a stripe or gap in the middle of the front. One step. */
void sq_edit_centre_stripes (SqDocument *document, const SqCover *cover, SqCentreOn centre_on);
/* What they are centred on now, as given or by default. */
SqCentreOn sq_stripes_centre_on (const SqJob *job, const SqCover *cover);

/* Puts the zip in the boxing along all of @edge. One step. */
void sq_edit_zip_on_edge (SqDocument *document, SqId cushion, SqId edge);
