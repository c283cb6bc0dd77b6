# SPDX-License-Identifier: GPL-3.0-or-later
# Flaws of the cloth: marked by dragging, laid around, moved, removed; and in the file.
. "$STEPS"
roll () { "$UI" squab about image Roll; }

until_says roll '6 pieces; 1 yd to buy, 22 % waste; 1, Top: *; 0 – 19 7/8 from the cut end, *'
before=$(roll)
read -r x y width height < <("$UI" squab rect image Roll)
middle=$((y + height / 2))

# Over the top, by the key and by the hand: everything goes on behind it.
xdotool mousemove $((x + width - 20)) "$middle" click 1
key f
xdotool mousemove $((x + 20)) "$middle" sleep 0.1 mousedown 1
for _ in 1 2 3 4 5; do xdotool mousemove_relative -- 4 4 sleep 0.05; done
xdotool mouseup 1
did 'Mark a flaw'
for _ in $(seq 50); do [ "$(roll)" = "$before" ] || break; sleep 0.1; done
until_says roll '6 pieces; *1, Top: *; [1-9]* from the cut end, *'
marked=$(roll)

# Another slip of the hand marks nothing; Escape puts the tool away.
key f
key Escape
xdotool mousemove $((x + width - 20)) "$middle" click 1
until_says roll "$marked"

# Moved by hand to behind all pieces of the lay, and undone.
xdotool mousemove $((x + 30)) $((middle + 10)) sleep 0.1 mousedown 1
for _ in 1 2 3 4 5 6; do xdotool mousemove_relative -- 10 0 sleep 0.05; done
xdotool mouseup 1
did 'Move a flaw'
key ctrl+z
until_says roll "$marked"

# In the file, and removed by its key.
key ctrl+s
sleep 0.5
grep -q '"flaws"' "$WORK/job.squab" || fail 'the flaw is not in the file'
xdotool mousemove $((x + 30)) $((middle + 10)) click 1
key Delete
did 'Remove a flaw'
until_says roll "$before"
