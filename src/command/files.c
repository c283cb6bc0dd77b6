/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/files.h"

#include "command/put.h"
#include "exchange/file-names.h"
#include "exchange/hpgl.h"
#include "exchange/svg.h"
#include "words/text-table.h"

#include <glib/gi18n.h>
#include <stdio.h>

static SqCutChoice
choice_of (const SqOptions *options, SqOut out, gboolean wrong_side, const GArray *entries)
{
  SqCutChoice choice = {
    .of = options->cut_of,
    .lines = options->cut_lines != 0 ? options->cut_lines : SQ_LINES_ALL,
    .wrong_side = wrong_side,
    .flatten_mm = options->flatten_mm,
    .entries = entries,
  };

  if (out == SQ_OUT_HPGL && !options->has_cut_of)
    choice.of = SQ_CUT_LAYS;
  return choice;
}

/* Writes @drawing to @path in the format of @out, and says what a plotter may not like of it. */
static gboolean
put_drawing (const SqOptions *options, SqOut out, const SqCutDrawing *drawing, const char *path,
             GError **error)
{
  gboolean is_large = FALSE;
  char *text = out == SQ_OUT_DXF ? sq_dxf_write (drawing, options->dxf_release, options->dxf_layers)
               : out == SQ_OUT_SVG ? sq_svg_write (drawing)
                                   : sq_hpgl_write (drawing, &is_large);

  if (!sq_put_text (path, text, error))
    return FALSE;
  if (is_large)
    {
      g_autofree char *name = sq_text_clean (drawing->name);
      /* TRANSLATORS: of a file for a plotter; what it is called, and a number of units. */
      fprintf (stderr,
               _ ("squab-cut: warning: “%s” goes beyond %d plotter units (819 mm): older plotters "
                  "can’t draw it\n"),
               name, SQ_HPGL_MOST_UNITS);
    }
  return TRUE;
}

static gboolean
put_into_folder (const SqOptions *options, SqOut out, const SqLays *lays, const SqCutChoice *choice,
                 GError **error)
{
  static const char *const suffixes[SQ_N_OUTS] = {
    [SQ_OUT_DXF] = ".dxf", [SQ_OUT_SVG] = ".svg", [SQ_OUT_HPGL] = ".hpgl"
  };
  g_autoptr (GPtrArray) drawings = sq_cut_drawings_new (lays, choice);

  for (guint i = 0; i < drawings->len; i++)
    {
      const SqCutDrawing *drawing = g_ptr_array_index (drawings, i);
      g_autofree char *name = sq_file_name (drawing->name, _ ("piece"));
      g_autofree char *file = g_strconcat (name, suffixes[out], NULL);
      g_autofree char *path = g_build_filename (options->outs[out], file, NULL);
      if (!put_drawing (options, out, drawing, path, error))
        return FALSE;
    }
  return TRUE;
}

/* Whether @path is a folder; one that ends in a slash is made where it is not there. */
static gboolean
is_folder (const char *path)
{
  if (g_str_has_suffix (path, G_DIR_SEPARATOR_S))
    g_mkdir_with_parents (path, 0777); /* if that fails, writing into it tells why */
  return g_str_has_suffix (path, G_DIR_SEPARATOR_S) || g_file_test (path, G_FILE_TEST_IS_DIR);
}

gboolean
sq_command_files (const SqOptions *options, SqOut out, const SqLays *lays, gboolean wrong_side,
                  const GArray *entries, GError **error)
{
  SqCutChoice choice = choice_of (options, out, wrong_side, entries);

  if (is_folder (options->outs[out]))
    return put_into_folder (options, out, lays, &choice, error);
  g_autoptr (SqCutDrawing) drawing = sq_cut_drawing_new (lays, &choice);
  return put_drawing (options, out, drawing, options->outs[out], error);
}
