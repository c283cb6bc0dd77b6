/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/piece-label.h"

#include <glib/gi18n.h>

char *
sq_words_piece_size (const SqPiece *piece, const SqLengthStyle *style)
{
  g_return_val_if_fail (piece != NULL && style != NULL, NULL);
  g_autofree char *width = sq_length_format (piece->width_mm, style);
  g_autofree char *height = sq_length_format (piece->height_mm, style);
  return g_strdup_printf ("%s × %s", width, height);
}

char *
sq_words_cut_count (guint count)
{
  return g_strdup_printf (_ ("cut %u"), count);
}

const char *
sq_words_piece_seen (const SqPiece *piece)
{
  g_return_val_if_fail (piece != NULL, NULL);
  return piece->role == SQ_ROLE_UNDERSIDE ? _ ("seen right side up") : NULL;
}
