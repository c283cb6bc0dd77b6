/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/label-words.h"

#include "words/names.h"
#include "words/paper-words.h"
#include "words/pattern-words.h"
#include "words/piece-names.h"
#include "words/strip-words.h"
#include "words/text-table.h"

#include <glib/gi18n.h>

#define FRONT SQ_SIDE_FRONT
#define RIGHT SQ_SIDE_RIGHT
#define BACK SQ_SIDE_BACK
#define LEFT SQ_SIDE_LEFT

/* Where a strip goes, as it is seen from above, its ends in the order of its length. */
static const char *const places[] = {
  [0] = "",
  [FRONT] = N_ ("at the front"),
  [RIGHT] = N_ ("at the right"),
  [BACK] = N_ ("at the back"),
  [LEFT] = N_ ("at the left"),
  [FRONT | RIGHT] = N_ ("at the front and right"),
  [FRONT | BACK] = N_ ("at the front and back"),
  [FRONT | LEFT] = N_ ("at the left and front"),
  [RIGHT | BACK] = N_ ("at the right and back"),
  [RIGHT | LEFT] = N_ ("at the left and right"),
  [BACK | LEFT] = N_ ("at the back and left"),
  [FRONT | RIGHT | BACK] = N_ ("at the front, right and back"),
  [FRONT | RIGHT | LEFT] = N_ ("at the left, front and right"),
  [FRONT | BACK | LEFT] = N_ ("at the back, left and front"),
  [RIGHT | BACK | LEFT] = N_ ("at the right, back and left"),
  [FRONT | RIGHT | BACK | LEFT] = N_ ("all round"),
};

const char *
sq_words_no_labels (void)
{
  return _ ("There is no piece to label.");
}

static char *
place_text (const SqPiece *piece)
{
  const char *place = places[piece->sides & (FRONT | RIGHT | BACK | LEFT)];

  if (place[0] == '\0' || sq_words_pattern_face (piece->role) != NULL || piece->hole > 0)
    return g_strdup ("");
  if (piece->role == SQ_ROLE_WELT)
    return g_strdup (gettext (place));
  /* TRANSLATORS: where a piece goes on the cushion, and how it is held there: "at the left". */
  return g_strdup_printf (_ ("%s, its top above"), gettext (place));
}

/* Adds @text, which is taken, after a dot. */
static void
say (GString *out, char *text)
{
  g_string_append (out, out->len > 0 ? " · " : "");
  g_string_append (out, text);
  g_free (text);
}

/* "cushion 2 of 4", or "cushions 1–3 of 4" of a bundle. */
static char *
cushions_text (const SqBundle *bundle, guint per_cushion, guint count)
{
  guint first = bundle->first / per_cushion + 1;
  guint last = (bundle->first + MAX (bundle->count, 1) - 1) / per_cushion + 1;

  if (first == last)
    return g_strdup_printf (_ ("cushion %u of %u"), first, count);
  return g_strdup_printf (_ ("cushions %u–%u of %u"), first, last, count);
}

static char *
which_text (const SqCover *cover, const SqPiece *piece, const SqBundle *bundle)
{
  GString *out = g_string_new (NULL);

  say (out, cushions_text (bundle, piece->count, cover->cushion->count));
  /* TRANSLATORS: the hand of a cushion; one of a pair must not be taken for the other. */
  say (out, g_strdup (cover->mirrored ? _ ("MIRRORED") : _ ("as drawn")));
  if (piece->count > 1 && bundle->count == 1)
    say (out,
         g_strdup_printf (_ ("piece %u of %u"), bundle->first % piece->count + 1, piece->count));
  return g_string_free (out, FALSE);
}

static char *
bundle_text (const SqBundle *bundle, guint n_copies)
{
  guint plies = bundle->count + bundle->spares;
  GString *out = g_string_new (NULL);

  if (plies == 1)
    return g_string_free (out, FALSE);
  say (out, g_strdup_printf (ngettext ("%u ply", "%u plies", plies), plies));
  if (bundle->count == 1)
    say (out, g_strdup_printf (_ ("copy %u of %u"), bundle->first + 1, n_copies));
  else
    say (out, g_strdup_printf (_ ("copies %u–%u of %u"), bundle->first + 1,
                               bundle->first + bundle->count, n_copies));
  if (bundle->spares > 0)
    say (out, g_strdup_printf (ngettext ("%u spare", "%u spares", bundle->spares), bundle->spares));
  return g_string_free (out, FALSE);
}

static char *
lies_text (const SqSpreads *spreads, const SqBundle *bundle, SqId cloth)
{
  GString *out = g_string_new (NULL);

  say (out, sq_words_cloth (sq_plan_cloth (spreads->lays->plan, cloth)));
  if (bundle->spread < 0)
    {
      say (out, g_strdup (_ ("not laid")));
      return g_string_free (out, FALSE);
    }
  const SqSpread *spread = sq_spreads_at (spreads, bundle->spread);
  const SqClothLay *own = sq_spread_cloth (spread);
  if (spread->is_lot)
    say (out, g_strdup_printf (_ ("lay %u of %u"), spread->number, spread->n));
  else if (sq_words_names_strips (own))
    say (out, sq_words_strip_name (spread->lays, own, spread->strip));
  return g_string_free (out, FALSE);
}

static char *
job_text (const SqJob *job)
{
  g_autofree char *customer = sq_text_clean (job->customer != NULL ? job->customer : "");
  GString *out = g_string_new (NULL);

  say (out, sq_words_paper_title (job));
  if (customer[0] != '\0')
    say (out, sq_words_for_customer (customer));
  return g_string_free (out, FALSE);
}

void
sq_words_label (SqLabelText *label, const SqSpreads *spreads, const SqBundle *bundle,
                const char *date)
{
  const SqPlan *plan = spreads->lays->plan;
  const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, bundle->entry);
  const SqCover *cover = sq_plan_cover (plan, entry->cushion);
  const SqPiece *piece = sq_cover_piece (cover, entry->piece);

  *label = (SqLabelText){
    .number = g_strdup_printf ("%u", entry->number),
    .name = sq_words_piece (cover, entry->piece),
    .face = sq_words_pattern_face (piece->role),
    .bundle = bundle_text (bundle, entry->count),
    .cushion = sq_words_cushion (plan->job, cover->cushion),
    .which = which_text (cover, piece, bundle),
    .place = place_text (piece),
    .lies = lies_text (spreads, bundle, entry->cloth),
    .job = job_text (plan->job),
    .state = sq_words_paper_state (plan->job, date),
  };
}

void
sq_label_text_clear (SqLabelText *label)
{
  g_free (label->number);
  g_free (label->name);
  g_free (label->bundle);
  g_free (label->cushion);
  g_free (label->which);
  g_free (label->place);
  g_free (label->lies);
  g_free (label->job);
  g_free (label->state);
}
