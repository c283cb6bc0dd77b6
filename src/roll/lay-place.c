/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-place.h"

#include <math.h>

#include "roll/lay-phase.h"
#include "roll/trapezoids.h"

/* An item in one pose, cut into trapezoids along the roll, and with x and y exchanged: so one way of
 * looking for what is free along a line serves both directions. */
typedef struct
{
  guint item;
  SqGridPose pose;
  SqGridBox box, keep;
  GArray *level, *upright; /* of SqTrapezoid */
} Form;

/* What stays where it is. */
typedef struct
{
  const Form *form;
  SqGrid at;
  guint strip;
  gboolean is_fixed; /* pinned, or a flaw */
} Other;

struct _SqLayPlacer
{
  SqLayTask *task;
  SqLay *lay;
  guint item;
  GPtrArray *forms;
  GArray *others; /* of Other */
};

/* ---- forms --------------------------------------------------------------------------------- */

static void
form_free (gpointer data)
{
  Form *form = data;
  g_array_unref (form->level);
  g_array_unref (form->upright);
  g_free (form);
}

static Form *
form_new (const SqGridRing *rings, guint n)
{
  Form *form = g_new0 (Form, 1);
  g_autofree SqGridRing *turned = g_new0 (SqGridRing, n);

  form->keep = sq_grid_rings_box (rings, n);
  form->level = sq_trapezoids_new (rings, n);
  for (guint i = 0; i < n; i++)
    {
      turned[i] = (SqGridRing){ g_new (SqGrid, rings[i].n), rings[i].n };
      for (guint k = 0; k < rings[i].n; k++)
        turned[i].points[k] = (SqGrid){ rings[i].points[k].y, rings[i].points[k].x };
    }
  form->upright = sq_trapezoids_new (turned, n);
  for (guint i = 0; i < n; i++)
    g_free (turned[i].points);
  return form;
}

static const Form *
form_of (SqLayPlacer *placer, guint index, SqGridPose pose)
{
  const SqLayItem *item = sq_lay_task_item (placer->task, index);

  for (guint i = 0; i < placer->forms->len; i++)
    {
      const Form *form = g_ptr_array_index (placer->forms, i);
      if (form->item == index && sq_grid_pose_equal (form->pose, pose))
        return form;
    }
  SqGridRing *keep = sq_grid_rings_posed (item->keep, item->n_keep, pose);
  Form *form = form_new (keep, item->n_keep);
  sq_grid_rings_free (keep, item->n_keep);
  form->item = index;
  form->pose = pose;
  form->box = sq_lay_item_box (item, pose);
  g_ptr_array_add (placer->forms, form);
  return form;
}

static void
add_flaws (SqLayPlacer *placer, guint index)
{
  const SqLayStrip *strip = sq_lay_task_strip (placer->task, index);

  for (guint i = 0; i < strip->n_flaws; i++)
    {
      SqGridBox flaw = strip->flaws[i];
      SqGrid corners[] = {
        flaw.min, { flaw.max.x, flaw.min.y }, flaw.max, { flaw.min.x, flaw.max.y }
      };
      const SqGridRing ring = { corners, G_N_ELEMENTS (corners) };
      Form *form = form_new (&ring, 1);
      form->item = G_MAXUINT;
      g_ptr_array_add (placer->forms, form);
      Other other = { form, { 0, 0 }, index, TRUE };
      g_array_append_val (placer->others, other);
    }
}

SqLayPlacer *
sq_lay_placer_new (const SqLayTask *task, const SqLay *lay, guint index)
{
  SqLayPlacer *placer = g_new0 (SqLayPlacer, 1);

  placer->task = sq_lay_task_ref (task);
  placer->lay = sq_lay_ref (lay);
  placer->item = sq_lay_placed (lay, index)->item;
  placer->forms = g_ptr_array_new_with_free_func (form_free);
  placer->others = g_array_new (FALSE, FALSE, sizeof (Other));
  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      Other other = { form_of (placer, placed->item, placed->pose), placed->at, placed->strip,
                      sq_lay_task_is_pinned (task, placed->item, placed->copy) };
      if (i != index)
        g_array_append_val (placer->others, other);
    }
  for (guint i = 0; i < task->strips->len; i++)
    add_flaws (placer, i);
  return placer;
}

