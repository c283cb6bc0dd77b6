/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the values show of a way of building: what only it asks, and a welt. */
#include "window/figures.h"
#include "window/values-private.h"
#include "words/lengths.h"
#include "words/names.h"

#include <glib/gi18n.h>

static void
show_build (SqValues *values, const SqCushion *cushion, const SqChoices *choices)
{
  guint ways[] = { SQ_BUILD_BOXED,      SQ_BUILD_FOLDED_CORNER, SQ_BUILD_WRAPPED_FRONT,
                   SQ_BUILD_SPLIT_SIDE, SQ_BUILD_KNIFE_EDGE,    SQ_BUILD_BOLSTER };
  const char *names[G_N_ELEMENTS (ways)];
  G_STATIC_ASSERT (G_N_ELEMENTS (ways) == SQ_N_BUILDS);
  for (guint i = 0; i < SQ_N_BUILDS; i++)
    names[i] = sq_words_build ((SqBuild) ways[i]);
  sq_values_show_choice (values, cushion, SQ_CHOICE_BUILD, choices->build, ways, names,
                         SQ_N_BUILDS);
}

static void
show_wrap (SqValues *values, const SqCushion *cushion, const SqChoices *choices,
           const SqLengthStyle *style)
{
  guint styles[] = { SQ_WRAP_PLAIN, SQ_WRAP_MITRED };
  const char *names[] = { _ ("Plain"), _ ("Mitred") };
  gboolean is_folded = choices->build == SQ_BUILD_FOLDED_CORNER || sq_choices_is_mixed (choices);
  SqLengthStyle fine = sq_words_fine_style (choices->wrap_depth_mm, style);
  sq_values_set_used (values->choices[SQ_CHOICE_WRAP_STYLE], is_folded);
  sq_values_set_used (values->lengths[SQ_LENGTH_WRAP_DEPTH], is_folded);
  sq_values_show_choice (values, cushion, SQ_CHOICE_WRAP_STYLE, choices->wrap_style, styles, names,
                         G_N_ELEMENTS (styles));
  sq_values_show_length (values, cushion, SQ_LENGTH_WRAP_DEPTH, choices->wrap_depth_mm, &fine);
}

static void
show_profile (SqValues *values, const SqCushion *cushion, const SqChoices *choices,
              const SqLengthStyle *style)
{
  guint kinds[] = { SQ_PROFILE_SQUARE, SQ_PROFILE_HALF_ROUND, SQ_PROFILE_RADIUS };
  const char *names[G_N_ELEMENTS (kinds)];
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    names[i] = sq_words_profile ((SqProfile) kinds[i]);
  gboolean is_wrapped = choices->build == SQ_BUILD_WRAPPED_FRONT;
  sq_values_set_used (values->choices[SQ_CHOICE_PROFILE], is_wrapped);
  sq_values_set_used (values->lengths[SQ_LENGTH_PROFILE_RADIUS],
                      is_wrapped && choices->profile == SQ_PROFILE_RADIUS);
  sq_values_show_choice (values, cushion, SQ_CHOICE_PROFILE, choices->profile, kinds, names,
                         G_N_ELEMENTS (kinds));
  sq_values_show_length (values, cushion, SQ_LENGTH_PROFILE_RADIUS, choices->profile_radius_mm,
                         style);
}

