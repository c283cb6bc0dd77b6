# SPDX-License-Identifier: GPL-3.0-or-later
# Better lays are looked for by themselves while nothing is done; that is told, stopped, gone on with, and
# never done with a kept lay.
. "$STEPS"
searching () { "$UI" squab tree | sed -n "s/.*label '\([^']* % full[^']*\)'.*/\1/p" | head -1; }

until_says searching '* % full, looking… * s'
"$UI" squab click 'push button' 'Stop'
until_there 'push button' 'Continue'
until_says searching '*laid, *[0-9] % full'

# An edit begins anew, after a while.
drag_back_left_corner 0 -40
until_gone 'push button' 'Continue'
until_says searching '*looking… * s'
"$UI" squab click 'push button' 'Stop'
until_there 'push button' 'Continue'
"$UI" squab click 'push button' 'Continue'
until_says searching '*looking… * s'

# Kept, nothing is looked for, however long nothing is done.
"$UI" squab click 'push button' 'Keep this lay'
did 'Keep the lay'
sleep 2
[[ $(searching) != *looking* ]] || fail 'a kept lay is searched over'
