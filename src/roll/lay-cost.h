/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which of two lays is better. */
#pragma once

#include "roll/lay.h"

/* < 0 where @a is better than @b, both of @task: first what is laid counts, by priority, then by area;
 * then the cloth that must be bought; then the length taken of all strips. */
int sq_lay_compare (const SqLayTask *task, const SqLay *a, const SqLay *b);
