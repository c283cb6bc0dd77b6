/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Bolsters, worked out by hand. Seam allowances are 12.7 all round. */
#include "base/units.h"
#include "cover/hand-made.h"

#define BOLSTER "'build':'bolster','bolster':"
/* 8 in through, 36 in long */
#define ROUND BOLSTER "{'diameter':203.2,'length':914.4}"

static void
assert_tube (const SqCover *cover, double length_mm, double girth_mm)
{
  SqBox box = sq_path_box (sq_piece_sew (piece_of (cover, SQ_ROLE_TUBE), 0));

  assert_mm (box.max.x - box.min.x, length_mm);
  assert_mm (box.max.y - box.min.y, girth_mm);
}

/* The round: a body of π × 8 by 36 in and discs cut 9 in through, whose cut edge is longer than their
 * sew line by 2 π times the allowance. */
static void
test_round (void)
{
  g_autoptr (SqCover) cover = cover_of (ROUND);
  const SqPiece *disc = piece_of (cover, SQ_ROLE_DISC), *tube = piece_of (cover, SQ_ROLE_TUBE);

  g_assert_cmpuint (cover->problems->len, ==, 0);
  /* cut: π × 8 + 2 × 1/2 by 37 in */
  g_assert_cmpfloat_with_epsilon (tube->width_mm / SQ_MM_PER_INCH, 26.1327, 5e-5);
  assert_mm (tube->height_mm, 939.8);
  g_assert_cmpuint (cover->pieces->len, ==, 3);
  assert_tube (cover, 914.4, G_PI * 203.2);
  assert_mm (disc->width_mm, 228.6);
  assert_mm (disc->height_mm, 228.6);
  assert_mm (sq_path_length_mm (sq_piece_sew (disc, 0)), G_PI * 203.2);
  assert_mm (sq_path_length_mm (sq_piece_cut (disc, 0)), G_PI * (203.2 + 25.4));
  assert_mm (cover->thickness_mm, 203.2);
  /* twice round, and once along */
  assert_mm (seams_mm (cover, SQ_SEAM_PERIMETER), 2 * G_PI * 203.2);
  assert_mm (seams_mm (cover, SQ_SEAM_JOIN) + seams_mm (cover, SQ_SEAM_ZIP), 914.4);
}

/* d (1 + π/2) */
static void
test_half_round (void)
{
  g_autoptr (SqCover) cover = cover_of (BOLSTER
                                        "{'section':'half-round','diameter':203.2,'length':914.4}");
  const SqPiece *disc = piece_of (cover, SQ_ROLE_DISC);

  assert_tube (cover, 914.4, 203.2 * (1 + G_PI / 2));
  assert_mm (sq_path_area_mm2 (sq_piece_sew (disc, 0)), G_PI * 101.6 * 101.6 / 2);
  assert_mm (cover->thickness_mm, 101.6);
  assert_mm (cover->finished->extent.max.y, 203.2);
}

/* An arc of rise s on a back b: r = (b²/4 + s²) / 2 s, and 2 r asin (b / 2 r) of it. */
static void
test_d (void)
{
  g_autoptr (SqCover) cover = cover_of (
      BOLSTER "{'section':'d','diameter':203.2,'length':914.4,'rise':80}");
  double r = (101.6 * 101.6 + 80 * 80) / 160;

  assert_tube (cover, 914.4, 203.2 + 2 * r * asin (101.6 / r));
  assert_mm (cover->finished->extent.max.x, 914.4);
  assert_mm (cover->finished->extent.max.y, 80);
  assert_mm (cover->thickness_mm, 203.2);
}

/* Where (x, y) of the tube lies in space. */
static SqPoint3
on_tube (const SqCover *cover, double x, double y)
{
  const SqPiece *tube = piece_of (cover, SQ_ROLE_TUBE);

  for (guint i = 0; i < tube->patches->len; i++)
    {
      const SqPatch *patch = &g_array_index (tube->patches, SqPatch, i);
      SqBox box = sq_path_box (patch->region);
      if (y >= box.min.y - 1e-9 && y <= box.max.y + 1e-9)
        return sq_patch_map (patch, sq_point (x, y));
    }
  g_assert_not_reached ();
}

