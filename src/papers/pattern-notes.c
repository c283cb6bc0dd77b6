/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern-notes.h"

#include "papers/arrow.h"
#include "papers/free-room.h"
#include "papers/typeset.h"
#include "words/pattern-words.h"

/* Of the words: as large as they may be, and as small as they can still be read (mm). */
#define MOST_EM_MM 4.4
#define LEAST_EM_MM 2.3

/* Ways to set the words: how many notes stand in a line, and how large number and name are beside them, in
 * em of these. */
static const struct
{
  guint notes;
  double name_em;
} settings[] = { { 1, 2.1 }, { 2, 2.1 }, { 3, 1.8 }, { 6, 1.4 } };

/* Room is looked for in cells so large, then, where the words would come out small, in smaller ones. */
static const double cells_mm[] = { 2.5, 0.8 };

/* Free round the words, in em. */
#define PAD_EM 0.6

/* Of an arrow with its word: its place beside the words, in em. */
#define ARROW_GAP_EM 1.2
#define ARROW_MOST_EM 4.5
#define ARROW_HEAD_EM 1.0

/* Words stand upright on the page unless they come out so much larger turned. */
#define WORTH_TURNING 1.4

/* The grain's arrow, mm: how long at most and at least, and how long for its width. */
#define GRAIN_MOST_MM 160.0
#define GRAIN_LEAST_MM 12.0
#define GRAIN_SLENDER 0.07

/* So many sheets of a piece are looked at. */
#define MOST_SHEETS 24
#define MOST_CLOSE 3

/* An arrow and what stands below it. */
typedef struct
{
  double to_rad; /* on the page */
  const char *word;
} Arrow;

#define MOST_ARROWS 2

/* Words in lines, with the arrows right of them. */
typedef struct
{
  char *name;
  double name_em;
  GPtrArray *lines; /* of texts */
  Arrow arrows[MOST_ARROWS];
  guint n_arrows;
} Block;

/* Where a block goes. */
typedef struct
{
  SqBox box;
  double em_mm;
  gboolean is_turned;
  guint sheet;
} Spot;

/* --- what is said --------------------------------------------------------------------------- */

/* Where the cloth's up points in @piece; NAN: it has none. */
static double
up_rad (const SqPlan *plan, const SqPiece *piece)
{
  const SqCloth *cloth = sq_plan_cloth (plan, piece->cloth);

  return cloth != NULL && cloth->one_way ? piece->grain_rad + (cloth->up_is_start ? M_PI : 0) : NAN;
}

/* The direction that tells how a piece lies, with its word; FALSE: nothing does. */
static gboolean
way_of (const SqPatternPiece *piece, SqVector *to, const char **word)
{
  const SqFinished *finished = piece->cover->finished;

  *to = sq_point (0, 1);
  *word = sq_words_pattern_top ();
  switch (piece->piece->role)
    {
    case SQ_ROLE_FACE:
    case SQ_ROLE_UNDERSIDE:
      if (finished == NULL)
        return FALSE;
      *to = sq_right (finished->front_dir);
      if (piece->piece->role == SQ_ROLE_UNDERSIDE)
        to->x = -to->x;
      *word = sq_words_pattern_front ();
      return TRUE;
    case SQ_ROLE_BOXING:
    case SQ_ROLE_ZIP_STRIP:
    case SQ_ROLE_LET_IN:
    case SQ_ROLE_WRAP:
    case SQ_ROLE_SIDE:
    case SQ_ROLE_DISC:
      return TRUE;
    case SQ_ROLE_WELT:
    case SQ_ROLE_TUBE:
      break;
    }
  return FALSE;
}

static void
add_arrow (Block *block, SqPatternPose pose, SqVector to, const char *word)
{
  SqVector on_page = sq_pattern_posed (pose, to);

  block->arrows[block->n_arrows++] = (Arrow){ atan2 (on_page.y, on_page.x), word };
}

/* @n_notes of @notes, in lines of about as many. */
static void
set_lines (Block *block, const GPtrArray *notes, guint n_notes, guint setting)
{
  guint n_lines = (n_notes + settings[setting].notes - 1) / settings[setting].notes;

  block->name_em = settings[setting].name_em;
  g_ptr_array_set_size (block->lines, 0);
  for (guint line = 0; line < n_lines; line++)
    {
      GString *text = g_string_new (NULL);
      for (guint i = line * n_notes / n_lines; i < (line + 1) * n_notes / n_lines; i++)
        g_string_append_printf (text, text->len > 0 ? " · %s" : "%s",
                                (const char *) g_ptr_array_index (notes, i));
      g_ptr_array_add (block->lines, g_string_free (text, FALSE));
    }
}

