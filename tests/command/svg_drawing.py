# SPDX-License-Identifier: GPL-3.0-or-later
"""Our SVG of pieces, read after SVG 1.1: chapter 8, and appendix F.6.5 for arcs."""
import math
import re
import xml.etree.ElementTree as ET

SVG = '{http://www.w3.org/2000/svg}'


def arc(a, b, radius, large, sweep):
    """The bulge, y up, of an arc by its ends, y down: a sweep flag means clockwise on the page."""
    angle = 2 * math.asin(min(math.dist(a, b) / 2 / radius, 1))
    if large:
        angle = 2 * math.pi - angle
    return (-1 if sweep else 1) * math.tan(angle / 4)


def read_path(data, height):
    """Nodes (x, y, bulge) with y up, and whether they close."""
    numbers = re.compile(r'-?\d+(?:\.\d+)?(?:e-?\d+)?')
    nodes, pen, closed = [], None, False
    for command, rest in re.findall(r'([MLAZ])([^MLAZ]*)', data):
        values = [float(n) for n in numbers.findall(rest)]
        if command == 'Z':
            closed = True
        elif command == 'A':
            rx, ry, turn, large, sweep, x, y = values
            assert rx == ry and turn == 0, data
            nodes[-1][2] = arc(pen, (x, y), rx, large, sweep)
            pen = (x, y)
            nodes.append([x, height - y, 0])
        else:
            pen = tuple(values)
            nodes.append([pen[0], height - pen[1], 0])
    if closed and math.dist(nodes[0][:2], nodes[-1][:2]) == 0:
        nodes.pop()
    return [tuple(node) for node in nodes], closed


class Drawing:
    def __init__(self, path):
        root = ET.parse(path).getroot()
        assert root.tag == SVG + 'svg'
        self.width, self.height = (float(re.fullmatch(r'([\d.]+)mm', root.get(name))[1])
                                   for name in ('width', 'height'))
        box = [float(n) for n in root.get('viewBox').split()]
        assert box == [0, 0, self.width, self.height], (box, self.width, self.height)
        ids = [element.get('id') for element in root.iter() if element.get('id')]
        assert len(set(ids)) == len(ids), 'an id stands twice'
        self.layers = {group.get('id'): self.read_layer(group) for group in root.findall(SVG + 'g')}
        self.said = root.find(SVG + 'desc').text
        strokes = [group.get('stroke') for group in root.findall(SVG + 'g')]
        assert len(set(strokes)) == len(strokes), 'two layers of one colour'

    def read_layer(self, group):
        """By number of the place: title and paths."""
        return {int(copy.get('id').split('-')[-1]):
                (copy.find(SVG + 'title').text,
                 [read_path(path.get('d'), self.height) for path in copy.findall(SVG + 'path')])
                for copy in group.findall(SVG + 'g')}

    def rings(self, layer, place):
        _, paths = self.layers.get(layer, {}).get(place, ('', []))
        assert all(closed for _, closed in paths)
        return [nodes for nodes, _ in paths]

    def paths(self):
        """All of them, as (layer, nodes, whether it is closed)."""
        return [(layer, nodes, closed) for layer, copies in self.layers.items()
                for _, paths in copies.values() for nodes, closed in paths]
