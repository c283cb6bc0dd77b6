/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/fields.h"

#include "base/error.h"
#include "base/id.h"

#include <math.h>
#include <string.h>

#define MOST_EXACT 9007199254740992.0 /* 2⁵³ */
#define DIGEST_DIGITS 16

gboolean
sq_refuse (const SqJson *json, guint token, GError **error, const char *what)
{
  g_autofree char *path = sq_json_path (json, token);

  g_set_error (error, SQ_ERROR, SQ_ERROR_VALUE, "%s%s%s", path, *path != '\0' ? ": " : "", what);
  return FALSE;
}

static gboolean
refuse_missing (const SqJson *json, guint object, const char *key, GError **error)
{
  g_autofree char *path = sq_json_path (json, object);

  g_set_error (error, SQ_ERROR, SQ_ERROR_VALUE, "%s%s%s: missing", path, *path != '\0' ? "." : "",
               key);
  return FALSE;
}

gboolean
sq_read_kind (const SqJson *json, guint token, SqJsonKind kind, GError **error)
{
  static const char *const wanted[] = {
    [SQ_JSON_NULL] = "not null",       [SQ_JSON_BOOLEAN] = "neither true nor false",
    [SQ_JSON_NUMBER] = "not a number", [SQ_JSON_STRING] = "not a text",
    [SQ_JSON_ARRAY] = "not a list",    [SQ_JSON_OBJECT] = "not an object",
  };

  return sq_json_kind (json, token) == kind || sq_refuse (json, token, error, wanted[kind]);
}

gboolean
sq_read_number (const SqJson *json, guint token, double *number, GError **error)
{
  double value;

  if (!sq_read_kind (json, token, SQ_JSON_NUMBER, error))
    return FALSE;
  value = sq_json_number (json, token);
  if (!isfinite (value))
    return sq_refuse (json, token, error, "not a finite number");
  *number = value;
  return TRUE;
}

gboolean
sq_read_length (const SqJson *json, guint token, double *mm, GError **error)
{
  double value;

  if (!sq_read_number (json, token, &value, error))
    return FALSE;
  if (fabs (value) > SQ_FILE_MOST_MM)
    return sq_refuse (json, token, error, "more than 100 m");
  *mm = value;
  return TRUE;
}

gboolean
sq_read_size (const SqJson *json, guint token, double *mm, GError **error)
{
  return sq_read_length (json, token, mm, error)
         && (*mm >= 0 || sq_refuse (json, token, error, "less than 0"));
}

gboolean
sq_read_whole (const SqJson *json, guint token, double least, double most, guint32 *number,
               GError **error)
{
  double value;

  if (!sq_read_number (json, token, &value, error))
    return FALSE;
  if (value != floor (value))
    return sq_refuse (json, token, error, "not a whole number");
  if (value < least || value > most)
    return sq_refuse (json, token, error, "out of range");
  *number = (guint32) value;
  return TRUE;
}

static gboolean
read_great (const SqJson *json, guint token, guint64 *number, GError **error)
{
  double value;

  if (!sq_read_number (json, token, &value, error))
    return FALSE;
  if (value != floor (value))
    return sq_refuse (json, token, error, "not a whole number");
  if (value < 0 || value > MOST_EXACT)
    return sq_refuse (json, token, error, "out of range");
  *number = (guint64) value;
  return TRUE;
}

static gboolean
read_digest (const SqJson *json, guint token, guint64 *digest, GError **error)
{
  g_autofree char *text = NULL;

  if (!sq_read_kind (json, token, SQ_JSON_STRING, error))
    return FALSE;
  text = sq_json_dup_string (json, token);
  if (strlen (text) != DIGEST_DIGITS || strspn (text, "0123456789abcdef") != DIGEST_DIGITS)
    return sq_refuse (json, token, error, "not 16 digits 0 … 9, a … f");
  *digest = g_ascii_strtoull (text, NULL, 16);
  return TRUE;
}

static gboolean
read_half (const SqJson *json, guint token, double *half, GError **error)
{
  return sq_read_number (json, token, half, error)
         && (*half == 0 || *half == 0.5 || sq_refuse (json, token, error, "neither 0 nor 0.5"));
}

