# SPDX-License-Identifier: GPL-3.0-or-later
# Without the pointer: from an empty window to a saved job, with a mistake made and mended, all of it
# undone and done again. Tab comes to every control and back, and the focus is always seen.
. "$STEPS"
tabs=$(dirname "$UI")/tabs.py
xdotool mousemove 2 2

# around WHERE NAME…: Tab goes round, and comes to all that are named.
around ()
{
  local where=$1 name
  shift
  echo "--- $where"
  "$tabs" squab round > "$WORK/round" || { cat "$WORK/round"; fail "$where: Tab gets lost"; }
  cat "$WORK/round"
  for name; do
    grep -qF "$name" "$WORK/round" || fail "$where: Tab does not come to $name"
  done
}
to () { "$tabs" squab to "$@" || fail "Tab does not come to $1"; }

around 'an empty window' 'From its sides' 'Draw it' Trapezoid 'Front: Free' Thickness \
  'Make the cushion' 'The worked plate' Open Menu
to 'Back: Free'
key space
to Width
type_text 610
key Tab
type_text 520
key Tab
type_text 60
key Tab Return
until_says seat '4 corners, 610 by 520 mm'
around 'a job' "image 'Seat'" "image 'Pieces'" 'Table of sides' Cover Face Batting Menu

# Each corner, and each side.
to Seat
for letter in a b c d; do
  key $letter
  until_says seat "*; corner ${letter^} chosen"
done
key Escape Return
for edge in A–B B–C C–D D–A; do
  until_says seat "*; edge $edge* chosen"
  key Tab Tab
done
until_says seat '*; edge A–B* chosen'

# A figure, what stands there, a cloth, the zip and the cover.
type_text 650
key Return
did 'Length of side A–B'
until_says seat '4 corners, 650 by 520 mm; edge A–B*'
key Menu
until_there 'menu item' 'What stands there'
key d Down Down Return
did 'What stands at A–B'
to Face
key space
until_there label 'New cloth…'
key Down Return
until_there text Name
"$tabs" squab to Name
type_text 'Reading corner'
key ctrl+Return
did 'New cloth Reading corner'
to Along
key space Down Return
did 'Move zip'

# A copy, its mirror image, another one taken away.
key ctrl+d
did 'Copy Cushion 2'
key ctrl+m
did 'Mirror Cushion 2'
key ctrl+shift+n
until_says seat '4 corners, 450 by 450*'
to 'Cushions menu'
key space
until_there 'menu item' 'Take away'
key Up Return
did 'Take Cushion 3 away'

# What can't be built is gone to and mended.
to Seat
key b Return Tab Escape Menu
until_there 'menu item' Arc
key a
did 'Arc B–C'
to Cover
key space Down Return
until_says pieces '0 pieces'
key F8
until_there 'push button' 'Box the cushion'
around 'its problems' 'Box the cushion'
to 'Box the cushion'
key Return
until_says pieces '5 pieces*'

# Saved, all of it undone and done again: the same is saved.
key ctrl+s
waitwin 'Save the job' >/dev/null
key ctrl+a
type_text "$WORK/alone.squab"
key Return
until_there label 'alone.squab · saved'
cp "$WORK/alone.squab" "$WORK/before.squab"
"$SQUAB_CUT" "$WORK/alone.squab" >/dev/null || fail 'what was saved has faults'
steps=0
until "$UI" squab wait 'push button' Undo 0 2>/dev/null; do
  key ctrl+z
  steps=$((steps + 1))
  [ $steps -lt 40 ] || fail 'there is no end to what can be undone'
done
[ $steps -ge 9 ] || fail "only $steps steps"
until_says seat '4 corners, 610 by 520 mm*'
for _ in $(seq $steps); do key ctrl+shift+z; done
until_there 'push button' Redo
key ctrl+s
until_there label 'alone.squab · saved'
cmp "$WORK/alone.squab" "$WORK/before.squab" || fail 'done again it is another job'
