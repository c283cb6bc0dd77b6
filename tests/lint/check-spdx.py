#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-spdx.py ROOT: every file that can carry a comment names its licence at its top."""
import sys

import rooms

MARK = 'SPDX-License-Identifier: GPL-3.0-or-later'
SHARED = {'org.squab.Squab.metainfo.xml.in'}  # software centres want it freer
SUFFIXES = {'.c', '.h', '.py', '.sh', '.build', '.css', '.ui', '.svg', '.in', '.page', '.xml', '.xsl'}

problems = []
for path in rooms.sources(sys.argv[1], 'src', 'tests', 'data', 'po', 'help', suffixes=SUFFIXES):
    if path.name in SHARED:
        continue
    lines = path.read_text().split('\n', 3)[:3]
    # C begins with it; scripts and XML have a first line of their own.
    if not any(MARK in line for line in (lines[:1] if path.suffix in ('.c', '.h') else lines)):
        problems.append(f'{path}: no licence at the top')
rooms.finish(problems)
