# SPDX-License-Identifier: GPL-3.0-or-later
# A corner is put on an edge by two quick clicks, or by a key in its middle, and taken away again.
. "$STEPS"
read -r x y width height < <("$UI" squab rect image Seat)
front=$((y + height / 2 + (width - 2 * 56) * 19 / 47 / 2))
xdotool mousemove $((x + width / 2)) "$front" sleep 0.1 click --repeat 2 --delay 60 1
until_says seat '6 corners, *; corner B chosen'
key Up Up Up Up
until_says seat '6 corners, *'
key Delete
until_says seat '5 corners, 47 by 19*'
key ctrl+z
until_says seat '6 corners, *'

xdotool mousemove $((x + width / 4)) "$front" sleep 0.1
for _ in 1 2 3 4 5 6; do key ctrl+z; done
until_says seat '5 corners, 47 by 19*'
xdotool mousemove $((x + width / 3)) "$front" sleep 0.6 click 1
key Insert
until_says seat '6 corners, 47 by 19 in; corner B chosen'
