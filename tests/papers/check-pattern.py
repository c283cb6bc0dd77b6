#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-pattern.py SQUAB-CUT JOB…: full-scale patterns, measured by programs of others. poppler's
pdftocairo turns pages into SVG, whose lines are measured here; mutool reads sizes and outlines.
The check squares are 100 mm and 4 in on every paper, sheets have the sizes of their standards, a straight
edge of more than 2 m is as long on a roll as the plan has it, nothing is drawn in the margins, and every
piece has its entry in the outline."""
import json
import math
import pathlib
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

# A point of PDF is 1/72 in: ISO 32000-1, 8.3.2.3, default user space.
MM_PER_PT = 25.4 / 72
# Trimmed sizes of ISO 216, main series A; sizes A to E of ANSI/ASME Y14.1, in inches. Upright.
ISO_216_MM = {'a4': (210, 297), 'a3': (297, 420), 'a2': (420, 594), 'a1': (594, 841),
              'a0': (841, 1189)}
ANSI_Y14_1_IN = {'letter': (8.5, 11), 'ansi-b': (11, 17), 'ansi-c': (17, 22), 'ansi-d': (22, 34),
                 'ansi-e': (34, 44)}
SHEETS_MM = ISO_216_MM | {name: (w * 25.4, h * 25.4) for name, (w, h) in ANSI_Y14_1_IN.items()}
ROLL_MM = 1000
TRUE_MM = 0.05
SIZE_WITHIN_MM = 0.05
MARGIN_MM = 10
# Half of the strongest line, and what numbers in a PDF are rounded to.
EDGE_MM = 0.05
LONG_EDGE_MM = 2000
BENCH = {'format': 'squab job', 'version': 1, 'units': 'mm', 'cushions': [
    {'id': 1, 'name': 'Long bench', 'thickness': 76.2, 'build': 'boxed', 'outline': [
        {'id': 1, 'x': 0, 'y': 0, 'front': True}, {'id': 2, 'x': 2437.3, 'y': 0},
        {'id': 3, 'x': 2437.3, 'y': 611.7}, {'id': 4, 'x': 0, 'y': 611.7}]}]}

problems = []


def run(*command):
    return subprocess.run([str(word) for word in command], check=True, capture_output=True).stdout


def squab(squab_cut, job, *options):
    done = subprocess.run([squab_cut, str(job), *[str(word) for word in options]],
                          capture_output=True, text=True)
    if done.returncode == 2:
        sys.exit(f'{job}: squab-cut: {done.stderr.strip()}')


def say(what):
    problems.append(what)


# --- lines of a page -------------------------------------------------------------------------------

def matrix(text):
    found = re.match(r'matrix\(([^)]*)\)', text or '')
    return [float(value) for value in re.split(r'[ ,]+', found.group(1).strip())] if found \
        else [1, 0, 0, 1, 0, 0]


def product(a, b):
    return [a[0] * b[0] + a[2] * b[1], a[1] * b[0] + a[3] * b[1],
            a[0] * b[2] + a[2] * b[3], a[1] * b[2] + a[3] * b[3],
            a[0] * b[4] + a[2] * b[5] + a[4], a[1] * b[4] + a[3] * b[5] + a[5]]


def stroked(element, outer):
    """Each stroked path with the matrix it is drawn by."""
    if element.tag.endswith(('defs', 'clipPath', 'symbol')):
        return
    own = product(outer, matrix(element.get('transform')))
    style = f'stroke:{element.get("stroke") or "none"};{element.get("style") or ""}'
    if element.tag.endswith('}path') and re.search(r'stroke:(?!none)', style):
        yield element.get('d'), own
    for child in element:
        yield from stroked(child, own)


def lines_of(pdf, page):
    """The page's stroked lines, each a list of points in mm (of a curve its ends)."""
    svg = run('pdftocairo', '-svg', '-noshrink', '-nocenter', '-f', page, '-l', page, pdf, '-')
    lines = []
    for path, by in stroked(ElementTree.fromstring(svg), [1, 0, 0, 1, 0, 0]):
        words = re.findall(r'[MLCZ]|-?[\d.]+(?:e-?\d+)?', path)
        points, numbers = [], []
        for word in words + ['M']:
            if word == 'M' and points:
                lines.append(points)
                points = []
            if word == 'Z' and points:
                points.append(points[0])
            if word in 'MLCZ':
                kind, numbers = word, []
                continue
            numbers.append(float(word))
            if len(numbers) == (6 if kind == 'C' else 2):
                x, y = numbers[-2:]
                points.append(((by[0] * x + by[2] * y + by[4]) * MM_PER_PT,
                               (by[1] * x + by[3] * y + by[5]) * MM_PER_PT))
                numbers = []
    return lines


