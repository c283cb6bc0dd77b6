/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/start-page.h"

#include "exchange/defaults-file.h"
#include "exchange/job-file.h"
#include "window/cushion-picture.h"
#include "window/samples.h"
#include "window/seat-maker.h"
#include "window/settings.h"
#include "window/tape-maker.h"

#include <glib/gi18n.h>

struct _SqStartPage
{
  GtkWidget parent;
  GtkWidget *content, *ways;
  SqDefaults defaults;
};

G_DEFINE_TYPE (SqStartPage, sq_start_page, GTK_TYPE_WIDGET)

static guint start_signal, sample_signal;

static void
on_made (SqStartPage *page, SqJob *job)
{
  g_signal_emit (page, start_signal, 0, job);
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

#define SAMPLES_IN_A_ROW 5

static GtkWidget *
new_samples (SqStartPage *page)
{
  GtkWidget *grid = gtk_grid_new ();
  g_autoptr (GPtrArray) files = sq_samples_list ();
  int shown = 0;
  for (guint i = 0; i < files->len; i++)
    {
      GtkWidget *button = new_sample (page, g_ptr_array_index (files, i));
      if (button != NULL)
        {
          gtk_grid_attach (GTK_GRID (grid), button, shown % SAMPLES_IN_A_ROW,
                           shown / SAMPLES_IN_A_ROW, 1, 1);
          shown++;
        }
    }
  gtk_grid_set_row_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_widget_set_halign (grid, GTK_ALIGN_CENTER);
  return grid;
}

/* --- recent jobs --------------------------------------------------------------------------- */

#define MOST_SHOWN 5

static GtkWidget *
new_recent (GPtrArray *files)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  for (guint i = 0; i < MIN (files->len, MOST_SHOWN); i++)
    {
      GFile *file = g_ptr_array_index (files, i);
      g_autofree char *path = g_file_get_basename (file);
      g_autofree char *name = g_filename_display_name (path);
      g_autofree char *where = g_file_get_parse_name (file);
      g_autofree char *uri = g_file_get_uri (file);
      GtkWidget *button = gtk_button_new (), *label = gtk_label_new (name);
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_MIDDLE);
      gtk_label_set_max_width_chars (GTK_LABEL (label), 20);
      gtk_button_set_child (GTK_BUTTON (button), label);
      gtk_widget_set_tooltip_text (button, where);
      gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                      -1);
      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.open-recent");
      gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", uri);
      gtk_box_append (GTK_BOX (box), button);
    }
  gtk_widget_set_halign (box, GTK_ALIGN_CENTER);
  return box;
}

/* --- the page ------------------------------------------------------------------------------ */

static void
add_words (SqStartPage *page, const char *text, const char *class)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_widget_add_css_class (label, class);
  gtk_box_append (GTK_BOX (page->content), label);
}

static void
add_way (SqStartPage *page, GtkWidget *maker, const char *name, const char *title,
         const char *words)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 14);
  GtkWidget *label = gtk_label_new (words);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_widget_add_css_class (label, "dim");
  g_signal_connect_swapped (maker, "made", G_CALLBACK (on_made), page);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), maker);
  gtk_stack_add_titled (GTK_STACK (page->ways), box, name, title);
}

/* The way that is chosen: its first figure can be typed at once, and the others are hidden from
 * screen readers too. */
static void
on_way (SqStartPage *page)
{
  GtkWidget *now = gtk_stack_get_visible_child (GTK_STACK (page->ways));
  for (GtkWidget *way = gtk_widget_get_first_child (page->ways); way != NULL;
       way = gtk_widget_get_next_sibling (way))
    gtk_widget_set_visible (gtk_widget_get_last_child (way), way == now);
  gtk_widget_grab_focus (gtk_widget_get_last_child (now));
}

static void
add_ways (SqStartPage *page)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *switcher = gtk_stack_switcher_new ();
  GtkWidget *draw = gtk_button_new_with_mnemonic (_ ("_Draw it"));
  page->ways = gtk_stack_new ();
  gtk_stack_set_vhomogeneous (GTK_STACK (page->ways), FALSE);
  gtk_stack_set_hhomogeneous (GTK_STACK (page->ways), FALSE);
  add_way (page, sq_seat_maker_new (), "shape", _ ("From a shape"),
           _ ("Choose its shape, type its lengths, and tap what stands at each side. Its corners "
              "can be dragged afterwards."));
  add_way (page, sq_tape_maker_new (NULL, NULL), "sides", _ ("From its sides"),
           _ ("Begin at the left end of the front and go round to the right, as the tape does. The "
              "last side follows from the others: leave it empty."));
  gtk_stack_switcher_set_stack (GTK_STACK_SWITCHER (switcher), GTK_STACK (page->ways));
  gtk_box_append (GTK_BOX (row), switcher);
  gtk_box_append (GTK_BOX (row), draw);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (draw), "win.cushion-draw");
  gtk_accessible_update_property (GTK_ACCESSIBLE (draw), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Draw it"), -1);
  gtk_widget_set_halign (row, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (page->ways, "notify::visible-child", G_CALLBACK (on_way), page);
  gtk_box_append (GTK_BOX (page->content), row);
  gtk_box_append (GTK_BOX (page->content), page->ways);
}

static void
fill (SqStartPage *page)
{
  g_autoptr (GPtrArray) recent = sq_settings_recent ();
  add_words (page, _ ("A new cushion"), "title-1");
  add_ways (page);
  if (recent->len > 0)
    {
      add_words (page, _ ("Or go on with one of these"), "dim");
      gtk_box_append (GTK_BOX (page->content), new_recent (recent));
    }
  add_words (page, _ ("Or begin with one of these"), "dim");
  gtk_box_append (GTK_BOX (page->content), new_samples (page));
}

static void
sq_start_page_dispose (GObject *object)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (object));
  if (child != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (sq_start_page_parent_class)->dispose (object);
}

/* Tab comes to all that is in it; its first figure is only where it begins. */
static gboolean
sq_start_page_focus (GtkWidget *widget, GtkDirectionType direction)
{
  return gtk_widget_child_focus (gtk_widget_get_first_child (widget), direction);
}

static gboolean
sq_start_page_grab_focus (GtkWidget *widget)
{
  on_way (SQ_START_PAGE (widget));
  return TRUE;
}

static void
sq_start_page_class_init (SqStartPageClass *class)
{
  GType type = G_TYPE_FROM_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_start_page_dispose;
  widget_class->focus = sq_start_page_focus;
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
  sq_defaults_builtin (&page->defaults);
  page->content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 14);
  gtk_widget_set_valign (page->content, GTK_ALIGN_CENTER);
  gtk_widget_set_halign (page->content, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (page->content, "invitation");
  fill (page);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), page->content);
  gtk_widget_set_parent (scrolled, GTK_WIDGET (page));
}
