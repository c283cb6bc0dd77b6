/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/seat-notes.h"

#include "drawing/seat-drawn.h"

#define EM_MM 20

/* A square with a note at its first edge and one at its third corner; the hole has one too. */
static SqCushion *
noted (double radius_mm)
{
  g_autoptr (GRefString) edge = g_ref_string_new ("loose board");
  g_autoptr (GRefString) corner = g_ref_string_new ("a nail");
  const SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 }, .note = edge, .radius_mm = radius_mm },
    { .id = 2, .at = { 400, 0 }, .radius_mm = radius_mm },
    { .id = 3, .at = { 400, 400 }, .corner_note = corner },
    { .id = 4, .at = { 0, 400 } },
    { .id = 5, .at = { 180, 180 } },
    { .id = 6, .at = { 180, 220 }, .note = edge },
    { .id = 7, .at = { 220, 220 } },
    { .id = 8, .at = { 220, 180 } },
  };
  const guint sizes[] = { 4, 4 };
  g_autoptr (SqOutline) outline = sq_outline_new (corners, sizes, 2);
  return sq_cushion_new (1, outline);
}

static void
test_places (void)
{
  g_autoptr (SqCushion) cushion = noted (0);
  g_autoptr (GArray) notes = sq_seat_notes (cushion, EM_MM);
  const SqPinnedNote *note = &g_array_index (notes, SqPinnedNote, 0);

  g_assert_cmpuint (notes->len, ==, 3);
  g_assert_cmpuint (note->corner, ==, 1);
  g_assert_true (note->is_edge);
  g_assert_cmpstr (note->text, ==, "loose board");
  /* Left of the edge's middle, inside. */
  g_assert_true (note->at.x > 0 && note->at.x < 200 - EM_MM);
  g_assert_true (note->at.y > EM_MM / 2.0 && note->at.y < 3 * EM_MM);
  note++;
  g_assert_cmpuint (note->corner, ==, 3);
  g_assert_false (note->is_edge);
  /* On the diagonal, inside. */
  g_assert_cmpfloat_with_epsilon (note->at.x, note->at.y, 1e-9);
  g_assert_true (note->at.x > 300 && note->at.x < 400 - EM_MM);
  note++;
  /* On the material, not in the hole. */
  g_assert_cmpuint (note->corner, ==, 6);
  g_assert_true (note->at.y > 220);
}

static void
test_at (void)
{
  g_autoptr (SqCushion) cushion = noted (0);
  g_autoptr (GArray) notes = sq_seat_notes (cushion, EM_MM);
  const SqPinnedNote *first = &g_array_index (notes, SqPinnedNote, 0);
  SqPoint beside = sq_point (first->at.x + 0.9 * EM_MM, first->at.y);

  g_assert_true (sq_seat_note_at (notes, first->at, EM_MM) == first);
  g_assert_true (sq_seat_note_at (notes, beside, EM_MM) == first);
  g_assert_null (sq_seat_note_at (notes, beside, EM_MM / 2.0));
}

/* Where roundings use up the edge, no mark can stand beside it. */
static void
test_rounded_away (void)
{
  g_autoptr (SqCushion) cushion = noted (200);
  g_autoptr (SqPath) ring = sq_seat_ring (cushion->outline, 0);
  g_autoptr (GArray) notes = sq_seat_notes (cushion, EM_MM);
  SqPoint at;
  SqVector along;

  g_assert_false (sq_seat_edge_point (ring, 0, 0.5, &at, &along));
  g_assert_cmpuint (notes->len, ==, 2);
}

static guint
strokes (const SqCushion *cushion)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  sq_seat_notes_draw (builder, cushion, EM_MM);
  g_autoptr (SqScene) scene = sq_scene_builder_end (builder);
  g_autofree char *dump = sq_scene_dump (scene);
  return (guint) strlen (dump);
}

static void
test_drawn (void)
{
  g_autoptr (SqCushion) with = noted (0), fewer = noted (200);
  const SqCorner corners[] = { { .id = 1 },
                               { .id = 2, .at = { 400, 0 } },
                               { .id = 3, .at = { 400, 400 } } };
  const guint n = G_N_ELEMENTS (corners);
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &n, 1);
  g_autoptr (SqCushion) without = sq_cushion_new (1, outline);

  g_assert_cmpuint (strokes (without), ==, 0);
  g_assert_cmpuint (strokes (fewer), >, 0);
  g_assert_cmpuint (strokes (with), >, strokes (fewer));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/seat-notes/places", test_places);
  g_test_add_func ("/drawing/seat-notes/at", test_at);
  g_test_add_func ("/drawing/seat-notes/rounded-away", test_rounded_away);
  g_test_add_func ("/drawing/seat-notes/drawn", test_drawn);
  return g_test_run ();
}