void
sq_lay_placer_free (SqLayPlacer *placer)
{
  if (placer == NULL)
    return;
  sq_lay_task_unref (placer->task);
  sq_lay_unref (placer->lay);
  g_ptr_array_unref (placer->forms);
  g_array_unref (placer->others);
  g_free (placer);
}

/* ---- one line ------------------------------------------------------------------------------ */

/* Where the piece may not be along a line: between the two, not at them. */
typedef struct
{
  gint64 from, to;
} Bar;

/* One question: the wish, and what is near it. */
typedef struct
{
  const SqLayPlaceHow *how;
  const Form *form;
  SqGrid wish;
  SqGrid least, most; /* what keeps the piece on its strip */
  SqLayPhase phase;
  GArray *near;   /* of Other, on the strip and near enough to matter */
  GArray *places; /* of Candidate */
} Question;

typedef struct
{
  SqGrid at;
  double cost; /* the less the better */
} Candidate;

static double
edge_x (const SqGridEdge *edge, gint64 y)
{
  return edge->from.x
         + (double) (edge->to.x - edge->from.x) * (double) (y - edge->from.y)
               / (double) (edge->to.y - edge->from.y);
}

/* Where two trapezoids overlap while the first is moved along x, @up above the other. */
static gboolean
bar_of_two (const SqTrapezoid *a, const SqTrapezoid *b, gint64 up, Bar *bar)
{
  gint64 y[] = { MAX (a->y0, b->y0 - up), MIN (a->y1, b->y1 - up) };
  double from = INFINITY, to = -INFINITY;

  if (y[0] >= y[1])
    return FALSE;
  for (guint i = 0; i < 2; i++)
    {
      from = fmin (from, edge_x (&b->left, y[i] + up) - edge_x (&a->right, y[i]));
      to = fmax (to, edge_x (&b->right, y[i] + up) - edge_x (&a->left, y[i]));
    }
  *bar = (Bar){ (gint64) floor (from), (gint64) ceil (to) };
  return bar->from < bar->to;
}

/* Adds those of @other; both are in order from below, bands apart. */
static void
add_bars (GArray *bars, const GArray *own, const GArray *other, gint64 up, gint64 by)
{
  guint first = 0;

  for (guint i = 0; i < own->len; i++)
    {
      const SqTrapezoid *a = &g_array_index (own, SqTrapezoid, i);
      while (first < other->len && g_array_index (other, SqTrapezoid, first).y1 - up <= a->y0)
        first++;
      for (guint k = first; k < other->len; k++)
        {
          const SqTrapezoid *b = &g_array_index (other, SqTrapezoid, k);
          Bar bar;
          if (b->y0 - up >= a->y1)
            break;
          if (!bar_of_two (a, b, up, &bar))
            continue;
          bar.from += by;
          bar.to += by;
          g_array_append_val (bars, bar);
        }
    }
}

static int
compare_bars (gconstpointer a, gconstpointer b)
{
  const Bar *x = a, *y = b;
  return (x->from > y->from) - (x->from < y->from);
}

/* Those that overlap become one; where two only touch, the piece fits in just there. */
static void
join_bars (GArray *bars)
{
  guint n = 0;

  g_array_sort (bars, compare_bars);
  for (guint i = 0; i < bars->len; i++)
    {
      Bar bar = g_array_index (bars, Bar, i);
      Bar *last = n > 0 ? &g_array_index (bars, Bar, n - 1) : NULL;
      if (last != NULL && bar.from < last->to)
        last->to = MAX (last->to, bar.to);
      else
        g_array_index (bars, Bar, n++) = bar;
    }
  g_array_set_size (bars, n);
}

