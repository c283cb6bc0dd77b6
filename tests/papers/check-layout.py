#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-layout.py SQUAB-CUT JOB…: every piece on the first layout sheet is drawn where the plan has
it: all corners of its cut line, at the scale that is written there, are among the points that mutool
finds in the PDF, all of them from the same origin."""
import math
import pathlib
import re
import subprocess
import sys
import tempfile
import json
import xml.etree.ElementTree as ElementTree

MM_PER_PT = 25.4 / 72
# cairo writes places to a few hundredths of a point.
WITHIN_MM = 0.05


def run(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def numbers(text):
    return [float(number) for number in re.findall(r'-?\d*\.?\d+(?:e-?\d+)?', text or '')]


def traced(pdf):
    """The points of all lines on the first page, mm from its upper left corner."""
    page = ElementTree.fromstring(run('mutool', 'draw', '-q', '-F', 'trace', pdf, '1')).find('page')
    for path in page.iter('stroke_path'):
        a, b, c, d, e, f = numbers(path.get('transform')) or (1, 0, 0, 1, 0, 0)
        for node in path:
            if node.tag in ('moveto', 'lineto', 'curveto'):
                key = '3' if node.tag == 'curveto' else ''
                x, y = float(node.get('x' + key)), float(node.get('y' + key))
                yield ((a * x + c * y + e) * MM_PER_PT, (b * x + d * y + f) * MM_PER_PT)


def goes_straight_on(before, here, after):
    """A node within a straight line, which whoever writes the line may leave out."""
    ax, ay = here[0] - before[0], here[1] - before[1]
    bx, by = after[0] - here[0], after[1] - here[1]
    return (before[2] == here[2] == 0
            and abs(ax * by - ay * bx) < 1e-6 * math.hypot(ax, ay) * math.hypot(bx, by))


def corners(plan, placed):
    """Of a placed piece on the roll, mm."""
    ring = plan['cushions'][placed['cushion']]['pieces'][placed['piece']]['cut'][0]
    turn = math.radians(placed['turn'])
    for before, (x, y, bulge), after in zip(ring[-1:] + ring, ring, ring[1:] + ring):
        if goes_straight_on(before, (x, y, bulge), after):
            continue
        yield (x * math.cos(turn) - y * math.sin(turn) + placed['x'],
               x * math.sin(turn) + y * math.cos(turn) + placed['y'])


class Places:
    """Points that are asked for by where they are."""

    def __init__(self, points):
        self.cells = {}
        for point in points:
            self.cells.setdefault(self.cell(*point), []).append(point)

    @staticmethod
    def cell(x, y):
        return round(x / WITHIN_MM), round(y / WITHIN_MM)

    def has(self, x, y):
        i, k = self.cell(x, y)
        return any(math.dist((x, y), point) <= WITHIN_MM
                   for di in (-1, 0, 1) for dk in (-1, 0, 1)
                   for point in self.cells.get((i + di, k + dk), ()))


def check(squab_cut, job, folder):
    pdf, plan_file = folder / 'layout.pdf', folder / 'plan.json'
    subprocess.run([squab_cut, job, '--layout', pdf, '--plan', plan_file, '--paper', 'a4'],
                   check=False, capture_output=True)
    plan = json.loads(plan_file.read_text())
    scale = float(re.search(r'scale 1 : ([\d.]+)', run('pdftotext', '-l', '1', pdf, '-'))[1])
    placed = plan['lays'][0]['placed']
    strip = min(one['strip'] for one in placed)
    wanted = [(x / scale, -y / scale) for one in placed if one['strip'] == strip
              for x, y in corners(plan, one)]
    points = list(traced(pdf))
    places = Places(points)
    first = wanted[0]
    for x, y in points:
        left, top = x - first[0], y - first[1]
        if all(places.has(left + wx, top + wy) for wx, wy in wanted):
            print(f'{pathlib.Path(job).name}: {len(wanted)} corners at 1 : {scale:g}')
            return
    sys.exit(f'{job}: pieces are not drawn where the plan has them')


def with_remnant(name, folder):
    """The job with a remnant of its first cloth, that has a flaw: what is drawn first is the remnant."""
    job = json.loads(pathlib.Path(name).read_text())
    job['cloths'][0] |= {'stock': [{'id': 1, 'kind': 'remnant', 'length': 900, 'width': 800}],
                         'flaws': [{'id': 1, 'stock': 1, 'x': 300, 'y': 20, 'length': 30,
                                    'width': 25}]}
    path = folder / f'remnant-{pathlib.Path(name).name}'
    path.write_text(json.dumps(job))
    return path


with tempfile.TemporaryDirectory() as work:
    for name in sys.argv[2:]:
        check(sys.argv[1], name, pathlib.Path(work))
    remnant = with_remnant(next(name for name in sys.argv[2:] if 'bay-seat' in name),
                           pathlib.Path(work))
    check(sys.argv[1], remnant, pathlib.Path(work))
