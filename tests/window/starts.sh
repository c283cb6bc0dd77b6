# SPDX-License-Identifier: GPL-3.0-or-later
# From an empty window: a shape, its lengths and four taps make a cushion; it is saved under a name.
. "$STEPS"

# Samples are there to begin with, the plain ones first.
wanted="Square seat,The worked plate,Bay window,Half-round seats,Dining pads,Four stools"
wanted+=",Forward berths,Corner bench,Bow-fronted seat,Window seat,Wheelhouse seat,Pier bench,Cabin pads,Berth bolsters,Pad round a post"
shown=$("$UI" squab tree | sed -n "s/^ *push button '\(.*\)' '' .*/\1/p" | sed -n '/Square seat/,/Pad round/p' |
  paste -sd,)
[ "$shown" = "$wanted" ] || fail "the samples are $shown"
"$UI" squab click 'push button' Trapezoid
"$UI" squab click text Width
key ctrl+a
type_text '24 in'
key Tab
type_text '20 1/2 in'
key Tab
type_text '22 in'
key Tab
type_text '2 in'
key Tab
"$UI" squab click 'push button' 'Back: Free'
"$UI" squab click 'push button' 'Left: Free'
"$UI" squab click 'push button' 'Left: Wall'
"$UI" squab click label 'Make the cushion'
until_says seat '4 corners, 610 by 521 mm'

key ctrl+s
waitwin 'Save the job' >/dev/null
key ctrl+a
type_text "$WORK/first.squab"
key Return
for _ in $(seq 30); do [ ! -s "$WORK/first.squab" ] || break; sleep 0.1; done
grep -q '"thickness": 50.8' "$WORK/first.squab" || fail 'the thickness was not saved'
grep -q '"kind": "wall"' "$WORK/first.squab" || fail 'the wall at the back was not saved'
grep -q '"kind": "well"' "$WORK/first.squab" || fail 'the well at the left was not saved'
