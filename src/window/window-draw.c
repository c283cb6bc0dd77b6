/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Drawing a seat: the window shows empty paper instead of what it showed before. */
#include "window/window-private.h"

#include "exchange/defaults-file.h"
#include "window/figures.h"
#include "window/first-job.h"

gboolean
sq_window_is_drawing (SqWindow *window)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (window->stack)), "draw") == 0;
}

static void
leave (SqWindow *window)
{
  gboolean has_job = window->document != NULL;
  gtk_stack_set_visible_child_name (GTK_STACK (window->stack), has_job ? "work" : "start");
  gtk_widget_grab_focus (has_job ? GTK_WIDGET (window->seat) : GTK_WIDGET (window->start_page));
}

static void
start (SqWindow *window, const SqOutline *outline)
{
  SqDefaults defaults;
  sq_defaults_builtin (&defaults);
  double thickness_mm = sq_first_job_rounded_mm (sq_first_job_units (), defaults.thickness_mm);
  g_autoptr (SqJob) job = sq_first_job_new (outline, thickness_mm, sq_first_job_units (),
                                            &defaults);
  sq_window_start (window, job);
}

static void
on_drawn (SqWindow *window, const SqOutline *outline)
{
  if (!sq_window_is_drawing (window))
    return;
  leave (window);
  if (window->document != NULL)
    sq_window_add_cushion_on (window, outline);
  else
    start (window, outline);
}

static void
on_draw (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqWindow *window = data;
  const SqJob *job = window->document != NULL ? sq_document_get_job (window->document) : NULL;
  SqDefaults defaults;
  SqUnit units = job != NULL ? job->units : sq_first_job_units ();
  (void) action, (void) parameter;
  if (sq_window_is_drawing (window)
      || (job != NULL && sq_selection_cushion (window->selection) == 0))
    return;
  sq_defaults_builtin (&defaults);
  if (job != NULL)
    defaults = job->defaults;
  sq_seat_draw_begin (window->draw, units,
                      units == SQ_UNIT_IN ? defaults.step_in_mm : defaults.step_mm_mm);
  gtk_stack_set_visible_child_name (GTK_STACK (window->stack), "draw");
  gtk_widget_grab_focus (GTK_WIDGET (window->draw));
}

static void
on_close (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqWindow *window = data;
  (void) action, (void) parameter;
  if (sq_window_is_drawing (window) && !sq_seat_draw_close (window->draw))
    gtk_widget_grab_focus (GTK_WIDGET (window->draw));
}

static void
on_give_up (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqWindow *window = data;
  (void) action, (void) parameter;
  if (sq_window_is_drawing (window))
    leave (window);
}

void
sq_window_add_draw_actions (SqWindow *window)
{
  const GActionEntry entries[] = {
    { .name = "cushion-draw", .activate = on_draw },
    { .name = "draw-close", .activate = on_close },
    { .name = "draw-give-up", .activate = on_give_up },
  };
  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  g_signal_connect_object (window->draw, "drawn", G_CALLBACK (on_drawn), window, G_CONNECT_SWAPPED);
  g_signal_connect_object (window->draw, "given-up", G_CALLBACK (leave), window, G_CONNECT_SWAPPED);
}
