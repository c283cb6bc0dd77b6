/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/option-values.h"

#include "base/error.h"
#include "base/length.h"
#include "exchange/today.h"
#include "job/names.h"

#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

/* Less is finer than any cutter and makes files without end; more is no outline any more (mm). */
#define LEAST_FLATTEN_MM 0.0001
#define MOST_FLATTEN_MM 100.0

#define MOST_STEPS 1000000
#define MOST_SECONDS 1e6
#define MOST_THREADS 64

gboolean
sq_options_refuse (GError **error, const char *pattern, const char *argument)
{
  g_autofree char *shown = g_filename_display_name (argument);

  g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, pattern, shown);
  return FALSE;
}

gboolean
sq_option_flatten (SqOptions *options, const char *value, GError **error)
{
  char *end;
  double mm = g_ascii_strtod (value, &end);

  if (*end != '\0' || !(mm >= LEAST_FLATTEN_MM && mm <= MOST_FLATTEN_MM))
    return sq_options_refuse (error, _ ("--flatten wants millimetres from 0.0001 to 100, not “%s”"),
                              value);
  options->flatten_mm = mm;
  return TRUE;
}

/* A length as it is typed, in millimetres where no unit is named. */
static gboolean
read_length (const char *value, double *mm)
{
  return sq_length_parse (value, SQ_UNIT_MM, '.', mm, NULL) == SQ_LENGTH_OK && *mm >= 0;
}

/* The place of @value among @words; FALSE: it is none of them. */
static gboolean
read_word (const char *const *words, const char *value, guint *place)
{
  for (*place = 0; words[*place] != NULL; ++*place)
    if (g_str_equal (words[*place], value))
      return TRUE;
  return FALSE;
}

gboolean
sq_option_paper (SqOptions *options, const char *value, GError **error)
{
  guint place;

  if (g_str_has_prefix (value, "roll:"))
    return (read_length (value + strlen ("roll:"), &options->roll_mm) && options->roll_mm > 0)
           || sq_options_refuse (error, _ ("--paper wants a roll’s width as roll:914mm, not “%s”"),
                                 value);
  options->has_sheet = read_word (sq_sheet_names, value, &place);
  options->sheet = (SqSheet) place;
  return options->has_sheet
         || sq_options_refuse (
             error, _ ("--paper wants a4 to a0, letter, ansi-b to ansi-e, or roll:914mm, not “%s”"),
             value);
}

gboolean
sq_option_side (SqOptions *options, const char *value, GError **error)
{
  options->has_side = TRUE;
  options->wrong_side = g_str_equal (value, sq_marked_on_names[1]);
  return options->wrong_side || g_str_equal (value, sq_marked_on_names[0])
         || sq_options_refuse (error, _ ("--marked-on wants right or wrong, not “%s”"), value);
}

gboolean
sq_option_margin (SqOptions *options, const char *value, GError **error)
{
  return read_length (value, &options->margin_mm)
         || sq_options_refuse (error, _ ("--margin wants a length, as 10 or 3/8in, not “%s”"),
                               value);
}

gboolean
sq_option_overlap (SqOptions *options, const char *value, GError **error)
{
  return read_length (value, &options->overlap_mm)
         || sq_options_refuse (error, _ ("--overlap wants a length, as 10 or 3/8in, not “%s”"),
                               value);
}

gboolean
sq_option_lines (SqOptions *options, const char *value, GError **error)
{
  guint place;

  options->has_pattern_lines = read_word (sq_pattern_lines_names, value, &place);
  options->pattern_lines = (SqPatternLines) place;
  return options->has_pattern_lines
         || sq_options_refuse (error, _ ("--lines wants both, cut or sew, not “%s”"), value);
}

gboolean
sq_option_pieces (SqOptions *options, const char *value, GError **error)
{
  (void) error;
  options->pieces = value;
  return TRUE;
}

gboolean
sq_option_pages (SqOptions *options, const char *value, GError **error)
{
  (void) error;
  options->pages = value;
  return TRUE;
}

