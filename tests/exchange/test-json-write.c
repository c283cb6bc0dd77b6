/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/json-write.h"

#include "exchange/json-scan.h"

static void
test_layout (void)
{
  g_autoptr (SqJsonWriter) writer = sq_json_writer_new ();
  g_autofree char *text = NULL;

  sq_json_open_object (writer, NULL, SQ_JSON_LINES);
  sq_json_add_string (writer, "name", "Bay");
  sq_json_add_boolean (writer, "front", TRUE);
  sq_json_open_array (writer, "empty", SQ_JSON_LINES);
  sq_json_close (writer);
  sq_json_open_array (writer, "outline", SQ_JSON_LINES);
  for (int i = 0; i < 2; i++)
    {
      sq_json_open_object (writer, NULL, SQ_JSON_LINE);
      sq_json_add_integer (writer, "id", i + 1);
      sq_json_open_array (writer, "curve", SQ_JSON_LINES);
      sq_json_add_number (writer, NULL, 0.1);
      sq_json_add_number (writer, NULL, -3);
      sq_json_close (writer);
      sq_json_close (writer);
    }
  sq_json_close (writer);
  sq_json_add_string (writer, "none", NULL);
  sq_json_add_text (writer, "raw", "[1.50]");
  sq_json_close (writer);
  text = sq_json_writer_dup_text (writer);
  g_assert_cmpstr (text, ==,
                   "{\n"
                   "  \"name\": \"Bay\",\n"
                   "  \"front\": true,\n"
                   "  \"empty\": [],\n"
                   "  \"outline\": [\n"
                   "    {\"id\": 1, \"curve\": [0.1, -3]},\n"
                   "    {\"id\": 2, \"curve\": [0.1, -3]}\n"
                   "  ],\n"
                   "  \"none\": null,\n"
                   "  \"raw\": [1.50]\n"
                   "}\n");
}

static void
test_members (void)
{
  g_autoptr (SqJsonWriter) writer = sq_json_writer_new ();
  g_autofree char *text = NULL;

  sq_json_open_object (writer, NULL, SQ_JSON_LINES);
  sq_json_add_integer (writer, "id", 1);
  sq_json_add_members (writer, "{\"welt\":{ \"cord\":4.0 },\"r\\u006fws\":[]}");
  sq_json_add_members (writer, "{}");
  sq_json_close (writer);
  text = sq_json_writer_dup_text (writer);
  g_assert_cmpstr (text, ==,
                   "{\n"
                   "  \"id\": 1,\n"
                   "  \"welt\": {\"cord\": 4.0},\n"
                   "  \"r\\u006fws\": []\n"
                   "}\n");
}

/* Every text reads back, whatever is in it. */
static void
test_strings (void)
{
  char all[128];

  for (guint i = 1; i < 128; i++)
    all[i - 1] = (char) i;
  all[127] = '\0';
  for (guint i = 0; i < 2; i++)
    {
      const char *plain = i == 0 ? all : "é 𝄞 18 1⁄2";
      g_autoptr (SqJsonWriter) writer = sq_json_writer_new ();
      g_autofree char *text = NULL;
      g_autoptr (SqJson) json = NULL;
      g_autofree char *again = NULL;

      sq_json_add_string (writer, NULL, plain);
      text = sq_json_writer_dup_text (writer);
      json = sq_json_scan (text, -1, NULL);
      again = sq_json_dup_string (json, 0);
      g_assert_cmpstr (again, ==, plain);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/json-write/layout", test_layout);
  g_test_add_func ("/exchange/json-write/members", test_members);
  g_test_add_func ("/exchange/json-write/strings", test_strings);
  return g_test_run ();
}
