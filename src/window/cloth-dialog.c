/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/cloth-dialog.h"

#include "base/units.h"
#include "exchange/cloth-shelf.h"
#include "window/cloth-bands.h"
#include "window/cloth-picture.h"
#include "window/dialogs.h"
#include "window/figures.h"
#include "window/form.h"
#include "window/value-row.h"
#include "words/lengths.h"
#include "words/names.h"

#include <glib/gi18n.h>

typedef enum
{
  LENGTH_WIDTH,
  LENGTH_THICKNESS,
  LENGTH_ACROSS,
  LENGTH_ALONG,
} ClothLength;
#define N_LENGTHS (LENGTH_ALONG + 1)

static const struct
{
  gsize offset;
  guint32 given; /* 0: where it is not 0 */
} lengths[N_LENGTHS] = {
  [LENGTH_WIDTH] = { G_STRUCT_OFFSET (SqCloth, width_mm), SQ_GIVEN_CLOTH_WIDTH },
  [LENGTH_THICKNESS] = { G_STRUCT_OFFSET (SqCloth, thickness_mm), SQ_GIVEN_CLOTH_THICKNESS },
  [LENGTH_ACROSS] = { G_STRUCT_OFFSET (SqCloth, repeat_across_mm), 0 },
  [LENGTH_ALONG] = { G_STRUCT_OFFSET (SqCloth, repeat_along_mm), 0 },
};

/* Which way up the cloth may lie. */
enum
{
  WAYS_BOTH,
  WAYS_END,
  WAYS_START,
};

typedef struct
{
  GtkWidget *window;
  SqDocument *document;
  SqCloth *cloth; /* as it is now; another one after each change */
  SqId cushion;
  gboolean has_value, is_changed;
  SqChoiceValue value;
  char *kept_as; /* its name on the shelf; NULL: it isn't there */
  SqValueRow *name, *kind, *ground, *price, *ways, *drop, *lengths[N_LENGTHS];
  GtkWidget *bands, *picture, *caption, *keep;
} Dialog;

static void show (Dialog *dialog);

/* --- changes ------------------------------------------------------------------------------- */

/* Takes @cloth. */
static void
set_cloth (Dialog *dialog, SqCloth *cloth)
{
  sq_cloth_unref (dialog->cloth);
  dialog->cloth = cloth;
  dialog->is_changed = TRUE;
  show (dialog);
}

/* A copy in which what @given says is given or not. */
static SqCloth *
changed (Dialog *dialog, guint32 given, gboolean is_given)
{
  SqCloth *cloth = sq_cloth_dup (dialog->cloth);
  cloth->given = is_given ? cloth->given | given : cloth->given & ~given;
  return cloth;
}

static void
give_length (Dialog *dialog, SqValueRow *row, const double *mm)
{
  guint i = 0;
  SqCloth *cloth;
  while (i + 1 < N_LENGTHS && dialog->lengths[i] != row)
    i++;
  cloth = changed (dialog, lengths[i].given, mm != NULL);
  *(double *) (gpointer) ((char *) cloth + lengths[i].offset) = mm != NULL ? *mm : 0;
  set_cloth (dialog, cloth);
}

static void
on_length (SqValueRow *row, double mm, Dialog *dialog)
{
  give_length (dialog, row, &mm);
}

static void
on_length_back (SqValueRow *row, Dialog *dialog)
{
  give_length (dialog, row, NULL);
}

static void
on_name (SqValueRow *row, const char *text, Dialog *dialog)
{
  SqCloth *cloth = changed (dialog, 0, TRUE);
  (void) row;
  g_ref_string_release (cloth->name);
  cloth->name = g_ref_string_new (text);
  set_cloth (dialog, cloth);
}

static void
on_name_back (SqValueRow *row, Dialog *dialog)
{
  on_name (row, "", dialog);
}

static void
on_kind (SqValueRow *row, guint kind, Dialog *dialog)
{
  SqCloth *cloth = changed (dialog, SQ_GIVEN_CLOTH_CLASS, TRUE);
  (void) row;
  cloth->kind = (SqClothClass) kind;
  set_cloth (dialog, cloth);
}

