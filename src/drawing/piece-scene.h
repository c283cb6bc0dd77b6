/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One piece of cloth as it will be cut, in its own coordinates, right side up. */
#pragma once

#include "cover/cover.h"
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
  const char *count; /* "cut 2"; above a piece it is said only if n > 1 */
  const char *seen;  /* "seen right side up", or NULL; on a plate only */
  guint n;           /* how many are cut in all */
} SqPieceLabel;

/* Fills @label for piece @piece of @cover; the caller clears it. */
void sq_piece_label_init (SqPieceLabel *label, const SqCover *cover, guint piece,
                          const SqLengthStyle *style);
void sq_piece_label_clear (SqPieceLabel *label);

typedef struct
{
  double em_mm; /* size of ordinary text in mm of the piece: pixels / view.scale */
} SqPieceLook;

/* One layer of @piece, cut from @cloth (may be NULL: plain, of @plain colour). @label
 * (may be NULL) is what the label's layer says and what the grain arrow keeps clear of. New
 * scene. */
SqScene *sq_piece_scene (const SqPiece *piece, const SqCloth *cloth, guint32 plain,
                         SqPieceLayer layer, const SqPieceLabel *label, const SqPieceLook *look);

/* Width of @label as it stands above a piece, in em. */
double sq_piece_label_width_em (const SqPieceLabel *label);

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
