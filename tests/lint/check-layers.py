#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-layers.py ROOT: every #include of src/<room>/ is one that the room may know."""
import re
import sys

import rooms

INCLUDE = re.compile(r'^\s*#\s*include\s*(?:"([^"]+)"|<([^>]+)>)', re.M)


def refused(room, own, system):
    if system:
        return system not in rooms.SYSTEM | rooms.ROOM_SYSTEM.get(room, set())
    return own.partition('/')[0] not in [room, *rooms.ROOMS[room]]


problems = []
for path in rooms.sources(sys.argv[1], 'src'):
    room = path.relative_to(sys.argv[1]).parts[1]
    if room not in rooms.ROOMS:
        problems.append(f'{path}: no room is called {room}')
        continue
    for match in INCLUDE.finditer(path.read_text()):
        if refused(room, *match.groups()):
            problems.append(f'{path}: {room} may not include {match[1] or match[2]}')
rooms.finish(problems)
