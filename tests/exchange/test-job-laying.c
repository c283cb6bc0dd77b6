/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Stock, flaws, choices of laying and pins in the job file. */
#include "base/error.h"
#include "exchange/defaults-file.h"
#include "exchange/job-file.h"

static SqJob *
try_job (const char *keys, GError **error)
{
  g_autofree char *text = g_strdup_printf ("{\"format\":\"squab job\",\"version\":1,%s}", keys);
  SqDefaults defaults;

  sq_defaults_builtin (&defaults);
  return sq_job_read (text, -1, &defaults, error);
}

static SqJob *
job_with (const char *keys)
{
  g_autoptr (GError) error = NULL;
  SqJob *job = try_job (keys, &error);

  g_assert_no_error (error);
  return job;
}

static void
test_every_key (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "exchange", "every-key.squab", NULL);
  g_autoptr (GError) error = NULL;
  SqDefaults defaults;

  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_load (path, &defaults, &error);
  g_assert_no_error (error);
  const SqCloth *cloth = sq_job_cloth (job, 7);
  const SqStock *remnant = sq_cloth_stock (cloth, 0), *bolt = sq_cloth_stock (cloth, 1);
  const SqFlaw *flaw = sq_cloth_find_flaw (cloth, 5);
  const SqPin *pin = sq_job_pin (job, 0);
  const SqPinned of = { 7, 3, TRUE, 3, 1, 3 };

  g_assert_cmpuint (cloth->stock->len, ==, 2);
  g_assert_cmpint (remnant->kind, ==, SQ_STOCK_REMNANT);
  g_assert_cmpfloat (remnant->length_mm, ==, 1219.2);
  g_assert_cmpfloat (remnant->width_mm, ==, 762);
  g_assert_cmpint (bolt->kind, ==, SQ_STOCK_BOLT);
  g_assert_cmpuint (bolt->id, ==, 1);
  g_assert_cmpfloat (bolt->width_mm, ==, 0);
  g_assert_cmpuint (flaw->stock, ==, 3);
  g_assert_cmpfloat (flaw->x_mm, ==, 100);
  g_assert_cmpfloat (flaw->y_mm, ==, -2.5);
  g_assert_cmpfloat (flaw->along_mm, ==, 20);
  g_assert_cmpfloat (flaw->across_mm, ==, 12.7);
  g_assert_cmpuint (sq_cloth_find_flaw (cloth, 2)->stock, ==, 0);
  g_assert_cmpint (job->laying.cuts, ==, SQ_CUTS_STRAIGHT);
  g_assert_cmpuint (job->laying.most_plies, ==, 12);
  g_assert_cmpfloat (job->laying.table_mm, ==, 7315.2);
  g_assert_true (sq_pinned_equal (&pin->of, &of));
  g_assert_cmpuint (pin->stock, ==, 1);
  g_assert_cmpfloat (pin->at.x, ==, 120.125);
  g_assert_cmpfloat (pin->at.y, ==, -12.5);
  g_assert_cmpfloat (pin->turn_deg, ==, 90);
  g_assert_cmpuint (sq_job_pin (job, 1)->of.cloth, ==, 0);
  g_assert_null (remnant->unknown);
  g_assert_null (flaw->unknown);
  g_assert_null (pin->unknown);
  g_assert_null (job->laying.unknown);
  g_assert_null (job->laying.unknown_plies);
}

/* Keys of a newer program are kept on every object; what is as it is anyway is not written. */
static void
test_unknown_kept (void)
{
  const char *text
      = "{\n"
        "  \"format\": \"squab job\",\n"
        "  \"version\": 1,\n"
        "  \"cloths\": [\n"
        "    {\n"
        "      \"id\": 1,\n"
        "      \"stock\": [\n"
        "        {\"id\": 1, \"kind\": \"bolt\", \"length\": 5000, \"shelf\": \"B 3\"}\n"
        "      ],\n"
        "      \"flaws\": [\n"
        "        {\"id\": 1, \"x\": 0, \"y\": 0, \"length\": 1, \"width\": 1, \"why\": [1.0]}\n"
        "      ]\n"
        "    }\n"
        "  ],\n"
        "  \"laying\": {\"plies\": {\"most\": 2, \"knife\": null}, \"hours\": 3},\n"
        "  \"pins\": [\n"
        "    {\"cushion\": 1, \"role\": \"face\", \"x\": 1, \"y\": 2, \"turn\": 0, "
        "\"colour\": 1e1}\n"
        "  ]\n"
        "}\n";
  SqDefaults defaults;
  g_autoptr (GError) error = NULL;

  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_read (text, -1, &defaults, &error);
  g_assert_no_error (error);
  g_autoptr (SqJob) copy = sq_job_dup (job);
  g_autofree char *written = sq_job_write (copy);
  g_assert_cmpstr (written, ==, text);
}

