#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-same.py PROGRAM…: all of them print the same, and a good deal of it."""
import subprocess
import sys

first, *others = [subprocess.run([program], check=True, capture_output=True, text=True).stdout
                  for program in sys.argv[1:]]
if len(first.splitlines()) < 1000:
    raise SystemExit('hardly anything is laid')
for other in others:
    for a, b in zip(first.splitlines(), other.splitlines()):
        if a != b:
            raise SystemExit(f'{a}\n{b}')
    if first != other:
        raise SystemExit('one has more than the other')
