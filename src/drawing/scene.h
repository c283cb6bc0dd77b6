/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is drawn, before it is drawn: an immutable list of strokes, fills and texts in mm, x right,
 * y up. A scene names what a line is (its pen), never how it looks: colours and weights are the
 * theme's and the painter's. The same scene goes to screen, paper and file. */
#pragma once

#include "geometry/path.h"

/* What a line is. */
typedef enum
{
  SQ_PEN_CUT,       /* cut line: solid, the strongest */
  SQ_PEN_SEW,       /* sew line: dashed */
  SQ_PEN_FOLD,      /* fold: dotted */
  SQ_PEN_STAY,      /* stay stitch: short close dashes */
  SQ_PEN_GRAIN,     /* double arrow along the warp */
  SQ_PEN_NOTCH,     /* tick of a match notch or clip */
  SQ_PEN_CARRY,     /* a corner's line carried across a boxing */
  SQ_PEN_ZIP,       /* fine double line with teeth; the slider stands near the start */
  SQ_PEN_INK,       /* the seat as drawn */
  SQ_PEN_FINISHED,  /* the finished outline where it is not the seat's */
  SQ_PEN_HATCH,     /* what stands at an edge */
  SQ_PEN_LEADER,    /* from a figure to what it measures */
  SQ_PEN_CHORD,     /* straight from corner to corner where the edge is bent */
  SQ_PEN_GUIDE,     /* why something snaps: dashed, accent */
  SQ_PEN_ACCENT,    /* what is pointed at or chosen: strong, accent */
  SQ_PEN_HANDLE,    /* ring of a handle */
  SQ_PEN_GRID,      /* the paper's grid; fine steps … */
  SQ_PEN_GRID_MAIN, /* … and main steps */
  SQ_PEN_RULE,      /* between texts on a page */
} SqPen;
#define SQ_N_PENS (SQ_PEN_RULE + 1)

/* What an area is. */
typedef enum
{
  SQ_FILL_COLOUR, /* a real colour: of cloth; see rgb and alpha */
  SQ_FILL_SEAT,   /* the seat on its paper */
  SQ_FILL_SHADOW, /* under a piece that lies on the table */
  SQ_FILL_PLATE,  /* behind a text */
  SQ_FILL_HANDLE, /* inside of a handle */
  SQ_FILL_ACCENT, /* what is chosen: faint */
} SqFill;
#define SQ_N_FILLS (SQ_FILL_ACCENT + 1)

typedef enum
{
  SQ_TONE_INK,
  SQ_TONE_DIM, /* less important; still 4.5 : 1 */
  SQ_TONE_ACCENT,
  SQ_TONE_GOOD,
} SqTone;

typedef enum
{
  SQ_ALIGN_MIDDLE,
  SQ_ALIGN_START, /* at the box's left, whichever way the text runs */
  SQ_ALIGN_END,
} SqAlign;

/* One line of text. It is set within its box: what a desktop's font makes wider than width_mm is
 * set smaller, so boxes that don't overlap mean texts that don't. */
typedef struct
{
  SqPoint at;       /* middle of the box */
  double angle_rad; /* reading direction; see sq_readable_angle_rad() */
  double em_mm;     /* size of the font */
  double width_mm;  /* of the box; it is SQ_TEXT_HEIGHT_EM high */
  SqAlign align;
  SqTone tone;
  gboolean bold;
  const char *text;   /* UTF-8; borrowed while building, then the scene's */
  const char *detail; /* goes on after it, smaller and dim; NULL: nothing. Ownership as text */
} SqText;

/* Height of a text's box, in em; size of a detail beside its text. */
#define SQ_TEXT_HEIGHT_EM 1.3
#define SQ_DETAIL_EM 0.9

/* "18 1⁄2": the figures beside this slash are set as small as this, in em. */
#define SQ_FRACTION_SLASH "\xe2\x81\x84"
#define SQ_FRACTION_EM 0.68

/* A line of an item: its nodes first … first + n − 1 (bulges as in SqNode). */
typedef struct
{
  guint first, n;
  gboolean is_ring;
  double from_mm; /* > 0: it goes on from a line of that length that is not here: with its dashes,
                     and no slider at its start */
} SqSceneLine;

typedef enum
{
  SQ_ITEM_STROKE,
  SQ_ITEM_FILL, /* non-zero winding over its lines, all rings */
  SQ_ITEM_TEXT,
} SqItemKind;

