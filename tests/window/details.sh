# SPDX-License-Identifier: GPL-3.0-or-later
# Title, customer, notes, unit and revision are changed by keys, in one step; Escape and Cancel change nothing.
. "$STEPS"
job () { key ctrl+s; sleep 0.3; tr -d ' \n' <"$WORK/job.squab"; }
key ctrl+j
until_there text Customer
type_text 'Pier bench'
key Tab
type_text 'North Quay'
key alt+l space
until_there label millimetres
key Down Return
until_gone label centimetres
key alt+r ctrl+a
type_text '2 b-'
key alt+n ctrl+a
type_text 'Late'
key Return
type_text 'in May'
key ctrl+Return
until_gone text Customer
did 'Job details'
until_says seat '5 corners, 1194 by 483 mm*'
until_there label 'Pier bench'
until_says job '*"units":"mm","title":"Pierbench","customer":"NorthQuay","notes":"Late\\ninMay","revision":"B"*'

# One step back takes all of it back.
key ctrl+z
until_says seat '5 corners, 47 by 19 in*'
until_there label 'Bay window'
until_says job '*"units":"in","title":"Baywindow","customer":"PierHouse"*'

saved=$(job)
key ctrl+j
until_there text Customer
type_text 'Nothing'
key Escape
until_gone text Customer
key ctrl+j
until_there text Customer
type_text 'Nothing'
"$UI" squab click 'push button' Cancel
until_gone text Customer
# Accepted as it was, it is no step either: what was undone can still be done again.
key ctrl+j
until_there text Customer
key Return
until_gone text Customer
until_there 'push button' 'Redo: Job details'
[ "$(job)" = "$saved" ] || fail 'the job is another one'
