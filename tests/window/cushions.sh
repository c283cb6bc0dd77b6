# SPDX-License-Identifier: GPL-3.0-or-later
# A cushion is copied, mirrored, moved up, another one added and taken away; all of it undone.
. "$STEPS"
cushions () { "$SQUAB_CUT" "$WORK/job.squab" --plan - 2>/dev/null | grep -c '"outlines"'; }
"$UI" squab click image Seat
key ctrl+d
key ctrl+s
sleep 0.5
until_says cushions 2
key ctrl+shift+n
until_says seat '4 corners, 18 by 18*'
key alt+Up alt+Up
key ctrl+s
sleep 0.5
until_says cushions 3
"$SQUAB_CUT" "$WORK/job.squab" --plan - 2>/dev/null | grep -m1 '"id"' | grep -q 3 ||
  fail 'the new cushion is not the first'
"$UI" squab click 'toggle button' 'Cushions menu' 2>/dev/null || "$UI" squab click 'push button' 'Cushions menu'
sleep 0.3
key Up Return
until_says seat '5 corners, 47 by 19*'
key ctrl+s
sleep 0.5
until_says cushions 2
for _ in 1 2 3 4 5 6; do key ctrl+z; done
key ctrl+s
sleep 0.5
until_says cushions 1
