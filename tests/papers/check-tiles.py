#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-tiles.py SQUAB-CUT JOB…: sheets of a pattern put together again at their match marks, and
compared with the same pattern on one wide sheet. Two ways: by the lines that mutool finds in the PDFs,
all along; and by the ink it puts on paper at 300 dpi, in the middle of the cut line, wherever
it runs straight. Lines and ink must meet within half of such a dot (0.042 mm)."""
import collections
import math
import pathlib
import re
import subprocess
import sys
import tempfile
import warnings
import xml.etree.ElementTree as ElementTree

import numpy
import shapely.errors
import shapely.geometry
import shapely.strtree

MM_PER_PT = 25.4 / 72
DPI = 300
DOT_MM = 25.4 / DPI
WITHIN_DOTS = 0.5
# A match mark is a diamond with this half-diagonal.
MARK_MM = 4
# All marks of an edge agree so well in where the next sheet comes to.
MARK_WITHIN_MM = 0.01
EVERY_MM = 3
CURVE_PARTS = 64
PIXEL_EVERY_MM = 40
# Of ink: how far to both sides of the line, and along it, it is looked for; nothing else may be near.
ACROSS_MM, ALONG_MM, CLEAR_MM = 1.1, 1.5, 2.5
SHEETS = [('a4', '10'), ('letter', '0'), ('a3', '25')]
WIDE = 'roll:2400mm' # wide enough for every sample

warnings.filterwarnings('ignore', category=shapely.errors.ShapelyDeprecationWarning)
problems = []
Line = collections.namedtuple('Line', 'width is_dashed points')
Page = collections.namedtuple('Page', 'number name height marks lines')


def run(*command):
    return subprocess.run([str(word) for word in command], check=True, capture_output=True).stdout


def numbers(text):
    return [float(number) for number in re.findall(r'-?\d*\.?\d+(?:e-?\d+)?', text or '')]


# --- what is on a page ------------------------------------------------------------------------

def points_of(path, to_mm):
    """The polylines of a path, mm from the page's lower left corner."""
    lines, here = [], None
    for node in path:
        if node.tag == 'moveto':
            here = (float(node.get('x')), float(node.get('y')))
            lines.append([here])
        elif node.tag == 'lineto':
            here = (float(node.get('x')), float(node.get('y')))
            lines[-1].append(here)
        elif node.tag == 'curveto':
            knots = [here] + [(float(node.get('x' + k)), float(node.get('y' + k))) for k in '123']
            for i in range(1, CURVE_PARTS + 1):
                t = i / CURVE_PARTS
                weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3)
                lines[-1].append(tuple(sum(w * knot[k] for w, knot in zip(weights, knots))
                                       for k in (0, 1)))
            here = knots[3]
        elif node.tag == 'closepath' and lines:
            lines[-1].append(lines[-1][0])
    return [[to_mm(point) for point in line] for line in lines if len(line) > 1]


def mark_of(points):
    """The middle of a match mark, if it is one: a diamond on its corner, or as much of it as an edge
    leaves."""
    sides = [(b[0] - a[0], b[1] - a[1]) for a, b in zip(points[:-1], points[1:])]
    if len(sides) < 2 or any(abs(abs(dx) - abs(dy)) > 0.01 or abs(dx) > MARK_MM + 0.01
                             for dx, dy in sides):
        return None
    for (ax, ay), (bx, by), corner_at in zip(sides[:-1], sides[1:], points[1:-1]):
        if abs(ax * bx + ay * by) < 0.05: # a corner of it; the middle lies inward
            inward = (bx / abs(bx) - ax / abs(ax)) / 2, (by / abs(by) - ay / abs(ay)) / 2
            return tuple(corner_at[k] + MARK_MM * inward[k] for k in (0, 1))
    return None


