/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/values.h"

#include "job/frame.h"
#include "window/cloth-dialog.h"
#include "window/cloth-row.h"
#include "window/form.h"
#include "window/place-values.h"
#include "window/shelf-dialog.h"
#include "window/value-group.h"
#include "window/values-private.h"
#include "words/lengths.h"

#include <glib/gi18n.h>

G_DEFINE_TYPE (SqValues, sq_values, GTK_TYPE_WIDGET)

static SqId
chosen (SqValues *values)
{
  return sq_selection_cushion (values->selection);
}

static guint
index_of (SqValueRow *const *rows, guint n, SqValueRow *row)
{
  guint i = 0;
  while (i < n && rows[i] != row)
    i++;
  return i;
}

/* --- edits --------------------------------------------------------------------------------- */

static void
on_length (SqValueRow *row, double mm, SqValues *values)
{
  guint i = index_of (values->lengths, SQ_N_LENGTH_VALUES, row);
  sq_edit_length (values->document, chosen (values), i, &mm);
}

static void
on_length_back (SqValueRow *row, SqValues *values)
{
  guint i = index_of (values->lengths, SQ_N_LENGTH_VALUES, row);
  sq_edit_length (values->document, chosen (values), i, NULL);
}

/* Width or depth of the seat; the other one stays. */
static void
on_extent (SqValueRow *row, double mm, SqValues *values)
{
  const SqCushion *cushion = sq_job_cushion (sq_document_get_job (values->document),
                                             chosen (values));
  double width, depth;
  gboolean is_fine = sq_outline_extents_mm (cushion->outline, &width, &depth);
  if (is_fine && row == values->width)
    is_fine = sq_edit_extents (values->document, cushion->id, mm, depth);
  else if (is_fine)
    is_fine = sq_edit_extents (values->document, cushion->id, width, mm);
  if (!is_fine)
    sq_value_row_say (row, mm > 0 ? _ ("The seat can’t be stretched to this.")
                                  : _ ("It has to be more than nothing."));
}

static void
on_choice (SqValueRow *row, guint choice, SqValues *values)
{
  guint i = index_of (values->choices, SQ_N_CHOICE_VALUES, row);
  sq_edit_choice (values->document, chosen (values), i, &choice);
}

static void
on_choice_back (SqValueRow *row, SqValues *values)
{
  guint i = index_of (values->choices, SQ_N_CHOICE_VALUES, row);
  sq_edit_choice (values->document, chosen (values), i, NULL);
}

/* The cloth a row shows now. */
static const SqCloth *
cloth_now (SqValues *values, SqChoiceValue value)
{
  return sq_job_cloth (sq_document_get_job (values->document),
                       values->cloths[value - SQ_CHOICE_CLOTH_FACE]);
}

static void
on_cloth (SqValueRow *row, guint choice, SqValues *values)
{
  SqChoiceValue value = index_of (values->choices, SQ_N_CHOICE_VALUES, row);
  SqId cushion = chosen (values);
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (values)));
  if (choice == SQ_CLOTH_NEW)
    sq_cloth_dialog (window, values->document, NULL, cushion, &value);
  else if (choice == SQ_CLOTH_CHANGE)
    sq_cloth_dialog (window, values->document, cloth_now (values, value), cushion, NULL);
  else if (choice == SQ_CLOTH_FROM_SHELF)
    sq_shelf_dialog (window, values->document, cushion, value);
  else if (choice != 0)
    sq_edit_choice (values->document, cushion, value, &choice);
  sq_values_follow (values); /* what is done is no cloth */
}

static void
on_name (SqValueRow *row, const char *text, SqValues *values)
{
  (void) row;
  sq_edit_name (values->document, chosen (values), text);
}

static void
on_name_back (SqValueRow *row, SqValues *values)
{
  (void) row;
  sq_edit_name (values->document, chosen (values), NULL);
}

static void
on_count (SqValueRow *row, const char *text, SqValues *values)
{
  guint count;
  (void) row;
  if (sq_words_read_count (text, &count))
    sq_edit_count (values->document, chosen (values), &count);
}

static void
on_count_back (SqValueRow *row, SqValues *values)
{
  (void) row;
  sq_edit_count (values->document, chosen (values), NULL);
}

static const char *
check_count (const char *text)
{
  guint count;
  return sq_words_read_count (text, &count) ? NULL : _ ("Type a whole number from 1 to 100,000.");
}

/* --- showing ------------------------------------------------------------------------------- */

void
sq_values_follow (SqValues *values)
{
  const SqCover *cover = NULL;
  if (values->document != NULL)
    cover = sq_document_get_cover (values->document, chosen (values), NULL);
  gtk_widget_set_visible (values->box, cover != NULL);
  if (cover != NULL)
    sq_values_show (values, cover);
}

static void
leave (SqValues *values)
{
  if (values->document != NULL)
    g_signal_handlers_disconnect_by_data (values->document, values);
  if (values->selection != NULL)
    g_signal_handlers_disconnect_by_data (values->selection, values);
}

