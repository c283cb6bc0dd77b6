/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The seat's outline as drawn or measured: corners in seat coordinates (mm, from above, x right
 * along the front, y to the back). What belongs to an edge lives on the corner that starts it. */
#pragma once

#include "base/id.h"
#include "geometry/path.h"

/* No seat is larger (mm): 100 m, the most that a file holds. */
#define SQ_SEAT_MOST_MM 100000.0

typedef enum
{
  SQ_EDGE_FREE,
  SQ_EDGE_WALL,
  SQ_EDGE_WELL,
  SQ_EDGE_HULL_LINING,
  SQ_EDGE_ARM,
  SQ_EDGE_NEIGHBOUR,
  SQ_EDGE_LID_HINGE,
} SqEdgeKind;
#define SQ_N_EDGE_KINDS 7

/* How the side below one edge is built, where it is not as the cushion's way has it. */
typedef enum
{
  SQ_EDGE_FOLDED, /* a skirt, in one with the face */
  SQ_EDGE_BOXED,
  SQ_EDGE_OPEN, /* no side at all */
} SqEdgeBuild;

typedef enum
{
  SQ_SHAPE_STRAIGHT,
  SQ_SHAPE_BOW,   /* one arc; bow_mm is its rise */
  SQ_SHAPE_CURVE, /* a cubic with two control points */
} SqEdgeShape;

/* Keys that were given; the others follow kind and defaults when the cover is made, and are not
 * written. */
typedef enum
{
  SQ_GIVEN_RADIUS = 1 << 0,
  SQ_GIVEN_CLEARANCE = 1 << 1,
  SQ_GIVEN_KIND = 1 << 2,
  SQ_GIVEN_SEEN = 1 << 3,
  SQ_GIVEN_EDGE_BUILD = 1 << 4,
} SqCornerGiven;

typedef struct
{
  SqId id; /* unique in the cushion, holes included */
  SqPoint at;
  double radius_mm; /* rounding of the corner; all that follows is of the edge that starts here */
  SqEdgeShape shape;
  double bow_mm;       /* outward positive */
  SqPoint control[2];  /* seat coordinates */
  double clearance_mm; /* what stays free; negative is an overhang */
  SqEdgeKind kind;
  gboolean seen;
  SqEdgeBuild build;
  gboolean front;                 /* the marked front edge: at most one, on the outer ring */
  guint32 given;                  /* of SqCornerGiven */
  GRefString *note, *corner_note; /* NULL: none */
  GRefString *unknown;            /* keys of newer programs, as the text of a JSON object; carried,
                                     never read here. NULL: none */
} SqCorner;

/* Immutable: ring 0 is the outer ring, the others are holes. Any numbers are accepted; whether a
 * cushion can be made of them is the cover's business. */
typedef struct _SqOutline SqOutline;

/* Rings given one after the other in @corners, @ring_sizes[i] corners each. Texts are shared by
 * reference. @corners is copied. */
SqOutline *sq_outline_new (const SqCorner *corners, const guint *ring_sizes, guint n_rings);
SqOutline *sq_outline_ref (const SqOutline *outline);
void sq_outline_unref (SqOutline *outline);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqOutline, sq_outline_unref)

guint sq_outline_n_rings (const SqOutline *outline);
/* The corners of a ring; NULL and none where nothing is drawn. */
const SqCorner *sq_outline_ring (const SqOutline *outline, guint ring, guint *n_corners);
/* The corner with @id, or NULL; where it stands in *@ring and *@index (may be NULL). */
const SqCorner *sq_outline_corner (const SqOutline *outline, SqId id, guint *ring, guint *index);
SqId sq_outline_new_corner_id (const SqOutline *outline);
/* All corners, ring after ring, to change before an outline is made of them again; texts are
 * borrowed from @outline. New array. *@ring_sizes (new array, may be NULL) has their numbers. */
SqCorner *sq_outline_dup_corners (const SqOutline *outline, guint **ring_sizes);

/* The edge from @corner to @next as one segment: the arc of a bow, else the chord. */
SqSegment sq_edge_segment (const SqCorner *corner, const SqCorner *next);

/* Edits: each gives a new outline. */
SqOutline *sq_outline_with_corner (const SqOutline *outline, const SqCorner *corner); /* same id */
SqOutline *sq_outline_with_corner_after (const SqOutline *outline, SqId after,
                                         const SqCorner *corner);
SqOutline *sq_outline_without_corner (const SqOutline *outline, SqId id);
SqOutline *sq_outline_without_ring (const SqOutline *outline, guint ring);
/* Each point moved by @by; curve handles of the edges at it move with their own end. */
SqOutline *sq_outline_with_corner_moved (const SqOutline *outline, SqId id, SqVector by);
/* The edge that starts at @id moved with both its ends. */
SqOutline *sq_outline_with_edge_moved (const SqOutline *outline, SqId id, SqVector by);
/* Turned counter-clockwise about (0, 0), then moved. */
SqOutline *sq_outline_moved (const SqOutline *outline, double turn_rad, SqVector by);
/* Mirrored x → −x; rings keep their sense. */
SqOutline *sq_outline_mirrored (const SqOutline *outline);
/* Outer ring counter-clockwise, holes clockwise: rings that run the other way are reversed.
 * Reversing keeps ids, radius and corner notes where they stand; what belongs to an edge moves to
 * the edge's other end, curve points swap, bow keeps its sign. Gives a new reference to @outline
 * where nothing needs turning. The sense is that of the true edges, arcs and curves included. */
SqOutline *sq_outline_turned_right (const SqOutline *outline);

/* The path of a ring as drawn, corners sharp; free curves as arc chains within SQ_FIT_MM. Tag i
 * is the edge that starts at corner i. NULL for fewer than 2 corners, or a curve that can't be
 * fitted; *@bad_edge is then its index (may be NULL). Edges shorter than SQ_COINCIDE_MM are
 * kept. */
SqPath *sq_outline_path (const SqOutline *outline, guint ring, guint *bad_edge);
