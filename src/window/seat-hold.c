/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/seat-hold.h"

#include "drawing/guide-scene.h"
#include "job/edge.h"
#include "job/safe-edit.h"
#include "window/edit-place.h"
#include "window/edit-symmetry.h"
#include "window/figures.h"
#include "window/seat-canvas-private.h"
#include "words/piece-names.h"
#include "words/snap-words.h"

#include <glib/gi18n.h>

/* A press that moves less is a click; what is dragged goes to a telling place within REACH
 * (pixels). */
#define LEAST_MOVE 3
#define REACH 8

/* What is typed is no longer than this. */
#define MOST_TYPED 40

static const SqCushion *
cushion_of (SqSeatCanvas *canvas)
{
  return sq_job_cushion (canvas->hold.base, sq_selection_cushion (canvas->selection));
}

/* What the hand drags, as reasons know it; a curve's handle as a corner that stands alone. */
static SqDragKind
drag_of (SqGrip grip)
{
  switch (grip.kind)
    {
    case SQ_GRIP_EDGE:
      return SQ_DRAG_EDGE;
    case SQ_GRIP_BOW:
      return SQ_DRAG_BOW;
    case SQ_GRIP_RADIUS:
      return SQ_DRAG_RADIUS;
    case SQ_GRIP_CORNER:
    case SQ_GRIP_CONTROL_START:
    case SQ_GRIP_CONTROL_END:
    case SQ_GRIP_NONE:
    default:
      return SQ_DRAG_CORNER;
    }
}

/* --- where it lands ------------------------------------------------------------------------ */

/* A curve's handle goes on in the direction of the edge before or after it, so that they meet
 * without a corner. */
static SqSnap
land_control (const SqOutline *outline, SqGrip grip, SqPoint raw, double reach_mm)
{
  guint ring, i, n;
  gboolean at_end = grip.kind == SQ_GRIP_CONTROL_END;
  SqSnap snap = { .at = raw };
  sq_outline_corner (outline, grip.corner, &ring, &i);
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  const SqCorner *own = &corners[(i + (at_end ? 1 : 0)) % n];
  const SqCorner *other = &corners[(i + (at_end ? 1 : n - 1)) % n];
  const SqCorner *next = &corners[(i + (at_end ? 2 : 0)) % n];
  SqVector along = sq_edge_direction (other, next, !at_end);
  if (at_end)
    along = sq_scale (along, -1);
  double forward = sq_dot (along, sq_sub (raw, own->at));
  SqPoint foot = sq_moved (own->at, along, forward);
  if (sq_norm (along) == 0 || forward <= 0 || sq_distance (foot, raw) > reach_mm)
    return snap;
  snap.at = foot;
  snap.n_reasons = 1;
  snap.reasons[0] = (SqSnapReason){
    .kind = SQ_SNAP_TANGENT, .from = own->at, .to = foot, .edge = grip.corner, .other = other->id
  };
  return snap;
}

static SqSnap
land (SqSeatCanvas *canvas, const SqOutline *outline)
{
  const SqSeatHold *hold = &canvas->hold;
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  gboolean is_free = sq_canvas_get_modifiers (SQ_CANVAS (canvas)) & GDK_CONTROL_MASK;
  /* A twin moves along: it is no image to go to. */
  gboolean is_symmetric = sq_document_is_symmetric (canvas->document);
  double reach_mm = REACH / view->scale;
  SqAxis axis;
  SqSnapQuestion question = {
    .before = outline,
    .drag = drag_of (hold->grip),
    .id = hold->grip.corner,
    .grip = hold->from,
    .raw = hold->raw,
    .reach_mm = reach_mm,
    .kinds = is_free ? 0 : SQ_SNAP_ALL & ~(is_symmetric ? SQ_SNAP_BIT (SQ_SNAP_SYMMETRY) : 0),
    .grid_mm = sq_figures_step_mm (hold->base),
    .axis = sq_outline_front_axis (outline, &axis) ? &axis : NULL,
  };
  if (hold->grip.kind == SQ_GRIP_CONTROL_START || hold->grip.kind == SQ_GRIP_CONTROL_END)
    return land_control (outline, hold->grip, hold->raw, is_free ? 0 : reach_mm);
  return sq_snap (&question);
}

