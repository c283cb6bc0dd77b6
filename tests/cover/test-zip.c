/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a zip goes and whether the foam does: common practice, no source. H is 76.2 where it is not
 * given. */
#include "base/units.h"
#include "cover/hand-made.h"

/* A trapezoid with its front from (0, 0) to (@front, 0) and a back @back long in the middle. */
static SqCover *
cover_of_trapezoid (double front, double back, double depth, const char *keys)
{
  g_autofree char *cushion = g_strdup_printf (
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':%.10g,'y':0},{'id':3,'x':%.10g,'y':%.10g},"
      "{'id':4,'x':%.10g,'y':%.10g}]%s",
      front, (front + back) / 2, depth, (front - back) / 2, depth, keys);
  return cover_of (cushion);
}

static void
assert_boxing_zip (const SqCover *cover, SqId edge, double from_mm, double to_mm, SqOpening opening)
{
  g_assert_cmpint (cover->zip.place, ==, SQ_ZIP_BOXING);
  g_assert_cmpuint (cover->zip.edge, ==, edge);
  assert_mm (cover->zip.from_mm, from_mm);
  assert_mm (cover->zip.to_mm, to_mm);
  assert_mm (cover->zip.run_mm, to_mm - from_mm);
  g_assert_cmpint (cover->zip.opening, ==, opening);
}

static void
test_whole_back (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (600, 500, "'thickness':76.2");

  assert_boxing_zip (cover, 3, 0, 600, SQ_OPENING_GOES_IN);
  assert_mm (cover->zip.needed_mm, 600);
  /* 1 in past both ends */
  assert_mm (cover->zip.length_mm, 650.8);
  g_assert_cmpuint (cover->zip.sliders, ==, 1);
}

static void
test_returns (void)
{
  /* 200 mm are missing: 100 round each corner */
  g_autoptr (SqCover) shared = cover_of_trapezoid (600, 400, 400, "");
  /* 60 are missing, but a return is at least 2 in */
  g_autoptr (SqCover) least = cover_of_trapezoid (600, 540, 400, "");
  /* 400 are missing, but a return is at most 6 in: 504.8, enough to fold the foam, which takes
   * 600 / 2 + 2 × 76.2 = 452.4 */
  g_autoptr (SqCover) most = cover_of_trapezoid (600, 200, 1000, "");

  assert_boxing_zip (shared, 3, -100, 500, SQ_OPENING_GOES_IN);
  assert_boxing_zip (least, 3, -50.8, 590.8, SQ_OPENING_GOES_IN);
  assert_boxing_zip (most, 3, -152.4, 352.4, SQ_OPENING_FOLD);
  const SqProblem *fold = find_problem (most, SQ_PROBLEM_ZIP_FOLD_FOAM);
  g_assert_nonnull (fold);
  g_assert_cmpint (fold->severity, ==, SQ_NOTE);
  assert_mm (fold->facts[0], 504.8);
  assert_mm (fold->facts[1], 600);
}

/* At most a third of the side, too: a side of √(200² + 240²) = 312.409987 gives 104.136662, so the
 * zip is 408.273324 long where 452.4 is the least. All edges are seen: there is nowhere else. */
static void
test_third_of_side (void)
{
  g_autoptr (SqCover) cover = cover_of_trapezoid (600, 200, 240, "");
  const SqProblem *p = find_problem (cover, SQ_PROBLEM_ZIP_TOO_SHORT);

  assert_boxing_zip (cover, 3, -104.136662351, 304.136662351, SQ_OPENING_TOO_SHORT);
  g_assert_nonnull (find_problem (cover, SQ_PROBLEM_ZIP_ALL_SEEN));
  g_assert_nonnull (p);
  g_assert_cmpint (p->severity, ==, SQ_FAULT);
  assert_mm (p->facts[0], 408.273324702);
  assert_mm (p->facts[1], 452.4);
}

