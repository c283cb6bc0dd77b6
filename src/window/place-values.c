/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/place-values.h"

#include "cover/choices.h"
#include "job/sides.h"
#include "window/edit-place.h"
#include "window/edits.h"
#include "window/figures.h"
#include "window/value-row.h"
#include "words/names.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

struct _SqPlaceValues
{
  GtkWidget parent;
  SqDocument *document;
  SqSelection *selection;
  GtkWidget *box, *heading, *note;
  SqValueRow *lengths[SQ_N_PLACE_LENGTHS], *kind, *build, *pinned;
};

G_DEFINE_TYPE (SqPlaceValues, sq_place_values, GTK_TYPE_WIDGET)

/* --- what is chosen ------------------------------------------------------------------------ */

static const SqCushion *
chosen_cushion (SqPlaceValues *values)
{
  return values->document != NULL ? sq_job_cushion (sq_document_get_job (values->document),
                                                    sq_selection_cushion (values->selection))
                                  : NULL;
}

/* The corner that carries the chosen values; *@is_edge: they are those of its edge. */
static const SqCorner *
chosen_corner (SqPlaceValues *values, gboolean *is_edge)
{
  const SqCushion *cushion = chosen_cushion (values);
  SqId edge = cushion != NULL ? sq_selection_item (values->selection, SQ_AT_EDGE) : 0;
  SqId corner = cushion != NULL ? sq_selection_item (values->selection, SQ_AT_CORNER) : 0;
  *is_edge = edge != 0;
  return edge != 0 || corner != 0
             ? sq_outline_corner (cushion->outline, edge != 0 ? edge : corner, NULL, NULL)
             : NULL;
}

/* --- edits --------------------------------------------------------------------------------- */

static void
give_length (SqPlaceValues *values, SqValueRow *row, const double *mm)
{
  gboolean is_edge;
  const SqCorner *corner = chosen_corner (values, &is_edge);
  guint i = 0;
  SqSidesResult result;
  while (i + 1 < SQ_N_PLACE_LENGTHS && values->lengths[i] != row)
    i++;
  if (corner == NULL)
    return;
  result = sq_edit_place_length (values->document, sq_selection_cushion (values->selection),
                                 corner->id, (SqPlaceLength) i, mm);
  gtk_label_set_text (GTK_LABEL (values->note),
                      result != SQ_SIDES_FINE ? sq_words_sides_result (result) : "");
  gtk_widget_set_visible (values->note, result != SQ_SIDES_FINE);
}

static void
on_length (SqValueRow *row, double mm, SqPlaceValues *values)
{
  give_length (values, row, &mm);
}

static void
on_length_back (SqValueRow *row, SqPlaceValues *values)
{
  give_length (values, row, NULL);
}

static void
give_kind (SqPlaceValues *values, const guint *kind)
{
  gboolean is_edge;
  const SqCorner *corner = chosen_corner (values, &is_edge);
  if (corner != NULL && is_edge)
    sq_edit_edge_kind (values->document, sq_selection_cushion (values->selection), corner->id,
                       kind);
}

static void
on_kind (SqValueRow *row, guint kind, SqPlaceValues *values)
{
  (void) row;
  give_kind (values, &kind);
}

static void
on_kind_back (SqValueRow *row, SqPlaceValues *values)
{
  (void) row;
  give_kind (values, NULL);
}

static void
give_build (SqPlaceValues *values, const guint *build)
{
  gboolean is_edge;
  const SqCorner *corner = chosen_corner (values, &is_edge);
  if (corner != NULL && is_edge)
    sq_edit_edge_build (values->document, sq_selection_cushion (values->selection), corner->id,
                        build);
}

static void
on_build (SqValueRow *row, guint build, SqPlaceValues *values)
{
  (void) row;
  give_build (values, &build);
}

static void
on_build_back (SqValueRow *row, SqPlaceValues *values)
{
  (void) row;
  give_build (values, NULL);
}

static void
on_note (SqValueRow *row, const char *text, SqPlaceValues *values)
{
  gboolean is_edge;
  const SqCorner *corner = chosen_corner (values, &is_edge);
  (void) row;
  if (corner != NULL)
    sq_edit_note (values->document, sq_selection_cushion (values->selection), corner->id, is_edge,
                  text);
}

/* --- showing ------------------------------------------------------------------------------- */

