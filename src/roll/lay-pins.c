/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-pins.h"

#include "roll/lay-cuts.h"
#include "roll/lay-piece.h"

/* A pin that can be kept to, as far as those before it go. */
typedef struct
{
  SqLayPin pin;
  SqLayPiece piece;
} Kept;

static void
clear_kept (gpointer data)
{
  sq_lay_piece_clear (&((Kept *) data)->piece);
}

static gboolean
goes_with (const Kept *kept, const SqLayPin *pin, const SqLayPiece *piece)
{
  if (kept->pin.item == pin->item && kept->pin.copy == pin->copy)
    return FALSE;
  return kept->pin.strip != pin->strip
         || !sq_lay_pieces_overlap (&kept->piece, kept->pin.at, piece, pin->at);
}

static gboolean
goes_with_all (const GArray *all, const SqLayPin *pin, const SqLayPiece *piece)
{
  for (guint i = 0; i < all->len; i++)
    if (!goes_with (&g_array_index (all, Kept, i), pin, piece))
      return FALSE;
  return TRUE;
}

/* Whether straight cuts part @pin and all pins on its strip. */
static gboolean
can_be_cut (const SqLayTask *task, const GArray *all, const SqLayPin *pin)
{
  g_autoptr (GArray) rects = g_array_new (FALSE, FALSE, sizeof (SqLayRect));
  const SqLayStrip *strip = sq_lay_task_strip (task, pin->strip);
  const SqLayRect within = { 0, 0, sq_lay_strip_end (strip), strip->width };

  for (guint i = 0; i <= all->len; i++)
    {
      const SqLayPin *other = i < all->len ? &g_array_index (all, Kept, i).pin : pin;
      SqGridBox box = sq_lay_cut_box (sq_lay_task_item (task, other->item), other->pose);
      SqLayRect rect = sq_lay_rect (&box, other->at);
      if (other->strip == pin->strip)
        g_array_append_val (rects, rect);
    }
  return sq_lay_rects_part (rects, &within, NULL, NULL);
}

/* Adds @pin to @all; FALSE if it can't be kept to. */
static gboolean
keep (const SqLayTask *task, GArray *all, const SqLayPin *pin)
{
  const SqLayItem *item = sq_lay_task_item (task, pin->item);

  if (item->crosses || pin->copy >= item->demand || sq_lay_item_pose (item, pin->pose) == G_MAXUINT)
    return FALSE;
  Kept kept = { *pin, sq_lay_piece (item, pin->pose) };
  if (sq_lay_piece_fault (&kept.piece, item, pin->pose, pin->at,
                          sq_lay_task_strip (task, pin->strip))
          == SQ_LAY_RIGHT
      && goes_with_all (all, pin, &kept.piece) && (!task->straight || can_be_cut (task, all, pin)))
    {
      g_array_append_val (all, kept);
      return TRUE;
    }
  sq_lay_piece_clear (&kept.piece);
  return FALSE;
}

void
sq_lay_pins_judge (SqLayTask *task)
{
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (Kept));
  guint n = 0;

  g_array_set_clear_func (all, clear_kept);
  for (guint i = 0; i < task->pins->len; i++)
    {
      SqLayPin pin = g_array_index (task->pins, SqLayPin, i);
      if (keep (task, all, &pin))
        g_array_index (task->pins, SqLayPin, n++) = pin;
      else
        g_array_append_val (task->bad_pins, pin);
    }
  g_array_set_size (task->pins, n);
}
