/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/tape-maker.h"

#include "exchange/cloth-shelf.h"
#include "exchange/defaults-file.h"
#include "exchange/job-file.h"
#include "plan/plan.h"
#include "window/cloth-item.h"
#include "window/first-job.h"
#include "window/length-entry.h"
#include "window/samples.h"
#include "window/side-taps.h"
#include "window/tape-list.h"
#include "window/tape-picture.h"
#include "words/names.h"

#include <glib/gi18n.h>

/* Ways of building to choose from. */
static const SqBuild builds[] = { SQ_BUILD_BOXED, SQ_BUILD_FOLDED_CORNER };

struct _SqTapeMaker
{
  GtkWidget parent;
  GtkWidget *content, *list, *fields, *picture, *taps, *thickness, *build, *cloth, *make, *note;
  SqUnit units;
  SqDefaults defaults;
};

G_DEFINE_TYPE (SqTapeMaker, sq_tape_maker, GTK_TYPE_WIDGET)

static guint made_signal;

/* --- what it makes ------------------------------------------------------------------------- */

/* @job, its cushion being of the cloth that is chosen. New. */
static SqJob *
with_cloth (SqTapeMaker *maker, const SqJob *job)
{
  SqClothItem *item = maker->cloth != NULL
                          ? gtk_drop_down_get_selected_item (GTK_DROP_DOWN (maker->cloth))
                          : NULL;
  const SqCloth *cloth = item != NULL ? sq_cloth_item_cloth (item) : NULL;
  g_autoptr (SqCloth) own = NULL;
  if (cloth == NULL)
    return sq_job_ref ((SqJob *) job);
  own = sq_cloth_dup (cloth);
  own->id = 1;
  return sq_job_with_cloth (job, own);
}

SqJob *
sq_tape_maker_read (SqTapeMaker *maker)
{
  const SqOutline *bare;
  double thickness;
  g_return_val_if_fail (SQ_IS_TAPE_MAKER (maker), NULL);
  bare = sq_tape_list_outline (SQ_TAPE_LIST (maker->list));
  if (bare == NULL || !sq_length_entry_read (SQ_LENGTH_ENTRY (maker->thickness), &thickness)
      || !(thickness > 0))
    return NULL;
  g_autoptr (SqOutline) outline = sq_first_job_outline (
      bare, sq_side_taps_kinds (SQ_SIDE_TAPS (maker->taps)), maker->units, &maker->defaults);
  g_autoptr (SqJob) job = sq_first_job_new (outline, thickness, maker->units, &maker->defaults);
  g_autoptr (SqCushion) cushion = sq_cushion_dup (g_ptr_array_index (job->cushions, 0));
  cushion->build = builds[gtk_drop_down_get_selected (GTK_DROP_DOWN (maker->build))];
  cushion->given |= SQ_GIVEN_BUILD;
  g_autoptr (SqJob) built = sq_job_with_cushion (job, cushion);
  return with_cloth (maker, built);
}

static void
show (SqTapeMaker *maker)
{
  g_autoptr (SqJob) job = sq_tape_maker_read (maker);
  g_autoptr (SqPlan) plan = job != NULL ? sq_plan_new (job, NULL) : NULL;
  guint n;
  const SqPoint *corners = sq_tape_list_corners (SQ_TAPE_LIST (maker->list), &n);
  sq_tape_picture_show (SQ_TAPE_PICTURE (maker->picture), plan, corners, n);
  if (maker->make != NULL)
    gtk_widget_set_sensitive (maker->make, job != NULL);
}

static void
on_make (SqTapeMaker *maker)
{
  g_autoptr (SqJob) job = sq_tape_maker_read (maker);
  if (job != NULL)
    g_signal_emit (maker, made_signal, 0, job);
}

static void
on_done (SqTapeMaker *maker)
{
  gtk_widget_grab_focus (maker->thickness);
}

static void
on_thickness (SqLengthEntry *entry, double mm, SqTapeMaker *maker)
{
  SqLengthStyle style = sq_first_job_style (maker->units);
  sq_length_entry_show (entry, mm, &style, FALSE);
}

static void
on_mistake (SqTapeMaker *maker, const char *text)
{
  gtk_label_set_text (GTK_LABEL (maker->note), text);
  gtk_widget_set_visible (maker->note, text[0] != '\0');
}

/* --- cloths at hand ------------------------------------------------------------------------ */

