/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "papers/pattern-sheets.h"

#include "papers/pattern-pack.h"
#include "papers/pattern-tiles.h"

/* A strong line is drawn whole where it is at the edge of what may be drawn on (mm). */
#define INSET_MM 0.5

/* Of what a piece may lie on. */
typedef struct
{
  const SqPaperSpec *spec;
  const SqPatternChoice *choice;
  SqPatternSheets *sheets;
} Division;

SqVector
sq_pattern_paper_mm (const SqPatternChoice *choice, gboolean is_lying)
{
  SqVector size = sq_sheet_size_mm (choice->sheet);

  if (choice->roll_mm > 0)
    return sq_point (choice->roll_mm, 0);
  return is_lying ? sq_point (size.y, size.x) : size;
}

SqVector
sq_pattern_room_mm (const SqPatternChoice *choice, gboolean is_lying)
{
  SqVector paper = sq_pattern_paper_mm (choice, is_lying);

  if (choice->roll_mm > 0)
    paper.y = SQ_PATTERN_LONGEST_MM;
  return sq_sub (paper,
                 sq_point (2 * choice->margin_mm, 2 * choice->margin_mm + SQ_PATTERN_CAPTION_MM));
}

/* A sheet that shows @height_mm, all there is of a sheet that is none of a roll. */
static SqPatternSheet
new_sheet (const Division *d, gboolean is_lying, double height_mm)
{
  double margin = d->choice->margin_mm;
  SqPatternSheet sheet = { .size_mm = sq_pattern_paper_mm (d->choice, is_lying),
                           .first_part = d->sheets->parts->len };

  if (d->choice->roll_mm > 0)
    sheet.size_mm.y = height_mm + 2 * margin + SQ_PATTERN_CAPTION_MM;
  sheet.box = (SqBox){ { margin, margin + SQ_PATTERN_CAPTION_MM },
                       sq_sub (sheet.size_mm, sq_point (margin, margin)) };
  return sheet;
}

static void
add_sheet (Division *d, SqPatternSheet *sheet)
{
  sheet->n_parts = d->sheets->parts->len - sheet->first_part;
  g_array_append_val (d->sheets->sheets, *sheet);
}

static SqVector
size_of (SqBox box)
{
  return sq_sub (box.max, box.min);
}

/* --- what lies whole on a sheet ---------------------------------------------------------------- */

static gboolean
goes_in (SqVector size, SqVector room)
{
  return (size.x <= room.x && size.y <= room.y) || (size.y <= room.x && size.x <= room.y);
}

static SqVector
packing_room_mm (const Division *d)
{
  return sq_sub (sq_pattern_room_mm (d->choice, FALSE), sq_point (2 * INSET_MM, 2 * INSET_MM));
}

/* The cut rings of a piece, mirrored if the pattern is: also where only sew lines are drawn, there is
 * room for the allowance. */
static GPtrArray *
rings_of (const Division *d, const SqPiece *piece)
{
  GPtrArray *own = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);

  for (guint i = 0; i < piece->cut->len; i++)
    {
      const SqPath *ring = sq_piece_cut (piece, i);
      g_ptr_array_add (own, d->spec->wrong_side ? sq_path_mirrored (ring) : sq_path_ref (ring));
    }
  return own;
}

static void
clear_to_pack (gpointer data)
{
  g_ptr_array_unref (((SqToPack *) data)->rings);
}

/* What is packed: a piece, or one patch of its corners. */
typedef struct
{
  guint piece, patch;
} Item;

static void
add_item (GArray *items, GArray *to_pack, Item item, GPtrArray *rings)
{
  SqToPack own = { items->len, rings };

  g_array_append_val (items, item);
  g_array_append_val (to_pack, own);
}

/* Whether all patches go onto sheets. */
static gboolean
patches_go_in (const SqPatternCorners *corners, SqVector room)
{
  for (guint i = 0; i < corners->patches->len; i++)
    if (!goes_in (size_of (sq_corner_patch (corners, i)->window), room))
      return FALSE;
  return TRUE;
}

