/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/marking.h"

#include "cover/hand-made.h"

/* A flat cover of 600 × 400 and one of 300 × 200 that stands 100 mm up at one side, without allowances
 * of their own; the pieces are pinned where the tests want them. */
static SqLays *
lays_of (const char *cloth, const char *laying)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'width':1400%s}],"
      "'laying':{%s},"
      "'cushions':[{'id':1,'thickness':60,'build':'knife-edge','zip':{'place':'none'},"
      "'allowances':{'perimeter':10,'corner':10},"
      "'outline':[{'id':1,'x':0,'y':0},{'id':2,'x':600,'y':0},{'id':3,'x':600,'y':400},"
      "{'id':4,'x':0,'y':400}],'cloth':{'face':1,'underside':1,'sides':1}}]}",
      cloth, laying);
  g_autoptr (SqJob) job = job_of_text (text);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  return sq_lays_new (plan, NULL, &(SqLayBudget){ .seed = 1 }, NULL);
}

static const SqMarkPoint *
first_point (const SqMarkedPiece *piece)
{
  return sq_mark_point (sq_marked_piece_ring (piece, 0), 0);
}

/* What each placed piece's own cut line says, by the plan's places: y of the strip, or from its other
 * edge; every corner of it is marked, once. */
static void
assert_same (const SqLays *lays, const SqMarking *marking)
{
  const SqClothLay *cloth = sq_lays_cloth (lays, marking->cloth);

  g_assert_cmpuint (marking->pieces->len, ==, cloth->lay->placed->len);
  for (guint i = 0; i < marking->pieces->len; i++)
    {
      const SqMarkedPiece *marked = sq_marked_piece (marking, i);
      const SqPlaced *placed = sq_lay_placed (cloth->lay, marked->placed);
      double turn_rad;
      SqPoint at;
      sq_lays_place (lays, placed, &turn_rad, &at);
      const SqPath *cut = sq_piece_cut (sq_lays_piece (lays, placed), 0);
      g_assert_cmpfloat (sq_path_area_mm2 (g_ptr_array_index (marked->cut, 0)), >, 0);
      for (guint k = 0; k < sq_path_n_nodes (cut); k++)
        {
          SqPoint on = sq_add (sq_turned (sq_path_nodes (cut)[k].at, turn_rad), at);
          if (marking->wrong_side)
            on.y = marking->width_mm - on.y;
          assert_node (g_ptr_array_index (marked->cut, 0), on.x, on.y);
        }
    }
}

static void
test_places (void)
{
  g_autoptr (SqLays) lays = lays_of ("", "");
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);

  for (gboolean wrong = FALSE; wrong <= TRUE; wrong++)
    {
      g_autoptr (SqMarking) marking = sq_marking_new (lays, 0, 0, wrong, &style);
      assert_same (lays, marking);
      assert_mm (marking->width_mm, 1400);
      assert_mm (marking->laid_mm, sq_lay_length (sq_lays_cloth (lays, 0)->lay, 0) / 1000.0);
    }
}

/* On the wrong side, what lay at the near edge lies at the far one, as far along; the order follows. */
static void
test_wrong_side (void)
{
  g_autoptr (SqLays) lays = lays_of ("", "");
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  g_autoptr (SqMarking) right = sq_marking_new (lays, 0, 0, FALSE, &style);
  g_autoptr (SqMarking) wrong = sq_marking_new (lays, 0, 0, TRUE, &style);

  for (guint i = 0; i < right->pieces->len; i++)
    for (guint k = 0; k < wrong->pieces->len; k++)
      {
        const SqMarkedPiece *a = sq_marked_piece (right, i), *b = sq_marked_piece (wrong, k);
        if (a->placed != b->placed)
          continue;
        assert_mm (a->box.min.x, b->box.min.x);
        assert_mm (a->box.min.y, 1400 - b->box.max.y);
        g_assert_cmpfloat_with_epsilon (first_point (b)->at.x, b->box.min.x, 15);
        g_assert_cmpfloat_with_epsilon (first_point (b)->at.y, b->box.min.y, 15);
        g_assert_cmpuint (a->marks->len, ==, b->marks->len);
      }
}

/* First what straight cuts free, then along the cloth, ties from the near edge. */
static void
assert_ordered (const SqMarking *marking)
{
  for (guint i = 1; i < marking->pieces->len; i++)
    {
      const SqMarkedPiece *a = sq_marked_piece (marking, i - 1), *b = sq_marked_piece (marking, i);
      if (a->is_in_strip != b->is_in_strip)
        {
          g_assert_true (a->is_in_strip);
          continue;
        }
      double apart_mm = b->box.min.x - a->box.min.x;
      g_assert_cmpfloat (apart_mm, >, -0.2);
      if (apart_mm < 0.01)
        g_assert_cmpfloat (b->box.min.y, >, a->box.min.y);
    }
}

