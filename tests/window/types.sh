# SPDX-License-Identifier: GPL-3.0-or-later
# A thickness typed as makers write it is taken, and the boxing is as much lower.
. "$STEPS"
until_says pieces '*Front boxing 46 3⁄4 × 4,*'
"$UI" squab click text Thickness
key ctrl+a
type_text '36 - 2*16 - 1 1/2'
key Return
until_says pieces '*Front boxing 46 3⁄4 × 3 1⁄2,*'
