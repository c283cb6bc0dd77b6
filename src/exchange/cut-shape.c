/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/cut-shape.h"

#include "cover/ticks.h"
#include "geometry/crossing.h"
#include "words/cut-sheet-tables.h"
#include "words/names.h"
#include "words/paper-words.h"
#include "words/piece-label.h"
#include "words/piece-names.h"

/* Of capitals (mm): written large where there is room, and never so small that a pen blots it. */
#define MOST_TEXT_MM 10.0
#define LEAST_TEXT_MM 2.0
/* What a letter takes across, and a line down, of the height of capitals. */
#define LETTER_WIDTH 0.95
#define LINE_HEIGHT 1.7
/* Some letters are higher than capitals. */
#define ASCENDER 1.2
/* Of the cloth beside and above it, what a text takes at most; in a strip the rest is the grain's. */
#define TEXT_SHARE 0.8
#define STRIP_TEXT_SHARE 0.58

/* Of the longest chord along the grain, the part that its arrow takes, beside what is written about
 * the middle. */
#define GRAIN_FROM 0.62
#define GRAIN_TO 0.92
#define GRAIN_MOST_MM 300.0

#define N_LEVELS 9

/* --- lists ---------------------------------------------------------------------------------- */

static void
clear_line (gpointer line)
{
  sq_path_unref (((SqCutLine *) line)->path);
}

static void
clear_text (gpointer text)
{
  g_free (((SqCutText *) text)->text);
}

GArray *
sq_cut_lines_new (void)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (SqCutLine));

  g_array_set_clear_func (lines, clear_line);
  return lines;
}

GArray *
sq_cut_texts_new (void)
{
  GArray *texts = g_array_new (FALSE, FALSE, sizeof (SqCutText));

  g_array_set_clear_func (texts, clear_text);
  return texts;
}

void
sq_cut_lines_add (GArray *lines, SqCutLayer layer, SqPath *path)
{
  SqCutLine line = { layer, path };

  g_array_append_val (lines, line);
}

void
sq_cut_texts_add (GArray *texts, SqPoint at, double height_mm, char *text)
{
  SqCutText line = { .at = at, .height_mm = height_mm, .text = text };

  g_array_append_val (texts, line);
}

/* --- lines ---------------------------------------------------------------------------------- */

/* A shape as it is filled. */
typedef struct
{
  SqCutShape *shape;
  const SqPiece *piece;
  const SqCutChoice *choice;
} Filling;

static void
add_path (const Filling *f, SqCutLayer layer, const SqPath *path)
{
  g_autoptr (SqPath) mirrored = f->choice->wrong_side ? sq_path_mirrored (path) : NULL;
  const SqPath *marked = mirrored != NULL ? mirrored : path;

  sq_cut_lines_add (f->shape->lines, layer,
                    f->choice->flatten_mm > 0 ? sq_path_flattened (marked, f->choice->flatten_mm)
                                              : sq_path_ref (marked));
}

static void
add_segment (const Filling *f, SqCutLayer layer, SqPoint from, SqPoint to)
{
  const SqNode nodes[] = { { from, 0, 0 }, { to, 0, 0 } };
  g_autoptr (SqPath) path = sq_path_new (nodes, G_N_ELEMENTS (nodes), FALSE);

  add_path (f, layer, path);
}

static void
add_rings (const Filling *f)
{
  for (guint i = 0; i < f->piece->cut->len && f->choice->lines & SQ_LINES_CUT; i++)
    add_path (f, i == 0 ? SQ_LAYER_CUT : SQ_LAYER_CUT_INSIDE, sq_piece_cut (f->piece, i));
  for (guint i = 0; i < f->piece->sew->len && f->choice->lines & SQ_LINES_SEW; i++)
    add_path (f, SQ_LAYER_SEW, sq_piece_sew (f->piece, i));
}

