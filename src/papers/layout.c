/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The layout sheet: each cloth's roll at a round scale, the cut end at the left, and a table of
 * where every piece lies. A long roll goes on in bands below each other; every piece lies whole in
 * one of them, and is only outlined where it lies in the next, too. */
#include "drawing/roll-scene.h"
#include "papers/kinds.h"
#include "papers/roll-bands.h"
#include "papers/tables.h"
#include "words/lay-words.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/paper-words.h"
#include "words/piece-names.h"
#include "words/ply-words.h"
#include "words/strip-words.h"

#define LABEL_EM_MM 3.2

/* The roll's width on paper, where it fits at once and where it goes on in bands. */
#define MOST_HIGH_MM 105.0
#define LEAST_HIGH_MM 34.0
#define MOST_BAND_MM 62.0

/* One strip of a lay. */
typedef struct
{
  const SqLays *lays;
  guint cloth, strip;
  GArray *placed; /* of guint: the pieces on it, indexes in the lay */
} Strip;

/* --- what is drawn of a band ----------------------------------------------------------------- */

static void
draw_cloth (const SqRollBand *band, gconstpointer data)
{
  const Strip *strip = data;
  SqRollLook look = { LABEL_EM_MM * band->of->scale, TRUE, 0xffffff };

  sq_roll_band_scene (band,
                      sq_roll_strip_scene (strip->lays, strip->cloth, strip->strip, band->from_mm,
                                           band->to_mm, &look),
                      sq_point (0, 0));
  sq_roll_band_scene (
      band,
      sq_roll_strip_end_scene (strip->lays, strip->cloth, strip->strip, band->from_mm, band->to_mm),
      sq_point (0, 0));
}

static void
draw_piece (const SqRollBand *band, guint i, gconstpointer data)
{
  const Strip *strip = data;
  const SqClothLay *cloth = sq_lays_cloth (strip->lays, strip->cloth);
  guint placed = g_array_index (strip->placed, guint, i);
  const SqCutEntry *entry = sq_lays_entry (strip->lays, sq_lay_placed (cloth->lay, placed));
  g_autofree char *name = sq_words_piece (sq_plan_cover (strip->lays->plan, entry->cushion),
                                          entry->piece);
  SqRollLook look = { LABEL_EM_MM * band->of->scale, TRUE, 0xffffff };
  SqVector place = sq_sub (sq_roll_piece_place (strip->lays, strip->cloth, placed),
                           sq_roll_strip_offset (cloth, strip->strip));

  for (guint layer = SQ_ROLL_SHAPE; layer <= SQ_ROLL_LABEL; layer++)
    sq_roll_band_scene (
        band,
        sq_roll_piece_scene (strip->lays, strip->cloth, placed, (SqRollLayer) layer, name, &look),
        place);
}

/* --- a cloth --------------------------------------------------------------------------------- */

static void
add_unlaid (SqPages *pages, const SqPaperSpec *spec, const SqClothLay *cloth)
{
  SqType bold = sq_type_text;

  bold.bold = TRUE;
  for (guint i = 0; i < cloth->lay->unlaid->len; i++)
    {
      g_autofree char *text = sq_words_unlaid (
          spec->lays, cloth, &g_array_index (cloth->lay->unlaid, SqUnlaid, i), &spec->style);
      sq_pages_paragraph (pages, &bold, text);
    }
  for (guint i = 0; i < cloth->task->bad_pins->len; i++)
    {
      g_autofree char *text = sq_words_bad_pin (spec->lays, cloth, i);
      sq_pages_paragraph (pages, &sq_type_text, text);
    }
}

/* The pieces on the strip, and their cut lines in its own coordinates. */
static void
find_pieces (Strip *strip, GPtrArray *cuts)
{
  const SqClothLay *cloth = sq_lays_cloth (strip->lays, strip->cloth);
  SqVector by = sq_scale (sq_roll_strip_offset (cloth, strip->strip), -1);

  for (guint i = 0; i < cloth->lay->placed->len; i++)
    if (sq_lay_placed (cloth->lay, i)->strip == strip->strip)
      {
        g_autoptr (SqPath) cut = sq_roll_piece_cut (strip->lays, strip->cloth, i);
        g_array_append_val (strip->placed, i);
        g_ptr_array_add (cuts, sq_path_moved (cut, 0, by));
      }
}

/* The last strip that something lies on has the table on its page. */
static gboolean
is_last (const SqClothLay *cloth, guint strip)
{
  for (guint i = strip + 1; i < cloth->task->strips->len; i++)
    if (sq_lay_length (cloth->lay, i) > 0)
      return FALSE;
  return TRUE;
}

