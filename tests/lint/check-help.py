#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-help.py ROOT SQUAB-CUT PAGE…: what help calls a thing in the window is what the window calls
it; it knows the options of squab-cut, and no others; its links lead somewhere, its pictures are there,
and every page is in the guide."""
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

problems, told, pictures = [], set(), set()
for page in pages:
    tree = ElementTree.parse(page)
    for element in tree.iter(MALLARD + 'gui'):
        label = ' '.join(element.text.split())
        if label not in labels:
            problems.append(f'{page}: the window has no “{label}”')
    here = pathlib.Path(page).parent
    for link in tree.iter(MALLARD + 'link'):
        name, _, section = link.get('xref').partition('#')
        if not (here / f'{name}.page').exists():
            problems.append(f'{page}: no page {name}')
        elif section and f'<section id="{section}"' not in (here / f'{name}.page').read_text():
            problems.append(f'{page}: no section {section} in {name}')
    if tree.getroot().get('type') != 'guide' and not any(
            link.get('type') == 'guide' for link in tree.getroot().iterfind(f'{MALLARD}info/*')):
        problems.append(f'{page}: not in the guide')
    pictures |= {(here / media.get('src')).resolve() for media in tree.iter(MALLARD + 'media')}
    told |= set(OPTION.findall(' '.join(tree.getroot().itertext())))

drawn = set((root / 'help/C/figures').resolve().iterdir())
problems += [f'{path}: not there' for path in pictures - drawn]
problems += [f'{path}: on no page' for path in drawn - pictures]

there = set(OPTION.findall(subprocess.run([squab_cut, '--help'], capture_output=True, text=True,
                                          check=True).stdout))
problems += [f'help tells of {option}, which squab-cut has not' for option in sorted(told - there)]
problems += [f'help does not tell of {option}'
             for option in sorted(there - told - {'--help', '--version'})]
print('\n'.join(problems))
sys.exit(bool(problems))