static void
add_cloth (GListStore *cloths, const SqCloth *cloth, guint32 plain)
{
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (cloths)); i++)
    {
      g_autoptr (SqClothItem) other = g_list_model_get_item (G_LIST_MODEL (cloths), i);
      const SqCloth *there = sq_cloth_item_cloth (other);
      if (there != NULL && g_strcmp0 (there->name, cloth->name) == 0)
        return;
    }
  g_autoptr (SqClothItem) item = sq_cloth_item_new (cloth, plain, NULL);
  g_list_store_append (cloths, item);
}

/* No cloth yet; those on the shelf; those of the samples. */
static GListModel *
new_cloths (const SqDefaults *defaults)
{
  GListStore *cloths = g_list_store_new (SQ_TYPE_CLOTH_ITEM);
  g_autoptr (SqClothItem) none = sq_cloth_item_new (NULL, defaults->cloth_colour, _ ("Plain"));
  g_autofree char *path = sq_cloth_shelf_path ();
  g_autoptr (GPtrArray) shelf = sq_cloth_shelf_load (path, NULL);
  g_autoptr (GPtrArray) samples = sq_samples_list ();
  g_list_store_append (cloths, none);
  for (guint i = 0; shelf != NULL && i < shelf->len; i++)
    add_cloth (cloths, g_ptr_array_index (shelf, i), defaults->cloth_colour);
  for (guint i = 0; i < samples->len; i++)
    {
      g_autofree char *file = g_file_get_path (g_ptr_array_index (samples, i));
      g_autoptr (SqJob) job = sq_job_load (file, defaults, NULL);
      for (guint j = 0; job != NULL && j < job->cloths->len; j++)
        add_cloth (cloths, g_ptr_array_index (job->cloths, j), defaults->cloth_colour);
    }
  return G_LIST_MODEL (cloths);
}

static GtkWidget *
new_cloth (SqTapeMaker *maker)
{
  GtkWidget *cloth = gtk_drop_down_new (new_cloths (&maker->defaults), NULL);
  g_autoptr (GtkListItemFactory) factory = sq_cloth_item_factory (16);
  g_autoptr (GtkListItemFactory) list_factory = sq_cloth_item_factory (0);
  gtk_drop_down_set_factory (GTK_DROP_DOWN (cloth), factory);
  gtk_drop_down_set_list_factory (GTK_DROP_DOWN (cloth), list_factory);
  g_signal_connect_swapped (cloth, "notify::selected", G_CALLBACK (show), maker);
  return cloth;
}

/* --- the widget ---------------------------------------------------------------------------- */

static void
attach (SqTapeMaker *maker, GtkWidget *field, const char *name, int row)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (name);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), field);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  label, NULL, -1);
  gtk_widget_set_hexpand (field, TRUE);
  gtk_grid_attach (GTK_GRID (maker->fields), label, 0, row, 1, 1);
  gtk_grid_attach (GTK_GRID (maker->fields), field, 1, row, 1, 1);
}

static GtkWidget *
new_thickness (SqTapeMaker *maker, double mm)
{
  GtkWidget *entry = sq_length_entry_new ();
  SqLengthStyle style = sq_first_job_style (maker->units);
  sq_length_entry_show (SQ_LENGTH_ENTRY (entry), mm, &style, TRUE);
  gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
  g_signal_connect (entry, "given", G_CALLBACK (on_thickness), maker);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (show), maker);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (on_make), maker);
  g_signal_connect_swapped (entry, "mistake", G_CALLBACK (on_mistake), maker);
  return entry;
}

static GtkWidget *
new_build (SqTapeMaker *maker, SqBuild now)
{
  const char *names[G_N_ELEMENTS (builds) + 1] = { NULL };
  GtkWidget *build;
  for (guint i = 0; i < G_N_ELEMENTS (builds); i++)
    names[i] = sq_words_build (builds[i]);
  build = gtk_drop_down_new_from_strings (names);
  for (guint i = 0; i < G_N_ELEMENTS (builds); i++)
    if (builds[i] == now)
      gtk_drop_down_set_selected (GTK_DROP_DOWN (build), i);
  g_signal_connect_swapped (build, "notify::selected", G_CALLBACK (show), maker);
  return build;
}

