# SPDX-License-Identifier: GPL-3.0-or-later
# Folded corners can't follow a curved edge: it is said in words, and the way out is a button.
. "$STEPS"
"$UI" squab click 'combo box' Cover
key Down Return
until_says pieces '0 pieces'
key F8
"$UI" squab wait 'push button' 'Box the cushion' || fail 'no way out is offered'
"$UI" squab click 'push button' 'Box the cushion'
until_says pieces '7 pieces; Top 47 7⁄8 × 19 7⁄8, cut 1; *'
key ctrl+z
until_says pieces '0 pieces'