/* What is barred along x at height @y; with @is_upright, along y at @y along. New array of Bar. */
static GArray *
bars_at (const Question *question, gboolean is_upright, gint64 y)
{
  GArray *bars = g_array_new (FALSE, FALSE, sizeof (Bar));

  for (guint i = 0; i < question->near->len; i++)
    {
      const Other *other = &g_array_index (question->near, Other, i);
      if (is_upright)
        add_bars (bars, question->form->upright, other->form->upright, y - other->at.x,
                  other->at.y);
      else
        add_bars (bars, question->form->level, other->form->level, y - other->at.y, other->at.x);
    }
  join_bars (bars);
  return bars;
}

/* ---- where the pattern falls --------------------------------------------------------------- */

static gint64
last_x (const SqLayPhase *phase, gint64 y, gint64 x)
{
  gint64 repeat = phase->repeat_along_nm / 1000;
  gint64 found = sq_lay_phase_next_x (phase, y, x - repeat - 1);

  if (phase->repeat_along_nm <= 0)
    return x;
  for (gint64 next = found; next <= x; next = sq_lay_phase_next_x (phase, y, next + 1))
    found = next;
  return found;
}

/* The next place the pattern allows from @v on, in the direction of @way; @line is where the line
 * is: for x the height. */
static gint64
allowed (const Question *question, gboolean is_upright, gint64 line, gint64 v, int way)
{
  if (is_upright)
    return way > 0 ? sq_lay_phase_next_y (&question->phase, v)
                   : sq_lay_phase_last_y (&question->phase, v);
  return way > 0 ? sq_lay_phase_next_x (&question->phase, line, v)
                 : last_x (&question->phase, line, v);
}

/* From @v in the direction of @way the first place that is allowed and free. */
static gboolean
slide (const Question *question, const GArray *bars, gboolean is_upright, gint64 line, gint64 v,
       int way, gint64 *found)
{
  gint64 least = is_upright ? question->least.y : question->least.x;
  gint64 most = is_upright ? question->most.y : question->most.x;
  gint64 start = v;
  gboolean is_moved = TRUE;

  v = CLAMP (v, least, most);
  while (is_moved)
    {
      is_moved = FALSE;
      v = allowed (question, is_upright, line, v, way);
      if (v < least || v > most || ABS (v - start) > question->how->reach)
        return FALSE;
      for (guint i = 0; i < bars->len && !is_moved; i++)
        {
          const Bar *bar = &g_array_index (bars, Bar, i);
          is_moved = v > bar->from && v < bar->to;
          if (is_moved)
            v = way > 0 ? bar->to : bar->from;
        }
    }
  *found = v;
  return TRUE;
}

static void
add_value (GArray *values, gint64 v)
{
  for (guint i = 0; i < values->len; i++)
    if (g_array_index (values, gint64, i) == v)
      return;
  g_array_append_val (values, v);
}

/* The places along a line that are looked at: free ones to both sides of @v, and those near it at which
 * something is touched. New array of gint64. */
static GArray *
values_at (const Question *question, const GArray *bars, gboolean is_upright, gint64 line, gint64 v)
{
  GArray *values = g_array_new (FALSE, FALSE, sizeof (gint64));
  gint64 ends[] = { is_upright ? question->least.y : question->least.x,
                    is_upright ? question->most.y : question->most.x };
  g_autoptr (GArray) touching = g_array_new (FALSE, FALSE, sizeof (gint64));
  gint64 found;

  g_array_append_vals (touching, ends, 2);
  for (guint i = 0; i < bars->len; i++)
    g_array_append_vals (touching, &g_array_index (bars, Bar, i), 2);
  for (int way = -1; way <= 1; way += 2)
    {
      if (slide (question, bars, is_upright, line, v, way, &found))
        add_value (values, found);
      for (guint i = 0; i < touching->len; i++)
        {
          gint64 end = g_array_index (touching, gint64, i);
          if (ABS (end - v) <= 2 * (gint64) question->how->snap
              && slide (question, bars, is_upright, line, end, way, &found))
            add_value (values, found);
        }
    }
  return values;
}

