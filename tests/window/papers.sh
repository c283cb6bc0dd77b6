# SPDX-License-Identifier: GPL-3.0-or-later
# The maker's run: stripes turned, papers looked at, saved as PDF byte for byte as squab-cut writes
# them, and printed by the system's dialog: the same drawing.
. "$STEPS"
preview () { "$UI" squab about image Preview; }
stripes () { tr -d ' \n' <"$WORK/job.squab" | grep -o '"stripes":{"run[^}]*}'; }

# save_as NAME: in the file dialog that comes up.
save_as ()
{
  waitwin "$1" || fail "no dialog '$1'"
  key ctrl+a
  type_text "$2"
  key Return
}

"$UI" squab click image Pieces
key Escape Right t
did 'Turn the stripes'
key ctrl+s

key ctrl+p
until_says preview 'Cut list · page 1 of *'
few=$(preview)
key alt+e # everything: the choice is the job's from now on
until_more () { for _ in $(seq 100); do [ "$(preview)" = "$few" ] || return 0; sleep 0.1; done; fail 'no more papers'; }
until_more
key Page_Down
until_says preview 'Cut list · page 2 of *'
key ctrl+Page_Down
until_says preview 'Layout · page *'
key End
until_says preview 'Patterns · page *'
key ctrl+Page_Up ctrl+Page_Up
until_says preview 'Labels · page *'
key Home
until_says preview 'Cut list · page 1 of *'
pages=$(preview)
"$UI" squab click 'push button' "$pages" # contents
until_there 'list item' 'Cut tickets'
key End Return
until_says preview 'Patterns · page *'
key Home
until_says preview "$pages"
key alt+s
save_as 'Save as PDF' "$WORK/papers.pdf"
until_there label '“papers.pdf” is saved.'
key Escape
did 'Keep the lays'
key ctrl+s
sleep 0.5
[ "$(stripes)" = '"stripes":{"run":"side-to-side","centre_on":"stripe"}' ] || fail "$(stripes)"
grep -q '"kept_lays"' "$WORK/job.squab" || fail 'the printed lays are not kept'

"$SQUAB_CUT" "$WORK/job.squab" --everything "$WORK/cut.pdf" --date "$SQUAB_TEST_DAY" 2>/dev/null
cmp "$WORK/papers.pdf" "$WORK/cut.pdf" || fail 'not the PDF that squab-cut makes'

# Where nothing can be written: a sentence, and no file.
key ctrl+p
until_says preview "$pages"
key alt+s
save_as 'Save as PDF' "$WORK/none/papers.pdf"
sleep 1
[ ! -e "$WORK/none" ] || fail 'a folder was made'
key Escape Escape
until_gone dialog '*'
key Escape
until_gone image Preview

# To a file by the system's own dialog: it is written where the program runs.
key ctrl+p
until_says preview "$pages"
key alt+p
until_there label 'Print to File'
read -r x y width height < <("$UI" squab rect label 'Print to File')
# The toolkit does not tell where this dialog's contents are to the pixel.
for off in -6 0 6 12 18; do
  xdotool mousemove $((x + width / 2)) $((y + off)) sleep 0.1 click 1
  "$UI" squab wait label File: 1 2>/dev/null && break
done
until_there label File:
key alt+p
for _ in $(seq 50); do [ ! -s "$WORK/output.pdf" ] || break; sleep 0.1; done
[ -s "$WORK/output.pdf" ] || fail 'nothing was printed'
until_there label 'Handed to the printer.'
/usr/bin/python3 "$(dirname "$STEPS")/same-drawing.py" "$WORK/output.pdf" "$WORK/cut.pdf" ||
  fail 'what is printed is another drawing'

# A title that no file can be called: the name that is offered is one that can.
key Escape
until_gone image Preview
key ctrl+j
until_there text Title
"$UI" squab click text Title
key ctrl+a
type_text 'Pier/7: "A"'
key ctrl+Return
key ctrl+p
until_says preview "$pages"
key alt+s
waitwin 'Save as PDF' >/dev/null
sleep 0.5
key Return
until_there label '“Pier-7- -A-.pdf” is saved.'
[ -s "$WORK/Pier-7- -A-.pdf" ] || fail 'it is somewhere else'
