/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Writing of JSON: pretty, always the same, and easy on the eye in a comparison of versions. */
#pragma once

#include <glib.h>

/* How an object or array is laid out: a line for each of its values, or all on one. What is inside
 * a line stays on it. */
typedef enum
{
  SQ_JSON_LINES,
  SQ_JSON_LINE,
} SqJsonLayout;

typedef struct _SqJsonWriter SqJsonWriter;

SqJsonWriter *sq_json_writer_new (void);
void sq_json_writer_free (SqJsonWriter *writer);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqJsonWriter, sq_json_writer_free)

/* In all that follow @key is the key within an object, plain words without anything to escape, and
 * NULL within an array or for the whole. */

void sq_json_open_object (SqJsonWriter *writer, const char *key, SqJsonLayout layout);
void sq_json_open_array (SqJsonWriter *writer, const char *key, SqJsonLayout layout);
/* Closes what was opened last and is still open. */
void sq_json_close (SqJsonWriter *writer);

/* Finite; reads back bit-equal (but −0 as 0). */
void sq_json_add_number (SqJsonWriter *writer, const char *key, double number);
void sq_json_add_integer (SqJsonWriter *writer, const char *key, gint64 number);
void sq_json_add_boolean (SqJsonWriter *writer, const char *key, gboolean value);
/* @text in UTF-8; NULL: null. */
void sq_json_add_string (SqJsonWriter *writer, const char *key, const char *text);
/* @digest as a text of 16 hexadecimal digits: a number would lose some of it. */
void sq_json_add_digest (SqJsonWriter *writer, const char *key, guint64 digest);
/* @json: the text of a value, on one line; not checked. */
void sq_json_add_text (SqJsonWriter *writer, const char *key, const char *json);
/* All keys of @object, the text of a JSON object, written as they are there. */
void sq_json_add_members (SqJsonWriter *writer, const char *object);

/* The text, yours, with a line end after it. Everything must be closed. */
char *sq_json_writer_dup_text (const SqJsonWriter *writer);
