# SPDX-License-Identifier: GPL-3.0-or-later
# Where people read from right to left the window is the other way round, but the seat is not: its
# left side stays at the left, on the start page and on its sheet, and figures read as ever.
. "$STEPS"

# GTK turns round where its own translation says so.
[ -e /usr/share/locale/ar/LC_MESSAGES/gtk40.mo ] || exit 77

left_of () # ROLE NAME ROLE NAME: whether the first is to the left of the second
{
  local a b _
  read -r a _ < <("$UI" squab rect "$1" "$2")
  read -r b _ < <("$UI" squab rect "$3" "$4")
  [ "$a" -lt "$b" ]
}

sleep 0.5
left_of 'push button' Menu label Open || fail 'the head is not turned round'
left_of 'push button' 'Left: Free' 'push button' 'Right: Free' || fail 'the sides are turned round'
left_of text Width label Width || fail 'the fields are not turned round'
key Return
until_says seat '4 corners*'
left_of image Pieces image Seat || fail 'the panes are not turned round'

# The right side is taken by its middle and dragged to the right: the seat gets wider.
read -r x y width height < <("$UI" squab rect image Seat)
before=$(seat)
xdotool mousemove $((x + width - 56)) $((y + height / 2 - 40)) sleep 0.2 mousedown 1
for _ in 1 2 3 4 5; do xdotool mousemove_relative -- 8 0 sleep 0.05; done
xdotool mouseup 1
until_there 'push button' 'Undo: Move edge B–C'
[ "$(seat)" != "$before" ] || fail 'the side did not move'
key ctrl+z
