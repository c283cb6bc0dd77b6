#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-dxf.py SQUAB-CUT FOLDER: the DXF files of every job in FOLDER, and of one with names that
are hard to write, looked over by ezdxf, which knows DXF from elsewhere: nothing in them is wrong or
has to be mended, every piece is as large, as long along its lines and the same way round as the plan
says, and lies in D6673 where it lies without."""
import collections
import itertools
import json
import math
import pathlib
import re
import subprocess
import sys
import tempfile

import ezdxf
from ezdxf.math import Vec3
from shapely.geometry import Point, Polygon

RELEASES = {'r12': 'AC1009', 'r2000': 'AC1015'}
WITHIN_MM = 0.01
PLACE_MM = 0.02  # chords of D6673 are up to 0.01 mm off
PLAIN_LAYERS = {'CUT', 'CUT-INSIDE', 'SEW', 'NOTCH', 'FOLD', 'ZIP', 'CORNER', 'STAY', 'GRAIN', 'TEXT',
                'CLOTH'}
# "DXF ASTM File Format", a public documentation after D6673-10
D6673_TYPES = {'1': {'POLYLINE', 'TEXT'}, '2': {'POINT'}, '3': {'POINT'}, '4': {'POINT'},
               '7': {'LINE'}, '8': {'LINE', 'POLYLINE'}, '11': {'POLYLINE'}, '14': {'POLYLINE'},
               '15': {'TEXT'}}
# ezdxf 0.18 gives the ends of polylines in blocks no owner when it reads R12, its own files too.
OWN_FAULT = re.compile(r'Deleted SEQEND\(#[0-9A-F]+\) entity with invalid owner handle #None\.')

LONG_NAME = 'n' * 500
HARD_NAMES = ['座面クッション', 'כרית מושב', 'وسادة', 'Sofa 🪑 😀', '"it\'s" 1/2', '../../etc',
              'two\nlines', LONG_NAME, '', '\\U+0041', '100 %%d ^J', 'Åse']

# A mirrored pair with a hole, bowed and rounded, of two cloths: one remnant and a roll.
HOLED = {
    'format': 'squab job', 'version': 1, 'units': 'mm', 'title': 'Pair',
    'cloths': [{'id': 4, 'name': 'Canvas', 'width': 1380,
                'stock': [{'id': 9, 'kind': 'remnant', 'length': 900, 'width': 700}]},
               {'id': 6, 'name': 'Lining', 'width': 900}],
    'cushions': [
        {'id': 1, 'count': 3, 'hand': 'pair', 'thickness': 60,
         'cloth': {'face': 4, 'underside': 6},
         'outline': [{'x': 0, 'y': 0, 'front': True}, {'x': 520, 'y': 0, 'bow': 45},
                     {'x': 480, 'y': 410, 'radius': 40}, {'x': 0, 'y': 430, 'bow': -25}],
         'holes': [[{'x': 100, 'y': 100}, {'x': 100, 'y': 180, 'bow': 9}, {'x': 190, 'y': 100}]]}]}

problems = []


def expect(what, found, expected, within):
    if not abs(found - expected) <= within:
        problems.append(f'{what}: {found} instead of {expected}')


def wrong(what):
    problems.append(what)


# --- rings -----------------------------------------------------------------------------------

def sides(ring):
    """Length, chord and sweep of each side of a ring of (x, y, bulge)."""
    for (x0, y0, bulge), (x1, y1, _) in zip(ring, ring[1:] + ring[:1]):
        chord, sweep = math.hypot(x1 - x0, y1 - y0), 4 * math.atan(bulge)
        yield chord if sweep == 0 else chord * (sweep / 2) / math.sin(sweep / 2), chord, sweep


def length(ring):
    return sum(side[0] for side in sides(ring))


def area(ring):
    """By Green's theorem: the polygon of the chords and the segments over them."""
    chords = sum(x0 * y1 - x1 * y0 for (x0, y0, _), (x1, y1, _) in zip(ring, ring[1:] + ring[:1]))
    return chords / 2 + sum((chord / 2 / math.sin(sweep / 2)) ** 2 / 2 * (sweep - math.sin(sweep))
                        for _, chord, sweep in sides(ring) if sweep != 0)


