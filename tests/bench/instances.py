#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""instances.py SQUAB-CUT [--seeds 1-5] [--runs first,short,long] [NAME …]: lays the open instances in
the folder SQUAB_INSTANCES (all, or those named) and prints a table of their densities in percent,
with tabs: the first lay, ten seconds of the processor on one thread, sixty seconds on two threads.
Each seed has a column; every lay is looked over before it counts. For comparison stands what was
published: means of runs of twenty minutes on three threads of another machine, from Tables 2 and 3
of arXiv:2509.13329v1. Says "skipped" where there are no instances.

    SQUAB_INSTANCES=… tests/bench/instances.py build-bench/src/command/squab-cut"""
import argparse
import json
import os
import pathlib
import statistics
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / 'command'))
import instances  # noqa: E402

PUBLISHED = {'albano': 89.47, 'marques': 90.93, 'shirts': 89.66, 'swim': 78.26, 'trousers': 91.73,
             'jakobs2': 84.77, 'shapes0': 68.60, 'shapes1': 75.69}
RUNS = {'first': ('first lay', ['--threads', '1', '--cpu']),
        'short': ('10 CPU s, 1 thread', ['--seconds', '10', '--cpu', '--threads', '1']),
        'long': ('60 s, 2 threads', ['--seconds', '60', '--threads', '2'])}


def seeds_of(text):
    first, _, last = text.partition('-')
    return list(range(int(first), int(last or first) + 1))


def lay(squab_cut, file, more):
    """Density in percent, and seconds."""
    with tempfile.TemporaryDirectory() as folder:
        plan = pathlib.Path(folder) / 'plan.json'
        run = subprocess.run([squab_cut, '--lay', file, '--plan', plan, *more],
                             capture_output=True, text=True)
        if run.returncode:
            raise SystemExit(f'{file}: {run.stderr}')
        found = json.loads(plan.read_text())['lays'][0]
        for fault in instances.faults(found, json.loads(file.read_text())):
            raise SystemExit(f'{file} {more}: {fault}')
    _, seconds, density, _ = run.stdout.rsplit(maxsplit=3)
    return float(density), float(seconds)


def row(squab_cut, file, what, seeds):
    title, more = RUNS[what]
    found = [lay(squab_cut, file, [*more, '--seed', str(seed)]) for seed in seeds]
    densities = [density for density, _ in found]
    published = PUBLISHED.get(file.stem, '')
    cells = [file.stem, title, f'{max(seconds for _, seconds in found):.3f}',
             published and f'{published:.2f}', f'{statistics.mean(densities):.2f}',
             *(f'{density:.2f}' for density in densities)]
    print(*cells, sep='\t', flush=True)
    return statistics.mean(densities)


def main():
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument('squab_cut')
    options.add_argument('names', nargs='*')
    options.add_argument('--seeds', default='1-5')
    options.add_argument('--runs', default='first,short,long')
    given = options.parse_intermixed_args()
    folder = os.environ.get('SQUAB_INSTANCES')
    files = sorted(pathlib.Path(folder).glob('*.json')) if folder else []
    files = [file for file in files if not given.names or file.stem in given.names]
    if not files:
        print('skipped')
        return
    seeds = seeds_of(given.seeds)
    print('instance', 'run', 'most seconds', 'published', 'mean',
          *(f'seed {seed}' for seed in seeds), sep='\t')
    for what in given.runs.split(','):
        means = [row(given.squab_cut, file, what, seeds[:1] if what == 'first' else seeds)
                 for file in files]
        print('all', RUNS[what][0], '', '', f'{statistics.mean(means):.2f}', sep='\t')


if __name__ == '__main__':
    main()
