#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-svg.py SQUAB-CUT FOLDER: the SVG of every job in FOLDER, of its pieces, cloths and lays, for
either side of the cloth. It is read and held against the plan: all rings are where they belong, as long
and as large. librsvg makes a PDF of it, whose paths are held against the plan, too, and a picture at
300 dpi."""
import json
import math
import pathlib
import re
import struct
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET

import placed
from svg_drawing import SVG, Drawing

ROUNDED_MM = 0.0005  # numbers are told to 0.0001 mm, places in the plan to a micrometre
LENGTH_MM = 0.01
DRAWN_MM = 0.01  # a PDF of librsvg has its points in 1/256 pt = 0.0014 mm, and Béziers for arcs
POINT_MM = 25.4 / 72  # CSS Values: 1 in = 72 pt
DPI = 300

problems = []


def run(*command):
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode:
        raise SystemExit(f'{command}: {done.stderr}')
    return done.stdout


# ---- against the plan -----------------------------------------------------------------------

def ring_fault(drawn, wanted, by):
    if abs(placed.length(drawn) - placed.length(wanted)) > LENGTH_MM:
        return f'{placed.length(drawn)} mm long, not {placed.length(wanted)}'
    if abs(abs(placed.area(drawn)) - abs(placed.area(wanted))) > LENGTH_MM * placed.length(wanted):
        return f'{placed.area(drawn)} mm² large, not {placed.area(wanted)}'
    for x, y, _ in wanted:
        if min(math.dist((x + by[0], y + by[1]), node[:2]) for node in drawn) > 2 * ROUNDED_MM:
            return f'no node at {x + by[0]}, {y + by[1]}'
    off = max(abs(d - w - b) for d, w, b in zip(placed.box(drawn), placed.box(wanted), by + by))
    return f'off by {off} mm' if off > 3 * ROUNDED_MM else None


def check_copy(drawing, number, copy, moved):
    title = drawing.layers['cut'][number][0]
    if int(title.split()[0]) != copy.number:
        return f'{title} is not {copy.number}'
    drawn = [drawing.rings('cut', number) + drawing.rings('cut-inside', number),
             drawing.rings('sew', number)]
    if len(drawing.rings('cut', number)) != 1:
        return 'not one outer cut line'
    for rings, kind in zip(drawn, ('cut', 'sew')):
        wanted = copy.rings(kind)
        if len(rings) != len(wanted):
            return f'{len(rings)} rings, not {len(wanted)}'
        for ring, other in zip(rings, wanted):
            first, second = placed.box(ring), placed.box(other)
            by = moved.setdefault(copy.group, (first[0] - second[0], first[1] - second[1]))
            fault = ring_fault(ring, other, by)
            if fault:
                return f'{kind}: {fault}'
    return None


def check_drawing(name, drawing, copies, wrong):
    moved = {}
    if sorted(drawing.layers['cut']) != list(range(1, len(copies) + 1)):
        problems.append(f'{name}: {len(drawing.layers["cut"])} copies, not {len(copies)}')
        return
    for number, copy in enumerate(copies, 1):
        fault = check_copy(drawing, number, copy, moved)
        if fault:
            problems.append(f'{name}: copy {number}, {copy.number}: {fault}')
    if ('WRONG SIDE UP' if wrong else 'RIGHT SIDE UP') not in drawing.said:
        problems.append(f'{name}: {drawing.said} does not say which side is up')
    boxes = [placed.box(nodes, closed) for _, nodes, closed in drawing.paths()]
    if max(abs(min(box[k] for box in boxes)) for k in (0, 1)) > ROUNDED_MM:
        problems.append(f'{name}: it does not begin at the lower left corner')
    if max(box[2] for box in boxes) > drawing.width + ROUNDED_MM \
            or max(box[3] for box in boxes) > drawing.height + ROUNDED_MM:
        problems.append(f'{name}: it goes beyond the page')
    if list(drawing.layers)[-1] != 'cut':
        problems.append(f'{name}: the outer cut lines are not the last')


# ---- what librsvg draws -----------------------------------------------------------------------

def bezier(points, n=100):
    a, b, c, d = points
    for i in range(1, n + 1):
        t, s = i / n, 1 - i / n
        yield tuple(s ** 3 * a[k] + 3 * s * s * t * b[k] + 3 * s * t * t * c[k] + t ** 3 * d[k]
                    for k in (0, 1))


def drawn_rings(trace, height):
    """Of mutool's trace: each stroke as points in mm, y up, by its colour."""
    rings = []
    for stroke in ET.fromstring(trace).iter('stroke_path'):
        a, b, c, d, e, f = (float(n) for n in stroke.get('transform').split())
        assert (b, c) == (0, 0)

        def point(step, x, y):
            px, py = float(step.get(x)), float(step.get(y))
            return (a * px + e) * POINT_MM, height - (d * py + f) * POINT_MM

        points = []
        for step in stroke:
            if step.tag == 'curveto':
                points += bezier([points[-1], point(step, 'x1', 'y1'), point(step, 'x2', 'y2'),
                                  point(step, 'x3', 'y3')])
            elif step.tag != 'closepath':
                points.append(point(step, 'x', 'y'))
        rings.append((stroke.get('color'), [(*p, 0) for p in points]))
    return rings


