/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-filling.h"

/* A part of a piece in the way of a part of a shape. */
typedef struct
{
  const SqLayShape *part, *other;
  gint64 x, y;     /* where the other lies */
  gint64 from, to; /* where the shape may not lie; at first by boxes alone, so too much */
  gboolean is_exact;
  gint64 core_from, core_to; /* by cores alone, so too little: quick to tell that it may not */
} Bar;

/* ---- what lies ----------------------------------------------------------------------------- */

static void
begin_filling (SqLayFilling *filling, const SqLayStrip *strip)
{
  *filling = (SqLayFilling){
    .strip = strip,
    .flaws = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_lay_shape_free),
    .laid = g_array_new (FALSE, FALSE, sizeof (SqLaid)),
    .bars = g_array_new (FALSE, FALSE, sizeof (Bar)),
  };
  for (guint i = 0; i < strip->n_flaws; i++)
    {
      SqLayShape *shape = sq_lay_shape_new_box (&strip->flaws[i]);
      SqLaid laid = { shape, strip->flaws[i].min.x, strip->flaws[i].min.y };
      g_ptr_array_add (filling->flaws, shape);
      g_array_append_val (filling->laid, laid);
    }
}

SqLayFilling *
sq_lay_fillings_new (const SqLayKinds *kinds)
{
  guint n_strips = kinds->task->strips->len;
  SqLayFilling *fillings = g_new0 (SqLayFilling, MAX (n_strips, 1));

  for (guint i = 0; i < n_strips; i++)
    begin_filling (&fillings[i], sq_lay_task_strip (kinds->task, i));
  for (guint i = 0; i < kinds->pinned->len; i++)
    {
      const SqLaySpot *spot = &g_array_index (kinds->pinned, SqLaySpot, i);
      SqLaid laid = { sq_lay_kind (kinds, spot->kind)->shapes[spot->pose], spot->x, spot->y };
      g_array_append_val (fillings[spot->strip].laid, laid);
    }
  return fillings;
}

void
sq_lay_fillings_free (SqLayFilling *fillings, guint n_strips)
{
  for (guint i = 0; i < n_strips; i++)
    {
      g_array_unref (fillings[i].laid);
      g_array_unref (fillings[i].bars);
      g_ptr_array_unref (fillings[i].flaws);
    }
  g_free (fillings);
}

void
sq_lay_filling_put (SqLayFilling *filling, const SqLayShape *shape, gint64 x, gint64 y)
{
  SqLaid laid = { shape, x, y };

  g_array_append_val (filling->laid, laid);
  filling->end = MAX (filling->end, x + shape->length);
}

void
sq_lay_filling_leave (SqLayFilling *filling, gint64 reach)
{
  guint n = 0;

  filling->floor = MAX (filling->floor, filling->end - reach);
  for (guint i = 0; i < filling->laid->len; i++)
    {
      const SqLaid *laid = &g_array_index (filling->laid, SqLaid, i);
      if (laid->x + laid->shape->keep.max.x > filling->floor)
        g_array_index (filling->laid, SqLaid, n++) = *laid;
    }
  g_array_set_size (filling->laid, n);
}

/* ---- what is in the way -------------------------------------------------------------------- */

static gboolean
have_common_height (const SqGridBox *a, gint64 up, const SqGridBox *b)
{
  return up + a->min.y < b->max.y && up + a->max.y > b->min.y;
}

/* Adds what @other at @laid keeps @part at height @y from, if any of it is between @least and
 * @most. */
static void
add_bar (GArray *bars, const SqLayShape *part, gint64 y, const SqLaid *laid,
         const SqLayShape *other, gint64 least, gint64 most)
{
  gint64 up = y - laid->y;
  Bar bar = { .part = part,
              .other = other,
              .x = laid->x,
              .y = laid->y,
              .from = laid->x + other->keep.min.x - part->keep.max.x,
              .to = laid->x + other->keep.max.x - part->keep.min.x };

  if (bar.to <= least || bar.from >= most || !have_common_height (&part->keep, up, &other->keep))
    return;
  if (have_common_height (&part->core, up, &other->core))
    {
      bar.core_from = laid->x + other->core.min.x - part->core.max.x;
      bar.core_to = laid->x + other->core.max.x - part->core.min.x;
      bar.is_exact = bar.core_from == bar.from && bar.core_to == bar.to;
    }
  g_array_append_val (bars, bar);
}