/* A back of 100 mm with returns is too short for 600 mm of foam; the right side stands at a wall,
 * is not seen, and is as long as the foam is deep. */
static void
test_unseen_edge (void)
{
  const char *walled = "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0,'kind':'wall',"
                       "'clearance':0},{'id':3,'x':600,'y':1000},{'id':4,'x':500,'y':1000}]";
  const char *seen = "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0,'kind':'wall',"
                     "'clearance':0,'seen':true},{'id':3,'x':600,'y':1000},"
                     "{'id':4,'x':500,'y':1000}]";
  g_autoptr (SqCover) hidden = cover_of (walled);
  g_autoptr (SqCover) open = cover_of (seen);

  assert_boxing_zip (hidden, 2, 0, 1000, SQ_OPENING_GOES_IN);
  g_assert_null (find_problem (hidden, SQ_PROBLEM_ZIP_ALL_SEEN));
  g_assert_cmpuint (open->zip.edge, ==, 3);
  g_assert_nonnull (find_problem (open, SQ_PROBLEM_ZIP_ALL_SEEN));
}

/* Foam that does not fold goes in only where the zip is longer than it by H. */
static void
test_stiff_foam (void)
{
  g_autoptr (SqCover) soft = cover_of_rectangle (600, 500, "'foam':{'material':'fast-draining'}");
  g_autoptr (SqCover) firm = cover_of_rectangle (600, 500, "'foam':{'material':'firm'}");
  g_autoptr (SqCover) held = cover_of_rectangle (
      600, 500, "'foam':{'material':'closed-cell'},'zip':{'edge':3,'from':0,'to':600}");
  const SqProblem *p = find_problem (held, SQ_PROBLEM_ZIP_TOO_SHORT);

  assert_boxing_zip (soft, 3, 0, 600, SQ_OPENING_GOES_IN);
  assert_mm (firm->zip.needed_mm, 676.2);
  /* half of what is missing is 38.1, less than the least return */
  assert_boxing_zip (firm, 3, -50.8, 650.8, SQ_OPENING_GOES_IN);
  assert_boxing_zip (held, 3, 0, 600, SQ_OPENING_TOO_SHORT);
  g_assert_nonnull (p);
  assert_mm (p->facts[1], 676.2);
}

static void
test_asked_for (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (600, 500, "'zip':{'edge':2,'from':20,'to':470}");
  g_autoptr (SqCover) returned = cover_of_rectangle (
      600, 500, "'zip':{'edge':3,'from':-60,'to':700,'extension':10}");

  g_assert_cmpuint (cover->zip.edge, ==, 2);
  assert_mm (cover->zip.run_mm, 450);
  assert_boxing_zip (returned, 3, -60, 700, SQ_OPENING_GOES_IN);
  assert_mm (returned->zip.length_mm, 780);
}

static void
test_sliders (void)
{
  g_autoptr (SqCover) one = cover_of_rectangle (1524, 500, "'thickness':76.2");
  g_autoptr (SqCover) two = cover_of_rectangle (1525, 500, "'thickness':76.2");

  /* two over 60 in */
  g_assert_cmpuint (one->zip.sliders, ==, 1);
  g_assert_cmpuint (two->zip.sliders, ==, 2);
}

/* ---- across an underside ------------------------------------------------------------------- */

/* The line of the teeth on the underside. */
static const SqNode *
zip_line (const SqCover *cover)
{
  const SqPiece *under = piece_of (cover, SQ_ROLE_UNDERSIDE);

  for (guint i = 0; i < under->marks->len; i++)
    if (g_array_index (under->marks, SqMark, i).kind == SQ_MARK_ZIP)
      return sq_path_nodes (g_array_index (under->marks, SqMark, i).line);
  g_assert_not_reached ();
}

