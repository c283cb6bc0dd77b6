# SPDX-License-Identifier: GPL-3.0-or-later
. "$STEPS"
until_says seat '5 corners, 47 by 19 in'
until_says pieces '7 pieces; Top 47 7⁄8 × 19 7⁄8, cut 1; Underside *'
