/* SPDX-License-Identifier: GPL-3.0-or-later */
/* JSON text, written in the order it is said: two spaces a level, short things in one line, numbers
 * that read back bit-equal. */
#pragma once

#include <glib.h>

/* What is being written; fields are the writer's own. */
typedef struct
{
  GString *text;
  guint depth;        /* open objects and arrays */
  guint inline_depth; /* how many of them, the innermost, are written in one line */
  gboolean is_empty;  /* nothing in the innermost yet */
} SqJsonWriter;

typedef enum
{
  SQ_JSON_LINES,  /* every member on a line of its own */
  SQ_JSON_INLINE, /* all in one line, and what stands in it too */
} SqJsonLayout;

void sq_json_begin (SqJsonWriter *json);
/* Ends it: the text with a line end, yours to free. All that was opened must be closed. */
char *sq_json_end (SqJsonWriter *json);

/* @key is the member's name in an object, NULL in an array and at the top. Texts are UTF-8. */
void sq_json_open_object (SqJsonWriter *json, const char *key, SqJsonLayout layout);
void sq_json_close_object (SqJsonWriter *json);
void sq_json_open_array (SqJsonWriter *json, const char *key, SqJsonLayout layout);
void sq_json_close_array (SqJsonWriter *json);

/* @value is finite: see sq_number_write(). */
void sq_json_number (SqJsonWriter *json, const char *key, double value);
/* @text NULL: null. */
void sq_json_string (SqJsonWriter *json, const char *key, const char *text);
void sq_json_boolean (SqJsonWriter *json, const char *key, gboolean value);
void sq_json_null (SqJsonWriter *json, const char *key);
/* The members of @object, the text of a JSON object, among those of the one that is open, as they
 * stand; NULL: none. */
void sq_json_members (SqJsonWriter *json, const char *object);