def bezier_slack(ring):
    """A Bézier of a quarter of a turn goes up to 0.00027 of its radius outside the arc, half of that in
    the middle of its way: what that adds to an area."""
    return sum(0.00015 * placed.circle(a, b)[2] * placed.length_of(a, b)
               for a, b in placed.sides(ring) if abs(a[2]) > 1e-9)


def colour_of(stroke):
    """#rrggbb as the trace tells it: shares of one."""
    return tuple(int(stroke[i:i + 2], 16) / 255 for i in (1, 3, 5))


def check_drawn(name, svg, drawing, copies, folder):
    """The outer cut lines as librsvg has them, in their order."""
    pdf = folder / 'drawn.pdf'
    run('rsvg-convert', '-f', 'pdf', svg, '-o', pdf)
    trace = run('mutool', 'trace', pdf)
    media = re.search(r'mediabox="0 0 ([\d.]+) ([\d.]+)"', trace)
    for said, is_mm in zip(media.groups(), (drawing.width, drawing.height)):
        # six digits are told of it
        if abs(float(said) * POINT_MM - is_mm) > 6e-6 * is_mm + 0.001:
            problems.append(f'{name}: the page is {float(said) * POINT_MM} mm, not {is_mm}')
    cut = colour_of(ET.parse(svg).getroot().find(f"{SVG}g[@id='cut']").get('stroke'))
    rings = [points for colour, points in drawn_rings(trace, drawing.height)
             if max(abs(float(c) - w) for c, w in zip(colour.split(), cut)) < 1e-4]
    if len(rings) != len(copies):
        problems.append(f'{name}: librsvg draws {len(rings)} cut lines, not {len(copies)}')
        return
    for number, (ring, copy) in enumerate(zip(rings, copies), 1):
        wanted, told = copy.rings('cut')[0], drawing.rings('cut', number)[0]
        off = max(abs(d - w) for d, w in zip(placed.box(ring), placed.box(told)))
        more = abs(placed.area(ring)) - abs(placed.area(wanted))
        slack = DRAWN_MM * placed.length(wanted) + bezier_slack(wanted)
        if off > DRAWN_MM or abs(more) > slack:
            problems.append(f'{name}: librsvg draws {copy.number} off by {off} mm, {more} mm²')


# ---- a picture ----------------------------------------------------------------------------------

def ink_runs(rows):
    """Stretches of columns with ink in any of @rows: (first, last)."""
    ink = 0
    for row in rows:
        ink |= int.from_bytes(row.translate(INVERTED), 'big')
    columns = ink.to_bytes(len(rows[0]), 'big')
    return [(run.start(), run.end() - 1) for run in re.finditer(rb'[^\0]+', columns)]


