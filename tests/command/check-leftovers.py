#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-leftovers.py SQUAB-CUT FOLDER: what squab-cut says is left of the cloth of every job in FOLDER
and of some others, looked over by GEOS from what is written and the job alone: it is on the cloth, no
piece and no flaw reaches into it, none lies over another, each is worth keeping, the first is the
largest, and nothing else that is worth keeping is left."""
import copy
import itertools
import json
import pathlib
import subprocess
import sys
import tempfile

from shapely import affinity
from shapely.geometry import Polygon, box

DRAWN_IN_MM = 0.005
ROUNDED_MM = 0.0015  # places and corners are told in whole micrometres
NARROWER_MM = 1  # than it might be
INCH = 25.4
# along, across
LEAST = [(12 * INCH, 18 * INCH), (18 * INCH, 12 * INCH), (36 * INCH, 4 * INCH)]

problems = []


def is_worth(along, across):
    return any(along >= least[0] and across >= least[1] for least in LEAST)


def shapes_on(plan, lay, strip):
    """What lies there, with holes filled: they are of the piece."""
    for placed in lay['placed']:
        if placed['strip'] == strip:
            cut = plan['cushions'][placed['cushion']]['pieces'][placed['piece']]['cut']
            turned = affinity.rotate(Polygon([node[:2] for node in cut[0]]), placed['turn'],
                                     origin=(0, 0))
            yield affinity.translate(turned, placed['x'], placed['y'])


def flaws_on(cloth, stock, length, width):
    for flaw in cloth.get('flaws', []):
        if flaw.get('stock', 0) == stock:
            shape = box(flaw['x'], flaw['y'], flaw['x'] + flaw['length'], flaw['y'] + flaw['width'])
            shape = shape.intersection(box(0, 0, length, width))
            if shape.area > 0:
                yield shape


def largest(boxes, length, width):
    """The largest rectangle worth keeping that none of the boxes reaches into: between every two
    heights at which something begins or ends, all gaps along; less what need not be told of it. 0:
    there is none."""
    heights = sorted({0, width} | {y for b in boxes for y in (b[1], b[3]) if 0 < y < width})
    best = 0
    for low, high in itertools.combinations(heights, 2):
        if high - low < min(least[1] for least in LEAST):
            continue
        end = 0
        inside = sorted((b[0], b[2]) for b in boxes if b[1] < high and b[3] > low)
        for x0, x1 in inside + [(length, length)]:
            along, across = x0 - end - NARROWER_MM, high - low - NARROWER_MM
            if is_worth(along, across):
                best = max(best, along * across)
            end = max(end, x1)
    return best


def check_strip(where, shapes, left, length, width):
    boxes = [box(l['x'], l['y'], l['x'] + l['along'], l['y'] + l['across']) for l in left]
    cloth = box(0, 0, length, width).buffer(ROUNDED_MM)
    for one, l in zip(boxes, left):
        if not cloth.contains(one):
            problems.append(f'{where}: {l} is off the cloth')
        if not is_worth(l['along'], l['across']):
            problems.append(f'{where}: {l} is not worth keeping')
        if any(one.buffer(-DRAWN_IN_MM).intersects(shape) for shape in shapes):
            problems.append(f'{where}: something reaches into {l}')
    for a, b in itertools.combinations(boxes, 2):
        if a.buffer(-ROUNDED_MM).intersects(b):
            problems.append(f'{where}: two lie over each other')
    # Rounded pieces leave more than their boxes do; never less.
    taken = [shape.bounds for shape in shapes]
    free = largest(taken, length, width)
    if free > max([b.area for b in boxes], default=0):
        problems.append(f'{where}: {free} mm² in one are not told')
    rest = largest(taken + [b.bounds for b in boxes], length, width)
    if rest > 0:
        problems.append(f'{where}: {rest} mm² more are worth keeping')


def check_job(squab_cut, name, job):
    run = subprocess.run([squab_cut, job, '--plan', '-', '--flatten', '0.001'],
                         capture_output=True, text=True)
    if run.returncode not in (0, 1):
        raise SystemExit(run.stderr)
    plan, written = json.loads(run.stdout), json.loads(pathlib.Path(job).read_text())
    cloths = {cloth['id']: cloth for cloth in written.get('cloths', [])}
    n = 0
    for lay, bought in zip(plan['lays'], plan['purchase']):
        left = bought['leftovers']
        areas = [l['along'] * l['across'] for l in left]
        if areas != sorted(areas, reverse=True):
            problems.append(f'{name}: not the largest first')
        for strip, of in enumerate(lay['strips']):
            here = [l for l in left if l['strip'] == strip]
            if of['length'] == 0:
                if here:
                    problems.append(f'{name}: {here} of what is not used')
                continue
            length = of.get('whole_length',
                            max(bought['buy'] - bought['squaring'] - bought['pattern'],
                                of['length']))
            shapes = list(shapes_on(plan, lay, strip))
            shapes += flaws_on(cloths.get(lay['cloth'], {}), of.get('stock', 0), length,
                               of['width'])
            check_strip(f'{name}, cloth {lay["cloth"]}, strip {strip}', shapes, here, length,
                        of['width'])
            n += len(here)
    print(f'{name}: {n} leftovers')
    return n


SEAT = {'id': 1, 'count': 1, 'thickness': 60,
        'outline': [{'x': 0, 'y': 0, 'front': True}, {'x': 520, 'y': 0, 'bow': 45},
                    {'x': 480, 'y': 410, 'radius': 40}, {'x': 0, 'y': 430, 'bow': -25}]}
# Remnants and a bolt, flaws on them and on the roll; a pattern; more and fewer seats.
CLOTHS = [
    {'id': 2, 'width': 1400},
    {'id': 2, 'width': 2000, 'one_way': True, 'repeat': {'across': 127.3, 'along': 311.1}},
    {'id': 2, 'width': 1380,
     'stock': [{'id': 4, 'kind': 'remnant', 'length': 1900, 'width': 1020},
               {'id': 9, 'kind': 'bolt', 'length': 2900}],
     'flaws': [{'stock': 4, 'x': 800, 'y': 350, 'length': 40, 'width': 30},
               {'stock': 9, 'x': 1480, 'y': 0, 'length': 12, 'width': 1400},
               {'x': 500, 'y': 700, 'length': 20, 'width': 20}]},
]


def main(squab_cut, folder):
    n = sum(check_job(squab_cut, path.stem, path)
            for path in sorted(pathlib.Path(folder).glob('*.squab')))
    for i, (cloth, count) in enumerate(itertools.product(CLOTHS, (1, 4, 9))):
        job = {'format': 'squab job', 'version': 1, 'units': 'mm', 'cloths': [cloth],
               'cushions': [copy.deepcopy(SEAT) | {'count': count, 'cloth': {'face': 2}}]}
        with tempfile.NamedTemporaryFile('w', suffix='.squab') as file:
            json.dump(job, file)
            file.flush()
            n += check_job(squab_cut, f'made {i}', file.name)
    if n < 20:
        problems.append(f'only {n} leftovers in all')


main(*sys.argv[1:])
raise SystemExit('\n'.join(problems) if problems else 0)
