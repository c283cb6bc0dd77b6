# SPDX-License-Identifier: GPL-3.0-or-later
"""Lays of open instances, looked over by GEOS from nothing but the instance and what squab-cut
writes of the lay."""
import collections

from shapely import affinity
from shapely.geometry import Polygon, box

# An item is drawn in by this share of the strip's width before it is asked whether it meets another.
DRAWN_IN = 1 / 2e5


def shapes_of(instance):
    return [Polygon(item['shape']['data']) for item in instance['items']]


def area_of(instance):
    return sum(shape.area * item['demand']
               for shape, item in zip(shapes_of(instance), instance['items']))


def placed_shape(shapes, placed):
    turned = affinity.rotate(shapes[placed['piece']], placed['turn'], origin=(0, 0))
    return affinity.translate(turned, placed['x'], placed['y'])


def faults(lay, instance):
    """All that is wrong with a lay in which everything should lie."""
    height, strip = instance['strip_height'], lay['strips'][0]
    shapes, slack = shapes_of(instance), height * DRAWN_IN
    if (strip['kind'], strip['width']) != ('roll', height) or len(lay['strips']) != 1:
        yield f'not its strip: {strip}'
    for placed in lay['placed']:
        allowed = instance['items'][placed['piece']].get('allowed_orientations') or [0]
        if placed['turn'] not in [round(turn % 360, 3) for turn in allowed] or placed['mirrored']:
            yield f'turned as it may not be: {placed}'
    lying = [placed_shape(shapes, placed).buffer(-slack) for placed in lay['placed']]
    room = box(0, 0, strip['length'], height)
    for i, one in enumerate(lying):
        if not room.contains(one):
            yield f'{i} leaves the strip'
        yield from (f'{i} and {k} overlap' for k in range(i) if one.intersects(lying[k]))
    if (collections.Counter((p['piece'], p['copy']) for p in lay['placed'])
            != collections.Counter((i, copy) for i, item in enumerate(instance['items'])
                                   for copy in range(item['demand'])) or lay['unlaid']):
        yield 'not everything as often as it is wanted'
    reach = max((one.bounds[2] for one in lying), default=0) + slack
    if abs(strip['length'] - reach) > 2 * slack:
        yield f'it reaches to {reach}, not {strip["length"]}'
    if abs(lay['density'] - area_of(instance) / height / strip['length']) > 1e-9:
        yield f'its density is {area_of(instance) / height / strip["length"]}'