static void
add_ticks (const Filling *f, const SqMark *mark)
{
  SqSegment ticks[SQ_MOST_TICKS];
  guint n = sq_mark_ticks (f->piece, mark, ticks);

  for (guint i = 0; i < n; i++)
    add_segment (f, SQ_LAYER_NOTCH, ticks[i].from, ticks[i].to);
}

static void
add_mark (const Filling *f, const SqMark *mark)
{
  SqCutLayer layer;

  switch (mark->kind)
    {
    case SQ_MARK_NOTCH:
    case SQ_MARK_CLIP:
      if (f->choice->lines & SQ_LINES_NOTCH)
        add_ticks (f, mark);
      return;
    case SQ_MARK_FOLD:
      layer = SQ_LAYER_FOLD;
      break;
    case SQ_MARK_ZIP:
      layer = SQ_LAYER_ZIP;
      break;
    case SQ_MARK_CORNER:
      layer = SQ_LAYER_CORNER;
      break;
    case SQ_MARK_STAY:
      layer = SQ_LAYER_STAY;
      break;
    default:
      g_return_if_reached ();
    }
  if (mark->line != NULL && f->choice->lines & SQ_LINES_MARK)
    add_path (f, layer, mark->line);
}

/* The longest stretch inside the cut line that runs along unit @along, of those through N_LEVELS
 * places across the piece, but for what lies lower than @least_mm there. */
static SqSegment
longest_chord (const SqPiece *piece, SqVector along, double least_mm)
{
  const SqPath *ring = sq_piece_cut (piece, 0);
  g_autoptr (SqPath) turned = sq_path_moved (ring, -atan2 (along.y, along.x), sq_point (0, 0));
  SqBox extent = sq_path_box (turned);
  SqSegment longest = { sq_point (0, 0), sq_point (0, 0), 0 };

  /* from the middle outwards: of equal ones the middle counts */
  for (int i = 0; i < N_LEVELS; i++)
    {
      double level = 0.5 + (i % 2 == 0 ? i : -i - 1) / 2 / (N_LEVELS + 1.0);
      double across_mm = extent.min.y + level * (extent.max.y - extent.min.y);
      SqPoint on = sq_scale (sq_left (along), across_mm);
      if (across_mm < least_mm)
        continue;
      g_autoptr (GArray) chords = sq_ring_chords (ring, on, along);
      for (guint k = 0; k + 1 < chords->len; k += 2)
        {
          SqSegment chord = { sq_moved (on, along, g_array_index (chords, double, k)),
                              sq_moved (on, along, g_array_index (chords, double, k + 1)), 0 };
          if (sq_distance (chord.from, chord.to)
              > sq_distance (longest.from, longest.to) + SQ_GRID_FLATTEN_MM)
            longest = chord;
        }
    }
  return longest;
}

static void
add_grain (const Filling *f)
{
  SqVector along = sq_turned (sq_point (1, 0), f->piece->grain_rad);
  SqSegment chord = longest_chord (f->piece, along, -INFINITY);
  double length_mm = sq_distance (chord.from, chord.to);
  double line_mm = fmin ((GRAIN_TO - GRAIN_FROM) * length_mm, GRAIN_MOST_MM);

  if (line_mm > 0 && f->choice->lines & SQ_LINES_MARK)
    add_segment (f, SQ_LAYER_GRAIN, sq_moved (chord.from, along, GRAIN_FROM * length_mm),
                 sq_moved (chord.from, along, GRAIN_FROM * length_mm + line_mm));
}

/* --- texts ---------------------------------------------------------------------------------- */

/* About what @text takes across, in heights of capitals. */
static double
width_of (const char *text)
{
  double width = 0;

  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at))
    if (!g_unichar_iszerowidth (g_utf8_get_char (at)))
      width += LETTER_WIDTH * (g_unichar_iswide (g_utf8_get_char (at)) ? 2 : 1);
  return width;
}

