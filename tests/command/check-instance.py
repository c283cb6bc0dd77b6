#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-instance.py SQUAB-CUT FILE: that what squab-cut --lay makes of an open instance is right, that
the same seed and steps give the same, and what is said of files that are none."""
import collections
import json
import os
import pathlib
import subprocess
import sys
import tempfile
import unittest
import xml.etree.ElementTree

import instances

SQUAB_CUT, FILE = map(os.path.abspath, sys.argv[1:3])
del sys.argv[1:3]
INSTANCE = json.loads(pathlib.Path(FILE).read_text())


class Case(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = pathlib.Path(folder.name)

    def run_it(self, *arguments):
        return subprocess.run([SQUAB_CUT, *arguments], capture_output=True, text=True,
                              cwd=self.folder, check=False, timeout=60)

    def lay(self, *arguments, file=FILE):
        done = self.run_it('--lay', file, '--plan', '-', *arguments)
        self.assertEqual((done.returncode, done.stderr), (0, ''))
        return json.loads(done.stdout)['lays'][0]

    def file(self, content):
        path = self.folder / 'other.json'
        path.write_text(content if isinstance(content, str) else json.dumps(content))
        return str(path)

    def assert_right(self, lay, instance):
        self.assertEqual(list(instances.faults(lay, instance)), [])


class Lays(Case):
    def test_first(self):
        self.assert_right(self.lay(), INSTANCE)

    def test_better(self):
        first, better = self.lay(), self.lay('--steps', '50', '--seed', '3')
        self.assert_right(better, INSTANCE)
        self.assertGreaterEqual(better['density'], first['density'])
        self.assertEqual(better['seed'], 3)

    def test_threads(self):
        """What is found follows from seed and steps."""
        lays = [self.lay('--steps', '20', '--threads', n) for n in ('1', '2', '4')]
        self.assertEqual(lays[0], lays[1])
        self.assertEqual(lays[0], lays[2])

    def test_units(self):
        """The same in units a thousand times as long, and in tiny ones."""
        for unit in (1e-3, 1e4):
            instance = json.loads(json.dumps(INSTANCE))
            instance['strip_height'] *= unit
            for item in instance['items']:
                item['shape']['data'] = [[x * unit, y * unit] for x, y in item['shape']['data']]
            lay = self.lay(file=self.file(instance))
            self.assert_right(lay, instance)
            self.assertAlmostEqual(lay['strips'][0]['length'] / unit,
                                   self.lay()['strips'][0]['length'], delta=1e-6)

    def test_line(self):
        done = self.run_it('--lay', FILE)
        name, seconds, density, length = done.stdout.split()
        lay = self.lay()
        self.assertEqual((done.returncode, done.stderr, name), (0, '', 'flags'))
        self.assertLess(float(seconds), 10)
        self.assertRegex(density, r'\A\d+\.\d{3}\Z')
        self.assertAlmostEqual(float(density), 100 * lay['density'], delta=0.0005)
        self.assertEqual(float(length), lay['strips'][0]['length'])
        self.assertAlmostEqual(float(density), 100 * instances.area_of(INSTANCE) / 12.5 / float(length), delta=0.0005)

    def test_seconds(self):
        for more in ([], ['--cpu', '--threads', '1']):
            done = self.run_it('--lay', FILE, '--seconds', '0.3', '--svg', 'a.svg', *more)
            self.assertEqual((done.returncode, done.stderr), (0, ''))
            self.assertAlmostEqual(float(done.stdout.split()[1]), 0.3, delta=0.2)
        self.assertEqual(self.run_it('--lay', FILE, '--seconds', '0').returncode, 0)

    def test_picture(self):
        self.assertEqual(self.run_it('--lay', FILE, '--svg', 'a.svg').returncode, 0)
        root = xml.etree.ElementTree.parse(self.folder / 'a.svg').getroot()
        kinds = collections.Counter(node.tag.rsplit('}', 1)[1] for node in root.iter())
        self.assertEqual((kinds['path'], kinds['text']), (10, 11))
        numbers = [node.text for node in root.iter('{http://www.w3.org/2000/svg}text')]
        self.assertEqual(sorted(numbers[:-1]), sorted('0001122223'))
        self.assertIn('flags', numbers[-1])


class Others(Case):
    def test_name_of_the_file(self):
        instance = {key: value for key, value in INSTANCE.items() if key != 'name'}
        self.assertEqual(self.run_it('--lay', self.file(instance)).stdout.split()[0], 'other')

    def test_not_all(self):
        """What can't be laid is said; the rest is."""
        def polygon(*ring):
            return {'demand': 2, 'shape': {'data': ring}}
        instance = {'strip_height': 10,
                    'items': [polygon([0, 0], [4, 0], [4, 11], [0, 11]),
                              polygon([0, 0], [4, 4], [4, 0], [0, 4]),
                              polygon([0, 0], [4, 0], [4, 4], [0, 4])]}
        done = self.run_it('--lay', self.file(instance), '--plan', 'a.json')
        lay = json.loads((self.folder / 'a.json').read_text())['lays'][0]
        self.assertEqual(done.returncode, 1)
        self.assertEqual(done.stderr.splitlines(),
                         ['squab-cut: error: item 0 (2 of it) is not laid: '
                          'it is wider than the strip',
                          'squab-cut: error: item 1 (2 of it) is not laid: '
                          'its outline crosses itself'])
        self.assertEqual([(u['piece'], u['count'], u['why']) for u in lay['unlaid']],
                         [(0, 2, 'too-wide'), (1, 2, 'crosses')])
        self.assertEqual([p['piece'] for p in lay['placed']], [2, 2])
        self.assertAlmostEqual(float(done.stdout.split()[2]), 80, delta=1e-9)

    def test_nothing(self):
        done = self.run_it('--lay', self.file({'strip_height': 10, 'items': []}))
        self.assertEqual((done.returncode, done.stdout.split()[2:]), (0, ['0.000', '0']))

    def test_refused(self):
        ring = [[0, 0], [1, 0], [0, 1]]
        for content, what in (
                ('', ''), ('[]', 'not an object'), ({}, 'no strip_height'),
                ({'strip_height': 0, 'items': []}, 'strip_height: no width of a strip'),
                ({'strip_height': -1, 'items': []}, 'strip_height'),
                ({'strip_height': 1e-300, 'items': []}, 'strip_height: no width of a strip'),
                ({'strip_height': 1e300, 'items': []}, 'strip_height: no width of a strip'),
                ('{"strip_height": 1e999, "items": []}', 'strip_height: not a finite number'),
                ({'strip_height': '5', 'items': []}, 'strip_height: not a number'),
                ({'strip_height': 5}, 'no items'),
                ({'strip_height': 5, 'items': [{}]}, 'items[0]: no shape'),
                ({'strip_height': 5, 'items': [{'shape': {}}]}, 'items[0].shape: no data'),
                ({'strip_height': 5, 'items': [{'shape': {'data': ring[:2]}}]},
                 'items[0].shape.data: fewer than three corners'),
                ({'strip_height': 5, 'items': [{'shape': {'data': [*ring, [1]]}}]},
                 'items[0].shape.data[3]: not a point'),
                ({'strip_height': 5, 'items': [{'shape': {'data': [*ring, [1e9, 0]]}}]},
                 'items[0].shape.data[3]: too far out'),
                ({'strip_height': 5, 'items': [{'shape': {'data': ring}, 'demand': -1}]},
                 'items[0].demand: out of range'),
                ({'strip_height': 5, 'items': [{'shape': {'data': ring},
                                                'allowed_orientations': list(range(65))}]},
                 'items[0].allowed_orientations: more than 64')):
            done = self.run_it('--lay', self.file(content))
            self.assertEqual((done.returncode, done.stdout), (2, ''), content)
            self.assertIn(what, done.stderr)
            self.assertEqual(done.stderr.count('\n'), 1)
        self.assertEqual(self.run_it('--lay', 'nowhere.json').returncode, 2)

    def test_usage(self):
        for more in (['--csv', 'a'], ['--ways'], ['--flatten', '1'], ['--paper', 'a4'],
                     ['--date', '2026-03-01'], ['other.squab'], ['--seconds', '-1'],
                     ['--seconds', 'x'], ['--threads', '65'], ['--plan', 'a', '--svg', 'a'],
                     ['--cpu=1']):
            done = self.run_it('--lay', FILE, *more)
            self.assertEqual((done.returncode, done.stdout), (2, ''), more)


if __name__ == '__main__':
    unittest.main()
