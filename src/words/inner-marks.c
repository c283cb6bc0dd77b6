/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/inner-marks.h"

#include "words/lengths.h"
#include "words/marking-words.h"
#include "words/text-table.h"

#include <glib/gi18n.h>

/* Lines that are no farther off lie along the cloth or across it. */
#define LINE_MM 0.02

/* What a seam takes of a strip at most: no line that ends so near to its edge needs a figure there. */
#define MOST_SEAM_MM 26.0

#define NO_BREAK_SPACE "\xc2\xa0"

/* "12 3/8 : 4": along, across. */
static char *
place_text (SqPoint at, const SqLengthStyle *style)
{
  g_autofree char *along = sq_words_figure (at.x, style);
  g_autofree char *across = sq_words_figure (at.y, style);

  /* TRANSLATORS: a place on cloth: along, across. */
  return g_strdup_printf (_ ("%s : %s"), along, across);
}

/* A side of a piece: a segment of what is drawn from the figures. */
typedef struct
{
  guint from, to; /* its ends, counted over all rings */
  SqPoint a, b;
  gboolean is_arc;
} Side;

static Side
side_of (const SqMarkedPiece *piece, const SqInnerMark *mark)
{
  const GArray *points = sq_marked_piece_ring (piece, mark->ring);
  guint before = 0, k = 0, to;

  for (guint i = 0; i < mark->ring; i++)
    before += sq_marked_piece_ring (piece, i)->len;
  for (guint n = 0; k + 1 < points->len; k++)
    if (!sq_mark_point (points, k)->is_middle && n++ == mark->side)
      break;
  to = (k + 1) % points->len;
  gboolean is_arc = sq_mark_point (points, to)->is_middle;
  if (is_arc)
    to = (to + 1) % points->len;
  return (Side){ before + k, before + to, sq_mark_point (points, k)->at,
                 sq_mark_point (points, to)->at, is_arc };
}

static char *
side_text (const SqMarkedPiece *piece, const Side *own, guint side)
{
  if (piece->is_rectangle)
    {
      const char *const sides[] = { _ ("near side"), _ ("right end"), _ ("far side"),
                                    _ ("left end") };
      return g_strdup (sides[side % G_N_ELEMENTS (sides)]);
    }
  g_autofree char *a = sq_words_mark_letter (own->from), *b = sq_words_mark_letter (own->to);
  /* TRANSLATORS: from one point to the next. */
  return g_strdup_printf (_ ("%s–%s"), a, b);
}

static const char *
both_sides (gboolean along)
{
  return along ? _ ("near and far side") : _ ("both ends");
}

/* How notches on one side are told: by the one figure that differs, or by both. */
typedef enum
{
  NOTCHES_ALONG,
  NOTCHES_ACROSS,
  NOTCHES_BY_BOTH,
} NotchesBy;

static NotchesBy
told_by (const Side *side)
{
  if (!side->is_arc && fabs (side->a.y - side->b.y) < LINE_MM)
    return NOTCHES_ALONG;
  return !side->is_arc && fabs (side->a.x - side->b.x) < LINE_MM ? NOTCHES_ACROSS : NOTCHES_BY_BOTH;
}

static char *
notch_text (const SqInnerMark *mark, NotchesBy by, const SqLengthStyle *style)
{
  SqPoint at = g_array_index (mark->at, SqPoint, 0);
  g_autofree char *place = by == NOTCHES_BY_BOTH
                               ? place_text (at, style)
                               : sq_words_figure (by == NOTCHES_ALONG ? at.x : at.y, style);

  if (mark->ticks < 2)
    return g_steal_pointer (&place);
  /* TRANSLATORS: where a notch is, and of how many ticks. */
  return g_strdup_printf (_ ("%s (%u)"), place, mark->ticks);
}

/* An item of a list is not torn over lines. */
static void
add_to_list (GString *list, char *text)
{
  g_autofree char *item = text;
  g_autofree char *whole = sq_text_unbroken (item);

  g_string_append_printf (list, "%s%s", list->len > 0 ? NO_BREAK_SPACE "· " : "", whole);
}

