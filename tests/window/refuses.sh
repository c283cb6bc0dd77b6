# SPDX-License-Identifier: GPL-3.0-or-later
# A file that is no job is refused with a sentence; the job that is open stays.
. "$STEPS"
echo '{ "format": "squab job", "version": 1, "cushions": [ {' >"$WORK/broken.squab"
key ctrl+o
waitwin 'Open a job' >/dev/null
key ctrl+l
type_text "$WORK/broken.squab"
key Return
"$UI" squab wait label '“broken.squab” could not be opened' 10 || fail 'nothing was said'
key Escape
until_says seat '5 corners, 47 by 19 in'