void
sq_values_set_document (SqValues *values, SqDocument *document, SqSelection *selection)
{
  g_return_if_fail (SQ_IS_VALUES (values));
  leave (values);
  g_set_object (&values->document, document);
  g_set_object (&values->selection, selection);
  sq_place_values_set_document (SQ_PLACE_VALUES (values->place), document, selection);
  if (document != NULL)
    {
      g_signal_connect_swapped (document, "changed", G_CALLBACK (sq_values_follow), values);
      g_signal_connect_swapped (selection, "changed", G_CALLBACK (sq_values_follow), values);
    }
  sq_values_follow (values);
}

/* --- making -------------------------------------------------------------------------------- */

static SqValueGroup *
add_group (SqValues *values, const char *name, const char *key, gboolean is_folded)
{
  GtkWidget *group = sq_value_group_new (name, key, is_folded);
  gtk_box_append (GTK_BOX (values->box), group);
  return SQ_VALUE_GROUP (group);
}

/* Adds @row, whose values are told by @signal. */
static SqValueRow *
add_row (SqValues *values, SqValueGroup *group, GtkWidget *row, const char *signal, GCallback given,
         GCallback back)
{
  if (signal != NULL)
    g_signal_connect (row, signal, given, values);
  if (back != NULL)
    g_signal_connect (row, "back", back, values);
  sq_value_group_add (group, row);
  return SQ_VALUE_ROW (row);
}

static void
add_length (SqValues *values, SqValueGroup *group, SqLengthValue i, const char *name)
{
  values->lengths[i] = add_row (values, group, sq_value_row_new_length (name), "length",
                                G_CALLBACK (on_length), G_CALLBACK (on_length_back));
}

static void
add_choice (SqValues *values, SqValueGroup *group, SqChoiceValue i, const char *name)
{
  values->choices[i] = add_row (values, group, sq_value_row_new_choice (name), "choice",
                                G_CALLBACK (on_choice), G_CALLBACK (on_choice_back));
}

static void
add_cloth (SqValues *values, SqValueGroup *group, SqChoiceValue i, const char *name)
{
  values->choices[i] = add_row (values, group, sq_cloth_row_new (name), "choice",
                                G_CALLBACK (on_cloth), G_CALLBACK (on_choice_back));
}

static void
add_text (SqValues *values, SqValueGroup *group, SqValueText i, const char *name)
{
  values->texts[i] = add_row (values, group, sq_value_row_new_text (name), NULL, NULL, NULL);
}

static void
add_size (SqValues *values)
{
  SqValueGroup *group = add_group (values, _ ("Size"), "size", FALSE);
  add_length (values, group, SQ_LENGTH_THICKNESS, _ ("_Thickness"));
  values->width = add_row (values, group, sq_value_row_new_measure (_ ("Seat _width")), "length",
                           G_CALLBACK (on_extent), NULL);
  values->depth = add_row (values, group, sq_value_row_new_measure (_ ("Seat _depth")), "length",
                           G_CALLBACK (on_extent), NULL);
  add_text (values, group, SQ_TEXT_FINISHED, _ ("Finished"));
}

static void
add_number (SqValues *values)
{
  SqValueGroup *group = add_group (values, _ ("Cushion"), "cushion", FALSE);
  values->name = add_row (values, group, sq_value_row_new_entry (_ ("_Name"), NULL), "text",
                          G_CALLBACK (on_name), G_CALLBACK (on_name_back));
  values->count = add_row (values, group, sq_value_row_new_number (_ ("Co_unt"), check_count),
                           "text", G_CALLBACK (on_count), G_CALLBACK (on_count_back));
  add_choice (values, group, SQ_CHOICE_HAND, _ ("H_and"));
}

static void
add_cloths (SqValues *values)
{
  SqValueGroup *group = add_group (values, _ ("Cloth"), "cloth", FALSE);
  add_cloth (values, group, SQ_CHOICE_CLOTH_FACE, _ ("_Face"));
  add_cloth (values, group, SQ_CHOICE_CLOTH_UNDERSIDE, _ ("Unders_ide"));
  add_cloth (values, group, SQ_CHOICE_CLOTH_SIDES, _ ("Si_des"));
  add_cloth (values, group, SQ_CHOICE_CLOTH_WELT, _ ("Welt"));
  group = add_group (values, _ ("Stripes"), "stripes", FALSE);
  values->stripes = GTK_WIDGET (group);
  add_choice (values, group, SQ_CHOICE_STRIPES_RUN, _ ("_Run"));
  add_choice (values, group, SQ_CHOICE_CENTRE_ON, _ ("_Middle"));
  add_length (values, group, SQ_LENGTH_STRIPES_SHIFT, _ ("S_hift"));
}

