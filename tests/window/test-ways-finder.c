/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ways are compared at once without lays, then with them; and anew whenever the document changes. */
#include "window/ways-finder.h"

#include "cover/hand-made.h"
#include "window/edit-ways.h"

#include <math.h>

/* Far more than any run takes here (s). */
#define LONGEST_S 120

typedef struct
{
  SqDocument *document;
  SqSelection *selection;
  SqWaysFinder *finder;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  g_autoptr (SqJob) job = job_of_text (
      "{'format':'squab job','version':1,'cushions':[{'id':1,'build':'boxed','outline':"
      "[{'id':1,'x':0,'y':0},{'id':2,'x':500,'y':0},{'id':3,'x':500,'y':400},{'id':4,'x':0,'y':"
      "400}]},{'id':2,'build':'knife-edge','outline':[{'id':1,'x':0,'y':0},{'id':2,'x':300,'y':0},"
      "{'id':3,'x':300,'y':400}]}]}");
  (void) data;

  f->document = sq_document_new (job, NULL);
  f->selection = sq_selection_new ();
  sq_selection_choose_cushion (f->selection, 1);
  f->finder = sq_ways_finder_new (f->document, f->selection);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  g_clear_object (&f->finder);
  g_clear_object (&f->selection);
  g_clear_object (&f->document);
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

static void
wait_for_lays (Fixture *f)
{
  gint64 end = g_get_monotonic_time () + LONGEST_S * G_USEC_PER_SEC;

  while (!sq_ways_finder_get_ways (f->finder)->has_lays)
    {
      g_main_context_iteration (NULL, FALSE);
      g_assert_cmpint (g_get_monotonic_time (), <, end);
    }
}

static const SqWay *
in_use (Fixture *f)
{
  const SqWays *ways = sq_ways_finder_get_ways (f->finder);
  return sq_ways_way (ways, ways->in_use);
}

static void
test_found (Fixture *f, gconstpointer data)
{
  (void) data;
  g_assert_false (sq_ways_finder_get_ways (f->finder)->has_lays);
  g_assert_cmpuint (in_use (f)->pieces, ==, 5);
  g_assert_true (isnan (g_array_index (in_use (f)->cloths, SqWayCloth, 0).buy_mm));
  wait_for_lays (f);
  g_assert_cmpfloat (g_array_index (in_use (f)->cloths, SqWayCloth, 0).buy_mm, >, 0);
}

/* What was begun for the job before is thrown away; what is there now is told at once. */
static void
test_changed (Fixture *f, gconstpointer data)
{
  const double wage = 60;
  (void) data;

  sq_ways_finder_get_ways (f->finder);
  sq_edit_rate (f->document, SQ_RATE_WAGE, &wage);
  g_assert_cmpfloat_with_epsilon (in_use (f)->work_cost, in_use (f)->minutes, 1e-9);
  wait_for_lays (f);
  g_assert_cmpfloat_with_epsilon (in_use (f)->work_cost, in_use (f)->minutes, 1e-9);
  sq_document_undo (f->document);
  g_assert_cmpfloat_with_epsilon (in_use (f)->work_cost, in_use (f)->minutes / 2, 1e-9);
}

static void
test_chosen (Fixture *f, gconstpointer data)
{
  const SqWays *ways = sq_ways_finder_get_ways (f->finder);
  (void) data;

  for (guint i = 0; i < ways->ways->len; i++)
    if (sq_ways_way (ways, i)->build == SQ_BUILD_FOLDED_CORNER)
      {
        sq_edit_way (f->document, sq_ways_way (ways, i));
        break;
      }
  g_assert_cmpint (in_use (f)->build, ==, SQ_BUILD_FOLDED_CORNER);
  sq_document_undo (f->document);
  g_assert_cmpint (in_use (f)->build, ==, SQ_BUILD_BOXED);
  /* Built so already: no step. */
  sq_edit_way (f->document, in_use (f));
  sq_document_redo (f->document);
  g_assert_cmpint (in_use (f)->build, ==, SQ_BUILD_FOLDED_CORNER);
}

static void
test_other_cushion (Fixture *f, gconstpointer data)
{
  (void) data;
  wait_for_lays (f);
  sq_selection_choose_cushion (f->selection, 2);
  g_assert_cmpint (in_use (f)->build, ==, SQ_BUILD_KNIFE_EDGE);
  wait_for_lays (f);
  sq_selection_choose_cushion (f->selection, 0);
  g_assert_null (sq_ways_finder_get_ways (f->finder));
}

/* The finder goes while a thread works for it. */
static void
test_gone (Fixture *f, gconstpointer data)
{
  (void) data;
  sq_ways_finder_get_ways (f->finder);
  g_clear_object (&f->finder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, test)                                                                            \
  g_test_add ("/window/ways-finder/" name, Fixture, NULL, set_up, test, tear_down)
  ADD ("found", test_found);
  ADD ("changed", test_changed);
  ADD ("chosen", test_chosen);
  ADD ("other-cushion", test_other_cushion);
  ADD ("gone", test_gone);
  return g_test_run ();
}
