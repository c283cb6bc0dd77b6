#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-translated.py ROOT SQUAB-CUT JOB…: the cut list in the pseudo-locale has no plain English
word left but the names that the job itself gives."""
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

import rooms


def strings(value):
    """Every text in a JSON value."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, (dict, list)):
        for inner in value.values() if isinstance(value, dict) else value:
            yield from strings(inner)


root, squab_cut, *jobs = sys.argv[1:]
problems = []
with tempfile.TemporaryDirectory() as folder:
    subprocess.run([sys.executable, '-B', pathlib.Path(__file__).with_name('pseudo-locale.py'),
                    root, folder], check=True)
    speaking = os.environ | {'SQUAB_LOCALEDIR': folder, 'LANGUAGE': 'xx', 'LC_ALL': 'C.UTF-8'}
    for job in jobs:
        said = subprocess.run([squab_cut, job], env=speaking, capture_output=True, text=True)
        text = said.stdout + said.stderr
        for name in sorted(strings(json.loads(pathlib.Path(job).read_text())), key=len, reverse=True):
            text = text.replace(name, '')
        problems += [f'{job}: {word}' for word in sorted(set(re.findall('[A-Za-z]{3,}', text)))]
        if not re.search('[áéïöü]{2}', text):
            problems.append(f'{job}: nothing was translated')
rooms.finish(problems)
