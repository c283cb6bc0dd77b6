#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-geometry.py SQUAB-CUT: what the cover of every way of building must measure, reckoned here from
plane geometry alone and read from the plan that squab-cut writes. In every plan the two sides of each
seam are equally long, and a piece's area is that of its cut line. Lengths in mm."""
import json
import math
import subprocess
import sys
import tempfile

INCH = 25.4
SEAM = 0.02
problems = []


def expect(what, found, expected, within=1e-6):
    if not abs(found - expected) <= within:
        problems.append(f'{what}: {found} instead of {expected}')


def arcs(ring):
    """Length and bulge of each segment of a ring."""
    for (x0, y0, bulge), (x1, y1, _) in zip(ring, ring[1:] + ring[:1]):
        chord = math.hypot(x1 - x0, y1 - y0)
        sweep = 4 * math.atan(bulge)
        yield (chord if bulge == 0 else chord * (sweep / 2) / math.sin(sweep / 2)), chord, sweep


def area(ring):
    """By Green's theorem: the polygon of the chords and the segments over them."""
    chords = sum(x0 * y1 - x1 * y0 for (x0, y0, _), (x1, y1, _) in zip(ring, ring[1:] + ring[:1])) / 2
    over = 0
    for _, chord, sweep in arcs(ring):
        if sweep != 0:
            radius = chord / 2 / math.sin(sweep / 2)
            over += radius ** 2 / 2 * (sweep - math.sin(sweep))
    return chords + over


def box(ring):
    xs, ys = [n[0] for n in ring], [n[1] for n in ring]
    return max(xs) - min(xs), max(ys) - min(ys)


def run_length(piece, index):
    run = piece['runs'][index]
    ring = piece['sew'][run['ring']]
    lengths = [length for length, _, _ in arcs(ring)]
    at, total = run['from'], 0
    while True:
        total += lengths[at]
        at = (at + 1) % len(ring)
        if at == run['to']:
            return total


def check_laws(name, cushion):
    """Seams by our own measure, and areas."""
    for i, seam in enumerate(cushion['seams']):
        sides = [seam['a'], seam['b']]
        for side in filter(None, sides):
            own = sum(run_length(cushion['pieces'][side['piece']], r) for r in side['runs'])
            expect(f'{name}, seam {i}', own, side['length'], 1e-5)
        if sides[1]:
            expect(f'{name}, seam {i}, both sides', sides[0]['length'],
                   sides[1]['length'] + seam['ease'], SEAM)
    for i, piece in enumerate(cushion['pieces']):
        expect(f'{name}, piece {i}, area', piece['area'], sum(map(area, piece['cut'])), 1e-3)


def plan(name, keys, outline, cloths=()):
    job = {'format': 'squab job', 'version': 1, 'cloths': list(cloths), 'cushions': [keys]}
    if outline:
        job['cushions'][0]['outline'] = [
            {'id': i + 1, 'x': c[0], 'y': c[1], **(c[2] if len(c) > 2 else {})}
            for i, c in enumerate(outline)]
    with tempfile.NamedTemporaryFile('w', suffix='.squab') as file:
        json.dump(job, file)
        file.flush()
        out = subprocess.run([sys.argv[1], file.name, '--plan', '-'], capture_output=True, text=True)
    cushion = json.loads(out.stdout)['cushions'][0]
    check_laws(name, cushion)
    return cushion


def pieces(cushion, role):
    return [p for p in cushion['pieces'] if p['role'] == role]


def square(width, depth):
    return [(0, 0, {'front': True}), (width, 0), (width, depth), (0, depth)]


def seams(cushion, kind):
    return sum(s['a']['length'] for s in cushion['seams'] if s['kind'] == kind)


# Split side: each plate is D = H/2 deep, cut (D + a) outside the outline.
c = plan('split', {'build': 'split-side', 'thickness': 100, 'zip': {'place': 'none'}},
         square(600, 400))
for role in 'face', 'underside':
    width, depth = box(pieces(c, role)[0]['cut'][0])
    expect(f'split, {role}', width, 600 + 2 * (50 + 12.7))
    expect(f'split, {role}', depth, 400 + 2 * (50 + 12.7))
