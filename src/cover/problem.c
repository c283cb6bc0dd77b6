/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/report.h"

static const char *const code_names[SQ_N_PROBLEM_CODES] = {
  [SQ_PROBLEM_OUTLINE_MISSING] = "outline-missing",
  [SQ_PROBLEM_OUTLINE_CROSSES] = "outline-crosses",
  [SQ_PROBLEM_OUTLINE_EMPTY] = "outline-empty",
  [SQ_PROBLEM_EDGE_TOO_SHORT] = "edge-too-short",
  [SQ_PROBLEM_CURVE_UNFIT] = "curve-unfit",
  [SQ_PROBLEM_THICKNESS] = "thickness",
  [SQ_PROBLEM_ALLOWANCE] = "allowance",
  [SQ_PROBLEM_RADIUS_TOO_LARGE] = "radius-too-large",
  [SQ_PROBLEM_CLEARANCE_TOO_LARGE] = "clearance-too-large",
  [SQ_PROBLEM_HOLE_OUTSIDE] = "hole-outside",
  [SQ_PROBLEM_HOLES_MEET] = "holes-meet",
  [SQ_PROBLEM_HOLE_IN_FOLDED] = "hole-in-folded",
  [SQ_PROBLEM_CURVE_IN_FOLDED] = "curve-in-folded",
  [SQ_PROBLEM_REFLEX_IN_FOLDED] = "reflex-in-folded",
  [SQ_PROBLEM_NOTCH_IS_DART] = "notch-is-dart",
  [SQ_PROBLEM_WRAP_SLACK] = "wrap-slack",
  [SQ_PROBLEM_WRAP_TOO_DEEP] = "wrap-too-deep",
  [SQ_PROBLEM_ZIP_EDGE_MISSING] = "zip-edge-missing",
  [SQ_PROBLEM_ZIP_NO_PLACE] = "zip-no-place",
  [SQ_PROBLEM_ZIP_BOXING_LOW] = "zip-boxing-low",
  [SQ_PROBLEM_ZIP_ALL_SEEN] = "zip-all-seen",
  [SQ_PROBLEM_ZIP_FOLD_FOAM] = "zip-fold-foam",
  [SQ_PROBLEM_ZIP_TOO_SHORT] = "zip-too-short",
  [SQ_PROBLEM_ZIP_TOO_LONG] = "zip-too-long",
  [SQ_PROBLEM_ZIP_OUTSIDE] = "zip-outside",
  [SQ_PROBLEM_ZIP_ACROSS_HOLE] = "zip-across-hole",
  [SQ_PROBLEM_NO_ZIP] = "no-zip",
  [SQ_PROBLEM_JOIN_NO_ROOM] = "join-no-room",
  [SQ_PROBLEM_BOXING_TOO_SHORT] = "boxing-too-short",
  [SQ_PROBLEM_WIDER_THAN_CLOTH] = "wider-than-cloth",
  [SQ_PROBLEM_CLOTH_MISSING] = "cloth-missing",
  [SQ_PROBLEM_CUT_SPLIT] = "cut-split",
  [SQ_PROBLEM_REFLEX_CLIP] = "reflex-clip",
  [SQ_PROBLEM_STRIPES_SLANT] = "stripes-slant",
  [SQ_PROBLEM_SKIRTS_FOLLOW] = "skirts-follow",
  [SQ_PROBLEM_HOLE_NOT_BUILT] = "hole-not-built",
  [SQ_PROBLEM_CORNER_NOT_BUILT] = "corner-not-built",
  [SQ_PROBLEM_WELT_THICK] = "welt-thick",
  [SQ_PROBLEM_WELT_TIGHT] = "welt-tight",
  [SQ_PROBLEM_WELT_VINYL_BIAS] = "welt-vinyl-bias",
  [SQ_PROBLEM_PROFILE_RADIUS] = "profile-radius",
  [SQ_PROBLEM_FRONT_CURVED] = "front-curved",
  [SQ_PROBLEM_SIDE_TURNS_BACK] = "side-turns-back",
  [SQ_PROBLEM_SPLIT_OUTSIDE] = "split-outside",
  [SQ_PROBLEM_DRAW_IN_MEETS] = "draw-in-meets",
  [SQ_PROBLEM_STUFFED_SMALLER] = "stuffed-smaller",
  [SQ_PROBLEM_BOLSTER_DIAMETER] = "bolster-diameter",
  [SQ_PROBLEM_BOLSTER_LENGTH] = "bolster-length",
  [SQ_PROBLEM_BOLSTER_RISE] = "bolster-rise",
  [SQ_PROBLEM_SKIRTS_MEET] = "skirts-meet",
  [SQ_PROBLEM_LET_IN_NO_ROOM] = "let-in-no-room",
  [SQ_PROBLEM_EDGE_BUILD_UNUSED] = "edge-build-unused",
  [SQ_PROBLEM_ONE_RIGHT_WAY] = "one-right-way",
  [SQ_PROBLEM_ACROSS_NO_PLACE] = "across-no-place",
  [SQ_PROBLEM_WRAP_NOT_MITRED] = "wrap-not-mitred",
  [SQ_PROBLEM_EDGE_NOT_OPEN] = "edge-not-open",
  [SQ_PROBLEM_WELT_NOT_TAKEN] = "welt-not-taken",
  [SQ_PROBLEM_ZIP_NOT_PARTED] = "zip-not-parted",
};

const char *
sq_problem_code_name (SqProblemCode code)
{
  g_return_val_if_fail (code < SQ_N_PROBLEM_CODES, NULL);
  return code_names[code];
}

const char *
sq_severity_name (SqSeverity severity)
{
  static const char *const names[] = { "note", "warning", "error" };
  g_return_val_if_fail (severity < G_N_ELEMENTS (names), NULL);
  return names[severity];
}

static SqProblem *
append (GArray *problems, SqProblemCode code, SqSeverity severity, SqPlace place)
{
  SqProblem p = { .code = code, .severity = severity, .place = place };
  g_array_append_val (problems, p);
  return &g_array_index (problems, SqProblem, problems->len - 1);
}

SqProblem *
sq_report_cushion (GArray *problems, SqProblemCode code, SqSeverity severity,
                   const SqCushion *cushion)
{
  return append (problems, code, severity, (SqPlace){ SQ_AT_CUSHION, cushion->id, 0, NULL });
}

SqProblem *
sq_report_corner (GArray *problems, SqProblemCode code, SqSeverity severity,
                  const SqCushion *cushion, SqId corner)
{
  return append (problems, code, severity, (SqPlace){ SQ_AT_CORNER, cushion->id, corner, NULL });
}

SqProblem *
sq_report_edge (GArray *problems, SqProblemCode code, SqSeverity severity, const SqCushion *cushion,
                SqId edge)
{
  return append (problems, code, severity, (SqPlace){ SQ_AT_EDGE, cushion->id, edge, NULL });
}

SqProblem *
sq_report_piece (GArray *problems, SqProblemCode code, SqSeverity severity,
                 const SqCushion *cushion, guint piece)
{
  return append (problems, code, severity, (SqPlace){ SQ_AT_PIECE, cushion->id, piece, NULL });
}

SqProblem *
sq_report_key (GArray *problems, SqProblemCode code, SqSeverity severity, const SqCushion *cushion,
               const char *key)
{
  return append (problems, code, severity, (SqPlace){ SQ_AT_KEY, cushion->id, 0, key });
}
