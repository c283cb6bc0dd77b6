# SPDX-License-Identifier: GPL-3.0-or-later
# What the scripts beside this one share. Lengths are in inches, as the sample has them.

seat () { "$UI" squab about image Seat; }
pieces () { "$UI" squab about image Pieces; }

# until COMMAND WANTED: waits a little for what COMMAND says to match the pattern.
until_says ()
{
  local said
  for _ in $(seq 20); do
    said=$($1)
    # shellcheck disable=SC2053
    [[ $said != $2 ]] || return 0
    sleep 0.1
  done
  fail "$1 says '$said', not '$2'"
}

# until_there ROLE NAME: the same for a widget. Once more, as libatspi may fall over what goes while
# it looks.
until_there ()
{
  "$UI" squab wait "$1" "$2" 15 2>/dev/null || "$UI" squab wait "$1" "$2" || fail "no $1 '$2'"
}

# until_gone ROLE NAME: until it isn't there any more.
until_gone ()
{
  for _ in $(seq 20); do
    "$UI" squab wait "$1" "$2" 0 2>/dev/null || return 0
    sleep 0.1
  done
  fail "$1 '$2' is still there"
}

# did WORDS: until they are what can be undone.
did () { until_there 'push button' "Undo: $1"; }

# Takes the seat's back left corner, E, and drags it by so many pixels, still held. A fitted seat
# has the same margin left and right, and stands in the middle.
hold_back_left_corner ()
{
  local x y width height margin=56
  read -r x y width height < <("$UI" squab rect image Seat)
  x=$((x + margin))
  y=$((y + height / 2 - (width - 2 * margin) * 19 / 47 / 2))
  xdotool mousemove "$x" "$y" sleep 0.1 mousedown 1
  for _ in 1 2 3 4 5 6 7 8; do
    xdotool mousemove_relative -- $(($1 / 8)) $(($2 / 8)) sleep 0.03
  done
}

# The same, and lets go.
drag_back_left_corner ()
{
  hold_back_left_corner "$1" "$2"
  xdotool mouseup 1
  sleep 0.2
}