/* Notches of one side. */
typedef struct
{
  Side side;
  guint index; /* the side's */
  NotchesBy by;
  char *list;
  guint next; /* index of what comes after them */
} Notches;

/* Those from mark @first on, from the cut end or the near edge on where one figure tells them. */
static Notches
notches_from (const SqMarkedPiece *piece, guint first, const SqLengthStyle *style)
{
  const SqInnerMark *mark = sq_inner_mark (piece, first);
  Notches own = { .side = side_of (piece, mark), .index = mark->side, .next = first };
  GString *list = g_string_new (NULL);

  own.by = told_by (&own.side);
  for (; own.next < piece->marks->len; own.next++)
    {
      const SqInnerMark *other = sq_inner_mark (piece, own.next);
      if (other->kind != SQ_MARK_NOTCH || other->ring != mark->ring || other->side != mark->side)
        break;
    }
  gboolean is_backwards = own.by == NOTCHES_ALONG ? own.side.a.x > own.side.b.x
                                                  : own.side.a.y > own.side.b.y;
  for (guint i = first; i < own.next; i++)
    {
      guint k = is_backwards && own.by != NOTCHES_BY_BOTH ? own.next - 1 - (i - first) : i;
      add_to_list (list, notch_text (sq_inner_mark (piece, k), own.by, style));
    }
  own.list = g_string_free (list, FALSE);
  return own;
}

static char *
notches_text (NotchesBy by, const char *side, const char *list)
{
  switch (by)
    {
    case NOTCHES_ALONG:
      /* TRANSLATORS: a side of a piece; places along the cloth. */
      return g_strdup_printf (_ ("Notches %s, along: %s"), side, list);
    case NOTCHES_ACROSS:
      /* TRANSLATORS: a side of a piece; places across the cloth. */
      return g_strdup_printf (_ ("Notches %s, across: %s"), side, list);
    case NOTCHES_BY_BOTH:
      /* TRANSLATORS: a side of a piece; places on the cloth, "along : across". */
      return g_strdup_printf (_ ("Notches %s: %s"), side, list);
    }
  g_return_val_if_reached (g_strdup (""));
}

/* A straight rectangle's sides have the same notches often, one opposite the other. */
static void
add_notches (GPtrArray *texts, const SqMarkedPiece *piece, guint n, const SqLengthStyle *style)
{
  g_autoptr (GPtrArray) lists = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GArray) sides = g_array_new (FALSE, FALSE, sizeof (Notches));

  for (guint i = 0; i < n; i = g_array_index (sides, Notches, sides->len - 1).next)
    {
      Notches own = notches_from (piece, i, style);
      g_array_append_val (sides, own);
      g_ptr_array_add (lists, own.list);
    }
  for (guint i = 0; i < sides->len; i++)
    {
      const Notches *own = &g_array_index (sides, Notches, i);
      gboolean is_both = FALSE, is_said = FALSE;
      for (guint k = 0; k < sides->len && piece->is_rectangle; k++)
        {
          const Notches *other = &g_array_index (sides, Notches, k);
          gboolean is_opposite = k != i && own->index % 2 == other->index % 2
                                 && g_str_equal (own->list, other->list);
          is_both |= is_opposite;
          is_said |= is_opposite && k < i;
        }
      g_autofree char *side = side_text (piece, &own->side, own->index);
      if (is_said)
        continue;
      g_ptr_array_add (texts, notches_text (own->by,
                                            is_both ? both_sides (own->by == NOTCHES_ALONG) : side,
                                            own->list));
    }
}

static const char *
line_name (SqMarkKind kind)
{
  switch (kind)
    {
    case SQ_MARK_FOLD:
      return _ ("Fold");
    case SQ_MARK_ZIP:
      return _ ("Zip");
    case SQ_MARK_CORNER:
      return _ ("Corner line");
    case SQ_MARK_STAY:
      return _ ("Stay stitch");
    case SQ_MARK_NOTCH:
    case SQ_MARK_CLIP:
      break;
    }
  g_return_val_if_reached ("");
}

/* Which way a line runs. */
typedef enum
{
  LINE_ACROSS,
  LINE_ALONG,
  LINE_OTHER,
} LineWay;

