/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/marking.h"

#include "cover/ticks.h"

/* Sides that are no farther off are along the cloth. */
#define ALONG_MM 0.02

/* Pieces that begin as far from the cut end lie side by side. */
#define SIDE_BY_SIDE_MM 0.1

/* A piece is worth checking by its diagonals that is so long and so broad. */
#define LARGE_MM 500.0
#define LARGE_ACROSS_MM 150.0

gboolean
sq_cloth_tears (const SqCloth *cloth, gboolean across)
{
  gboolean has_across, has_along;

  if (cloth == NULL)
    return TRUE;
  if (cloth->one_way || (cloth->kind != SQ_CLOTH_CANVAS && cloth->kind != SQ_CLOTH_UPHOLSTERY))
    return FALSE;
  return !across || !sq_cloth_has_phase (cloth, &has_across, &has_along);
}

/* --- from the piece to the side that lies up ------------------------------------------------- */

typedef struct
{
  double turn_rad;
  SqPoint at;
  gboolean wrong_side;
  double width_mm;
} Place;

static SqPoint
placed_point (const Place *place, SqPoint p)
{
  SqPoint on = sq_add (sq_turned (p, place->turn_rad), place->at);

  return place->wrong_side ? sq_point (on.x, place->width_mm - on.y) : on;
}

/* Turned over, and back into the direction it had: y → width − y is x → −x and half a turn. */
static SqPath *
placed_path (const Place *place, const SqPath *path)
{
  g_autoptr (SqPath) on = sq_path_moved (path, place->turn_rad, place->at);

  if (!place->wrong_side)
    return sq_path_ref (on);
  g_autoptr (SqPath) over = sq_path_mirrored (on);
  return sq_path_moved (over, M_PI, sq_point (0, place->width_mm));
}

/* --- a piece --------------------------------------------------------------------------------- */

static void
clear_mark (gpointer mark)
{
  g_array_unref (((SqInnerMark *) mark)->at);
}

static void
piece_free (gpointer data)
{
  SqMarkedPiece *piece = data;

  g_ptr_array_unref (piece->cut);
  g_ptr_array_unref (piece->rings);
  g_array_unref (piece->marks);
  g_free (piece);
}

static gboolean
is_rectangle (const SqMarkedPiece *piece)
{
  const GArray *points = sq_marked_piece_ring (piece, 0);

  if (piece->rings->len > 1 || points->len != 4)
    return FALSE;
  for (guint i = 0; i < 4; i++)
    {
      const SqMarkPoint *own = sq_mark_point (points, i);
      const SqMarkPoint *next = sq_mark_point (points, (i + 1) % 4);
      if (own->is_middle
          || fmin (fabs (next->at.x - own->at.x), fabs (next->at.y - own->at.y)) > ALONG_MM)
        return FALSE;
    }
  return TRUE;
}

/* The point between no others that is nearest to @corner. */
static guint
nearest_point (const GArray *points, SqPoint corner)
{
  guint nearest = 0;

  for (guint i = 1; i < points->len; i++)
    if (!sq_mark_point (points, i)->is_middle
        && sq_distance (sq_mark_point (points, i)->at, corner)
               < sq_distance (sq_mark_point (points, nearest)->at, corner))
      nearest = i;
  return nearest;
}

static void
find_diagonals (SqMarkedPiece *piece)
{
  SqBox box = piece->box;
  double along_mm = box.max.x - box.min.x, across_mm = box.max.y - box.min.y;
  const SqPoint corners[] = {
    box.min, { box.max.x, box.min.y }, box.max, { box.min.x, box.max.y }
  };

  if (fmax (along_mm, across_mm) < LARGE_MM || fmin (along_mm, across_mm) < LARGE_ACROSS_MM)
    return;
  piece->has_diagonals = TRUE;
  for (guint i = 0; i < 4; i++)
    {
      piece->corners[i] = nearest_point (sq_marked_piece_ring (piece, 0), corners[i]);
      for (guint k = 0; k < i; k++)
        piece->has_diagonals &= piece->corners[k] != piece->corners[i];
    }
}

void
sq_marked_diagonals_mm (const SqMarkedPiece *piece, double out[2])
{
  const GArray *points = sq_marked_piece_ring (piece, 0);

  for (guint i = 0; i < 2; i++)
    out[i] = sq_distance (sq_mark_point (points, piece->corners[i])->at,
                          sq_mark_point (points, piece->corners[i + 2])->at);
}

