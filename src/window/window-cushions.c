/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is done with whole cushions: another one, a copy, its mirror image, away, up and down. */
#include "window/window-private.h"

#include "window/edits.h"
#include "window/form.h"
#include "window/hole-dialog.h"
#include "window/tape-maker.h"
#include "words/names.h"

#include <glib/gi18n.h>

/* The cushion the actions are about; NULL: none is chosen, or none is to be seen. */
static const SqCushion *
chosen (SqWindow *window)
{
  if (window->document == NULL || sq_window_is_drawing (window))
    return NULL;
  return sq_job_cushion (sq_document_get_job (window->document),
                         sq_selection_cushion (window->selection));
}

/* One step, in @pattern with the cushion's name in it. */
static void
push (SqWindow *window, const SqJob *job, const SqCushion *cushion, const char *pattern)
{
  g_autofree char *name = sq_words_cushion (job, cushion);
  g_autofree char *words = g_strdup_printf (pattern, name);
  sq_document_edit (window->document, job, words, NULL);
}

/* @cushion, with an id of its own, comes last and is chosen. */
static void
append (SqWindow *window, SqCushion *cushion, const char *pattern)
{
  const SqJob *job = sq_document_get_job (window->document);
  cushion->id = sq_job_new_cushion_id (job);
  g_autoptr (SqJob) next = sq_job_with_cushion (job, cushion);
  push (window, next, cushion, pattern);
  sq_selection_choose_cushion (window->selection, cushion->id);
}

/* A cushion on @outline beside @like: of its cloths, as thick, and made the same way. New. */
static SqCushion *
new_beside (const SqCushion *like, const SqOutline *outline)
{
  SqCushion *added = sq_cushion_new (0, outline);
  const guint32 kept = SQ_GIVEN_THICKNESS | SQ_GIVEN_BUILD | SQ_GIVEN_CLOTH_FACE
                       | SQ_GIVEN_CLOTH_UNDERSIDE | SQ_GIVEN_CLOTH_SIDES;
  added->thickness_mm = like->thickness_mm;
  added->build = like->build;
  added->cloth = like->cloth;
  added->given = like->given & kept;
  return added;
}

void
sq_window_add_cushion_on (SqWindow *window, const SqOutline *outline)
{
  const SqCushion *like = chosen (window);
  g_return_if_fail (like != NULL);
  g_autoptr (SqCushion) added = new_beside (like, outline);
  append (window, added, _ ("Add %s"));
}

/* A square, for a seat to be made of. */
static void
on_add (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqWindow *window = data;
  const SqCushion *like = chosen (window);
  gboolean is_inch;
  (void) action, (void) parameter;
  if (like == NULL)
    return;
  is_inch = sq_document_get_job (window->document)->units == SQ_UNIT_IN;
  double side = is_inch ? 18 * 25.4 : 450;
  const SqCorner corners[] = { { .id = 1, .at = { 0, 0 }, .front = TRUE },
                               { .id = 2, .at = { side, 0 } },
                               { .id = 3, .at = { side, side } },
                               { .id = 4, .at = { 0, side } } };
  guint n = G_N_ELEMENTS (corners);
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &n, 1);
  sq_window_add_cushion_on (window, outline);
}

/* --- from sides ---------------------------------------------------------------------------- */

typedef struct
{
  SqWindow *window; /* outlives its dialogs */
  GtkWindow *dialog;
  SqTapeMaker *maker;
} Taping;

static gboolean
add_taped (gpointer data)
{
  Taping *taping = data;
  const SqCushion *like = chosen (taping->window);
  g_autoptr (SqJob) job = sq_tape_maker_read (taping->maker);
  if (like == NULL || job == NULL)
    return FALSE;
  const SqCushion *taped = g_ptr_array_index (job->cushions, 0);
  g_autoptr (SqCushion) added = new_beside (like, taped->outline);
  added->thickness_mm = taped->thickness_mm;
  added->build = taped->build;
  added->given |= taped->given;
  append (taping->window, added, _ ("Add %s"));
  return TRUE;
}

