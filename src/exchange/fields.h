/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Records and the JSON objects they are in files: one table for each kind, that both reading and
 * writing follow. Internal to the room. */
#pragma once

#include "exchange/json-scan.h"
#include "exchange/json-write.h"

/* Lengths beyond this are refused (mm): 100 m. */
#define SQ_FILE_MOST_MM 100000.0
#define SQ_FILE_MOST_COUNT 100000

typedef enum
{
  SQ_FIELD_LENGTH,  /* double: mm, at most 100 m to either side */
  SQ_FIELD_SIZE,    /* double: mm, 0 … 100 m */
  SQ_FIELD_NUMBER,  /* double: finite */
  SQ_FIELD_HALF,    /* double: 0 or 0.5 */
  SQ_FIELD_COUNT,   /* guint: 1 … 100,000 */
  SQ_FIELD_WHOLE,   /* guint: 0 … 2³² − 1 */
  SQ_FIELD_GREAT,   /* guint64: 0 … 2⁵³ */
  SQ_FIELD_DIGEST,  /* guint64: a text of 16 hexadecimal digits */
  SQ_FIELD_ID,      /* SqId: 1 … 2³² − 1 */
  SQ_FIELD_SWITCH,  /* gboolean */
  SQ_FIELD_WORD,    /* an enum, or a gboolean, counted from 0: its place in `words` */
  SQ_FIELD_COLOUR,  /* guint32: "#rrggbb" */
  SQ_FIELD_TEXT,    /* GRefString *, NULL or empty where absent */
  SQ_FIELD_PART,    /* an object whose fields are in the same record: `part` */
  SQ_FIELD_LIST,    /* GArray * of records, each an object with fields of its own: `part`; looked
                       over by `read`, if there is one, when all are there */
  SQ_FIELD_OWN,     /* read (NULL: not here) and written by functions of its own */
  SQ_FIELD_SKIPPED, /* looked at elsewhere, or of no consequence */
} SqFieldKind;

typedef struct _SqFields SqFields;

typedef struct
{
  const char *key;
  SqFieldKind kind;
  guint offset;  /* in the record */
  guint32 given; /* its bit where the record says what was given, else 0; a field without one is
                    written where it is not 0 */
  enum
  {
    SQ_FIELD_OPTIONAL,
    SQ_FIELD_REQUIRED, /* absent: refused; always written */
    SQ_FIELD_WRITTEN,  /* may be absent; always written */
  } need;
  const char *const *words; /* NULL-terminated */
  const SqFields *part;
  gboolean (*read) (const SqJson *json, guint token, gpointer record, GError **error);
  void (*write) (SqJsonWriter *writer, const char *key, gconstpointer record);
} SqField;

struct _SqFields
{
  const SqField *fields;
  guint n_fields;
  guint given_offset;     /* of the guint32 with the given bits, if any field has one */
  gboolean keeps_unknown; /* else unknown keys are refused */
  guint unknown_offset;   /* of the GRefString * that keeps them */
};

/* Reads the object @token into @record, whose fields are 0 before. FALSE with SQ_ERROR_VALUE and a
 * message that begins with the key's path. */
gboolean sq_fields_read (const SqFields *fields, const SqJson *json, guint token, gpointer record,
                         GError **error);

/* Writes what @record holds into the object that is open. */
void sq_fields_write (const SqFields *fields, SqJsonWriter *writer, gconstpointer record);

/* Sets SQ_ERROR_VALUE at the path of @token; always FALSE. */
gboolean sq_refuse (const SqJson *json, guint token, GError **error, const char *what);

/* Single values, as the fields of these kinds are read. */
gboolean sq_read_number (const SqJson *json, guint token, double *number, GError **error);
gboolean sq_read_length (const SqJson *json, guint token, double *mm, GError **error);
/* The same, and not below 0. */
gboolean sq_read_size (const SqJson *json, guint token, double *mm, GError **error);
gboolean sq_read_whole (const SqJson *json, guint token, double least, double most, guint32 *number,
                        GError **error);
/* The place in @words, NULL-terminated, of the word @token. */
gboolean sq_read_word (const SqJson *json, guint token, const char *const *words, guint *place,
                       GError **error);
gboolean sq_read_kind (const SqJson *json, guint token, SqJsonKind kind, GError **error);

/* Whether @json is an object whose `format` is @name and whose `version` is 1 … @newest: asked
 * before anything else is read, since a newer version may change all of it. Else SQ_ERROR_SYNTAX,
 * SQ_ERROR_VALUE or SQ_ERROR_NEWER. */
gboolean sq_check_format (const SqJson *json, const char *name, guint newest, GError **error);
