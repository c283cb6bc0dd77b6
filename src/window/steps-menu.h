/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All steps of a document with their words, the last one first, as a list to jump in. */
#pragma once

#include <gtk/gtk.h>

#include "window/document.h"

#define SQ_TYPE_STEPS_MENU (sq_steps_menu_get_type ())
G_DECLARE_FINAL_TYPE (SqStepsMenu, sq_steps_menu, SQ, STEPS_MENU, GtkPopover)

/* Lists the steps of @document whenever it is opened; NULL: none. Kept alive. */
void sq_steps_menu_set_document (SqStepsMenu *menu, SqDocument *document);
