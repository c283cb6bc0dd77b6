/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The one place where a newer GTK is met in another way than GTK 4.8. */
#pragma once

#include <gtk/gtk.h>

/* The colour of @widget's text. */
static inline GdkRGBA
sq_compat_text_colour (GtkWidget *widget)
{
  GdkRGBA colour;
#if GTK_CHECK_VERSION(4, 10, 0)
  gtk_widget_get_color (widget, &colour);
#else
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &colour);
#endif
  return colour;
}

/* Loads style sheet @text into @provider. */
static inline void
sq_compat_load_css (GtkCssProvider *provider, const char *text)
{
#if GTK_CHECK_VERSION(4, 12, 0)
  gtk_css_provider_load_from_string (provider, text);
#else
  gtk_css_provider_load_from_data (provider, text, -1);
#endif
}
