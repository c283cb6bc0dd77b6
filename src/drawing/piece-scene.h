/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One piece of cloth as it will be cut, in its own coordinates, right side up. */
#pragma once

#include "cover/piece.h"
#include "drawing/scene.h"

typedef enum
{
  SQ_PIECE_CLOTH, /* the cut shape in the cloth's colours and stripes, its shadow under it */
  SQ_PIECE_LINES, /* cut, sew, folds, notches, zip, grain, in chalk */
  SQ_PIECE_LABEL, /* name and sizes */
} SqPieceLayer;

/* What is written on a piece, in the user's language. */
typedef struct
{
  const char *name;  /* "Top" */
  const char *size;  /* "46 3⁄4 × 20 1⁄8" */
  const char *count; /* "cut 1"; said on a plate, and above a piece if it is more than one */
} SqPieceLabel;

typedef struct
{
  double em_mm; /* size of ordinary text in mm of the piece: pixels / view.scale */
} SqPieceLook;

/* One layer of @piece, cut from @cloth (may be NULL: plain, of @plain colour). @label
 * (may be NULL) is what the label's layer says and what the grain arrow keeps clear of. New
 * scene. */
SqScene *sq_piece_scene (const SqPiece *piece, const SqCloth *cloth, guint32 plain,
                         SqPieceLayer layer, const SqPieceLabel *label, const SqPieceLook *look);

/* The second part of @label on its plate, or above @piece. New text. */
char *sq_piece_label_detail (const SqPiece *piece, const SqPieceLabel *label, gboolean is_inside);

/* The box a label takes, in the piece's coordinates: on a plate inside the piece where it fits
 * (*@is_inside), else above it, from its left end. */
SqBox sq_piece_label_box (const SqPiece *piece, const SqPieceLabel *label, double em_mm,
                          gboolean *is_inside);

/* The colours a piece of @cloth shows. */
SqGround sq_cloth_ground (const SqCloth *cloth, guint32 plain);

/* Adds to @builder the parts of @cloth's stripes that lie in the rings of @shape (SqPath, outer and
 * holes), as exact bands, one fill for each colour. Stripes run at @grain_rad in the shape's
 * coordinates; @phase says where they lie. */
void sq_scene_add_stripes (SqSceneBuilder *builder, const GPtrArray *shape, const SqCloth *cloth,
                           double grain_rad, const SqPhase *phase, double alpha);