/* Where the notch is on what is drawn from the figures. */
static void
find_side (SqInnerMark *mark, const GPtrArray *drawn)
{
  double nearest_mm = HUGE_VAL;

  for (guint i = 0; i < drawn->len; i++)
    {
      SqNearest near = sq_path_nearest (g_ptr_array_index (drawn, i),
                                        g_array_index (mark->at, SqPoint, 0));
      if (near.distance_mm >= nearest_mm)
        continue;
      nearest_mm = near.distance_mm;
      mark->ring = i;
      mark->side = near.segment;
      mark->station_mm = near.station_mm;
    }
}

static void
add_notch (SqMarkedPiece *marked, const SqPiece *piece, const SqMark *mark, const Place *place,
           const GPtrArray *drawn)
{
  SqSegment ticks[SQ_MOST_TICKS];
  guint n = sq_mark_ticks (piece, mark, ticks);
  SqInnerMark inner = { .kind = mark->kind, .ticks = n };
  SqPoint middle = { 0, 0 };

  if (n == 0)
    return;
  for (guint i = 0; i < n; i++)
    middle = sq_moved (middle, ticks[i].from, 1.0 / n);
  inner.at = g_array_new (FALSE, FALSE, sizeof (SqPoint));
  middle = placed_point (place, middle);
  g_array_append_val (inner.at, middle);
  find_side (&inner, drawn);
  g_array_append_val (marked->marks, inner);
}

static void
add_line (SqMarkedPiece *marked, const SqMark *mark, const Place *place)
{
  SqInnerMark inner = { .kind = mark->kind, .at = g_array_new (FALSE, FALSE, sizeof (SqPoint)) };
  const SqNode *nodes = sq_path_nodes (mark->line);
  guint n = sq_path_n_nodes (mark->line);

  for (guint i = 0; i < n; i++)
    {
      SqPoint at = placed_point (place, nodes[i].at);
      g_array_append_val (inner.at, at);
    }
  g_array_append_val (marked->marks, inner);
}

static gint
compare_marks (gconstpointer a, gconstpointer b)
{
  const SqInnerMark *p = a, *q = b;

  if (p->kind != q->kind)
    return (gint) p->kind - (gint) q->kind;
  if (p->ring != q->ring)
    return p->ring < q->ring ? -1 : 1;
  return (p->station_mm > q->station_mm) - (p->station_mm < q->station_mm);
}

/* Clips are snipped while one sews: nothing is chalked for them. */
static void
add_marks (SqMarkedPiece *marked, const SqPiece *piece, const Place *place,
           const SqLengthStyle *style)
{
  g_autoptr (GPtrArray) drawn = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);

  for (guint i = 0; i < marked->rings->len; i++)
    g_ptr_array_add (drawn, sq_marked_ring_read (sq_marked_piece_ring (marked, i), style));
  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqMark *mark = &g_array_index (piece->marks, SqMark, i);
      if (mark->kind == SQ_MARK_NOTCH)
        add_notch (marked, piece, mark, place, drawn);
      else if (mark->line != NULL)
        add_line (marked, mark, place);
    }
  g_array_sort (marked->marks, compare_marks);
}

static SqMarkedPiece *
marked_piece (const SqLays *lays, const SqPlaced *placed, guint index, Place *place,
              const SqLengthStyle *style)
{
  const SqPiece *piece = sq_lays_piece (lays, placed);
  SqMarkedPiece *marked = g_new0 (SqMarkedPiece, 1);

  sq_lays_place (lays, placed, &place->turn_rad, &place->at);
  marked->placed = index;
  marked->cut = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  marked->rings = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  marked->marks = g_array_new (FALSE, FALSE, sizeof (SqInnerMark));
  g_array_set_clear_func (marked->marks, clear_mark);
  for (guint i = 0; i < piece->cut->len; i++)
    {
      SqPath *ring = placed_path (place, sq_piece_cut (piece, i));
      if (i == 0)
        marked->box = sq_path_box (ring);
      g_ptr_array_add (marked->cut, ring);
      g_ptr_array_add (marked->rings, sq_marked_ring (ring, style));
    }
  marked->is_rectangle = is_rectangle (marked);
  for (guint i = 0; marked->is_rectangle && i < 4; i++)
    marked->is_fine |= sq_mark_point (sq_marked_piece_ring (marked, 0), i)->is_fine;
  find_diagonals (marked);
  add_marks (marked, piece, place, style);
  return marked;
}

