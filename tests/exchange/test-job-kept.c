/* SPDX-License-Identifier: GPL-3.0-or-later */
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

static SqJob *
every_key (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "exchange", "every-key.squab", NULL);
  SqDefaults defaults;
  g_autoptr (GError) error = NULL;

  sq_defaults_builtin (&defaults);
  SqJob *job = sq_job_load (path, &defaults, &error);
  g_assert_no_error (error);
  return job;
}

static void
test_every_key (void)
{
  g_autoptr (SqJob) job = every_key ();
  const SqKeptLay *lay = sq_job_kept_lay (job, 7);

  g_assert_cmpuint (job->revision, ==, 3);
  g_assert_cmpuint (job->given & (SQ_GIVEN_RATE (SQ_RATE_WAGE) - 1), ==,
                    SQ_GIVEN_UNITS | SQ_GIVEN_SHEET | SQ_GIVEN_PAPER_KINDS | SQ_GIVEN_PATTERN_SHEET
                        | SQ_GIVEN_PATTERN_MARGIN | SQ_GIVEN_PATTERN_OVERLAP);
  g_assert_cmpint (job->papers.sheet, ==, SQ_SHEET_LETTER);
  g_assert_cmpuint (job->papers.kinds, ==, 1 << SQ_PAPER_CUT_LIST | 1 << SQ_PAPER_LAYOUT);
  g_assert_null (job->papers.unknown);
  g_assert_cmpuint (job->kept_lays->len, ==, 1);
  g_assert_cmpuint (lay->digest, ==, G_GUINT64_CONSTANT (0xfedcba9876543210));
  g_assert_cmpuint (lay->steps, ==, G_GUINT64_CONSTANT (1) << 53);
  g_assert_cmpuint (lay->revision, ==, 28);
  g_assert_cmpfloat (sq_kept_lay_strip (lay, 0)->length_mm, ==, 1500000.125);
  g_assert_cmpuint (sq_kept_lay_piece (lay, 0)->cushion, ==, 3);
  g_assert_true (sq_kept_lay_piece (lay, 0)->mirrored);
  g_assert_cmpstr (sq_kept_lay_piece (lay, 0)->name, ==, "Top");
  g_assert_cmpuint (sq_kept_lay_piece (lay, 0)->cut->len, ==, 2);
  const SqPath *outer = g_ptr_array_index (sq_kept_lay_piece (lay, 0)->cut, 0);
  g_assert_cmpfloat (sq_path_nodes (outer)[1].bulge, ==, 0.11);
  g_assert_false (sq_kept_lay_piece (lay, 1)->mirrored);
  g_assert_cmpuint (sq_kept_lay_piece (lay, 1)->piece, ==, 12);
  g_assert_null (sq_kept_lay_piece (lay, 1)->name);
  g_assert_cmpuint (sq_kept_lay_placed (lay, 0)->copy, ==, 1);
  g_assert_cmpfloat (sq_kept_lay_placed (lay, 0)->at.x, ==, 1499542.925);
  g_assert_cmpfloat (sq_kept_lay_placed (lay, 0)->turn_deg, ==, 270.5);
  g_assert_cmpuint (sq_kept_lay_unlaid (lay, 0)->count, ==, 4);
  g_assert_cmpuint (sq_kept_lay_unlaid (lay, 0)->why, ==, 2);
  g_assert_null (lay->unknown);
}

/* What was not chosen is not written; an empty choice is one. */
static void
test_choice (void)
{
  g_autoptr (SqJob) none = job_with ("\"revision\":\"A\"");
  g_autoptr (SqJob) nothing = job_with ("\"papers\":{\"kinds\":[]}");
  g_autofree char *none_text = sq_job_write (none);
  g_autofree char *nothing_text = sq_job_write (nothing);

  g_assert_cmpuint (none->revision, ==, 1);
  g_assert_cmpuint (none->given, ==, 0);
  g_assert_cmpstr (none_text, ==, "{\n  \"format\": \"squab job\",\n  \"version\": 1\n}\n");
  g_assert_cmpuint (nothing->given, ==, SQ_GIVEN_PAPER_KINDS);
  g_assert_cmpuint (nothing->papers.kinds, ==, 0);
  g_assert_cmpstr (nothing_text, ==,
                   "{\n  \"format\": \"squab job\",\n  \"version\": 1,\n"
                   "  \"papers\": {\"kinds\": []}\n}\n");
}

