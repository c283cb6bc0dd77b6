/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One function for each kind of paper: adds its pages (SqPage, at least one) to @pages. Internal to
 * the room. */
#pragma once

#include "papers/paper.h"

void sq_cut_list_pages (GArray *pages, const SqPaperSpec *spec);
void sq_layout_pages (GArray *pages, const SqPaperSpec *spec);
