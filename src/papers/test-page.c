/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The page that is printed before any pattern: squares, and rulers up to the margins. */
#include "base/units.h"
#include "papers/kinds.h"
#include "papers/pattern-sheets.h"
#include "papers/pattern-squares.h"
#include "words/paper-words.h"
#include "words/pattern-words.h"

/* What a ruler takes. */
#define RULER_MM 12.0
#define FIGURE_EM_MM 2.8
/* At its end, for its unit, whose middle is nearer to it. */
#define UNIT_MM 9.0

/* Between what stands on the page. */
#define GAP_MM 6.0

/* Of a ruler: where it begins, along which way, what its marks stand on. */
typedef struct
{
  SqSceneBuilder *to;
  SqPoint from;
  SqVector along, in;
  double length_mm;
} Ruler;

static void
add_text (const Ruler *ruler, double at_mm, double in_mm, const char *text)
{
  sq_scene_add_text (
      ruler->to,
      &(SqText){ .at = sq_moved (sq_moved (ruler->from, ruler->along, at_mm), ruler->in, in_mm),
                 .em_mm = FIGURE_EM_MM,
                 .width_mm = sq_text_width_em (text, FALSE) * FIGURE_EM_MM,
                 .text = text });
}

/* But where the unit stands. */
static void
add_figure (const Ruler *ruler, double at_mm, double in_mm, guint value)
{
  g_autofree char *text = g_strdup_printf ("%u", value);

  if (at_mm < ruler->length_mm - UNIT_MM)
    add_text (ruler, at_mm, in_mm, text);
}

/* Marks @step_mm apart; the i-th is as long as @marks of the largest of @every that divides i. */
static void
add_marks (const Ruler *ruler, double step_mm, const guint *every, const double *marks_mm, guint n)
{
  sq_scene_begin_stroke (ruler->to, SQ_PEN_RULE);
  sq_scene_add_line (ruler->to, ruler->from,
                     sq_moved (ruler->from, ruler->along, ruler->length_mm));
  for (guint i = 0; i * step_mm <= ruler->length_mm + 1e-9; i++)
    {
      guint kind = n - 1;
      while (i % every[kind] != 0)
        kind--;
      SqPoint foot = sq_moved (ruler->from, ruler->along, i * step_mm);
      sq_scene_add_line (ruler->to, foot, sq_moved (foot, ruler->in, marks_mm[kind]));
    }
}

static void
add_mm_ruler (const Ruler *ruler)
{
  static const guint every[] = { 1, 5, 10 };
  static const double marks_mm[] = { 3, 4.5, 6 };

  add_marks (ruler, 1, every, marks_mm, G_N_ELEMENTS (every));
  for (guint i = 1; i * 10.0 <= ruler->length_mm; i++)
    add_figure (ruler, i * 10.0, 8.5, i * 10);
  add_text (ruler, ruler->length_mm - 3, 8.5, sq_words_ruler_mm ());
}

static void
add_inch_ruler (const Ruler *ruler)
{
  static const guint every[] = { 1, 2, 4, 8, 16 };
  static const double marks_mm[] = { 1.4, 2, 2.6, 3.3, 4.2 };

  add_marks (ruler, SQ_MM_PER_INCH / 16, every, marks_mm, G_N_ELEMENTS (every));
  for (guint i = 1; i * SQ_MM_PER_INCH <= ruler->length_mm; i++)
    add_figure (ruler, i * SQ_MM_PER_INCH, 6.5, i);
  add_text (ruler, ruler->length_mm - 3, 6.5, sq_words_ruler_inch ());
}

/* Below each other if the page is upright, which it is as long as it has room. */
static void
add_squares (SqSceneBuilder *scene, SqBox box)
{
  const double mm = 100, inch_mm = 4 * SQ_MM_PER_INCH;
  g_autoptr (GPtrArray) how = g_ptr_array_new (), what_if = g_ptr_array_new ();
  SqPoint first = { box.min.x, box.max.y - mm };
  gboolean is_wide = box.max.x - box.min.x >= mm + inch_mm + GAP_MM;
  SqPoint second = is_wide ? sq_point (box.min.x + mm + GAP_MM, box.max.y - inch_mm)
                           : sq_point (box.min.x, first.y - GAP_MM - inch_mm);

  g_ptr_array_add (how, (gpointer) sq_words_check_how ());
  g_ptr_array_add (what_if, (gpointer) sq_words_test_page_if ());
  sq_set_square (scene, first, mm, sq_words_square_mm (), how);
  sq_set_square (scene, second, inch_mm, sq_words_square_inch (), what_if);
}

/* Height a roll's page takes: two squares, the ruler, a heading. */
static double
roll_height_mm (double margin_mm)
{
  return 2 * margin_mm + 2 * 4 * SQ_MM_PER_INCH + 2 * GAP_MM + 2 * RULER_MM;
}

SqPaper *
sq_test_page_new (const SqPaperSpec *spec)
{
  double margin_mm = spec->pattern.margin_mm;
  SqVector size = sq_pattern_paper_mm (&spec->pattern, FALSE);
  SqSceneBuilder *scene = sq_scene_builder_new ();

  if (spec->pattern.roll_mm > 0)
    size.y = roll_height_mm (margin_mm);
  SqPoint low = { margin_mm, margin_mm };
  SqVector room = sq_sub (size, sq_point (2 * margin_mm, 2 * margin_mm));
  const Ruler mm = { scene, low, { 1, 0 }, { 0, 1 }, room.x };
  const Ruler inch = { scene, low, { 0, 1 }, { 1, 0 }, room.y };
  add_mm_ruler (&mm);
  add_inch_ruler (&inch);

  /* the narrowest paper has no more beside a square than the ruler's marks and figures */
  double aside_mm = fmin (RULER_MM, room.x - 4 * SQ_MM_PER_INCH);
  SqBox box = { sq_add (low, sq_point (aside_mm, RULER_MM)), sq_add (low, room) };
  SqColumn column = { box.min.x, box.max.y, box.max.x - box.min.x };
  sq_set_line (scene, &column, SQ_ALIGN_START, &sq_type_title, sq_words_test_page ());
  box.max.y -= sq_type_height_mm (&sq_type_title, 1) + 2;
  add_squares (scene, box);

  GArray *pages = g_array_new (FALSE, FALSE, sizeof (SqPage));
  SqPage page = { size.x, size.y, sq_scene_builder_end (scene), NULL };
  g_array_append_val (pages, page);
  return sq_paper_new_of_pages (SQ_PAPER_PATTERN, pages);
}
