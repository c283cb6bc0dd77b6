/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Free rectangles that are parted by each piece laid in them: guillotine packing, see J. Jylänki, A
 * Thousand Ways to Pack the Bin, 2010, chapter 2. */
#include "roll/lay-straight.h"

#include "roll/lay-phase.h"

/* What ends farther than this before the end of what is laid (µm) is left as it is when a new batch
 * begins. */
#define REACH_UM 2000000

/* Half a gap may lie beyond the cloth's edges: room for any. */
#define BEYOND_UM G_GINT64_CONSTANT (2000000000)

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

/* A kind in one pose. Its origin is that of the cut line's box. */
typedef struct
{
  gint64 length, width;
  SqLayRect cut;      /* what counts, from the origin */
  SqLayPhase *phases; /* by strip */
} Form;

/* A kind's forms, made when it is first laid. */
typedef struct
{
  Form *forms;
  guint n;
} Forms;

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
  Forms *forms;    /* by kind */
  GArray *panels;  /* of Panel, those of earlier strips first */
  GArray *spots;   /* of SqLaySpot */
  gint64 *ends;    /* by strip: of what is laid */
  gint64 least_length, least_width; /* of any piece */
  SqUnlaidWhy *why;
} Making;

/* ---- pieces -------------------------------------------------------------------------------- */

static const Forms *
forms_of (Making *making, guint k)
{
  const SqLayTask *task = making->kinds->task;
  const SqLayKind *kind = sq_lay_kind (making->kinds, k);
  const SqLayItem *item = sq_lay_task_item (task, kind->first);
  Forms *forms = &making->forms[k];

  if (forms->forms != NULL)
    return forms;
  forms->n = kind->n_shapes;
  forms->forms = g_new0 (Form, kind->n_shapes);
  for (guint i = 0; i < kind->n_shapes; i++)
    {
      const SqLayShape *shape = kind->shapes[i];
      SqGridBox cut = sq_lay_cut_box (item, item->poses[i]);
      Form *form = &forms->forms[i];
      form->length = shape->length;
      form->width = shape->width;
      form->cut = (SqLayRect){ (gint64) cut.min.x - shape->at.x, (gint64) cut.min.y - shape->at.y,
                               (gint64) cut.max.x - shape->at.x, (gint64) cut.max.y - shape->at.y };
      form->phases = g_new (SqLayPhase, task->strips->len);
      for (guint s = 0; s < task->strips->len; s++)
        form->phases[s] = sq_lay_phase (item, item->poses[i], shape->at,
                                        sq_lay_task_strip (task, s));
    }
  return forms;
}

static void
forms_clear (Forms *forms)
{
  for (guint i = 0; i < forms->n; i++)
    g_free (forms->forms[i].phases);
  g_free (forms->forms);
}

/* ---- places -------------------------------------------------------------------------------- */

/* Where the origin of a form may be. */
typedef struct
{
  gint64 x0, y0, x1, y1;
} Room;

/* As far as panel and cloth let it; FALSE where they don't. */
static gboolean
find_room (const SqLayStrip *strip, const Panel *panel, const Form *form, Room *room)
{
  const SqLayRect *rect = &panel->rect, *cut = &form->cut;

  room->x0 = MAX (rect->x0 - cut->x0, 0);
  room->x1 = MIN (rect->x1 - cut->x1, sq_lay_strip_end (strip) - form->length);
  room->y0 = MAX (rect->y0 - cut->y0, 0);
  room->y1 = MIN (rect->y1 - cut->y1, strip->width - form->width);
  return room->x0 <= room->x1 && room->y0 <= room->y1;
}

/* The flaw that a form at (x, y) would lie on. */
static const SqGridBox *
flaw_at (const SqLayStrip *strip, const Form *form, gint64 x, gint64 y)
{
  for (guint i = 0; i < strip->n_flaws; i++)
    {
      const SqGridBox *flaw = &strip->flaws[i];
      if (x + form->cut.x0 < flaw->max.x && flaw->min.x < x + form->cut.x1
          && y + form->cut.y0 < flaw->max.y && flaw->min.y < y + form->cut.y1)
        return flaw;
    }
  return NULL;
}

/* The least x at height @y, which the pattern allows, off flaws; more than room->x1: none. */
static gint64
least_x (const SqLayStrip *strip, const Panel *panel, const Form *form, const SqLayPhase *phase,
         const Room *room, gint64 y)
{
  gint64 x = sq_lay_phase_next_x (phase, y, room->x0);
  const SqGridBox *flaw;

  while (panel->has_flaws && x <= room->x1 && (flaw = flaw_at (strip, form, x, y)) != NULL)
    x = sq_lay_phase_next_x (phase, y, flaw->max.x - form->cut.x0);
  return x;
}

