/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/marking-words.h"

#include "words/cut-sheet-tables.h"
#include "words/lay-words.h"
#include "words/lengths.h"
#include "words/piece-names.h"
#include "words/strip-words.h"
#include "words/text-table.h"

#include <glib/gi18n.h>

/* An arc is drawn with a string up to such a radius, else along a batten. */
#define MOST_STRING_MM 1000.0

/* What is shorter is quicker cut than ripped. */
#define LEAST_RIP_MM 300.0

#define N_LETTERS 26

char *
sq_words_marking_of (const char *cloth)
{
  /* TRANSLATORS: of a cloth. */
  return g_strdup_printf (_ ("Marking guide: %s"), cloth);
}

char *
sq_words_marking_of_plies (const char *cloth)
{
  /* TRANSLATORS: of a cloth that is cut several layers deep: its uppermost layer is marked. */
  return g_strdup_printf (_ ("Marking guide, top ply: %s"), cloth);
}

char *
sq_words_marking_key (const SqLengthStyle *style)
{
  /* TRANSLATORS: a unit of length: "inches". */
  return g_strdup_printf (
      _ ("Figures are %s, each from the exact place: along from the cut end, across from the near "
         "edge without its selvedge. Join points straight in their order and the last to the "
         "first; an arc goes through its point in one curve, of radius R or with that rise over "
         "the straight line. (2), (3): double and triple notches."),
      sq_words_unit (style->unit));
}

const char *
sq_words_marking_lie (gboolean wrong_side)
{
  if (wrong_side)
    return _ ("Lay the cloth wrong side up, its cut end at your left. It is turned over along its "
              "length: the usable edge near you is the other selvedge’s, that is far from you when "
              "the right side is up.");
  return _ ("Lay the cloth right side up, its cut end at your left, its near usable edge in front "
            "of you.");
}

const char *
sq_words_marking_nothing (void)
{
  return _ ("Nothing lies on this cloth: there is nothing to mark.");
}

/* --- before the pieces ----------------------------------------------------------------------- */

static char *
flaw_text (const SqBox *flaw, const SqLengthStyle *style)
{
  g_autofree char *along = sq_words_range (flaw->min.x, flaw->max.x, style);
  g_autofree char *across = sq_words_range (flaw->min.y, flaw->max.y, style);

  /* TRANSLATORS: from – to along the cloth, from – to across it. */
  return g_strdup_printf (_ ("Mark the flaw: along %s, across %s. Nothing is cut from there."),
                          along, across);
}

GPtrArray *
sq_words_marking_before (const SqLays *lays, const SqMarking *marking, const SqLengthStyle *style)
{
  GPtrArray *texts = g_ptr_array_new_with_free_func (g_free);
  const SqClothLay *cloth = sq_lays_cloth (lays, marking->cloth);
  const char *trim = sq_words_trim_first (lays, cloth, marking->strip);

  g_ptr_array_add (texts, g_strdup (_ ("Square the cut end to the near edge.")));
  if (trim != NULL)
    g_ptr_array_add (texts, g_strdup (trim));
  for (guint i = 0; i < marking->flaws->len; i++)
    g_ptr_array_add (texts, flaw_text (&g_array_index (marking->flaws, SqBox, i), style));
  return texts;
}

/* --- straight cuts --------------------------------------------------------------------------- */

/* Whether a cut is ripped. */
static gboolean
tears (const SqLays *lays, const SqMarking *marking, const SqStraightCut *cut)
{
  SqId cloth = sq_lays_cloth (lays, marking->cloth)->cloth;

  return cut->to_mm - cut->from_mm >= LEAST_RIP_MM
         && sq_cloth_tears (sq_plan_cloth (lays->plan, cloth), cut->is_across);
}

static gboolean
any_tears (const SqLays *lays, const SqMarking *marking)
{
  for (guint i = 0; i < marking->cuts->len; i++)
    if (tears (lays, marking, sq_marking_cut (marking, i)))
      return TRUE;
  return FALSE;
}

const char *
sq_words_strips_first (const SqLays *lays, const SqMarking *marking)
{
  return any_tears (lays, marking) ? _ ("STRIPS TO RIP OR CUT FIRST") : _ ("STRIPS TO CUT FIRST");
}

const char *
sq_words_strips_how (const SqLays *lays, const SqMarking *marking)
{
  if (any_tears (lays, marking))
    return _ ("Snip the edge at each figure and rip along the thread; cut where the cloth does not "
              "tear straight or has a coat. Snip and chalk everything before you lift the cloth: "
              "all of it is measured from the same cut end and near edge.");
  return _ ("Chalk these lines and cut them with shears or along a rule: do not rip them. Chalk "
            "everything before you lift the cloth: all of it is measured from the same cut "
            "end and near edge.");
}

/* Right through it says where; else from where to where, too. */
static const char *
cut_pattern (gboolean across, gboolean rip, gboolean right_through)
{
  if (right_through && across)
    return rip ? _ ("Rip across at %s") : _ ("Cut across at %s");
  if (right_through)
    return rip ? _ ("Rip along at %s") : _ ("Cut along at %s");
  /* TRANSLATORS: lengths: where a straight line is, from and to where it goes. */
  if (across)
    return rip ? _ ("Rip across at %s: %s – %s") : _ ("Cut across at %s: %s – %s");
  return rip ? _ ("Rip along at %s: %s – %s") : _ ("Cut along at %s: %s – %s");
}

