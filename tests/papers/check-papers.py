#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-papers.py SQUAB-CUT JOB…: the papers of jobs, looked over by programs of others: qpdf, poppler
and mutool. Of each job, on both sheets: sheet sizes are ISO 216's A4 (210 × 297 mm) and Letter
(8 1/2 × 11 in), fonts are in the file, nothing is written or drawn at the paper's very edge, no word
lies on another, every page that is read has its foot. Every piece is on the line of its number with
its count and its size, which is reckoned here from the plan; so are the totals. The same is asked of
a job of 40 cushions whose names are written in several scripts."""
import collections
import itertools
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
SIZE_WITHIN_MM = 0.1
DATE = '2026-03-02'
# Less than printers can't reach, and no drawing should want (mm).
BARE_EDGE_MM = 4
KINDS = ['Cut list', 'Layout', 'Marking guide', 'Cut tickets', 'Labels', 'Patterns']
WITH_FOOT = ['cut-list', 'layout', 'marking', 'tickets']
LINE_WITHIN_PT = 2
# Of a piece: its number is large at the left; right of its drawing stand how many are to be cut and,
# largest, its size.
NUMBER_PT = 16
SIZE_PT = 18
BESIDE_NUMBER_PT = 220
BLOCK_ABOVE_PT = 28
# Words' boxes are as high as the font's tallest sign; what is written in them fills the middle.
MIDDLE = 0.3
TOUCH_PT = 0.4
TIE_MM = 0.005
BESIDE_PT = 0.3  # of the height of a fraction's bar
XHTML = '{http://www.w3.org/1999/xhtml}'
NAMES = ['Hall bench', 'מושב חלון', 'مقعد النافذة', '窓辺の座布団', 'Fenêtre d’angle']

problems = []
Word = collections.namedtuple('Word', 'left top right bottom text')


def say(job, what):
    problems.append(f'{job}: {what}')


def run(*command):
    return subprocess.run([str(word) for word in command], check=True, capture_output=True).stdout


def squab(squab_cut, job, *options):
    done = subprocess.run([squab_cut, str(job), *[str(word) for word in options]],
                          capture_output=True, text=True)
    if done.returncode != 0:
        say(job.name, f'squab-cut ends with {done.returncode}: {done.stderr.strip()}')
        sys.exit('\n'.join(problems))


def plain(text):
    """As it is typed: fractions with a slash, letters in their plain forms."""
    text = unicodedata.normalize('NFKC', text.replace('\u2044', '/'))
    return text.replace('\u2044', '/').replace('\u00ad', '')


# --- what the pages say ---------------------------------------------------------------------------

def with_fractions(words):
    """Words once more, where a set fraction, which poppler finds in three parts, is one."""
    def beside(bar, side, edge):
        found = [word for word in words if re.fullmatch(r'\d+', word.text)
                 and abs(getattr(word, side) - edge) < BESIDE_PT * (bar.bottom - bar.top)
                 and bar.top < (word.top + word.bottom) / 2 < bar.bottom]
        return min(found, key=lambda word: abs(getattr(word, side) - edge), default=None)

    parts, fractions = set(), []
    for bar in (word for word in words if word.text == '/'):
        over, under = beside(bar, 'right', bar.left), beside(bar, 'left', bar.right)
        if over and under:
            parts |= {bar, over, under}
            fractions.append(Word(over.left, bar.top, under.right, bar.bottom,
                                  f'{over.text}/{under.text}'))
    return [word for word in words if word not in parts] + fractions


def read_pages(pdf):
    """Each page's size in mm and its words, as poppler finds them."""
    text = run('pdftotext', '-bbox', pdf, '-').decode()
    text = re.sub('[\x00-\x08\x0b\x0c\x0e-\x1f]', '', text)
    pages = []
    for page in ElementTree.fromstring(text).iter(XHTML + 'page'):
        words = [Word(*(float(word.get(key)) for key in ('xMin', 'yMin', 'xMax', 'yMax')),
                      plain(word.text or '')) for word in page.iter(XHTML + 'word')]
        size = tuple(float(page.get(key)) * MM_PER_PT for key in ('width', 'height'))
        pages.append((size, words))
    return pages


def lines_of(words):
    """Words of one height, from left to right."""
    lines = []
    for word in sorted(words, key=lambda word: word.bottom):
        if lines and abs(lines[-1][0].bottom - word.bottom) < LINE_WITHIN_PT:
            lines[-1].append(word)
        else:
            lines.append([word])
    return [' '.join(word.text for word in sorted(line)) for line in lines]


def height(word):
    return word.bottom - word.top