/* Tries the allowed height from @y on; with a drop the one after it, too. */
static void
try_height (const SqLayStrip *strip, const Panel *panel, const Form *form, const SqLayPhase *phase,
            const Room *room, gint64 y, Place *place, gboolean *found)
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
find_in_panel (const SqLayStrip *strip, const Panel *panel, const Form *form, Place *place)
{
  const SqLayPhase *phase = &form->phases[panel->strip];
  gboolean found = FALSE;
  Room room;

  if (!find_room (strip, panel, form, &room))
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

/* @rect as far as it is on the cloth. */
static SqLayRect
on_cloth (const SqLayStrip *strip, const SqLayRect *rect)
{
  return (SqLayRect){ MAX (rect->x0, 0), MAX (rect->y0, 0),
                      MIN (rect->x1, sq_lay_strip_end (strip)), MIN (rect->y1, strip->width) };
}

static double
area_of (const SqLayRect *rect)
{
  return (double) (rect->x1 - rect->x0) * (double) (rect->y1 - rect->y0);
}

/* Lengths are cut off where nothing that is cut off already has room, the first first. */
static void
rate (const Making *making, const Panel *panel, const Form *form, Place *place)
{
  SqLayRect free = on_cloth (sq_lay_task_strip (making->kinds->task, panel->strip), &panel->rect);
  double length = (double) (free.x1 - free.x0 - form->length);
  double width = (double) (free.y1 - free.y0 - form->width);

  if (panel->is_open)
    {
      place->cost[0] = 1e30 + (double) panel->rect.x0 * 1e20;
      place->cost[1] = making->stands ? (double) -form->length : (double) (place->x + form->length);
      return;
    }
  place->cost[0] = making->fit == FIT_AREA         ? area_of (&free)
                   : making->fit == FIT_SHORT_SIDE ? MIN (length, width)
                                                   : MAX (length, width);
  place->cost[1] = making->fit == FIT_AREA ? MIN (length, width) : area_of (&free);
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
find_place (Making *making, const Forms *forms, Place *best)
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
  SqLayRect all = on_cloth (sq_lay_task_strip (making->kinds->task, panel->strip), &panel->rect);
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
      const SqGridBox *flaw = &strip->flaws[i];
      if (rect->x0 < flaw->max.x && flaw->min.x < rect->x1 && rect->y0 < flaw->max.y
          && flaw->min.y < rect->y1)
        return TRUE;
    }
  return FALSE;
}

static void
add_panel (Making *making, const Panel *from, SqLayRect rect, gboolean is_open)
{
  const SqLayStrip *strip = sq_lay_task_strip (making->kinds->task, from->strip);
  Panel panel = { rect, from->strip, is_open, from->has_flaws && meets_flaw (strip, &rect) };

  SqLayRect free = on_cloth (strip, &rect);

  if (free.x1 - free.x0 >= making->least_length && free.y1 - free.y0 >= making->least_width)
    g_array_append_val (making->panels, panel);
}

/* Parts the panel of @place about the piece laid there. */
static void
part_panel (Making *making, const Form *form, const Place *place)
{
  Panel panel = g_array_index (making->panels, Panel, place->panel);
  SqLayRect all = panel.rect;
  SqLayRect cut = { place->x + form->cut.x0, place->y + form->cut.y0, place->x + form->cut.x1,
                    place->y + form->cut.y1 };
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
      SqLayRect all = { -BEYOND_UM, -BEYOND_UM, sq_lay_strip_end (strip) + BEYOND_UM,
                        strip->width + BEYOND_UM };
      Panel panel = { all, i, TRUE, strip->n_flaws > 0 };
      for (guint k = 0; k < kinds->pinned->len; k++)
        {
          const SqLaySpot *spot = &g_array_index (kinds->pinned, SqLaySpot, k);
          const Form *form = &forms_of (making, spot->kind)->forms[spot->pose];
          SqLayRect rect = { spot->x + form->cut.x0, spot->y + form->cut.y0, spot->x + form->cut.x1,
                             spot->y + form->cut.y1 };
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

static void
find_least (Making *making)
{
  making->least_length = making->least_width = G_MAXINT64;
  for (guint i = 0; i < making->kinds->kinds->len; i++)
    {
      const SqLayKind *kind = sq_lay_kind (making->kinds, i);
      for (guint k = 0; k < kind->n_shapes; k++)
        {
          making->least_length = MIN (making->least_length, kind->shapes[k]->length);
          making->least_width = MIN (making->least_width, kind->shapes[k]->width);
        }
    }
}

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

/* Why a kind that was not laid was not, all strips looked at as if they were empty. */
static SqUnlaidWhy
why_not (const Making *making, const Forms *forms)
{
  const SqLayTask *task = making->kinds->task;
  SqUnlaidWhy why = SQ_UNLAID_TOO_WIDE;

  for (guint i = 0; i < task->strips->len; i++)
    for (guint k = 0; k < forms->n; k++)
      {
        const SqLayStrip *strip = sq_lay_task_strip (task, i);
        Panel empty = { { -BEYOND_UM, -BEYOND_UM, sq_lay_strip_end (strip) + BEYOND_UM,
                          strip->width + BEYOND_UM },
                        i,
                        TRUE,
                        FALSE };
        Place place;
        Room room;
        if (find_in_panel (strip, &empty, &forms->forms[k], &place))
          return SQ_UNLAID_NO_ROOM;
        if (find_room (strip, &empty, &forms->forms[k], &room))
          why = SQ_UNLAID_PATTERN;
      }
  return why;
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
  const Forms *forms = forms_of (making, run->kind);
  Place place = { 0 };

  if (run->starts_batch)
    leave (making);
  for (guint i = 0; i < run->count; i++)
    {
      if (is_stopped (watch))
        return FALSE;
      if (!find_place (making, forms, &place))
        {
          making->why[run->kind] = why_not (making, forms);
          return TRUE;
        }
      const Form *form = &forms->forms[place.pose];
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
  g_autofree Forms *forms = g_new0 (Forms, n_kinds);
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
  find_least (&making);
  add_strips (&making);
  for (guint i = 0; i < order->len && goes_on; i++)
    goes_on = lay_run (&making, &g_array_index (order, SqLayRun, i), watch);
  for (guint i = 0; i < n_kinds; i++)
    forms_clear (&forms[i]);
  return goes_on ? sq_lay_kinds_to_lay (kinds, spots, why) : NULL;
}
