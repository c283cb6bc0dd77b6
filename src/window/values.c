/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/values.h"

#include "cover/choices.h"
#include "window/edits.h"
#include "window/figures.h"
#include "window/place-values.h"
#include "window/value-row.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* What is only to be read. */
typedef enum
{
  TEXT_SEAT,
  TEXT_FINISHED,
  TEXT_FACE,
  TEXT_ZIP_EDGE,
  TEXT_ZIP_RUN,
  TEXT_FOAM_SIZE,
  TEXT_FOAM_WEIGHT,
} Text;
#define N_TEXTS (TEXT_FOAM_WEIGHT + 1)

struct _SqValues
{
  GtkWidget parent;
  SqDocument *document;
  SqSelection *selection;
  GtkWidget *box;
  GtkWidget *place; /* values of the chosen edge or corner */
  SqValueRow *lengths[SQ_N_LENGTH_VALUES];
  SqValueRow *choices[SQ_N_CHOICE_VALUES]; /* NULL: not offered */
  SqValueRow *texts[N_TEXTS];
};

G_DEFINE_TYPE (SqValues, sq_values, GTK_TYPE_WIDGET)

/* --- edits --------------------------------------------------------------------------------- */

static guint
index_of (SqValueRow *const *rows, guint n, SqValueRow *row)
{
  guint i = 0;
  while (i < n && rows[i] != row)
    i++;
  return i;
}

static void
on_length (SqValueRow *row, double mm, SqValues *values)
{
  guint i = index_of (values->lengths, SQ_N_LENGTH_VALUES, row);
  sq_edit_length (values->document, sq_selection_cushion (values->selection), i, &mm);
}

static void
on_length_back (SqValueRow *row, SqValues *values)
{
  guint i = index_of (values->lengths, SQ_N_LENGTH_VALUES, row);
  sq_edit_length (values->document, sq_selection_cushion (values->selection), i, NULL);
}

static void
on_choice (SqValueRow *row, guint choice, SqValues *values)
{
  guint i = index_of (values->choices, SQ_N_CHOICE_VALUES, row);
  sq_edit_choice (values->document, sq_selection_cushion (values->selection), i, &choice);
}

static void
on_choice_back (SqValueRow *row, SqValues *values)
{
  guint i = index_of (values->choices, SQ_N_CHOICE_VALUES, row);
  sq_edit_choice (values->document, sq_selection_cushion (values->selection), i, NULL);
}

/* --- showing ------------------------------------------------------------------------------- */

static void
show_length (SqValues *values, const SqCushion *cushion, SqLengthValue i, double mm,
             const SqLengthStyle *style)
{
  sq_value_row_show_length (values->lengths[i], mm, style, sq_edit_length_is_given (cushion, i));
}

static void
show_choice (SqValues *values, const SqCushion *cushion, SqChoiceValue i, guint value,
             const guint *offered, const char *const *names, guint n)
{
  sq_value_row_show_choice (values->choices[i], value, offered, names, n,
                            sq_edit_choice_is_given (cushion, i));
}

static void
show_text (SqValues *values, Text i, char *text)
{
  sq_value_row_show_text (values->texts[i], text);
  g_free (text);
}

static void
show_build (SqValues *values, const SqCushion *cushion, const SqChoices *choices)
{
  /* A way that can't be built yet is offered only where the job asks for it. */
  guint ways[] = { SQ_BUILD_BOXED, SQ_BUILD_FOLDED_CORNER, choices->build };
  const char *names[G_N_ELEMENTS (ways)];
  gboolean is_known = choices->build == SQ_BUILD_BOXED || choices->build == SQ_BUILD_FOLDED_CORNER;
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    names[i] = sq_words_build ((SqBuild) ways[i]);
  show_choice (values, cushion, SQ_CHOICE_BUILD, choices->build, ways, names, is_known ? 2 : 3);
}

