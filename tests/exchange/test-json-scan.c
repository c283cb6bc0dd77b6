/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/json-scan.h"

#include "base/error.h"

#include <math.h>
#include <string.h>

/* Texts that RFC 8259 does not allow, and some that it leaves to the reader. @length −1: a NUL
 * ends it. @at: what the message begins with. */
static const struct
{
  const char *text;
  gssize length;
  const char *at;
} refused[] = {
  { "", -1, "line 1, column 1" },
  { " \n ", -1, "line 2, column 2" },
  { "tru", -1, "line 1, column 1" },
  { "True", -1, "line 1, column 1" },
  { "nul", -1, "line 1, column 1" },
  { "NaN", -1, "line 1, column 1" },
  { "Infinity", -1, "line 1, column 1" },
  { "-Infinity", -1, "line 1, column 2" },
  { "01", -1, "line 1, column 2" },
  { "-01", -1, "line 1, column 3" },
  { "1.", -1, "line 1, column 3" },
  { ".5", -1, "line 1, column 1" },
  { "+1", -1, "line 1, column 1" },
  { "-", -1, "line 1, column 2" },
  { "1e", -1, "line 1, column 3" },
  { "1e+", -1, "line 1, column 4" },
  { "1.e5", -1, "line 1, column 3" },
  { "0x10", -1, "line 1, column 2" },
  { "1 2", -1, "line 1, column 3" },
  { "{} x", -1, "line 1, column 4" },
  { "[1,]", -1, "line 1, column 4" },
  { "[,1]", -1, "line 1, column 2" },
  { "[1 2]", -1, "line 1, column 4" },
  { "[1", -1, "line 1, column 3" },
  { "[", -1, "line 1, column 2" },
  { "{\"a\":1,}", -1, "line 1, column 8" },
  { "{a:1}", -1, "line 1, column 2" },
  { "{'a':1}", -1, "line 1, column 2" },
  { "{\"a\" 1}", -1, "line 1, column 6" },
  { "{\"a\":}", -1, "line 1, column 6" },
  { "{\"a\"", -1, "line 1, column 5" },
  { "{1:2}", -1, "line 1, column 2" },
  { "\"a", -1, "line 1, column 1" },
  { "\"\\\"", -1, "line 1, column 1" },
  { "\"\\", -1, "line 1, column 2" },
  { "\"\\x41\"", -1, "line 1, column 2" },
  { "\"\\u12g4\"", -1, "line 1, column 2" },
  { "\"\\u12\"", -1, "line 1, column 2" },
  { "\"\\u123", -1, "line 1, column 2" },
  { "\"a\\u0000b\"", -1, "line 1, column 3" },
  { "\"\\ud800\"", -1, "line 1, column 2" },
  { "\"\\ud800\\u0041\"", -1, "line 1, column 2" },
  { "\"\\ud800x\"", -1, "line 1, column 2" },
  { "\"\\udc00\"", -1, "line 1, column 2" },
  { "\"\\udc00\\ud800\"", -1, "line 1, column 2" },
  { "\"a\tb\"", -1, "line 1, column 3" },
  { "[\n\"ab\nc\"]", -1, "line 2, column 4" },
  { "\"a\0b\"", 5, "line 1, column 3" },
  { "{}\0", 3, "line 1, column 3" },
  { "\"\xff\"", -1, "line 1, column 2" },
  { "\"\xc0\x80\"", -1, "line 1, column 2" },
  { "\"\xed\xa0\x80\"", -1, "line 1, column 2" },
  { "\"\xf4\x90\x80\x80\"", -1, "line 1, column 2" },
  { "\"\xc3", -1, "line 1, column 2" },
  { "\xef\xbb\xbf{}", -1, "line 1, column 1" },
  { "{\"a\":1,\n \"a\":2}", -1, "line 2, column 2" },
  { "{\"a\":1, \"\\u0061\":2}", -1, "line 1, column 9" },
  { "[{\"é\":1, \"b\":{}, \"é\":2}]", -1, "line 1, column 18" },
  { "[1]/* x */", -1, "line 1, column 4" },
  { "[1]// x", -1, "line 1, column 4" },
};

