# SPDX-License-Identifier: GPL-3.0-or-later
# Figures on the sheet are fields: a click or Return opens one, Enter takes it, Escape puts it back,
# Tab walks round the seat, the end that stays can be swapped, and what can't be read is said.
. "$STEPS"

# The saved corners by their letters, in inches: an expression that must hold.
saved ()
{
  key ctrl+s
  sleep 0.3
  python3 - "$WORK/job.squab" "$1" <<'PY' || fail "not so: $1"
import json, sys
outline = json.load(open(sys.argv[1]))['cushions'][0]['outline']
a, b, c, d, e = ((round(q['x'] / 25.4, 3), round(q['y'] / 25.4, 3)) for q in outline)
assert eval(sys.argv[2]), (a, b, c, d, e)
PY
}

# A click on the front's figure, below the middle of the front.
read -r x y width height < <("$UI" squab rect image Seat)
scale=$(((width - 112) * 100 / 47))
front_y=$((y + height / 2 + scale * 19 / 200)) middle_x=$((x + 56 + scale * 23 / 100))
xdotool mousemove "$middle_x" $((front_y + 13)) sleep 0.2 click 1
until_there text 'Length of side A–B'
type_text '48 1/2'
key Return
until_there 'push button' 'Undo: Length of side A–B'
saved 'a == (0, 0) and b[0] == 48.5'
key ctrl+z

# From the keyboard: Return on a corner opens its angle, Tab goes on to the next side; nonsense is
# said and keeps the figure.
key a Return
until_there text 'Angle at corner A'
key shift+Tab
until_there text 'Length of side E–A'
key Tab Tab
until_there text 'Length of side A–B'
type_text '4x'
key Return
until_there label 'Not a length. Type it as 18 1/2, 46.5 cm or 36 - 2*1/2.'
key Escape
saved 'a == (0, 0) and b[0] == 46'

# The other end stays: A moves, not B.
key a Return
until_there text 'Angle at corner A'
key Tab
until_there text 'Length of side A–B'
until_there 'push button' 'A stays'
key ctrl+e
until_there 'push button' 'B stays'
type_text '45'
key Return
until_there 'push button' 'Undo: Length of side A–B'
saved 'a[0] == 1 and b[0] == 46'
key ctrl+z

# All the way round by Tab: as many figures as the seat has.
key a Return
until_there text 'Angle at corner A'
walked=
for _ in $(seq 14); do
  key Tab
  name=$("$UI" squab tree | sed -n "/SqSeatField/,/push button/s/.*text '\([^']*\)'.*/\1/p")
  walked="$walked$name; "
  [ "$name" != 'Angle at corner A' ] || break
done
for figure in 'side A–B' 'side B–C' 'side C–D' 'side D–E' 'side E–A' 'corner B' 'corner C' 'corner D' 'corner E'; do
  [[ $walked == *"$figure; "* ]] || fail "Tab came by $walked"
done
