#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""true-size.py FILE.pdf WIDTH [HEIGHT]: by `mutool draw -F trace`, all pages are so wide and high (mm),
upright or lying, and on the first there are squares of 100 mm and of 4 in, true to 0.05 mm."""
import re
import subprocess
import sys
import xml.etree.ElementTree

MM = 25.4 / 72  # of a point
SLACK_MM = 0.05


def numbers(text):
    return [float(number) for number in re.findall(r'-?\d+\.?\d*(?:e-?\d+)?', text or '')]


def boxes(node, matrix=(1, 0, 0, 1, 0, 0)):
    """Width and height of each part of a path below @node, mm."""
    points = []
    for child in node:
        own = numbers(child.get('transform')) or matrix
        if child.tag == 'moveto' and points:
            yield size(points)
            points = []
        if child.tag in ('moveto', 'lineto'):
            a, b, c, d, e, f = own
            x, y = float(child.get('x')), float(child.get('y'))
            points.append((a * x + c * y + e, b * x + d * y + f))
        yield from boxes(child, own)
    if points:
        yield size(points)


def size(points):
    xs, ys = zip(*points)
    return (max(xs) - min(xs)) * MM, (max(ys) - min(ys)) * MM


def is_near(a, b):
    return abs(a - b) <= SLACK_MM


path, *wanted = sys.argv[1:]
wanted = [float(mm) for mm in wanted]
text = subprocess.run(['mutool', 'draw', '-q', '-F', 'trace', path], check=True, capture_output=True,
                      text=True).stdout
pages = list(xml.etree.ElementTree.fromstring(text).iter('page'))
for number, page in enumerate(pages, 1):
    left, top, right, bottom = numbers(page.get('mediabox'))
    sides = [(right - left) * MM, (bottom - top) * MM]
    if len(wanted) == 2 and sides[0] > sides[1]:
        sides.reverse()
    if not all(map(is_near, sides, wanted)):
        sys.exit(f'page {number} is {sides} mm, not {wanted}')
found = list(boxes(pages[0]))
for side in (100, 101.6):
    if not any(is_near(width, side) and is_near(height, side) for width, height in found):
        sys.exit(f'no square of {side} mm')
print(len(pages), 'pages in true size')
