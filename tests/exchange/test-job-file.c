/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/job-file.h"

#include "base/error.h"
#include "exchange/defaults-file.h"

#include <glib/gstdio.h>
#include <string.h>

static SqDefaults
builtin (void)
{
  SqDefaults defaults;

  sq_defaults_builtin (&defaults);
  return defaults;
}

static SqJob *
read_job (const char *text)
{
  SqDefaults defaults = builtin ();
  g_autoptr (GError) error = NULL;
  SqJob *job = sq_job_read (text, -1, &defaults, &error);

  g_assert_no_error (error);
  return job;
}

static char *
file_text (const char *folder, const char *name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", folder, name, NULL);
  char *text = NULL;

  g_file_get_contents (path, &text, NULL, NULL);
  g_assert_nonnull (text);
  return text;
}

/* A job of one cushion whose text goes on with @rest. */
static char *
with_cushion (const char *rest)
{
  return g_strdup_printf ("{\"format\":\"squab job\",\"version\":1,\"cushions\":[{%s}]}", rest);
}

static const SqCushion *
first_cushion (const SqJob *job)
{
  return g_ptr_array_index (job->cushions, 0);
}

static void
assert_same_text (const SqJob *job, const char *text)
{
  g_autofree char *written = sq_job_write (job);

  g_assert_cmpstr (written, ==, text);
}

static void
test_samples (void)
{
  static const char *const names[] = {
    "bay-seat.squab",        "berth-bolsters.squab", "berth-pair.squab",   "bow-seat.squab",
    "cabin-pads.squab",      "dining-pads.squab",    "folded-stool.squab", "half-round.squab",
    "pier-bench.squab",      "round-pad.squab",      "square-seat.squab",  "striped-bench.squab",
    "wheelhouse-seat.squab", "window-seat.squab",    "worked-plate.squab"
  };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *text = file_text ("data/samples", names[i]);
      g_autoptr (SqJob) job = read_job (text);

      assert_same_text (job, text);
    }
}

/* Every key that acts, with every bit that says it was given, and nothing unknown. */
static void
test_every_key (void)
{
  g_autofree char *text = file_text ("tests/exchange", "every-key.squab");
  g_autoptr (SqJob) job = read_job (text);
  const SqCushion *cushion = first_cushion (job);
  const SqCloth *cloth = sq_job_cloth (job, 7);
  const SqFoam *foam = sq_job_foam (job, SQ_FOAM_CLOSED_CELL);
  const SqCorner *corner = sq_outline_corner (cushion->outline, 4, NULL, NULL);

  assert_same_text (job, text);
  g_assert_null (job->unknown);
  g_assert_cmpint (job->units, ==, SQ_UNIT_CM);
  g_assert_cmpstr (job->notes, ==, "Two lines\nand \"quotes\" of 18 1⁄2 in.");
  g_assert_cmpuint (cushion->given, ==, (SQ_GIVEN_SEAMS_ACROSS << 1) - 1);
  g_assert_cmpuint (cushion->given_way, ==, (SQ_GIVEN_DRAW_IN << 1) - 1);
  for (guint i = 0; i < SQ_N_CUSHION_PARTS; i++)
    g_assert_null (cushion->unknown[i]);
  g_assert_cmpfloat (cushion->zip.to_mm, ==, 500.25);
  g_assert_cmpuint (cushion->zip.edge, ==, 2);
  g_assert_cmpfloat (cushion->allowance.join_mm, ==, 14);
  g_assert_cmpint (cushion->stripes.centre_on, ==, SQ_CENTRE_GAP);
  g_assert_cmpuint (corner->given, ==, (SQ_GIVEN_EDGE_BUILD << 1) - 1);
  g_assert_cmpstr (corner->corner_note, ==, "sharp tile");
  g_assert_null (corner->unknown);
  g_assert_cmpuint (cloth->given, ==, (SQ_GIVEN_CLOTH_PRICE << 1) - 1);
  g_assert_cmpfloat (cloth->price, ==, 24.5);
  g_assert_true (cloth->up_is_start);
  g_assert_cmpfloat (cloth->drop, ==, 0.5);
  g_assert_cmpuint (cloth->n_stripes, ==, 2);
  g_assert_cmpuint (cloth->stripes[0].colour, ==, 0xffffff);
  g_assert_null (cloth->unknown);
  g_assert_null (cloth->unknown_repeat);
  g_assert_cmpuint (foam->given, ==, (SQ_GIVEN_FOAM_KERF << 1) - 1);
  g_assert_cmpfloat (foam->price, ==, 480);
  for (SqRate rate = 0; rate < SQ_N_RATES; rate++)
    g_assert_true (sq_job_has_rate (job, rate));
  g_assert_cmpfloat (sq_job_rate (job, SQ_RATE_SEW), ==, 3.5);
  g_assert_cmpfloat (sq_job_rate (job, SQ_RATE_HANDLING), ==, 20);
  g_assert_null (job->unknown_rates);
  g_assert_cmpfloat (foam->ifd_n, ==, 310);
}