static gboolean
touches (const GArray *bars, gint64 least, gint64 most, gint64 v)
{
  if (v == least || v == most)
    return TRUE;
  for (guint i = 0; i < bars->len; i++)
    if (v == g_array_index (bars, Bar, i).from || v == g_array_index (bars, Bar, i).to)
      return TRUE;
  return FALSE;
}

/* ---- places -------------------------------------------------------------------------------- */

/* Those at height @y: with the x that are looked at, from the wish's on. */
static void
add_places (Question *question, gint64 y)
{
  g_autoptr (GArray) bars = bars_at (question, FALSE, y);
  g_autoptr (GArray) xs = values_at (question, bars, FALSE, y, question->wish.x);

  for (guint i = 0; i < xs->len; i++)
    {
      gint64 x = g_array_index (xs, gint64, i);
      gint64 dx = x - question->wish.x, dy = y - question->wish.y;
      if (ABS (dx) > question->how->reach || ABS (dy) > question->how->reach)
        continue;
      g_autoptr (GArray) upright = bars_at (question, TRUE, x);
      int n = touches (bars, question->least.x, question->most.x, x)
              + touches (upright, question->least.y, question->most.y, y);
      Candidate place = { { (gint32) x, (gint32) y },
                          hypot ((double) dx, (double) dy) - n * (double) question->how->snap };
      g_array_append_val (question->places, place);
    }
}

/* The heights that are looked at: from the wish, and from where beside it something is touched. */
static void
add_all_places (Question *question)
{
  g_autoptr (GArray) ys = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr (GArray) level = bars_at (question, FALSE, question->wish.y);
  g_autoptr (GArray) xs = values_at (question, level, FALSE, question->wish.y, question->wish.x);

  add_value (xs, CLAMP (question->wish.x, question->least.x, question->most.x));
  for (guint i = 0; i < xs->len; i++)
    {
      gint64 x = g_array_index (xs, gint64, i);
      g_autoptr (GArray) bars = bars_at (question, TRUE, x);
      g_autoptr (GArray) own = values_at (question, bars, TRUE, x, question->wish.y);
      for (guint k = 0; k < own->len; k++)
        add_value (ys, g_array_index (own, gint64, k));
    }
  for (int way = -1; way <= 1; way += 2)
    add_value (ys, allowed (question, TRUE, 0,
                            CLAMP (question->wish.y, question->least.y, question->most.y), way));
  for (guint i = 0; i < ys->len; i++)
    {
      gint64 y = g_array_index (ys, gint64, i);
      if (y >= question->least.y && y <= question->most.y)
        add_places (question, y);
    }
}

static int
compare_candidates (gconstpointer a, gconstpointer b)
{
  const Candidate *x = a, *y = b;

  if (x->cost != y->cost)
    return x->cost < y->cost ? -1 : 1;
  if (x->at.x != y->at.x)
    return x->at.x < y->at.x ? -1 : 1;
  return (x->at.y > y->at.y) - (x->at.y < y->at.y);
}

static gboolean
is_near (const Form *form, SqGrid at, gint64 reach, const Other *other)
{
  const SqGridBox *own = &form->keep, *its = &other->form->keep;

  return (gint64) own->min.x + at.x - reach < (gint64) its->max.x + other->at.x
         && (gint64) its->min.x + other->at.x < (gint64) own->max.x + at.x + reach
         && (gint64) own->min.y + at.y - reach < (gint64) its->max.y + other->at.y
         && (gint64) its->min.y + other->at.y < (gint64) own->max.y + at.y + reach;
}

/* What keeps the box on the strip; FALSE: it is larger. */
static gboolean
limits (const SqLayPlacer *placer, const Form *form, guint index, SqGrid *least, SqGrid *most)
{
  const SqLayStrip *strip = sq_lay_task_strip (placer->task, index);

  *least = (SqGrid){ -form->box.min.x, -form->box.min.y };
  *most = (SqGrid){ sq_lay_strip_end (strip) - form->box.max.x, strip->width - form->box.max.y };
  return least->x <= most->x && least->y <= most->y;
}

