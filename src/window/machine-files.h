/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The place where files for plotters and cutting tables are chosen. */
#pragma once

#include <gtk/gtk.h>

#include "window/machine-choice.h"

#define SQ_TYPE_MACHINE_FILES (sq_machine_files_get_type ())
G_DECLARE_FINAL_TYPE (SqMachineFiles, sq_machine_files, SQ, MACHINE_FILES, GtkBox)

/* Emits "save" (no parameters) when files are wanted. What is chosen is remembered from one time to the
 * next. */
GtkWidget *sq_machine_files_new (void);
SqMachineChoice sq_machine_files_choice (SqMachineFiles *files);
/* Whether files can be saved now. */
void sq_machine_files_set_ready (SqMachineFiles *files, gboolean is_ready);
