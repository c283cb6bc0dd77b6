/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The greatest free rectangles there are, see J. Jylänki, A Thousand Ways to Pack the Bin, 2010,
 * chapter 4: with them nothing that is free is lost. Taking what fits best into the foremost of them:
 * E. K. Burke, G. Kendall, G. Whitwell, A New Placement Heuristic for the Orthogonal Stock-Cutting
 * Problem, 2004. */
#include "roll/lay-boxes.h"

#include "roll/lay-forms.h"

/* What ends farther than this before the end of what is laid (µm) is left as it is when a new batch
 * begins. */
#define REACH_UM 2000000

/* Where a piece goes. The first three go by how far the lay then reaches, too. */
typedef enum
{
  FIT_SHORT_SIDE, /* the lesser of the lengths left beside it is least */
  FIT_LONG_SIDE,
  FIT_AREA,
  FIT_END,   /* it ends nearest the cut end */
  FIT_START, /* it begins nearest the cut end, and least is left across */
} Fit;

typedef struct
{
  guint
      choice; /* 0: pieces are laid in order; else so many runs are looked at for what fits best */
  Fit fit;
  gboolean is_longest; /* of such a choice: what is longest rather than what leaves least across */
  gboolean is_outward; /* against the nearer edge of the cloth; else against the near one */
} Rule;

static const Rule rules[SQ_N_LAY_BOX_RULES] = {
  { .fit = FIT_END },
  [SQ_LAY_BOX_RULE_BEST_FIT] = { .choice = G_MAXUINT, .is_outward = TRUE },
  { .fit = FIT_SHORT_SIDE },
  { .choice = 8 },
  { .fit = FIT_START },
  { .choice = 3 },
  { .fit = FIT_END, .is_outward = TRUE },
  { .choice = 16, .is_outward = TRUE },
  { .choice = 16, .is_longest = TRUE },
  { .fit = FIT_AREA },
  { .fit = FIT_LONG_SIDE },
  { .choice = G_MAXUINT },
  { .choice = 8, .is_outward = TRUE },
  { .fit = FIT_START, .is_outward = TRUE },
  { .choice = 3, .is_outward = TRUE },
  { .fit = FIT_SHORT_SIDE, .is_outward = TRUE },
  { .choice = G_MAXUINT, .is_longest = TRUE },
  { .choice = 5 },
  { .choice = 4, .is_longest = TRUE },
  { .fit = FIT_AREA, .is_outward = TRUE },
  { .fit = FIT_LONG_SIDE, .is_outward = TRUE },
  { .choice = 5, .is_longest = TRUE, .is_outward = TRUE },
};

/* A strip as it fills. */
typedef struct
{
  const SqLayStrip *strip;
  guint index;
  GArray *free; /* of SqLayRect: each as large as it can be, none within another */
  gint64 end;   /* of what is laid */
} Filling;

/* Where a piece may go. */
typedef struct
{
  guint run, pose;
  gint64 x, y;
  double cost[3]; /* the lower the better, the first first */
} Place;

typedef struct
{
  const SqLayKinds *kinds;
  const SqTask *watch;
  Rule rule;
  SqLayForms *forms;
  Filling *fillings; /* by strip */
  SqLayRun *runs;    /* of the batch: what is still to be laid */
  guint n_runs;
  GArray *spots; /* of SqLaySpot */
  SqUnlaidWhy *why;
} Making;

/* ---- what is free -------------------------------------------------------------------------- */

static gboolean
is_within (const SqLayRect *a, const SqLayRect *b)
{
  return a->x0 >= b->x0 && a->y0 >= b->y0 && a->x1 <= b->x1 && a->y1 <= b->y1;
}

/* Adds @rect unless it is within another, or too small for any piece; drops what is within it. */
static void
add_free (const Making *making, Filling *filling, SqLayRect rect)
{
  SqLayRect room = sq_lay_rect_on_cloth (filling->strip, &rect);

  if (room.x1 - room.x0 < making->forms->least_length
      || room.y1 - room.y0 < making->forms->least_width)
    return;
  for (guint i = filling->free->len; i > 0; i--)
    {
      const SqLayRect *other = &g_array_index (filling->free, SqLayRect, i - 1);
      if (is_within (&rect, other))
        return;
      if (is_within (other, &rect))
        g_array_remove_index_fast (filling->free, i - 1);
    }
  g_array_append_val (filling->free, rect);
}