static LineWay
line_way (const SqInnerMark *mark)
{
  SqPoint a = g_array_index (mark->at, SqPoint, 0), b = g_array_index (mark->at, SqPoint, 1);

  if (mark->at->len != 2)
    return LINE_OTHER;
  if (fabs (a.x - b.x) < LINE_MM)
    return LINE_ACROSS;
  return fabs (a.y - b.y) < LINE_MM ? LINE_ALONG : LINE_OTHER;
}

/* From where to where a line along or across goes, and where it is. */
static char *
line_range (const SqInnerMark *mark, LineWay way, const SqLengthStyle *style)
{
  SqPoint a = g_array_index (mark->at, SqPoint, 0), b = g_array_index (mark->at, SqPoint, 1);

  return way == LINE_ACROSS ? sq_words_range (fmin (a.y, b.y), fmax (a.y, b.y), style)
                            : sq_words_range (fmin (a.x, b.x), fmax (a.x, b.x), style);
}

static double
line_at_mm (const SqInnerMark *mark, LineWay way)
{
  SqPoint a = g_array_index (mark->at, SqPoint, 0);

  return way == LINE_ACROSS ? a.x : a.y;
}

static gint
compare_mm (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Whether a line goes over all of a straight rectangle, but for what is taken by its seams. */
static gboolean
goes_over (const SqMarkedPiece *piece, const SqInnerMark *mark, LineWay way)
{
  SqPoint a = g_array_index (mark->at, SqPoint, 0), b = g_array_index (mark->at, SqPoint, 1);
  double long_mm = way == LINE_ACROSS ? fabs (b.y - a.y) : fabs (b.x - a.x);
  SqVector size = sq_sub (piece->box.max, piece->box.min);
  double most_mm = way == LINE_ACROSS ? size.y : size.x;

  return piece->is_rectangle && long_mm > most_mm / 2 + LINE_MM
         && long_mm >= most_mm - 2 * MOST_SEAM_MM;
}

/* Line @first and the others of its kind that go along or across from as far as it does to as far,
 * in one text; nothing where it was told with one before. */
static void
add_parallels (GPtrArray *texts, const SqMarkedPiece *piece, guint first,
               const SqLengthStyle *style)
{
  const SqInnerMark *mark = sq_inner_mark (piece, first);
  LineWay way = line_way (mark);
  g_autofree char *range = line_range (mark, way, style);
  g_autoptr (GArray) places = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GString) list = g_string_new (NULL);

  for (guint i = 0; i < piece->marks->len; i++)
    {
      const SqInnerMark *other = sq_inner_mark (piece, i);
      if (other->kind != mark->kind || line_way (other) != way)
        continue;
      g_autofree char *own = line_range (other, way, style);
      if (!g_str_equal (own, range))
        continue;
      if (i < first)
        return;
      double at_mm = line_at_mm (other, way);
      g_array_append_val (places, at_mm);
    }
  g_array_sort (places, compare_mm);
  for (guint i = 0; i < places->len; i++)
    add_to_list (list, sq_words_figure (g_array_index (places, double, i), style));
  if (goes_over (piece, mark, way))
    {
      /* TRANSLATORS: a line's name; how far along the cloth, or across, it is, and others like it. */
      const char *pattern = way == LINE_ACROSS ? _ ("%s right across, along at: %s")
                                               : _ ("%s right along, across at: %s");
      g_ptr_array_add (texts, g_strdup_printf (pattern, line_name (mark->kind), list->str));
      return;
    }
  /* TRANSLATORS: a line's name; from – to across; how far along it is, and others like it. */
  const char *across = _ ("%s, across %s, along at: %s");
  /* TRANSLATORS: a line's name; from – to along; how far across it is, and others like it. */
  const char *along = _ ("%s, along %s, across at: %s");
  g_ptr_array_add (texts, g_strdup_printf (way == LINE_ACROSS ? across : along,
                                           line_name (mark->kind), range, list->str));
}

