# SPDX-License-Identifier: GPL-3.0-or-later
# Steps of many kinds, all undone, leave the first job as it was to the letter; done again, the last.
. "$STEPS"
saved () { key ctrl+s; until_there label 'job.squab · saved'; cp "$WORK/job.squab" "$WORK/$1"; }
same () { cmp "$WORK/$1" "$WORK/$2" || fail "$3"; }
typed () { key "$1" ctrl+a; type_text "$2"; key Return; }

"$SQUAB_CUT" --save "$WORK/first" "$WORK/job.squab" || fail 'the sample has faults'
drag_back_left_corner 0 -40
until_says seat '5 corners, 47 by 2[0-9]*'
key c shift+Up Delete
until_says seat '4 corners*'
typed alt+t 4
did 'Change thickness'
typed alt+w 50
did 'Change size of the seat'
"$UI" squab click 'combo box' Cover
key Down Return
did 'Change way of building'
"$UI" squab click 'combo box' Face
key Down Return
"$UI" squab click image Seat
key ctrl+m ctrl+d
key alt+Up ctrl+shift+n
until_says seat '4 corners, 18 by 18*'
saved last

steps=0
until "$UI" squab wait 'push button' Undo 0 2>/dev/null; do
  key ctrl+z
  steps=$((steps + 1))
  [ $steps -lt 30 ] || fail 'there is no end to what can be undone'
done
[ $steps -ge 11 ] || fail "only $steps steps"
until_says seat '5 corners, 47 by 19 in*'
saved again
same first again 'undone it is not the first job'
for _ in $(seq $steps); do key ctrl+shift+z; done
until_there 'push button' Redo
saved again
same last again 'done again it is not the last job'
echo "$steps steps"
