/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The tables of a cut sheet. Internal to the room. */
#pragma once

#include "words/cut-sheet.h"

/* @heading and @aligns are static, @heads (may be NULL) ends in NULL and is copied. */
void sq_sheet_table_begin (SqSheetTable *table, const char *heading, const char *aligns,
                           const char *const *heads);

/* A row of @cells, one a column, which are taken. */
void sq_sheet_table_add (SqSheetTable *table, char *const *cells);

/* The name of cover @i; "" where there is only one. New text. */
char *sq_sheet_cushion_name (const SqPlan *plan, guint i);

void sq_sheet_add_cushions (SqSheetTable *table, const SqPlan *plan, const SqLengthStyle *style);
void sq_sheet_add_zips (SqSheetTable *table, const SqPlan *plan, const SqLengthStyle *style);
void sq_sheet_add_foam (SqSheetTable *table, const SqPlan *plan, const SqLengthStyle *style);
/* How many sheets it takes; without rows where @lays is NULL. */
void sq_sheet_add_foam_sheets (SqSheetTable *table, const SqLays *lays, const SqLengthStyle *style);
/* @lays may be NULL. */
void sq_sheet_add_totals (SqSheetTable *table, const SqPlan *plan, const SqLays *lays,
                          const SqLengthStyle *style);
