# SPDX-License-Identifier: GPL-3.0-or-later
# All steps are listed with their words, and any of them can be gone to, opened by a key and by a click.
. "$STEPS"
"$UI" squab click text Thickness
key ctrl+a
type_text 4
key Return
did 'Change thickness'
key alt+w ctrl+a
type_text 50
key Return
did 'Change size of the seat'
key ctrl+h
until_there 'list item' 'Change size of the seat (now)'
key Down Down Return
until_says seat '5 corners, 47 by 19 in*'
until_there 'push button' 'Redo: Change thickness'
until_there 'push button' Undo

# What was undone is listed too.
key ctrl+h
until_there 'list item' 'As it was at first (now)'
key Home Return
did 'Change size of the seat'
until_says seat '5 corners, 50 by 19 in*'

"$UI" squab click 'toggle button' 'All steps' 2>/dev/null || "$UI" squab click 'push button' 'All steps'
until_there 'list item' 'Change thickness'
key Down Return
did 'Change thickness'
until_says seat '5 corners, 47 by 19 in*'
until_says pieces '*Front boxing 46 3⁄4 × 5,*'
