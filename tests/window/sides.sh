# SPDX-License-Identifier: GPL-3.0-or-later
# A chosen edge has its length typed, and what stands there; a chosen corner its radius.
. "$STEPS"
read -r x y width height < <("$UI" squab rect image Seat)
front=$((y + height / 2 + (width - 2 * 56) * 19 / 47 / 2))
xdotool mousemove $((x + width / 2)) "$front" sleep 0.1 click 1
"$UI" squab wait label 'Edge A–B'
"$UI" squab click text Length
key ctrl+a
type_text '40'
key Return
until_says seat '*41 by 19*'
key ctrl+z
until_says seat '*47 by 19*'

# What can't be leaves the seat as it is, and says why.
key ctrl+a
type_text '0'
key Return
"$UI" squab wait label 'It has to be more than nothing.'
until_says seat '*47 by 19*'

"$UI" squab click text 'Stays free'
key ctrl+a
type_text '1/4'
key Return
key ctrl+s
sleep 0.5
grep -q '"clearance": 6.35' "$WORK/job.squab" || fail 'the clearance was not saved'

"$UI" squab click image Seat
key Escape
key b
"$UI" squab wait label 'Corner B'
"$UI" squab click text Radius
key ctrl+a
type_text '2'
key Return
key ctrl+s
sleep 0.5
grep -q '"radius": 50.8' "$WORK/job.squab" || fail 'the radius was not saved'
