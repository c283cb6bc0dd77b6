/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Strict reading of JSON (RFC 8259): the text is checked whole and laid out as a table of values
 * that say where in the text they stand, so that numbers keep all their digits and keys that are
 * not known can be carried exactly as they were written. */
#pragma once

#include <glib.h>

#define SQ_JSON_MOST_BYTES (32u << 20)
#define SQ_JSON_MOST_DEPTH 64

typedef enum
{
  SQ_JSON_NULL,
  SQ_JSON_BOOLEAN,
  SQ_JSON_NUMBER,
  SQ_JSON_STRING,
  SQ_JSON_ARRAY,
  SQ_JSON_OBJECT,
} SqJsonKind;

/* One value, or a key of an object. */
typedef struct
{
  guint32 from, to; /* bytes of the text, strings with their quotes */
  guint32 next;     /* the value after this one and all that is inside it */
} SqJsonToken;

/* A text that is JSON. Value 0 is the whole. What is inside value i are the values i + 1 and on
 * along `next`, up to but without i's own `next`; an object's are key, value, key, value. */
typedef struct
{
  const char *text; /* borrowed */
  gsize length;
  SqJsonToken *tokens;
  guint n_tokens;
} SqJson;

/* Checks @text, @length bytes (−1: up to its NUL), which must outlive the result. Refused with
 * SQ_ERROR_SYNTAX and a message with line and column: bytes that are not UTF-8, \u0000, raw
 * control characters, lone surrogates, `01`, `1.`, `.5`, anything after the value, two keys alike
 * in one object, more than SQ_JSON_MOST_DEPTH levels or SQ_JSON_MOST_BYTES bytes. */
SqJson *sq_json_scan (const char *text, gssize length, GError **error);
void sq_json_free (SqJson *json);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqJson, sq_json_free)

SqJsonKind sq_json_kind (const SqJson *json, guint token);

/* Whether @token, a string, reads @text. */
gboolean sq_json_is (const SqJson *json, guint token, const char *text);

/* The string @token without quotes and escapes; new text. */
char *sq_json_dup_string (const SqJson *json, guint token);

/* The number @token as the nearest double: infinite beyond them all, and never minus zero. */
double sq_json_number (const SqJson *json, guint token);

/* The value of @key in the object @token, or 0. */
guint sq_json_member (const SqJson *json, guint token, const char *key);

/* How many values are in the list @token. */
guint sq_json_n_values (const SqJson *json, guint token);

/* Where @token stands, as `cushions[0].outline[2].x`; empty for the whole. A key is where its
 * value is. New text. */
char *sq_json_path (const SqJson *json, guint token);

/* Appends @token as it was written, but for the white space between values: none but one space
 * after each comma and colon. */
void sq_json_append_text (const SqJson *json, guint token, GString *to);