/* What only some ways of building ask. */
static void
add_way (SqValues *values, SqValueGroup *group)
{
  add_choice (values, group, SQ_CHOICE_WRAP_STYLE, _ ("_Wrap"));
  add_length (values, group, SQ_LENGTH_WRAP_DEPTH, _ ("Wrap _depth"));
  add_choice (values, group, SQ_CHOICE_PROFILE, _ ("Fr_ont"));
  add_length (values, group, SQ_LENGTH_PROFILE_RADIUS, _ ("Front radiu_s"));
  add_length (values, group, SQ_LENGTH_SPLIT_UPPER, _ ("Upper part"));
  add_choice (values, group, SQ_CHOICE_FILLING, _ ("Filling"));
  add_length (values, group, SQ_LENGTH_DRAW_IN, _ ("Draw-in"));
  add_text (values, group, SQ_TEXT_STUFFED, _ ("Stuffed"));
  add_text (values, group, SQ_TEXT_INSERT, _ ("Insert"));
  add_choice (values, group, SQ_CHOICE_SECTION, _ ("Section"));
  add_length (values, group, SQ_LENGTH_BOLSTER_DIAMETER, _ ("Diameter"));
  add_length (values, group, SQ_LENGTH_BOLSTER_LENGTH, _ ("Length"));
  add_length (values, group, SQ_LENGTH_BOLSTER_RISE, _ ("Rise"));
  add_choice (values, group, SQ_CHOICE_REVERSIBLE, _ ("Turns over"));
  add_choice (values, group, SQ_CHOICE_SEAMS_ACROSS, _ ("Joins across"));
}

static void
add_welt (SqValues *values)
{
  SqValueGroup *group = add_group (values, _ ("Welt"), "welt", FALSE);
  values->welt = GTK_WIDGET (group);
  add_choice (values, group, SQ_CHOICE_WELT_AT, _ ("In seam"));
  add_length (values, group, SQ_LENGTH_WELT_CORD, _ ("Cord"));
  add_choice (values, group, SQ_CHOICE_WELT_CUT, _ ("Cut"));
  add_length (values, group, SQ_LENGTH_WELT_OVERLAP, _ ("Lap"));
  add_text (values, group, SQ_TEXT_WELT_STRIPS, _ ("Strips"));
}

static void
add_zip (SqValues *values)
{
  SqValueGroup *group = add_group (values, _ ("Zip"), "zip", FALSE);
  add_choice (values, group, SQ_CHOICE_ZIP_PLACE, _ ("_Place"));
  add_choice (values, group, SQ_CHOICE_ZIP_EDGE, _ ("A_long"));
  add_choice (values, group, SQ_CHOICE_ZIP_METHOD, _ ("Put in"));
  add_text (values, group, SQ_TEXT_ZIP_RUN, _ ("Opening"));
  add_text (values, group, SQ_TEXT_ZIP_LENGTH, _ ("Zip to cut"));
  add_length (values, group, SQ_LENGTH_ZIP_EXTENSION, _ ("E_xtension"));
  add_length (values, group, SQ_LENGTH_ZIP_TUCK, _ ("Tuc_k"));
}

static void
add_making (SqValues *values)
{
  SqValueGroup *group = add_group (values, _ ("Allowances"), "allowances", TRUE);
  add_length (values, group, SQ_LENGTH_PERIMETER, _ ("P_erimeter"));
  add_length (values, group, SQ_LENGTH_CORNER, _ ("C_orner"));
  add_length (values, group, SQ_LENGTH_ZIP, _ ("_Zip seam"));
  add_length (values, group, SQ_LENGTH_JOIN, _ ("_Join"));
  group = add_group (values, _ ("Foam"), "foam", FALSE);
  add_choice (values, group, SQ_CHOICE_FOAM, _ ("_Kind"));
  add_length (values, group, SQ_LENGTH_FOAM_OVERSIZE, _ ("O_versize"));
  add_length (values, group, SQ_LENGTH_FOAM_BATTING, _ ("_Batting"));
  add_text (values, group, SQ_TEXT_FOAM_SIZE, _ ("Cut size"));
  add_text (values, group, SQ_TEXT_FOAM_WEIGHT, _ ("Weight"));
}

static void
sq_values_dispose (GObject *object)
{
  SqValues *values = SQ_VALUES (object);
  leave (values);
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

/* Leads to all ways side by side. */
static GtkWidget *
new_compare (void)
{
  GtkWidget *button = sq_form_button (_ ("_Compare all ways…"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.ways");
  gtk_widget_set_halign (button, GTK_ALIGN_END);
  gtk_widget_add_css_class (button, "compare");
  return button;
}

static void
sq_values_init (SqValues *values)
{
  SqValueGroup *group;
  values->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_parent (values->box, GTK_WIDGET (values));
  /* What was chosen on the seat is what the eye is on. */
  values->place = sq_place_values_new ();
  gtk_box_append (GTK_BOX (values->box), values->place);
  add_size (values);
  group = add_group (values, _ ("Way of building"), "build", FALSE);
  add_choice (values, group, SQ_CHOICE_BUILD, _ ("_Cover"));
  sq_value_group_add (group, new_compare ());
  add_way (values, group);
  add_welt (values);
  add_cloths (values);
  add_zip (values);
  add_making (values);
  add_number (values);
}
