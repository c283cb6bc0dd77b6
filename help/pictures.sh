#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# pictures.sh BUILD: makes the help's pictures anew, from the programs in that build folder. To be
# looked at before they are committed.
set -euo pipefail
build=$(realpath "$1")
cd "$(dirname "$0")/.."
figures=help/C/figures
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export SQUAB_DATADIR=$PWD/data

# shown OUT CODE [JOB]: the window after CODE, which may say in $SHOWN that another one is meant.
shown ()
{
  local code='xdotool windowsize $WIN 1180 700 mousemove 1179 719; settle; SHOWN=$WIN; '$2'; settle;'
  bash tests/window/drive.sh -a -s 1180x720 -e "$code import -silent -window \$SHOWN $work/$1.png" -- \
    "$build/src/window/squab" "${@:3}"
}

# page OUT OPTION: the first page of the bay seat's paper.
page ()
{
  "$build/src/command/squab-cut" data/samples/bay-seat.squab "$2" "$work/paper.pdf" --paper a4 \
    --date 2026-03-02 2>/dev/null
  pdftoppm -r 90 -png -singlefile "$work/paper.pdf" "$work/$1"
}

# The job is a copy: papers that are looked at may be kept with it.
cp data/samples/bay-seat.squab "$work/bay-seat.squab"
shown start true
shown window true "$work/bay-seat.squab"
shown papers 'key ctrl+p; SHOWN=$(waitwin "Print and export")' "$work/bay-seat.squab"
page cut-list --cut-list
page layout --layout
convert "$work/cut-list.png" -bordercolor '#b9b2a6' -border 1 "$work/cut-list.png"
convert "$work/layout.png" -crop 100%x82%+0+0 -trim -bordercolor white -border 16 "$work/layout.png"
for name in start window papers; do
  convert "$work/$name.png" -resize 900x "$work/$name.png"
done
for name in start window papers cut-list layout; do
  convert "$work/$name.png" +repage -strip -dither None -colors 96 "PNG8:$figures/$name.png"
done
