#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# drive.sh [OPTION…] -- COMMAND [ARGUMENT…]
#
# Runs a program with a window on an X server, session bus and window manager of its own, drives
# it with real clicks and keys, and ends all that it started.
#
#   -e CODE      bash run once the window stands still; its status is this script's
#   -x FILE      the same from a file
#   -o FILE.png  picture of the screen afterwards
#   -s WxH       size of the screen (1280x900)
#   -t SECONDS   limit for everything (SQUAB_DRIVE_SECONDS, else 220)
#   -a           with accessibility, for ui.py
#   -c           with a compositor: shadows and popovers as on a desktop
#   -d           dark
#   -W           wait for no window: COMMAND runs to its end and its status is this script's
#
# For CODE and FILE: $WIN, $APP_PID, $WORK (a folder for this run), $UI (ui.py), $STEPS (steps.sh) and
#   shot FILE.png · settle [SECONDS] · waitwin REGEX [SECONDS] · waitlog REGEX [SECONDS]
#   click X Y [BUTTON] · drag X1 Y1 X2 Y2 [BUTTON] · scroll X Y up|down [N]   (in $WIN)
#   key KEY… · type_text TEXT · fail WHY
#
# Ends with the script's status, else the program's; 124: time limit; 125: nothing to drive.
set -u

picture= code= size=1280x900 limit=${SQUAB_DRIVE_SECONDS:-220} window=yes compositor=no access=no dark=0
while getopts 'e:x:o:s:t:acdW' option; do
  case $option in
    e) code=$OPTARG ;;
    x) code=$(cat "$OPTARG") || exit 125 ;;
    o) picture=$OPTARG ;;
    s) size=$OPTARG ;;
    t) limit=$OPTARG ;;
    a) access=yes ;;
    c) compositor=yes ;;
    d) dark=1 ;;
    W) window=no ;;
    *) exit 125 ;;
  esac
