/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/piece-remarks.h"

#include "words/lengths.h"
#include "words/piece-names.h"
#include "words/text-table.h"

#include <glib/gi18n.h>

/* Lengths that read alike, whatever the style: far below what is shown. */
#define ALIKE_MM 0.01

static gboolean
alike (double a_mm, double b_mm)
{
  return fabs (a_mm - b_mm) < ALIKE_MM;
}

static gboolean
cut_alike (const SqCornerNotch *a, const SqCornerNotch *b)
{
  return a->dart == b->dart
         && (a->dart || (alike (a->leg_mm, b->leg_mm) && alike (a->mouth_mm, b->mouth_mm)));
}

/* One line for @n corners, named in @corners, that are cut out like @notch. */
static char *
notch_remark (const SqCornerNotch *notch, guint n, const char *corners, const SqLengthStyle *style)
{
  g_autofree char *leg = sq_words_length (notch->leg_mm, style);
  g_autofree char *mouth = sq_words_length (notch->mouth_mm, style);

  if (notch->dart)
    return g_strdup_printf (ngettext ("Corner %s: cut nothing out; fold it and sew a dart",
                                      "Corners %s: cut nothing out; fold them and sew darts", n),
                            corners);
  if (alike (notch->mouth_mm, notch->leg_mm * G_SQRT2))
    return g_strdup_printf (
        ngettext ("Corner %s: cut out a square of %s", "Corners %s: cut out squares of %s", n),
        corners, leg);
  return g_strdup_printf (ngettext ("Corner %s: cut out %s deep, %s wide at the mouth",
                                    "Corners %s: cut out %s deep, %s wide at the mouth", n),
                          corners, leg, mouth);
}

static void
add_notches (GPtrArray *remarks, const SqCover *cover, const SqPiece *piece,
             const SqLengthStyle *style)
{
  const GArray *notches = piece->corner_notches;
  g_autofree gboolean *said = g_new0 (gboolean, notches->len + 1);

  for (guint i = 0; i < notches->len; i++)
    {
      const SqCornerNotch *first = &g_array_index (notches, SqCornerNotch, i);
      g_autoptr (GString) corners = g_string_new (NULL);
      guint n = 0;
      for (guint k = i; k < notches->len; k++)
        {
          const SqCornerNotch *other = &g_array_index (notches, SqCornerNotch, k);
          if (said[k] || !cut_alike (first, other))
            continue;
          said[k] = TRUE;
          n++;
          sq_text_add_to_list (corners, sq_words_corner (cover->cushion, other->corner));
        }
      if (n > 0)
        g_ptr_array_add (remarks, notch_remark (first, n, corners->str, style));
    }
}

static void
add_skirts (GPtrArray *remarks, const SqCover *cover, const SqPiece *piece,
            const SqLengthStyle *style)
{
  const GArray *skirts = piece->skirts;
  gboolean all_alike = TRUE;

  for (guint i = 1; i < skirts->len; i++)
    all_alike &= alike (g_array_index (skirts, SqSkirt, i).depth_mm,
                        g_array_index (skirts, SqSkirt, 0).depth_mm);
  for (guint i = 0; i < skirts->len; i++)
    {
      const SqSkirt *skirt = &g_array_index (skirts, SqSkirt, i);
      g_autofree char *depth = sq_words_length (skirt->depth_mm, style);
      if (all_alike)
        {
          g_ptr_array_add (remarks, g_strdup_printf (_ ("Skirts %s from fold to sew line"), depth));
          return;
        }
      g_autofree char *edge = sq_words_edge_corners (cover->cushion, skirt->edge);
      g_ptr_array_add (remarks,
                       g_strdup_printf (_ ("Skirt %s: %s from fold to sew line"), edge, depth));
    }
}

/* How the allowances of a kind of run are called; those of no kind are not worth naming. A fold is
 * caught in the perimeter seam. */
static const struct
{
  SqRunRole roles[2];
  const char *pattern;
} allowance_kinds[] = {
  { { SQ_RUN_PERIMETER, SQ_RUN_FOLD }, N_ ("perimeter %s") },
  { { SQ_RUN_CORNER, SQ_RUN_CORNER }, N_ ("corners %s") },
  { { SQ_RUN_JOIN, SQ_RUN_JOIN }, N_ ("joins %s") },
  { { SQ_RUN_ZIP, SQ_RUN_ZIP }, N_ ("zip %s") },
  { { SQ_RUN_HEM, SQ_RUN_HEM }, N_ ("hem %s") },
};

static gboolean
is_of_kind (const SqRun *run, guint kind)
{
  return run->role == allowance_kinds[kind].roles[0] || run->role == allowance_kinds[kind].roles[1];
}

/* Whether a run before @i is of the same kind and as wide. */
static gboolean
allowance_was_said (const SqPiece *piece, guint i, guint kind)
{
  for (guint k = 0; k < i; k++)
    if (is_of_kind (sq_piece_run (piece, k), kind)
        && alike (sq_piece_run (piece, k)->allowance_mm, sq_piece_run (piece, i)->allowance_mm))
      return TRUE;
  return FALSE;
}