typedef struct
{
  SqItemKind kind;
  SqPen pen;                 /* of a stroke */
  SqFill fill;               /* of a fill */
  guint32 rgb;               /* SQ_FILL_COLOUR: 0xrrggbb */
  double alpha;              /* 0 … 1 */
  guint first_line, n_lines; /* of a stroke or fill */
  guint text;                /* index */
} SqItem;

/* What lies under the strokes inside a piece: chalk is chosen to be readable on it. */
typedef struct
{
  gboolean is_cloth;         /* FALSE: paper; they are ink */
  guint32 mean;              /* 0xrrggbb: mean colour by area … */
  guint32 lightest, darkest; /* … and its extremes */
} SqGround;

/* Immutable, shared by reference; any thread. */
typedef struct _SqScene SqScene;

SqScene *sq_scene_ref (const SqScene *scene);
void sq_scene_unref (SqScene *scene);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqScene, sq_scene_unref)

/* In the order of painting. All borrowed. */
guint sq_scene_n_items (const SqScene *scene);
const SqItem *sq_scene_item (const SqScene *scene, guint i);
const SqSceneLine *sq_scene_line (const SqScene *scene, guint i);
const SqNode *sq_scene_nodes (const SqScene *scene, const SqSceneLine *line);
const SqText *sq_scene_text (const SqScene *scene, guint i);
const SqGround *sq_scene_ground (const SqScene *scene);

/* Everything that is drawn, lines without their weights. Empty for an empty scene. */
SqBox sq_scene_box (const SqScene *scene);

/* The scene as text, one item a line, rounded to 0.001 mm: for golden tests. Yours to free. */
char *sq_scene_dump (const SqScene *scene);

/* Names as the dump has them: "cut", "sew" … Static. */
const char *sq_pen_name (SqPen pen);

/* How a scene is made: new, add, end. */
typedef struct _SqSceneBuilder SqSceneBuilder;

SqSceneBuilder *sq_scene_builder_new (void);
/* Ends building: the scene, yours. The builder is gone. */
SqScene *sq_scene_builder_end (SqSceneBuilder *builder);

/* What its chalk marks lie on; without it they are ink on paper. */
void sq_scene_set_ground (SqSceneBuilder *builder, const SqGround *ground);

/* Strokes and fills of more than one line: begin, add lines, and what follows ends it. A fill's
 * lines are rings. */
void sq_scene_begin_stroke (SqSceneBuilder *builder, SqPen pen);
void sq_scene_begin_fill (SqSceneBuilder *builder, SqFill fill);
void sq_scene_begin_colour (SqSceneBuilder *builder, guint32 rgb, double alpha);
void sq_scene_add_path (SqSceneBuilder *builder, const SqPath *path);
void sq_scene_add_nodes (SqSceneBuilder *builder, const SqNode *nodes, guint n, gboolean is_ring);
/* @path as a part of a longer one that begins @from_mm before it. */
void sq_scene_add_part (SqSceneBuilder *builder, const SqPath *path, double from_mm);
void sq_scene_add_line (SqSceneBuilder *builder, SqPoint from, SqPoint to);
void sq_scene_add_circle (SqSceneBuilder *builder, SqPoint centre, double radius_mm);
/* A rectangle about @centre, turned, its corners rounded. */
void sq_scene_add_plate (SqSceneBuilder *builder, SqPoint centre, double width_mm, double height_mm,
                         double angle_rad, double radius_mm);

/* A text; @text and what it points to are copied. */
void sq_scene_add_text (SqSceneBuilder *builder, const SqText *text);

/* All of @scene, @scale times as large, its (0, 0) at @origin; texts and their boxes too. Not its
 * ground. */
void sq_scene_add_scene (SqSceneBuilder *builder, const SqScene *scene, SqPoint origin,
                         double scale);

/* Shorthands: one path stroked; one path filled. */
void sq_scene_stroke_path (SqSceneBuilder *builder, SqPen pen, const SqPath *path);
void sq_scene_fill_path (SqSceneBuilder *builder, SqFill fill, const SqPath *path);

/* Width that a text takes in a wide desktop font, in em: an estimate on the safe side that needs no
 * font, so that a scene is the same on every machine. */
double sq_text_width_em (const char *text, gboolean bold);
/* The same of a text with its detail. */
double sq_text_with_detail_width_em (const char *text, gboolean bold, const char *detail);

/* @angle_rad, or the half turn from it, whichever reads from below or from the right: upright lines
 * read upwards even where they lean over by SQ_LEAN_RAD. */
#define SQ_LEAN_RAD 0.1
double sq_readable_angle_rad (double angle_rad);