static void
assert_at (SqPoint3 p, double x, double y, double z)
{
  assert_mm (p.x, x);
  assert_mm (p.y, y);
  assert_mm (p.z, z);
}

/* The join lies at the back, halfway between the middle of the back and the bottom; from there the
 * tube goes under, up the front and over the top. A half-round one and a D are joined in the lower
 * corner of the back. */
static void
test_rolled_up (void)
{
  g_autoptr (SqCover) round = cover_of (ROUND);
  g_autoptr (SqCover) half = cover_of (BOLSTER
                                       "{'section':'half-round','diameter':203.2,'length':914.4}");
  g_autoptr (SqCover) d = cover_of (BOLSTER
                                    "{'section':'d','diameter':203.2,'length':914.4,'rise':80}");
  double girth = G_PI * 203.2, eighth = 101.6 * sin (G_PI / 4), r = (101.6 * 101.6 + 6400) / 160;

  assert_at (on_tube (round, 10, 0), 10, 101.6 + eighth, 101.6 - eighth);
  assert_at (on_tube (round, 10, girth / 8), 10, 101.6, 0);
  assert_at (on_tube (round, 10, girth * 3 / 8), 10, 0, 101.6);
  assert_at (on_tube (round, 900, girth * 5 / 8), 900, 101.6, 203.2);
  assert_at (on_tube (round, 900, girth * 7 / 8), 900, 203.2, 101.6);
  assert_at (on_tube (half, 0, 0), 0, 203.2, 0);
  assert_at (on_tube (half, 0, 203.2), 0, 0, 0);
  assert_at (on_tube (half, 0, 203.2 + G_PI * 50.8), 0, 101.6, 101.6);
  assert_at (on_tube (d, 0, 0), 0, 80, 0);
  assert_at (on_tube (d, 0, r * asin (101.6 / r)), 0, 0, 101.6);
  assert_at (on_tube (d, 0, 2 * r * asin (101.6 / r)), 0, 80, 203.2);
}

/* All of the join but 2 in at both ends, or a sixth of a short one. */
static void
test_zip (void)
{
  g_autoptr (SqCover) cover = cover_of (ROUND);
  g_autoptr (SqCover) tiny = cover_of (BOLSTER "{'diameter':100,'length':240}");
  g_autoptr (SqCover) shut = cover_of (ROUND ",'zip':{'place':'none'}");

  g_assert_cmpint (cover->zip.place, ==, SQ_ZIP_TUBE);
  g_assert_cmpuint (cover->zip.edge, ==, 3);
  assert_mm (cover->zip.run_mm, 812.8);
  assert_mm (cover->zip.length_mm, 863.6);
  assert_mm (cover->zip.needed_mm, 609.6);
  g_assert_cmpint (cover->zip.opening, ==, SQ_OPENING_GOES_IN);
  assert_mm (seams_mm (cover, SQ_SEAM_ZIP), 812.8);
  assert_mm (tiny->zip.run_mm, 160);
  g_assert_cmpint (tiny->zip.opening, ==, SQ_OPENING_GOES_IN);
  assert_mm (seams_mm (shut, SQ_SEAM_ZIP), 0);
  assert_mm (seams_mm (shut, SQ_SEAM_JOIN), 914.4);
}

/* Two thirds of 900 let a filling in, half of it does with some force. The back runs from right to
 * left. */
static void
test_zip_asked_for (void)
{
  g_autoptr (SqCover) good = cover_of (BOLSTER
                                       "{'diameter':200,'length':900},'zip':{'from':100,'to':700}");
  g_autoptr (SqCover) forced = cover_of (
      BOLSTER "{'diameter':200,'length':900},'zip':{'from':100,'to':690}");
  g_autoptr (SqCover) less = cover_of (BOLSTER
                                       "{'diameter':200,'length':900},'zip':{'from':100,'to':540}");
  g_autoptr (SqCover) more = cover_of (
      BOLSTER "{'diameter':200,'length':900},'zip':{'from':100,'to':1000}");

  g_assert_cmpint (good->zip.opening, ==, SQ_OPENING_GOES_IN);
  assert_node (sq_piece_sew (piece_of (good, SQ_ROLE_TUBE), 0), 200, 0);
  assert_node (sq_piece_sew (piece_of (good, SQ_ROLE_TUBE), 0), 800, 0);
  g_assert_cmpint (forced->zip.opening, ==, SQ_OPENING_FOLD);
  g_assert_nonnull (find_problem (less, SQ_PROBLEM_ZIP_TOO_SHORT));
  g_assert_nonnull (find_problem (more, SQ_PROBLEM_ZIP_TOO_LONG));
  assert_mm (more->zip.run_mm, 900 - 101.6);
}

