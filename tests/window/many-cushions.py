#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""many-cushions.py JOB N: prints JOB with its first cushion N times, each a little wider, and patterns of
them on small sheets with wide margins."""
import copy
import json
import sys

with open(sys.argv[1]) as file:
    job = json.load(file)
first = job['cushions'][0]
job['cushions'] = []
for i in range(int(sys.argv[2])):
    cushion = copy.deepcopy(first)
    cushion['id'] = i + 1
    for corner in cushion['outline']:
        if corner['x'] > 0:
            corner['x'] += i / 8
    job['cushions'].append(cushion)
job['papers'] = {'kinds': ['pattern'], 'pattern': {'sheet': 'a4', 'margin': 30, 'overlap': 30}}
json.dump(job, sys.stdout)
