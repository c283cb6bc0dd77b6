# SPDX-License-Identifier: GPL-3.0-or-later
# A lot cut in layers: asked for in a dialog, told in the roll's heading, in the file, and undone.
. "$STEPS"
"$UI" squab click 'push button' 'Cloth and laying'
until_there 'menu item' 'How it is cut…'
"$UI" squab do 'menu item' 'How it is cut…'
until_there 'push button' 'Change'
"$UI" squab value 'spin button' 'Layers at most' 4
"$UI" squab click 'push button' 'Change'
did 'How cloth is cut'
said () { "$UI" squab tree | sed -n "s/.*label '\([^']*pl[yi][^']*\)'.*/\1/p" | head -1; }
until_says said '*pl*'
key ctrl+s
sleep 0.5
grep -q '"laying"' "$WORK/job.squab" || fail 'it is not in the file'
key ctrl+z
until_says said ''

# By straight cuts alone it takes no less cloth.
"$UI" squab click 'push button' 'Cloth and laying'
until_there 'menu item' 'How it is cut…'
"$UI" squab do 'menu item' 'How it is cut…'
until_there 'push button' 'Change'
"$UI" squab click 'combo box' Cuts
until_there label 'Straight, right through'
key End Return
"$UI" squab click 'push button' 'Change'
did 'How cloth is cut'
key ctrl+s
sleep 0.5
tr -d ' \n' <"$WORK/job.squab" | grep -q '"cuts":"straight"' || fail 'straight cuts are not in the file'
