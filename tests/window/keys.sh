# SPDX-License-Identifier: GPL-3.0-or-later
# Corners are chosen by their letters and moved by the arrow keys; Escape puts back what is dragged.
. "$STEPS"
whole=$(pieces)
"$UI" squab click image Seat
key c
until_says seat '5 corners, 47 by 19 in; corner C chosen'
key Page_Down Page_Down
until_says seat '*; corner E chosen'
key Up
until_says seat '5 corners, 47 by 19 1/8 in; corner E chosen'
key shift+Up
until_says seat '5 corners, 47 by 20 3/8 in; corner E chosen'
key ctrl+z
until_says seat '5 corners, 47 by 19 in; *'
key Escape
until_says seat '5 corners, 47 by 19 in'

hold_back_left_corner 0 -40
until_says seat '5 corners, 47 by 2[0-9]*'
xdotool key Escape # "key" would let go of the button too
until_says seat '5 corners, 47 by 19 in*'
xdotool mousemove_relative -- 0 -20 mouseup 1
until_says pieces "$whole"
