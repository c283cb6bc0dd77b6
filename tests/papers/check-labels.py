#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-labels.py SQUAB-CUT JOB…: labels and cut tickets, read back by poppler and compared with the
plan. Labels: every word lies inside the cell of the sheet that its middle is in, the cells reckoned
here from columns, rows and margins on sheets of ISO 216's A4 (210 × 297 mm) and ANSI/ASME Y14.1's A
(8 1/2 × 11 in, Letter); places that are to be skipped are empty and the next ones are not, up to the
last; each line of the cut list has as many labels as copies, or bundles of plies that make up its
copies, and its cushions count through; they come in the order in which they lie. Tickets: one for
each lay, and what all of them cut of each line is what the cut list wants, with the spares that are
told."""
import collections
import json
import math
import pathlib
import re
import subprocess
import sys
import tempfile
import unicodedata
import xml.etree.ElementTree as ElementTree

MM_PER_PT = 25.4 / 72
SHEETS_MM = {'a4': (210, 297), 'letter': (215.9, 279.4)}
SIDE_MM = TOP_MM = 10
ACROSS_MM, ALONG_MM = 5, 4
# Columns and rows, and how many places of the first sheet are used up.
LABEL_SHEETS = [((1, 1), 0), ((2, 6), 5), ((3, 8), 23), ((4, 11), 1)]
DATE = '2026-03-02'
XHTML = '{http://www.w3.org/1999/xhtml}'
# A number is the largest word of its label, at its upper left.
LINE_WITHIN_PT = 2

LOT = {
    'format': 'squab job', 'version': 1, 'units': 'mm',
    'cloths': [{'id': 4, 'name': 'Canvas', 'width': 1100, 'one_way': True},
               {'id': 5, 'name': 'Mesh', 'width': 1300}],
    'laying': {'plies': {'most': 2, 'table': 5000}},
    'cushions': [{'id': 1, 'name': 'Pad', 'count': 49, 'thickness': 60,
                  'cloth': {'face': 4, 'underside': 5},
                  'outline': [{'x': 0, 'y': 0}, {'x': 500, 'y': 0}, {'x': 500, 'y': 450},
                              {'x': 0, 'y': 450}]},
                 {'id': 2, 'name': 'Corner', 'count': 2, 'hand': 'pair', 'thickness': 60,
                  'cloth': {'face': 4},
                  'outline': [{'x': 0, 'y': 0}, {'x': 500, 'y': 0}, {'x': 400, 'y': 450},
                              {'x': 0, 'y': 450}]}]}
# Two covers on a remnant and the roll; a third whose face goes on neither.
UNLAID = {
    'format': 'squab job', 'version': 1, 'units': 'mm',
    'cloths': [{'id': 1, 'name': 'Short', 'width': 900,
                'stock': [{'id': 1, 'kind': 'remnant', 'length': 800, 'width': 700}]}],
    'cushions': [{'id': 1, 'name': 'Pad', 'count': 2, 'thickness': 60,
                  'outline': [{'x': 0, 'y': 0}, {'x': 500, 'y': 0}, {'x': 500, 'y': 450},
                              {'x': 0, 'y': 450}]},
                 {'id': 2, 'name': 'Wide', 'thickness': 60,
                  'outline': [{'x': 0, 'y': 0}, {'x': 1500, 'y': 0}, {'x': 1500, 'y': 1200},
                              {'x': 0, 'y': 1200}]}]}

problems = []
Word = collections.namedtuple('Word', 'left top right bottom text')
Label = collections.namedtuple('Label', 'number text')


def say(job, what):
    problems.append(f'{job}: {what}')


def squab(squab_cut, path, *options):
    done = subprocess.run([squab_cut, str(path), *map(str, options)], capture_output=True, text=True)
    if done.returncode not in (0, 1):
        sys.exit(f'{path}: {done.stderr}')
    return done.stdout


def read_pages(pdf):
    """Of each page its size in mm and its words with their places in points, from its upper left."""
    text = subprocess.run(['pdftotext', '-bbox', pdf, '-'], check=True, capture_output=True).stdout
    text = re.sub('[\x00-\x08\x0b\x0c\x0e-\x1f]', '', text.decode())
    for page in ElementTree.fromstring(text).iter(XHTML + 'page'):
        words = [Word(*(float(word.get(key)) for key in ('xMin', 'yMin', 'xMax', 'yMax')),
                      unicodedata.normalize('NFKC', word.text or ''))
                 for word in page.iter(XHTML + 'word')]
        yield tuple(float(page.get(key)) * MM_PER_PT for key in ('width', 'height')), words


def lines_of(words):
    """Words of one height, from left to right."""
    lines = []
    for word in sorted(words, key=lambda word: word.bottom):
        if lines and abs(lines[-1][0].bottom - word.bottom) < LINE_WITHIN_PT:
            lines[-1].append(word)
        else:
            lines.append([word])
    return [' '.join(word.text for word in sorted(line)) for line in lines]


# --- what is to be there --------------------------------------------------------------------------

def begin(plan, placed):
    """Where a piece begins along its strip and across, mm."""
    turn = math.radians(placed['turn'])
    ring = plan['cushions'][placed['cushion']]['pieces'][placed['piece']]['cut'][0]
    return (min(x * math.cos(turn) - y * math.sin(turn) for x, y, _ in ring) + placed['x'],
            min(x * math.sin(turn) + y * math.cos(turn) for x, y, _ in ring) + placed['y'])


def lot_of(lay):
    plies = lay.get('plies')
    return plies if plies and plies['placed'] and (plies['plies'] > 1 or plies['lays'] > 1) else None


def wanted_labels(plan):
    """Numbers in the order of cutting, what could not be laid at the end; and how many copies of each
    number those of one place are."""
    numbers = {(line['cushion'], line['piece']): line['number'] for line in plan['cut_list']}
    laid, deep = [], {}
    left = {line['number']: line['count'] for line in plan['cut_list']}
    for lay in plan['lays']:
        lot = lot_of(lay)
        order = sorted((lot or lay)['placed'],
                       key=lambda placed: (placed['strip'], *(round(mm, 2) for mm in
                                                              begin(plan, placed))))
        for placed in order:
            number = numbers[placed['cushion'], placed['piece']]
            laid.append(number)
            deep[number] = lot['plies'] if lot else 1
            left[number] -= min(deep[number], left[number])
    unlaid = [number for number, count in left.items() for _ in range(count)]
    return laid, unlaid, deep


# --- labels ---------------------------------------------------------------------------------------

def cell_of(word, size, columns, rows):
    """The cell that the middle of a word is in, and that cell's edges in mm."""
    width = (size[0] - 2 * SIDE_MM - (columns - 1) * ACROSS_MM) / columns
    height = (size[1] - 2 * TOP_MM - (rows - 1) * ALONG_MM) / rows
    x, y = ((word.left + word.right) / 2 * MM_PER_PT, (word.top + word.bottom) / 2 * MM_PER_PT)
    column = int((x - SIDE_MM) // (width + ACROSS_MM))
    row = int((y - TOP_MM) // (height + ALONG_MM))
    left, top = SIDE_MM + column * (width + ACROSS_MM), TOP_MM + row * (height + ALONG_MM)
    return row * columns + column, (left, top, left + width, top + height)


def read_labels(job, pdf, paper, columns, rows):
    """Place of each label, counted over all sheets, and what it says."""
    cells = collections.defaultdict(list)
    for number, (size, words) in enumerate(read_pages(pdf)):
        if any(abs(a - b) > 0.1 for a, b in zip(size, SHEETS_MM[paper])):
            say(job, f'a sheet of {size[0]:.2f} × {size[1]:.2f} mm')
        for word in words:
            cell, (left, top, right, bottom) = cell_of(word, SHEETS_MM[paper], columns, rows)
            if not (left <= word.left * MM_PER_PT and word.right * MM_PER_PT <= right
                    and top <= word.top * MM_PER_PT and word.bottom * MM_PER_PT <= bottom):
                say(job, f'“{word.text}” leaves its label {cell} of sheet {number + 1}')
            cells[number * columns * rows + cell].append(word)
    labels = {}
    for place, words in cells.items():
        largest = max(words, key=lambda word: word.bottom - word.top)
        if not largest.text.isdigit():
            say(job, f'label {place} has no number but “{largest.text}”')
        labels[place] = Label(int(largest.text), ' '.join(lines_of(words)))
    return labels


def check_counts(job, plan, labels, deep):
    """What the labels of a line say of its cushions, copies and hand."""
    by_number = collections.defaultdict(list)
    for place in sorted(labels):
        by_number[labels[place].number].append(labels[place].text)
    for line in plan['cut_list']:
        cushion = plan['cushions'][line['cushion']]
        each = cushion['pieces'][line['piece']]['count']
        found = collections.Counter()
        copies = 0
        for text in by_number[line['number']]:
            told = re.search(r'cushions? (\d+)(?:–(\d+))? of (\d+)', text)
            if not told or int(told[3]) != cushion['count']:
                say(job, f'number {line["number"]}: no cushion n of {cushion["count"]}: {text}')
                continue
            found.update(range(int(told[1]), int(told[2] or told[1]) + 1))
            bundle = re.search(r'(\d+) pl(?:y|ies) · cop(?:y|ies) (\d+)(?:–(\d+))? of (\d+)', text)
            copies += int(bundle[3] or bundle[2]) - int(bundle[2]) + 1 if bundle else 1
            if (int(bundle[1]) if bundle else 1) not in (1, deep.get(line['number'], 1)):
                say(job, f'number {line["number"]}: {text}')
        if set(found) != set(range(1, cushion['count'] + 1)):
            say(job, f'number {line["number"]}: cushions {sorted(found)} of {cushion["count"]}')
        if each == 1 and deep.get(line['number'], 1) == 1 and set(found.values()) != {1}:
            say(job, f'number {line["number"]}: a cushion has not just one')
        if copies != line['count']:
            say(job, f'number {line["number"]}: {copies} copies, not {line["count"]}')


def check_labels(squab_cut, path, folder, plan):
    laid, unlaid, deep = wanted_labels(plan)
    for paper in SHEETS_MM:
        for (columns, rows), skipped in LABEL_SHEETS:
            job, pdf = f'{path.name} on {paper}, {columns} × {rows}', folder / 'labels.pdf'
            squab(squab_cut, path, '--labels', pdf, '--paper', paper, '--date', DATE,
                  '--label-sheet', f'{columns}x{rows}', '--skip-labels', skipped)
            labels = read_labels(job, pdf, paper, columns, rows)
            if sorted(labels) != list(range(skipped, skipped + len(laid) + len(unlaid))):
                say(job, f'{len(labels)} labels, the first at {min(labels)}, for '
                    f'{len(laid) + len(unlaid)} pieces after {skipped} that are skipped')
                continue
            numbers = [labels[place].number for place in sorted(labels)]
            if numbers[:len(laid)] != laid:
                say(job, f'labels are not in the order of cutting: {numbers} for {laid}')
            if sorted(numbers[len(laid):]) != sorted(unlaid):
                say(job, f'what is not laid is not labelled last: {numbers[len(laid):]}')
            check_counts(job, plan, labels, deep)


def check_pieces(squab_cut, path, folder, plan):
    """Of chosen lines only."""
    pdf, number = folder / 'some.pdf', plan['cut_list'][-1]['number']
    squab(squab_cut, path, '--labels', pdf, '--paper', 'a4', '--date', DATE, '--pieces', number,
          '--label-sheet', '2x6')
    labels = read_labels(path.name, pdf, 'a4', 2, 6)
    if {label.number for label in labels.values()} != {number}:
        say(path.name, f'--pieces {number} labels {sorted(labels.values())}')


# --- tickets --------------------------------------------------------------------------------------

def check_tickets(squab_cut, path, folder, plan):
    laid, unlaid, deep = wanted_labels(plan)
    n_lays = sum(sum(strip['length'] > 0 for strip in (lot_of(lay) or lay)['strips'])
                 for lay in plan['lays'])
    for paper in SHEETS_MM:
        job, pdf = f'{path.name}, tickets on {paper}', folder / 'tickets.pdf'
        squab(squab_cut, path, '--tickets', pdf, '--paper', paper, '--date', DATE)
        lines = [line for _, words in read_pages(pdf) for line in lines_of(words)]
        heads = [line for line in lines if re.search(r'(?<!, )\bLay \d+ of \d+$', line)]
        if len(heads) != n_lays or len([line for line in lines if 'RIGHT SIDE UP' in line]) != n_lays:
            say(job, f'{len(heads)} tickets for {n_lays} lays')
        for box in ('First-off approved', 'Spread by', 'Cut by', 'Bundled by', 'Counted by'):
            if sum(box in line for line in lines) != n_lays:
                say(job, f'not every ticket has a box “{box}”')
        check_sums(job, plan, lines, laid, unlaid, deep)


def check_sums(job, plan, lines, laid, unlaid, deep):
    """Rows are number, piece, cushion, how many in a ply, in all, spare."""
    cut, spare, each_sum = collections.Counter(), collections.Counter(), 0
    for line in lines:
        line = re.sub(r', (part \d+ of|hole) \d+', '', line)
        row = re.fullmatch(r'(\d+) \D.*? (\d+) (\d+)(?: (\d+))?', line)
        if row:
            number, each, in_all, spares = (int(part or 0) for part in row.groups())
            if in_all != each * deep.get(number, 1):
                say(job, f'{each} in a ply are not {in_all}: {line}')
            each_sum += each
            cut[number] += in_all
            spare[number] += spares
    for entry in plan['cut_list']:
        number = entry['number']
        if cut[number] - spare[number] + unlaid.count(number) != entry['count']:
            say(job, f'number {number}: {cut[number]} cut, {spare[number]} spare, '
                f'{unlaid.count(number)} not laid, {entry["count"]} wanted')
    if each_sum != len(laid):
        say(job, f'{each_sum} pieces in plies, {len(laid)} are laid')
    sums = [[int(part) for part in re.findall(r'\d+', line)] for line in lines
            if line.startswith('All pieces')]
    if sum(row[1] for row in sums) != sum(cut.values()):
        say(job, f'tickets’ sums {sums} are not {sum(cut.values())}')


def written(folder, name, job):
    path = folder / name
    path.write_text(json.dumps(job))
    return path


squab_cut, samples = sys.argv[1], [pathlib.Path(name) for name in sys.argv[2:]]
with tempfile.TemporaryDirectory() as name:
    folder = pathlib.Path(name)
    for path in [*samples, written(folder, 'lot.squab', LOT), written(folder, 'unlaid.squab', UNLAID)]:
        squab(squab_cut, path, '--plan', folder / 'plan.json', '--flatten', '0.001')
        plan = json.loads((folder / 'plan.json').read_text())
        check_labels(squab_cut, path, folder, plan)
        check_pieces(squab_cut, path, folder, plan)
        check_tickets(squab_cut, path, folder, plan)
print('\n'.join(problems))
sys.exit(bool(problems))
