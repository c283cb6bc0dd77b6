/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/pattern-words.h"

#include "job/names.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/paper-words.h"
#include "words/piece-label.h"
#include "words/piece-names.h"
#include "words/piece-remarks.h"

#include <glib/gi18n.h>

static const SqCutEntry *
entry_of (const SqPlan *plan, guint entry)
{
  return &g_array_index (plan->cut_list, SqCutEntry, entry);
}

char *
sq_words_pattern_name (const SqPlan *plan, guint entry)
{
  const SqCutEntry *line = entry_of (plan, entry);
  g_autofree char *name = sq_words_piece (sq_plan_cover (plan, line->cushion), line->piece);

  /* TRANSLATORS: a line of the cut list: its number and its piece. */
  return g_strdup_printf (_ ("%u %s"), line->number, name);
}

char *
sq_words_pattern_of_cushion (const SqPlan *plan, guint entry, const char *text)
{
  if (plan->covers->len < 2)
    return g_strdup (text);
  g_autofree char *name = sq_words_cover (plan->job,
                                          sq_plan_cover (plan, entry_of (plan, entry)->cushion));
  return g_strconcat (text, " · ", name, NULL);
}

const char *
sq_words_pattern_face (SqPieceRole role)
{
  if (role == SQ_ROLE_FACE)
    return _ ("TOP");
  return role == SQ_ROLE_UNDERSIDE ? _ ("UNDERSIDE") : NULL;
}

/* --- on a piece ----------------------------------------------------------------------------- */

/* Longer names would make all words on a piece small. */
#define MOST_NAME 36

/* @name, which is taken, or the start of it. */
static char *
short_name (char *name)
{
  g_autofree char *whole = name;

  if (g_utf8_strlen (whole, -1) <= MOST_NAME)
    return g_steal_pointer (&whole);
  g_autofree char *start = g_utf8_substring (whole, 0, MOST_NAME - 1);
  return g_strconcat (g_strchomp (start), "…", NULL);
}

static char *
count_text (const SqPlan *plan, const SqCutEntry *line)
{
  const SqCloth *cloth = sq_plan_cloth (plan, line->cloth);
  g_autofree char *count = sq_words_cut_count (line->count);

  if (cloth == NULL)
    return g_steal_pointer (&count);
  g_autofree char *name = short_name (sq_words_cloth (cloth));
  return g_strconcat (count, " · ", name, NULL);
}

static void
add_lines_note (GPtrArray *notes, const SqPiece *piece, SqPatternLines lines,
                const SqLengthStyle *style)
{
  if (lines == SQ_PATTERN_CUT)
    g_ptr_array_add (notes, g_strdup (_ ("Cut line: seam allowance included")));
  if (lines != SQ_PATTERN_SEW)
    return;
  g_ptr_array_add (notes, g_strdup (_ ("Sew line: seam allowance NOT included, add it")));
  if (piece->runs->len > 0)
    g_ptr_array_add (notes, sq_words_allowances (piece, style));
}

GPtrArray *
sq_words_pattern_notes (const SqPlan *plan, guint entry, SqPatternLines lines, gboolean wrong_side,
                        gboolean own_mirror, const SqLengthStyle *style)
{
  GPtrArray *notes = g_ptr_array_new_with_free_func (g_free);
  const SqCutEntry *line = entry_of (plan, entry);
  const SqCover *cover = sq_plan_cover (plan, line->cushion);
  const SqPiece *piece = sq_cover_piece (cover, line->piece);
  const char *face = sq_words_pattern_face (piece->role);
  g_autofree char *revision = sq_revision_name (plan->job->revision);
  g_autofree char *title = short_name (sq_words_paper_title (plan->job));

  g_ptr_array_add (notes, face != NULL
                              ? g_strconcat (face, " · ", sq_words_side_up (wrong_side), NULL)
                              : g_strdup (sq_words_side_up (wrong_side)));
  g_ptr_array_add (notes, count_text (plan, line));
  add_lines_note (notes, piece, lines, style);
  if (plan->covers->len > 1)
    g_ptr_array_add (notes, short_name (sq_words_cover (plan->job, cover)));
  else if (cover->mirrored)
    g_ptr_array_add (notes, g_strdup (_ ("mirrored")));
  if (own_mirror)
    g_ptr_array_add (notes, g_strdup (_ ("Outline equals its own mirror image")));
  /* TRANSLATORS: a job's title, and which revision of it. */
  g_ptr_array_add (notes, g_strdup_printf (_ ("%s · Revision %s"), title, revision));
  return notes;
}

const char *
sq_words_pattern_front (void)
{
  /* TRANSLATORS: beside an arrow to the front edge of a seat, in capitals. */
  return _ ("FRONT");
}

const char *
sq_words_pattern_top (void)
{
  /* TRANSLATORS: beside an arrow to the edge of a piece that is sewn to the cushion's top. */
  return _ ("TOP");
}

const char *
sq_words_pattern_up (void)
{
  /* TRANSLATORS: beside an arrow: this way is up on a cloth that has an up and a down. */
  return _ ("UP");
}

/* --- captions ------------------------------------------------------------------------------- */

char *
sq_words_tile (guint column, guint row)
{
  g_autofree char *letters = sq_words_letters (column);

  return g_strdup_printf ("%s%u", letters, row + 1);
}