/* The corners of a piece that does not go onto a sheet; FALSE: it is not one of which they are enough. */
static gboolean
add_corners (const Division *d, guint index, GArray *items, GArray *to_pack)
{
  SqPatternPiece *piece = sq_pattern_piece (d->sheets, index);

  if (!d->choice->corners_only)
    return FALSE;
  piece->corners = sq_pattern_corners_new (piece->piece, d->choice->lines, d->spec->wrong_side);
  if (piece->corners != NULL && !patches_go_in (piece->corners, packing_room_mm (d)))
    g_clear_pointer (&piece->corners, sq_pattern_corners_free);
  for (guint i = 0; piece->corners != NULL && i < piece->corners->patches->len; i++)
    {
      SqBox box = sq_corner_patch (piece->corners, i)->window;
      GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
      g_ptr_array_add (rings, sq_path_new_rectangle (box.min.x, box.min.y, box.max.x, box.max.y));
      add_item (items, to_pack, (Item){ index, i }, rings);
    }
  return piece->corners != NULL;
}

/* Packs what is drawn whole. New array of SqPacked, whose items are those of @items (of Item). */
static GArray *
pack (const Division *d, GArray *items)
{
  g_autoptr (GArray) to_pack = g_array_new (FALSE, FALSE, sizeof (SqToPack));
  SqVector room = packing_room_mm (d);

  g_array_set_clear_func (to_pack, clear_to_pack);
  for (guint i = 0; i < d->sheets->pieces->len; i++)
    {
      const SqPiece *piece = sq_pattern_piece (d->sheets, i)->piece;
      if (goes_in (size_of (sq_path_box (sq_piece_cut (piece, 0))), room))
        add_item (items, to_pack, (Item){ i, 0 }, rings_of (d, piece));
      else
        add_corners (d, i, items, to_pack);
    }
  return sq_pattern_pack (to_pack, room);
}

/* The box of what is packed, as it is posed. */
static SqBox
packed_box (const Division *d, Item item, SqPatternPose pose)
{
  const SqPatternPiece *piece = sq_pattern_piece (d->sheets, item.piece);

  if (piece->corners != NULL)
    return sq_pattern_box_turned (sq_corner_patch (piece->corners, item.patch)->window,
                                  pose.quarters);
  g_autoptr (SqPath) ring = sq_pattern_path_posed (pose, sq_piece_cut (piece->piece, 0));
  return sq_path_box (ring);
}

static SqPatternPose
pose_of (const Division *d, const SqPacked *packed)
{
  return (SqPatternPose){ d->spec->wrong_side, packed->quarters };
}

/* How far down from the top of a sheet's room the packed things @from … @to reach. */
static double
packed_height_mm (const Division *d, const GArray *items, const GArray *packed, guint from,
                  guint to)
{
  double height_mm = 0;

  for (guint i = from; i < to; i++)
    {
      const SqPacked *own = &g_array_index (packed, SqPacked, i);
      SqBox box = packed_box (d, g_array_index (items, Item, own->item), pose_of (d, own));
      height_mm = fmax (height_mm, -(box.min.y + own->at.y));
    }
  return height_mm + 2 * INSET_MM;
}

/* The sheet of the packed things @from … @to. */
static void
add_packed (Division *d, const GArray *items, const GArray *packed, guint from, guint to)
{
  SqPatternSheet sheet = new_sheet (d, FALSE, packed_height_mm (d, items, packed, from, to));
  SqPoint corner = sq_point (sheet.box.min.x + INSET_MM, sheet.box.max.y - INSET_MM);

  for (guint i = from; i < to; i++)
    {
      const SqPacked *own = &g_array_index (packed, SqPacked, i);
      Item item = g_array_index (items, Item, own->item);
      SqPatternPiece *piece = sq_pattern_piece (d->sheets, item.piece);
      SqPatternPart part = { .piece = item.piece,
                             .pose = pose_of (d, own),
                             .at = sq_add (corner, own->at),
                             .patch = item.patch };
      if (!piece->is_placed)
        piece->first = d->sheets->sheets->len;
      piece->is_placed = TRUE;
      piece->last = d->sheets->sheets->len;
      g_array_append_val (d->sheets->parts, part);
    }
  add_sheet (d, &sheet);
}

