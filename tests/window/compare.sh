# SPDX-License-Identifier: GPL-3.0-or-later
# Widths and matching: a table of widths, what each takes with the pattern matched and without, and what
# matching costs in a sentence.
. "$STEPS"
"$UI" squab click 'push button' 'Cloth and laying'
until_there 'menu item' 'Widths and matching…'
"$UI" squab do 'menu item' 'Widths and matching…'
until_there frame 'Widths and matching: Harbour stripe'
until_there label 'Matching costs no cloth here.'
for words in Width Matched 'Not matched' 'Matching costs' 48 '53, this cloth' 54 60 72 '1 yd'; do
  until_there label "$words"
done
key Escape
until_gone frame 'Widths and matching: Harbour stripe'
