# SPDX-License-Identifier: GPL-3.0-or-later
# Killed in mid-edit: what was changed is kept, offered, opened and saved; then nothing is left.
. "$STEPS"
kept=$XDG_STATE_HOME/squab/recovery
before=$(pieces)
drag_back_left_corner -24 -16
after=$(pieces)
[ "$before" != "$after" ] || fail 'the drag changed nothing'
for _ in $(seq 40); do ls "$kept"/*.squab >/dev/null 2>&1 && break; sleep 0.1; done
ls "$kept"/*.squab >/dev/null 2>&1 || fail 'the change was not kept'
sleep 0.3
squab=$(readlink "/proc/$APP_PID/exe")
kill -KILL "$APP_PID" || fail 'nothing to kill'
sleep 1 # until the bus knows that it is gone

"$squab" &
again=$!
"$UI" squab wait label 'Open them' 20
key Return
until_says pieces "$after"
for _ in $(seq 40); do ls "$kept"/*.squab >/dev/null 2>&1 && break; sleep 0.1; done
ls "$kept"/*.squab >/dev/null 2>&1 || fail 'what was opened is not kept any more'
key ctrl+s
sleep 1
"$SQUAB_CUT" "$WORK/job.squab" --plan "$WORK/plan.json" 2>/dev/null
grep -q '"pieces"' "$WORK/plan.json" || fail 'the saved job makes no plan'
grep -q '"x": 0, "y": 482.6' "$WORK/job.squab" && fail 'it was not saved to its file'
! ls "$kept"/*.squab >/dev/null 2>&1 || fail 'saved, it is still kept'
kill "$again"
