/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Saving files for plotters and cutting tables: where to, made on a thread, nothing overwritten that was
 * not asked about. */
#pragma once

#include "plan/lays.h"
#include "window/machine-choice.h"
#include "window/saving.h"

/* @n files are saved, the first as @first in @folder; *@is_large is TRUE where one goes beyond
 * SQ_HPGL_MOST_UNITS. */
typedef void (*SqMachineFilesSaved) (GtkWindow *parent, guint n, const char *first,
                                     const char *folder, gboolean is_large);

/* Asks where to save what @choice takes of the pieces @entries (NULL: all) of @lays, of which all is
 * mirrored where the cloth's @wrong_side is marked, and saves it by @saving. @saved is told if all was
 * saved; what went wrong @parent says itself. @title: of the job. */
void sq_save_machine_files (GtkWindow *parent, SqSaving *saving, const SqMachineChoice *choice,
                            const SqLays *lays, gboolean wrong_side, const GArray *entries,
                            const char *title, SqMachineFilesSaved saved);
