/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Laying for as long as the command line says. */
#pragma once

#include "command/options.h"
#include "roll/lay-run.h"

/* A lay of @task by @options, the first one at least, however little time there is. @seconds (may
 * be NULL) gets what it took: where the processor's count, all of the program's since it began. New
 * reference. */
SqLay *sq_timed_lay (const SqLayTask *task, const SqOptions *options, double *seconds);