/* --- how large that is ------------------------------------------------------------------------ */

static double
line_width_em (const Block *block)
{
  double width = block->name_em * sq_text_width_em (block->name, TRUE);

  for (guint i = 0; i < block->lines->len; i++)
    width = fmax (width, sq_text_width_em (g_ptr_array_index (block->lines, i), i == 0));
  return width;
}

static double
height_em (const Block *block)
{
  double height = SQ_LEADING_EM * (block->name_em + block->lines->len);

  return block->n_arrows > 0 ? fmax (height, SQ_LEADING_EM + 2) : height;
}

/* Of the arrow itself. */
static double
arrow_em (const Block *block)
{
  return fmin (height_em (block) - SQ_LEADING_EM, ARROW_MOST_EM);
}

static double
arrow_width_em (const Block *block, guint i)
{
  return fmax (arrow_em (block), sq_text_width_em (block->arrows[i].word, TRUE));
}

static SqVector
size_em (const Block *block)
{
  SqVector size = sq_point (line_width_em (block), height_em (block));

  for (guint i = 0; i < block->n_arrows; i++)
    size.x += ARROW_GAP_EM + arrow_width_em (block, i);
  return sq_add (size, sq_point (2 * PAD_EM, 2 * PAD_EM));
}

/* --- where there is room ------------------------------------------------------------------------ */

static SqPath *
on_page (const SqPath *path, SqVector at)
{
  return sq_path_moved (path, 0, at);
}

static SqBox
grown (SqBox box, double by)
{
  return (SqBox){ sq_sub (box.min, sq_point (by, by)), sq_add (box.max, sq_point (by, by)) };
}

/* What of the sheet may have words at all: not where another sheet is laid over it, and nothing
 * beyond @on_it. */
static SqBox
wordy_box (const SqPattern *pattern, const SqPatternPart *part, const SqPatternSheet *sheet,
           SqBox on_it)
{
  const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, part->piece);
  double band = fmax (pattern->choice.overlap_mm, SQ_PATTERN_BAND_MM) + 1;
  SqPatternSides sides = sq_pattern_sides (piece, part);
  SqBox box = sq_pattern_window (pattern->sheets, part, sheet);

  box = (SqBox){ sq_add (box.min, part->at), sq_add (box.max, part->at) };
  box.min.x = fmax (box.min.x + (sides.left ? band : 0), on_it.min.x);
  box.min.y = fmax (box.min.y + (sides.below ? band : 0), on_it.min.y);
  box.max.x = fmin (box.max.x - (sides.right ? band : 0), on_it.max.x);
  box.max.y = fmin (box.max.y - (sides.above ? band : 0), on_it.max.y);
  return box;
}

static SqFreeRoom *
room_on (const SqPattern *pattern, const SqPatternPart *part, guint sheet, double cell_mm)
{
  const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, part->piece);
  const GPtrArray *rings = sq_pattern_rings (piece->piece, pattern->choice.lines);
  g_autoptr (GPtrArray) posed = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  g_autoptr (GArray) lines = piece->lines != NULL
                                 ? g_array_ref (piece->lines)
                                 : sq_pattern_lines_new (piece->piece, pattern->choice.lines,
                                                         part->pose);

  for (guint i = 0; i < rings->len; i++)
    {
      g_autoptr (SqPath) ring = sq_pattern_path_posed (part->pose, g_ptr_array_index (rings, i));
      g_ptr_array_add (posed, on_page (ring, part->at));
    }
  SqBox box = wordy_box (pattern, part, sq_pattern_sheet (pattern->sheets, sheet),
                         sq_path_box (g_ptr_array_index (posed, 0)));
  SqFreeRoom *room = sq_free_room_new (box, cell_mm);
  for (guint i = 0; i < lines->len; i++)
    {
      g_autoptr (SqPath) line = on_page (sq_pattern_line (lines, i)->path, part->at);
      sq_free_room_block_path (room, line);
    }
  for (guint i = 0; i < posed->len; i++)
    sq_free_room_block_path (room, g_ptr_array_index (posed, i));
  sq_free_room_block_outside (room, posed);
  return room;
}

