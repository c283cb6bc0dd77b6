/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pointing at pieces, their seams, notches and stripes: by pointer, finger and keyboard. */
#include "window/pieces-canvas-private.h"

#include "drawing/seam-drawn.h"
#include "window/edit-stripes.h"
#include "window/figures.h"
#include "window/look.h"
#include "words/seam-words.h"

/* A seam is hit within this of its sew line, a notch of its ticks (pixels); on narrow strips a seam
 * leaves the middle third to the piece. */
#define SEAM_REACH 8
#define NOTCH_REACH 7

/* Stripes go to a telling place within this; a press that moves less than LEAST_MOVE is a click
 * (pixels). */
#define STRIPES_REACH 5
#define LEAST_MOVE 3

/* --- what is there ------------------------------------------------------------------------- */

/* The view in which piece @i stands. */
static SqView
view_of (SqPiecesCanvas *canvas, guint i)
{
  SqView view = *sq_canvas_get_view (SQ_CANVAS (canvas));
  view.origin = sq_add (view.origin, sq_pieces_stand (canvas, i));
  return view;
}

/* Index of the piece there, −1: none. */
static int
piece_at (SqPiecesCanvas *canvas, SqPoint at)
{
  if (canvas->arrangement == NULL)
    return -1;
  for (guint i = canvas->cover->pieces->len; i-- > 0;)
    {
      SqView view = view_of (canvas, i);
      const SqPath *cut = sq_piece_cut (sq_cover_piece (canvas->cover, i), 0);
      if (sq_path_winding (cut, sq_view_to_mm (&view, at)) != 0)
        return (int) i;
    }
  return -1;
}

static gint
seam_at (SqPiecesCanvas *canvas, SqPoint at)
{
  double best = INFINITY;
  gint found = -1;
  for (guint i = 0; canvas->arrangement != NULL && i < canvas->cover->pieces->len; i++)
    {
      SqView view = view_of (canvas, i);
      SqBox box = sq_path_box (sq_piece_sew (sq_cover_piece (canvas->cover, i), 0));
      double narrow_mm = fmin (box.max.x - box.min.x, box.max.y - box.min.y), distance_mm;
      double reach_mm = fmin (SEAM_REACH / view.scale, fmin (narrow_mm / 3, best));
      gint seam = sq_seam_near (canvas->cover, i, sq_view_to_mm (&view, at), reach_mm,
                                &distance_mm);
      if (seam < 0)
        continue;
      found = seam;
      best = distance_mm;
    }
  return found;
}

gint
sq_pieces_chosen_seam (SqPiecesCanvas *canvas)
{
  const SqPlace *place = canvas->selection != NULL ? sq_selection_place (canvas->selection) : NULL;
  if (place == NULL || canvas->cover == NULL || place->kind != SQ_AT_SEAM
      || place->item >= canvas->cover->seams->len)
    return -1;
  return (gint) place->item;
}

/* Pixels of the height of @side's box that lie between @top and @bottom. */
static double
hidden (SqPiecesCanvas *canvas, const SqSide *side, double top, double bottom)
{
  g_autoptr (SqPath) path = NULL;
  SqView view;
  SqBox box;
  if (side->n_runs == 0)
    return 0;
  view = view_of (canvas, side->piece);
  path = sq_side_path (canvas->cover, side);
  box = sq_path_box (path);
  double upper = sq_view_to_device (&view, box.max).y, lower = sq_view_to_device (&view, box.min).y;
  /* A level run counts too. */
  return fmax (0, fmin (lower + 1, bottom) - fmax (upper, top));
}

gboolean
sq_pieces_canvas_hides_less_above (SqPiecesCanvas *canvas, int height)
{
  gint seam = sq_pieces_chosen_seam (canvas);
  double all = gtk_widget_get_height (GTK_WIDGET (canvas)), above = 0, below = 0;
  if (seam < 0 || canvas->arrangement == NULL)
    return FALSE;
  const SqSide *sides[] = { &sq_cover_seam (canvas->cover, (guint) seam)->a,
                            &sq_cover_seam (canvas->cover, (guint) seam)->b };
  for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      above += hidden (canvas, sides[i], 0, height + 2 * SEAM_REACH);
      below += hidden (canvas, sides[i], all - height - 2 * SEAM_REACH, all);
    }
  return above < below;
}