def mirrored(ring):
    """x to −x, travelled the same way round as before."""
    turned = [(-x, y) for x, y, _ in reversed(ring)]
    bulges = [bulge for _, _, bulge in reversed(ring)]
    return [(x, y, bulge) for (x, y), bulge in zip(turned, bulges[1:] + bulges[:1])]


def form(ring):
    """What stays when a ring is turned and moved: of each side its length and rise, and how it turns
    to the next."""
    after = ring[2:] + ring[:2]
    following = ring[1:] + ring[:1]
    return [(side[0], ring[i][2] * side[1],
             (following[i][0] - ring[i][0]) * (after[i][1] - ring[i][1])
             - (following[i][1] - ring[i][1]) * (after[i][0] - ring[i][0]))
            for i, side in enumerate(sides(ring))]


def same_form(a, b):
    """Whether two rings are the same but for where they lie, how turned, and where they begin."""
    if len(a) != len(b):
        return False
    a, b = form(a), form(b)

    def near(p, q):
        return (abs(p[0] - q[0]) <= WITHIN_MM and abs(p[1] - q[1]) <= WITHIN_MM
                and abs(p[2] - q[2]) <= WITHIN_MM * (p[0] + q[0] + 1))

    return any(all(near(p, q) for p, q in zip(a, itertools.chain(b[k:], b[:k])))
               for k in range(len(b)))


def nodes(entity):
    """A closed polyline as (x, y, bulge)."""
    if not entity.is_closed:
        wrong(f'{entity}: not closed')
    if entity.dxftype() == 'LWPOLYLINE':
        return [tuple(node) for node in entity.get_points('xyb')]
    return [(v.dxf.location.x, v.dxf.location.y, v.dxf.get('bulge', 0)) for v in entity.vertices]


def rings_of(entities):
    return [nodes(entity) for entity in entities]


# --- a file ----------------------------------------------------------------------------------

def text_of(entity):
    """ezdxf leaves codes as they are when it opens a file; two of them may be one character."""
    decoded = ezdxf.decode_dxf_unicode(entity.dxf.text)
    return decoded.encode('utf-16', 'surrogatepass').decode('utf-16')


def opened(name, path, release, layers):
    """The file as ezdxf reads it without any mending."""
    data = path.read_bytes()
    if not data.isascii() or data.count(b'\n') != data.count(b'\r\n'):
        wrong(f'{name}: not ASCII, or not CR LF')
    # R12 has no units; 4 is millimetres: help.autodesk.com, INSUNITS
    units = re.findall(rb'\$INSUNITS\r\n +70\r\n +(\d+)', data)
    if units != ([b'4'] if release == 'r2000' else []):
        wrong(f'{name}: units')
    doc = ezdxf.readfile(path)
    audit = doc.audit()
    fixes = [fix.message for fix in audit.fixes
             if not (layers == 'd6673' and release == 'r12' and OWN_FAULT.fullmatch(fix.message))]
    if audit.errors or fixes:
        wrong(f'{name}: {[error.message for error in audit.errors] + fixes}')
    if doc.dxfversion != RELEASES[release]:
        wrong(f'{name}: {doc.dxfversion}')
    return doc


def check_layers(name, entities, layers):
    for entity in entities:
        layer, kind = entity.dxf.layer, entity.dxftype()
        if layers == 'plain' and layer not in PLAIN_LAYERS:
            wrong(f'{name}: {kind} on {layer}')
        if layers == 'd6673' and kind not in D6673_TYPES.get(layer, ()) | {'INSERT'}:
            wrong(f'{name}: {kind} on {layer}')