/* --- what is divided ---------------------------------------------------------------------------- */

/* Whether piece @index shows on a sheet of its grid; alone it does on all that are used. */
static gboolean
shows (const Division *d, guint index, SqBox window, gboolean is_alone)
{
  const SqPatternPiece *piece = sq_pattern_piece (d->sheets, index);
  SqBox own = sq_pattern_lines_box (piece->lines);

  own = (SqBox){ sq_add (own.min, piece->offset), sq_add (own.max, piece->offset) };
  return is_alone || sq_box_meets (own, window, 0);
}

/* The sheet at a place of the grid that @pieces (of guint) share. */
static void
add_tile (Division *d, const GArray *pieces, const SqPatternGrid *grid, guint column, guint row)
{
  const SqPatternPiece *lead = sq_pattern_piece (d->sheets, g_array_index (pieces, guint, 0));
  SqPatternSheet sheet = new_sheet (d, lead->is_lying, grid->window_mm.y);
  SqBox window = sq_pattern_grid_window (grid, column, row);

  for (guint i = 0; i < pieces->len; i++)
    {
      guint index = g_array_index (pieces, guint, i);
      SqPatternPiece *piece = sq_pattern_piece (d->sheets, index);
      if (!shows (d, index, window, pieces->len == 1))
        continue;
      SqPatternPart part = { .piece = index,
                             .pose = piece->pose,
                             .at = sq_add (sq_sub (sheet.box.min, window.min), piece->offset),
                             .column = column,
                             .row = row };
      g_array_append_val (d->sheets->parts, part);
      if (!piece->is_placed)
        piece->first = d->sheets->sheets->len;
      piece->is_placed = TRUE;
      piece->last = d->sheets->sheets->len;
    }
  add_sheet (d, &sheet);
}

static void
add_tiles (Division *d, const GArray *pieces)
{
  const SqPatternGrid *grid = sq_pattern_piece (d->sheets, g_array_index (pieces, guint, 0))->grid;

  for (guint row = 0; row < grid->rows; row++)
    for (guint column = 0; column < grid->columns; column++)
      if (sq_pattern_grid_has (grid, (gint) column, (gint) row))
        add_tile (d, pieces, grid, column, row);
}

/* Piece @index, alone or with the row it begins. */
static void
divide (Division *d, guint index, const GPtrArray *rows)
{
  g_autoptr (GArray) alone = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < rows->len; i++)
    {
      const SqPatternRow *row = g_ptr_array_index (rows, i);
      if (g_array_index (row->pieces, guint, 0) != index)
        continue;
      sq_pattern_divide_row (d->sheets, d->spec, row);
      add_tiles (d, row->pieces);
      return;
    }
  g_array_append_val (alone, index);
  sq_pattern_divide (d->sheets, d->spec, index);
  add_tiles (d, alone);
}

/* --- all ---------------------------------------------------------------------------------------- */

static void
clear_piece (gpointer data)
{
  SqPatternPiece *piece = data;

  g_clear_pointer (&piece->lines, g_array_unref);
  g_clear_pointer (&piece->corners, sq_pattern_corners_free);
}

static void
add_pieces (Division *d)
{
  const SqPlan *plan = d->spec->lays->plan;
  const GArray *entries = d->spec->entries;
  guint n = entries != NULL ? entries->len : plan->cut_list->len;

  for (guint i = 0; i < n; i++)
    {
      guint entry = entries != NULL ? g_array_index (entries, guint, i) : i;
      const SqCutEntry *line = &g_array_index (plan->cut_list, SqCutEntry, entry);
      SqPatternPiece piece = { .entry = entry, .cover = sq_plan_cover (plan, line->cushion) };
      piece.piece = sq_cover_piece (piece.cover, line->piece);
      g_array_append_val (d->sheets->pieces, piece);
    }
}

static guint
sheet_end (const GArray *packed, guint start)
{
  guint end = start;

  while (end < packed->len
         && g_array_index (packed, SqPacked, end).sheet
                == g_array_index (packed, SqPacked, start).sheet)
    end++;
  return end;
}

