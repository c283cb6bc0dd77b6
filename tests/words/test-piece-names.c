/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/piece-names.h"

#include "hand-made.h"

#define assert_gives(expected, call)                                                               \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *given = call;                                                                 \
    g_assert_cmpstr (given, ==, expected);                                                         \
  }                                                                                                \
  G_STMT_END

static void
test_corners (void)
{
  g_autoptr (SqCushion) cushion = hand_made_cushion ();

  assert_gives ("A", sq_words_corner (cushion, 11));
  assert_gives ("D", sq_words_corner (cushion, 14));
  assert_gives ("E", sq_words_corner (cushion, 15)); /* of the hole */
  assert_gives ("G", sq_words_corner (cushion, 17));
  assert_gives ("?", sq_words_corner (cushion, 99));
  assert_gives ("D–A", sq_words_edge_corners (cushion, 14));
  assert_gives ("G–E", sq_words_edge_corners (cushion, 17));
}

static void
test_many_corners (void)
{
  SqCorner corners[703] = { 0 };
  guint n_corners = G_N_ELEMENTS (corners);
  for (guint i = 0; i < n_corners; i++)
    corners[i].id = i + 1;
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &n_corners, 1);
  g_autoptr (SqCushion) cushion = sq_cushion_new (1, outline);

  assert_gives ("Z", sq_words_corner (cushion, 26));
  assert_gives ("AA", sq_words_corner (cushion, 27));
  assert_gives ("AZ", sq_words_corner (cushion, 52));
  assert_gives ("BA", sq_words_corner (cushion, 53));
  assert_gives ("ZZ", sq_words_corner (cushion, 702));
  assert_gives ("AAA", sq_words_corner (cushion, 703));
}

static void
test_sides (void)
{
  g_autoptr (SqCover) cover = hand_made_cover ();
  SqFinishedEdge edges[] = { { .id = 11, .side = SQ_SIDE_FRONT },
                             { .id = 12, .side = SQ_SIDE_RIGHT },
                             { .id = 13, .side = SQ_SIDE_BACK },
                             { .id = 14, .side = SQ_SIDE_LEFT } };
  SqFinishedRing ring = { .edges = edges, .n_edges = G_N_ELEMENTS (edges) };
  SqFinished finished = { .ref_count = 1, .rings = &ring, .n_rings = 1 };

  assert_gives ("A–B", sq_words_edge (cover, 11));
  cover->finished = &finished;
  assert_gives ("A–B (front)", sq_words_edge (cover, 11));
  assert_gives ("B–C (right)", sq_words_edge (cover, 12));
  assert_gives ("C–D (back)", sq_words_edge (cover, 13));
  assert_gives ("D–A (left)", sq_words_edge (cover, 14));
  cover->finished = NULL;
}

static guint
add_piece (SqCover *cover, SqPieceRole role, guint sides)
{
  SqPiece *piece = hand_made_piece (role);

  piece->sides = sides;
  g_ptr_array_add (cover->pieces, piece);
  return cover->pieces->len - 1;
}

static SqPiece *
piece_at (const SqCover *cover, guint i)
{
  return g_ptr_array_index (cover->pieces, i);
}

static void
test_pieces (void)
{
  g_autoptr (SqCover) cover = hand_made_cover ();
  guint face = add_piece (cover, SQ_ROLE_FACE, 0);
  guint underside = add_piece (cover, SQ_ROLE_UNDERSIDE, 0);
  guint front = add_piece (cover, SQ_ROLE_BOXING, SQ_SIDE_FRONT);
  guint rest = add_piece (cover, SQ_ROLE_BOXING, SQ_SIDE_RIGHT | SQ_SIDE_BACK);
  guint inner = add_piece (cover, SQ_ROLE_BOXING, 15);
  guint upper = add_piece (cover, SQ_ROLE_ZIP_STRIP, SQ_SIDE_BACK);
  guint lower = add_piece (cover, SQ_ROLE_ZIP_STRIP, SQ_SIDE_BACK);
  piece_at (cover, inner)->hole = 1;
  piece_at (cover, upper)->upper = TRUE;
  cover->zip.method = SQ_ZIP_TWO_PART;

  assert_gives ("Top", sq_words_piece (cover, face));
  assert_gives ("Underside", sq_words_piece (cover, underside));
  assert_gives ("Underside (seen right side up)", sq_words_piece_on_plan (cover, underside));
  assert_gives ("Top", sq_words_piece_on_plan (cover, face));
  assert_gives ("Front boxing", sq_words_piece (cover, front));
  assert_gives ("Right and back boxing", sq_words_piece (cover, rest));
  assert_gives ("right and back boxing", sq_words_piece_inside (cover, rest));
  assert_gives ("Boxing, hole 1", sq_words_piece (cover, inner));
  assert_gives ("Upper zip strip", sq_words_piece (cover, upper));
  assert_gives ("Lower zip strip", sq_words_piece (cover, lower));
  SqSkirt skirt = { 11, 73 };
  g_array_append_val (piece_at (cover, face)->skirts, skirt);
  assert_gives ("Plate", sq_words_piece (cover, face));
}