def groups(entities):
    """Plain files have piece after piece, each from its cut line on."""
    found = []
    for entity in entities:
        if entity.dxf.layer == 'CLOTH':
            break
        if entity.dxf.layer == 'CUT':
            found.append([])
        found[-1].append(entity)
    return found


def on(entities, *layers):
    return [entity for entity in entities if entity.dxf.layer in layers]


def number_of(entities, layer):
    """The number of the cut list that a piece is written on with."""
    texts = [text_of(entity) for entity in on(entities, layer) if entity.dxftype() == 'TEXT']
    for text in texts:
        found = re.match(r'(?:Piece Name: )?(\d+) ', text)
        if found:
            return int(found.group(1))
    wrong('a piece without its number')
    return 1


# --- pieces ----------------------------------------------------------------------------------

chiral = collections.Counter()


def check_piece(name, piece, cut, sew, side):
    """Rings of a file against those of the plan."""
    if len(cut) != len(piece['cut']) or len(sew) != len(piece['sew']):
        wrong(f'{name}: {len(cut)} cut lines and {len(sew)} sew lines')
        return
    around = sum(map(length, piece['cut']))
    expect(f'{name}, area', sum(map(area, cut)), piece['area'], WITHIN_MM * around)
    for found, ring in itertools.chain(zip(cut, piece['cut']), zip(sew, piece['sew'])):
        ring = [tuple(node) for node in ring]
        expect(f'{name}, length', length(found), length(ring), WITHIN_MM)
        expect(f'{name}, area of a ring', area(found), area(ring), WITHIN_MM * length(ring))
        other = mirrored(ring)
        if not same_form(found, other if side == 'wrong' else ring):
            wrong(f'{name}: not the form that is to be marked on the {side} side')
        elif not same_form(ring, other):
            chiral[side] += 1


def drawn(entity, within_mm):
    """The outline as ezdxf draws it: its lines and arcs, which it tells from bulges by itself."""
    points = [Vec3(nodes(entity)[0][:2])]
    for part in entity.virtual_entities():
        is_line = part.dxftype() == 'LINE'
        ends = [part.dxf.start, part.dxf.end] if is_line else list(part.flattening(within_mm))
        if points[-1].distance(ends[0]) > points[-1].distance(ends[-1]):
            ends.reverse()
        if points[-1].distance(ends[0]) > 1e-5:
            wrong(f'{entity}: broken at {ends[0]}')
        points += ends[1:]
    return Polygon([(p.x, p.y) for p in points])


def check_by_ezdxf(name, entity):
    ring = nodes(entity)
    expect(f'{name}, area as drawn', drawn(entity, 0.001).area, abs(area(ring)),
           0.001 * length(ring))


def piece_of(plan, number):
    entry = plan['cut_list'][number - 1]
    return plan['cushions'][entry['cushion']]['pieces'][entry['piece']]


def check_plain(name, doc, plan, side):
    """Returns how often each line of the cut list is there, and where its copies are."""
    count, places = collections.Counter(), []
    for group in groups(doc.modelspace()):
        number = number_of(group, 'TEXT')
        piece = piece_of(plan, number)
        cut, sew = on(group, 'CUT', 'CUT-INSIDE'), on(group, 'SEW')
        check_piece(f'{name}, piece {number}', piece, rings_of(cut), rings_of(sew), side)
        check_by_ezdxf(f'{name}, piece {number}', cut[0])
        if len(on(group, 'GRAIN')) != 1 or on(group, 'GRAIN')[0].dxftype() != 'LINE':
            wrong(f'{name}, piece {number}: grain')
        count[number] += 1
        places.append((number, place_of(cut[0])))
    return count, places


def place_of(entity):
    """Centre and extent, which tell how it is turned for all but what looks the same."""
    ring = drawn(entity, 0.005)
    return ring.centroid.x, ring.centroid.y, *ring.bounds


