/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What choices and things of a job are called in the maker's language. */
#pragma once

#include "cover/cover.h"
#include "job/shape.h"
#include "job/sides.h"

/* Labels, as they begin a line. Static. */
const char *sq_words_build (SqBuild build);
const char *sq_words_edge_kind (SqEdgeKind kind);
const char *sq_words_shape (SqShapeKind kind);
const char *sq_words_shape_figure (SqFigureKind kind);
/* Why a typed figure can't be, as a sentence. Static. */
const char *sq_words_sides_result (SqSidesResult result);
const char *sq_words_side (SqSideOf side);
const char *sq_words_cloth_class (SqClothClass kind);
const char *sq_words_foam_kind (SqFoamKind kind);
const char *sq_words_zip_place (SqZipPlace place);
/* The same in a list of places: "Back seam". */
const char *sq_words_zip_place_short (SqZipPlace place);
/* How one side is built. */
const char *sq_words_edge_build (SqEdgeBuild build);
const char *sq_words_wrap_style (SqWrapStyle style);
/* "Square", "Half-round", "Radius": of a wrapped front. */
const char *sq_words_profile (SqProfile profile);
const char *sq_words_stripes_run (SqStripesRun run);
const char *sq_words_centre_on (SqCentreOn centre_on);
const char *sq_words_severity (SqSeverity severity);

/* The name the cushion was given, or "Cushion 2" after its place in the job; without control
 * characters. New text. */
char *sq_words_cushion (const SqJob *job, const SqCushion *cushion);
/* The same with "(mirrored)" where the cover is the mirror image of what was drawn. New text. */
char *sq_words_cover (const SqJob *job, const SqCover *cover);
const char *sq_words_hand (SqHand hand); /* static */
/* The name the cloth was given, or "Cloth 2" after its id; "Cloth" for NULL, where the job names
 * none. New text. */
char *sq_words_cloth (const SqCloth *cloth);