SqBox
sq_cut_text_box (SqPoint at, double height_mm, const char *text)
{
  return (SqBox){ at, sq_add (at, sq_point (width_of (text) * height_mm, ASCENDER * height_mm)) };
}

/* How high the cut line is above and below @at. */
static double
height_at (const SqPiece *piece, SqPoint at)
{
  g_autoptr (GArray) chords = sq_ring_chords (sq_piece_cut (piece, 0), at, sq_point (0, 1));

  for (guint i = 0; i + 1 < chords->len; i += 2)
    if (g_array_index (chords, double, i) <= 0 && g_array_index (chords, double, i + 1) >= 0)
      return 2 * fmin (-g_array_index (chords, double, i), g_array_index (chords, double, i + 1));
  return 0;
}

/* A strip has no height for lines below each other. */
static gboolean
is_strip (const SqPiece *piece)
{
  SqBox box = sq_path_box (sq_piece_cut (piece, 0));

  return box.max.y - box.min.y < 8 * LINE_HEIGHT * MOST_TEXT_MM;
}

/* The lines of @words, one below the other about the middle of the piece's longest chord from left
 * to right above @least_mm, of strips in its first half, as large as there is room. */
static void
add_block (const Filling *f, char *const *words, double least_mm)
{
  SqSegment chord = longest_chord (f->piece, sq_point (1, 0), least_mm);
  double share = is_strip (f->piece) ? STRIP_TEXT_SHARE : TEXT_SHARE;
  SqPoint middle = sq_between (chord.from, chord.to, is_strip (f->piece) ? share / 2 + 0.02 : 0.5);
  guint n = g_strv_length ((char **) words);
  double widest = 1;

  for (guint i = 0; i < n; i++)
    widest = fmax (widest, width_of (words[i]));
  double height_mm = fmin (share * sq_distance (chord.from, chord.to) / widest,
                           TEXT_SHARE * height_at (f->piece, middle) / (n * LINE_HEIGHT));
  height_mm = CLAMP (height_mm, LEAST_TEXT_MM, MOST_TEXT_MM);
  if (f->choice->wrong_side)
    middle.x = -middle.x;
  for (guint i = 0; i < n; i++)
    {
      SqVector off = sq_point (-width_of (words[i]) * height_mm / 2,
                               ((n - 1) / 2.0 - i) * LINE_HEIGHT * height_mm - height_mm / 2);
      sq_cut_texts_add (f->shape->texts, sq_add (middle, off), height_mm, g_strdup (words[i]));
    }
}

/* The first of @texts that goes into a strip, or the last. */
static const char *
fitting (const SqPiece *piece, const char *const *texts)
{
  SqSegment chord = longest_chord (piece, sq_point (1, 0), -INFINITY);
  double room_mm = STRIP_TEXT_SHARE * sq_distance (chord.from, chord.to);
  guint i = 0;

  while (texts[i + 1] != NULL && width_of (texts[i]) * LEAST_TEXT_MM > room_mm)
    i++;
  return texts[i];
}

static gboolean
has_front (const SqPiece *piece)
{
  return (piece->role == SQ_ROLE_FACE || piece->role == SQ_ROLE_UNDERSIDE) && !is_strip (piece);
}

/* The front of a face lies below; its word stands above the middle of that side. */
static void
add_front (const Filling *f, double low_mm)
{
  g_autofree char *front = g_utf8_strup (sq_words_front (), -1);
  SqPoint from = sq_point (0, low_mm + 2.5 * MOST_TEXT_MM);
  g_autoptr (GArray) chords = sq_ring_chords (sq_piece_cut (f->piece, 0), from, sq_point (1, 0));

  if (chords->len < 2)
    return;
  double middle = (g_array_index (chords, double, 0) + g_array_index (chords, double, 1)) / 2;
  double left = (f->choice->wrong_side ? -middle : middle) - width_of (front) * MOST_TEXT_MM / 2;
  sq_cut_texts_add (f->shape->texts, sq_point (left, low_mm + 2 * MOST_TEXT_MM), MOST_TEXT_MM,
                    g_steal_pointer (&front));
}