static void
list_allowances (GString *list, const SqPiece *piece, guint kind, const SqLengthStyle *style)
{
  for (guint i = 0; i < piece->runs->len; i++)
    {
      const SqRun *run = sq_piece_run (piece, i);
      if (!is_of_kind (run, kind) || allowance_was_said (piece, i, kind))
        continue;
      g_autofree char *width = sq_words_fine_length (run->allowance_mm, style);
      sq_text_add_to_list (list, g_strdup_printf (gettext (allowance_kinds[kind].pattern), width));
    }
}

char *
sq_words_allowances (const SqPiece *piece, const SqLengthStyle *style)
{
  GString *list = g_string_new (NULL);
  gboolean all_alike = TRUE;

  if (piece->runs->len == 0)
    return g_string_free (list, FALSE);
  for (guint i = 1; i < piece->runs->len; i++)
    all_alike &= alike (sq_piece_run (piece, i)->allowance_mm,
                        sq_piece_run (piece, 0)->allowance_mm);
  if (all_alike)
    {
      g_autofree char *width = sq_words_fine_length (sq_piece_run (piece, 0)->allowance_mm, style);
      g_string_free (list, TRUE);
      return g_strdup_printf (_ ("Allowance %s all round"), width);
    }
  for (guint kind = 0; kind < G_N_ELEMENTS (allowance_kinds); kind++)
    list_allowances (list, piece, kind, style);
  g_autofree char *widths = g_string_free (list, FALSE);
  return g_strdup_printf (_ ("Allowances: %s"), widths);
}

static void
add_allowances (GPtrArray *remarks, const SqPiece *piece, const SqLengthStyle *style)
{
  if (piece->runs->len > 0)
    g_ptr_array_add (remarks, sq_words_allowances (piece, style));
}

static char *
marks_text (SqMarkKind kind, guint n)
{
  switch (kind)
    {
    case SQ_MARK_NOTCH:
      return g_strdup_printf (ngettext ("%u match notch", "%u match notches", n), n);
    case SQ_MARK_CLIP:
      return g_strdup_printf (ngettext ("%u clip", "%u clips", n), n);
    case SQ_MARK_FOLD:
      return g_strdup_printf (ngettext ("%u fold line", "%u fold lines", n), n);
    case SQ_MARK_ZIP:
      return g_strdup_printf (ngettext ("%u zip line", "%u zip lines", n), n);
    case SQ_MARK_CORNER:
      return g_strdup_printf (ngettext ("%u corner line", "%u corner lines", n), n);
    case SQ_MARK_STAY:
      return g_strdup_printf (ngettext ("%u stay stitch", "%u stay stitches", n), n);
    }
  g_return_val_if_reached (g_strdup (""));
}

static void
add_marks (GPtrArray *remarks, const SqPiece *piece)
{
  g_autoptr (GString) list = g_string_new (NULL);
  guint n_of_kind[SQ_MARK_STAY + 1] = { 0 };

  for (guint i = 0; i < piece->marks->len; i++)
    n_of_kind[g_array_index (piece->marks, SqMark, i).kind]++;
  for (guint kind = 0; kind < G_N_ELEMENTS (n_of_kind); kind++)
    if (n_of_kind[kind] > 0)
      sq_text_add_to_list (list, marks_text ((SqMarkKind) kind, n_of_kind[kind]));
  if (list->len > 0)
    g_ptr_array_add (remarks, g_strdup_printf (_ ("Marks: %s"), list->str));
}

/* How a welt's strips are used. */
static void
add_welt (GPtrArray *remarks, const SqCover *cover, const SqPiece *piece,
          const SqLengthStyle *style)
{
  const SqWelt *welt = &cover->welt;
  if (piece->role != SQ_ROLE_WELT)
    return;
  SqBox cut = sq_path_box (sq_piece_cut (piece, 0));
  g_autofree char *cord = sq_words_fine_length (welt->cord_mm, style);
  g_autofree char *round = sq_words_length (welt->length_mm, style);
  g_autofree char *wide = sq_words_length (cut.max.y - cut.min.y, style);
  g_autofree char *length = sq_words_length (cut.max.x - cut.min.x, style);

  g_ptr_array_add (remarks, g_strdup (welt->cut == SQ_WELT_BIAS
                                          ? _ ("Cut on the bias, at 45° to the selvedge; join on "
                                               "the slant")
                                          : _ ("Cut straight across the cloth")));
  g_ptr_array_add (remarks, g_strdup_printf (welt->cut == SQ_WELT_BIAS
                                                 ? _ ("Strip %s wide, %s from tip to tip")
                                                 : _ ("Strip %s wide, %s long"),
                                             wide, length));
  g_ptr_array_add (remarks, g_strdup_printf (cover->build == SQ_BUILD_BOLSTER
                                                 ? _ ("Goes round cord of %s, %s of it in all")
                                                 : _ ("Goes round cord of %s, %s of it in all; "
                                                      "begin in the middle of the back"),
                                             cord, round));
}

GPtrArray *
sq_words_piece_remarks (const SqCover *cover, guint index, const SqLengthStyle *style)
{
  const SqPiece *piece = sq_cover_piece (cover, index);
  GPtrArray *remarks = g_ptr_array_new_with_free_func (g_free);

  add_notches (remarks, cover, piece, style);
  add_skirts (remarks, cover, piece, style);
  add_welt (remarks, cover, piece, style);
  add_allowances (remarks, piece, style);
  add_marks (remarks, piece);
  return remarks;
}