static void
test_refused (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (GError) error = NULL;
      SqJson *json = sq_json_scan (refused[i].text, refused[i].length, &error);

      g_test_message ("text %u", i);
      g_assert_null (json);
      g_assert_error (error, SQ_ERROR, SQ_ERROR_SYNTAX);
      g_assert_true (g_str_has_prefix (error->message, refused[i].at));
    }
}

/* Every beginning of a text is refused, wherever it is cut off, with nothing after it in memory. */
static void
test_cut_off (void)
{
  const char *text = "{\"a\": [1.5e-3, true, null, \"\\ud83e\\ude91 \\n\"], \"b\": {\"c\": {}}}";
  gsize n = strlen (text);
  g_autoptr (SqJson) whole = sq_json_scan (text, -1, NULL);

  g_assert_nonnull (whole);
  for (gsize length = 0; length < n; length++)
    {
      g_autofree char *part = g_memdup2 (text, length);
      g_autoptr (GError) error = NULL;

      g_assert_null (sq_json_scan (part != NULL ? part : "", (gssize) length, &error));
      g_assert_error (error, SQ_ERROR, SQ_ERROR_SYNTAX);
    }
}

static void
test_table (void)
{
  const char *text = " { \"a\" : [ 1 , { } , \"x\" ] , \"b\" : false } ";
  g_autoptr (SqJson) json = sq_json_scan (text, -1, NULL);
  guint list = sq_json_member (json, 0, "a");

  g_assert_cmpint (sq_json_kind (json, 0), ==, SQ_JSON_OBJECT);
  g_assert_cmpint (sq_json_kind (json, list), ==, SQ_JSON_ARRAY);
  g_assert_cmpint (sq_json_kind (json, list + 1), ==, SQ_JSON_NUMBER);
  g_assert_cmpint (sq_json_kind (json, list + 2), ==, SQ_JSON_OBJECT);
  g_assert_cmpint (sq_json_kind (json, list + 3), ==, SQ_JSON_STRING);
  g_assert_cmpint (sq_json_kind (json, sq_json_member (json, 0, "b")), ==, SQ_JSON_BOOLEAN);
  g_assert_cmpuint (json->tokens[list].next, ==, list + 4);
  g_assert_cmpuint (json->tokens[0].next, ==, json->n_tokens);
  g_assert_cmpuint (sq_json_member (json, 0, "A"), ==, 0);
  g_assert_cmpuint (sq_json_member (json, 0, "c"), ==, 0);
}

static void
assert_path (const char *text, const char *value, const char *path)
{
  g_autoptr (SqJson) json = sq_json_scan (text, -1, NULL);
  guint32 from = (guint32) (strstr (text, value) - text);

  for (guint i = 0; i < json->n_tokens; i++)
    if (json->tokens[i].from == from)
      {
        g_autofree char *got = sq_json_path (json, i);

        g_assert_cmpstr (got, ==, path);
        return;
      }
  g_assert_not_reached ();
}

static void
test_path (void)
{
  const char *text
      = "{\"a\": {}, \"cushions\": [[], {\"outline\": [1, 2, {\"x\": 99}]}], \"z\": 7}";

  assert_path (text, "{\"a\"", "");
  assert_path (text, "99", "cushions[1].outline[2].x");
  assert_path (text, "\"x\"", "cushions[1].outline[2].x");
  assert_path (text, "{\"x\"", "cushions[1].outline[2]");
  assert_path (text, "7", "z");
  assert_path ("[[1], [2, 3]]", "3", "[1][1]");
}

static void
assert_string (const char *text, const char *plain)
{
  g_autoptr (SqJson) json = sq_json_scan (text, -1, NULL);
  g_autofree char *got = sq_json_dup_string (json, 0);

  g_assert_cmpstr (got, ==, plain);
  g_assert_true (sq_json_is (json, 0, plain));
  g_assert_false (sq_json_is (json, 0, "something else"));
}

static void
test_strings (void)
{
  assert_string ("\"\"", "");
  assert_string ("\"plain\"", "plain");
  assert_string ("\"\\\"\\\\\\/\\b\\f\\n\\r\\t\"", "\"\\/\b\f\n\r\t");
  assert_string ("\"\\u00e9\\u20AC\"", "é€");
  assert_string ("\"\\ud834\\udd1e\"", "𝄞"); /* the example of RFC 8259, section 7 */
  assert_string ("\"\x7f\"", "\x7f");
}

