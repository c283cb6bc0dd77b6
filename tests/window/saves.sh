# SPDX-License-Identifier: GPL-3.0-or-later
# What was dragged is in the file after saving, and the program ends well.
. "$STEPS"
cp "$WORK/job.squab" "$WORK/before.squab"
drag_back_left_corner 0 -40
cmp "$WORK/job.squab" "$WORK/before.squab" || fail 'written without being asked'
key ctrl+s
for _ in $(seq 30); do
  cmp -s "$WORK/job.squab" "$WORK/before.squab" || break
  sleep 0.1
done
! cmp -s "$WORK/job.squab" "$WORK/before.squab" || fail 'nothing was saved'
size=$(pieces | sed 's/.*; Top \([^,]*\) × \([^,]*\),.*/\1  \2/; s,⁄,/,g')
"$SQUAB_CUT" "$WORK/job.squab" 2>/dev/null | grep -F ' Top ' | grep -qF "$size" ||
  fail "the cut list of what was saved has no top of $size"
key ctrl+q
for _ in $(seq 50); do alive "$APP_PID" || exit 0; sleep 0.1; done
fail 'it did not end'
