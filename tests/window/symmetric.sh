# SPDX-License-Identifier: GPL-3.0-or-later
# A seat that isn't alike on both sides is made so from one half, in one step. Then its corners are
# moved, come and go in twins, until that is switched off.
. "$STEPS"
"$UI" squab click image Seat
key Escape
key ctrl+shift+m
until_there 'push button' 'Right half'
"$UI" squab click 'push button' 'Right half'
until_says seat '6 corners, 48 by 19 in'

# Corner B goes out by half an inch, and its twin the other way: the bows between rise with them.
key b
key Right Right Right Right
until_says seat '6 corners, 48 1/2 by 19 in*'
key ctrl+z
until_says seat '6 corners, 48 by 19 in*'

# The slanting side C–D gets a corner, and so does its twin.
read -r x y width height < <("$UI" squab rect image Seat)
xdotool mousemove $((x + 56 + (width - 2 * 56) * 43 / 48)) \
  $((y + height / 2 - (width - 2 * 56) * 6 / 48)) sleep 0.1 click 1
until_says seat '6 corners, 48 by 19 in; edge C–D (back) chosen'
key Insert
until_says seat '8 corners, 48 by 19 in*'
key ctrl+z
until_says seat '6 corners, 48 by 19 in*'

# A figure typed for the front is what the front has then: both its ends give way.
xdotool mousemove $((x + width / 2 - 40)) $((y + height / 2 + (width - 2 * 56) * 19 / 96)) \
  sleep 0.1 click 1
until_says seat '6 corners, 48 by 19 in; edge A–B (front) chosen'
key Return
until_there text 'Length of side A–B'
type_text 50
key Return
until_says seat '6 corners, 52 by 19 in*'
key Escape
key ctrl+z
until_says seat '6 corners, 48 by 19 in*'

# Without B and its twin the front is one bow between the ends of the slanting sides.
key b Delete
until_says seat '4 corners, 46 by 8 in*'
key ctrl+z
until_says seat '6 corners, 48 by 19 in*'

# A hand that drags B out by some six inches takes its twin along.
xdotool mousemove $((x + 56 + (width - 2 * 56) * 47 / 48)) \
  $((y + height / 2 + (width - 2 * 56) * 19 / 96)) sleep 0.1 mousedown 1
for _ in 1 2 3 4 5 6; do
  xdotool mousemove_relative -- $(((width - 2 * 56) / 48)) 0 sleep 0.03
done
until_says seat '6 corners, 5[6-9]* by 19*'

# A figure typed meanwhile is the front's length, from twin to twin; the sides bow out beyond.
xdotool key --delay 60 5 0
until_says seat '6 corners, 50 1/2 by 19*'
xdotool mouseup 1
until_says seat '6 corners, 50 1/2 by 19*'
key ctrl+z
until_says seat '6 corners, 48 by 19*'

# Switched off, B goes alone; what was made alike was one step, and the switch none.
key ctrl+shift+m
key b
key Right Right Right Right
until_says seat '6 corners, 48 1/4 by 19 in*'
key ctrl+z
key ctrl+z
until_says seat '5 corners, 47 by 19 in*'
