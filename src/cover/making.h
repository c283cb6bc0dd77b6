/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a way of building makes its pieces and seams. Internal to the room.
 *
 * A way of building only draws sew lines, in runs that each carry an allowance. Cut lines, lengths,
 * areas, digests and the sharing of unchanged pieces follow here, the same for all. */
#pragma once

#include "cover/choices.h"
#include "cover/cover.h"

/* A cover being made. */
typedef struct
{
  SqChoices choices;
  SqCover *cover;
  const SqCover *before; /* may be NULL */
} SqMaking;

/* A piece of @role with empty lists, yours to fill. */
SqPiece *sq_piece_new (SqPieceRole role);

/* A piece being drawn, added to the making with sq_making_add_piece(). */
typedef struct
{
  SqPiece *piece;
  SqPathBuilder ring;
  guint32 run; /* the run that further segments belong to */
} SqDraft;

/* Starts a piece of @role from @cloth, one a cushion, first ring open for drawing. */
void sq_draft_begin (SqDraft *draft, SqPieceRole role, const SqClothChoice *cloth);
/* Starts a run: segments drawn from here belong to it. Returns its index. */
guint sq_draft_run (SqDraft *draft, SqRunRole role, SqId edge, double allowance_mm);
/* A node whose segment belongs to the run begun last. */
void sq_draft_node (SqDraft *draft, SqPoint at, double bulge);
/* Closes the ring and opens the next one; the last ring is closed by adding the piece. */
void sq_draft_next_ring (SqDraft *draft);
/* A patch with its region, which is taken. */
void sq_draft_patch (SqDraft *draft, SqPatchKind kind, SqPath *region, SqPoint origin, SqPoint3 at,
                     SqPoint3 ex, SqPoint3 ey, double radius_mm);
/* A patch of all of a face: @outline, in seat coordinates, lies at height @z_mm, or turned over
 * where the face is @mirrored. */
void sq_draft_flat_patch (SqDraft *draft, const SqPath *outline, gboolean mirrored, double z_mm);
/* Turns over what was drawn so far, one ring of an upper piece of a cushion @thickness_mm high: the
 * same piece of its lower side. Its runs stand in reverse order then. */
void sq_draft_turn_over (SqDraft *draft, double thickness_mm);
/* The patch added last has its ex along @along of the piece (unit) and not along x. */
void sq_draft_patch_along (SqDraft *draft, SqVector along);

/* Ends the draft; returns the piece's index in the cover. */
guint sq_making_add_piece (SqMaking *making, SqDraft *draft);

/* The piece @i while marks and phase may still be added to it. */
SqPiece *sq_making_piece (SqMaking *making, guint i);

/* Adds the seam where @a, forwards, meets @b, backwards. Returns its index. */
guint sq_making_add_seam (SqMaking *making, SqSeamKind kind, SqSide a, SqSide b, guint step);

/* A mark at a point (line NULL) or along @line, which is taken. */
void sq_piece_add_mark (SqPiece *piece, SqMarkKind kind, guint count, SqPoint at, double angle_rad,
                        double depth_mm, SqPath *line, gint seam, double station_mm);

/* Lists as a trim that run @run of the finished @piece has the allowance of a dart, which ends at
 * the cut line's node by @tip. */
void sq_piece_add_dart (SqPiece *piece, guint run, SqPoint tip);

/* Nodes and lengths of the runs, from the tags of the sew rings. */
void sq_piece_measure_runs (SqPiece *piece);
/* Area, and width and height across and along the grain, from the cut line. */
void sq_piece_measure (SqPiece *piece);
/* The cut line anew, with the darts there were, after runs of the sew line were cut in two. */
void sq_piece_remake_cut (SqPiece *piece);

/* All pieces have their marks: takes digests and shares what did not change. */
void sq_making_seal (SqMaking *making);
