#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-potfiles.py ROOT: po/POTFILES lists exactly the files with words for people in them."""
import pathlib
import re
import sys

import rooms

WORDS = re.compile(r'(?<!\w)(_|N_|C_|NC_|ngettext|g_dngettext) ?\(\s*"|translatable="yes"')

root = pathlib.Path(sys.argv[1])
listed = (root / 'po' / 'POTFILES').read_text().split()
speaking = [str(path.relative_to(root))
            for path in rooms.sources(root, 'src', 'data', suffixes={'.c', '.h', '.ui', '.in'})
            if WORDS.search(path.read_text()) or path.name.endswith(('.desktop.in', '.xml.in'))]
problems = [f'po/POTFILES lacks {name}' for name in speaking if name not in listed]
problems += [f'po/POTFILES lists {name} for nothing' for name in listed if name not in speaking]
if listed != sorted(listed):
    problems.append('po/POTFILES is not sorted')
rooms.finish(problems)
