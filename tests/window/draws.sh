# SPDX-License-Identifier: GPL-3.0-or-later
# A seat is drawn corner by corner on empty paper: an L by clicks, a rectangle by keys alone.
. "$STEPS"
paper () { "$UI" squab about image 'Drawing paper'; }
point () { xdotool mousemove $((x + $1)) $((y + $2)) sleep 0.1; }
corner () { point "$1" "$2"; xdotool click 1; sleep 0.5; }

"$UI" squab click label 'Draw it'
read -r x y width height < <("$UI" squab rect image 'Drawing paper')
corner 200 450
until_says paper '1 corner'

# A figure is a length in the direction pointed at; it can be put right, and Enter puts the corner.
point 800 452
type_text 1003
until_says paper '1 corner; A–B 1003'
xdotool key BackSpace
type_text 0
key Return
until_says paper '2 corners*'

# Square corners say so.
point 803 300
until_says paper '2 corners; B–C 2?? · 90° · square to A–B*'
corner 803 300
corner 500 300

# A side that would cross another is refused where it happens; the last corner can be taken back.
corner 650 520
until_says paper '4 corners; sides would cross'
key BackSpace
until_says paper '3 corners*'
corner 500 300
corner 500 100
corner 200 100
point 200 450
until_says paper '6 corners; F–A * closes the seat'
xdotool click 1
until_says seat '6 corners, 1000 by 5?? mm'

# Folded corners can't turn inward: it is said in words, and the way out is a button.
"$UI" squab click 'combo box' Cover
sleep 0.3
key Down Return
until_says pieces '0 pieces'
key F8
until_there 'push button' 'Box the cushion'
"$UI" squab click 'push button' 'Box the cushion'
until_says pieces '[1-9]* pieces*'
key ctrl+z
until_says pieces '0 pieces'
key ctrl+z F8
until_says pieces '[1-9]* pieces*'

# Another one beside it, by keys alone: ten steps of 5 mm at a time; Enter closes it.
"$UI" squab click image Seat
key ctrl+shift+d
until_says paper '0 corners'
key Right Left space
until_says paper '1 corner*'
for _ in 1 2 3 4 5 6 7 8; do xdotool key shift+Right; done
key Return
for _ in 1 2 3 4 5 6; do xdotool key shift+Up; done
until_says paper '2 corners; B–C 300 · 90°'
key Return
for _ in 1 2 3 4 5 6 7 8; do xdotool key shift+Left; done
key space
until_says paper '4 corners'
key Return
until_says seat '4 corners, 400 by 300 mm*'
key ctrl+z
until_says seat '6 corners, 1000 by 5?? mm*'

# A double click puts the last corner and closes a triangle.
key ctrl+shift+d
until_says paper '0 corners'
settle
corner 200 450
until_says paper '1 corner'
corner 600 450
until_says paper '2 corners*'
point 600 150
xdotool click --repeat 2 --delay 60 1
until_says seat '3 corners, *'
key ctrl+z
until_says seat '6 corners, 1000 by 5?? mm*'

# Escape gives up and asks nothing.
key ctrl+shift+d
until_says paper '0 corners'
key space Escape
until_says seat '6 corners, 1000 by 5?? mm*'
