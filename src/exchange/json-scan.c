/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/json-scan.h"

#include "base/error.h"

#include <string.h>

typedef struct
{
  const char *text;
  guint32 length, at;
  guint depth;
  GArray *tokens;    /* of SqJsonToken */
  GArray *keys;      /* of Key, of the object that was just read */
  const char *wrong; /* what is wrong at `at`; NULL: nothing yet */
} Scanner;

typedef struct
{
  const char *text;
  gsize length;
  guint32 at;  /* where it stands */
  char *owned; /* its text, where it was written with escapes */
} Key;

static void
key_clear (gpointer data)
{
  g_free (((Key *) data)->owned);
}

static gboolean
wrong (Scanner *s, guint32 at, const char *what)
{
  s->at = at;
  s->wrong = what;
  return FALSE;
}

/* The byte at hand, 0 at the end. */
static char
peek (const Scanner *s)
{
  return s->at < s->length ? s->text[s->at] : 0;
}

static gboolean
take (Scanner *s, char c)
{
  if (peek (s) != c || s->at == s->length)
    return FALSE;
  s->at++;
  return TRUE;
}

static void
skip_space (Scanner *s)
{
  while (s->at < s->length && strchr (" \t\n\r", s->text[s->at]) != NULL)
    s->at++;
}

static gboolean
scan_digits (Scanner *s)
{
  guint32 from = s->at;

  while (g_ascii_isdigit (peek (s)))
    s->at++;
  return s->at > from || wrong (s, s->at, "a digit is missing");
}

static gboolean
scan_number (Scanner *s)
{
  take (s, '-');
  if (take (s, '0'))
    {
      if (g_ascii_isdigit (peek (s)))
        return wrong (s, s->at, "a number can't begin with 0 and go on");
    }
  else if (!scan_digits (s))
    return FALSE;
  if (take (s, '.') && !scan_digits (s))
    return FALSE;
  if (take (s, 'e') || take (s, 'E'))
    {
      if (!take (s, '+'))
        take (s, '-');
      if (!scan_digits (s))
        return FALSE;
    }
  return TRUE;
}

/* The four digits at @text as a number, or −1; @text ends with a NUL or a quote at the latest. */
static int
hex4 (const char *text)
{
  int value = 0;

  for (guint i = 0; i < 4; i++)
    {
      int digit = g_ascii_xdigit_value (text[i]);
      if (digit < 0)
        return -1;
      value = value * 16 + digit;
    }
  return value;
}

/* Four hexadecimal digits at hand, or −1. */
static int
scan_hex4 (Scanner *s)
{
  int value = s->length - s->at >= 4 ? hex4 (s->text + s->at) : -1;

  if (value >= 0)
    s->at += 4;
  return value;
}

static gboolean
scan_unicode_escape (Scanner *s, guint32 from)
{
  int unit = scan_hex4 (s), low;

  if (unit < 0)
    return wrong (s, from, "\\u needs four hexadecimal digits");
  if (unit == 0)
    return wrong (s, from, "\\u0000 is not allowed");
  if (unit < 0xd800 || unit > 0xdfff)
    return TRUE;
  if (unit > 0xdbff || !take (s, '\\') || !take (s, 'u'))
    return wrong (s, from, "half a surrogate pair");
  low = scan_hex4 (s);
  return (low >= 0xdc00 && low <= 0xdfff) || wrong (s, from, "half a surrogate pair");
}

/* A string, of which the opening quote is at hand. */
static gboolean
scan_string (Scanner *s)
{
  guint32 from = s->at++;

  while (s->at < s->length)
    {
      guint32 here = s->at++;
      guchar c = (guchar) s->text[here];

      if (c == '"')
        return TRUE;
      if (c < 0x20)
        return wrong (s, here, "a raw control character in a string");
      if (c != '\\')
        continue;
      if (take (s, 'u'))
        {
          if (!scan_unicode_escape (s, here))
            return FALSE;
        }
      else if (s->at == s->length || strchr ("\"\\/bfnrt", s->text[s->at++]) == NULL)
        return wrong (s, here, "an unknown escape");
    }
  return wrong (s, from, "a string without end");
}

static gboolean
scan_word (Scanner *s, const char *word)
{
  gsize length = strlen (word);

  if (s->length - s->at < length || memcmp (s->text + s->at, word, length) != 0)
    return wrong (s, s->at, "a value is missing");
  s->at += (guint32) length;
  return TRUE;
}

/* Begins a value at hand; gives its place in the table. */
static guint
begin (Scanner *s)
{
  SqJsonToken token = { s->at, s->at, 0 };

  g_array_append_val (s->tokens, token);
  return s->tokens->len - 1;
}

static void
end (Scanner *s, guint token)
{
  SqJsonToken *ended = &g_array_index (s->tokens, SqJsonToken, token);

  ended->to = s->at;
  ended->next = s->tokens->len;
}

static gboolean scan_value (Scanner *s);

