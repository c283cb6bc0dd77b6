/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-cuts.h"

#include <stdlib.h>

SqGridBox
sq_lay_cut_box (const SqLayItem *item, SqGridPose pose)
{
  SqGridBox box = sq_lay_item_box (item, pose), keep;

  if (pose.turn % SQ_GRID_QUARTER == 0)
    {
      SqGridBox upright = sq_grid_rings_box (item->keep, item->n_keep);
      SqGrid a = sq_grid_posed (upright.min, pose), b = sq_grid_posed (upright.max, pose);
      keep = (SqGridBox){ { MIN (a.x, b.x), MIN (a.y, b.y) }, { MAX (a.x, b.x), MAX (a.y, b.y) } };
    }
  else
    {
      SqGridRing *posed = sq_grid_rings_posed (item->keep, item->n_keep, pose);
      keep = sq_grid_rings_box (posed, item->n_keep);
      sq_grid_rings_free (posed, item->n_keep);
    }
  return (SqGridBox){ { MIN (box.min.x, keep.min.x), MIN (box.min.y, keep.min.y) },
                      { MAX (box.max.x, keep.max.x), MAX (box.max.y, keep.max.y) } };
}

/* ---- parting ------------------------------------------------------------------------------- */

/* Some of the rectangles, next to each other in the array, and what they are to be cut from. */
typedef struct
{
  guint from, to;
  SqLayRect within;
  gboolean along;   /* cuts of one y come next; else of one x */
  gboolean is_tied; /* by cuts of the other kind they did not part */
} Part;

typedef struct
{
  GArray *rects;
  GArray *parts; /* of Part: still to be cut */
  SqLayCuts *cuts;
  GArray *rest;
} Parting;

static int
compare_x (gconstpointer a, gconstpointer b)
{
  const SqLayRect *p = a, *q = b;
  return (p->x0 > q->x0) - (p->x0 < q->x0);
}

static int
compare_y (gconstpointer a, gconstpointer b)
{
  const SqLayRect *p = a, *q = b;
  return (p->y0 > q->y0) - (p->y0 < q->y0);
}

static gint64
from_of (const SqLayRect *rect, gboolean along)
{
  return along ? rect->y0 : rect->x0;
}

static gint64
to_of (const SqLayRect *rect, gboolean along)
{
  return along ? rect->y1 : rect->x1;
}

/* @within as far as it is between @from and @to. */
static SqLayRect
slice (SqLayRect within, gboolean along, gint64 from, gint64 to)
{
  if (along)
    {
      within.y0 = MAX (within.y0, from);
      within.y1 = MIN (within.y1, to);
    }
  else
    {
      within.x0 = MAX (within.x0, from);
      within.x1 = MIN (within.x1, to);
    }
  return within;
}

/* A cut at @at; at the edge there is none to make. */
static void
cut (const Parting *parting, const Part *part, gint64 at)
{
  const SqLayRect *within = &part->within;

  if (parting->cuts == NULL || at <= from_of (within, part->along)
      || at >= to_of (within, part->along))
    return;
  parting->cuts->n++;
  parting->cuts->mm += (double) (to_of (within, !part->along) - from_of (within, !part->along))
                       / SQ_GRID_PER_MM;
}

static void
drop (const Parting *parting, const Part *part, gint64 from, gint64 to)
{
  SqLayRect rest = slice (part->within, part->along, from, to);

  if (parting->rest != NULL && rest.x0 < rest.x1 && rest.y0 < rest.y1)
    g_array_append_val (parting->rest, rest);
}

/* Cuts @part wherever that goes in its direction. FALSE where it can't be cut any more. */
static gboolean
part_once (Parting *parting, const Part *part)
{
  SqLayRect *rects = &g_array_index (parting->rects, SqLayRect, 0);
  gboolean along = part->along;
  gint64 last = from_of (&part->within, along);

  if (part->to - part->from > 1)
    qsort (&rects[part->from], part->to - part->from, sizeof *rects, along ? compare_y : compare_x);
  for (guint i = part->from, end; i < part->to; i = end)
    {
      gint64 from = from_of (&rects[i], along), to = to_of (&rects[i], along);
      for (end = i + 1; end < part->to && from_of (&rects[end], along) < to; end++)
        to = MAX (to, to_of (&rects[end], along));
      gboolean is_whole = end - i == part->to - part->from;
      if (is_whole && part->is_tied && end - i > 1)
        return FALSE;
      if (from > last)
        {
          cut (parting, part, from);
          drop (parting, part, last, from);
        }
      cut (parting, part, to);
      Part next = { i, end, slice (part->within, along, from, to), !along, is_whole };
      if (end - i > 1 || !part->is_tied || !is_whole)
        g_array_append_val (parting->parts, next);
      last = to;
    }
  drop (parting, part, last, to_of (&part->within, along));
  return TRUE;
}

gboolean
sq_lay_rects_part (GArray *rects, const SqLayRect *within, SqLayCuts *cuts, GArray *rest)
{
  g_autoptr (GArray) parts = g_array_new (FALSE, FALSE, sizeof (Part));
  Parting parting = { rects, parts, cuts, rest };
  Part all = { 0, rects->len, *within, FALSE, FALSE };
  gboolean goes = TRUE;

  g_array_append_val (parts, all);
  while (goes && parts->len > 0)
    {
      Part part = g_array_index (parts, Part, parts->len - 1);
      g_array_set_size (parts, parts->len - 1);
      goes = part_once (&parting, &part);
    }
  return goes;
}

/* ---- a lay --------------------------------------------------------------------------------- */

gboolean
sq_lay_is_straight (const SqLayTask *task, const SqLay *lay, guint *n_cuts, double *cut_mm)
{
  g_autoptr (GPtrArray) by_strip = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  SqLayCuts cuts = { 0, 0 };
  gboolean is_straight = TRUE;

  for (guint i = 0; i < task->strips->len; i++)
    g_ptr_array_add (by_strip, g_array_new (FALSE, FALSE, sizeof (SqLayRect)));
  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      SqGridBox box = sq_lay_cut_box (sq_lay_task_item (task, placed->item), placed->pose);
      SqLayRect rect = sq_lay_rect (&box, placed->at);
      g_array_append_val ((GArray *) g_ptr_array_index (by_strip, placed->strip), rect);
    }
  for (guint i = 0; i < task->strips->len && is_straight; i++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (task, i);
      SqLayRect within = { 0, 0, sq_lay_strip_end (strip), strip->width };
      is_straight = sq_lay_rects_part (g_ptr_array_index (by_strip, i), &within, &cuts, NULL);
    }
  if (n_cuts != NULL)
    *n_cuts = cuts.n;
  if (cut_mm != NULL)
    *cut_mm = cuts.mm;
  return is_straight;
}
