/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern.h"

#include "papers/kinds.h"
#include "papers/pattern-notes.h"
#include "papers/pattern-overview.h"
#include "papers/pattern-page.h"
#include "words/pattern-words.h"

static void
clear_notes (gpointer data)
{
  g_clear_pointer (&((SqPatternNotes *) data)->scene, sq_scene_unref);
}

static SqPattern *
pattern_new (const SqPaperSpec *spec)
{
  SqPattern *pattern = g_new0 (SqPattern, 1);

  pattern->plan = sq_plan_ref (spec->lays->plan);
  pattern->choice = spec->pattern;
  pattern->wrong_side = spec->wrong_side;
  pattern->style = spec->style;
  pattern->style.with_unit = TRUE;
  pattern->date = g_strdup (spec->date);
  pattern->sheets = sq_pattern_sheets_new (spec);
  g_mutex_init (&pattern->mutex);
  pattern->notes = g_array_new (FALSE, TRUE, sizeof (SqPatternNotes));
  g_array_set_clear_func (pattern->notes, clear_notes);
  g_array_set_size (pattern->notes, pattern->sheets->pieces->len);
  return pattern;
}

static void
pattern_free (gpointer data)
{
  SqPattern *pattern = data;

  g_array_unref (pattern->notes);
  g_mutex_clear (&pattern->mutex);
  sq_pattern_sheets_free (pattern->sheets);
  g_free (pattern->date);
  sq_plan_unref (pattern->plan);
  g_free (pattern);
}

static SqScene *
draw (gconstpointer source, guint i)
{
  SqPattern *pattern = (SqPattern *) source;

  return sq_pattern_page_scene (pattern, i - pattern->n_before);
}

/* Several corners of a piece may lie on its first sheet. */
static gboolean
is_listed (const char *lines, const char *line)
{
  g_auto (GStrv) all = g_strsplit (lines, "\n", -1);

  return g_strv_contains ((const char *const *) all, line);
}

/* What begins on sheet @index, a line each; NULL: nothing. */
static char *
bookmark_of (const SqPattern *pattern, guint index)
{
  const SqPatternSheet *sheet = sq_pattern_sheet (pattern->sheets, index);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < sheet->n_parts; i++)
    {
      guint piece = sq_pattern_part (pattern->sheets, sheet->first_part + i)->piece;
      const SqPatternPiece *own = sq_pattern_piece (pattern->sheets, piece);
      g_autofree char *name = sq_words_pattern_name (pattern->plan, own->entry);
      if (own->first == index && !is_listed (text->str, name))
        g_string_append_printf (text, text->len > 0 ? "\n%s" : "%s", name);
    }
  return g_string_free (text, text->len == 0);
}

void
sq_pattern_make (SqPaper *paper, const SqPaperSpec *spec)
{
  SqPattern *pattern = pattern_new (spec);

  sq_pattern_overview (pattern, spec, paper->pages);
  for (guint i = 0; i < pattern->sheets->sheets->len; i++)
    {
      const SqPatternSheet *sheet = sq_pattern_sheet (pattern->sheets, i);
      SqPage page = { sheet->size_mm.x, sheet->size_mm.y, NULL, bookmark_of (pattern, i) };
      g_array_append_val (paper->pages, page);
    }
  paper->draw = draw;
  paper->source = pattern;
  paper->source_free = pattern_free;
}