/* --- what becomes of the seat -------------------------------------------------------------- */

/* @outline with what is held where @snap says. New. */
static SqOutline *
outline_held (const SqOutline *outline, SqGrip grip, const SqSnap *snap)
{
  const SqCorner *old = sq_outline_corner (outline, grip.corner, NULL, NULL);
  SqCorner corner = *old;
  switch (grip.kind)
    {
    case SQ_GRIP_EDGE:
      return sq_outline_with_edge_moved (
          outline, grip.corner, sq_scale (sq_grip_outward (outline, grip.corner), snap->value));
    case SQ_GRIP_BOW:
      corner.bow_mm = snap->value;
      corner.shape = snap->value != 0 ? SQ_SHAPE_BOW : SQ_SHAPE_STRAIGHT;
      return sq_outline_with_corner (outline, &corner);
    case SQ_GRIP_RADIUS:
      corner.radius_mm = snap->value;
      corner.given = snap->value > 0 ? corner.given | SQ_GIVEN_RADIUS
                                     : corner.given & ~(guint32) SQ_GIVEN_RADIUS;
      return sq_outline_with_corner (outline, &corner);
    case SQ_GRIP_CONTROL_START:
      corner.control[0] = snap->at;
      return sq_outline_with_corner (outline, &corner);
    case SQ_GRIP_CONTROL_END:
      corner.control[1] = snap->at;
      return sq_outline_with_corner (outline, &corner);
    case SQ_GRIP_CORNER:
    case SQ_GRIP_NONE:
    default:
      return sq_outline_with_corner_moved (outline, grip.corner, sq_sub (snap->at, old->at));
    }
}

/* Whether @snap leaves everything as @corner has it. */
static gboolean
is_unmoved (SqSeatHold *hold, const SqCorner *corner, const SqSnap *snap)
{
  switch (hold->grip.kind)
    {
    case SQ_GRIP_EDGE:
      return snap->value == 0;
    case SQ_GRIP_BOW:
      return snap->value == (corner->shape == SQ_SHAPE_BOW ? corner->bow_mm : 0);
    case SQ_GRIP_RADIUS:
      return snap->value == corner->radius_mm;
    case SQ_GRIP_CORNER:
    case SQ_GRIP_CONTROL_START:
    case SQ_GRIP_CONTROL_END:
    case SQ_GRIP_NONE:
    default:
      return snap->at.x == hold->from.x && snap->at.y == hold->from.y;
    }
}

/* Shows the seat with what is held where @snap says, or as near to that as no sides cross. */
static void
try_snap (SqSeatCanvas *canvas, const SqSnap *snap)
{
  SqSeatHold *hold = &canvas->hold;
  const SqCushion *cushion = cushion_of (canvas);
  const SqCorner *corner = sq_outline_corner (cushion->outline, hold->grip.corner, NULL, NULL);
  double share = 1;
  g_autoptr (SqOutline) held = NULL, meant = NULL, good = NULL;
  g_autoptr (SqCushion) changed = NULL;
  g_autoptr (SqJob) job = NULL;
  hold->snap = *snap;
  held = outline_held (cushion->outline, hold->grip, snap);
  meant = sq_edit_outline_meant (canvas->document, cushion->outline, held);
  good = sq_outline_last_good (cushion->outline, meant, &share, &hold->crossing);
  hold->is_stopped = share < 1;
  hold->is_changed = share > 0 && !is_unmoved (hold, corner, snap);
  changed = sq_cushion_with_outline (cushion, good);
  job = sq_job_with_cushion (hold->base, changed);
  sq_document_try (canvas->document, job);
  sq_seat_canvas_tell (canvas);
}

/* --- a figure that is typed ---------------------------------------------------------------- */

/* The corner at the other end of a side of what is held: that whose length a figure gives. For a
 * corner it is the side that the drag goes along more. */
