/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Free rectangles that are parted by each piece laid in them: guillotine packing, see J. Jylänki, A
 * Thousand Ways to Pack the Bin, 2010, chapter 2. */
#include "roll/lay-straight.h"

#include "roll/lay-forms.h"

/* What ends farther than this before the end of what is laid (µm) is left as it is when a new batch
 * begins. */
#define REACH_UM 2000000

/* Which of the free rectangles a piece has room in it takes: where least is left. */
typedef enum
{
  FIT_AREA,
  FIT_SHORT_SIDE, /* of the lesser of the lengths left beside it */
  FIT_LONG_SIDE,
} Fit;
#define N_FITS 3

/* Where a rectangle is parted beside the piece laid in it. */
typedef enum
{
  PART_LARGEST, /* so that the largest rectangle remains */
  PART_EVENLY,  /* … that the smaller one is the largest it can be */
  PART_ACROSS,
  PART_ALONG,
} PartRule;
#define N_PART_RULES 4

/* A piece of a strip that is still free. */
typedef struct
{
  SqLayRect rect;
  guint strip;
  gboolean is_open;   /* as wide as the strip: a length is to be cut off it across */
  gboolean has_flaws; /* flaws may lie on it */
} Panel;

/* Where a piece may go. */
typedef struct
{
  guint panel, pose;
  gint64 x, y;
  double cost[2]; /* the lower the better, the first first */
} Place;

typedef struct
{
  const SqLayKinds *kinds;
  Fit fit;
  PartRule part;
  gboolean stands; /* lengths that are cut off are as long as the piece lets them be */
  SqLayForms *forms;
  GArray *panels; /* of Panel, those of earlier strips first */
  GArray *spots;  /* of SqLaySpot */
  gint64 *ends;   /* by strip: of what is laid */
  SqUnlaidWhy *why;
} Making;

/* ---- places -------------------------------------------------------------------------------- */

static SqLayRect
flaw_rect (const SqLayStrip *strip, guint i)
{
  return sq_lay_rect (&strip->flaws[i], (SqGrid){ 0, 0 });
}

/* The flaw that a form at (x, y) would lie on. */
static const SqGridBox *
flaw_at (const SqLayStrip *strip, const SqLayForm *form, gint64 x, gint64 y)
{
  for (guint i = 0; i < strip->n_flaws; i++)
    {
      SqLayRect flaw = flaw_rect (strip, i), rect = sq_lay_form_rect (form, x, y);
      if (sq_lay_rects_meet (&flaw, &rect))
        return &strip->flaws[i];
    }
  return NULL;
}

/* The least x at height @y, which the pattern allows, off flaws; more than room->x1: none. */
static gint64
least_x (const SqLayStrip *strip, const Panel *panel, const SqLayForm *form,
         const SqLayPhase *phase, const SqLayRect *room, gint64 y)
{
  gint64 x = sq_lay_phase_next_x (phase, y, room->x0);
  const SqGridBox *flaw;

  while (panel->has_flaws && x <= room->x1 && (flaw = flaw_at (strip, form, x, y)) != NULL)
    x = sq_lay_phase_next_x (phase, y, flaw->max.x - form->cut.x0);
  return x;
}

/* Tries the allowed height from @y on; with a drop the one after it, too. */
static void
try_height (const SqLayStrip *strip, const Panel *panel, const SqLayForm *form,
            const SqLayPhase *phase, const SqLayRect *room, gint64 y, Place *place, gboolean *found)
{
  guint n = phase->drop_nm != 0 ? 2 : 1;

  for (guint i = 0; i < n; i++, y++)
    {
      y = sq_lay_phase_next_y (phase, y);
      if (y > room->y1)
        return;
      gint64 x = least_x (strip, panel, form, phase, room, y);
      if (x > room->x1 || (*found && (x > place->x || (x == place->x && y >= place->y))))
        continue;
      *found = TRUE;
      place->x = x;
      place->y = y;
    }
}

/* The lowest of the places nearest the cut end, of those at the panel's edge and at flaws. */
static gboolean
find_in_panel (const SqLayStrip *strip, const Panel *panel, const SqLayForm *form, Place *place)
{
  const SqLayPhase *phase = &form->phases[panel->strip];
  gboolean found = FALSE;
  SqLayRect room;

  if (!sq_lay_form_room (form, strip, &panel->rect, &room))
    return FALSE;
  try_height (strip, panel, form, phase, &room, room.y0, place, &found);
  for (guint i = 0; panel->has_flaws && i < strip->n_flaws; i++)
    {
      gint64 y = strip->flaws[i].max.y - form->cut.y0;
      if (y > room.y0 && strip->flaws[i].min.x < panel->rect.x1
          && panel->rect.x0 < strip->flaws[i].max.x)
        try_height (strip, panel, form, phase, &room, y, place, &found);
    }
  return found;
}

