/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the choices of a job are called in files: words in the order of their enums, NULL at the
 * end. Never shown to a person; src/words has those. */
#pragma once

#include "job/cushion.h"

extern const char *const sq_unit_names[];
extern const char *const sq_build_names[];
extern const char *const sq_edge_kind_names[];
extern const char *const sq_wrap_style_names[];
extern const char *const sq_edge_build_names[];
extern const char *const sq_zip_place_names[];
extern const char *const sq_zip_method_names[];
extern const char *const sq_welt_at_names[];
extern const char *const sq_welt_cut_names[];
extern const char *const sq_profile_names[];
extern const char *const sq_section_names[];
extern const char *const sq_filling_names[];
extern const char *const sq_seams_across_names[];
extern const char *const sq_foam_kind_names[];
extern const char *const sq_hand_names[];
extern const char *const sq_stripes_run_names[];
extern const char *const sq_centre_on_names[];
extern const char *const sq_cloth_class_names[];
extern const char *const sq_stock_kind_names[];
extern const char *const sq_cuts_names[];
/* Of pieces of a cover, in the order of SqPieceRole. */
extern const char *const sq_piece_role_names[];
extern const char *const sq_sheet_names[];
extern const char *const sq_paper_kind_names[];
extern const char *const sq_pattern_lines_names[];
extern const char *const sq_marked_on_names[]; /* of a cloth's sides */
extern const char *const sq_rate_names[];
/* Why a piece could not be laid, in the order of SqUnlaidWhy. */
extern const char *const sq_unlaid_why_names[];

/* What a revision of papers is called, from 1: A, B … Z, AA … ; never translated. New text. */
char *sq_revision_name (guint revision);
/* The way back; 0 where @name is none, or beyond SQ_MOST_REVISION. */
guint sq_revision_of_name (const char *name);
#define SQ_MOST_REVISION 18278 /* ZZZ */

static inline const char *
sq_build_name (SqBuild build)
{
  return sq_build_names[build];
}

static inline const char *
sq_zip_place_name (SqZipPlace place)
{
  return sq_zip_place_names[place];
}

static inline const char *
sq_hand_name (SqHand hand)
{
  return sq_hand_names[hand];
}

static inline const char *
sq_foam_kind_name (SqFoamKind kind)
{
  return sq_foam_kind_names[kind];
}
