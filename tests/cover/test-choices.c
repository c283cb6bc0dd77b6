/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What holds where the maker has not said: common practice, no source, unless named. */
#include "base/units.h"
#include "cover/hand-made.h"

static double
perimeter_allowance (const char *cloth_class, const char *keys)
{
  g_autofree char *cloths = g_strdup_printf ("'cloths':[{'id':1,'class':'%s'}],", cloth_class);
  g_autofree char *outline = rectangle (600, 400, NULL);
  g_autofree char *cushion = g_strconcat (outline, keys, NULL);
  g_autoptr (SqCover) cover = cover_in (cloths, cushion);
  const SqPiece *under = piece_of (cover, SQ_ROLE_UNDERSIDE);
  return sq_piece_run (under, 0)->allowance_mm;
}

static void
test_allowances (void)
{
  /* boxed: 1/2 in, loose weave 5/8, vinyl 3/8; folded: 3/8 whatever the cloth */
  assert_mm (perimeter_allowance ("canvas", ""), 12.7);
  assert_mm (perimeter_allowance ("velvet", ""), 12.7);
  assert_mm (perimeter_allowance ("loose-weave", ""), 15.875);
  assert_mm (perimeter_allowance ("vinyl", ""), 9.525);
  assert_mm (perimeter_allowance ("loose-weave", ",'build':'folded-corner'"), 9.525);
  assert_mm (perimeter_allowance ("canvas", ",'allowances':{'perimeter':20}"), 20);
}

static const SqFoamPart *
foam_of (const SqCover *cover)
{
  return g_ptr_array_index (cover->foam, 0);
}

static double
oversize (double width_mm, const char *rest, const char *keys)
{
  g_autofree char *outline = rectangle (width_mm, 300, NULL);
  g_autofree char *cushion = g_strconcat (outline, keys, NULL);
  g_autoptr (SqCover) cover = cover_in (rest, cushion);
  const SqFoamPart *part = foam_of (cover);
  SqBox box = sq_path_box (g_ptr_array_index (part->rings, 0));

  assert_mm (box.max.x - box.min.x, width_mm + part->oversize_mm);
  assert_mm (box.max.y - box.min.y, 300 + part->oversize_mm);
  return part->oversize_mm;
}

static void
test_oversize (void)
{
  /* seat foam by the larger extent: 1/2 in to 36 in, 3/4 to 72, 1 in above */
  assert_mm (oversize (914.4, NULL, ""), 12.7);
  assert_mm (oversize (915, NULL, ""), 19.05);
  assert_mm (oversize (1828.8, NULL, ""), 19.05);
  assert_mm (oversize (1829, NULL, ""), 25.4);
  assert_mm (oversize (600, NULL, ",'foam':{'material':'firm'}"), 6.35);
  assert_mm (oversize (600, NULL, ",'foam':{'material':'fast-draining'}"), 6.35);
  assert_mm (oversize (600, NULL, ",'foam':{'material':'closed-cell'}"), 3.175);
  assert_mm (oversize (600, NULL, ",'foam':{'material':'bonded'}"), 3.175);
  /* under cloth without stretch */
  assert_mm (oversize (600, "'cloths':[{'id':1,'class':'vinyl'}],", ""), 3.175);
  /* wrapped in batting */
  assert_mm (oversize (600, NULL, ",'foam':{'batting':12}"), 0);
  assert_mm (oversize (600, NULL, ",'foam':{'oversize':-4}"), -4);
  /* seat foam of 50 lb at 25 % is firm */
  assert_mm (oversize (600, "'foams':[{'id':1,'material':'seat','ifd':222}],", ""), 6.35);
  assert_mm (oversize (600, "'foams':[{'id':1,'material':'seat','ifd':221}],", ""), 12.7);
}

static void
test_foam_thickness (void)
{
  g_autoptr (SqCover) bare = cover_of_rectangle (600, 400, "'thickness':100");
  g_autoptr (SqCover) wrapped = cover_of_rectangle (600, 400,
                                                    "'thickness':100,'foam':{'batting':12}");

  assert_mm (foam_of (bare)->thickness_mm, 100);
  assert_mm (foam_of (wrapped)->thickness_mm, 88);
}

/* Mass is volume by density. 380 × 380 × 100 mm at 28.8 kg/m³: 0.01444 m³, 415.872 g. 24 × 24 × 4 in at
 * 1.8 lb/ft³ (16.018463 kg/m³ each): 4/3 ft³, 2.4 lb, 1088.622 g. */
static void
test_foam_weight (void)
{
  g_autofree char *outline = rectangle (609.6, 609.6, NULL);
  g_autofree char *cushion = g_strconcat (outline, ",'thickness':101.6,'foam':{'oversize':0}",
                                          NULL);
  g_autoptr (SqCover) metric = cover_of_rectangle (380, 380,
                                                   "'thickness':100,'foam':{'oversize':0}");
  g_autoptr (SqCover) inches = cover_in (
      "'foams':[{'id':1,'material':'seat','density':28.8332334}],", cushion);

  g_assert_cmpfloat_with_epsilon (foam_of (metric)->volume_mm3, 14.44e6, 1e-3);
  g_assert_cmpfloat_with_epsilon (foam_of (metric)->weight_g, 415.872, 1e-6);
  g_assert_cmpfloat_with_epsilon (foam_of (inches)->weight_g, 1088.622, 1e-3);
}