def read_pages(pdf):
    """All pages: what they are called, their lines, and the middles of match marks."""
    names = [re.search(r'\b(\d+ · [A-Z]+\d+)\b', text) for text in
             run('pdftotext', '-layout', pdf, '-').decode().split('\f')]
    document = ElementTree.fromstring(run('mutool', 'draw', '-q', '-F', 'trace', pdf))
    for number, page in enumerate(document.iter('page'), 1):
        box = numbers(page.get('mediabox'))
        height = box[3] - box[1]
        strokes, marks = [], []
        for stroke in page.iter('stroke_path'):
            a, b, c, d, e, f = numbers(stroke.get('transform')) or (1, 0, 0, 1, 0, 0)

            def to_mm(point, a=a, b=b, c=c, d=d, e=e, f=f):
                x, y = point
                return ((a * x + c * y + e) * MM_PER_PT,
                        (height - (b * x + d * y + f)) * MM_PER_PT)
            width = float(stroke.get('linewidth')) * math.sqrt(abs(a * d - b * c)) * MM_PER_PT
            for points in points_of(stroke, to_mm):
                middle = mark_of(points)
                if middle:
                    marks.append(middle)
                else:
                    strokes.append(Line(round(width, 3), stroke.get('dash') is not None, points))
        name = names[number - 1].group(1) if names[number - 1] else None
        yield Page(number, name, height * MM_PER_PT, marks, strokes)


def cut_width(page):
    """The strength of the cut line: the longest of all that close."""
    return max((line for line in page.lines if line.points[0] == line.points[-1]),
               key=lambda line: shapely.geometry.LineString(line.points).length).width


# --- putting together -------------------------------------------------------------------------

def place_of(name):
    """Column and row of "3 · B2"."""
    column, row = re.fullmatch(r'\d+ · ([A-Z]+)(\d+)', name).groups()
    index = 0
    for letter in column:
        index = index * 26 + ord(letter) - ord('A') + 1
    return index, int(row)


def facing_marks(page, dc, dr):
    """Those at the edge that the neighbour in this direction lies at, outermost; rows count from
    above."""
    out = [dc * x - dr * y for x, y in page.marks]
    return [mark for mark, mm in zip(page.marks, out) if mm > max(out) - MARK_MM / 4]


def shift_between(one, other):
    """What lays @other's sheet onto @one's: where the marks at the edge they share meet, and how many
    marks these are."""
    (ac, ar), (bc, br) = place_of(one.name), place_of(other.name)
    here = sorted(facing_marks(one, bc - ac, br - ar))
    there = sorted(facing_marks(other, ac - bc, ar - br))
    pairs = [(ax - bx, ay - by) for (ax, ay), (bx, by) in zip(here, there)]
    if len(here) != len(there) or len(pairs) < 2:
        return None
    shift = tuple(sum(pair[k] for pair in pairs) / len(pairs) for k in (0, 1))
    if any(math.dist(pair, shift) > MARK_WITHIN_MM for pair in pairs):
        return None
    return shift


def neighbours(one, other):
    (ac, ar), (bc, br) = place_of(one.name), place_of(other.name)
    return abs(ac - bc) + abs(ar - br) == 1


def put_together(job, pages):
    """Where each sheet comes to, the first one's lower left corner being (0, 0). From sheet to sheet: each
    is laid onto a neighbour that lies already."""
    shifts = {pages[0].number: (0.0, 0.0)}
    waiting = [pages[0]]
    while waiting:
        here = waiting.pop()
        for page in pages:
            if page.number in shifts or not neighbours(here, page):
                continue
            shift = shift_between(here, page)
            if shift is None:
                problems.append(f'{job}: no two match marks of sheets {here.name} and {page.name} '
                                'agree')
                continue
            shifts[page.number] = tuple(shifts[here.number][k] + shift[k] for k in (0, 1))
            waiting.append(page)
    for page in pages:
        if page.number not in shifts:
            problems.append(f'{job}: no match mark leads to sheet {page.name}')
    return shifts


# --- lines ------------------------------------------------------------------------------------

def moved(points, shift):
    return [(x + shift[0], y + shift[1]) for x, y in points]


def turned(points, quarters):
    for _ in range(quarters):
        points = [(-y, x) for x, y in points]
    return points


def corner(lines):
    return min(x for line in lines for x, y in line), min(y for line in lines for x, y in line)


