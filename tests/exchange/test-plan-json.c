/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/plan-json.h"

#include "exchange/defaults-file.h"
#include "exchange/job-file.h"

#include <cjson/cJSON.h>
#include <math.h>

/* A folded square, a boxed seat with an arc, a rounded corner and a hole, and one that crosses
 * itself. */
static const char job_text[]
    = "{ \"format\": \"squab job\", \"version\": 1, \"units\": \"in\","
      "  \"cloths\": [ {\"id\": 5, \"name\": \"Stripe\", \"width\": 1400,"
      "                 \"repeat\": {\"across\": 100},"
      "                 \"stripes\": [{\"at\": 0, \"width\": 40, \"colour\": \"#803020\"}]} ],"
      "  \"cushions\": ["
      "    {\"id\": 7, \"name\": \"Plate\", \"count\": 2, \"thickness\": 63.5,"
      "     \"build\": \"folded-corner\","
      "     \"underside_wrap\": {\"depth\": 25.4, \"style\": \"mitred\"},"
      "     \"outline\": [ {\"id\": 1, \"x\": 0, \"y\": 0, \"front\": true},"
      "       {\"id\": 2, \"x\": 469.9, \"y\": 0}, {\"id\": 3, \"x\": 469.9, \"y\": 469.9},"
      "       {\"id\": 4, \"x\": 0, \"y\": 469.9} ]},"
      "    {\"id\": 8, \"name\": \"Bay\", \"thickness\": 76.2, \"build\": \"boxed\","
      "     \"outline\": [ {\"id\": 1, \"x\": 0, \"y\": 0, \"front\": true},"
      "       {\"id\": 2, \"x\": 900, \"y\": 0, \"bow\": 40},"
      "       {\"id\": 3, \"x\": 900, \"y\": 500, \"radius\": 60},"
      "       {\"id\": 4, \"x\": 0, \"y\": 500} ],"
      "     \"holes\": [ [ {\"id\": 5, \"x\": 300, \"y\": 200}, {\"id\": 6, \"x\": 300, \"y\": "
      "300},"
      "       {\"id\": 7, \"x\": 400, \"y\": 300}, {\"id\": 8, \"x\": 400, \"y\": 200} ] ]},"
      "    {\"id\": 9, \"name\": \"Knot\", \"thickness\": 76.2,"
      "     \"outline\": [ {\"id\": 1, \"x\": 0, \"y\": 0}, {\"id\": 2, \"x\": 400, \"y\": 400},"
      "       {\"id\": 3, \"x\": 400, \"y\": 0}, {\"id\": 4, \"x\": 0, \"y\": 250} ]} ] }";

static SqLays *
make_lays (void)
{
  SqDefaults defaults;
  g_autoptr (GError) error = NULL;

  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_read (job_text, -1, &defaults, &error);
  g_assert_no_error (error);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  return sq_lays_new (plan, NULL, &(SqLayBudget){ .seed = 1, .steps = 0 }, NULL);
}

static cJSON *
parse_with (const SqLays *lays, double flatten_mm, gboolean with_ways)
{
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  g_autofree char *text = sq_plan_write (lays, flatten_mm, with_ways, &style);
  cJSON *json = cJSON_ParseWithOpts (text, NULL, TRUE);

  g_assert_nonnull (json);
  return json;
}

static cJSON *
parse (const SqLays *lays, double flatten_mm)
{
  return parse_with (lays, flatten_mm, FALSE);
}

/* What stands at keys and indexes: get (json, "cushions", 0, "pieces", 1, NULL) would want two
 * kinds of argument, so a path it is: "cushions/0/pieces/1". */
static const cJSON *
get (const cJSON *json, const char *path)
{
  g_auto (GStrv) steps = g_strsplit (path, "/", -1);

  for (guint i = 0; steps[i] != NULL; i++)
    {
      json = cJSON_IsArray (json) ? cJSON_GetArrayItem (json, atoi (steps[i]))
                                  : cJSON_GetObjectItemCaseSensitive (json, steps[i]);
      if (json == NULL)
        g_error ("no %s in %s", steps[i], path);
    }
  return json;
}

static void
assert_keys (const cJSON *object, const char *expected)
{
  g_autoptr (GString) keys = g_string_new (NULL);
  const cJSON *member;

  cJSON_ArrayForEach (member, object)
      g_string_append_printf (keys, "%s%s", keys->len > 0 ? " " : "", member->string);
  g_assert_cmpstr (keys->str, ==, expected);
}

