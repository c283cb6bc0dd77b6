/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/making.h"
#include "job/names.h"

static void
clear_mark (gpointer data)
{
  g_clear_pointer (&((SqMark *) data)->line, sq_path_unref);
}

static void
clear_patch (gpointer data)
{
  g_clear_pointer (&((SqPatch *) data)->region, sq_path_unref);
}

SqPiece *
sq_piece_new (SqPieceRole role)
{
  SqPiece *p = g_new0 (SqPiece, 1);

  p->ref_count = 1;
  p->role = role;
  p->count = 1;
  p->sew = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  p->cut = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  p->runs = g_array_new (FALSE, TRUE, sizeof (SqRun));
  p->marks = g_array_new (FALSE, TRUE, sizeof (SqMark));
  g_array_set_clear_func (p->marks, clear_mark);
  p->patches = g_array_new (FALSE, TRUE, sizeof (SqPatch));
  g_array_set_clear_func (p->patches, clear_patch);
  p->trims = g_array_new (FALSE, TRUE, sizeof (SqTrim));
  p->corner_notches = g_array_new (FALSE, TRUE, sizeof (SqCornerNotch));
  p->skirts = g_array_new (FALSE, TRUE, sizeof (SqSkirt));
  return p;
}

SqPiece *
sq_piece_ref (const SqPiece *piece)
{
  SqPiece *p = (SqPiece *) piece;
  g_atomic_int_inc (&p->ref_count);
  return p;
}

void
sq_piece_unref (SqPiece *p)
{
  if (p == NULL || !g_atomic_int_dec_and_test (&p->ref_count))
    return;
  g_ptr_array_unref (p->sew);
  g_ptr_array_unref (p->cut);
  g_array_unref (p->runs);
  g_array_unref (p->marks);
  g_array_unref (p->patches);
  g_array_unref (p->trims);
  g_array_unref (p->corner_notches);
  g_array_unref (p->skirts);
  g_free (p);
}

const SqPath *
sq_piece_sew (const SqPiece *piece, guint ring)
{
  return g_ptr_array_index (piece->sew, ring);
}

const SqPath *
sq_piece_cut (const SqPiece *piece, guint ring)
{
  return g_ptr_array_index (piece->cut, ring);
}

guint
sq_piece_next_run (const SqPiece *piece, guint i)
{
  guint ring = sq_piece_run (piece, i)->ring;

  if (i + 1 < piece->runs->len && sq_piece_run (piece, i + 1)->ring == ring)
    return i + 1;
  while (i > 0 && sq_piece_run (piece, i - 1)->ring == ring)
    i--;
  return i;
}

SqPath *
sq_piece_run_path (const SqPiece *piece, guint i)
{
  const SqRun *run = sq_piece_run (piece, i);
  const SqPath *ring = sq_piece_sew (piece, run->ring);

  return sq_path_part (ring, sq_path_station_mm (ring, run->from),
                       sq_path_station_mm (ring, run->to));
}

static SqPoint3
combine (SqPoint3 at, SqPoint3 a, double by_a, SqPoint3 b, double by_b, SqPoint3 c, double by_c)
{
  return (SqPoint3){ at.x + a.x * by_a + b.x * by_b + c.x * by_c,
                     at.y + a.y * by_a + b.y * by_b + c.y * by_c,
                     at.z + a.z * by_a + b.z * by_b + c.z * by_c };
}

SqPoint3
sq_patch_map (const SqPatch *patch, SqPoint p)
{
  SqPoint3 ex = patch->ex, ey = patch->ey;
  SqPoint3 right_side = { ex.y * ey.z - ex.z * ey.y, ex.z * ey.x - ex.x * ey.z,
                          ex.x * ey.y - ex.y * ey.x };
  SqVector from = sq_sub (p, patch->origin);
  double u = sq_dot (patch->along, from), v = sq_cross (patch->along, from);

  if (patch->kind == SQ_PATCH_PLANE)
    return combine (patch->at, ex, u, ey, v, right_side, 0);
  double r = patch->radius_mm;
  return combine (patch->at, ex, r * sin (u / r), ey, v, right_side, -r * (1 - cos (u / r)));
}

const char *
sq_piece_role_name (SqPieceRole role)
{
  g_return_val_if_fail (role < SQ_N_PIECE_ROLES, NULL);
  return sq_piece_role_names[role];
}

const char *
sq_run_role_name (SqRunRole role)
{
  static const char *const names[] = {
    "perimeter", "corner", "join", "zip", "hem", "fold", "free"
  };
  g_return_val_if_fail (role < G_N_ELEMENTS (names), NULL);
  return names[role];
}

const char *
sq_mark_kind_name (SqMarkKind kind)
{
  static const char *const names[] = { "notch", "clip", "fold", "zip", "corner", "stay" };
  g_return_val_if_fail (kind < G_N_ELEMENTS (names), NULL);
  return names[kind];
}

const char *
sq_turns_name (SqTurns turns)
{
  static const char *const names[] = { "none", "half", "quarter", "free" };
  g_return_val_if_fail (turns < G_N_ELEMENTS (names), NULL);
  return names[turns];
}

const char *
sq_trim_why_name (SqTrimWhy why)
{
  static const char *const names[] = { "mitre", "step", "dart", "bend" };
  g_return_val_if_fail (why < G_N_ELEMENTS (names), NULL);
  return names[why];
}
