#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-help.py ROOT SQUAB-CUT PAGE…: what help calls a thing in the window is what the window calls
it, and it knows the options of squab-cut, and no others."""
import pathlib
import re
import subprocess
import sys
import xml.etree.ElementTree as ElementTree

MALLARD = '{http://projectmallard.org/1.0/}'
SAID = re.compile(r'\bN?_ \(\s*((?:"(?:[^"\\]|\\.)*"\s*)+)\)|translatable="yes"[^>]*>([^<]*)<')
OPTION = re.compile(r'(?<![\w-])--[a-z][a-z-]+')


def plain(label):
    return label.replace('_', '').rstrip('…')


root, squab_cut, pages = pathlib.Path(sys.argv[1]), sys.argv[2], sys.argv[3:]
labels = set()
for path in (root / 'src').rglob('*'):
    if path.suffix in ('.c', '.ui'):
        for code, markup in SAID.findall(path.read_text()):
            labels.add(plain(''.join(re.findall(r'"((?:[^"\\]|\\.)*)"', code)) or markup))

problems, told = [], set()
for page in pages:
    tree = ElementTree.parse(page)
    for element in tree.iter(MALLARD + 'gui'):
        label = ' '.join(element.text.split())
        if label not in labels:
            problems.append(f'{page}: the window has no “{label}”')
    told |= set(OPTION.findall(' '.join(tree.getroot().itertext())))

there = set(OPTION.findall(subprocess.run([squab_cut, '--help'], capture_output=True, text=True,
                                          check=True).stdout))
problems += [f'help tells of {option}, which squab-cut has not' for option in sorted(told - there)]
problems += [f'help does not tell of {option}'
             for option in sorted(there - told - {'--help', '--version'})]
print('\n'.join(problems))
sys.exit(bool(problems))
