/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the values show of a cover: what was given, and what follows where nothing was. */
#include "window/values-private.h"

#include "cover/choices.h"
#include "job/frame.h"
#include "window/cloth-row.h"
#include "window/figures.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

void
sq_values_show_length (SqValues *values, const SqCushion *cushion, SqLengthValue i, double mm,
                       const SqLengthStyle *style)
{
  sq_value_row_show_length (values->lengths[i], mm, style, sq_edit_length_is_given (cushion, i));
}

/* Allowances matter to a fraction of a millimetre. */
static void
show_fine (SqValues *values, const SqCushion *cushion, SqLengthValue i, double mm,
           const SqLengthStyle *style)
{
  SqLengthStyle fine = sq_words_fine_style (mm, style);
  sq_values_show_length (values, cushion, i, mm, &fine);
}

void
sq_values_show_choice (SqValues *values, const SqCushion *cushion, SqChoiceValue i, guint value,
                       const guint *offered, const char *const *names, guint n)
{
  sq_value_row_show_choice (values->choices[i], value, offered, names, n,
                            sq_edit_choice_is_given (cushion, i));
}

void
sq_values_show_text (SqValues *values, SqValueText i, char *text)
{
  sq_value_row_show_text (values->texts[i], text);
  g_free (text);
}

void
sq_values_set_used (SqValueRow *row, gboolean is_used)
{
  gtk_widget_set_visible (GTK_WIDGET (row), is_used);
}

static void
show_size (SqValues *values, const SqCover *cover, const SqChoices *choices,
           const SqLengthStyle *style)
{
  double width, depth;
  gboolean has_extents = sq_outline_n_rings (cover->cushion->outline) > 0
                         && sq_outline_extents_mm (cover->cushion->outline, &width, &depth);
  SqVector finished = sq_figures_finished_extent (cover);
  sq_values_show_length (values, cover->cushion, SQ_LENGTH_THICKNESS, choices->thickness_mm, style);
  /* A bolster's height follows from its section. */
  sq_values_set_used (values->lengths[SQ_LENGTH_THICKNESS], choices->build != SQ_BUILD_BOLSTER);
  sq_values_set_used (values->width, has_extents);
  sq_values_set_used (values->depth, has_extents);
  if (has_extents)
    {
      sq_value_row_show_length (values->width, width, style, TRUE);
      sq_value_row_show_length (values->depth, depth, style, TRUE);
      sq_value_row_say (values->width, "");
      sq_value_row_say (values->depth, "");
    }
  sq_values_show_text (values, SQ_TEXT_FINISHED, sq_figures_size (finished.x, finished.y, style));
}

static void
show_number (SqValues *values, const SqJob *job, const SqCushion *cushion)
{
  g_autoptr (SqCushion) nameless = sq_cushion_dup (cushion);
  g_autofree char *usual = NULL, *count = g_strdup_printf ("%u", cushion->count);
  guint hands[] = { SQ_HAND_AS_DRAWN, SQ_HAND_MIRRORED, SQ_HAND_PAIR };
  const char *names[G_N_ELEMENTS (hands)];
  g_ref_string_release (nameless->name);
  nameless->name = g_ref_string_new ("");
  usual = sq_words_cushion (job, nameless);
  sq_value_row_show_entry (values->name, cushion->name, usual, cushion->name[0] != '\0');
  sq_value_row_show_entry (values->count, count, "", (cushion->given & SQ_GIVEN_COUNT) != 0);
  for (guint i = 0; i < G_N_ELEMENTS (hands); i++)
    names[i] = sq_words_hand ((SqHand) hands[i]);
  sq_values_show_choice (values, cushion, SQ_CHOICE_HAND, cushion->hand, hands, names,
                         G_N_ELEMENTS (hands));
}

static void
show_cloths (SqValues *values, const SqJob *job, const SqCushion *cushion, const SqChoices *choices)
{
  const SqId ids[] = { choices->face.id, choices->underside.id, choices->sides.id,
                       choices->welt.id };
  G_STATIC_ASSERT (G_N_ELEMENTS (ids) == G_N_ELEMENTS (values->cloths));
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      SqChoiceValue value = SQ_CHOICE_CLOTH_FACE + i;
      values->cloths[i] = ids[i];
      sq_cloth_row_show (values->choices[value], job, ids[i],
                         sq_edit_choice_is_given (cushion, value));
    }
  gboolean has_sides = choices->build == SQ_BUILD_BOXED || choices->build == SQ_BUILD_WRAPPED_FRONT
                       || choices->build == SQ_BUILD_BOLSTER /* its ends */
                       || sq_choices_is_mixed (choices);
  sq_values_set_used (values->choices[SQ_CHOICE_CLOTH_SIDES], has_sides);
  sq_values_set_used (values->choices[SQ_CHOICE_CLOTH_UNDERSIDE],
                      choices->build != SQ_BUILD_WRAPPED_FRONT && choices->build != SQ_BUILD_BOLSTER
                          && !choices->reversible);
  sq_values_set_used (values->choices[SQ_CHOICE_CLOTH_WELT], choices->welt_at != SQ_WELT_NONE);
}