expect('split, seam round the side', seams(c, 'perimeter'), 2000)

# Wrapped front: 2 (Y − r) + π r + (H − 2 r) from the back over the front to the back below.
for profile, r in (('square', 0), ('half-round', 50), ('radius', 20)):
    c = plan(f'wrap, {profile}',
             {'build': 'wrapped-front', 'thickness': 100,
              'front_profile': {'kind': profile, **({'radius': r} if profile == 'radius' else {})}},
             square(600, 400))
    width, along = box(pieces(c, 'wrap')[0]['sew'][0])
    expect(f'wrap, {profile}, across', width, 600)
    expect(f'wrap, {profile}, along', along, 2 * (400 - r) + math.pi * r + 100 - 2 * r)


def ellipse_quarter(a, b):
    """A quarter of an ellipse's perimeter: π (a + b) / 4 · Σ binom(1/2, n)² hⁿ (Ivory 1796)."""
    h, binomial, total = ((a - b) / (a + b)) ** 2, 1.0, 0.0
    for n in range(60):
        total += binomial ** 2 * h ** n
        binomial *= (0.5 - n) / (n + 1)
    return math.pi * (a + b) / 4 * total


# Sides at 60° to the front, half-round, H 4 in: over the front each is half an ellipse of half-axes
# r / sin 60° and r, 6.777918 in long, before two flats of (Y − r) / sin 60°.
lean = 400 / math.tan(math.radians(60))
c = plan('wrap, 60°', {'build': 'wrapped-front', 'thickness': 4 * INCH},
         [(0, 0, {'front': True}), (700, 0), (700 + lean, 400), (lean, 400)])
r, slope = 2 * INCH, math.sin(math.radians(60))
expect('ellipse', 2 * ellipse_quarter(r / slope, r) / INCH, 6.777918, 1e-6)
for side in pieces(c, 'side'):
    found = sum(run_length(side, i) for i, run in enumerate(side['runs'])
                if run['role'] == 'perimeter')
    expect('wrap, 60°, side', found, 2 * (400 - r) / slope + 2 * ellipse_quarter(r / slope, r), SEAM)

# Knife edge: drawn in by 1/2 in from each edge, tapering from a quarter of 18 in away, a corner opens
# to 90° + 2 atan (e / (L/4 − e)) = 104.25°.
c = plan('knife', {'build': 'knife-edge', 'thickness': 100, 'zip': {'place': 'underside'}},
         square(18 * INCH, 18 * INCH))
opened = 90 + 2 * math.degrees(math.atan(0.5 / (4.5 - 0.5)))
expect('knife, angle', opened, 104.25, 0.001)
ring = pieces(c, 'face')[0]['sew'][0]
corner = min(range(len(ring)), key=lambda i: ring[i][0] + ring[i][1])
before, at, after = ring[corner - 1], ring[corner], ring[(corner + 1) % len(ring)]
expect('knife, corner across', at[0], 0.5 * INCH)
expect('knife, corner along', at[1], 0.5 * INCH)
angle = math.degrees(math.atan2(before[1] - at[1], before[0] - at[0])
                     - math.atan2(after[1] - at[1], after[0] - at[0]))
expect('knife, corner angle', angle % 360, opened, 1e-6)
# Stuffed: the chord of an arc as long as the pad is wide that rises by half its thickness; here by
# bisection.
low, high = 0.0, math.pi
for _ in range(200):
    half = (low + high) / 2
    low, high = (half, high) if 18 * (1 - math.cos(half)) / (2 * half) < 2 else (low, half)
expect('stuffed chord', 18 * math.sin(half) / half, 17.393, 0.001)
c = plan('knife, stuffed', {'build': 'knife-edge', 'thickness': 4 * INCH}, square(18 * INCH, 18 * INCH))
expect('knife, stuffed', c['stuffed']['length'] / INCH, 18 * math.sin(half) / half, 1e-4)
# Over foam each face grows on every side: by H/2, or by a quarter round less what it replaces.
for filling, by in (('foam-square', 0.5), ('foam-half-round', math.pi / 4 - 0.5)):
    c = plan(f'knife, {filling}', {'build': 'knife-edge', 'thickness': 80,
                                   'knife_edge': {'filling': filling, 'draw_in': 0}},
             square(500, 400))
    width, depth = box(pieces(c, 'face')[0]['sew'][0])
    expect(f'knife, {filling}', width, 500 + 2 * by * 80)
    expect(f'knife, {filling}', depth, 400 + 2 * by * 80)