def pieces_of(words):
    """Number, size and count of each piece on a page."""
    left = min(word.left for word in words)
    numbers = sorted((word for word in words if word.left - left < TOUCH_PT
                      and height(word) > NUMBER_PT and word.text.isdigit()),
                     key=lambda word: word.top)
    for i, number in enumerate(numbers):
        end = numbers[i + 1].top if i + 1 < len(numbers) else math.inf
        beside = sorted(word for word in words if word.left > left + BESIDE_NUMBER_PT
                        and number.top - BLOCK_ABOVE_PT < word.top < end - BLOCK_ABOVE_PT)
        size = ' '.join(word.text for word in beside if height(word) > SIZE_PT)
        counts = [line.split('cut ')[-1] for line in lines_of(beside) if 'cut ' in line]
        yield number.text, size, counts[0] if counts else None


def middle(word):
    """Where its letters really are; what is higher than wide is written upwards."""
    width = word.right - word.left
    if height(word) > width and len(word.text) > 1:
        return (word.left + MIDDLE * width, word.top + TOUCH_PT,
                word.right - MIDDLE * width, word.bottom - TOUCH_PT)
    return (word.left + TOUCH_PT, word.top + MIDDLE * height(word),
            word.right - TOUCH_PT, word.bottom - MIDDLE * height(word))


def check_words(job, number, size, words):
    right, bottom = (mm / MM_PER_PT for mm in size)
    boxes = [middle(word) for word in words]
    for word in words:
        if word.left < 0 or word.top < 0 or word.right > right or word.bottom > bottom:
            say(job, f'page {number}: “{word.text}” leaves the page')
    for i, one in enumerate(boxes):
        for j in range(i):
            other = boxes[j]
            if len(words[i].text) == len(words[j].text) == 1:
                continue  # letters of a figure on a slant, whose boxes overlap
            if (one[0] < other[2] and other[0] < one[2] and one[1] < other[3]
                    and other[1] < one[3]):
                say(job, f'page {number}: “{words[i].text}” lies on “{words[j].text}”')


# --- how pages look -------------------------------------------------------------------------------

def check_edges(job, pdf, folder):
    """Nothing is drawn where printers can't reach."""
    dpi = 72
    run('pdftoppm', '-gray', '-r', dpi, pdf, folder / 'page')
    bare = int(BARE_EDGE_MM / 25.4 * dpi)
    for path in sorted(folder.glob('page*.pgm')):
        data = path.read_bytes()
        head = re.match(rb'P5\s+(\d+)\s+(\d+)\s+255\s', data)
        width = int(head[1])
        pixels = data[head.end():]
        sides = b''.join(pixels[x::width] for x in range(width) if not bare <= x < width - bare)
        if (pixels[:bare * width] + pixels[-bare * width:] + sides).strip(b'\xff'):
            say(job, f'{path.stem}: something is drawn within {BARE_EDGE_MM} mm of its edge')
        if pixels.count(pixels[:1]) == len(pixels):
            say(job, f'{path.stem} is empty')
        path.unlink()


def check_file(job, pdf, paper):
    run('qpdf', '--check', pdf)
    fonts = run('pdffonts', pdf).decode().splitlines()[2:]
    if not fonts:
        say(job, 'nothing is written')
    for line in fonts:
        if line.split()[-5] != 'yes':
            say(job, f'a font is not in the file: {line}')
    wanted = sorted(SHEETS_MM[paper])
    boxes = re.findall(r'<MediaBox l="([\d.-]+)" b="([\d.-]+)" r="([\d.-]+)" t="([\d.-]+)"',
                       run('mutool', 'pages', pdf).decode())
    for box in boxes:
        left, bottom, right, top = (float(side) * MM_PER_PT for side in box)
        sides = sorted((right - left, top - bottom))
        if any(abs(side - want) > SIZE_WITHIN_MM for side, want in zip(sides, wanted)):
            say(job, f'{paper}: a page of {sides[0]:.2f} × {sides[1]:.2f} mm')
    return len(boxes)


# --- figures, reckoned from the plan --------------------------------------------------------------

def rounded(value):
    return math.floor(value + 0.5)


def in_parts(value, parts):
    """As 18 1/2."""
    whole, rest = divmod(rounded(value * parts), parts)
    if rest == 0:
        return str(whole)
    common = math.gcd(rest, parts)
    fraction = f'{rest // common}/{parts // common}'
    return f'{whole} {fraction}' if whole else fraction


def figure(mm, unit):
    if unit == 'in':
        return in_parts(mm / 25.4, 16)
    return str(rounded(mm)) if unit == 'mm' else f'{rounded(mm) / 10:.1f}'


