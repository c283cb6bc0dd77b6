# SPDX-License-Identifier: GPL-3.0-or-later
# F1 asks the desktop for the help pages, in a build that isn't installed for the same in a browser;
# where it has neither, it says where they lie. The programs asked are made here, and write down what
# they are given.
. "$STEPS"
folder=$XDG_DATA_HOME/applications
mkdir -p "$folder"

# handler NAME TYPE: the desktop's program for the type.
handler ()
{
  printf '#!/bin/sh\nprintf "%%s\\n" "$1" >>%s/%s\n' "$WORK" "$1" >"$WORK/$1.sh"
  chmod +x "$WORK/$1.sh"
  printf '[Desktop Entry]\nType=Application\nName=%s\nExec=%s/%s.sh %%u\nMimeType=%s;\n' \
    "$1" "$WORK" "$1" "$2" >"$folder/$1.desktop"
  printf '[Default Applications]\n%s=%s.desktop\n' "$2" "$1" >"$XDG_CONFIG_HOME/mimeapps.list"
}

# asked NAME WANTED: until the last that program was given matches.
asked ()
{
  last () { tail -n 1 "$WORK/$1" 2>/dev/null; }
  for _ in $(seq 50); do
    # shellcheck disable=SC2053
    [[ $(last "$1") != $2 ]] || return 0
    sleep 0.1
  done
  fail "$1 was asked for '$(last "$1")', not '$2'"
}

nothing_shows_it ()
{
  key F1
  "$UI" squab wait label 'Nothing here can show the help'
  key Escape
  until_gone label 'Nothing here can show the help'
}

nothing_shows_it
if [ -n "${SQUAB_HELPDIR-}" ]; then
  handler browser text/html
  key F1
  asked browser "*$SQUAB_HELPDIR/index.html" # a path or an address
else
  handler viewer x-scheme-handler/help
  key F1
  asked viewer 'help:squab/index'

  # Beside the papers it tells of them.
  "$UI" squab click 'push button' 'Square seat'
  until_there image Seat
  key ctrl+p
  waitwin 'Print and export' >/dev/null
  key F1
  asked viewer 'help:squab/cut-list'
fi