# Bolster: tube L × π d on the sew line, half-round d (1 + π/2); D: back, and an arc over it.
d, long = 8 * INCH, 36 * INCH
for section, girth in (('round', math.pi * d), ('half-round', d * (1 + math.pi / 2))):
    c = plan(f'bolster, {section}', {'build': 'bolster', 'bolster': {
        'section': section, 'diameter': d, 'length': long}}, None)
    width, round_it = box(pieces(c, 'tube')[0]['sew'][0])
    expect(f'bolster, {section}, length', width, long)
    expect(f'bolster, {section}, girth', round_it, girth)
rise = 70
radius = d * d / (8 * rise) + rise / 2
c = plan('bolster, d', {'build': 'bolster', 'bolster': {
    'section': 'd', 'diameter': d, 'length': long, 'rise': rise}}, None)
expect('bolster, d, girth', box(pieces(c, 'tube')[0]['sew'][0])[1],
       d + radius * 4 * math.atan(2 * rise / d))

# Let-in at a square inward corner: skirts stop (D + a) cot 45° + a_j short of it at least.
c = plan('let-in', {'build': 'folded-corner', 'thickness': 63.5, 'zip': {'place': 'none'}},
         [(0, 0, {'front': True, 'build': 'folded'}), (900, 0), (900, 400), (400, 400), (400, 800),
          (0, 800)])
along, deep = box(pieces(c, 'let-in')[0]['sew'][0])
least = (63.5 + 9.525 + 9.525) + 12.7
if not 2 * least <= along <= 2 * least + 15:
    problems.append(f'let-in: {along} instead of {2 * least} or a little more')
expect('let-in, depth', deep, 63.5 + 9.525)

# Boxing along a bow: chord 24 in, rise 3 in: R = c²/8s + s/2 = 25.5 in, arc 24.987824 in.
c = plan('bow', {'build': 'folded-corner', 'thickness': 76.2},
         [(0, 0, {'bow': 76.2, 'build': 'boxed', 'front': True}), (609.6, 0), (609.6, 500), (0, 500)])
expect('bow', box(pieces(c, 'boxing')[0]['sew'][0])[0] / INCH, 24.987824)

# Welt: strips 2 a + π (cord + cloth) wide; on the bias from selvedge to selvedge their long edge is
# W √2, and as many of them as it takes, each further one less 2 √2 allowances.
width, cord, cloth = 1346.2, 4, 0.6
strip = 2 * 12.7 + math.pi * (cord + cloth)
for cut in 'straight', 'bias':
    c = plan(f'welt, {cut}', {'welt': {'at': 'both', 'cut': cut}, 'thickness': 76.2},
             square(900, 700), [{'id': 1, 'class': 'canvas', 'width': width}])
    own = pieces(c, 'welt')
    expect(f'welt, {cut}, strip', c['welt']['strip'], strip)
    round_it = 3200 + 25.4
    one = width * (math.sqrt(2) if cut == 'bias' else 1)
    lost = 2 * 12.7 * (math.sqrt(2) if cut == 'bias' else 1)
    ends = strip if cut == 'bias' else 0
    n = 1
    while n * one - (n - 1) * lost - ends < round_it:
        n += 1
    expect(f'welt, {cut}, strips', sum(p['count'] for p in own), 2 * n, 0)
    yields = sum(p['count'] * p['area'] / strip for p in own) / 2 - (n - 1) * lost - ends
    expect(f'welt, {cut}, yield', yields, round_it, 1e-6)
    expect(f'welt, {cut}, seam', seams(c, 'welt'), 6400)

raise SystemExit('\n'.join(problems) if problems else 0)