/* The sheets of @packed that have something of piece @index and are not done. */
static void
add_packed_of (Division *d, guint index, const GArray *items, const GArray *packed, gboolean *done)
{
  for (guint start = 0, end; start < packed->len; start = end)
    {
      gboolean has_it = FALSE;
      end = sheet_end (packed, start);
      for (guint i = start; i < end; i++)
        has_it |= g_array_index (items, Item, g_array_index (packed, SqPacked, i).item).piece
                  == index;
      if (!has_it || done[start])
        continue;
      add_packed (d, items, packed, start, end);
      done[start] = TRUE;
    }
}

/* The rows of what is not packed; on a roll everything that would go into one is. */
static GPtrArray *
find_rows (const Division *d, const GArray *items)
{
  g_autofree gboolean *is_wanted = g_new (gboolean, d->sheets->pieces->len + 1);

  for (guint i = 0; i < d->sheets->pieces->len; i++)
    is_wanted[i] = d->choice->roll_mm <= 0;
  for (guint i = 0; i < items->len; i++)
    is_wanted[g_array_index (items, Item, i).piece] = FALSE;
  return sq_pattern_rows (d->sheets, d->spec, is_wanted);
}

/* In the order of the list: sheets of several pieces come where their first one does. */
static void
add_sheets (Division *d)
{
  g_autoptr (GArray) items = g_array_new (FALSE, FALSE, sizeof (Item));
  g_autoptr (GArray) packed = pack (d, items);
  g_autoptr (GPtrArray) rows = find_rows (d, items);
  g_autofree gboolean *done = g_new0 (gboolean, packed->len + 1);

  for (guint i = 0; i < d->sheets->pieces->len; i++)
    {
      SqPatternPiece *piece = sq_pattern_piece (d->sheets, i);
      add_packed_of (d, i, items, packed, done);
      if (piece->is_placed)
        continue;
      g_clear_pointer (&piece->corners, sq_pattern_corners_free);
      divide (d, i, rows);
    }
}

const SqPatternPart *
sq_pattern_part_on (const SqPatternSheets *sheets, guint piece, guint sheet)
{
  const SqPatternSheet *on = sq_pattern_sheet (sheets, sheet);

  for (guint i = 0; i < on->n_parts; i++)
    if (sq_pattern_part (sheets, on->first_part + i)->piece == piece)
      return sq_pattern_part (sheets, on->first_part + i);
  return NULL;
}

SqBox
sq_pattern_window (const SqPatternSheets *sheets, const SqPatternPart *part,
                   const SqPatternSheet *sheet)
{
  const SqPatternPiece *piece = sq_pattern_piece (sheets, part->piece);

  if (piece->corners != NULL)
    return sq_pattern_box_turned (sq_corner_patch (piece->corners, part->patch)->window,
                                  part->pose.quarters);
  return (SqBox){ sq_sub (sheet->box.min, part->at), sq_sub (sheet->box.max, part->at) };
}

SqPatternSheets *
sq_pattern_sheets_new (const SqPaperSpec *spec)
{
  SqPatternSheets *sheets = g_new0 (SqPatternSheets, 1);
  Division d = { spec, &spec->pattern, sheets };

  sheets->pieces = g_array_new (FALSE, FALSE, sizeof (SqPatternPiece));
  g_array_set_clear_func (sheets->pieces, clear_piece);
  sheets->grids = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_pattern_grid_free);
  sheets->parts = g_array_new (FALSE, FALSE, sizeof (SqPatternPart));
  sheets->sheets = g_array_new (FALSE, FALSE, sizeof (SqPatternSheet));
  add_pieces (&d);
  add_sheets (&d);
  return sheets;
}

void
sq_pattern_sheets_free (SqPatternSheets *sheets)
{
  g_array_unref (sheets->pieces);
  g_ptr_array_unref (sheets->grids);
  g_array_unref (sheets->parts);
  g_array_unref (sheets->sheets);
  g_free (sheets);
}