/* Ids are given where they are absent. */
static void
test_ids (void)
{
  g_autoptr (SqJob) job = job_with (
      "\"cloths\":[{\"stock\":[{\"length\":1},{\"id\":1,\"kind\":\"bolt\","
      "\"length\":2},{\"kind\":\"remnant\",\"length\":0}]}]");
  const SqCloth *cloth = g_ptr_array_index (job->cloths, 0);

  g_assert_cmpuint (sq_cloth_stock (cloth, 0)->id, ==, 2);
  g_assert_cmpuint (sq_cloth_stock (cloth, 1)->id, ==, 1);
  g_assert_cmpuint (sq_cloth_stock (cloth, 2)->id, ==, 3);
}

#define STOCK "\"cloths\":[{\"stock\":["
#define FLAWS "\"cloths\":[{\"flaws\":["
#define FACE "{\"cushion\":1,\"role\":\"face\",\"x\":0,\"y\":0,\"turn\":0}"

/* @message: how the message begins. */
static const struct
{
  const char *keys, *message;
} refused[] = {
  { STOCK "{\"kind\":\"bolt\"}]}]", "cloths[0].stock[0].length: missing" },
  { STOCK "{\"kind\":\"roll\",\"length\":1}]}]", "cloths[0].stock[0].kind: an unknown word" },
  { STOCK "{\"kind\":\"bolt\",\"length\":-1}]}]", "cloths[0].stock[0].length: less than 0" },
  { STOCK "{\"kind\":\"bolt\",\"length\":1,\"width\":-0.1}]}]",
    "cloths[0].stock[0].width: less than 0" },
  { STOCK "{\"kind\":\"bolt\",\"length\":1e999}]}]", "cloths[0].stock[0].length: not a finite" },
  { STOCK "{\"kind\":\"bolt\",\"length\":100001}]}]", "cloths[0].stock[0].length: more than" },
  { STOCK "{\"id\":2,\"kind\":\"bolt\",\"length\":1},{\"id\":2,\"kind\":\"bolt\","
          "\"length\":1}]}]",
    "cloths[0].stock[1].id: an id for the second time" },
  { FLAWS "{\"x\":0,\"y\":0,\"length\":-2,\"width\":1}]}]",
    "cloths[0].flaws[0].length: less than 0" },
  { FLAWS "{\"y\":0,\"length\":2,\"width\":1}]}]", "cloths[0].flaws[0].x: missing" },
  { FLAWS "{\"id\":0,\"x\":0,\"y\":0,\"length\":2,\"width\":1}]}]",
    "cloths[0].flaws[0].id: out of range" },
  { "\"laying\":[]", "laying: not an object" },
  { "\"laying\":{\"cuts\":\"round\"}", "laying.cuts: an unknown word" },
  { "\"laying\":{\"plies\":{\"most\":0}}", "laying.plies.most: out of range" },
  { "\"laying\":{\"plies\":{\"table\":-1}}", "laying.plies.table: less than 0" },
  { "\"pins\":{}", "pins: not a list" },
  { "\"pins\":[{}]", "pins[0].cushion: missing" },
  { "\"pins\":[" FACE "," FACE "]", "pins[1]: a second pin" },
  { "\"pins\":[{\"cushion\":1,\"role\":\"lid\",\"x\":0,\"y\":0,\"turn\":0}]",
    "pins[0].role: an unknown word" },
  { "\"pins\":[{\"cushion\":1,\"role\":\"face\",\"x\":0,\"y\":0,\"turn\":361}]",
    "pins[0].turn: out of range" },
  { "\"pins\":[{\"cushion\":1,\"role\":\"face\",\"x\":-2000001,\"y\":0,\"turn\":0}]",
    "pins[0].x: out of range" },
  { "\"pins\":[{\"cushion\":1,\"role\":\"face\",\"copy\":-1,\"x\":0,\"y\":0,\"turn\":0}]",
    "pins[0].copy: out of range" },
};

static void
test_refused (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (SqJob) job = try_job (refused[i].keys, &error);

      g_test_message ("%s", refused[i].keys);
      g_assert_null (job);
      g_assert_error (error, SQ_ERROR, SQ_ERROR_VALUE);
      g_assert_true (g_str_has_prefix (error->message, refused[i].message));
    }
}

static void
test_too_many (void)
{
  GString *keys = g_string_new (STOCK);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i <= 1000; i++)
    g_string_append_printf (keys, "%s{\"kind\":\"bolt\",\"length\":1}", i > 0 ? "," : "");
  g_string_append (keys, "]}]");
  g_autofree char *text = g_string_free (keys, FALSE);
  g_autoptr (SqJob) job = try_job (text, &error);
  g_assert_null (job);
  g_assert_cmpstr (error->message, ==, "cloths[0].stock: more than 1,000");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/job-laying/every-key", test_every_key);
  g_test_add_func ("/exchange/job-laying/unknown-kept", test_unknown_kept);
  g_test_add_func ("/exchange/job-laying/ids", test_ids);
  g_test_add_func ("/exchange/job-laying/refused", test_refused);
  g_test_add_func ("/exchange/job-laying/too-many", test_too_many);
  return g_test_run ();
}
