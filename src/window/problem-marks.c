/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/problem-marks.h"

#include "drawing/problem-mark.h"
#include "window/figures.h"
#include "words/problems.h"

/* Marks are thin beside what is chosen. */
#define WEIGHT 0.55

/* A mark is hit within this of its middle (pixels). */
#define REACH 12

static gboolean
is_at (const SqProblem *problem, const SqPlace *place)
{
  return problem->place.kind == place->kind && problem->place.item == place->item;
}

static void
add (GArray *marks, const SqProblem *problem)
{
  SqProblemMark mark = { .place = problem->place, .severity = problem->severity };
  for (guint i = 0; i < marks->len; i++)
    {
      SqProblemMark *other = &g_array_index (marks, SqProblemMark, i);
      if (!is_at (problem, &other->place))
        continue;
      other->severity = MAX (other->severity, problem->severity);
      return;
    }
  g_array_append_val (marks, mark);
}

GArray *
sq_problem_marks (const SqCover *cover, guint kinds)
{
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (SqProblemMark));
  for (guint i = 0; i < cover->problems->len; i++)
    if (kinds & (1u << sq_cover_problem (cover, i)->place.kind))
      add (marks, sq_cover_problem (cover, i));
  return marks;
}

static SqScene *
make_mark (SqCanvas *canvas, gconstpointer data)
{
  const SqProblemMark *mark = data;
  return sq_problem_mark_scene (mark->severity,
                                sq_canvas_get_em (canvas) / sq_canvas_get_view (canvas)->scale);
}

void
sq_problem_marks_append (SqCanvas *canvas, GtkSnapshot *snapshot, const GArray *marks, guint layer)
{
  for (guint i = 0; i < marks->len; i++)
    {
      const SqProblemMark *mark = &g_array_index (marks, SqProblemMark, i);
      SqLayer what = {
        .layer = layer + mark->severity, .weight = WEIGHT, .make = make_mark, .data = mark
      };
      gtk_snapshot_save (snapshot);
      gtk_snapshot_translate (snapshot,
                              &GRAPHENE_POINT_INIT ((float) mark->at.x, (float) mark->at.y));
      sq_canvas_append (canvas, snapshot, &what);
      gtk_snapshot_restore (snapshot);
    }
}

const SqProblemMark *
sq_problem_mark_at (SqCanvas *canvas, const GArray *marks, SqPoint at)
{
  SqPoint own = sq_sub (at, sq_canvas_get_view (canvas)->origin);
  for (guint i = 0; i < marks->len; i++)
    if (sq_distance (g_array_index (marks, SqProblemMark, i).at, own) <= REACH)
      return &g_array_index (marks, SqProblemMark, i);
  return NULL;
}

char *
sq_problem_mark_words (const SqProblemMark *mark, SqDocument *document, const SqCover *cover)
{
  SqLengthStyle style = sq_figures_style (sq_document_get_job (document));
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < cover->problems->len; i++)
    {
      const SqProblem *problem = sq_cover_problem (cover, i);
      g_autofree char *sentence = NULL;
      if (!is_at (problem, &mark->place))
        continue;
      sentence = sq_words_problem (problem, cover, &style);
      if (text->len > 0)
        g_string_append_c (text, '\n');
      g_string_append (text, sentence);
    }
  return g_string_free (text, FALSE);
}
