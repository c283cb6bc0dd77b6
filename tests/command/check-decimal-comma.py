#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""check-decimal-comma.py SQUAB-CUT JOB…: where people write a decimal comma, cut lists and sentences
have it, and files do not."""
import os
import re
import subprocess
import sys
import tempfile

squab_cut, *jobs = sys.argv[1:]
FIGURE = re.compile(r'(\d)\.(\d)')
SENTENCE = re.compile(r'("text": *)"[^"]*"')


def said(language, *arguments):
    return subprocess.run([squab_cut, *arguments], env=os.environ | {'LANGUAGE': ''} | language,
                          capture_output=True, text=True, check=False).stdout


with tempfile.TemporaryDirectory() as folder:
    subprocess.run(['localedef', '-i', 'de_DE', '-f', 'UTF-8', f'{folder}/de_DE.UTF-8'], check=True)
    point = {'LC_ALL': 'C.UTF-8'}
    comma = {'LC_ALL': 'de_DE.UTF-8', 'LOCPATH': folder}
    for job in jobs:
        cut_list = said(point, job)
        assert FIGURE.search(cut_list), job
        assert said(comma, job) == FIGURE.sub(r'\1,\2', cut_list), job
        assert said(comma, job, '--save', '-') == said(point, job, '--save', '-') != '', job
        dxf = said(point, job, '--dxf', '-')
        assert dxf == said(comma, job, '--dxf', '-') != '', job
        plan = SENTENCE.sub('', said(point, job, '--plan', '-'))
        assert plan and plan == SENTENCE.sub('', said(comma, job, '--plan', '-')), job
        for drawing in ('--svg', '--hpgl'):
            file = [job, drawing, '-', '--only', 'cut,sew,notch,mark']
            assert said(comma, *file) == said(point, *file) != '', job
