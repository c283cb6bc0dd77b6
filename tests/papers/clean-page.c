/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/clean-page.h"

#include <string.h>

/* What boxes may overlap by (mm): rounding. */
#define SLACK_MM 0.01
/* What every printer leaves white at the edge. */
#define PRINTER_MM 6.0

static void
text_corners (const SqText *text, SqPoint corners[4])
{
  SqVector along = sq_turned (sq_point (text->width_mm / 2 - SLACK_MM, 0), text->angle_rad);
  SqVector up = sq_turned (sq_point (0, SQ_TEXT_HEIGHT_EM * text->em_mm / 2 - SLACK_MM),
                           text->angle_rad);

  corners[0] = sq_sub (sq_sub (text->at, along), up);
  corners[1] = sq_sub (sq_add (text->at, along), up);
  corners[2] = sq_add (sq_add (text->at, along), up);
  corners[3] = sq_add (sq_sub (text->at, along), up);
}

/* Whether a line square to a side of @a keeps the two apart. */
static gboolean
is_apart (const SqPoint a[4], const SqPoint b[4])
{
  for (guint i = 0; i < 4; i++)
    {
      SqVector normal = sq_right (sq_sub (a[(i + 1) % 4], a[i]));
      double nearest = G_MAXDOUBLE;
      for (guint k = 0; k < 4; k++)
        nearest = fmin (nearest, sq_dot (normal, sq_sub (b[k], a[i])));
      if (nearest >= 0)
        return TRUE;
    }
  return FALSE;
}

static void
assert_on_page (const SqPage *page, SqBox box, double margin_mm, const char *what)
{
  if (box.min.x < margin_mm || box.min.y < margin_mm || box.max.x > page->width_mm - margin_mm
      || box.max.y > page->height_mm - margin_mm)
    g_error ("%s at %g, %g … %g, %g leaves the page", what, box.min.x, box.min.y, box.max.x,
             box.max.y);
}

void
assert_page_is_clean (const SqPage *page, double margin_mm)
{
  guint n = sq_scene_n_items (page->scene);
  g_autoptr (GArray) texts = g_array_new (FALSE, FALSE, sizeof (const SqText *));

  if (n > 0)
    assert_on_page (page, sq_scene_box (page->scene), margin_mm, "something");
  for (guint i = 0; i < n; i++)
    if (sq_scene_item (page->scene, i)->kind == SQ_ITEM_TEXT)
      {
        const SqText *text = sq_scene_text (page->scene, sq_scene_item (page->scene, i)->text);
        g_array_append_val (texts, text);
      }
  for (guint i = 0; i < texts->len; i++)
    for (guint k = 0; k < i; k++)
      {
        const SqText *a = g_array_index (texts, const SqText *, i);
        const SqText *b = g_array_index (texts, const SqText *, k);
        SqPoint at[4], bt[4];
        text_corners (a, at);
        text_corners (b, bt);
        if (!is_apart (at, bt) && !is_apart (bt, at))
          g_error ("“%s” lies on “%s” at %g, %g", a->text, b->text, a->at.x, a->at.y);
      }
}

void
assert_paper_is_clean (const SqPaper *paper)
{
  g_assert_cmpuint (paper->pages->len, >, 0);
  for (guint i = 0; i < paper->pages->len; i++)
    {
      g_autoptr (SqScene) scene = sq_paper_page_scene (paper, i);
      SqPage page = *sq_paper_page (paper, i);
      page.scene = scene;
      assert_page_is_clean (&page, PRINTER_MM);
    }
}

guint
count_text (const SqPage *page, const char *wanted)
{
  guint count = 0;

  for (guint i = 0; i < sq_scene_n_items (page->scene); i++)
    {
      const SqItem *item = sq_scene_item (page->scene, i);
      count += item->kind == SQ_ITEM_TEXT
               && g_str_equal (sq_scene_text (page->scene, item->text)->text, wanted);
    }
  return count;
}

gboolean
has_text (const SqPaper *paper, const char *part)
{
  for (guint p = 0; p < paper->pages->len; p++)
    {
      g_autoptr (SqScene) scene = sq_paper_page_scene (paper, p);
      for (guint i = 0; i < sq_scene_n_items (scene); i++)
        {
          const SqItem *item = sq_scene_item (scene, i);
          if (item->kind == SQ_ITEM_TEXT
              && strstr (sq_scene_text (scene, item->text)->text, part) != NULL)
            return TRUE;
        }
    }
  return FALSE;
}
