# SPDX-License-Identifier: GPL-3.0-or-later
# With text of twice the size at 1280×720 nothing that is acted on is cut off at a side, on the start
# page and in a job; what is below is scrolled to.
. "$STEPS"

inside () # what is showing, by its place and size, between the window's left and right
{
  "$UI" squab tree | python3 -c '
import re, sys
lines = [re.match(r" *(\D+?) (\x27.*\x27) (-?\d+) (-?\d+) (\d+) (\d+)$", line.rstrip()) for line in sys.stdin]
lines = [line.groups() for line in lines if line]
frame = next(line for line in lines if line[0] == "frame")
left, right = int(frame[2]), int(frame[2]) + int(frame[4])
acted = ("push button", "toggle button", "text", "combo box", "image", "spin button", "page tab")
out = [line for line in lines if line[0] in acted and int(line[4]) > 0 and int(line[5]) > 0
       and (int(line[2]) < left - 1 or int(line[2]) + int(line[4]) > right + 1)]
print(*out, sep="\n")
sys.exit(len(out) > 0 or len(lines) < 10)' || fail "$1: cut off at a side"
}

sleep 0.5
inside 'from a shape'
"$UI" squab click 'page tab' 'From its sides'
"$UI" squab wait text 'Side A–B'
inside 'from its sides'
for typed in '46 in' 90 '12 in' 135 '10 in' 135 '38 in'; do
  type_text "$typed"
  key Return
done
"$UI" squab wait text 'Closing side E–A'
inside 'five sides'
"$UI" squab click 'text' 'Side E–F'
key Return Return
until_says seat '5 corners*'
inside 'the job'
key a Return
until_there text 'Angle at corner A'
inside 'a field on the seat'
key Escape
