/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Laying an open instance. */
#pragma once

#include "command/options.h"

/* Lays the instance, writes what is asked for, says on standard error what could not be laid.
 * Prints "name seconds density length" unless something else goes to standard output. Gives the
 * exit status: 0, or 1 where not all could be laid. −1 with @error where it could not be done. */
int sq_command_lay (const SqOptions *options, GError **error);
