#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# install-packages.sh SECTION…: says and installs what packages-debian.txt lists under these
# sections and this system lacks.
set -euo pipefail

list=$(dirname "$0")/packages-debian.txt
wanted=$(awk -v sections=" $* " \
  '/^\[/ { here = index (sections, " " substr ($0, 2, length ($0) - 2) " ") } /^[a-z]/ && here' "$list")

if ! command -v apt-get >/dev/null; then
  echo "This system has no apt-get. Please see to it that you have:" $wanted
  exit 0
fi

missing=()
for package in $wanted; do
  status=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null || true)
  [ "$status" = installed ] || missing+=("$package")
done
[ ${#missing[@]} -gt 0 ] || exit 0

echo "Installing from your distribution: ${missing[*]}"
as_root=()
[ "$(id -u)" = 0 ] || as_root=(sudo)
"${as_root[@]}" apt-get -q update
"${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
  apt-get -q -y --no-install-recommends install "${missing[@]}"
