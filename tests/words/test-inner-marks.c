/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/inner-marks.h"

#include "base/units.h"

#define IN SQ_MM_PER_INCH

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

/* A marking of one piece of the ring @cut, which is taken; nothing marked on it yet. */
static SqMarking *
marking_of (SqPath *cut)
{
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  SqMarking *marking = g_new0 (SqMarking, 1);
  SqMarkedPiece *piece = g_new0 (SqMarkedPiece, 1);

  piece->cut = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  piece->rings = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  piece->marks = g_array_new (FALSE, FALSE, sizeof (SqInnerMark));
  g_array_set_clear_func (piece->marks, clear_mark);
  piece->box = sq_path_box (cut);
  g_ptr_array_add (piece->cut, cut);
  g_ptr_array_add (piece->rings, sq_marked_ring (cut, &style));
  marking->flaws = g_array_new (FALSE, FALSE, sizeof (SqBox));
  marking->cuts = g_array_new (FALSE, FALSE, sizeof (SqStraightCut));
  marking->pieces = g_ptr_array_new_with_free_func (piece_free);
  g_ptr_array_add (marking->pieces, piece);
  return marking;
}

static SqMarkedPiece *
piece_of (const SqMarking *marking)
{
  return g_ptr_array_index (marking->pieces, 0);
}

static void
add_notch (const SqMarking *marking, guint side, double along_in, double across_in, guint ticks)
{
  SqInnerMark mark = { .kind = SQ_MARK_NOTCH, .ticks = ticks, .side = side };
  SqPoint at = sq_point (along_in * IN, across_in * IN);

  mark.at = g_array_new (FALSE, FALSE, sizeof (SqPoint));
  g_array_append_val (mark.at, at);
  g_array_append_val (piece_of (marking)->marks, mark);
}

static void
add_line (const SqMarking *marking, SqMarkKind kind, double along_in, double across_in,
          double to_along_in, double to_across_in)
{
  SqInnerMark mark = { .kind = kind };
  SqPoint ends[] = { { along_in * IN, across_in * IN }, { to_along_in * IN, to_across_in * IN } };

  mark.at = g_array_new (FALSE, FALSE, sizeof (SqPoint));
  g_array_append_vals (mark.at, ends, 2);
  g_array_append_val (piece_of (marking)->marks, mark);
}

/* The texts, with ordinary spaces, are @wanted, which ends in NULL. */
static void
assert_texts (const SqMarking *marking, const char *const *wanted)
{
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  g_autoptr (GPtrArray) texts = sq_words_marks_inside (marking, 0, &style);

  for (guint i = 0; i < texts->len; i++)
    {
      g_auto (GStrv) parts = g_strsplit (g_ptr_array_index (texts, i), "\xc2\xa0", -1);
      g_autofree char *text = g_strjoinv (" ", parts);
      g_assert_cmpstr (text, ==, wanted[i]);
    }
  g_assert_null (wanted[texts->len]);
}

/* A boxing: opposite sides with the same notches are told at once, from the cut end on, whichever way
 * they go; lines that are alike, too. */
static void
test_rectangle (void)
{
  static const char *const wanted[] = {
    "Notches near and far side, along: 3 · 7 1/2 (2)",
    "Notches right end, across: 4",
    "Fold right across, along at: 2 3/8",
    "Zip right along, across at: 5",
    "Corner line right across, along at: 3 · 7 1/2",
    "Corner line, across 2 – 4, along at: 12",
    NULL,
  };
  g_autoptr (SqMarking) marking = marking_of (sq_path_new_rectangle (0, 2 * IN, 20 * IN, 6 * IN));

  piece_of (marking)->is_rectangle = TRUE;
  add_notch (marking, 0, 3, 2, 1);
  add_notch (marking, 0, 7.5, 2, 2);
  add_notch (marking, 1, 20, 4, 1);
  add_notch (marking, 2, 7.5, 6, 2);
  add_notch (marking, 2, 3, 6, 1);
  add_line (marking, SQ_MARK_FOLD, 2.375, 6, 2.375, 2);
  add_line (marking, SQ_MARK_ZIP, 1, 5, 19, 5);
  add_line (marking, SQ_MARK_CORNER, 7.5, 2, 7.5, 6);
  add_line (marking, SQ_MARK_CORNER, 3, 2, 3, 6);
  add_line (marking, SQ_MARK_CORNER, 12, 2, 12, 4);
  assert_texts (marking, wanted);

  /* The same once more: nothing new is told. */
  g_ptr_array_add (marking->pieces, g_ptr_array_index (marking->pieces, 0));
  SqLengthStyle style = sq_length_style_default (SQ_UNIT_IN);
  g_autoptr (GPtrArray) again = sq_words_marks_inside (marking, 1, &style);
  g_assert_cmpuint (again->len, ==, 1);
  g_assert_cmpstr (g_ptr_array_index (again, 0), ==, "Notches and lines as before.");
  g_ptr_array_steal_index (marking->pieces, 1);
}

/* Sides are named by their points: a side along the cloth by one figure, one that slants by both. */
static void
test_polygon (void)
{
  static const char *const wanted[] = {
    "Check: a to c 25 1/16, b to d 26 13/16",
    "Notches a–b, along: 3 · 12",
    "Notches b–c: 23 : 6 (3)",
    "Notches c–d, along: 9",
    "Stay stitch: 5 : 5 · 6 : 7",
    NULL,
  };
  const SqPoint corners[] = { { 0, 0 }, { 24 * IN, 0 }, { 22 * IN, 12 * IN }, { 0, 12 * IN } };
  g_autoptr (SqMarking) marking = marking_of (sq_path_new_polygon (corners, 4));

  piece_of (marking)->has_diagonals = TRUE;
  for (guint i = 0; i < 4; i++)
    piece_of (marking)->corners[i] = i;
  add_notch (marking, 0, 3, 0, 1);
  add_notch (marking, 0, 12, 0, 1);
  add_notch (marking, 1, 23, 6, 3);
  add_notch (marking, 2, 9, 12, 1);
  add_line (marking, SQ_MARK_STAY, 5, 5, 6, 7);
  assert_texts (marking, wanted);
}

/* A disc: its centre and radius, and its quarters by letters that leave out the points between. */
static void
test_circle (void)
{
  static const char *const wanted[] = {
    "Circle about 10 : 10 1/2, R 4 1/32",
    "Notches c–e: 14 : 10 1/2",
    NULL,
  };
  g_autoptr (SqMarking) marking = marking_of (
      sq_path_new_circle (sq_point (10 * IN, 10.5 * IN), 4.03 * IN));
  const GArray *points = sq_marked_piece_ring (piece_of (marking), 0);

  g_assert_cmpuint (points->len, ==, 8);
  add_notch (marking, 1, 14, 10.5, 1);
  assert_texts (marking, wanted);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/inner-marks/rectangle", test_rectangle);
  g_test_add_func ("/words/inner-marks/polygon", test_polygon);
  g_test_add_func ("/words/inner-marks/circle", test_circle);
  return g_test_run ();
}
