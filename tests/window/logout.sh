# SPDX-License-Identifier: GPL-3.0-or-later
# The session is held up as long as there are changes that are not saved, and not beyond that. Where
# it ends all the same, the program says so be it, ends well, and what was changed is not lost.
. "$STEPS"
calls () { paste -sd ';' "$WORK/calls"; }
held='held A job has changes that are not saved 1'
: >> "$WORK/calls"
"$UI" squab click image Seat
key b Right Right
until_says calls "$held"
key ctrl+z
until_says calls "$held;let go"
key Right
until_says calls "$held;let go;$held"
key ctrl+s
until_says calls "$held;let go;$held;let go"

key Right
until_says calls "$held;let go;$held;let go;$held"
kill -USR1 "$(cat "$WORK/session")"
until_says calls '*;may end*'
for _ in $(seq 100); do alive "$APP_PID" || break; sleep 0.1; done
! alive "$APP_PID" || fail 'it did not end with its session'
find "$XDG_STATE_HOME/squab" -name '*.squab' | grep -q . || fail 'what was changed is lost'