/* Takes @taken out of what is free. */
static void
take (const Making *making, Filling *filling, const SqLayRect *taken)
{
  g_autoptr (GArray) met = g_array_new (FALSE, FALSE, sizeof (SqLayRect));

  for (guint i = filling->free->len; i > 0; i--)
    {
      SqLayRect rect = g_array_index (filling->free, SqLayRect, i - 1);
      if (!sq_lay_rects_meet (&rect, taken))
        continue;
      g_array_append_val (met, rect);
      g_array_remove_index_fast (filling->free, i - 1);
    }
  for (guint i = 0; i < met->len; i++)
    {
      SqLayRect rect = g_array_index (met, SqLayRect, i);
      if (taken->x0 > rect.x0)
        add_free (making, filling, (SqLayRect){ rect.x0, rect.y0, taken->x0, rect.y1 });
      if (taken->x1 < rect.x1)
        add_free (making, filling, (SqLayRect){ taken->x1, rect.y0, rect.x1, rect.y1 });
      if (taken->y0 > rect.y0)
        add_free (making, filling, (SqLayRect){ rect.x0, rect.y0, rect.x1, taken->y0 });
      if (taken->y1 < rect.y1)
        add_free (making, filling, (SqLayRect){ rect.x0, taken->y1, rect.x1, rect.y1 });
    }
}

static void
put (const Making *making, const SqLaySpot *spot)
{
  Filling *filling = &making->fillings[spot->strip];
  const SqLayForm *form = &making->forms->of_kind[spot->kind].forms[spot->pose];
  SqLayRect rect = sq_lay_form_rect (form, spot->x, spot->y);

  take (making, filling, &rect);
  filling->end = MAX (filling->end, spot->x + form->length);
}

/* What lies far behind is left as it is. */
static void
leave (Filling *filling)
{
  for (guint i = filling->free->len; i > 0; i--)
    if (g_array_index (filling->free, SqLayRect, i - 1).x1 < filling->end - REACH_UM)
      g_array_remove_index_fast (filling->free, i - 1);
}

/* ---- a place in a free rectangle ----------------------------------------------------------- */

/* The place in @room nearest the cut end of those at one side of it where the pattern falls; with a
 * drop in the row beside it, too. */
static gboolean
find_in_room (const SqLayPhase *phase, const SqLayRect *room, gboolean is_top, Place *place)
{
  gint64 y = is_top ? sq_lay_phase_last_y (phase, room->y1) : sq_lay_phase_next_y (phase, room->y0);
  gboolean found = FALSE;

  for (guint i = 0; i < (phase->drop_nm != 0 ? 2 : 1); i++)
    {
      if (i > 0)
        y = is_top ? sq_lay_phase_last_y (phase, y - 1) : sq_lay_phase_next_y (phase, y + 1);
      if (y < room->y0 || y > room->y1)
        break;
      gint64 x = sq_lay_phase_next_x (phase, y, room->x0);
      if (x > room->x1 || (found && x >= place->x))
        continue;
      place->x = x;
      place->y = y;
      found = TRUE;
    }
  return found;
}

/* As the free rectangle @rect has it. */
static gboolean
find_in_rect (const Making *making, const Filling *filling, const SqLayRect *rect,
              const SqLayForm *form, Place *place)
{
  SqLayRect on_cloth = sq_lay_rect_on_cloth (filling->strip, rect), room;
  gboolean is_top = making->rule.is_outward && filling->strip->width - on_cloth.y1 < on_cloth.y0;

  return sq_lay_form_room (form, filling->strip, rect, &room)
         && find_in_room (&form->phases[filling->index], &room, is_top, place);
}

static gboolean
is_better (const Place *a, const Place *b)
{
  for (guint i = 0; i < G_N_ELEMENTS (a->cost); i++)
    if (a->cost[i] != b->cost[i])
      return a->cost[i] < b->cost[i];
  return FALSE;
}

/* ---- in order ------------------------------------------------------------------------------ */

static void
rate (const Making *making, const Filling *filling, const SqLayRect *rect, const SqLayForm *form,
      Place *place)
{
  SqLayRect room = sq_lay_rect_on_cloth (filling->strip, rect);
  gint64 end = place->x + form->length, reach = MAX (filling->end, end);
  double across = (double) (room.y1 - room.y0 - form->width);
  double along = (double) (MIN (room.x1, reach) - room.x0 - form->length);
  double *cost = place->cost;

  cost[0] = (double) reach;
  cost[2] = (double) end;
  switch (making->rule.fit)
    {
    case FIT_SHORT_SIDE:
      cost[1] = MIN (along, across);
      break;
    case FIT_LONG_SIDE:
      cost[1] = MAX (along, across);
      break;
    case FIT_AREA:
      cost[1] = (along + (double) form->length) * (double) (room.y1 - room.y0);
      break;
    case FIT_END:
      cost[0] = (double) end;
      cost[1] = making->rule.is_outward ? across : (double) place->y;
      break;
    case FIT_START:
      cost[0] = (double) place->x;
      cost[1] = across;
      break;
    }
}

