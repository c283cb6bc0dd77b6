# SPDX-License-Identifier: GPL-3.0-or-later
# Cloth at hand: a remnant is typed, shown and laid on, taken out again; a piece without a length is
# refused.
. "$STEPS"
roll () { "$UI" squab about image Roll; }
open_dialog ()
{
  "$UI" squab click 'push button' 'Cloth and laying'
  until_there 'menu item' 'Cloth at hand…'
  "$UI" squab do 'menu item' 'Cloth at hand…'
  until_there 'push button' 'Add a piece'
}

until_says roll '6 pieces; 1 yd to buy, *'
before=$(roll)
open_dialog
type_text 36
key Tab
type_text 28
key Return
did 'Cloth at hand'
until_says roll '6 pieces; 7/8 yd to buy beside what is there, *Remnant 1: *'
key ctrl+s
sleep 0.5
tr -d ' \n' <"$WORK/job.squab" | grep -q '"stock":\[{"id":1,"kind":"remnant","length":36in\|"stock":\[{' || fail 'it is not in the file'

# A second one without a length is no piece; removed, the dialog closes, and nothing is changed.
open_dialog
"$UI" squab click 'push button' 'Add a piece'
key Return
until_there label 'Each piece needs a length: type one, or remove the piece.'
key Escape
until_gone 'push button' 'Add a piece'

# Taken out again, as before.
open_dialog
"$UI" squab click 'push button' 'Remove this piece'
"$UI" squab click 'push button' 'Change'
until_gone 'push button' 'Add a piece'
until_says roll '6 pieces; 1 yd to buy, *'
key ctrl+z
until_says roll '*Remnant 1: *'
key ctrl+z
until_says roll "$before"
