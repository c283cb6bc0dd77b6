# SPDX-License-Identifier: GPL-3.0-or-later
# The standard errand: from an empty window to a five-cornered seat for a bay from typed sides and
# angles, 3 in thick, boxed, in striped cloth that runs front to back, the zip at the back, saved.
# That it is boxed, runs so and has its zip there is what the rules choose: it is looked at, not typed.
# Each click, each key and each figure with its Enter counts one; 40 are allowed. With
# SQUAB_PICTURES, a folder, every third step is kept there as a picture.
. "$STEPS"
inputs=0

counted ()
{
  inputs=$((inputs + 1))
  "$@"
  [ -z "${SQUAB_PICTURES-}" ] || [ $((inputs % 3)) -ne 0 ] || {
    sleep 0.3
    shot "$SQUAB_PICTURES/errand-$(printf %02d $inputs).png"
  }
}
figure () { type_text "$1"; key Return; }
click () { "$UI" squab click "$1" "$2"; }

counted click 'page tab' 'From its sides'
"$UI" squab wait text 'Side A–B'
for typed in '46 in' 90 '12 in' 135 '10 in' 135 '38 in'; do
  counted figure "$typed"
done
"$UI" squab wait text 'Closing side E–A'

counted click 'combo box' Cloth
"$UI" squab wait label 'Harbour stripe'
counted key Down
counted key Return
counted click text 'Side E–F' # left empty it closes the seat, and its thickness comes next
counted key Return
counted figure '3 in'
until_says seat '5 corners, 1168 by 484 mm*'

counted key ctrl+s
waitwin 'Save the job' >/dev/null
key ctrl+a
counted figure "$WORK/errand.squab"
for _ in $(seq 50); do [ ! -s "$WORK/errand.squab" ] || break; sleep 0.1; done

"$SQUAB_CUT" --plan "$WORK/plan.json" "$WORK/errand.squab" >/dev/null || fail 'it has faults'
python3 - "$WORK/errand.squab" "$WORK/plan.json" <<'PY' || fail 'another cushion was saved'
import json, sys
job, plan = (json.load(open(path)) for path in sys.argv[1:])
cushion, = job['cushions']
assert len(cushion['outline']) == 5
assert abs(cushion['thickness'] - 76.2) < 1e-9 and cushion['build'] == 'boxed'
cloth, = job['cloths']
assert len(cloth['stripes']) >= 2 and 'face' not in cushion.get('cloth', {})
assert cushion.get('stripes', {}).get('run', 'front-to-back') == 'front-to-back'
zip = plan['cushions'][0]['zip']
assert zip['place'] == 'boxing' and zip['edge'] == cushion['outline'][3]['id'], zip
PY
echo "errand: $inputs inputs"
[ $inputs -le 40 ] || fail "$inputs inputs are more than 40"
