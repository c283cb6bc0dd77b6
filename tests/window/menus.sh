# SPDX-License-Identifier: GPL-3.0-or-later
# The seat's menu: an edge straight, an arc or a free curve with two handles, the front elsewhere,
# what stands there; a corner away; all by the keyboard.
. "$STEPS"

saved () { key ctrl+s; sleep 0.3; python3 - "$WORK/job.squab" "$1" <<'PY'
import json, sys
outline = json.load(open(sys.argv[1]))['cushions'][0]['outline']
a, b, c, d, e = outline if len(outline) == 5 else outline + [None]
assert eval(sys.argv[2]), outline
PY
}

# Opens the menu by the key, and takes what the other keys lead to.
menu ()
{
  local opens=$1
  shift
  key "$opens"
  until_there 'menu item' "$1"
  shift
  key "$@"
}

choose_front () # by its middle
{
  local x y width height
  read -r x y width height < <("$UI" squab rect image Seat)
  xdotool mousemove $((x + 56 + (width - 112) / 3)) $((y + height / 2 + (width - 112) * 19 / 47 / 2)) sleep 0.1 click 1
  until_says seat '*; edge A–B* chosen'
}

choose_front
menu shift+F10 'Free curve' c
until_there 'push button' 'Undo: Free curve A–B'
saved '"curve" in a' || fail 'the front is no free curve'

# One of its handles is pulled outward.
read -r x y width height < <("$UI" squab rect image Seat)
xdotool mousemove $((x + 56 + (width - 112) * 46 / 47 / 3)) $((y + height / 2 + (width - 112) * 19 / 47 / 2)) sleep 0.2 mousedown 1
for _ in 1 2 3 4 5; do xdotool mousemove_relative -- 0 8 sleep 0.05; done
xdotool mouseup 1
until_there 'push button' 'Undo: Bend edge A–B'
until_says seat '5 corners, 47 by 2[0-9]*'
key ctrl+z
until_there 'push button' 'Undo: Free curve A–B'

menu Menu Arc a
until_there 'push button' 'Undo: Arc A–B'
saved 'a.get("bow", 0) > 0' || fail 'the front is no arc'
menu Menu Straight s
until_there 'push button' 'Undo: Straight edge A–B'
saved '"bow" not in a and "curve" not in a' || fail 'the front is not straight'

# What stands there: the second of the kinds is a wall.
menu shift+F10 'What stands there' d
until_there 'menu item' 'Wall'
key Down Down Return
until_there 'push button' 'Undo: What stands at A–B'
saved 'a["kind"] == "wall"' || fail 'no wall at A–B'

key d
menu Menu 'Remove corner' r
until_says seat '4 corners*'
key ctrl+z
until_says seat '5 corners*'
