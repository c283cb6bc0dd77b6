# SPDX-License-Identifier: GPL-3.0-or-later
# Every control that can be acted on has a name for screen readers: in the window, its menus and
# dialogs. The list is printed.
. "$STEPS"

# What is acted on, read or gone into; the rest is there to hold others together.
controls='(push button|toggle button|radio button|check box|switch|text|entry|combo box|spin button|slider|list item|menu item|image|page tab|link|table cell)'

# named WHERE: prints the controls there are now; fails at one without a name.
named ()
{
  "$UI" squab tree > "$WORK/tree" || "$UI" squab tree > "$WORK/tree"
  echo "--- $1"
  sed -nE "s/^ *($controls '[^']*').*/\\1/p" "$WORK/tree" | sort | uniq -c
  # A button within one of a name is what GTK makes of it, as are the parts of its own dialogs.
  grep -E "^ *$controls ''" "$WORK/tree" && fail "$1: controls without a name"
  return 0
}

# Shown by their action, as a screen reader does.
menu_item () { key F10; until_there 'menu item' "$1"; "$UI" squab do 'menu item' "$1"; sleep 0.5; }

named 'a job'
key a Return
until_there text 'Angle at corner A'
named 'a field on the seat'
key Escape
key shift+F10
until_there 'menu item' 'Remove corner'
named 'the menu of a corner'
key Escape
"$UI" squab click image Pieces
key n shift+F10
until_there 'menu item' 'Turn the stripes'
named 'a lit seam and the menu of the pieces'
key Escape
key F10
until_there 'menu item' 'Keys'
named 'the main menu'
key Escape
"$UI" squab do 'push button' 'Cushions menu' 2>/dev/null || "$UI" squab click 'push button' 'Cushions menu'
until_there 'menu item' 'Mirror'
named 'the menu of the cushions'
key Escape

# Dialogs, each opened and left by its keys.
dialog () # NAME ROLE OF-SOMETHING-IN-IT
{
  until_there "$2" "$3"
  named "$1"
  key Escape
  until_gone "$2" "$3"
}
key ctrl+j
dialog 'the job' text Customer
key ctrl+shift+h
dialog 'a hole' text Diameter
key ctrl+p
until_there 'push button' 'Save as PDF…'
key alt+e
until_there text Overlap
"$UI" squab do 'push button' 'For plotters and cutting tables'
until_there 'combo box' Layers
dialog 'print and export' text 'First free label'
key ctrl+t
dialog 'another cushion from its sides' text 'Side A–B'
"$UI" squab click 'combo box' Face
until_there label 'New cloth…'
key Down Down Return
dialog 'a new cloth' text 'Usable width'
"$UI" squab click 'combo box' Face
until_there label 'From the shelf…'
key End Return
until_there 'push button' Cancel
named 'the shelf'
key Escape
"$UI" squab click image Seat
key b Right ctrl+h
until_there 'list item' 'Move corner B (now)'
named 'all steps'
key Escape
