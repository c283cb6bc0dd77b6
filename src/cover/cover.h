/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cover of one cushion: every flat piece, every seam, zip, foam, and what is wrong. A pure
 * function of the cushion, its cloths and foams, and the defaults. */
#pragma once

#include "cover/finished.h"
#include "cover/piece.h"
#include "cover/problem.h"

typedef enum
{
  SQ_SEAM_PERIMETER,
  SQ_SEAM_CORNER,
  SQ_SEAM_JOIN,
  SQ_SEAM_ZIP,
  SQ_SEAM_WELT, /* a perimeter seam with a welt in it */
} SqSeamKind;
#define SQ_N_SEAM_KINDS (SQ_SEAM_WELT + 1)

/* Whole runs of one ring of a piece, in order of travel from first_run; past the ring's last run it
 * goes on with its first. n_runs 0: nothing (the other side is a hem). */
typedef struct
{
  guint piece, first_run, n_runs;
} SqSide;

/* @a travelled forwards meets @b travelled backwards. The law: the lengths differ by the ease. */
typedef struct
{
  SqSeamKind kind;
  SqSide a, b;
  double length_a_mm, length_b_mm, ease_mm;
  guint step; /* when it is sewn, from 1 */
} SqSeam;

typedef enum
{
  SQ_OPENING_GOES_IN,
  SQ_OPENING_FOLD, /* fold the foam */
  SQ_OPENING_TOO_SHORT,
} SqOpening;

typedef struct
{
  SqZipPlace place; /* SQ_ZIP_NONE: nothing else counts */
  SqZipMethod method;
  SqId edge;             /* the edge it lies along, or is parallel to */
  double from_mm, to_mm; /* boxing: along the edge from its start; beyond its ends: returns */
  double at_mm;          /* underside: from that edge */
  double run_mm;         /* opening between joins, or sew lines */
  double length_mm;      /* to cut */
  double needed_mm;      /* run at which the foam goes in unfolded */
  SqOpening opening;
  guint sliders;
} SqZip;

typedef struct
{
  SqFoamKind kind;
  GPtrArray *rings; /* of SqPath: outer, then holes; seat coordinates */
  double thickness_mm, oversize_mm;
  guint count;                 /* per cushion */
  double volume_mm3, weight_g; /* of one */
} SqFoamPart;

/* Length, depth and thickness of what a cover is filled with, or becomes by it (mm). */
typedef struct
{
  double length_mm, depth_mm, thickness_mm;
} SqFilled;

/* What a cover's welts take in all. */
typedef struct
{
  SqWeltAt at; /* SQ_WELT_NONE: nothing else counts */
  SqWeltCut cut;
  double cord_mm;   /* thickness */
  double strip_mm;  /* cut width of the strips */
  double length_mm; /* of cord */
  guint n_strips;
} SqWelt;

/* Immutable, shared by reference. */
typedef struct
{
  gint ref_count;
  SqCushion *cushion;   /* what it was made for */
  gboolean mirrored;    /* the seat's mirror image; coordinates are those of the image */
  SqFinished *finished; /* NULL: no outline could be finished */
  GPtrArray *pieces;    /* of SqPiece */
  GArray *seams;        /* of SqSeam */
  GArray *problems;     /* of SqProblem, as found */
  GPtrArray *foam;      /* of SqFoamPart */
  GPtrArray *underside; /* of SqPath: sew rings of the underside, before it was divided into panels;
                           as the piece has them; NULL: there is none */
  SqZip zip;
  SqWelt welt;
  SqFilled insert;     /* soft filling; length 0: none */
  SqFilled stuffed;    /* as it will really be where that is not as drawn; length 0: as drawn */
  SqBuild build;       /* as resolved */
  double thickness_mm; /* as resolved */
} SqCover;

/* The cover of @cushion in @job, as drawn or @mirrored. @before (may be NULL) is an older cover of the same cushion: only
 * a source of pieces to share; the result is the same without it. Never NULL. */
SqCover *sq_cover_new (const SqJob *job, const SqCushion *cushion, gboolean mirrored,
                       const SqCover *before);
SqCover *sq_cover_ref (const SqCover *cover);
void sq_cover_unref (SqCover *cover);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqCover, sq_cover_unref)

const SqPiece *sq_cover_piece (const SqCover *cover, guint i);
#define sq_cover_seam(cover, i) (&g_array_index ((cover)->seams, SqSeam, (i)))
#define sq_cover_problem(cover, i) (&g_array_index ((cover)->problems, SqProblem, (i)))

/* Index among the piece's runs of the @i-th run of @side. */
guint sq_side_run (const SqCover *cover, const SqSide *side, guint i);

/* The seam that run @run of piece @piece belongs to, or −1. */
gint sq_cover_seam_of_run (const SqCover *cover, guint piece, guint run);

const char *sq_seam_kind_name (SqSeamKind kind);
