# SPDX-License-Identifier: GPL-3.0-or-later
# Pieces on the roll in the hand: dragged where they may lie and pinned there, refused elsewhere, turned,
# nudged, unpinned, put back; all of it by the undo list too.
. "$STEPS"
roll () { "$UI" squab about image Roll; }

# Six pieces on a cloth striped across; the first is the top, at the cut end.
until_says roll '6 pieces; 1 yd to buy, 22 % waste; 1, Top: *; 0 – 19 7/8 from the cut end, *'
before=$(roll)
read -r x y width height < <("$UI" squab rect image Roll)
middle=$((y + height / 2))

# Held, it follows; over others it stays where there was room, and says why; Escape puts it back.
xdotool mousemove $((x + 30)) "$middle" sleep 0.1 mousedown 1
for _ in 1 2 3 4; do xdotool mousemove_relative -- 10 0 sleep 0.05; done
until_says roll '*; chosen: 1, Top: *; No room: another piece lies there'
for _ in 1 2 3 4 5 6 7 8; do xdotool mousemove_relative -- 30 0 sleep 0.05; done
until_says roll '6 pieces; [23]* yd to buy, *; chosen: 1, Top: *'
xdotool key Escape # the button stays down
until_says roll "$before; chosen: 1, Top: *"
xdotool mouseup 1
sleep 0.2
until_says roll "$before; chosen: 1, Top: *"

# Dragged to where there is room, it is pinned, and the rest is laid anew.
xdotool mousemove $((x + 30)) "$middle" sleep 0.1 mousedown 1
for _ in 1 2 3 4 5 6 7 8; do xdotool mousemove_relative -- 30 0 sleep 0.05; done
xdotool mouseup 1
did 'Move Top on the roll'
until_says roll '*; 3, Front boxing: *; 0 – 4 from the cut end*; chosen: 1, Top: *, pinned'

# Unpinned by its key, it goes back to the others; undone, it is pinned again.
key Delete
did 'Unpin Top'
until_says roll '*; chosen: 1, Top: *'
[[ $(roll) != *pinned* ]] || fail 'it is pinned still'
key ctrl+z
until_says roll '*; chosen: 1, Top: *, pinned'
key ctrl+z
until_says roll "$before*"

# By keys alone: the next piece, turned, pinned where it lies, and moved by the pattern's step.
xdotool mousemove $((x + 30)) "$middle" click 1
until_says roll '*; chosen: 1, Top: *'
key Right Right
until_says roll '*; chosen: 3, Front boxing: *'
turned=$(roll)
key p
did 'Pin Front boxing on the roll'
until_says roll '*, pinned'
key p
did 'Unpin Front boxing'
key r
did 'Move Front boxing on the roll'
until_says roll '*; chosen: 3, Front boxing: *half turn, pinned'
[ "$(roll)" != "$turned" ] || fail 'nothing was turned'
key alt+Left
until_says roll '*; chosen: 3, Front boxing: *, pinned*'
