# SPDX-License-Identifier: GPL-3.0-or-later
# The table of sides, by keyboard alone: moved through and typed over, in step with the seat; what
# can't be is said at the cell, and a closing side that doesn't close by how much.
. "$STEPS"
cell () { "$UI" squab text text "$1"; }
front () { cell 'A–B, length'; }
back () { cell 'D–E, length'; }
closing () { cell 'E–A, length'; }
saved () { grep -o "\"id\": $1, \"x\": [-0-9.]*, \"y\": [-0-9.]*" "$WORK/job.squab"; }

# It opens at the first side, whose edge is chosen.
key F9
until_there text 'A–B, length'
until_says seat '*edge A–B*chosen'
until_there label 'E–A closes the seat at 19: it follows from the others.'

# Typing begins a change, Enter takes it and goes down.
type_text '45 1/2'
key Return
until_says front '45 1⁄2'
until_says seat '*46 1/2 by 19*edge B–C*chosen'
key ctrl+z
until_says front '46'

# What was undone under the keyboard is typed over as well.
key Up
type_text '45'
key Return Up ctrl+z
until_says front '46'
type_text '4'
until_says front '4'
key Escape Down

# Enter begins a change too; Escape puts it back.
key Up Return
type_text '9'
until_says front '469'
key Escape
until_says front '46'

# What can't be stays out, and is said below the side.
type_text '0'
key Return
until_there label 'It has to be more than nothing.'
until_says seat '*47 by 19*edge A–B*chosen'
key ctrl+a
type_text 'wide'
key Tab
until_there label 'Not a length. Type it as 18 1/2, 46.5 cm or 36 - 2*1/2.'
key Escape
until_says front '46'
! "$UI" squab rect label 'Not a length. Type it as 18 1/2, 46.5 cm or 36 - 2*1/2.' 2>/dev/null ||
  fail 'what was put back is still called wrong'

# Arrow keys go to every kind of cell: a rise, what stands there, an angle, a radius.
key Right
type_text '1/2'
key Return Up Right
until_says seat '*edge A–B*chosen'
key Return Down Down Return
key Right Down
until_says seat '*corner B chosen'
key Right
type_text '2'
key Return ctrl+s
rounded () { grep -c '"radius": 50.8' "$WORK/job.squab"; }
until_says rounded 1
grep -q '"bow": 12.7' "$WORK/job.squab" || fail 'the rise was not taken'
grep '"id": 1,' "$WORK/job.squab" | grep -q '"kind": "well"' || fail 'the kind was not taken'

# What is chosen on the seat is the row that is meant, also when it opens again.
key F9
until_says seat '*corner C chosen'
key Escape d F9
until_says seat '*edge D–E*chosen*'
until_says back '38'

# The last side follows from the others: typed, it is compared and bends nothing …
key Down
until_says seat '*edge E–A*chosen'
type_text '18 3/4'
key Return
until_there label 'E–A closes at 19: 1⁄4 more than taped (18 3⁄4).'
until_says closing '19'
type_text '19'
key Return
until_there label 'E–A closes at 19, as taped.'
type_text '19 1/2'
key Return
until_there label 'E–A closes at 19: 1⁄2 less than taped (19 1⁄2).'

# … until it is asked to: the front stays, the back moves.
until_there 'push button' 'Make it 19 1⁄2'
"$UI" squab do 'push button' 'Make it 19 1⁄2'
until_says closing '19 1⁄2'
until_there label 'E–A closes at 19 1⁄2, as taped.'
key ctrl+s
corner () { saved 5; }
until_says corner '*"x": 0, "y": 495.[23]*'
saved 1 | grep -q '"x": 0, "y": 0' || fail 'the front moved'