static void
test_keys (void)
{
  g_autoptr (SqLays) lays = make_lays ();
  cJSON *json = parse (lays, 0);

  assert_keys (json, "format version cushions lays purchase foam_lays price cut_list totals");
  assert_keys (
      get (json, "cushions/0"),
      "id name count outlines pieces seams foam zip problems matches survey hand build welt "
      "insert stuffed");
  assert_keys (get (json, "cushions/0/outlines"), "top underside foam");
  assert_keys (get (json, "cushions/0/pieces/0"),
               "id role name side count cloth grain turns area width height sew cut runs marks "
               "corner_notches skirts trims phase");
  assert_keys (get (json, "cushions/0/pieces/0/runs/0"), "role edge ring from to allowance length");
  assert_keys (get (json, "cushions/0/pieces/0/marks/0"), "kind count x y angle depth seam");
  assert_keys (get (json, "cushions/0/pieces/0/corner_notches/0"), "corner apex leg mouth dart");
  assert_keys (get (json, "cushions/0/pieces/0/skirts/0"), "edge depth");
  assert_keys (get (json, "cushions/0/pieces/0/phase"), "across along x y u v");
  assert_keys (get (json, "cushions/0/seams/0"), "kind a b ease step");
  assert_keys (get (json, "cushions/0/seams/0/a"), "piece runs length");
  assert_keys (get (json, "cushions/0/foam/0"),
               "material rings thickness oversize count volume weight");
  assert_keys (get (json, "lays/0"),
               "cloth strips density seed steps digest cuts cutting placed unlaid");
  assert_keys (get (json, "lays/0/strips/0"), "kind width length");
  assert_keys (get (json, "lays/0/cutting/1"),
               "cuts buy unlaid straight_cuts straight_length outline_length minutes");
  assert_keys (get (json, "lays/0/placed/0"), "cushion piece copy strip x y turn mirrored");
  assert_keys (get (json, "purchase/0"),
               "cloth bolts laid squaring pattern buy sold_by waste unlaid stock leftovers added");
  assert_keys (get (json, "cushions/2/problems/0"), "code severity at id text");
  cJSON_Delete (json);
}

/* The comparison stands there where it is asked for, and all its ways have the same keys. */
static void
test_ways (void)
{
  g_autoptr (SqLays) lays = make_lays ();
  cJSON *json = parse_with (lays, 0, TRUE);
  const cJSON *way;

  assert_keys (json, "format version cushions lays purchase foam_lays price cut_list totals rates");
  assert_keys (get (json, "rates"), "wage cut sew corner zip welt foam handling samples");
  g_assert_cmpint (cJSON_GetArraySize (get (json, "rates/samples")), ==, SQ_N_RATES);
  for (guint i = 0; i < 3; i++)
    {
      g_autofree char *path = g_strdup_printf ("cushions/%u/ways", i);
      cJSON_ArrayForEach (way, get (json, path))
          assert_keys (way, "build welt mixed in_use possible why pieces seam_length cloth foam "
                            "minutes cost costs unknown");
    }
  g_assert_true (cJSON_IsTrue (get (json, "cushions/1/ways/0/possible")));
  g_assert_true (cJSON_IsTrue (get (json, "cushions/1/ways/0/in_use")));
  assert_keys (get (json, "cushions/1/ways/0/cloth/0"), "cloth area length");
  assert_keys (get (json, "cushions/2/ways/0/why"), "code severity at id text");
  g_assert_true (cJSON_IsNull (get (json, "cushions/2/ways/0/cost")));
  cJSON_Delete (json);
}

static void
test_values (void)
{
  g_autoptr (SqLays) lays = make_lays ();
  cJSON *json = parse (lays, 0);

  g_assert_cmpstr (get (json, "format")->valuestring, ==, "squab plan");
  g_assert_cmpint (get (json, "version")->valueint, ==, 1);
  g_assert_cmpint (get (json, "cushions/0/id")->valueint, ==, 7);
  g_assert_cmpint (get (json, "cushions/0/count")->valueint, ==, 2);
  g_assert_cmpint (get (json, "cushions/0/pieces/0/cloth")->valueint, ==, 5);
  g_assert_cmpstr (get (json, "cushions/0/pieces/0/name")->valuestring, ==, "Plate");
  g_assert_cmpstr (get (json, "cushions/0/pieces/0/side")->valuestring, ==, "right");
  g_assert_cmpfloat (get (json, "cushions/0/pieces/0/width")->valuedouble, ==,
                     sq_cover_piece (sq_plan_cover (lays->plan, 0), 0)->width_mm);
  g_assert_cmpstr (get (json, "cushions/2/problems/0/code")->valuestring, ==, "outline-crosses");
  g_assert_cmpstr (get (json, "cushions/2/problems/0/severity")->valuestring, ==, "error");
  g_assert_true (cJSON_IsNull (get (json, "cushions/2/survey")));
  g_assert_cmpint (cJSON_GetArraySize (get (json, "cushions/2/pieces")), ==, 0);
  cJSON_Delete (json);
}

