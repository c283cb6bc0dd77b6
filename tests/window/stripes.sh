# SPDX-License-Identifier: GPL-3.0-or-later
# Stripes are dragged on the top: the boxing that must match follows; turned and centred by keys and
# menu; each is a step back.
. "$STEPS"
stripes () { key ctrl+s; sleep 0.3; tr -d ' \n' <"$WORK/job.squab" | grep -o '"stripes":{"run[^}]*}'; }
# Where the pattern is held on the top and on the first boxing, in hundredths of a millimetre.
phases ()
{
  "$SQUAB_CUT" "$WORK/job.squab" --plan - 2>/dev/null | /usr/bin/python3 -c '
import json, sys
pieces = json.load(sys.stdin)["cushions"][0]["pieces"]
print(*(round(next(p for p in pieces if p["role"] == role)["phase"]["x"] * 100)
        for role in ("face", "boxing")))'
}
undo () { "$UI" squab tree | grep -o "'Undo: [^']*'" | head -1; }

until_says stripes '"stripes":{"run":"front-to-back","centre_on":"stripe"}'
read -r top boxing < <(phases)
read -r x y width height < <("$UI" squab rect image Pieces)
# Into the top, below its edge: down a line until it is chosen.
for down in $(seq 20 4 $((height / 2))); do
  xdotool mousemove $((x + width * 2 / 5)) $((y + down)) click 1
  sleep 0.05
  [[ $(pieces) != *'; Top chosen'* ]] || break
done
xdotool mousemove_relative 0 3 sleep 0.1 mousedown 1
for _ in 1 2 3 4; do xdotool mousemove_relative -- 2 0 sleep 0.05; done
xdotool mouseup 1
until_says stripes '*"shift":*'
until_says undo "'Undo: Shift the stripes'"
read -r top_now boxing_now < <(phases)
[ "$top_now" != "$top" ] || fail 'the top has not followed'
[ $((top_now - top)) = $((boxing_now - boxing)) ] ||
  fail "top $top to $top_now, boxing $boxing to $boxing_now"
key ctrl+z
until_says stripes '"stripes":{"run":"front-to-back","centre_on":"stripe"}'

key shift+Right shift+Right
until_says stripes '*"shift":6.35}'
key ctrl+z
key t
until_says stripes '"stripes":{"run":"side-to-side","centre_on":"stripe"}'
until_says undo "'Undo: Turn the stripes'"
key ctrl+z
xdotool mousemove 4 4 # away from where the menu opens
key Menu
sleep 0.5
key Down Down Return
until_says stripes '"stripes":{"run":"front-to-back","centre_on":"gap"}'
key Menu
sleep 0.5
key Return
until_says stripes '"stripes":{"run":"side-to-side","centre_on":"gap"}'
