#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-open-instances.py SQUAB-CUT: every instance in the folder SQUAB_INSTANCES, laid for a moment,
is laid right. Skipped where there is no such folder."""
import json
import os
import pathlib
import subprocess
import sys

import instances

SKIPPED = 77

squab_cut, folder = sys.argv[1], os.environ.get('SQUAB_INSTANCES')
files = sorted(pathlib.Path(folder).glob('*.json')) if folder else []
if not files:
    print('skipped: SQUAB_INSTANCES names no folder with instances')
    raise SystemExit(SKIPPED)
problems = []
for file in files:
    instance = json.loads(file.read_text())
    for seconds in ('0', '1'):
        run = subprocess.run([squab_cut, '--lay', file, '--seconds', seconds, '--plan', '-'],
                             capture_output=True, text=True, timeout=60)
        if run.returncode or run.stderr:
            problems.append(f'{file.name}: {run.returncode} {run.stderr}')
            continue
        lay = json.loads(run.stdout)['lays'][0]
        problems += [f'{file.name}: {fault}' for fault in instances.faults(lay, instance)]
        print(f'{file.name}: {100 * lay["density"]:.2f} % in {seconds} s')
raise SystemExit('\n'.join(problems) if problems else 0)
