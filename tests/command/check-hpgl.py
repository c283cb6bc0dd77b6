#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-hpgl.py SQUAB-CUT FOLDER: the HP-GL of every job in FOLDER, of its pieces, cloths and lays, for
either side of the cloth. It is read here after the published command set, and by hp2xx; both must find the
same lines. Each ring of the plan is among them to one unit, 0.025 mm (PCL 5 Technical Reference, part II,
table 17-7: 40 = 1 mm), where it belongs, and nothing of a piece comes after its outer cut line."""
import collections
import json
import pathlib
import re
import subprocess
import sys
import tempfile

from shapely.geometry import LineString, Point, Polygon

import placed
from svg_drawing import Drawing

PER_MM = 40
UNIT_MM = 0.025
LINE_MM = UNIT_MM  # 0.71 for rounding half a unit each way, a quarter for arcs
MIDDLE_MM = UNIT_MM * 0.75  # by as much may the middle of a line be off
MOST_UNITS = 32767  # what a device that counts in 16 bits takes: 819.175 mm
CUT, SEW, NOTCH, MARK, TEXT = 1, 2, 3, 4, 5
PENS = {'cut': CUT, 'cut-inside': CUT, 'sew': SEW, 'notch': NOTCH}

BIG = {'format': 'squab job', 'version': 1, 'units': 'mm', 'cloths': [{'width': 1400}],
       'cushions': [{'thickness': 60, 'outline': [
           {'x': 0, 'y': 0}, {'x': 900, 'y': 0}, {'x': 900, 'y': 400}, {'x': 0, 'y': 400}]}]}

problems = []

Stroke = collections.namedtuple('Stroke', 'pen points label')


# ---- reading --------------------------------------------------------------------------------

class Reader:
    """IN, PA, SP, PU and PD with any number of points; LB up to ETX, and DI and SI, which only tell how
    it looks."""

    def __init__(self):
        self.strokes, self.pen, self.at, self.down = [], 0, (0, 0), None

    def lift(self):
        if self.down:
            self.strokes.append(Stroke(self.pen, self.down, None))
        self.down = None

    def command(self, name, numbers):
        if name in ('SP', 'PU'):
            self.lift()
        if name == 'SP':
            self.pen = int(numbers[0])
        elif name in ('PU', 'PD'):
            for x, y in zip(numbers[::2], numbers[1::2]):
                if name == 'PD':
                    self.down = (self.down or [self.at]) + [(x, y)]
                self.at = (x, y)
        elif name not in ('IN', 'PA', 'DI', 'SI'):
            problems.append(f'what is {name}?')

    def read(self, text):
        for label, name, rest in re.findall(r'LB([^\x03]*)\x03|([A-Z]{2})([^;A-Z]*);', text):
            if name:
                self.command(name, [float(n) for n in rest.split(',') if n.strip()])
            else:
                self.strokes.append(Stroke(self.pen, [self.at], label))
        if self.pen != 0 or self.down:
            problems.append('the pen is not put away')
        return self.strokes


def lines_of(strokes):
    """All but labels, as (pen, points). What goes on where the last one ended is one line: a reader may
    begin anew with every command."""
    lines = []
    for stroke in strokes:
        if stroke.pen == TEXT or stroke.label is not None:
            continue
        if lines and lines[-1][0] == stroke.pen and lines[-1][1][-1] == stroke.points[0]:
            lines[-1] = stroke.pen, lines[-1][1] + stroke.points[1:]
        else:
            lines.append((stroke.pen, stroke.points))
    return lines


def by_hp2xx(file, folder):
    """What hp2xx writes of it as plain HP-GL: one command for each point."""
    out = folder / 'read.hpgl'
    subprocess.run(['hp2xx', '-q', '-m', 'hpgl', '-t', '-f', out, file], check=True,
                   capture_output=True)
    return Reader().read(out.read_text())


# ---- against the plan -----------------------------------------------------------------------

def middle(points):
    """Of what it takes across and up."""
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


def size(points):
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return max(xs) - min(xs), max(ys) - min(ys)


def about_middle(points):
    x, y = middle(points)
    return LineString([(p[0] - x, p[1] - y) for p in points])


def alike(first, second):
    # an end is rounded by half a unit, and an arc may be flattened by as much
    if max(abs(a - b) for a, b in zip(size(first), size(second))) > 2 * UNIT_MM:
        return False
    return about_middle(first).hausdorff_distance(about_middle(second)) <= LINE_MM + MIDDLE_MM


class Rings:
    """The rings of one pen, in mm, each to be found once."""

    def __init__(self, strokes, pen):
        self.left = {i: [(x / PER_MM, y / PER_MM) for x, y in stroke.points]
                     for i, stroke in enumerate(strokes) if stroke.pen == pen}

    def alike(self, wanted, by=None, but=()):
        """Those that are like @wanted, moved @by if that is told: (index, by how much)."""
        points = placed.flat(wanted)
        for index, ring in self.left.items():
            moved = tuple(a - b for a, b in zip(middle(ring), middle(points)))
            if by and max(abs(a - b) for a, b in zip(moved, by)) > 2 * MIDDLE_MM:
                continue
            if index not in but and alike(ring, points):
                yield index, moved


def found_at(rings, copies, by):
    """All rings of @copies moved @by: (kind, index) of each, outer cut lines first of a copy; None: not
    all are there."""
    found = []
    for copy in copies:
        for kind in ('cut', 'sew'):
            for wanted in copy.rings(kind):
                taken = {index for other, index in found if other == kind}
                index, _ = next(rings[kind].alike(wanted, by, taken), (None, None))
                if index is None:
                    return None
                found.append((kind, index))
    return found


def check_rings(name, strokes, copies):
    """Outer cut lines, as (index, polygon). Where a group lies as a whole is not told: it is where all of
    it is found."""
    outer = []
    rings = {'cut': Rings(strokes, CUT), 'sew': Rings(strokes, SEW)}
    groups = collections.defaultdict(list)
    for copy in copies:
        groups[copy.group].append(copy)
    for group, own in groups.items():
        for _, by in rings['cut'].alike(own[0].rings('cut')[0]):
            found = found_at(rings, own, by)
            if found:
                break
        else:
            problems.append(f'{name}: {group} is not there')
            continue
        for kind, index in found:
            ring = rings[kind].left.pop(index)
            if kind == 'cut':
                outer.append((index, Polygon(ring)))
    for kind, left in rings.items():
        if left.left:
            problems.append(f'{name}: {len(left.left)} rings of {kind} too many')
    # what is cut inside is not an outer line
    return sorted(((index, polygon) for index, polygon in outer
                   if not any(other is not polygon and other.contains(polygon)
                              for _, other in outer)), key=lambda pair: pair[0])


def check_order(name, strokes, outer):
    """All that comes between two outer cut lines lies within the second of them: texts, then marks, sew
    lines, notches, and what is cut inside. What belongs to no piece comes before all of it."""
    order = [TEXT, MARK, SEW, NOTCH, CUT]
    start = 0
    for index, polygon in outer:
        near, last = polygon.buffer(1), 0
        for i in range(start, index):
            inside = all(near.contains(Point(x / PER_MM, y / PER_MM))
                         for x, y in strokes[i].points)
            if not inside and (start > 0 or strokes[i].pen not in (TEXT, MARK)):
                problems.append(f'{name}: stroke {i} is not of the piece that {index} cuts out')
            stage = order.index(strokes[i].pen) if inside else 0
            if stage < last:
                problems.append(f'{name}: stroke {i} with pen {strokes[i].pen} comes too late')
            last = stage
        start = index + 1
    if start != len(strokes):
        problems.append(f'{name}: {len(strokes) - start} strokes come after all is cut')


def check_lines(name, strokes, drawing):
    """Each line of the same drawing as SVG, where it is there."""
    left = collections.defaultdict(dict)
    for index, stroke in enumerate(strokes):
        if stroke.label is None:
            line = LineString([(x / PER_MM, y / PER_MM) for x, y in stroke.points])
            left[stroke.pen][index] = line, line.bounds
    for layer, nodes, closed in drawing.paths():
        wanted = LineString(placed.flat(nodes, closed))
        pen = PENS.get(layer, MARK)
        bounds = wanted.bounds
        near = (index for index, (_, own) in left[pen].items()
                if max(abs(a - b) for a, b in zip(own, bounds)) <= UNIT_MM)
        found = next((index for index in near
                      if left[pen][index][0].hausdorff_distance(wanted) <= LINE_MM), None)
        if found is None:
            problems.append(f'{name}: a line of {layer} from {nodes[0]} is not there')
        else:
            del left[pen][found]
    for pen, lines in left.items():
        if lines:
            problems.append(f'{name}: {len(lines)} lines of pen {pen} too many')


def check_file(name, file, copies, folder):
    text = file.read_text()
    if not text.isascii():
        problems.append(f'{name}: not all is ASCII')
    strokes = Reader().read(text)
    if any(n != int(n) for stroke in strokes for point in stroke.points for n in point):
        problems.append(f'{name}: not all are whole units')
    if lines_of(strokes) != lines_of(by_hp2xx(file, folder)):
        problems.append(f'{name}: hp2xx finds other lines')
    check_lines(name, strokes, Drawing(folder / 'a.svg'))
    outer = check_rings(name, strokes, copies)
    check_order(name, strokes, outer)
    for copy in copies:
        if not any(s.label and s.label.startswith(f'{copy.number} ') for s in strokes):
            problems.append(f'{name}: no label of {copy.number}')
    return max(abs(n) for stroke in strokes for point in stroke.points for n in point)


# ---- all of it ----------------------------------------------------------------------------------

def written(squab_cut, job, file, *more):
    """The file, and whether there was a warning that it is too large."""
    done = subprocess.run([squab_cut, job, '--hpgl', file, *more], capture_output=True, text=True,
                          check=True)
    return str(MOST_UNITS) in done.stderr


def check_job(squab_cut, job, folder):
    file, plan_file = folder / 'a.hpgl', folder / 'plan.json'
    subprocess.run([squab_cut, job, '--plan', plan_file], check=True, stderr=subprocess.DEVNULL)
    plan = json.loads(plan_file.read_text())
    for of in ('pieces', 'cloth', 'lay'):
        for side in ('right', 'wrong'):
            name = f'{job.name} {of} {side}'
            warned = written(squab_cut, job, file, '--of', of, '--marked-on', side, '--svg',
                             folder / 'a.svg')
            most = check_file(name, file, placed.expected(plan, of, side == 'wrong'), folder)
            if warned != (most > MOST_UNITS):
                problems.append(f'{name}: goes to {most} units, and a warning is {warned}')


def check_warning(squab_cut, folder):
    """A piece of 925 mm is too large for 16 bits, its pieces without it are not."""
    big, small = folder / 'big.squab', folder / 'small.squab'
    big.write_text(json.dumps(BIG))
    small.write_text(json.dumps(BIG).replace('900', '700'))
    file = folder / 'a.hpgl'
    if not written(squab_cut, big, file, '--of', 'pieces', '--pieces', '1'):
        problems.append('no warning of a piece over 819 mm')
    if written(squab_cut, small, file, '--of', 'pieces', '--pieces', '1'):
        problems.append('a warning of a small piece')


def main():
    squab_cut, samples = sys.argv[1:]
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        for job in placed.jobs(samples, folder):
            check_job(squab_cut, job, folder)
        check_warning(squab_cut, folder)
    for problem in problems:
        print(problem, file=sys.stderr)
    sys.exit(1 if problems else 0)


main()