static const Other *
overlapped (const SqLayPlacer *placer, const Form *form, const SqLayPlace *place,
            gboolean others_move)
{
  for (guint i = 0; i < placer->others->len; i++)
    {
      const Other *other = &g_array_index (placer->others, Other, i);
      if (other->strip == place->strip && (other->is_fixed || !others_move)
          && is_near (form, place->at, 0, other)
          && sq_trapezoids_overlap (form->level, place->at, other->form->level, other->at))
        return other;
    }
  return NULL;
}

SqLayFault
sq_lay_placer_fault (SqLayPlacer *placer, const SqLayPlace *place, gboolean others_move)
{
  const SqLayItem *item = sq_lay_task_item (placer->task, placer->item);
  SqGrid least, most;

  if (sq_lay_item_pose (item, place->pose) == G_MAXUINT)
    return SQ_LAY_POSE;
  if (place->strip >= placer->task->strips->len)
    return SQ_LAY_OUTSIDE;
  const Form *form = form_of (placer, placer->item, place->pose);
  if (!limits (placer, form, place->strip, &least, &most) || place->at.x < least.x
      || place->at.x > most.x || place->at.y < least.y || place->at.y > most.y)
    return SQ_LAY_OUTSIDE;

  SqLayPhase phase = sq_lay_phase (item, place->pose, (SqGrid){ 0, 0 },
                                   sq_lay_task_strip (placer->task, place->strip));
  const Other *other = overlapped (placer, form, place, others_move);
  if (other != NULL)
    return other->form->item == G_MAXUINT ? SQ_LAY_FLAW : SQ_LAY_OVERLAP;
  if (sq_lay_phase_next_y (&phase, place->at.y) != place->at.y
      || sq_lay_phase_next_x (&phase, place->at.y, place->at.x) != place->at.x)
    return SQ_LAY_PATTERN;
  return SQ_LAY_RIGHT;
}

/* Answers @question for @wish: the best of its places that is right. */
static gboolean
answer (SqLayPlacer *placer, Question *question, const SqLayPlace *wish, SqLayPlace *found)
{
  add_all_places (question);
  g_array_sort (question->places, compare_candidates);
  for (guint i = 0; i < question->places->len; i++)
    {
      *found = *wish;
      found->at = g_array_index (question->places, Candidate, i).at;
      if (sq_lay_placer_fault (placer, found, question->how->others_move) == SQ_LAY_RIGHT)
        return TRUE;
    }
  return FALSE;
}

gboolean
sq_lay_placer_near (SqLayPlacer *placer, const SqLayPlace *wish, const SqLayPlaceHow *how,
                    SqLayPlace *found)
{
  const SqLayItem *item = sq_lay_task_item (placer->task, placer->item);
  Question question = { .how = how, .wish = wish->at };

  if (sq_lay_item_pose (item, wish->pose) == G_MAXUINT || wish->strip >= placer->task->strips->len)
    return FALSE;
  question.form = form_of (placer, placer->item, wish->pose);
  if (!limits (placer, question.form, wish->strip, &question.least, &question.most))
    return FALSE;
  question.phase = sq_lay_phase (item, wish->pose, (SqGrid){ 0, 0 },
                                 sq_lay_task_strip (placer->task, wish->strip));
  g_autoptr (GArray) near = g_array_new (FALSE, FALSE, sizeof (Other));
  g_autoptr (GArray) places = g_array_new (FALSE, FALSE, sizeof (Candidate));
  for (guint i = 0; i < placer->others->len; i++)
    {
      const Other *other = &g_array_index (placer->others, Other, i);
      if (other->strip == wish->strip && (other->is_fixed || !how->others_move)
          && is_near (question.form, wish->at, (gint64) how->reach + 2 * how->snap, other))
        g_array_append_val (near, *other);
    }
  question.near = near;
  question.places = places;
  return answer (placer, &question, wish, found);
}
