#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-symbols.py NM ARCHIVE…: core archives use nothing of the world outside (no toolkit, file,
clock, locale, printing) and keep no state of their own."""
import re
import subprocess
import sys

import rooms

OUTSIDE = re.compile(
    r'^(gtk|gdk|gsk|cairo|pango|cJSON|g_object|g_signal|g_task|g_file|g_type|g_value|g_input|g_output'
    r'|g_print|g_log|g_get|g_main|g_thread|g_date_time|g_dgettext|g_dpgettext)_?'
    r'|^_*(v?f?printf|puts|putchar|fputs|fputc|fwrite|f?open(64)?|read|write|fread'
    r'|time|clock|clock_gettime|gettimeofday|d?c?n?gettext|setlocale|localeconv|getenv'
    r'|s?rand(om)?)(_chk)?$')
# A lay is sought by several threads, and does not depend on how many.
THREADS = re.compile(r'^g_thread_(new|join)$')
# A compiler's helper or G_DEFINE_QUARK's cell: set once to the same value by everybody.
HARMLESS_STATE = re.compile(r'^q\.\d+$')

problems = []
nm, *archives = sys.argv[1:]
for archive in archives:
    listing = subprocess.run([nm, '--format=sysv', archive], check=True, capture_output=True,
                             text=True).stdout
    for line in listing.splitlines():
        cells = [cell.strip() for cell in line.split('|')]
        if len(cells) < 7:
            continue
        name, kind, section = cells[0], cells[2], cells[6]
        threads = archive.endswith('libroll.a') and THREADS.match(name)
        if kind == 'U' and OUTSIDE.match(name) and not threads:
            problems.append(f'{archive}: uses {name}')
        if re.match(r'\.(data|bss)(?!\.rel\.ro)|\*COM\*', section) and not HARMLESS_STATE.match(name):
            problems.append(f'{archive}: keeps state in {name}')
rooms.finish(problems)
