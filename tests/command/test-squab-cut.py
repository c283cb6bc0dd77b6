#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""test-squab-cut.py SQUAB-CUT: what squab-cut promises whoever calls it: exit status, standard
output, standard error, files."""
import csv
import json
import os
import pathlib
import resource
import signal
import subprocess
import sys
import tempfile
import unittest

SQUAB_CUT = os.path.abspath(sys.argv.pop(1))


def corner(number, x, y, **more):
    return {'id': number, 'x': x, 'y': y, **more}


def square(side, **more):
    return {'id': 1, 'name': 'Stool', 'thickness': 63.5, 'build': 'folded-corner',
            'outline': [corner(1, 0, 0, front=True), corner(2, side, 0), corner(3, side, side),
                        corner(4, 0, side)], **more}


def job(*cushions, **more):
    return {'format': 'squab job', 'version': 1, 'units': 'in', 'cushions': list(cushions), **more}


# An L, whose inner corner leaves no cloth for a folded skirt.
def reflex():
    cushion = square(400)
    cushion['outline'] = [corner(1, 0, 0, front=True), corner(2, 400, 0), corner(3, 400, 400),
                          corner(4, 200, 400), corner(5, 200, 200), corner(6, 0, 200)]
    return cushion


class Case(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = pathlib.Path(folder.name)
        self.job = self.file('stool.squab', job(square(469.9)))

    def file(self, name, content):
        path = self.folder / name
        path.write_text(content if isinstance(content, str) else json.dumps(content))
        return str(path)

    def run_it(self, *arguments, **more):
        environment = os.environ | {'LC_ALL': 'C.UTF-8', 'LANGUAGE': ''} | more.pop('env', {})
        return subprocess.run([SQUAB_CUT, *arguments], capture_output=True, text=True,
                              env=environment, cwd=self.folder, check=False, timeout=60, **more)

    def assert_not_done(self, done, *words):
        self.assertEqual(done.returncode, 2, done.stderr)
        self.assertEqual(done.stdout, '')
        self.assertRegex(done.stderr, r'\Asquab-cut: [^\n]+\n\Z')
        for word in words:
            self.assertIn(word, done.stderr)


class CutList(Case):
    def test_printed(self):
        done = self.run_it(self.job)
        self.assertEqual(done.returncode, 0)
        self.assertEqual(done.stderr, '')
        self.assertIn('Plate', done.stdout)
        self.assertIn('Underside (seen right side up)', done.stdout)
        self.assertTrue(done.stdout.endswith('\n'))

    def test_metric_with_a_decimal_sign(self):
        path = self.file('cm.squab', job(square(469.9), units='cm'))
        self.assertIn('63.5', self.run_it(path).stdout)

    def test_problems_are_said(self):
        path = self.file('l.squab', job(reflex()))
        done = self.run_it(path)
        self.assertEqual(done.returncode, 1)
        self.assertIn('squab-cut: error: Corner E turns inward', done.stderr)
        self.assertIn('BEFORE YOU CUT', done.stdout)

    def test_problems_name_their_cushion(self):
        path = self.file('two.squab', job(square(400), reflex() | {'id': 2, 'name': 'Corner seat'}))
        self.assertIn('squab-cut: error: Corner seat: Corner E', self.run_it(path).stderr)

    def test_warnings_are_no_failure(self):
        deep = square(469.9, underside_wrap={'depth': 15, 'style': 'plain'})
        done = self.run_it(self.file('deep.squab', job(deep)))
        self.assertEqual(done.returncode, 0)
        self.assertRegex(done.stderr, r'\Asquab-cut: warning: A plain wrap')

    def test_no_cushion(self):
        done = self.run_it(self.file('none.squab', job()))
        self.assertEqual(done.returncode, 0)
        self.assertEqual(done.stderr, '')

    def test_names_can_not_command_a_terminal(self):
        done = self.run_it(self.file('esc.squab', job(square(400, name='a\x1b[2Jb\nc'))))
        self.assertNotIn('\x1b', done.stdout)
        self.assertIn('a [2Jb c', done.stdout)

    def test_full_disk(self):
        with open('/dev/full', 'w') as full:
            done = subprocess.run([SQUAB_CUT, self.job], stdout=full, stderr=subprocess.PIPE,
                                  text=True, check=False)
        self.assertEqual(done.returncode, 2)
        self.assertRegex(done.stderr, r'\Asquab-cut: [^\n]+\n\Z')

    def test_name_after_two_dashes(self):
        self.file('--odd.squab', job(square(400)))
        self.assertEqual(self.run_it('--', '--odd.squab').returncode, 0)


class Plan(Case):
    def test_standard_output(self):
        done = self.run_it(self.job, '--plan', '-')
        self.assertEqual(done.returncode, 0)
        self.assertEqual(json.loads(done.stdout)['format'], 'squab plan')
        self.assertEqual(done.stderr, '')

    def test_file(self):
        done = self.run_it('--plan=out.json', self.job)
        self.assertEqual((done.returncode, done.stdout), (0, ''))
        self.assertEqual(json.loads((self.folder / 'out.json').read_text())['version'], 1)

    def test_problems_have_words_in_it(self):
        path = self.file('l.squab', job(reflex()))
        done = self.run_it(path, '--plan', '-')
        self.assertEqual(done.returncode, 1)
        problem = json.loads(done.stdout)['cushions'][0]['problems'][0]
        self.assertEqual((problem['code'], problem['severity'], problem['at'], problem['id']),
                         ('reflex-in-folded', 'error', 'corner', 5))
        self.assertIn(problem['text'], done.stderr)

    def test_flatten(self):
        bowed = square(400, build='boxed')
        bowed['outline'][1]['bow'] = 30
        path = self.file('bow.squab', job(bowed))
        arcs = json.loads(self.run_it(path, '--plan', '-').stdout)
        lines = json.loads(self.run_it(path, '--plan', '-', '--flatten', '0.1').stdout)

        def bulges(plan):
            return [node[2] for piece in plan['cushions'][0]['pieces'] for ring in piece['cut']
                    for node in ring]
        self.assertTrue(any(bulges(arcs)))
        self.assertFalse(any(bulges(lines)))

    def test_full_disk(self):
        self.assert_not_done(self.run_it(self.job, '--plan', '/dev/full'))

    def test_no_such_folder(self):
        self.assert_not_done(self.run_it(self.job, '--plan', 'nowhere/out.json'), 'nowhere')

    def test_folder_for_a_file(self):
        (self.folder / 'here').mkdir()
        self.assert_not_done(self.run_it(self.job, '--plan', 'here'), 'here')


class Save(Case):
    def test_round_trip(self):
        self.assertEqual(self.run_it(self.job, '--save', 'again.squab').returncode, 0)
        once = self.run_it('again.squab', '--save', '-').stdout
        self.assertEqual((self.folder / 'again.squab').read_text(), once)
        self.assertEqual(self.run_it(self.job, '--plan', '-').stdout,
                         self.run_it('again.squab', '--plan', '-').stdout)

    def test_unknown_keys_are_kept(self):
        path = self.file('new.squab', job(square(400, sparkle={'deep': [1, 2]}), shine=True))
        saved = json.loads(self.run_it(path, '--save', '-').stdout)
        self.assertEqual(saved['shine'], True)
        self.assertEqual(saved['cushions'][0]['sparkle'], {'deep': [1, 2]})

    def test_onto_itself(self):
        self.assertEqual(self.run_it(self.job, '--save', self.job).returncode, 0)
        self.assertEqual(self.run_it(self.job).returncode, 0)

    def test_with_plan(self):
        done = self.run_it(self.job, '--save', 'a.squab', '--plan', '-')
        self.assertEqual(json.loads(done.stdout)['format'], 'squab plan')
        self.assertTrue((self.folder / 'a.squab').exists())


class NotDone(Case):
    def test_missing_file(self):
        self.assert_not_done(self.run_it('no-such.squab'), 'no-such.squab')

    def test_folder(self):
        self.assert_not_done(self.run_it('.'))

    def test_newer_program(self):
        newer = job(square(400)) | {'version': 2}
        self.assert_not_done(self.run_it(self.file('newer.squab', newer)), 'newer.squab')

    def test_not_json(self):
        self.assert_not_done(self.run_it(self.file('broken.squab', '{"format": ')), 'broken.squab')

    def test_refused_value(self):
        far = square(400)
        far['outline'][2]['x'] = 200_000
        self.assert_not_done(self.run_it(self.file('far.squab', job(far))),
                             'cushions[0].outline[2].x')

    def test_nothing_is_written(self):
        self.assert_not_done(self.run_it('no-such.squab', '--plan', 'out.json'))
        self.assertFalse((self.folder / 'out.json').exists())

    def test_name_with_a_line_break(self):
        self.assert_not_done(self.run_it('no\nsuch'))


class BadUsage(Case):
    def test_no_arguments(self):
        self.assert_not_done(self.run_it())

    def test_two_jobs(self):
        self.assert_not_done(self.run_it(self.job, 'other.squab'), 'other.squab')

    def test_unknown_options(self):
        for option in ('--nonsense', '-x', '--plans', '--plan-', '---'):
            self.assert_not_done(self.run_it(self.job, option), option)

    def test_options_that_are_not_there_yet(self):
        for option in ('--sewing=a.pdf', '--quote=a.pdf', '--look=a.png', '--cpu'):
            self.assert_not_done(self.run_it(self.job, option), option.split('=')[0])

    def test_missing_values(self):
        for arguments in (['--plan'], ['--save='], ['--plan', '--save', 'x'], ['--flatten']):
            self.assert_not_done(self.run_it(self.job, *arguments), arguments[0].strip('='))

    def test_twice(self):
        self.assert_not_done(self.run_it(self.job, '--plan', 'a', '--plan', 'b'), '--plan')
        self.assert_not_done(self.run_it(self.job, '--plan', '-', '--save', '-'))
        self.assert_not_done(
            self.run_it(self.job, '--plan', '-', '--flatten', '1', '--flatten', '1'), '--flatten')

    def test_flatten_values(self):
        for value in ('0', '-1', 'x', '1mm', '1,5', 'nan', 'inf', '1e9', '1e-9', '0x'):
            self.assert_not_done(self.run_it(self.job, '--plan', '-', f'--flatten={value}'),
                                 '--flatten')

    def test_values(self):
        for option, values in (('--paper', ('a5', 'A4', 'x', 'roll:', 'roll:0', 'roll:914mm')),
                               ('--marked-on', ('left', 'Right')), ('--lines', ('all',)),
                               ('--margin', ('-1', 'x')), ('--overlap', ('-1', 'x')),
                               ('--pages', ('0', 'x', '2-1', '99')), ('--pieces', ('0', 'x', '99')),
                               ('--label-sheet', ('2', '0x3', '2x3x4')),
                               ('--skip-labels', ('-1', 'x')), ('--of', ('roll', '')),
                               ('--only', ('cut,', 'all', 'cut sew')), ('--layers', ('aama',)),
                               ('--dxf-release', ('r14',)), ('--seed', ('-1', 'x', '1.5')),
                               ('--steps', ('-1', 'x', '1000001')),
                               ('--seconds', ('-1', 'x', '1s', 'nan', '1e9')),
                               ('--threads', ('-1', 'x', '65')),
                               ('--date', ('today', '2026-02-30', '2026-13-01', '1-1-2026',
                                           '2026-3-1', '0000-01-01'))):
            for value in values:
                self.assert_not_done(
                    self.run_it(self.job, '--cut-list', 'a.pdf', f'{option}={value}'), option)
        self.assertFalse((self.folder / 'a.pdf').exists())

    def test_seconds(self):
        """Time ends it; what is found is no longer than what a first lay gives."""
        several = self.file('several.squab', job(square(469.9, count=7), square(300, id=2)))

        def lay(*more):
            done = self.run_it(several, '--plan', '-', *more)
            self.assertEqual(done.returncode, 0)
            return json.loads(done.stdout)['lays'][0]
        first, found = lay(), lay('--seconds', '2', '--seed', '4', '--threads', '2')
        # a first lay for straight cuts is of a few attempts
        self.assertEqual((first['steps'], found['seed']), (2 if first['cuts'] == 'straight' else 0, 4))
        self.assertGreater(found['steps'], 0)
        self.assertLessEqual(found['strips'][0]['length'], first['strips'][0]['length'])
        self.assertEqual(lay('--seconds', '60', '--steps', '2')['steps'], 2)

    def test_pins(self):
        """A pin is kept where it can be; one that can't be is told, and its piece is laid."""
        def pinned(y):
            pin = {'cushion': 1, 'role': 'face', 'x': 900, 'y': y, 'turn': 270}
            return self.file('pinned.squab', job(square(469.9), pins=[pin]))
        done = self.run_it(pinned(800), '--plan', '-')
        placed = json.loads(done.stdout)['lays'][0]['placed']
        self.assertEqual(done.returncode, 0)
        self.assertIn((900, 800, 270), [(one['x'], one['y'], one['turn']) for one in placed])
        self.assertNotIn('pinned', done.stderr)
        done = self.run_it(pinned(-50), '--plan', '-')
        self.assertEqual(len(json.loads(done.stdout)['lays'][0]['placed']), len(placed))
        self.assertEqual(done.returncode, 0)
        self.assertIn('squab-cut: note: Plate can’t lie where it was pinned: it would leave '
                      'the cloth. It is laid elsewhere.', done.stderr)

    def test_paper_alone(self):
        self.assert_not_done(self.run_it(self.job, '--paper', 'a4'), '--paper')

    def test_what_goes_with_what(self):
        for option, out in (('--only=cut', '--plan'), ('--of=lay', '--cut-list'),
                            ('--layers=d6673', '--svg'), ('--dxf-release=r12', '--hpgl'),
                            ('--marked-on=wrong', '--layout'), ('--pages=1', '--dxf'),
                            ('--pieces=1', '--cut-list'), ('--margin=5', '--labels'),
                            ('--lines=cut', '--marking'), ('--corners-only', '--dxf'),
                            ('--label-sheet=2x2', '--pattern'), ('--paper=roll:900mm', '--labels'),
                            ('--overlap=0', '--csv'), ('--skip-labels=1', '--plan')):
            self.assert_not_done(self.run_it(self.job, out, 'a', option), option.split('=')[0])
            self.assertFalse((self.folder / 'a').exists())

    def test_ways(self):
        self.assert_not_done(self.run_it(self.job, '--ways=x'), '--ways')
        self.assert_not_done(self.run_it(self.job, '--ways', '--csv', '-'), '--plan')
        self.assert_not_done(self.run_it(self.job, '--ways', '--ways'), '--ways')
        self.assertIn('WAYS OF BUILDING', self.run_it(self.job, '--ways').stdout)

    def test_flatten_alone(self):
        self.assert_not_done(self.run_it(self.job, '--flatten', '0.1'), '--plan')


