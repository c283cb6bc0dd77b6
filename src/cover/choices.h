/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The maker's choices with everything filled in that was not given: what kind, way of building,
 * cloth class and defaults say. The window shows them where nothing was given. */
#pragma once

#include "cover/problem.h"

/* A cloth as far as the cover needs it. */
typedef struct
{
  SqId id;
  SqClothClass kind;
  double width_mm, thickness_mm;
  gboolean one_way, up_is_start;
  gboolean phase_across, phase_along;
  gboolean half_turn;      /* pattern allows it */
  double centre_across_mm; /* of what is centred */
  double centre_along_mm;
  double repeat_across_mm; /* 0: none */
} SqClothChoice;

typedef struct
{
  const SqCushion *cushion;
  const SqDefaults *house;
  const SqOutline *outline; /* the seat this cover is for: as drawn, or mirrored */
  gboolean mirrored;        /* edges then start where they end in the seat as drawn */
  SqBuild build;
  double thickness_mm;
  double wrap_depth_mm;
  SqWrapStyle wrap_style;
  double corner_mm, perimeter_mm, zip_mm, join_mm; /* allowances */
  SqFoamKind foam_kind;
  double foam_density_kg_m3, batting_mm;
  gboolean foam_folds;
  SqZipPlace zip_place;
  SqZipMethod zip_method;
  double zip_extension_mm, zip_tuck_mm;
  SqWeltAt welt_at;
  double welt_cord_mm, welt_overlap_mm;
  SqWeltCut welt_cut; /* as given, or by cloth; curves may ask for bias all the same */
  SqProfile profile;
  double profile_radius_mm;
  SqBolsterSection bolster_section;
  double bolster_diameter_mm, bolster_rise_mm; /* 0: not given */
  double bolster_length_mm; /* as given, or the seat's along its front; 0: neither */
  double split_upper_mm;
  SqFilling filling;
  double draw_in_mm;
  gboolean reversible;
  SqSeamsAcross seams_across;
  SqClothChoice face, underside, sides, welt;
  SqStripesRun stripes_run;
  double stripes_shift_mm;
  SqCentreOn centre_on;
} SqChoices;

/* Fills @choices (borrows from @job, @cushion and @outline, the seat of this cover) and appends to @problems (of SqProblem) what is
 * wrong with values by themselves; figures that can't be used are replaced by defaults. FALSE if
 * nothing can be built (thickness). */
gboolean sq_choices_resolve (const SqJob *job, const SqCushion *cushion, const SqOutline *outline,
                             gboolean mirrored, SqChoices *choices, GArray *problems);

/* Where a cover built as @build may have its zip: a bit (1 << place) of each SqZipPlace. */
guint sq_choices_zip_places (SqBuild build);

/* Whether the seam at the top (or at the underside) of a boxing has a welt in it. */
gboolean sq_choices_has_welt (const SqChoices *choices, gboolean at_top);

/* What stays free at the edge of @corner: as given, or by kind. */
double sq_choices_clearance_mm (const SqChoices *choices, const SqCorner *corner);
/* Whether the edge of @corner is seen: as given, or by kind. */
gboolean sq_choices_seen (const SqCorner *corner);
/* How the side below the edge of @corner is built. Only folded and boxed covers mix. */
SqEdgeBuild sq_choices_edge_build (const SqChoices *choices, const SqCorner *corner);
/* Whether some sides of the outer ring are asked to be folded or boxed by themselves. */
gboolean sq_choices_is_mixed (const SqChoices *choices);
/* How much larger the foam is cut than the outline, in all, given the outline's larger extent. */
double sq_choices_oversize_mm (const SqChoices *choices, double extent_mm);