/* Tries @block in @room, both ways round; a spot that is better than *@spot is kept there. */
static void
try_room (const SqFreeRoom *room, const Block *block, guint sheet, Spot *spot)
{
  SqVector size = size_em (block);

  for (guint turned = 0; turned < 2; turned++)
    {
      SqBox box;
      double em_mm = sq_free_room_best (room, turned ? sq_point (size.y, size.x) : size, &box);
      double least_mm = turned != (guint) spot->is_turned
                            ? spot->em_mm * (turned ? WORTH_TURNING : 1 / WORTH_TURNING)
                            : spot->em_mm;
      if (em_mm > least_mm && (turned == 0 || spot->em_mm < MOST_EM_MM))
        *spot = (Spot){ box, em_mm, turned != 0, sheet };
    }
}

/* --- setting ------------------------------------------------------------------------------------ */

/* From a block's own coordinates, x along its lines from their start, y up from its lower edge, to the
 * page. */
typedef struct
{
  SqPoint at;
  double em_mm, turn_rad;
} Frame;

static SqPoint
framed (const Frame *frame, double x_em, double y_em)
{
  SqVector v = sq_scale (sq_point (x_em, y_em), frame->em_mm);

  return sq_add (frame->at, sq_turned (v, frame->turn_rad));
}

static void
set_text (SqSceneBuilder *builder, const Frame *frame, const char *text, double left_em,
          double middle_em, double em, gboolean bold)
{
  double width_em = em * sq_text_width_em (text, bold);

  sq_scene_add_text (builder, &(SqText){ .at = framed (frame, left_em + width_em / 2, middle_em),
                                         .angle_rad = frame->turn_rad,
                                         .em_mm = em * frame->em_mm,
                                         .width_mm = width_em * frame->em_mm,
                                         .align = SQ_ALIGN_START,
                                         .bold = bold,
                                         .text = text });
}

static void
set_arrows (SqSceneBuilder *builder, const Frame *frame, const Block *block)
{
  double left = line_width_em (block), length = arrow_em (block);
  double low = (height_em (block) - length - SQ_LEADING_EM) / 2;

  for (guint i = 0; i < block->n_arrows; i++)
    {
      const Arrow *arrow = &block->arrows[i];
      double width = arrow_width_em (block, i);
      double middle = left + ARROW_GAP_EM + width / 2;
      sq_set_arrow (builder, framed (frame, middle, low + SQ_LEADING_EM + length / 2),
                    sq_turned (sq_point (1, 0), arrow->to_rad), length * frame->em_mm,
                    ARROW_HEAD_EM * frame->em_mm);
      set_text (builder, frame, arrow->word, middle - sq_text_width_em (arrow->word, TRUE) / 2,
                low + SQ_LEADING_EM / 2, 1, TRUE);
      left += ARROW_GAP_EM + width;
    }
}

/* In the middle of its spot. */
static SqBox
set_block (SqSceneBuilder *builder, const Block *block, const Spot *spot)
{
  SqVector size = sq_sub (size_em (block), sq_point (2 * PAD_EM, 2 * PAD_EM));
  Frame frame = { { 0, 0 }, fmin (spot->em_mm, MOST_EM_MM), spot->is_turned ? M_PI / 2 : 0 };
  SqVector half = sq_turned (sq_scale (size, frame.em_mm / 2), frame.turn_rad);
  double top = height_em (block)
               - (height_em (block) - SQ_LEADING_EM * (block->name_em + block->lines->len)) / 2;

  frame.at = sq_sub (sq_between (spot->box.min, spot->box.max, 0.5), half);
  set_text (builder, &frame, block->name, 0, top - block->name_em * SQ_LEADING_EM / 2,
            block->name_em, TRUE);
  top -= block->name_em * SQ_LEADING_EM;
  for (guint i = 0; i < block->lines->len; i++, top -= SQ_LEADING_EM)
    set_text (builder, &frame, g_ptr_array_index (block->lines, i), 0, top - SQ_LEADING_EM / 2, 1,
              i == 0);
  set_arrows (builder, &frame, block);
  return sq_box_with (sq_box_with (sq_box_empty (), frame.at), sq_moved (frame.at, half, 2));
}

