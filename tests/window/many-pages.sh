# SPDX-License-Identifier: GPL-3.0-or-later
# More pages than anybody prints unasked: it asks; saving shows how far it is and is stopped, and nothing
# is left of it; meanwhile pages are turned.
. "$STEPS"
preview () { "$UI" squab about image Preview; }
save_as ()
{
  waitwin "$1" >/dev/null
  key ctrl+a
  type_text "$2"
  key Return
}

key ctrl+p
until_there image Preview
for _ in $(seq 100); do [[ $(preview) != 'Patterns · page 1 of '* ]] || break; sleep 0.1; done
pages=$(preview)
pages=${pages##* }
[ "$pages" -gt 10000 ] || fail "only $pages pages"
question="That makes ${pages%???},${pages: -3} pages"

key alt+s
until_there label "$question"
key Escape
until_gone label "$question"
xdotool search --onlyvisible --name 'Save as PDF' && fail 'it goes on in spite of Cancel'
key alt+p
until_there label "$question"
key Escape
until_gone label "$question"
"$UI" squab wait label 'Print to File' 0 2>/dev/null && fail 'it prints in spite of Cancel'

key alt+s
until_there label "$question"
key alt+s
save_as 'Save as PDF' "$WORK/patterns.pdf"
until_there 'push button' Stop
until_there 'progress bar' Saving
key Next
until_says preview "Patterns · page 2 of $pages"
key Escape
until_there label 'Stopped. Nothing was saved.'
until_gone 'push button' Stop
[ ! -e "$WORK/patterns.pdf" ] || fail 'there is a file, though it was stopped'
ls -A "$WORK" | grep patterns && fail 'something is left of it'

# Closed in the middle of it: nothing either.
key alt+s
until_there label "$question"
key alt+s
save_as 'Save as PDF' "$WORK/patterns.pdf"
until_there 'push button' Stop
key alt+F4
until_gone image Preview
sleep 1
ls -A "$WORK" | grep patterns && fail 'it was saved after all'
until_there image Seat
