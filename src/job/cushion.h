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
  SQ_ZIP_UNDERSIDE, /* across it */
  SQ_ZIP_BACK_SEAM, /* in the seam along the back */
  SQ_ZIP_SIDE_SEAM, /* in the seam round the middle of a split side, at the back */
  SQ_ZIP_TUBE,      /* along a bolster */
} SqZipPlace;
#define SQ_N_ZIP_PLACES 6

typedef enum
{
  SQ_ZIP_SLIT_IN,  /* sewn on, then the cloth is slit between the rows */
  SQ_ZIP_TWO_PART, /* between two pieces */
} SqZipMethod;

typedef enum
{
  SQ_WELT_NONE,
  SQ_WELT_TOP,
  SQ_WELT_UNDERSIDE,
  SQ_WELT_BOTH, /* a cover with one seam round it has it there, whatever is said */
} SqWeltAt;

typedef enum
{
  SQ_WELT_STRAIGHT,
  SQ_WELT_BIAS, /* at 45° to the warp */
} SqWeltCut;

/* How the front of a wrapped-front cushion looks from the side. */
typedef enum
{
  SQ_PROFILE_SQUARE,
  SQ_PROFILE_HALF_ROUND,
  SQ_PROFILE_RADIUS, /* rounded above and below */
} SqProfile;

typedef enum
{
  SQ_SECTION_ROUND,
  SQ_SECTION_HALF_ROUND,
  SQ_SECTION_D, /* a flat back and an arc before it */
} SqBolsterSection;

/* What a knife-edge cover is filled with. */
typedef enum
{
  SQ_FILLING_SOFT,
  SQ_FILLING_FOAM_HALF_ROUND, /* a foam core with rounded edges */
  SQ_FILLING_FOAM_SQUARE,
} SqFilling;

/* What is done with a face that is wider than its cloth. */
typedef enum
{
  SQ_ACROSS_NONE,
  SQ_ACROSS_TWO_JOINS, /* a middle and two sides, their pattern going on over the joins */
} SqSeamsAcross;

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
  SQ_GIVEN_ZIP_METHOD = 1 << 26,
  SQ_GIVEN_CLOTH_WELT = 1 << 27,
  SQ_GIVEN_REVERSIBLE = 1 << 28,
  SQ_GIVEN_SEAMS_ACROSS = 1 << 29,
} SqCushionGiven;

/* The same for what only some ways of building ask. */
typedef enum
{
  SQ_GIVEN_WELT_AT = 1 << 0,
  SQ_GIVEN_WELT_CORD = 1 << 1,
  SQ_GIVEN_WELT_CUT = 1 << 2,
  SQ_GIVEN_WELT_OVERLAP = 1 << 3,
  SQ_GIVEN_PROFILE = 1 << 4,
  SQ_GIVEN_PROFILE_RADIUS = 1 << 5,
  SQ_GIVEN_BOLSTER_SECTION = 1 << 6,
  SQ_GIVEN_BOLSTER_DIAMETER = 1 << 7,
  SQ_GIVEN_BOLSTER_LENGTH = 1 << 8,
  SQ_GIVEN_BOLSTER_RISE = 1 << 9,
  SQ_GIVEN_SPLIT_UPPER = 1 << 10,
  SQ_GIVEN_FILLING = 1 << 11,
  SQ_GIVEN_DRAW_IN = 1 << 12,
} SqWayGiven;

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
  SQ_ON_WELT,
  SQ_ON_PROFILE,
  SQ_ON_BOLSTER,
  SQ_ON_SPLIT,
  SQ_ON_KNIFE_EDGE,
} SqCushionPart;
#define SQ_N_CUSHION_PARTS 12

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
  gboolean reversible; /* both faces alike, so that it can be turned over */
  SqSeamsAcross seams_across;

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
    SqZipMethod method;
  } zip;

  struct
  {
    SqWeltAt at;
    double cord_mm; /* thickness */
    SqWeltCut cut;
    double overlap_mm; /* of its end over its start */
  } welt;

  struct
  {
    SqProfile kind;
    double radius_mm;
  } profile;

  struct
  {
    SqBolsterSection section;
    double diameter_mm; /* of the sew line; of a D: the height of its back */
    double length_mm;
    double rise_mm; /* of a D: how far its arc stands before its back */
  } bolster;

  struct
  {
    double upper_mm; /* height of a split side's upper part */
  } split;

  struct
  {
    SqFilling filling;
    double draw_in_mm; /* of sharp corners, from each edge */
  } knife_edge;

  struct
  {
    SqId face, underside, sides, welt; /* 0: the job's first */
  } cloth;

  struct
  {
    SqStripesRun run;
    SqCentreOn centre_on;
    double shift_mm;
  } stripes;

  guint32 given;     /* of SqCushionGiven */
  guint32 given_way; /* of SqWayGiven */
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
