#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""embed.py IN OUT NAME: a file as a C array of NAME, ending in a NUL, so that nothing needs to be
found when the program runs."""
import pathlib
import sys

source, target, name = sys.argv[1:]
data = pathlib.Path(source).read_bytes() + b'\0'
codes = memoryview(data).cast('b')  # as a C char has them
lines = [', '.join(str(code) for code in codes[i:i + 20]) for i in range(0, len(data), 20)]
# Declared as well, so that a compiler that asks for declarations before all is content.
pathlib.Path(target).write_text(
    f'extern const char {name}[];\nconst char {name}[] = {{\n  ' + ',\n  '.join(lines) + '\n};\n')
