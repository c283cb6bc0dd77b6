# SPDX-License-Identifier: GPL-3.0-or-later
# What is on the screen after a drag, a zoom and a pan is what a window painted anew shows.
. "$STEPS"

# The middle of the window, without the head, where the focus may show.
picture ()
{
  local x y width height
  settle
  read -r x y width height < <("$UI" squab rect image Seat)
  import -silent -window root -crop "$((width + 400))x${height}+${x}+${y}" +repage "rgb:$1"
}

# The same but for the last shade where Cairo's clip of many rectangles meets a slanting line.
same ()
{
  cmp -s "$1" "$2" || python3 -c '
import sys
a, b = (open(path, "rb").read() for path in sys.argv[1:])
sys.exit(len(a) != len(b) or max(abs(x - y) for x, y in zip(a, b)) > 12)' "$1" "$2"
}

# Painted part by part, and as a whole.
compare ()
{
  sleep 1.5 # a program that is watched over by sanitizers acts slowly
  picture "$WORK/parts"
  xdotool windowunmap --sync "$WIN" windowmap --sync "$WIN" windowfocus "$WIN"
  for _ in 1 2 3 4 5 6; do
    sleep 0.4
    picture "$WORK/whole"
    ! same "$WORK/parts" "$WORK/whole" || return 0
  done
  fail "$1: not as painted anew"
}

drag_back_left_corner 24 -40
compare 'after a drag'
before=$WORK/before
cp "$WORK/whole" "$before"
read -r x y width height < <("$UI" squab rect image Seat)
xdotool mousemove $((x + width / 2)) $((y + height / 2)) keydown ctrl click 4 click 4 keyup ctrl
compare 'zoomed'
! cmp -s "$WORK/whole" "$before" || fail 'the wheel did not zoom'
xdotool click 5 click 5
compare 'panned'
# Fitted, pieces may stand otherwise than before: only that the view changes is sure.
cp "$WORK/whole" "$before"
key ctrl+0
sleep 1.5
picture "$WORK/whole"
! cmp -s "$WORK/whole" "$before" || fail 'the key did not fit'
