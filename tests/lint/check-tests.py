#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-tests.py ROOT: every test program has tests in it, and they ask something."""
import re
import sys

import rooms

problems = []
for path in rooms.sources(sys.argv[1], 'tests', suffixes=('.c',)):
    if path.name.startswith('test-') and 'hand-made' not in path.name:
        text = path.read_text()
        if not re.search(r'g_test_add', text) or not re.search(r'assert', text):
            problems.append(f'{path}: tests nothing')
rooms.finish(problems)
