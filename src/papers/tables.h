/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Tables of texts on pages. Internal to the room. */
#pragma once

#include "papers/pages.h"
#include "words/cut-sheet.h"

/* Adds @table with its heading ("": none), nothing if it has no rows. Columns are as wide as their texts ask
 * for; where that is too much, those of words are wrapped. Rows are never torn; on the
 * next page the table goes on under its heads. */
void sq_pages_table (SqPages *pages, const SqSheetTable *table);
/* The height that takes, heading and all. */
double sq_pages_table_height_mm (SqPages *pages, const SqSheetTable *table);
