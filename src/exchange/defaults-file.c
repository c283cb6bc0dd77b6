/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/defaults-file.h"

#include "base/error.h"
#include "exchange/fields.h"
#include "job/names.h"

#include <math.h>

#define FORMAT "squab defaults"
#define VERSION 1

/* data/defaults.json, put into the program when it is built. */
extern const char sq_defaults_text[];

/* Every field must be there: @kind_of of a field, and its member of SqDefaults. */
#define FIELD(name, kind_of, member, ...)                                                          \
  {                                                                                                \
    .key = name, .kind = kind_of, .offset = G_STRUCT_OFFSET (SqDefaults, member),                  \
    .need = SQ_FIELD_REQUIRED, __VA_ARGS__                                                         \
  }
#define LENGTH(name, member) FIELD (name, SQ_FIELD_LENGTH, member, )
#define NUMBER(name, member) FIELD (name, SQ_FIELD_NUMBER, member, )
#define WORD(name, member, list) FIELD (name, SQ_FIELD_WORD, member, .words = list)
#define COLOUR(name, member) FIELD (name, SQ_FIELD_COLOUR, member, )
#define STEPS(name, reader)                                                                        \
  {                                                                                                \
    .key = name, .kind = SQ_FIELD_OWN, .need = SQ_FIELD_REQUIRED, .read = reader                   \
  }
#define NOTE                                                                                       \
  {                                                                                                \
    .key = "note", .kind = SQ_FIELD_SKIPPED                                                        \
  }
#define BY_EDGE_KIND(member)                                                                       \
  NOTE, LENGTH ("free", member[SQ_EDGE_FREE]), LENGTH ("wall", member[SQ_EDGE_WALL]),              \
      LENGTH ("well", member[SQ_EDGE_WELL]), LENGTH ("hull-lining", member[SQ_EDGE_HULL_LINING]),  \
      LENGTH ("arm", member[SQ_EDGE_ARM]), LENGTH ("neighbour", member[SQ_EDGE_NEIGHBOUR]),        \
      LENGTH ("lid-hinge", member[SQ_EDGE_LID_HINGE])
#define BY_CLOTH_CLASS(member)                                                                     \
  NOTE, LENGTH ("canvas", member[SQ_CLOTH_CANVAS]),                                                \
      LENGTH ("upholstery", member[SQ_CLOTH_UPHOLSTERY]),                                          \
      LENGTH ("loose-weave", member[SQ_CLOTH_LOOSE_WEAVE]),                                        \
      LENGTH ("velvet", member[SQ_CLOTH_VELVET]), LENGTH ("vinyl", member[SQ_CLOTH_VINYL]),        \
      LENGTH ("stretch", member[SQ_CLOTH_STRETCH]), LENGTH ("mesh", member[SQ_CLOTH_MESH])

