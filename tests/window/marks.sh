# SPDX-License-Identifier: GPL-3.0-or-later
# The mark that a problem has at its edge of the seat, when clicked, opens the list with the keyboard at its row.
. "$STEPS"
row='The zip opens 45 in and the foam is 46 7⁄8 in wide. Fold the foam to get it in.'
# A third of the back edge from its left end, a little inside. A fitted seat has the same margin left
# and right, and stands in the middle.
read -r x y width height < <("$UI" squab rect image Seat)
inch=$((1000 * (width - 2 * 56) / 47))
xdotool mousemove $((x + 56 + 38 * 34 * inch / 100000)) \
  $((y + height / 2 - 19 * inch / 2000 + 20)) sleep 0.2 click 1
"$UI" squab wait 'list item' "$row" || fail 'the list did not open at it'
key Tab space # from the row to its button
until_says pieces '6 pieces; *'
