/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/kept-lays.h"

#include "cover/hand-made.h"
#include "exchange/job-file.h"

static const SqLayBudget first = { .seed = 1 }, longer = { .seed = 7, .steps = 8 };

/* Two seats, each on a cloth of its own; the second is a pair, with stripes, and one more of its
 * pieces than goes on the cloth. */
static SqJob *
job_of_width (double width_mm)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,'units':'mm','cloths':[{'id':1,'width':1400},"
      "{'id':2,'width':700,'repeat':{'across':60},'stripes':[{'at':0,'width':20,'colour':'#"
      "102030'}]}],'cushions':[{'id':1,'thickness':50,'build':'boxed','outline':[{'id':1,'x':0,"
      "'y':0},{'id':2,'x':%g,'y':0,'bow':20},{'id':3,'x':%g,'y':400},{'id':4,'x':0,'y':400}],"
      "'cloth':{'face':1,'underside':1,'sides':1}},{'id':2,'count':3,'hand':'pair',"
      "'thickness':50,'build':'boxed','outline':[{'id':1,'x':0,'y':0},{'id':2,'x':300,'y':0},"
      "{'id':3,'x':330,'y':300},{'id':4,'x':0,'y':300}],'cloth':{'face':2,'underside':2,'sides':"
      "2}},{'id':3,'thickness':50,'build':'boxed','outline':[{'id':1,'x':0,'y':0},{'id':2,'x':"
      "800,'y':0},{'id':3,'x':800,'y':800},{'id':4,'x':0,'y':800}],'cloth':{'face':2,'underside'"
      ":2,'sides':2}}]}",
      width_mm, width_mm);
  return job_of_text (text);
}

static SqLays *
lays_of (const SqJob *job, const SqLays *before, const SqLayBudget *budget)
{
  g_autoptr (SqPlan) plan = sq_plan_new (job, before != NULL ? before->plan : NULL);
  return sq_lays_new (plan, before, budget, NULL);
}

/* @job with the lays that a search with @budget finds for all its cloths. */
static SqJob *
keep_all (const SqJob *job, const SqLayBudget *budget)
{
  g_autoptr (SqLays) lays = lays_of (job, NULL, budget);
  SqJob *result = sq_job_ref (job);

  for (guint i = 0; i < lays->cloths->len; i++)
    {
      g_autoptr (SqKeptLay) kept = sq_lays_keep (lays, i, NULL);
      SqJob *next = sq_job_with_kept_lay (result, kept);
      sq_job_unref (result);
      result = next;
    }
  return result;
}

static void
assert_same_lay (const SqLay *a, const SqLay *b)
{
  g_assert_cmpuint (a->seed, ==, b->seed);
  g_assert_cmpuint (a->steps, ==, b->steps);
  g_assert_cmpuint (a->task_digest, ==, b->task_digest);
  g_assert_cmpmem (a->lengths->data, a->lengths->len * sizeof (gint32), b->lengths->data,
                   b->lengths->len * sizeof (gint32));
  g_assert_cmpuint (a->placed->len, ==, b->placed->len);
  for (guint i = 0; i < a->placed->len; i++)
    {
      const SqPlaced *x = sq_lay_placed (a, i), *y = sq_lay_placed (b, i);
      g_assert_true (x->item == y->item && x->copy == y->copy && x->tag == y->tag
                     && x->strip == y->strip && x->at.x == y->at.x && x->at.y == y->at.y
                     && sq_grid_pose_equal (x->pose, y->pose));
    }
  g_assert_cmpuint (a->unlaid->len, ==, b->unlaid->len);
  for (guint i = 0; i < a->unlaid->len; i++)
    {
      const SqUnlaid *x = &g_array_index (a->unlaid, SqUnlaid, i);
      const SqUnlaid *y = &g_array_index (b->unlaid, SqUnlaid, i);
      g_assert_true (x->item == y->item && x->count == y->count && x->why == y->why);
    }
}

static SqJob *
read_again (const SqJob *job)
{
  g_autofree char *text = sq_job_write (job);
  g_autoptr (GError) error = NULL;
  SqJob *again = sq_job_read (text, -1, &job->defaults, &error);

  g_assert_no_error (error);
  g_autofree char *text_again = sq_job_write (again);
  g_assert_cmpstr (text_again, ==, text);
  return again;
}

/* A lay that took a search is what the job has after saving and opening it, whatever the budget. */
static void
test_found_again (void)
{
  g_autoptr (SqJob) job = job_of_width (500);
  g_autoptr (SqLays) lays = lays_of (job, NULL, &longer);
  g_autoptr (SqJob) kept = keep_all (job, &longer);
  g_autoptr (SqJob) opened = read_again (kept);
  g_autoptr (SqLays) found = lays_of (opened, NULL, &first);

  g_assert_cmpuint (found->cloths->len, ==, 2);
  g_assert_cmpuint (sq_lays_cloth (found, 1)->lay->unlaid->len, >, 0);
  for (guint i = 0; i < 2; i++)
    {
      g_assert_true (sq_lays_cloth (found, i)->is_kept);
      g_assert_true (sq_lays_cloth (found, i)->kept
                     == sq_job_kept_lay (opened, sq_lays_cloth (found, i)->cloth));
      assert_same_lay (sq_lays_cloth (found, i)->lay, sq_lays_cloth (lays, i)->lay);
    }
}

