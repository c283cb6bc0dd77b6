# SPDX-License-Identifier: GPL-3.0-or-later
# All ways of building side by side: reached by button and key, one chosen by click and by Enter, live,
# with the maker's own rates; why a way can't be is read where it stands.
. "$STEPS"

dialog='Ways of building'
# All rows as they are heard, and whether one that matches is among them.
rows () { "$UI" squab tree 2>/dev/null | sed -n "s/^ *list item '\(.*\)' '[^']*' [0-9].*/\1/p" | tr '\n' '|'; }
row () { until_says rows "*$1*"; }
# The whole name of the row that begins with $1.
named () { rows | tr '|' '\n' | grep -m1 "^$1"; }

"$UI" squab click 'push button' 'Compare all ways…'
waitwin "$dialog" 10 >/dev/null || fail 'the button opens nothing'
row 'Boxed, as it is built now: 7 pieces, seams 8.53 yd, cloth Harbour stripe 1 yd, '
row 'Folded corners: not possible. Edge B–C (right) is curved'
until_there 'push button' 'Sample rates: put in your own.'

# A click builds it so, as one step that can be undone from here.
"$UI" squab click 'list item' "$(named 'Knife edge: ')"
did 'Build as “Knife edge”'
row 'Knife edge, as it is built now'
row 'Boxed: 7 pieces'
key ctrl+z
row 'Boxed, as it is built now'

# What can't be built isn't chosen.
"$UI" squab click 'list item' "$(named 'Folded corners: ')"
row 'Boxed, as it is built now'

# By the keyboard: the next row, Enter.
key Escape
until_says rows 'Bay seat|'
key ctrl+b
waitwin "$dialog" 10 >/dev/null || fail 'the key opens nothing'
row 'Boxed, as it is built now'
sleep 0.3
key Down
key Return
did 'Build as “Boxed with a welt”'
row 'Boxed with a welt, as it is built now'
key ctrl+z
row 'Boxed, as it is built now'

# A wage of 60 is twice the sample: so is the cost of work. A price of cloth is no longer missing.
cost () { named 'Boxed, as' | sed 's/.*cost //'; }
[ "$(cost)" = '52.71 + cloth + foam' ] || fail "boxed costs $(cost)"
"$UI" squab click 'push button' 'Sample rates: put in your own.'
until_there text 'Wage, an hour'
key ctrl+a
type_text 60
key Tab
did Rates
until_says cost '105.41 + cloth + foam'
until_there 'push button' 'Some rates are samples: put in your own.'
"$UI" squab click text 'Seat foam, a cubic foot'
type_text 12
key Tab
did 'Price of foam'
# 1.5523 cubic feet at 12.
until_says cost '124.04 + cloth'

# The seat can be worked on meanwhile: what it takes follows.
before=$(named 'Boxed, as')
"$UI" squab click text Thickness
key ctrl+a
type_text 4
key Tab
did 'Change thickness'
until_says rows '*Boxed, as it is built now*foam 2.0*'
[ "$(named 'Boxed, as')" != "$before" ] || fail 'the rows do not follow the seat'
