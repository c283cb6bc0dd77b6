/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is on which page, as a list to jump in: papers, and what begins in each. */
#pragma once

#include <gtk/gtk.h>

#include "window/paper-preview.h"

#define SQ_TYPE_PAGE_MENU (sq_page_menu_get_type ())
G_DECLARE_FINAL_TYPE (SqPageMenu, sq_page_menu, SQ, PAGE_MENU, GtkPopover)

/* Lists what @preview shows whenever it is opened, and turns its pages. @preview has to live as long. */
GtkWidget *sq_page_menu_new (SqPaperPreview *preview);
