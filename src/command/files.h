/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Files for plotters and cutting tables. */
#pragma once

#include "command/options.h"
#include "plan/lays.h"

/* Writes output @out, one of SQ_OUT_DXF, SQ_OUT_SVG and SQ_OUT_HPGL, as @options want it: to a file, or
 * into a folder with a file of each piece or cloth. @entries: lines of the cut list that are wanted;
 * NULL: all. FALSE with @error. */
gboolean sq_command_files (const SqOptions *options, SqOut out, const SqLays *lays,
                           gboolean wrong_side, const GArray *entries, GError **error);
