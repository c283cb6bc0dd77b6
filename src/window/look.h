/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the desktop wants things to look, for what we draw ourselves. */
#pragma once

#include <gtk/gtk.h>

#include "drawing/theme.h"

/* The colours that go with the colour of @widget's text: light or dark. */
const SqTheme *sq_look_theme (GtkWidget *widget);
/* Size of @widget's font in pixels, the desktop's text scaling included; its family in *@family
 * (may be NULL), borrowed. */
double sq_look_em (GtkWidget *widget, const char **family);
/* 0xrrggbb as GTK has colours. */
GdkRGBA sq_look_colour (guint32 rgb);

/* How @widget is to set @text: figures of equal width, fractions as fractions. New. */
PangoAttrList *sq_look_figures (GtkWidget *widget, const char *text);
/* Shows @text in @label, set so. */
void sq_look_set_label (GtkLabel *label, const char *text);

/* @widget, an entry or what is only read, has figures in it, which run from left to right in any
 * language: else 18 1/2 becomes 1/2 18. */
void sq_look_set_figures (GtkWidget *widget);

/* Loads our style sheet for @display, and follows when the desktop turns dark or light. */
void sq_look_load (GdkDisplay *display);
