/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a plotter or a cutting table is told of pieces: lines by layer and texts, in mm. It knows no
 * format; dxf, svg and hpgl know no cushion and only write it down. */
#pragma once

#include "plan/lays.h"

/* What a line is. */
typedef enum
{
  SQ_LAYER_CUT,        /* the outer cut line: a ring */
  SQ_LAYER_CUT_INSIDE, /* holes: rings */
  SQ_LAYER_SEW,        /* sew lines: rings */
  SQ_LAYER_NOTCH,      /* ticks of match notches and clips, from the cut line inward */
  SQ_LAYER_FOLD,
  SQ_LAYER_ZIP,    /* line of the teeth */
  SQ_LAYER_CORNER, /* a corner's line carried across a boxing */
  SQ_LAYER_STAY,   /* stay stitches */
  SQ_LAYER_GRAIN,  /* from where to where the warp runs */
  SQ_LAYER_TEXT,
  SQ_LAYER_CLOTH, /* the edge of what is laid on */
} SqCutLayer;
#define SQ_N_CUT_LAYERS (SQ_LAYER_CLOTH + 1)

/* Our own plain names of layers: "cut", "cut-inside" … Static, never translated. */
const char *sq_cut_layer_name (SqCutLayer layer);

/* What can be taken apart, as bits. */
typedef enum
{
  SQ_LINES_CUT = 1 << 0,   /* cut, cut-inside */
  SQ_LINES_SEW = 1 << 1,   /* sew */
  SQ_LINES_NOTCH = 1 << 2, /* notch */
  SQ_LINES_MARK = 1 << 3,  /* fold, zip, corner, stay, grain, cloth */
  SQ_LINES_TEXT = 1 << 4,  /* text */
} SqCutLines;
#define SQ_LINES_ALL ((1U << 5) - 1)

/* Words for these bits in files and on the command line, in their order: "cut", "sew", "notch",
 * "mark", "text", NULL. */
extern const char *const sq_cut_lines_names[];

/* What a file holds. */
typedef enum
{
  SQ_CUT_PIECES, /* every piece of the cut list once, side by side */
  SQ_CUT_CLOTHS, /* the same, those of each cloth for themselves */
  SQ_CUT_LAYS,   /* every copy where it lies on its cloth */
} SqCutOf;

/* "pieces", "cloth", "lay", NULL. */
extern const char *const sq_cut_of_names[];

typedef struct
{
  SqCutOf of;
  guint lines;           /* of SqCutLines */
  gboolean wrong_side;   /* all of it mirrored, to be marked on the cloth's wrong side; texts stay
                            readable */
  double flatten_mm;     /* > 0: arcs as lines no farther off than this */
  const GArray *entries; /* of guint, indexes in the plan's cut list, ascending; NULL: all of it.
                            For lays: those pieces alone, where they lie. Borrowed */
} SqCutChoice;

typedef struct
{
  SqCutLayer layer;
  SqPath *path; /* owned */
} SqCutLine;

/* One line of text, its baseline's start at @at. */
typedef struct
{
  SqPoint at;
  double angle_rad, height_mm; /* of capitals */
  char *text;                  /* UTF-8, owned */
} SqCutText;

/* A piece in its own coordinates, as it is to be marked: mirrored already where the wrong side is. */
typedef struct
{
  guint entry;    /* index in the plan's cut list */
  char *name;     /* "3 Front boxing": one of its own in the drawing */
  char *cloth;    /* "" where the job names none */
  guint count;    /* that are to be cut in all */
  SqPiece *piece; /* owned reference; not mirrored */
  GArray *lines;  /* of SqCutLine */
  GArray *texts;  /* of SqCutText: number and name, how many, which side up, FRONT, hand */
} SqCutShape;

/* A copy of it in the drawing: turned about (0, 0), then moved. */
typedef struct
{
  guint shape; /* index */
  double turn_rad;
  SqPoint at;
} SqCutPlace;

/* One file. y up. */
typedef struct
{
  char *name;        /* for people, and for a file's name: "Bay seat", "3 Front boxing" */
  char *title;       /* "Bay seat, revision A, RIGHT SIDE UP" */
  GPtrArray *shapes; /* of SqCutShape */
  GArray *places;    /* of SqCutPlace: at least one of each shape */
  GArray *lines;     /* of SqCutLine, in the drawing's own coordinates: edges of cloth */
  GArray *texts;     /* of SqCutText, the same: names of cloths and strips */
  SqBox box;         /* of all cut lines, edges of cloth and their names, drawn or not, so that
                        drawings of some lines each fit together; from (0, 0) */
} SqCutDrawing;

#define sq_cut_shape(drawing, i) ((const SqCutShape *) g_ptr_array_index ((drawing)->shapes, (i)))
#define sq_cut_place(drawing, i) (&g_array_index ((drawing)->places, SqCutPlace, (i)))
#define sq_cut_line(lines, i) (&g_array_index ((lines), SqCutLine, (i)))
#define sq_cut_text(texts, i) (&g_array_index ((texts), SqCutText, (i)))

/* All that @choice takes of @lays as one drawing: lays of several cloths, and strips of one, above each
 * other. New; free with sq_cut_drawing_free(). */
SqCutDrawing *sq_cut_drawing_new (const SqLays *lays, const SqCutChoice *choice);
/* The same as one drawing for each piece, or each cloth, after choice->of. New array of SqCutDrawing,
 * its own; their names differ. */
GPtrArray *sq_cut_drawings_new (const SqLays *lays, const SqCutChoice *choice);
void sq_cut_drawing_free (SqCutDrawing *drawing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqCutDrawing, sq_cut_drawing_free)

/* A line or text of a shape where @place puts it: a new path; the place of the text, turned with
 * it. */
SqPath *sq_cut_line_placed (const SqCutLine *line, const SqCutPlace *place);
SqCutText sq_cut_text_placed (const SqCutText *text,
                              const SqCutPlace *place); /* borrows the text */
