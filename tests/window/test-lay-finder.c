/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lays are found on a thread; whoever waits for them does not stand still. */
#include "window/lay-finder.h"

#include "cover/hand-made.h"
#include "roll/lay-cost.h"

/* Far more than any run takes here (s). */
#define LONGEST_S 120

static SqJob *
job_of_width (double width_mm, guint count)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab "
      "job','version':1,'units':'mm','cushions':[{'id':1,'count':%u,'thickness':50,"
      "'build':'boxed','outline':[{'id':1,'x':0,'y':0},{'id':2,'x':%g,'y':0},{'id':3,'x':%g,'y':"
      "380},{'id':4,'x':200,'y':450},{'id':5,'x':0,'y':400}]}]}",
      count, width_mm, width_mm);
  return job_of_text (text);
}

typedef struct
{
  SqDocument *document;
  SqLayFinder *finder;
  guint n_changes;
  gint64 longest_us; /* the main loop stood still */
} Fixture;

static void
count_change (Fixture *f)
{
  f->n_changes++;
}

static void
set_up (Fixture *f, gconstpointer data)
{
  g_autoptr (SqJob) job = job_of_width (500, GPOINTER_TO_UINT (data));

  f->document = sq_document_new (job, NULL);
  f->finder = sq_lay_finder_new (f->document);
  g_signal_connect_swapped (f->finder, "changed", G_CALLBACK (count_change), f);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  g_clear_object (&f->finder);
  g_clear_object (&f->document);
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

static gboolean
tick (gpointer data)
{
  (void) data;
  return G_SOURCE_CONTINUE;
}

/* Until @is_there; the loop turns at least every millisecond, unless something holds it up. */
static void
wait_until (Fixture *f, gboolean (*is_there) (SqLayFinder *finder))
{
  guint source = g_timeout_add (1, tick, NULL);
  gint64 end = g_get_monotonic_time () + LONGEST_S * G_USEC_PER_SEC;

  while (!is_there (f->finder))
    {
      gint64 before = g_get_monotonic_time ();
      g_main_context_iteration (NULL, TRUE);
      f->longest_us = MAX (f->longest_us, g_get_monotonic_time () - before);
      g_assert_cmpint (g_get_monotonic_time (), <, end);
    }
  g_source_remove (source);
}

static void
test_found (Fixture *f, gconstpointer data)
{
  const SqLays *lays;
  (void) data;

  g_assert_null (sq_lay_finder_get_lays (f->finder));
  g_assert_false (sq_lay_finder_is_current (f->finder));
  wait_until (f, sq_lay_finder_is_current);
  lays = sq_lay_finder_get_lays (f->finder);
  g_assert_true (lays->plan == sq_document_get_plan (f->document));
  g_assert_true (sq_lay_is_valid (sq_lays_cloth (lays, 0)->task, sq_lays_cloth (lays, 0)->lay));
  g_assert_cmpuint (f->n_changes, >, 0);
}

/* As many changes as a drag makes: the last one's lays are there in the end, and they are those that
 * are found without all the others before. */
static void
test_follows (Fixture *f, gconstpointer data)
{
  (void) data;
  for (guint i = 0; i < 50; i++)
    {
      g_autoptr (SqJob) job = job_of_width (400 + 3 * i, 1);
      sq_document_try (f->document, job);
      g_main_context_iteration (NULL, FALSE);
    }
  wait_until (f, sq_lay_finder_is_current);

  const SqLays *lays = sq_lay_finder_get_lays (f->finder);
  g_autoptr (SqLays) alone = sq_lays_new (sq_document_get_plan (f->document), NULL,
                                          &(SqLayBudget){ .seed = 1, .steps = 0 }, NULL);
  g_assert_cmpint (sq_lay_length (sq_lays_cloth (lays, 0)->lay, 0), ==,
                   sq_lay_length (sq_lays_cloth (alone, 0)->lay, 0));
}

/* 3,000 pieces take a second or more; the loop goes on turning, and it is told how far it is. */
static gboolean
is_told (SqLayFinder *finder)
{
  return sq_lay_finder_get_progress (finder) >= 0 || sq_lay_finder_is_current (finder);
}

static gboolean
is_stopped (SqLayFinder *finder)
{
  return sq_lay_finder_is_stopped (finder);
}

static void
test_many_pieces (Fixture *f, gconstpointer data)
{
  (void) data;
  wait_until (f, is_told);
  if (!sq_lay_finder_is_current (f->finder))
    {
      sq_lay_finder_stop (f->finder);
      wait_until (f, is_stopped);
      g_assert_null (sq_lay_finder_get_lays (f->finder));
      sq_lay_finder_again (f->finder);
    }
  wait_until (f, sq_lay_finder_is_current);
  g_assert_cmpint (f->longest_us, <, G_USEC_PER_SEC / 2);
}

/* Let go in the middle of its work it is gone at once. */
static void
test_let_go (Fixture *f, gconstpointer data)
{
  GWeakRef weak;
  (void) data;

  g_weak_ref_init (&weak, f->finder);
  g_clear_object (&f->finder);
  g_assert_null (g_weak_ref_get (&weak));
  g_weak_ref_clear (&weak);
}

/* Better lays come by themselves when nothing is done; stopped, there are none, and again they come. */
static gboolean
is_searching (SqLayFinder *finder)
{
  return sq_lay_finder_get_searching (finder) >= 0;
}

static gboolean
can_search (SqLayFinder *finder)
{
  return sq_lay_finder_can_search (finder);
}

static void
test_better (Fixture *f, gconstpointer data)
{
  (void) data;
  wait_until (f, sq_lay_finder_is_current);
  g_autoptr (SqLays) first = sq_lays_ref (sq_lay_finder_get_lays (f->finder));
  wait_until (f, is_searching);
  wait_until (f, can_search); /* its seconds are over */
  const SqClothLay *cloth = sq_lays_cloth (sq_lay_finder_get_lays (f->finder), 0);
  g_assert_true (sq_lay_is_valid (cloth->task, cloth->lay));
  g_assert_cmpint (sq_lay_compare (cloth->task, cloth->lay, sq_lays_cloth (first, 0)->lay), <=, 0);
  sq_lay_finder_again (f->finder);
  wait_until (f, is_searching);
  gint64 before = g_get_monotonic_time ();
  sq_lay_finder_stop (f->finder);
  wait_until (f, can_search);
  g_assert_cmpint (g_get_monotonic_time () - before, <, G_USEC_PER_SEC / 2);
}

/* An edit ends a search at once, and one that is undone has its lay back. */
static void
test_edits (Fixture *f, gconstpointer data)
{
  g_autoptr (SqJob) wider = job_of_width (520, 6);
  (void) data;
  wait_until (f, is_searching);
  sq_document_edit (f->document, wider, "wider", NULL);
  g_assert_false (is_searching (f->finder));
  wait_until (f, sq_lay_finder_is_current);
  g_assert_true (sq_lay_is_valid (sq_lays_cloth (sq_lay_finder_get_lays (f->finder), 0)->task,
                                  sq_lays_cloth (sq_lay_finder_get_lays (f->finder), 0)->lay));
  wait_until (f, is_searching);
  g_autoptr (SqLays) found = sq_lays_ref (sq_lay_finder_get_lays (f->finder));
  g_autoptr (SqJob) narrower = job_of_width (480, 6);
  sq_document_edit (f->document, narrower, "narrower", NULL);
  wait_until (f, sq_lay_finder_is_current);
  sq_document_undo (f->document);
  wait_until (f, sq_lay_finder_is_current);
  const SqLays *back = sq_lay_finder_get_lays (f->finder);
  g_assert_cmpint (sq_lay_compare (sq_lays_cloth (back, 0)->task, sq_lays_cloth (back, 0)->lay,
                                   sq_lays_cloth (found, 0)->lay),
                   <=, 0);
}

/* While somebody holds them, lays stay what they are. */
static void
test_held (Fixture *f, gconstpointer data)
{
  (void) data;
  wait_until (f, is_searching);
  sq_lay_finder_hold (f->finder);
  gint64 end = g_get_monotonic_time () + 2 * G_USEC_PER_SEC;
  while (is_searching (f->finder))
    g_main_context_iteration (NULL, TRUE);
  g_autoptr (SqLays) held = sq_lays_ref (sq_lay_finder_get_lays (f->finder));
  while (g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, FALSE);
  g_assert_true (sq_lay_finder_get_lays (f->finder) == held);
  sq_lay_finder_release (f->finder);
  wait_until (f, is_searching);
}

int
main (int argc, char **argv)
{
  g_setenv ("SQUAB_LAY_SECONDS", "2", TRUE);
  g_test_init (&argc, &argv, NULL);
#define ADD(path, count, function)                                                                 \
  g_test_add (path, Fixture, GUINT_TO_POINTER (count), set_up, function, tear_down)
  ADD ("/window/lay-finder/found", 1, test_found);
  ADD ("/window/lay-finder/follows", 1, test_follows);
  ADD ("/window/lay-finder/many pieces", 500, test_many_pieces);
  ADD ("/window/lay-finder/better", 6, test_better);
  ADD ("/window/lay-finder/edits", 6, test_edits);
  ADD ("/window/lay-finder/held", 6, test_held);
  ADD ("/window/lay-finder/let go", 500, test_let_go);
  return g_test_run ();
}
