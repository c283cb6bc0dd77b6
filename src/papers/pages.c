/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pages.h"

#include "words/paper-words.h"

/* What a printer can't reach, and a thumb needs (mm). */
#define MARGIN_MM 14.0
#define FOOT_MM 8.0
/* Of the width: the foot's parts. */
#define FOOT_SIDE 0.36
#define FOOT_MIDDLE 0.28

const SqType sq_type_text = { 3.7, FALSE, SQ_TONE_INK };
const SqType sq_type_small = { 3.1, FALSE, SQ_TONE_INK };
const SqType sq_type_heading = { 4.6, TRUE, SQ_TONE_INK };
const SqType sq_type_title = { 6.4, TRUE, SQ_TONE_INK };

struct _SqPages
{
  const SqPaperSpec *spec;
  SqVector size_mm;
  char *title, *running;
  GPtrArray *scenes;    /* of SqSceneBuilder, one a page */
  GPtrArray *bookmarks; /* of texts, one a page; NULL: none */
  double top_mm;        /* what is free of the page now begins here */
  gboolean is_empty;    /* nothing stands on it yet, but for its head */
  guint n_following;    /* pages after these */
};

SqBox
sq_pages_area (const SqPages *pages)
{
  return (SqBox){ { MARGIN_MM, MARGIN_MM + FOOT_MM },
                  { pages->size_mm.x - MARGIN_MM, pages->size_mm.y - MARGIN_MM } };
}

double
sq_pages_room_mm (const SqPages *pages)
{
  return pages->top_mm - sq_pages_area (pages).min.y;
}

SqSceneBuilder *
sq_pages_scene (SqPages *pages)
{
  return g_ptr_array_index (pages->scenes, pages->scenes->len - 1);
}

static void
draw_rule (SqPages *pages, double y_mm)
{
  SqBox area = sq_pages_area (pages);

  sq_scene_begin_stroke (sq_pages_scene (pages), SQ_PEN_RULE);
  sq_scene_add_line (sq_pages_scene (pages), sq_point (area.min.x, y_mm),
                     sq_point (area.max.x, y_mm));
}

/* The column across the area from the top of what is free; @height_mm of it are taken. */
static SqColumn
take (SqPages *pages, double height_mm)
{
  SqBox area = sq_pages_area (pages);
  SqColumn column = { area.min.x, pages->top_mm, area.max.x - area.min.x };

  pages->top_mm -= height_mm;
  return column;
}

/* What the later pages begin with. */
static void
set_head (SqPages *pages)
{
  double height_mm = sq_type_height_mm (&sq_type_small, 1);
  SqColumn column = take (pages, height_mm + 1);

  if (pages->running == NULL)
    sq_set_line (sq_pages_scene (pages), &column, SQ_ALIGN_START, &sq_type_small, pages->title);
  else
    {
      g_autofree char *continued = sq_words_continued (pages->running);
      SqColumn left = { column.left_mm, column.top_mm, column.width_mm / 2 - 2 };
      SqColumn right = { column.left_mm + column.width_mm / 2 + 2, column.top_mm, left.width_mm };
      sq_set_line (sq_pages_scene (pages), &left, SQ_ALIGN_START, &sq_type_small, pages->title);
      sq_set_line (sq_pages_scene (pages), &right, SQ_ALIGN_END, &sq_type_small, continued);
    }
  draw_rule (pages, pages->top_mm);
  take (pages, 3);
}

static void
begin_page (SqPages *pages)
{
  g_ptr_array_add (pages->scenes, sq_scene_builder_new ());
  g_ptr_array_add (pages->bookmarks, NULL);
  pages->top_mm = sq_pages_area (pages).max.y;
  if (pages->scenes->len > 1)
    set_head (pages);
  pages->is_empty = TRUE;
}

SqPages *
sq_pages_new (const SqPaperSpec *spec, gboolean is_lying, const char *title)
{
  SqVector size = sq_sheet_size_mm (spec->sheet);

  return sq_pages_new_sized (spec, is_lying ? sq_point (size.y, size.x) : size, title);
}

SqPages *
sq_pages_new_sized (const SqPaperSpec *spec, SqVector size_mm, const char *title)
{
  SqPages *pages = g_new0 (SqPages, 1);

  pages->spec = spec;
  pages->size_mm = size_mm;
  pages->title = g_strdup (title);
  pages->scenes = g_ptr_array_new ();
  pages->bookmarks = g_ptr_array_new ();
  begin_page (pages);
  return pages;
}

