/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What holds where the maker has not said otherwise: common practice of the trade, no source
 * unless data/defaults.json names one. A value like any other: the job carries it, the core never
 * reads a file. */
#pragma once

#include "job/cushion.h"
#include "job/papers.h"
#include "job/rates.h"

typedef struct
{
  double up_to_mm;    /* larger extent of the finished outline */
  double oversize_mm; /* in all, both sides together */
} SqOversizeStep;

/* Notches at most spacing_mm apart on curves of radius above over_radius_mm. */
typedef struct
{
  double over_radius_mm, spacing_mm;
} SqNotchStep;

typedef struct
{
  SqBuild build;
  double thickness_mm;
  double step_in_mm, step_mm_mm; /* grid and nudge for jobs in inches, in mm and cm */

  /* seat to outline */
  double clearance_mm[SQ_N_EDGE_KINDS];        /* kept from inch values */
  double clearance_metric_mm[SQ_N_EDGE_KINDS]; /* what a new metric job writes into its edges */
  double wall_clearance_soft_mm; /* at a wall, with batting or soft foam thicker than … */
  double wall_soft_over_mm;

  /* allowances */
  double corner_allowance_mm, zip_allowance_mm, join_allowance_mm, hem_allowance_mm;
  double folded_perimeter_mm;
  double boxed_perimeter_mm[SQ_N_CLOTH_CLASSES];

  /* folded corners */
  double wrap_depth_mm;
  double wrap_plain_warn_mm;  /* a plain wrap deeper than this gets a warning */
  double wrap_mitred_from_mm; /* from here the style is mitred */
  double notch_leg_least_mm;  /* less leg than this is sewn as a dart */
  double let_in_clear_mm;     /* between cut corners of skirts that give way */

  /* zip */
  double zip_extension_mm, zip_tuck_mm;
  double zip_boxing_least_mm; /* lower boxings take the zip in the underside */
  double return_least_mm, return_most_mm, return_most_share; /* round the back corners */
  double zip_seam_clear_mm;                     /* from the ends of the edge, in a seam */
  double zip_third_share;                       /* where across an underside */
  double zip_middle_ratio, zip_middle_under_mm; /* nearly square and small: in the middle */
  double two_sliders_over_mm;

  /* boxing */
  double boxing_plain_most_mm; /* strips of plain cloth along the roll */
  double join_clear_mm; /* joins at a corner or this far from one, from zip ends, from others */
  double join_front_free_share; /* this middle share of the front takes no join */

  /* welts */
  double welt_cord_mm, welt_overlap_mm;
  double welt_bias_under_mm;                         /* curves tighter than this take bias strips */
  double welt_least_radius_mm[SQ_N_CLOTH_CLASSES];   /* of a corner, by cloth … */
  double welt_medium_cord_mm, welt_medium_radius_mm; /* … and from these cords on */
  double welt_thick_cord_mm, welt_thick_radius_mm;

  /* knife edges */
  double draw_in_mm, draw_in_most_mm, draw_in_share; /* taper: this share of the edge, at most … */
  double draw_in_least_turn_deg;                     /* corners that turn less stay as they are */
  double insert_larger_mm;                           /* soft filling, each way */

  /* clips */
  double clip_off_mm;   /* from round, between two of them */
  double clip_short_mm; /* of the sew line */
  double clip_most_mm;  /* curves that would take them farther apart take none */

  /* notches */
  double notch_depth_mm, notch_most_share; /* never over this share of the allowance */
  double notch_straight_over_mm, notch_straight_spacing_mm;
  SqNotchStep notch_steps[4];
  guint n_notch_steps;

  /* foam */
  SqFoamKind foam_kind;
  double foam_density_kg_m3, foam_firm_ifd_n;
  SqOversizeStep oversize_seat[4];
  guint n_oversize_seat;
  double oversize_firm_mm;  /* firm, fast-draining */
  double oversize_stiff_mm; /* closed-cell, bonded, under cloth without stretch (vinyl) */
  double foam_sheet_length_mm, foam_sheet_width_mm;
  double foam_kerf_mm; /* what a saw takes between two parts */

  /* cloth */
  SqClothClass cloth_class;
  double cloth_width_mm;
  double cloth_thickness_mm[SQ_N_CLOTH_CLASSES];
  guint32 cloth_colour;

  /* stripes */
  SqStripesRun stripes_run;
  SqCentreOn centre_on;

  /* papers */
  double pattern_margin_mm, pattern_overlap_mm;
  SqLabelSheet labels;

  SqRates rates; /* samples, nobody's figures */
} SqDefaults;
