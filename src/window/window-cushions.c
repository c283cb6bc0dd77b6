/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is done with whole cushions: another one, a copy, its mirror image, away, up and down. */
#include "window/window-private.h"

#include "words/names.h"

#include <glib/gi18n.h>

/* The cushion the actions are about; NULL: none is chosen. */
static const SqCushion *
chosen (SqWindow *window)
{
  return window->document != NULL ? sq_job_cushion (sq_document_get_job (window->document),
                                                    sq_selection_cushion (window->selection))
                                  : NULL;
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

/* A square of the chosen one's cloths and way, for a seat to be drawn. */
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
  g_autoptr (SqCushion) added = sq_cushion_new (0, outline);
  const guint32 kept = SQ_GIVEN_THICKNESS | SQ_GIVEN_BUILD | SQ_GIVEN_CLOTH_FACE
                       | SQ_GIVEN_CLOTH_UNDERSIDE | SQ_GIVEN_CLOTH_SIDES;
  added->thickness_mm = like->thickness_mm;
  added->build = like->build;
  added->cloth = like->cloth;
  added->given = like->given & kept;
  append (window, added, _ ("Add %s"));
}

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
  const SqCushion *cushion = chosen (window);
  if (cushion == NULL)
    return;
  g_autoptr (SqJob) next = sq_job_with_cushion_moved (sq_document_get_job (window->document),
                                                      cushion->id, by);
  if (next != NULL)
    push (window, next, cushion, by < 0 ? _ ("Move %s up") : _ ("Move %s down"));
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

void
sq_window_add_cushion_actions (SqWindow *window)
{
  const GActionEntry entries[] = {
    { .name = "cushion-add", .activate = on_add },
    { .name = "cushion-duplicate", .activate = on_duplicate },
    { .name = "cushion-mirror", .activate = on_mirror },
    { .name = "cushion-delete", .activate = on_delete },
    { .name = "cushion-up", .activate = on_up },
    { .name = "cushion-down", .activate = on_down },
  };
  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
}