static void
on_kind_back (SqValueRow *row, Dialog *dialog)
{
  (void) row;
  set_cloth (dialog, changed (dialog, SQ_GIVEN_CLOTH_CLASS, FALSE));
}

static void
on_ground (SqValueRow *row, guint rgb, Dialog *dialog)
{
  SqCloth *cloth = changed (dialog, SQ_GIVEN_CLOTH_COLOUR, TRUE);
  (void) row;
  cloth->colour = rgb;
  set_cloth (dialog, cloth);
}

static void
on_ground_back (SqValueRow *row, Dialog *dialog)
{
  (void) row;
  set_cloth (dialog, changed (dialog, SQ_GIVEN_CLOTH_COLOUR, FALSE));
}

static void
on_ways (SqValueRow *row, guint ways, Dialog *dialog)
{
  SqCloth *cloth = changed (dialog, SQ_GIVEN_CLOTH_ONE_WAY, ways != WAYS_BOTH);
  (void) row;
  cloth->one_way = ways != WAYS_BOTH;
  cloth->up_is_start = ways == WAYS_START;
  cloth->given &= ~(guint32) SQ_GIVEN_CLOTH_UP;
  if (ways == WAYS_START)
    cloth->given |= SQ_GIVEN_CLOTH_UP;
  set_cloth (dialog, cloth);
}

static void
on_ways_back (SqValueRow *row, Dialog *dialog)
{
  on_ways (row, WAYS_BOTH, dialog);
}

static void
on_drop (SqValueRow *row, guint half, Dialog *dialog)
{
  SqCloth *cloth = changed (dialog, 0, TRUE);
  (void) row;
  cloth->drop = half != 0 ? 0.5 : 0;
  set_cloth (dialog, cloth);
}

static void
on_drop_back (SqValueRow *row, Dialog *dialog)
{
  on_drop (row, 0, dialog);
}

/* Cloth is sold by the yard where lengths are in inches, else by the metre. */
static double
sold_m (Dialog *dialog)
{
  return sq_document_get_job (dialog->document)->units == SQ_UNIT_IN ? SQ_MM_PER_YARD / SQ_MM_PER_M
                                                                     : 1;
}

static void
on_price (SqValueRow *row, const char *text, Dialog *dialog)
{
  double price = 0;
  gboolean is_given = sq_words_read_number (text, sq_figures_decimal (), &price);
  SqCloth *cloth = changed (dialog, SQ_GIVEN_CLOTH_PRICE, is_given);
  (void) row;
  cloth->price = price / sold_m (dialog);
  set_cloth (dialog, cloth);
}

static void
on_price_back (SqValueRow *row, Dialog *dialog)
{
  on_price (row, "", dialog);
}

static const char *
check_price (const char *text)
{
  double price;
  return text[0] == '\0' || sq_words_read_number (text, sq_figures_decimal (), &price)
             ? NULL
             : _ ("Type a price as a number, without a sign of money.");
}

static void
on_bands (SqClothBands *bands, const SqCloth *cloth, Dialog *dialog)
{
  (void) bands;
  set_cloth (dialog, sq_cloth_ref (cloth));
}

/* --- showing ------------------------------------------------------------------------------- */

static void
show_kind (Dialog *dialog, const SqDefaults *house)
{
  guint kinds[SQ_N_CLOTH_CLASSES];
  const char *names[SQ_N_CLOTH_CLASSES];
  gboolean is_given = (dialog->cloth->given & SQ_GIVEN_CLOTH_CLASS) != 0;
  for (guint i = 0; i < SQ_N_CLOTH_CLASSES; i++)
    {
      kinds[i] = i;
      names[i] = sq_words_cloth_class ((SqClothClass) i);
    }
  sq_value_row_show_choice (dialog->kind, is_given ? dialog->cloth->kind : house->cloth_class,
                            kinds, names, SQ_N_CLOTH_CLASSES, is_given);
}