static void
test_nothing_given (void)
{
  const char *text = "{\n  \"format\": \"squab job\",\n  \"version\": 1,\n  \"cushions\": [\n"
                     "    {\n      \"id\": 1\n    }\n  ]\n}\n";
  g_autoptr (SqJob) job = read_job (text);
  const SqCushion *cushion = first_cushion (job);

  g_assert_cmpuint (cushion->given, ==, 0);
  g_assert_cmpuint (cushion->count, ==, 1);
  g_assert_cmpuint (sq_outline_n_rings (cushion->outline), ==, 0);
  g_assert_false ((job->given & SQ_GIVEN_UNITS));
  g_assert_cmpfloat (job->defaults.thickness_mm, ==, 76.2);
  assert_same_text (job, text);
}

/* Keys of a newer program, on every object that may have them, are kept as they were written. */
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
        "      \"repeat\": {\"glide\": 1.500},\n"
        "      \"stripes\": [\n"
        "        {\"at\": 1, \"width\": 2, \"colour\": \"#000000\", \"raised\": true}\n"
        "      ],\n"
        "      \"samples\": [{\"length\": 12000.0}]\n"
        "    }\n"
        "  ],\n"
        "  \"foams\": [\n"
        "    {\n"
        "      \"id\": 1,\n"
        "      \"material\": \"seat\",\n"
        "      \"blocks\": [2000, 1e3]\n"
        "    }\n"
        "  ],\n"
        "  \"rates\": {\"hour\": 30.0},\n"
        "  \"cushions\": [\n"
        "    {\n"
        "      \"id\": 1,\n"
        "      \"outline\": [\n"
        "        {\"id\": 1, \"x\": 0, \"y\": 0, \"bevel\": 12.50, \"hem\": \"open\"}\n"
        "      ],\n"
        "      \"underside_wrap\": {\"glue\": null},\n"
        "      \"allowances\": {\"welt\": 10},\n"
        "      \"foam\": {\"layers\": []},\n"
        "      \"zip\": {\"pull\": \"ring\"},\n"
        "      \"cloth\": {\"face\": 1, \"ties\": 1},\n"
        "      \"stripes\": {\"mood\": \"a, b: c\"},\n"
        "      \"hinges\": {\"edge\": 4.0, \"at\": \"top\"},\n"
        "      \"crown\": 4.0\n"
        "    }\n"
        "  ],\n"
        "  \"rows\": [1, 2.0, {\"exact\": 0.1000000000000000055511151231257827}]\n"
        "}\n";
  g_autoptr (SqJob) job = read_job (text);
  const SqCushion *cushion = first_cushion (job);

  assert_same_text (job, text);
  g_assert_cmpstr (cushion->unknown[SQ_ON_ZIP], ==, "{\"pull\": \"ring\"}");
  g_assert_cmpstr (cushion->unknown[SQ_ON_CUSHION], ==,
                   "{\"hinges\": {\"edge\": 4.0, \"at\": \"top\"}, \"crown\": 4.0}");
  g_assert_cmpuint (cushion->given, ==, SQ_GIVEN_CLOTH_FACE);
}

