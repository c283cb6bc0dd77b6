/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The ways of building a cover. Each is one function in a file of its own; a new one is added to
 * the table in cover.c. Internal to the room. */
#pragma once

#include "cover/making.h"

/* Draws pieces and seams of making->cover, whose finished outline is there, and lists what can't be
 * built. */
void sq_way_folded_corner (SqMaking *making);
void sq_way_boxed (SqMaking *making);
void sq_way_wrapped_front (SqMaking *making);
void sq_way_split_side (SqMaking *making);
void sq_way_knife_edge (SqMaking *making);
void sq_way_bolster (SqMaking *making);

/* Shared by ways. */

/* Whether skirts can go all round the outer ring; everything they can't be made for is listed.
 * @lets_in: boxing goes in where corners leave no cloth for them. */
gboolean sq_can_be_folded (SqMaking *making, gboolean lets_in);

/* Grain, turns and phase of a face in seat coordinates, or mirrored. */
void sq_lay_face_on_cloth (const SqMaking *making, SqPiece *piece, const SqClothChoice *cloth,
                           gboolean mirrored, gboolean must_match);
/* The same for a boxing strip; @must_match: its pattern meets that of the face at the front. */
void sq_lay_boxing_on_cloth (const SqMaking *making, SqPiece *piece, gboolean must_match);

/* Notes each sharp corner of the outer ring that turns inward: there the face is clipped. */
void sq_note_inward_corners (SqMaking *making);

/* An end of a bolster or a wrap: upright, its y is up. */
void sq_lay_upright_on_cloth (SqPiece *piece, const SqClothChoice *cloth);
/* A bolster's tube, its y the way round. */
void sq_lay_tube_on_cloth (const SqMaking *making, SqPiece *piece);

/* What the cover is filled with: a block, the outline grown by half the oversize; or the insert of a
 * soft filling, and what it makes of the cover. */
void sq_cut_foam (SqMaking *making);
void sq_foam_part_free (SqFoamPart *part);
