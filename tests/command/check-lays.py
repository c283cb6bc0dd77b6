#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-lays.py SQUAB-CUT FOLDER: the lays of every job in FOLDER and of a patterned one, as
squab-cut writes them, looked over by GEOS from nothing but what is written and the job: drawn in by
0.005 mm no piece meets another, none leaves the cloth, each lies as often as it is wanted, turned as
it may be, its pattern where it must fall; and what is bought is enough, and no more than that."""
import collections
import json
import pathlib
import re
import subprocess
import sys
import tempfile

from shapely import affinity
from shapely.geometry import Point, Polygon, box
from shapely.ops import unary_union

DRAWN_IN_MM = 0.005
FLAT_MM = 0.001
ROUNDED_MM = 0.0015  # places and corners are told in whole micrometres
SQUARING_MM = 50.8
PLY_ENDS_MM = 25.4
TURNS = {'none': {0}, 'half': {0, 2}, 'quarter': {0, 1, 2, 3}, 'free': {0, 1, 2, 3}}

# A motif with a drop and stripes that are not symmetric, one way up; and a seat that is too wide.
PATTERNED = {
    'format': 'squab job', 'version': 1, 'units': 'mm',
    'cloths': [{'id': 4, 'width': 1380, 'one_way': True, 'up': 'start',
                'repeat': {'across': 127.3, 'along': 211.1, 'drop': 0.5},
                'stripes': [{'at': 10, 'width': 20, 'colour': '#803020'},
                            {'at': 60, 'width': 9, 'colour': '#204080'}]},
               {'id': 6, 'width': 900, 'repeat': {'across': 90},
                'stripes': [{'at': 30, 'width': 30, 'colour': '#204080'}]}],
    'cushions': [
        {'id': 1, 'count': 3, 'hand': 'pair', 'thickness': 60, 'cloth': {'face': 4},
         'stripes': {'centre_on': 'motif'},
         'outline': [{'x': 0, 'y': 0, 'front': True}, {'x': 520, 'y': 0, 'bow': 45},
                     {'x': 480, 'y': 410, 'radius': 40}, {'x': 0, 'y': 430, 'bow': -25}],
         'holes': [[{'x': 100, 'y': 100}, {'x': 100, 'y': 180}, {'x': 190, 'y': 100}]]},
        {'id': 2, 'count': 2, 'thickness': 50, 'build': 'folded-corner', 'cloth': {'face': 6},
         'outline': [{'x': 0, 'y': 0}, {'x': 450, 'y': 0}, {'x': 450, 'y': 450},
                     {'x': 0, 'y': 450}]},
        {'id': 3, 'thickness': 50, 'cloth': {'face': 6},
         'outline': [{'x': 0, 'y': 0}, {'x': 950, 'y': 0}, {'x': 950, 'y': 950},
                     {'x': 0, 'y': 950}]}]}

# Two remnants and a bolt: all are used, the narrow remnant for what goes onto it, and a roll is
# bought for the rest.
STOCKED = {
    'format': 'squab job', 'version': 1, 'units': 'in',
    'cloths': [{'id': 2, 'width': 1400, 'repeat': {'across': 110},
                'stripes': [{'at': 20, 'width': 30, 'colour': '#204080'}],
                'stock': [{'id': 9, 'kind': 'bolt', 'length': 1500},
                          {'id': 4, 'kind': 'remnant', 'length': 1300, 'width': 620},
                          {'id': 7, 'kind': 'remnant', 'length': 700, 'width': 1250},
                          {'id': 5, 'kind': 'remnant', 'length': 0}],
                'flaws': [{'stock': 4, 'x': 300, 'y': 250, 'length': 40, 'width': 30},
                          {'stock': 9, 'x': 480, 'y': 0, 'length': 12, 'width': 1400},
                          {'x': 500, 'y': 700, 'length': 20, 'width': 20},
                          {'stock': 99, 'x': 0, 'y': 0, 'length': 900, 'width': 900}]}],
    'cushions': [{'id': 1, 'count': 5, 'thickness': 60,
                  'outline': [{'x': 0, 'y': 0}, {'x': 500, 'y': 0}, {'x': 500, 'y': 450},
                              {'x': 0, 'y': 450}]}]}

# A lot of mirrored pairs in one-way cloth whose pattern has to match, cut in plies on a short table.
LOT = {
    'format': 'squab job', 'version': 1, 'units': 'mm',
    'cloths': [{'id': 4, 'width': 1380, 'one_way': True, 'repeat': {'across': 120, 'along': 150},
                'stripes': [{'at': 10, 'width': 20, 'colour': '#803020'}]}],
    'laying': {'plies': {'most': 4, 'table': 2400}},
    'cushions': [{'id': 1, 'count': 8, 'hand': 'pair', 'thickness': 60,
                  'outline': [{'x': 0, 'y': 0, 'front': True}, {'x': 520, 'y': 0, 'bow': 45},
                              {'x': 480, 'y': 410, 'radius': 40}, {'x': 0, 'y': 430}]}]}

problems = []


def written(squab_cut, job):
    """The plan, and the exit status: 1 where it is done and the job has errors."""
    run = subprocess.run([squab_cut, job, '--plan', '-', '--flatten', str(FLAT_MM)],
                         capture_output=True, text=True)
    if run.returncode not in (0, 1):
        raise SystemExit(run.stderr)
    return json.loads(run.stdout), run.returncode


def piece_of(plan, item):
    return plan['cushions'][item['cushion']]['pieces'][item['piece']]


def quarters_of(piece, placed):
    """How often the piece is turned from where its grain lies along the roll."""
    times = (placed['turn'] + piece['grain']) / 90
    return round(times) % 4 if abs(times - round(times)) < 1e-9 else None


def on_cloth(shape, placed):
    turned = affinity.rotate(shape, placed['turn'], origin=(0, 0))
    return affinity.translate(turned, placed['x'], placed['y'])


def lying(piece, placed):
    """The piece where it lies, a polygon with its holes."""
    rings = [[node[:2] for node in ring] for ring in piece['cut']]
    return on_cloth(Polygon(rings[0], rings[1:]), placed)


def off_by(at, place, repeat):
    off = at - place
    return abs(off - repeat * round(off / repeat)) if repeat > 0 else abs(off)


def colour_at(cloth, across):
    repeat = cloth.get('repeat', {}).get('across', 0)
    colour = None
    for stripe in cloth.get('stripes', []):
        from_edge = (across - stripe['at']) % repeat if repeat > 0 else across - stripe['at']
        if 0 <= from_edge < stripe['width']:
            colour = stripe['colour']
    return colour


def reads_both_ways(cloth, across):
    """Whether the stripes are the same to either side of a line."""
    span = cloth.get('repeat', {}).get('across', 0) or cloth['width']
    return all(colour_at(cloth, across + span * (i + 0.37) / 500)
               == colour_at(cloth, across - span * (i + 0.37) / 500) for i in range(500))


def pattern_fault(piece, placed, cloth, quarters):
    phase = piece['phase']
    if phase is None:
        return None
    anchor = on_cloth(Point(phase['x'], phase['y']), placed)
    repeat = {'across': 0, 'along': 0, 'drop': 0} | cloth.get('repeat', {})
    if phase['across'] and off_by(anchor.y, phase['v'], repeat['across']) > ROUNDED_MM:
        return 'its stripes are off'
    if phase['across'] and quarters == 2 and not reads_both_ways(cloth, phase['v']):
        return 'its stripes are the wrong way round'
    along = anchor.x
    if repeat['drop'] and round((anchor.y - phase['v']) / repeat['across']) % 2:
        along -= repeat['drop'] * repeat['along']
    if phase['along'] and off_by(along, phase['u'], repeat['along']) > ROUNDED_MM:
        return 'its motif is off'
    return None


def flaws_on(cloth, strip):
    return unary_union([box(flaw['x'], flaw['y'], flaw['x'] + flaw['length'],
                            flaw['y'] + flaw['width'])
                        for flaw in cloth.get('flaws', [])
                        if flaw.get('stock') == strip.get('stock')])


def check_strips(where, lay, cloth):
    """First what is there, as it is there; then one roll."""
    in_stock = {stock['id']: stock for stock in cloth.get('stock', []) if stock['length'] > 0}
    *there, roll = lay['strips']
    if roll['kind'] != 'roll' or 'stock' in roll:
        problems.append(f'{where}: no roll comes last')
    if sorted(strip['stock'] for strip in there) != sorted(in_stock):
        problems.append(f'{where}: not what is in stock')
    kinds = [in_stock[strip['stock']]['kind'] for strip in there]
    if kinds != sorted(kinds, reverse=True):
        problems.append(f'{where}: a bolt before a remnant')
    for strip, kind in zip(there, kinds):
        stock = in_stock[strip['stock']]
        if (strip['kind'] != {'bolt': 'roll', 'remnant': 'remnant'}[kind]
                or strip['width'] != stock.get('width', cloth['width'])
                or strip['whole_length'] != stock['length']
                or strip['length'] > stock['length']):
            problems.append(f'{where}: {strip} is not {stock}')


def check_places(name, plan, lay, cloth):
    shapes = []
    for placed in lay['placed']:
        where = f'{name}: cloth {lay["cloth"]}: {placed}'
        piece = piece_of(plan, placed)
        shape = lying(piece, placed)
        strip = lay['strips'][placed['strip']]
        quarters = quarters_of(piece, placed)
        if piece['cloth'] != lay['cloth'] or placed['mirrored']:
            problems.append(f'{where}: not a piece of this cloth')
        if quarters not in TURNS[piece['turns']]:
            problems.append(f'{where}: turned as it may not be')
        x0, y0, x1, y1 = shape.bounds
        if min(x0, y0, strip['length'] - x1, strip['width'] - y1) < -ROUNDED_MM:
            problems.append(f'{where}: beyond the cloth')
        if shape.buffer(-DRAWN_IN_MM).intersects(flaws_on(cloth, strip)):
            problems.append(f'{where}: on a flaw')
        fault = pattern_fault(piece, placed, cloth, quarters)
        if fault:
            problems.append(f'{where}: {fault}')
        shapes.append((placed['strip'], shape.buffer(-DRAWN_IN_MM)))
    check_overlaps(f'{name}: cloth {lay["cloth"]}', shapes)
    return len(shapes)


def check_overlaps(where, shapes):
    for strip in {strip for strip, _ in shapes}:
        here = [shape for on, shape in shapes if on == strip]
        for i, shape in enumerate(here):
            problems.extend(f'{where}: {i} and {k} overlap' for k in range(i)
                            if shape.intersects(here[k]))


def check_counts(name, plan):
    """Every copy of every piece lies once, or is told as not laid."""
    copies, unlaid = collections.defaultdict(list), collections.Counter()
    for lay in plan['lays']:
        for placed in lay['placed']:
            copies[placed['cushion'], placed['piece']].append(placed['copy'])
        for item in lay['unlaid']:
            unlaid[item['cushion'], item['piece']] += item['count']
    for c, cushion in enumerate(plan['cushions']):
        for p, piece in enumerate(cushion['pieces']):
            wanted, laid = cushion['count'] * piece['count'], copies.pop((c, p), [])
            if sorted(laid) != list(range(len(laid))) or len(laid) + unlaid[c, p] != wanted:
                problems.append(f'{name}: piece {p} of cushion {c} is not there {wanted} times')
    if copies:
        problems.append(f'{name}: more than there is')


def check_purchase(name, plan, lay, bought):
    where = f'{name}: to buy of cloth {lay["cloth"]}'
    last = len(lay['strips']) - 1
    length, width = lay['strips'][last]['length'], lay['strips'][last]['width']
    on_roll = [placed for placed in lay['placed'] if placed['strip'] == last]
    area, all_area = (sum(piece_of(plan, placed)['area'] for placed in some)
                      for some in (on_roll, lay['placed']))
    laid_area = sum(strip['length'] * strip['width'] for strip in lay['strips'])
    needed = bought['laid'] + bought['squaring'] + bought['pattern']
    steps = bought['buy'] / bought['sold_by']
    if bought['cloth'] != lay['cloth'] or abs(bought['laid'] - length) > 1e-6:
        problems.append(f'{where}: not what is laid')
    if bought['bolts'] != (1 if on_roll else 0):
        problems.append(f'{where}: bolts')
    if abs(bought['squaring'] - SQUARING_MM * bought['bolts']) > 1e-9:
        problems.append(f'{where}: squaring')
    if abs(steps - round(steps)) > 1e-9 or not -1e-3 <= bought['buy'] - needed < bought['sold_by']:
        problems.append(f'{where}: {bought["buy"]} for {needed}')
    if on_roll and abs(bought['waste'] - (1 - area / (bought['buy'] * width))) > 1e-5:
        problems.append(f'{where}: waste')
    if lay['placed'] and abs(lay['density'] - all_area / laid_area) > 1e-5:
        problems.append(f'{where}: density')
    if bought['stock'] != [{'id': strip['stock'], 'laid': strip['length']}
                           for strip in lay['strips'][:last] if strip['length'] > 0]:
        problems.append(f'{where}: stock')
    if bought['unlaid'] != sum(item['count'] for item in lay['unlaid']):
        problems.append(f'{where}: unlaid')


def check_lot(plan, job):
    """One ply is a right lay, fits the table, and as many as there are make all that is wanted; of
    all depths that take no more than 3 % above the least cloth it takes the least time."""
    plies, cloth = plan['lays'][0]['plies'], job['cloths'][0]
    table = job['laying']['plies']['table']
    copies = collections.Counter((item['cushion'], item['piece']) for item in plies['placed'])
    best = next(depth for depth in plies['depths'] if depth['plies'] == plies['plies'])
    wanted = {(c, p): cushion['count'] * piece['count'] for c, cushion in enumerate(plan['cushions'])
              for p, piece in enumerate(cushion['pieces'])}
    check_places('lot', plan, {'cloth': cloth['id']} | plies, cloth)
    if {key: -(-count // plies['plies']) for key, count in wanted.items()} != copies:
        problems.append('lot: not the pieces of one ply')
    if best['spares'] != sum(copies[key] * plies['plies'] - n for key, n in wanted.items()):
        problems.append('lot: spares')
    if any(depth['unlaid'] for depth in plies['depths']):
        problems.append('lot: a piece is left out')
    most = 1.03 * min(depth['buy'] for depth in plies['depths'])
    within = [depth for depth in plies['depths'] if depth['buy'] <= most + 1e-6]
    if best not in within:
        problems.append('lot: another depth takes much less cloth')
    if best['minutes'] > min(depth['minutes'] for depth in within):
        problems.append('lot: another depth takes less time')
    repeat = cloth['repeat']['along']
    ends = [strip['length'] + PLY_ENDS_MM for strip in plies['strips'] if strip['length'] > 0]
    if any(-(-end // repeat) * repeat > table for end in ends):
        problems.append('lot: a ply is longer than its table')
    spread = plies['plies'] * sum(-(-end // repeat) * repeat for end in ends)
    if len(ends) != plies['lays'] or abs(spread - best['cloth']) > 1e-6:
        problems.append(f'lot: {best["cloth"]} of cloth for {spread}')
    print(f'lot: {plies["plies"]} plies, {plies["lays"]} lays, {len(plies["placed"])} laid')


def foam_shape(plan, placed):
    part = plan['cushions'][placed['cushion']]['foam'][placed['foam']]
    rings = [[node[:2] for node in ring] for ring in part['rings']]
    shape = Polygon(rings[0], rings[1:])
    if placed['mirrored']:
        shape = affinity.scale(shape, -1, 1, origin=(0, 0))
    return on_cloth(shape, placed)


def check_foam(name, plan):
    """All foam lies on sheets of its own kind and thickness, as far apart as a saw takes, or is told."""
    wanted = collections.Counter()
    for c, cushion in enumerate(plan['cushions']):
        if cushion['build'] != 'bolster':
            for k, part in enumerate(cushion['foam']):
                wanted[c, k] += part['count'] * cushion['count']
    for lay in plan['foam_lays']:
        where = f'{name}: {lay["material"]} foam {lay["thickness"]} thick'
        shapes = collections.defaultdict(list)
        for placed in lay['placed']:
            part = plan['cushions'][placed['cushion']]['foam'][placed['foam']]
            if (part['material'], part['thickness']) != (lay['material'], lay['thickness']):
                problems.append(f'{where}: {placed} is none')
            shapes[placed['strip']].append(foam_shape(plan, placed))
            wanted[placed['cushion'], placed['foam']] -= 1
        for item in lay['unlaid']:
            wanted[item['cushion'], item['foam']] -= item['count']
        for strip, here in shapes.items():
            sheet = lay['strips'][strip]
            room = box(0, 0, sheet['length'], sheet['width']).buffer(ROUNDED_MM)
            if not all(room.contains(shape) for shape in here):
                problems.append(f'{where}: something leaves its sheet')
            problems.extend(f'{where}: no room for the saw between {i} and {k}'
                            for i, shape in enumerate(here) for k in range(i)
                            if shape.distance(here[k]) < lay['kerf'] - 0.02)
        if lay['sheets'] != len(shapes):
            problems.append(f'{where}: {lay["sheets"]} sheets for {len(shapes)}')
        used = sum(sheet['length'] * sheet['width'] for strip, sheet in enumerate(lay['strips'])
                   if strip in shapes)
        cut = sum(shape.area for here in shapes.values() for shape in here)
        if used and abs(lay['waste'] - (1 - cut / used)) > 1e-4:
            problems.append(f'{where}: waste')
    problems.extend(f'{name}: foam {part} is {left} times missing'
                    for part, left in wanted.items() if left)


def check_job(name, squab_cut, path):
    plan, status = written(squab_cut, path)
    job = json.loads(pathlib.Path(path).read_text())
    cloths = {cloth['id']: cloth for cloth in job.get('cloths', [])}
    n = 0
    for lay, bought in zip(plan['lays'], plan['purchase'], strict=True):
        if not re.fullmatch('[0-9a-f]{16}', lay['digest']):
            problems.append(f'{name}: digest')
        check_strips(f'{name}: cloth {lay["cloth"]}', lay, cloths.get(lay['cloth'], {}))
        n += check_places(name, plan, lay, cloths.get(lay['cloth'], {}))
        check_purchase(name, plan, lay, bought)
    check_counts(name, plan)
    check_foam(name, plan)
    if any(lay['unlaid'] for lay in plan['lays']) and status != 1:
        problems.append(f'{name}: what is not laid is no error')
    return n, sum(item['count'] for lay in plan['lays'] for item in lay['unlaid'])


def kept(plan, lay, by):
    """The lay as a job keeps it, everything @by mm farther along."""
    pieces = list(dict.fromkeys((item['cushion'], item['piece']) for item in lay['placed']))
    return {
        'cloth': lay['cloth'], 'digest': lay['digest'], 'seed': 5, 'steps': 7,
        'strips': [{'width': lay['strips'][0]['width'], 'length': lay['strips'][0]['length'] + by}],
        'pieces': [{'cushion': plan['cushions'][c]['id'], 'piece': p,
                    'mirrored': plan['cushions'][c]['hand'] == 'mirrored',
                    'cut': plan['cushions'][c]['pieces'][p]['cut']} for c, p in pieces],
        'placed': [{'piece': pieces.index((item['cushion'], item['piece'])),
                    'copy': item['copy'], 'strip': 0, 'x': round(item['x'] + by, 3),
                    'y': item['y'], 'turn': item['turn']} for item in lay['placed']]}


def plan_with(squab_cut, job, lays):
    with tempfile.NamedTemporaryFile('w', suffix='.squab') as file:
        json.dump({**job, 'kept_lays': lays}, file)
        file.flush()
        return written(squab_cut, file.name)[0]


def check_kept(squab_cut, path):
    """A lay that no search would find is used as long as it can be, and not a step further."""
    plan, job = written(squab_cut, path)[0], json.loads(pathlib.Path(path).read_text())
    lays = [kept(plan, lay, 10) for lay in plan['lays']]
    used = plan_with(squab_cut, job, lays)
    for lay, before in zip(used['lays'], plan['lays'], strict=True):
        places = [item | {'x': round(item['x'] + 10, 3)} for item in before['placed']]
        if lay['placed'] != places or (lay['seed'], lay['steps']) != (5, 7):
            problems.append(f'the kept lay of cloth {lay["cloth"]} is not used')
    check_places('kept', used, used['lays'][0], job['cloths'][0])
    lays[0]['placed'][0]['x'] -= 100
    lays[-1]['digest'] = '0' * 16
    if plan_with(squab_cut, job, lays)['lays'] != plan['lays']:
        problems.append('a kept lay that is none any more is used')


squab_cut, folder = sys.argv[1:]
check_kept(squab_cut, pathlib.Path(folder) / 'bay-seat.squab')
for sample in sorted(pathlib.Path(folder).glob('*.squab')):
    laid, left = check_job(sample.name, squab_cut, sample)
    print(f'{sample.name}: {laid} laid, {left} not')
    if not laid:
        problems.append(f'{sample.name}: nothing is laid')
with tempfile.NamedTemporaryFile('w', suffix='.squab') as file:
    json.dump(PATTERNED, file)
    file.flush()
    laid, left = check_job('patterned', squab_cut, file.name)
    print(f'patterned: {laid} laid, {left} not')
    if not laid or not left:
        problems.append('patterned: all or nothing is laid')
with tempfile.NamedTemporaryFile('w', suffix='.squab') as file:
    json.dump(STOCKED, file)
    file.flush()
    laid, left = check_job('stocked', squab_cut, file.name)
    print(f'stocked: {laid} laid, {left} not')
    if left or not all(strip['length'] for strip in written(squab_cut, file.name)[0]
                       ['lays'][0]['strips']):
        problems.append('stocked: not all is laid, or not everything used')
with tempfile.NamedTemporaryFile('w', suffix='.squab') as file:
    json.dump(LOT, file)
    file.flush()
    check_job('lot', squab_cut, file.name)
    check_lot(written(squab_cut, file.name)[0], LOT)
raise SystemExit('\n'.join(problems) if problems else 0)
