# SPDX-License-Identifier: GPL-3.0-or-later
# Where nothing can be kept, a bar says so and work goes on; where nothing can be saved, a sentence
# does, and the changes stay. A file that another program wrote is not saved over unasked.
. "$STEPS"
rm -rf "$XDG_STATE_HOME/squab/recovery"
mkdir -p "$XDG_STATE_HOME/squab"
: >"$XDG_STATE_HOME/squab/recovery" # not a folder: works for root as well
"$UI" squab click image Seat
key b Right
until_says seat '5 corners, 47 1/16 by 19 in; corner B chosen'
until_there 'push button' 'Hide this' || fail 'the bar did not say so'
rm "$XDG_STATE_HOME/squab/recovery"

echo ' ' >>"$WORK/job.squab"
cp "$WORK/job.squab" "$WORK/theirs.squab"
key ctrl+s
until_there label '“job.squab” was changed by somebody else' || fail 'nothing was asked'
key Escape
cmp "$WORK/job.squab" "$WORK/theirs.squab" || fail 'it was saved over'

rm "$WORK/job.squab"
mkdir "$WORK/job.squab"
key ctrl+w
until_there label 'Save the changes to “Bay window”?'
key alt+s
until_there label '“job.squab” was changed by somebody else'
key alt+s
until_there label '“job.squab” could not be saved' || fail 'nothing was said'
key Escape
until_says seat '5 corners, 47 1/16 by 19 in; corner B chosen'
