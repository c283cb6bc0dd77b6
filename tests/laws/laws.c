/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "laws/laws.h"

const LawEntry laws[] = {
  { "seams", law_seams },         { "notches", law_notches }, { "cut-lines", law_cut_lines },
  { "folding", law_folding },     { "areas", law_areas },     { "boxing", law_boxing },
  { "mirroring", law_mirroring }, { "turning", law_turning }, { "before", law_before },
  { "saving", law_saving },       { "lays", law_lays },       { "marking", law_marking },
};
const guint n_laws = G_N_ELEMENTS (laws);

guint
first_piece (const SqCover *cover, SqPieceRole role)
{
  for (guint i = 0; i < cover->pieces->len; i++)
    if (sq_cover_piece (cover, i)->role == role)
      return i;
  return G_MAXUINT;
}

gboolean
has_problem (const SqCover *cover, SqProblemCode code)
{
  for (guint i = 0; i < cover->problems->len; i++)
    if (sq_cover_problem (cover, i)->code == code)
      return TRUE;
  return FALSE;
}
