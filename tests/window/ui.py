#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""ui.py APP COMMAND…: finds widgets by accessible role and name, and acts on them with the real
pointer. To be run inside drive.sh -a. Exits with 1 where no such widget is to be seen.

  tree                   prints role, name, description and place on the screen of all
  rect  ROLE NAME        prints x y width height on the screen
  click ROLE NAME        clicks its middle
  do    ROLE NAME        its first action (menu items in popovers, whose places are not known)
  value ROLE NAME [N]    reads or sets a number
  text  ROLE NAME [TEXT] reads or sets an entry
  about ROLE NAME        prints its description (a canvas tells its state there)
  wait  ROLE NAME [SEC]  until it is there
"""
import functools
import subprocess
import sys
import time
import warnings

import gi

warnings.simplefilter('ignore')
gi.require_version('Atspi', '2.0')
from gi.repository import Atspi, GLib  # noqa: E402


def children(node):
    nodes = (node.get_child_at_index(i) for i in range(node.get_child_count()))
    return [child for child in nodes if child]


def walk(node, depth=0, window=None):
    if node.get_role_name() in ('frame', 'dialog', 'window', 'alert'):
        window = node
    yield depth, node, window
    for child in children(node):
        yield from walk(child, depth + 1, window)


def wait_for(look, seconds, what):
    end = time.time() + seconds
    while True:
        try:
            if found := look():
                return found
        except GLib.Error:
            pass  # what was looked at has gone meanwhile
        if time.time() > end:
            sys.exit(f'ui: no {what}')
        time.sleep(0.1)


def application(name):
    def look():
        return next((node for node in children(Atspi.get_desktop(0))
                     if node.get_name() == name and node.get_child_count()), None)
    return wait_for(look, 10, f'application {name}')


def find(app, role, name, seconds=3):
    def look():
        app.clear_cache()
        return next(((node, window) for _, node, window in walk(app)
                     if node.get_role_name() == role and name in ('*', node.get_name())
                     and extents(node)[2] > 0), None)
    return wait_for(look, seconds, f'{role} {name!r}')


def run(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def extents(node):
    box = node.get_extents(Atspi.CoordType.WINDOW)
    return box.x, box.y, box.width, box.height


@functools.cache
def corner(window):
    """Where X has a window, less its shadow."""
    _, _, inner_width, inner_height = extents(window)
    ident = run('xdotool', 'search', '--onlyvisible', '--name', f'^{window.get_name()}$').split()[-1]
    shell = dict(line.split('=') for line in
                 run('xdotool', 'getwindowgeometry', '--shell', ident).split())
    return (int(shell['X']) + (int(shell['WIDTH']) - inner_width) // 2,
            int(shell['Y']) + (int(shell['HEIGHT']) - inner_height) // 2)


def on_screen(node, window):
    """GTK 4 tells places inside its window only."""
    x, y, width, height = extents(node)
    left, top = corner(window)
    return left + x, top + y, width, height


def click(node, window):
    x, y, width, height = on_screen(node, window)
    run('xdotool', 'mousemove', str(x + width // 2), str(y + height // 2),
        'sleep', '0.05', 'click', '1')
    time.sleep(0.15)


def number(node, wanted=None):
    value = node.get_value_iface()
    if wanted is not None:
        value.set_current_value(float(wanted))
        time.sleep(0.1)
    print(value.get_current_value())


def text(node, wanted=None):
    if wanted is not None:
        node.get_editable_text_iface().set_text_contents(wanted)
        time.sleep(0.2)
    shown = node.get_text_iface()
    print(shown.get_text(0, shown.get_character_count()))


def tree(app):
    for depth, node, window in walk(app):
        place = on_screen(node, window) if window and node.get_component_iface() else ()
        print('  ' * depth + node.get_role_name(), repr(node.get_name()),
              repr(node.get_description()), *place)


def main(name, command, *rest):
    Atspi.init()
    app = application(name)
    if command == 'tree':
        tree(app)
        return
    role, label, *more = rest
    node, window = find(app, role, label, float(more[0]) if command == 'wait' and more else 3)
    actions = {
        'rect': lambda: print(*on_screen(node, window)),
        'click': lambda: click(node, window),
        'do': lambda: node.get_action_iface().do_action(0),
        'value': lambda: number(node, *more),
        'text': lambda: text(node, *more),
        'about': lambda: print(node.get_description()),
        'wait': lambda: None,
    }
    actions[command]()


main(*sys.argv[1:])
