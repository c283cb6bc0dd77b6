/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A cloth, made or changed. */
#pragma once

#include <gtk/gtk.h>

#include "window/edits.h"

/* Asks for what @cloth is to be (NULL: a new one), and puts it into @document as sq_edit_cloth()
 * does. */
void sq_cloth_dialog (GtkWindow *parent, SqDocument *document, const SqCloth *cloth, SqId cushion,
                      const SqChoiceValue *value);
