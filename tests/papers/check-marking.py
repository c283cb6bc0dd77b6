#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-marking.py SQUAB-CUT JOB…: whoever chalks a cloth by nothing but the figures that poppler reads in
the marking guide cuts what the plan has: every polygon, drawn from its points, is the placed cut line
to 1/32 in, in inches and in millimetres, on either side of the cloth."""
import json
import math
import pathlib
import re
import subprocess
import sys
import tempfile

from shapely.geometry import LineString, Polygon, box

WITHIN_MM = 25.4 / 32
UNITS_MM = {'in': 25.4, 'mm': 1.0, 'cm': 10.0}
FIGURE = r'(?:\d+ \d+⁄\d+|\d+⁄\d+|\d+(?:\.\d+)?)'
POINT = re.compile(rf'([a-z]{{1,2}}) ({FIGURE}) ({FIGURE})(?: (arc|hole).*)?$')
RANGE = re.compile(rf'(along|across) ({FIGURE}) – ({FIGURE})$')
PIECE = re.compile(r'\d+ +[^\W\d].*$')


def run(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def figure(text):
    """12 3⁄8 as a number."""
    value = 0
    for part in text.split():
        upper, _, lower = part.partition('⁄')
        value += int(upper) / int(lower) if lower else float(upper)
    return value


class Piece:
    """What is read about one."""

    def __init__(self):
        self.rings = [[]]
        self.ranges = {}

    def outline(self, unit):
        if self.ranges:
            x0, x1 = self.ranges['along']
            y0, y1 = self.ranges['across']
            return box(x0 * unit, y0 * unit, x1 * unit, y1 * unit)
        rings = [drawn([(x * unit, y * unit, arc) for x, y, arc in ring]) for ring in self.rings]
        return Polygon(rings[0], rings[1:])


def arc_through(a, b, c):
    """Points from a to before c on the circle through the three."""
    bx, by, cx, cy = b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]
    twice = 2 * (bx * cy - by * cx)
    if abs(twice) < 1e-9:
        return [a, b]
    ux = (cy * (bx * bx + by * by) - by * (cx * cx + cy * cy)) / twice
    uy = (bx * (cx * cx + cy * cy) - cx * (bx * bx + by * by)) / twice
    start, end = math.atan2(-uy, -ux), math.atan2(cy - uy, cx - ux)
    way = 1 if twice > 0 else -1
    sweep = (way * (end - start)) % (2 * math.pi)
    return [(a[0] + ux + math.hypot(ux, uy) * math.cos(start + way * sweep * k / 40),
             a[1] + uy + math.hypot(ux, uy) * math.sin(start + way * sweep * k / 40))
            for k in range(40)]


def drawn(points):
    """The ring through them: straight, but an arc through each that says so."""
    line = []
    for i, (x, y, arc) in enumerate(points):
        middle = points[(i + 1) % len(points)]
        after = points[(i + 2) % len(points)]
        if arc:
            continue
        line += arc_through((x, y), middle[:2], after[:2]) if middle[2] else [(x, y)]
    return line


def read(pdf, side):
    """All pieces, strip by strip, cloth by cloth, as the pages tell them; not as they draw them: the lists
    of a strip begin after the scale of its last drawing."""
    text = run('pdftotext', '-raw', pdf, '-').replace('\u00a0', ' ').replace('⁄ ', '⁄')
    cloths = []
    for cloth in re.split('^\f?Marking guide(?:, top ply)?: ', text, flags=re.M)[1:]:
        strips = re.split(f'^\f?{side.upper()} SIDE UP$', cloth, flags=re.M)[1:]
        cloths.append([pieces(re.split(' SIDE UP · scale .*', strip)[-1]) for strip in strips])
    return cloths


def pieces(text):
    """What one strip's lists tell."""
    found, piece = {}, None
    for line in text.splitlines():
        line = line.strip('\f')
        if PIECE.match(line):
            piece = found.setdefault(line, Piece())
        elif match := RANGE.match(line):
            piece.ranges[match[1]] = figure(match[2]), figure(match[3])
        elif match := POINT.match(line):
            if match[4] == 'hole':
                piece.rings.append([])
            piece.rings[-1].append((figure(match[2]), figure(match[3]), match[4] == 'arc'))
    return found


def flattened(ring):
    """A ring of the plan as a line, its arcs by their bulges."""
    line = []
    for (x0, y0, bulge), (x1, y1, _) in zip(ring, ring[1:] + ring[:1]):
        middle = ((x0 + x1) / 2 + bulge * (y1 - y0) / 2, (y0 + y1) / 2 - bulge * (x1 - x0) / 2)
        line += arc_through((x0, y0), middle, (x1, y1)) if bulge else [(x0, y0)]
    return line


