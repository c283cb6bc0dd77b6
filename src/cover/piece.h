/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A flat piece of cloth as it lies right side up: a sew outline cut into runs, the cut line that
 * follows from it, its marks, and the map that folds it into space. */
#pragma once

#include "job/job.h"

/* Piece coordinates: a top keeps the seat's; an underside is mirrored (x → −x); a boxing has x =
 * length along the finished outline, counter-clockwise from above, 0 at the start of the front
 * edge, and y = 0 at the underside seam. */

typedef enum
{
  SQ_ROLE_FACE,
  SQ_ROLE_UNDERSIDE,
  SQ_ROLE_BOXING,
  SQ_ROLE_ZIP_STRIP,
  SQ_ROLE_WELT,   /* a strip that goes round a cord */
  SQ_ROLE_WRAP,   /* top, front and underside in one */
  SQ_ROLE_SIDE,   /* end of a wrapped-front cushion */
  SQ_ROLE_DISC,   /* end of a bolster */
  SQ_ROLE_TUBE,   /* of a bolster */
  SQ_ROLE_LET_IN, /* between two skirts at a corner that turns inward */
} SqPieceRole;
#define SQ_N_PIECE_ROLES (SQ_ROLE_LET_IN + 1)

typedef enum
{
  SQ_TURNS_NONE,
  SQ_TURNS_HALF,
  SQ_TURNS_QUARTER,
  SQ_TURNS_FREE,
} SqTurns;

typedef enum
{
  SQ_RUN_PERIMETER,
  SQ_RUN_CORNER,
  SQ_RUN_JOIN,
  SQ_RUN_ZIP,
  SQ_RUN_HEM,
  SQ_RUN_FOLD,
  SQ_RUN_FREE,
} SqRunRole;

/* Sides of the seat, as bits where several. */
typedef enum
{
  SQ_SIDE_FRONT = 1 << 0,
  SQ_SIDE_RIGHT = 1 << 1,
  SQ_SIDE_BACK = 1 << 2,
  SQ_SIDE_LEFT = 1 << 3,
} SqSideOf;

/* A stretch of one ring of the sew line. A piece's runs stand in order of travel, ring after ring;
 * a run's index is the tag of its nodes in sew and of the parallels in cut. */
typedef struct
{
  SqRunRole role;
  SqId edge;  /* corner id of the seat edge it came from; 0: none, or a rounding */
  guint ring; /* of sew */
  /* Nodes of that ring: the segments from … to − 1, cyclic; equal: the whole ring. */
  guint from, to;
  double allowance_mm, length_mm;
} SqRun;

typedef enum
{
  SQ_MARK_NOTCH,  /* match notch of count ticks */
  SQ_MARK_CLIP,   /* snip to the sew line */
  SQ_MARK_FOLD,   /* line to fold at */
  SQ_MARK_ZIP,    /* line of the teeth */
  SQ_MARK_CORNER, /* a corner's line carried square across a boxing */
  SQ_MARK_STAY,   /* line of a stay stitch */
} SqMarkKind;

typedef struct
{
  SqMarkKind kind;
  guint count;       /* ticks of a notch */
  SqPoint at;        /* on the sew line; the first point of a line */
  double angle_rad;  /* outward there, towards the cut line */
  double depth_mm;   /* of a notch or clip, measured from the cut line inward */
  SqPath *line;      /* NULL for marks at a point; owned by the piece */
  gint seam;         /* index in the cover, −1: none */
  double station_mm; /* along the seam, from the start of this piece's side of it */
} SqMark;

typedef struct
{
  double x, y, z;
} SqPoint3;

typedef enum
{
  SQ_PATCH_PLANE,
  SQ_PATCH_CYLINDER,
} SqPatchKind;

/* The isometric map of one part of a piece into space (seat coordinates, z up, 0 at the underside
 * seam of the finished cushion). Neighbouring patches meet in a fold or go on smoothly. */
