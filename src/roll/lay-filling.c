/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-filling.h"

/* A part of a piece in the way of a part of a shape. */
struct SqLayBar
{
  const SqLayShape *part, *other;
  const SqLaid *laid; /* whose part the other is */
  gint64 from, to;    /* where the shape may not lie; at first by boxes alone, so too much */
  gboolean is_exact;
  gint64 core_from, core_to; /* by cores alone, so too little: quick to tell that it may not */
};

/* ---- what lies ----------------------------------------------------------------------------- */

static SqLaid
laid_at (const SqLayShape *shape, gint64 x, gint64 y)
{
  const SqGridBox *keep = &shape->keep;
  return (SqLaid){ .shape = shape,
                   .x = x,
                   .y = y,
                   .left = x + keep->min.x,
                   .right = x + keep->max.x,
                   .bottom = y + keep->min.y,
                   .top = y + keep->max.y };
}

static void
add_laid (SqLayFilling *filling, const SqLayShape *shape, gint64 x, gint64 y)
{
  SqLaid laid = laid_at (shape, x, y);
  g_array_append_val (filling->laid, laid);
}

static void
begin_filling (SqLayFilling *filling, const SqLayStrip *strip)
{
  *filling = (SqLayFilling){
    .strip = strip,
    .flaws = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_lay_shape_free),
    .laid = g_array_new (FALSE, FALSE, sizeof (SqLaid)),
  };
  for (guint i = 0; i < strip->n_flaws; i++)
    {
      SqLayShape *shape = sq_lay_shape_new_box (&strip->flaws[i]);
      g_ptr_array_add (filling->flaws, shape);
      add_laid (filling, shape, strip->flaws[i].min.x, strip->flaws[i].min.y);
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
      add_laid (&fillings[spot->strip], sq_lay_kind (kinds, spot->kind)->shapes[spot->pose],
                spot->x, spot->y);
    }
  return fillings;
}

void
sq_lay_fillings_free (SqLayFilling *fillings, guint n_strips)
{
  for (guint i = 0; i < n_strips; i++)
    {
      g_array_unref (fillings[i].laid);
      g_free (fillings[i].bars);
      g_ptr_array_unref (fillings[i].flaws);
    }
  g_free (fillings);
}