def check_d6673(name, doc, flat, side):
    count, places = collections.Counter(), []
    numbers = {}
    for block in doc.blocks:
        if block.name.lower() in ('*model_space', '*paper_space', '$model_space', '$paper_space'):
            continue
        if not re.fullmatch(r'[A-Z0-9_]{1,31}', block.name):
            wrong(f'{name}: block {block.name}')
        number = numbers[block.name] = number_of(block, '1')
        lines = [entity for entity in block if entity.dxftype() == 'POLYLINE']
        check_layers(f'{name}, {block.name}', block, 'd6673')
        if any(bulge for line in lines if line.is_closed for _, _, bulge in nodes(line)):
            wrong(f'{name}, {block.name}: arcs')
        check_piece(f'{name}, {block.name}', piece_of(flat, number),
                    rings_of(on(lines, '1', '11')), rings_of(on(lines, '14')), side)
        check_points(f'{name}, {block.name}', block, lines)
        if len(on(block, '7')) != 1:
            wrong(f'{name}, {block.name}: grain')
    if len(set(numbers.values())) != len(numbers):
        wrong(f'{name}: a piece has two blocks')
    for insert in doc.modelspace().query('INSERT'):
        count[numbers[insert.dxf.name]] += 1
        cut = [entity for entity in insert.virtual_entities()
               if entity.dxf.layer == '1' and entity.dxftype() == 'POLYLINE']
        places.append((numbers[insert.dxf.name], place_of(cut[0])))
    style = [text_of(entity) for entity in doc.modelspace().query('TEXT[layer=="1"]')]
    if style.count('Units: METRIC') != 1 or style.count('Sample Size: 1') != 1:
        wrong(f'{name}: says nothing of units')
    return count, places


def check_points(name, block, lines):
    """Every node is a point where a line turns or one of a curve; notches begin at the cut line."""
    def place(x, y):
        return round(x, 3), round(y, 3)

    points = {place(e.dxf.location.x, e.dxf.location.y) for e in on(block, '2', '3')}
    for line in lines:
        for vertex in line.vertices:
            if place(vertex.dxf.location.x, vertex.dxf.location.y) not in points:
                wrong(f'{name}: no point at {vertex.dxf.location}')
    rings = [Polygon([node[:2] for node in nodes(e)]).exterior for e in on(lines, '1', '11')]
    for notch in on(block, '4'):
        point = Point(notch.dxf.location.x, notch.dxf.location.y)
        off = min(ring.distance(point) for ring in rings)
        if off > PLACE_MM or not 0 < notch.dxf.location.z < 50:
            wrong(f'{name}: notch {off} mm from the cut line, {notch.dxf.location.z} mm deep')


# --- jobs ------------------------------------------------------------------------------------

def run(*arguments):
    done = subprocess.run(arguments, capture_output=True, text=True)
    if done.returncode not in (0, 1):
        raise SystemExit(f'{arguments}: {done.stderr}')
    return done.stdout


def wanted(plan, of):
    """How often each number of the cut list has to be there."""
    if of != 'lay':
        return collections.Counter({entry['number']: 1 for entry in plan['cut_list']})
    numbers = {(entry['cushion'], entry['piece']): entry['number'] for entry in plan['cut_list']}
    return collections.Counter(numbers[placed['cushion'], placed['piece']]
                               for lay in plan['lays'] for placed in lay['placed'])


def files(squab_cut, job, folder, of, side, release, layers):
    """One file of all, or with cloths one for each, in a folder."""
    out = folder / f'{of}-{side}-{release}-{layers}'
    if of == 'cloth':
        out.mkdir()
    run(squab_cut, job, '--dxf', out, '--dxf-release', release, '--layers', layers, '--of', of,
        '--marked-on', side)
    return sorted(out.iterdir()) if of == 'cloth' else [out]


def check_same_places(name, plain, d6673):
    for (number, place), (other, there) in itertools.zip_longest(plain, d6673, fillvalue=(0, ())):
        if number != other or any(abs(a - b) > PLACE_MM for a, b in zip(place, there)):
            wrong(f'{name}: piece {number} lies at {place}, by D6673 {other} at {there}')


