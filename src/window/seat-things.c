/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/seat-things.h"

#include "drawing/seat-drawn.h"
#include "window/edit-stripes.h"
#include "window/figures.h"
#include "window/problem-marks.h"
#include "window/seat-canvas-private.h"
#include "window/seat-zip.h"

#include <glib/gi18n.h>

/* Marks stand inside the seat, clear of handles, letters and the word at the front: so far from a
 * corner and an edge (pixels), and at this share of the edge. */
#define FROM_CORNER 36
#define FROM_EDGE 20
#define ALONG_EDGE 0.66

/* What is dragged goes to a telling place within this (pixels); a press that moves less than
 * LEAST_MOVE is a click. */
#define REACH 8
#define LEAST_MOVE 3

static double
px_mm (SqSeatCanvas *canvas)
{
  return 1 / sq_canvas_get_view (SQ_CANVAS (canvas))->scale;
}

/* --- problems ------------------------------------------------------------------------------ */

/* Where the mark of @place stands, seat coordinates; FALSE: nowhere. */
static gboolean
mark_place (SqSeatCanvas *canvas, const SqPlace *place, SqPoint *at)
{
  const SqOutline *outline = canvas->cover->cushion->outline;
  guint ring, i, n;
  const SqCorner *corner = sq_outline_corner (outline, place->item, &ring, &i), *corners;
  g_autoptr (SqPath) path = corner != NULL ? sq_seat_ring (outline, ring) : NULL;
  SqVector along;
  if (path == NULL)
    return FALSE;
  corners = sq_outline_ring (outline, ring, &n);
  if (place->kind == SQ_AT_EDGE)
    {
      if (!sq_seat_edge_point (path, i, ALONG_EDGE, at, &along))
        return FALSE;
      *at = sq_moved (*at, sq_left (along), FROM_EDGE * px_mm (canvas));
      return TRUE;
    }
  SqVector before = sq_unit (sq_sub (corner->at, corners[(i + n - 1) % n].at));
  SqVector after = sq_unit (sq_sub (corners[(i + 1) % n].at, corner->at));
  *at = sq_moved (corner->at, sq_unit (sq_add (sq_left (before), sq_left (after))),
                  FROM_CORNER * px_mm (canvas));
  return TRUE;
}

/* Marks of problems at corners and edges. New array of SqProblemMark. */
static GArray *
marks_of (SqSeatCanvas *canvas)
{
  GArray *marks = sq_problem_marks (canvas->cover, 1u << SQ_AT_CORNER | 1u << SQ_AT_EDGE);
  double scale = sq_canvas_get_view (SQ_CANVAS (canvas))->scale;
  for (guint i = marks->len; i-- > 0;)
    {
      SqProblemMark *mark = &g_array_index (marks, SqProblemMark, i);
      SqPoint at;
      if (mark_place (canvas, &mark->place, &at))
        mark->at = sq_point (round (at.x * scale), round (-at.y * scale));
      else
        g_array_remove_index (marks, i);
    }
  return marks;
}

/* The mark there; FALSE: none. */
static gboolean
mark_at (SqSeatCanvas *canvas, SqPoint at, SqProblemMark *mark)
{
  g_autoptr (GArray) marks = canvas->cover != NULL ? marks_of (canvas) : NULL;
  const SqProblemMark *found = marks != NULL ? sq_problem_mark_at (SQ_CANVAS (canvas), marks, at)
                                             : NULL;
  if (found != NULL)
    *mark = *found;
  return found != NULL;
}

gboolean
sq_seat_things_query_tooltip (GtkWidget *widget, int x, int y, gboolean by_keyboard,
                              GtkTooltip *tooltip)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (widget);
  SqProblemMark mark;
  g_autofree char *words = NULL;
  if (by_keyboard || sq_canvas_is_dragging (SQ_CANVAS (canvas))
      || !mark_at (canvas, sq_point (x, y), &mark))
    return FALSE;
  words = sq_problem_mark_words (&mark, canvas->document, canvas->cover);
  gtk_tooltip_set_text (tooltip, words);
  gtk_tooltip_set_tip_area (tooltip, &(GdkRectangle){ x - REACH, y - REACH, 2 * REACH, 2 * REACH });
  return TRUE;
}

/* --- drawing ------------------------------------------------------------------------------- */

static gpointer
ref_cover (gconstpointer cover)
{
  return sq_cover_ref (cover);
}

static void
unref_cover (gpointer cover)
{
  sq_cover_unref (cover);
}

static SqScene *
make_zip (SqCanvas *self, gconstpointer data)
{
  return sq_seat_zip_scene (data, px_mm (SQ_SEAT_CANVAS (self)));
}