gboolean
sq_read_word (const SqJson *json, guint token, const char *const *words, guint *place,
              GError **error)
{
  if (!sq_read_kind (json, token, SQ_JSON_STRING, error))
    return FALSE;
  for (guint i = 0; words[i] != NULL; i++)
    if (sq_json_is (json, token, words[i]))
      {
        *place = i;
        return TRUE;
      }
  return sq_refuse (json, token, error, "an unknown word");
}

static gboolean
read_colour (const SqJson *json, guint token, guint32 *colour, GError **error)
{
  g_autofree char *text = NULL;

  if (!sq_read_kind (json, token, SQ_JSON_STRING, error))
    return FALSE;
  text = sq_json_dup_string (json, token);
  if (text[0] != '#' || strlen (text) != 7 || strspn (text + 1, "0123456789abcdefABCDEF") != 6)
    return sq_refuse (json, token, error, "not a colour as #rrggbb");
  *colour = (guint32) g_ascii_strtoull (text + 1, NULL, 16);
  return TRUE;
}

static gboolean
read_text (const SqJson *json, guint token, GRefString **text, GError **error)
{
  g_autofree char *plain = NULL;

  if (!sq_read_kind (json, token, SQ_JSON_STRING, error))
    return FALSE;
  plain = sq_json_dup_string (json, token);
  if (*plain == '\0' && *text == NULL)
    return TRUE;
  g_clear_pointer (text, g_ref_string_release);
  *text = g_ref_string_new (plain);
  return TRUE;
}

static gboolean
read_switch (const SqJson *json, guint token, gboolean *on, GError **error)
{
  if (!sq_read_kind (json, token, SQ_JSON_BOOLEAN, error))
    return FALSE;
  *on = json->text[json->tokens[token].from] == 't';
  return TRUE;
}