void
sq_lay_filling_put (SqLayFilling *filling, const SqLayShape *shape, gint64 x, gint64 y)
{
  add_laid (filling, shape, x, y);
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
      if (laid->right > filling->floor)
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

static SqLayBar *
new_bar (SqLayFilling *filling)
{
  if (filling->n_bars == filling->room_for_bars)
    {
      filling->room_for_bars = MAX (64, 2 * filling->room_for_bars);
      filling->bars = g_renew (SqLayBar, filling->bars, filling->room_for_bars);
    }
  return &filling->bars[filling->n_bars++];
}

/* Adds what @other at @laid keeps @part at height @y from, if any of it is between @least and
 * @most. */
static void
add_bar (SqLayFilling *filling, const SqLayShape *part, gint64 y, const SqLaid *laid,
         const SqLayShape *other, gint64 least, gint64 most)
{
  gint64 up = y - laid->y, from = laid->x + other->keep.min.x - part->keep.max.x,
         to = laid->x + other->keep.max.x - part->keep.min.x;

  if (to <= least || from >= most || !have_common_height (&part->keep, up, &other->keep))
    return;
  SqLayBar *bar = new_bar (filling);
  *bar = (SqLayBar){ .part = part, .other = other, .laid = laid, .from = from, .to = to };
  if (have_common_height (&part->core, up, &other->core))
    {
      bar->core_from = laid->x + other->core.min.x - part->core.max.x;
      bar->core_to = laid->x + other->core.max.x - part->core.min.x;
      bar->is_exact = bar->core_from == from && bar->core_to == to;
    }
}

static void
collect_bars (SqLayFilling *filling, const SqLayShape *shape, gint64 y, gint64 least, gint64 most)
{
  const SqLaid *all = (const SqLaid *) (gconstpointer) filling->laid->data;
  gint64 left = least + shape->keep.min.x, right = most + shape->keep.max.x;
  gint64 bottom = y + shape->keep.min.y, top = y + shape->keep.max.y;

  filling->n_bars = 0;
  for (guint i = 0; i < filling->laid->len; i++)
    if (all[i].right > left && all[i].left < right && all[i].bottom < top && all[i].top > bottom)
      for (guint k = 0; k < all[i].shape->n_parts; k++)
        for (guint p = 0; p < shape->n_parts; p++)
          add_bar (filling, shape->parts[p], y, &all[i], all[i].shape->parts[k], least, most);
}

static gboolean
is_barred (SqLayBar *bar, gint64 y, gint64 x)
{
  if (x <= bar->from || x >= bar->to)
    return FALSE;
  if (bar->is_exact)
    return TRUE;
  bar->is_exact = TRUE;
  if (!sq_lay_shape_bar (bar->part, bar->other, y - bar->laid->y, &bar->from, &bar->to))
    {
      bar->from = G_MAXINT64;
      bar->to = G_MININT64;
      return FALSE;
    }
  bar->from += bar->laid->x;
  bar->to += bar->laid->x;
  return x > bar->from && x < bar->to;
}

/* ---- to the right -------------------------------------------------------------------------- */

/* The next x out of all cores, or past @most. */
static gint64
leave_cores (const SqLayFilling *filling, const SqLayPhase *phase, gint64 y, gint64 x, gint64 most)
{
  gboolean moved = TRUE;

  while (moved && x <= most)
    {
      moved = FALSE;
      for (guint i = 0; i < filling->n_bars; i++)
        {
          const SqLayBar *bar = &filling->bars[i];
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
  gboolean moved = TRUE;

  x = sq_lay_phase_next_x (phase, y, x);
  if (x > most)
    return x;
  collect_bars (filling, shape, y, x, most + 1);
  while (moved)
    {
      moved = FALSE;
      x = leave_cores (filling, phase, y, x, most);
      for (guint i = 0; i < filling->n_bars && x <= most; i++)
        {
          SqLayBar *bar = &filling->bars[i];
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
  gboolean moved = TRUE;

  x = sq_lay_phase_last_x (phase, y, x);
  if (x < least)
    return x;
  collect_bars (filling, shape, y, least - 1, x);
  while (moved)
    {
      moved = FALSE;
      for (guint i = 0; i < filling->n_bars && x >= least; i++)
        {
          SqLayBar *bar = &filling->bars[i];
          if (is_barred (bar, y, x))
            {
              x = sq_lay_phase_last_x (phase, y, bar->from);
              moved = TRUE;
            }
        }
    }
  return x;
}

gint64
sq_lay_filling_slid_x (SqLayFilling *filling, guint laid, const SqLayPhase *phase)
{
  SqLaid *all = (SqLaid *) (gpointer) filling->laid->data;
  const SqLaid piece = all[laid];
  gint64 least = filling->floor;

  all[laid].bottom = all[laid].top; /* it is not in its own way */
  collect_bars (filling, piece.shape, piece.y, least - 1, piece.x + 1);
  all[laid] = piece;
  for (guint i = 0; i < filling->n_bars; i++)
    {
      SqLayBar *bar = &filling->bars[i];
      /* It is free where it lies, but for what shapes are larger by than pieces. */
      if (is_barred (bar, piece.y, piece.x))
        return piece.x;
      if (bar->to > least)
        is_barred (bar, piece.y, bar->to - 1);
      if (bar->to <= piece.x)
        least = MAX (least, bar->to);
    }
  return MIN (sq_lay_phase_next_x (phase, piece.y, least), piece.x);
}

void
sq_lay_filling_move (SqLayFilling *filling, guint laid, gint64 x)
{
  SqLaid *piece = &g_array_index (filling->laid, SqLaid, laid);
  *piece = laid_at (piece->shape, x, piece->y);
}