void
sq_pages_bookmark (SqPages *pages, const char *text)
{
  gpointer *bookmark = &g_ptr_array_index (pages->bookmarks, pages->bookmarks->len - 1);
  char *before = *bookmark;

  *bookmark = before != NULL ? g_strjoin ("\n", before, text, NULL) : g_strdup (text);
  g_free (before);
}

void
sq_pages_set_following (SqPages *pages, guint n_pages)
{
  pages->n_following = n_pages;
}

static void
set_foot (const SqPages *pages, SqSceneBuilder *scene, guint page)
{
  SqBox area = sq_pages_area (pages);
  double width_mm = area.max.x - area.min.x, top_mm = area.min.y - 3;
  g_autofree char *state = sq_words_paper_state (pages->spec->lays->plan->job, pages->spec->date);
  g_autofree char *number = sq_words_page (page, pages->scenes->len + pages->n_following);
  SqColumn left = { area.min.x, top_mm, FOOT_SIDE * width_mm - 2 };
  SqColumn middle = { area.min.x + FOOT_SIDE * width_mm, top_mm, FOOT_MIDDLE * width_mm };
  SqColumn right = { area.max.x - FOOT_SIDE * width_mm + 2, top_mm, FOOT_SIDE * width_mm - 2 };

  sq_scene_begin_stroke (scene, SQ_PEN_RULE);
  sq_scene_add_line (scene, sq_point (area.min.x, top_mm + 1), sq_point (area.max.x, top_mm + 1));
  sq_set_line (scene, &left, SQ_ALIGN_START, &sq_type_small, pages->title);
  sq_set_line (scene, &middle, SQ_ALIGN_MIDDLE, &sq_type_small, state);
  sq_set_line (scene, &right, SQ_ALIGN_END, &sq_type_small, number);
}

void
sq_pages_end (SqPages *pages, GArray *out)
{
  for (guint i = 0; i < pages->scenes->len; i++)
    {
      SqSceneBuilder *scene = g_ptr_array_index (pages->scenes, i);
      set_foot (pages, scene, i + 1);
      SqPage page = { pages->size_mm.x, pages->size_mm.y, sq_scene_builder_end (scene),
                      g_ptr_array_index (pages->bookmarks, i) };
      g_array_append_val (out, page);
    }
  g_ptr_array_unref (pages->scenes);
  g_ptr_array_unref (pages->bookmarks);
  g_free (pages->title);
  g_free (pages->running);
  g_free (pages);
}

void
sq_pages_break (SqPages *pages)
{
  if (!pages->is_empty)
    begin_page (pages);
}

SqColumn
sq_pages_block (SqPages *pages, double height_mm, double with_mm)
{
  if (height_mm + with_mm > sq_pages_room_mm (pages))
    sq_pages_break (pages);
  pages->is_empty = FALSE;
  return take (pages, height_mm);
}

void
sq_pages_gap (SqPages *pages, double height_mm)
{
  if (!pages->is_empty)
    take (pages, fmin (height_mm, fmax (sq_pages_room_mm (pages), 0)));
}

void
sq_pages_set_running (SqPages *pages, const char *heading)
{
  g_free (pages->running);
  pages->running = g_strdup (heading);
}

void
sq_pages_heading (SqPages *pages, const char *text, double with_mm)
{
  SqColumn column = sq_pages_block (pages, sq_type_height_mm (&sq_type_heading, 1) + 1, with_mm);

  sq_set_line (sq_pages_scene (pages), &column, SQ_ALIGN_START, &sq_type_heading, text);
}

void
sq_pages_paragraph (SqPages *pages, const SqType *type, const char *text)
{
  SqBox area = sq_pages_area (pages);
  g_autoptr (GPtrArray) lines = sq_wrapped (text, area.max.x - area.min.x, type);

  for (guint i = 0; i < lines->len; i++)
    {
      SqColumn column = sq_pages_block (pages, sq_type_height_mm (type, 1), 0);
      sq_set_line (sq_pages_scene (pages), &column, SQ_ALIGN_START, type,
                   g_ptr_array_index (lines, i));
    }
}

void
sq_pages_rule (SqPages *pages)
{
  SqColumn column = sq_pages_block (pages, 2, 0);

  draw_rule (pages, column.top_mm - 1);
}
