/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/names.h"

const char *const sq_unit_names[] = { "in", "mm", "cm", NULL };
const char *const sq_build_names[] = {
  "folded-corner", "boxed", "wrapped-front", "split-side", "knife-edge", "bolster", NULL
};
const char *const sq_edge_kind_names[] = { "free", "wall",      "well",      "hull-lining",
                                           "arm",  "neighbour", "lid-hinge", NULL };
const char *const sq_wrap_style_names[] = { "plain", "mitred", NULL };
const char *const sq_edge_build_names[] = { "folded", "boxed", "open", NULL };
const char *const sq_zip_place_names[] = { "none",      "boxing", "underside", "back-seam",
                                           "side-seam", "tube",   NULL };
const char *const sq_zip_method_names[] = { "slit-in", "two-part", NULL };
const char *const sq_welt_at_names[] = { "none", "top", "underside", "both", NULL };
const char *const sq_welt_cut_names[] = { "straight", "bias", NULL };
const char *const sq_profile_names[] = { "square", "half-round", "radius", NULL };
const char *const sq_section_names[] = { "round", "half-round", "d", NULL };
const char *const sq_filling_names[] = { "soft", "foam-half-round", "foam-square", NULL };
const char *const sq_seams_across_names[] = { "none", "two", NULL };
const char *const sq_foam_kind_names[] = { "seat",        "firm",   "fast-draining",
                                           "closed-cell", "bonded", NULL };
const char *const sq_hand_names[] = { "as-drawn", "mirrored", "pair", NULL };
const char *const sq_stripes_run_names[] = { "front-to-back", "side-to-side", NULL };
const char *const sq_centre_on_names[] = { "stripe", "gap", "motif", "none", NULL };
const char *const sq_cloth_class_names[] = { "canvas", "upholstery", "loose-weave", "velvet",
                                             "vinyl",  "stretch",    "mesh",        NULL };
const char *const sq_stock_kind_names[] = { "bolt", "remnant", NULL };
const char *const sq_cuts_names[] = { "by-rule", "free", "straight", NULL };
const char *const sq_piece_role_names[] = { "face", "underside", "boxing", "zip-strip",
                                            "welt", "wrap",      "side",   "disc",
                                            "tube", "let-in",    NULL };
const char *const sq_sheet_names[] = { "a4",     "a3",     "a2",     "a1",     "a0", "letter",
                                       "ansi-b", "ansi-c", "ansi-d", "ansi-e", NULL };
const char *const sq_rate_names[] = { "wage", "cut",  "sew",      "corner", "zip",
                                      "welt", "foam", "handling", NULL };

const char *const sq_paper_kind_names[] = { "cut-list", "layout",  "marking", "tickets",
                                            "labels",   "pattern", NULL };
const char *const sq_pattern_lines_names[] = { "both", "cut", "sew", NULL };
const char *const sq_marked_on_names[] = { "right", "wrong", NULL };
const char *const sq_unlaid_why_names[] = { "too-wide", "pattern", "no-room", "crosses", NULL };

#define N_LETTERS 26

char *
sq_revision_name (guint revision)
{
  GString *name = g_string_new (NULL);

  for (guint rest = revision; rest > 0; rest = (rest - 1) / N_LETTERS)
    g_string_prepend_c (name, (char) ('A' + (rest - 1) % N_LETTERS));
  return g_string_free (name, FALSE);
}

guint
sq_revision_of_name (const char *name)
{
  guint revision = 0;

  for (; g_ascii_isupper (*name) && revision <= SQ_MOST_REVISION; name++)
    revision = revision * N_LETTERS + (guint) (*name - 'A') + 1;
  return *name == '\0' && revision <= SQ_MOST_REVISION ? revision : 0;
}
