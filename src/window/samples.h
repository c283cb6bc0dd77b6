/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sample jobs that come with the program. */
#pragma once

#include <gio/gio.h>

/* Their files, by name; new array of GFile. Looked for in $SQUAB_DATADIR (a build not installed
 * yet sets it), else where the program's data are installed. */
GPtrArray *sq_samples_list (void);