/* --- problems ------------------------------------------------------------------------------ */

/* At the upper right of a piece; in the middle of a seam's first side. */
static SqPoint
mark_place (SqPiecesCanvas *canvas, const SqPlace *place)
{
  double scale = sq_canvas_get_view (SQ_CANVAS (canvas))->scale;
  guint piece = place->item;
  SqPoint mm;
  if (place->kind == SQ_AT_SEAM)
    {
      const SqSide *side = &sq_cover_seam (canvas->cover, place->item)->a;
      g_autoptr (SqPath) path = sq_side_path (canvas->cover, side);
      mm = sq_path_point_at (path, sq_path_length_mm (path) / 2, NULL);
      piece = side->piece;
    }
  else
    mm = sq_path_box (sq_piece_cut (sq_cover_piece (canvas->cover, piece), 0)).max;
  return sq_add (sq_pieces_stand (canvas, piece),
                 sq_point (round (mm.x * scale), round (-mm.y * scale)));
}

GArray *
sq_pieces_marks (SqPiecesCanvas *canvas)
{
  GArray *marks = sq_problem_marks (canvas->cover, 1u << SQ_AT_PIECE | 1u << SQ_AT_SEAM);
  for (guint i = 0; i < marks->len; i++)
    {
      SqProblemMark *mark = &g_array_index (marks, SqProblemMark, i);
      mark->at = mark_place (canvas, &mark->place);
    }
  return marks;
}

/* The sentences of the mark there, NULL: none. *@place (may be NULL) is its place. */
static char *
problem_at (SqPiecesCanvas *canvas, SqPoint at, SqPlace *place)
{
  g_autoptr (GArray) marks = canvas->arrangement != NULL ? sq_pieces_marks (canvas) : NULL;
  const SqProblemMark *mark = marks != NULL ? sq_problem_mark_at (SQ_CANVAS (canvas), marks, at)
                                            : NULL;
  if (mark != NULL && place != NULL)
    *place = mark->place;
  return mark != NULL ? sq_problem_mark_words (mark, canvas->document, canvas->cover) : NULL;
}

/* --- notches ------------------------------------------------------------------------------- */

/* The match notch or clip of piece @i there, in words; NULL: none. */
static char *
notch_at (SqPiecesCanvas *canvas, guint i, SqPoint at, const SqLengthStyle *style)
{
  const SqPiece *piece = sq_cover_piece (canvas->cover, i);
  SqView view = view_of (canvas, i);
  const SqMark *found = NULL;
  double best = NOTCH_REACH;
  for (guint k = 0; k < piece->marks->len; k++)
    {
      const SqMark *mark = &g_array_index (piece->marks, SqMark, k);
      SqSegment tick = { mark->at, mark->at, 0 };
      double t, distance;
      if (mark->line != NULL)
        continue;
      tick.to = sq_moved (mark->at, sq_turned (sq_point (1, 0), mark->angle_rad),
                          3 * mark->depth_mm);
      distance = sq_segment_nearest_mm (&tick, sq_view_to_mm (&view, at), &t) * view.scale;
      if (distance >= best)
        continue;
      best = distance;
      found = mark;
    }
  return found != NULL ? sq_words_notch (canvas->cover, i, found, style) : NULL;
}

/* What is cut out of plate @i there, in words; NULL: nothing. A notch is hit in the gap between the
 * skirts, as far out as it is deep. */
