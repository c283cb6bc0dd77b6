/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What can't be built, or wants a second look: facts, no words. src/words makes the sentence. */
#pragma once

#include "job/job.h"

typedef enum
{
  SQ_NOTE,
  SQ_WARNING,
  SQ_FAULT, /* "error" in files; the only one that makes the exit status 1 */
} SqSeverity;

/* facts[] are lengths in mm, areas in mm², or counts, as listed. */
typedef enum
{
  SQ_PROBLEM_OUTLINE_MISSING,     /* fewer than 2 corners, or 2 joined by a straight edge */
  SQ_PROBLEM_OUTLINE_CROSSES,     /* facts: x, y in seat coordinates */
  SQ_PROBLEM_OUTLINE_EMPTY,       /* no area */
  SQ_PROBLEM_EDGE_TOO_SHORT,      /* at the edge; length */
  SQ_PROBLEM_CURVE_UNFIT,         /* at the edge: a free curve that stands still somewhere */
  SQ_PROBLEM_THICKNESS,           /* at the key; thickness */
  SQ_PROBLEM_ALLOWANCE,           /* at the key: an allowance, depth or extension below 0 */
  SQ_PROBLEM_RADIUS_TOO_LARGE,    /* at the corner; radius, largest that fits */
  SQ_PROBLEM_CLEARANCE_TOO_LARGE, /* at the edge, or cushion; clearance */
  SQ_PROBLEM_HOLE_OUTSIDE,        /* at a corner of the hole: it leaves or touches the outline */
  SQ_PROBLEM_HOLES_MEET,          /* at a corner of the second hole */
  SQ_PROBLEM_HOLE_IN_FOLDED,      /* at a corner of the hole */
  SQ_PROBLEM_CURVE_IN_FOLDED,     /* at the edge, or the rounded corner */
  SQ_PROBLEM_REFLEX_IN_FOLDED,    /* at the corner */
  SQ_PROBLEM_NOTCH_IS_DART,       /* at the corner; corner allowance, leg that would be left */
  SQ_PROBLEM_WRAP_SLACK,          /* depth, greatest slack of an underside seam */
  SQ_PROBLEM_WRAP_TOO_DEEP,       /* at the edge it uses up; depth, least depth that is too much */
  SQ_PROBLEM_ZIP_EDGE_MISSING,    /* at the key: no such edge, or on a hole; the id */
  SQ_PROBLEM_ZIP_NO_PLACE,        /* at the key: a folded cover has no boxing for it */
  SQ_PROBLEM_ZIP_BOXING_LOW,  /* boxing height, least height: asked for all the same, or moved */
  SQ_PROBLEM_ZIP_ALL_SEEN,    /* the back is too short and every other edge is seen */
  SQ_PROBLEM_ZIP_FOLD_FOAM,   /* run, width of the foam: fold the foam to get it in */
  SQ_PROBLEM_ZIP_TOO_SHORT,   /* run, least run that lets the foam in */
  SQ_PROBLEM_ZIP_TOO_LONG,    /* run asked for, longest run its place has */
  SQ_PROBLEM_ZIP_OUTSIDE,     /* at the key: the line asked for misses the underside */
  SQ_PROBLEM_ZIP_ACROSS_HOLE, /* the only lines across the underside run over a hole */
  SQ_PROBLEM_NO_ZIP,          /* none asked for: the cover is sewn shut by hand */
  SQ_PROBLEM_JOIN_NO_ROOM, /* joins nearer to each other or to a corner than the rule; the distance */
  SQ_PROBLEM_BOXING_TOO_SHORT,  /* at the cloth: no strip of any use fits across; usable width */
  SQ_PROBLEM_WIDER_THAN_CLOTH,  /* at the piece; its width, the usable width */
  SQ_PROBLEM_CLOTH_MISSING,     /* at the key: no such cloth; the id */
  SQ_PROBLEM_CUT_SPLIT,         /* at the piece: its cut line closes up or falls apart */
  SQ_PROBLEM_REFLEX_CLIP,       /* at the corner: stay stitch and clip the face */
  SQ_PROBLEM_STRIPES_SLANT,     /* at the front edge: curved, so only its middle can match */
  SQ_PROBLEM_SKIRTS_FOLLOW,     /* one-way cloth: side and back skirts follow the plate */
  SQ_PROBLEM_HOLE_NOT_BUILT,    /* at a corner of the hole: this way of building has none */
  SQ_PROBLEM_CORNER_NOT_BUILT,  /* at the corner, rounded or turning inward: not in this way */
  SQ_PROBLEM_WELT_THICK,        /* at the key; cord and cloth, seam allowance */
  SQ_PROBLEM_WELT_TIGHT,        /* at the corner or edge; radius, least radius */
  SQ_PROBLEM_WELT_VINYL_BIAS,   /* at the key: vinyl has no bias */
  SQ_PROBLEM_PROFILE_RADIUS,    /* at the key; radius, largest */
  SQ_PROBLEM_FRONT_CURVED,      /* at the edge: a wrap goes round a straight front only */
  SQ_PROBLEM_SIDE_TURNS_BACK,   /* at the edge: it comes nearer to the front again */
  SQ_PROBLEM_SPLIT_OUTSIDE,     /* at the key; upper part, height of the side */
  SQ_PROBLEM_DRAW_IN_MEETS,     /* at the corner; draw-in, largest */
  SQ_PROBLEM_STUFFED_SMALLER,   /* length and depth when stuffed */
  SQ_PROBLEM_BOLSTER_DIAMETER,  /* at the key; diameter */
  SQ_PROBLEM_BOLSTER_LENGTH,    /* at the key; length */
  SQ_PROBLEM_BOLSTER_RISE,      /* at the key; rise, height of the back */
  SQ_PROBLEM_SKIRTS_MEET,       /* at the edge: skirts lie over each other in the flat plate */
  SQ_PROBLEM_LET_IN_NO_ROOM,    /* at the edge: nothing is left of its skirt; least, length */
  SQ_PROBLEM_EDGE_BUILD_UNUSED, /* at the edge: only folded and boxed covers mix */
  SQ_PROBLEM_ONE_RIGHT_WAY,     /* reversible, but the outline is not its own mirror image */
  SQ_PROBLEM_ACROSS_NO_PLACE, /* at the piece: joins across find no place; its width, the usable width */
  SQ_PROBLEM_WRAP_NOT_MITRED, /* at the key: none goes round under boxing; the cover ends at H */
  SQ_PROBLEM_EDGE_NOT_OPEN,   /* at the edge: open sides are not there yet */
  SQ_PROBLEM_WELT_NOT_TAKEN,  /* at the key: this way of building has no seam for it */
  SQ_PROBLEM_ZIP_NOT_PARTED,  /* at the key: its line does not part the underside in two */
} SqProblemCode;
#define SQ_N_PROBLEM_CODES (SQ_PROBLEM_ZIP_NOT_PARTED + 1)