def sides(points):
    """Lengths from corner to corner; what goes straight on is one side."""
    corners = [points[0]]
    for here, after in zip(points[1:], points[2:]):
        (x, y), before = here, corners[-1]
        aside = (x - before[0]) * (after[1] - y) - (y - before[1]) * (after[0] - x)
        if abs(aside) > 1e-4 * math.dist(before, here) * math.dist(here, after):
            corners.append(here)
    corners.append(points[-1])
    return [math.dist(a, b) for a, b in zip(corners, corners[1:])]


# --- checks ----------------------------------------------------------------------------------------

def check_squares(name, pdf):
    squares = [side for side in map(sides, lines_of(pdf, 1))
               if len(side) == 4 and max(side) - min(side) < 2 * TRUE_MM]
    for wanted in (100, 4 * 25.4):
        if not any(all(abs(length - wanted) < TRUE_MM for length in side) for side in squares):
            say(f'{name}: no square of {wanted} mm on the first page')


def page_sizes(pdf):
    sizes = re.findall(r'<page pagenum="\d+">\s*<MediaBox l="([-\d.]+)" b="([-\d.]+)" r="([-\d.]+)" '
                       r't="([-\d.]+)"', run('mutool', 'pages', pdf).decode())
    return [((float(r) - float(l)) * MM_PER_PT, (float(t) - float(b)) * MM_PER_PT)
            for l, b, r, t in sizes]


def check_sizes(name, pdf, wanted):
    for size in page_sizes(pdf):
        if max(abs(a - b) for a, b in zip(sorted(size), wanted)) > SIZE_WITHIN_MM:
            say(f'{name}: a page is {size}, not {wanted} mm')


def check_papers(squab_cut, folder, job):
    for paper, size in SHEETS_MM.items():
        pdf = folder / f'{paper}.pdf'
        squab(squab_cut, job, '--paper', paper, '--pattern', pdf)
        check_sizes(paper, pdf, size)
        check_squares(paper, pdf)


def check_roll(squab_cut, folder, job):
    """Pages as wide as the roll, none longer than a PDF's pages may be (14,400 units: ISO 32000-1,
    annex C.2); a long edge is as long as it is in the plan."""
    pdf, plan = folder / 'roll.pdf', folder / 'plan.json'
    squab(squab_cut, job, '--paper', f'roll:{ROLL_MM}mm', '--lines', 'cut', '--pattern', pdf)
    squab(squab_cut, job, '--plan', plan)
    check_squares('roll', pdf)
    sizes = page_sizes(pdf)
    for width, height in sizes:
        if abs(width - ROLL_MM) > SIZE_WITHIN_MM or height > 14400 * MM_PER_PT:
            say(f'roll: a page is {width} × {height} mm')
    ring = json.loads(plan.read_text())['cushions'][0]['pieces'][0]['cut'][0]
    wanted = max(sides([(x, y) for x, y, _ in ring + ring[:1]]))
    if wanted < LONG_EDGE_MM:
        sys.exit(f'an edge of {wanted} mm is not long')
    drawn = [length for page in range(2, len(sizes) + 1) for line in lines_of(pdf, page)
             if len(line) > 1 for length in sides(line)]
    nearest = min(drawn, key=lambda length: abs(length - wanted))
    print(f'roll: {nearest:.4f} mm drawn, {wanted:.4f} mm in the plan')
    if abs(nearest - wanted) > TRUE_MM:
        say(f'roll: {wanted} mm come out as {nearest} mm')


def check_margins(name, pdf):
    for number, (width, height) in enumerate(page_sizes(pdf), 1):
        for line in lines_of(pdf, number):
            for x, y in line:
                inside = min(x, y, width - x, height - y)
                if inside < MARGIN_MM - EDGE_MM:
                    say(f'{name}, page {number}: a line comes as near as {inside:.2f} mm to the edge')
                    return


def check_outline(name, pdf, plan):
    entries = [re.sub(r'^.*?"(.*)".*$', r'\1', line) for line in
               run('mutool', 'show', pdf, 'outline').decode().splitlines()]
    numbers = [int(entry.split()[0]) for entry in entries if re.match(r'\d+ ', entry)]
    wanted = sum(len(cushion['pieces']) for cushion in plan['cushions'])
    if sorted(numbers) != list(range(1, wanted + 1)):
        say(f'{name}: the outline has {numbers}, the job {wanted} pieces')


def check_sample(squab_cut, folder, job):
    pdf, plan = folder / 'sample.pdf', folder / 'plan.json'
    squab(squab_cut, job, '--paper', 'a4', '--margin', MARGIN_MM, '--pattern', pdf)
    squab(squab_cut, job, '--plan', plan)
    check_margins(job.name, pdf)
    check_outline(job.name, pdf, json.loads(plan.read_text()))


def main():
    squab_cut, jobs = sys.argv[1], [pathlib.Path(job) for job in sys.argv[2:]]
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        bench = folder / 'bench.squab'
        bench.write_text(json.dumps(BENCH))
        check_papers(squab_cut, folder, bench)
        check_roll(squab_cut, folder, bench)
        for job in jobs:
            check_sample(squab_cut, folder, job)
    sys.exit('\n'.join(problems) or 0)


main()