static gboolean
find_place (const Making *making, const Filling *filling, guint run, Place *best)
{
  const SqLayKindForms *forms = &making->forms->of_kind[making->runs[run].kind];
  gboolean found = FALSE;

  for (guint i = 0; i < filling->free->len; i++)
    for (guint k = 0; k < forms->n; k++)
      {
        const SqLayRect *rect = &g_array_index (filling->free, SqLayRect, i);
        Place place = { .run = run, .pose = k };
        if (!find_in_rect (making, filling, rect, &forms->forms[k], &place))
          continue;
        rate (making, filling, rect, &forms->forms[k], &place);
        if (!found || is_better (&place, best))
          *best = place;
        found = TRUE;
      }
  return found;
}

static gboolean
is_stopped (const Making *making)
{
  const SqTask *watch = making->watch;
  return watch != NULL && watch->is_cancelled != NULL && watch->is_cancelled (watch->data);
}

static void
lay (const Making *making, const Filling *filling, const Place *place)
{
  SqLayRun *run = &making->runs[place->run];
  SqLaySpot spot = { run->kind, filling->index, place->pose, place->x, place->y };

  g_array_append_val (making->spots, spot);
  put (making, &spot);
  run->count--;
}

/* FALSE if it was stopped. */
static gboolean
lay_in_order (const Making *making)
{
  guint n_strips = making->kinds->task->strips->len;
  Place place = { 0 };

  for (guint i = 0; i < making->n_runs; i++)
    for (guint s = 0; s < n_strips; s++)
      while (making->runs[i].count > 0 && find_place (making, &making->fillings[s], i, &place))
        {
          lay (making, &making->fillings[s], &place);
          if (is_stopped (making))
            return FALSE;
        }
  return TRUE;
}

/* ---- what fits best next ------------------------------------------------------------------- */

static int
compare_free (gconstpointer a, gconstpointer b)
{
  const SqLayRect *p = a, *q = b;

  if (p->x0 != q->x0)
    return p->x0 < q->x0 ? -1 : 1;
  if (p->y0 != q->y0)
    return p->y0 < q->y0 ? -1 : 1;
  return (p->x1 > q->x1) - (p->x1 < q->x1);
}

/* What fits best into one free rectangle of the first runs that are not laid. */
static gboolean
find_fit (const Making *making, const Filling *filling, const SqLayRect *rect, Place *best)
{
  SqLayRect room = sq_lay_rect_on_cloth (filling->strip, rect);
  gboolean found = FALSE;
  guint n = 0;

  for (guint i = 0; i < making->n_runs && n < making->rule.choice; i++)
    {
      const SqLayKindForms *forms = &making->forms->of_kind[making->runs[i].kind];
      if (making->runs[i].count == 0)
        continue;
      n++;
      for (guint k = 0; k < forms->n; k++)
        {
          const SqLayForm *form = &forms->forms[k];
          Place place = { .run = i, .pose = k };
          if (!find_in_rect (making, filling, rect, form, &place))
            continue;
          double across = (double) (room.y1 - room.y0 - form->width);
          double along = (double) -form->length;
          place.cost[0] = (double) (place.x - room.x0);
          place.cost[1] = making->rule.is_longest ? along : across;
          place.cost[2] = making->rule.is_longest ? across : along;
          if (!found || is_better (&place, best))
            *best = place;
          found = TRUE;
        }
    }
  return found;
}

/* Into the foremost free rectangle that any piece fits into. */
static gboolean
find_next (const Making *making, Filling *filling, Place *place)
{
  g_array_sort (filling->free, compare_free);
  for (guint i = 0; i < filling->free->len; i++)
    if (find_fit (making, filling, &g_array_index (filling->free, SqLayRect, i), place))
      return TRUE;
  return FALSE;
}

/* FALSE if it was stopped. */
static gboolean
lay_by_choice (const Making *making)
{
  Place place = { 0 };

  for (guint s = 0; s < making->kinds->task->strips->len; s++)
    while (find_next (making, &making->fillings[s], &place))
      {
        lay (making, &making->fillings[s], &place);
        if (is_stopped (making))
          return FALSE;
      }
  /* What had no room may have been all that was looked at. */
  return lay_in_order (making);
}

/* ---- all of them --------------------------------------------------------------------------- */

