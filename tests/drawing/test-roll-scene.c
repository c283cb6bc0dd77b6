/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/roll-scene.h"

#include "exchange/defaults-file.h"
#include "exchange/job-file.h"

#define SAMPLE "../data/samples/bay-seat.squab"

typedef struct
{
  SqPlan *plan;
  SqLays *lays;
} Fixture;

static const SqRollLook look = { 20, FALSE, 0xffffff };

static void
set_up (Fixture *f, gconstpointer data)
{
  const SqLayBudget first = { .seed = 1, .steps = 0 };
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, SAMPLE, NULL);
  SqDefaults defaults;
  (void) data;

  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_load (path, &defaults, NULL);
  g_assert_nonnull (job);
  f->plan = sq_plan_new (job, NULL);
  f->lays = sq_lays_new (f->plan, NULL, &first, NULL);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  sq_lays_unref (f->lays);
  sq_plan_unref (f->plan);
}

/* What is drawn of a piece is the piece, where it lies, on the cloth. */
static void
test_pieces (Fixture *f, gconstpointer data)
{
  (void) data;
  for (guint cloth = 0; cloth < f->lays->cloths->len; cloth++)
    {
      const SqClothLay *own = sq_lays_cloth (f->lays, cloth);
      SqBox roll = sq_roll_box (own);
      for (guint i = 0; i < own->lay->placed->len; i++)
        {
          g_autoptr (SqPath) cut = sq_roll_piece_cut (f->lays, cloth, i);
          g_autoptr (SqScene) shape = sq_roll_piece_scene (f->lays, cloth, i, SQ_ROLL_SHAPE, "x",
                                                           &look);
          g_autoptr (SqScene) label = sq_roll_piece_scene (f->lays, cloth, i, SQ_ROLL_LABEL, "x",
                                                           &look);
          SqBox box = sq_path_box (cut), drawn = sq_scene_box (shape);
          SqVector at = sq_roll_piece_place (f->lays, cloth, i);
          g_assert_cmpfloat_with_epsilon (drawn.min.x + at.x, box.min.x, 1e-6);
          g_assert_cmpfloat_with_epsilon (drawn.max.y + at.y, box.max.y, 1e-6);
          g_assert_cmpfloat (box.min.x, >=, roll.min.x - 0.002);
          g_assert_cmpfloat (box.min.y, >=, roll.min.y - 0.002);
          g_assert_cmpfloat (box.max.x, <=, roll.max.x + 0.002);
          g_assert_cmpfloat (box.max.y, <=, roll.max.y + 0.002);
          if (sq_scene_n_items (label) > 0)
            {
              SqBox text = sq_scene_box (label);
              g_assert_cmpfloat (text.min.x + at.x, >=, box.min.x);
              g_assert_cmpfloat (text.max.y + at.y, <=, box.max.y);
            }
        }
    }
}

static void
test_piece_at (Fixture *f, gconstpointer data)
{
  (void) data;
  for (guint cloth = 0; cloth < f->lays->cloths->len; cloth++)
    for (guint i = 0; i < sq_lays_cloth (f->lays, cloth)->lay->placed->len; i++)
      {
        g_autoptr (SqPath) cut = sq_roll_piece_cut (f->lays, cloth, i);
        SqVector along;
        SqPoint on_edge = sq_path_point_at (cut, 0.37 * sq_path_length_mm (cut), &along);
        g_assert_cmpint (
            sq_roll_piece_at (f->lays, cloth, sq_moved (on_edge, sq_left (along), 0.01)), ==,
            (gint) i);
        g_assert_cmpint (
            sq_roll_piece_at (f->lays, cloth, sq_moved (on_edge, sq_right (along), 0.01)), !=,
            (gint) i);
      }
  g_assert_cmpint (sq_roll_piece_at (f->lays, 0, sq_point (-1, -1)), ==, -1);
}

