/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/start-page.h"

#include "base/units.h"
#include "exchange/defaults-file.h"
#include "exchange/job-file.h"
#include "window/cushion-picture.h"
#include "window/figures.h"
#include "window/length-entry.h"
#include "window/samples.h"

#include <glib/gi18n.h>
#include <langinfo.h>

enum
{
  WIDTH,
  DEPTH,
  THICKNESS,
  N_LENGTHS
};

struct _SqStartPage
{
  GtkWidget parent;
  GtkWidget *content;
  GtkWidget *entries[N_LENGTHS], *picture, *make, *note;
  SqUnit units;
  SqDefaults defaults;
};

G_DEFINE_TYPE (SqStartPage, sq_start_page, GTK_TYPE_WIDGET)

static guint start_signal, sample_signal;

/* What stands there at first: in inches, in mm. */
static const double usual_mm[][N_LENGTHS] = {
  { 18 * SQ_MM_PER_INCH, 18 * SQ_MM_PER_INCH, 3 * SQ_MM_PER_INCH },
  { 450, 450, 80 },
};

SqJob *
sq_start_job (const SqDefaults *defaults, SqUnit units, double width_mm, double depth_mm,
              double thickness_mm)
{
  const SqCorner corners[] = {
    { .id = 1, .at = { 0, 0 }, .front = TRUE },
    { .id = 2, .at = { width_mm, 0 } },
    { .id = 3, .at = { width_mm, depth_mm } },
    { .id = 4, .at = { 0, depth_mm } },
  };
  guint n = G_N_ELEMENTS (corners);
  g_autoptr (SqOutline) outline = sq_outline_new (corners, &n, 1);
  g_autoptr (SqCushion) cushion = sq_cushion_new (1, outline);
  g_autoptr (SqJob) bare = sq_job_new (defaults);
  SqJob *job;
  cushion->thickness_mm = thickness_mm;
  cushion->given |= SQ_GIVEN_THICKNESS;
  job = sq_job_with_cushion (bare, cushion);
  job->units = units;
  job->units_given = TRUE;
  return job;
}

/* Whether the user's country measures in inches. */
static SqUnit
usual_units (void)
{
  const char *measure = nl_langinfo (_NL_MEASUREMENT_MEASUREMENT);
  return measure != NULL && measure[0] == 2 ? SQ_UNIT_IN : SQ_UNIT_MM;
}

/* --- the three lengths --------------------------------------------------------------------- */

/* The job the entries make; NULL if one can't be read or is nothing. */
static SqJob *
read_job (SqStartPage *page)
{
  double mm[N_LENGTHS];
  for (guint i = 0; i < N_LENGTHS; i++)
    if (!sq_length_entry_read (SQ_LENGTH_ENTRY (page->entries[i]), &mm[i]) || !(mm[i] > 0))
      return NULL;
  return sq_start_job (&page->defaults, page->units, mm[WIDTH], mm[DEPTH], mm[THICKNESS]);
}

static void
on_typed (SqStartPage *page)
{
  g_autoptr (SqJob) job = read_job (page);
  g_autoptr (SqPlan) plan = job != NULL ? sq_plan_new (job, NULL) : NULL;
  gtk_widget_set_sensitive (page->make, job != NULL);
  if (plan != NULL)
    sq_cushion_picture_show (SQ_CUSHION_PICTURE (page->picture), plan, 0);
}

static void
on_make (SqStartPage *page)
{
  g_autoptr (SqJob) job = read_job (page);
  if (job != NULL)
    g_signal_emit (page, start_signal, 0, job);
}

static void
on_mistake (SqStartPage *page, const char *text)
{
  gtk_label_set_text (GTK_LABEL (page->note), text);
}

static SqLengthStyle
entry_style (SqStartPage *page)
{
  SqLengthStyle style = sq_length_style_default (page->units);
  style.decimal = sq_figures_decimal ();
  style.with_unit = TRUE;
  return style;
}

static void
on_given (SqLengthEntry *entry, double mm, SqStartPage *page)
{
  SqLengthStyle style = entry_style (page);
  sq_length_entry_show (entry, mm, &style, FALSE);
}

static void
add_entry (SqStartPage *page, GtkGrid *grid, int i, const char *name)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (name);
  GtkWidget *entry = sq_length_entry_new ();
  SqLengthStyle style = entry_style (page);
  page->entries[i] = entry;
  sq_length_entry_show (SQ_LENGTH_ENTRY (entry), usual_mm[page->units != SQ_UNIT_IN][i], &style,
                        TRUE);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), entry);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  label, NULL, -1);
  g_signal_connect (entry, "given", G_CALLBACK (on_given), page);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (on_typed), page);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (on_make), page);
  g_signal_connect_swapped (entry, "mistake", G_CALLBACK (on_mistake), page);
  gtk_grid_attach (grid, label, 0, i, 1, 1);
  gtk_grid_attach (grid, entry, 1, i, 1, 1);
}

