/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a fuzzer of one reader is: the fuzzing engine or replay.c calls it with any bytes at all. */
#pragma once

#include <glib.h>

/* Reads @data, and aborts if what comes out breaks the reader's promises. Returns 0. */
int LLVMFuzzerTestOneInput (const guint8 *data, gsize size);
