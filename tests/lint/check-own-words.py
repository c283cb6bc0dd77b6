#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-own-words.py ROOT: no notes to self, no paths of one machine, no word of a tracker."""
import pathlib
import re
import sys

import rooms

FOLDERS = ('src', 'tests', 'data', 'po', 'help')
NOT_TEXT = {'.png', '.mo'}
# Each written so that this file does not find itself.
FOREIGN = re.compile(r'\b(TO[D]O|FIX[M]E|X[X]X|HAC[K])\b|(?<![\w.}/])/(home|wor[k]|root|Users|tmp)/\w'
                     r'|\.\./shared[/]|\b[Ii]ssue #?\d|\b[Pp]ull request')

root = pathlib.Path(sys.argv[1])
paths = [path for folder in FOLDERS for path in sorted((root / folder).rglob('*'))]
paths += sorted(path for path in root.iterdir() if path.name not in ('LICENSE', '.git'))
problems = []
for path in paths:
    if not path.is_file() or path.suffix in NOT_TEXT or '__pycache__' in path.parts:
        continue
    for number, line in enumerate(path.read_bytes().decode(errors='replace').splitlines(), 1):
        if found := FOREIGN.search(line):
            problems.append(f'{path}:{number}: {found[0]}')
rooms.finish(problems)