/* A cloth's thickness is below the step of any ruler: it is told in millimetres. */
static SqLengthStyle
thickness_style (double mm, const SqLengthStyle *style)
{
  SqLengthStyle millimetres = sq_length_style_default (SQ_UNIT_MM);
  millimetres.decimal = style->decimal;
  millimetres.with_unit = TRUE;
  return sq_words_fine_style (mm, &millimetres);
}

static void
show_lengths (Dialog *dialog, const SqJob *job)
{
  const SqCloth *cloth = dialog->cloth;
  SqClothClass kind = cloth->given & SQ_GIVEN_CLOTH_CLASS ? cloth->kind : job->defaults.cloth_class;
  const double usual[N_LENGTHS] = { [LENGTH_WIDTH] = job->defaults.cloth_width_mm,
                                    [LENGTH_THICKNESS] = job->defaults.cloth_thickness_mm[kind] };
  for (guint i = 0; i < N_LENGTHS; i++)
    {
      double mm = *(const double *) (gconstpointer) ((const char *) cloth + lengths[i].offset);
      gboolean is_given = lengths[i].given != 0 ? (cloth->given & lengths[i].given) != 0 : mm != 0;
      SqLengthStyle style = sq_figures_style (job);
      if (!is_given)
        mm = usual[i];
      if (i == LENGTH_THICKNESS)
        style = thickness_style (mm, &style);
      sq_value_row_show_length (dialog->lengths[i], mm, &style, is_given);
    }
}

static void
show_ways (Dialog *dialog)
{
  guint ways[] = { WAYS_BOTH, WAYS_END, WAYS_START }, halves[] = { 0, 1 };
  const char *names[] = { _ ("Either way"), _ ("To the roll’s end"), _ ("To its cut end") };
  const char *drops[] = { _ ("Level"), _ ("By half") };
  guint way = dialog->cloth->up_is_start ? WAYS_START : WAYS_END;
  gboolean is_half = dialog->cloth->drop > 0;
  if (!dialog->cloth->one_way)
    way = WAYS_BOTH;
  sq_value_row_show_choice (dialog->ways, way, ways, names, G_N_ELEMENTS (ways), way != WAYS_BOTH);
  sq_value_row_show_choice (dialog->drop, is_half, halves, drops, G_N_ELEMENTS (halves), is_half);
  gtk_widget_set_visible (GTK_WIDGET (dialog->drop), dialog->cloth->repeat_along_mm > 0);
}

static void
show_price (Dialog *dialog, const SqLengthStyle *style)
{
  gboolean is_given = (dialog->cloth->given & SQ_GIVEN_CLOTH_PRICE) != 0;
  g_autofree char *price = is_given
                               ? sq_words_number (dialog->cloth->price * sold_m (dialog), 2, style)
                               : g_strdup ("");
  sq_value_row_show_entry (dialog->price, price, _ ("none"), is_given);
}

static void
show_picture (Dialog *dialog, const SqJob *job, const SqLengthStyle *style)
{
  double span = sq_cloth_picture_span_mm (dialog->cloth);
  g_autofree char *wide = sq_words_length (span, style);
  /* Translators: how much of a cloth a picture shows; %s is a length. */
  g_autofree char *text = g_strdup_printf (_ ("%s of it, from the near edge"), wide);
  sq_cloth_picture_show (SQ_CLOTH_PICTURE (dialog->picture), dialog->cloth,
                         job->defaults.cloth_colour, span);
  gtk_label_set_text (GTK_LABEL (dialog->caption), text);
  gtk_widget_set_visible (dialog->caption, sq_cloth_is_striped (dialog->cloth));
}