static const SqCorner *
other_end (SqSeatCanvas *canvas, SqId *side)
{
  const SqSeatHold *hold = &canvas->hold;
  const SqOutline *outline = cushion_of (canvas)->outline;
  guint ring, i, n;
  sq_outline_corner (outline, hold->grip.corner, &ring, &i);
  const SqCorner *corners = sq_outline_ring (outline, ring, &n);
  const SqCorner *before = &corners[(i + n - 1) % n], *next = &corners[(i + 1) % n];
  SqVector by = sq_sub (hold->raw, hold->from);
  gboolean is_after = hold->grip.kind == SQ_GRIP_CORNER
                      && fabs (sq_dot (by, sq_unit (sq_sub (next->at, corners[i].at))))
                             > fabs (sq_dot (by, sq_unit (sq_sub (corners[i].at, before->at))));
  *side = is_after ? corners[i].id : before->id;
  return is_after ? next : before;
}

/* How far an edge at @from moves along @outward until @from is @length_mm from @end: of both ways
 * the one nearer to @by_mm. FALSE where it never is. */
static gboolean
edge_move_mm (SqPoint from, SqVector outward, SqPoint end, double length_mm, double by_mm,
              double *move_mm)
{
  SqVector d = sq_sub (from, end);
  double b = sq_dot (d, outward);
  double root = b * b - sq_dot (d, d) + length_mm * length_mm;
  if (root < 0)
    return FALSE;
  root = sqrt (root);
  *move_mm = fabs (-b + root - by_mm) < fabs (-b - root - by_mm) ? -b + root : -b - root;
  return TRUE;
}

/* The same for a side across the axis, whose other end moves as far: what is held ends up half of
 * @mm from the axis. */
static gboolean
snap_across (SqSeatCanvas *canvas, double mm, const SqAxis *axis, SqSnap *snap)
{
  const SqSeatHold *hold = &canvas->hold;
  const SqOutline *outline = cushion_of (canvas)->outline;
  const SqCorner *corner = sq_outline_corner (outline, hold->grip.corner, NULL, NULL);
  SqVector left = sq_left (axis->along);
  double from_mm = sq_axis_left_mm (axis, corner->at), to_mm = copysign (mm / 2, from_mm);
  double share = sq_dot (sq_grip_outward (outline, corner->id), left);
  snap->at = sq_moved (snap->at, left, to_mm - sq_axis_left_mm (axis, snap->at));
  if (hold->grip.kind == SQ_GRIP_EDGE)
    snap->value = (to_mm - from_mm) / share;
  return mm > 0 && (hold->grip.kind == SQ_GRIP_CORNER || fabs (share) > 1e-6);
}

/* Where what is held goes if its figure is @mm; FALSE where it can't. */
static gboolean
snap_for (SqSeatCanvas *canvas, double mm, SqSnap *snap)
{
  const SqSeatHold *hold = &canvas->hold;
  const SqOutline *outline = cushion_of (canvas)->outline;
  const SqCorner *corner = sq_outline_corner (outline, hold->grip.corner, NULL, NULL), *end;
  SqId side;
  SqAxis axis;
  *snap = (SqSnap){ .at = hold->snap.at, .value = hold->snap.value };
  switch (hold->grip.kind)
    {
    case SQ_GRIP_BOW:
      snap->value = copysign (mm, hold->snap.value);
      return TRUE;
    case SQ_GRIP_RADIUS:
      snap->value = mm;
      return TRUE;
    case SQ_GRIP_EDGE:
      end = other_end (canvas, &side);
      if (sq_edit_is_across (canvas->document, outline, side, &axis))
        return snap_across (canvas, mm, &axis, snap);
      return mm > 0
             && edge_move_mm (corner->at, sq_grip_outward (outline, corner->id), end->at, mm,
                              hold->snap.value, &snap->value);
    case SQ_GRIP_CORNER:
      end = other_end (canvas, &side);
      if (sq_edit_is_across (canvas->document, outline, side, &axis))
        return snap_across (canvas, mm, &axis, snap);
      snap->at = sq_moved (end->at, sq_unit (sq_sub (hold->snap.at, end->at)), mm);
      return mm > 0 && sq_distance (hold->snap.at, end->at) > 0;
    case SQ_GRIP_CONTROL_START:
    case SQ_GRIP_CONTROL_END:
    case SQ_GRIP_NONE:
    default:
      return FALSE;
    }
}

