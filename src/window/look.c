/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/look.h"

#include "drawing/paint.h"
#include "window/compat.h"

const SqTheme *
sq_look_theme (GtkWidget *widget)
{
  GdkRGBA text = sq_compat_text_colour (widget);
  return text.red + text.green + text.blue > 1.5F ? sq_theme_dark () : sq_theme_light ();
}

double
sq_look_em (GtkWidget *widget, const char **family)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *font = pango_context_get_font_description (context);
  double size = (double) pango_font_description_get_size (font) / PANGO_SCALE;
  if (family != NULL)
    *family = pango_font_description_get_family (font);
  if (!pango_font_description_get_size_is_absolute (font))
    size *= pango_cairo_context_get_resolution (context) / 72;
  return size;
}

GdkRGBA
sq_look_colour (guint32 rgb)
{
  return (GdkRGBA){ (float) (rgb >> 16 & 0xff) / 255, (float) (rgb >> 8 & 0xff) / 255,
                    (float) (rgb & 0xff) / 255, 1 };
}

PangoAttrList *
sq_look_figures (GtkWidget *widget, const char *text)
{
  PangoAttrList *list = pango_attr_list_new ();
  pango_attr_list_insert (list, pango_attr_font_features_new ("tnum=1"));
  sq_paint_set_fractions (list, text, sq_look_em (widget, NULL));
  return list;
}

void
sq_look_set_figures (GtkWidget *widget)
{
  GtkEditable *inner = GTK_IS_EDITABLE (widget) ? gtk_editable_get_delegate (GTK_EDITABLE (widget))
                                                : NULL;
  gtk_widget_set_direction (widget, GTK_TEXT_DIR_LTR);
  if (inner != NULL)
    gtk_widget_set_direction (GTK_WIDGET (inner), GTK_TEXT_DIR_LTR);
}

void
sq_look_set_label (GtkLabel *label, const char *text)
{
  g_autoptr (PangoAttrList) list = sq_look_figures (GTK_WIDGET (label), text);
  gtk_label_set_text (label, text);
  gtk_label_set_attributes (label, list);
}

static gboolean
is_dark (GtkSettings *settings)
{
  g_autofree char *name = NULL;
  gboolean prefers;
  g_object_get (settings, "gtk-theme-name", &name, "gtk-application-prefer-dark-theme", &prefers,
                NULL);
  return prefers
         || (name != NULL
             && (g_str_has_suffix (name, "-dark") || g_str_has_suffix (name, "Inverse")));
}

/* The theme's colours by name, so that sheet and drawing have them from one place. */
static char *
define_colours (const SqTheme *theme)
{
  const struct
  {
    const char *name;
    guint32 rgb;
  } colours[] = {
    { "paper", theme->paper },
    { "grid", theme->grid },
    { "table", theme->table },
    { "ink", theme->ink },
    { "dim", theme->dim },
    { "accent", theme->accent },
    { "accent_text", theme->accent_text },
    { "good_text", theme->good_text },
    { "plate", theme->plate },
    { "line", theme->grid_main },
  };
  GString *css = g_string_new (NULL);
  for (guint i = 0; i < G_N_ELEMENTS (colours); i++)
    g_string_append_printf (css, "@define-color sq_%s #%06x;\n", colours[i].name, colours[i].rgb);
  return g_string_free (css, FALSE);
}

static void
reload (GtkSettings *settings, GParamSpec *spec, GtkCssProvider *provider)
{
  gboolean dark = is_dark (settings);
  g_autofree char *colours = define_colours (dark ? sq_theme_dark () : sq_theme_light ());
  const char *more = dark ? "/org/squab/Squab/dark.css" : "/org/squab/Squab/light.css";
  g_autoptr (GBytes) shades = g_resources_lookup_data (more, 0, NULL);
  g_autoptr (GBytes) sheet = g_resources_lookup_data ("/org/squab/Squab/style.css", 0, NULL);
  g_autofree char *css = NULL;
  (void) spec;
  g_return_if_fail (shades != NULL && sheet != NULL);
  css = g_strconcat (colours, g_bytes_get_data (shades, NULL), g_bytes_get_data (sheet, NULL),
                     NULL);
  sq_compat_load_css (provider, css);
}

void
sq_look_load (GdkDisplay *display)
{
  g_autoptr (GtkCssProvider) provider = gtk_css_provider_new ();
  GtkSettings *settings = gtk_settings_get_for_display (display);
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (provider),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  g_signal_connect_object (settings, "notify::gtk-theme-name", G_CALLBACK (reload), provider, 0);
  g_signal_connect_object (settings, "notify::gtk-application-prefer-dark-theme",
                           G_CALLBACK (reload), provider, 0);
  reload (settings, NULL, provider);
}