/* Keys of a newer program are kept on every object. */
static void
test_unknown_kept (void)
{
  const char *text
      = "{\n"
        "  \"format\": \"squab job\",\n"
        "  \"version\": 1,\n"
        "  \"papers\": {\"sheet\": \"a4\", \"folded\": true},\n"
        "  \"kept_lays\": [\n"
        "    {\n"
        "      \"digest\": \"0000000000000001\",\n"
        "      \"seed\": 0,\n"
        "      \"steps\": 0,\n"
        "      \"strips\": [\n"
        "        {\"width\": 1, \"length\": 2, \"kind\": \"sheet\"}\n"
        "      ],\n"
        "      \"pieces\": [\n"
        "        {\"cushion\": 1, \"piece\": 0, \"cut\": [[[0, 0, 1], [1, 0, 1]]], \"side\": 1.0}\n"
        "      ],\n"
        "      \"placed\": [\n"
        "        {\"piece\": 0, \"copy\": 0, \"strip\": 0, \"x\": 0, \"y\": 0, \"turn\": 0, "
        "\"mirrored\": false}\n"
        "      ],\n"
        "      \"unlaid\": [\n"
        "        {\"piece\": 0, \"count\": 1, \"why\": \"pattern\", \"by\": null}\n"
        "      ],\n"
        "      \"flaws\": []\n"
        "    }\n"
        "  ]\n"
        "}\n";
  SqDefaults defaults;
  g_autoptr (GError) error = NULL;

  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_read (text, -1, &defaults, &error);
  g_assert_no_error (error);
  g_autofree char *written = sq_job_write (job);
  g_assert_cmpstr (written, ==, text);
}

#define LAY "\"kept_lays\":[{\"digest\":\"0123456789abcdef\","
#define STRIPS LAY "\"strips\":[{\"width\":1,\"length\":1}],"
#define PIECES                                                                                     \
  STRIPS "\"pieces\":[{\"cushion\":1,\"piece\":0,\"cut\":[[[0,0,0],[1,0,0],[0,1,0]]]}],"
#define CUT STRIPS "\"placed\":[],\"pieces\":[{\"cushion\":1,\"piece\":0,\"cut\":"