static void
show_knife_edge (SqValues *values, const SqCover *cover, const SqChoices *choices,
                 const SqLengthStyle *style)
{
  guint fillings[] = { SQ_FILLING_SOFT, SQ_FILLING_FOAM_HALF_ROUND, SQ_FILLING_FOAM_SQUARE };
  const char *names[] = { _ ("Soft"), _ ("Foam, rounded edge"), _ ("Foam, square edge") };
  gboolean is_knife = choices->build == SQ_BUILD_KNIFE_EDGE;
  gboolean is_stuffed = is_knife && cover->stuffed.length_mm > 0;
  sq_values_set_used (values->choices[SQ_CHOICE_FILLING], is_knife);
  sq_values_set_used (values->lengths[SQ_LENGTH_DRAW_IN], is_knife);
  sq_values_set_used (values->texts[SQ_TEXT_STUFFED], is_stuffed);
  sq_values_set_used (values->texts[SQ_TEXT_INSERT], is_knife && cover->insert.length_mm > 0);
  sq_values_show_choice (values, cover->cushion, SQ_CHOICE_FILLING, choices->filling, fillings,
                         names, G_N_ELEMENTS (fillings));
  sq_values_show_length (values, cover->cushion, SQ_LENGTH_DRAW_IN, choices->draw_in_mm, style);
  sq_values_show_text (values, SQ_TEXT_STUFFED,
                       sq_figures_size (cover->stuffed.length_mm, cover->stuffed.depth_mm, style));
  sq_values_show_text (values, SQ_TEXT_INSERT,
                       sq_figures_size (cover->insert.length_mm, cover->insert.depth_mm, style));
}

static void
show_bolster (SqValues *values, const SqCushion *cushion, const SqChoices *choices,
              const SqLengthStyle *style)
{
  guint sections[] = { SQ_SECTION_ROUND, SQ_SECTION_HALF_ROUND, SQ_SECTION_D };
  const char *names[] = { _ ("Round"), _ ("Half-round"), _ ("D-shaped") };
  gboolean is_bolster = choices->build == SQ_BUILD_BOLSTER;
  sq_values_set_used (values->choices[SQ_CHOICE_SECTION], is_bolster);
  sq_values_set_used (values->lengths[SQ_LENGTH_BOLSTER_DIAMETER], is_bolster);
  sq_values_set_used (values->lengths[SQ_LENGTH_BOLSTER_LENGTH], is_bolster);
  sq_values_set_used (values->lengths[SQ_LENGTH_BOLSTER_RISE],
                      is_bolster && choices->bolster_section == SQ_SECTION_D);
  sq_values_show_choice (values, cushion, SQ_CHOICE_SECTION, choices->bolster_section, sections,
                         names, G_N_ELEMENTS (sections));
  sq_values_show_length (values, cushion, SQ_LENGTH_BOLSTER_DIAMETER, choices->bolster_diameter_mm,
                         style);
  sq_values_show_length (values, cushion, SQ_LENGTH_BOLSTER_LENGTH, choices->bolster_length_mm,
                         style);
  sq_values_show_length (values, cushion, SQ_LENGTH_BOLSTER_RISE, choices->bolster_rise_mm, style);
}

/* What any way may be asked. */
static void
show_common (SqValues *values, const SqCushion *cushion, const SqChoices *choices)
{
  guint answers[] = { FALSE, TRUE };
  const char *answer_names[] = { _ ("No"), _ ("Yes") };
  guint joins[] = { SQ_ACROSS_NONE, SQ_ACROSS_TWO_JOINS };
  const char *join_names[] = { _ ("None"), _ ("Two joins") };
  gboolean has_faces = choices->build != SQ_BUILD_BOLSTER
                       && choices->build != SQ_BUILD_WRAPPED_FRONT;
  sq_values_set_used (values->choices[SQ_CHOICE_REVERSIBLE], has_faces);
  sq_values_set_used (values->choices[SQ_CHOICE_SEAMS_ACROSS], choices->build != SQ_BUILD_BOLSTER);
  sq_values_show_choice (values, cushion, SQ_CHOICE_REVERSIBLE, choices->reversible ? 1 : 0,
                         answers, answer_names, G_N_ELEMENTS (answers));
  sq_values_show_choice (values, cushion, SQ_CHOICE_SEAMS_ACROSS, choices->seams_across, joins,
                         join_names, G_N_ELEMENTS (joins));
}