/* A cushion of a newer program that has no outline stays without one. */
static void
test_no_outline (void)
{
  static const struct
  {
    const char *keys;
    guint n_rings;
    const char *written;
  } cases[] = {
    { "\"survey\": {\"corners\": [\"A\"]}", 0, "\"survey\"" },
    { "\"outline\": []", 1, "\"outline\": []" },
    { "\"holes\": []", 0, "\"id\": 1\n" },
    { "\"holes\": [[]]", 2, "\"holes\": [\n        []\n      ]" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = with_cushion (cases[i].keys);
      g_autoptr (SqJob) job = read_job (text);
      g_autofree char *written = sq_job_write (job);
      g_autoptr (SqJob) again = read_job (written);

      g_assert_cmpuint (sq_outline_n_rings (first_cushion (job)->outline), ==, cases[i].n_rings);
      g_assert_nonnull (strstr (written, cases[i].written));
      assert_same_text (again, written);
    }
}

static void
test_ids (void)
{
  g_autofree char *text = with_cushion (
      "\"outline\":[{\"x\":0,\"y\":0},{\"id\":2,\"x\":9,\"y\":0},{\"x\":9,\"y\":9},"
      "{\"id\":3,\"x\":0,\"y\":9}],"
      "\"holes\":[[{\"x\":1,\"y\":1},{\"id\":4294967295,\"x\":1,\"y\":2},{\"id\":5,\"x\":2,\"y\":1}"
      "]]},"
      "{\"id\": 1},{},{\"name\": \"fourth\"");
  g_autoptr (SqJob) job = read_job (text);
  const SqId outer[] = { 1, 2, 4, 3 }, hole[] = { 6, 4294967295, 5 }, cushions[] = { 2, 1, 3, 4 };
  guint n;

  for (guint i = 0; i < 4; i++)
    {
      const SqCushion *cushion = g_ptr_array_index (job->cushions, i);
      g_assert_cmpuint (cushion->id, ==, cushions[i]);
      g_assert_cmpuint (sq_outline_ring (first_cushion (job)->outline, 0, &n)[i].id, ==, outer[i]);
    }
  for (guint i = 0; i < 3; i++)
    g_assert_cmpuint (sq_outline_ring (first_cushion (job)->outline, 1, &n)[i].id, ==, hole[i]);
}

/* Clockwise rings are turned once, and then never again. */
static void
test_turned (void)
{
  g_autofree char *text = with_cushion (
      "\"outline\":[{\"x\":0,\"y\":0,\"kind\":\"wall\"},{\"x\":0,\"y\":9,\"radius\":1},"
      "{\"x\":9,\"y\":9},{\"x\":9,\"y\":0,\"front\":true}]");
  g_autoptr (SqJob) job = read_job (text);
  g_autofree char *written = sq_job_write (job);
  g_autoptr (SqJob) again = read_job (written);
  const SqOutline *outline = first_cushion (job)->outline;
  guint n;

  g_assert_cmpuint (sq_outline_ring (outline, 0, &n)[1].id, ==, 4);
  g_assert_true (sq_outline_corner (outline, 1, NULL, NULL)->front);
  g_assert_cmpint (sq_outline_corner (outline, 2, NULL, NULL)->kind, ==, SQ_EDGE_WALL);
  g_assert_cmpuint (sq_outline_corner (outline, 2, NULL, NULL)->given, ==,
                    SQ_GIVEN_KIND | SQ_GIVEN_RADIUS);
  assert_same_text (again, written);
}

/* Numbers survive to the last bit. */
static void
test_numbers (void)
{
  for (guint i = 0; i < 2000; i++)
    {
      double x = g_test_rand_double_range (-1, 1) * pow (10, g_test_rand_double_range (-12, 5));
      SqCorner corner = { .id = 1, .at = { x, 1.0 / 3 } };
      const guint sizes[] = { 1 };
      SqDefaults defaults = builtin ();
      g_autoptr (SqOutline) outline = sq_outline_new (&corner, sizes, 1);
      g_autoptr (SqCushion) cushion = sq_cushion_new (1, outline);
      g_autoptr (SqJob) empty = sq_job_new (&defaults);
      g_autoptr (SqJob) job = sq_job_with_cushion (empty, cushion);
      g_autofree char *text = sq_job_write (job);
      g_autoptr (SqJob) again = read_job (text);
      guint n;
      const SqCorner *back = sq_outline_ring (first_cushion (again)->outline, 0, &n);

      g_assert_cmpmem (&back->at, sizeof back->at, &corner.at, sizeof corner.at);
    }
}

#define JOB "{\"format\":\"squab job\",\"version\":1"
#define CUSHION JOB ",\"cushions\":[{"
#define OUTLINE CUSHION "\"outline\":["
#define CORNER OUTLINE "{\"x\":0,\"y\":0,"

/* @message: how the message begins. */
static const struct
{
  const char *text;
  SqError code;
  const char *message;
} refused[] = {
  { "", SQ_ERROR_SYNTAX, "line 1, column 1: " },
  { "{", SQ_ERROR_SYNTAX, "line 1, column 2: " },
  { "null", SQ_ERROR_SYNTAX, "its \"format\"" },
  { "[]", SQ_ERROR_SYNTAX, "its \"format\"" },
  { "[\"format\",\"squab job\"]", SQ_ERROR_SYNTAX, "its \"format\"" },
  { "\"squab job\"", SQ_ERROR_SYNTAX, "its \"format\"" },
  { "{}", SQ_ERROR_SYNTAX, "its \"format\"" },
  { "{\"format\":1,\"version\":1}", SQ_ERROR_SYNTAX, "its \"format\"" },
  { "{\"Format\":\"squab job\",\"version\":1}", SQ_ERROR_SYNTAX, "its \"format\"" },
  { "{\"format\":\"squab\",\"version\":1}", SQ_ERROR_SYNTAX, "its \"format\"" },
  { "{\"format\":\"squab job\"}", SQ_ERROR_VALUE, "version: missing" },
  { "{\"format\":\"squab job\",\"version\":\"1\"}", SQ_ERROR_VALUE, "version: " },
  { "{\"format\":\"squab job\",\"version\":0}", SQ_ERROR_VALUE, "version: " },
  { "{\"format\":\"squab job\",\"version\":0.5}", SQ_ERROR_VALUE, "version: " },
  { "{\"format\":\"squab job\",\"version\":2}", SQ_ERROR_NEWER, "written by a newer program" },
  { "{\"cushions\":7,\"format\":\"squab job\",\"version\":2}", SQ_ERROR_NEWER, "written by" },
  { "{\"format\":\"squab job\",\"version\":1e99}", SQ_ERROR_NEWER, "written by" },
  { JOB ",\"version\":1}", SQ_ERROR_SYNTAX, "line 1, column 35: " },
  { JOB ",\"units\":\"ft\"}", SQ_ERROR_VALUE, "units: " },
  { JOB ",\"units\":null}", SQ_ERROR_VALUE, "units: " },
  { JOB ",\"title\":7}", SQ_ERROR_VALUE, "title: " },
  { JOB ",\"cushions\":{}}", SQ_ERROR_VALUE, "cushions: " },
  { JOB ",\"cushions\":[7]}", SQ_ERROR_VALUE, "cushions[0]: " },
  { JOB ",\"cushions\":[{},null]}", SQ_ERROR_VALUE, "cushions[1]: " },
  { JOB ",\"cushions\":[{\"id\":1},{\"id\":2},{\"id\":1}]}", SQ_ERROR_VALUE, "cushions[2].id: " },
  { CUSHION "\"id\":0}]}", SQ_ERROR_VALUE, "cushions[0].id: " },
  { CUSHION "\"id\":-1}]}", SQ_ERROR_VALUE, "cushions[0].id: " },
  { CUSHION "\"id\":1.5}]}", SQ_ERROR_VALUE, "cushions[0].id: " },
  { CUSHION "\"id\":4294967296}]}", SQ_ERROR_VALUE, "cushions[0].id: " },
  { CUSHION "\"id\":\"1\"}]}", SQ_ERROR_VALUE, "cushions[0].id: " },
  { CUSHION "\"id\":1e999}]}", SQ_ERROR_VALUE, "cushions[0].id: " },
  { CUSHION "\"name\":[]}]}", SQ_ERROR_VALUE, "cushions[0].name: " },
  { CUSHION "\"count\":0}]}", SQ_ERROR_VALUE, "cushions[0].count: " },
  { CUSHION "\"count\":100001}]}", SQ_ERROR_VALUE, "cushions[0].count: " },
  { CUSHION "\"count\":2.5}]}", SQ_ERROR_VALUE, "cushions[0].count: " },
  { CUSHION "\"thickness\":1e999}]}", SQ_ERROR_VALUE, "cushions[0].thickness: " },
  { CUSHION "\"thickness\":-1e999}]}", SQ_ERROR_VALUE, "cushions[0].thickness: " },
  { CUSHION "\"thickness\":100000.001}]}", SQ_ERROR_VALUE, "cushions[0].thickness: " },
  { CUSHION "\"thickness\":\"3 in\"}]}", SQ_ERROR_VALUE, "cushions[0].thickness: " },
  { CUSHION "\"thickness\":true}]}", SQ_ERROR_VALUE, "cushions[0].thickness: " },
  { CUSHION "\"thickness\":NaN}]}", SQ_ERROR_SYNTAX, "line 1, column 60: " },
  { CUSHION "\"build\":\"Boxed\"}]}", SQ_ERROR_VALUE, "cushions[0].build: " },
  { CUSHION "\"build\":1}]}", SQ_ERROR_VALUE, "cushions[0].build: " },
  { CUSHION "\"underside_wrap\":[]}]}", SQ_ERROR_VALUE, "cushions[0].underside_wrap: " },
  { CUSHION "\"underside_wrap\":{\"style\":\"\"}}]}", SQ_ERROR_VALUE,
    "cushions[0].underside_wrap.style: " },
  { CUSHION "\"allowances\":{\"zip\":-100001}}]}", SQ_ERROR_VALUE, "cushions[0].allowances.zip: " },
  { CUSHION "\"foam\":{\"material\":\"down\"}}]}", SQ_ERROR_VALUE, "cushions[0].foam.material: " },
  { CUSHION "\"zip\":{\"place\":\"top\"}}]}", SQ_ERROR_VALUE, "cushions[0].zip.place: " },
  { CUSHION "\"zip\":{\"edge\":0}}]}", SQ_ERROR_VALUE, "cushions[0].zip.edge: " },
  { CUSHION "\"cloth\":{\"face\":\"red\"}}]}", SQ_ERROR_VALUE, "cushions[0].cloth.face: " },
  { CUSHION "\"stripes\":{\"run\":null}}]}", SQ_ERROR_VALUE, "cushions[0].stripes.run: " },
  { CUSHION "\"outline\":{}}]}", SQ_ERROR_VALUE, "cushions[0].outline: " },
  { OUTLINE "[]]}]}", SQ_ERROR_VALUE, "cushions[0].outline[0]: " },
  { OUTLINE "{\"y\":0}]}]}", SQ_ERROR_VALUE, "cushions[0].outline[0].x: missing" },
  { OUTLINE "{\"x\":0,\"Y\":0}]}]}", SQ_ERROR_VALUE, "cushions[0].outline[0].y: missing" },
  { OUTLINE "{\"x\":0,\"y\":0},{\"x\":0,\"y\":0},{\"x\":1e6,\"y\":0}]}]}", SQ_ERROR_VALUE,
    "cushions[0].outline[2].x: more than 100 m" },
  { CORNER "\"bow\":-100001}]}]}", SQ_ERROR_VALUE, "cushions[0].outline[0].bow: " },
  { CORNER "\"bow\":1,\"curve\":[[1,1],[2,2]]}]}]}", SQ_ERROR_VALUE,
    "cushions[0].outline[0].curve: " },
  { CORNER "\"curve\":[[1,1],[2,2]],\"bow\":1}]}]}", SQ_ERROR_VALUE,
    "cushions[0].outline[0].bow: " },
  { CORNER "\"curve\":7}]}]}", SQ_ERROR_VALUE, "cushions[0].outline[0].curve: " },
  { CORNER "\"curve\":[[1,1]]}]}]}", SQ_ERROR_VALUE, "cushions[0].outline[0].curve: " },
  { CORNER "\"curve\":[[1,1],[2,2],[3,3]]}]}]}", SQ_ERROR_VALUE, "cushions[0].outline[0].curve: " },
  { CORNER "\"curve\":[[1,1],[2]]}]}]}", SQ_ERROR_VALUE, "cushions[0].outline[0].curve[1]: " },
  { CORNER "\"curve\":[[1,1],[2,1e6]]}]}]}", SQ_ERROR_VALUE,
    "cushions[0].outline[0].curve[1][1]: " },
  { CORNER "\"curve\":[[[1],1],[2,1]]}]}]}", SQ_ERROR_VALUE,
    "cushions[0].outline[0].curve[0][0]: " },
  { CORNER "\"kind\":\"lid\"}]}]}", SQ_ERROR_VALUE, "cushions[0].outline[0].kind: " },
  { CORNER "\"seen\":1}]}]}", SQ_ERROR_VALUE, "cushions[0].outline[0].seen: " },
  { CORNER "\"note\":{}}]}]}", SQ_ERROR_VALUE, "cushions[0].outline[0].note: " },
  { CORNER "\"front\":true},{\"x\":1,\"y\":0},{\"x\":1,\"y\":1,\"front\":true}]}]}", SQ_ERROR_VALUE,
    "cushions[0].outline[2].front: " },
  { CORNER "\"id\":3},{\"x\":1,\"y\":0,\"id\":3}]}]}", SQ_ERROR_VALUE,
    "cushions[0].outline[1].id: " },
  { CORNER "\"id\":3}],\"holes\":[[{\"id\":3,\"x\":1,\"y\":0}]]}]}", SQ_ERROR_VALUE,
    "cushions[0].holes[0][0].id: " },
  { CUSHION "\"holes\":[7]}]}", SQ_ERROR_VALUE, "cushions[0].holes[0]: " },
  { CUSHION "\"holes\":[[{\"x\":1,\"y\":0,\"front\":true}]]}]}", SQ_ERROR_VALUE,
    "cushions[0].holes[0][0].front: " },
  { JOB ",\"cloths\":7}", SQ_ERROR_VALUE, "cloths: " },
  { JOB ",\"cloths\":[{\"id\":1},{\"id\":1}]}", SQ_ERROR_VALUE, "cloths[1].id: " },
  { JOB ",\"cloths\":[{\"class\":\"silk\"}]}", SQ_ERROR_VALUE, "cloths[0].class: " },
  { JOB ",\"cloths\":[{\"up\":\"left\"}]}", SQ_ERROR_VALUE, "cloths[0].up: " },
  { JOB ",\"cloths\":[{\"colour\":\"#12345\"}]}", SQ_ERROR_VALUE, "cloths[0].colour: " },
  { JOB ",\"cloths\":[{\"colour\":\"#12345g\"}]}", SQ_ERROR_VALUE, "cloths[0].colour: " },
  { JOB ",\"cloths\":[{\"colour\":\"1234567\"}]}", SQ_ERROR_VALUE, "cloths[0].colour: " },
  { JOB ",\"cloths\":[{\"price\":\"24\"}]}", SQ_ERROR_VALUE, "cloths[0].price: " },
  { JOB ",\"cloths\":[{\"repeat\":{\"drop\":0.25}}]}", SQ_ERROR_VALUE, "cloths[0].repeat.drop: " },
  { JOB ",\"cloths\":[{\"stripes\":[{\"at\":1}]}]}", SQ_ERROR_VALUE,
    "cloths[0].stripes[0].width: missing" },
  { JOB ",\"cloths\":[{\"stripes\":[{\"at\":1,\"width\":1,\"colour\":7}]}]}", SQ_ERROR_VALUE,
    "cloths[0].stripes[0].colour: " },
  { JOB ",\"foams\":[{\"id\":2},{\"id\":2}]}", SQ_ERROR_VALUE, "foams[1].id: " },
  { JOB ",\"foams\":[{\"density\":\"28\"}]}", SQ_ERROR_VALUE, "foams[0].density: " },
};

static void
assert_refused (const char *text, gssize length, SqError code, const char *message)
{
  SqDefaults defaults = builtin ();
  g_autoptr (GError) error = NULL;
  g_autoptr (SqJob) job = sq_job_read (text, length, &defaults, &error);

  g_assert_null (job);
  g_assert_error (error, SQ_ERROR, (int) code);
  if (!g_str_has_prefix (error->message, message))
    g_test_fail_printf ("%s: got %s", text, error->message);
}

static void
test_refused (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    assert_refused (refused[i].text, -1, refused[i].code, refused[i].message);
}

/* @n times @item, separated by commas, between @before and @after. */
static char *
many (const char *before, const char *item, guint n, const char *after)
{
  GString *text = g_string_new (before);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "," : "", item);
  g_string_append (text, after);
  return g_string_free (text, FALSE);
}

