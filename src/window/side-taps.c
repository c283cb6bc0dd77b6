/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/side-taps.h"

#include "words/names.h"

#include <glib/gi18n.h>

/* What a tap on a side goes through. */
static const SqEdgeKind tapped[] = { SQ_EDGE_FREE, SQ_EDGE_WALL, SQ_EDGE_WELL, SQ_EDGE_ARM };

struct _SqSideTaps
{
  GtkWidget parent;
  GtkWidget *grid, *sides[SQ_N_TOWARDS];
  SqEdgeKind kinds[SQ_N_TOWARDS];
};

G_DEFINE_TYPE (SqSideTaps, sq_side_taps, GTK_TYPE_WIDGET)

static guint changed_signal;

static void
show_side (SqSideTaps *taps, guint side)
{
  static const SqSideOf names[SQ_N_TOWARDS] = { SQ_SIDE_FRONT, SQ_SIDE_RIGHT, SQ_SIDE_BACK,
                                                SQ_SIDE_LEFT };
  /* Translators: a side of the seat and what stands there: "Back: Wall". */
  g_autofree char *name = g_strdup_printf (_ ("%s: %s"), sq_words_side (names[side]),
                                           sq_words_edge_kind (taps->kinds[side]));
  gtk_button_set_label (GTK_BUTTON (taps->sides[side]), name);
}

static SqEdgeKind
next_kind (SqEdgeKind kind)
{
  guint i = 0;
  while (tapped[i] != kind)
    i++;
  return tapped[(i + 1) % G_N_ELEMENTS (tapped)];
}

static void
on_side (GtkButton *button, SqSideTaps *taps)
{
  for (guint i = 0; i < SQ_N_TOWARDS; i++)
    if (taps->sides[i] == GTK_WIDGET (button))
      {
        taps->kinds[i] = next_kind (taps->kinds[i]);
        show_side (taps, i);
      }
  g_signal_emit (taps, changed_signal, 0);
}

const SqEdgeKind *
sq_side_taps_kinds (SqSideTaps *taps)
{
  g_return_val_if_fail (SQ_IS_SIDE_TAPS (taps), NULL);
  return taps->kinds;
}

GtkWidget *
sq_side_taps_new (GtkWidget *picture)
{
  SqSideTaps *taps = g_object_new (SQ_TYPE_SIDE_TAPS, NULL);
  gtk_grid_attach (GTK_GRID (taps->grid), picture, 1, 1, 1, 1);
  return GTK_WIDGET (taps);
}

static void
sq_side_taps_dispose (GObject *object)
{
  g_clear_pointer (&SQ_SIDE_TAPS (object)->grid, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_side_taps_parent_class)->dispose (object);
}

static void
sq_side_taps_class_init (SqSideTapsClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_side_taps_dispose;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
sq_side_taps_init (SqSideTaps *taps)
{
  static const int places[SQ_N_TOWARDS][2] = { { 1, 2 }, { 2, 1 }, { 1, 0 }, { 0, 1 } };
  taps->grid = gtk_grid_new ();
  /* The seat's right is right in every language. */
  gtk_widget_set_direction (taps->grid, GTK_TEXT_DIR_LTR);
  gtk_grid_set_row_spacing (GTK_GRID (taps->grid), 8);
  gtk_grid_set_column_spacing (GTK_GRID (taps->grid), 8);
  gtk_widget_set_parent (taps->grid, GTK_WIDGET (taps));
  for (guint i = 0; i < SQ_N_TOWARDS; i++)
    {
      taps->kinds[i] = tapped[0];
      taps->sides[i] = gtk_button_new ();
      gtk_widget_set_tooltip_text (taps->sides[i], _ ("What stands at this side"));
      gtk_widget_set_halign (taps->sides[i], GTK_ALIGN_CENTER);
      gtk_widget_set_valign (taps->sides[i], GTK_ALIGN_CENTER);
      gtk_widget_add_css_class (taps->sides[i], "side");
      gtk_grid_attach (GTK_GRID (taps->grid), taps->sides[i], places[i][0], places[i][1], 1, 1);
      g_signal_connect (taps->sides[i], "clicked", G_CALLBACK (on_side), taps);
      show_side (taps, i);
    }
}
