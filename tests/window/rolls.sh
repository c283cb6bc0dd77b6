# SPDX-License-Identifier: GPL-3.0-or-later
# The roll below seat and pieces: it shows every piece of a cloth and what to buy, follows edits,
# chooses and is chosen on, is folded, and keeps a lay that then goes out of date.
. "$STEPS"
roll () { "$UI" squab about image Roll; }
bought () { "$UI" squab tree | sed -n "s/.*label '\([^']*to buy, [^']*waste\)'.*/\1/p" | head -1; }

# Six pieces of the striped cloth, with their places.
until_says roll '6 pieces; 1 yd to buy, 22 % waste; 1, Top: 47 7/8 × 19 7/8; * from the cut end, * from the near edge, upright; 2, *; 6, Lower zip strip: *'
until_says bought '1 yd to buy, 22 % waste'

# Wider by the seat's back left corner: the roll follows.
before=$(roll)
drag_back_left_corner 0 -40
for _ in $(seq 50); do [ "$(roll)" = "$before" ] || break; sleep 0.1; done
[ "$(roll)" != "$before" ] || fail 'the roll has not followed'
key ctrl+z
until_says roll "$before"

# Chosen there it is chosen on the pieces, and the arrows go on.
read -r x y width height < <("$UI" squab rect image Roll)
xdotool mousemove $((x + 30)) $((y + height / 2)) click 1
until_says pieces '*; Top chosen*'
until_says roll '*; chosen: 1, Top: *'
key Right
until_says roll '*; chosen: 2, *'
until_says pieces '*; Left boxing chosen*'

# Folded away, and there again.
key F7
until_gone image Roll
until_says bought '1 yd to buy, 22 % waste'
key F7
until_there image Roll

# Kept; an edit makes it out of date; what was kept can be seen, and let go.
"$UI" squab click 'push button' 'Keep this lay'
did 'Keep the lay'
drag_back_left_corner 0 -40
until_there label 'The lay kept for revision A is out of date: pieces have changed.'
"$UI" squab click 'push button' 'Show it'
"$UI" squab click 'push button' 'Let it go'
did 'Let the kept lay go'
until_gone label 'The lay kept for revision A is out of date: pieces have changed.'
key ctrl+z ctrl+z
until_gone label 'The lay kept for revision A is out of date: pieces have changed.'
key ctrl+s
sleep 0.5
grep -q '"kept_lays"' "$WORK/job.squab" || fail 'the kept lay is not in the file'