static void
test_too_many (void)
{
  g_autofree char *corners = many (OUTLINE, "{\"x\":0,\"y\":0}", 5001, "]}]}");
  g_autofree char *hole = many (CUSHION "\"holes\":[[", "{\"x\":0,\"y\":0}", 5001, "]]}]}");
  g_autofree char *cushions = many (JOB ",\"cushions\":[", "{}", 10001, "]}");
  g_autofree char *most = many (JOB ",\"cushions\":[", "{}", 10000, "]}");
  g_autofree char *most_corners = many (OUTLINE, "{\"x\":0,\"y\":0}", 5000, "]}]}");
  g_autoptr (SqJob) job = read_job (most);
  g_autoptr (SqJob) other = read_job (most_corners);

  g_assert_cmpuint (job->cushions->len, ==, 10000);
  g_assert_nonnull (other);
  assert_refused (corners, -1, SQ_ERROR_VALUE, "cushions[0].outline: ");
  assert_refused (hole, -1, SQ_ERROR_VALUE, "cushions[0].holes[0]: ");
  assert_refused (cushions, -1, SQ_ERROR_VALUE, "cushions: ");
}

/* What can't be built is none of the reader's business. */
static void
test_odd_but_loaded (void)
{
  static const char *const texts[] = {
    CUSHION "\"thickness\":-5}]}",
    CUSHION "\"thickness\":100000,\"count\":100000}]}",
    CORNER "\"radius\":-3,\"bow\":99999}]}]}",
    CORNER "\"bow\":5},{\"x\":0,\"y\":0,\"bow\":5}]}]}",
    CORNER "\"curve\":[[0,0],[0,0]]}]}]}",
    OUTLINE "{\"x\":0,\"y\":0},{\"x\":9,\"y\":9},{\"x\":9,\"y\":0},{\"x\":0,\"y\":9}]}]}",
    CUSHION "\"cloth\":{\"face\":99},\"zip\":{\"edge\":99}}]}",
    CUSHION "\"count\":3.0,\"id\":1e2}]}",
    JOB ",\"cloths\":[{\"width\":-1,\"repeat\":{\"across\":-5,\"drop\":0}}]}",
    JOB ",\"cloths\":[{\"id\":1,\"stripes\":[]}],\"x\":1e999}",
    JOB ",\"\\u0074itle\":\"an escaped key\"}",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (SqJob) job = read_job (texts[i]);
      g_autofree char *written = sq_job_write (job);
      g_autoptr (SqJob) again = read_job (written);

      assert_same_text (again, written);
    }
}

