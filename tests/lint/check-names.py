#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-names.py NM ARCHIVE…: what a room shows to others begins with sq_."""
import subprocess
import sys

import rooms

problems = []
nm, *archives = sys.argv[1:]
for archive in archives:
    listing = subprocess.run([nm, '--extern-only', '--defined-only', '--format=posix', archive],
                             check=True, capture_output=True, text=True).stdout
    names = [line.split()[0] for line in listing.splitlines() if len(line.split()) > 1]
    problems += [f'{archive}: shows {name}' for name in names if not name.startswith('sq_')]
rooms.finish(problems)
