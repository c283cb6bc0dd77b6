# SPDX-License-Identifier: GPL-3.0-or-later
# Notes are pinned to an edge and to a corner, read at their marks, and taken off again.
. "$STEPS"
job () { key ctrl+s; sleep 0.3; tr -d ' \n' <"$WORK/job.squab"; }
note () { "$UI" squab text text Note; }
read -r x y width height < <("$UI" squab rect image Seat)
scale=$(((width - 2 * 56) * 1000 / 1194)) # pixels per m
back=$((y + height / 2 - 483 * scale / 2000)) front=$((y + height / 2 + 483 * scale / 2000))

# The sample's own: at the back edge, nearer to its right end. The pointer rests on its mark.
xdotool mousemove $((x + 56 + 676 * scale / 1000)) $((back + 17)) sleep 0.2 mousemove_relative 1 1
until_there label 'radiator below'
key c Page_Down
xdotool mousemove $((x + width / 3)) $((back + 1)) sleep 0.1 click 1
until_says seat '*edge D–E (back) chosen, note: radiator below'
until_says note 'radiator below'

# To an edge, by a click; what is typed is also taken where another place is chosen next.
xdotool mousemove $((x + width / 3)) "$front" sleep 0.1 click 1
until_there label 'Edge A–B'
"$UI" squab click text Note
type_text 'loose board'
xdotool mousemove $((x + 56)) $((y + height / 2)) sleep 0.1 click 1
until_there label 'Edge E–A'
until_says note ''
until_says job '*"front":true,"note":"looseboard"}*'
did 'Note at A–B'

# To a corner, by keys; Escape puts back what was typed.
"$UI" squab click image Seat
key Escape b
until_there label 'Corner B'
key alt+e
type_text 'a nail'
key Return
until_says seat '*; corner B chosen, note: a nail'
until_says job '*"corner_note":"anail"*'
type_text ' or two'
key Escape
until_says note 'a nail'

# Off again.
key ctrl+a BackSpace Return
until_says seat '*; corner B chosen'
[[ $(job) != *corner_note* ]] || fail 'the note is still pinned there'
key ctrl+z
until_says seat '*; corner B chosen, note: a nail'