static char *
corner_notch_at (SqPiecesCanvas *canvas, guint i, SqPoint at, const SqLengthStyle *style)
{
  const SqPiece *piece = sq_cover_piece (canvas->cover, i);
  SqView view = view_of (canvas, i);
  SqPoint mm = sq_view_to_mm (&view, at);
  gboolean is_outside = sq_path_winding (sq_piece_cut (piece, 0), mm) == 0;
  for (guint k = 0; k < piece->corner_notches->len && canvas->cover->finished != NULL; k++)
    {
      const SqCornerNotch *notch = &g_array_index (piece->corner_notches, SqCornerNotch, k);
      const SqFinishedRing *ring = &canvas->cover->finished->rings[0];
      for (guint e = 0; e < ring->n_edges; e++)
        {
          SqPoint corner = sq_path_point_at (ring->path, ring->edges[e].start_mm, NULL);
          double far_mm = notch->dart ? SEAM_REACH / view.scale
                                      : notch->apex_mm + notch->leg_mm * G_SQRT2;
          if (ring->edges[e].corner == notch->corner && (is_outside || notch->dart)
              && sq_distance (corner, mm) <= far_mm)
            return sq_words_corner_notch (canvas->cover, notch, style);
        }
    }
  return NULL;
}

static char *
notch_words_at (SqPiecesCanvas *canvas, SqPoint at)
{
  SqLengthStyle style = sq_figures_style (sq_document_get_job (canvas->document));
  char *words = NULL;
  style.set = FALSE;
  for (guint i = 0; words == NULL && i < canvas->cover->pieces->len; i++)
    words = notch_at (canvas, i, at, &style);
  for (guint i = 0; words == NULL && i < canvas->cover->pieces->len; i++)
    words = corner_notch_at (canvas, i, at, &style);
  return words;
}

gboolean
sq_pieces_query_tooltip (GtkWidget *widget, int x, int y, gboolean by_keyboard, GtkTooltip *tooltip)
{
  SqPiecesCanvas *canvas = SQ_PIECES_CANVAS (widget);
  SqPoint at = sq_point (x, y);
  g_autofree char *words = NULL;
  if (by_keyboard || canvas->arrangement == NULL || sq_canvas_is_dragging (SQ_CANVAS (canvas)))
    return FALSE;
  words = problem_at (canvas, at, NULL);
  if (words == NULL)
    words = notch_words_at (canvas, at);
  if (words == NULL)
    return FALSE;
  gtk_tooltip_set_text (tooltip, words);
  gtk_tooltip_set_tip_area (tooltip, &(GdkRectangle){ x - NOTCH_REACH, y - NOTCH_REACH,
                                                      2 * NOTCH_REACH, 2 * NOTCH_REACH });
  return TRUE;
}

/* --- pointer ------------------------------------------------------------------------------- */

static void
choose (SqPiecesCanvas *canvas, guint kind, gint item)
{
  if (item >= 0)
    sq_selection_choose_part (canvas->selection, kind, (guint32) item);
  else
    sq_selection_choose_part (canvas->selection, SQ_AT_CUSHION, 0);
}

gint
sq_pieces_choose_at (SqPiecesCanvas *canvas, SqPoint at)
{
  gint seam = seam_at (canvas, at), piece = piece_at (canvas, at);
  if (seam >= 0)
    choose (canvas, SQ_AT_SEAM, seam);
  else
    choose (canvas, SQ_AT_PIECE, piece);
  return seam >= 0 ? seam : piece;
}

/* --- stripes ------------------------------------------------------------------------------- */

/* Whether the stripes of piece @i are where those of the face say. */
static gboolean
has_stripes (SqPiecesCanvas *canvas, guint i)
{
  const SqPiece *piece = sq_cover_piece (canvas->cover, i);
  return (piece->role == SQ_ROLE_FACE || piece->phase.across)
         && piece->cloth == sq_figures_face (canvas->cover)->cloth
         && sq_stripes_cloth (sq_document_get_job (canvas->document), canvas->cover) != NULL;
}

static void
let_go (SqPiecesCanvas *canvas)
{
  g_clear_pointer (&canvas->base, sq_job_unref);
  g_clear_pointer (&canvas->held_cover, sq_cover_unref);
  canvas->is_moving = FALSE;
}