typedef struct
{
  SqPatchKind kind;
  SqPath *region;      /* in piece coordinates; owned by the piece */
  SqPoint origin;      /* this point of the piece … */
  SqVector along;      /* … and from there this unit direction and the one left of it … */
  SqPoint3 at, ex, ey; /* … go here and along these unit vectors */
  double radius_mm;    /* cylinder: bent about an axis along ey, > 0 away from the right side */
} SqPatch;

/* Where a point of the piece lies when the cover is made up. */
SqPoint3 sq_patch_map (const SqPatch *patch, SqPoint p);

typedef enum
{
  SQ_WHY_MITRE, /* a long mitre cut square */
  SQ_WHY_STEP,  /* allowances of different width meet */
  SQ_WHY_DART,  /* no notch left, or too little: sewn as a dart; the allowance is what there is */
  SQ_WHY_BEND,  /* arcs that can't be prolonged until they meet */
} SqTrimWhy;

/* A stretch of a cut ring that is not its run's allowance away. */
typedef struct
{
  guint run, ring;
  guint from, to; /* nodes of that ring of cut: its segments from … to − 1, cyclic; equal: only
                         the node */
  double distance_mm; /* of the stretch's middle from the sew line */
  SqTrimWhy why;
} SqTrim;

/* What is cut out between two skirts. */
typedef struct
{
  SqId corner;
  double apex_mm;  /* from the corner to the notch's inner point */
  double leg_mm;   /* its depth square to the edge */
  double mouth_mm; /* its opening at the cut line */
  gboolean dart;   /* nothing is cut out: fold and sew */
} SqCornerNotch;

typedef struct
{
  SqId edge;
  double depth_mm; /* from the fold at the face to the sew line at the underside */
} SqSkirt;

/* Where the pattern lies: the piece's point anchor is on the cloth's (along, across), modulo
 * repeat, for each direction that is set. */
typedef struct
{
  gboolean along, across;
  SqPoint anchor;
  /* Along the roll from the cut end; across from the near usable edge. */
  double along_mm, across_mm;
} SqPhase;

/* Immutable once made; shared by covers of later plans as long as nothing in it changes. */
typedef struct
{
  gint ref_count;
  guint64 digest; /* of all that follows */
  SqPieceRole role;
  guint ordinal;   /* among the cover's pieces of the role, from 0 */
  guint n_ordinal; /* how many there are */
  guint sides;     /* boxing, zip strips: the SqSideOf it runs along */
  guint hole;      /* boxing: of which hole, 0: of the outer ring */
  gboolean upper;  /* of two zip strips */
  SqId cloth;
  guint count;            /* per cushion */
  GPtrArray *sew, *cut;   /* of SqPath: the outer ring, then holes; as many of both */
  GArray *runs;           /* of SqRun */
  GArray *marks;          /* of SqMark */
  GArray *patches;        /* of SqPatch */
  GArray *trims;          /* of SqTrim */
  GArray *corner_notches; /* of SqCornerNotch */
  GArray *skirts;         /* of SqSkirt */
  double grain_rad; /* from the piece's +x counter-clockwise to what lies along the roll's +x */
  SqTurns turns;
  SqPhase phase;
  double area_mm2;            /* of the cut line */
  double width_mm, height_mm; /* of the cut line, across and along the grain */
} SqPiece;

SqPiece *sq_piece_ref (const SqPiece *piece);
void sq_piece_unref (SqPiece *piece);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqPiece, sq_piece_unref)

const SqPath *sq_piece_sew (const SqPiece *piece, guint ring);
const SqPath *sq_piece_cut (const SqPiece *piece, guint ring);
#define sq_piece_run(piece, i) (&g_array_index ((piece)->runs, SqRun, (i)))

/* The run that goes on from run @i, round its ring. */
guint sq_piece_next_run (const SqPiece *piece, guint i);

/* The open path of run @i. */
SqPath *sq_piece_run_path (const SqPiece *piece, guint i);

/* Names as files have them. Static. */
const char *sq_piece_role_name (SqPieceRole role);
const char *sq_run_role_name (SqRunRole role);
const char *sq_mark_kind_name (SqMarkKind kind);
const char *sq_turns_name (SqTurns turns);
const char *sq_trim_why_name (SqTrimWhy why);
