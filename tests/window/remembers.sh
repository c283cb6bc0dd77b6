# SPDX-License-Identifier: GPL-3.0-or-later
# The next run has the files opened last, those that are still there, and looks as the last did.
. "$STEPS"
cp "$WORK/job.squab" "$WORK/gone.squab"
squab=$(readlink "/proc/$APP_PID/exe")
key F8 # the list of problems
key F9 # the table of sides
"$squab" "$WORK/gone.squab" # another window of the same program
waitwin 'Bay window' >/dev/null
sleep 1
"$UI" squab do 'push button' 'Menu' 2>/dev/null
key Escape
key ctrl+q
for _ in $(seq 100); do alive "$APP_PID" || break; sleep 0.1; done
! alive "$APP_PID" || fail 'it asked, though nothing was changed'
rm "$WORK/gone.squab"
grep -qx width=1240 "$XDG_STATE_HOME/squab/window.ini" || fail 'the width is not remembered'
grep -qx problems=true "$XDG_STATE_HOME/squab/window.ini" || fail 'the list of problems is not'
grep -qx sides=true "$XDG_STATE_HOME/squab/window.ini" || fail 'the table of sides is not'
sed -i 's/^width=.*/width=1101/; s/^height=.*/height=640/' "$XDG_STATE_HOME/squab/window.ini"
echo 'colours=dark' >"$WORK/more"
sed -i '/^\[window\]/r '"$WORK/more" "$XDG_STATE_HOME/squab/window.ini"

"$squab" &
again=$!
"$UI" squab wait 'push button' job.squab 20 || fail 'the recent job is not offered'
"$UI" squab rect 'push button' gone.squab 2>/dev/null && fail 'a job that is gone is offered'
read -r _ _ width _ < <("$UI" squab rect frame Squab)
[ "$width" -le 1101 ] && [ "$width" -gt 1080 ] || # it has a shadow
  fail "the window is $width wide"
"$UI" squab click 'push button' job.squab
until_says seat '5 corners, 47 by 19 in'
until_there text 'A–B, length'
kill "$again"
wait "$again" 2>/dev/null
exit 0
