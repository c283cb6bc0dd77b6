/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Beside a target in its libFuzzer program: a critical message is a find there too, as it is under
 * g_test. */
#include "fuzz.h"

int LLVMFuzzerInitialize (int *argc, char ***argv);

int
LLVMFuzzerInitialize (int *argc G_GNUC_UNUSED, char ***argv G_GNUC_UNUSED)
{
  g_log_set_always_fatal (G_LOG_FATAL_MASK | G_LOG_LEVEL_CRITICAL | G_LOG_LEVEL_WARNING);
  return 0;
}
