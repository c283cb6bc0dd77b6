/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One cushion of a job: the seat it fills and the maker's choices. Inputs only. */
#pragma once

#include "job/cloth.h"
#include "job/outline.h"

typedef enum
{
  SQ_BUILD_FOLDED_CORNER,
  SQ_BUILD_BOXED,
  SQ_BUILD_WRAPPED_FRONT,
  SQ_BUILD_SPLIT_SIDE,
  SQ_BUILD_KNIFE_EDGE,
  SQ_BUILD_BOLSTER,
} SqBuild;
#define SQ_N_BUILDS 6

typedef enum
{
  SQ_WRAP_PLAIN,
  SQ_WRAP_MITRED,
} SqWrapStyle;

typedef enum
{
  SQ_ZIP_NONE,
  SQ_ZIP_BOXING,
  SQ_ZIP_UNDERSIDE,
} SqZipPlace;

typedef enum
{
  SQ_FOAM_SEAT,
  SQ_FOAM_FIRM,
  SQ_FOAM_FAST_DRAINING,
  SQ_FOAM_CLOSED_CELL,
  SQ_FOAM_BONDED,
} SqFoamKind;
#define SQ_N_FOAM_KINDS 5

typedef enum
{
  SQ_STRIPES_FRONT_TO_BACK,
  SQ_STRIPES_SIDE_TO_SIDE,
} SqStripesRun;

typedef enum
{
  SQ_CENTRE_STRIPE,
  SQ_CENTRE_GAP,
  SQ_CENTRE_MOTIF,
  SQ_CENTRE_NONE,
} SqCentreOn;

typedef enum
{
  SQ_HAND_AS_DRAWN,
  SQ_HAND_MIRRORED,
  SQ_HAND_PAIR, /* one as drawn and one mirrored */
} SqHand;

/* Keys that were given; the others follow way of building, cloth class and defaults. */
typedef enum
{
  SQ_GIVEN_COUNT = 1 << 0,
  SQ_GIVEN_THICKNESS = 1 << 1,
  SQ_GIVEN_BUILD = 1 << 2,
  SQ_GIVEN_WRAP_DEPTH = 1 << 3,
  SQ_GIVEN_WRAP_STYLE = 1 << 4,
  SQ_GIVEN_ALLOWANCE_CORNER = 1 << 5,
  SQ_GIVEN_ALLOWANCE_PERIMETER = 1 << 6,
  SQ_GIVEN_ALLOWANCE_ZIP = 1 << 7,
  SQ_GIVEN_ALLOWANCE_JOIN = 1 << 8,
  SQ_GIVEN_FOAM_KIND = 1 << 9,
  SQ_GIVEN_FOAM_OVERSIZE = 1 << 10,
  SQ_GIVEN_FOAM_BATTING = 1 << 11,
  SQ_GIVEN_ZIP_PLACE = 1 << 12,
  SQ_GIVEN_ZIP_EDGE = 1 << 13,
  SQ_GIVEN_ZIP_FROM = 1 << 14,
  SQ_GIVEN_ZIP_TO = 1 << 15,
  SQ_GIVEN_ZIP_AT = 1 << 16,
  SQ_GIVEN_ZIP_EXTENSION = 1 << 17,
  SQ_GIVEN_ZIP_TUCK = 1 << 18,
  SQ_GIVEN_CLOTH_FACE = 1 << 19,
  SQ_GIVEN_CLOTH_UNDERSIDE = 1 << 20,
  SQ_GIVEN_CLOTH_SIDES = 1 << 21,
  SQ_GIVEN_STRIPES_RUN = 1 << 22,
  SQ_GIVEN_CENTRE_ON = 1 << 23,
  SQ_GIVEN_STRIPES_SHIFT = 1 << 24,
  SQ_GIVEN_HAND = 1 << 25,
} SqCushionGiven;

/* Where keys of newer programs stood on a cushion. */
typedef enum
{
  SQ_ON_CUSHION,
  SQ_ON_WRAP,
  SQ_ON_ALLOWANCES,
  SQ_ON_FOAM,
  SQ_ON_ZIP,
  SQ_ON_CLOTH,
  SQ_ON_STRIPES,
} SqCushionPart;
#define SQ_N_CUSHION_PARTS 7

/* Immutable once shared: fill a fresh one or a copy, then hand it over. */
typedef struct
{
  gint ref_count;
  SqId id;
  GRefString *name; /* never NULL; may be empty */
  guint count;      /* 1 … 100,000; of pairs, where the hand is pair */
  SqHand hand;
  SqOutline *outline;

  double thickness_mm; /* H: finished boxing height between sew lines */
  SqBuild build;

  struct
  {
    double depth_mm;
    SqWrapStyle style;
  } wrap;

  struct
  {
    double corner_mm, perimeter_mm, zip_mm, join_mm;
  } allowance;

  struct
  {
    SqFoamKind kind;
    double oversize_mm, batting_mm;
  } foam;

  struct
  {
    SqZipPlace place;
    SqId edge;
    double from_mm, to_mm; /* along that edge from its start; beyond its ends: returns */
    double at_mm;          /* from the edge, on an underside */
    double extension_mm, tuck_mm;
  } zip;

  struct
  {
    SqId face, underside, sides; /* 0: the job's first */
  } cloth;

  struct
  {
    SqStripesRun run;
    SqCentreOn centre_on;
    double shift_mm;
  } stripes;

  guint32 given; /* of SqCushionGiven */
  GRefString *unknown[SQ_N_CUSHION_PARTS];
} SqCushion;

/* A cushion with @outline (shared), no name, count 1, nothing given; yours until shared. */
SqCushion *sq_cushion_new (SqId id, const SqOutline *outline);
/* A copy to change before sharing it. */
SqCushion *sq_cushion_dup (const SqCushion *cushion);
/* A copy with another outline. */
SqCushion *sq_cushion_with_outline (const SqCushion *cushion, const SqOutline *outline);
SqCushion *sq_cushion_ref (const SqCushion *cushion);
void sq_cushion_unref (SqCushion *cushion);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqCushion, sq_cushion_unref)
