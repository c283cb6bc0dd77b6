/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/colour-button.h"

#include "window/look.h"

/* GtkColorDialogButton is newer than GTK 4.8. */
G_GNUC_BEGIN_IGNORE_DEPRECATIONS

GtkWidget *
sq_colour_button_new (void)
{
  return gtk_color_button_new ();
}

void
sq_colour_button_name (GtkWidget *button, const char *name)
{
  /* What the keyboard and screen readers meet is the button inside. */
  GtkWidget *inner = gtk_widget_get_first_child (button);
  gtk_color_button_set_title (GTK_COLOR_BUTTON (button), name);
  gtk_widget_set_tooltip_text (button, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (inner), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static guint32
byte_of (float share)
{
  return (guint32) lround (CLAMP (share, 0, 1) * 255);
}

guint32
sq_colour_button_get (GtkWidget *button)
{
  GdkRGBA colour;
  gtk_color_chooser_get_rgba (GTK_COLOR_CHOOSER (button), &colour);
  return byte_of (colour.red) << 16 | byte_of (colour.green) << 8 | byte_of (colour.blue);
}

void
sq_colour_button_set (GtkWidget *button, guint32 rgb)
{
  GdkRGBA colour = sq_look_colour (rgb);
  gtk_color_chooser_set_rgba (GTK_COLOR_CHOOSER (button), &colour);
}

G_GNUC_END_IGNORE_DEPRECATIONS