gboolean
sq_option_label_sheet (SqOptions *options, const char *value, GError **error)
{
  guint columns, rows;
  char after;

  options->label_sheet = value;
  return (sscanf (value, "%3ux%3u%c", &columns, &rows, &after) == 2 && columns > 0 && rows > 0)
         || sq_options_refuse (error, _ ("--label-sheet wants columns and rows as 2x6, not “%s”"),
                               value);
}

gboolean
sq_option_skip_labels (SqOptions *options, const char *value, GError **error)
{
  guint64 skipped = 0;

  if (!g_ascii_string_to_unsigned (value, 10, 0, 10000, &skipped, NULL))
    return sq_options_refuse (error, _ ("--skip-labels wants a whole number, not “%s”"), value);
  options->skipped_labels = (guint) skipped;
  return TRUE;
}

gboolean
sq_option_date (SqOptions *options, const char *value, GError **error)
{
  options->date = value;
  return sq_is_date (value)
         || sq_options_refuse (error, _ ("--date wants a day as 2026-03-01, not “%s”"), value);
}

gboolean
sq_option_seed (SqOptions *options, const char *value, GError **error)
{
  return g_ascii_string_to_unsigned (value, 10, 0, G_MAXINT64, &options->seed, NULL)
         || sq_options_refuse (error, _ ("--seed wants a whole number, not “%s”"), value);
}

gboolean
sq_option_steps (SqOptions *options, const char *value, GError **error)
{
  return g_ascii_string_to_unsigned (value, 10, 0, MOST_STEPS, &options->steps, NULL)
         || sq_options_refuse (error, _ ("--steps wants a whole number up to a million, not “%s”"),
                               value);
}

gboolean
sq_option_seconds (SqOptions *options, const char *value, GError **error)
{
  char *end;

  options->seconds = g_ascii_strtod (value, &end);
  return (*end == '\0' && options->seconds >= 0 && options->seconds <= MOST_SECONDS)
         || sq_options_refuse (error, _ ("--seconds wants a number up to a million, not “%s”"),
                               value);
}

gboolean
sq_option_threads (SqOptions *options, const char *value, GError **error)
{
  guint64 threads = 0;

  if (!g_ascii_string_to_unsigned (value, 10, 0, MOST_THREADS, &threads, NULL))
    return sq_options_refuse (error, _ ("--threads wants a whole number up to 64, not “%s”"),
                              value);
  options->threads = (guint) threads;
  return TRUE;
}

gboolean
sq_option_lay (SqOptions *options, const char *value, GError **error)
{
  options->what = SQ_DO_LAY;
  if (options->file != NULL)
    return sq_options_refuse (error, _ ("one thing at a time; what is %s?"), value);
  options->file = value;
  return TRUE;
}

gboolean
sq_option_cut_of (SqOptions *options, const char *value, GError **error)
{
  guint place;

  options->has_cut_of = read_word (sq_cut_of_names, value, &place);
  options->cut_of = (SqCutOf) place;
  return options->has_cut_of
         || sq_options_refuse (error, _ ("--of wants pieces, cloth or lay, not “%s”"), value);
}

gboolean
sq_option_cut_lines (SqOptions *options, const char *value, GError **error)
{
  g_auto (GStrv) words = g_strsplit (value, ",", -1);
  guint place;

  for (guint i = 0; words[i] != NULL; i++)
    {
      if (!read_word (sq_cut_lines_names, words[i], &place))
        return sq_options_refuse (
            error, _ ("--only wants some of cut,sew,notch,mark,text, not “%s”"), value);
      options->cut_lines |= 1U << place;
    }
  return TRUE;
}

gboolean
sq_option_dxf_release (SqOptions *options, const char *value, GError **error)
{
  guint place;
  gboolean is_known = read_word (sq_dxf_release_names, value, &place);

  options->dxf_release = (SqDxfRelease) place;
  return is_known
         || sq_options_refuse (error, _ ("--dxf-release wants r12 or r2000, not “%s”"), value);
}

gboolean
sq_option_dxf_layers (SqOptions *options, const char *value, GError **error)
{
  guint place;
  gboolean is_known = read_word (sq_dxf_layers_names, value, &place);

  options->dxf_layers = (SqDxfLayers) place;
  return is_known
         || sq_options_refuse (error, _ ("--layers wants plain or d6673, not “%s”"), value);
}