void
sq_seat_things_append (SqSeatCanvas *canvas, GtkSnapshot *snapshot, guint layer)
{
  g_autoptr (GArray) marks = marks_of (canvas);
  SqLayer zip = { .subject = canvas->cover,
                  .ref = ref_cover,
                  .unref = unref_cover,
                  .layer = layer,
                  .make = make_zip,
                  .data = canvas->cover };
  if (canvas->cover->zip.place != SQ_ZIP_NONE)
    sq_canvas_append (SQ_CANVAS (canvas), snapshot, &zip);
  sq_problem_marks_append (SQ_CANVAS (canvas), snapshot, marks, layer + 1);
}

/* --- hands --------------------------------------------------------------------------------- */

/* What is at @at; stripes only with a modifier, as a plain press there chooses nothing. */
static guint
thing_at (SqSeatCanvas *canvas, SqPoint at)
{
  SqPoint mm = sq_view_to_mm (sq_canvas_get_view (SQ_CANVAS (canvas)), at);
  GdkModifierType state = sq_canvas_get_modifiers (SQ_CANVAS (canvas));
  guint kind;
  if (canvas->cover == NULL)
    return SQ_THING_NONE;
  kind = sq_seat_zip_at (canvas->cover, mm, px_mm (canvas));
  if (kind == SQ_THING_NONE && (state & (GDK_ALT_MASK | GDK_SHIFT_MASK))
      && sq_stripes_cloth (sq_document_get_job (canvas->document), canvas->cover) != NULL
      && sq_path_winding (canvas->cover->finished->rings[0].path,
                          sq_point (canvas->cover->mirrored ? -mm.x : mm.x, mm.y))
             != 0)
    kind = SQ_THING_STRIPES;
  return kind;
}

static void
let_go (SqSeatThings *things)
{
  g_clear_pointer (&things->base, sq_job_unref);
  g_clear_pointer (&things->cover, sq_cover_unref);
  things->kind = SQ_THING_NONE;
  things->is_moving = FALSE;
}

gboolean
sq_seat_things_press (SqSeatCanvas *canvas, SqPoint at, gboolean *is_held)
{
  SqSeatThings *things = &canvas->things;
  SqProblemMark mark;
  *is_held = FALSE;
  let_go (things);
  if (mark_at (canvas, at, &mark))
    {
      sq_selection_show_problem (canvas->selection, &mark.place);
      return TRUE;
    }
  things->kind = thing_at (canvas, at);
  if (things->kind == SQ_THING_NONE)
    return FALSE;
  things->base = sq_job_ref (sq_document_get_job (canvas->document));
  things->cover = sq_cover_ref (canvas->cover);
  things->pressed = at;
  *is_held = TRUE;
  return TRUE;
}

gboolean
sq_seat_things_drag (SqSeatCanvas *canvas, SqPoint at)
{
  SqSeatThings *things = &canvas->things;
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  SqPoint from = sq_view_to_mm (view, things->pressed), to = sq_view_to_mm (view, at);
  double reach_mm = REACH * px_mm (canvas);
  g_autoptr (SqJob) job = NULL;
  if (things->base == NULL)
    return FALSE;
  if (!things->is_moving && sq_distance (at, things->pressed) < LEAST_MOVE)
    return TRUE;
  things->is_moving = TRUE;
  if (things->kind == SQ_THING_STRIPES)
    {
      SqVector by = sq_sub (to, from);
      if (things->cover->mirrored)
        by.x = -by.x;
      job = sq_stripes_moved (things->base, things->cover, by, reach_mm);
    }
  else
    job = sq_seat_zip_moved (things, from, to, reach_mm);
  if (job != NULL)
    sq_document_try (canvas->document, job);
  return TRUE;
}

gboolean
sq_seat_things_release (SqSeatCanvas *canvas)
{
  SqSeatThings *things = &canvas->things;
  if (things->base == NULL)
    return FALSE;
  if (things->is_moving)
    sq_document_keep (canvas->document, things->kind == SQ_THING_STRIPES ? sq_stripes_moved_words ()
                                                                         : _ ("Move the zip"));
  let_go (things);
  return TRUE;
}

gboolean
sq_seat_things_put_back (SqSeatCanvas *canvas)
{
  if (canvas->things.base == NULL)
    return FALSE;
  sq_document_drop (canvas->document);
  let_go (&canvas->things);
  return TRUE;
}

const char *
sq_seat_things_cursor (SqSeatCanvas *canvas, SqPoint at)
{
  SqProblemMark mark;
  if (canvas->cover == NULL)
    return NULL;
  if (mark_at (canvas, at, &mark))
    return "pointer";
  return thing_at (canvas, at) != SQ_THING_NONE ? "grab" : NULL;
}
