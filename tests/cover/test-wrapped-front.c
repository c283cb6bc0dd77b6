/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "base/units.h"
#include "cover/hand-made.h"

#define IN SQ_MM_PER_INCH
#define WRAPPED "'build':'wrapped-front',"

/* Curves are followed to 0.002 mm: twice that for two of them. */
#define assert_near(a, b) g_assert_cmpfloat_with_epsilon ((a), (b), 0.004)

/* ---- lengths over the front ---------------------------------------------------------------- */

/* The wrap is that long, 24 in wide, and its sides are 20 by 4 with what is cut away at the nose. */
static void
check_lengths (const char *profile, double length_in, double side_area_in2)
{
  g_autofree char *keys = g_strconcat ("'build':'wrapped-front','thickness':101.6", profile, NULL);
  g_autoptr (SqCover) cover = cover_of_rectangle (24 * IN, 20 * IN, keys);
  const SqPiece *wrap = piece_of (cover, SQ_ROLE_WRAP);
  SqBox box = sq_path_box (sq_piece_sew (wrap, 0));

  g_assert_cmpuint (cover->problems->len, ==, 0);
  g_assert_cmpuint (cover->pieces->len, ==, 5);
  assert_mm (box.max.y - box.min.y, length_in * IN);
  assert_mm (box.max.x - box.min.x, 24 * IN);
  /* the top keeps the seat's coordinates */
  assert_mm (box.max.y, 20 * IN);
  assert_mm (box.min.x, 0);
  for (guint i = 1; i <= 2; i++)
    {
      const SqPiece *side = sq_cover_piece (cover, i);
      g_assert_cmpint (side->role, ==, SQ_ROLE_SIDE);
      g_assert_cmpuint (side->sides, ==, i == 1 ? SQ_SIDE_RIGHT : SQ_SIDE_LEFT);
      g_assert_cmpfloat_with_epsilon (sq_path_area_mm2 (sq_piece_sew (side, 0)),
                                      side_area_in2 * IN * IN, 1e-3);
    }
}

/* 24 × 20 × 4 in. Square: 2 Y + H. Half-round: 2 Y − H + π H / 2. Radius 1 in: 2 (Y − r) + π r +
 * H − 2 r. Each round takes r² (1 − π / 4) from a side, above and below. */
static void
test_lengths (void)
{
  check_lengths (",'front_profile':{'kind':'square'}", 2 * 20 + 4, 80);
  check_lengths (",'front_profile':{'kind':'half-round'}", 2 * 20 - 4 + G_PI * 2,
                 80 - 2 * 4 * (1 - G_PI / 4));
  check_lengths (",'front_profile':{'kind':'radius','radius':25.4}", 2 * 19 + G_PI + 2,
                 80 - 2 * (1 - G_PI / 4));
  /* half-round is what a front is that nothing is said of; a radius alone makes a radius */
  check_lengths ("", 2 * 20 - 4 + G_PI * 2, 80 - 2 * 4 * (1 - G_PI / 4));
  check_lengths (",'front_profile':{'radius':25.4}", 2 * 19 + G_PI + 2, 80 - 2 * (1 - G_PI / 4));
}

/* Square to the front a round is a true quarter circle: one arc above, one below. */
static void
test_true_arcs (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (24 * IN, 20 * IN,
                                                  "'build':'wrapped-front','thickness':101.6");
  const SqPath *side = sq_piece_sew (piece_of (cover, SQ_ROLE_SIDE), 0);
  const SqPath *wrap = sq_piece_sew (piece_of (cover, SQ_ROLE_WRAP), 0);
  guint n_arcs = 0;

  for (guint i = 0; i < sq_path_n_segments (side); i++)
    {
      SqSegment s = sq_path_segment (side, i);
      if (!sq_segment_is_arc (&s))
        continue;
      n_arcs++;
      assert_mm (sq_segment_radius_mm (&s), 2 * IN);
      assert_mm (sq_segment_sweep_rad (&s), G_PI / 2);
    }
  g_assert_cmpuint (n_arcs, ==, 2);
  for (guint i = 0; i < sq_path_n_segments (wrap); i++)
    {
      SqSegment s = sq_path_segment (wrap, i);
      g_assert_false (sq_segment_is_arc (&s));
    }
}

/* ---- sides that are not square to it ------------------------------------------------------- */

/* Perimeter of an ellipse by Gauss's arithmetic-geometric mean:
 * 2 π / M(a, b) · (a² − Σ 2ⁿ⁻¹ cₙ²), c₀² = a² − b², cₙ = (aₙ₋₁ − bₙ₋₁) / 2
 * (dlmf.nist.gov/19.8.E6 for the complete integral E, perimeter 4 a E). */
