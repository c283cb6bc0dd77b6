#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""same-drawing.py A.pdf B.pdf: the same paths and letters at the same places of pages of the same size,
by `mutool draw -F trace`, but for rounding in the last figures and how a writer groups them."""
import re
import subprocess
import sys
import xml.etree.ElementTree

# A hundredth of a point: three thousandths of a millimetre.
SLACK = 0.011


def numbers(text):
    return [float(number) for number in re.findall(r'-?\d+\.?\d*(?:e-?\d+)?', text or '')]


def apply(matrix, x, y):
    a, b, c, d, e, f = matrix
    return a * x + c * y + e, b * x + d * y + f


def points(node, matrix):
    """Of paths and letters below @node, on the page."""
    for child in node:
        own = numbers(child.get('transform')) or matrix
        if child.tag in ('moveto', 'lineto'):
            yield child.tag, apply(own, float(child.get('x')), float(child.get('y')))
        elif child.tag == 'curveto':
            for n in '123':
                yield child.tag, apply(own, float(child.get('x' + n)), float(child.get('y' + n)))
        elif child.tag == 'g':
            yield child.get('unicode') or child.get('glyph'), (float(child.get('x')),
                                                             float(child.get('y')))
        yield from points(child, own)


def drawing(path):
    text = subprocess.run(['mutool', 'draw', '-q', '-F', 'trace', path], check=True,
                          capture_output=True, text=True).stdout
    root = xml.etree.ElementTree.fromstring(text)
    return [[(page.get('mediabox'))] + list(points(page, (1, 0, 0, 1, 0, 0)))
            for page in root.iter('page')]


a, b = (drawing(path) for path in sys.argv[1:])
if len(a) != len(b):
    sys.exit(f'{len(a)} pages and {len(b)}')
for number, (one, other) in enumerate(zip(a, b), 1):
    if len(one) != len(other):
        sys.exit(f'page {number}: {len(one)} and {len(other)} marks')
    if max(abs(x - y) for x, y in zip(numbers(one[0]), numbers(other[0]))) > SLACK:
        sys.exit(f'page {number}: {one[0]} and {other[0]}')
    for this, that in zip(one[1:], other[1:]):
        far = max(abs(this[1][i] - that[1][i]) for i in (0, 1))
        if this[0] != that[0] or far > SLACK:
            sys.exit(f'page {number}: {this} and {that}')
print(sum(map(len, a)), 'marks alike')