static void
test_third (void)
{
  /* parallel to the longest side, a third of 300 mm from the back; 650 × 640 is nearly square, but
   * not under 24 in */
  g_autoptr (SqCover) wide = cover_of_rectangle (600, 300, "'zip':{'place':'underside'}");
  g_autoptr (SqCover) large = cover_of_rectangle (650, 640, "'zip':{'place':'underside'}");

  g_assert_cmpuint (wide->zip.edge, ==, 3);
  assert_mm (wide->zip.at_mm, 100);
  assert_mm (wide->zip.run_mm, 600);
  assert_mm (zip_line (wide)[0].at.y, 200);
  assert_mm (zip_line (wide)[1].at.y, 200);
  assert_mm (fabs (zip_line (wide)[0].at.x - zip_line (wide)[1].at.x), 600);
  assert_mm (zip_line (large)[0].at.y, 640 - 640.0 / 3);
}

static void
test_middle (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (400, 380, "'zip':{'place':'underside'}");

  assert_mm (cover->zip.at_mm, 190);
  assert_mm (zip_line (cover)[0].at.y, 190);
}

/* Front to back, a third from the right side; the underside is mirrored. */
static void
test_front_to_back (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (300, 600, "'zip':{'place':'underside'}");

  g_assert_cmpuint (cover->zip.edge, ==, 2);
  assert_mm (zip_line (cover)[0].at.x, -200);
  assert_mm (zip_line (cover)[1].at.x, -200);
  assert_mm (cover->zip.run_mm, 600);
}

/* The line halfway across this T runs along the shoulders of its stem, where there is no cloth on one
 * side: the zip is as long as the stem is wide. */
static void
test_along_edges (void)
{
  g_autoptr (SqCover) cover = cover_of (
      "'outline':[{'id':1,'x':100,'y':0},{'id':2,'x':200,'y':0},{'id':3,'x':200,'y':150},"
      "{'id':4,'x':305,'y':150},{'id':5,'x':305,'y':300},{'id':6,'x':0,'y':300},"
      "{'id':7,'x':0,'y':150},{'id':8,'x':100,'y':150}],'zip':{'place':'underside'}");

  assert_mm (zip_line (cover)[0].at.y, 150);
  assert_mm (cover->zip.run_mm, 100);
}

static void
test_across_asked_for (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (600, 300,
                                                  "'zip':{'place':'underside','edge':1,'at':50}");

  g_assert_cmpuint (cover->zip.edge, ==, 1);
  assert_mm (zip_line (cover)[0].at.y, 50);
}

static void
test_low_boxing (void)
{
  g_autoptr (SqCover) low = cover_of_rectangle (600, 300, "'thickness':38");
  g_autoptr (SqCover) high = cover_of_rectangle (600, 300, "'thickness':38.1");

  g_assert_cmpint (low->zip.place, ==, SQ_ZIP_UNDERSIDE);
  g_assert_cmpint (high->zip.place, ==, SQ_ZIP_BOXING);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/zip/boxing/whole-back", test_whole_back);
  g_test_add_func ("/cover/zip/boxing/returns", test_returns);
  g_test_add_func ("/cover/zip/boxing/third-of-side", test_third_of_side);
  g_test_add_func ("/cover/zip/boxing/unseen-edge", test_unseen_edge);
  g_test_add_func ("/cover/zip/boxing/stiff-foam", test_stiff_foam);
  g_test_add_func ("/cover/zip/boxing/asked-for", test_asked_for);
  g_test_add_func ("/cover/zip/sliders", test_sliders);
  g_test_add_func ("/cover/zip/underside/third", test_third);
  g_test_add_func ("/cover/zip/underside/middle", test_middle);
  g_test_add_func ("/cover/zip/underside/front-to-back", test_front_to_back);
  g_test_add_func ("/cover/zip/underside/along-edges", test_along_edges);
  g_test_add_func ("/cover/zip/underside/asked-for", test_across_asked_for);
  g_test_add_func ("/cover/zip/low-boxing", test_low_boxing);
  return g_test_run ();
}
