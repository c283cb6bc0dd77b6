#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# run.sh [--deep]: everything that can be checked, from a fresh checkout on Debian or Ubuntu.
# Stops at the first stage that fails. The last line is `N passed, N failed, N skipped`.
set -euo pipefail
cd "$(dirname "$0")/.."

deep=no others=()
case "${1:-}" in
  --deep) deep=yes ;;
  '') ;;
  *) echo "usage: tests/run.sh [--deep]" >&2; exit 2 ;;
esac

trees=build-tests # each stage's build folder stands in here
passed=0 failed=0 skipped=0
stage= begin=$SECONDS

# Ends the stage before, says its seconds, and begins the next.
stage ()
{
  [ -z "$stage" ] || echo "=== $stage: $((SECONDS - begin)) s"
  stage=$1 begin=$SECONDS
  [ -z "$stage" ] || echo "=== $stage"
}

finish ()
{
  local status=$?
  if [ $status -ne 0 ]; then
    echo "=== $stage: failed after $((SECONDS - begin)) s"
    [ $failed -gt 0 ] || failed=1
    status=1
  fi
  echo "=== all: $SECONDS s"
  echo "$passed passed, $failed failed, $skipped skipped"
  exit $status
}
trap finish EXIT
trap 'exit 130' INT
trap 'exit 143' TERM

# set_up TREE OPTION…: a build folder, made once.
set_up ()
{
  local tree=$trees/$1
  shift
  if [ ! -f "$tree/build.ninja" ]; then
    meson setup "$tree" "$@"
  fi
}

# build TREE OPTION…: a build folder and all that is built there.
build ()
{
  set_up "$@"
  ninja -C "$trees/$1"
}

# check TREE OPTION…: runs meson's tests there and adds them up.
check ()
{
  local tree=$trees/$1 status=0 p f s
  shift
  rm -f "$tree/meson-logs/testlog.json"
  meson test -C "$tree" --no-rebuild --print-errorlogs "$@" || status=$?
  read -r p f s < <(python3 tests/count.py "$tree/meson-logs/testlog.json")
  passed=$((passed + p)) failed=$((failed + f)) skipped=$((skipped + s))
  return $status
}

# Every library pkg-config knows but GTK, so that nobody finds it by accident.
without_gtk ()
{
  local folder=$PWD/$trees/pkg-config directory
  mkdir -p "$folder"
  for directory in $(pkg-config --variable pc_path pkg-config | tr ':' ' '); do
    [ ! -d "$directory" ] || find "$directory" -name '*.pc' ! -name 'gtk4*' \
      -exec ln -sf -t "$folder" {} +
  done
  PKG_CONFIG_LIBDIR=$folder "$@"
}

stage 'packages without GTK'
bash data/install-packages.sh build tests

stage 'build and tests without the window'
without_gtk build core -Dwerror=true -Dwindow=disabled
check core --no-suite lint --no-suite laws --no-suite outside
if ldd $trees/core/src/command/squab-cut | grep -i gtk; then
  echo 'squab-cut links GTK'
  exit 1
fi

stage 'packages of the window'
bash data/install-packages.sh window window-tests

stage 'build with warnings as errors'
build plain -Dwerror=true -Dbench=true

stage 'units and lint'
check plain --no-suite window --no-suite laws

# A first look; all of them come under the sanitizers.
stage 'laws'
SQUAB_LAWS=5000 check plain --suite laws --timeout-multiplier 5

stage 'threads of the search under their sanitizer'
set_up tsan -Dwerror=true -Dwindow=disabled -Db_sanitize=thread -Db_lundef=false
ninja -C $trees/tsan tests/roll/test-roll-lay-threads
check tsan lay-threads --timeout-multiplier 10

stage 'window'
[ $deep = yes ] || others=(--no-suite sanitized --no-suite monkey)
check plain --suite window "${others[@]}"

stage 'build with sanitizers'
build asan -Dwerror=true -Db_sanitize=address,undefined -Db_lundef=false
export G_SLICE=always-malloc ASAN_OPTIONS=detect_leaks=1 \
  LSAN_OPTIONS=suppressions=$PWD/tests/lsan.supp:print_suppressions=0 \
  UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1

stage 'units and laws with sanitizers'
SQUAB_LAWS=2500 check asan --no-suite lint --no-suite drawing --no-suite window --no-suite outside \
  --timeout-multiplier 10

stage 'drawing and window with sanitizers'
# Slow, but the only way to see which leaks are the libraries' own.
ASAN_OPTIONS+=:fast_unwind_on_malloc=0
export SQUAB_DRIVE_SECONDS=600
if [ $deep = yes ]; then
  check asan --suite drawing --suite window --timeout-multiplier 10
else
  check asan --suite drawing --suite sanitized --suite actions --timeout-multiplier 10
fi

stage 'fuzzing'
CC=clang build fuzz -Dfuzz=true -Dwindow=disabled -Db_sanitize=address,undefined -Db_lundef=false
check fuzz --suite fuzz

if [ $deep = yes ]; then
  stage '100,000 random jobs, and as many lays'
  SQUAB_LAWS=50000 check plain --suite laws --timeout-multiplier 0
  SQUAB_LAYS=100000 check plain --suite roll --timeout-multiplier 0

  stage 'fuzzing, ten minutes for each reader'
  mapfile -t fuzzers < <(meson test -C $trees/fuzz --list | sed -n 's|.* / \(fuzz-.*\)|\1|p')
  check fuzz --test-args=-max_total_time=600 "${fuzzers[@]}"
fi

stage 'install and uninstall'
place=$PWD/$trees/installed
rm -rf "$place"
DESTDIR=$place meson install -C $trees/plain --no-rebuild --quiet
"$(find "$place" -name squab-cut -type f)" data/samples/bay-seat.squab >/dev/null
ninja -C $trees/plain uninstall >/dev/null
if [ -e "$place" ]; then
  find "$place"
  echo 'is what uninstalling left'
  exit 1
fi

stage ''
