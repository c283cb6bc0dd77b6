# SPDX-License-Identifier: GPL-3.0-or-later
# Some three hundred keys, clicks and drags by chance, the same each time (SQUAB_MONKEY: others): the
# window lives through them without a critical, and what can be undone leads back to the first job.
. "$STEPS"
"$SQUAB_CUT" --save "$WORK/first.squab" "$WORK/job.squab"
read -r x y width height < <("$UI" squab rect frame '*')
read -r left top wide high < <("$UI" squab rect image Seat)

# Below the head, where nothing closes it.
python3 "$(dirname "$UI")/monkey.py" "${SQUAB_MONKEYS-300}" "${SQUAB_MONKEY-7}" "$x" $((y + 50)) \
  "$width" $((height - 50)) "$left" "$top" $((left + wide)) $((top + high)) > "$WORK/inputs"
while read -r -u 9 input; do
  kill -0 "$APP_PID" 2>/dev/null || fail "it ended before: $input"
  bash -c "$input" 9<&- || fail "$input"
done 9< "$WORK/inputs"
key Escape Escape Escape Escape
kill -0 "$APP_PID" || fail 'it ended'
"$UI" squab wait image Seat 10

"$UI" squab click image Seat
key Escape ctrl+s
until_there label 'job.squab · saved'
"$SQUAB_CUT" --plan - "$WORK/job.squab" >/dev/null 2>"$WORK/said"
[ $? -le 1 ] || fail "what it saved cannot be read: $(cat "$WORK/said")" # 1: a seat with faults
for _ in $(seq 40); do
  ! "$UI" squab wait 'push button' Undo 0 2>/dev/null || break
  key ctrl+z ctrl+z ctrl+z ctrl+z ctrl+z ctrl+z
done
"$UI" squab wait 'push button' Undo || fail 'there is no end to what can be undone'
key ctrl+s
for _ in $(seq 50); do
  ! cmp -s "$WORK/job.squab" "$WORK/first.squab" || exit 0
  sleep 0.1
done
diff "$WORK/first.squab" "$WORK/job.squab"
fail 'undone, it is another job'
