/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/seat-notes.h"

#include "drawing/seat-notes.h"
#include "window/seat-canvas-private.h"

static gboolean
on_query (GtkWidget *widget, int x, int y, gboolean by_keyboard, GtkTooltip *tooltip)
{
  SqSeatCanvas *canvas = SQ_SEAT_CANVAS (widget);
  const char *chosen = sq_seat_notes_chosen (canvas);
  const SqView *view = sq_canvas_get_view (SQ_CANVAS (canvas));
  double em_mm;
  if (canvas->cover == NULL || !(view->scale > 0))
    return FALSE;
  if (by_keyboard)
    {
      gtk_tooltip_set_text (tooltip, chosen);
      return chosen != NULL;
    }
  em_mm = sq_canvas_get_em (SQ_CANVAS (canvas)) / view->scale;
  g_autoptr (GArray) notes = sq_seat_notes (canvas->cover->cushion, em_mm);
  const SqPinnedNote *note = sq_seat_note_at (notes, sq_view_to_mm (view, sq_point (x, y)),
                                              SQ_NOTE_MARK_EM * em_mm);
  if (note == NULL)
    return FALSE;
  gtk_tooltip_set_text (tooltip, note->text);
  return TRUE;
}

void
sq_seat_notes_watch (SqSeatCanvas *canvas)
{
  g_return_if_fail (SQ_IS_SEAT_CANVAS (canvas));
  g_signal_connect (canvas, "query-tooltip", G_CALLBACK (on_query), NULL);
}

const char *
sq_seat_notes_chosen (SqSeatCanvas *canvas)
{
  SqGrip chosen = sq_seat_chosen (canvas);
  const SqCorner *corner = NULL;
  if (canvas->cover != NULL && chosen.kind != SQ_GRIP_NONE)
    corner = sq_outline_corner (canvas->cover->cushion->outline, chosen.corner, NULL, NULL);
  if (corner == NULL)
    return NULL;
  return chosen.kind == SQ_GRIP_EDGE ? corner->note : corner->corner_note;
}
