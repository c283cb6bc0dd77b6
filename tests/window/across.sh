# SPDX-License-Identifier: GPL-3.0-or-later
# A face wider than its cloth: the ways out stand below what is wrong, with the cloth each takes; a click
# takes one, in one step; the seat divided is as many cushions.
. "$STEPS"
# The whole name of the button that begins with $1, as soon as the cloth it takes is there.
offer ()
{
  local name
  for _ in $(seq 100); do
    name=$("$UI" squab tree | sed -n "s/^ *push button '\($1: [^']*\)' '.*/\1/p" | head -1)
    [ -z "$name" ] || { echo "$name"; return; }
    sleep 0.1
  done
  fail "no offer of $1"
}
# Away from what shows a tooltip first.
take () { local name; xdotool mousemove 20 20; sleep 0.3; name=$(offer "$1"); "$UI" squab click 'push button' "$name"; }

"$UI" squab click text 'Seat width'
key ctrl+a
type_text 72
key Return
until_says pieces '9 pieces; Top 72 *'
key F8
take 'Two joins'
did 'Two joins'
until_says pieces '13 pieces; *'
"$UI" squab tree | grep "'Two joins: " >/dev/null && fail 'what is done is offered still'
key ctrl+z
until_says pieces '9 pieces; Top 72 *'

take '2 cushions side by side'
did '2 cushions side by side'
"$UI" squab wait 'list item' 'Bay seat 1, *' 2>/dev/null
"$UI" squab tree | grep "Bay seat 2" >/dev/null || fail 'the parts are not numbered'
key ctrl+z
until_says pieces '9 pieces; Top 72 *'

# By the keyboard, too.
take 'Cloth from side to side'
did 'Cloth from side to side'
key ctrl+z
until_says pieces '9 pieces; Top 72 *'