static void
show (Dialog *dialog)
{
  const SqJob *job = sq_document_get_job (dialog->document);
  const SqCloth *cloth = dialog->cloth;
  SqLengthStyle style = sq_figures_style (job);
  gboolean has_colour = (cloth->given & SQ_GIVEN_CLOTH_COLOUR) != 0;
  sq_value_row_show_entry (dialog->name, cloth->name, _ ("as you call it"), cloth->name[0] != '\0');
  show_kind (dialog, &job->defaults);
  show_lengths (dialog, job);
  sq_value_row_show_colour (dialog->ground, has_colour ? cloth->colour : job->defaults.cloth_colour,
                            has_colour);
  show_ways (dialog);
  show_price (dialog, &style);
  sq_cloth_bands_show (SQ_CLOTH_BANDS (dialog->bands), cloth, &style);
  show_picture (dialog, job, &style);
}

/* --- the end ------------------------------------------------------------------------------- */

/* Puts it on the shelf or takes it off; FALSE: that couldn't be, and was said. */
static gboolean
settle_shelf (Dialog *dialog)
{
  gboolean is_kept = gtk_check_button_get_active (GTK_CHECK_BUTTON (dialog->keep));
  g_autofree char *path = sq_cloth_shelf_path (), *name = sq_words_cloth (dialog->cloth);
  g_autoptr (SqCloth) named = sq_cloth_dup (dialog->cloth);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  gboolean is_fine = TRUE;
  g_ref_string_release (named->name);
  named->name = g_ref_string_new (name);
  if (dialog->kept_as != NULL && (!is_kept || strcmp (dialog->kept_as, name) != 0))
    is_fine = sq_cloth_shelf_take_off (path, dialog->kept_as, &error);
  if (is_fine && is_kept)
    is_fine = sq_cloth_shelf_put (path, named, &error);
  if (!is_fine)
    sq_dialog_failed (GTK_WINDOW (dialog->window), file, TRUE, error);
  return is_fine;
}

static gboolean
on_done (gpointer data)
{
  Dialog *dialog = data;
  SqValueRow *rows[] = { dialog->name,       dialog->price,      dialog->lengths[0],
                         dialog->lengths[1], dialog->lengths[2], dialog->lengths[3] };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (!sq_value_row_take (rows[i]))
      return FALSE;
  if (!sq_cloth_bands_take (SQ_CLOTH_BANDS (dialog->bands)) || !settle_shelf (dialog))
    return FALSE;
  if (dialog->is_changed || dialog->cloth->id == 0)
    sq_edit_cloth (dialog->document, dialog->cloth, dialog->cushion,
                   dialog->has_value ? &dialog->value : NULL);
  return TRUE;
}

static void
dialog_free (gpointer data)
{
  Dialog *dialog = data;
  g_object_unref (dialog->document);
  sq_cloth_unref (dialog->cloth);
  g_free (dialog->kept_as);
  g_free (dialog);
}

/* --- making -------------------------------------------------------------------------------- */

/* Adds @row to @box. */
static SqValueRow *
add (Dialog *dialog, GtkWidget *box, GtkWidget *row, const char *signal, GCallback given,
     GCallback back)
{
  g_signal_connect (row, signal, given, dialog);
  g_signal_connect (row, "back", back, dialog);
  gtk_box_append (GTK_BOX (box), row);
  return SQ_VALUE_ROW (row);
}

static void
add_length (Dialog *dialog, GtkWidget *box, ClothLength i, const char *name)
{
  dialog->lengths[i] = add (dialog, box, sq_value_row_new_length (name), "length",
                            G_CALLBACK (on_length), G_CALLBACK (on_length_back));
}