static void
add_texts (const Filling *f, const SqPlan *plan, const SqCutEntry *entry)
{
  g_autofree char *number = g_strdup_printf ("%u", entry->number);
  g_autofree char *piece = sq_words_piece (sq_plan_cover (plan, entry->cushion), entry->piece);
  g_autofree char *cushion = sq_sheet_cushion_name (plan, entry->cushion);
  g_autofree char *count = sq_words_cut_count (entry->count);
  g_autofree char *numbered = g_strjoin (" ", number, piece, NULL);
  g_autofree char *cut = g_strjoin (" · ", count, sq_words_side_up (f->choice->wrong_side), NULL);
  char *lines[] = { numbered, cushion[0] != '\0' ? cushion : cut, cushion[0] != '\0' ? cut : NULL,
                    NULL };
  g_autofree char *all = g_strjoinv (" · ", lines);
  double low_mm = sq_path_box (sq_piece_cut (f->piece, 0)).min.y;

  if (!(f->choice->lines & SQ_LINES_TEXT))
    return;
  if (is_strip (f->piece))
    {
      const char *texts[] = { all, numbered, number, NULL };
      add_block (f, (char *[]){ (char *) fitting (f->piece, texts), NULL }, -INFINITY);
    }
  else if (has_front (f->piece))
    {
      add_front (f, low_mm);
      add_block (f, lines, low_mm + (4 + g_strv_length (lines) * LINE_HEIGHT / 2) * MOST_TEXT_MM);
    }
  else
    add_block (f, lines, -INFINITY);
}

/* --- a shape -------------------------------------------------------------------------------- */

/* "3 Bay seat, front boxing": the number alone makes it one of its own. */
static char *
name_of (const SqPlan *plan, const SqCutEntry *entry)
{
  const SqCover *cover = sq_plan_cover (plan, entry->cushion);
  g_autofree char *cushion = sq_sheet_cushion_name (plan, entry->cushion);

  if (cushion[0] == '\0')
    {
      g_autofree char *piece = sq_words_piece (cover, entry->piece);
      return g_strdup_printf ("%u %s", entry->number, piece);
    }
  g_autofree char *piece = sq_words_piece_inside (cover, entry->piece);
  return g_strdup_printf ("%u %s, %s", entry->number, cushion, piece);
}

SqCutShape *
sq_cut_shape_new (const SqPlan *plan, guint index, const SqCutChoice *choice)
{
  const SqCutEntry *entry = &g_array_index (plan->cut_list, SqCutEntry, index);
  SqCutShape *shape = g_new0 (SqCutShape, 1);
  const SqCloth *cloth = sq_plan_cloth (plan, entry->cloth);

  shape->entry = index;
  shape->name = name_of (plan, entry);
  shape->cloth = cloth != NULL ? sq_words_cloth (cloth) : g_strdup ("");
  shape->count = entry->count;
  shape->piece = sq_piece_ref (sq_cover_piece (sq_plan_cover (plan, entry->cushion), entry->piece));
  shape->lines = sq_cut_lines_new ();
  shape->texts = sq_cut_texts_new ();

  Filling f = { shape, shape->piece, choice };
  add_rings (&f);
  for (guint i = 0; i < shape->piece->marks->len; i++)
    add_mark (&f, &g_array_index (shape->piece->marks, SqMark, i));
  add_grain (&f);
  add_texts (&f, plan, entry);
  return shape;
}

void
sq_cut_shape_free (SqCutShape *shape)
{
  g_free (shape->name);
  g_free (shape->cloth);
  sq_piece_unref (shape->piece);
  g_array_unref (shape->lines);
  g_array_unref (shape->texts);
  g_free (shape);
}
