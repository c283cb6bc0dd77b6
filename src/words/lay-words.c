/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/lay-words.h"

#include "base/units.h"
#include "job/names.h"
#include "words/cut-sheet-tables.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/piece-names.h"
#include "words/strip-words.h"

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
    return g_strdup (purchase->stock > 0 ? _ ("nothing to buy, all of it is there")
                                         : _ ("nothing to buy"));
  if (purchase->stock > 0)
    /* TRANSLATORS: a length of cloth, and the percentage of it that is not used. */
    return g_strdup_printf (_ ("%s to buy beside what is there, %s %% waste"), length, waste);
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

char *
sq_words_entry_piece (const SqLays *lays, const SqCutEntry *entry)
{
  const SqCover *cover = sq_plan_cover (lays->plan, entry->cushion);
  g_autofree char *cushion = sq_words_cover (lays->plan->job, cover);
  g_autofree char *piece = sq_words_piece_inside (cover, entry->piece);

  if (lays->plan->covers->len == 1)
    return sq_words_piece (cover, entry->piece);
  /* TRANSLATORS: a cushion's name and one of its pieces. */
  return g_strdup_printf (_ ("%s, %s"), cushion, piece);
}

static double
widest_mm (const SqLayTask *task)
{
  gint32 width = 0;

  for (guint i = 0; i < task->strips->len; i++)
    width = MAX (width, sq_lay_task_strip (task, i)->width);
  return width / SQ_GRID_PER_MM;
}

static char *
why_unlaid (const SqLays *lays, const SqClothLay *cloth, const SqUnlaid *unlaid,
            const SqPiece *piece, const SqLengthStyle *style)
{
  SqLengthStyle with_unit = *style;
  with_unit.with_unit = TRUE;
  const SqCloth *own = sq_plan_cloth (lays->plan, cloth->cloth);
  double width_mm = widest_mm (cloth->task);
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
    case SQ_UNLAID_CROSSES:
      return g_strdup (_ ("its outline crosses itself. Mend the outline first."));
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
  g_autofree char *named = sq_words_entry_piece (lays, entry);
  g_autofree char *why = why_unlaid (lays, cloth, unlaid, piece, style);

  if (unlaid->count == 1)
    /* TRANSLATORS: a piece, and why. */
    return g_strdup_printf (_ ("%s does not go on the cloth: %s"), named, why);
  /* TRANSLATORS: a piece, how many of it, and why. */
  return g_strdup_printf (_ ("%s (%u pieces) does not go on the cloth: %s"), named, unlaid->count,
                          why);
}

/* --- where everything lies ------------------------------------------------------------------ */

static const char *
turned_text (const SqPlaced *placed)
{
  switch (placed->pose.turn / SQ_GRID_QUARTER)
    {
    case 1:
      return _ ("quarter turn to the left");
    case 2:
      return _ ("half turn");
    case 3:
      return _ ("quarter turn to the right");
    default:
      return _ ("upright");
    }
}

char *
sq_words_which_copy (const SqCutEntry *entry, guint copy)
{
  if (entry->count == 1)
    return g_strdup ("");
  /* TRANSLATORS: which of several equal pieces. */
  return g_strdup_printf (_ ("%u of %u"), copy + 1, entry->count);
}

char *
sq_words_copy (const SqLays *lays, const SqCutEntry *entry, guint copy)
{
  g_autofree char *piece = sq_words_entry_piece (lays, entry);
  g_autofree char *which = sq_words_which_copy (entry, copy);

  if (which[0] == '\0')
    return g_steal_pointer (&piece);
  /* TRANSLATORS: the piece, and which of several ("2 of 8"). */
  return g_strdup_printf (_ ("%s, %s"), piece, which);
}

