/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which pins of a task can be kept to. */
#pragma once

#include "roll/lay-task.h"

/* Moves those of task->pins that can't be to task->bad_pins; of two that can't both be the later
 * one. */
void sq_lay_pins_judge (SqLayTask *task);