static void
show_stripes (SqValues *values, const SqJob *job, const SqCushion *cushion,
              const SqChoices *choices, const SqLengthStyle *style)
{
  guint runs[] = { SQ_STRIPES_FRONT_TO_BACK, SQ_STRIPES_SIDE_TO_SIDE };
  const char *run_names[] = { _ ("Front to back"), _ ("Side to side") };
  guint middles[] = { SQ_CENTRE_STRIPE, SQ_CENTRE_GAP, SQ_CENTRE_MOTIF, SQ_CENTRE_NONE };
  const char *middle_names[] = { _ ("Stripe"), _ ("Gap"), _ ("Motif"), _ ("As it comes") };
  const SqCloth *face = sq_job_cloth (job, choices->face.id);
  double shift = cushion->given & SQ_GIVEN_STRIPES_SHIFT ? cushion->stripes.shift_mm : 0;
  gtk_widget_set_visible (values->stripes,
                          face != NULL
                              && (sq_cloth_is_striped (face) || face->repeat_across_mm > 0
                                  || face->repeat_along_mm > 0));
  sq_values_show_choice (values, cushion, SQ_CHOICE_STRIPES_RUN, choices->stripes_run, runs,
                         run_names, G_N_ELEMENTS (runs));
  sq_values_show_choice (values, cushion, SQ_CHOICE_CENTRE_ON, choices->centre_on, middles,
                         middle_names, G_N_ELEMENTS (middles));
  sq_values_show_length (values, cushion, SQ_LENGTH_STRIPES_SHIFT, shift, style);
}

static void
show_zip_edge (SqValues *values, const SqCover *cover)
{
  guint n;
  const SqCorner *corners = sq_outline_ring (cover->cushion->outline, 0, &n);
  g_autofree guint *edges = g_new (guint, n);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < n; i++)
    {
      edges[i] = corners[i].id;
      g_ptr_array_add (names, sq_words_edge (cover, corners[i].id));
    }
  sq_values_show_choice (values, cover->cushion, SQ_CHOICE_ZIP_EDGE, cover->zip.edge, edges,
                         (const char *const *) names->pdata, n);
}

/* On an underside and in a boxing it may be slit in or set between two parts. */
static void
show_method (SqValues *values, const SqCover *cover, const SqChoices *choices, gboolean has_zip)
{
  guint methods[] = { SQ_ZIP_SLIT_IN, SQ_ZIP_TWO_PART };
  const char *names[] = { _ ("Slit in"), _ ("Between two parts") };
  SqZipPlace place = cover->zip.place;
  sq_values_set_used (values->choices[SQ_CHOICE_ZIP_METHOD],
                      has_zip && (place == SQ_ZIP_UNDERSIDE || place == SQ_ZIP_BOXING));
  sq_values_show_choice (values, cover->cushion, SQ_CHOICE_ZIP_METHOD, choices->zip_method, methods,
                         names, G_N_ELEMENTS (methods));
}

static void
show_zip (SqValues *values, const SqCover *cover, const SqChoices *choices,
          const SqLengthStyle *style)
{
  guint places[SQ_N_ZIP_PLACES], n_places = 0;
  const char *names[SQ_N_ZIP_PLACES];
  gboolean is_made = cover->pieces->len > 0;
  SqZipPlace place = is_made ? cover->zip.place : choices->zip_place;
  gboolean has_zip = is_made && place != SQ_ZIP_NONE;
  SqBuild build = sq_choices_is_mixed (choices) ? SQ_BUILD_FOLDED_CORNER : choices->build;
  for (guint i = 0; i < SQ_N_ZIP_PLACES; i++)
    if ((sq_choices_zip_places (build) & (1U << i)) != 0 || i == (guint) place)
      {
        places[n_places] = i;
        names[n_places++] = sq_words_zip_place_short ((SqZipPlace) i);
      }
  sq_values_show_choice (values, cover->cushion, SQ_CHOICE_ZIP_PLACE, place, places, names,
                         n_places);
  show_method (values, cover, choices, has_zip);
  sq_values_set_used (values->choices[SQ_CHOICE_ZIP_EDGE], has_zip && place != SQ_ZIP_TUBE);
  sq_values_set_used (values->texts[SQ_TEXT_ZIP_RUN], has_zip);
  sq_values_set_used (values->texts[SQ_TEXT_ZIP_LENGTH], has_zip);
  sq_values_set_used (values->lengths[SQ_LENGTH_ZIP_EXTENSION], has_zip);
  sq_values_set_used (values->lengths[SQ_LENGTH_ZIP_TUCK], has_zip && place == SQ_ZIP_BOXING);
  sq_values_show_length (values, cover->cushion, SQ_LENGTH_ZIP_EXTENSION, choices->zip_extension_mm,
                         style);
  sq_values_show_length (values, cover->cushion, SQ_LENGTH_ZIP_TUCK, choices->zip_tuck_mm, style);
  if (!has_zip)
    return;
  show_zip_edge (values, cover);
  sq_values_show_text (values, SQ_TEXT_ZIP_RUN, sq_words_figure (cover->zip.run_mm, style));
  sq_values_show_text (values, SQ_TEXT_ZIP_LENGTH, sq_words_figure (cover->zip.length_mm, style));
}

