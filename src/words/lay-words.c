/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/lay-words.h"

#include "base/units.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* @eighths as "2 1/8". */
static char *
in_eighths (guint eighths, gboolean is_set)
{
  guint whole = eighths / 8, rest = eighths % 8, below = 8;
  const char *slash = is_set ? "\xe2\x81\x84" : "/";

  for (; rest > 0 && rest % 2 == 0; rest /= 2)
    below /= 2;
  if (rest == 0)
    return g_strdup_printf ("%u", whole);
  if (whole == 0)
    return g_strdup_printf ("%u%s%u", rest, slash, below);
  return g_strdup_printf ("%u %u%s%u", whole, rest, slash, below);
}

char *
sq_words_sold_length (double mm, const SqLengthStyle *style)
{
  if (style->unit == SQ_UNIT_IN)
    {
      g_autofree char *yards = in_eighths ((guint) lround (mm / (SQ_MM_PER_YARD / 8)), style->set);
      return g_strdup_printf (_ ("%s yd"), yards);
    }
  g_autofree char *metres = sq_words_number (mm / SQ_MM_PER_M, 1, style);
  return g_strdup_printf (_ ("%s m"), metres);
}

char *
sq_words_purchase (const SqPurchase *purchase, const SqLengthStyle *style)
{
  g_autofree char *length = sq_words_sold_length (purchase->buy_mm, style);
  g_autofree char *waste = sq_words_number (100 * purchase->waste, 0, style);

  if (purchase->bolts == 0)
    return g_strdup (_ ("nothing to buy"));
  /* TRANSLATORS: a length of cloth, and the percentage of it that is not used. */
  return g_strdup_printf (_ ("%s to buy, %s %% waste"), length, waste);
}

char *
sq_words_purchase_reckoned (const SqJob *job, const SqPurchase *purchase,
                            const SqLengthStyle *style)
{
  SqLengthStyle with_unit = *style;
  with_unit.with_unit = TRUE;
  g_autofree char *laid = sq_words_long_length (purchase->laid_mm, style);
  g_autofree char *squaring = sq_words_length (purchase->squaring_mm, &with_unit);
  g_autofree char *pattern = sq_words_length (purchase->pattern_mm, &with_unit);
  g_autofree char *step = sq_words_sold_length (sq_sold_by_mm (job), style);

  if (purchase->pattern_mm > 0)
    return g_strdup_printf (_ ("%s laid, %s to square the end, %s to find where the pattern "
                               "starts, rounded up to %s"),
                            laid, squaring, pattern, step);
  return g_strdup_printf (_ ("%s laid, %s to square the end, rounded up to %s"), laid, squaring,
                          step);
}

/* "Front boxing" or, of several cushions, "Bay seat, front boxing". */
static char *
piece_named (const SqLays *lays, const SqCutEntry *entry)
{
  const SqCover *cover = sq_plan_cover (lays->plan, entry->cushion);
  g_autofree char *cushion = sq_words_cover (lays->plan->job, cover);
  g_autofree char *piece = sq_words_piece_inside (cover, entry->piece);

  if (lays->plan->covers->len == 1)
    return sq_words_piece (cover, entry->piece);
  /* TRANSLATORS: a cushion's name and one of its pieces. */
  return g_strdup_printf (_ ("%s, %s"), cushion, piece);
}

static char *
why_unlaid (const SqLays *lays, const SqClothLay *cloth, const SqUnlaid *unlaid,
            const SqPiece *piece, const SqLengthStyle *style)
{
  SqLengthStyle with_unit = *style;
  with_unit.with_unit = TRUE;
  const SqCloth *own = sq_plan_cloth (lays->plan, cloth->cloth);
  double width_mm = sq_lay_task_strip (cloth->task, 0)->width / SQ_GRID_PER_MM;
  g_autofree char *across = sq_words_length (piece->width_mm, &with_unit);
  g_autofree char *width = sq_words_length (width_mm, &with_unit);
  g_autofree char *repeat = sq_words_length (own != NULL ? own->repeat_across_mm : 0, &with_unit);

  switch (unlaid->why)
    {
    case SQ_UNLAID_TOO_WIDE:
      return g_strdup_printf (_ ("it is %s across, the cloth %s wide. Take a wider cloth, or make "
                                 "the piece smaller."),
                              across, width);
    case SQ_UNLAID_PATTERN:
      return g_strdup_printf (_ ("it is %s across and its pattern, which recurs every %s, has to "
                                 "fall right on a cloth %s wide. Take a wider cloth, or let the "
                                 "stripes run free."),
                              across, repeat, width);
    case SQ_UNLAID_NO_ROOM:
      break;
    }
  return g_strdup (_ ("the roll is full."));
}

char *
sq_words_unlaid (const SqLays *lays, const SqClothLay *cloth, const SqUnlaid *unlaid,
                 const SqLengthStyle *style)
{
  guint index = sq_lay_task_item (cloth->task, unlaid->item)->tag;
  const SqCutEntry *entry = &g_array_index (lays->plan->cut_list, SqCutEntry, index);
  const SqPiece *piece = sq_cover_piece (sq_plan_cover (lays->plan, entry->cushion), entry->piece);
  g_autofree char *named = piece_named (lays, entry);
  g_autofree char *why = why_unlaid (lays, cloth, unlaid, piece, style);

  if (unlaid->count == 1)
    /* TRANSLATORS: a piece, and why. */
    return g_strdup_printf (_ ("%s does not go on the cloth: %s"), named, why);
  /* TRANSLATORS: a piece, how many of it, and why. */
  return g_strdup_printf (_ ("%s (%u pieces) does not go on the cloth: %s"), named, unlaid->count,
                          why);
}
