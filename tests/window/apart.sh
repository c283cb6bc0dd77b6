# SPDX-License-Identifier: GPL-3.0-or-later
# Two Squabs that know nothing of each other: what the living one keeps is not offered by the other.
# Everything undone, nothing is kept; done again, it is.
. "$STEPS"
kept=$XDG_STATE_HOME/squab/recovery
is_kept () { ls "$kept"/*.squab >/dev/null 2>&1; }
"$UI" squab click image Seat
key b Right Right
key c Up
after=$(pieces)
for _ in $(seq 40); do ! is_kept || break; sleep 0.1; done
is_kept || fail 'the changes were not kept'

squab=$(readlink "/proc/$APP_PID/exe")
env -u DBUS_SESSION_BUS_ADDRESS XDG_RUNTIME_DIR="$WORK" NO_AT_BRIDGE=1 GTK_A11Y=none "$squab" &
other=$!
shown () { xdotool search --onlyvisible --maxdepth 2 --pid $other 2>/dev/null | wc -l; }
for _ in $(seq 200); do [ "$(shown)" = 0 ] || break; sleep 0.1; done
sleep 2 # time enough to offer something
shown=$(shown)
[ "$shown" = 1 ] || fail "the other shows $shown windows"
kill $other
wait $other 2>/dev/null
is_kept || fail 'the other took what was kept'

xdotool windowactivate --sync "$WIN"
for _ in 1 2 3 4 5 6; do key ctrl+z; done
until_says seat '5 corners, 47 by 19 in*'
for _ in $(seq 40); do is_kept || break; sleep 0.1; done
! is_kept || fail 'all is undone, and still kept'
for _ in 1 2 3 4 5 6; do key ctrl+shift+z; done
until_says pieces "$after"
for _ in $(seq 40); do ! is_kept || break; sleep 0.1; done
is_kept || fail 'what was done again is not kept'
for _ in 1 2 3 4 5 6; do key ctrl+z; done
until_says seat '5 corners, 47 by 19 in*'