/* A lay's places are those of the lays; what is too wide for the cloth is told beside them. */
static void
test_lays (void)
{
  g_autoptr (SqLays) lays = make_lays ();
  cJSON *json = parse (lays, 0);
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);
  const cJSON *placed = get (json, "lays/0/placed");
  g_autofree char *digest = g_strdup_printf ("%016" G_GINT64_MODIFIER "x", cloth->task->digest);

  g_assert_cmpint (cJSON_GetArraySize (get (json, "lays")), ==, 1);
  g_assert_cmpint (get (json, "lays/0/cloth")->valueint, ==, 5);
  g_assert_cmpstr (get (json, "lays/0/strips/0/kind")->valuestring, ==, "roll");
  g_assert_cmpfloat (get (json, "lays/0/strips/0/width")->valuedouble, ==, 1400);
  g_assert_cmpfloat (get (json, "lays/0/strips/0/length")->valuedouble, ==,
                     sq_lay_length (cloth->lay, 0) / 1000.0);
  g_assert_cmpfloat_with_epsilon (get (json, "lays/0/density")->valuedouble,
                                  sq_lay_density (cloth->task, cloth->lay, 0), 1e-12);
  g_assert_cmpstr (get (json, "lays/0/digest")->valuestring, ==, digest);
  g_assert_cmpint (cJSON_GetArraySize (placed), ==, (int) cloth->lay->placed->len);
  for (guint i = 0; i < cloth->lay->placed->len; i++)
    {
      const SqPlaced *p = sq_lay_placed (cloth->lay, i);
      const cJSON *told = cJSON_GetArrayItem (placed, (int) i);
      const SqCutEntry *entry = sq_lays_entry (lays, p);
      g_assert_cmpint (get (told, "cushion")->valueint, ==, (int) entry->cushion);
      g_assert_cmpint (get (told, "piece")->valueint, ==, (int) entry->piece);
      g_assert_cmpint (get (told, "copy")->valueint, ==, (int) p->copy);
      g_assert_cmpfloat (get (told, "x")->valuedouble, ==, p->at.x / 1000.0);
      g_assert_cmpfloat (get (told, "y")->valuedouble, ==, p->at.y / 1000.0);
      g_assert_cmpfloat_with_epsilon (
          remainder (get (told, "turn")->valuedouble
                         + sq_lays_piece (lays, p)->grain_rad * 180 / G_PI - p->pose.turn / 1000.0,
                     360),
          0, 1e-9);
    }
  cJSON_Delete (json);
}

static void
test_unlaid (void)
{
  SqDefaults defaults;
  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_read (
      "{\"format\":\"squab job\",\"version\":1,\"cloths\":[{\"id\":1,\"width\":400}],"
      "\"cushions\":[{\"id\":1,\"count\":3,\"outline\":[{\"x\":0,\"y\":0},{\"x\":500,\"y\":0},"
      "{\"x\":500,\"y\":500},{\"x\":0,\"y\":500}]}]}",
      -1, &defaults, NULL);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &(SqLayBudget){ .seed = 1, .steps = 0 }, NULL);
  cJSON *json = parse (lays, 0);

  assert_keys (get (json, "lays/0/unlaid/0"), "cushion piece count why");
  g_assert_cmpint (get (json, "lays/0/unlaid/0/count")->valueint, ==, 3);
  g_assert_cmpstr (get (json, "lays/0/unlaid/0/why")->valuestring, ==, "too-wide");
  g_assert_cmpint (get (json, "purchase/0/unlaid")->valueint, ==,
                   (int) sq_lays_cloth (lays, 0)->purchase.unlaid);
  cJSON_Delete (json);
}

