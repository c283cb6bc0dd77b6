#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# check-format.sh ROOT: all C is laid out as .clang-format says.
cd "$1" && find src tests -name '*.[ch]' -print0 | sort -z |
  xargs -0 -r clang-format --dry-run -Werror