/* --- a strip --------------------------------------------------------------------------------- */

static void
add_flaws (SqMarking *marking, const SqLayStrip *strip)
{
  for (guint i = 0; i < strip->n_flaws; i++)
    {
      const SqGridBox *flaw = &strip->flaws[i];
      SqBox box = { sq_point (flaw->min.x / SQ_GRID_PER_MM, flaw->min.y / SQ_GRID_PER_MM),
                    sq_point (flaw->max.x / SQ_GRID_PER_MM, flaw->max.y / SQ_GRID_PER_MM) };
      if (marking->wrong_side)
        box = (SqBox){ sq_point (box.min.x, marking->width_mm - box.max.y),
                       sq_point (box.max.x, marking->width_mm - box.min.y) };
      g_array_append_val (marking->flaws, box);
    }
}

static gint
compare_pieces (gconstpointer a, gconstpointer b)
{
  const SqMarkedPiece *p = *(SqMarkedPiece *const *) a, *q = *(SqMarkedPiece *const *) b;
  double apart_mm = p->box.min.x - q->box.min.x;

  if (p->is_in_strip != q->is_in_strip)
    return p->is_in_strip ? -1 : 1;
  if (fabs (apart_mm) > SIDE_BY_SIDE_MM)
    return apart_mm > 0 ? 1 : -1;
  if (p->box.min.y != q->box.min.y)
    return p->box.min.y > q->box.min.y ? 1 : -1;
  return p->placed < q->placed ? -1 : 1;
}

static void
find_cuts (SqMarking *marking, gboolean goes_on)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (SqMarkingBox));

  for (guint i = 0; i < marking->pieces->len; i++)
    {
      const SqMarkedPiece *piece = sq_marked_piece (marking, i);
      SqMarkingBox box = { piece->box, piece->is_rectangle, FALSE };
      g_array_append_val (boxes, box);
    }
  marking->cuts = sq_marking_cuts (boxes, marking->laid_mm, marking->width_mm, goes_on);
  for (guint i = 0; i < marking->pieces->len; i++)
    ((SqMarkedPiece *) g_ptr_array_index (marking->pieces, i))->is_in_strip
        = g_array_index (boxes, SqMarkingBox, i).is_in_strip;
}

SqMarking *
sq_marking_new (const SqLays *lays, guint index, guint strip, gboolean wrong_side,
                const SqLengthStyle *style)
{
  const SqClothLay *cloth = sq_lays_cloth (lays, index);
  const SqLayStrip *own = sq_lay_task_strip (cloth->task, strip);
  SqMarking *marking = g_new0 (SqMarking, 1);

  marking->cloth = index;
  marking->strip = strip;
  marking->wrong_side = wrong_side;
  marking->width_mm = own->width / SQ_GRID_PER_MM;
  marking->laid_mm = sq_lay_length (cloth->lay, strip) / SQ_GRID_PER_MM;
  marking->flaws = g_array_new (FALSE, FALSE, sizeof (SqBox));
  marking->pieces = g_ptr_array_new_with_free_func (piece_free);
  add_flaws (marking, own);
  for (guint i = 0; i < cloth->lay->placed->len; i++)
    {
      Place place = { .wrong_side = wrong_side, .width_mm = marking->width_mm };
      const SqPlaced *placed = sq_lay_placed (cloth->lay, i);
      if (placed->strip == strip)
        g_ptr_array_add (marking->pieces, marked_piece (lays, placed, i, &place, style));
    }
  find_cuts (marking, own->length == 0 || own->length > sq_lay_length (cloth->lay, strip));
  g_ptr_array_sort (marking->pieces, compare_pieces);
  return marking;
}

void
sq_marking_free (SqMarking *marking)
{
  if (marking == NULL)
    return;
  g_array_unref (marking->flaws);
  g_array_unref (marking->cuts);
  g_ptr_array_unref (marking->pieces);
  g_free (marking);
}