static void
show_allowances (SqValues *values, const SqCushion *cushion, const SqChoices *choices,
                 const SqLengthStyle *style)
{
  gboolean has_corners = choices->build == SQ_BUILD_FOLDED_CORNER
                         || choices->build == SQ_BUILD_SPLIT_SIDE || sq_choices_is_mixed (choices);
  gboolean has_joins = choices->build != SQ_BUILD_FOLDED_CORNER || sq_choices_is_mixed (choices);
  show_fine (values, cushion, SQ_LENGTH_PERIMETER, choices->perimeter_mm, style);
  show_fine (values, cushion, SQ_LENGTH_CORNER, choices->corner_mm, style);
  show_fine (values, cushion, SQ_LENGTH_ZIP, choices->zip_mm, style);
  show_fine (values, cushion, SQ_LENGTH_JOIN, choices->join_mm, style);
  sq_values_set_used (values->lengths[SQ_LENGTH_CORNER], has_corners);
  sq_values_set_used (values->lengths[SQ_LENGTH_JOIN], has_joins);
}

static void
show_foam (SqValues *values, const SqCover *cover, const SqChoices *choices,
           const SqLengthStyle *style)
{
  guint kinds[SQ_N_FOAM_KINDS];
  const char *names[SQ_N_FOAM_KINDS];
  const SqFoamPart *part = cover->foam->len > 0 ? g_ptr_array_index (cover->foam, 0) : NULL;
  SqVector finished = sq_figures_finished_extent (cover);
  for (guint i = 0; i < SQ_N_FOAM_KINDS; i++)
    {
      kinds[i] = i;
      names[i] = sq_words_foam_kind ((SqFoamKind) i);
    }
  sq_values_show_choice (values, cover->cushion, SQ_CHOICE_FOAM, choices->foam_kind, kinds, names,
                         SQ_N_FOAM_KINDS);
  sq_values_show_length (values, cover->cushion, SQ_LENGTH_FOAM_OVERSIZE,
                         sq_choices_oversize_mm (choices, fmax (finished.x, finished.y)), style);
  sq_values_show_length (values, cover->cushion, SQ_LENGTH_FOAM_BATTING, choices->batting_mm,
                         style);
  sq_values_set_used (values->texts[SQ_TEXT_FOAM_SIZE], part != NULL);
  sq_values_set_used (values->texts[SQ_TEXT_FOAM_WEIGHT], part != NULL);
  if (part == NULL || part->rings->len == 0)
    return;
  SqBox box = sq_path_box (g_ptr_array_index (part->rings, 0));
  sq_values_show_text (values, SQ_TEXT_FOAM_SIZE,
                       sq_figures_size (box.max.x - box.min.x, box.max.y - box.min.y, style));
  sq_values_show_text (values, SQ_TEXT_FOAM_WEIGHT, sq_words_weight (part->weight_g, style));
}

void
sq_values_show (SqValues *values, const SqCover *cover)
{
  const SqJob *job = sq_document_get_job (values->document);
  SqLengthStyle style = sq_figures_style (job);
  g_autoptr (GArray) problems = g_array_new (FALSE, FALSE, sizeof (SqProblem));
  SqChoices choices = { 0 };
  sq_choices_resolve (job, cover->cushion, cover->cushion->outline, cover->mirrored, &choices,
                      problems);
  show_size (values, cover, &choices, &style);
  show_number (values, job, cover->cushion);
  sq_values_show_way (values, cover, &choices, &style);
  sq_values_show_welt (values, cover, &choices, &style);
  show_cloths (values, job, cover->cushion, &choices);
  show_stripes (values, job, cover->cushion, &choices, &style);
  show_zip (values, cover, &choices, &style);
  show_allowances (values, cover->cushion, &choices, &style);
  show_foam (values, cover, &choices, &style);
}