static void
test_purchase (void)
{
  g_autoptr (SqLays) lays = make_lays ();
  cJSON *json = parse (lays, 0);
  const SqPurchase *p = &sq_lays_cloth (lays, 0)->purchase;

  g_assert_cmpint (get (json, "purchase/0/cloth")->valueint, ==, 5);
  g_assert_cmpint (get (json, "purchase/0/bolts")->valueint, ==, 1);
  g_assert_cmpfloat (get (json, "purchase/0/laid")->valuedouble, ==, p->laid_mm);
  g_assert_cmpfloat (get (json, "purchase/0/squaring")->valuedouble, ==, 50.8);
  g_assert_cmpfloat (get (json, "purchase/0/buy")->valuedouble, ==, p->buy_mm);
  g_assert_cmpfloat (get (json, "purchase/0/sold_by")->valuedouble, ==, 114.3);
  g_assert_cmpfloat (get (json, "purchase/0/waste")->valuedouble, ==, p->waste);
  cJSON_Delete (json);
}

/* What is there is told with its id and whole length; only the rest is bought. */
static void
test_stock (void)
{
  SqDefaults defaults;
  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_read (
      "{\"format\":\"squab job\",\"version\":1,\"cloths\":[{\"id\":1,\"width\":1300,"
      "\"stock\":[{\"id\":6,\"kind\":\"bolt\",\"length\":700},"
      "{\"id\":8,\"kind\":\"remnant\",\"length\":600,\"width\":560}]}],"
      "\"cushions\":[{\"id\":1,\"count\":3,\"outline\":[{\"x\":0,\"y\":0},{\"x\":500,\"y\":0},"
      "{\"x\":500,\"y\":500},{\"x\":0,\"y\":500}]}]}",
      -1, &defaults, NULL);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &(SqLayBudget){ .seed = 1, .steps = 0 }, NULL);
  cJSON *json = parse (lays, 0);

  assert_keys (get (json, "lays/0/strips/0"), "kind width length stock whole_length");
  assert_keys (get (json, "lays/0/strips/2"), "kind width length");
  g_assert_cmpstr (get (json, "lays/0/strips/0/kind")->valuestring, ==, "remnant");
  g_assert_cmpint (get (json, "lays/0/strips/0/stock")->valueint, ==, 8);
  g_assert_cmpfloat (get (json, "lays/0/strips/0/width")->valuedouble, ==, 560);
  g_assert_cmpfloat (get (json, "lays/0/strips/0/whole_length")->valuedouble, ==, 600);
  g_assert_cmpstr (get (json, "lays/0/strips/1/kind")->valuestring, ==, "roll");
  g_assert_cmpfloat (get (json, "lays/0/strips/1/width")->valuedouble, ==, 1300);
  assert_keys (get (json, "purchase/0/stock/0"), "id laid");
  g_assert_cmpint (get (json, "purchase/0/stock/0/id")->valueint, ==, 8);
  g_assert_cmpint (get (json, "purchase/0/bolts")->valueint, ==, 1);
  cJSON_Delete (json);
}

static void
test_foam_lays (void)
{
  g_autoptr (SqLays) lays = make_lays ();
  const SqFoamLay *foam = sq_foam_lay (lays->foams, 0);
  cJSON *json = parse (lays, 0);

  assert_keys (get (json, "foam_lays/0"),
               "material thickness kerf sheets waste strips placed unlaid");
  assert_keys (get (json, "foam_lays/0/strips/0"), "kind width length");
  assert_keys (get (json, "foam_lays/0/placed/0"), "cushion foam copy strip x y turn mirrored");
  g_assert_cmpint (get (json, "foam_lays/0/sheets")->valueint, ==, (int) foam->sheets);
  g_assert_cmpfloat (get (json, "foam_lays/0/waste")->valuedouble, ==, foam->waste);
  g_assert_cmpfloat (get (json, "foam_lays/0/strips/0/length")->valuedouble, ==, 2032);
  g_assert_cmpint (cJSON_GetArraySize (get (json, "foam_lays/0/placed")), ==,
                   (int) foam->lay->placed->len);
  cJSON_Delete (json);
}

static void
test_degrees (void)
{
  g_autoptr (SqLays) lays = make_lays ();
  cJSON *json = parse (lays, 0);
  const cJSON *cushion, *piece, *mark;

  cJSON_ArrayForEach (cushion, get (json, "cushions"))
      cJSON_ArrayForEach (piece, get (cushion, "pieces"))
  {
    double grain = get (piece, "grain")->valuedouble;
    g_assert_true (grain >= 0 && grain < 360);
    g_assert_cmpfloat_with_epsilon (remainder (grain, 90), 0, 1e-9);
  }
  /* the plate's first notch is in the middle of the front, its outward towards −y */
  mark = get (json, "cushions/0/pieces/0/marks/0");
  g_assert_cmpfloat_with_epsilon (get (mark, "angle")->valuedouble, -90, 1e-9);
  cJSON_Delete (json);
}

