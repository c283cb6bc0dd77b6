# SPDX-License-Identifier: GPL-3.0-or-later
# Guides say why a drag lands where it does; Ctrl lets it go where the hand is; a figure typed
# meanwhile is taken; sides never cross; arcs and roundings are pulled by their handles.
. "$STEPS"

# Keys while the pointer holds something: xdotool's --clearmodifiers would let it go.
held_keys () { xdotool key --delay 60 "$@"; sleep 0.1; }
undone () { key ctrl+z; until_says seat '5 corners, 47 by 19 in*'; }

# E is dragged to the right: D–E stays parallel to the front, and moves by the grid's steps.
hold_back_left_corner 24 3
until_says seat '*; corner E chosen; parallel to A–B*'
xdotool keydown ctrl sleep 0.2 mousemove_relative -- 3 5 sleep 0.1
until_says seat '*; corner E chosen'
xdotool keyup ctrl sleep 0.1 mousemove_relative -- -3 -5 sleep 0.1
until_says seat '*; corner E chosen; parallel to A–B*'
held_keys Escape
until_says seat '5 corners, 47 by 19 in; corner E chosen'
xdotool mouseup 1

# A figure typed meanwhile is the length of the side that the drag goes along; a slip is said.
hold_back_left_corner 40 0
held_keys 2 8 space 1 slash
until_says seat '*; D–E 28 1/ · *'
held_keys 2
until_says seat '*; D–E 28 1/2'
held_keys Return
xdotool mouseup 1
until_says seat '5 corners, 47 by 19 in; corner E chosen'
key ctrl+s
until_there 'push button' 'Undo: Move corner E'
python3 - "$WORK/job.squab" <<'PY' || fail 'the side is not as long as was typed'
import json, math, sys
d, e = json.load(open(sys.argv[1]))['cushions'][0]['outline'][3:5]
length = math.hypot(d['x'] - e['x'], d['y'] - e['y']) / 25.4
assert abs(length - 28.5) < 1e-6, length
PY
undone

# Over the other side: the drag stops, and says so.
hold_back_left_corner 200 120
until_says seat '*; sides would cross'
held_keys Escape
xdotool mouseup 1
until_says seat '5 corners, 47 by 19 in; corner E chosen'

# The middle of an edge pulls it into an arc; its figure can be typed.
key a
key Escape
read -r x y width height < <("$UI" squab rect image Seat)
front_y=$((y + height / 2 + (width - 112) * 19 / 47 / 2))
middle_x=$((x + 56 + (width - 112) * 46 / 47 / 2))
xdotool mousemove "$middle_x" $((front_y - 30)) sleep 0.1 mousemove "$middle_x" "$front_y" sleep 0.2 mousedown 1
for _ in 1 2 3 4 5; do xdotool mousemove_relative -- 0 6 sleep 0.05; done
held_keys 1 period 2 5
until_says seat '*; Rise 1.25'
held_keys Return
xdotool mouseup 1
until_there 'push button' 'Undo: Rise of side A–B'
until_says seat '5 corners, 47 by 20* in; edge A–B* chosen'
undone

# The handle inside a corner rounds it.
key e
until_says seat '*; corner E chosen'
read -r x y width height < <("$UI" squab rect image Seat)
corner_x=$((x + 56)) corner_y=$((y + height / 2 - (width - 112) * 19 / 47 / 2))
xdotool mousemove $((corner_x + 18)) $((corner_y + 18)) sleep 0.2 mousedown 1
for _ in 1 2 3 4 5; do xdotool mousemove_relative -- 4 4 sleep 0.05; done
held_keys 3
until_says seat '*; Radius 3'
held_keys Return
xdotool mouseup 1
until_there 'push button' 'Undo: Round corner E'
undone
