# SPDX-License-Identifier: GPL-3.0-or-later
# The zip is dragged along its edge on the seat, pulled by its end, put on another edge; each is one
# step back. The pieces' menu puts it on a seam's edge, by the keyboard.
. "$STEPS"
zip () { key ctrl+s; sleep 0.3; tr -d ' \n' <"$WORK/job.squab" | grep -o '"zip":{[^}]*}' || echo none; }
plan () { "$SQUAB_CUT" "$WORK/job.squab" --plan - 2>/dev/null | grep -A8 '"zip": {'; }
undo () { "$UI" squab tree | grep -o "'Undo: [^']*'" | head -1; }

# A fitted seat has the same margin left and right, and stands in the middle.
read -r x y width height < <("$UI" squab rect image Seat)
left=$((x + 56)) middle=$((x + width / 2))
back=$((y + height / 2 - (width - 2 * 56) * 19 / 47 / 2))

# From, by: the pointer in steps.
pull ()
{
  xdotool mousemove "$1" "$2" sleep 0.2 mousedown 1
  for _ in 1 2 3 4 5 6 7 8; do xdotool mousemove_relative -- $(($3 / 8)) $(($4 / 8)) sleep 0.03; done
  xdotool mouseup 1
  sleep 0.2
}

pull "$middle" $((back + 9)) 56 0
until_says zip '"zip":{"edge":4,"from":-*,"to":*}'
until_says undo "'Undo: Move the zip'"
key ctrl+z
until_says zip none

pull $((left + 22)) $((back + 8)) 64 0
until_says zip '"zip":{"edge":4,"from":-*,"to":[0-9]*}'
key ctrl+z
pull "$middle" $((back + 9)) -160 40
until_says zip '"zip":{"edge":5}'
plan | grep -q '"edge": 5' || fail 'the plan has the zip elsewhere'
key ctrl+z
until_says zip none

# Put back while it is held.
xdotool mousemove "$middle" $((back + 9)) sleep 0.2 mousedown 1 mousemove_relative 24 0 sleep 0.1 \
  mousemove_relative 24 0 sleep 0.1
xdotool key Escape
xdotool mouseup 1
until_says zip none

"$UI" squab click image Pieces
xdotool mousemove 4 4 # away from where the menu opens
key Escape n n n n n n n n
until_says pieces '*seam: Top, edge E–A (left), *'
key shift+F10
sleep 0.5
key Down Down Down Down Return
until_says zip '"zip":{"place":"boxing","edge":5}'