def extent(lines):
    left, low = corner(lines)
    return (max(x for line in lines for x, y in line) - left,
            max(y for line in lines for x, y in line) - low)


def samples(lines):
    for line in lines:
        string = shapely.geometry.LineString(line)
        for i in range(int(string.length / EVERY_MM) + 1):
            point = string.interpolate(i * EVERY_MM)
            yield point.x, point.y


def farthest(lines, others):
    """How far a point of lines is from the nearest one of others, at most."""
    union = shapely.geometry.MultiLineString(others)
    segments = [shapely.geometry.LineString(pair) for line in union.geoms
                for pair in zip(line.coords[:-1], line.coords[1:])]
    tree = shapely.strtree.STRtree(segments)
    points = [shapely.geometry.Point(point) for point in samples(lines)]
    return max(point.distance(segments[tree.nearest_item(point)]) for point in points)


def fit(lines, whole):
    """The quarter turn and shift that lay the sheets' lines onto those of one sheet, and how far
    off they are then."""
    best = None
    for quarters in range(4):
        posed = [turned(line, quarters) for line in lines]
        if max(abs(a - b) for a, b in zip(extent(posed), extent(whole))) > 1:
            continue
        left, low = corner(posed)
        to_left, to_low = corner(whole)
        shift = (to_left - left, to_low - low)
        laid = [moved(line, shift) for line in posed]
        off = max(farthest(laid, whole), farthest(whole, laid))
        if best is None or off < best[0]:
            best = off, quarters, shift
    return best


# --- ink --------------------------------------------------------------------------------------

def picture(pdf, page):
    """Darkness of a page at DPI, rows from above. Not by poppler, which moves lines to whole dots."""
    data = run('mutool', 'draw', '-q', '-r', DPI, '-c', 'gray', '-F', 'pgm', '-o', '-', pdf, page)
    header = re.match(rb'P5\s+(?:#[^\n]*\n)?(\d+)\s+(\d+)\s+(\d+)\s', data)
    width, height = int(header.group(1)), int(header.group(2))
    pixels = numpy.frombuffer(data, numpy.uint8, width * height, header.end())
    return 255.0 - pixels.reshape(height, width)


def middle_of_ink(image, height_mm, at, is_upright):
    """Where the ink of a straight line about @at is, across it, mm; None: there is none."""
    x, y = at[0] / DOT_MM, (height_mm - at[1]) / DOT_MM
    if is_upright:
        x, y = y, x
        image = image.T
    # now the line runs along x
    rows = slice(int(y - ACROSS_MM / DOT_MM), int(y + ACROSS_MM / DOT_MM) + 1)
    columns = slice(int(x - ALONG_MM / DOT_MM), int(x + ALONG_MM / DOT_MM) + 1)
    ink = image[rows, columns].sum(axis=1)
    if ink.sum() <= 0:
        return None
    dots = (ink * (numpy.arange(rows.start, rows.stop) + 0.5)).sum() / ink.sum()
    return dots * DOT_MM if is_upright else height_mm - dots * DOT_MM


def straight_places(lines):
    """Places in the middle of straight stretches along or across the page, and which."""
    for line in lines:
        for (ax, ay), (bx, by) in zip(line[:-1], line[1:]):
            length = math.hypot(bx - ax, by - ay)
            if length < 30 or min(abs(bx - ax), abs(by - ay)) > 1e-3:
                continue
            for i in range(int((length - 20) / PIXEL_EVERY_MM) + 1):
                t = (10 + i * PIXEL_EVERY_MM) / length
                yield (ax + t * (bx - ax), ay + t * (by - ay)), abs(bx - ax) < abs(by - ay)


def is_alone(at, page, is_upright):
    """Whether just one line, a straight one, comes near a place of the page."""
    spot = shapely.geometry.Point(at).buffer(CLEAR_MM)
    near = [line for line in page.lines if shapely.geometry.LineString(line.points).intersects(spot)]
    if len(near) != 1:
        return False
    inside = shapely.geometry.LineString(near[0].points).intersection(spot)
    left, low, right, high = inside.bounds
    return (high - low if is_upright else right - left) > 2 * CLEAR_MM - 0.1