/* What the typed figure is of: "A–B 18 1/2". New. */
static char *
typed_words (SqSeatCanvas *canvas)
{
  const SqSeatHold *hold = &canvas->hold;
  g_autofree char *name = NULL;
  SqId side;
  switch (hold->grip.kind)
    {
    case SQ_GRIP_BOW:
      /* Translators: %s is a figure that is being typed. */
      return g_strdup_printf (_ ("Rise %s"), hold->typed->str);
    case SQ_GRIP_RADIUS:
      return g_strdup_printf (_ ("Radius %s"), hold->typed->str);
    case SQ_GRIP_CORNER:
    case SQ_GRIP_EDGE:
    case SQ_GRIP_CONTROL_START:
    case SQ_GRIP_CONTROL_END:
    case SQ_GRIP_NONE:
    default:
      other_end (canvas, &side);
      name = sq_words_edge_corners (cushion_of (canvas), side);
      return g_strdup_printf ("%s %s", name, hold->typed->str);
    }
}

/* What is typed so far is taken as soon as it can be read. */
static void
read_typed (SqSeatCanvas *canvas)
{
  SqSeatHold *hold = &canvas->hold;
  SqLengthResult result;
  SqSnap snap;
  double mm;
  hold->mistake = NULL;
  result = sq_length_parse (hold->typed->str, hold->base->units, sq_figures_decimal (), &mm, NULL);
  if (result != SQ_LENGTH_OK)
    hold->mistake = sq_figures_mistake (result);
  else if (!snap_for (canvas, mm, &snap))
    hold->mistake = _ ("This length can’t be.");
  else
    try_snap (canvas, &snap);
  sq_seat_canvas_tell (canvas);
}

static void
type (SqSeatCanvas *canvas, guint32 character)
{
  SqSeatHold *hold = &canvas->hold;
  if (hold->typed == NULL)
    hold->typed = g_string_new (NULL);
  if (hold->typed->len < MOST_TYPED)
    g_string_append_unichar (hold->typed, character);
  read_typed (canvas);
}

/* Without its last character; without any it follows the hand again. */
static void
untype (SqSeatCanvas *canvas)
{
  SqSeatHold *hold = &canvas->hold;
  const char *end = hold->typed->str + hold->typed->len;
  const char *last = g_utf8_find_prev_char (hold->typed->str, end);
  g_string_truncate (hold->typed, last != NULL ? (gsize) (last - hold->typed->str) : 0);
  if (hold->typed->len > 0)
    {
      read_typed (canvas);
      return;
    }
  g_string_free (g_steal_pointer (&hold->typed), TRUE);
  hold->mistake = NULL;
  SqSnap snap = land (canvas, cushion_of (canvas)->outline);
  try_snap (canvas, &snap);
}

gboolean
sq_seat_hold_key (SqSeatCanvas *canvas, guint keyval)
{
  SqSeatHold *hold = &canvas->hold;
  guint32 character = gdk_keyval_to_unicode (keyval);
  if (hold->base == NULL || !hold->is_moving)
    return FALSE;
  switch (keyval)
    {
    case GDK_KEY_Escape:
      sq_seat_hold_let_go (canvas, FALSE);
      sq_canvas_let_go (SQ_CANVAS (canvas));
      return TRUE;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      if (hold->typed == NULL || hold->mistake == NULL)
        {
          sq_seat_hold_let_go (canvas, TRUE);
          sq_canvas_let_go (SQ_CANVAS (canvas));
        }
      return TRUE;
    case GDK_KEY_BackSpace:
      if (hold->typed != NULL)
        untype (canvas);
      return TRUE;
    default:
      /* A figure begins with a digit or a sign; letters are units. */
      if (character == 0 || !g_unichar_isprint (character)
          || (hold->typed == NULL && !g_unichar_isdigit (character) && character != '.'
              && character != ',' && character != '('))
        return FALSE;
      type (canvas, character);
      return TRUE;
    }
}

/* --- holding ------------------------------------------------------------------------------- */