/* Lengths are cut off where nothing that is cut off already has room, the first first. */
static void
rate (const Making *making, const Panel *panel, const SqLayForm *form, Place *place)
{
  SqLayRect free = sq_lay_rect_on_cloth (sq_lay_task_strip (making->kinds->task, panel->strip),
                                         &panel->rect);
  double length = (double) (free.x1 - free.x0 - form->length);
  double width = (double) (free.y1 - free.y0 - form->width);

  if (panel->is_open)
    {
      place->cost[0] = 1e30 + (double) panel->rect.x0 * 1e20;
      place->cost[1] = making->stands ? (double) -form->length : (double) (place->x + form->length);
      return;
    }
  place->cost[0] = making->fit == FIT_AREA         ? sq_lay_rect_area (&free)
                   : making->fit == FIT_SHORT_SIDE ? MIN (length, width)
                                                   : MAX (length, width);
  place->cost[1] = making->fit == FIT_AREA ? MIN (length, width) : sq_lay_rect_area (&free);
}

static gboolean
is_better (const Place *a, const Place *b)
{
  if (a->cost[0] != b->cost[0])
    return a->cost[0] < b->cost[0];
  return a->cost[1] < b->cost[1];
}

/* The best place on the first strip that has one. */
static gboolean
find_place (Making *making, const SqLayKindForms *forms, Place *best)
{
  gboolean found = FALSE;
  guint strip_found = 0;

  for (guint i = 0; i < making->panels->len; i++)
    {
      const Panel *panel = &g_array_index (making->panels, Panel, i);
      const SqLayStrip *strip = sq_lay_task_strip (making->kinds->task, panel->strip);
      if (found && panel->strip > strip_found)
        continue;
      for (guint k = 0; k < forms->n; k++)
        {
          Place place = { .panel = i, .pose = k };
          if (!find_in_panel (strip, panel, &forms->forms[k], &place))
            continue;
          rate (making, panel, &forms->forms[k], &place);
          if (!found || panel->strip < strip_found || is_better (&place, best))
            *best = place;
          found = TRUE;
          strip_found = panel->strip;
        }
    }
  return found;
}

/* ---- cuts ---------------------------------------------------------------------------------- */

/* Whether @panel is cut across first beside @cut, which is laid in it. */
static gboolean
is_cut_across (const Making *making, const Panel *panel, const SqLayRect *cut)
{
  SqLayRect all = sq_lay_rect_on_cloth (sq_lay_task_strip (making->kinds->task, panel->strip),
                                        &panel->rect);
  double length = (double) MAX (all.x1 - cut->x1, 0), width = (double) MAX (all.y1 - cut->y1, 0);
  double behind = length * (double) (all.y1 - all.y0), above = width * (double) (all.x1 - all.x0);

  if (panel->is_open)
    return TRUE;
  switch (making->part)
    {
    case PART_LARGEST:
      return behind >= above;
    case PART_EVENLY:
      return MIN (behind, width * (double) (cut->x1 - cut->x0))
             >= MIN (above, length * (double) (cut->y1 - cut->y0));
    case PART_ACROSS:
      return TRUE;
    case PART_ALONG:
      break;
    }
  return FALSE;
}

static gboolean
meets_flaw (const SqLayStrip *strip, const SqLayRect *rect)
{
  for (guint i = 0; i < strip->n_flaws; i++)
    {
      SqLayRect flaw = flaw_rect (strip, i);
      if (sq_lay_rects_meet (&flaw, rect))
        return TRUE;
    }
  return FALSE;
}

static void
add_panel (Making *making, const Panel *from, SqLayRect rect, gboolean is_open)
{
  const SqLayStrip *strip = sq_lay_task_strip (making->kinds->task, from->strip);
  Panel panel = { rect, from->strip, is_open, from->has_flaws && meets_flaw (strip, &rect) };

  SqLayRect free = sq_lay_rect_on_cloth (strip, &rect);

  if (free.x1 - free.x0 >= making->forms->least_length
      && free.y1 - free.y0 >= making->forms->least_width)
    g_array_append_val (making->panels, panel);
}

/* Parts the panel of @place about the piece laid there. */
static void
part_panel (Making *making, const SqLayForm *form, const Place *place)
{
  Panel panel = g_array_index (making->panels, Panel, place->panel);
  SqLayRect all = panel.rect;
  SqLayRect cut = sq_lay_form_rect (form, place->x, place->y);
  gboolean across = is_cut_across (making, &panel, &cut);
  SqLayRect row = all, column = all;

  if (across)
    {
      column.x0 = cut.x0;
      column.x1 = cut.x1;
    }
  else
    {
      row.y0 = cut.y0;
      row.y1 = cut.y1;
    }
  g_array_remove_index_fast (making->panels, place->panel);
  add_panel (making, &panel, (SqLayRect){ row.x0, row.y0, cut.x0, row.y1 }, FALSE);
  add_panel (making, &panel, (SqLayRect){ cut.x1, row.y0, row.x1, row.y1 }, panel.is_open);
  add_panel (making, &panel, (SqLayRect){ column.x0, column.y0, column.x1, cut.y0 }, FALSE);
  add_panel (making, &panel, (SqLayRect){ column.x0, cut.y1, column.x1, column.y1 }, FALSE);
}

