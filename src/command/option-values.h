/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Values of options, each read into its place: FALSE with SQ_ERROR_USAGE where it can't be. Internal to
 * the room. */
#pragma once

#include "command/options.h"

/* Sets @error to @pattern about @argument, as it may be shown on a terminal. Gives FALSE. */
gboolean sq_options_refuse (GError **error, const char *pattern, const char *argument);

gboolean sq_option_flatten (SqOptions *options, const char *value, GError **error);
gboolean sq_option_paper (SqOptions *options, const char *value, GError **error);
gboolean sq_option_side (SqOptions *options, const char *value, GError **error);
gboolean sq_option_margin (SqOptions *options, const char *value, GError **error);
gboolean sq_option_overlap (SqOptions *options, const char *value, GError **error);
gboolean sq_option_lines (SqOptions *options, const char *value, GError **error);
gboolean sq_option_pieces (SqOptions *options, const char *value, GError **error);
gboolean sq_option_pages (SqOptions *options, const char *value, GError **error);
gboolean sq_option_label_sheet (SqOptions *options, const char *value, GError **error);
gboolean sq_option_skip_labels (SqOptions *options, const char *value, GError **error);
gboolean sq_option_date (SqOptions *options, const char *value, GError **error);
gboolean sq_option_seed (SqOptions *options, const char *value, GError **error);
gboolean sq_option_steps (SqOptions *options, const char *value, GError **error);
gboolean sq_option_seconds (SqOptions *options, const char *value, GError **error);
gboolean sq_option_threads (SqOptions *options, const char *value, GError **error);
gboolean sq_option_lay (SqOptions *options, const char *value, GError **error);
gboolean sq_option_cut_of (SqOptions *options, const char *value, GError **error);
gboolean sq_option_cut_lines (SqOptions *options, const char *value, GError **error);
gboolean sq_option_dxf_release (SqOptions *options, const char *value, GError **error);
gboolean sq_option_dxf_layers (SqOptions *options, const char *value, GError **error);
