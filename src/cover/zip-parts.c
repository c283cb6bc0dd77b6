/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/panels.h"
#include "cover/report.h"
#include "cover/zip.h"

/* The zip is sewn in before all else. */
#define STEP_ZIP 1

/* The mark of the zip on @piece, or −1. */
static gint
zip_mark (const SqPiece *piece)
{
  for (guint i = 0; i < piece->marks->len; i++)
    if (g_array_index (piece->marks, SqMark, i).kind == SQ_MARK_ZIP)
      return (gint) i;
  return -1;
}

static void
slit_in (SqMaking *making)
{
  const SqChoices *c = &making->choices;
  SqProblem *p = sq_report_key (making->cover->problems, SQ_PROBLEM_ZIP_NOT_PARTED, SQ_NOTE,
                                c->cushion, "zip.method");

  making->cover->zip.method = SQ_ZIP_SLIT_IN;
  if (c->build == SQ_BUILD_BOXED && c->thickness_mm >= c->house->zip_boxing_least_mm)
    p->fixes[0] = (SqFix){ SQ_FIX_ZIP_PLACE, 0, SQ_ZIP_BOXING };
}

void
sq_zip_part_underside (SqMaking *making)
{
  const SqCover *cover = making->cover;

  if (cover->zip.place != SQ_ZIP_UNDERSIDE || cover->zip.method != SQ_ZIP_TWO_PART)
    return;
  for (guint i = 0; i < cover->pieces->len; i++)
    {
      SqPiece *piece = sq_making_piece (making, i);
      gint mark = piece->role == SQ_ROLE_UNDERSIDE ? zip_mark (piece) : -1;
      if (mark < 0)
        continue;
      /* The mark runs along the line, and so each part keeps it. */
      g_autoptr (SqPath) line = sq_path_ref (g_array_index (piece->marks, SqMark, mark).line);
      SqVector along;
      SqPoint at = sq_path_point_at (line, 0, &along);
      if (!sq_panels_split (making, i, at, along, SQ_SEAM_ZIP, SQ_RUN_ZIP, making->choices.zip_mm,
                            STEP_ZIP))
        slit_in (making);
      return;
    }
}