done
shift $((OPTIND - 1))
[ $# -gt 0 ] || exit 125

die () { echo "drive: $*" >&2; exit 125; }
for tool in Xvfb dbus-daemon openbox xdotool import xwd; do
  command -v $tool >/dev/null || die "$tool is not installed"
done

here=$(cd "$(dirname "$0")" && pwd)
UI=$here/ui.py STEPS=$here/steps.sh
WORK=$(mktemp -d) || exit 125
mkdir -m 700 "$WORK/run" "$WORK/home"
export UI STEPS WORK DRIVE_ID="drive-$$-$RANDOM"
started=()

# --- the end: whatever happened, what was started ends, by its id ----------------------------
alive () { kill -0 "$1" 2>/dev/null; }

stop ()
{
  local i
  alive "$1" || return 0
  kill -TERM "$1" 2>/dev/null
  for i in $(seq 30); do alive "$1" || return 0; sleep 0.1; done
  kill -KILL "$1" 2>/dev/null
}

# Helpers that the bus started, known by our mark in their environment.
helpers ()
{
  local folder
  for folder in /proc/[0-9]*; do
    [ "${folder#/proc/}" = $$ ] || [ "${folder#/proc/}" = "$BASHPID" ] ||
      ! { tr '\0' '\n' <"$folder/environ"; } 2>/dev/null | grep -qx "DRIVE_ID=$DRIVE_ID" ||
      echo "${folder#/proc/}"
  done
}

cleanup ()
{
  local status=$? i pid
  trap - EXIT
  trap '' INT TERM
  for ((i = ${#started[@]} - 1; i >= 0; i--)); do
    stop "${started[i]}"
    wait "${started[i]}" 2>/dev/null
  done
  for pid in $(helpers); do stop "$pid"; done
  rm -rf "$WORK"
  exit $status
}
trap cleanup EXIT
trap 'exit 130' INT
trap 'exit 143' TERM

# --- surroundings: nothing of the caller's desktop comes in -----------------------------------
unset GTK_THEME WAYLAND_DISPLAY DBUS_SESSION_BUS_ADDRESS AT_SPI_BUS_ADDRESS XAUTHORITY \
  SESSION_MANAGER DESKTOP_STARTUP_ID
export GDK_BACKEND=x11 GDK_SCALE=1 GSK_RENDERER=${GSK_RENDERER:-cairo} GSETTINGS_BACKEND=memory \
  GIO_USE_VFS=local XDG_RUNTIME_DIR=$WORK/run XDG_SESSION_TYPE=x11 HOME=$WORK/home \
  XDG_CONFIG_HOME=$WORK/home/config XDG_DATA_HOME=$WORK/home/data \
  XDG_CACHE_HOME=$WORK/home/cache XDG_STATE_HOME=$WORK/home/state
# The first lay stays, unless a script asks for better ones.
export SQUAB_LAY_SECONDS=${SQUAB_LAY_SECONDS:-0}
if [ $access = yes ]; then
  unset GTK_A11Y NO_AT_BRIDGE
else
  export GTK_A11Y=${GTK_A11Y:-none} NO_AT_BRIDGE=1
fi
mkdir -p "$XDG_CONFIG_HOME/gtk-4.0"
cat >"$XDG_CONFIG_HOME/gtk-4.0/settings.ini" <<END
[Settings]
gtk-enable-animations=false
gtk-cursor-blink=false
gtk-application-prefer-dark-theme=$dark
END

mkfifo "$WORK/display" "$WORK/bus"
Xvfb -displayfd 3 -screen 0 "${size}x24" -nolisten tcp -noreset 3>"$WORK/display" \
  >"$WORK/xvfb.log" 2>&1 &
started+=($!)
read -r -t 20 number <"$WORK/display" || die "no X server: $(tail -3 "$WORK/xvfb.log")"
export DISPLAY=:$number

dbus-daemon --session --nofork --nopidfile --address="unix:path=$WORK/run/bus" --print-address=4 \
  4>"$WORK/bus" >"$WORK/bus.log" 2>&1 &
started+=($!)
read -r -t 20 DBUS_SESSION_BUS_ADDRESS <"$WORK/bus" || die "no bus: $(tail -3 "$WORK/bus.log")"
export DBUS_SESSION_BUS_ADDRESS

openbox --sm-disable >"$WORK/openbox.log" 2>&1 &
started+=($!)
for i in $(seq 200); do
  xprop -root _NET_SUPPORTING_WM_CHECK 2>/dev/null | grep -q 'window id' && break
  sleep 0.05
done
if [ $compositor = yes ]; then
  xcompmgr >"$WORK/xcompmgr.log" 2>&1 &
  started+=($!)
  sleep 0.2
fi

# --- the program ------------------------------------------------------------------------------
"$@" >"$WORK/app.out" 2>"$WORK/app.err" &
APP_PID=$!
started+=($APP_PID)
(
  sleep "$limit" &
  trap "kill $! 2>/dev/null" TERM
  wait $! && touch "$WORK/late" && stop $APP_PID
) 2>/dev/null &
started+=($!)

finish ()
{
  cat "$WORK/app.out"
  cat "$WORK/app.err" >&2
  [ ! -e "$WORK/late" ] || { echo "drive: over $limit s" >&2; exit 124; }
  exit "$1"
}

shot () { import -silent -window root "$1"; }

if [ $window = no ]; then
  wait $APP_PID
  status=$?
  [ -z "$picture" ] || shot "$picture"
  finish $status
fi

settle ()
{
  local end=$((SECONDS + ${1:-5})) before now
  before=$(xwd -silent -root | md5sum)
  while [ $SECONDS -lt $end ]; do
    sleep 0.15
    now=$(xwd -silent -root | md5sum)
    [ "$now" != "$before" ] || return 0
    before=$now
  done
  return 1
}

waitwin ()
{
  local end=$((SECONDS + ${2:-10})) found
  while [ $SECONDS -le $end ]; do
    found=$(xdotool search --onlyvisible --name "$1" 2>/dev/null | tail -1)
    [ -z "$found" ] || { echo "$found"; return 0; }
    sleep 0.1
  done
  fail "no window '$1'"
}

waitlog ()
{
  local end=$((SECONDS + ${2:-10}))
  while [ $SECONDS -le $end ]; do
    grep -qE -- "$1" "$WORK/app.out" "$WORK/app.err" && return 0
    sleep 0.05
  done
  fail "no line '$1'"
}

click ()
{
  xdotool mousemove --window "$WIN" "$1" "$2" sleep 0.05 click "${3:-1}"
  sleep 0.1
}

# In steps, as a hand does it: from one jump a gesture sees a single move.
drag ()
{
  local button=${5:-1} i
  xdotool mousemove --window "$WIN" "$1" "$2" sleep 0.05 mousedown "$button"
  for i in 1 2 3 4 5 6 7 8 9 10; do
    xdotool mousemove --window "$WIN" $(($1 + ($3 - $1) * i / 10)) $(($2 + ($4 - $2) * i / 10)) \
      sleep 0.02
  done
  xdotool mouseup "$button"
  sleep 0.1
}

scroll ()
{
  local button=5
  [ "$3" != up ] || button=4
  xdotool mousemove --window "$WIN" "$1" "$2" sleep 0.05 \
    click --repeat "${4:-1}" --delay 30 $button
  sleep 0.1
}

key () { xdotool key --clearmodifiers --delay 40 "$@"; sleep 0.1; }
type_text () { xdotool type --clearmodifiers --delay 20 -- "$1"; sleep 0.1; }
fail () { echo "drive: $*" >&2; exit 1; }

WIN= end=$((SECONDS + 60))
while [ -z "$WIN" ] && [ $SECONDS -le $end ]; do
  if ! alive $APP_PID; then
    wait $APP_PID
    status=$?
    echo "drive: the program ended ($status) before its window came" >&2
    finish $((status ? status : 125))
  fi
  WIN=$(xdotool search --onlyvisible --maxdepth 2 --pid $APP_PID 2>/dev/null | tail -1)
  sleep 0.05
done
[ -n "$WIN" ] || { cat "$WORK/app.err" >&2; die 'no window came'; }
settle

status=0
if [ -n "$code" ]; then
  (trap - EXIT; set +u; eval "$code")
  status=$?
fi
if [ -n "$picture" ]; then
  settle
  shot "$picture"
fi
if ! alive $APP_PID; then
  wait $APP_PID
  ended=$?
  [ $status -ne 0 ] || status=$ended
fi
finish $status