static gboolean
scan_key (Scanner *s)
{
  guint key = begin (s);

  if (peek (s) != '"')
    return wrong (s, s->at, "a key in quotes is missing");
  if (!scan_string (s))
    return FALSE;
  end (s, key);
  skip_space (s);
  return take (s, ':') || wrong (s, s->at, "a colon is missing");
}

/* The text of a scanned string whose inside is @text, @length bytes, without escapes. */
static char *
unescaped (const char *text, gsize length)
{
  GString *result = g_string_sized_new (length);

  for (const char *at = text, *stop = text + length; at < stop; at++)
    {
      static const char letters[] = "bfnrt", meant[] = "\b\f\n\r\t";
      const char *letter;
      gunichar c;

      if (*at != '\\')
        g_string_append_c (result, *at);
      else if (*++at != 'u')
        {
          letter = strchr (letters, *at);
          g_string_append_c (result, letter != NULL ? meant[letter - letters] : *at);
        }
      else
        {
          c = (gunichar) hex4 (at + 1);
          at += 4;
          if (c >= 0xd800 && c <= 0xdbff)
            {
              c = 0x10000 + ((c - 0xd800) << 10) + (gunichar) (hex4 (at + 3) - 0xdc00);
              at += 6;
            }
          g_string_append_unichar (result, c);
        }
    }
  return g_string_free (result, FALSE);
}

static int
compare_keys (gconstpointer a, gconstpointer b)
{
  const Key *x = a, *y = b;
  int order = memcmp (x->text, y->text, MIN (x->length, y->length));

  if (order == 0)
    order = (x->length > y->length) - (x->length < y->length);
  return order != 0 ? order : (x->at > y->at) - (x->at < y->at);
}

/* Sorts the keys of @object, so that equal ones are neighbours; in no more than n log n. */
static gboolean
check_doubled_keys (Scanner *s, guint object)
{
  g_array_set_size (s->keys, 0);
  for (guint i = object + 1; i < s->tokens->len;)
    {
      const SqJsonToken *token = &g_array_index (s->tokens, SqJsonToken, i);
      Key key = { s->text + token->from + 1, token->to - token->from - 2, token->from, NULL };

      if (memchr (key.text, '\\', key.length) != NULL)
        {
          key.text = key.owned = unescaped (key.text, key.length);
          key.length = strlen (key.owned);
        }
      g_array_append_val (s->keys, key);
      i = g_array_index (s->tokens, SqJsonToken, i + 1).next;
    }
  g_array_sort (s->keys, compare_keys);
  for (guint i = 1; i < s->keys->len; i++)
    {
      const Key *before = &g_array_index (s->keys, Key, i - 1);
      const Key *key = &g_array_index (s->keys, Key, i);

      if (before->length == key->length && memcmp (before->text, key->text, key->length) == 0)
        return wrong (s, key->at, "a key for the second time");
    }
  return TRUE;
}

/* What stands between the brackets of an object or array; the opening one is at hand. */
static gboolean
scan_inside (Scanner *s, char close)
{
  if (s->depth == SQ_JSON_MOST_DEPTH)
    return wrong (s, s->at, "nested too deep");
  s->depth++;
  s->at++;
  skip_space (s);
  if (!take (s, close))
    for (;;)
      {
        skip_space (s);
        if (close == '}' && !scan_key (s))
          return FALSE;
        if (!scan_value (s))
          return FALSE;
        skip_space (s);
        if (take (s, close))
          break;
        if (!take (s, ','))
          return wrong (s, s->at, "a comma or the end of the list is missing");
      }
  s->depth--;
  return TRUE;
}

static gboolean
scan_value (Scanner *s)
{
  guint token;
  gboolean good;
  char c;

  skip_space (s);
  token = begin (s);
  c = peek (s);
  if (c == '{')
    good = scan_inside (s, '}') && check_doubled_keys (s, token);
  else if (c == '[')
    good = scan_inside (s, ']');
  else if (c == '"')
    good = scan_string (s);
  else if (c == '-' || g_ascii_isdigit (c))
    good = scan_number (s);
  else
    good = scan_word (s, c == 't' ? "true" : c == 'f' ? "false" : "null");
  if (good)
    end (s, token);
  return good;
}

static gboolean
scan_all (Scanner *s)
{
  const char *bad;

  if (!g_utf8_validate_len (s->text, s->length, &bad))
    return wrong (s, (guint32) (bad - s->text), "not UTF-8");
  if (!scan_value (s))
    return FALSE;
  skip_space (s);
  return s->at == s->length || wrong (s, s->at, "something after the end");
}

static void
set_error (const Scanner *s, GError **error)
{
  guint line = 1, column = 1;

  for (guint32 i = 0; i < s->at; i++)
    if (s->text[i] == '\n')
      {
        line++;
        column = 1;
      }
    else if (((guchar) s->text[i] & 0xc0) != 0x80)
      column++;
  g_set_error (error, SQ_ERROR, SQ_ERROR_SYNTAX, "line %u, column %u: %s", line, column, s->wrong);
}