/* What is kept can be drawn without the plan: the rings, turned and moved, are those of the lay. */
static void
test_drawable (void)
{
  g_autoptr (SqJob) job = job_of_width (500);
  g_autoptr (SqLays) lays = lays_of (job, NULL, &first);
  const char *names[64] = { NULL };

  for (guint i = 0; i < lays->plan->cut_list->len; i++)
    names[i] = "Piece";
  for (guint i = 0; i < lays->cloths->len; i++)
    {
      const SqLay *lay = sq_lays_cloth (lays, i)->lay;
      g_autoptr (SqKeptLay) kept = sq_lays_keep (lays, i, names);
      g_assert_cmpuint (kept->placed->len, ==, lay->placed->len);
      g_assert_cmpuint (kept->revision, ==, 1);
      for (guint k = 0; k < kept->placed->len; k++)
        {
          const SqKeptPlaced *p = sq_kept_lay_placed (kept, k);
          const SqKeptPiece *piece = sq_kept_lay_piece (kept, p->piece);
          double turn_rad;
          SqPoint at;
          sq_lays_place (lays, sq_lay_placed (lay, k), &turn_rad, &at);
          g_autoptr (SqPath) there = sq_path_moved (
              sq_piece_cut (sq_lays_piece (lays, sq_lay_placed (lay, k)), 0), turn_rad, at);
          g_autoptr (SqPath) here = sq_path_moved (g_ptr_array_index (piece->cut, 0),
                                                   p->turn_deg * G_PI / 180, p->at);
          SqBox a = sq_path_box (there), b = sq_path_box (here);
          assert_mm (a.min.x, b.min.x);
          assert_mm (a.min.y, b.min.y);
          assert_mm (a.max.x, b.max.x);
          assert_mm (a.max.y, b.max.y);
          g_assert_cmpstr (piece->name, ==, "Piece");
        }
    }
}

/* An edited seat has its cloth's lay out of date, and no other; taken back, it is right again. */
static void
test_out_of_date (void)
{
  g_autoptr (SqJob) job = job_of_width (500);
  g_autoptr (SqJob) kept = keep_all (job, &longer);
  g_autoptr (SqJob) wider = job_of_width (501);
  g_autoptr (SqJob) edited = sq_job_with_cushion (kept, sq_job_cushion (wider, 1));
  g_autoptr (SqJob) back = sq_job_with_cushion (edited, sq_job_cushion (job, 1));
  g_autoptr (SqLays) lays = lays_of (kept, NULL, &first);
  g_autoptr (SqLays) lays_edited = lays_of (edited, lays, &first);
  g_autoptr (SqLays) alone = lays_of (edited, NULL, &first);
  g_autoptr (SqLays) lays_back = lays_of (back, lays_edited, &first);

  g_assert_nonnull (sq_lays_cloth (lays_edited, 0)->kept);
  g_assert_false (sq_lays_cloth (lays_edited, 0)->is_kept);
  g_assert_true (sq_lays_cloth (lays_edited, 1)->is_kept);
  g_assert_true (sq_lays_cloth (lays_edited, 1)->lay == sq_lays_cloth (lays, 1)->lay);
  for (guint i = 0; i < 2; i++)
    {
      assert_same_lay (sq_lays_cloth (lays_edited, i)->lay, sq_lays_cloth (alone, i)->lay);
      g_assert_true (sq_lays_cloth (lays_back, i)->is_kept);
      assert_same_lay (sq_lays_cloth (lays_back, i)->lay, sq_lays_cloth (lays, i)->lay);
    }
}

/* Lines of the cut list that another cloth's new piece moves leave this cloth's lay right. */
static void
test_other_lines (void)
{
  g_autoptr (SqJob) job = job_of_width (500);
  g_autoptr (SqJob) kept = keep_all (job, &longer);
  g_autoptr (SqJob) fewer = sq_job_without_cushion (kept, 1);
  g_autoptr (SqLays) before = lays_of (kept, NULL, &first);
  g_autoptr (SqLays) lays = lays_of (fewer, before, &first);
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);

  g_assert_cmpuint (cloth->cloth, ==, 2);
  g_assert_true (cloth->is_kept);
  g_assert_true (sq_lay_is_valid (cloth->task, cloth->lay));
  for (guint i = 0; i < cloth->lay->placed->len; i++)
    g_assert_cmpuint (sq_lays_entry (lays, sq_lay_placed (cloth->lay, i))->cloth, ==, 2);
}

