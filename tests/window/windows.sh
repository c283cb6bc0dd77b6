# SPDX-License-Identifier: GPL-3.0-or-later
# Two windows: a file that is open is raised, not opened again; quitting asks each that has changes,
# and stops at the first Cancel.
. "$STEPS"
question='Save the changes to “Bay window”?'
windows () { xdotool search --onlyvisible --maxdepth 2 --pid "$APP_PID" 2>/dev/null | wc -l; }
until_windows ()
{
  for _ in $(seq 50); do [ "$(windows)" != "$1" ] || return 0; sleep 0.1; done
  fail "$(windows) windows, not $1"
}

"$UI" squab click image Seat
key b Right
until_says seat '5 corners, 47 1/16 by 19 in; corner B chosen'
key ctrl+n
until_windows 2
"$(readlink "/proc/$APP_PID/exe")" "$WORK/job.squab" # tells the one that runs
sleep 1
until_windows 2
[ "$(xdotool getactivewindow getwindowname)" = 'Bay window' ] || fail 'the open file was not raised'

key ctrl+q
until_there label "$question" || fail 'nothing was asked'
key Escape
sleep 0.5
windows=$(windows)
[ "$windows" -ge 1 ] || fail 'it went in spite of Cancel'
until_says seat '5 corners, 47 1/16 by 19 in; corner B chosen'
key ctrl+q
until_there label "$question"
key alt+s
for _ in $(seq 100); do alive "$APP_PID" || break; sleep 0.1; done
! alive "$APP_PID" || fail 'it did not end'
grep -q '"x": 1171.575' "$WORK/job.squab" || fail 'it was not saved'
ls "$XDG_STATE_HOME"/squab/recovery/* >/dev/null 2>&1 && fail 'something was left to recover'
exit 0