def compare_ink(pages, shifts, pdf, wide_page, wide_pdf, quarters, shift, width):
    """How far ink of sheets and of one sheet are apart, at most, and at how many places."""
    wide_image = picture(wide_pdf, wide_page.number)
    worst, n = 0, 0
    for page in pages:
        image = picture(pdf, page.number)
        cuts = [line.points for line in page.lines if line.width == width and not line.is_dashed]
        for at, is_upright in straight_places(cuts):
            on_wide = moved(turned([(at[0] + shifts[page.number][0],
                                     at[1] + shifts[page.number][1])], quarters), shift)[0]
            upright_there = is_upright != (quarters % 2 == 1)
            if not is_alone(at, page, is_upright) or not is_alone(on_wide, wide_page,
                                                                  upright_there):
                continue
            here = middle_of_ink(image, page.height, at, is_upright)
            there = middle_of_ink(wide_image, wide_page.height, on_wide, upright_there)
            if here is None or there is None:
                continue
            ink = (here, at[1]) if is_upright else (at[0], here)
            laid = moved(turned([(ink[0] + shifts[page.number][0],
                                  ink[1] + shifts[page.number][1])], quarters), shift)[0]
            worst = max(worst, abs((laid[0] if upright_there else laid[1]) - there))
            n += 1
    return worst, n


# --- a piece ----------------------------------------------------------------------------------

def check(squab_cut, job, folder, piece, sheet, overlap, ink):
    """A piece on sheets and on one; its name, how far off by lines, by ink, and at how many places."""
    what = f'{job.name}, piece {piece} on {sheet}'
    tiled, wide = folder / 'tiled.pdf', folder / 'wide.pdf'
    for pdf, paper in ((tiled, sheet), (wide, WIDE)):
        subprocess.run([squab_cut, job, '--pattern', pdf, '--pieces', str(piece), '--paper', paper,
                        '--overlap', overlap, '--date', '2026-03-01'], check=False,
                       capture_output=True)
    pages = [page for page in read_pages(tiled) if page.name]
    if len(pages) < 2:
        return None
    wide_page = list(read_pages(wide))[-1]
    width = cut_width(wide_page)
    shifts = put_together(what, pages)
    laid = [moved(line.points, shifts[page.number]) for page in pages if page.number in shifts
            for line in page.lines if line.width == width and not line.is_dashed]
    whole = [line.points for line in wide_page.lines if line.width == width and not line.is_dashed]
    found = fit(laid, whole)
    if found is None:
        problems.append(f'{what}: the sheets do not make the piece')
        return None
    off, quarters, shift = found
    ink_off, n = (compare_ink(pages, shifts, tiled, wide_page, wide, quarters, shift, width)
                  if ink else (0, 0))
    for way, mm in (('lines', off), ('ink', ink_off)):
        if mm > WITHIN_DOTS * DOT_MM:
            problems.append(f'{what}: {way} are {mm / DOT_MM:.2f} dots off')
    return off / DOT_MM, ink_off / DOT_MM, n, len(pages)


def main():
    squab_cut, *jobs = sys.argv[1:]
    lines, inks, places, sheets, pieces = [], [], 0, 0, 0
    with tempfile.TemporaryDirectory() as name:
        for job in map(pathlib.Path, jobs):
            for piece, (sheet, overlap) in zip((1, 2, 3), SHEETS):
                found = check(squab_cut, job, pathlib.Path(name), piece, sheet, overlap,
                              piece == 1)
                if found:
                    lines.append(found[0])
                    inks.append(found[1])
                    places += found[2]
                    sheets += found[3]
                    pieces += 1
    if pieces < len(jobs) or places < 20:
        problems.append('too little was put together to tell')
    print(f'{pieces} pieces on {sheets} sheets: lines {max(lines, default=0):.3f}, ink '
          f'{max(inks, default=0):.3f} dots of {DPI} dpi off at most, at {places} places')
    print('\n'.join(problems))
    sys.exit(1 if problems else 0)


main()