static GtkWidget *
new_left (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  gboolean is_yard = sq_document_get_job (dialog->document)->units == SQ_UNIT_IN;
  dialog->name = add (dialog, box, sq_value_row_new_entry (_ ("_Name"), NULL), "text",
                      G_CALLBACK (on_name), G_CALLBACK (on_name_back));
  dialog->kind = add (dialog, box, sq_value_row_new_choice (_ ("_Class")), "choice",
                      G_CALLBACK (on_kind), G_CALLBACK (on_kind_back));
  add_length (dialog, box, LENGTH_WIDTH, _ ("Usable _width"));
  add_length (dialog, box, LENGTH_THICKNESS, _ ("_Thickness"));
  dialog->ways = add (dialog, box, sq_value_row_new_choice (_ ("_Up points")), "choice",
                      G_CALLBACK (on_ways), G_CALLBACK (on_ways_back));
  dialog->price = add (dialog, box,
                       sq_value_row_new_number (
                           is_yard ? _ ("_Price of a yard") : _ ("_Price of a metre"), check_price),
                       "text", G_CALLBACK (on_price), G_CALLBACK (on_price_back));
  dialog->ground = add (dialog, box, sq_value_row_new_colour (_ ("C_olour")), "choice",
                        G_CALLBACK (on_ground), G_CALLBACK (on_ground_back));
  gtk_box_append (GTK_BOX (box), sq_form_heading (_ ("Pattern recurs")));
  add_length (dialog, box, LENGTH_ACROSS, _ ("Acro_ss"));
  add_length (dialog, box, LENGTH_ALONG, _ ("A_long"));
  dialog->drop = add (dialog, box, sq_value_row_new_choice (_ ("Ne_xt column")), "choice",
                      G_CALLBACK (on_drop), G_CALLBACK (on_drop_back));
  gtk_widget_set_hexpand (box, TRUE);
  return box;
}

static GtkWidget *
new_right (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  dialog->picture = sq_cloth_picture_new (320, 120);
  dialog->caption = gtk_label_new (NULL);
  dialog->bands = sq_cloth_bands_new ();
  g_signal_connect (dialog->bands, "edited", G_CALLBACK (on_bands), dialog);
  gtk_widget_add_css_class (dialog->picture, "swatch");
  gtk_widget_add_css_class (dialog->caption, "dim");
  gtk_label_set_xalign (GTK_LABEL (dialog->caption), 0);
  gtk_box_append (GTK_BOX (box), dialog->picture);
  gtk_box_append (GTK_BOX (box), dialog->caption);
  gtk_box_append (GTK_BOX (box), sq_form_heading (_ ("Bands along the roll")));
  gtk_box_append (GTK_BOX (box), dialog->bands);
  return box;
}

static GtkWidget *
new_content (Dialog *dialog)
{
  GtkWidget *columns = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 28);
  GtkWidget *all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 14);
  dialog->keep = sq_form_check (_ ("_Keep it on the shelf for other jobs"));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (dialog->keep), dialog->kept_as != NULL);
  gtk_box_append (GTK_BOX (columns), new_left (dialog));
  gtk_box_append (GTK_BOX (columns), new_right (dialog));
  gtk_box_append (GTK_BOX (all), columns);
  gtk_box_append (GTK_BOX (all), dialog->keep);
  return all;
}

/* Whether the shelf has one of this name; it can't be told where it can't be read. */
static gboolean
is_on_shelf (const char *name)
{
  g_autofree char *path = sq_cloth_shelf_path ();
  g_autoptr (GPtrArray) kept = sq_cloth_shelf_load (path, NULL);
  for (guint i = 0; kept != NULL && i < kept->len; i++)
    if (strcmp (((const SqCloth *) g_ptr_array_index (kept, i))->name, name) == 0)
      return TRUE;
  return FALSE;
}

void
sq_cloth_dialog (GtkWindow *parent, SqDocument *document, const SqCloth *cloth, SqId cushion,
                 const SqChoiceValue *value)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  g_autofree char *name = sq_words_cloth (cloth);
  gboolean is_new = cloth == NULL;
  dialog->document = g_object_ref (document);
  dialog->cloth = is_new ? sq_cloth_new (0) : sq_cloth_ref (cloth);
  dialog->cushion = cushion;
  dialog->has_value = value != NULL;
  dialog->value = value != NULL ? *value : SQ_CHOICE_CLOTH_FACE;
  if (!is_new && is_on_shelf (name))
    dialog->kept_as = g_strdup (name);
  dialog->window = sq_form_new (parent, is_new ? _ ("New cloth") : name,
                                is_new ? _ ("_Add") : _ ("C_hange"), new_content (dialog), on_done,
                                dialog, dialog_free);
  show (dialog);
  gtk_window_present (GTK_WINDOW (dialog->window));
}
