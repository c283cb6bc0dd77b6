/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Papers made on a thread, so that choosing them waits for none. */
#pragma once

#include "window/background.h"
#include "window/kept-spec.h"

/* Begins to make the papers of @kinds (bits) from @spec (a reference is taken) for @owner. @found gets
 * arrays of SqPaper: those that are ready, again and again, and all of them at last. */
SqBackground *sq_make_papers (GObject *owner, guint kinds, SqKeptSpec *spec,
                              SqBackgroundFound found);
