/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Tells in the test's log of a law that does not hold. */
#pragma once

#include "laws/laws.h"

/* What is @wrong with @job, @seed being what it came from, and with the smallest job like it. */
void report_broken (guint32 seed, const LawEntry *entry, const SqJob *job, const char *wrong);
