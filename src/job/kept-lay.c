/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/kept-lay.h"

static void
clear_strip (gpointer data)
{
  g_clear_pointer (&((SqKeptStrip *) data)->unknown, g_ref_string_release);
}

static void
clear_piece (gpointer data)
{
  SqKeptPiece *piece = data;

  g_clear_pointer (&piece->name, g_ref_string_release);
  g_clear_pointer (&piece->cut, g_ptr_array_unref);
  g_clear_pointer (&piece->unknown, g_ref_string_release);
}

static void
clear_placed (gpointer data)
{
  g_clear_pointer (&((SqKeptPlaced *) data)->unknown, g_ref_string_release);
}

static void
clear_unlaid (gpointer data)
{
  g_clear_pointer (&((SqKeptUnlaid *) data)->unknown, g_ref_string_release);
}

static GArray *
new_list (guint size, GDestroyNotify clear)
{
  GArray *list = g_array_new (FALSE, TRUE, size);

  g_array_set_clear_func (list, clear);
  return list;
}

SqKeptLay *
sq_kept_lay_new (SqId cloth)
{
  SqKeptLay *lay = g_new0 (SqKeptLay, 1);

  lay->ref_count = 1;
  lay->cloth = cloth;
  lay->strips = new_list (sizeof (SqKeptStrip), clear_strip);
  lay->pieces = new_list (sizeof (SqKeptPiece), clear_piece);
  lay->placed = new_list (sizeof (SqKeptPlaced), clear_placed);
  lay->unlaid = new_list (sizeof (SqKeptUnlaid), clear_unlaid);
  return lay;
}

SqKeptLay *
sq_kept_lay_ref (const SqKeptLay *lay)
{
  SqKeptLay *shared = (SqKeptLay *) lay;

  g_atomic_int_inc (&shared->ref_count);
  return shared;
}

void
sq_kept_lay_unref (SqKeptLay *lay)
{
  if (lay == NULL || !g_atomic_int_dec_and_test (&lay->ref_count))
    return;
  g_array_unref (lay->strips);
  g_array_unref (lay->pieces);
  g_array_unref (lay->placed);
  g_array_unref (lay->unlaid);
  g_clear_pointer (&lay->unknown, g_ref_string_release);
  g_free (lay);
}
