# SPDX-License-Identifier: GPL-3.0-or-later
# A figure on the seat is clicked and becomes a field: typed over, put back, kept from nonsense, the
# end that stays swapped, and all of the seat gone round by Tab alone.
. "$STEPS"
saved () { grep -o "\"id\": $1, \"x\": [-0-9.]*, \"y\": [-0-9.]*" "$WORK/job.squab"; }
entry () { "$UI" squab text text "$1"; }
side () { entry 'Length of side A–B'; }

# The front's length stands below the middle of the front.
read -r x y width height < <("$UI" squab rect image Seat)
front=$((y + height / 2 + (width - 2 * 56) * 19 / 47 / 2))
xdotool mousemove $((x + 56 + (width - 2 * 56) * 23 / 47)) $((front + 14)) sleep 0.1 click 1
until_there text 'Length of side A–B'
until_there label 'Edge A–B'
until_says side '46'

# A typed length is one step; B moves, A stays.
type_text '45 1/2'
key Return
until_says seat '*46 1/2 by 19*edge A–B*chosen'
until_there 'push button' 'Undo: Length of side A–B'
key ctrl+s
until_saved () { saved 2; }
until_says until_saved '*"x": 1155.7, "y": 0'
saved 1 | grep -q '"x": 0, "y": 0' || fail 'A did not stay'
key ctrl+z
until_says seat '*47 by 19*'

# Enter opens the chosen edge's again; with the other end staying A moves.
key Return
until_there text 'Length of side A–B'
until_there 'push button' 'A stays'
key ctrl+e
until_there 'push button' 'B stays'
key ctrl+a
type_text '45.5 in'
key Return
until_says seat '*46 1/2 by 19*'
key ctrl+s
moved () { saved 1; }
until_says moved '*"x": 12.7*"y": 0'
saved 2 | grep -q '"x": 1168.4, "y": 0' || fail 'B did not stay'
key ctrl+z

# Escape puts back. A digit begins a field of its own.
key 4
until_there text 'Length of side A–B'
until_says side '4'
key Escape
until_says seat '*47 by 19*edge A–B*chosen'

# Nonsense stays out, the field open, and it is said why.
key 0 Return
until_there label 'It has to be more than nothing.'
until_says seat '*47 by 19*'
key ctrl+a
type_text 'wide'
key Return
until_there label 'Not a length. Type it as 18 1/2, 46.5 cm or 36 - 2*1/2.'
until_says seat '*47 by 19*'
key Escape

# Round the seat: every length, rise, angle and radius, and back where it began.
key Return
for name in 'Length of side A–B' 'Angle at corner B' 'Radius of corner B' 'Length of side B–C' \
  'Rise of side B–C' 'Angle at corner C' 'Length of side C–D' 'Angle at corner D' \
  'Length of side D–E' 'Angle at corner E' 'Length of side E–A' 'Angle at corner A'
do
  until_there text "$name"
  key Tab
done
until_there text 'Length of side A–B'
key shift+Tab
until_there text 'Angle at corner A'
until_says seat '*corner A chosen'

# An angle is taken by Tab; corner E keeps its place, as the side before it does.
key shift+Tab shift+Tab
until_there text 'Angle at corner E'
type_text '88'
key Tab
until_there text 'Length of side E–A'
until_says seat '*edge E–A*chosen'
key Escape ctrl+s
moved () { saved 5; }
until_says moved '*"x": 0, "y": 482.6'
saved 1 | grep -q '"x": 0, "y": 0' && fail 'the side after E did not turn'
true

# It stays at its side while the sheet is zoomed, with what is typed; the mouse swaps the end too.
key ctrl+z Return Tab Tab
until_there text 'Length of side A–B'
type_text '7'
place () { "$UI" squab rect text 'Length of side A–B'; }
before=$(place)
key ctrl+plus
moved () { [ "$(place)" != "$before" ] && echo moved; }
until_says moved moved
[ "$(entry 'Length of side A–B')" = 7 ] || fail 'zooming took what was typed'
"$UI" squab click 'push button' 'A stays'
until_there 'push button' 'B stays'
key Escape ctrl+0

# It goes with what it measures: a corner that is undone.
key Insert Return
until_there text 'Angle at corner B'
key ctrl+z
until_says seat '5 corners*'
! "$UI" squab wait text 'Angle at corner B' 1 2>/dev/null || fail 'the field outlives its corner'