gboolean
sq_pieces_press (SqCanvas *self, SqPoint at)
{
  SqPiecesCanvas *canvas = SQ_PIECES_CANVAS (self);
  SqPlace place;
  g_autofree char *problem = NULL;
  gint piece;
  if (canvas->document == NULL)
    return FALSE;
  let_go (canvas);
  problem = problem_at (canvas, at, &place);
  if (problem != NULL)
    sq_selection_show_problem (canvas->selection, &place);
  else
    sq_pieces_choose_at (canvas, at);
  piece = piece_at (canvas, at);
  if (problem != NULL || piece < 0 || sq_pieces_chosen_seam (canvas) >= 0
      || !has_stripes (canvas, (guint) piece))
    return FALSE;
  canvas->base = sq_job_ref (sq_document_get_job (canvas->document));
  canvas->held_cover = sq_cover_ref (canvas->cover);
  canvas->held = (guint) piece;
  canvas->pressed = at;
  return TRUE;
}

/* Along a boxing means along the front. */
static SqVector
on_face (SqPiecesCanvas *canvas, SqVector by)
{
  const SqPiece *piece = sq_cover_piece (canvas->held_cover, canvas->held);
  if (piece->role == SQ_ROLE_BOXING)
    return sq_scale (canvas->held_cover->finished->front_dir, by.x);
  return by;
}

void
sq_pieces_drag (SqCanvas *self, SqPoint at)
{
  SqPiecesCanvas *canvas = SQ_PIECES_CANVAS (self);
  double scale = sq_canvas_get_view (self)->scale;
  SqVector pixels = sq_sub (at, canvas->pressed);
  g_autoptr (SqJob) job = NULL;
  if (canvas->base == NULL || (!canvas->is_moving && sq_norm (pixels) < LEAST_MOVE))
    return;
  canvas->is_moving = TRUE;
  job = sq_stripes_moved (canvas->base, canvas->held_cover,
                          on_face (canvas, sq_point (pixels.x / scale, -pixels.y / scale)),
                          STRIPES_REACH / scale);
  if (job != NULL)
    sq_document_try (canvas->document, job);
}

void
sq_pieces_release (SqCanvas *self)
{
  SqPiecesCanvas *canvas = SQ_PIECES_CANVAS (self);
  if (canvas->base != NULL && canvas->is_moving)
    sq_document_keep (canvas->document, sq_stripes_moved_words ());
  let_go (canvas);
}

static void
on_second_button (GtkGestureClick *gesture, int n, double x, double y, SqPiecesCanvas *canvas)
{
  SqPoint at = { x, y };
  (void) gesture, (void) n;
  if (canvas->cover == NULL || sq_canvas_is_dragging (SQ_CANVAS (canvas)))
    return;
  gtk_widget_grab_focus (GTK_WIDGET (canvas));
  sq_pieces_choose_at (canvas, at);
  sq_pieces_open_menu (canvas, &at);
}

void
sq_pieces_add_hands (SqPiecesCanvas *canvas)
{
  GtkGesture *click = gtk_gesture_click_new ();
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect (click, "pressed", G_CALLBACK (on_second_button), canvas);
  gtk_widget_add_controller (GTK_WIDGET (canvas), GTK_EVENT_CONTROLLER (click));
}

void
sq_pieces_hover (SqCanvas *self, const SqPoint *at)
{
  SqPiecesCanvas *canvas = SQ_PIECES_CANVAS (self);
  gint seam = at != NULL ? seam_at (canvas, *at) : -1;
  gint piece = at != NULL && seam < 0 ? piece_at (canvas, *at) : -1;
  const char *cursor = piece >= 0 && has_stripes (canvas, (guint) piece) ? "grab"
                       : seam >= 0 || piece >= 0                         ? "pointer"
                                                                         : NULL;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), cursor);
  if (seam == canvas->hovered_seam)
    return;
  canvas->hovered_seam = seam;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* --- keyboard ------------------------------------------------------------------------------ */