/* A group of the file, its fields given as a list. */
#define GROUP(name, ...)                                                                           \
  static const SqField name##_fields[] = { __VA_ARGS__ };                                          \
  static const SqFields name = { .fields = name##_fields, .n_fields = G_N_ELEMENTS (name##_fields) }
#define PART(name, group)                                                                          \
  {                                                                                                \
    .key = name, .kind = SQ_FIELD_PART, .need = SQ_FIELD_REQUIRED, .part = &group                  \
  }

static gboolean read_notch_steps (const SqJson *json, guint token, gpointer record, GError **error);
static gboolean read_oversize_steps (const SqJson *json, guint token, gpointer record,
                                     GError **error);

GROUP (cushion, NOTE, WORD ("build", build, sq_build_names), LENGTH ("thickness", thickness_mm));
GROUP (step, NOTE, LENGTH ("inch", step_in_mm), LENGTH ("metric", step_mm_mm));
GROUP (clearance, BY_EDGE_KIND (clearance_mm));
GROUP (clearance_metric, BY_EDGE_KIND (clearance_metric_mm));
GROUP (wall_soft, NOTE, LENGTH ("clearance", wall_clearance_soft_mm),
       LENGTH ("over", wall_soft_over_mm));
GROUP (allowances, NOTE, LENGTH ("corner", corner_allowance_mm), LENGTH ("zip", zip_allowance_mm),
       LENGTH ("join", join_allowance_mm), LENGTH ("hem", hem_allowance_mm),
       LENGTH ("folded_perimeter", folded_perimeter_mm));
GROUP (boxed_perimeter, BY_CLOTH_CLASS (boxed_perimeter_mm));
GROUP (folded, NOTE, LENGTH ("wrap_depth", wrap_depth_mm),
       LENGTH ("wrap_plain_most", wrap_plain_warn_mm),
       LENGTH ("wrap_mitred_from", wrap_mitred_from_mm),
       LENGTH ("notch_leg_least", notch_leg_least_mm), LENGTH ("let_in_clear", let_in_clear_mm));
GROUP (zip, NOTE, LENGTH ("extension", zip_extension_mm), LENGTH ("tuck", zip_tuck_mm),
       LENGTH ("boxing_least", zip_boxing_least_mm), LENGTH ("return_least", return_least_mm),
       LENGTH ("return_most", return_most_mm), NUMBER ("return_most_share", return_most_share),
       LENGTH ("seam_clear", zip_seam_clear_mm), NUMBER ("across_share", zip_third_share),
       NUMBER ("middle_ratio", zip_middle_ratio), LENGTH ("middle_under", zip_middle_under_mm),
       LENGTH ("two_sliders_over", two_sliders_over_mm));
GROUP (boxing, NOTE, LENGTH ("plain_most", boxing_plain_most_mm),
       LENGTH ("join_clear", join_clear_mm),
       NUMBER ("join_front_free_share", join_front_free_share));
GROUP (welt, NOTE, LENGTH ("cord", welt_cord_mm), LENGTH ("overlap", welt_overlap_mm),
       LENGTH ("bias_under", welt_bias_under_mm), LENGTH ("medium_cord", welt_medium_cord_mm),
       LENGTH ("medium_radius", welt_medium_radius_mm), LENGTH ("thick_cord", welt_thick_cord_mm),
       LENGTH ("thick_radius", welt_thick_radius_mm));
GROUP (welt_least_radius, BY_CLOTH_CLASS (welt_least_radius_mm));
GROUP (knife_edge, NOTE, LENGTH ("draw_in", draw_in_mm), LENGTH ("taper_most", draw_in_most_mm),
       NUMBER ("taper_share", draw_in_share), NUMBER ("least_turn", draw_in_least_turn_deg),
       LENGTH ("insert_larger", insert_larger_mm));
GROUP (clips, NOTE, LENGTH ("off", clip_off_mm), LENGTH ("short", clip_short_mm),
       LENGTH ("most", clip_most_mm));
GROUP (notches, NOTE, LENGTH ("depth", notch_depth_mm), NUMBER ("most_share", notch_most_share),
       LENGTH ("straight_over", notch_straight_over_mm),
       LENGTH ("straight_spacing", notch_straight_spacing_mm), STEPS ("curves", read_notch_steps));
GROUP (foam, NOTE, WORD ("material", foam_kind, sq_foam_kind_names),
       NUMBER ("density", foam_density_kg_m3), NUMBER ("firm_ifd", foam_firm_ifd_n),
       STEPS ("oversize_seat", read_oversize_steps), LENGTH ("oversize_firm", oversize_firm_mm),
       LENGTH ("oversize_stiff", oversize_stiff_mm), LENGTH ("sheet_length", foam_sheet_length_mm),
       LENGTH ("sheet_width", foam_sheet_width_mm), LENGTH ("kerf", foam_kerf_mm));
GROUP (cloth, NOTE, WORD ("class", cloth_class, sq_cloth_class_names),
       LENGTH ("width", cloth_width_mm), COLOUR ("colour", cloth_colour));
GROUP (cloth_thickness, BY_CLOTH_CLASS (cloth_thickness_mm));
GROUP (stripes, NOTE, WORD ("run", stripes_run, sq_stripes_run_names),
       WORD ("centre_on", centre_on, sq_centre_on_names));
GROUP (pattern, NOTE, LENGTH ("margin", pattern_margin_mm), LENGTH ("overlap", pattern_overlap_mm));
GROUP (labels, NOTE, FIELD ("columns", SQ_FIELD_COUNT, labels.columns, ),
       FIELD ("rows", SQ_FIELD_COUNT, labels.rows, ), LENGTH ("side", labels.side_mm),
       LENGTH ("top", labels.top_mm), LENGTH ("across", labels.across_mm),
       LENGTH ("along", labels.along_mm));
GROUP (rates, NOTE, NUMBER ("wage", rates.of[SQ_RATE_WAGE]), NUMBER ("cut", rates.of[SQ_RATE_CUT]),
       NUMBER ("sew", rates.of[SQ_RATE_SEW]), NUMBER ("corner", rates.of[SQ_RATE_CORNER]),
       NUMBER ("zip", rates.of[SQ_RATE_ZIP]), NUMBER ("welt", rates.of[SQ_RATE_WELT]),
       NUMBER ("foam", rates.of[SQ_RATE_FOAM]), NUMBER ("handling", rates.of[SQ_RATE_HANDLING]));
GROUP (whole, NOTE, { .key = "format", .kind = SQ_FIELD_SKIPPED },
       { .key = "version", .kind = SQ_FIELD_SKIPPED }, PART ("cushion", cushion),
       PART ("step", step), PART ("clearance", clearance),
       PART ("clearance_metric", clearance_metric), PART ("wall_soft", wall_soft),
       PART ("allowances", allowances), PART ("boxed_perimeter", boxed_perimeter),
       PART ("folded", folded), PART ("zip", zip), PART ("boxing", boxing), PART ("welt", welt),
       PART ("welt_least_radius", welt_least_radius), PART ("knife_edge", knife_edge),
       PART ("clips", clips), PART ("notches", notches), PART ("foam", foam), PART ("cloth", cloth),
       PART ("cloth_thickness", cloth_thickness), PART ("stripes", stripes),
       PART ("pattern", pattern), PART ("labels", labels), PART ("rates", rates));

/* Steps of tables: the records are the steps themselves. */
static const SqField notch_step_fields[] = {
  { "over_radius", SQ_FIELD_LENGTH, G_STRUCT_OFFSET (SqNotchStep, over_radius_mm),
    .need = SQ_FIELD_REQUIRED },
  { "spacing", SQ_FIELD_LENGTH, G_STRUCT_OFFSET (SqNotchStep, spacing_mm),
    .need = SQ_FIELD_REQUIRED },
};
static const SqFields notch_step = { .fields = notch_step_fields,
                                     .n_fields = G_N_ELEMENTS (notch_step_fields) };
static const SqField oversize_step_fields[] = {
  { "up_to", SQ_FIELD_LENGTH, G_STRUCT_OFFSET (SqOversizeStep, up_to_mm),
    .need = SQ_FIELD_OPTIONAL },
  { "oversize", SQ_FIELD_LENGTH, G_STRUCT_OFFSET (SqOversizeStep, oversize_mm),
    .need = SQ_FIELD_REQUIRED },
};
static const SqFields oversize_step = { .fields = oversize_step_fields,
                                        .n_fields = G_N_ELEMENTS (oversize_step_fields) };

/* Reads the list @token, 1 … @most objects, into @records of @size bytes each. */
static gboolean
read_steps (const SqFields *fields, const SqJson *json, guint token, char *records, gsize size,
            guint most, guint *n, GError **error)
{
  if (!sq_read_kind (json, token, SQ_JSON_ARRAY, error))
    return FALSE;
  *n = 0;
  for (guint at = token + 1; at < json->tokens[token].next; at = json->tokens[at].next, ++*n)
    if (*n == most)
      return sq_refuse (json, at, error, "one step too many");
    else if (!sq_fields_read (fields, json, at, records + *n * size, error))
      return FALSE;
  return *n > 0 || sq_refuse (json, token, error, "no steps");
}

static gboolean
read_notch_steps (const SqJson *json, guint token, gpointer record, GError **error)
{
  SqDefaults *defaults = record;

  return read_steps (&notch_step, json, token, (char *) defaults->notch_steps, sizeof (SqNotchStep),
                     G_N_ELEMENTS (defaults->notch_steps), &defaults->n_notch_steps, error);
}

/* The last step has no end. */
static gboolean
read_oversize_steps (const SqJson *json, guint token, gpointer record, GError **error)
{
  SqDefaults *defaults = record;

  if (!read_steps (&oversize_step, json, token, (char *) defaults->oversize_seat,
                   sizeof (SqOversizeStep), G_N_ELEMENTS (defaults->oversize_seat),
                   &defaults->n_oversize_seat, error))
    return FALSE;
  defaults->oversize_seat[defaults->n_oversize_seat - 1].up_to_mm = INFINITY;
  return TRUE;
}

gboolean
sq_defaults_read (const char *text, gssize length, SqDefaults *defaults, GError **error)
{
  g_autoptr (SqJson) json = sq_json_scan (text, length, error);
  SqDefaults read = { 0 };

  if (json == NULL || !sq_check_format (json, FORMAT, VERSION, error)
      || !sq_fields_read (&whole, json, 0, &read, error))
    return FALSE;
  *defaults = read;
  return TRUE;
}

void
sq_defaults_builtin (SqDefaults *defaults)
{
  g_autoptr (GError) error = NULL;

  if (!sq_defaults_read (sq_defaults_text, -1, defaults, &error))
    g_error ("the defaults compiled in: %s", error->message);
}