/* Only folded and boxed covers have sides of both builds. */
static void
show_build (SqPlaceValues *values, const SqChoices *choices, const SqCorner *corner, guint ring)
{
  guint builds[] = { SQ_EDGE_FOLDED, SQ_EDGE_BOXED };
  const char *names[G_N_ELEMENTS (builds)];
  gboolean mixes = choices->build == SQ_BUILD_FOLDED_CORNER || choices->build == SQ_BUILD_BOXED;
  for (guint i = 0; i < G_N_ELEMENTS (builds); i++)
    names[i] = sq_words_edge_build ((SqEdgeBuild) builds[i]);
  gtk_widget_set_visible (GTK_WIDGET (values->build), mixes && ring == 0);
  sq_value_row_show_choice (values->build, sq_choices_edge_build (choices, corner), builds, names,
                            G_N_ELEMENTS (builds), (corner->given & SQ_GIVEN_EDGE_BUILD) != 0);
}

static const SqSideReading *
reading_of (const SqSideReading *readings, guint n, SqId edge)
{
  for (guint i = 0; i < n; i++)
    if (readings[i].edge == edge)
      return &readings[i];
  return NULL;
}

static void
show_kind (SqPlaceValues *values, const SqCorner *corner)
{
  guint kinds[SQ_N_EDGE_KINDS];
  const char *names[SQ_N_EDGE_KINDS];
  for (guint i = 0; i < SQ_N_EDGE_KINDS; i++)
    {
      kinds[i] = i;
      names[i] = sq_words_edge_kind ((SqEdgeKind) i);
    }
  sq_value_row_show_choice (values->kind, corner->kind, kinds, names, SQ_N_EDGE_KINDS,
                            (corner->given & SQ_GIVEN_KIND) != 0);
}

static void
show (SqPlaceValues *values, const SqCorner *corner, gboolean is_edge)
{
  const SqJob *job = sq_document_get_job (values->document);
  const SqCushion *cushion = chosen_cushion (values);
  SqLengthStyle style = sq_figures_style (job);
  g_autoptr (GArray) problems = g_array_new (FALSE, FALSE, sizeof (SqProblem));
  SqChoices choices = { 0 };
  sq_choices_resolve (job, cushion, cushion->outline, FALSE, &choices, problems);
  g_autofree char *name = is_edge ? sq_words_edge_corners (cushion, corner->id)
                                  : sq_words_corner (cushion, corner->id);
  /* Translators: %s is an edge's two letters, or a corner's. */
  g_autofree char *heading = g_strdup_printf (is_edge ? _ ("Edge %s") : _ ("Corner %s"), name);
  guint ring = 0, n;
  sq_outline_corner (cushion->outline, corner->id, &ring, NULL);
  g_autofree SqSideReading *readings = sq_outline_side_readings (cushion->outline, ring, &n);
  const SqSideReading *side = reading_of (readings, n, corner->id);
  const char *pinned = is_edge ? corner->note : corner->corner_note;
  gtk_label_set_text (GTK_LABEL (values->heading), heading);
  sq_value_row_show_entry (values->pinned, pinned != NULL ? pinned : "", "", pinned != NULL);
  gtk_widget_set_visible (GTK_WIDGET (values->kind), is_edge);
  gtk_widget_set_visible (GTK_WIDGET (values->build), FALSE);
  for (guint i = 0; i < SQ_N_PLACE_LENGTHS; i++)
    gtk_widget_set_visible (GTK_WIDGET (values->lengths[i]), is_edge == (i != SQ_PLACE_RADIUS));
  if (!is_edge)
    {
      sq_value_row_show_length (values->lengths[SQ_PLACE_RADIUS], corner->radius_mm, &style,
                                corner->radius_mm > 0);
      return;
    }
  sq_value_row_show_length (values->lengths[SQ_PLACE_SIDE], side != NULL ? side->chord_mm : 0,
                            &style, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (values->lengths[SQ_PLACE_RISE]),
                          corner->shape != SQ_SHAPE_CURVE);
  sq_value_row_show_length (values->lengths[SQ_PLACE_RISE], corner->bow_mm, &style,
                            corner->shape == SQ_SHAPE_BOW);
  show_kind (values, corner);
  show_build (values, &choices, corner, ring);
  sq_value_row_show_length (values->lengths[SQ_PLACE_CLEARANCE],
                            sq_choices_clearance_mm (&choices, corner), &style,
                            (corner->given & SQ_GIVEN_CLEARANCE) != 0);
}