/* The underside and the sides follow the face, the face the job's first cloth; so does one that is
 * missing, and it says so. */
static void
test_cloths (void)
{
  const char *cloths = "'cloths':[{'id':4},{'id':7}],";
  g_autofree char *outline = rectangle (600, 400, NULL);
  g_autofree char *face = g_strconcat (outline, ",'cloth':{'face':7}", NULL);
  g_autofree char *under = g_strconcat (outline, ",'cloth':{'underside':7}", NULL);
  g_autofree char *missing = g_strconcat (outline, ",'cloth':{'sides':5}", NULL);
  g_autoptr (SqCover) first = cover_in (cloths, outline);
  g_autoptr (SqCover) second = cover_in (cloths, face);
  g_autoptr (SqCover) both = cover_in (cloths, under);
  g_autoptr (SqCover) none = cover_in (cloths, missing);

  g_assert_cmpuint (piece_of (first, SQ_ROLE_FACE)->cloth, ==, 4);
  g_assert_cmpuint (piece_of (first, SQ_ROLE_BOXING)->cloth, ==, 4);
  g_assert_cmpuint (piece_of (second, SQ_ROLE_FACE)->cloth, ==, 7);
  g_assert_cmpuint (piece_of (second, SQ_ROLE_UNDERSIDE)->cloth, ==, 7);
  g_assert_cmpuint (piece_of (both, SQ_ROLE_FACE)->cloth, ==, 4);
  g_assert_cmpuint (piece_of (both, SQ_ROLE_UNDERSIDE)->cloth, ==, 7);
  g_assert_cmpuint (piece_of (none, SQ_ROLE_BOXING)->cloth, ==, 4);
  const SqProblem *p = find_problem (none, SQ_PROBLEM_CLOTH_MISSING);
  g_assert_nonnull (p);
  g_assert_cmpstr (p->place.key, ==, "cloth.sides");
  assert_mm (p->facts[0], 5);
}

/* Grain: what the cloth's up points to lies at the back, and up on the sides; the roll's +x points
 * against it where up is the cut end. One-way cloth takes no turn, plain cloth of boxing any. */
static void
test_grain (void)
{
  const char *up_end = "'cloths':[{'id':1,'one_way':true,'up':'end'}],";
  const char *up_start = "'cloths':[{'id':1,'one_way':true,'up':'start'}],";
  g_autofree char *outline = rectangle (600, 400, NULL);
  g_autoptr (SqCover) end = cover_in (up_end, outline);
  g_autoptr (SqCover) start = cover_in (up_start, outline);
  g_autoptr (SqCover) plain = cover_of (outline);

  assert_mm (piece_of (end, SQ_ROLE_FACE)->grain_rad, G_PI / 2);
  assert_mm (piece_of (end, SQ_ROLE_BOXING)->grain_rad, G_PI / 2);
  assert_mm (piece_of (start, SQ_ROLE_FACE)->grain_rad, 1.5 * G_PI);
  g_assert_cmpint (piece_of (end, SQ_ROLE_FACE)->turns, ==, SQ_TURNS_NONE);
  g_assert_cmpint (piece_of (plain, SQ_ROLE_FACE)->turns, ==, SQ_TURNS_HALF);
  g_assert_cmpint (piece_of (plain, SQ_ROLE_BOXING)->turns, ==, SQ_TURNS_QUARTER);
}

/* A stripe's middle, 15 mm from the usable edge, lies on the middle of the front. */
static void
test_phase (void)
{
  const char *striped = "'cloths':[{'id':1,'repeat':{'across':100},"
                        "'stripes':[{'at':10,'width':10,'colour':'#203050'},"
                        "{'at':60,'width':5,'colour':'#203050'}]}],";
  g_autofree char *outline = rectangle (600, 400, NULL);
  g_autofree char *shifted = g_strconcat (outline, ",'stripes':{'shift':7}", NULL);
  g_autofree char *gap = g_strconcat (outline, ",'stripes':{'centre_on':'gap'}", NULL);
  g_autoptr (SqCover) cover = cover_in (striped, outline);
  g_autoptr (SqCover) aside = cover_in (striped, shifted);
  g_autoptr (SqCover) between = cover_in (striped, gap);
  const SqPhase *phase = &piece_of (cover, SQ_ROLE_FACE)->phase;

  g_assert_true (phase->across);
  g_assert_false (phase->along);
  assert_mm (phase->across_mm, 15);
  assert_mm (phase->anchor.x, 300);
  assert_mm (phase->anchor.y, 0);
  assert_mm (piece_of (aside, SQ_ROLE_FACE)->phase.anchor.x, 307);
  /* the widest gap is 65 … 110 mm */
  assert_mm (piece_of (between, SQ_ROLE_FACE)->phase.across_mm, 87.5);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/choices/allowances", test_allowances);
  g_test_add_func ("/cover/choices/oversize", test_oversize);
  g_test_add_func ("/cover/choices/foam-thickness", test_foam_thickness);
  g_test_add_func ("/cover/choices/foam-weight", test_foam_weight);
  g_test_add_func ("/cover/choices/cloths", test_cloths);
  g_test_add_func ("/cover/choices/grain", test_grain);
  g_test_add_func ("/cover/choices/phase", test_phase);
  return g_test_run ();
}
