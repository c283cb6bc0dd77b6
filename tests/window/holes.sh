# SPDX-License-Identifier: GPL-3.0-or-later
# Holes are cut by their figures, in the middle of the seat or where it was clicked, and taken away.
. "$STEPS"
"$UI" squab click image Seat
key Escape

# A hole that reaches the edge of the seat is not cut, and it is said why; a smaller one is.
key ctrl+shift+h
waitwin 'A hole in the seat' >/dev/null
type_text '20'
key Return
"$UI" squab wait label 'It would reach the edge of the seat, or another hole.'
key ctrl+a
type_text '3'
key Return
until_says seat '7 corners, 47 by 19*'
until_says pieces '8 pieces*'

# Folded corners have no cloth for its sides: the way out takes it away.
"$UI" squab click 'combo box' Cover
sleep 0.3
key Down Return
until_says pieces '0 pieces'
key F8
"$UI" squab click 'push button' 'Remove the hole'
until_says seat '5 corners, 47 by 19*'
key ctrl+z ctrl+z
until_says pieces '8 pieces*'
key F8 ctrl+z
until_says seat '5 corners, 47 by 19*'

# A rectangle where the seat was clicked, a third of its width from the left.
read -r x y width height < <("$UI" squab rect image Seat)
xdotool mousemove $((x + 56 + (width - 2 * 56) * 15 / 47)) $((y + height / 2)) sleep 0.1 click 3
sleep 0.3
key Down Return
waitwin 'A hole in the seat' >/dev/null
"$UI" squab click 'combo box' Shape
sleep 0.3
key Down Return
"$UI" squab click text Width
key ctrl+a
type_text '5'
key Tab
type_text '2'
key Tab
type_text '15'
key Tab
type_text '9 1/2'
key Return
until_says seat '9 corners, 47 by 19*'
key ctrl+s
for _ in $(seq 30); do ! grep -q holes "$WORK/job.squab" || break; sleep 0.1; done
grep -q '"x": 317.5, "y": 21[56]' "$WORK/job.squab" || fail 'the hole is not where it was told'

# Its menu takes it away.
key f
until_says seat '*corner F chosen'
key Menu
sleep 0.3
key Up Return
until_says seat '5 corners, 47 by 19*'
key ctrl+z
until_says seat '9 corners, 47 by 19*'
