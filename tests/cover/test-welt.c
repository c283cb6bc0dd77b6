/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/welt.h"

#include "base/units.h"
#include "cover/hand-made.h"

#define IN SQ_MM_PER_INCH
#define THIN "'cloths':[{'id':1,'class':'canvas','width':1371.6,'thickness':0}],"

/* Two allowances and once round the cord, π d + 2 a: with 1/2 in, cord of 5/32 in takes 1.4909 in,
 * cord of 1/4 in 1.7854 (geometry, without the cloth's thickness). */
static void
test_width (void)
{
  static const struct
  {
    const char *keys;
    double inches;
  } cases[] = {
    { "'welt':{'at':'top','cord':3.96875}", 1.4908739 },
    { "'welt':{'at':'top','cord':6.35}", 1.7853982 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *seat = rectangle (600, 400, (const char *const[4]){ 0 });
      g_autofree char *cushion = g_strconcat (cases[i].keys, ",", seat, NULL);
      g_autoptr (SqCover) cover = cover_in (THIN, cushion);
      g_assert_cmpfloat_with_epsilon (cover->welt.strip_mm / IN, cases[i].inches, 1e-6);
      /* straight strips lie across the cloth: as wide as that, and that much along it */
      const SqPiece *strip = piece_of (cover, SQ_ROLE_WELT);
      g_assert_cmpfloat_with_epsilon (strip->height_mm / IN, cases[i].inches, 1e-6);
      assert_mm (strip->width_mm, 1371.6);
    }
}

/* One strip at 45° across 54 in is 76.3675 in long on its long edge and squared at both ends loses its
 * own width; each further one gives 76.3675 in less 2 √2 allowances. Straight ones give 54 in, less 2
 * allowances. */
static void
test_yields (void)
{
  const double w = 54 * IN, b = 1.75 * IN, a = 0.5 * IN;

  g_assert_cmpfloat_with_epsilon (sq_welt_yield_mm (SQ_WELT_BIAS, w, b, a, 1) / IN,
                                  76.3675324 - 1.75, 1e-6);
  g_assert_cmpfloat_with_epsilon (sq_welt_yield_mm (SQ_WELT_BIAS, w, b, a, 3) / IN,
                                  3 * 76.3675324 - 2 * 1.4142136 - 1.75, 1e-6);
  assert_mm (sq_welt_yield_mm (SQ_WELT_STRAIGHT, w, b, a, 3), (3 * 54 - 2) * IN);
  g_assert_cmpuint (sq_welt_strips (SQ_WELT_STRAIGHT, w, b, a, 54 * IN), ==, 1);
  g_assert_cmpuint (sq_welt_strips (SQ_WELT_STRAIGHT, w, b, a, 54.1 * IN), ==, 2);
  g_assert_cmpuint (sq_welt_strips (SQ_WELT_STRAIGHT, w, b, a, 107.1 * IN), ==, 3);
  g_assert_cmpuint (sq_welt_strips (SQ_WELT_BIAS, w, b, a, 74.6 * IN), ==, 1);
  g_assert_cmpuint (sq_welt_strips (SQ_WELT_BIAS, w, b, a, 74.7 * IN), ==, 2);
  g_assert_cmpuint (sq_welt_strips (SQ_WELT_BIAS, b, b, a, 100), ==, 0);
}

/* No bias binding is longer than the cloth's area over its width, which any way of cutting keeps
 * to; 20 strips of 2 in from 36 in cloth come near: from a 36 in square, 648 in² is the bound for
 * 2 in strips, and joins take some of it. */
static void
test_bound (void)
{
  for (guint n = 1; n < 40; n++)
    {
      double w = 36 * IN, b = 2 * IN, a = 0.25 * IN;
      double cloth = (w + n * b * G_SQRT2) * w;
      double length = sq_welt_yield_mm (SQ_WELT_BIAS, w, b, a, n);
      g_assert_cmpfloat (length * b, <, cloth);
      g_assert_cmpfloat (length * b, >, 0.9 * n * w * b * G_SQRT2 - 2 * b * b);
    }
}

/* 24 × 20 in, striped: round it is 88 in, with a lap 89, on the bias. From 53 in one strip gives
 * 74.95 in less its width: two are wanted, the second as long as what is missing. */
static void
test_pieces (void)
{
  g_autofree char *seat = rectangle (24 * IN, 20 * IN, (const char *const[4]){ 0 });
  g_autofree char *cushion = g_strconcat ("'welt':{'at':'both'},", seat, NULL);
  g_autoptr (SqCover) cover = cover_in (
      "'cloths':[{'id':1,'width':1346.2,'repeat':{'across':80},'stripes':[{'at':0,"
      "'width':30,'colour':'#203050'}]}],",
      cushion);
  double b = 2 * 12.7 + G_PI * 4.6, long_mm = 1346.2 * G_SQRT2, lost = 2 * G_SQRT2 * 12.7;
  guint n_whole = 0, n_rest = 0;

  g_assert_cmpint (cover->welt.cut, ==, SQ_WELT_BIAS);
  assert_mm (cover->welt.strip_mm, b);
  assert_mm (cover->welt.length_mm, 2 * 88 * IN);
  g_assert_cmpuint (cover->welt.n_strips, ==, 4);
  for (guint i = 0; i < cover->pieces->len; i++)
    {
      const SqPiece *p = sq_cover_piece (cover, i);
      if (p->role != SQ_ROLE_WELT)
        continue;
      gboolean whole = p->area_mm2 > long_mm * b - 1;
      double rest = 89 * IN - (long_mm - b) + lost; /* its long edge */
      assert_mm (p->area_mm2, (whole ? long_mm : rest) * b);
      g_assert_cmpuint (p->count, ==, 2);
      n_whole += whole;
      n_rest += !whole;
      if (whole) /* from selvedge to selvedge */
        assert_mm (p->width_mm, 1346.2);
    }
  g_assert_cmpuint (n_whole, ==, 1);
  g_assert_cmpuint (n_rest, ==, 1);
}

/* Seams with a welt in them say so, and where. */
static void
test_seams (void)
{
  static const struct
  {
    const char *at;
    double welted;
  } cases[] = { { "top", 1 }, { "underside", 1 }, { "both", 2 }, { "none", 0 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *keys = g_strdup_printf ("'welt':{'at':'%s'}", cases[i].at);
      g_autoptr (SqCover) cover = cover_of_rectangle (600, 400, keys);
      assert_mm (seams_mm (cover, SQ_SEAM_WELT), 2000 * cases[i].welted);
      assert_mm (seams_mm (cover, SQ_SEAM_PERIMETER), 2000 * (2 - cases[i].welted));
    }
}

/* Straight round straight edges, on the bias round curves tighter than 12 in; vinyl never. */
static void
test_cut (void)
{
  g_autoptr (SqCover) straight = cover_of_rectangle (600, 400, "'welt':{'at':'top'}");
  g_autoptr (SqCover) tight = cover_of (
      "'welt':{'at':'top'},'outline':[{'id':1,'x':0,'y':0,'radius':300},{'id':2,'x':900,'y':0},"
      "{'id':3,'x':900,'y':900},{'id':4,'x':0,'y':900}]");
  g_autoptr (SqCover) wide = cover_of (
      "'welt':{'at':'top'},'outline':[{'id':1,'x':0,'y':0,'radius':306},{'id':2,'x':900,'y':0},"
      "{'id':3,'x':900,'y':900},{'id':4,'x':0,'y':900}]");
  g_autofree char *seat = rectangle (600, 400, (const char *const[4]){ ",'radius':60" });
  g_autofree char *cushion = g_strconcat ("'welt':{'at':'top'},", seat, NULL);
  g_autoptr (SqCover) vinyl = cover_in ("'cloths':[{'id':1,'class':'vinyl'}],", cushion);

  g_assert_cmpint (straight->welt.cut, ==, SQ_WELT_STRAIGHT);
  g_assert_cmpint (tight->welt.cut, ==, SQ_WELT_BIAS);
  g_assert_cmpint (wide->welt.cut, ==, SQ_WELT_STRAIGHT);
  g_assert_cmpint (vinyl->welt.cut, ==, SQ_WELT_STRAIGHT);
}

/* Least radius 1/2 in in canvas, 3/4 with cord of 5/32 in and more, 1 1/4 with cord of 1/4 in; vinyl
 * 3/4 (common practice, no source). */
static void
test_tight (void)
{
  static const struct
  {
    double cord_mm, radius_mm;
    gboolean is_tight;
  } cases[] = {
    { 3, 12.6, TRUE },  { 3, 12.8, FALSE },   { 4, 19, TRUE },
    { 4, 19.1, FALSE }, { 6.35, 31.7, TRUE }, { 6.35, 31.8, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *radius = g_strdup_printf (",'radius':%g", cases[i].radius_mm);
      const char *const keys[4] = { radius, radius, radius, radius };
      g_autofree char *seat = rectangle (600, 400, keys);
      g_autofree char *cushion = g_strdup_printf ("'welt':{'at':'top','cord':%g},%s",
                                                  cases[i].cord_mm, seat);
      g_autoptr (SqCover) cover = cover_of (cushion);
      g_assert_true ((find_problem (cover, SQ_PROBLEM_WELT_TIGHT) != NULL) == cases[i].is_tight);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/welt/width", test_width);
  g_test_add_func ("/cover/welt/yields", test_yields);
  g_test_add_func ("/cover/welt/bound", test_bound);
  g_test_add_func ("/cover/welt/pieces", test_pieces);
  g_test_add_func ("/cover/welt/seams", test_seams);
  g_test_add_func ("/cover/welt/cut", test_cut);
  g_test_add_func ("/cover/welt/tight", test_tight);
  return g_test_run ();
}
