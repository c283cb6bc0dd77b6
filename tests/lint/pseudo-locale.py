#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""pseudo-locale.py ROOT FOLDER: makes FOLDER/xx/LC_MESSAGES/squab.mo, a translation in which every
letter has an accent and every word is longer. What is still plain English then never went through
gettext; what no longer fits was laid out for English."""
import pathlib
import re
import subprocess
import sys

LETTERS = str.maketrans(
    'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ',
    'áƀçđéƒğħïĵķļɱñöþɋŕšŧüṽŵẋýžÁƁÇĐÉƑĞĦÏĴĶĻṀÑÖÞɊŔŠŦÜṼŴẊÝŽ')
# Not for readers: directives, escapes, entities and tags.
KEEP = re.compile(r"(%(?:\d+\$)?[-+ #0']*(?:\d+|\*)?(?:\.(?:\d+|\*))?(?:hh|ll|[hlzjt])?[a-zA-Z%]"
                  r'|\\.|&\w+;|</?\w+[^>]*>)')

HEAD = r'''msgid ""
msgstr ""
"Project-Id-Version: squab\n"
"PO-Revision-Date: 2000-01-01 00:00+0000\n"
"Last-Translator: nobody\n"
"Language-Team: none\n"
"Language: xx\n"
"MIME-Version: 1.0\n"
"Content-Type: text/plain; charset=UTF-8\n"
"Content-Transfer-Encoding: 8bit\n"
"Plural-Forms: nplurals=2; plural=n != 1;\n"
'''


def accented(text):
    parts = KEEP.split(text)
    parts[::2] = [re.sub('[aeiouAEIOU]', r'\g<0>\g<0>', part).translate(LETTERS) for part in parts[::2]]
    return ''.join(parts)


def translated(template):
    """The text of a .po file for the .pot file's text @template with msgstr = msgid in it."""
    lines, speaking = [HEAD], False
    for line in template.partition('\n\n')[2].split('\n'):
        speaking = line.startswith('msgstr') or (speaking and line.startswith('"'))
        if speaking:
            before, text, after = re.fullmatch(r'([^"]*")(.*)(")', line).groups()
            line = before + accented(text) + after
        lines.append(line)
    return '\n'.join(lines)


def run(*command, **more):
    return subprocess.run(command, check=True, text=True, **more)


def main(root, folder):
    place = pathlib.Path(folder) / 'xx' / 'LC_MESSAGES'
    place.mkdir(parents=True, exist_ok=True)
    sources = [name for name in (pathlib.Path(root) / 'po' / 'POTFILES').read_text().split()
               if name.endswith(('.c', '.ui'))]
    run('xgettext', '--from-code=UTF-8', '--package-name=squab', '--keyword=_', '--keyword=N_',
        '--keyword=C_:1c,2', '--keyword=NC_:1c,2', '--output', place / 'squab.pot', *sources, cwd=root)
    english = run('msgen', '--no-wrap', place / 'squab.pot', stdout=subprocess.PIPE).stdout
    (place / 'squab.po').write_text(translated(english))
    run('msgfmt', '-c', '--output-file', place / 'squab.mo', place / 'squab.po')


main(*sys.argv[1:])
