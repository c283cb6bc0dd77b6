/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/kinds.h"

void
sq_cut_list_pages (GArray *pages, const SqPaperSpec *spec)
{
  SqVector size = sq_sheet_size_mm (spec->sheet);
  SqPage page = { size.x, size.y, sq_scene_builder_end (sq_scene_builder_new ()) };

  g_array_append_val (pages, page);
}