def to_buy(purchase, unit):
    if unit == 'in':
        return f'{in_parts(purchase["buy"] / 914.4, 8)} yd'
    return f'{purchase["buy"] / 1000:.1f} m'


def says(phrase, line):
    """Whole words of it."""
    return re.search(rf'(?<!\S){re.escape(phrase)}\b', line)


def check_pieces(job, plan, unit, pages):
    """Every piece has a number with its size beside it and its count above that."""
    found = collections.Counter(piece for _, words in pages for piece in pieces_of(words))
    for entry in plan['cut_list']:
        piece = plan['cushions'][entry['cushion']]['pieces'][entry['piece']]
        size = f'{figure(piece["width"], unit)} × {figure(piece["height"], unit)}'
        wanted = (str(entry['number']), size, str(entry['count']))
        if found[wanted] != 1:
            say(job, f'piece {wanted[0]} of {size}, cut {wanted[2]}, is there {found[wanted]} times')


def check_totals(job, plan, unit, lines):
    totals = plan['totals']
    entries = [(entry['count'], plan['cushions'][entry['cushion']]['pieces'][entry['piece']])
               for entry in plan['cut_list']]
    if totals['pieces'] != sum(count for count, _ in entries):
        say(job, 'the plan’s pieces do not add up')
    if not math.isclose(totals['cloth_area'], sum(n * piece['area'] for n, piece in entries)):
        say(job, 'the plan’s areas do not add up')
    wanted = [f'Cushions {totals["cushions"]}', f'Pieces {totals["pieces"]}']
    for purchase in plan['purchase']:
        needed = purchase['laid'] + purchase['squaring'] + purchase['pattern']
        if not 0 <= purchase['buy'] - needed < purchase['sold_by']:
            say(job, f'{purchase["buy"]} mm is not {needed} mm as it is sold')
        wanted.append(f'{to_buy(purchase, unit)} to buy')
    for phrase in wanted:
        if not any(says(phrase, line) for line in lines):
            say(job, f'nowhere does it say “{phrase}”')


def check_names(job, plan, lines):
    """Their letters, in whichever order and how far apart a line is read back that runs from right to
    left. What this machine has no font for is drawn as boxes and can't be read back."""
    text = re.sub(r'\s', '', ''.join(lines))
    for cushion in plan['cushions']:
        for word in plain(cushion['name']).split():
            if not any(unicodedata.east_asian_width(sign) == 'W' for sign in word):
                if word not in text and word[::-1] not in text:
                    say(job, f'“{word}” is not on paper')


# --- where pieces lie, reckoned from their outlines -------------------------------------------------

def figures_of(mm, unit):
    """Where it is as near to one as to the next, both will do."""
    return {figure(mm - TIE_MM, unit), figure(mm + TIE_MM, unit)}


def reach(plan, placed):
    """Of a piece on its cloth: least and greatest along it and across."""
    turn = math.radians(placed['turn'])
    points = [(-x if placed['mirrored'] else x, y) for x, y, _ in
              plan['cushions'][placed['cushion']]['pieces'][placed['piece']]['cut'][0]]
    along = [x * math.cos(turn) - y * math.sin(turn) + placed['x'] for x, y in points]
    across = [x * math.sin(turn) + y * math.cos(turn) + placed['y'] for x, y in points]
    return min(along), max(along), min(across), max(across)


def check_layout(squab_cut, path, folder, job, unit, how):
    pdf = folder / 'layout.pdf'
    squab(squab_cut, path, '--layout', pdf, '--plan', folder / 'flat.json', '--flatten', '0.001', *how)
    plan = json.loads((folder / 'flat.json').read_text())
    lines = [line for _, words in read_pages(pdf) for line in lines_of(with_fractions(words))]
    numbers = {(entry['cushion'], entry['piece']): entry['number'] for entry in plan['cut_list']}
    for lay in plan['lays']:
        if lay['unlaid']:
            say(job, 'not every piece is laid')
        for placed in lay['placed']:
            number = numbers[placed['cushion'], placed['piece']]
            ends = [figures_of(mm, unit) for mm in reach(plan, placed)]
            ways = {f'{a} – {b} {c} – {d}' for a, b, c, d in itertools.product(*ends)}
            if not any(line.split(' ')[0] == str(number) and any(says(way, line) for way in ways)
                       for line in lines):
                say(job, f'nowhere does piece {number} lie at {min(ways)}')


# --- all of it ------------------------------------------------------------------------------------

