# SPDX-License-Identifier: GPL-3.0-or-later
# A seam is clicked on a piece: both sides and their lengths are said, in a card too; n and p go
# through all of them; it stays chosen while the seat changes; Escape and a click elsewhere clear it.
. "$STEPS"
seam () { pieces | grep -o 'seam: .*' || echo none; }

# Down a line through the pieces, until a seam is hit.
read -r x y width height < <("$UI" squab rect image Pieces)
for down in $(seq 4 4 $((height / 2))); do
  xdotool mousemove $((x + width * 2 / 5)) $((y + down)) click 1
  sleep 0.05
  [ "$(seam)" = none ] || break
done
until_says seam 'seam: Top, edges *45 in – Upper zip strip, upper edge, 45 in: equally long'
"$UI" squab wait label 'Top to upper zip strip' || fail 'no card'
"$UI" squab wait label 'equally long' || fail 'the card does not say how they fit'
xdotool mousemove $((x + width - 20)) $((y + 6)) click 1
until_says seam none

key Right n
until_says seam 'seam: Top, edge E–A (left), 15 3/8 in – Left boxing, upper edge, 15 3/8 in: equally long'
key n
until_says seam 'seam: Underside, edge E–A (left), *'
key p
until_says seam 'seam: Top, edge E–A (left), *'
drag_back_left_corner 0 -40
until_says seat '*; corner E chosen'
until_says seam none
key ctrl+z
"$UI" squab click image Pieces
key Escape n n n n n n n n
until_says seam 'seam: Top, edge E–A (left), 15 3/8 in *'
key ctrl+z ctrl+shift+z
until_says seam 'seam: Top, edge E–A (left), 2[0-9]*: equally long'
key Escape
until_says seam none
key Right
until_says pieces '*; Top chosen; *match notches*'