static void
test_files (void)
{
  g_autofree char *folder = g_dir_make_tmp ("squab-job-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "a.squab", NULL);
  g_autofree char *text = file_text ("data/samples", "bay-seat.squab");
  g_autoptr (SqJob) job = read_job (text);
  g_autoptr (SqJob) loaded = NULL;
  g_autoptr (GError) error = NULL;
  SqDefaults defaults = builtin ();

  g_assert_null (sq_job_load (path, &defaults, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_READ);
  g_clear_error (&error);
  g_assert_true (sq_job_save (job, path, &error));
  g_assert_no_error (error);
  loaded = sq_job_load (path, &defaults, &error);
  g_assert_no_error (error);
  assert_same_text (loaded, text);
  g_assert_true (g_file_set_contents (path, JOB ",\"units\":7}", -1, NULL));
  g_assert_null (sq_job_load (path, &defaults, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_VALUE);
  g_assert_true (g_str_has_prefix (error->message, path));
  g_assert_nonnull (strstr (error->message, ": units: "));
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/job-file/samples", test_samples);
  g_test_add_func ("/exchange/job-file/every-key", test_every_key);
  g_test_add_func ("/exchange/job-file/nothing-given", test_nothing_given);
  g_test_add_func ("/exchange/job-file/unknown-kept", test_unknown_kept);
  g_test_add_func ("/exchange/job-file/no-outline", test_no_outline);
  g_test_add_func ("/exchange/job-file/ids", test_ids);
  g_test_add_func ("/exchange/job-file/turned", test_turned);
  g_test_add_func ("/exchange/job-file/numbers", test_numbers);
  g_test_add_func ("/exchange/job-file/refused", test_refused);
  g_test_add_func ("/exchange/job-file/too-many", test_too_many);
  g_test_add_func ("/exchange/job-file/odd-but-loaded", test_odd_but_loaded);
  g_test_add_func ("/exchange/job-file/files", test_files);
  return g_test_run ();
}