class Machines(Case):
    """Files for plotters and cutting tables; what is in them others look over."""

    def setUp(self):
        super().setUp()
        self.job = self.file('pair.squab', job(square(469.9, name='Stern/port'),
                                               square(300, id=2, name='窓辺の座布団', count=2)))

    def written(self, *arguments, name='a'):
        done = self.run_it(self.job, *arguments)
        self.assertEqual((done.returncode, done.stdout), (0, ''), done.stderr)
        return (self.folder / name).read_text()

    def test_files(self):
        self.assertIn('AC1009', self.written('--dxf', 'a'))
        self.assertIn('AC1015', self.written('--dxf', 'a', '--dxf-release', 'r2000'))
        self.assertIn('<svg', self.written('--svg', 'a'))
        self.assertTrue(self.written('--hpgl', 'a').startswith('IN;'))

    def test_choices_change_what_is_written(self):
        seen = {self.written('--dxf', 'a', *more)
                for more in ([], ['--of', 'cloth'], ['--of', 'lay'], ['--only', 'cut'],
                             ['--only', 'cut,sew,notch'], ['--layers', 'd6673'],
                             ['--marked-on', 'wrong'], ['--pieces', '2'])}
        self.assertEqual(len(seen), 7) # one cloth: by cloth is as it is by pieces
        self.assertEqual(self.written('--hpgl', 'a'), self.written('--hpgl', 'a', '--of', 'lay'))

    def test_folder(self):
        names = {}
        for of in ('pieces', 'cloth', 'lay'):
            folder = self.folder / of
            folder.mkdir()
            done = self.run_it(self.job, '--dxf', of, '--svg', of, '--of', of)
            self.assertEqual((done.returncode, done.stdout), (0, ''), done.stderr)
            names[of] = sorted(path.name for path in folder.iterdir())
        self.assertEqual(len(names['pieces']), 8)
        self.assertEqual((names['cloth'], names['lay']), (['Cloth.dxf', 'Cloth.svg'],) * 2)
        self.assertTrue(any('Stern-port' in name for name in names['pieces']))
        self.assertTrue(any('窓辺の座布団' in name for name in names['pieces']))

    def test_new_folder(self):
        done = self.run_it(self.job, '--svg', 'new/', '--dxf', 'new/')
        self.assertEqual((done.returncode, done.stdout), (0, ''), done.stderr)
        self.assertEqual(len(list((self.folder / 'new').iterdir())), 8)
        self.assert_not_done(self.run_it(self.job, '--svg', '/proc/none/'), '/proc/none')

    def test_large_for_a_plotter(self):
        self.job = self.file('long.squab', job(square(900)))
        done = self.run_it(self.job, '--hpgl', 'a')
        self.assertEqual(done.returncode, 0)
        self.assertIn('32767', done.stderr)

    def test_nothing_half_written(self):
        for option in ('--dxf', '--svg', '--hpgl'):
            self.assert_not_done(self.run_it(self.job, option, '/dev/full'), '/dev/full')
            self.assert_not_done(self.run_it(self.job, option, 'none/a'), 'none/a')