static void
on_taped (Taping *taping)
{
  if (add_taped (taping))
    gtk_window_destroy (taping->dialog);
}

static void
on_add_taped (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqWindow *window = data;
  const SqCushion *like = chosen (window);
  Taping *taping;
  GtkWidget *maker, *dialog;
  (void) action, (void) parameter;
  if (like == NULL)
    return;
  maker = sq_tape_maker_new (sq_document_get_job (window->document), like);
  taping = g_new (Taping, 1);
  dialog = sq_form_new (GTK_WINDOW (window), _ ("A cushion from its sides"), _ ("_Add"), maker,
                        add_taped, taping, g_free);
  *taping = (Taping){ window, GTK_WINDOW (dialog), SQ_TAPE_MAKER (maker) };
  g_signal_connect_swapped (maker, "made", G_CALLBACK (on_taped), taping);
  gtk_window_present (GTK_WINDOW (dialog));
  gtk_widget_grab_focus (maker);
}

/* --- copies and order ---------------------------------------------------------------------- */

static void
on_duplicate (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqWindow *window = data;
  const SqCushion *cushion = chosen (window);
  (void) action, (void) parameter;
  if (cushion == NULL)
    return;
  g_autoptr (SqCushion) copy = sq_cushion_dup (cushion);
  append (window, copy, _ ("Copy %s"));
}

static void
on_hole (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqWindow *window = data;
  (void) action, (void) parameter;
  if (chosen (window) != NULL)
    sq_hole_dialog (GTK_WINDOW (window), window->document, sq_selection_cushion (window->selection),
                    NULL);
}

static void
on_mirror (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqWindow *window = data;
  const SqCushion *cushion = chosen (window);
  (void) action, (void) parameter;
  if (cushion == NULL)
    return;
  g_autoptr (SqOutline) outline = sq_outline_mirrored (cushion->outline);
  g_autoptr (SqCushion) changed = sq_cushion_with_outline (cushion, outline);
  g_autoptr (SqJob) next = sq_job_with_cushion (sq_document_get_job (window->document), changed);
  push (window, next, changed, _ ("Mirror %s"));
}

/* The last one stays: a job without a cushion has nothing to take hold of. */
static void
on_delete (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SqWindow *window = data;
  const SqCushion *cushion = chosen (window);
  (void) action, (void) parameter;
  if (cushion == NULL || sq_document_get_job (window->document)->cushions->len < 2)
    return;
  g_autoptr (SqCushion) gone = sq_cushion_ref (cushion);
  g_autofree char *name = sq_words_cushion (sq_document_get_job (window->document), gone);
  g_autofree char *words = g_strdup_printf (_ ("Take %s away"), name);
  g_autoptr (SqJob) next = sq_job_without_cushion (sq_document_get_job (window->document),
                                                   gone->id);
  sq_document_edit (window->document, next, words, NULL);
}

static void
move (SqWindow *window, int by)
{
  if (window->document != NULL)
    sq_edit_order (window->document, sq_selection_cushion (window->selection), by);
}

static void
on_up (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  (void) action, (void) parameter;
  move (window, -1);
}

static void
on_down (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  (void) action, (void) parameter;
  move (window, 1);
}

static void
on_rename (GSimpleAction *action, GVariant *parameter, gpointer window)
{
  (void) action, (void) parameter;
  sq_cushion_list_rename (SQ_WINDOW (window)->cushions);
}

void
sq_window_add_cushion_actions (SqWindow *window)
{
  const GActionEntry entries[] = {
    { .name = "cushion-add", .activate = on_add },
    { .name = "cushion-add-taped", .activate = on_add_taped },
    { .name = "cushion-duplicate", .activate = on_duplicate },
    { .name = "cushion-hole", .activate = on_hole },
    { .name = "cushion-mirror", .activate = on_mirror },
    { .name = "cushion-delete", .activate = on_delete },
    { .name = "cushion-up", .activate = on_up },
    { .name = "cushion-down", .activate = on_down },
    { .name = "cushion-rename", .activate = on_rename },
  };
  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
}
