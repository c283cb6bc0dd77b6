# SPDX-License-Identifier: GPL-3.0-or-later
# From an empty window: sides and angles typed down with a tape in the hand make a seat for a bay, in
# striped cloth, saved under a name. Every click, and every figure with its Enter, counts one.
. "$STEPS"
inputs=0
counted () { inputs=$((inputs + 1)); "$@"; }
figure () { type_text "$1"; key Return; }

counted "$UI" squab click 'page tab' 'From its sides'
"$UI" squab wait text 'Side A–B'
counted figure '46 in'
counted figure 90

# Nonsense is said at its field.
type_text '12 in x'
"$UI" squab wait label 'Not a length. Type it as 18 1/2, 46.5 cm or 36 - 2*1/2.'
[ "$("$UI" squab about text 'Side B–C')" != '' ] || fail 'the field does not say what is wrong'
key ctrl+a
counted figure '12 in'
counted figure 135
counted figure '10 in'
counted figure 135
counted figure '38 in'
"$UI" squab wait text 'Closing side E–A'

# The side that closes was taped too, and is too long.
"$UI" squab click text 'Closing side E–A'
type_text '20 in'
"$UI" squab wait label 'It doesn’t close: this side was taped 23 mm too long.'
key ctrl+a
type_text '485 mm'
[ "$("$UI" squab about text 'Closing side E–A')" = '' ] || fail 'it still does not close'
"$UI" squab wait label 'Closes with 485 mm, angles 92.8° at E and 87.2° at A.'

# An empty side closes the seat, and its thickness comes next.
"$UI" squab click text 'Side E–F'
counted key Return
counted "$UI" squab click 'push button' 'Back: Free'
counted "$UI" squab click 'combo box' Cloth
sleep 0.3
counted key Down Return
"$UI" squab wait label 'Harbour stripe'
"$UI" squab click text 'Side E–F'
key Return
key ctrl+a
counted figure '3 in'
until_says seat '5 corners, 1168 by 484 mm*'

counted key ctrl+s
waitwin 'Save the job' >/dev/null
key ctrl+a
counted figure "$WORK/taped.squab"
for _ in $(seq 30); do [ ! -s "$WORK/taped.squab" ] || break; sleep 0.1; done
for wanted in '"thickness": 76.' '"build": "boxed"' '"kind": "wall"' '"name": "Harbour stripe"'; do
  grep -q "$wanted" "$WORK/taped.squab" || fail "$wanted was not saved"
done
"$SQUAB_CUT" --plan "$WORK/plan.json" "$WORK/taped.squab" >/dev/null || fail 'the plan has faults'
[ $inputs -le 40 ] || fail "$inputs inputs"

# Another cushion beside it, a triangle: of its cloth, in one step.
"$UI" squab click image Seat
key ctrl+t
waitwin 'A cushion from its sides' >/dev/null
figure '20 in'
figure 60
figure '20 in'
key Return Return
key ctrl+a
figure '2 in'
until_says seat '3 corners, 508 by 440 mm*'
key ctrl+s
for _ in $(seq 30); do ! grep -q '"thickness": 50.8' "$WORK/taped.squab" || break; sleep 0.1; done
[ "$(grep -c '"build": "boxed"' "$WORK/taped.squab")" = 2 ] || fail 'the second one was not saved'
key ctrl+z
until_says seat '5 corners, 1168 by 484 mm*'

# Sides that would cross are told of before anything is made; Escape gives up.
key ctrl+t
waitwin 'A cushion from its sides' >/dev/null
figure '20 in'
figure 90
figure '5 in'
figure 30
type_text '40 in'
"$UI" squab wait label 'Sides would cross.'
key Escape
until_says seat '5 corners, 1168 by 484 mm*'