class ManyPages(Case):
    def setUp(self):
        super().setUp()
        self.job = self.file('field.squab', job(*[
            {'id': number, 'name': 'Field', 'thickness': 60, 'build': 'boxed',
             'outline': [corner(1, 0, 0, front=True), corner(2, 90000 - number, 0),
                         corner(3, 90000, 60000), corner(4, 0, 60000)]}
            for number in (1, 2, 3)]))

    def test_too_many(self):
        """Nobody prints ten thousand pages without having been asked."""
        self.assert_not_done(self.run_it(self.job, '--pattern', 'a.pdf'), 'pages', '--pages')
        self.assertFalse((self.folder / 'a.pdf').exists())

    def test_some_of_them(self):
        done = self.run_it(self.job, '--pattern', 'a.pdf', '--pages', '2-4,9000-9001')
        self.assertEqual(done.returncode, 1) # no cloth is so wide
        pdf = (self.folder / 'a.pdf').read_bytes()
        self.assertEqual(pdf.count(b'/Type /Page\n') + pdf.count(b'/Type /Page '), 5)

    def test_margins_leave_nothing(self):
        for more in (['--margin', '60'], ['--margin', '10', '--overlap', '90'],
                     ['--paper', 'roll:100mm']):
            done = self.run_it(self.job, '--pattern', 'a.pdf', *more)
            self.assert_not_done(done, 'too narrow')
            self.assertNotIn('\u2044', done.stderr)
            self.assertFalse((self.folder / 'a.pdf').exists())
        self.assert_not_done(self.run_it(self.job, '--labels', 'a.pdf', '--label-sheet', '9x40'))
        self.assert_not_done(self.run_it(self.job, '--pattern', 'a.pdf', '--paper', 'roll:6m'), 'as wide as')


