# SPDX-License-Identifier: GPL-3.0-or-later
# A corner dragged changes seat and pieces; undo and redo go there and back.
. "$STEPS"
before=$(pieces)
drag_back_left_corner 0 -40
until_says seat '5 corners, 47 by 2[0-9]*; corner E chosen'
after=$(pieces)
[ "$after" != "$before" ] || fail 'the pieces did not follow'
key ctrl+z
until_says pieces "$before"
until_says seat '5 corners, 47 by 19 in*'
key ctrl+shift+z
until_says pieces "$after"