static double
ellipse_mm (double a, double b)
{
  double sum = (a * a - b * b) / 2, first = a, power = 1;

  for (int n = 0; n < 8; n++)
    {
      double c = (a - b) / 2, mean = (a + b) / 2;
      b = sqrt (a * b);
      a = mean;
      sum += power * c * c;
      power *= 2;
    }
  return 2 * G_PI / a * (first * first - sum);
}

static double
side_seam_mm (const SqCover *cover, SqSideOf side)
{
  for (guint i = 0; i < cover->seams->len; i++)
    {
      const SqSeam *seam = sq_cover_seam (cover, i);
      const SqPiece *b = sq_cover_piece (cover, seam->b.piece);
      if (seam->kind == SQ_SEAM_PERIMETER && b->role == SQ_ROLE_SIDE && b->sides == side)
        {
          g_assert_cmpfloat_with_epsilon (seam->length_a_mm, seam->length_b_mm, SQ_SEAM_MM / 10);
          return seam->length_a_mm;
        }
    }
  g_assert_not_reached ();
}

/* A seat 24 in wide at the front and 20 deep; its sides stand at @right and @left degrees to it. */
static char *
slanted (double right, double left)
{
  double d = 20 * IN;
  return g_strdup_printf ("'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':%.17g,'y':0},"
                          "{'id':3,'x':%.17g,'y':%.17g},{'id':4,'x':%.17g,'y':%.17g}]",
                          24 * IN, 24 * IN - d / tan (right * SQ_RAD_PER_DEG), d,
                          d / tan (left * SQ_RAD_PER_DEG), d);
}

/* At 60° and H 4 in half-round a side's nose is half an ellipse of half-axes 2 / sin 60° and 2 in:
 * 6.777918 in, where a half circle has 6.283185. On the wrap the seam's edge over the round is
 * x = x₀ + cot α · r (1 − sin (s / r)). */
static void
test_slanted (void)
{
  g_autofree char *outline = slanted (60, 105);
  g_autofree char *cushion = g_strconcat (WRAPPED "'thickness':101.6,", outline, NULL);
  g_autoptr (SqCover) cover = cover_of (cushion);
  double r = 2 * IN, sine = sin (60 * SQ_RAD_PER_DEG), cotangent = 1 / tan (60 * SQ_RAD_PER_DEG);
  double nose = ellipse_mm (r / sine, r) / 2;

  g_assert_cmpfloat_with_epsilon (nose / IN, 6.777918, 5e-7);
  assert_near (side_seam_mm (cover, SQ_SIDE_RIGHT), 2 * (18 * IN) / sine + nose);
  sine = sin (105 * SQ_RAD_PER_DEG);
  assert_near (side_seam_mm (cover, SQ_SIDE_LEFT),
               2 * (18 * IN) / sine + ellipse_mm (r / sine, r) / 2);

  const SqPath *wrap = sq_piece_sew (piece_of (cover, SQ_ROLE_WRAP), 0);
  for (int k = 0; k <= 20; k++)
    {
      double s = G_PI / 2 * r * k / 20;
      SqPoint upper = { 24 * IN - cotangent * r * (1 - sin (s / r)), r - s };
      SqPoint lower = { upper.x, r - G_PI * r + s };
      g_assert_cmpfloat (sq_path_nearest (wrap, upper).distance_mm, <, 0.002);
      g_assert_cmpfloat (sq_path_nearest (wrap, lower).distance_mm, <, 0.002);
    }
}

/* Length over the nose and along the top of one side whose distance from the front line and place
 * along it are x(w) and y(w) of a parameter, w from 0 at the front to 1 at the back: chords of the
 * seam in space, so that nothing of the flat pieces comes in. */
static double
chords_mm (SqPoint (*plan) (double w), double r, double height)
{
  SqPoint3 before = { 0 };
  double sum = 0;

  for (int k = 0; k <= 400000; k++)
    {
      double w = pow (k / 400000.0, 2);
      SqPoint p = plan (w);
      double up = p.y < r ? sqrt (fmax (r * r - (r - p.y) * (r - p.y), 0)) : r;
      SqPoint3 at = { p.x, p.y, height - r + up };
      sum += k == 0 ? 0 : hypot (hypot (at.x - before.x, at.y - before.y), at.z - before.z);
      before = at;
    }
  return 2 * sum + height - 2 * r;
}

/* A side that bows out by 50 mm over a chord of 400: radius (200² + 50²) / 100 = 425 about
 * (600 + 50 − 425, 200). */
