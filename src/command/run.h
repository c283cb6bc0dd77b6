/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Doing what the command line asks for. */
#pragma once

#include "command/options.h"

/* Opens the job, writes what is asked for, says its problems on standard error. Gives the exit
 * status: 0, or 1 where the job has problems of severity error. −1 with @error where it could not
 * be done. */
int sq_command_run (const SqOptions *options, GError **error);