/* The foam stands on its end, 1/2 in larger than the section in all; batting goes round it. */
static void
test_foam (void)
{
  g_autoptr (SqCover) cover = cover_of (ROUND);
  g_autoptr (SqCover) wrapped = cover_of (ROUND ",'foam':{'batting':20}");
  const SqFoamPart *part = g_ptr_array_index (cover->foam, 0);
  SqBox box = sq_path_box (g_ptr_array_index (part->rings, 0));

  assert_mm (part->thickness_mm, 914.4);
  assert_mm (box.max.x - box.min.x, 203.2 + part->oversize_mm);
  g_assert_cmpfloat_with_epsilon (part->volume_mm3,
                                  G_PI / 4 * pow (203.2 + part->oversize_mm, 2) * 914.4, 1);
  part = g_ptr_array_index (wrapped->foam, 0);
  box = sq_path_box (g_ptr_array_index (part->rings, 0));
  assert_mm (box.max.x - box.min.x, 183.2);
}

/* Batting as thick as the bolster leaves no foam. */
static void
test_all_batting (void)
{
  g_autoptr (SqCover) cover = cover_of (ROUND ",'foam':{'batting':210}");
  g_autoptr (SqCover) boxed = cover_of_rectangle (60, 60, "'foam':{'oversize':-80}");

  g_assert_cmpuint (cover->foam->len, ==, 0);
  g_assert_cmpuint (boxed->foam->len, ==, 0);
}

/* A length that is not given is the seat's; what it takes up is a rectangle of its own. */
static void
test_plan (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (600, 300, BOLSTER "{'diameter':150}");
  const SqFinishedRing *ring = &cover->finished->rings[0];

  assert_tube (cover, 600, G_PI * 150);
  assert_mm (cover->finished->extent.max.x, 600);
  assert_mm (cover->finished->extent.max.y, 150);
  g_assert_cmpuint (ring->n_edges, ==, 4);
  for (guint i = 0; i < 4; i++)
    g_assert_cmpuint (ring->edges[i].id, ==, i + 1);
}

/* Its mirror image is cut alike. */
static void
test_other_hand (void)
{
  g_autoptr (SqJob) job = job_of (
      BOLSTER "{'diameter':200,'length':900},'zip':{'from':60,'to':700}", NULL);
  const SqCushion *cushion = g_ptr_array_index (job->cushions, 0);
  g_autoptr (SqCover) drawn = sq_cover_new (job, cushion, FALSE, NULL);
  g_autoptr (SqCover) mirrored = sq_cover_new (job, cushion, TRUE, NULL);

  g_assert_cmpuint (mirrored->pieces->len, ==, drawn->pieces->len);
  for (guint p = 1; p < drawn->pieces->len; p++)
    for (guint i = 0; i < 2; i++)
      {
        SqPoint at = sq_path_nodes (sq_piece_cut (sq_cover_piece (drawn, p), 0))[i].at;
        assert_node (sq_piece_cut (sq_cover_piece (mirrored, p), 0), at.x, at.y);
      }
  /* but for the zip, which is at the other end */
  assert_node (sq_piece_sew (piece_of (drawn, SQ_ROLE_TUBE), 0), 840, 0);
  assert_node (sq_piece_sew (piece_of (mirrored, SQ_ROLE_TUBE), 0), 60, 0);
}

