#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-plan.py SQUAB-CUT JOB: the trade's worked plate, read from the plan that squab-cut writes.

A 25 × 25 in plate with 2 3/4 in notches, corner allowance 1/2 in and perimeter allowance 3/8 in
gives a top of 18 1/2 × 18 1/2 in between corner seams, skirts of 2 7/8 in, and an underside whose
sew line is 18 1/2 in square. The figures follow from plane geometry; that makers cut like this is
common practice, no source."""
import json
import subprocess
import sys

INCH = 25.4
WITHIN = 1e-6

problems = []


def expect(what, found, expected):
    if abs(found - expected) > WITHIN:
        problems.append(f'{what}: {found} instead of {expected}')


def box(ring):
    xs, ys = [node[0] for node in ring], [node[1] for node in ring]
    return max(xs) - min(xs), max(ys) - min(ys)


squab_cut, job = sys.argv[1:]
text = subprocess.run([squab_cut, job, '--plan', '-'], check=True, capture_output=True, text=True)
plate, underside = json.loads(text.stdout)['cushions'][0]['pieces']

for what, found in zip(('plate across', 'plate along'), box(plate['cut'][0])):
    expect(what, found, 25 * INCH)
expect('plate width', plate['width'], 635.0)
expect('plate height', plate['height'], 635.0)
if len(plate['corner_notches']) != 4 or len(plate['skirts']) != 4:
    problems.append('not four notches and four skirts')
for notch in plate['corner_notches']:
    expect(f'notch {notch["corner"]}', notch['leg'], 2.75 * INCH)
for skirt in plate['skirts']:
    expect(f'skirt {skirt["edge"]}', skirt['depth'], 2.875 * INCH)
for what, found in zip(('sew line across', 'sew line along'), box(underside['sew'][0])):
    expect(f'underside {what}', found, 18.5 * INCH)
for what, found in zip(('cut across', 'cut along'), box(underside['cut'][0])):
    expect(f'underside {what}', found, 19.25 * INCH)

# Between corner seams: the sew line's corners that are nearest to the middle.
inner = [node for node in plate['sew'][0]
         if WITHIN > max(0, -node[0], -node[1], node[0] - 469.9, node[1] - 469.9)]
if len(inner) != 4:
    problems.append(f'{len(inner)} corners of the top')
else:
    for found in box(inner):
        expect('top between corner seams', found, 18.5 * INCH)

raise SystemExit('\n'.join(problems) if problems else 0)