def check_pages(squab_cut, path, paper, folder, what, how):
    """The papers that option @what makes in one PDF."""
    job, pdf = f'{path.name} on {paper}', folder / 'papers.pdf'
    squab(squab_cut, path, what, pdf, *how)
    squab(squab_cut, path, what, folder / 'again.pdf', *how)
    if pdf.read_bytes() != (folder / 'again.pdf').read_bytes():
        say(job, 'another time it is another file')

    n_pages = check_file(job, pdf, paper)
    check_edges(job, pdf, folder)
    pages = read_pages(pdf)
    if len(pages) != n_pages:
        say(job, f'{len(pages)} pages by poppler, {n_pages} by mutool')
    for number, (size, words) in enumerate(pages, 1):
        check_words(job, number, size, words)
    check_headings(job, pages)
    if what == '--everything':
        check_outline(job, pdf, n_pages)


def check_papers(squab_cut, path, paper, folder, whats):
    job = f'{path.name} on {paper}'
    how = ['--paper', paper, '--date', DATE]
    squab(squab_cut, path, '--plan', folder / 'plan.json')
    plan = json.loads((folder / 'plan.json').read_text())
    unit = json.loads(path.read_text())['units']

    for what in whats:
        check_pages(squab_cut, path, paper, folder, what, how)
    check_cut_list(squab_cut, path, folder, job, plan, unit, how)
    check_layout(squab_cut, path, folder, job, unit, how)
    squab(squab_cut, path, *how, *(word for kind in WITH_FOOT
                                   for word in (f'--{kind}', folder / f'{kind}.pdf')))
    for kind in WITH_FOOT:
        check_foots(f'{job}: {kind}', read_pages(folder / f'{kind}.pdf'))


def check_outline(job, pdf, n_pages):
    """All kinds of papers, in their order, each before what is in it."""
    lines = run('mutool', 'show', pdf, 'outline').decode().splitlines()
    entries = [re.fullmatch(r'[|+-](\t+)"(.*)"\t#page=(\d+)\b.*', line).groups() for line in lines]
    kinds = [text for tabs, text, _ in entries if len(tabs) == 1]
    if kinds != KINDS:
        say(job, f'the outline has {kinds}')
    places = [int(page) for _, _, page in entries]
    if places != sorted(places) or not 1 <= places[-1] <= n_pages:
        say(job, f'the outline leads to pages {places}')


def check_headings(job, pages):
    """None stands at the end of a page, torn from what it is about."""
    for number, (_, words) in enumerate(pages, 1):
        above = [line for line in lines_of(words) if not re.search(r'\bPage \d+ of \d+$', line)]
        if above and above[-1].isupper() and above[-1].replace(' ', '').isalpha():
            say(job, f'page {number} ends with the heading {above[-1]}')


def check_foots(job, pages):
    """Every page has one, and they count through the paper."""
    for number, (_, words) in enumerate(pages, 1):
        foots = [line for line in lines_of(words) if re.search(r'\bPage \d+ of \d+$', line)]
        if (len(foots) != 1 or DATE not in foots[0]
                or not foots[0].endswith(f'Page {number} of {len(pages)}')):
            say(job, f'page {number} of {len(pages)} has the foots {foots}')


def check_cut_list(squab_cut, path, folder, job, plan, unit, how):
    pdf = folder / 'cut-list.pdf'
    squab(squab_cut, path, '--cut-list', pdf, *how)
    pages = [(size, with_fractions(words)) for size, words in read_pages(pdf)]
    lines = [line for _, words in pages for line in lines_of(words)]
    for number, (_, words) in enumerate(pages, 1):
        if f'Page {number} of {len(pages)}' not in '\n'.join(lines_of(words)):
            say(job, f'the cut list has no page {number} of {len(pages)}')
    check_pieces(job, plan, unit, pages)
    check_totals(job, plan, unit, lines)
    check_names(job, plan, lines)


def many_cushions(sample, path):
    job = json.loads(sample.read_text())
    first = job['cushions'][0]
    job['title'] = NAMES[2]
    job['cushions'] = [dict(first, id=i + 1, name=f'{NAMES[i % len(NAMES)]} {i + 1}',
                            thickness=first['thickness'] + i) for i in range(40)]
    path.write_text(json.dumps(job, ensure_ascii=False))


squab_cut, samples = sys.argv[1], [pathlib.Path(name) for name in sys.argv[2:]]
with tempfile.TemporaryDirectory() as name:
    folder = pathlib.Path(name)
    many = folder / 'many.squab'
    many_cushions(samples[0], many)
    for paper in SHEETS_MM:
        for path in samples:
            check_papers(squab_cut, path, paper, folder, ['--everything'])
        # two thousand pages of patterns would be no better than a few
        check_papers(squab_cut, many, paper, folder, [f'--{kind}' for kind in WITH_FOOT])
print('\n'.join(problems))
sys.exit(bool(problems))
