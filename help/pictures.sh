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

# shown OUT CODE [JOB]: the window alone, after CODE.
shown ()
{
  bash tests/window/drive.sh -a -s 1180x720 -o "$work/$1.png" \
    -e 'xdotool windowsize $WIN 1180 700; xdotool mousemove 1179 719; settle; '"$2"'; settle' -- \
    "$build/src/window/squab" "${@:3}"
}

# page OUT OPTION: a page of the bay seat's paper.
page ()
{
  "$build/src/command/squab-cut" data/samples/bay-seat.squab "$2" "$work/paper.pdf" --paper a4 \
    --date 2026-03-02 2>/dev/null
  pdftoppm -r 90 -png -singlefile -f "${3:-1}" "$work/paper.pdf" "$work/$1"
  convert "$work/$1.png" -bordercolor '#b9b2a6' -border 1 "$work/$1.png"
}

shown start true
shown window true data/samples/bay-seat.squab
page cut-list --cut-list
page layout --layout
for name in start window; do convert "$work/$name.png" -trim +repage -resize 900x "$work/$name.png"; done
for name in start window cut-list layout; do
  convert "$work/$name.png" -strip -dither None -colors 96 "PNG8:$figures/$name.png"
done