static void
show_wrap (SqValues *values, const SqCushion *cushion, const SqChoices *choices,
           const SqLengthStyle *style)
{
  guint styles[] = { SQ_WRAP_PLAIN, SQ_WRAP_MITRED };
  const char *names[] = { _ ("Plain"), _ ("Mitred") };
  gboolean is_folded = choices->build == SQ_BUILD_FOLDED_CORNER;
  gtk_widget_set_visible (GTK_WIDGET (values->choices[SQ_CHOICE_WRAP_STYLE]), is_folded);
  gtk_widget_set_visible (GTK_WIDGET (values->lengths[SQ_LENGTH_WRAP_DEPTH]), is_folded);
  show_choice (values, cushion, SQ_CHOICE_WRAP_STYLE, choices->wrap_style, styles, names, 2);
  show_length (values, cushion, SQ_LENGTH_WRAP_DEPTH, choices->wrap_depth_mm, style);
}

static void
show_cloth (SqValues *values, const SqCover *cover, const SqChoices *choices)
{
  guint runs[] = { SQ_STRIPES_FRONT_TO_BACK, SQ_STRIPES_SIDE_TO_SIDE };
  const char *names[] = { _ ("Front to back"), _ ("Side to side") };
  const SqCloth *face = sq_figures_face_cloth (sq_document_get_plan (values->document), cover);
  gtk_widget_set_visible (GTK_WIDGET (values->choices[SQ_CHOICE_STRIPES_RUN]),
                          face != NULL && sq_cloth_is_striped (face));
  show_text (values, TEXT_FACE, face != NULL ? sq_words_cloth (face) : g_strdup (_ ("any")));
  show_choice (values, cover->cushion, SQ_CHOICE_STRIPES_RUN, choices->stripes_run, runs, names, 2);
}

static void
show_zip (SqValues *values, const SqCover *cover, const SqChoices *choices,
          const SqLengthStyle *style)
{
  guint places[] = { SQ_ZIP_UNDERSIDE, SQ_ZIP_NONE, SQ_ZIP_BOXING };
  const char *names[] = { _ ("Underside"), _ ("None"), _ ("Boxing") };
  gboolean is_made = cover->pieces->len > 0;
  SqZipPlace place = is_made ? cover->zip.place : choices->zip_place;
  gboolean has_boxing = choices->build == SQ_BUILD_BOXED || place == SQ_ZIP_BOXING;
  gboolean has_zip = is_made && place != SQ_ZIP_NONE;
  show_choice (values, cover->cushion, SQ_CHOICE_ZIP_PLACE, place, places, names,
               has_boxing ? 3 : 2);
  gtk_widget_set_visible (GTK_WIDGET (values->texts[TEXT_ZIP_EDGE]), has_zip);
  gtk_widget_set_visible (GTK_WIDGET (values->texts[TEXT_ZIP_RUN]), has_zip);
  if (!has_zip)
    return;
  show_text (values, TEXT_ZIP_EDGE, sq_words_edge (cover, cover->zip.edge));
  show_text (values, TEXT_ZIP_RUN, sq_words_figure (cover->zip.run_mm, style));
}

static void
show_allowances (SqValues *values, const SqCushion *cushion, const SqChoices *choices,
                 const SqLengthStyle *style)
{
  gboolean is_folded = choices->build == SQ_BUILD_FOLDED_CORNER;
  show_length (values, cushion, SQ_LENGTH_PERIMETER, choices->perimeter_mm, style);
  show_length (values, cushion, SQ_LENGTH_CORNER, choices->corner_mm, style);
  show_length (values, cushion, SQ_LENGTH_ZIP, choices->zip_mm, style);
  show_length (values, cushion, SQ_LENGTH_JOIN, choices->join_mm, style);
  gtk_widget_set_visible (GTK_WIDGET (values->lengths[SQ_LENGTH_CORNER]), is_folded);
  gtk_widget_set_visible (GTK_WIDGET (values->lengths[SQ_LENGTH_JOIN]), !is_folded);
}