static GtkWidget *
new_first_cushion (SqStartPage *page)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 36);
  GtkWidget *fields = gtk_box_new (GTK_ORIENTATION_VERTICAL, 14);
  GtkWidget *grid = gtk_grid_new ();
  page->picture = sq_cushion_picture_new (220, 190);
  page->make = gtk_button_new_with_mnemonic (_ ("_Make the cushion"));
  page->note = gtk_label_new (NULL);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 10);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  add_entry (page, GTK_GRID (grid), WIDTH, _ ("_Width"));
  add_entry (page, GTK_GRID (grid), DEPTH, _ ("_Depth"));
  add_entry (page, GTK_GRID (grid), THICKNESS, _ ("_Thickness"));
  gtk_widget_add_css_class (page->make, "suggested-action");
  gtk_widget_add_css_class (page->note, "mistake");
  gtk_label_set_wrap (GTK_LABEL (page->note), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (page->note), 28);
  gtk_label_set_xalign (GTK_LABEL (page->note), 0);
  g_signal_connect_swapped (page->make, "clicked", G_CALLBACK (on_make), page);
  gtk_box_append (GTK_BOX (fields), grid);
  gtk_box_append (GTK_BOX (fields), page->make);
  gtk_box_append (GTK_BOX (fields), page->note);
  gtk_widget_set_valign (fields, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (box), page->picture);
  gtk_box_append (GTK_BOX (box), fields);
  gtk_widget_set_halign (box, GTK_ALIGN_CENTER);
  return box;
}

/* --- samples ------------------------------------------------------------------------------- */

static void
on_sample (GtkButton *button, SqStartPage *page)
{
  g_signal_emit (page, sample_signal, 0, g_object_get_data (G_OBJECT (button), "file"));
}

/* A button for the sample, or NULL if it can't be read. */
static GtkWidget *
new_sample (SqStartPage *page, GFile *file)
{
  g_autofree char *path = g_file_get_path (file);
  g_autoptr (SqJob) job = sq_job_load (path, &page->defaults, NULL);
  g_autoptr (SqPlan) plan = job != NULL ? sq_plan_new (job, NULL) : NULL;
  GtkWidget *button, *box, *picture, *label;
  if (plan == NULL || plan->covers->len == 0)
    return NULL;
  button = gtk_button_new ();
  box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  picture = sq_cushion_picture_new (108, 64);
  label = gtk_label_new (job->title != NULL ? job->title : path);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 16);
  sq_cushion_picture_show (SQ_CUSHION_PICTURE (picture), plan, 0);
  gtk_box_append (GTK_BOX (box), picture);
  gtk_box_append (GTK_BOX (box), label);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  gtk_label_get_text (GTK_LABEL (label)), -1);
  gtk_widget_add_css_class (button, "sample");
  g_object_set_data_full (G_OBJECT (button), "file", g_object_ref (file), g_object_unref);
  g_signal_connect (button, "clicked", G_CALLBACK (on_sample), page);
  return button;
}

static GtkWidget *
new_samples (SqStartPage *page)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  g_autoptr (GPtrArray) files = sq_samples_list ();
  for (guint i = 0; i < files->len; i++)
    {
      GtkWidget *button = new_sample (page, g_ptr_array_index (files, i));
      if (button != NULL)
        gtk_box_append (GTK_BOX (box), button);
    }
  gtk_widget_set_halign (box, GTK_ALIGN_CENTER);
  return box;
}

/* --- the page ------------------------------------------------------------------------------ */

static GtkWidget *
add_words (SqStartPage *page, const char *text, const char *class)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_widget_add_css_class (label, class);
  gtk_box_append (GTK_BOX (page->content), label);
  return label;
}

static void
fill (SqStartPage *page)
{
  GtkWidget *open = gtk_button_new_with_mnemonic (_ ("_Open a job…"));
  add_words (page, _ ("A new cushion"), "title-1");
  add_words (page, _ ("Three lengths make the first one. Its corners can be dragged afterwards."),
             "dim");
  gtk_box_append (GTK_BOX (page->content), new_first_cushion (page));
  add_words (page, _ ("Or begin with one of these"), "dim");
  gtk_box_append (GTK_BOX (page->content), new_samples (page));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (open), "win.open");
  gtk_widget_set_halign (open, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (page->content), open);
}

static void
sq_start_page_dispose (GObject *object)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (object));
  if (child != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (sq_start_page_parent_class)->dispose (object);
}

static gboolean
sq_start_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (SQ_START_PAGE (widget)->entries[WIDTH]);
}

static void
sq_start_page_class_init (SqStartPageClass *class)
{
  GType type = G_TYPE_FROM_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_start_page_dispose;
  widget_class->grab_focus = sq_start_page_grab_focus;
  start_signal = g_signal_new ("start", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                               1, G_TYPE_POINTER);
  sample_signal = g_signal_new ("sample", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                1, G_TYPE_FILE);
  gtk_widget_class_set_css_name (widget_class, "startpage");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sq_start_page_init (SqStartPage *page)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  page->units = usual_units ();
  sq_defaults_builtin (&page->defaults);
  page->content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  gtk_widget_set_valign (page->content, GTK_ALIGN_CENTER);
  gtk_widget_set_halign (page->content, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (page->content, "invitation");
  fill (page);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), page->content);
  gtk_widget_set_parent (scrolled, GTK_WIDGET (page));
  on_typed (page);
}
