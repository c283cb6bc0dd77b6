#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# build-html.sh XSLTPROC OUT PAGE…: the pages as HTML in the folder OUT, made anew as a whole, so that
# none stays that is there no more.
set -euo pipefail
xsltproc=$1 out=$2
shift 2
here=$(dirname "$0")
rm -rf "$out"
mkdir "$out"
names=$(basename -a "$@" | tr '\n' ' ')
for page; do
  "$xsltproc" --nonet --stringparam pages "$names" -o "$out/$(basename "$page" .page).html" \
    "$here/html.xsl" "$page"
done
cp "$here/help.css" "$out"
cp -r "$here/C/figures" "$out"