/* A mitred wrap draws the underside in by its depth; it is shown as seen from above. */
static void
test_underside_from_above (void)
{
  g_autoptr (SqLays) lays = make_lays ();
  cJSON *json = parse (lays, 0);
  const cJSON *node;
  double least_x = INFINITY, most_x = -INFINITY;

  cJSON_ArrayForEach (node, get (json, "cushions/0/outlines/underside/0"))
  {
    least_x = fmin (least_x, get (node, "0")->valuedouble);
    most_x = fmax (most_x, get (node, "0")->valuedouble);
  }
  g_assert_cmpfloat_with_epsilon (least_x, 25.4, 1e-6);
  g_assert_cmpfloat_with_epsilon (most_x, 469.9 - 25.4, 1e-6);
  cJSON_Delete (json);
}

static double
coordinate (const cJSON *ring, int node, int axis)
{
  return cJSON_GetArrayItem (cJSON_GetArrayItem (ring, node), axis)->valuedouble;
}

/* The length of a run's polyline on its ring. */
static double
run_length (const cJSON *ring, int from, int to)
{
  int n = cJSON_GetArraySize (ring), at = from;
  double length = 0;

  do
    {
      int next = (at + 1) % n;
      length += hypot (coordinate (ring, next, 0) - coordinate (ring, at, 0),
                       coordinate (ring, next, 1) - coordinate (ring, at, 1));
      at = next;
    }
  while (at != to);
  return length;
}

static void
assert_is_flat (const cJSON *rings)
{
  const cJSON *ring, *node;

  cJSON_ArrayForEach (ring, rings) cJSON_ArrayForEach (node, ring)
      g_assert_cmpfloat (get (node, "2")->valuedouble, ==, 0);
}

static void
test_flattened (void)
{
  g_autoptr (SqLays) lays = make_lays ();
  cJSON *exact = parse (lays, 0), *flat = parse (lays, 0.01);
  const cJSON *cushion, *piece, *run;
  gboolean any_arc = FALSE;

  cJSON_ArrayForEach (cushion, get (flat, "cushions"))
  {
    assert_is_flat (get (cushion, "outlines/top"));
    assert_is_flat (get (cushion, "outlines/foam"));
    cJSON_ArrayForEach (piece, get (cushion, "pieces"))
    {
      assert_is_flat (get (piece, "sew"));
      assert_is_flat (get (piece, "cut"));
      cJSON_ArrayForEach (run, get (piece, "runs"))
      {
        const cJSON *ring = cJSON_GetArrayItem (get (piece, "sew"), get (run, "ring")->valueint);
        double length = run_length (ring, get (run, "from")->valueint, get (run, "to")->valueint);
        /* chords of arcs of some metres at most, 0.01 mm from them */
        g_assert_cmpfloat_with_epsilon (length, get (run, "length")->valuedouble, 0.1);
      }
    }
  }
  const cJSON *node;
  cJSON_ArrayForEach (node, get (exact, "cushions/1/pieces/0/sew/0")) any_arc
      |= get (node, "2")->valuedouble != 0;
  g_assert_true (any_arc);
  cJSON_Delete (exact);
  cJSON_Delete (flat);
}

static void
test_same_bytes (void)
{
  g_autoptr (SqLays) lays = make_lays ();
  g_autoptr (SqLays) again = make_lays ();
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  g_autofree char *one = sq_plan_write (lays, 0, FALSE, &style);
  g_autofree char *two = sq_plan_write (again, 0, FALSE, &style);

  g_assert_cmpstr (one, ==, two);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/plan-json/keys", test_keys);
  g_test_add_func ("/exchange/plan-json/ways", test_ways);
  g_test_add_func ("/exchange/plan-json/values", test_values);
  g_test_add_func ("/exchange/plan-json/lays", test_lays);
  g_test_add_func ("/exchange/plan-json/unlaid", test_unlaid);
  g_test_add_func ("/exchange/plan-json/purchase", test_purchase);
  g_test_add_func ("/exchange/plan-json/stock", test_stock);
  g_test_add_func ("/exchange/plan-json/foam-lays", test_foam_lays);
  g_test_add_func ("/exchange/plan-json/degrees", test_degrees);
  g_test_add_func ("/exchange/plan-json/underside-from-above", test_underside_from_above);
  g_test_add_func ("/exchange/plan-json/flattened", test_flattened);
  g_test_add_func ("/exchange/plan-json/same-bytes", test_same_bytes);
  return g_test_run ();
}
