# SPDX-License-Identifier: GPL-3.0-or-later
# Sides of one cover built their own way: chosen at an edge by click, in its menu, and where a problem
# offers it; welts and what only some ways ask stand in the values where they matter.
. "$STEPS"
job () { key ctrl+s; sleep 0.3; tr -d ' \n' <"$WORK/job.squab"; }

# The front folded down, the rest boxed; then as the cushion again.
read -r x y width height < <("$UI" squab rect image Seat)
front=$((y + height / 2 + (width - 2 * 56) * 19 / 47 / 2))
xdotool mousemove $((x + width / 3)) "$front" sleep 0.6 click 1
until_there 'combo box' Side
"$UI" squab click 'combo box' Side
key Up Return
until_says pieces '*Plate *'
until_says job '*"build":"folded"*'
"$UI" squab click 'push button' 'Side as usual'
until_says pieces '7 pieces; Top *'

# The same in the edge's menu: after "Like the rest" it stands second.
xdotool mousemove $((x + width / 3)) "$front" sleep 0.6 click 1
until_says seat '*; edge A–B* chosen'
key shift+F10
until_there 'menu item' Side
key i
until_there 'menu item' 'Folded down'
key Down Down Return
until_says pieces '*Plate *'
key ctrl+z
until_says pieces '7 pieces; Top *'

# A folded cover whose right side is curved: boxing is let in there, as its problem offers.
"$UI" squab click 'combo box' Cover
key Down Return
until_says pieces '0 pieces'
key F8
until_there 'push button' 'Box the side at B–C'
"$UI" squab click 'push button' 'Box the side at B–C'
until_says pieces '*Plate *Right boxing *'
key ctrl+z ctrl+z
until_says pieces '7 pieces; Top *'

# A welt: only covers that take one ask for it. With nothing chosen on the seat it is in view.
xdotool mousemove $((x + 12)) $((y + 12)) sleep 0.6 click 1
key Escape
until_says seat '5 corners, 47 by 19 in'
"$UI" squab click 'combo box' 'In seam'
key Down Return
did 'Change welt'
until_says pieces '*Welt strip*'
until_there text Cord
"$UI" squab click 'combo box' Cover
key Down Return
"$UI" squab gone 'combo box' 'In seam' 2>/dev/null || until_gone 'combo box' 'In seam'
key ctrl+z ctrl+z
until_says pieces '7 pieces; Top *'

# A knife edge says what it holds.
"$UI" squab click 'combo box' Cover
until_there label 'Knife edge'
key Home Down Down Down Down Return
until_says pieces '2 pieces; Top *'
until_there 'combo box' Filling
until_there text 'Draw-in'
