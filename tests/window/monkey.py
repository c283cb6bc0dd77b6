#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""monkey.py N SEED X Y WIDTH HEIGHT LEFT TOP RIGHT BOTTOM: prints a script for drive.sh of N random
inputs, the same for the same seed: drags, clicks and wheel turns within the window X Y WIDTH HEIGHT
(on the screen), three of four about the seat (LEFT TOP RIGHT BOTTOM), keys, typed figures, menus."""
import random
import sys

KEYS = ['Tab', 'shift+Tab', 'Return', 'Escape', 'space', 'Up', 'Down', 'Left', 'Right', 'Page_Down',
        'Page_Up', 'Home', 'End', 'Insert', 'Delete', 'BackSpace', 'F8', 'Menu', 'shift+F10', 'F10',
        'shift+Up', 'shift+Right', 'alt+Up', 'alt+Down', 'F2', 'a', 'b', 'c', 'd', 'e', 'n', 'p', 't',
        'ctrl+e', 'ctrl+plus', 'ctrl+minus', 'ctrl+0', 'ctrl+h', 'ctrl+j', 'ctrl+t']
EDITS = ['ctrl+z', 'ctrl+z', 'ctrl+y', 'ctrl+d', 'ctrl+m', 'ctrl+shift+n', 'ctrl+shift+d',
         'ctrl+shift+m', 'ctrl+shift+h']
ROWS = ['alt+' + letter for letter in 'tcwdfiunhrmspaxkegoby']
FIGURES = ['12', '1 1/2', '0', '-3', '90', '3 fish', '24 in', '46.5 cm', '1e9']


def place(chance, window, seat):
    left, top, right, bottom = seat if chance.random() < 0.75 else window
    return chance.randint(left, right - 1), chance.randint(top, bottom - 1)


def drag(chance, window, seat):
    (x, y), (to_x, to_y) = place(chance, window, seat), place(chance, window, seat)
    steps = [f'mousemove {x + (to_x - x) * i // 4} {y + (to_y - y) * i // 4} sleep 0.02'
             for i in range(5)]
    middle = chance.choice([[], [], [], ['key Escape'], ['key 1']])
    return ' '.join([steps[0], 'mousedown 1', *steps[1:3], *middle, *steps[3:], 'mouseup 1'])


def one(chance, window, seat):
    kind = chance.random()
    if kind < 0.25:
        return drag(chance, window, seat)
    if kind < 0.45:
        x, y = place(chance, window, seat)
        button = chance.choice([1, 1, 1, 3, 4, 5])
        return f'mousemove {x} {y} sleep 0.02 click --repeat {chance.choice([1, 1, 2])} {button}'
    if kind < 0.65:
        return f'key {chance.choice(KEYS)}'
    if kind < 0.75:
        return f'key {chance.choice(EDITS)}'
    if kind < 0.88:
        return (f"key {chance.choice(ROWS)} key ctrl+a; xdotool type -- '{chance.choice(FIGURES)}'; "
                f"xdotool key {chance.choice(['Return', 'Return', 'Tab', 'Escape'])}")
    keys = ' '.join(['Down'] * chance.randint(1, 6))
    return f"key {chance.choice(['Menu', 'shift+F10', 'F10', 'space'])} sleep 0.05 key {keys} key Return"


def main(n, seed, *places):
    chance = random.Random(int(seed))
    x, y, width, height, *seat = map(int, places)
    for _ in range(int(n)):
        print('xdotool', one(chance, (x, y, x + width, y + height), seat))


main(*sys.argv[1:])