static void
test_parts (void)
{
  g_autoptr (SqCover) cover = hand_made_cover ();
  guint first = add_piece (cover, SQ_ROLE_BOXING, SQ_SIDE_FRONT);
  guint other = add_piece (cover, SQ_ROLE_BOXING, SQ_SIDE_LEFT);
  guint second = add_piece (cover, SQ_ROLE_BOXING, SQ_SIDE_FRONT);

  assert_gives ("Front boxing, part 1 of 2", sq_words_piece (cover, first));
  assert_gives ("Left boxing", sq_words_piece (cover, other));
  assert_gives ("Front boxing, part 2 of 2", sq_words_piece (cover, second));
  assert_gives ("front boxing, part 2 of 2", sq_words_piece_inside (cover, second));
}

static void
test_every_boxing_has_a_name (void)
{
  g_autoptr (SqCover) cover = hand_made_cover ();
  g_autoptr (GHashTable) said = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint sides = 0; sides < 16; sides++)
    add_piece (cover, SQ_ROLE_BOXING, sides);
  for (guint i = 0; i < 16; i++)
    {
      g_assert_true (g_hash_table_add (said, sq_words_piece (cover, i)));
      g_assert_true (g_hash_table_add (said, sq_words_piece_inside (cover, i)));
    }
}

static void
add_run (SqCover *cover, guint piece, SqId edge)
{
  SqRun run = { .edge = edge };
  g_array_append_val (piece_at (cover, piece)->runs, run);
}

static void
add_seam (SqCover *cover, SqSeamKind kind, SqSide a, SqSide b)
{
  SqSeam seam = { .kind = kind, .a = a, .b = b };
  g_array_append_val (cover->seams, seam);
}

static void
test_seams (void)
{
  g_autoptr (SqCover) cover = hand_made_cover ();
  guint plate = add_piece (cover, SQ_ROLE_UNDERSIDE, 0);
  guint front = add_piece (cover, SQ_ROLE_BOXING, SQ_SIDE_FRONT);
  for (SqId edge = 11; edge <= 14; edge++)
    add_run (cover, plate, edge);
  add_run (cover, front, 11);

  add_seam (cover, SQ_SEAM_PERIMETER, (SqSide){ plate, 0, 1 }, (SqSide){ front, 0, 1 });
  add_seam (cover, SQ_SEAM_CORNER, (SqSide){ plate, 0, 1 }, (SqSide){ plate, 1, 1 });
  add_seam (cover, SQ_SEAM_CORNER, (SqSide){ plate, 0, 1 }, (SqSide){ plate, 3, 1 });
  add_seam (cover, SQ_SEAM_JOIN, (SqSide){ front, 0, 1 }, (SqSide){ front, 0, 1 });
  add_seam (cover, SQ_SEAM_ZIP, (SqSide){ plate, 0, 1 }, (SqSide){ plate, 0, 1 });
  add_seam (cover, SQ_SEAM_PERIMETER, (SqSide){ front, 0, 1 }, (SqSide){ 0, 0, 0 });
  assert_gives ("Underside to front boxing", sq_words_seam (cover, 0));
  assert_gives ("Underside, corner B", sq_words_seam (cover, 1)); /* A–B meets B–C */
  assert_gives ("Underside, corner A", sq_words_seam (cover, 2)); /* A–B meets D–A */
  assert_gives ("Front boxing, both ends", sq_words_seam (cover, 3));
  assert_gives ("Underside, zip", sq_words_seam (cover, 4));
  assert_gives ("Front boxing, hem", sq_words_seam (cover, 5));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/piece-names/corners", test_corners);
  g_test_add_func ("/words/piece-names/many-corners", test_many_corners);
  g_test_add_func ("/words/piece-names/sides", test_sides);
  g_test_add_func ("/words/piece-names/pieces", test_pieces);
  g_test_add_func ("/words/piece-names/parts", test_parts);
  g_test_add_func ("/words/piece-names/every-boxing-has-a-name", test_every_boxing_has_a_name);
  g_test_add_func ("/words/piece-names/seams", test_seams);
  return g_test_run ();
}