/* The strips but for what is pinned. */
static void
add_strips (Making *making)
{
  const SqLayKinds *kinds = making->kinds;

  for (guint i = 0; i < kinds->task->strips->len; i++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (kinds->task, i);
      g_autoptr (GArray) pinned = g_array_new (FALSE, FALSE, sizeof (SqLayRect));
      g_autoptr (GArray) rest = g_array_new (FALSE, FALSE, sizeof (SqLayRect));
      SqLayRect all = sq_lay_strip_rect (strip);
      Panel panel = { all, i, TRUE, strip->n_flaws > 0 };
      for (guint k = 0; k < kinds->pinned->len; k++)
        {
          const SqLaySpot *spot = &g_array_index (kinds->pinned, SqLaySpot, k);
          const SqLayForm *form = &making->forms->of_kind[spot->kind].forms[spot->pose];
          SqLayRect rect = sq_lay_form_rect (form, spot->x, spot->y);
          if (spot->strip != i)
            continue;
          g_array_append_val (pinned, rect);
          making->ends[i] = MAX (making->ends[i], spot->x + form->length);
        }
      sq_lay_rects_part (pinned, &all, NULL, rest);
      for (guint k = 0; k < rest->len; k++)
        {
          SqLayRect rect = g_array_index (rest, SqLayRect, k);
          add_panel (making, &panel, rect, rect.y0 == all.y0 && rect.y1 == all.y1);
        }
    }
}

/* ---- all of them --------------------------------------------------------------------------- */

/* What lies far behind is left as it is. */
static void
leave (Making *making)
{
  for (guint i = making->panels->len; i > 0; i--)
    {
      const Panel *panel = &g_array_index (making->panels, Panel, i - 1);
      if (!panel->is_open && panel->rect.x1 < making->ends[panel->strip] - REACH_UM)
        g_array_remove_index_fast (making->panels, i - 1);
    }
}

static gboolean
is_stopped (const SqTask *watch)
{
  return watch != NULL && watch->is_cancelled != NULL && watch->is_cancelled (watch->data);
}

/* FALSE if it was stopped. */
static gboolean
lay_run (Making *making, const SqLayRun *run, const SqTask *watch)
{
  const SqLayKindForms *forms = &making->forms->of_kind[run->kind];
  Place place = { 0 };

  if (run->starts_batch)
    leave (making);
  for (guint i = 0; i < run->count; i++)
    {
      if (is_stopped (watch))
        return FALSE;
      if (!find_place (making, forms, &place))
        {
          making->why[run->kind] = sq_lay_forms_why (making->forms, run->kind);
          return TRUE;
        }
      const SqLayForm *form = &forms->forms[place.pose];
      guint strip = g_array_index (making->panels, Panel, place.panel).strip;
      SqLaySpot spot = { run->kind, strip, place.pose, place.x, place.y };
      g_array_append_val (making->spots, spot);
      making->ends[strip] = MAX (making->ends[strip], place.x + form->length);
      part_panel (making, form, &place);
    }
  return TRUE;
}

SqLay *
sq_lay_straight (const SqLayKinds *kinds, const GArray *order, guint rule, const SqTask *watch)
{
  guint n_kinds = MAX (kinds->kinds->len, 1);
  g_autofree SqUnlaidWhy *why = g_new0 (SqUnlaidWhy, n_kinds);
  g_autofree gint64 *ends = g_new0 (gint64, MAX (kinds->task->strips->len, 1));
  g_autoptr (SqLayForms) forms = sq_lay_forms_new (kinds);
  g_autoptr (GArray) panels = g_array_new (FALSE, FALSE, sizeof (Panel));
  g_autoptr (GArray) spots = g_array_new (FALSE, FALSE, sizeof (SqLaySpot));
  Making making = { .kinds = kinds,
                    .fit = rule % N_FITS,
                    .part = rule / N_FITS % N_PART_RULES,
                    .stands = rule / (N_FITS * N_PART_RULES) % 2 != 0,
                    .forms = forms,
                    .panels = panels,
                    .spots = spots,
                    .ends = ends,
                    .why = why };
  gboolean goes_on = TRUE;

  for (guint i = 0; i < n_kinds; i++)
    why[i] = kinds->task->strips->len > 0 ? SQ_UNLAID_NO_ROOM : SQ_UNLAID_TOO_WIDE;
  add_strips (&making);
  for (guint i = 0; i < order->len && goes_on; i++)
    goes_on = lay_run (&making, &g_array_index (order, SqLayRun, i), watch);
  return goes_on ? sq_lay_kinds_to_lay (kinds, spots, why) : NULL;
}
