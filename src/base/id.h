/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Names that last: what other things refer to carries an id, kept through every edit. */
#pragma once

#include <glib.h>

/* Unique among its kind (cushions and cloths in their job, corners in their cushion, holes
 * included). Never 0, which means "none". */
typedef guint32 SqId;