typedef struct
{
  enum
  {
    SQ_AT_JOB,
    SQ_AT_CUSHION,
    SQ_AT_CORNER,
    SQ_AT_EDGE,  /* item: id of the corner that starts it */
    SQ_AT_PIECE, /* item: index */
    SQ_AT_SEAM,  /* item: index */
    SQ_AT_KEY,   /* key: path in the cushion, static text as in the job file */
  } kind;
  SqId cushion;
  guint32 item;
  const char *key;
} SqPlace;

/* A way out that is an edit of the cushion. */
typedef enum
{
  SQ_FIX_NONE,
  SQ_FIX_BUILD,          /* build = value, on all sides alike */
  SQ_FIX_RADIUS,         /* corner item: radius = value */
  SQ_FIX_CLEARANCE,      /* edge item: clearance = value */
  SQ_FIX_STRAIGHTEN,     /* edge item: straight */
  SQ_FIX_SHARPEN,        /* corner item: radius 0 */
  SQ_FIX_DROP_CORNER,    /* corner item removed */
  SQ_FIX_DROP_HOLE,      /* the hole with corner item removed */
  SQ_FIX_THICKNESS,      /* thickness = value */
  SQ_FIX_WRAP_DEPTH,     /* depth = value */
  SQ_FIX_WRAP_STYLE,     /* style = value */
  SQ_FIX_ZIP_PLACE,      /* place = value; edge, from, to and at are left to the rules */
  SQ_FIX_ZIP_EDGE,       /* edge = item (0: left to the rules); from and to are left to the rules */
  SQ_FIX_ZIP_RULES,      /* edge, from, to and at left to the rules */
  SQ_FIX_ALLOWANCES,     /* all allowances, wrap, extension and tuck as the defaults have them */
  SQ_FIX_CLOTH,          /* the cloth at key: the job's first */
  SQ_FIX_EDGE_BUILD,     /* edge item: build = value */
  SQ_FIX_LET_IN,         /* edges beside corner item: folded, so that boxing is let in at it */
  SQ_FIX_EDGE_AS_WAY,    /* edge item: built as the cushion's way has it */
  SQ_FIX_WELT_AT,        /* at = value */
  SQ_FIX_WELT_CORD,      /* cord = value */
  SQ_FIX_WELT_CUT,       /* cut = value */
  SQ_FIX_PROFILE,        /* kind = value; the radius is left to it */
  SQ_FIX_PROFILE_RADIUS, /* radius = value */
  SQ_FIX_SPLIT_EVEN,     /* upper and lower part alike */
  SQ_FIX_DRAW_IN,        /* draw-in = value */
  SQ_FIX_BOLSTER_DIAMETER, /* diameter = value */
  SQ_FIX_BOLSTER_LENGTH,   /* length = value */
  SQ_FIX_BOLSTER_RISE,     /* rise = value */
  SQ_FIX_STRIPES_RUN,      /* run = value */
  SQ_FIX_SEAMS_ACROSS,     /* seams across = value */
  SQ_FIX_NOT_REVERSIBLE,   /* one right way up */
} SqFixKind;

typedef struct
{
  SqFixKind kind;
  guint32 item;
  double value;
} SqFix;

#define SQ_N_FIXES 3

typedef struct
{
  SqProblemCode code;
  SqSeverity severity;
  SqPlace place;
  double facts[2];
  SqFix fixes[SQ_N_FIXES]; /* SQ_FIX_NONE ends the list */
} SqProblem;

/* Lower-case words with dashes, as files have it: "reflex-in-folded". Static. */
const char *sq_problem_code_name (SqProblemCode code);
const char *sq_severity_name (SqSeverity severity); /* "note", "warning", "error" */

/* @cushion with @fix done: a new cushion. NULL if it does not fit it (any more). */
SqCushion *sq_fix_apply (const SqFix *fix, const SqCushion *cushion);