static void
test_numbers (void)
{
  g_autoptr (SqJson) json = sq_json_scan (
      "[0, -0, 1e3, -2.5E-1, 0.1, 1e999, 9007199254740993, 5e-324]", -1, NULL);
  const double values[] = { 0, 0, 1000, -0.25, 0.1, INFINITY, 9007199254740992.0, 5e-324 };
  g_autoptr (SqJson) alone = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    g_assert_cmpfloat (sq_json_number (json, i + 1), ==, values[i]);
  g_assert_false (signbit (sq_json_number (json, 2)));
  /* A number that ends with the text, digits after it in memory. */
  alone = sq_json_scan ("12345", 2, NULL);
  g_assert_cmpfloat (sq_json_number (alone, 0), ==, 12);
}

static void
test_text (void)
{
  g_autoptr (SqJson) json = sq_json_scan ("{ \"a b\" :[ 1.50,\n\t2 ] , \"c\\\"\":\" , : \\\\\" }",
                                          -1, NULL);
  g_autoptr (GString) text = g_string_new (NULL);

  sq_json_append_text (json, 0, text);
  g_assert_cmpstr (text->str, ==, "{\"a b\": [1.50, 2], \"c\\\"\": \" , : \\\\\"}");
}

static char *
nested (guint levels)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < levels; i++)
    g_string_append (text, i % 2 ? "{\"a\":" : "[");
  g_string_append (text, "1");
  for (guint i = levels; i-- > 0;)
    g_string_append (text, i % 2 ? "}" : "]");
  return g_string_free (text, FALSE);
}

static void
test_limits (void)
{
  g_autofree char *deep = nested (SQ_JSON_MOST_DEPTH);
  g_autofree char *too_deep = nested (SQ_JSON_MOST_DEPTH + 1);
  g_autofree char *large = g_strnfill (SQ_JSON_MOST_BYTES + 1, ' ');
  g_autoptr (SqJson) json = sq_json_scan (deep, -1, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_nonnull (json);
  g_assert_null (sq_json_scan (too_deep, -1, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_SYNTAX);
  g_clear_error (&error);
  g_assert_null (sq_json_scan (large, -1, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_SYNTAX);
  g_clear_error (&error);
  large[0] = '1';
  g_clear_pointer (&json, sq_json_free);
  json = sq_json_scan (large, SQ_JSON_MOST_BYTES, &error);
  g_assert_no_error (error);
}

/* Many keys take no more than their share: ten times as many, not a hundred times the time. */
static double
seconds_for_keys (guint n)
{
  g_autoptr (GString) text = g_string_new ("{");
  g_autoptr (GTimer) timer = NULL;

  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "%s\"k%07u\":1", i > 0 ? "," : "", (i * 7919) % n);
  g_string_append_c (text, '}');
  timer = g_timer_new ();
  {
    g_autoptr (SqJson) json = sq_json_scan (text->str, (gssize) text->len, NULL);
    g_assert_nonnull (json);
  }
  return g_timer_elapsed (timer, NULL);
}

static void
test_many_keys (void)
{
  double few = seconds_for_keys (20000), many = seconds_for_keys (200000);

  g_test_message ("20,000 keys %.4f s, 200,000 keys %.4f s", few, many);
  g_assert_cmpfloat (many, <, 60 * few + 0.1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/json-scan/refused", test_refused);
  g_test_add_func ("/exchange/json-scan/cut-off", test_cut_off);
  g_test_add_func ("/exchange/json-scan/table", test_table);
  g_test_add_func ("/exchange/json-scan/path", test_path);
  g_test_add_func ("/exchange/json-scan/strings", test_strings);
  g_test_add_func ("/exchange/json-scan/numbers", test_numbers);
  g_test_add_func ("/exchange/json-scan/text", test_text);
  g_test_add_func ("/exchange/json-scan/limits", test_limits);
  g_test_add_func ("/exchange/json-scan/many-keys", test_many_keys);
  return g_test_run ();
}