static Filling *
fillings_new (Making *making)
{
  const SqLayTask *task = making->kinds->task;
  Filling *fillings = g_new0 (Filling, MAX (task->strips->len, 1));

  making->fillings = fillings;
  for (guint i = 0; i < task->strips->len; i++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (task, i);
      SqLayRect all = sq_lay_strip_rect (strip);
      fillings[i] = (Filling){ strip, i, g_array_new (FALSE, FALSE, sizeof (SqLayRect)), 0 };
      add_free (making, &fillings[i], all);
      for (guint k = 0; k < strip->n_flaws; k++)
        {
          SqLayRect flaw = sq_lay_rect (&strip->flaws[k], (SqGrid){ 0, 0 });
          take (making, &fillings[i], &flaw);
        }
    }
  for (guint i = 0; i < making->kinds->pinned->len; i++)
    put (making, &g_array_index (making->kinds->pinned, SqLaySpot, i));
  return fillings;
}

static void
fillings_free (Filling *fillings, guint n)
{
  for (guint i = 0; i < n; i++)
    g_array_unref (fillings[i].free);
  g_free (fillings);
}

/* The runs from @from on that may be laid in any order; how many. */
static guint
batch_from (const GArray *order, guint from)
{
  guint to = from + 1;

  while (to < order->len && !g_array_index (order, SqLayRun, to).starts_batch
         && g_array_index (order, SqLayRun, to).level
                == g_array_index (order, SqLayRun, from).level)
    to++;
  return to - from;
}

/* FALSE if it was stopped. */
static gboolean
lay_batch (Making *making, const GArray *order, guint from)
{
  g_autofree SqLayRun *runs = g_memdup2 (&g_array_index (order, SqLayRun, from),
                                         making->n_runs * sizeof (SqLayRun));

  making->runs = runs;
  if (runs[0].starts_batch)
    for (guint i = 0; i < making->kinds->task->strips->len; i++)
      leave (&making->fillings[i]);
  if (making->rule.choice > 0 ? !lay_by_choice (making) : !lay_in_order (making))
    return FALSE;
  for (guint i = 0; i < making->n_runs; i++)
    if (runs[i].count > 0)
      making->why[runs[i].kind] = sq_lay_forms_why (making->forms, runs[i].kind);
  return TRUE;
}

SqLay *
sq_lay_boxes (const SqLayKinds *kinds, const GArray *order, guint rule, const SqTask *watch)
{
  g_autofree SqUnlaidWhy *why = g_new0 (SqUnlaidWhy, MAX (kinds->kinds->len, 1));
  g_autoptr (SqLayForms) forms = sq_lay_forms_new (kinds);
  g_autoptr (GArray) spots = g_array_new (FALSE, FALSE, sizeof (SqLaySpot));
  Making making = { .kinds = kinds,
                    .watch = watch,
                    .rule = rules[rule % SQ_N_LAY_BOX_RULES],
                    .forms = forms,
                    .spots = spots,
                    .why = why };
  Filling *fillings = fillings_new (&making);
  gboolean goes_on = watch == NULL || !is_stopped (&making);

  for (guint i = 0; i < kinds->kinds->len; i++)
    why[i] = kinds->task->strips->len > 0 ? SQ_UNLAID_NO_ROOM : SQ_UNLAID_TOO_WIDE;
  for (guint i = 0; i < order->len && goes_on; i += making.n_runs)
    {
      making.n_runs = batch_from (order, i);
      goes_on = lay_batch (&making, order, i);
    }
  fillings_free (fillings, kinds->task->strips->len);
  return goes_on ? sq_lay_kinds_to_lay (kinds, spots, why) : NULL;
}

/* ---- whether they are boxes ---------------------------------------------------------------- */

/* A simple ring whose points are all on the sides of its box, all four corners among them. */
static gboolean
is_box (const SqGridRing *ring)
{
  SqGridBox box = sq_grid_rings_box (ring, 1);
  guint corners = 0;

  for (guint i = 0; i < ring->n; i++)
    {
      SqGrid p = ring->points[i];
      gboolean is_at_x = p.x == box.min.x || p.x == box.max.x;
      gboolean is_at_y = p.y == box.min.y || p.y == box.max.y;
      if (!is_at_x && !is_at_y)
        return FALSE;
      if (is_at_x && is_at_y)
        corners |= 1u << ((p.x == box.max.x ? 1 : 0) + (p.y == box.max.y ? 2 : 0));
    }
  return corners == 15;
}

static gboolean
item_is_box (const SqLayItem *item)
{
  for (guint i = 0; i < item->n_poses; i++)
    if (item->poses[i].turn % SQ_GRID_QUARTER != 0)
      return FALSE;
  return item->n_rings == 1 && item->n_keep == 1 && is_box (&item->rings[0])
         && is_box (&item->keep[0]);
}

gboolean
sq_lay_kinds_are_boxes (const SqLayKinds *kinds)
{
  for (guint i = 0; i < kinds->task->items->len; i++)
    {
      const SqLayItem *item = sq_lay_task_item (kinds->task, i);
      if (!item->crosses && !item_is_box (item))
        return FALSE;
    }
  return kinds->task->items->len > 0;
}
