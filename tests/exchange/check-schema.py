#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-schema.py ROOT: the schema of the job file is a schema, every key in it is described with
an example that it allows, the samples follow it, it refuses what is wrong, and it has just the keys
that every-key.squab has, of which the reader's test knows that they all act."""
import copy
import json
import pathlib
import sys

import jsonschema

root = pathlib.Path(sys.argv[1])
schema = json.loads((root / 'data/job.schema.json').read_text())
Validator = jsonschema.Draft202012Validator
Validator.check_schema(schema)
problems = []


def part(definition):
    """A validator of one part of the schema."""
    return Validator({**definition, '$defs': schema['$defs']})


def resolved(definition):
    """The definition behind a reference."""
    if '$ref' in definition:
        return schema['$defs'][definition['$ref'].rsplit('/', 1)[1]]
    return definition


def check_described(definition, where):
    """Every key says what it is, by an example and a default that it allows."""
    if not definition.get('description'):
        problems.append(f'{where}: no description')
    if not definition.get('examples'):
        problems.append(f'{where}: no example')
    values = definition.get('examples', []) + [v for k, v in definition.items() if k == 'default']
    problems.extend(f'{where}: does not allow {value}' for value in values
                    if not part(definition).is_valid(value))
    for key, value in definition.get('properties', {}).items():
        check_described(value, f'{where}.{key}')


def keys_of_schema(definition, where=''):
    """All keys, as paths like .cushions[].zip.place."""
    definition = resolved(definition)
    if 'items' in definition:
        yield from keys_of_schema(definition['items'], where + '[]')
    for key, value in definition.get('properties', {}).items():
        yield f'{where}.{key}'
        yield from keys_of_schema(value, f'{where}.{key}')


def keys_of_value(value, where=''):
    """The same of a value."""
    if isinstance(value, list):
        for item in value:
            yield from keys_of_value(item, where + '[]')
    elif isinstance(value, dict):
        for key, item in value.items():
            yield f'{where}.{key}'
            yield from keys_of_value(item, f'{where}.{key}')


check_described(schema, 'job')
for name, definition in schema['$defs'].items():
    check_described(definition, name)

every_key = json.loads((root / 'tests/exchange/every-key.squab').read_text())
# A hole's corners are an outline's.
in_schema, in_job = ({key.replace('.holes[][]', '.outline[]') for key in keys}
                     for keys in (keys_of_schema(schema), keys_of_value(every_key)))
problems += [f'only in the schema: {key}' for key in sorted(in_schema - in_job)]
problems += [f'not in the schema: {key}' for key in sorted(in_job - in_schema)]

# Ids that are absent, and the clockwise ring of a file, are as good.
hall_bench = {
    'format': 'squab job', 'version': 1, 'units': 'in',
    'cushions': [{
        'id': 1, 'name': 'Hall bench', 'count': 2, 'thickness': 63.5, 'build': 'boxed',
        'outline': [{'id': 1, 'x': 0, 'y': 0, 'front': True},
                    {'id': 2, 'x': 457.2, 'y': 0, 'bow': 25.4},
                    {'id': 3, 'x': 457.2, 'y': 457.2, 'radius': 38.1},
                    {'x': 0, 'y': 457.2, 'bevel': 12}],
        'welt': {'cord': 4}}]}
jobs = {'every-key.squab': every_key, 'Hall bench': hall_bench}
jobs |= {path.name: json.loads(path.read_text())
         for path in sorted((root / 'data/samples').glob('*.squab'))}
for name, job in jobs.items():
    problems += [f'{name}: {error.json_path}: {error.message}'
                 for error in Validator(schema).iter_errors(job)]

WRONG = [
    ('version', 2), ('units', 'ft'), ('cushions', [{'count': 0}]), ('cushions', [{'id': 1.5}]),
    ('cushions', [{'thickness': 100001}]), ('cushions', [{'outline': [{'x': 0}]}]),
    ('cushions', [{'outline': [{'x': 0, 'y': 0, 'bow': 1, 'curve': [[0, 0], [1, 1]]}]}]),
    ('cushions', [{'outline': [{'x': 0, 'y': 0, 'curve': [[0, 0]]}]}]),
    ('cushions', [{'zip': {'place': 'top'}}]), ('cloths', [{'repeat': {'drop': 0.25}}]),
    ('cloths', [{'stripes': [{'at': 1}]}]), ('cloths', [{'colour': 'red'}]),
    ('cloths', [{'stock': [{'kind': 'bolt'}]}]),
    ('cloths', [{'stock': [{'kind': 'remnant', 'length': -1}]}]),
    ('cloths', [{'flaws': [{'x': 0, 'y': 0, 'length': 1}]}]),
    ('laying', {'cuts': 'round'}), ('laying', {'plies': {'most': 0}}),
    ('pins', [{'cushion': 1, 'role': 'lid', 'x': 0, 'y': 0, 'turn': 0}]),
    ('pins', [{'cushion': 1, 'role': 'face', 'x': 0, 'y': 0, 'turn': 361}]),
    ('revision', 'a'), ('revision', 2), ('papers', {'sheet': 'a5'}),
    ('papers', {'kinds': ['layout', 'layout']}), ('kept_lays', [{'strips': []}]),
    ('kept_lays', [{**every_key['kept_lays'][0], 'digest': '12'}]),
    ('kept_lays', [{**every_key['kept_lays'][0], 'placed': [{'piece': 0}]}]),
    ('kept_lays', [{**every_key['kept_lays'][0], 'unlaid': [{'piece': 0, 'count': 1, 'why': ''}]}]),
]
for key, value in WRONG:
    job = copy.deepcopy(hall_bench)
    job[key] = value
    if Validator(schema).is_valid(job):
        problems.append(f'allows {key}: {value}')

sys.exit('\n'.join(problems) if problems else 0)
