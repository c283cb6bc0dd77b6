/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/columns.h"

#include "papers/clean-page.h"
#include "plan/lays.h"

#include "cover/hand-made.h"

static const SqType type = { 4, FALSE, SQ_TONE_INK };

typedef struct
{
  SqLays *lays;
  SqPaperSpec spec;
  SqPages *pages;
  SqColumns *columns;
  GArray *out; /* of SqPage */
} Fixture;

static void
clear_page (gpointer data)
{
  SqPage *page = data;

  sq_scene_unref (page->scene);
  g_free (page->bookmark);
}

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  g_autoptr (SqJob) job = job_of (
      "'thickness':50,'outline':[{'x':0,'y':0},{'x':400,'y':0},{'x':400,"
      "'y':300}]",
      NULL);
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  f->lays = sq_lays_new (plan, NULL, &(SqLayBudget){ .seed = 1 }, NULL);
  f->spec = sq_paper_spec (f->lays, '.', "2026-03-01");
  f->pages = sq_pages_new_sized (&f->spec, sq_point (200, 150), "Title");
  f->columns = sq_columns_new (f->pages, 50);
  f->out = g_array_new (FALSE, FALSE, sizeof (SqPage));
  g_array_set_clear_func (f->out, clear_page);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  g_array_unref (f->out);
  sq_lays_unref (f->lays);
}

/* A group of @n lines, "name 1", "name 2" … */
static void
add_group (Fixture *f, SqGroupKind kind, const char *name, guint n)
{
  sq_columns_group (f->columns, kind);
  for (guint i = 1; i <= n; i++)
    {
      g_autofree char *text = g_strdup_printf ("%s %u", name, i);
      sq_columns_line (f->columns, 6);
      sq_columns_text (f->columns, 0, 40, SQ_ALIGN_START, &type, text);
    }
}

static void
end (Fixture *f)
{
  sq_columns_end (f->columns);
  sq_pages_end (f->pages, f->out);
  for (guint i = 0; i < f->out->len; i++)
    assert_page_is_clean (&g_array_index (f->out, SqPage, i), 6);
}

/* How often @text stands on all pages; the page and the place where it does first. */
static guint
find (const Fixture *f, const char *text, guint *page, SqPoint *at)
{
  guint n = 0;

  for (guint p = 0; p < f->out->len; p++)
    {
      const SqScene *scene = g_array_index (f->out, SqPage, p).scene;
      for (guint i = 0; i < sq_scene_n_items (scene); i++)
        {
          const SqItem *item = sq_scene_item (scene, i);
          if (item->kind != SQ_ITEM_TEXT
              || !g_str_equal (sq_scene_text (scene, item->text)->text, text))
            continue;
          if (n++ > 0)
            continue;
          *page = p;
          *at = sq_scene_text (scene, item->text)->at;
        }
    }
  return n;
}

/* What does not fill a page stands in columns about as long, in order. */
static void
test_level (Fixture *f, gconstpointer data)
{
  (void) data;
  for (guint i = 0; i < 6; i++)
    {
      const char *const names[] = { "a", "b", "c", "d", "e", "f" };
      add_group (f, SQ_GROUP_ALONE, names[i], 4);
    }
  end (f);
  g_assert_cmpuint (f->out->len, ==, 1);
  SqPoint a, b, c, e;
  guint page;
  g_assert_cmpuint (find (f, "a 1", &page, &a), ==, 1);
  g_assert_cmpuint (find (f, "b 1", &page, &b), ==, 1);
  g_assert_cmpuint (find (f, "c 1", &page, &c), ==, 1);
  g_assert_cmpuint (find (f, "e 1", &page, &e), ==, 1);
  g_assert_cmpfloat (b.y, <, a.y); /* two groups in each of three columns */
  g_assert_cmpfloat (c.x, >, a.x);
  g_assert_cmpfloat (e.x, >, c.x);
  g_assert_cmpfloat_with_epsilon (c.y, a.y, 1e-6);
  g_assert_cmpfloat_with_epsilon (e.y, a.y, 1e-6);
}

/* Nothing is lost on the way over pages; what is longer than a column goes on under its first line. */
static void
test_long (Fixture *f, gconstpointer data)
{
  (void) data;
  add_group (f, SQ_GROUP_ALONE, "short", 5);
  add_group (f, SQ_GROUP_ALONE, "long", 100);
  add_group (f, SQ_GROUP_ALONE, "last", 2);
  end (f);
  g_assert_cmpuint (f->out->len, >, 1);
  guint page, torn;
  SqPoint at;
  for (guint i = 2; i <= 100; i++)
    {
      g_autofree char *text = g_strdup_printf ("long %u", i);
      g_assert_cmpuint (find (f, text, &page, &at), ==, 1);
    }
  torn = find (f, "long 1", &page, &at);
  g_assert_cmpuint (torn, >=, 4);
  g_assert_cmpuint (find (f, "last 2", &page, &at), ==, 1);
  g_assert_cmpuint (page, ==, f->out->len - 1);
}

/* A heading stands over what it heads, in the same column. */
static void
test_heading (Fixture *f, gconstpointer data)
{
  (void) data;
  for (guint i = 0; i < 12; i++)
    {
      g_autofree char *head = g_strdup_printf ("head%u", i), *name = g_strdup_printf ("n%u", i);
      add_group (f, SQ_GROUP_LEADS, head, 1);
      add_group (f, SQ_GROUP_ALONE, name, 3 + i % 5);
    }
  end (f);
  for (guint i = 0; i < 12; i++)
    {
      g_autofree char *head = g_strdup_printf ("head%u 1", i), *name = g_strdup_printf ("n%u 1", i);
      guint page, below;
      SqPoint at, under;
      g_assert_cmpuint (find (f, head, &page, &at), ==, 1);
      g_assert_cmpuint (find (f, name, &below, &under), ==, 1);
      g_assert_cmpuint (page, ==, below);
      g_assert_cmpfloat (under.y, <, at.y);
      g_assert_cmpfloat (fabs (under.x - at.x), <, 10);
    }
}

/* Beside what takes the left of the page they stand right of it, from its top. */
static void
test_beside (Fixture *f, gconstpointer data)
{
  (void) data;
  SqColumn block = sq_pages_block (f->pages, 80, 0);
  sq_columns_begin_beside (f->columns, (SqBox){ { block.left_mm, block.top_mm - 80 },
                                                { block.left_mm + 45, block.top_mm } });
  add_group (f, SQ_GROUP_ALONE, "a", 5);
  add_group (f, SQ_GROUP_ALONE, "b", 5);
  end (f);
  guint page;
  SqPoint a, b;
  g_assert_cmpuint (find (f, "a 1", &page, &a), ==, 1);
  g_assert_cmpuint (find (f, "b 1", &page, &b), ==, 1);
  g_assert_cmpfloat (a.x, >, block.left_mm + 45);
  g_assert_cmpfloat (b.x, >, a.x);
  g_assert_cmpfloat (a.y, <, block.top_mm);
  g_assert_cmpfloat (a.y, >, block.top_mm - 10);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define TEST(name, function)                                                                       \
  g_test_add ("/papers/columns/" name, Fixture, NULL, set_up, function, tear_down)
  TEST ("level", test_level);
  TEST ("long", test_long);
  TEST ("heading", test_heading);
  TEST ("beside", test_beside);
  return g_test_run ();
}