static SqPoint
bowed (double w)
{
  double angle = asin (200.0 / 425.0) * (2 * w - 1);
  return sq_point (225 + 425 * cos (angle), 200 + 425 * sin (angle));
}

/* The same for one whose front corner is rounded by 80 mm. */
static SqPoint
rounded (double w)
{
  double length = 80 * G_PI / 2 + 320, along = length * w, angle = along / 80;
  if (along > 80 * G_PI / 2)
    return sq_point (600, 80 + along - 80 * G_PI / 2);
  return sq_point (520 + 80 * sin (angle), 80 - 80 * cos (angle));
}

static void
check_curved (const char *outline, SqPoint (*plan) (double w))
{
  static const double radii[] = { 50, 20, 0 };

  for (guint i = 0; i < G_N_ELEMENTS (radii); i++)
    {
      g_autofree char *cushion = g_strdup_printf (
          WRAPPED "'thickness':100,'front_profile':{'kind':'radius','radius':%g},%s", radii[i],
          outline);
      g_autoptr (SqCover) cover = cover_of (cushion);
      g_assert_cmpuint (cover->pieces->len, ==, 5);
      assert_near (side_seam_mm (cover, SQ_SIDE_RIGHT), chords_mm (plan, radii[i], 100));
    }
}

static void
test_curved (void)
{
  check_curved ("'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0,'bow':50},"
                "{'id':3,'x':600,'y':400},{'id':4,'x':0,'y':400}]",
                bowed);
  check_curved ("'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0,'radius':80},"
                "{'id':3,'x':600,'y':400},{'id':4,'x':0,'y':400}]",
                rounded);
}

/* ---- the back ------------------------------------------------------------------------------ */

/* Zip strips of 24 × 2 in, or one strip of 24 × 4 with the zip in its lower seam: less 1 in at both
 * ends, as foam 24 wide can be folded to go through 22. */
static void
test_zips (void)
{
  g_autoptr (SqCover) strips = cover_of_rectangle (24 * IN, 20 * IN, WRAPPED "'thickness':101.6");
  g_autoptr (SqCover) seam = cover_of_rectangle (
      24 * IN, 20 * IN, WRAPPED "'thickness':101.6,'zip':{'place':'back-seam'}");
  g_autoptr (SqCover) none = cover_of_rectangle (
      24 * IN, 20 * IN, WRAPPED "'thickness':101.6,'zip':{'place':'none'}");
  SqBox box = sq_path_box (sq_piece_sew (piece_of (strips, SQ_ROLE_ZIP_STRIP), 0));

  assert_mm (box.max.x - box.min.x, 24 * IN);
  assert_mm (box.max.y - box.min.y, 2 * IN);
  assert_mm (seams_mm (strips, SQ_SEAM_ZIP), 24 * IN);
  assert_mm (seams_mm (strips, SQ_SEAM_JOIN), 2 * 4 * IN);
  assert_mm (strips->zip.run_mm, 24 * IN);
  g_assert_cmpuint (strips->zip.edge, ==, 3);
  g_assert_cmpint (strips->zip.opening, ==, SQ_OPENING_GOES_IN);

  box = sq_path_box (sq_piece_sew (piece_of (seam, SQ_ROLE_BOXING), 0));
  assert_mm (box.max.y - box.min.y, 4 * IN);
  assert_mm (seams_mm (seam, SQ_SEAM_ZIP), 22 * IN);
  assert_mm (seams_mm (seam, SQ_SEAM_JOIN), 2 * 4 * IN);
  g_assert_cmpint (seam->zip.place, ==, SQ_ZIP_BACK_SEAM);
  g_assert_cmpuint (seam->pieces->len, ==, 4);

  assert_mm (seams_mm (none, SQ_SEAM_ZIP), 0);
  g_assert_cmpint (none->zip.place, ==, SQ_ZIP_NONE);
  g_assert_nonnull (find_problem (none, SQ_PROBLEM_NO_ZIP));
}

/* Asked for from 4 to 20 in of the back, the zip stands between plain strips of 4 in, which run over
 * its ends and back: 2 in more each. Asked for within 2 in of an end it goes on to the end; at
 * another edge there is no place for it. */
