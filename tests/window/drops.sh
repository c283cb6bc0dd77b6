# SPDX-License-Identifier: GPL-3.0-or-later
# A file that is dragged from another program and dropped on an empty window is opened in it.
. "$STEPS"
until_there 'push button' Trapezoid
cp "$SQUAB_DATADIR/samples/bay-seat.squab" "$WORK/dropped.squab"
"$DRAG_SOURCE" "$WORK/dropped.squab" &
source=$!
trap 'kill $source' EXIT
window=$(waitwin '^Drag source$')
xdotool windowmove --sync "$window" 4 4
eval "$(xdotool getwindowgeometry --shell "$window")" # X, Y, WIDTH, HEIGHT
x=$((X + WIDTH / 2)) y=$((Y + HEIGHT * 2 / 3))
xdotool mousemove $x $y sleep 0.3 mousedown 1
for i in 1 2 3 4 5 6 7 8 9 10; do
  xdotool mousemove $((x + (700 - x) * i / 10)) $((y + (560 - y) * i / 10)) sleep 0.1
done
xdotool sleep 0.3 mouseup 1
until_says seat '5 corners, 47 by 19 in*'
until_there label 'dropped.squab · saved'
