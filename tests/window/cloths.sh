# SPDX-License-Identifier: GPL-3.0-or-later
# A striped cloth is made by the keyboard alone, seen in the file and on the pieces, changed, kept on
# the shelf and taken into another job. Escape changes nothing.
. "$STEPS"
job () { key ctrl+s; sleep 0.3; tr -d ' \n' <"$WORK/job.squab"; }
shelf=$XDG_DATA_HOME/squab/cloths.json
# What the face's menu has after the cloths: new, change, from the shelf.
face () { key alt+f; settle; key space; until_there label 'New cloth…'; key End; }
new_cloth () { face; key Up Up Return; until_there text Name; }
change_cloth () { face; key Up Return; until_there 'push button' Change; }
gone () { until_gone 'check box' 'Keep it on the shelf for other jobs'; }

# Escape, from anywhere: nothing was changed.
saved=$(job)
new_cloth
type_text 'Nothing'
key Tab Escape
gone
[ "$(job)" = "$saved" ] || fail 'a cloth was made after all'
until_there 'push button' Undo

# A cloth of even stripes, one band more laid over them, an inch in.
new_cloth
type_text 'Deck stripe'
key alt+w ctrl+a
type_text '54'
key alt+p
type_text '24.50'
key alt+g ctrl+a
type_text '1 1/2'
key Tab ctrl+a
type_text '1/2'
key alt+v
until_there text 'Band 1 begins at'
key alt+b
until_there text 'Band 2 begins at'
key ctrl+a
type_text '1'
key Tab ctrl+a
type_text '1/4'
key ctrl+Return
gone
did 'New cloth Deck stripe'
until_says job '*"name":"Deckstripe","width":1371.6,"price":26.79*,"repeat":{"across":50.8},"stripes":?{"at":19.0*,"width":12.7,"colour":"#2f4b6e"},{"at":25.4,"width":6.35,"colour":"#2f4b6e"}?}?*'
until_says job '*"cloth":{"face":3,*'
# No colour was given: its drawing in the list is of the house's.
read -r x y width height < <("$UI" squab rect 'list item' 'Bay seat')
light=$(import -silent -window root -crop "$((width - 40))x20+$((x + 20))+$((y + 20))" png:- |
  convert png:- -format '%[fx:mean > 0.4]' info:)
[ "$light" = 1 ] || fail 'the drawing of the cushion is dark'
key ctrl+z
[ "$(job)" = "$saved" ] || fail 'one step back does not take the cloth away'
key ctrl+shift+z
until_says job '*"cloth":{"face":3,*'

# What can't be is told where it stands, and the dialog stays.
change_cloth
key alt+p ctrl+a
type_text 'dear'
key ctrl+Return
until_there label 'Type a price as a number, without a sign of money.'
key Escape Escape
gone

# Changed, and kept on the shelf; the cloth stays the one it is.
change_cloth
key ctrl+a
type_text 'Quay stripe'
key alt+k ctrl+Return
gone
did 'Change cloth Quay stripe'
until_says job '*{"id":3,"name":"Quaystripe",*'
grep -q '"Quay stripe"' "$shelf" || fail 'it is not on the shelf'

# Another job takes it from there, with an id of its own.
key ctrl+z ctrl+z
[ "$(job)" = "$saved" ] || fail 'the job is another one'
face
key Return
until_there 'push button' Take
until_there 'list item' 'Quay stripe'
key ctrl+Return
until_gone 'push button' Take
until_says job '*{"id":3,"name":"Quaystripe",*"stripes":?{"at":19.0*'
until_says job '*"cloth":{"face":3,*'

# Off the shelf again: there is nothing to take then, and nothing is taken.
saved=$(job)
face
key Return
until_there 'list item' 'Quay stripe'
key alt+o
until_gone 'list item' 'Quay stripe'
"$UI" squab click 'push button' Take
until_there 'push button' Take
key Escape
until_gone 'push button' Take
[ "$(job)" = "$saved" ] || fail 'something was taken from an empty shelf'
! grep -q '"Quay stripe"' "$shelf" || fail 'it is still on the shelf'