/* Draws a strip, under @name if there is one, no farther than @end_mm. */
static void
add_strip (SqPages *pages, const SqPaperSpec *spec, guint index, guint strip, const char *name,
           double end_mm, double table_mm)
{
  const SqClothLay *cloth = sq_lays_cloth (spec->lays, index);
  g_autoptr (GPtrArray) cuts = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  g_autoptr (GArray) placed = g_array_new (FALSE, FALSE, sizeof (guint));
  Strip own = { spec->lays, index, strip, placed };
  SqRollBands bands = { .pages = pages,
                        .style = &spec->style,
                        .cloth = sq_plan_cloth (spec->lays->plan, cloth->cloth),
                        .box = sq_roll_strip_box (cloth, strip),
                        .cuts = cuts,
                        .most_high_mm = MOST_HIGH_MM,
                        .least_high_mm = LEAST_HIGH_MM,
                        .most_band_mm = MOST_BAND_MM,
                        .draw_cloth = draw_cloth,
                        .draw_piece = draw_piece,
                        .data = &own };
  SqType bold = sq_type_text;

  bands.box.max.x = fmin (bands.box.max.x, end_mm);
  find_pieces (&own, cuts);
  bold.bold = TRUE;
  if (name != NULL)
    {
      sq_pages_block (pages, 0, SQ_ROLL_BAND_LEAST_MM + 10);
      const char *trim = sq_words_trim_first (spec->lays, cloth, strip);
      sq_pages_paragraph (pages, &bold, name);
      if (trim != NULL)
        sq_pages_paragraph (pages, &sq_type_small, trim);
      sq_pages_gap (pages, 1);
    }
  sq_roll_bands_draw (&bands, table_mm);
  if (sq_lay_task_strip (cloth->task, strip)->n_flaws > 0)
    sq_pages_paragraph (pages, &sq_type_small, sq_words_hatched_flaws ());
  sq_pages_gap (pages, 2);
}

static void
add_strips (SqPages *pages, const SqPaperSpec *spec, guint index)
{
  const SqClothLay *cloth = sq_lays_cloth (spec->lays, index);
  g_autofree char *unused = sq_words_unused_stock (spec->lays, cloth);
  SqSheetTable table;

  sq_words_lay_table (&table, spec->lays, index, &spec->style);
  for (guint i = 0; i < cloth->task->strips->len; i++)
    if (sq_lay_length (cloth->lay, i) > 0)
      {
        g_autofree char *name = sq_words_names_strips (cloth)
                                    ? sq_words_strip (spec->lays, cloth, i, &spec->style)
                                    : NULL;
        add_strip (pages, spec, index, i, name, HUGE_VAL,
                   is_last (cloth, i) ? sq_pages_table_height_mm (pages, &table) : 0);
      }
  if (unused != NULL)
    sq_pages_paragraph (pages, &sq_type_small, unused);
  sq_pages_table (pages, &table);
  sq_sheet_table_clear (&table);
}

static void
add_cloth (SqPages *pages, const SqPaperSpec *spec, guint index)
{
  const SqClothLay *cloth = sq_lays_cloth (spec->lays, index);
  g_autofree char *name = sq_words_cloth (sq_plan_cloth (spec->lays->plan, cloth->cloth));
  g_autofree char *heading = sq_words_layout_of (name);
  g_autofree char *buy = sq_words_purchase (&cloth->purchase, &spec->style);
  g_autofree char *reckoned = sq_words_reckoned (spec->lays, cloth, &spec->style);
  SqType bold = sq_type_text;

  bold.bold = TRUE;
  sq_pages_set_running (pages, NULL);
  sq_pages_break (pages);
  sq_pages_heading (pages, heading, 40);
  sq_pages_bookmark (pages, name);
  sq_pages_set_running (pages, heading);
  sq_pages_paragraph (pages, &bold, buy);
  if (reckoned[0] != '\0')
    sq_pages_paragraph (pages, &sq_type_small, reckoned);
  add_unlaid (pages, spec, cloth);
  sq_pages_gap (pages, 2);
  add_strips (pages, spec, index);
}

/* A lot's lays as they lie on the table, a ply of each. */
static void
add_plies (SqPages *pages, const SqPaperSpec *spec, guint index)
{
  const SqClothLay *cloth = sq_lays_cloth (spec->lays, index);
  const SqPlyLay *best = sq_plies_best (cloth->plies);
  g_autoptr (SqLays) lays = sq_lays_of_plies (spec->lays);
  SqPaperSpec of_plies = *spec;
  g_autofree char *name = sq_words_cloth (sq_plan_cloth (spec->lays->plan, cloth->cloth));
  g_autofree char *heading = sq_words_plies_of (name);
  g_autofree char *plies = sq_words_plies (cloth->plies, &spec->style);
  g_autofree char *reckoned = sq_words_plies_reckoned (cloth->plies, &spec->style);
  SqType bold = sq_type_text;

  of_plies.lays = lays;
  bold.bold = TRUE;
  sq_pages_set_running (pages, NULL);
  sq_pages_break (pages);
  sq_pages_heading (pages, heading, 40);
  sq_pages_bookmark (pages, heading);
  sq_pages_set_running (pages, heading);
  sq_pages_paragraph (pages, &bold, plies);
  sq_pages_paragraph (pages, &sq_type_small, reckoned);
  sq_pages_gap (pages, 2);
  for (guint i = 0; i < best->task->strips->len; i++)
    if (sq_lay_length (best->lay, i) > 0)
      {
        g_autofree char *which = sq_words_ply_lay (cloth->plies, i, &spec->style);
        add_strip (pages, &of_plies, index, i, which, sq_ply_length_mm (best, i), 0);
      }
}

void
sq_layout_make (SqPaper *paper, const SqPaperSpec *spec)
{
  g_autofree char *title = sq_words_paper_title (spec->lays->plan->job);
  SqPages *pages = sq_pages_new (spec, TRUE, title);

  for (guint i = 0; i < spec->lays->cloths->len; i++)
    {
      const SqPlies *plies = sq_lays_cloth (spec->lays, i)->plies;
      add_cloth (pages, spec, i);
      if (plies != NULL && sq_plies_best (plies)->lays > 0)
        add_plies (pages, spec, i);
    }
  sq_pages_end (pages, paper->pages);
}