void
sq_seat_hold_take (SqSeatCanvas *canvas, SqGrip grip, SqPoint at)
{
  SqSeatHold *hold = &canvas->hold;
  const SqCushion *cushion;
  sq_seat_hold_let_go (canvas, FALSE);
  hold->base = sq_job_ref (sq_document_get_job (canvas->document));
  hold->grip = grip;
  hold->pressed = at;
  cushion = cushion_of (canvas);
  if (grip.kind == SQ_GRIP_EDGE)
    hold->from = sq_view_to_mm (sq_canvas_get_view (SQ_CANVAS (canvas)), at);
  else if (cushion == NULL || !sq_grip_place (cushion->outline, grip, &hold->from))
    g_clear_pointer (&hold->base, sq_job_unref);
  hold->raw = hold->from;
}

void
sq_seat_hold_follow (SqSeatCanvas *canvas, SqPoint at)
{
  SqSeatHold *hold = &canvas->hold;
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  SqVector pixels = sq_sub (at, hold->pressed);
  SqSnap snap;
  if (hold->base == NULL || (!hold->is_moving && sq_norm (pixels) < LEAST_MOVE))
    return;
  hold->is_moving = TRUE;
  if (hold->typed != NULL)
    return;
  /* y is up */
  hold->raw = sq_add (hold->from, sq_point (pixels.x / view->scale, -pixels.y / view->scale));
  snap = land (canvas, cushion_of (canvas)->outline);
  try_snap (canvas, &snap);
}

void
sq_seat_hold_let_go (SqSeatCanvas *canvas, gboolean keep)
{
  SqSeatHold *hold = &canvas->hold;
  if (hold->base == NULL)
    return;
  if (keep && hold->is_changed)
    {
      g_autofree char *words = sq_grip_words (cushion_of (canvas), hold->grip);
      sq_document_keep (canvas->document, words);
    }
  else if (hold->is_moving)
    sq_document_drop (canvas->document);
  g_clear_pointer (&hold->base, sq_job_unref);
  if (hold->typed != NULL)
    g_string_free (hold->typed, TRUE);
  *hold = (SqSeatHold){ 0 };
  sq_seat_canvas_tell (canvas);
}

/* --- what is seen of it -------------------------------------------------------------------- */

char *
sq_seat_hold_words (SqSeatCanvas *canvas)
{
  const SqSeatHold *hold = &canvas->hold;
  SqLengthStyle style;
  GString *words;
  if (hold->base == NULL || !hold->is_moving)
    return NULL;
  style = sq_figures_style (hold->base);
  if (hold->typed != NULL)
    {
      g_autofree char *typed = typed_words (canvas);
      return hold->mistake != NULL ? g_strdup_printf ("%s · %s", typed, hold->mistake)
                                   : g_steal_pointer (&typed);
    }
  if (hold->is_stopped)
    return g_strdup (_ ("sides would cross"));
  words = g_string_new (NULL);
  for (guint i = 0; i < hold->snap.n_reasons; i++)
    {
      g_autofree char *reason = sq_words_snap_reason (cushion_of (canvas), drag_of (hold->grip),
                                                      &hold->snap.reasons[i], &style);
      g_string_append_printf (words, "%s%s", i > 0 ? " · " : "", reason);
    }
  return g_string_free (words, words->len == 0);
}

void
sq_seat_hold_append (SqSeatCanvas *canvas, GtkSnapshot *snapshot)
{
  const SqSeatHold *hold = &canvas->hold;
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  if (hold->base == NULL || !hold->is_moving)
    return;
  g_autofree char *words = sq_seat_hold_words (canvas);
  SqBox box = sq_figures_seat_box (canvas->cover);
  SqGuides guides = { .outline = canvas->cover->cushion->outline,
                      .reasons = hold->snap.reasons,
                      .n_reasons = hold->is_stopped || hold->typed != NULL ? 0
                                                                           : hold->snap.n_reasons,
                      .at = hold->snap.at,
                      .middle = sq_between (box.min, box.max, 0.5),
                      .words = words,
                      .crossing = hold->is_stopped ? &hold->crossing : NULL };
  g_autoptr (SqScene) scene = sq_guide_scene (
      &guides, sq_canvas_get_em (SQ_CANVAS (canvas)) / view->scale, sq_seat_canvas_room (canvas));
  sq_canvas_append_scene (SQ_CANVAS (canvas), snapshot, scene);
}
