/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/chosen-text.h"

static gboolean
is_all_chosen (GtkEditable *entry)
{
  int start, end;
  return gtk_editable_get_selection_bounds (entry, &start, &end) && start == 0
         && end == (int) g_utf8_strlen (gtk_editable_get_text (entry), -1);
}

/* X hears only later that what was chosen went, and ends what is chosen by then: so that grows and
 * shrinks, and never goes. */
static void
replace (GtkEditable *entry, const char *text)
{
  int at = 1;
  gtk_editable_set_enable_undo (entry, FALSE);
  gtk_editable_insert_text (entry, text, -1, &at);
  gtk_editable_delete_text (entry, at, -1);
  gtk_editable_delete_text (entry, 0, 1);
  gtk_editable_set_enable_undo (entry, TRUE);
}

void
sq_chosen_text_set (GtkEditable *entry, const char *text)
{
  g_return_if_fail (GTK_IS_EDITABLE (entry) && text != NULL);
  if (is_all_chosen (entry) && text[0] != '\0')
    {
      replace (entry, text);
      return;
    }
  gtk_editable_set_text (entry, text);
  gtk_editable_set_position (entry, -1);
}