static void
follow (SqPlaceValues *values)
{
  gboolean is_edge;
  const SqCorner *corner = chosen_corner (values, &is_edge);
  gtk_widget_set_visible (GTK_WIDGET (values), corner != NULL);
  if (corner != NULL)
    show (values, corner, is_edge);
}

/* Another place: what was wrong at the last one is no matter here. */
static void
on_selected (SqPlaceValues *values)
{
  gtk_widget_set_visible (values->note, FALSE);
  follow (values);
}

static void
leave (SqPlaceValues *values)
{
  if (values->document != NULL)
    g_signal_handlers_disconnect_by_data (values->document, values);
  if (values->selection != NULL)
    g_signal_handlers_disconnect_by_data (values->selection, values);
}

void
sq_place_values_set_document (SqPlaceValues *values, SqDocument *document, SqSelection *selection)
{
  g_return_if_fail (SQ_IS_PLACE_VALUES (values));
  leave (values);
  g_set_object (&values->document, document);
  g_set_object (&values->selection, selection);
  if (document != NULL)
    {
      g_signal_connect_swapped (document, "changed", G_CALLBACK (follow), values);
      g_signal_connect_swapped (selection, "changed", G_CALLBACK (on_selected), values);
    }
  follow (values);
}

/* --- making -------------------------------------------------------------------------------- */

static void
add_length (SqPlaceValues *values, SqPlaceLength i, const char *name)
{
  GtkWidget *row = sq_value_row_new_length (name);
  values->lengths[i] = SQ_VALUE_ROW (row);
  g_signal_connect (row, "length", G_CALLBACK (on_length), values);
  g_signal_connect (row, "back", G_CALLBACK (on_length_back), values);
  gtk_box_append (GTK_BOX (values->box), row);
}

static void
sq_place_values_dispose (GObject *object)
{
  SqPlaceValues *values = SQ_PLACE_VALUES (object);
  leave (values);
  g_clear_object (&values->document);
  g_clear_object (&values->selection);
  g_clear_pointer (&values->box, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_place_values_parent_class)->dispose (object);
}

static void
sq_place_values_class_init (SqPlaceValuesClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_place_values_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
sq_place_values_init (SqPlaceValues *values)
{
  values->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  values->heading = gtk_label_new (NULL);
  values->note = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (values->heading), 0);
  gtk_widget_add_css_class (values->heading, "heading");
  gtk_widget_add_css_class (values->box, "group");
  gtk_box_append (GTK_BOX (values->box), values->heading);
  add_length (values, SQ_PLACE_SIDE, _ ("Len_gth"));
  add_length (values, SQ_PLACE_RISE, _ ("_Rise"));
  values->kind = SQ_VALUE_ROW (sq_value_row_new_choice (_ ("Sta_nds there")));
  g_signal_connect (values->kind, "choice", G_CALLBACK (on_kind), values);
  g_signal_connect (values->kind, "back", G_CALLBACK (on_kind_back), values);
  gtk_box_append (GTK_BOX (values->box), GTK_WIDGET (values->kind));
  add_length (values, SQ_PLACE_CLEARANCE, _ ("Sta_ys free"));
  values->build = SQ_VALUE_ROW (sq_value_row_new_choice (_ ("Side")));
  g_signal_connect (values->build, "choice", G_CALLBACK (on_build), values);
  g_signal_connect (values->build, "back", G_CALLBACK (on_build_back), values);
  gtk_box_append (GTK_BOX (values->box), GTK_WIDGET (values->build));
  add_length (values, SQ_PLACE_RADIUS, _ ("_Radius"));
  values->pinned = SQ_VALUE_ROW (sq_value_row_new_entry (_ ("Not_e"), NULL));
  g_signal_connect (values->pinned, "text", G_CALLBACK (on_note), values);
  sq_value_row_set_no_usual (values->pinned);
  gtk_box_append (GTK_BOX (values->box), GTK_WIDGET (values->pinned));
  gtk_label_set_xalign (GTK_LABEL (values->note), 0);
  gtk_label_set_wrap (GTK_LABEL (values->note), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (values->note), 24);
  gtk_widget_add_css_class (values->note, "mistake");
  gtk_widget_set_visible (values->note, FALSE);
  gtk_box_append (GTK_BOX (values->box), values->note);
  gtk_widget_set_parent (values->box, GTK_WIDGET (values));
  gtk_widget_set_visible (GTK_WIDGET (values), FALSE);
}

GtkWidget *
sq_place_values_new (void)
{
  return g_object_new (SQ_TYPE_PLACE_VALUES, NULL);
}