static void
test_order (void)
{
  g_autofree char *seat = rectangle (500, 450, (const char *const[4]){ NULL, NULL, NULL, NULL });
  g_autofree char *cushion = g_strdup_printf ("'count':4,'thickness':76,%s", seat);
  g_autoptr (SqJob) job = job_of (cushion, "'cloths':[{'id':1,'width':1400}],");
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &(SqLayBudget){ .seed = 1 }, NULL);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);

  for (guint i = 0; i < lays->cloths->len; i++)
    for (gboolean wrong = FALSE; wrong <= TRUE; wrong++)
      {
        g_autoptr (SqMarking) marking = sq_marking_new (lays, i, 0, wrong, &style);
        assert_ordered (marking);
        assert_same (lays, marking);
      }
}

/* Boxed, of a rectangle: faces and boxing are straight rectangles, with notches on their sides and large
 * faces with diagonals to check. */
static void
test_rectangles (void)
{
  g_autofree char *seat = rectangle (600, 480, (const char *const[4]){ NULL, NULL, NULL, NULL });
  g_autofree char *cushion = g_strdup_printf ("'thickness':76,%s", seat);
  g_autoptr (SqJob) job = job_of (cushion, "'cloths':[{'id':1,'width':1400}],");
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqLays) lays = sq_lays_new (plan, NULL, &(SqLayBudget){ .seed = 1 }, NULL);
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  g_autoptr (SqMarking) marking = sq_marking_new (lays, 0, 0, FALSE, &style);
  guint large = 0, folds = 0;

  for (guint i = 0; i < marking->pieces->len; i++)
    {
      const SqMarkedPiece *piece = sq_marked_piece (marking, i);
      double mm[2];
      g_assert_true (piece->is_rectangle);
      for (guint k = 0; k < piece->marks->len; k++)
        {
          const SqInnerMark *mark = sq_inner_mark (piece, k);
          SqPoint at = g_array_index (mark->at, SqPoint, 0);
          g_assert_true (mark->kind != SQ_MARK_CLIP);
          folds += mark->kind == SQ_MARK_FOLD;
          if (mark->kind != SQ_MARK_NOTCH)
            continue;
          /* on that side of the rectangle: near, right, far, left */
          const double off[] = { at.y - piece->box.min.y, piece->box.max.x - at.x,
                                 piece->box.max.y - at.y, at.x - piece->box.min.x };
          g_assert_cmpfloat_with_epsilon (off[mark->side], 0, 1e-6);
          g_assert_cmpuint (mark->ticks, >, 0);
        }
      if (!piece->has_diagonals)
        continue;
      large++;
      sq_marked_diagonals_mm (piece, mm);
      assert_mm (mm[0], sq_distance (piece->box.min, piece->box.max));
      assert_mm (mm[0], mm[1]);
    }
  g_assert_cmpuint (large, ==, 2); /* top and underside */
  g_assert_cmpuint (folds, >, 0);
}

static void
test_flaws (void)
{
  g_autoptr (SqLays) lays = lays_of (",'flaws':[{'id':1,'x':100,'y':0,'length':40,'width':200}]",
                                     "");
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_MM);
  g_autoptr (SqMarking) wrong = sq_marking_new (lays, 0, 0, TRUE, &style);

  g_assert_cmpuint (wrong->flaws->len, ==, 1);
  SqBox flaw = g_array_index (wrong->flaws, SqBox, 0);
  assert_mm (flaw.min.x, 100);
  assert_mm (flaw.max.x, 140);
  assert_mm (flaw.min.y, 1200);
  assert_mm (flaw.max.y, 1400);
}

/* Woven cloth tears; with stripes along the roll only; with a pile or a coat, not. */
static void
test_tears (void)
{
  static const struct
  {
    const char *keys;
    gboolean along, across;
  } cases[] = {
    { "'class':'canvas'", TRUE, TRUE },
    { "'class':'upholstery'", TRUE, TRUE },
    { "'class':'canvas','repeat':{'across':50},'stripes':[{'at':0,'width':9,'colour':'#204060'}]",
      TRUE, FALSE },
    { "'class':'upholstery','one_way':true", FALSE, FALSE },
    { "'class':'vinyl'", FALSE, FALSE },
    { "'class':'velvet'", FALSE, FALSE },
    { "'class':'mesh'", FALSE, FALSE },
    { "'class':'stretch'", FALSE, FALSE },
    { "'class':'loose-weave'", FALSE, FALSE },
  };

  g_assert_true (sq_cloth_tears (NULL, TRUE));
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *rest = g_strdup_printf ("'cloths':[{'id':1,'width':1400,%s}],",
                                               cases[i].keys);
      g_autoptr (SqJob) job = job_of ("'thickness':50,'outline':[{'x':0,'y':0},{'x':1,'y':0},"
                                      "{'x':1,'y':1}]",
                                      rest);
      g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
      g_assert_cmpint (sq_cloth_tears (sq_plan_cloth (plan, 1), FALSE), ==, cases[i].along);
      g_assert_cmpint (sq_cloth_tears (sq_plan_cloth (plan, 1), TRUE), ==, cases[i].across);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/marking/places", test_places);
  g_test_add_func ("/plan/marking/wrong side", test_wrong_side);
  g_test_add_func ("/plan/marking/order", test_order);
  g_test_add_func ("/plan/marking/rectangles", test_rectangles);
  g_test_add_func ("/plan/marking/flaws", test_flaws);
  g_test_add_func ("/plan/marking/tears", test_tears);
  return g_test_run ();
}