static gboolean
read_list (const SqField *field, const SqJson *json, guint token, GArray *list, GError **error)
{
  gsize size = g_array_get_element_size (list);

  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  for (guint at = token + 1; at < json->tokens[token].next; at = json->tokens[at].next)
    {
      g_array_set_size (list, list->len + 1);
      if (!sq_fields_read (field->part, json, at, list->data + (list->len - 1) * size, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
read_field (const SqField *field, const SqJson *json, guint token, gpointer record, GError **error)
{
  gpointer at = (char *) record + field->offset;

  switch (field->kind)
    {
    case SQ_FIELD_LENGTH:
      return sq_read_length (json, token, at, error);
    case SQ_FIELD_SIZE:
      return sq_read_size (json, token, at, error);
    case SQ_FIELD_NUMBER:
      return sq_read_number (json, token, at, error);
    case SQ_FIELD_HALF:
      return read_half (json, token, at, error);
    case SQ_FIELD_COUNT:
      return sq_read_whole (json, token, 1, SQ_FILE_MOST_COUNT, at, error);
    case SQ_FIELD_ID:
      return sq_read_whole (json, token, 1, G_MAXUINT32, at, error);
    case SQ_FIELD_WHOLE:
      return sq_read_whole (json, token, 0, G_MAXUINT32, at, error);
    case SQ_FIELD_GREAT:
      return read_great (json, token, at, error);
    case SQ_FIELD_DIGEST:
      return read_digest (json, token, at, error);
    case SQ_FIELD_SWITCH:
      return read_switch (json, token, at, error);
    case SQ_FIELD_WORD:
      return sq_read_word (json, token, field->words, at, error);
    case SQ_FIELD_COLOUR:
      return read_colour (json, token, at, error);
    case SQ_FIELD_TEXT:
      return read_text (json, token, at, error);
    case SQ_FIELD_PART:
      return sq_fields_read (field->part, json, token, record, error);
    case SQ_FIELD_LIST:
      return read_list (field, json, token, *(GArray **) at, error)
             && (field->read == NULL || field->read (json, token, record, error));
    case SQ_FIELD_OWN:
      return field->read == NULL || field->read (json, token, record, error);
    case SQ_FIELD_SKIPPED:
      return TRUE;
    default:
      g_return_val_if_reached (FALSE);
    }
}

static const SqField *
find_field (const SqFields *fields, const SqJson *json, guint key)
{
  for (guint i = 0; i < fields->n_fields; i++)
    if (sq_json_is (json, key, fields->fields[i].key))
      return &fields->fields[i];
  return NULL;
}

/* Appends the member at @key to the text of the object that keeps what is not known. */
static void
keep_unknown (const SqJson *json, guint key, GString **unknown)
{
  if (*unknown == NULL)
    *unknown = g_string_new ("{");
  else
    g_string_append (*unknown, ", ");
  sq_json_append_text (json, key, *unknown);
  g_string_append (*unknown, ": ");
  sq_json_append_text (json, key + 1, *unknown);
}

static gboolean
check_required (const SqFields *fields, const SqJson *json, guint token, GError **error)
{
  for (guint i = 0; i < fields->n_fields; i++)
    if (fields->fields[i].need == SQ_FIELD_REQUIRED
        && sq_json_member (json, token, fields->fields[i].key) == 0)
      return refuse_missing (json, token, fields->fields[i].key, error);
  return TRUE;
}

static void
set_unknown (const SqFields *fields, gpointer record, GString *unknown)
{
  g_autofree char *text = g_string_free (unknown, FALSE);
  g_autofree char *whole = g_strconcat (text, "}", NULL);

  *(GRefString **) (gpointer) ((char *) record + fields->unknown_offset) = g_ref_string_new (whole);
}

gboolean
sq_fields_read (const SqFields *fields, const SqJson *json, guint token, gpointer record,
                GError **error)
{
  GString *unknown = NULL;
  gboolean good = sq_read_kind (json, token, SQ_JSON_OBJECT, error)
                  && check_required (fields, json, token, error);

  for (guint key = token + 1; good && key < json->tokens[token].next;
       key = json->tokens[key + 1].next)
    {
      const SqField *field = find_field (fields, json, key);

      if (field != NULL)
        {
          good = read_field (field, json, key + 1, record, error);
          if (field->given != 0)
            *(guint32 *) (gpointer) ((char *) record + fields->given_offset) |= field->given;
        }
      else if (fields->keeps_unknown)
        keep_unknown (json, key, &unknown);
      else
        good = sq_refuse (json, key, error, "an unknown key");
    }
  if (unknown != NULL)
    set_unknown (fields, record, unknown);
  return good;
}

/* Whether any of the record's fields in @fields is to be written. */
static gboolean has_any (const SqFields *fields, gconstpointer record);

static gboolean
is_zero (const SqField *field, gconstpointer at)
{
  switch (field->kind)
    {
    case SQ_FIELD_LENGTH:
    case SQ_FIELD_SIZE:
    case SQ_FIELD_NUMBER:
    case SQ_FIELD_HALF:
      return *(const double *) at == 0;
    case SQ_FIELD_TEXT:
      return *(GRefString *const *) at == NULL || **(GRefString *const *) at == '\0';
    case SQ_FIELD_GREAT:
    case SQ_FIELD_DIGEST:
      return *(const guint64 *) at == 0;
    case SQ_FIELD_LIST:
      return (*(GArray *const *) at)->len == 0;
    case SQ_FIELD_COUNT:
    case SQ_FIELD_WHOLE:
    case SQ_FIELD_ID:
    case SQ_FIELD_SWITCH:
    case SQ_FIELD_WORD:
    case SQ_FIELD_COLOUR:
      return *(const guint32 *) at == 0;
    case SQ_FIELD_PART:
    case SQ_FIELD_OWN:
    case SQ_FIELD_SKIPPED:
    default:
      g_return_val_if_reached (TRUE);
    }
}

static gboolean
is_written (const SqFields *fields, const SqField *field, gconstpointer record)
{
  if (field->kind == SQ_FIELD_OWN && field->given == 0)
    return TRUE;
  if (field->kind == SQ_FIELD_SKIPPED)
    return FALSE;
  if (field->kind == SQ_FIELD_PART)
    return has_any (field->part, record);
  if (field->given != 0)
    return (*(const guint32 *) (gconstpointer) ((const char *) record + fields->given_offset)
            & field->given)
           != 0;
  return field->need != SQ_FIELD_OPTIONAL
         || !is_zero (field, (const char *) record + field->offset);
}

static GRefString *
unknown_of (const SqFields *fields, gconstpointer record)
{
  if (!fields->keeps_unknown)
    return NULL;
  return *(GRefString *const *) (gconstpointer) ((const char *) record + fields->unknown_offset);
}

static gboolean
has_any (const SqFields *fields, gconstpointer record)
{
  for (guint i = 0; i < fields->n_fields; i++)
    if (is_written (fields, &fields->fields[i], record))
      return TRUE;
  return unknown_of (fields, record) != NULL;
}

static void
write_colour (SqJsonWriter *writer, const char *key, guint32 colour)
{
  char text[16];

  g_snprintf (text, sizeof text, "#%06x", colour & 0xffffff);
  sq_json_add_string (writer, key, text);
}

static void
write_list (const SqField *field, SqJsonWriter *writer, GArray *list)
{
  gsize size = g_array_get_element_size (list);

  sq_json_open_array (writer, field->key, SQ_JSON_LINES);
  for (guint i = 0; i < list->len; i++)
    {
      sq_json_open_object (writer, NULL, SQ_JSON_LINE);
      sq_fields_write (field->part, writer, list->data + i * size);
      sq_json_close (writer);
    }
  sq_json_close (writer);
}

static void
write_field (const SqField *field, SqJsonWriter *writer, gconstpointer record)
{
  gconstpointer at = (const char *) record + field->offset;

  switch (field->kind)
    {
    case SQ_FIELD_LENGTH:
    case SQ_FIELD_SIZE:
    case SQ_FIELD_NUMBER:
    case SQ_FIELD_HALF:
      sq_json_add_number (writer, field->key, *(const double *) at);
      break;
    case SQ_FIELD_GREAT:
      sq_json_add_integer (writer, field->key, (gint64) * (const guint64 *) at);
      break;
    case SQ_FIELD_DIGEST:
      sq_json_add_digest (writer, field->key, *(const guint64 *) at);
      break;
    case SQ_FIELD_COUNT:
    case SQ_FIELD_WHOLE:
    case SQ_FIELD_ID:
      sq_json_add_integer (writer, field->key, *(const guint32 *) at);
      break;
    case SQ_FIELD_SWITCH:
      sq_json_add_boolean (writer, field->key, *(const gboolean *) at);
      break;
    case SQ_FIELD_WORD:
      sq_json_add_string (writer, field->key, field->words[*(const guint *) at]);
      break;
    case SQ_FIELD_COLOUR:
      write_colour (writer, field->key, *(const guint32 *) at);
      break;
    case SQ_FIELD_TEXT:
      sq_json_add_string (writer, field->key, *(GRefString *const *) at);
      break;
    case SQ_FIELD_PART:
      sq_json_open_object (writer, field->key, SQ_JSON_LINE);
      sq_fields_write (field->part, writer, record);
      sq_json_close (writer);
      break;
    case SQ_FIELD_LIST:
      write_list (field, writer, *(GArray *const *) at);
      break;
    case SQ_FIELD_OWN:
      field->write (writer, field->key, record);
      break;
    case SQ_FIELD_SKIPPED:
    default:
      g_return_if_reached ();
    }
}

void
sq_fields_write (const SqFields *fields, SqJsonWriter *writer, gconstpointer record)
{
  GRefString *unknown = unknown_of (fields, record);

  for (guint i = 0; i < fields->n_fields; i++)
    if (is_written (fields, &fields->fields[i], record))
      write_field (&fields->fields[i], writer, record);
  if (unknown != NULL)
    sq_json_add_members (writer, unknown);
}

gboolean
sq_check_format (const SqJson *json, const char *name, guint newest, GError **error)
{
  gboolean is_object = sq_json_kind (json, 0) == SQ_JSON_OBJECT;
  guint format = is_object ? sq_json_member (json, 0, "format") : 0;
  guint version = is_object ? sq_json_member (json, 0, "version") : 0;
  double number;
  guint32 whole;

  if (format == 0 || sq_json_kind (json, format) != SQ_JSON_STRING
      || !sq_json_is (json, format, name))
    {
      g_set_error (error, SQ_ERROR, SQ_ERROR_SYNTAX, "its \"format\" is not \"%s\"", name);
      return FALSE;
    }
  if (version == 0)
    return refuse_missing (json, 0, "version", error);
  if (!sq_read_number (json, version, &number, error))
    return FALSE;
  if (number > newest)
    {
      g_set_error (error, SQ_ERROR, SQ_ERROR_NEWER,
                   "written by a newer program (version %g of the format)", number);
      return FALSE;
    }
  return sq_read_whole (json, version, 1, newest, &whole, error);
}