class Papers(Case):
    papers = ('--cut-list', '--layout', '--marking', '--tickets', '--labels', '--pattern',
              '--test-page', '--everything')

    def made(self, *arguments, name='a.pdf', **more):
        done = self.run_it(self.job, *arguments, **more)
        self.assertEqual((done.returncode, done.stdout), (0, ''), done.stderr)
        return (self.folder / name).read_bytes()

    def test_same_bytes(self):
        for paper in self.papers:
            first = self.made(paper, 'a.pdf', '--date', '2026-03-01')
            self.assertTrue(first.startswith(b'%PDF-'))
            self.assertEqual(first, self.made(paper, 'a.pdf', '--date', '2026-03-01'))
            self.assertNotEqual(first, self.made(paper, 'a.pdf', '--date', '2026-03-02'))

    def test_date_of_the_environment(self):
        given = self.made('--everything', 'a.pdf', '--date', '2026-03-01')
        day = {'SOURCE_DATE_EPOCH': '1772323200'} # 2026-03-01T00:00:00Z
        self.assertEqual(given, self.made('--everything', 'a.pdf', env=day))

    def test_several_at_once(self):
        done = self.run_it(self.job, '--cut-list', 'a.pdf', '--layout', 'b.pdf', '--csv', 'c.csv',
                           '--plan', 'd.json', '--paper', 'letter')
        self.assertEqual((done.returncode, done.stdout), (0, ''))
        self.assertEqual(sorted(path.name for path in self.folder.iterdir()),
                         ['a.pdf', 'b.pdf', 'c.csv', 'd.json', 'stool.squab'])

    def test_standard_output(self):
        done = subprocess.run([SQUAB_CUT, self.job, '--cut-list', '-'], capture_output=True,
                              check=True, cwd=self.folder)
        self.assertTrue(done.stdout.startswith(b'%PDF-'))

    def test_full_disk(self):
        self.assert_not_done(self.run_it(self.job, '--everything', '/dev/full'), '/dev/full')

    def test_nothing_half_written(self):
        # A file may not grow beyond a few bytes: as on a disk that fills up while it is written.
        def few_bytes():
            signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
            resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100))
        old = self.file('a.pdf', 'the old one')
        done = self.run_it(self.job, '--everything', 'a.pdf', preexec_fn=few_bytes)
        self.assert_not_done(done, 'a.pdf')
        self.assertEqual(pathlib.Path(old).read_text(), 'the old one')
        self.assertEqual(sorted(os.listdir(self.folder)), ['a.pdf', 'stool.squab'])

    def test_no_such_folder(self):
        self.assert_not_done(self.run_it(self.job, '--layout', 'none/a.pdf'), 'none/a.pdf')