static void
add_lying (SqSheetTable *table, const SqLays *lays, const SqClothLay *cloth, const SqPlaced *placed,
           const SqLengthStyle *style)
{
  const SqCutEntry *entry = sq_lays_entry (lays, placed);
  SqBox box = sq_lays_box (lays, placed);
  char *cells[] = {
    g_strdup_printf ("%u", entry->number),
    sq_words_piece (sq_plan_cover (lays->plan, entry->cushion), entry->piece),
    sq_sheet_cushion_name (lays->plan, entry->cushion),
    sq_words_which_copy (entry, placed->copy),
    sq_words_names_strips (cloth) ? sq_words_strip_name (lays, cloth, placed->strip)
                                  : g_strdup (""),
    sq_words_range (box.min.x, box.max.x, style),
    sq_words_range (box.min.y, box.max.y, style),
    g_strdup (turned_text (placed)),
  };

  sq_sheet_table_add (table, cells);
}

void
sq_words_lay_table (SqSheetTable *table, const SqLays *lays, guint index,
                    const SqLengthStyle *style)
{
  const SqClothLay *cloth = sq_lays_cloth (lays, index);
  const char *const heads[] = {
    _ ("No"),
    _ ("Piece"),
    lays->plan->covers->len > 1 ? _ ("Cushion") : "",
    _ ("Copy"),
    sq_words_names_strips (cloth) ? _ ("On") : "",
    _ ("From the cut end"),
    _ ("From the near edge"),
    _ ("Turned"),
    NULL,
  };

  sq_sheet_table_begin (table, _ ("WHERE EVERYTHING LIES"), "rllllrrl", heads);
  for (guint strip = 0; strip < cloth->task->strips->len; strip++)
    {
      g_autoptr (GArray) along = sq_lay_along (cloth->task, cloth->lay, strip);
      for (guint i = 0; i < along->len; i++)
        add_lying (table, lays, cloth, sq_lay_placed (cloth->lay, g_array_index (along, guint, i)),
                   style);
    }
}

char *
sq_words_placed (const SqLays *lays, const SqPlaced *placed)
{
  const SqCutEntry *entry = sq_lays_entry (lays, placed);
  g_autofree char *copy = sq_words_copy (lays, entry, placed->copy);

  /* TRANSLATORS: number in the cut list, and the piece. */
  return g_strdup_printf (_ ("%u, %s"), entry->number, copy);
}

/* The lay that @placed is of. */
static const SqClothLay *
cloth_of (const SqLays *lays, const SqPlaced *placed)
{
  for (guint i = 0; i < lays->cloths->len; i++)
    if (sq_lays_cloth (lays, i)->cloth == sq_lays_entry (lays, placed)->cloth)
      return sq_lays_cloth (lays, i);
  return NULL;
}

char *
sq_words_lying (const SqLays *lays, const SqPlaced *placed, const SqLengthStyle *style)
{
  SqBox box = sq_lays_box (lays, placed);
  g_autofree char *along = sq_words_range (box.min.x, box.max.x, style);
  g_autofree char *across = sq_words_range (box.min.y, box.max.y, style);

  /* TRANSLATORS: from – to along the roll, from – to across it, how it is turned. */
  g_autofree char *text = g_strdup_printf (_ ("%s from the cut end, %s from the near edge, %s"),
                                           along, across, turned_text (placed));
  const SqClothLay *cloth = cloth_of (lays, placed);
  if (cloth == NULL || !sq_words_names_strips (cloth))
    return g_steal_pointer (&text);
  g_autofree char *strip = sq_words_strip_name (lays, cloth, placed->strip);
  /* TRANSLATORS: a remnant or bolt, and where on it. */
  return g_strdup_printf (_ ("%s: %s"), strip, text);
}

char *
sq_words_kept_old (const SqKeptLay *kept)
{
  g_autofree char *revision = kept->revision > 0 ? sq_revision_name (kept->revision) : NULL;

  if (revision == NULL)
    return g_strdup (_ ("The lay that was kept is out of date: pieces have changed."));
  return g_strdup_printf (_ ("The lay kept for revision %s is out of date: pieces have changed."),
                          revision);
}