static void
show_foam (SqValues *values, const SqCover *cover, const SqChoices *choices,
           const SqLengthStyle *style)
{
  guint kinds[SQ_N_FOAM_KINDS];
  const char *names[SQ_N_FOAM_KINDS];
  const SqFoamPart *part = cover->foam->len > 0 ? g_ptr_array_index (cover->foam, 0) : NULL;
  for (guint i = 0; i < SQ_N_FOAM_KINDS; i++)
    {
      kinds[i] = i;
      names[i] = sq_words_foam_kind ((SqFoamKind) i);
    }
  show_choice (values, cover->cushion, SQ_CHOICE_FOAM, choices->foam_kind, kinds, names,
               SQ_N_FOAM_KINDS);
  gtk_widget_set_visible (GTK_WIDGET (values->texts[TEXT_FOAM_SIZE]), part != NULL);
  gtk_widget_set_visible (GTK_WIDGET (values->texts[TEXT_FOAM_WEIGHT]), part != NULL);
  if (part == NULL || part->rings->len == 0)
    return;
  SqBox box = sq_path_box (g_ptr_array_index (part->rings, 0));
  show_text (values, TEXT_FOAM_SIZE,
             sq_figures_size (box.max.x - box.min.x, box.max.y - box.min.y, style));
  show_text (values, TEXT_FOAM_WEIGHT, sq_words_weight (part->weight_g, style));
}

static void
show (SqValues *values, const SqCover *cover)
{
  const SqJob *job = sq_document_get_job (values->document);
  SqLengthStyle style = sq_figures_style (job);
  g_autoptr (GArray) problems = g_array_new (FALSE, FALSE, sizeof (SqProblem));
  SqVector seat = sq_figures_seat_extent (cover), finished = sq_figures_finished_extent (cover);
  SqChoices choices = { 0 };
  sq_choices_resolve (job, cover->cushion, cover->cushion->outline, cover->mirrored, &choices,
                      problems);
  show_length (values, cover->cushion, SQ_LENGTH_THICKNESS, choices.thickness_mm, &style);
  show_text (values, TEXT_SEAT, sq_figures_size (seat.x, seat.y, &style));
  show_text (values, TEXT_FINISHED, sq_figures_size (finished.x, finished.y, &style));
  show_build (values, cover->cushion, &choices);
  show_wrap (values, cover->cushion, &choices, &style);
  show_cloth (values, cover, &choices);
  show_zip (values, cover, &choices, &style);
  show_allowances (values, cover->cushion, &choices, &style);
  show_foam (values, cover, &choices, &style);
}

static void
follow (SqValues *values)
{
  const SqCover *cover = NULL;
  if (values->document != NULL)
    cover = sq_document_get_cover (values->document, sq_selection_cushion (values->selection),
                                   NULL);
  gtk_widget_set_visible (values->box, cover != NULL);
  if (cover != NULL)
    show (values, cover);
}

void
sq_values_set_document (SqValues *values, SqDocument *document, SqSelection *selection)
{
  g_return_if_fail (SQ_IS_VALUES (values));
  if (values->document != NULL)
    g_signal_handlers_disconnect_by_data (values->document, values);
  if (values->selection != NULL)
    g_signal_handlers_disconnect_by_data (values->selection, values);
  g_set_object (&values->document, document);
  g_set_object (&values->selection, selection);
  sq_place_values_set_document (SQ_PLACE_VALUES (values->place), document, selection);
  if (document != NULL)
    {
      g_signal_connect_swapped (document, "changed", G_CALLBACK (follow), values);
      g_signal_connect_swapped (selection, "changed", G_CALLBACK (follow), values);
    }
  follow (values);
}

/* --- making -------------------------------------------------------------------------------- */

static GtkWidget *
add_group (SqValues *values, const char *name)
{
  GtkWidget *group = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *heading = gtk_label_new (name);
  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_widget_add_css_class (heading, "heading");
  gtk_widget_add_css_class (group, "group");
  gtk_box_append (GTK_BOX (group), heading);
  gtk_box_append (GTK_BOX (values->box), group);
  return group;
}

