#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""count.py TESTLOG.json: prints how many tests of one meson run passed, failed and were skipped.
A program that speaks TAP counts with every test in it."""
import json
import re
import sys

passed = failed = skipped = 0
for line in open(sys.argv[1], encoding='utf-8'):
    test = json.loads(line)
    cases = re.findall(r'^(ok|not ok) \d+(.*)$', test.get('stdout', ''), re.M)
    bad = sum(outcome == 'not ok' for outcome, _ in cases)
    idle = sum('# SKIP' in rest.upper() for _, rest in cases)
    if test['result'] == 'SKIP':
        skipped += max(idle, 1)
    elif test['result'] == 'OK':
        passed += max(len(cases) - idle, 1)
        skipped += idle
    else:
        passed += len(cases) - bad - idle
        failed += max(bad, 1)
        skipped += idle
print(passed, failed, skipped)