/* What is missing or of no use is said, and nothing is cut; what it takes up is still there. */
static void
test_figures (void)
{
  static const struct
  {
    const char *bolster;
    SqProblemCode code;
    double value; /* of the fix */
  } bad[] = {
    { "{'length':900}", SQ_PROBLEM_BOLSTER_DIAMETER, 76.2 },
    { "{'length':900,'diameter':-3}", SQ_PROBLEM_BOLSTER_DIAMETER, 76.2 },
    { "{'diameter':200}", SQ_PROBLEM_BOLSTER_LENGTH, 800 },
    { "{'diameter':200,'length':0}", SQ_PROBLEM_BOLSTER_LENGTH, 800 },
    { "{'section':'d','diameter':200,'length':900}", SQ_PROBLEM_BOLSTER_RISE, 100 },
    { "{'section':'d','diameter':200,'length':900,'rise':101}", SQ_PROBLEM_BOLSTER_RISE, 100 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autofree char *keys = g_strconcat (BOLSTER, bad[i].bolster, NULL);
      g_autoptr (SqCover) cover = cover_of (keys);
      const SqProblem *p = find_problem (cover, bad[i].code);
      g_assert_nonnull (p);
      g_assert_cmpint (p->severity, ==, SQ_FAULT);
      assert_mm (p->fixes[0].value, bad[i].value);
      g_assert_cmpuint (cover->pieces->len, ==, 0);
      g_assert_nonnull (cover->finished);
    }
}

/* A seat's depth is offered before the thickness. */
static void
test_seat_offered (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (600, 220, "'build':'bolster'");
  const SqProblem *p = find_problem (cover, SQ_PROBLEM_BOLSTER_DIAMETER);

  g_assert_nonnull (p);
  assert_mm (p->fixes[0].value, 220);
  assert_mm (p->fixes[1].value, 76.2);
}

/* Plain cloth lies along a tube, stripes go round it; ends stand upright. */
static void
test_on_cloth (void)
{
  g_autoptr (SqCover) plain = cover_in ("'cloths':[{'id':1}],", ROUND);
  g_autoptr (SqCover) striped = cover_in (
      "'cloths':[{'id':1,'repeat':{'across':100},'stripes':[{'at':10,'width':10,"
      "'colour':'#203050'}]}],",
      ROUND);

  assert_mm (piece_of (plain, SQ_ROLE_TUBE)->grain_rad, 0);
  assert_mm (piece_of (striped, SQ_ROLE_TUBE)->grain_rad, G_PI / 2);
  assert_mm (piece_of (striped, SQ_ROLE_DISC)->grain_rad, G_PI / 2);
}

static guint
n_notches (const SqPiece *piece, guint ticks)
{
  guint n = 0;

  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (piece->marks, SqMark, i);
      n += mark->kind == SQ_MARK_NOTCH && mark->count == ticks;
    }
  return n;
}

/* Quarters, the one at the back double; the tube has both ends'. A welt is at both ends or none. */
static void
test_ends (void)
{
  g_autoptr (SqCover) cover = cover_of (ROUND ",'welt':{'at':'top'}");
  const SqPiece *disc = piece_of (cover, SQ_ROLE_DISC), *tube = piece_of (cover, SQ_ROLE_TUBE);
  guint n_welts = 0;

  for (guint i = 0; i < cover->seams->len; i++)
    n_welts += sq_cover_seam (cover, i)->kind == SQ_SEAM_WELT;
  g_assert_cmpuint (n_welts, ==, 2);
  g_assert_cmpuint (n_notches (disc, 1), ==, 3);
  g_assert_cmpuint (n_notches (disc, 2), ==, 1);
  g_assert_cmpuint (n_notches (tube, 1), ==, 6);
  g_assert_cmpuint (n_notches (tube, 2), ==, 2);
  g_assert_cmpuint (disc->sides, ==, SQ_SIDE_LEFT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bolster/round", test_round);
  g_test_add_func ("/bolster/half-round", test_half_round);
  g_test_add_func ("/bolster/d", test_d);
  g_test_add_func ("/bolster/rolled-up", test_rolled_up);
  g_test_add_func ("/bolster/zip", test_zip);
  g_test_add_func ("/bolster/zip-asked-for", test_zip_asked_for);
  g_test_add_func ("/bolster/foam", test_foam);
  g_test_add_func ("/bolster/all-batting", test_all_batting);
  g_test_add_func ("/bolster/plan", test_plan);
  g_test_add_func ("/bolster/other-hand", test_other_hand);
  g_test_add_func ("/bolster/figures", test_figures);
  g_test_add_func ("/bolster/seat-offered", test_seat_offered);
  g_test_add_func ("/bolster/on-cloth", test_on_cloth);
  g_test_add_func ("/bolster/ends", test_ends);
  return g_test_run ();
}
