/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/kept-spec.h"

SqKeptSpec *
sq_kept_spec_new (const SqPaperSpec *spec)
{
  SqKeptSpec *kept = g_atomic_rc_box_new0 (SqKeptSpec);
  kept->lays = sq_lays_ref (spec->lays);
  kept->entries = spec->entries != NULL ? g_array_copy ((GArray *) spec->entries) : NULL;
  kept->date = g_strdup (spec->date);
  kept->spec = *spec;
  kept->spec.entries = kept->entries;
  kept->spec.date = kept->date;
  return kept;
}

static void
clear (gpointer data)
{
  SqKeptSpec *kept = data;
  sq_lays_unref (kept->lays);
  g_clear_pointer (&kept->entries, g_array_unref);
  g_free (kept->date);
}

void
sq_kept_spec_unref (SqKeptSpec *kept)
{
  g_atomic_rc_box_release_full (kept, clear);
}