void
sq_values_show_way (SqValues *values, const SqCover *cover, const SqChoices *choices,
                    const SqLengthStyle *style)
{
  show_build (values, cover->cushion, choices);
  show_wrap (values, cover->cushion, choices, style);
  show_profile (values, cover->cushion, choices, style);
  sq_values_set_used (values->lengths[SQ_LENGTH_SPLIT_UPPER],
                      choices->build == SQ_BUILD_SPLIT_SIDE);
  sq_values_show_length (values, cover->cushion, SQ_LENGTH_SPLIT_UPPER, choices->split_upper_mm,
                         style);
  show_knife_edge (values, cover, choices, style);
  show_bolster (values, cover->cushion, choices, style);
  show_common (values, cover->cushion, choices);
}

static gboolean
takes_welt (const SqChoices *choices)
{
  return choices->build != SQ_BUILD_FOLDED_CORNER && choices->build != SQ_BUILD_WRAPPED_FRONT
         && !sq_choices_is_mixed (choices);
}

/* A boxed cover has two seams for it, others have one. */
static void
show_welt_at (SqValues *values, const SqCushion *cushion, const SqChoices *choices)
{
  guint at_boxed[] = { SQ_WELT_NONE, SQ_WELT_TOP, SQ_WELT_UNDERSIDE, SQ_WELT_BOTH };
  const char *names_boxed[] = { _ ("None"), _ ("Top"), _ ("Underside"), _ ("Top and underside") };
  guint at_other[] = { SQ_WELT_NONE, SQ_WELT_BOTH };
  const char *names_other[] = { _ ("None"), _ ("In the seam") };
  gboolean is_boxed = choices->build == SQ_BUILD_BOXED;
  SqWeltAt at = is_boxed || choices->welt_at == SQ_WELT_NONE ? choices->welt_at : SQ_WELT_BOTH;
  sq_values_show_choice (values, cushion, SQ_CHOICE_WELT_AT, at, is_boxed ? at_boxed : at_other,
                         is_boxed ? names_boxed : names_other, is_boxed ? 4 : 2);
}

void
sq_values_show_welt (SqValues *values, const SqCover *cover, const SqChoices *choices,
                     const SqLengthStyle *style)
{
  guint cuts[] = { SQ_WELT_STRAIGHT, SQ_WELT_BIAS };
  const char *names[] = { _ ("Straight"), _ ("On the bias") };
  gboolean has_welt = choices->welt_at != SQ_WELT_NONE;
  const SqWelt *welt = &cover->welt;
  SqLengthStyle fine = sq_words_fine_style (choices->welt_cord_mm, style);
  gtk_widget_set_visible (values->welt, takes_welt (choices));
  show_welt_at (values, cover->cushion, choices);
  sq_values_set_used (values->lengths[SQ_LENGTH_WELT_CORD], has_welt);
  sq_values_set_used (values->lengths[SQ_LENGTH_WELT_OVERLAP], has_welt);
  sq_values_set_used (values->choices[SQ_CHOICE_WELT_CUT], has_welt);
  sq_values_set_used (values->texts[SQ_TEXT_WELT_STRIPS], has_welt && welt->n_strips > 0);
  sq_values_show_length (values, cover->cushion, SQ_LENGTH_WELT_CORD, choices->welt_cord_mm, &fine);
  sq_values_show_length (values, cover->cushion, SQ_LENGTH_WELT_OVERLAP, choices->welt_overlap_mm,
                         style);
  sq_values_show_choice (values, cover->cushion, SQ_CHOICE_WELT_CUT,
                         welt->at != SQ_WELT_NONE ? welt->cut : choices->welt_cut, cuts, names,
                         G_N_ELEMENTS (cuts));
  if (!has_welt || welt->n_strips == 0)
    return;
  g_autofree char *wide = sq_words_figure (welt->strip_mm, style);
  /* Translators: how many strips of cloth go round a cord, and how wide they are cut. */
  sq_values_show_text (values, SQ_TEXT_WELT_STRIPS,
                       g_strdup_printf (_ ("%u, %s wide"), welt->n_strips, wide));
}
