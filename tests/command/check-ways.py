#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-ways.py SQUAB-CUT FOLDER: the comparison of ways of building, of every job in FOLDER, against
what the plan says of each cushion once it is really built so: squab-cut is run anew on a job whose
cushion is changed by this script. Times and costs are reckoned here from the figures told."""
import copy
import json
import pathlib
import subprocess
import sys
import tempfile

WITHIN = 1e-6
problems = []


def run(squab_cut, job, *options):
    """What is written for @job, a path or what is to stand in a file."""
    with tempfile.TemporaryDirectory() as folder:
        path = job
        if isinstance(job, dict):
            path = pathlib.Path(folder, 'job.squab')
            path.write_text(json.dumps(job))
        done = subprocess.run([squab_cut, path, *options], capture_output=True, text=True)
    if done.returncode not in (0, 1):
        raise SystemExit(done.stderr)
    return done.stdout


def expect(what, found, expected):
    if found is None or abs(found - expected) > WITHIN * max(1, abs(expected)):
        problems.append(f'{what}: {found} instead of {expected}')


def alone(job, cushion, way):
    """The job with nothing but @cushion, built as @way says where it is not already."""
    job = copy.deepcopy(job)
    cushion = copy.deepcopy(cushion)
    job.pop('kept_lays', None)
    job['cushions'] = [cushion]
    if not way['in_use']:
        cushion['build'] = way['build']
        if way['build'] == 'boxed' and not way['welt']:
            cushion.get('welt', {}).pop('at', None)
        if way['welt']:
            cushion.setdefault('welt', {}).setdefault('at', 'both')
        for corner in cushion.get('outline', []):
            corner.pop('build', None)
    return job


def check_way(name, squab_cut, job, cushion, way, rates):
    plan = json.loads(run(squab_cut, alone(job, cushion, way), '--plan', '-'))
    faults = [p for c in plan['cushions'] for p in c['problems'] if p['severity'] == 'error']
    if way['possible'] != (not faults):
        problems.append(f'{name}: possible {way["possible"]}, but {len(faults)} errors')
        return
    if faults:
        if (way['why']['code'], way['why']['id']) != (faults[0]['code'], faults[0]['id']):
            problems.append(f'{name}: why {way["why"]} instead of {faults[0]}')
        if any(way[key] for key in ('pieces', 'seam_length', 'minutes', 'cost', 'cloth')):
            problems.append(f'{name}: figures of what can’t be built')
        return
    totals = plan['totals']
    expect(f'{name} pieces', way['pieces'], totals['pieces'])
    expect(f'{name} seam', way['seam_length'], totals['seam_length'])
    expect(f'{name} foam', way['foam']['volume'], totals['foam_volume'])
    bought = {bolt['cloth']: bolt['buy'] for bolt in plan['purchase']}
    for cloth, total in zip(way['cloth'], totals['cloths']):
        expect(f'{name} cloth {cloth["cloth"]}', cloth['area'], total['area'])
        expect(f'{name} length of cloth {cloth["cloth"]}', cloth['length'], bought[cloth['cloth']])
    check_cost(name, job, plan, way, rates)


def check_cost(name, job, plan, way, rates):
    totals = plan['totals']
    zips = sum(c['count'] for c in plan['cushions'] if c['zip']['place'] != 'none')
    fixed = (rates['cut'] * totals['pieces'] + rates['sew'] * totals['seam_length'] / 1000
             + rates['zip'] * zips + rates['foam'] * totals['foam_parts']
             + rates['handling'] * totals['cushions'])
    turned = (way['minutes'] - fixed) / rates['corner']
    if not way['welt'] and abs(turned - round(turned)) > WITHIN:
        problems.append(f'{name}: {turned} corners')
    expect(f'{name} work', way['costs']['work'], way['minutes'] / 60 * rates['wage'])
    prices = {cloth['id']: cloth.get('price') for cloth in job.get('cloths', [])}
    used = [prices.get(cloth['cloth']) for cloth in way['cloth']]
    if ('cloth' in way['unknown']) != (None in used):
        problems.append(f'{name}: unknown {way["unknown"]}, prices {used}')
    if None not in used:
        expect(f'{name} cost of cloth', way['costs']['cloth'],
               sum(p * c['length'] / 1000 for p, c in zip(used, way['cloth'])))
    expect(f'{name} cost', way['cost'], sum(part or 0 for part in way['costs'].values()))


squab_cut, folder = sys.argv[1:]
for path in sorted(pathlib.Path(folder).glob('*.squab')):
    job = json.loads(path.read_text())
    plan = json.loads(run(squab_cut, path, '--plan', '-', '--ways'))
    for cushion, planned in zip(job['cushions'], plan['cushions']):
        if sum(way['in_use'] for way in planned['ways']) != 1:
            problems.append(f'{path.name}: not one way in use')
        for way in planned['ways']:
            if not way['mixed'] or way['in_use']:
                check_way(f'{path.name} {way["build"]}', squab_cut, job, cushion, way,
                          plan['rates'])
    text = run(squab_cut, path, '--ways')
    if text.count('WAYS OF BUILDING') != len(job['cushions']) or 'Sample rates' not in text:
        problems.append(f'{path.name}: {text}')


def check_wide(squab_cut):
    """A face of 1800 on cloth of 1346.2: each way out is what the job changed to it says."""
    outline = [{'id': 1, 'x': 0, 'y': 0}, {'id': 2, 'x': 1800, 'y': 0},
               {'id': 3, 'x': 1800, 'y': 600}, {'id': 4, 'x': 0, 'y': 600}]
    job = {'format': 'squab job', 'version': 1, 'cloths': [{'id': 1, 'price': 20}],
           'cushions': [{'id': 1, 'build': 'boxed', 'outline': outline}]}
    changes = {'two-joins': {'seams_across': 'two'}, 'turn': {'stripes': {'run': 'side-to-side'}}}

    def plan_of(keys):
        changed = {**job, 'cushions': [{**job['cushions'][0], **keys}]}
        return json.loads(run(squab_cut, changed, '--plan', '-', '--ways'))
    wide = {way['way']: way for way in plan_of({})['cushions'][0]['wide']}
    if list(wide) != ['two-joins', 'divide', 'turn', 'wider-cloth']:
        problems.append(f'wide: {list(wide)}')
    for name, keys in changes.items():
        plan, way = plan_of(keys), wide[name]
        expect(f'wide {name} pieces', way['pieces'], plan['totals']['pieces'])
        expect(f'wide {name} seam', way['seam_length'], plan['totals']['seam_length'])
        expect(f'wide {name} length', way['cloth'][0]['length'], plan['purchase'][0]['buy'])
        expect(f'wide {name} cost', way['costs']['cloth'], 20 * plan['purchase'][0]['buy'] / 1000)
    if wide['divide']['cushions'] != 2 or wide['wider-cloth']['costs']['cloth'] is not None:
        problems.append(f'wide: {wide["divide"]} {wide["wider-cloth"]}')
    expect('wide width', round(wide['wider-cloth']['width'], 1), 1825.4)


check_wide(squab_cut)
raise SystemExit('\n'.join(problems) if problems else 0)
