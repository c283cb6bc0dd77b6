# SPDX-License-Identifier: GPL-3.0-or-later
# From an empty window: three lengths make a cushion; it is saved under a name.
. "$STEPS"
"$UI" squab click text Width
key ctrl+a
type_text '24 in'
key Tab
type_text '20 1/2 in'
key Tab
type_text '2 in'
key Return
until_says seat '4 corners, 610 by 521 mm'

key ctrl+s
waitwin 'Save the job' >/dev/null
key ctrl+a
type_text "$WORK/first.squab"
key Return
for _ in $(seq 30); do [ ! -s "$WORK/first.squab" ] || break; sleep 0.1; done
grep -q '"thickness": 50.8' "$WORK/first.squab" || fail 'the thickness was not saved'
