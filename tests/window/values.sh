# SPDX-License-Identifier: GPL-3.0-or-later
# Each kind of value, by clicks and by keys: given, brought back to what is usual, refused with words
# where it is nonsense. Only what the way of building uses is there; groups fold away.
. "$STEPS"
job () { key ctrl+s; sleep 0.3; tr -d ' \n' <"$WORK/job.squab"; }
thickness () { "$UI" squab text text Thickness; }
width () { "$UI" squab text text 'Seat width'; }
count () { "$UI" squab text text Count; }
typed () { key ctrl+a; type_text "$1"; key Return; }

# A length; the way back is a button.
"$UI" squab click text Thickness
typed 4
did 'Change thickness'
until_says pieces '*Front boxing 46 3⁄4 × 5,*'
"$UI" squab click 'push button' 'Thickness as usual'
until_says thickness 3
until_says pieces '*Front boxing 46 3⁄4 × 4,*'
[[ $(job) != *'"thickness":76'* ]] || fail 'what is usual was written as if it were given'
key ctrl+z
until_says job '*"thickness":101.6*'
key ctrl+z

# Nonsense is told at the field; the old figure comes back, and nothing was changed.
saved=$(job)
"$UI" squab click text Thickness
typed '3 fish'
until_there label 'Not a length. Type it as 18 1/2, 46.5 cm or 36 - 2*1/2.'
key Tab
until_says thickness 3
until_gone label 'Not a length. Type it as 18 1/2, 46.5 cm or 36 - 2*1/2.'
[ "$(job)" = "$saved" ] || fail 'nonsense has changed the job'

# The size of the seat stretches the outline; by keys.
key alt+w
typed 50
did 'Change size of the seat'
until_says seat '5 corners, 50 by 19 in*'
typed 0
until_there label 'It has to be more than nothing.'
until_says seat '5 corners, 50 by 19 in*'
key Tab
until_says width 50
key ctrl+z
until_says width 47
until_gone label 'It has to be more than nothing.'

# A choice by keys, and its way back the same way.
key alt+r space
until_there label 'Side to side'
key Down Return
until_says job '*"run":"side-to-side"*'
key Tab space
did 'Turn the stripes'
[[ $(job) != *'"run":'* ]] || fail 'the stripes did not go back to what is usual'
key ctrl+z ctrl+z
until_says job '*"run":"front-to-back"*'

# What is above folds away, and stays so; then words, a count and a hand.
for group in Size 'Way of building' Cloth Stripes Zip Foam; do
  "$UI" squab click 'push button' "$group"
done
until_gone text Thickness
grep -qx 'size=true' "$XDG_STATE_HOME/squab/window.ini" || fail 'it is not remembered as folded'
"$UI" squab click text Name
typed 'Window bench'
did 'Rename to Window bench'
until_there label 'Window bench'
"$UI" squab click 'push button' 'Name as usual'
until_there label 'Cushion 1'
key ctrl+z
"$UI" squab click text Count
typed two
until_there label 'Type a whole number from 1 to 100,000.'
[ "$("$UI" squab about text Count)" = 'Type a whole number from 1 to 100,000.' ] ||
  fail 'a screen reader is not told what is wrong'
key Escape
until_says count 1
typed 3
until_there label '3 × Window bench'
until_says job '*"count":3*'
"$UI" squab click 'combo box' Hand
until_there label 'A pair, one of each'
key End Return
until_says job '*"hand":"pair"*'

# Another way of building asks other things.
"$UI" squab click 'push button' 'Way of building'
"$UI" squab click 'push button' Allowances
until_there text Join
until_gone text 'Wrap depth'
"$UI" squab click 'combo box' Cover
key Down Return
until_there text 'Wrap depth'
until_gone text Join
"$UI" squab click text Perimeter
typed 1/2
did 'Change perimeter allowance'
until_says job '*"perimeter":12.7*'

# A wrapped front asks how it is rounded, and how much only where that is free.
"$UI" squab click 'combo box' Cover
key Down Return
did 'Change way of building'
until_there 'combo box' Front
until_gone text 'Front radius'
"$UI" squab click 'combo box' Front
until_there label 'Half-round'
key End Return
until_says job '*"front_profile":{"kind":"radius"}*'
"$UI" squab click text 'Front radius'
typed 1
did 'Change radius of the front'
until_says job '*"front_profile":{"kind":"radius","radius":25.4}*'
"$UI" squab click 'combo box' Front
key Home Return
until_says job '*"front_profile":{"kind":"square"}*'
until_gone text 'Front radius'