char *
sq_words_tile_page (guint number, const char *tile)
{
  return g_strdup_printf ("%u · %s", number, tile);
}

char *
sq_words_pattern_together (const GPtrArray *names)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < names->len; i++)
    {
      if (i > 0)
        g_string_append (text, " · ");
      g_string_append (text, g_ptr_array_index (names, i));
    }
  return g_string_free (text, FALSE);
}

char *
sq_words_pattern_state (const SqJob *job, const char *date)
{
  g_autofree char *title = sq_words_paper_title (job);
  g_autofree char *state = sq_words_paper_state (job, date);

  return g_strconcat (title, " · ", state, NULL);
}

char *
sq_words_corner_distance (guint a, guint b, double mm, const SqLengthStyle *style)
{
  g_autofree char *from = sq_words_letters (a);
  g_autofree char *to = sq_words_letters (b);
  g_autofree char *length = sq_words_length (mm, style);

  /* TRANSLATORS: two corners of a piece, and how far they are from each other: "A to B 47 1/2 in". */
  return g_strdup_printf (_ ("%s to %s %s"), from, to, length);
}

/* --- first pages ---------------------------------------------------------------------------- */

const char *
sq_words_check_heading (void)
{
  return _ ("MEASURE THESE BEFORE YOU CUT");
}

const char *
sq_words_check_how (void)
{
  return _ (
      "Print at 100 %, not fitted to the page. Each side of this square is exactly so long; if "
      "it is not, nothing else here is true either.");
}

const char *
sq_words_square_mm (void)
{
  return _ ("100 mm");
}

const char *
sq_words_square_inch (void)
{
  return _ ("4 in");
}

const char *
sq_words_pattern_pieces (void)
{
  return _ ("PIECES");
}

/* Numbered in the order in which they come, but for one alone. */
static void
add_step (GPtrArray *steps, gboolean is_alone, const char *text)
{
  if (is_alone)
    {
      g_ptr_array_add (steps, g_strdup (text));
      return;
    }
  /* TRANSLATORS: the number of a step, and what to do. */
  g_ptr_array_add (steps, g_strdup_printf (_ ("%u. %s"), steps->len + 1, text));
}

GPtrArray *
sq_words_pattern_steps (gboolean on_sheets, SqPatternLines lines)
{
  GPtrArray *steps = g_ptr_array_new_with_free_func (g_free);

  if (on_sheets)
    {
      add_step (steps, !on_sheets, _ ("Lay the sheets of a piece out as on its map."));
      add_step (steps, !on_sheets,
                _ ("Trim each sheet at its left and upper dashed line, where the map has a "
                   "sheet beyond it."));
      add_step (steps, !on_sheets,
                _ ("Glue row by row, the trimmed edge on its neighbour, diamond on "
                   "diamond."));
    }
  if (lines == SQ_PATTERN_SEW)
    add_step (steps, !on_sheets,
              _ ("The strong line is the sew line: add the allowance that stands on the "
                 "piece, then cut."));
  else
    add_step (steps, !on_sheets, _ ("Cut along the middle of the strong line."));
  return steps;
}

const char *
sq_words_pattern_side (gboolean wrong_side)
{
  return wrong_side ? _ ("WRONG SIDE UP: mirrored, to be laid on the wrong side of the cloth.")
                    : _ ("RIGHT SIDE UP: to be laid on the right side of the cloth.");
}

char *
sq_words_pattern_on_page (guint page)
{
  return g_strdup_printf (_ ("page %u"), page);
}

char *
sq_words_pattern_on_pages (guint first, guint last, const char *first_tile, const char *last_tile)
{
  if (first == last)
    return g_strdup_printf (_ ("page %u: %s"), first, first_tile);
  /* TRANSLATORS: two page numbers, and what the sheets on them are called: "pages 5–12: A1 to C3". */
  return g_strdup_printf (_ ("pages %u–%u: %s to %s"), first, last, first_tile, last_tile);
}

char *
sq_words_pattern_with (const char *on_pages, guint number)
{
  /* TRANSLATORS: which pages a piece is on, and the number of another that is on the same sheets. */
  return g_strdup_printf (_ ("%s, with %u"), on_pages, number);
}

char *
sq_words_pattern_corners_on (guint first, guint last)
{
  if (first == last)
    return g_strdup_printf (_ ("corners only: page %u"), first);
  return g_strdup_printf (_ ("corners only: pages %u–%u"), first, last);
}

const char *
sq_words_pattern_corners (void)
{
  return _ ("Corners only: draw the sides on the cloth as long as is written at them, lay the "
            "corners on, and measure the diagonals before you cut.");
}

const char *
sq_words_pattern_left_out (void)
{
  return _ ("Crossed sheets are left out: no line is on them.");
}

/* --- the test page -------------------------------------------------------------------------- */

const char *
sq_words_test_page (void)
{
  return _ ("TEST PAGE");
}

const char *
sq_words_test_page_if (void)
{
  return _ (
      "If a square or ruler does not measure true, look in the printer’s settings for fitting, "
      "scaling or borderless printing, and switch it off. Then print this page again: patterns "
      "are only as true as it is.");
}

const char *
sq_words_ruler_mm (void)
{
  return _ ("mm");
}

const char *
sq_words_ruler_inch (void)
{
  return _ ("in");
}