static void
add_line (GPtrArray *texts, const SqMarkedPiece *piece, guint index, const SqLengthStyle *style)
{
  const SqInnerMark *mark = sq_inner_mark (piece, index);
  g_autoptr (GString) list = g_string_new (NULL);

  if (line_way (mark) != LINE_OTHER)
    {
      add_parallels (texts, piece, index, style);
      return;
    }
  for (guint i = 0; i < mark->at->len; i++)
    add_to_list (list, place_text (g_array_index (mark->at, SqPoint, i), style));
  /* TRANSLATORS: a line's name; places on it, "along : across". */
  g_ptr_array_add (texts, g_strdup_printf (_ ("%s: %s"), line_name (mark->kind), list->str));
}

static char *
diagonals_text (const SqMarkedPiece *piece, const SqLengthStyle *style)
{
  double mm[2];

  sq_marked_diagonals_mm (piece, mm);
  g_autofree char *first = sq_words_figure (mm[0], style);
  g_autofree char *second = sq_words_figure (mm[1], style);
  if (piece->is_rectangle)
    /* TRANSLATORS: a length. */
    return g_strdup_printf (_ ("Check: both diagonals %s"), first);
  g_autofree char *a = sq_words_mark_letter (piece->corners[0]);
  g_autofree char *b = sq_words_mark_letter (piece->corners[1]);
  g_autofree char *c = sq_words_mark_letter (piece->corners[2]);
  g_autofree char *d = sq_words_mark_letter (piece->corners[3]);
  /* TRANSLATORS: from a point to another how far it is, and from another to another. */
  return g_strdup_printf (_ ("Check: %s to %s %s, %s to %s %s"), a, c, first, b, d, second);
}

/* A ring that is a circle, for those who have a string or a compass; NULL: it is none. */
static char *
circle_text (const SqPath *ring, const SqLengthStyle *style)
{
  SqBox box = sq_path_box (ring);
  SqVector size = sq_sub (box.max, box.min);
  double radius_mm = size.x / 2, area_mm2 = fabs (sq_path_area_mm2 (ring));
  SqLengthStyle fine = sq_mark_style (TRUE, style);
  g_autofree char *centre = place_text (sq_between (box.min, box.max, 0.5), &fine);
  g_autofree char *radius = sq_words_figure (radius_mm, &fine);

  if (fabs (size.y - size.x) > LINE_MM
      || fabs (area_mm2 - M_PI * radius_mm * radius_mm) > LINE_MM * radius_mm)
    return NULL;
  /* TRANSLATORS: a place on cloth, "along : across", and a radius. */
  return g_strdup_printf (_ ("Circle about %s, R %s"), centre, radius);
}

static GPtrArray *
texts_of (const SqMarkedPiece *piece, const SqLengthStyle *style)
{
  GPtrArray *texts = g_ptr_array_new_with_free_func (g_free);

  guint n = 0;

  for (guint i = 0; i < piece->cut->len; i++)
    {
      char *circle = circle_text (g_ptr_array_index (piece->cut, i), style);
      if (circle != NULL)
        g_ptr_array_add (texts, circle);
    }
  if (piece->has_diagonals)
    g_ptr_array_add (texts, diagonals_text (piece, style));
  while (n < piece->marks->len && sq_inner_mark (piece, n)->kind == SQ_MARK_NOTCH)
    n++;
  add_notches (texts, piece, n, style);
  for (guint i = n; i < piece->marks->len; i++)
    add_line (texts, piece, i, style);
  return texts;
}

static gboolean
are_alike (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!g_str_equal (g_ptr_array_index (a, i), g_ptr_array_index (b, i)))
      return FALSE;
  return TRUE;
}

GPtrArray *
sq_words_marks_inside (const SqMarking *marking, guint i, const SqLengthStyle *style)
{
  const SqMarkedPiece *piece = sq_marked_piece (marking, i);
  GPtrArray *texts = texts_of (piece, style);

  if (i == 0 || texts->len == 0 || !piece->is_rectangle
      || !sq_marked_piece (marking, i - 1)->is_rectangle)
    return texts;
  g_autoptr (GPtrArray) before = texts_of (sq_marked_piece (marking, i - 1), style);
  if (are_alike (texts, before))
    {
      g_ptr_array_set_size (texts, 0);
      /* TRANSLATORS: they lie as they do on the piece before. */
      g_ptr_array_add (texts, g_strdup (_ ("Notches and lines as before.")));
    }
  return texts;
}
