# SPDX-License-Identifier: GPL-3.0-or-later
"""What every room may know. DEVELOPERS.md tells it in words; here the lint tests read it."""
import pathlib

# Each room with the rooms it may include, from the ground up.
CORE = {
    'base': [],
    'geometry': ['base'],
    'job': ['base', 'geometry'],
    'cover': ['base', 'geometry', 'job'],
    'roll': ['base', 'geometry'],
    'plan': ['base', 'geometry', 'job', 'cover', 'roll'],
}
ROOMS = CORE | {
    'words': list(CORE),
    'drawing': [*CORE, 'words'],
    'papers': [*CORE, 'words', 'drawing'],
    'exchange': [*CORE, 'words'],
    'command': [*CORE, 'words', 'drawing', 'papers', 'exchange'],
    'window': [*CORE, 'words', 'drawing', 'papers', 'exchange'],
}

# System headers: what all may include, and what single rooms may beside them.
SYSTEM = {'glib.h', 'math.h', 'string.h', 'stdlib.h', 'stdint.h', 'float.h'}
FILES = {'glib/gstdio.h', 'errno.h', 'fcntl.h', 'unistd.h', 'sys/stat.h'}
GETTEXT = {'glib/gi18n.h', 'libintl.h'}
ROOM_SYSTEM = {
    'words': GETTEXT,
    'drawing': {'cairo.h', 'pango/pangocairo.h'},
    'papers': {'cairo.h', 'cairo-pdf.h', 'fribidi.h', 'pango/pangocairo.h'},
    'exchange': FILES | {'cjson/cJSON.h'},
    'command': GETTEXT | {'locale.h', 'stdio.h', 'time.h'},
    'window': GETTEXT | FILES | {'sys/file.h', 'gtk/gtk.h', 'gio/gio.h', 'glib-object.h', 'cairo.h', 'locale.h', 'langinfo.h', 'malloc.h'},
}


def sources(root, *folders, suffixes=('.c', '.h')):
    """The C files below root/folder for every folder, sorted."""
    return sorted(path for folder in folders for path in (pathlib.Path(root) / folder).rglob('*')
                  if path.suffix in suffixes)


def finish(problems):
    """Says what is wrong and ends the test accordingly."""
    raise SystemExit('\n'.join(problems) if problems else 0)
