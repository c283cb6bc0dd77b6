# SPDX-License-Identifier: GPL-3.0-or-later
"""Where the lines of a drawing for machines have to be, from nothing but the plan; and lengths, areas
and boxes of rings of nodes (x, y, bulge), bulge = tan (sweep / 4)."""
import json
import math
import pathlib

# A pair with a hole and bowed sides, and a seat that is a circle: what no sample has.
PAIR = {'format': 'squab job', 'version': 1, 'units': 'mm', 'cloths': [{'width': 1380}], 'cushions': [
    {'count': 2, 'hand': 'pair', 'thickness': 60,
     'outline': [{'x': 0, 'y': 0, 'front': True}, {'x': 520, 'y': 0, 'bow': 45},
                 {'x': 480, 'y': 410, 'radius': 40}, {'x': 0, 'y': 430, 'bow': -25}],
     'holes': [[{'x': 150, 'y': 150, 'radius': 30}, {'x': 150, 'y': 250, 'bow': 12},
                {'x': 250, 'y': 250, 'radius': 20}, {'x': 260, 'y': 140}]]},
    {'thickness': 50, 'build': 'knife-edge',
     'outline': [{'x': 0, 'y': 0, 'bow': 200}, {'x': 400, 'y': 0, 'bow': 200}]}]}


def jobs(samples, folder):
    """Files of all jobs that are looked at."""
    pair = folder / 'pair.squab'
    pair.write_text(json.dumps(PAIR))
    return sorted(pathlib.Path(samples).glob('*.squab')) + [pair]


class Expected:
    """One copy of a piece: a ring (x, y) → place(x, y). Copies of one group lie to each other as they
    are told; from group to group they may be anywhere."""

    def __init__(self, number, piece, group, place, mirrored):
        self.number, self.piece, self.group, self.place = number, piece, group, place
        self.mirrored = mirrored

    def rings(self, kind):
        sign = -1 if self.mirrored else 1
        return [[(*self.place(x, y), sign * bulge) for x, y, bulge in ring]
                for ring in self.piece[kind]]


def piece_of(plan, entry):
    return plan['cushions'][entry['cushion']]['pieces'][entry['piece']]


def side_by_side(plan, entry, wrong):
    sign = -1 if wrong else 1
    return Expected(entry['number'], piece_of(plan, entry), ('piece', entry['number']),
                    lambda x, y: (sign * x, y), wrong)


def lying(plan, lay, placed, wrong):
    """On the wrong side the roll is turned over along its length: its near edge is far."""
    entry = next(e for e in plan['cut_list']
                 if (e['cushion'], e['piece']) == (placed['cushion'], placed['piece']))
    width = lay['strips'][placed['strip']]['width']
    cos, sin = math.cos(math.radians(placed['turn'])), math.sin(math.radians(placed['turn']))

    def place(x, y):
        x, y = cos * x - sin * y + placed['x'], sin * x + cos * y + placed['y']
        return (x, width - y) if wrong else (x, y)

    return Expected(entry['number'], piece_of(plan, entry), ('lay', lay['cloth'], placed['strip']),
                    place, wrong)


def expected(plan, of, wrong):
    """All copies that a drawing has, in its order."""
    if of == 'pieces':
        return [side_by_side(plan, entry, wrong) for entry in plan['cut_list']]
    if of == 'cloth':
        return [side_by_side(plan, entry, wrong) for lay in plan['lays']
                for entry in plan['cut_list'] if entry['cloth'] == lay['cloth']]
    return [lying(plan, lay, placed, wrong) for lay in plan['lays']
            for strip in range(len(lay['strips'])) for placed in lay['placed']
            if placed['strip'] == strip]


def sides(ring, closed=True):
    return list(zip(ring, ring[1:] + ring[:1])) if closed else list(zip(ring, ring[1:]))


def length_of(a, b):
    chord, bulge = math.dist(a[:2], b[:2]), abs(a[2])
    if bulge < 1e-9:
        return chord
    return chord * (1 + bulge * bulge) / (4 * bulge) * 4 * math.atan(bulge)


def length(ring, closed=True):
    return sum(length_of(a, b) for a, b in sides(ring, closed))


def area(ring):
    """Signed: the polygon of the chords, and a circular segment for each arc."""
    total = 0
    for a, b in sides(ring):
        total += (a[0] * b[1] - b[0] * a[1]) / 2
        if abs(a[2]) > 1e-9:
            radius = math.dist(a[:2], b[:2]) * (1 + a[2] ** 2) / (4 * a[2])
            sweep = 4 * math.atan(a[2])
            total += radius * radius / 2 * (sweep - math.sin(sweep))
    return total


def circle(a, b):
    """Centre, radius, angle at the start and sweep of the arc from @a to @b."""
    bulge = a[2]
    # the centre lies to the left of the chord, for a small arc to the left
    off = (1 - bulge ** 2) / (4 * bulge)
    cx = (a[0] + b[0]) / 2 - off * (b[1] - a[1])
    cy = (a[1] + b[1]) / 2 + off * (b[0] - a[0])
    radius = math.dist(a[:2], b[:2]) * (1 + bulge ** 2) / (4 * abs(bulge))
    return cx, cy, radius, math.atan2(a[1] - cy, a[0] - cx), 4 * math.atan(bulge)


def points_of(a, b, most_mm):
    """Of one side, its start but not its end; no chord is farther off than @most_mm."""
    if abs(a[2]) < 1e-9:
        return [a[:2]]
    cx, cy, radius, start, sweep = circle(a, b)
    n = max(1, math.ceil(abs(sweep) / (2 * math.sqrt(2 * most_mm / radius))))
    return [a[:2]] + [(cx + radius * math.cos(start + sweep * i / n),
                       cy + radius * math.sin(start + sweep * i / n)) for i in range(1, n)]


def flat(ring, closed=True, most_mm=0.001):
    points = [point for a, b in sides(ring, closed) for point in points_of(a, b, most_mm)]
    return points + ([ring[0][:2]] if closed else [ring[-1][:2]])


def extremes(a, b):
    """Points of an arc that are farthest to a side."""
    if abs(a[2]) < 1e-9:
        return []
    cx, cy, radius, start, sweep = circle(a, b)
    first, last = sorted((start, start + sweep))
    return [(cx + radius * math.cos(k * math.pi / 2), cy + radius * math.sin(k * math.pi / 2))
            for k in range(math.ceil(first / (math.pi / 2)), math.floor(last / (math.pi / 2)) + 1)]


def box(ring, closed=True):
    points = [node[:2] for node in ring]
    for a, b in sides(ring, closed):
        points += extremes(a, b)
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return min(xs), min(ys), max(xs), max(ys)