def check_job(squab_cut, job, folder):
    plan = json.loads(run(squab_cut, job, '--plan', '-'))
    flat = json.loads(run(squab_cut, job, '--plan', '-', '--flatten', '0.01'))
    for of, side, release in itertools.product(('pieces', 'cloth', 'lay'), ('right', 'wrong'),
                                               RELEASES):
        places = {}
        for layers, check, rings in (('plain', check_plain, plan), ('d6673', check_d6673, flat)):
            count, places[layers] = collections.Counter(), []
            for path in files(squab_cut, job, folder, of, side, release, layers):
                name = f'{job.stem}, {path.name}, {of}, {side}, {release}, {layers}'
                doc = opened(name, path, release, layers)
                check_layers(name, doc.modelspace(), layers)
                found, there = check(name, doc, rings, side)
                count += found
                places[layers] += there
            if count != wanted(plan, of):
                wrong(f'{job.stem}, {of}, {layers}: {count}')
        check_same_places(f'{job.stem}, {of}, {side}, {release}', places['plain'], places['d6673'])


def shown(name):
    """What is left of a name in a file: no lines, no codes."""
    return re.sub(r'\s', ' ', name).replace('%%', '% %')


def check_hard_names(squab_cut, folder):
    square = [{'x': 0, 'y': 0}, {'x': 400, 'y': 0}, {'x': 400, 'y': 400}, {'x': 0, 'y': 400}]
    job = folder / 'hard.squab'
    job.write_text(json.dumps({
        'format': 'squab job', 'version': 1, 'title': 'Ünïcode 座',
        'cloths': [{'id': 1, 'name': 'בד', 'width': 1400}],
        'cushions': [{'id': i + 1, 'name': name, 'thickness': 50, 'cloth': {'face': 1},
                      'outline': square} for i, name in enumerate(HARD_NAMES)]}))
    for release, layers in itertools.product(RELEASES, ('plain', 'd6673')):
        path = folder / f'hard-{release}-{layers}'
        run(squab_cut, job, '--dxf', path, '--dxf-release', release, '--layers', layers)
        doc = opened(path.name, path, release, layers)
        texts = [entity for space in [doc.modelspace(), *doc.blocks] for entity in space
                 if entity.dxftype() == 'TEXT']
        said = '\n'.join(map(text_of, texts)).replace('^ ', '^')
        for name in HARD_NAMES:
            if shown(name)[:200] not in said:
                wrong(f'{path.name}: {name} is not there')
        if layers == 'd6673':
            pieces = [t for t in map(text_of, texts) if t.startswith('Piece Name: ')]
            blocks = [b for b in doc.blocks if b.name[0] not in '*$']
            if not len(pieces) == len(set(pieces)) == len(blocks):
                wrong(f'{path.name}: {len(pieces)} names, {len(blocks)} blocks')
        longest = max(len(line) for line in path.read_bytes().split(b'\r\n'))
        if longest > (255 if release == 'r12' else 2049):
            wrong(f'{path.name}: a line is too long')


squab_cut, samples = sys.argv[1:]
with tempfile.TemporaryDirectory() as temporary:
    holed = pathlib.Path(temporary) / 'holed.squab'
    holed.write_text(json.dumps(HOLED))
    jobs = [*sorted(pathlib.Path(samples).glob('*.squab')), holed]
    for job in jobs:
        folder = pathlib.Path(temporary) / job.stem
        folder.mkdir()
        check_job(squab_cut, job, folder)
    check_hard_names(squab_cut, pathlib.Path(temporary))
if len(jobs) < 2 or min(chiral['right'], chiral['wrong']) < 100:
    wrong(f'only {chiral} rings that tell the right side from the wrong one')
for problem in problems[:40]:
    print(problem)
sys.exit(1 if problems else 0)