static void
add_length (SqValues *values, GtkWidget *group, SqLengthValue i, const char *name)
{
  GtkWidget *row = sq_value_row_new_length (name);
  values->lengths[i] = SQ_VALUE_ROW (row);
  g_signal_connect (row, "length", G_CALLBACK (on_length), values);
  g_signal_connect (row, "back", G_CALLBACK (on_length_back), values);
  gtk_box_append (GTK_BOX (group), row);
}

static void
add_choice (SqValues *values, GtkWidget *group, SqChoiceValue i, const char *name)
{
  GtkWidget *row = sq_value_row_new_choice (name);
  values->choices[i] = SQ_VALUE_ROW (row);
  g_signal_connect (row, "choice", G_CALLBACK (on_choice), values);
  g_signal_connect (row, "back", G_CALLBACK (on_choice_back), values);
  gtk_box_append (GTK_BOX (group), row);
}

static void
add_text (SqValues *values, GtkWidget *group, Text i, const char *name)
{
  GtkWidget *row = sq_value_row_new_text (name);
  values->texts[i] = SQ_VALUE_ROW (row);
  gtk_box_append (GTK_BOX (group), row);
}

static void
add_rows (SqValues *values)
{
  GtkWidget *group = add_group (values, _ ("Size"));
  add_length (values, group, SQ_LENGTH_THICKNESS, _ ("_Thickness"));
  add_text (values, group, TEXT_SEAT, _ ("Seat"));
  add_text (values, group, TEXT_FINISHED, _ ("Finished"));
  values->place = sq_place_values_new ();
  gtk_box_append (GTK_BOX (values->box), values->place);
  group = add_group (values, _ ("Way of building"));
  add_choice (values, group, SQ_CHOICE_BUILD, _ ("_Cover"));
  add_choice (values, group, SQ_CHOICE_WRAP_STYLE, _ ("_Wrap"));
  add_length (values, group, SQ_LENGTH_WRAP_DEPTH, _ ("Wrap _depth"));
  group = add_group (values, _ ("Cloth"));
  add_text (values, group, TEXT_FACE, _ ("Face"));
  add_choice (values, group, SQ_CHOICE_STRIPES_RUN, _ ("_Stripes"));
  group = add_group (values, _ ("Zip"));
  add_choice (values, group, SQ_CHOICE_ZIP_PLACE, _ ("_Place"));
  add_text (values, group, TEXT_ZIP_EDGE, _ ("Along"));
  add_text (values, group, TEXT_ZIP_RUN, _ ("Opening"));
  group = add_group (values, _ ("Allowances"));
  add_length (values, group, SQ_LENGTH_PERIMETER, _ ("P_erimeter"));
  add_length (values, group, SQ_LENGTH_CORNER, _ ("C_orner"));
  add_length (values, group, SQ_LENGTH_ZIP, _ ("_Zip seam"));
  add_length (values, group, SQ_LENGTH_JOIN, _ ("_Join"));
  group = add_group (values, _ ("Foam"));
  add_choice (values, group, SQ_CHOICE_FOAM, _ ("_Kind"));
  add_text (values, group, TEXT_FOAM_SIZE, _ ("Cut size"));
  add_text (values, group, TEXT_FOAM_WEIGHT, _ ("Weight"));
}

static void
sq_values_dispose (GObject *object)
{
  SqValues *values = SQ_VALUES (object);
  if (values->document != NULL)
    g_signal_handlers_disconnect_by_data (values->document, values);
  if (values->selection != NULL)
    g_signal_handlers_disconnect_by_data (values->selection, values);
  g_clear_object (&values->document);
  g_clear_object (&values->selection);
  g_clear_pointer (&values->box, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_values_parent_class)->dispose (object);
}

static void
sq_values_class_init (SqValuesClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_values_dispose;
  gtk_widget_class_set_css_name (widget_class, "values");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sq_values_init (SqValues *values)
{
  values->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_parent (values->box, GTK_WIDGET (values));
  add_rows (values);
}