static void
test_zip_asked_for (void)
{
  g_autoptr (SqCover) between = cover_of_rectangle (
      24 * IN, 20 * IN, WRAPPED "'thickness':101.6,'zip':{'from':101.6,'to':508}");
  g_autoptr (SqCover) seam = cover_of_rectangle (
      24 * IN, 20 * IN,
      WRAPPED "'thickness':101.6,'zip':{'place':'back-seam','from':101.6,'to':508}");
  g_autoptr (SqCover) nearly = cover_of_rectangle (
      24 * IN, 20 * IN, WRAPPED "'thickness':101.6,'zip':{'from':40,'to':508}");
  g_autoptr (SqCover) elsewhere = cover_of_rectangle (24 * IN, 20 * IN,
                                                      WRAPPED "'thickness':101.6,'zip':{'edge':2}");
  SqBox box = sq_path_box (sq_piece_sew (piece_of (between, SQ_ROLE_BOXING), 0));

  assert_mm (between->zip.run_mm, 16 * IN);
  assert_mm (seams_mm (between, SQ_SEAM_ZIP), 16 * IN);
  assert_mm (box.max.x - box.min.x, (4 + 2) * IN);
  g_assert_cmpuint (between->pieces->len, ==, 7);
  /* two to the sides, two to the zip strips' halves at each end */
  assert_mm (seams_mm (between, SQ_SEAM_JOIN), 4 * 4 * IN);

  assert_mm (seams_mm (seam, SQ_SEAM_ZIP), 16 * IN);
  g_assert_cmpuint (seam->pieces->len, ==, 4);
  assert_mm (nearly->zip.run_mm, 20 * IN);
  g_assert_nonnull (find_problem (elsewhere, SQ_PROBLEM_ZIP_NO_PLACE));
  assert_mm (elsewhere->zip.run_mm, 24 * IN);
}

/* Edges beside the back that look to the back too belong to its strip: of a half hexagon with a
 * flat end the three behind, 250 + 2 · √(150² + 100²) long. What turns away from it is a side. */
static void
test_edges_at_the_back (void)
{
  g_autoptr (SqCover) cover = cover_of (
      WRAPPED "'thickness':100,'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':550,'y':0},"
              "{'id':3,'x':550,'y':300},{'id':4,'x':400,'y':400},{'id':5,'x':150,'y':400},"
              "{'id':6,'x':0,'y':300}]");
  SqBox box = sq_path_box (sq_piece_sew (piece_of (cover, SQ_ROLE_ZIP_STRIP), 0));
  double length = 250 + 2 * hypot (150, 100);

  assert_mm (box.max.x - box.min.x, length);
  assert_mm (cover->zip.run_mm, length);
  assert_mm (side_seam_mm (cover, SQ_SIDE_RIGHT), 2 * 250 + 50 * G_PI);
}

/* ---- notches ------------------------------------------------------------------------------- */

static gboolean
has_notch (const SqPiece *piece, double x, double y, guint count)
{
  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqMark *m = &g_array_index (piece->marks, SqMark, i);
      if (m->kind == SQ_MARK_NOTCH && m->count == count
          && sq_distance (m->at, sq_point (x, y)) < 1e-3)
        return TRUE;
    }
  return FALSE;
}

/* The middle of the nose, where sewing begins, and where the round ends are notched on the wrap and
 * on both sides; the middle of the right edge has its three ticks, above and below. */
static void
test_notches (void)
{
  g_autoptr (SqCover) cover = cover_of_rectangle (24 * IN, 20 * IN, WRAPPED "'thickness':101.6");
  const SqPiece *wrap = sq_cover_piece (cover, 0), *right = sq_cover_piece (cover, 1),
                *left = sq_cover_piece (cover, 2);
  double r = 2 * IN, middle = r - G_PI / 2 * r;

  for (int k = 0; k < 2; k++)
    {
      g_assert_true (has_notch (wrap, k * 24 * IN, middle, 1));
      g_assert_true (has_notch (wrap, k * 24 * IN, r, 1));
      g_assert_true (has_notch (wrap, k * 24 * IN, r - G_PI * r, 1));
    }
  g_assert_true (has_notch (wrap, 24 * IN, 10 * IN, 3));
  g_assert_true (has_notch (wrap, 0, 10 * IN, 1));
  /* sides lie as boxing does: x is the way round the seat from the left end of the front */
  g_assert_true (has_notch (right, 24 * IN, r, 1));
  g_assert_true (has_notch (right, 26 * IN, 2 * r, 1));
  g_assert_true (has_notch (right, 34 * IN, 2 * r, 3));
  g_assert_true (has_notch (right, 34 * IN, 0, 3));
  g_assert_true (has_notch (left, 88 * IN, r, 1));
  g_assert_true (has_notch (left, 86 * IN, 0, 1));
}

static guint
n_clips (const SqPiece *piece)
{
  guint n = 0;

  for (guint i = 0; i < piece->marks->len; i++)
    n += g_array_index (piece->marks, SqMark, i).kind == SQ_MARK_CLIP;
  return n;
}