static gboolean
choose_next_piece (SqPiecesCanvas *canvas, int by)
{
  const SqPlace *place = sq_selection_place (canvas->selection);
  int n = (int) canvas->cover->pieces->len, now = by > 0 ? -1 : 0;
  if (place->kind == SQ_AT_PIECE)
    now = (int) place->item;
  if (n > 0)
    choose (canvas, SQ_AT_PIECE, (now + by + n) % n);
  return n > 0;
}

static gboolean
has_piece (const SqSeam *seam, guint piece)
{
  return seam->a.piece == piece || (seam->b.n_runs > 0 && seam->b.piece == piece);
}

/* In the order of sewing; from a chosen piece to the first of its own. */
static gboolean
choose_next_seam (SqPiecesCanvas *canvas, int by)
{
  const SqPlace *place = sq_selection_place (canvas->selection);
  int n = (int) canvas->cover->seams->len, now = sq_pieces_chosen_seam (canvas);
  if (n == 0)
    return FALSE;
  if (place->kind == SQ_AT_PIECE)
    for (int i = 0, k = by > 0 ? 0 : n - 1; i < n; i++, k += by)
      if (has_piece (sq_cover_seam (canvas->cover, (guint) k), place->item))
        {
          choose (canvas, SQ_AT_SEAM, k);
          return TRUE;
        }
  if (now < 0)
    now = by > 0 ? -1 : 0;
  choose (canvas, SQ_AT_SEAM, (now + by + n) % n);
  return TRUE;
}

static gboolean
take_back (SqPiecesCanvas *canvas)
{
  const SqPlace *place = sq_selection_place (canvas->selection);
  if (sq_canvas_is_dragging (SQ_CANVAS (canvas)))
    {
      sq_document_drop (canvas->document);
      let_go (canvas);
      sq_canvas_let_go (SQ_CANVAS (canvas));
      return TRUE;
    }
  if (place->kind != SQ_AT_PIECE && place->kind != SQ_AT_SEAM)
    return FALSE;
  choose (canvas, SQ_AT_CUSHION, -1);
  return TRUE;
}

/* Arrows step through the pieces; with Shift they move the stripes. */
static gboolean
arrow (SqPiecesCanvas *canvas, int by, GdkModifierType state)
{
  if (sq_canvas_is_dragging (SQ_CANVAS (canvas)))
    return FALSE;
  if (state & GDK_SHIFT_MASK)
    return sq_edit_step_stripes (canvas->document, canvas->cover, by);
  return choose_next_piece (canvas, by);
}

static gboolean
turn (SqPiecesCanvas *canvas)
{
  if (sq_canvas_is_dragging (SQ_CANVAS (canvas))
      || sq_stripes_cloth (sq_document_get_job (canvas->document), canvas->cover) == NULL)
    return FALSE;
  sq_edit_turn_stripes (canvas->document, canvas->cover);
  return TRUE;
}

gboolean
sq_pieces_key (SqCanvas *self, guint keyval, GdkModifierType state)
{
  SqPiecesCanvas *canvas = SQ_PIECES_CANVAS (self);
  if (canvas->cover == NULL)
    return FALSE;
  switch (keyval)
    {
    case GDK_KEY_Page_Down:
      return choose_next_piece (canvas, 1);
    case GDK_KEY_Page_Up:
      return choose_next_piece (canvas, -1);
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return arrow (canvas, 1, state);
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      return arrow (canvas, -1, state);
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return arrow (canvas, state & GDK_SHIFT_MASK ? 1 : -1, state);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return arrow (canvas, state & GDK_SHIFT_MASK ? -1 : 1, state);
    case GDK_KEY_n:
      return choose_next_seam (canvas, 1);
    case GDK_KEY_p:
      return choose_next_seam (canvas, -1);
    case GDK_KEY_t:
      return turn (canvas);
    case GDK_KEY_Menu:
      sq_pieces_open_menu (canvas, NULL);
      return TRUE;
    case GDK_KEY_F10:
      if (!(state & GDK_SHIFT_MASK))
        return FALSE;
      sq_pieces_open_menu (canvas, NULL);
      return TRUE;
    case GDK_KEY_Escape:
      return take_back (canvas);
    default:
      return FALSE;
    }
}