static char *
unbroken_figure (double mm, const SqLengthStyle *style)
{
  g_autofree char *figure = sq_words_figure (mm, style);

  return sq_text_unbroken (figure);
}

char *
sq_words_straight_cut (const SqLays *lays, const SqMarking *marking, guint i,
                       const SqLengthStyle *style)
{
  const SqStraightCut *cut = sq_marking_cut (marking, i);
  const char *pattern = cut_pattern (cut->is_across, tears (lays, marking, cut),
                                     cut->from_edge && cut->to_edge);
  g_autofree char *at = unbroken_figure (cut->at_mm, style);
  g_autofree char *from = unbroken_figure (cut->from_mm, style);
  g_autofree char *to = unbroken_figure (cut->to_mm, style);

  return g_strdup_printf (pattern, at, from, to);
}

const char *
sq_words_strip_pieces (void)
{
  return _ ("ON THESE STRIPS");
}

const char *
sq_words_other_pieces (void)
{
  return _ ("PIECES, FROM THE CUT END ON");
}

/* --- a piece --------------------------------------------------------------------------------- */

char *
sq_words_marked (const SqLays *lays, const SqMarking *marking, guint i)
{
  const SqPlaced *placed = sq_lay_placed (sq_lays_cloth (lays, marking->cloth)->lay,
                                          sq_marked_piece (marking, i)->placed);
  const SqCutEntry *entry = sq_lays_entry (lays, placed);
  g_autofree char *piece = sq_words_entry_piece (lays, entry);

  /* TRANSLATORS: number in the cut list, and the piece. */
  return g_strdup_printf (_ ("%u  %s"), entry->number, piece);
}

char *
sq_words_marked_copies (const SqLays *lays, const SqBundle *bundle)
{
  const SqCutEntry *entry = &g_array_index (lays->plan->cut_list, SqCutEntry, bundle->entry);

  if (bundle->count == 0)
    /* TRANSLATORS: a piece that is cut beyond those wanted. */
    return g_strdup (_ ("spare"));
  if (bundle->count == 1)
    return sq_words_which_copy (entry, bundle->first);
  /* TRANSLATORS: which of several equal pieces, from the first to the last. */
  return g_strdup_printf (_ ("%u–%u of %u"), bundle->first + 1, bundle->first + bundle->count,
                          entry->count);
}

char *
sq_words_mark_letter (guint i)
{
  GString *letters = g_string_new (NULL);

  for (guint n = i + 1; n > 0; n = (n - 1) / N_LETTERS)
    g_string_prepend_c (letters, (char) ('a' + (n - 1) % N_LETTERS));
  return g_string_free (letters, FALSE);
}

/* How the line goes at a point. */
static char *
note_text (const SqMarkPoint *point, gboolean begins_hole, const SqLengthStyle *style)
{
  g_autofree char *radius = sq_words_figure (point->radius_mm, style);
  g_autofree char *rise = sq_words_figure (point->rise_mm, style);

  if (begins_hole)
    /* TRANSLATORS: the points from here on are those of a hole. */
    return g_strdup (_ ("hole"));
  if (!point->is_middle)
    return g_strdup ("");
  if (point->radius_mm <= MOST_STRING_MM)
    /* TRANSLATORS: a point on an arc; its radius. */
    return g_strdup_printf (_ ("arc, R %s"), radius);
  /* TRANSLATORS: a point on an arc; how far the arc rises over the straight line. */
  return g_strdup_printf (_ ("arc, rise %s"), rise);
}

void
sq_words_mark_points (SqSheetTable *table, const SqMarking *marking, guint i,
                      const SqLengthStyle *style)
{
  const SqMarkedPiece *piece = sq_marked_piece (marking, i);
  const char *const heads[] = { "", _ ("along"), _ ("across"), "", NULL };
  guint letter = 0;

  sq_sheet_table_begin (table, "", "lrrl", heads);
  for (guint ring = 0; ring < piece->rings->len && !piece->is_rectangle; ring++)
    for (guint k = 0; k < sq_marked_piece_ring (piece, ring)->len; k++)
      {
        const SqMarkPoint *point = sq_mark_point (sq_marked_piece_ring (piece, ring), k);
        SqLengthStyle own = sq_mark_style (point->is_fine, style);
        char *cells[] = { sq_words_mark_letter (letter++), sq_words_figure (point->at.x, &own),
                          sq_words_figure (point->at.y, &own),
                          note_text (point, ring > 0 && k == 0, style) };
        sq_sheet_table_add (table, cells);
      }
}

GPtrArray *
sq_words_mark_ranges (const SqMarking *marking, guint i, const SqLengthStyle *style)
{
  const SqMarkedPiece *piece = sq_marked_piece (marking, i);
  GPtrArray *texts = g_ptr_array_new_with_free_func (g_free);
  SqLengthStyle own = sq_mark_style (piece->is_fine, style);
  g_autofree char *along = sq_words_range (piece->box.min.x, piece->box.max.x, &own);
  g_autofree char *across = sq_words_range (piece->box.min.y, piece->box.max.y, &own);

  if (!piece->is_rectangle)
    return texts;
  /* TRANSLATORS: from – to, along the roll. */
  g_ptr_array_add (texts, g_strdup_printf (_ ("along %s"), along));
  /* TRANSLATORS: from – to, across the roll. */
  g_ptr_array_add (texts, g_strdup_printf (_ ("across %s"), across));
  return texts;
}
