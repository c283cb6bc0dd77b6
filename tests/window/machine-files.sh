# SPDX-License-Identifier: GPL-3.0-or-later
# Files for other programs, for plotters and cutting tables: each format byte for byte as squab-cut writes it, one file for
# each piece into a folder, nothing overwritten that was not asked about, what is chosen remembered.
. "$STEPS"

# save_as TITLE PATH: in the file dialog that comes up.
save_as ()
{
  waitwin "$1" >/dev/null
  key ctrl+a
  type_text "$2"
  key Return
}

# The entry at @2 from the first of the menu called @1.
choose ()
{
  "$UI" squab click 'combo box' "$1"
  sleep 0.3
  key Home
  for _ in $(seq 1 "$2"); do key Down; done
  key Return
}

# same NAME OPTION…: what the window saved is what squab-cut writes.
same ()
{
  local name=$1
  shift
  "$SQUAB_CUT" "$WORK/job.squab" "$@" "$WORK/cut-$name" 2>/dev/null
  cmp "$WORK/$name" "$WORK/cut-$name" || fail "$name is not what squab-cut writes"
}

dialog='Save for plotters and cutting tables'
saved () { until_there label "“$1” is saved."; }
warning='It goes beyond 32,767 plotter units (819 mm, 32 1/4 in), which older plotters can’t draw. If yours stops there, save the pieces one by one.'

key ctrl+p
until_there image Preview
key alt+t
save_as 'Save as a table' "$WORK/a.csv"
saved a.csv
same a.csv --csv
"$UI" squab click 'push button' 'Table of where all lies…'
save_as 'Save a table of where all lies' "$WORK/b.csv"
saved b.csv
same b.csv --of lay --csv
key alt+x
save_as 'Save as text' "$WORK/a.txt"
saved a.txt
"$SQUAB_CUT" "$WORK/job.squab" 2>/dev/null | cmp - "$WORK/a.txt" || fail 'not the text that squab-cut prints'
key alt+j
save_as 'Save everything computed' "$WORK/a.json"
saved a.json
same a.json --plan

"$UI" squab click 'push button' 'For plotters and cutting tables'
until_there 'combo box' Format
key alt+f
save_as "$dialog" "$WORK/a.dxf"
saved a.dxf
same a.dxf --dxf

choose Format 1
choose Layers 1
key alt+f
save_as "$dialog" "$WORK/b.dxf"
saved b.dxf
same b.dxf --dxf-release r2000 --layers d6673 --dxf

choose Format 2
until_gone 'combo box' Layers
choose What 1
"$UI" squab click 'check box' Texts
key alt+f
save_as "$dialog" "$WORK/c.svg"
saved c.svg
same c.svg --of cloth --only cut,sew,notch,mark --svg

# The lay is longer than 16 bits reach; it is kept with the job, as it went out of the house.
choose Format 3
choose What 2
key alt+f
save_as "$dialog" "$WORK/d.hpgl"
saved d.hpgl
until_there label "$warning"
same d.hpgl --of lay --only cut,sew,notch,mark --hpgl
choose What 0

# Some pieces, for the wrong side.
choose 'Marked on' 1
"$UI" squab click text 'Which pieces'
type_text '2, 4-9'
key Return
key alt+f
save_as "$dialog" "$WORK/e.hpgl"
saved e.hpgl
same e.hpgl --of pieces --pieces 2,4- --marked-on wrong --only cut,sew,notch,mark --hpgl

# Numbers that are none are told where files are wanted.
"$UI" squab click text 'Which pieces'
key ctrl+a
type_text '77'
key Return
key alt+f
until_gone label "$warning"
until_there label '“77” names no pieces. Type their numbers in the cut list, 1 to 7, as 1, 3-5.'
"$UI" squab click 'push button' 'Which pieces as usual'

# One for each piece, into a folder: asked about once, and left alone if so wanted.
mkdir "$WORK/files" "$WORK/cut"
"$UI" squab click 'check box' 'One file for each piece'
into_folder ()
{
  key alt+f
  waitwin 'Save files into a folder' >/dev/null
  key ctrl+l ctrl+a
  type_text "$WORK/files/"
  key Return
}
into_folder
until_there label '7 files are saved in “files”.'
"$SQUAB_CUT" "$WORK/job.squab" --marked-on wrong --of pieces --only cut,sew,notch,mark --hpgl "$WORK/cut" 2>/dev/null
diff -r "$WORK/files" "$WORK/cut" || fail 'not the files that squab-cut writes'
first=$(ls "$WORK/files" | head -1)
echo mine >"$WORK/files/$first"
rm "$WORK/files/$(ls "$WORK/files" | tail -1)"
into_folder
until_there label 'Files of these names are in “files” already'
until_there label '6 of 7 files would be replaced.'
key Escape
until_gone label '6 of 7 files would be replaced.'
[ "$(cat "$WORK/files/$first")" = mine ] || fail 'replaced, though not wanted'
[ "$(ls "$WORK/files" | wc -l)" = 6 ] || fail 'some were saved, though not wanted'
into_folder
until_there label '6 of 7 files would be replaced.'
key alt+r
until_there label '7 files are saved in “files”.'
diff -r "$WORK/files" "$WORK/cut" || fail 'not all were replaced'

# A folder that can't be written into: a sentence.
chmod a-w "$WORK/files"
if ! touch "$WORK/files/x" 2>/dev/null; then
  into_folder
  key alt+r
  until_there label "“$first” could not be saved"
  key Escape
fi
chmod u+w "$WORK/files"

# What was chosen is there the next time.
key Escape
until_gone image Preview
key ctrl+p
until_there 'combo box' Format
until_there label HP-GL
until_there 'check box' 'One file for each piece'
grep -qx 'lines=cut;sew;notch;mark;' "$XDG_STATE_HOME/squab/window.ini" || fail 'what goes in is not remembered'