static void
set_grain (SqSceneBuilder *builder, SqFreeRoom *room, double grain_rad)
{
  SqVector along = sq_turned (sq_point (1, 0), grain_rad);
  SqVector size = sq_point (fmax (fabs (along.x), GRAIN_SLENDER),
                            fmax (fabs (along.y), GRAIN_SLENDER));
  SqBox box;
  double length_mm = fmin (0.9 * sq_free_room_best (room, size, &box), GRAIN_MOST_MM);

  if (length_mm < GRAIN_LEAST_MM)
    return;
  SqPoint middle = sq_between (box.min, box.max, 0.5);
  sq_scene_begin_stroke (builder, SQ_PEN_GRAIN);
  sq_scene_add_line (builder, sq_moved (middle, along, -length_mm / 2),
                     sq_moved (middle, along, length_mm / 2));
}

/* --- all ---------------------------------------------------------------------------------------- */

/* Where the words of a piece may go: on sheets from @first to @last. */
typedef struct
{
  const SqPattern *pattern;
  guint piece;
  const SqPatternPart *patch; /* only on this; NULL: on whatever lies there of the piece */
  guint first, last;
  const GArray *taken; /* of SqBox: not there; NULL: nothing */
} Places;

static GPtrArray *
make_rooms (const Places *places, double cell_mm)
{
  GPtrArray *rooms = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_free_room_free);

  for (guint i = places->first; i <= places->last; i++)
    {
      const SqPatternPart *part = places->patch != NULL
                                      ? places->patch
                                      : sq_pattern_part_on (places->pattern->sheets, places->piece,
                                                            i);
      SqFreeRoom *room = room_on (places->pattern, part, i, cell_mm);
      for (guint k = 0; places->taken != NULL && k < places->taken->len; k++)
        sq_free_room_block_box (room, g_array_index (places->taken, SqBox, k));
      g_ptr_array_add (rooms, room);
    }
  return rooms;
}

/* The best spot for @block in any of @rooms, the first of which is that of sheet @first. */
static Spot
find_spot (const Block *block, const GPtrArray *rooms, guint first)
{
  Spot spot = { .em_mm = 0 };

  for (guint i = 0; i < rooms->len; i++)
    try_room (g_ptr_array_index (rooms, i), block, first + i, &spot);
  return spot;
}

/* All that there is to say if it can be read, set so that it comes out largest; else less of it. */
static Spot
lay_block (Block *block, const GPtrArray *notes, const GPtrArray *rooms, guint first)
{
  Spot best = { .em_mm = 0 };
  guint best_setting = 0;

  for (guint n = notes->len; n > 0; n--)
    {
      for (guint i = 0; i < G_N_ELEMENTS (settings) && best.em_mm < MOST_EM_MM; i++)
        {
          set_lines (block, notes, n, i);
          Spot spot = find_spot (block, rooms, first);
          if (spot.em_mm <= best.em_mm)
            continue;
          best = spot;
          best_setting = i;
        }
      if (best.em_mm >= LEAST_EM_MM || n == 1)
        {
          set_lines (block, notes, n, best_setting);
          break;
        }
      best.em_mm = 0;
    }
  return best;
}

static void
add_arrows (Block *block, const SqPattern *pattern, const SqPatternPiece *piece, SqPatternPose pose)
{
  double up = up_rad (pattern->plan, piece->piece);
  SqVector way;
  const char *word;

  if (way_of (piece, &way, &word))
    add_arrow (block, pose, way, word);
  if (!isnan (up))
    add_arrow (block, pose, sq_turned (sq_point (1, 0), up), sq_words_pattern_up ());
}

/* Sets @block at @spot, and the grain where there is most room left on that sheet. */
static void
set_all (const Block *block, const Spot *spot, SqFreeRoom *room, double grain_rad,
         SqSceneBuilder *to)
{
  sq_free_room_block_box (room, grown (set_block (to, block, spot), 1));
  set_grain (to, room, grain_rad);
}

/* Only where the best spot was, or at the first sheets where there was none: smaller cells take time. */
static void
look_closer (Places *places, const Spot *spot)
{
  if (spot->em_mm > 0)
    places->first = places->last = spot->sheet;
  else
    places->last = MIN (places->last, places->first + MOST_CLOSE - 1);
}