/* What the cloth has at a place of a piece: across it, modulo the repeat. */
static double
across_mm (const Fixture *f, guint placed, SqPoint on_piece, double repeat_mm)
{
  const SqClothLay *cloth = sq_lays_cloth (f->lays, 0);
  double turn_rad;
  SqPoint at;

  sq_lays_place (f->lays, sq_lay_placed (cloth->lay, placed), &turn_rad, &at);
  double y = sq_add (sq_turned (on_piece, turn_rad), at).y;
  return y - repeat_mm * floor (y / repeat_mm);
}

static guint
placed_of (const Fixture *f, SqPieceRole role, guint sides)
{
  const SqClothLay *cloth = sq_lays_cloth (f->lays, 0);

  for (guint i = 0; i < cloth->lay->placed->len; i++)
    {
      const SqPiece *piece = sq_lays_piece (f->lays, sq_lay_placed (cloth->lay, i));
      if (piece->role == role && piece->sides == sides)
        return i;
    }
  g_assert_not_reached ();
}

/* The striped bay seat: along the straight front edge each stripe of the top goes on in the front
 * boxing below it. The boxing's x is the length along the front edge from its start, so a point of
 * the edge and that of the boxing's upper side are sewn together. */
static void
test_stripes_run_on (Fixture *f, gconstpointer data)
{
  const SqCover *cover = sq_plan_cover (f->plan, 0);
  double repeat_mm = sq_plan_cloth (f->plan, 1)->repeat_across_mm;
  guint top = placed_of (f, SQ_ROLE_FACE, 0), boxing = placed_of (f, SQ_ROLE_BOXING, SQ_SIDE_FRONT);
  const SqFinishedEdge *front = &cover->finished->rings[0].edges[0];
  (void) data;

  g_assert_cmpfloat_with_epsilon (repeat_mm, 101.6, 1e-9);
  for (double station = front->own_start_mm; station <= front->own_end_mm; station += 10)
    {
      SqPoint on_edge = sq_path_point_at (cover->finished->rings[0].path, station, NULL);
      double face = across_mm (f, top, on_edge, repeat_mm);
      double below = across_mm (f, boxing, sq_point (station, cover->thickness_mm), repeat_mm);
      double apart = remainder (face - below, repeat_mm);
      g_assert_cmpfloat (fabs (apart), <, 0.002);
    }
}

/* The roll's stripes begin at its near edge: the first at 19.05 mm, 25.4 mm wide. */
static void
test_cloth (Fixture *f, gconstpointer data)
{
  g_autoptr (SqScene) scene = sq_roll_cloth_scene (f->lays, 0, 0, 500, &look);
  gboolean found = FALSE;
  (void) data;

  g_assert_cmpfloat_with_epsilon (sq_scene_box (scene).max.x, 500, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_scene_box (scene).max.y, 1346.2, 1e-3);
  for (guint i = 0; i < sq_scene_n_items (scene); i++)
    {
      const SqItem *item = sq_scene_item (scene, i);
      if (item->kind != SQ_ITEM_FILL || item->rgb != 0x2f4b6e)
        continue;
      for (guint k = 0; k < item->n_lines; k++)
        {
          const SqSceneLine *line = sq_scene_line (scene, item->first_line + k);
          const SqNode *nodes = sq_scene_nodes (scene, line);
          double low = INFINITY, high = -INFINITY;
          for (guint n = 0; n < line->n; n++)
            {
              low = fmin (low, nodes[n].at.y);
              high = fmax (high, nodes[n].at.y);
            }
          found |= fabs (low - 19.05) < 1e-6 && fabs (high - 44.45) < 1e-6;
        }
    }
  g_assert_true (found);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)
  ADD ("/drawing/roll-scene/pieces", test_pieces);
  ADD ("/drawing/roll-scene/piece at", test_piece_at);
  ADD ("/drawing/roll-scene/stripes run on", test_stripes_run_on);
  ADD ("/drawing/roll-scene/cloth", test_cloth);
  return g_test_run ();
}