static GtkWidget *
new_figures (SqTapeMaker *maker)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  maker->note = gtk_label_new (NULL);
  gtk_widget_add_css_class (maker->note, "mistake");
  gtk_label_set_wrap (GTK_LABEL (maker->note), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (maker->note), 38);
  gtk_label_set_xalign (GTK_LABEL (maker->note), 0);
  gtk_widget_set_visible (maker->note, FALSE);
  gtk_box_append (GTK_BOX (box), maker->list);
  gtk_box_append (GTK_BOX (box), maker->fields);
  gtk_box_append (GTK_BOX (box), maker->note);
  return box;
}

static void
add_button (SqTapeMaker *maker, GtkWidget *box)
{
  maker->make = gtk_button_new_with_mnemonic (_ ("_Make the cushion"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (maker->make), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Make the cushion"), -1);
  gtk_widget_add_css_class (maker->make, "suggested-action");
  g_signal_connect_swapped (maker->make, "clicked", G_CALLBACK (on_make), maker);
  gtk_box_append (GTK_BOX (box), maker->make);
}

GtkWidget *
sq_tape_maker_new (const SqJob *job, const SqCushion *like)
{
  SqTapeMaker *maker = g_object_new (SQ_TYPE_TAPE_MAKER, NULL);
  gboolean has_thickness = like != NULL && (like->given & SQ_GIVEN_THICKNESS);
  gboolean has_build = like != NULL && (like->given & SQ_GIVEN_BUILD);
  GtkWidget *figures;
  double thickness_mm;
  maker->units = job != NULL ? job->units : sq_first_job_units ();
  if (job != NULL)
    maker->defaults = job->defaults;
  thickness_mm = has_thickness ? like->thickness_mm : maker->defaults.thickness_mm;
  maker->list = sq_tape_list_new (maker->units, maker->units == SQ_UNIT_IN
                                                    ? maker->defaults.step_in_mm
                                                    : maker->defaults.step_mm_mm);
  g_signal_connect_swapped (maker->list, "changed", G_CALLBACK (show), maker);
  g_signal_connect_swapped (maker->list, "done", G_CALLBACK (on_done), maker);
  if (job == NULL)
    thickness_mm = sq_first_job_rounded_mm (maker->units, thickness_mm);
  maker->thickness = new_thickness (maker, thickness_mm);
  maker->build = new_build (maker, has_build ? like->build : maker->defaults.build);
  attach (maker, maker->thickness, _ ("_Thickness"), 0);
  attach (maker, maker->build, _ ("_Cover"), 1);
  figures = new_figures (maker);
  if (like == NULL)
    {
      maker->cloth = new_cloth (maker);
      attach (maker, maker->cloth, _ ("C_loth"), 2);
      add_button (maker, figures);
    }
  gtk_box_append (GTK_BOX (maker->content), maker->taps);
  gtk_box_append (GTK_BOX (maker->content), figures);
  show (maker);
  return GTK_WIDGET (maker);
}

/* Tab comes to all that is in it; its first figure is only where it begins. */
static gboolean
sq_tape_maker_focus (GtkWidget *widget, GtkDirectionType direction)
{
  return gtk_widget_child_focus (gtk_widget_get_first_child (widget), direction);
}

static gboolean
sq_tape_maker_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (SQ_TAPE_MAKER (widget)->list);
}

static void
sq_tape_maker_dispose (GObject *object)
{
  g_clear_pointer (&SQ_TAPE_MAKER (object)->content, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_tape_maker_parent_class)->dispose (object);
}

static void
sq_tape_maker_class_init (SqTapeMakerClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_tape_maker_dispose;
  GTK_WIDGET_CLASS (class)->focus = sq_tape_maker_focus;
  GTK_WIDGET_CLASS (class)->grab_focus = sq_tape_maker_grab_focus;
  made_signal = g_signal_new ("made", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                              NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
sq_tape_maker_init (SqTapeMaker *maker)
{
  sq_defaults_builtin (&maker->defaults);
  maker->content = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);
  gtk_widget_set_halign (maker->content, GTK_ALIGN_CENTER);
  gtk_widget_set_parent (maker->content, GTK_WIDGET (maker));
  maker->picture = sq_tape_picture_new (240, 240);
  maker->taps = sq_side_taps_new (maker->picture);
  g_signal_connect_swapped (maker->taps, "changed", G_CALLBACK (show), maker);
  maker->fields = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (maker->fields), 6);
  gtk_grid_set_column_spacing (GTK_GRID (maker->fields), 18);
}