class Table(Case):
    def test_rows(self):
        cushion = square(469.9, name='=1+1, "quoted"')
        done = self.run_it(self.file('a.squab', job(cushion)), '--csv', '-')
        rows = list(csv.DictReader(done.stdout.splitlines()))
        self.assertEqual([row['piece'] for row in rows], ['Plate', 'Underside'])
        self.assertEqual(rows[0]['cushion'], '\'=1+1, "quoted"')
        self.assertEqual((rows[0]['width'], rows[0]['length'], rows[0]['unit']),
                         ('25.0000', '25.0000', 'in'))
        self.assertEqual([row['number'] for row in rows], ['1', '2'])


class About(Case):
    def test_help(self):
        done = self.run_it('--help')
        self.assertEqual((done.returncode, done.stderr), (0, ''))
        for option in ('--plan', '--save', '--flatten', '--cut-list', '--layout', '--everything',
                       '--marking', '--tickets', '--labels', '--pattern', '--marked-on',
                       '--pages', '--pieces', '--lines', '--margin', '--overlap',
                       '--corners-only', '--label-sheet', '--skip-labels', '--paper', '--date', '--csv', '--ways', '--steps', '--seed', '--seconds',
                       '--threads', '--lay', '--cpu', '--svg', '--help', '--version'):
            self.assertIn(option, done.stdout)
        self.assertLessEqual(max(map(len, done.stdout.splitlines())), 80)

    def test_version(self):
        done = self.run_it('--version')
        self.assertRegex(done.stdout, r'\Asquab-cut \d+\.\d+\.\d+\n\Z')
        self.assertEqual(done.returncode, 0)


class Tap(unittest.TestResult):
    """Says in TAP what became of each test."""

    def say(self, outcome, test, trouble=''):
        print(f'{outcome} {self.testsRun} {test.id()}')
        print(''.join(f'# {line}\n' for line in trouble.splitlines()), end='')

    def addSuccess(self, test):
        self.say('ok', test)

    def addFailure(self, test, err):
        super().addFailure(test, err)
        self.say('not ok', test, self.failures[-1][1])

    def addError(self, test, err):
        super().addError(test, err)
        self.say('not ok', test, self.errors[-1][1])


tests = unittest.defaultTestLoader.loadTestsFromModule(sys.modules['__main__'])
print(f'1..{tests.countTestCases()}')
raise SystemExit(not tests.run(Tap()).wasSuccessful())
