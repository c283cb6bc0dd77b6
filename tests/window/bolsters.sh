# SPDX-License-Identifier: GPL-3.0-or-later
# A job of bolsters that nothing is drawn for: its plan is shown, its figures change it, and what of
# the seat is for drawings does nothing. Other ways of building can't be made of it, and say so.
. "$STEPS"
job () { key ctrl+s; sleep 0.3; tr -d " \n" <"$WORK/job.squab"; }
typed () { key ctrl+a; type_text "$1"; key Return; }

until_says seat 'from above, 36 by 8 in'
until_says pieces '3 pieces; *'
"$UI" squab click image Seat
key Tab Tab Delete Escape h m ctrl+shift+m
until_gone 'push button' 'Left half'
key ctrl+shift+m
until_says seat 'from above, 36 by 8 in'
"$UI" squab click text Diameter
typed 10
did 'Change diameter'
until_says seat 'from above, 36 by 10 in'
"$UI" squab click 'push button' 'Diameter as usual'
did 'Change diameter'
key F8
until_there label 'Round bolster: A bolster needs a diameter, and 0 in is none. Give it one.'
until_says pieces '0 pieces*'
"$UI" squab click 'push button' 'Diameter 3 in'
until_says seat 'from above, 36 by 3 in'
until_says pieces '3 pieces; *'
"$UI" squab click 'combo box' Section
until_there label 'Half-round'
key End Return
until_there text Rise
until_says job '*"section":"d"*'
