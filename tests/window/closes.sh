# SPDX-License-Identifier: GPL-3.0-or-later
# A change is asked about before its window closes; Cancel keeps it open.
. "$STEPS"
question='Save the changes to “Bay window”?'
"$UI" squab click image Seat
key b Right
until_says seat '5 corners, 47 1/16 by 19 in; corner B chosen'
key ctrl+w
"$UI" squab wait label "$question" || fail 'nothing was asked'
key Escape
until_says seat '5 corners, 47 1/16 by 19 in; corner B chosen'
key ctrl+w
"$UI" squab wait label "$question"
key alt+w
for _ in $(seq 100); do alive "$APP_PID" || exit 0; sleep 0.1; done
fail 'it did not end'
