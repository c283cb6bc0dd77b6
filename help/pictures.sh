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

# page OUT OPTION [PAGE]: a page of the bay seat's paper, the first.
page ()
{
  "$build/src/command/squab-cut" data/samples/bay-seat.squab "$2" "$work/paper.pdf" --paper a4 \
    --date 2026-03-02 2>/dev/null
  pdftoppm -r 90 -png -singlefile -f "${3:-1}" -l "${3:-1}" "$work/paper.pdf" "$work/$1"
}

# way OUT JOB WxH [CUSHION]: a cushion of that job made up, and its pieces.
way ()
{
  "$build/tests/drawing/picture" "$2" "$work/$1.png" made-up "$3" "${4:-0}"
  ways+=("$1")
}

ninja -C "$build" tests/drawing/picture >/dev/null
ways=()
way boxed data/samples/half-round.squab 840x370
way folded data/samples/folded-stool.squab 840x320
way mixed data/samples/bow-seat.squab 840x340
way welted data/samples/window-seat.squab 840x390
way split data/samples/wheelhouse-seat.squab 840x290
way knife-edge data/samples/cabin-pads.squab 840x310
way wrapped data/samples/pier-bench.squab 840x400
way bolster data/samples/berth-bolsters.squab 840x400
way corners data/samples/dining-pads.squab 840x310

# A zip between two parts.
sed 's/"build": "folded-corner"/&, "zip": {"method": "two-part"}/' data/samples/folded-stool.squab \
  > "$work/parted.squab"
way parted "$work/parted.squab" 840x330

# A cloth too narrow for its seat.
sed 's/"width": 1346.2/"width": 685.8/; s/"build": "wrapped-front"/&, "seams_across": "two"/' \
  data/samples/pier-bench.squab > "$work/narrow.squab"
way joined "$work/narrow.squab" 840x520

# The job is a copy: papers that are looked at may be kept with it.
cp data/samples/bay-seat.squab "$work/bay-seat.squab"
shown start true
shown window true "$work/bay-seat.squab"
shown papers 'key ctrl+p; SHOWN=$(waitwin "Print and export")' "$work/bay-seat.squab"
cp data/samples/bow-seat.squab "$work/bow-seat.squab"
shown ways 'key ctrl+b; SHOWN=$(waitwin "Ways of building"); settle 2' "$work/bow-seat.squab"
sed 's/"width": 1346.2/"width": 914.4/' data/samples/bay-seat.squab > "$work/wide.squab"
shown offers 'for i in $(seq 50); do "$UI" squab tree | grep "Two joins: H" >/dev/null && break; sleep 0.2; done
  settle; SHOWN=$WIN' "$work/wide.squab"
convert "$work/offers.png" -crop 1180x91+0+528 +repage "$work/offers.png"
page cut-list --cut-list
page layout --layout
convert "$work/cut-list.png" -bordercolor '#b9b2a6' -border 1 "$work/cut-list.png"
convert "$work/layout.png" -crop 100%x82%+0+0 -trim -bordercolor white -border 16 "$work/layout.png"
page labels --labels
page tickets --tickets
page pattern --pattern 2
page marking --marking
for part in labels:34 tickets:54 pattern:48 marking:86; do
  convert "$work/${part%:*}.png" -crop "100%x${part#*:}%+0+0" -trim -bordercolor white -border 16 \
    -bordercolor '#b9b2a6' -border 1 "$work/${part%:*}.png"
done
for name in start window papers ways offers; do
  convert "$work/$name.png" -resize 900x "$work/$name.png"
done
for name in start window papers ways offers cut-list layout labels tickets pattern marking "${ways[@]}"; do
  convert "$work/$name.png" +repage -strip -dither None -colors 96 "PNG8:$figures/$name.png"
done
