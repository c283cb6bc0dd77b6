#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""tabs.py APP COMMAND…: walks through a window by the keyboard alone, and tells where the focus
goes. To be run inside drive.sh -a.

  round [KEY]        prints role and name of all that KEY (Tab) comes to, until it is back where it
                     began; fails where the focus stands still, comes to something without a name,
                     or can't be seen: the picture has to change where the control is
  to NAME [KEY]      presses KEY (Tab) until what is called so has the focus
"""
import struct
import subprocess
import sys
import time
import warnings

import gi

warnings.simplefilter('ignore')
gi.require_version('Atspi', '2.0')
from gi.repository import Atspi, GLib  # noqa: E402

MOST = 120   # of controls in a window
AROUND = 12  # px beside a control that a focus ring may take; its place is that of its content
focused = []


def run(*command):
    return subprocess.run(command, check=True, capture_output=True).stdout


def on_focus(event):
    if event.detail1:
        focused.append(event.source)


def wait(enough, seconds):
    """Lets events come until that is enough, or for so long."""
    end = time.time() + seconds
    while not enough() and time.time() < end:
        if not GLib.MainContext.default().iteration(False):
            time.sleep(0.01)
    return enough()


def press(key):
    """What has the focus then, None if it stands still."""
    focused.clear()
    run('xdotool', 'key', key)
    if not wait(lambda: focused, 3):
        return None
    wait(lambda: False, 0.15)
    return focused[-1]


def name_of(node):
    """Its own; a drop-down's button has its drop-down's, a list's item that of its words."""
    while node and node.get_name() in ('', 'GtkToggleButton', 'GtkListItemWidget'):
        node = node.get_parent()
    return node.get_name() if node else ''


def told(node):
    return f'{node.get_role_name()} {name_of(node)!r}'


def window_of(node):
    while node and node.get_role_name() not in ('frame', 'dialog', 'window'):
        node = node.get_parent()
    return node


def place(node):
    """On the screen: GTK tells places inside the window, which has a shadow round it."""
    box = node.get_extents(Atspi.CoordType.WINDOW)
    inner = window_of(node).get_extents(Atspi.CoordType.WINDOW)
    shell = dict(line.split('=') for line in
                 run('xdotool', 'getactivewindow', 'getwindowgeometry', '--shell').decode().split())
    x = int(shell['X']) + (int(shell['WIDTH']) - inner.width) // 2 + box.x
    y = int(shell['Y']) + (int(shell['HEIGHT']) - inner.height) // 2 + box.y
    return x - AROUND, y - AROUND, box.width + 2 * AROUND, box.height + 2 * AROUND


class Picture:
    """The screen as xwd has it: a header of big-endian numbers, colours, rows."""

    def __init__(self):
        self.data = run('xwd', '-silent', '-root')
        words = struct.unpack('>25I', self.data[:100])
        self.width, self.height = words[4], words[5]
        self.bytes, self.row = words[11] // 8, words[12]
        self.start = words[0] + 12 * words[19]

    def part(self, x, y, width, height):
        left, right = max(x, 0), min(x + width, self.width)
        return [self.data[self.start + line * self.row + left * self.bytes:
                          self.start + line * self.row + right * self.bytes]
                for line in range(max(y, 0), min(y + height, self.height))]


def go_round(key):
    before, seen = Picture(), []
    while True:
        node = press(key)
        if node is None:
            sys.exit(f'tabs: after {seen[-1:] or "the first"} {key} leads nowhere')
        after, words = Picture(), told(node)
        if seen and words == seen[0][0] and node == seen[0][1]:
            break
        if len(seen) > MOST:
            sys.exit(f'tabs: {key} does not come back to {seen[0][0]}')
        print(words, flush=True)
        if not name_of(node):
            sys.exit('tabs: it has no name')
        where = place(node)
        if before.part(*where) == after.part(*where):
            sys.exit(f'tabs: nobody sees that it has the focus: {where}')
        seen.append((words, node))
        before = after


def go_to(name, key):
    for _ in range(MOST):
        node = press(key)
        if node and name_of(node) == name:
            return
    sys.exit(f'tabs: {key} does not come to {name!r}')


def main(name, command, *rest):
    Atspi.init()
    desktop = Atspi.get_desktop(0)
    for _ in range(100):
        if any(child and child.get_name() == name for child in
               (desktop.get_child_at_index(i) for i in range(desktop.get_child_count()))):
            break
        time.sleep(0.1)
    listener = Atspi.EventListener.new(on_focus)
    listener.register('object:state-changed:focused')
    wait(lambda: False, 0.2)
    if command == 'round':
        go_round(*rest or ['Tab'])
    else:
        go_to(rest[0], *rest[1:] or ['Tab'])


main(*sys.argv[1:])
