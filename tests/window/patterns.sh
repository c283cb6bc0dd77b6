# SPDX-License-Identifier: GPL-3.0-or-later
# Patterns: their choices are the job's, what can't be is told in the place of the preview, the PDF is
# byte for byte squab-cut's; printed to a file by the system's own dialog they come out in true size,
# sheets, pieces of a roll and the test page.
. "$STEPS"
preview () { "$UI" squab about image Preview; }
margin () { "$UI" squab text text Margin; }
saved_choice () { key ctrl+s; sleep 0.3; tr -d ' \n' <"$WORK/job.squab" | grep -o '"papers":{.*' | head -c 300; }
here=$(dirname "$STEPS")

choose () # MENU ENTRY, from 0
{
  "$UI" squab click 'combo box' "$1"
  sleep 0.3
  key Home
  for _ in $(seq 1 "$2"); do key Down; done
  key Return
}
give () # FIELD TEXT
{
  "$UI" squab click text "$1"
  key ctrl+a
  type_text "$2"
  key Return
}
save_as ()
{
  waitwin "$1" >/dev/null
  key ctrl+a
  type_text "$2"
  key Return
}

# By the system's own dialog, to a file, which is written where the program runs.
print_to_file () # KEY THAT OPENS IT, WHAT IT BECOMES
{
  local x y width height off
  rm -f "$WORK/output.pdf"
  key "$1"
  until_there label 'Print to File'
  read -r x y width height < <("$UI" squab rect label 'Print to File')
  # The toolkit does not tell where this dialog's contents are to the pixel.
  for off in -6 0 6 12 18; do
    xdotool mousemove $((x + width / 2)) $((y + off)) sleep 0.1 click 1
    "$UI" squab wait label File: 1 2>/dev/null && break
  done
  until_there label File:
  key alt+p
  until_there label 'Handed to the printer.'
  [ -s "$WORK/output.pdf" ] || fail 'nothing was printed'
  mv "$WORK/output.pdf" "$WORK/$2"
}

key ctrl+p
until_says preview 'Cut list · page 1 of *'
key alt+c alt+l
until_says preview 'No page'
key alt+n
until_says preview 'Patterns · page 1 of *'
on_letter=$(preview)

# Choices, as squab-cut has them.
choose Paper 1
until_there 'push button' 'Paper as usual'
give Margin '12 mm'
give Overlap '20 mm'
choose Draw 1
"$UI" squab click 'check box' 'Only corners of large pieces'
choose 'Marked on' 1
give 'Which pieces' '1, 3-4'
sleep 0.5
until_says preview 'Patterns · page 1 of *'
key alt+s
save_as 'Save as PDF' "$WORK/patterns.pdf"
until_there label '“patterns.pdf” is saved.'
"$SQUAB_CUT" "$WORK/job.squab" --pattern "$WORK/cut.pdf" --paper a3 --margin 12mm --overlap 20mm \
  --lines cut --corners-only --marked-on wrong --pieces 1,3-4 --date "$SQUAB_TEST_DAY" 2>/dev/null
cmp "$WORK/patterns.pdf" "$WORK/cut.pdf" || fail 'not the PDF that squab-cut makes'
print_to_file alt+p printed.pdf
/usr/bin/python3 "$here/same-drawing.py" "$WORK/printed.pdf" "$WORK/cut.pdf" ||
  fail 'what is printed is another drawing'
/usr/bin/python3 "$here/true-size.py" "$WORK/printed.pdf" 297 420 || fail 'not in true size'

# What can't be: a sentence, and nothing to print.
before=$(margin)
give Margin '-1'
until_there label 'It can’t be less than nothing.'
key Escape
give Margin '100 mm'
until_there label 'Paper 11 11⁄16 in wide is too narrow for margins of 3 15⁄16 in and an overlap of 13⁄16 in: nothing is left for the pattern.'
until_gone image Preview
"$UI" squab click 'push button' Print… # does nothing
"$UI" squab click 'push button' 'Margin as usual'
until_there image Preview
[ "$(margin)" != "$before" ] || fail 'the margin is not what is usual'
give 'Which pieces' '8-9'
until_there label '“8-9” names no pieces. Type their numbers in the cut list, 1 to 7, as 1, 3-5.'
until_gone image Preview
key alt+p
sleep 0.5
"$UI" squab wait label 'Print to File' 0 2>/dev/null && fail 'what can not be is printed'
"$UI" squab click 'push button' 'Which pieces as usual'
until_there image Preview

# A test page, and a roll.
print_to_file alt+g test.pdf
/usr/bin/python3 "$here/true-size.py" "$WORK/test.pdf" 297 420 || fail 'the test page is not in true size'
choose Paper 10
until_there text 'Width of the roll'
give 'Width of the roll' '24 1/2'
give Overlap '1/2'
sleep 0.5
until_there image Preview
print_to_file alt+p roll.pdf
/usr/bin/python3 "$here/true-size.py" "$WORK/roll.pdf" 622.3 || fail 'the roll is not in true size'

# All of it is one step of the job, but for which pieces.
key Escape
did 'Choice of papers'
key ctrl+s
sleep 0.5
[[ $(saved_choice) == *'"marked_on":"wrong"'*'"roll":622.3'*'"overlap":12.7,"lines":"cut","corners_only":true'* ]] ||
  fail "$(saved_choice)"
key ctrl+z
key ctrl+p
until_says preview 'Cut list · page 1 of *'
key alt+n
until_there text Margin

# A long page of a roll passes by before it is turned.
choose Paper 10
until_there text 'Width of the roll'
sleep 0.5
"$UI" squab click image Preview
key End
until_says preview 'Patterns · page *'
last=$(preview)
key Down Up
until_says preview "$last"
key Up
sleep 0.3
[ "$(preview)" != "$last" ] || fail 'the page is not turned at its end'
