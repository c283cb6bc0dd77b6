#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# start.sh: from a fresh checkout on Debian or Ubuntu to the sample job in the window. Without a
# display it writes the job's papers instead.
set -euo pipefail
cd "$(dirname "$0")/.."

job=data/samples/bay-seat.squab
sections=(build) window=disabled
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  sections+=(window) window=enabled
fi

bash data/install-packages.sh "${sections[@]}"
if [ -f build/build.ninja ]; then
  meson configure build -Dwindow=$window
else
  meson setup build -Dwindow=$window -Dtests=false
fi
ninja -C build

if [ $window = enabled ]; then
  export SQUAB_DATADIR=$PWD/data SQUAB_HELPDIR=$PWD/build/help/help # it isn't installed
  exec build/src/window/squab "$job"
fi
build/src/command/squab-cut "$job" --everything build/bay-seat.pdf
echo "There is no display, so the sample's papers were written to $PWD/build/bay-seat.pdf"
