/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Plain text in columns, aligned by the width that characters have on a terminal: wide ones (CJK)
 * count two, combining ones none. */
#pragma once

#include <glib.h>

/* Columns that @text takes. */
guint sq_text_width (const char *text);

/* @text without line breaks and other control characters, which a name from a file may carry; new
 * text. Bytes that are not UTF-8 are shown as U+FFFD. */
char *sq_text_clean (const char *text);

/* @text with spaces that no line is broken at; new text. */
char *sq_text_unbroken (const char *text);

/* Adds @text, which is taken, to a list of things in one line: "a, b". */
void sq_text_add_to_list (GString *list, char *text);

/* Appends @text and a line end, broken before column @most where it is longer; its first line
 * follows what stands on the line already, @indent columns, and the others begin there. Breaks at
 * spaces and between wide characters, never inside "18 1/2 in" or "18 × 20". */
void sq_text_append_wrapped (GString *out, const char *text, guint indent, guint most);

typedef struct _SqTextTable SqTextTable;

/* A table whose columns are aligned as @aligns says, a letter each: 'l' or 'r'. */
SqTextTable *sq_text_table_new (const char *aligns);
void sq_text_table_free (SqTextTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqTextTable, sq_text_table_free)

/* A row of as many cells as there are columns. The table takes the texts. */
void sq_text_table_add_row (SqTextTable *table, char *const *cells);
/* A remark below the row before, beginning at @column. Takes @text. */
void sq_text_table_add_remark (SqTextTable *table, guint column, char *text);

/* Appends the table, moved in by @indent, wrapped before column @most (the last column of a row
 * only if it is aligned left). */
void sq_text_table_append (const SqTextTable *table, GString *out, guint indent, guint most);
