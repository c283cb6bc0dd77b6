/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pages.h"

#include "cover/hand-made.h"
#include "papers/clean-page.h"

typedef struct
{
  SqPlan *plan;
  SqLays *lays;
  SqPaperSpec spec;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  const SqLayBudget budget = { .seed = 1, .steps = 0 };
  g_autoptr (SqJob) job = job_of_text (
      "{'format':'squab job','version':1,'title':'Quay bench','cushions':[]}");

  (void) data;
  f->plan = sq_plan_new (job, NULL);
  f->lays = sq_lays_new (f->plan, NULL, &budget, NULL);
  f->spec = (SqPaperSpec){ .lays = f->lays, .sheet = SQ_SHEET_A4, .date = "2026-03-01" };
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  sq_lays_unref (f->lays);
  sq_plan_unref (f->plan);
}

static GArray *
ended (SqPages *pages)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (SqPage));

  sq_pages_end (pages, out);
  for (guint i = 0; i < out->len; i++)
    assert_page_is_clean (&g_array_index (out, SqPage, i), 6);
  return out;
}

static void
free_pages (GArray *pages)
{
  for (guint i = 0; i < pages->len; i++)
    sq_scene_unref (g_array_index (pages, SqPage, i).scene);
  g_array_unref (pages);
}

static void
test_feet (Fixture *f, gconstpointer data)
{
  SqPages *pages = sq_pages_new (&f->spec, FALSE, "Quay bench");
  (void) data;
  for (guint i = 0; i < 120; i++)
    sq_pages_paragraph (pages, &sq_type_text, "A line.");
  GArray *out = ended (pages);

  g_assert_cmpuint (out->len, ==, 3);
  for (guint i = 0; i < out->len; i++)
    {
      const SqPage *page = &g_array_index (out, SqPage, i);
      g_autofree char *number = g_strdup_printf ("Page %u of 3", i + 1);
      g_assert_cmpuint (count_text (page, number), ==, 1);
      g_assert_cmpuint (count_text (page, "Revision A · 2026-03-01"), ==, 1);
      g_assert_cmpuint (count_text (page, "Quay bench"), ==, i == 0 ? 1 : 2);
      g_assert_cmpfloat (page->width_mm, ==, 210);
      g_assert_cmpfloat (page->height_mm, ==, 297);
    }
  free_pages (out);
}

/* What belongs together is not torn; a page that is empty is not left. */
static void
test_blocks (Fixture *f, gconstpointer data)
{
  SqPages *pages = sq_pages_new (&f->spec, TRUE, "Quay bench");
  double whole_mm = sq_pages_room_mm (pages);
  (void) data;
  sq_pages_break (pages);
  g_assert_cmpfloat (sq_pages_room_mm (pages), ==, whole_mm);
  sq_pages_block (pages, whole_mm - 50, 0);
  g_assert_cmpfloat_with_epsilon (sq_pages_room_mm (pages), 50, 1e-9);
  sq_pages_heading (pages, "Foam", 60); /* would stand alone at the foot */
  sq_pages_set_running (pages, "Foam");
  sq_pages_block (pages, 60, 0);
  sq_pages_break (pages);
  GArray *out = ended (pages);

  g_assert_cmpuint (out->len, ==, 3);
  g_assert_cmpuint (count_text (&g_array_index (out, SqPage, 0), "Foam"), ==, 0);
  g_assert_cmpuint (count_text (&g_array_index (out, SqPage, 1), "Foam"), ==, 1);
  g_assert_cmpuint (count_text (&g_array_index (out, SqPage, 2), "Foam, continued"), ==, 1);
  g_assert_cmpfloat (g_array_index (out, SqPage, 0).width_mm, ==, 297);
  free_pages (out);
}

static void
test_long_titles (Fixture *f, gconstpointer data)
{
  g_autofree char *title = g_strnfill (300, 'W');
  SqPages *pages = sq_pages_new (&f->spec, FALSE, title);
  (void) data;
  sq_pages_set_running (pages, title);
  sq_pages_heading (pages, title, 0);
  sq_pages_block (pages, 100, 0);
  sq_pages_break (pages);
  free_pages (ended (pages));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)
  ADD ("/papers/pages/feet", test_feet);
  ADD ("/papers/pages/blocks", test_blocks);
  ADD ("/papers/pages/long titles", test_long_titles);
  return g_test_run ();
}