SqJson *
sq_json_scan (const char *text, gssize length, GError **error)
{
  gsize n = length < 0 ? strlen (text) : (gsize) length;
  Scanner s = { .text = text, .length = (guint32) n };
  SqJson *json = NULL;
  gboolean good;

  if (n > SQ_JSON_MOST_BYTES)
    {
      g_set_error (error, SQ_ERROR, SQ_ERROR_SYNTAX, "larger than %u MiB",
                   SQ_JSON_MOST_BYTES >> 20);
      return NULL;
    }
  s.tokens = g_array_new (FALSE, FALSE, sizeof (SqJsonToken));
  s.keys = g_array_new (FALSE, FALSE, sizeof (Key));
  g_array_set_clear_func (s.keys, key_clear);
  good = scan_all (&s);
  if (good)
    {
      json = g_new (SqJson, 1);
      *json = (SqJson){ text, n, NULL, s.tokens->len };
    }
  else
    set_error (&s, error);
  g_array_unref (s.keys);
  if (good)
    json->tokens = (SqJsonToken *) (gpointer) g_array_free (s.tokens, FALSE);
  else
    g_array_unref (s.tokens);
  return json;
}

void
sq_json_free (SqJson *json)
{
  g_free (json->tokens);
  g_free (json);
}

SqJsonKind
sq_json_kind (const SqJson *json, guint token)
{
  switch (json->text[json->tokens[token].from])
    {
    case '{':
      return SQ_JSON_OBJECT;
    case '[':
      return SQ_JSON_ARRAY;
    case '"':
      return SQ_JSON_STRING;
    case 't':
    case 'f':
      return SQ_JSON_BOOLEAN;
    case 'n':
      return SQ_JSON_NULL;
    default:
      return SQ_JSON_NUMBER;
    }
}

/* What stands between the quotes of the string @token. */
static const char *
inside (const SqJson *json, guint token, gsize *length)
{
  *length = json->tokens[token].to - json->tokens[token].from - 2;
  return json->text + json->tokens[token].from + 1;
}

gboolean
sq_json_is (const SqJson *json, guint token, const char *text)
{
  gsize length;
  const char *written = inside (json, token, &length);
  g_autofree char *plain = NULL;

  if (memchr (written, '\\', length) == NULL)
    return strlen (text) == length && memcmp (text, written, length) == 0;
  plain = unescaped (written, length);
  return strcmp (plain, text) == 0;
}

char *
sq_json_dup_string (const SqJson *json, guint token)
{
  gsize length;
  const char *written = inside (json, token, &length);

  return unescaped (written, length);
}

double
sq_json_number (const SqJson *json, guint token)
{
  const SqJsonToken *number = &json->tokens[token];
  g_autofree char *copy = NULL;

  /* Within an object or array something always follows that ends the number; a text that is
   * nothing but a number may end in no NUL. */
  if (number->to < json->length)
    return g_ascii_strtod (json->text + number->from, NULL) + 0.0;
  copy = g_strndup (json->text + number->from, number->to - number->from);
  return g_ascii_strtod (copy, NULL) + 0.0;
}

guint
sq_json_member (const SqJson *json, guint token, const char *key)
{
  for (guint at = token + 1; at < json->tokens[token].next; at = json->tokens[at + 1].next)
    if (sq_json_is (json, at, key))
      return at + 1;
  return 0;
}

guint
sq_json_n_values (const SqJson *json, guint token)
{
  guint n = 0;

  for (guint at = token + 1; at < json->tokens[token].next; at = json->tokens[at].next)
    n++;
  return n;
}

/* Appends the step from @within to the value inside it that has @token in it, and returns that;
 * a key is stepped over to its value. */
static guint
append_step (const SqJson *json, guint within, guint token, GString *path)
{
  gboolean is_object = sq_json_kind (json, within) == SQ_JSON_OBJECT;
  guint at = within + 1, index = 0;

  for (;; index++)
    {
      guint value = is_object ? at + 1 : at;

      if (token < json->tokens[value].next)
        {
          if (is_object)
            {
              g_autofree char *key = sq_json_dup_string (json, at);
              g_string_append_printf (path, "%s%s", path->len > 0 ? "." : "", key);
            }
          else
            g_string_append_printf (path, "[%u]", index);
          return value;
        }
      at = json->tokens[value].next;
    }
}

char *
sq_json_path (const SqJson *json, guint token)
{
  GString *path = g_string_new (NULL);

  for (guint at = 0; at < token;)
    at = append_step (json, at, token, path);
  return g_string_free (path, FALSE);
}

void
sq_json_append_text (const SqJson *json, guint token, GString *to)
{
  gboolean in_string = FALSE;

  for (guint32 i = json->tokens[token].from; i < json->tokens[token].to; i++)
    {
      char c = json->text[i];

      if (!in_string && strchr (" \t\n\r", c) != NULL)
        continue;
      g_string_append_c (to, c);
      if (c == '"')
        in_string = !in_string;
      else if (in_string && c == '\\')
        g_string_append_c (to, json->text[++i]);
      else if (!in_string && (c == ',' || c == ':'))
        g_string_append_c (to, ' ');
    }
}