/* Let go, it is no longer taken from the lays before either. */
static void
test_let_go (void)
{
  g_autoptr (SqJob) job = job_of_width (500);
  g_autoptr (SqJob) kept = keep_all (job, &longer);
  g_autoptr (SqJob) free = sq_job_without_kept_lay (kept, 1);
  g_autoptr (SqLays) lays = lays_of (kept, NULL, &first);
  g_autoptr (SqLays) after = lays_of (free, lays, &first);
  g_autoptr (SqLays) alone = lays_of (job, NULL, &first);

  g_assert_null (sq_lays_cloth (after, 0)->kept);
  g_assert_false (sq_lays_cloth (after, 0)->is_kept);
  assert_same_lay (sq_lays_cloth (after, 0)->lay, sq_lays_cloth (alone, 0)->lay);
  g_assert_true (sq_lays_cloth (after, 1)->is_kept);
}

static void
test_covers_are_shared (void)
{
  g_autoptr (SqJob) job = job_of_width (500);
  g_autoptr (SqJob) kept = keep_all (job, &first);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  g_autoptr (SqPlan) next = sq_plan_new (kept, plan);

  for (guint i = 0; i < plan->covers->len; i++)
    g_assert_true (sq_plan_cover (next, i) == sq_plan_cover (plan, i));
}

/* ---- files that lie ------------------------------------------------------------------------ */

static void
spoil_place (SqKeptLay *kept)
{
  sq_kept_lay_placed (kept, 0)->at.x += 1;
}

static void
spoil_between (SqKeptLay *kept)
{
  sq_kept_lay_placed (kept, 0)->at.x += 0.0004;
}

static void
spoil_far (SqKeptLay *kept)
{
  sq_kept_lay_placed (kept, 0)->at.y = 2e6;
}

static void
spoil_turn (SqKeptLay *kept)
{
  sq_kept_lay_placed (kept, 0)->turn_deg += 1;
}

static void
spoil_half_turn (SqKeptLay *kept)
{
  sq_kept_lay_placed (kept, 0)->turn_deg -= 180;
}

static void
spoil_copy (SqKeptLay *kept)
{
  sq_kept_lay_placed (kept, 0)->copy++;
}

static void
spoil_piece (SqKeptLay *kept)
{
  sq_kept_lay_placed (kept, 0)->piece = kept->pieces->len;
}

static void
spoil_strip (SqKeptLay *kept)
{
  sq_kept_lay_placed (kept, 0)->strip = 1;
}

static void
spoil_count (SqKeptLay *kept)
{
  g_array_set_size (kept->placed, kept->placed->len - 1);
}

static void
spoil_length (SqKeptLay *kept)
{
  sq_kept_lay_strip (kept, 0)->length_mm -= 1;
}

static void
spoil_strips (SqKeptLay *kept)
{
  g_array_set_size (kept->strips, 2);
}

static void
spoil_unlaid (SqKeptLay *kept)
{
  SqKeptUnlaid unlaid = { kept->pieces->len, 1, 0, NULL };
  g_array_append_val (kept->unlaid, unlaid);
}

static void
spoil_digest (SqKeptLay *kept)
{
  kept->digest++;
}

static void
test_lies (void)
{
  static void (*const spoils[]) (SqKeptLay * kept) = { spoil_place,  spoil_between,   spoil_far,
                                                       spoil_turn,   spoil_half_turn, spoil_copy,
                                                       spoil_piece,  spoil_strip,     spoil_count,
                                                       spoil_length, spoil_strips,    spoil_unlaid,
                                                       spoil_digest };
  g_autoptr (SqJob) job = job_of_width (500);
  g_autoptr (SqLays) lays = lays_of (job, NULL, &first);
  const SqClothLay *cloth = sq_lays_cloth (lays, 0);

  for (guint i = 0; i < G_N_ELEMENTS (spoils); i++)
    {
      g_autoptr (SqKeptLay) kept = sq_lays_keep (lays, 0, NULL);
      g_autoptr (SqLay) found = sq_kept_lay_found (kept, lays->plan, cloth->task);
      g_assert_nonnull (found);
      spoils[i](kept);
      g_autoptr (SqLay) none = sq_kept_lay_found (kept, lays->plan, cloth->task);
      if (none != NULL)
        g_test_fail_printf ("lie %u was believed", i);
      g_autoptr (SqJob) lying = sq_job_with_kept_lay (job, kept);
      g_autoptr (SqLays) anyway = lays_of (lying, NULL, &first);
      g_assert_false (sq_lays_cloth (anyway, 0)->is_kept);
      assert_same_lay (sq_lays_cloth (anyway, 0)->lay, cloth->lay);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/kept-lays/found again", test_found_again);
  g_test_add_func ("/plan/kept-lays/drawable", test_drawable);
  g_test_add_func ("/plan/kept-lays/out of date", test_out_of_date);
  g_test_add_func ("/plan/kept-lays/other lines", test_other_lines);
  g_test_add_func ("/plan/kept-lays/let go", test_let_go);
  g_test_add_func ("/plan/kept-lays/covers are shared", test_covers_are_shared);
  g_test_add_func ("/plan/kept-lays/lies", test_lies);
  return g_test_run ();
}
