# SPDX-License-Identifier: GPL-3.0-or-later
# Cushions are renamed in their place, pairs are said there, and rows are dragged into another order.
. "$STEPS"
job () { key ctrl+s; sleep 0.3; tr -d ' \n' <"$WORK/job.squab"; }
names () { job | grep -o '"name":"[^"]*","[ch][oa][un]' | tr '\n' ' '; }

key F2
until_there text 'Name of the cushion'
key ctrl+a
type_text 'Window bench'
key Return
did 'Rename to Window bench'
until_there 'list item' 'Window bench'
until_gone text 'Name of the cushion'

# A double click does it too; Escape puts back what was typed, and goes.
read -r x y width height < <("$UI" squab rect 'list item' 'Window bench')
xdotool mousemove $((x + width / 2)) $((y + height / 3)) sleep 0.1 click --repeat 2 --delay 80 1
until_there text 'Name of the cushion'
type_text 'nonsense'
key Escape Escape
until_gone text 'Name of the cushion'
until_there 'list item' 'Window bench'
did 'Rename to Window bench'
# Going elsewhere takes it.
key F2
until_there text 'Name of the cushion'
key ctrl+a
type_text 'Bay'
"$UI" squab click image Seat
until_there 'list item' Bay
until_gone text 'Name of the cushion'
did 'Rename to Bay'

# Pairs, and how many.
key alt+a
settle # it comes into sight
key space
until_there label 'A pair, one of each'
key End Return
until_there label $'Boxed, 3 in\n1 pair'
key alt+u ctrl+a
type_text 2
key Return
until_there label $'Boxed, 3 in\n2 pairs'
key alt+a
settle # it comes into sight
key space
until_there label 'As drawn'
key Home Down Return
until_there label $'Boxed, 3 in\nmirror image'
until_there 'list item' '2 × Bay'

# The last one is dragged to where the first is.
key ctrl+d
did 'Copy Bay'
key F2
until_there text 'Name of the cushion'
key ctrl+a
type_text Stool
key Return
until_there 'list item' '2 × Stool'
until_says names '*Bay*Stool*'
read -r x y width height < <("$UI" squab rect 'list item' '2 × Stool')
read -r to_x to_y _ < <("$UI" squab rect 'list item' '2 × Bay')
xdotool mousemove $((x + width / 2)) $((y + height / 3)) sleep 0.1 mousedown 1
for _ in 1 2 3 4 5 6 7 8; do
  xdotool mousemove_relative -- 0 $(((to_y - y) / 8)) sleep 0.05
done
xdotool sleep 0.2 mouseup 1
did 'Move Stool up'
until_says names '*Stool*Bay*'
key ctrl+z
until_says names '*Bay*Stool*'
