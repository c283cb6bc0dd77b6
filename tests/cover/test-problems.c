/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every problem there is, raised by a small job; and every way out that it offers leads out. */
#include "base/units.h"
#include "cover/hand-made.h"

#define SQUARE                                                                                     \
  "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':400},"               \
  "{'id':4,'x':0,'y':400}]"
#define ROUNDED                                                                                    \
  "'outline':[{'id':1,'x':0,'y':0,'radius':10},{'id':2,'x':600,'y':0,'radius':30},"                \
  "{'id':3,'x':600,'y':400,'radius':30},{'id':4,'x':0,'y':400,'radius':30}]"
#define FOLDED "'build':'folded-corner',"
#define WRAPPED "'build':'wrapped-front',"

typedef struct
{
  const char *rest, *cushion;
} Source;

static const Source sources[SQ_N_PROBLEM_CODES] = {
  [SQ_PROBLEM_OUTLINE_MISSING] = { NULL, "'outline':[{'id':1,'x':0,'y':0}]" },
  [SQ_PROBLEM_OUTLINE_CROSSES]
  = { NULL, "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':0,'y':400},"
            "{'id':4,'x':500,'y':400}]" },
  [SQ_PROBLEM_OUTLINE_EMPTY]
  = { NULL, "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':300,'y':0}]" },
  [SQ_PROBLEM_EDGE_TOO_SHORT]
  = { NULL, "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':0},"
            "{'id':4,'x':600,'y':400},{'id':5,'x':0,'y':400}]" },
  /* a cusp: both control points beyond the other end */
  [SQ_PROBLEM_CURVE_UNFIT]
  = { NULL, "'outline':[{'id':1,'x':0,'y':0,'curve':[[600,-600],[0,-600]]},{'id':2,'x':600,'y':0},"
            "{'id':3,'x':600,'y':400},{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_THICKNESS] = { NULL, "'thickness':0," SQUARE },
  [SQ_PROBLEM_ALLOWANCE] = { NULL, "'allowances':{'zip':-1}," SQUARE },
  [SQ_PROBLEM_RADIUS_TOO_LARGE]
  = { NULL, "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':400,"
            "'radius':500},{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_CLEARANCE_TOO_LARGE]
  = { NULL, "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0,'clearance':700},"
            "{'id':3,'x':600,'y':400},{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_HOLE_OUTSIDE] = { NULL, SQUARE
                                ",'holes':[[{'id':5,'x':500,'y':200},{'id':6,'x':500,'y':300},"
                                "{'id':7,'x':700,'y':250}]]" },
  [SQ_PROBLEM_HOLES_MEET]
  = { NULL, SQUARE ",'holes':[[{'id':5,'x':200,'y':100},{'id':6,'x':200,'y':300},"
                   "{'id':7,'x':300,'y':200}],[{'id':8,'x':250,'y':100},{'id':9,'x':250,'y':300},"
                   "{'id':10,'x':350,'y':200}]]" },
  [SQ_PROBLEM_HOLE_IN_FOLDED] = { NULL, FOLDED SQUARE
                                  ",'holes':[[{'id':5,'x':200,'y':100},{'id':6,'x':200,'y':300},"
                                  "{'id':7,'x':300,'y':200}]]" },
  [SQ_PROBLEM_CURVE_IN_FOLDED]
  = { NULL, FOLDED "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0,'bow':20},"
                   "{'id':3,'x':600,'y':400},{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_REFLEX_IN_FOLDED]
  = { NULL,
      FOLDED "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':300,'y':100},"
             "{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_NOTCH_IS_DART]
  = { NULL,
      FOLDED "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':400},"
             "{'id':4,'x':300,'y':420},{'id':5,'x':0,'y':400}]" },
  [SQ_PROBLEM_WRAP_SLACK] = { NULL,
                              FOLDED "'underside_wrap':{'depth':25,'style':'plain'}," SQUARE },
  [SQ_PROBLEM_WRAP_TOO_DEEP] = { NULL, FOLDED "'underside_wrap':{'depth':250}," SQUARE },
  [SQ_PROBLEM_ZIP_EDGE_MISSING] = { NULL, "'zip':{'edge':9}," SQUARE },
  [SQ_PROBLEM_ZIP_NO_PLACE] = { NULL, FOLDED "'zip':{'place':'boxing'}," SQUARE },
  [SQ_PROBLEM_ZIP_BOXING_LOW] = { NULL, "'thickness':30,'zip':{'place':'boxing'}," SQUARE },
  [SQ_PROBLEM_ZIP_ALL_SEEN]
  = { NULL, "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':400,'y':240},"
            "{'id':4,'x':200,'y':240}]" },
  [SQ_PROBLEM_ZIP_FOLD_FOAM] = { NULL, "'zip':{'edge':3,'from':50,'to':550}," SQUARE },
  [SQ_PROBLEM_ZIP_TOO_SHORT] = { NULL, "'zip':{'edge':3,'from':0,'to':200}," SQUARE },
  [SQ_PROBLEM_ZIP_TOO_LONG] = { NULL, "'zip':{'edge':3,'from':-700,'to':1290}," SQUARE },
  [SQ_PROBLEM_ZIP_OUTSIDE] = { NULL, "'zip':{'place':'underside','at':900}," SQUARE },
  [SQ_PROBLEM_ZIP_ACROSS_HOLE]
  = { NULL, "'zip':{'place':'underside'}," SQUARE
            ",'holes':[[{'id':5,'x':250,'y':50},{'id':6,'x':250,'y':350},{'id':7,'x':350,'y':350},"
            "{'id':8,'x':350,'y':50}]]" },
  [SQ_PROBLEM_NO_ZIP] = { NULL, "'zip':{'place':'none'}," SQUARE },
  /* the front's middle third is wider than a strip can be */
  [SQ_PROBLEM_JOIN_NO_ROOM]
  = { "'cloths':[{'id':1,'one_way':true,'width':230}],",
      "'zip':{'place':'underside'},'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':700,'y':0},"
      "{'id':3,'x':700,'y':400},{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_BOXING_TOO_SHORT] = { "'cloths':[{'id':1,'one_way':true,'width':150}],", SQUARE },
  [SQ_PROBLEM_WIDER_THAN_CLOTH] = { "'cloths':[{'id':1,'width':500}],", SQUARE },
  [SQ_PROBLEM_CLOTH_MISSING] = { "'cloths':[{'id':1}],", "'cloth':{'underside':2}," SQUARE },
  [SQ_PROBLEM_CUT_SPLIT] = { NULL,
                             SQUARE ",'holes':[[{'id':5,'x':300,'y':200},{'id':6,'x':300,'y':220},"
                                    "{'id':7,'x':320,'y':220},{'id':8,'x':320,'y':200}]]" },
  [SQ_PROBLEM_REFLEX_CLIP]
  = { NULL, "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':300,'y':100},"
            "{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_STRIPES_SLANT]
  = { "'cloths':[{'id':1,'repeat':{'across':100},'stripes':[{'at':10,'width':10,"
      "'colour':'#203050'}]}],",
      "'outline':[{'id':1,'x':0,'y':0,'bow':30},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':400},"
      "{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_WELT_THICK] = { NULL, "'welt':{'at':'top','cord':14}," SQUARE },
  [SQ_PROBLEM_WELT_TIGHT] = { NULL, "'welt':{'at':'top'}," ROUNDED },
  [SQ_PROBLEM_WELT_VINYL_BIAS] = { "'cloths':[{'id':1,'class':'vinyl'}],",
                                   "'welt':{'at':'top','cut':'bias','cord':3}," SQUARE },
  [SQ_PROBLEM_WELT_NOT_TAKEN] = { NULL, FOLDED "'welt':{'at':'top'}," SQUARE },
  [SQ_PROBLEM_SPLIT_OUTSIDE] = { NULL, "'build':'split-side','split_side':{'upper':90}," SQUARE },
  /* two skirts in a gap of 100 mm */
  [SQ_PROBLEM_SKIRTS_MEET]
  = { NULL,
      FOLDED "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':900,'y':0},{'id':3,'x':900,'y':700},"
             "{'id':4,'x':500,'y':700},{'id':5,'x':500,'y':200,'build':'boxed'},"
             "{'id':6,'x':400,'y':200},{'id':7,'x':400,'y':700},{'id':8,'x':0,'y':700}]" },
  [SQ_PROBLEM_LET_IN_NO_ROOM]
  = { NULL, FOLDED "'outline':[{'id':1,'x':0,'y':0,'build':'folded'},{'id':2,'x':900,'y':0},"
                   "{'id':3,'x':900,'y':400},{'id':4,'x':400,'y':400},{'id':5,'x':400,'y':500},"
                   "{'id':6,'x':0,'y':500}]" },
  [SQ_PROBLEM_WRAP_NOT_MITRED]
  = { NULL, FOLDED "'underside_wrap':{'depth':25},'outline':[{'id':1,'x':0,'y':0,'build':'boxed'},"
                   "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':400},{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_EDGE_BUILD_UNUSED]
  = { NULL, "'build':'split-side','outline':[{'id':1,'x':0,'y':0,'build':'boxed'},"
            "{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':400},{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_EDGE_NOT_OPEN]
  = { NULL, "'outline':[{'id':1,'x':0,'y':0,'build':'open'},{'id':2,'x':600,'y':0},"
            "{'id':3,'x':600,'y':400},{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_ONE_RIGHT_WAY]
  = { NULL, "'reversible':true,'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},"
            "{'id':3,'x':500,'y':400},{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_SKIRTS_FOLLOW] = { "'cloths':[{'id':1,'one_way':true}],", FOLDED SQUARE },
  [SQ_PROBLEM_DRAW_IN_MEETS]
  = { NULL, "'build':'knife-edge','outline':[{'id':1,'x':0,'y':0},{'id':2,'x':40,'y':0},"
            "{'id':3,'x':40,'y':400},{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_STUFFED_SMALLER] = { NULL, "'build':'knife-edge'," SQUARE },
  [SQ_PROBLEM_BOLSTER_DIAMETER] = { NULL, "'build':'bolster'," SQUARE },
  [SQ_PROBLEM_BOLSTER_LENGTH] = { NULL, "'build':'bolster','bolster':{'diameter':200,'length':0}" },
  [SQ_PROBLEM_BOLSTER_RISE]
  = { NULL, "'build':'bolster','bolster':{'section':'d','diameter':200,'length':900,'rise':120}" },
  [SQ_PROBLEM_HOLE_NOT_BUILT] = { NULL, WRAPPED SQUARE
                                  ",'holes':[[{'id':5,'x':200,'y':100},{'id':6,'x':200,'y':300},"
                                  "{'id':7,'x':300,'y':200}]]" },
  [SQ_PROBLEM_CORNER_NOT_BUILT] = { NULL, WRAPPED
                                    "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},"
                                    "{'id':3,'x':300,'y':400}]" },
  [SQ_PROBLEM_PROFILE_RADIUS] = { NULL, WRAPPED "'front_profile':{'radius':60}," SQUARE },
  [SQ_PROBLEM_FRONT_CURVED] = { NULL, WRAPPED
                                "'outline':[{'id':1,'x':0,'y':0,'bow':20},{'id':2,'x':600,'y':0},"
                                "{'id':3,'x':600,'y':400},{'id':4,'x':0,'y':400}]" },
  [SQ_PROBLEM_SIDE_TURNS_BACK]
  = { NULL, WRAPPED "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},"
                    "{'id':3,'x':700,'y':200},{'id':4,'x':650,'y':150},{'id':5,'x':600,'y':400},"
                    "{'id':6,'x':0,'y':400}]" },
  /* a middle of 414.6 leaves 792.7 on each side of it */
  [SQ_PROBLEM_ACROSS_NO_PLACE]
  = { "'cloths':[{'id':1,'width':440}],",
      "'seams_across':'two','outline':[{'id':1,'x':0,'y':0},{'id':2,'x':2000,'y':0},"
      "{'id':3,'x':2000,'y':400},{'id':4,'x':0,'y':400}]" },
  /* over both arms of a U */
  [SQ_PROBLEM_ZIP_NOT_PARTED]
  = { NULL, "'zip':{'place':'underside','method':'two-part','edge':1,'at':300},"
            "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':400},"
            "{'id':4,'x':450,'y':400},{'id':5,'x':450,'y':150},{'id':6,'x':150,'y':150},"
            "{'id':7,'x':150,'y':400},{'id':8,'x':0,'y':400}]" },
};

static SqCover *
cover_of_source (const Source *source)
{
  return cover_in (source->rest, source->cushion);
}

static void
test_raised (void)
{
  for (guint code = 0; code < SQ_N_PROBLEM_CODES; code++)
    {
      g_autoptr (SqCover) cover = cover_of_source (&sources[code]);
      if (find_problem (cover, code) == NULL)
        g_error ("nothing says %s", sq_problem_code_name (code));
    }
}

/* A plain rectangle raises none of them. */
static void
test_quiet (void)
{
  g_autoptr (SqCover) boxed = cover_of (SQUARE);
  g_autoptr (SqCover) folded = cover_of (FOLDED SQUARE);

  g_assert_cmpuint (boxed->problems->len, ==, 0);
  /* folded-corner zips run across the underside, from side to side */
  g_assert_cmpuint (folded->problems->len, ==, 0);
}

static void
test_fixes (void)
{
  for (guint code = 0; code < SQ_N_PROBLEM_CODES; code++)
    {
      g_autoptr (SqJob) job = job_of (sources[code].cushion, sources[code].rest);
      const SqCushion *cushion = g_ptr_array_index (job->cushions, 0);
      g_autoptr (SqCover) cover = sq_cover_new (job, cushion, FALSE, NULL);
      const SqProblem *p = find_problem (cover, code);
      for (guint i = 0; i < SQ_N_FIXES && p->fixes[i].kind != SQ_FIX_NONE; i++)
        {
          g_autoptr (SqCushion) fixed = sq_fix_apply (&p->fixes[i], cushion);
          g_assert_nonnull (fixed);
          g_autoptr (SqCover) after = sq_cover_new (job, fixed, FALSE, NULL);
          if (find_problem (after, code) != NULL)
            g_error ("fix %u leaves %s", i, sq_problem_code_name (code));
        }
    }
}

/* A fault offers a way out, save where only the maker can know one. */
static void
test_faults_have_fixes (void)
{
  for (guint code = 0; code < SQ_N_PROBLEM_CODES; code++)
    {
      g_autoptr (SqCover) cover = cover_of_source (&sources[code]);
      const SqProblem *p = find_problem (cover, code);
      if (p->severity != SQ_FAULT || code == SQ_PROBLEM_OUTLINE_MISSING
          || code == SQ_PROBLEM_OUTLINE_CROSSES || code == SQ_PROBLEM_OUTLINE_EMPTY
          || code == SQ_PROBLEM_BOXING_TOO_SHORT || code == SQ_PROBLEM_WIDER_THAN_CLOTH
          || code == SQ_PROBLEM_CUT_SPLIT)
        continue;
      if (p->fixes[0].kind == SQ_FIX_NONE)
        g_error ("no way out of %s", sq_problem_code_name (code));
    }
}

/* A fix whose corner is gone, or not where it was, does nothing. */
static void
test_stale_fixes (void)
{
  g_autoptr (SqJob) job = job_of (SQUARE, NULL);
  const SqCushion *cushion = g_ptr_array_index (job->cushions, 0);
  static const SqFixKind kinds[] = { SQ_FIX_RADIUS,  SQ_FIX_CLEARANCE,   SQ_FIX_STRAIGHTEN,
                                     SQ_FIX_SHARPEN, SQ_FIX_DROP_CORNER, SQ_FIX_DROP_HOLE };

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      const SqFix fix = { kinds[i], 99, 1 };
      g_assert_null (sq_fix_apply (&fix, cushion));
    }
  const SqFix outer = { SQ_FIX_DROP_HOLE, 1, 0 };
  g_assert_null (sq_fix_apply (&outer, cushion));
}

/* Names are as files have them, and no two alike. */
static void
test_names (void)
{
  g_autoptr (GHashTable) names = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint code = 0; code < SQ_N_PROBLEM_CODES; code++)
    {
      const char *name = sq_problem_code_name (code);
      g_assert_true (g_hash_table_add (names, (gpointer) name));
      for (const char *c = name; *c != '\0'; c++)
        g_assert_true (g_ascii_islower (*c) || *c == '-');
    }
  g_assert_cmpstr (sq_problem_code_name (SQ_PROBLEM_REFLEX_IN_FOLDED), ==, "reflex-in-folded");
  g_assert_cmpstr (sq_severity_name (SQ_FAULT), ==, "error");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/problems/raised", test_raised);
  g_test_add_func ("/cover/problems/quiet", test_quiet);
  g_test_add_func ("/cover/problems/fixes", test_fixes);
  g_test_add_func ("/cover/problems/faults-have-fixes", test_faults_have_fixes);
  g_test_add_func ("/cover/problems/stale-fixes", test_stale_fixes);
  g_test_add_func ("/cover/problems/names", test_names);
  return g_test_run ();
}