INVERTED = bytes(255 - i for i in range(256))


def grey_rows(png, folder):
    """mutool reads the picture, pixel by pixel."""
    grey = folder / 'grey.pgm'
    info = png.read_bytes()
    width, height = struct.unpack('>II', info[16:24])
    run('mutool', 'draw', '-q', '-w', str(width), '-h', str(height), '-f', '-c', 'gray', '-o', grey,
        png)
    head, size, most, data = grey.read_bytes().split(b'\n', 3)
    assert head == b'P5' and size.split() == [b'%d' % width, b'%d' % height] and most == b'255'
    return [data[i * width:(i + 1) * width] for i in range(height)]


def check_picture(squab_cut, job, plan, folder):
    """Two pieces side by side at 300 dpi: the page in pixels, and each piece's sides to half a one."""
    smallest = sorted(plan['cut_list'], key=lambda e: max(
        placed.piece_of(plan, e)['width'], placed.piece_of(plan, e)['height']))[:2]
    numbers = ','.join(str(e['number']) for e in sorted(smallest, key=lambda e: e['number']))
    svg, png = folder / 'two.svg', folder / 'two.png'
    run(squab_cut, job, '--svg', svg, '--pieces', numbers, '--only', 'cut')
    run('rsvg-convert', '-d', str(DPI), '-p', str(DPI), '-b', 'white', svg, '-o', png)
    drawing, rows = Drawing(svg), grey_rows(png, folder)
    pixels = DPI / 25.4
    for is_pixels, is_mm in ((len(rows[0]), drawing.width), (len(rows), drawing.height)):
        if not is_mm * pixels - 0.01 <= is_pixels < is_mm * pixels + 1.01:
            problems.append(f'{job}: {is_mm} mm are {is_pixels} pixels')
    half_line = 0.04
    runs = ink_runs(rows)
    boxes = [placed.box(drawing.rings('cut', place)[0]) for place in (1, 2)]
    if len(runs) != 2:
        problems.append(f'{job}: {len(runs)} pieces on the picture')
        return
    for (first, last), found in zip(runs, boxes):
        left = max(0, (found[0] - half_line) * pixels)
        right = min(drawing.width, found[2] + half_line) * pixels
        for middle, edge in ((first + 0.5, left), (last + 0.5, right)):
            if abs(middle - edge) > 0.55:
                problems.append(f'{job}: a side at {edge} is drawn at {middle}')


# ---- all of it ----------------------------------------------------------------------------------

def check_job(squab_cut, job, folder):
    svg, plan_file = folder / 'a.svg', folder / 'plan.json'
    subprocess.run([squab_cut, job, '--plan', plan_file], check=True, stderr=subprocess.DEVNULL)
    plan = json.loads(plan_file.read_text())
    for of in ('pieces', 'cloth', 'lay'):
        for side in ('right', 'wrong'):
            subprocess.run([squab_cut, job, '--svg', svg, '--of', of, '--marked-on', side],
                           check=True, stderr=subprocess.DEVNULL)
            run('xmllint', '--noout', '--nonet', svg)
            copies = placed.expected(plan, of, side == 'wrong')
            name = f'{job.name} {of} {side}'
            drawing = Drawing(svg)
            check_drawing(name, drawing, copies, side == 'wrong')
            check_drawn(name, svg, drawing, copies, folder)
    return plan


def main():
    squab_cut, samples = sys.argv[1:]
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        for job in placed.jobs(samples, folder):
            plan = check_job(squab_cut, job, folder)
            if job.stem in PICTURED:
                check_picture(squab_cut, job, plan, folder)
    for problem in problems:
        print(problem, file=sys.stderr)
    sys.exit(1 if problems else 0)


# Pieces that are not alike, arcs among them; small, for a picture of a metre takes 11811 pixels.
PICTURED = ('folded-stool', 'round-pad', 'worked-plate')

main()