static void
collect_bars (SqLayFilling *filling, const SqLayShape *shape, gint64 y, gint64 least, gint64 most)
{
  g_array_set_size (filling->bars, 0);
  for (guint i = 0; i < filling->laid->len; i++)
    {
      const SqLaid *laid = &g_array_index (filling->laid, SqLaid, i);
      const SqLayShape *other = laid->shape;
      if (laid->x + other->keep.max.x - shape->keep.min.x <= least
          || laid->x + other->keep.min.x - shape->keep.max.x >= most
          || !have_common_height (&shape->keep, y - laid->y, &other->keep))
        continue;
      for (guint k = 0; k < other->n_parts; k++)
        for (guint p = 0; p < shape->n_parts; p++)
          add_bar (filling->bars, shape->parts[p], y, laid, other->parts[k], least, most);
    }
}

static gboolean
is_barred (Bar *bar, gint64 y, gint64 x)
{
  if (x <= bar->from || x >= bar->to)
    return FALSE;
  if (bar->is_exact)
    return TRUE;
  bar->is_exact = TRUE;
  if (!sq_lay_shape_bar (bar->part, bar->other, y - bar->y, &bar->from, &bar->to))
    {
      bar->from = G_MAXINT64;
      bar->to = G_MININT64;
      return FALSE;
    }
  bar->from += bar->x;
  bar->to += bar->x;
  return x > bar->from && x < bar->to;
}

/* ---- to the right -------------------------------------------------------------------------- */

/* The next x out of all cores, or past @most. */
static gint64
leave_cores (const GArray *bars, const SqLayPhase *phase, gint64 y, gint64 x, gint64 most)
{
  gboolean moved = TRUE;

  while (moved && x <= most)
    {
      moved = FALSE;
      for (guint i = 0; i < bars->len; i++)
        {
          const Bar *bar = &g_array_index (bars, Bar, i);
          if (x > bar->core_from && x < bar->core_to)
            {
              x = sq_lay_phase_next_x (phase, y, bar->core_to);
              moved = TRUE;
            }
        }
    }
  return x;
}

gint64
sq_lay_filling_next_x (SqLayFilling *filling, const SqLayShape *shape, const SqLayPhase *phase,
                       gint64 y, gint64 x, gint64 most)
{
  const GArray *bars = filling->bars;
  gboolean moved = TRUE;

  x = sq_lay_phase_next_x (phase, y, x);
  if (x > most)
    return x;
  collect_bars (filling, shape, y, x, G_MAXINT64);
  while (moved)
    {
      moved = FALSE;
      x = leave_cores (bars, phase, y, x, most);
      for (guint i = 0; i < bars->len && x <= most; i++)
        {
          Bar *bar = &g_array_index (bars, Bar, i);
          if (is_barred (bar, y, x))
            {
              x = sq_lay_phase_next_x (phase, y, bar->to);
              moved = TRUE;
              break;
            }
        }
    }
  return x;
}

/* ---- to the left --------------------------------------------------------------------------- */

gint64
sq_lay_filling_last_x (SqLayFilling *filling, const SqLayShape *shape, const SqLayPhase *phase,
                       gint64 y, gint64 x, gint64 least)
{
  const GArray *bars = filling->bars;
  gboolean moved = TRUE;

  x = sq_lay_phase_last_x (phase, y, x);
  if (x < least)
    return x;
  collect_bars (filling, shape, y, least, x);
  while (moved)
    {
      moved = FALSE;
      for (guint i = 0; i < bars->len && x >= least; i++)
        {
          Bar *bar = &g_array_index (bars, Bar, i);
          if (is_barred (bar, y, x))
            {
              x = sq_lay_phase_last_x (phase, y, bar->from);
              moved = TRUE;
            }
        }
    }
  return x;
}