/* The wrap's straight edges go round half circles of 2 in: clips √(8 · 50.8 · 0.5) = 14.25 mm apart,
 * 12 on π · 50.8 mm, at both ends. Sides that stand nearly square to the front have nearly circles,
 * of many arcs, and no more clips for that. */
static void
test_clips (void)
{
  g_autoptr (SqCover) square = cover_of_rectangle (24 * IN, 20 * IN, WRAPPED "'thickness':101.6");
  g_autofree char *outline = slanted (88, 92);
  g_autofree char *cushion = g_strconcat (WRAPPED "'thickness':101.6,", outline, NULL);
  g_autoptr (SqCover) nearly = cover_of (cushion);

  g_assert_cmpuint (n_clips (piece_of (square, SQ_ROLE_WRAP)), ==, 24);
  g_assert_cmpuint (n_clips (piece_of (square, SQ_ROLE_SIDE)), ==, 0);
  g_assert_cmpuint (n_clips (piece_of (nearly, SQ_ROLE_WRAP)), ==, 24);
}

/* ---- what can't be wrapped ----------------------------------------------------------------- */

static void
check_refused (const char *keys, SqProblemCode code, guint32 item, double fact)
{
  g_autofree char *cushion = g_strconcat (WRAPPED, keys, NULL);
  g_autoptr (SqCover) cover = cover_of (cushion);
  const SqProblem *p = find_problem (cover, code);

  g_assert_nonnull (p);
  g_assert_cmpint (p->severity, ==, SQ_FAULT);
  g_assert_cmpuint (p->place.item, ==, item);
  assert_mm (p->facts[1], fact);
  g_assert_cmpuint (cover->pieces->len, ==, 0);
}

static void
test_refused (void)
{
  g_autofree char *seat = rectangle (600, 400, NULL), *shallow = rectangle (600, 30, NULL);
  g_autofree char *radius = g_strconcat ("'thickness':100,'front_profile':{'radius':51},", seat,
                                         NULL);
  g_autofree char *negative = g_strconcat ("'front_profile':{'radius':-1},", seat, NULL);
  g_autofree char *round_front = g_strconcat ("'thickness':100,", shallow, NULL);

  check_refused (radius, SQ_PROBLEM_PROFILE_RADIUS, 0, 50);
  check_refused (negative, SQ_PROBLEM_PROFILE_RADIUS, 0, 0);
  check_refused (round_front, SQ_PROBLEM_PROFILE_RADIUS, 0, 30);
  check_refused ("'outline':[{'id':1,'x':0,'y':0,'bow':20},{'id':2,'x':600,'y':0},"
                 "{'id':3,'x':600,'y':400},{'id':4,'x':0,'y':400}]",
                 SQ_PROBLEM_FRONT_CURVED, 1, 0);
  /* along the front for a while, then back to it */
  check_refused ("'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':700,'y':200},"
                 "{'id':4,'x':650,'y':200},{'id':5,'x':600,'y':400},{'id':6,'x':0,'y':400}]",
                 SQ_PROBLEM_SIDE_TURNS_BACK, 3, 0);
  check_refused ("'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':400},"
                 "{'id':4,'x':0,'y':400},{'id':5,'x':-100,'y':150},{'id':6,'x':-50,'y':200}]",
                 SQ_PROBLEM_SIDE_TURNS_BACK, 5, 0);
  /* a bow of more than a quarter circle at an end */
  check_refused ("'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0,'bow':220},"
                 "{'id':3,'x':600,'y':400},{'id':4,'x':0,'y':400}]",
                 SQ_PROBLEM_SIDE_TURNS_BACK, 2, 0);
  /* nothing between the sides */
  check_refused ("'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':300,'y':400}]",
                 SQ_PROBLEM_CORNER_NOT_BUILT, 2, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/wrapped-front/lengths", test_lengths);
  g_test_add_func ("/cover/wrapped-front/true-arcs", test_true_arcs);
  g_test_add_func ("/cover/wrapped-front/slanted", test_slanted);
  g_test_add_func ("/cover/wrapped-front/curved", test_curved);
  g_test_add_func ("/cover/wrapped-front/zips", test_zips);
  g_test_add_func ("/cover/wrapped-front/zip-asked-for", test_zip_asked_for);
  g_test_add_func ("/cover/wrapped-front/edges-at-the-back", test_edges_at_the_back);
  g_test_add_func ("/cover/wrapped-front/notches", test_notches);
  g_test_add_func ("/cover/wrapped-front/clips", test_clips);
  g_test_add_func ("/cover/wrapped-front/refused", test_refused);
  return g_test_run ();
}