/* Sets @notes, name and arrows of a piece posed like @part. On which sheet. */
static guint
set_notes (const Places *places, const SqPatternPart *part, const GPtrArray *notes,
           SqSceneBuilder *to)
{
  const SqPattern *pattern = places->pattern;
  const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, part->piece);
  Block block = { .name = sq_words_pattern_name (pattern->plan, piece->entry),
                  .lines = g_ptr_array_new_with_free_func (g_free) };
  SqVector grain = sq_pattern_posed (part->pose,
                                     sq_turned (sq_point (1, 0), piece->piece->grain_rad));
  Spot spot = { .em_mm = 0, .sheet = places->first };
  Places looked = *places;

  add_arrows (&block, pattern, piece, part->pose);
  for (guint i = 0; i < G_N_ELEMENTS (cells_mm); i++)
    {
      g_autoptr (GPtrArray) rooms = make_rooms (&looked, cells_mm[i]);
      spot = lay_block (&block, notes, rooms, looked.first);
      if (spot.em_mm < MOST_EM_MM && i + 1 < G_N_ELEMENTS (cells_mm))
        {
          look_closer (&looked, &spot);
          continue;
        }
      if (spot.em_mm > 0)
        set_all (&block, &spot, g_ptr_array_index (rooms, spot.sheet - looked.first),
                 atan2 (grain.y, grain.x), to);
      break;
    }
  g_ptr_array_unref (block.lines);
  g_free (block.name);
  return spot.em_mm > 0 ? spot.sheet : places->first;
}

static GPtrArray *
notes_of (const SqPattern *pattern, const SqPatternPiece *piece)
{
  return sq_words_pattern_notes (pattern->plan, piece->entry, pattern->choice.lines,
                                 pattern->wrong_side, sq_pattern_is_own_mirror (piece->piece),
                                 &pattern->style);
}

static SqPatternNotes
make_notes (const SqPattern *pattern, guint index)
{
  const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, index);
  g_autoptr (GPtrArray) notes = notes_of (pattern, piece);
  SqSceneBuilder *builder = sq_scene_builder_new ();
  const Places places = {
    pattern, index, NULL, piece->first, MIN (piece->last, piece->first + MOST_SHEETS - 1), NULL
  };
  guint sheet = set_notes (&places, sq_pattern_part_on (pattern->sheets, index, piece->first),
                           notes, builder);

  return (SqPatternNotes){ sq_scene_builder_end (builder), sheet };
}

void
sq_pattern_add_name (const SqPattern *pattern, const SqPatternPart *part, guint sheet,
                     SqSceneBuilder *to)
{
  const Places places = { pattern, part->piece, part, sheet, sheet, NULL };
  g_autoptr (GPtrArray) rooms = make_rooms (&places, cells_mm[0]);
  guint entry = sq_pattern_piece (pattern->sheets, part->piece)->entry;
  g_autofree char *name = sq_words_pattern_name (pattern->plan, entry);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  const Block block = { .name = name, .name_em = 1, .lines = none };
  Spot spot = find_spot (&block, rooms, sheet);

  if (spot.em_mm >= LEAST_EM_MM)
    set_block (to, &block, &spot);
}

void
sq_pattern_patch_notes (const SqPattern *pattern, const SqPatternPart *part, guint sheet,
                        const GArray *taken, SqSceneBuilder *to)
{
  const SqPatternPiece *piece = sq_pattern_piece (pattern->sheets, part->piece);
  g_autoptr (GPtrArray) notes = notes_of (pattern, piece);
  g_autoptr (GArray) diagonals = sq_corner_diagonals (piece->corners);

  for (guint i = 0; i < diagonals->len; i++)
    {
      SqDiagonal across = g_array_index (diagonals, SqDiagonal, i);
      double mm = sq_distance (sq_corner_point (piece->corners, across.a),
                               sq_corner_point (piece->corners, across.b));
      if (piece->corners->patch_of[across.a] == part->patch
          || piece->corners->patch_of[across.b] == part->patch)
        g_ptr_array_insert (notes, 1,
                            sq_words_corner_distance (across.a, across.b, mm, &pattern->style));
    }
  const Places places = { pattern, part->piece, part, sheet, sheet, taken };
  set_notes (&places, part, notes, to);
}

SqScene *
sq_pattern_notes (SqPattern *pattern, guint index, guint *sheet)
{
  SqPatternNotes *notes = &g_array_index (pattern->notes, SqPatternNotes, index);

  g_mutex_lock (&pattern->mutex);
  if (notes->scene == NULL)
    *notes = make_notes (pattern, index);
  *sheet = notes->sheet;
  SqScene *scene = sq_scene_ref (notes->scene);
  g_mutex_unlock (&pattern->mutex);
  return scene;
}
