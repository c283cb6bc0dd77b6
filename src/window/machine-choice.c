/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/machine-choice.h"

#include "exchange/hpgl.h"
#include "exchange/svg.h"
#include "window/settings.h"

#include <glib/gi18n.h>

static const struct
{
  const char *name, *sort, *suffix, *key;
} formats[SQ_N_MACHINE_FORMATS] = {
  [SQ_MACHINE_DXF_R12] = { "DXF R12", N_ ("DXF files"), ".dxf", "dxf-r12" },
  [SQ_MACHINE_DXF_R2000] = { "DXF R2000", N_ ("DXF files"), ".dxf", "dxf-r2000" },
  [SQ_MACHINE_SVG] = { "SVG", N_ ("SVG files"), ".svg", "svg" },
  [SQ_MACHINE_HPGL] = { "HP-GL", N_ ("HP-GL files"), ".hpgl", "hpgl" },
};

const char *
sq_machine_format_name (SqMachineFormat format)
{
  return formats[format].name;
}

const char *
sq_machine_format_sort (SqMachineFormat format)
{
  return _ (formats[format].sort);
}

const char *
sq_machine_format_suffix (SqMachineFormat format)
{
  return formats[format].suffix;
}

gboolean
sq_machine_format_is_dxf (SqMachineFormat format)
{
  return format == SQ_MACHINE_DXF_R12 || format == SQ_MACHINE_DXF_R2000;
}

/* --- settings -------------------------------------------------------------------------------- */

/* The place among @words of the word at @key; 0: none of them is there. */
static guint
read_word (GKeyFile *settings, const char *key, const char *const *words)
{
  g_autofree char *word = g_key_file_get_string (settings, SQ_SETTINGS_MACHINES, key, NULL);
  for (guint i = 0; word != NULL && words[i] != NULL; i++)
    if (g_str_equal (words[i], word))
      return i;
  return 0;
}

static guint
read_lines (GKeyFile *settings)
{
  g_auto (GStrv) words = g_key_file_get_string_list (settings, SQ_SETTINGS_MACHINES, "lines", NULL,
                                                     NULL);
  guint lines = 0;
  for (guint i = 0; words != NULL && sq_cut_lines_names[i] != NULL; i++)
    if (g_strv_contains ((const char *const *) words, sq_cut_lines_names[i]))
      lines |= 1u << i;
  return lines != 0 ? lines : SQ_LINES_ALL;
}

SqMachineChoice
sq_machine_choice_read (void)
{
  g_autoptr (GKeyFile) settings = sq_settings_read ();
  const char *keys[SQ_N_MACHINE_FORMATS + 1] = { NULL };
  for (guint i = 0; i < SQ_N_MACHINE_FORMATS; i++)
    keys[i] = formats[i].key;
  return (SqMachineChoice){
    .format = (SqMachineFormat) read_word (settings, "format", keys),
    .of = (SqCutOf) read_word (settings, "of", sq_cut_of_names),
    .layers = (SqDxfLayers) read_word (settings, "layers", sq_dxf_layers_names),
    .lines = read_lines (settings),
    .apart = g_key_file_get_boolean (settings, SQ_SETTINGS_MACHINES, "apart", NULL),
  };
}

void
sq_machine_choice_remember (const SqMachineChoice *choice)
{
  g_autoptr (GKeyFile) settings = sq_settings_read ();
  g_autoptr (GPtrArray) lines = g_ptr_array_new ();
  for (guint i = 0; sq_cut_lines_names[i] != NULL; i++)
    if (choice->lines & 1u << i)
      g_ptr_array_add (lines, (gpointer) sq_cut_lines_names[i]);
  g_key_file_set_string (settings, SQ_SETTINGS_MACHINES, "format", formats[choice->format].key);
  g_key_file_set_string (settings, SQ_SETTINGS_MACHINES, "of", sq_cut_of_names[choice->of]);
  g_key_file_set_string (settings, SQ_SETTINGS_MACHINES, "layers",
                         sq_dxf_layers_names[choice->layers]);
  g_key_file_set_string_list (settings, SQ_SETTINGS_MACHINES, "lines",
                              (const char *const *) lines->pdata, lines->len);
  g_key_file_set_boolean (settings, SQ_SETTINGS_MACHINES, "apart", choice->apart);
  sq_settings_write (settings);
}

/* --- files ----------------------------------------------------------------------------------- */

char *
sq_machine_choice_write (const SqMachineChoice *choice, const SqCutDrawing *drawing,
                         gboolean *is_large)
{
  gboolean is_far = FALSE;
  char *text;
  switch (choice->format)
    {
    case SQ_MACHINE_DXF_R12:
      return sq_dxf_write (drawing, SQ_DXF_R12, choice->layers);
    case SQ_MACHINE_DXF_R2000:
      return sq_dxf_write (drawing, SQ_DXF_R2000, choice->layers);
    case SQ_MACHINE_SVG:
      return sq_svg_write (drawing);
    case SQ_MACHINE_HPGL:
      text = sq_hpgl_write (drawing, &is_far);
      *is_large = *is_large || is_far;
      return text;
    }
  g_return_val_if_reached (NULL);
}