/* @message: how the message begins. */
static const struct
{
  const char *keys, *message;
} refused[] = {
  { "\"revision\":1", "revision: not a text" },
  { "\"revision\":\"\"", "revision: not a revision" },
  { "\"revision\":\"a\"", "revision: not a revision" },
  { "\"revision\":\"A1\"", "revision: not a revision" },
  { "\"revision\":\"AAAA\"", "revision: not a revision" },
  { "\"papers\":[]", "papers: not an object" },
  { "\"papers\":{\"sheet\":\"a5\"}", "papers.sheet: an unknown word" },
  { "\"papers\":{\"kinds\":\"layout\"}", "papers.kinds: not a list" },
  { "\"papers\":{\"kinds\":[\"layout\",\"poster\"]}", "papers.kinds[1]: an unknown word" },
  { "\"papers\":{\"kinds\":[\"layout\",\"layout\"]}", "papers.kinds[1]: a paper for the second" },
  { "\"kept_lays\":{}", "kept_lays: not a list" },
  { "\"kept_lays\":[7]", "kept_lays[0]: not an object" },
  { "\"kept_lays\":[{\"strips\":[],\"pieces\":[],\"placed\":[]}]", "kept_lays[0].digest: missing" },
  { LAY "\"pieces\":[],\"placed\":[]}]", "kept_lays[0].strips: missing" },
  { "\"kept_lays\":[{\"digest\":\"12\",\"strips\":[],\"pieces\":[],\"placed\":[]}]",
    "kept_lays[0].digest: not 16 digits" },
  { "\"kept_lays\":[{\"digest\":\"0123456789ABCDEF\",\"strips\":[],\"pieces\":[],\"placed\":[]}]",
    "kept_lays[0].digest: not 16 digits" },
  { PIECES "\"placed\":[],\"seed\":0.5}]", "kept_lays[0].seed: not a whole number" },
  { PIECES "\"placed\":[],\"steps\":-1}]", "kept_lays[0].steps: out of range" },
  { PIECES "\"placed\":[],\"steps\":9007199254740994}]", "kept_lays[0].steps: out of range" },
  { PIECES "\"placed\":[],\"revision\":\"?\"}]", "kept_lays[0].revision: not a revision" },
  { PIECES "\"placed\":[],\"cloth\":0}]", "kept_lays[0].cloth: out of range" },
  { LAY "\"strips\":[{\"width\":1}],\"pieces\":[],\"placed\":[]}]",
    "kept_lays[0].strips[0].length: missing" },
  { LAY "\"strips\":[{\"width\":1,\"length\":2000001}],\"pieces\":[],\"placed\":[]}]",
    "kept_lays[0].strips[0].length: out of range" },
  { STRIPS "\"placed\":[],\"pieces\":[{\"cushion\":1,\"piece\":0}]}]",
    "kept_lays[0].pieces[0].cut: missing" },
  { CUT "[]}]}]", "kept_lays[0].pieces[0].cut: no outline" },
  { CUT "[7]}]}]", "kept_lays[0].pieces[0].cut[0]: not a list" },
  { CUT "[[[0,0,0]]]}]}]", "kept_lays[0].pieces[0].cut[0]: fewer than two corners" },
  { CUT "[[[0,0,0],[0,1]]]}]}]", "kept_lays[0].pieces[0].cut[0][1]: not a corner" },
  { CUT "[[[0,0,0],[0,1e6,0]]]}]}]", "kept_lays[0].pieces[0].cut[0][1][1]: more than 100 m" },
  { CUT "[[[0,0,0],[0,1,101]]]}]}]", "kept_lays[0].pieces[0].cut[0][1][2]: out of range" },
  { CUT "[[[0,0,0],[0,1,1e999]]]}]}]", "kept_lays[0].pieces[0].cut[0][1][2]: not a finite" },
  { PIECES "\"placed\":[{\"piece\":0,\"copy\":0,\"strip\":0,\"x\":0,\"y\":0}]}]",
    "kept_lays[0].placed[0].turn: missing" },
  { PIECES "\"placed\":[{\"piece\":-1,\"copy\":0,\"strip\":0,\"x\":0,\"y\":0,\"turn\":0}]}]",
    "kept_lays[0].placed[0].piece: out of range" },
  { PIECES "\"placed\":[{\"piece\":1,\"copy\":0,\"strip\":0,\"x\":0,\"y\":0,\"turn\":0}]}]",
    "kept_lays[0].placed[0].piece: there is none" },
  { PIECES "\"placed\":[{\"piece\":0,\"copy\":0,\"strip\":1,\"x\":0,\"y\":0,\"turn\":0}]}]",
    "kept_lays[0].placed[0].strip: there is none" },
  { PIECES "\"placed\":[{\"piece\":0,\"copy\":0,\"strip\":0,\"x\":3e6,\"y\":0,\"turn\":0}]}]",
    "kept_lays[0].placed[0].x: out of range" },
  { PIECES "\"placed\":[{\"piece\":0,\"copy\":0,\"strip\":0,\"x\":0,\"y\":0,\"turn\":361}]}]",
    "kept_lays[0].placed[0].turn: out of range" },
  { PIECES "\"placed\":[],\"unlaid\":[{\"piece\":1,\"count\":1,\"why\":\"pattern\"}]}]",
    "kept_lays[0].unlaid[0].piece: there is none" },
  { PIECES "\"placed\":[],\"unlaid\":[{\"piece\":0,\"count\":1,\"why\":\"lost\"}]}]",
    "kept_lays[0].unlaid[0].why: an unknown word" },
  { PIECES "\"placed\":[]},{\"digest\":\"0123456789abcdef\",\"strips\":[],\"pieces\":[],"
           "\"placed\":[]}]",
    "kept_lays[1]: a second lay of one cloth" },
};

static void
test_refused (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (SqJob) job = try_job (refused[i].keys, &error);

      g_assert_null (job);
      g_assert_error (error, SQ_ERROR, SQ_ERROR_VALUE);
      if (!g_str_has_prefix (error->message, refused[i].message))
        g_test_fail_printf ("%s: got %s", refused[i].keys, error->message);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/job-kept/every-key", test_every_key);
  g_test_add_func ("/exchange/job-kept/choice", test_choice);
  g_test_add_func ("/exchange/job-kept/unknown-kept", test_unknown_kept);
  g_test_add_func ("/exchange/job-kept/refused", test_refused);
  return g_test_run ();
}