def planned(plan, lay, placed, wrong_side):
    """A placed piece on the side that lies up."""
    turn = math.radians(placed['turn'])
    width = lay['strips'][placed['strip']]['width']

    def on(x, y):
        along = x * math.cos(turn) - y * math.sin(turn) + placed['x']
        across = x * math.sin(turn) + y * math.cos(turn) + placed['y']
        return along, width - across if wrong_side else across

    assert not placed['mirrored']
    cut = plan['cushions'][placed['cushion']]['pieces'][placed['piece']]['cut']
    rings = [[on(x, y) for x, y in flattened(ring)] for ring in cut]
    return Polygon(rings[0], rings[1:])


def lines(polygon, every_mm=None):
    """Its rings; with points on them every so often."""
    rings = []
    for ring in [polygon.exterior, *polygon.interiors]:
        line = []
        for (x0, y0), (x1, y1) in zip(ring.coords, ring.coords[1:]):
            n = math.ceil(math.dist((x0, y0), (x1, y1)) / every_mm) if every_mm else 1
            line += [(x0 + (x1 - x0) * k / n, y0 + (y1 - y0) * k / n) for k in range(n)]
        rings.append(LineString(line + line[:1]))
    return rings


def apart(a, b):
    """Hausdorff's distance of two outlines, ring by ring, looked at every 3 mm."""
    assert len(a.interiors) == len(b.interiors)
    return max(distance
               for rings, others in ((lines(a, 3), lines(b)), (lines(a), lines(b, 3)))
               for ring, other in zip(rings, others)
               for distance in [ring.hausdorff_distance(other)])


def compare(job, plan, cloths, unit, wrong_side):
    worst = count = 0
    assert len(cloths) == len(plan['lays']), f'{job}: {len(cloths)} cloths'
    for lay, strips in zip(plan['lays'], cloths):
        used = sorted({placed['strip'] for placed in lay['placed']})
        assert len(strips) == len(used), f'{job}: {len(strips)} strips'
        for strip, told in zip(used, strips):
            wanted = [planned(plan, lay, placed, wrong_side)
                      for placed in lay['placed'] if placed['strip'] == strip]
            assert len(told) == len(wanted), f'{job}: {len(told)} pieces for {len(wanted)}'
            for name, piece in told.items():
                outline = piece.outline(unit)
                nearest = min(wanted, key=lambda other: outline.centroid.distance(other.centroid))
                wanted.remove(nearest)
                mm = apart(outline, nearest)
                assert mm <= WITHIN_MM + 1e-6, f'{job}: {name} is {mm:.3f} mm off'
                worst = max(worst, mm)
                count += 1
    return count, worst


def check(squab_cut, name, folder):
    job = json.loads(pathlib.Path(name).read_text())
    pdf, plan_file = folder / 'marking.pdf', folder / 'plan.json'
    for units in ('in', 'mm'):
        path = folder / pathlib.Path(name).name
        path.write_text(json.dumps(job | {'units': units}))
        for side in ('right', 'wrong'):
            subprocess.run([squab_cut, path, '--marking', pdf, '--plan', plan_file, '--paper', 'a4',
                            '--marked-on', side], check=False, capture_output=True)
            count, worst = compare(f'{path.name}, {units}, {side}', json.loads(plan_file.read_text()),
                                   read(pdf, side), UNITS_MM[units], side == 'wrong')
            print(f'{path.name}: {count} pieces in {units} on the {side} side, '
                  f'{worst:.3f} mm off at most')


def with_remnant(name, folder):
    """The job with a remnant of its first cloth, that has a flaw: its marks are on two strips."""
    job = json.loads(pathlib.Path(name).read_text())
    job['cloths'][0] |= {'stock': [{'id': 1, 'kind': 'remnant', 'length': 900, 'width': 800}],
                         'flaws': [{'id': 1, 'stock': 1, 'x': 300, 'y': 20, 'length': 30,
                                    'width': 25}]}
    path = folder / f'remnant-{pathlib.Path(name).name}'
    path.write_text(json.dumps(job))
    return path


with tempfile.TemporaryDirectory() as work:
    for sample in sys.argv[2:]:
        check(sys.argv[1], sample, pathlib.Path(work))
        if 'bay-seat' in sample:
            check(sys.argv[1], with_remnant(sample, pathlib.Path(work)), pathlib.Path(work))
